//! Figures of an ingredient line that no part of its reading holds: each is put to the writer, so that none is lost.

use crate::{Ingredient, Span};

/// Words before a figure that make it the number of a page, a step or a size of can, or the mass as purchased.
const NUMBERS: &[&str] = &[
    "page", "pages", "p.", "pp.", "no.", "no", "nos.", "#", "step", "note", "card", "recipe", "see", "a.p.", "ap",
    "e.p.", "ep",
];

/// From the first to the last figure of a row that is in none of the places its entries name.
pub(super) fn unplaced(text: &str, row: Span, entries: &[Ingredient], holes: &[Span]) -> Option<Span> {
    let places: Vec<Span> = entries.iter().flat_map(places).chain(holes.iter().copied()).collect();
    let unplaced = figures(text, row).filter(|figure| {
        let held = places.iter().any(|place| place.contains(*figure));
        !held && !is_length(&text[figure.end..row.end]) && !is_number_of(&text[row.start..figure.start])
    });
    unplaced.reduce(Span::join)
}

/// The runs of figures in a row.
fn figures(text: &str, row: Span) -> impl Iterator<Item = Span> + '_ {
    let figure = |c: char| c.is_ascii_digit() || matches!(c, '¼'..='¾' | '⅐'..='⅞');
    let body = row.of(text);
    let mut from = 0;
    std::iter::from_fn(move || {
        let start = from + body.get(from..)?.find(figure)?;
        let length = body[start..].find(|c| !figure(c)).unwrap_or(body.len() - start);
        from = start + length;
        Some(Span::new(row.start + start, row.start + start + length))
    })
}

/// The places that the parts of an entry hold.
fn places(entry: &Ingredient) -> impl Iterator<Item = Span> + '_ {
    let others = entry.alternatives.iter();
    let quantities = entry.quantity.iter().chain(&entry.also).chain(&entry.package);
    quantities
        .chain(others.clone().filter_map(|other| other.quantity.as_ref()))
        .map(|quantity| quantity.span)
        .chain(others.map(|other| other.item.span))
        .chain(entry.items.iter().map(|item| item.span))
        .chain(entry.preparation.iter().chain(&entry.plus_more).map(|words| words.span))
        .chain(entry.open.iter().map(|open| open.words.span))
}

/// '-inch', ' cm', '″': the figure is a length, which the entry keeps as a size.
fn is_length(after: &str) -> bool {
    let after = after.trim_start_matches(|c: char| c.is_whitespace() || c == '-' || c == '–' || c == '/' || c == '.');
    let after = after.trim_start_matches(|c: char| c.is_ascii_digit() || c == '-' || c == ' ');
    ["in", "cm", "mm", "\"", "″"].iter().any(|unit| after.starts_with(unit))
}

fn is_number_of(before: &str) -> bool {
    let word = before.split_whitespace().next_back().unwrap_or("").to_lowercase();
    let word = word.trim_start_matches(['(', '[', ',']);
    NUMBERS.contains(&word)
}
