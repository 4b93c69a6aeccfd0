//! Why structured data gives no page.

use std::fmt;

/// Why structured data gives no page. Every text says what was found and what to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum StructuredError {
    /// The text is no JSON: line, column, and what was found there.
    NotJson(usize, usize, String),
    /// The web page holds no JSON-LD.
    NoData,
    /// The data holds no recipe.
    NoRecipe,
    /// More text than is read; holds the most, in mebibytes.
    TooLarge(usize),
}

impl fmt::Display for StructuredError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            StructuredError::NotJson(line, column, says) => {
                write!(
                    f,
                    "the data is no JSON (line {line}, column {column}: {says}); fetch the file afresh"
                )
            }
            StructuredError::NoData => f.write_str(
                "the web page holds no recipe as data (JSON-LD); copy its words into a text file and give that",
            ),
            StructuredError::NoRecipe => f.write_str("the data holds no schema.org/Recipe"),
            StructuredError::TooLarge(mebibytes) => {
                write!(
                    f,
                    "the data is larger than {mebibytes} MiB, the most that is read; keep the recipe alone"
                )
            }
        }
    }
}

impl std::error::Error for StructuredError {}
