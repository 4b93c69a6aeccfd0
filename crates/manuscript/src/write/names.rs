//! Names of foods in the other market: courgette and zucchini are one food.

use super::style::Names;

/// British name, American name, source; of each pair one food.
const TABLE: &str = include_str!("../../data/market_names.tsv");

/// The rows of the table: British, American.
fn rows() -> impl Iterator<Item = (&'static str, &'static str)> {
    TABLE
        .lines()
        .filter(|row| !row.starts_with('#'))
        .skip(1)
        .filter_map(|row| {
            let mut cells = row.split('\t');
            Some((cells.next()?, cells.next()?))
        })
}

/// The text with the names of one market.
pub(super) fn renamed(text: &str, names: Names) -> String {
    let pairs: Vec<(&str, &str)> = match names {
        Names::AsTyped => return text.to_owned(),
        Names::Uk => rows().map(|(uk, us)| (us, uk)).collect(),
        Names::Us => rows().collect(),
    };
    let mut out = String::with_capacity(text.len());
    let mut before = ' ';
    let mut at = 0;
    while let Some(letter) = text.get(at..).and_then(|rest| rest.chars().next()) {
        let found = if before.is_alphanumeric() {
            None
        } else {
            longest(text, at, &pairs)
        };
        let (typed, says) = found.unwrap_or((letter.len_utf8(), ""));
        let typed_words = text.get(at..at + typed).unwrap_or("");
        let capital = letter.is_uppercase();
        match says {
            "" => out.push_str(typed_words),
            says if capital => out.push_str(&large(says)),
            says => out.push_str(says),
        }
        before = typed_words.chars().next_back().unwrap_or(' ');
        at += typed;
    }
    out
}

/// The longest name that stands here as whole words: its length in bytes, and the other name.
fn longest<'p>(text: &str, at: usize, pairs: &[(&str, &'p str)]) -> Option<(usize, &'p str)> {
    let stands = |name: &str| {
        let here = text
            .get(at..at + name.len())
            .is_some_and(|here| here.eq_ignore_ascii_case(name));
        let ends = text.get(at + name.len()..).and_then(|rest| rest.chars().next());
        here && !ends.is_some_and(|next| next.is_alphanumeric() || next == '-')
    };
    let found = pairs.iter().filter(|(name, _)| stands(name));
    let (name, other) = found.max_by_key(|(name, _)| name.len())?;
    Some((name.len(), other))
}

fn large(word: &str) -> String {
    let mut letters = word.chars();
    letters
        .next()
        .map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}
