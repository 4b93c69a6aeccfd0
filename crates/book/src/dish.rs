//! A dish of a book: its typed page.

use crate::typed::{Typed, typed};

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
    /// The dishes of a file: one, or as many as there are recipes in its data. A file that gives no page is a dish
    /// without words whose note says why, so that one damaged file does not close the book.
    pub(crate) fn read(file: &str, bytes: &[u8]) -> Vec<Dish> {
        let dish = |page: Typed| Dish {
            file: file.into(),
            text: page.text,
            note: (!page.notes.is_empty()).then(|| page.notes.join("; ")),
        };
        match typed(bytes) {
            Ok(pages) => pages.into_iter().map(dish).collect(),
            Err(why) => vec![dish(Typed {
                notes: vec![why.to_string()],
                ..Typed::default()
            })],
        }
    }
}
