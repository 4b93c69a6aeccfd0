//! Why a file of a word processor cannot be read.

use std::fmt;

/// Why the words of a file cannot be had. Every text says what was found and what to do.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum FileError {
    /// The bytes are of none of the forms that are read here.
    Unknown,
    /// The bytes are of a form that is known and not read; holds its name.
    OtherForm(&'static str),
    /// Something is larger than is read: what, and the most, in mebibytes.
    TooLarge(&'static str, usize),
    /// Elements or groups stand in each other deeper than any page needs: what, and the most.
    TooDeep(&'static str, usize),
    /// A part declares entities of its own: its name. Such declarations can grow without end, so none is followed.
    Entities(String),
    /// A part that must be there is not: its name.
    Missing(String),
    /// The file is locked with a password.
    Locked,
    /// A part is damaged: its name, and what was found there.
    Damaged(String, String),
}

impl fmt::Display for FileError {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            FileError::Unknown => {
                f.write_str("this is no .docx, .odt or .rtf file; save it as one of these or as text")
            }
            FileError::OtherForm(form) => write!(
                f,
                "this is {form}, which is not read; save it as .docx, .odt, .rtf or text"
            ),
            FileError::TooLarge(what, mebibytes) => {
                write!(
                    f,
                    "{what} is larger than {mebibytes} MiB, the most that is read; save the page alone"
                )
            }
            FileError::TooDeep(what, limit) => {
                write!(
                    f,
                    "{what} stand more than {limit} deep in each other, which no page needs; save the file afresh"
                )
            }
            FileError::Entities(part) => write!(
                f,
                "{part} declares entities of its own, which are not followed; save the file afresh in a word processor"
            ),
            FileError::Missing(part) => write!(f, "the file holds no {part}; save it afresh in a word processor"),
            FileError::Locked => f.write_str("the file is locked with a password; save it without one"),
            FileError::Damaged(part, says) => {
                write!(
                    f,
                    "{part} is damaged ({says}); save the file afresh in a word processor"
                )
            }
        }
    }
}

impl std::error::Error for FileError {}
