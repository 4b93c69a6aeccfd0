//! From the bytes of a page in any form to text: typed, a word processor's file, structured data.

use std::fmt;

use potwright_manuscript::files::{self, FileError};
use potwright_manuscript::structured::{self, Left, StructuredError};

use crate::decode::decode;

/// The endings of files that are dishes of a book when they lie in its `dishes/`.
pub const DISHES: [&str; 7] = ["txt", "docx", "odt", "rtf", "jsonld", "html", "htm"];
/// The endings of files that may hold pages.
pub const PAGES: [&str; 9] = ["txt", "md", "docx", "odt", "rtf", "jsonld", "json", "html", "htm"];

/// A page as text.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Typed {
    /// Its title where the form tells it; empty otherwise.
    pub title: String,
    /// The page.
    pub text: String,
    /// What was taken for granted or left out, a sentence each.
    pub notes: Vec<String>,
    /// What the data of a recipe says beyond a page.
    pub left: Vec<Left>,
}

/// Why a file gives no page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub enum NoPage {
    /// A word processor's file, or one of another form.
    File(FileError),
    /// Structured data.
    Data(StructuredError),
    /// Nothing stands in it.
    Empty,
}

impl fmt::Display for NoPage {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            NoPage::File(error) => error.fmt(f),
            NoPage::Data(error) => error.fmt(f),
            NoPage::Empty => {
                f.write_str("the page is empty; type a title, the ingredients a line each, and the method")
            }
        }
    }
}

impl std::error::Error for NoPage {}

/// The pages of a file: one, or as many as there are recipes in its data. What form it has is told by its bytes.
///
/// # Errors
///
/// The file cannot be read as what it is, or nothing stands in it.
pub fn typed(bytes: &[u8]) -> Result<Vec<Typed>, NoPage> {
    if files::is_a_file(bytes) {
        let taken = files::extract(bytes).map_err(NoPage::File)?;
        return filled(vec![Typed {
            text: taken.text,
            notes: taken.said,
            ..Typed::default()
        }]);
    }
    let decoded = decode(bytes);
    let notes: Vec<String> = decoded.note.into_iter().collect();
    if !structured::is_structured(&decoded.text) {
        let text = decoded.text;
        return filled(vec![Typed {
            text,
            notes,
            ..Typed::default()
        }]);
    }
    let pages = structured::pages(&decoded.text).map_err(NoPage::Data)?;
    let page = |page: structured::TypedPage| Typed {
        title: page.title,
        text: page.text,
        notes: notes.iter().cloned().chain(left_in_words(&page.left)).collect(),
        left: page.left,
    };
    filled(pages.into_iter().map(page).collect())
}

/// The pages on which something stands.
fn filled(mut pages: Vec<Typed>) -> Result<Vec<Typed>, NoPage> {
    pages.retain(|page| !page.text.trim().is_empty());
    if pages.is_empty() {
        Err(NoPage::Empty)
    } else {
        Ok(pages)
    }
}

/// The names of what a page has no place for, in a sentence.
fn left_in_words(left: &[Left]) -> Option<String> {
    let mut names: Vec<&str> = left.iter().map(|left| left.property.as_str()).collect();
    names.dedup();
    (!names.is_empty()).then(|| format!("the data says more than a page holds: {}", names.join(", ")))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn forms_are_told_by_their_bytes() {
        let text = |bytes: &[u8]| typed(bytes).map(|pages| pages[0].text.clone());
        assert_eq!(text(b"[in test]\nSoup"), Ok("[in test]\nSoup".into()));
        assert_eq!(text(b"{\\rtf1 Soup\\par}"), Ok("Soup\n".into()));
        assert_eq!(text(br#"{"@type": "Recipe", "name": "Soup"}"#), Ok("Soup\n".into()));
        assert_eq!(text(b" \n"), Err(NoPage::Empty));
        assert_eq!(
            text(b"{\"@type\": \"Thing\"}"),
            Err(NoPage::Data(StructuredError::NoRecipe))
        );
        assert_eq!(text(b"%PDF-1.4"), Err(NoPage::File(FileError::OtherForm("a PDF file"))));
    }

    #[test]
    fn what_the_data_says_more_is_told() {
        let pages = typed(br#"[{"@type": "Recipe", "name": "A", "keywords": "b"}, {"@type": "Recipe", "name": "C"}]"#);
        let pages = pages.expect("is read");
        assert_eq!(pages.len(), 2);
        assert_eq!(pages[0].notes, ["the data says more than a page holds: keywords"]);
        assert_eq!((pages[0].left[0].value.as_str(), pages[1].title.as_str()), ("b", "C"));
    }
}
