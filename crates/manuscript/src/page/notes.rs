//! Notes to the desk: what stands in square brackets.

use crate::Span;
use crate::lexicon::Class;

/// A note with its brackets, and the words between them.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) struct Note {
    pub(crate) outer: Span,
    pub(crate) inner: Span,
}

/// No note is longer, in bytes: a bracket left open must not swallow a page.
const LONGEST: usize = 400;

/// The notes of a page in order. Check boxes, brackets within round brackets and bare amounts are none.
pub(crate) fn notes(text: &str) -> Vec<Note> {
    let mut found = Vec::new();
    let mut depth = 0_usize;
    let mut passed = 0;
    for (at, sign) in text.match_indices(['(', ')', '[', '\n']) {
        match sign {
            "(" => depth += 1,
            ")" => depth = depth.saturating_sub(1),
            "\n" => depth = 0,
            _ if depth == 0 && at >= passed => {
                if let Some(note) = note(text, at) {
                    passed = note.outer.end;
                    found.push(note);
                }
            }
            _ => {}
        }
    }
    found
}

fn note(text: &str, at: usize) -> Option<Note> {
    let near = text.as_bytes().get(at..text.len().min(at + LONGEST))?;
    let length = near.iter().position(|b| *b == b']')?;
    let inner = Span::new(at + 1, at + length);
    let words = inner.of(text);
    let paragraphs = words.contains("\n\n") || words.contains("\n\r") || words.contains("\r\r");
    let link = text[at + length + 1..].starts_with('(');
    let check_box = words.trim().is_empty() || words.trim().eq_ignore_ascii_case("x");
    if paragraphs || link || check_box || amount_alone(text, inner) {
        return None;
    }
    Some(Note {
        outer: Span::new(at, at + length + 1),
        inner,
    })
}

/// '[55 grams]' says an amount again; '[28 cm pot]' is a note.
fn amount_alone(text: &str, inner: Span) -> bool {
    let line = crate::line::Line::new(text, inner);
    let about = line
        .tokens
        .first()
        .is_some_and(|t| t.class.is(Class::ABOUT) || t.number().is_some());
    about && !crate::line::aside_quantities(&line).is_empty()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn notes_are_found_and_other_brackets_are_not() {
        let inner = |text: &str| {
            notes(text)
                .iter()
                .map(|n| n.inner.of(text).to_owned())
                .collect::<Vec<_>>()
        };
        assert_eq!(
            inner("Simmer. [28 cm pot, lid ajar] Stir. [show]"),
            ["28 cm pot, lid ajar", "show"]
        );
        assert!(inner("[ ] 2 leeks\n[x] salt").is_empty());
        assert!(inner("chillies (2 ounces [55 grams])").is_empty());
        assert!(inner("chillies, 2 ounces [55 grams]").is_empty());
        assert!(inner("left open [ for ever").is_empty());
        assert!(inner("[a\n\nb]").is_empty());
    }
}
