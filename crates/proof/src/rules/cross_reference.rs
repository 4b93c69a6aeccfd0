//! A cross reference to nowhere.

use potwright_manuscript::{Span, Words};

use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "L10",
    name: "cross reference to nowhere",
    finds: "'Step 7' where there are six, a page number that was never filled in ('page 00'), and a note below or overleaf that is not there.",
    why: "The reader turns pages with wet hands and finds nothing.",
    fires: "Leek soup\n\n2 leeks, sliced\n1 litre stock\n\n1. Put the leeks and stock in a pot.\n2. Simmer for 20 minutes as in step 5.\n",
    silent: "Leek soup\n\n2 leeks, sliced\n1 litre stock\n\n1. Put the leeks and stock in a pot.\n2. Simmer for 20 minutes as in step 1.\n",
    instead: "Give the number of the step, or the title of the dish.",
    source: "common practice of copy editing, no source",
    check,
};

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let recipe = manuscript.recipe;
    let lines = recipe.ingredients.iter().map(|line| &line.line);
    let texts = recipe
        .steps
        .iter()
        .map(|step| &step.words)
        .chain(lines)
        .chain(&recipe.headnote)
        .chain(&recipe.closing);
    let mut queries: Vec<Query> = texts
        .flat_map(|words| in_words(manuscript.text, words, recipe.steps.len()))
        .collect();
    // Two entries of one line stand on the same words.
    queries.dedup_by_key(|query| query.span);
    queries
}

fn in_words(text: &str, words: &Words, steps: usize) -> Vec<Query> {
    let mut queries = Vec::new();
    let mut before = "";
    for (span, word) in words_of(text, words.span) {
        let digits = !word.is_empty() && word.chars().all(|c| c.is_ascii_digit());
        let number: Option<usize> = if digits { word.parse().ok() } else { None };
        let nowhere = match before.to_lowercase().as_str() {
            "step" => number
                .is_some_and(|n| n == 0 || n > steps)
                .then(|| format!("there are {steps} steps")),
            "page" | "p" => number
                .is_some_and(|n| n == 0)
                .then(|| "the page number is still to come".to_owned()),
            "note" | "notes" | "box" | "panel" | "table" if WHERE.contains(&word.to_lowercase().as_str()) => {
                (!has_notes(text)).then(|| "no line of the page begins with such a heading".to_owned())
            }
            _ if word.eq_ignore_ascii_case("overleaf") && !has_notes(text) => {
                Some("nothing stands overleaf of the page as typed".to_owned())
            }
            _ => None,
        };
        if let Some(because) = nowhere {
            queries.push(Query {
                code: RULE.code.into(),
                weight: Weight::WorthALook,
                span,
                asks: "Where does this point to?".into(),
                because,
                try_words: None,
                see: Vec::new(),
            });
        }
        before = word;
    }
    queries
}

/// Where a note is said to stand.
const WHERE: &[&str] = &["below", "above", "opposite", "overleaf", "left", "right"];

/// Whether a line of the page is headed as a note.
fn has_notes(text: &str) -> bool {
    let heads = ["note", "tip", "box", "table"];
    text.lines().any(|line| {
        let line = line.trim_start_matches(|c: char| !c.is_alphabetic()).to_lowercase();
        heads.iter().any(|head| line.starts_with(head))
    })
}

/// The words at a place, punctuation cut off, each with its own place.
fn words_of(text: &str, place: Span) -> impl Iterator<Item = (Span, &str)> {
    let stretch = place.of(text);
    stretch.split_whitespace().map(move |word| {
        let trimmed = word.trim_matches(|c: char| !c.is_alphanumeric());
        // Both are slices of the same text, so the distance of their starts is an offset into it.
        let start = place.start + (trimmed.as_ptr() as usize - stretch.as_ptr() as usize);
        (Span::new(start, start + trimmed.len()), trimmed)
    })
}
