//! What stays as written, and what rounding or a guess has moved.

use potwright_manuscript::{Ingredient, Span, Words};

use super::{About, Warning, WarningKind, listed, steps};
use crate::convert::line::Outcome;
use crate::convert::scan::{figures, skip, word_at};

/// Amounts the writer left to the cook.
pub(super) fn taste(about: &About<'_>) -> Option<Warning> {
    let lines = about.recipe.ingredients.iter();
    let left: Vec<String> = lines
        .filter(|line| line.quantity.is_none() && !line.equipment)
        .flat_map(|line| open(about, line))
        .collect();
    if left.is_empty() {
        return None;
    }
    let text = format!("No amount is given for {}: by taste, as before.", listed(&left));
    Some(Warning::plain(WarningKind::Taste, text, "seasoning"))
}

/// 'a grating of nutmeg': the words of the line; the names alone where not even that is said.
fn open(about: &About<'_>, line: &Ingredient) -> Vec<String> {
    if line.open.is_none() {
        return line.items.iter().map(|item| item.name.clone()).collect();
    }
    let words = Words::at(about.setting.text, line.span).text;
    let words = words.split([',', '(']).next().unwrap_or(&words).trim_end();
    let mut letters = words.chars();
    vec![
        letters
            .next()
            .into_iter()
            .flat_map(char::to_lowercase)
            .chain(letters)
            .collect(),
    ]
}

fn joined(line: &Ingredient) -> String {
    let names: Vec<String> = line.items.iter().map(|item| item.name.clone()).collect();
    listed(&names)
}

/// Numbers in the method that are neither times nor temperatures nor lengths and were not set.
pub(super) fn numbers(about: &About<'_>) -> Option<Warning> {
    let text = about.setting.text;
    let mut said = Vec::new();
    let mut at = Vec::new();
    for (index, step) in about.recipe.steps.iter().enumerate() {
        for figure in figures(text, step.words.span) {
            if about.splices.touches(figure.span) || is_other(about, figure.span) {
                continue;
            }
            said.push(format!(
                "‘{}’ ({})",
                words_from(text, figure.span, step.words.span),
                steps(&[index])
            ));
            at.push(index);
        }
    }
    if said.is_empty() {
        return None;
    }
    let text = format!(
        "Numbers of the method that stay as written; see whether they should: {}.",
        said.join(", ")
    );
    Some(Warning::at(WarningKind::Left, at, text, "batch"))
}

/// Words after a number that make it a time, a temperature, a length or a size.
const AFTER: [&str; 36] = [
    "minute",
    "minutes",
    "min",
    "mins",
    "hour",
    "hours",
    "h",
    "hr",
    "hrs",
    "second",
    "seconds",
    "sec",
    "secs",
    "day",
    "days",
    "week",
    "weeks",
    "month",
    "months",
    "degree",
    "degrees",
    "c",
    "f",
    "cm",
    "mm",
    "inch",
    "inches",
    "centimetre",
    "centimetres",
    "millimetres",
    "per",
    "percent",
    "litre",
    "quart",
    "am",
    "pm",
];

/// A time, a temperature, a length, a note to the desk, or the number of a step.
fn is_other(about: &About<'_>, figure: Span) -> bool {
    let text = about.setting.text;
    let timed = about
        .recipe
        .operations
        .iter()
        .filter_map(|operation| operation.minutes.as_ref());
    let noted = about.recipe.desk_notes.iter().map(|note| note.words.span);
    if timed
        .map(|minutes| minutes.span)
        .chain(noted)
        .any(|span| span.contains(figure))
    {
        return true;
    }
    let mut at = skip(text, figure.end, &[' ', '-', '‑']);
    if text
        .get(at..)
        .is_some_and(|rest| rest.starts_with(['°', 'º', '%', '"', '″']))
    {
        return true;
    }
    // The lower end of a range: what stands after the upper one tells.
    if matches!(word_at(text, at).to_lowercase().as_str(), "to" | "or") {
        at = skip(text, at + 2, &[' ']);
    }
    at = skip(text, at, &['–', '—', ' ']);
    let next = figures(text, Span::new(at, text.len().min(at + 8)))
        .first()
        .filter(|next| next.span.start == at)
        .copied();
    if let Some(next) = next {
        at = skip(text, next.span.end, &[' ', '-', '‑']);
    }
    let after = word_at(text, at).to_lowercase();
    let before = text.get(..figure.start).unwrap_or("").trim_end().to_lowercase();
    // 'reduced to 3 litres' is an amount; 'a 3 litre pot' is not.
    let named = ["gas", "gas mark", "step", "steps"]
        .iter()
        .any(|word| before.ends_with(word));
    let second =
        before.ends_with(['–', '—', '-']) && before.trim_end_matches(['–', '—', '-']).ends_with(char::is_numeric);
    AFTER.contains(&after.as_str()) || named || second
}

/// The number and the two words after it.
fn words_from(text: &str, figure: Span, step: Span) -> String {
    let rest = Span::new(figure.start, step.end).of(text);
    let sentence = rest
        .find(['.', ',', ';', ')'])
        .filter(|at| *at >= figure.end - figure.start)
        .unwrap_or(rest.len());
    let words: Vec<&str> = rest
        .get(..sentence)
        .unwrap_or(rest)
        .split_whitespace()
        .take(3)
        .collect();
    words.join(" ")
}

/// Amounts of the list that could not be set.
pub(super) fn amounts(about: &About<'_>) -> Option<Warning> {
    let left = lines(about, |outcome| outcome.left);
    (!left.is_empty()).then(|| {
        Warning::plain(
            WarningKind::Left,
            format!("Could not be set and stays as written: {}.", listed(&left)),
            "rounding",
        )
    })
}

/// Weights of cups that are guesses, and volumes of solids without one.
pub(super) fn weights(about: &About<'_>) -> Vec<Warning> {
    let mut all = Vec::new();
    let guessed = lines(about, |outcome| outcome.guessed);
    if !guessed.is_empty() {
        let text = format!(
            "The weight of a cup of it, so cut, is not on record; the weight given is a guess: {}.",
            listed(&guessed)
        );
        all.push(Warning::plain(WarningKind::Weights, text, "rounding"));
    }
    let unweighed = lines(about, |outcome| outcome.unweighed);
    if !unweighed.is_empty() {
        let text = format!(
            "No weight of a cup is on record, so it stays a volume: {}.",
            listed(&unweighed)
        );
        all.push(Warning::plain(WarningKind::Weights, text, "rounding"));
    }
    all
}

/// What rounding moved by more than a tenth.
pub(super) fn rounding(about: &About<'_>) -> Option<Warning> {
    const FAR: f64 = 0.1;
    let moved: Vec<String> = about
        .recipe
        .ingredients
        .iter()
        .zip(about.outcomes)
        .filter(|(_, outcome)| outcome.off.abs() > FAR)
        .map(|(line, outcome)| format!("{} by {:+.0} %", joined(line), outcome.off * 100.0).replace('-', "−"))
        .collect();
    if moved.is_empty() {
        return None;
    }
    let text = format!("Rounding moved more than a tenth: {}.", listed(&moved));
    Some(Warning::plain(WarningKind::Rounding, text, "rounding"))
}

fn lines(about: &About<'_>, wanted: impl Fn(&Outcome) -> bool) -> Vec<String> {
    let pairs = about.recipe.ingredients.iter().zip(about.outcomes);
    pairs
        .filter(|(_, outcome)| wanted(outcome))
        .map(|(line, _)| joined(line))
        .collect()
}
