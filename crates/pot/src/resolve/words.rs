//! Looking for words in the writer's words: whole words, any case, hyphens as spaces.

use super::table::{Row, Table};

/// Words in lower case, with everything but letters, figures, points in figures, `/`, `%` and `°` as single spaces,
/// and a space at both ends, so that whole words can be looked for.
pub(super) fn plain(text: &str) -> String {
    let mut out = String::with_capacity(text.len() + 2);
    out.push(' ');
    let mut characters = text.chars().peekable();
    while let Some(c) = characters.next() {
        let figure_point = c == '.' && characters.peek().is_some_and(char::is_ascii_digit);
        if c.is_alphanumeric() || figure_point || matches!(c, '/' | '%' | '°') {
            out.extend(c.to_lowercase());
        } else if !out.ends_with(' ') {
            out.push(' ');
        }
    }
    if !out.ends_with(' ') {
        out.push(' ');
    }
    out
}

/// Whether the words `needle` stand in `hay`, which came from [`plain`].
pub(super) fn has(hay: &str, needle: &str) -> bool {
    // Nearly all that is looked for is plain as it is written.
    if is_plain(needle) {
        return stands(hay.as_bytes(), needle.as_bytes());
    }
    let needle = plain(needle);
    needle.len() > 1 && hay.contains(&needle)
}

/// Whether [`plain`] would add nothing but the spaces at both ends.
fn is_plain(words: &str) -> bool {
    let mut before = b' ';
    for &byte in words.as_bytes() {
        let inner = byte.is_ascii_lowercase() || byte.is_ascii_digit();
        if !(inner || byte == b' ' && before != b' ') {
            return false;
        }
        before = byte;
    }
    before != b' '
}

/// Whether `words` stand between two spaces of `hay`.
fn stands(hay: &[u8], words: &[u8]) -> bool {
    let between = |window: &[u8]| {
        window[0] == b' ' && window[1] == words[0] && window[words.len() + 1] == b' ' && window[1..].starts_with(words)
    };
    hay.windows(words.len() + 2).any(between)
}

/// The row whose `words` stand in `hay`; the longest wins, the first of equals.
pub(super) fn longest<'a>(table: &'a Table, hay: &str) -> Option<Row<'a>> {
    let mut best: Option<Row<'a>> = None;
    for row in table.rows() {
        let words = row.text("words");
        if has(hay, words) && best.is_none_or(|held| words.len() > held.text("words").len()) {
            best = Some(row);
        }
    }
    best
}

/// Singular of an English noun, as far as matching needs it: `potatoes` → `potato`, `leaves` → `leav`.
///
/// Both sides of a comparison go through it, so it need not be right, only the same for one and several.
pub(super) fn stem(word: &str) -> &str {
    for ending in ["oes", "ches", "shes", "sses", "xes"] {
        if word.len() > ending.len() + 1 && word.ends_with(ending) {
            return &word[..word.len() - 2];
        }
    }
    if word.len() > 3 && word.ends_with('s') && !word.ends_with("ss") {
        &word[..word.len() - 1]
    } else {
        word
    }
}

/// Whether two names share a word, plural or not; words of one or two letters do not count.
pub(super) fn share_a_word(one: &str, other: &str) -> bool {
    let (one, other) = (plain(one), plain(other));
    one.split_whitespace()
        .any(|a| a.len() > 2 && other.split_whitespace().any(|b| stem(a) == stem(b)))
}

/// The numbers that stand in the words, in order, each with the word after it.
pub(super) fn numbers(hay: &str) -> Vec<(f64, String)> {
    let mut found = Vec::new();
    let words: Vec<&str> = hay.split_whitespace().collect();
    for (place, word) in words.iter().enumerate() {
        let figures = word.trim_end_matches(|c: char| !c.is_ascii_digit());
        let after = &word[figures.len()..];
        let Some(number) = number(figures) else { continue };
        let unit = if after.is_empty() {
            words.get(place + 1).copied().unwrap_or("")
        } else {
            after
        };
        found.push((number, unit.to_owned()));
    }
    found
}

/// A plain number, a decimal or a fraction.
fn number(figures: &str) -> Option<f64> {
    if let Some((above, below)) = figures.split_once('/') {
        let (above, below): (f64, f64) = (above.parse().ok()?, below.parse().ok()?);
        return (below > 0.0).then_some(above / below);
    }
    let value: f64 = figures.parse().ok()?;
    value.is_finite().then_some(value)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn whole_words_only() {
        let hay = plain("Cut into 2.5-cm dice, not Coloured.");
        assert_eq!(hay, " cut into 2.5 cm dice not coloured ");
        assert!(has(&hay, "not coloured"));
        assert!(!has(&hay, "colour"));
        assert!(has(&hay, "Coloured!") && has(&hay, "2.5-cm") && has(&hay, "cm dice"));
        assert!(!has(&hay, "") && !has(&hay, " ") && !has(&hay, "col") && !has(&hay, "oured"));
    }

    #[test]
    fn numbers_carry_the_word_after_them() {
        assert_eq!(
            numbers(&plain("a 28 cm pot, 5.5l, 1/2 inch")),
            vec![(28.0, "cm".to_owned()), (5.5, "l".to_owned()), (0.5, "inch".to_owned())]
        );
    }

    #[test]
    fn plural_and_singular_meet() {
        assert!(share_a_word("onions", "red onion"));
        assert!(share_a_word("potatoes", "floury potato"));
        assert!(share_a_word("leaves", "bay leaves"));
        assert!(!share_a_word("haddock", "potato"));
    }
}
