//! What can be wrong with a book.

use std::fmt;
use std::path::PathBuf;

/// Why a book cannot be opened or saved.
#[derive(Debug)]
pub enum BookError {
    /// A folder or file cannot be read.
    Read(PathBuf, std::io::Error),
    /// The folder holds no dish: no page in `dishes/`.
    NoDishes(PathBuf),
    /// Settings, kitchen or prices are not what they should be: all faults found, in order of file and line.
    Misread(Vec<Misread>),
    /// Something stands already where the book is to be saved.
    InTheWay(PathBuf),
    /// A folder or file cannot be written.
    Write(PathBuf, std::io::Error),
}

/// A fault in one of the book's files.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Misread {
    /// The file's name in the folder.
    pub file: String,
    /// Line, counted from 1.
    pub line: usize,
    /// What is wrong there.
    pub fault: Fault,
}

/// The kinds of fault.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum Fault {
    /// The file does not follow the rules of its format; holds the reader's own words.
    Form(String),
    /// A word that nothing in this file is called: the word, and those that are known.
    UnknownWord(String, &'static [&'static str]),
    /// Something that must be there is not: what lacks it, the word, an example line.
    Missing(String, &'static str, &'static str),
    /// A value that cannot be understood: the word, the text, what to write.
    NotUnderstood(String, String, &'static str),
    /// A value that no kitchen has: the word, the text, the range.
    OutOfRange(String, String, String),
    /// A row with another number of cells than the heading: found, expected.
    Cells(usize, usize),
    /// The same name stands a second time: the name, the first line.
    Twice(String, usize),
    /// A food of the book's own that cannot be understood.
    Food(potwright_larder::own::Wrong),
}

impl fmt::Display for BookError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            BookError::Read(path, error) => write!(f, "cannot read {}: {error}", path.display()),
            BookError::NoDishes(folder) => {
                write!(
                    f,
                    "no dishes in {}; a dish is a typed page dishes/NAME.txt",
                    folder.display()
                )
            }
            BookError::Misread(faults) => {
                let lines: Vec<String> = faults.iter().map(ToString::to_string).collect();
                f.write_str(&lines.join("\n"))
            }
            BookError::InTheWay(path) => {
                write!(
                    f,
                    "{} is there already and is not overwritten; name a new place",
                    path.display()
                )
            }
            BookError::Write(path, error) => write!(f, "cannot write {}: {error}", path.display()),
        }
    }
}

/// What the system said is in the words already, so no source is named: a chain of errors would say it twice.
impl std::error::Error for BookError {}

impl fmt::Display for Misread {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "{}, line {}: {}", self.file, self.line, self.fault)
    }
}

impl fmt::Display for Fault {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            Fault::Form(says) => f.write_str(says),
            Fault::UnknownWord(word, known) => {
                write!(f, "nothing is called '{word}' here; there are {}", known.join(", "))
            }
            Fault::Missing(what, word, example) => write!(f, "{what} lacks '{word}'; write, for example, {example}"),
            Fault::NotUnderstood(word, text, wanted) => write!(f, "'{word}' says '{text}'; write {wanted}"),
            Fault::OutOfRange(word, text, range) => write!(f, "'{word}' says '{text}'; it must be {range}"),
            Fault::Cells(found, expected) => {
                write!(
                    f,
                    "{found} cells, where the heading has {expected}; cells are parted by tabs"
                )
            }
            Fault::Food(wrong) => wrong.fmt(f),
            Fault::Twice(name, first) => write!(f, "'{name}' stands in line {first} already"),
        }
    }
}
