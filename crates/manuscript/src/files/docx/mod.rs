//! Office Open XML text (ECMA-376): which parts a file has, and its body read with their help.

mod body;
mod comments;
mod numbering;
mod styles;

use super::error::FileError;
use super::letters::Letters;
use super::outline::{Paragraph, Part, flat};
use super::package::Package;
use super::xml::{Element, Space, Visit, walk};
use super::{Taken, own_comments, running_heads};
use body::Body;

/// Reads a file.
///
/// # Errors
///
/// A part is missing or damaged, or larger than is read.
pub(super) fn read(package: &mut Package) -> Result<Taken, FileError> {
    let roots = relations(package, "_rels/.rels", "")?;
    let main = target(&roots, "officeDocument").unwrap_or_else(|| "word/document.xml".into());
    let folder = main.rsplit_once('/').map_or("", |(folder, _)| folder).to_owned();
    let file = main.rsplit('/').next().unwrap_or("");
    let parts = relations(package, &joined(&folder, &format!("_rels/{file}.rels")), &folder)?;
    let mut optional = |kind: &str| -> Result<Option<(String, String)>, FileError> {
        let Some(name) = target(&parts, kind) else {
            return Ok(None);
        };
        Ok(package.part(&name)?.map(|text| (name, text)))
    };
    let mut styles = styles::Styles::default();
    if let Some((name, text)) = optional("styles")? {
        walk(&text, &name, &mut styles)?;
    }
    let mut numbering = numbering::Numbering::default();
    if let Some((name, text)) = optional("numbering")? {
        walk(&text, &name, &mut numbering)?;
    }
    let mut comments = comments::Comments::default();
    if let Some((name, text)) = optional("comments")? {
        walk(&text, &name, &mut comments)?;
    }
    let notes = [optional("footnotes")?, optional("endnotes")?];
    let heads: Vec<(String, String)> = {
        let running = parts
            .iter()
            .filter(|(kind, _)| matches!(kind.as_str(), "header" | "footer"));
        let mut found = Vec::new();
        for (_, name) in running {
            found.extend(package.part(name)?.map(|text| (name.clone(), text)));
        }
        found
    };
    let mut letters = Letters::default();
    let text = package.needed(&main)?;
    let mut body = Body::new(&styles, &mut numbering, &comments, &mut letters);
    walk(&text, &main, &mut body)?;
    let own = body.own_comments;
    let hidden = body.hidden;
    let mut taken = Taken {
        parts: body.finish(),
        said: Vec::new(),
    };
    for (name, text) in notes.into_iter().flatten() {
        let mut body = Body::new(&styles, &mut numbering, &comments, &mut letters);
        walk(&text, &name, &mut body)?;
        taken.parts.extend(as_notes(body.finish()));
    }
    for (name, text) in heads {
        let mut words = Words::default();
        walk(&text, &name, &mut words)?;
        taken.said.extend(running_heads(&words.words));
    }
    taken.said.dedup();
    taken.said.extend(own_comments(own));
    taken.said.extend(hidden.then(|| "hidden text is left out".to_owned()));
    taken.said.extend(letters.says());
    Ok(taken)
}

/// Footnotes stand as notes at the end of the page.
fn as_notes(parts: Vec<Part>) -> impl Iterator<Item = Part> {
    let filled = flat(parts).into_iter().filter(|paragraph| !paragraph.is_empty());
    filled.map(|paragraph| {
        let opener = Paragraph {
            text: "Note: ".into(),
            ..Paragraph::default()
        };
        let trimmed = Paragraph {
            text: paragraph.text.trim().to_owned(),
            label: None,
            heading: None,
            ..paragraph
        };
        Part::Paragraph(opener.join(trimmed))
    })
}

/// The relations that a part has to others: the last word of each one's type, and the name of the other part.
fn relations(package: &mut Package, name: &str, folder: &str) -> Result<Vec<(String, String)>, FileError> {
    let mut relations = Relations {
        folder: folder.to_owned(),
        found: Vec::new(),
    };
    if let Some(text) = package.part(name)? {
        walk(&text, name, &mut relations)?;
    }
    Ok(relations.found)
}

fn target(relations: &[(String, String)], kind: &str) -> Option<String> {
    relations
        .iter()
        .find(|(of, _)| of == kind)
        .map(|(_, name)| name.clone())
}

fn joined(folder: &str, name: &str) -> String {
    match (name.strip_prefix('/'), folder) {
        (Some(whole), _) => whole.to_owned(),
        (None, "") => name.to_owned(),
        (None, folder) => format!("{folder}/{name}"),
    }
}

struct Relations {
    folder: String,
    found: Vec<(String, String)>,
}

impl Visit for Relations {
    fn open(&mut self, element: &Element) {
        let (Some(kind), Some(target)) = (element.get("Type"), element.get("Target")) else {
            return;
        };
        if element.get("TargetMode") != Some("External") {
            let kind = kind.rsplit('/').next().unwrap_or("").to_owned();
            self.found.push((kind, joined(&self.folder, target)));
        }
    }

    fn close(&mut self, _: Space, _: &str) {}

    fn text(&mut self, _: &str) {}
}

/// All words of a part, run together.
#[derive(Default)]
struct Words {
    words: String,
    shown: bool,
}

impl Visit for Words {
    fn open(&mut self, element: &Element) {
        if element.is(Space::Word, "p") || element.is(Space::Word, "tab") {
            self.words.push(' ');
        }
        self.shown = element.is(Space::Word, "t");
    }

    fn close(&mut self, _: Space, _: &str) {
        self.shown = false;
    }

    fn text(&mut self, text: &str) {
        if self.shown {
            self.words.push_str(text);
        }
    }
}
