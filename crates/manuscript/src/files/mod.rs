//! Files of word processors: their words as a typed page, and a page as a clean manuscript for the editor.
//!
//! [`extract`] takes the bytes of a .docx (Office Open XML, ECMA-376), .odt (OpenDocument 1.3) or .rtf (Rich Text
//! Format 1.9) file and gives the text that the reader reads: a line a paragraph, the numbers of lists as text, cells
//! of tables in columns, tracked changes as if accepted, comments as notes in square brackets behind the sentence they
//! are about. Headings are marked `##`. All places that are read later are places of that text. [`to_docx`] goes the
//! other way. Nothing here reads or writes a file: bytes in, bytes out, and limits on both against files that grow
//! without end.

mod docx;
mod error;
mod lay;
mod letters;
mod limits;
mod numerals;
mod odt;
mod out;
mod outline;
mod package;
mod rtf;
mod xml;

pub use error::FileError;
pub use letters::Letters;
pub use out::{Remark, to_docx};

use self::outline::Part;
use self::package::Package;
use crate::Span;

/// The name under which the program itself comments on a manuscript. What it asked is asked afresh when the file comes
/// back, so its own comments are not put on the page; every other name's are.
pub const OWN_NAME: &str = "Potwright";

/// The forms of files that are read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Kind {
    /// Office Open XML.
    Docx,
    /// OpenDocument text.
    Odt,
    /// Rich Text Format.
    Rtf,
}

impl Kind {
    /// The ending of its file names.
    #[must_use]
    pub const fn ending(self) -> &'static str {
        match self {
            Kind::Docx => ".docx",
            Kind::Odt => ".odt",
            Kind::Rtf => ".rtf",
        }
    }
}

/// A comment of the file and where it stands on the page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Comment {
    /// The note with its brackets.
    pub span: Span,
    /// Who wrote it; may be empty.
    pub author: String,
    /// Its words.
    pub text: String,
}

/// The words of a file as a typed page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Extracted {
    /// What form the file has.
    pub kind: Kind,
    /// The page.
    pub text: String,
    /// Its comments in page order; one that is long takes several notes.
    pub comments: Vec<Comment>,
    /// What was left out, a sentence each.
    pub said: Vec<String>,
}

/// What a form's reader hands on.
#[derive(Debug, Default)]
struct Taken {
    parts: Vec<Part>,
    said: Vec<String>,
}

/// Whether bytes begin as a file that [`extract`] should be asked about rather than be decoded as text: a word
/// processor's file, or one of a form that is known and not read.
#[must_use]
pub fn is_a_file(bytes: &[u8]) -> bool {
    bytes.starts_with(b"PK\x03\x04") || is_rtf(bytes) || other_form(bytes).is_some()
}

fn is_rtf(bytes: &[u8]) -> bool {
    let start = bytes.strip_prefix(b"\xef\xbb\xbf").unwrap_or(bytes);
    start.trim_ascii_start().starts_with(b"{\\rtf")
}

/// Forms known by their first bytes and not read.
fn other_form(bytes: &[u8]) -> Option<&'static str> {
    const FORMS: [(&[u8], &str); 8] = [
        (b"%PDF", "a PDF file"),
        (b"\xd0\xcf\x11\xe0", "a file of an older office program"),
        (b"\x89PNG", "a picture"),
        (b"\xff\xd8\xff", "a picture"),
        (b"GIF8", "a picture"),
        (b"II*\0", "a picture"),
        (b"MM\0*", "a picture"),
        (b"\x1f\x8b", "a packed file"),
    ];
    FORMS
        .iter()
        .find(|(start, _)| bytes.starts_with(start))
        .map(|(_, form)| *form)
}

/// The words of a word processor's file.
///
/// # Errors
///
/// The bytes are of another form, damaged, locked, or larger or deeper than is read (64 MiB packed or unpacked, 32 MiB
/// of text, 300 elements deep, no entities of its own).
pub fn extract(bytes: &[u8]) -> Result<Extracted, FileError> {
    if bytes.len() > limits::FILE {
        return Err(FileError::TooLarge("the file", limits::mebibytes(limits::FILE)));
    }
    if let Some(form) = other_form(bytes) {
        return Err(FileError::OtherForm(form));
    }
    let (kind, taken) = if is_rtf(bytes) {
        (Kind::Rtf, rtf::read(bytes)?)
    } else if bytes.starts_with(b"PK") {
        let mut package = Package::open(bytes)?;
        if package.has("content.xml") {
            (Kind::Odt, odt::read(&mut package)?)
        } else if package.has("[Content_Types].xml") {
            (Kind::Docx, docx::read(&mut package)?)
        } else {
            return Err(FileError::OtherForm("a packed file, but no text of a word processor"));
        }
    } else {
        return Err(FileError::Unknown);
    };
    let sheet = lay::lay(taken.parts);
    Ok(Extracted {
        kind,
        text: sheet.text,
        comments: sheet.comments,
        said: taken.said,
    })
}

/// One sentence on the program's own comments that were not put on the page.
fn own_comments(count: usize) -> Option<String> {
    match count {
        0 => None,
        1 => Some(format!(
            "1 comment of {OWN_NAME}'s own is not put on the page; it is asked afresh"
        )),
        several => Some(format!(
            "{several} comments of {OWN_NAME}'s own are not put on the page; they are asked afresh"
        )),
    }
}

/// One sentence on what stands in the head or foot of every sheet.
fn running_heads(words: &str) -> Option<String> {
    let words = words.split_whitespace().collect::<Vec<_>>().join(" ");
    let short: String = words.chars().take(80).collect();
    let says = || format!("the line that runs over or under every page is left out: '{short}'");
    words.contains(char::is_alphabetic).then(says)
}
