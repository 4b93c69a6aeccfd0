//! The re-set page as plain text.

use potwright_manuscript::{BlockKind, Recipe, Span};

use super::warn::{Warning, WarningKind};
use super::worked::Worked;
use crate::splice::Splices;

/// Columns of a typed page.
const WIDTH: usize = 80;

/// All blocks of the page with what is new in its place, in the writer's own order; the label stands under the title,
/// notes to the desk are left out.
pub(super) fn page(recipe: &Recipe, text: &str, splices: &Splices, label: &str) -> String {
    let desk = desk_notes(recipe, text);
    let mut out = String::new();
    let mut labelled = false;
    if !recipe.blocks.iter().any(|block| block.kind == BlockKind::Title) {
        out.push_str(&filled(label, ""));
        out.push_str("\n\n");
        labelled = true;
    }
    for block in &recipe.blocks {
        if block.kind == BlockKind::DeskNote {
            continue;
        }
        let words = without(&desk, text, block.span, splices);
        match block.kind {
            BlockKind::Gap => out.push_str(&words),
            BlockKind::Ingredient => append(&mut out, &words, "  "),
            _ => append(&mut out, &words, ""),
        }
        if block.kind == BlockKind::Title && !labelled {
            out.push_str("\n\n");
            out.push_str(&filled(label, ""));
            labelled = true;
        }
    }
    out
}

/// The page, then the warnings by kind, then what was worked by the card.
pub(super) fn text(page: &str, warnings: &[Warning], worked: &[Worked]) -> String {
    let mut out = single_gaps(page.trim_end());
    section(
        &mut out,
        "What this method does not solve",
        warnings.iter().filter(|w| !w.kind.is_about_the_page()),
    );
    section(
        &mut out,
        "To look at on this page",
        warnings
            .iter()
            .filter(|w| w.kind.is_about_the_page() && w.kind != WarningKind::Trade),
    );
    section(
        &mut out,
        "What the trade does otherwise (not applied above)",
        warnings.iter().filter(|w| w.kind == WarningKind::Trade),
    );
    if !worked.is_empty() {
        out.push_str("\nWorked by the card\n\n");
        for one in worked {
            out.push_str(&filled(
                &format!("- {}: {} = {}", one.line, one.product, one.measured),
                "  ",
            ));
            out.push('\n');
        }
    }
    out
}

fn section<'a>(out: &mut String, heading: &str, warnings: impl Iterator<Item = &'a Warning>) {
    let mut first = true;
    for warning in warnings {
        if first {
            out.push_str(&format!("\n{heading}\n\n"));
            first = false;
        }
        out.push_str(&filled(&format!("- {}", warning.text), "  "));
        out.push('\n');
    }
}

/// Every line of the words no longer than the page is wide.
fn filled(words: &str, indent: &str) -> String {
    let options = textwrap::Options::new(WIDTH)
        .subsequent_indent(indent)
        .break_words(false);
    let lines: Vec<String> = words.split('\n').map(|line| textwrap::fill(line, &options)).collect();
    lines.join("\n")
}

/// Adds words to a page whose last line may have begun already ('1. ').
fn append(out: &mut String, words: &str, indent: &str) {
    let begun = out.rsplit('\n').next().unwrap_or("").to_owned();
    out.truncate(out.len() - begun.len());
    out.push_str(&filled(&format!("{begun}{words}"), indent));
}

/// No more than one empty line in a row.
fn single_gaps(page: &str) -> String {
    let mut out = String::new();
    let mut empty = 0;
    for line in page.lines() {
        empty = if line.trim().is_empty() { empty + 1 } else { 0 };
        if empty <= 1 {
            out.push_str(line.trim_end());
            out.push('\n');
        }
    }
    out
}

/// Notes to the desk with their brackets and the space before them.
fn desk_notes(recipe: &Recipe, text: &str) -> Vec<Span> {
    let whole = |span: Span| {
        let open = text.get(..span.start).map_or(span.start, |before| {
            before.trim_end_matches('[').trim_end_matches(' ').len()
        });
        let close = text
            .get(span.end..)
            .filter(|rest| rest.starts_with(']'))
            .map_or(span.end, |_| span.end + 1);
        Span::new(open, close)
    };
    recipe.desk_notes.iter().map(|note| whole(note.words.span)).collect()
}

/// The words of a block without the notes that stand in it.
fn without(notes: &[Span], text: &str, block: Span, splices: &Splices) -> String {
    let mut out = String::new();
    let mut at = block.start;
    for note in notes
        .iter()
        .filter(|note| block.contains(**note) && note.start >= block.start)
    {
        if note.start >= at {
            out.push_str(&splices.render(text, Span::new(at, note.start)));
            at = note.end;
        }
    }
    out.push_str(&splices.render(text, Span::new(at, block.end)));
    out
}
