//! Pots, pans and dishes, and how large they were said to be: 'the big pot. This one's five quarts', 'the ten inch one'.

use potwright_measure::{Amount, Dimension, Unit};

use crate::method::words::{VesselKind, vessel, vessel_of_two};
use crate::token::Token;

use super::numbers;
use super::words::{self, Role};

/// A vessel that was named.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Vessel {
    pub(super) from: usize,
    pub(super) next: usize,
    pub(super) kind: VesselKind,
    /// Its words without article, small: 'big pot'.
    pub(super) name: String,
    /// The noun alone.
    pub(super) noun: String,
    /// 'the', 'my': it was spoken of before.
    pub(super) definite: bool,
}

/// The vessel that is named from this word on, articles left aside.
pub(super) fn at(tokens: &[Token], at: usize) -> Option<Vessel> {
    let article = tokens
        .get(at)
        .is_some_and(|t| t.is_one_of("the a an my that your this our"));
    let definite = article && !tokens.get(at).is_some_and(|t| t.is_any(&["a", "an"]));
    let start = at + usize::from(article);
    let mut index = start;
    while index < start + 4 {
        let (kind, next) = match noun(tokens, index) {
            Some(found) => found,
            None => {
                let describes = tokens.get(index).is_some_and(describes);
                if !describes {
                    return None;
                }
                index += 1;
                continue;
            }
        };
        let spelled = |from: usize| super::mention::text(tokens, from, next);
        return Some(Vessel {
            from: at,
            next,
            kind,
            name: spelled(start),
            noun: spelled(index),
            definite,
        });
    }
    None
}

fn noun(tokens: &[Token], at: usize) -> Option<(VesselKind, usize)> {
    let word = |at: usize| tokens.get(at).map_or("", |t| t.lower.as_str());
    let pair = vessel_of_two(word(at), word(at + 1)).map(|kind| (kind, at + 2));
    let (kind, next) = pair.or_else(|| Some((vessel(word(at))?, at + 1)))?;
    // 'tins of beans', 'a cup of tea', 'bags': packages, not vessels.
    let package = Unit::from_spelling(word(at)).is_some()
        && !word(next).is_empty()
        && (word(next) == "of" || next == at + 1 && word(at).ends_with('s'));
    (!package).then_some((kind, next))
}

fn describes(token: &Token) -> bool {
    words::is(&token.lower, Role::VesselSize)
        || token.class.is(crate::lexicon::Class::KIND)
        || token.is_one_of("black iron cast dry hot clean cold same wider smaller bigger medium shallow wide heavy-bottomed lidded roasting")
}

/// A size said of a vessel: a length or what it holds, and the index after it.
pub(super) fn size(tokens: &[Token], at: usize) -> Option<(Amount, String, usize)> {
    let number = numbers::amount(tokens, at).filter(|number| !number.article)?;
    // 'nine by thirteen'.
    if tokens.get(number.next).is_some_and(|t| t.is("by"))
        && let Some((second, next)) = numbers::one(tokens, number.next + 1)
    {
        let inches = second.to_f64() < 20.0;
        let unit = if inches { "inch" } else { "cm" };
        let words = format!(
            "{} by {} {unit}",
            potwright_measure::fractions::cook(number.amount.low),
            potwright_measure::fractions::cook(second)
        );
        let named = tokens
            .get(next)
            .is_some_and(|t| t.is_any(&["inch", "inches", "centimetre", "cm"]));
        return Some((number.amount, words, next + usize::from(named)));
    }
    let unit_word = tokens.get(number.next)?.lower.as_str();
    let shown = potwright_measure::fractions::cook(number.amount.low);
    let length = matches!(
        unit_word,
        "inch" | "inches" | "centimetre" | "centimetres" | "centimeter" | "centimeters" | "cm"
    );
    if length {
        let unit = if unit_word.starts_with("inch") { "inch" } else { "cm" };
        return Some((number.amount, format!("{shown} {unit}"), number.next + 1));
    }
    let unit = Unit::from_spelling(unit_word).filter(|unit| unit.dimension() == Dimension::Volume)?;
    matches!(unit, Unit::Litre | Unit::Quart | Unit::Pint | Unit::Gallon).then(|| {
        (
            number.amount,
            format!("{shown} {}", unit.written(number.amount.low)),
            number.next + 1,
        )
    })
}
