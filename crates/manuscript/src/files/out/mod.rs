//! A page as a clean manuscript for the editor: Office Open XML, plain styles, double spaced, remarks as comments.
//!
//! A typed line is a paragraph, wrapped lines are one, blank lines stay; title and headings have the styles of these
//! names. The words are the writer's own, notes to the desk and list marks included.

mod pages;
mod parts;

use std::io::{Cursor, Write};

use zip::write::{SimpleFileOptions, ZipWriter};

use super::error::FileError;
use crate::Span;

/// A remark on some words of a page: a query, an answer.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Remark {
    /// The words it is about; a place that does not fit the page is moved to the nearest words.
    pub span: Span,
    /// Who makes it.
    pub author: String,
    /// What it says; a line feed begins a paragraph.
    pub text: String,
}

/// The bytes of a .docx file of the page with the remarks at their words, in the order given. The same page and
/// remarks give the same bytes: no clock is read, so the comments bear no dates.
///
/// # Errors
///
/// The page is larger than such a file may be (4 GiB).
pub fn to_docx(text: &str, remarks: &[Remark]) -> Result<Vec<u8>, FileError> {
    let recipe = crate::read(text);
    let paragraphs = pages::paragraphs(text, &recipe);
    let title = recipe.title.as_ref().map_or("", |title| title.text.as_str());
    let files = [
        ("[Content_Types].xml", parts::CONTENT_TYPES.to_owned()),
        ("_rels/.rels", parts::RELATIONS.to_owned()),
        ("docProps/core.xml", parts::core(title)),
        ("word/document.xml", pages::document(text, &paragraphs, remarks)),
        ("word/_rels/document.xml.rels", parts::DOCUMENT_RELATIONS.to_owned()),
        ("word/styles.xml", parts::STYLES.to_owned()),
        ("word/footer1.xml", parts::FOOTER.to_owned()),
        ("word/comments.xml", parts::comments(remarks)),
    ];
    packed(&files).map_err(|error| FileError::Damaged("the packing".into(), error.to_string()))
}

fn packed(files: &[(&str, String)]) -> zip::result::ZipResult<Vec<u8>> {
    let mut writer = ZipWriter::new(Cursor::new(Vec::new()));
    for (name, text) in files {
        writer.start_file(*name, SimpleFileOptions::default())?;
        writer.write_all(text.as_bytes())?;
    }
    Ok(writer.finish()?.into_inner())
}
