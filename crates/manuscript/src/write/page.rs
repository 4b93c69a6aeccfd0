//! The order of a page: title, notes to the desk, headnote, yield, times, list, method, variations, remarks.

use crate::{BlockKind, Ingredient, Recipe, Words};

use super::style::{HouseStyle, Names};
use super::{line, names};

/// A line of the list with the part of the page it stands in.
pub(super) struct Line {
    section: Option<usize>,
    text: String,
}

/// The lines of the list, each once, set by `set` from its words and its entries.
pub(super) fn lines(recipe: &Recipe, mut set: impl FnMut(&Words, &[Ingredient]) -> String) -> Vec<Line> {
    if recipe.layout == crate::Layout::Prose {
        return Vec::new();
    }
    let same = |a: &Ingredient, b: &Ingredient| a.line == b.line && !a.line.text.is_empty();
    let one = |entries: &[Ingredient]| {
        let first = entries.first()?;
        let text = set(&first.line, entries);
        let next = recipe.ingredients.iter().any(|other| {
            other
                .instead_of
                .is_some_and(|at| recipe.ingredients.get(at) == Some(first))
        });
        let or = if next && !text.ends_with(" or") { " or" } else { "" };
        Some(Line {
            section: first.section,
            text: format!("{text}{or}"),
        })
    };
    recipe.ingredients.chunk_by(same).filter_map(one).collect()
}

/// A line from what was read of it, else its words.
pub(super) fn from_entries(entries: &[Ingredient], style: &HouseStyle) -> String {
    let typed = || entries.first().map_or(String::new(), |first| first.line.text.clone());
    match entries {
        [one] => line::line(one, style).unwrap_or_else(typed),
        _ => typed(),
    }
}

/// The whole page; `spelt` sets the words of sentences.
pub(super) fn page(recipe: &Recipe, lines: &[Line], spelt: &dyn Fn(&str) -> String, style: &HouseStyle) -> String {
    let mut blocks: Vec<String> = Vec::new();
    blocks.extend(recipe.title.iter().map(|title| title.text.clone()));
    let notes = recipe.desk_notes.iter().filter(|note| note.step.is_none());
    blocks.extend(notes.map(|note| format!("[{}]", note.words.text)));
    blocks.extend(recipe.headnote.iter().map(|words| spelt(&words.text)));
    let head = recipe.yields.iter().map(|yields| &yields.words);
    let head = head.chain(recipe.declared_times.iter().map(|time| &time.words));
    let mut said: Vec<&str> = Vec::new();
    for words in head {
        if !said.contains(&words.text.as_str()) {
            said.push(&words.text);
        }
    }
    if !said.is_empty() {
        blocks.push(said.join("\n"));
    }
    for part in lines.chunk_by(|a, b| a.section == b.section) {
        let head = part.first().and_then(|line| heading(recipe, line.section));
        let rows: Vec<String> = head
            .into_iter()
            .chain(part.iter().map(|line| line.text.clone()))
            .collect();
        blocks.push(rows.join("\n"));
    }
    let mut section = None;
    for (index, step) in recipe.steps.iter().enumerate() {
        if step.section != section {
            section = step.section;
            blocks.extend(heading(recipe, section));
        }
        blocks.push(self::step(recipe, index, &spelt(&step.words.text)));
    }
    for variation in &recipe.variations {
        let name = variation
            .name
            .as_ref()
            .filter(|name| !variation.words.span.contains(name.span));
        blocks.extend(name.map(|name| name.text.clone()));
        blocks.push(spelt(&variation.words.text));
    }
    blocks.extend(recipe.closing.iter().map(|words| spelt(&words.text)));
    blocks.retain(|block| !block.is_empty());
    let mut text = blocks.join("\n\n");
    text.push('\n');
    if style.names == Names::AsTyped {
        text
    } else {
        names::renamed(&text, style.names)
    }
}

/// The page in its own order, stretch by stretch; `set` sets the words of a stretch.
pub(super) fn in_place(recipe: &Recipe, text: &str, set: impl Fn(BlockKind, &str) -> String) -> String {
    let stretch = |block: &crate::Block| match block.kind {
        BlockKind::Gap | BlockKind::DeskNote => block.span.of(text).to_owned(),
        kind => set(kind, block.span.of(text)),
    };
    recipe.blocks.iter().map(stretch).collect()
}

/// A heading as typed, with a colon.
fn heading(recipe: &Recipe, section: Option<usize>) -> Option<String> {
    let words = &recipe.sections.get(section?)?.words.text;
    Some(format!("{}:", words.trim_end_matches(':').trim_end()))
}

/// A step with its number, where there are several, and the notes to the desk that stand in it.
fn step(recipe: &Recipe, index: usize, words: &str) -> String {
    let number = if recipe.steps.len() > 1 {
        format!("{}. ", index + 1)
    } else {
        String::new()
    };
    let notes = recipe.desk_notes.iter().filter(|note| note.step == Some(index));
    let notes: String = notes.map(|note| format!(" [{}]", note.words.text)).collect();
    format!("{number}{words}{notes}")
}
