//! Places in the writer's text.

use serde::{Deserialize, Serialize};

/// A half-open range of bytes of the text that was read, always on character boundaries.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct Span {
    /// First byte.
    pub start: usize,
    /// One past the last byte.
    pub end: usize,
}

impl Span {
    /// From `start` up to, not including, `end`.
    #[must_use]
    pub const fn new(start: usize, end: usize) -> Self {
        Span { start, end }
    }

    /// The words at this place; empty if the span does not fit the text.
    #[must_use]
    pub fn of(self, text: &str) -> &str {
        text.get(self.start..self.end).unwrap_or("")
    }

    /// Whether `other` lies wholly inside.
    #[must_use]
    pub const fn contains(self, other: Span) -> bool {
        self.start <= other.start && other.end <= self.end
    }

    /// The smallest span that holds both.
    #[must_use]
    pub fn join(self, other: Span) -> Span {
        Span::new(self.start.min(other.start), self.end.max(other.end))
    }
}

/// Some of the writer's words and where they stand.
#[derive(Clone, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Words {
    /// The words, white space folded to single spaces.
    pub text: String,
    /// Where they stand.
    pub span: Span,
}

impl Words {
    /// The words of a text at a place, white space folded to single spaces.
    #[must_use]
    pub fn at(text: &str, span: Span) -> Words {
        let words: Vec<&str> = span.of(text).split_whitespace().collect();
        Words {
            text: words.join(" "),
            span,
        }
    }
}
