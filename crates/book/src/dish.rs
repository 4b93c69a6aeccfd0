//! A dish of a book: its typed page.

use crate::decode::{Decoded, decode};

/// A typed page of the book.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Dish {
    /// The file's name in `dishes/`.
    pub file: String,
    /// The page.
    pub text: String,
    /// What was taken for granted about its bytes; none for plain UTF-8.
    pub note: Option<String>,
}

impl Dish {
    pub(crate) fn read(file: &str, bytes: &[u8]) -> Dish {
        let Decoded { text, note } = decode(bytes);
        Dish {
            file: file.into(),
            text,
            note,
        }
    }
}
