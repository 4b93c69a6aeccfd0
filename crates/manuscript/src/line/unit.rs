//! Units and lengths as words of a line.

use potwright_measure::{Dimension, Unit};

use super::Line;
use crate::Size;
use crate::lexicon::Class;
use crate::number::{self, Counted};
use crate::token::{Gap, Kind, Token};

/// The first words of units that are written in two.
pub(super) const OPEN_TWO_WORDS: &str = "fl fluid liquid tea table dessert salt wine breakfast pound hand thumb";

/// A unit in one or two words at this token, and the index after it.
pub(crate) fn unit(tokens: &[Token], at: usize) -> Option<(Unit, usize)> {
    let first = tokens.get(at).filter(|t| t.is_word() || t.sign() == Some('#'))?;
    let stop = |index: usize| {
        tokens
            .get(index)
            .is_some_and(|t| t.sign() == Some('.') && t.gap == Gap::None)
    };
    let after = at + 1 + usize::from(stop(at + 1));
    // '2# beef' weighs two pounds; '1 #10 can' is a size of can.
    if first.sign() == Some('#') {
        let weighs = first.gap == Gap::None && tokens.get(after).is_some_and(|t| t.number().is_none());
        return weighs.then_some((Unit::Pound, after));
    }
    let two = tokens
        .get(after)
        .filter(|t| t.is_word() && t.gap <= Gap::Space && first.is_one_of(OPEN_TWO_WORDS));
    if let Some(second) = two
        && let Some(unit) = Unit::from_spelling(&format!("{} {}", first.text, second.text))
    {
        return Some((unit, after + 1 + usize::from(stop(after + 1))));
    }
    // 'bun' is bread before it is a bunch.
    if first.is_any(&["bun", "lit", "mil", "slug", "curl", "curls", "pack"]) && first.class.is(Class::FOOD) {
        return None;
    }
    Some((Unit::from_spelling(first.text)?, after))
}

/// A unit of mass or volume, a hyphen before it allowed: 'g', '-oz'.
pub(super) fn measure_unit(tokens: &[Token], at: usize) -> Option<(Unit, usize)> {
    let at = at + usize::from(tokens.get(at).is_some_and(Token::is_dash));
    let (unit, next) = unit(tokens, at)?;
    (unit.dimension() != Dimension::Piece).then_some((unit, next))
}

/// Units that are packages with a size of their own.
pub(super) fn is_package(unit: Unit) -> bool {
    matches!(
        unit,
        Unit::Can | Unit::Jar | Unit::Bottle | Unit::Packet | Unit::Carton | Unit::Tub | Unit::Bag | Unit::Box
    )
}

/// Whether a food can follow, so that the word before was a unit: '2 cloves garlic' against '2 cloves'.
pub(super) fn continues(line: &Line, next: usize) -> bool {
    let mut at = next;
    while line
        .tokens
        .get(at)
        .is_some_and(|t| matches!(t.kind, Kind::Aside(_)) || t.sign() == Some('.') || t.sign() == Some('+'))
    {
        at += 1;
    }
    match line.tokens.get(at) {
        Some(token) if token.sign() == Some(',') => {
            let plus = line.tokens.get(at + 1).is_some_and(|t| t.is("plus"));
            plus && unit_ahead(line, at + 2)
        }
        Some(token) if token.sign().is_some() => matches!(
            token.sign(),
            Some('/' | '|' | '=' | '-' | '–' | ':' | '“' | '"' | '\'' | '‘' | '*')
        ),
        Some(token) => {
            !token.is_any(&["and", "for", "to", "at", "in", "if", "is", "are"])
                || token.is("to") && unit_ahead(line, at + 1)
                || token.is("and") && added(&line.tokens, at)
        }
        None => false,
    }
}

/// 'a pint and a half', 'a quart and a pint': more of it in the same breath.
fn added(tokens: &[Token], at: usize) -> bool {
    let more = number::amount(tokens, at + 1).and_then(|more| unit(tokens, more.next));
    super::again::and_part(tokens, at).is_some() || more.is_some_and(|(unit, _)| unit.dimension() == Dimension::Volume)
}

pub(super) fn unit_ahead(line: &Line, at: usize) -> bool {
    number::number(&line.tokens, at).is_some_and(|(_, next)| unit(&line.tokens, next).is_some())
}

/// The size a word of size says.
pub(crate) fn size_word(words: Class) -> Option<Size> {
    if words.is(Class::SMALL) {
        Some(Size::Small)
    } else if words.is(Class::LARGE) {
        Some(Size::Large)
    } else {
        words.is(Class::MEDIUM).then_some(Size::Medium)
    }
}

/// Millimetres of a length in inches, centimetres or millimetres after a number, and the index after it.
pub(super) fn length(tokens: &[Token], counted: Counted) -> Option<(f64, usize)> {
    let at = counted.next + usize::from(tokens.get(counted.next).is_some_and(Token::is_dash));
    let word = tokens.get(at)?;
    let one = match word.lower.as_str() {
        "inch" | "inches" | "inch-thick" | "inch-long" | "in" if !word.is("in") || at > counted.next => 25.4,
        "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" | "cm-thick" | "cm-long" => 10.0,
        "mm" | "millimetre" | "millimetres" => 1.0,
        _ if word.sign() == Some('"') || word.sign() == Some('″') => 25.4,
        _ => return None,
    };
    Some((one, at + 1))
}
