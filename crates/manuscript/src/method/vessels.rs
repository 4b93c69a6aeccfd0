//! Vessels and places as the method names them: 'a large, heavy saucepan', 'the slow cooker', 'a sink of iced water'.

use potwright_measure::{Dimension, Unit};

use super::nouns::{is_new_start, names};
use super::phrases::span;
use super::words::{self, VesselKind};
use crate::Span;
use crate::lexicon::{Class, class};
use crate::number::number;
use crate::speech::Speech;
use crate::token::{Token, at, speech_at};

/// A vessel that the method names.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct VesselMention {
    pub(super) span: Span,
    pub(super) kind: VesselKind,
    /// The name without articles, in small letters.
    pub(super) name: String,
    /// The last word, or two when they are one name.
    pub(super) noun: String,
    pub(super) fresh: bool,
}

/// The vessel that begins here, and the index of the token after it.
pub(super) fn vessel(tokens: &[Token], from: usize, to: usize) -> Option<(VesselMention, usize)> {
    let mut start = from;
    let mut fresh = false;
    while start < to
        && (speech_at(tokens, start).is(Speech::ARTICLE) || matches!(at(tokens, start), "another" | "same"))
    {
        fresh |= matches!(at(tokens, start), "a" | "an" | "another");
        start += 1;
    }
    fresh |= matches!(at(tokens, start), "clean" | "separate" | "second" | "fresh");
    let mut index = size_end(tokens, start, to).unwrap_or(start);
    let most = index + 6;
    while index < to && index < most {
        if let Some(next) = size_end(tokens, index, to) {
            index = next;
            continue;
        }
        let token = tokens.get(index)?;
        let comma = token.sign() == Some(',') && index > start && is_adjective(tokens, index - 1);
        if let Some((kind, next)) = vessel_noun(tokens, index, to) {
            let next = of_iced_water(tokens, next, to, kind);
            return Some((mention_of(tokens, start, index, next, kind, fresh), next));
        }
        let food = token.class.is(Class::FOOD) && vessel_noun(tokens, index + 1, to).is_none();
        if !comma && (!names(token) || food || (index > start && is_new_start(tokens, index))) {
            return None;
        }
        index += 1;
    }
    None
}

/// 'a 6-quart Dutch oven', 'a 28 cm pot', 'a 23 x 33 cm dish': the index after the size that stands before the noun.
fn size_end(tokens: &[Token], from: usize, to: usize) -> Option<usize> {
    let mut next = number(tokens, from).filter(|_| from < to)?.1;
    while next < to && (matches!(at(tokens, next), "x" | "by") || tokens.get(next).is_some_and(is_size_sign)) {
        next = number(tokens, next + 1).map_or(next + 1, |(_, after)| after);
    }
    let word = at(tokens, next);
    let length = matches!(word, "cm" | "mm" | "inch" | "inches" | "centimetre" | "centimeter");
    let volume = Unit::from_spelling(word).is_some_and(|unit| unit.dimension() == Dimension::Volume);
    let sized = next < to && (length || volume);
    let dash = usize::from(tokens.get(next + 1).is_some_and(Token::is_dash));
    sized.then_some(next + 1 + dash)
}

fn is_size_sign(token: &Token) -> bool {
    token.is_dash() || matches!(token.sign(), Some('×' | '/'))
}

/// 'a sink of iced water' is one place.
fn of_iced_water(tokens: &[Token], next: usize, to: usize, kind: VesselKind) -> usize {
    let iced = matches!(kind, VesselKind::Sink | VesselKind::Bowl)
        && at(tokens, next) == "of"
        && matches!(at(tokens, next + 1), "iced" | "ice" | "ice-cold")
        && at(tokens, next + 2) == "water";
    if iced && next + 3 <= to { next + 3 } else { next }
}

fn is_adjective(tokens: &[Token], index: usize) -> bool {
    let word = at(tokens, index);
    class(word).is(Class::SIZE)
        || matches!(
            word,
            "large" | "small" | "wide" | "deep" | "heavy" | "big" | "shallow" | "medium"
        )
}

/// A noun for a vessel that ends a phrase at this token.
fn vessel_noun(tokens: &[Token], index: usize, to: usize) -> Option<(VesselKind, usize)> {
    let pair = words::vessel_of_two(at(tokens, index), at(tokens, index + 1));
    let (kind, next) = match pair.filter(|_| index + 1 < to) {
        Some(kind) => (kind, index + 2),
        None => (words::vessel(at(tokens, index))?, index + 1),
    };
    let after = tokens.get(next).filter(|_| next < to);
    // 'pan juices' and 'a 400 g tin of tomatoes' are no vessels; 'pot over a low heat' is one.
    let goes_on = after.is_some_and(|token| {
        names(token) && !is_new_start(tokens, next) && !token.is_any(&["high", "low", "dry", "well"])
    });
    let package = after.is_some_and(|t| t.is("of"))
        && Unit::from_spelling(at(tokens, index)).is_some()
        && !matches!(kind, VesselKind::Bowl | VesselKind::Sink);
    (!goes_on && !package).then_some((kind, next))
}

fn mention_of(
    tokens: &[Token],
    start: usize,
    noun: usize,
    next: usize,
    kind: VesselKind,
    fresh: bool,
) -> VesselMention {
    let name = |from: usize| {
        let words = tokens
            .get(from..next)
            .unwrap_or_default()
            .iter()
            .filter(|t| t.sign().is_none());
        words.map(|t| t.lower.as_str()).collect::<Vec<_>>().join(" ")
    };
    VesselMention {
        span: span(tokens, start, next),
        kind,
        name: name(start),
        noun: name(noun),
        fresh,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::token::tokens;

    #[test]
    fn vessels_with_all_their_words() {
        for (text, expected) in [
            ("a large, heavy saucepan over", Some("large heavy saucepan")),
            ("your widest lidded pan", Some("widest lidded pan")),
            ("the slow cooker", Some("slow cooker")),
            ("a 6-quart Dutch oven over", Some("6 quart dutch oven")),
            ("a 28 cm pot", Some("28 cm pot")),
            ("a large 5-litre pan", Some("large 5 litre pan")),
            ("a 10-inch cast-iron skillet", Some("10 inch cast-iron skillet")),
            ("a 23 x 33 cm baking dish", Some("23 x 33 cm baking dish")),
            ("a 1 litre pan of water", Some("1 litre pan")),
            ("200 ml cream", None),
            ("2 cups pan juices", None),
            ("pot", Some("pot")),
            ("a 400 g tin of peas", None),
            ("the pan juices", None),
            ("the sauce", None),
        ] {
            let found = tokens(text, Span::new(0, text.len()));
            let shown = vessel(&found, 0, found.len()).map(|(v, _)| v.name);
            assert_eq!(shown.as_deref(), expected, "{text}");
        }
    }
}
