//! Numbers in running text and what stands after them.

use potwright_manuscript::Span;
use potwright_measure::{Exact, fractions};

/// A number in figures: `2`, `1.5`, `1 1/2`, `½`.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Figure {
    pub(super) span: Span,
    pub(super) value: Exact,
}

/// All numbers in figures within a place, in order.
pub(super) fn figures(text: &str, span: Span) -> Vec<Figure> {
    let mut found: Vec<Figure> = Vec::new();
    let mut at = span.start;
    while let Some(c) = text.get(at..span.end).and_then(|rest| rest.chars().next()) {
        match c.is_numeric().then(|| figure(text, at, span.end)).flatten() {
            Some(figure) => {
                at = figure.span.end;
                found.push(figure);
            }
            None => at += c.len_utf8(),
        }
    }
    found
}

/// The longest number that starts here.
fn figure(text: &str, start: usize, limit: usize) -> Option<Figure> {
    let rest = text.get(start..limit)?;
    let of_number = |c: char| c.is_numeric() || matches!(c, '.' | '/' | '⁄' | ' ');
    let run = rest.find(|c: char| !of_number(c)).map_or(rest, |end| &rest[..end]);
    // From the longest: '1 1/2' before '1'.
    let ends = run.char_indices().map(|(at, c)| at + c.len_utf8());
    let ends: Vec<usize> = ends.filter(|end| run[..*end].ends_with(char::is_numeric)).collect();
    ends.iter().rev().find_map(|end| {
        let value = fractions::parse(&run[..*end]).ok()?;
        Some(Figure {
            span: Span::new(start, start + end),
            value,
        })
    })
}

/// The figure before this one when the two are the ends of a range or the sides of something: `2–3 cm`, `2 to 3 cm`,
/// `5 x 7 cm`.
pub(super) fn first_of_two(text: &str, figures: &[Figure], index: usize) -> Option<Figure> {
    let here = figures.get(index)?;
    let before = figures.get(index.checked_sub(1)?)?;
    let between = Span::new(before.span.end, here.span.start).of(text);
    matches!(between.trim(), "-" | "–" | "—" | "to" | "or" | "x" | "×" | "by").then_some(*before)
}

/// The word that starts at a place: letters only.
pub(super) fn word_at(text: &str, at: usize) -> &str {
    let rest = text.get(at..).unwrap_or("");
    let end = rest.find(|c: char| !c.is_alphabetic()).unwrap_or(rest.len());
    &rest[..end]
}

/// The place after any of these characters.
pub(super) fn skip(text: &str, at: usize, over: &[char]) -> usize {
    let rest = text.get(at..).unwrap_or("");
    at + rest.len() - rest.trim_start_matches(over).len()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_in_text() {
        let text = "1 1/2 tsp, 2½ cups. Then 12. And 0.5 or 3/4, 2–3 cm; step 4.";
        let shown: Vec<String> = figures(text, Span::new(0, text.len()))
            .iter()
            .map(|f| f.value.to_string())
            .collect();
        assert_eq!(shown, ["3/2", "5/2", "12", "1/2", "3/4", "2", "3", "4"]);
        let found = figures(text, Span::new(0, text.len()));
        assert_eq!(first_of_two(text, &found, 6).map(|f| f.value), Some(Exact::whole(2)));
        assert_eq!(first_of_two(text, &found, 5), None);
        assert_eq!(figures("½½", Span::new(0, 4)).len(), 2);
    }
}
