//! OpenDocument text (OASIS OpenDocument 1.3): which parts a file has, and its body read with their help.

mod body;
mod lists;
mod styles;

use std::collections::BTreeSet;

use super::error::FileError;
use super::letters::Letters;
use super::package::Package;
use super::xml::{Element, Space, Visit, walk};
use super::{Taken, own_comments, running_heads};
use body::Body;

/// Reads a file.
///
/// # Errors
///
/// A part is missing, damaged or locked, or larger than is read.
pub(super) fn read(package: &mut Package) -> Result<Taken, FileError> {
    let manifest = package.part("META-INF/manifest.xml")?;
    if manifest.is_some_and(|manifest| manifest.contains("encryption-data")) {
        return Err(FileError::Locked);
    }
    let content = package.needed("content.xml")?;
    let mut styles = styles::Styles::default();
    if let Some(text) = package.part("styles.xml")? {
        walk(&text, "styles.xml", &mut styles)?;
    }
    walk(&content, "content.xml", &mut styles)?;
    let mut ends = Ends::default();
    walk(&content, "content.xml", &mut ends)?;
    let mut letters = Letters::default();
    let mut body = Body::new(&styles, &ends.0, &mut letters);
    walk(&content, "content.xml", &mut body)?;
    let (own, hidden) = (body.own_comments, body.hidden);
    let mut taken = Taken {
        parts: body.finish(),
        said: Vec::new(),
    };
    taken.said.extend(styles.running().filter_map(running_heads));
    taken.said.dedup();
    taken.said.extend(own_comments(own));
    taken.said.extend(hidden.then(|| "hidden text is left out".to_owned()));
    taken.said.extend(letters.says());
    Ok(taken)
}

/// The names of comments that have an end of their own.
#[derive(Default)]
struct Ends(BTreeSet<String>);

impl Visit for Ends {
    fn open(&mut self, element: &Element) {
        if element.is(Space::Office, "annotation-end") {
            self.0.extend(element.get("name").map(str::to_owned));
        }
    }

    fn close(&mut self, _: Space, _: &str) {}

    fn text(&mut self, _: &str) {}
}
