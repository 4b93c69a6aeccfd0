//! What can be wrong with a table.

use std::fmt;

/// A fault in a table, with the place to mend.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TableError {
    /// The file's name, as in `data/`.
    pub file: String,
    /// Line, counted from 1.
    pub line: usize,
    /// What is wrong there.
    pub fault: Fault,
}

/// The kinds of fault.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fault {
    /// The header does not name the columns the table must have; holds the header that is expected.
    Header(String),
    /// A row with another number of cells than the header: found, expected.
    Cells(usize, usize),
    /// A cell that must not be empty; holds its column.
    Empty(&'static str),
    /// A key that the name table does not hold.
    UnknownKey(String),
    /// A key that stands twice where it may stand once.
    KeyTwice(String),
    /// A word that is none of those the column may hold: column, word.
    UnknownWord(&'static str, String),
    /// Not a number, or out of range: column, text, allowed range.
    Number(&'static str, String, &'static str),
    /// A range whose ends and middle do not stand in order.
    Order,
}

impl fmt::Display for TableError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}, line {}: ", self.file, self.line)?;
        match &self.fault {
            Fault::Header(expected) => write!(f, "the header must read '{expected}'"),
            Fault::Cells(found, expected) => write!(f, "{found} cells where the header has {expected}"),
            Fault::Empty(column) => write!(f, "'{column}' must not be empty"),
            Fault::UnknownKey(key) => write!(f, "no food has the key '{key}'"),
            Fault::KeyTwice(key) => write!(f, "the key '{key}' stands a second time"),
            Fault::UnknownWord(column, word) => write!(f, "'{word}' is not a word that '{column}' may hold"),
            Fault::Number(column, text, range) => write!(f, "'{column}' is '{text}'; it must be a number {range}"),
            Fault::Order => write!(f, "low, mid and high must stand in order"),
        }
    }
}

impl std::error::Error for TableError {}
