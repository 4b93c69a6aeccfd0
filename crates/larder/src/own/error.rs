//! What can be wrong with a `larder.tsv`, in words for its writer.

use std::fmt;

/// A fault and its line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Misread {
    /// Line, counted from 1.
    pub line: usize,
    /// What is wrong there.
    pub wrong: Wrong,
}

/// The kinds of fault.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Wrong {
    /// A column nobody knows, and the one that may be meant.
    UnknownColumn(String, Option<&'static str>),
    /// A column that stands twice.
    ColumnTwice(&'static str),
    /// No column says which food a line is about.
    NoNameColumn,
    /// A line without a name or key.
    NoName,
    /// More cells than the heading has: found, expected.
    Cells(usize, usize),
    /// Not a number that can be: column, text, what is wanted.
    Number(&'static str, String, &'static str),
    /// Not a word the column may hold: column, text, those it may.
    Word(&'static str, String, &'static str),
    /// A key with other signs than small letters, figures and low lines.
    Key(String),
    /// No food is called so: what `like` says.
    LikeUnknown(String),
    /// Several foods may be meant: what `like` says, and their names.
    LikeUnsure(String, Vec<String>),
    /// Nothing says what the food is made of.
    Unfounded,
    /// The parts of 100 g make another weight; grams in tenths.
    Sum(i64),
    /// A part is more than its whole: columns.
    Part(&'static str, &'static str),
    /// Two columns that say the same thing.
    Both(&'static str, &'static str),
    /// A piece of `weights` that is no measure with its grams.
    Weight(String),
    /// A food that stands a second time: name, first line.
    Twice(String, usize),
}

impl fmt::Display for Wrong {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Wrong::UnknownColumn(word, Some(near)) => write!(f, "no column is called '{word}'; '{near}' may be meant"),
            Wrong::UnknownColumn(word, None) => {
                write!(
                    f,
                    "no column is called '{word}'; what is for your own eyes goes under 'notes'"
                )
            }
            Wrong::ColumnTwice(column) => write!(f, "the column '{column}' stands twice"),
            Wrong::NoNameColumn => write!(
                f,
                "the heading needs a column 'name' or 'key'; columns are parted by tabs"
            ),
            Wrong::NoName => write!(f, "neither name nor key says which food this is"),
            Wrong::Cells(found, expected) => {
                write!(
                    f,
                    "{found} cells, where the heading has {expected}; cells are parted by tabs"
                )
            }
            Wrong::Number(column, text, wanted) => write!(f, "'{column}' says '{text}'; write {wanted}"),
            Wrong::Word(column, text, known) => write!(f, "'{column}' says '{text}'; write {known}"),
            Wrong::Key(key) => {
                write!(
                    f,
                    "the key '{key}' may hold only small letters, figures and low lines, like seed_mix"
                )
            }
            Wrong::LikeUnknown(name) => write!(f, "no food is called '{name}'; say another in 'like'"),
            Wrong::LikeUnsure(name, may) => {
                write!(f, "'{name}' in 'like' may be {}; write which", may.join(" or "))
            }
            Wrong::Unfounded => write!(
                f,
                "nothing says what it is made of; name a food it resembles in 'like', or give protein_g, fat_g and \
                 carbohydrate_g"
            ),
            Wrong::Sum(tenths) => write!(
                f,
                "water, protein, fat, carbohydrate, ash and alcohol make {}.{} g of 100 g",
                tenths / 10,
                (tenths % 10).abs()
            ),
            Wrong::Part(part, whole) => write!(f, "{part} is more than {whole}, of which it is a part"),
            Wrong::Both(one, other) => write!(f, "'{one}' and '{other}' say the same thing; keep one of them"),
            Wrong::Weight(text) => {
                write!(
                    f,
                    "'{text}' in 'weights' is no measure with its grams; write like cup chopped=160; bunch=120"
                )
            }
            Wrong::Twice(name, first) => write!(f, "'{name}' stands in line {first} already"),
        }
    }
}
