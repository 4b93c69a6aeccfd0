//! What can be wrong with an official table.

use std::fmt;

/// A fault in a file of an official table, with its place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct OfficialError {
    /// The file's name.
    pub file: String,
    /// Line, counted from 1.
    pub line: usize,
    /// What is wrong there.
    pub fault: OfficialFault,
}

/// The kinds of fault.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum OfficialFault {
    /// Too few cells: found, the least a line of this file has.
    Cells(usize, usize),
    /// The heading lacks a column.
    Column(&'static str),
    /// A cell that is no number: column, text.
    Number(&'static str, String),
    /// A quoted cell that has no end on its line.
    Quote,
    /// No food has any figure.
    NoFoods,
}

impl fmt::Display for OfficialError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}, line {}: ", self.file, self.line)?;
        match &self.fault {
            OfficialFault::Cells(found, least) => {
                write!(f, "{found} cells, where a line of this file has {least} at least")
            }
            OfficialFault::Column(column) => write!(f, "the heading lacks the column '{column}'"),
            OfficialFault::Number(column, text) => write!(f, "'{column}' is '{text}', which is no number"),
            OfficialFault::Quote => write!(f, "a quotation mark is opened and not closed"),
            OfficialFault::NoFoods => write!(f, "no food of the table has any figure"),
        }
    }
}

impl std::error::Error for OfficialError {}
