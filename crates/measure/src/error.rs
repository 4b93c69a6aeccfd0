//! What can be wrong with a number as written.

use std::fmt;

/// Why a text is not an exact number.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NumberError {
    /// Nothing but space.
    Empty,
    /// Not a whole number, a decimal, a fraction or a mixed number.
    NotANumber(String),
    /// A fraction with nought below the line.
    NoughtBelow(String),
    /// More digits than an exact number holds (about 38).
    TooLong(String),
}

impl fmt::Display for NumberError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            NumberError::Empty => f.write_str("no number here"),
            NumberError::NotANumber(text) => write!(f, "'{text}' is not a number; write it as 3, 0.75, 3/4 or 1 3/4"),
            NumberError::NoughtBelow(text) => write!(f, "'{text}' divides by nought"),
            NumberError::TooLong(text) => write!(f, "'{text}' has too many digits; about 38 can be held exactly"),
        }
    }
}

impl std::error::Error for NumberError {}
