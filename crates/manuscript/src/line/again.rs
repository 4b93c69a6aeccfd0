//! Amounts in two parts and amounts said twice: '1 cup plus 2 tbsp', '4 oz / 115 g', '1 cup (240 ml)'.

use potwright_measure::{Amount, Dimension, Exact, Measures, Unit};

use super::Line;
use super::quantity::Measured;
use super::unit::{continues, is_package, measure_unit, unit};
use crate::Quantity;
use crate::number;
use crate::token::{Gap, Kind, Token};

/// '2 cups to 3 cups', '200 g-250 g': the upper end, when the unit is the same.
pub(super) fn unit_again(tokens: &[Token], at: usize, first: Unit) -> Option<(Exact, usize)> {
    let joins = tokens.get(at).is_some_and(|t| t.is_dash() || t.is_any(&["to", "or"]));
    let (high, next) = number::number(tokens, at + 1).filter(|_| joins)?;
    let (second, next) = unit(tokens, next)?;
    (second == first).then_some((high, next))
}

/// '4 tbsp plus 1 tsp', '1 lb 4 oz', '1 cup and 2 tablespoons': one amount in the first unit.
pub(super) fn sums(tokens: &[Token], mut amount: Amount, first: Unit, mut next: usize) -> (Amount, usize) {
    while let Some((more, after)) = addend(tokens, next, first) {
        let (Some(low), Some(high)) = (amount.low.checked_add(more), amount.high.checked_add(more)) else {
            break;
        };
        amount = Amount { low, high, ..amount };
        next = after;
    }
    (amount, next)
}

/// 'a dash or two of', 'a blade or two of mace': the upper end, and the index of the 'of'.
pub(super) fn or_more(tokens: &[Token], at: usize) -> Option<(Exact, usize)> {
    let or = tokens.get(at).is_some_and(|t| t.is("or"));
    let (high, next) = number::number(tokens, at + 1).filter(|_| or)?;
    tokens.get(next).is_some_and(|t| t.is("of")).then_some((high, next))
}

/// 'a pint and a half of', '2 cups and three-quarters': a part of the unit that was just named.
pub(crate) fn and_part(tokens: &[Token], at: usize) -> Option<(Exact, usize)> {
    let second = tokens
        .get(at + 1)
        .filter(|_| tokens[at].is("and") || tokens[at].sign() == Some('&'))?;
    let spoken = number::is_article(second) || second.text.contains('-') || second.number().is_some();
    let (part, next) = number::number(tokens, at + 1).filter(|(part, _)| spoken && *part < Exact::ONE)?;
    let goes_on = tokens
        .get(next)
        .is_none_or(|t| t.sign().is_some() || t.is_word() && unit(tokens, next).is_none());
    goes_on.then_some((part, next))
}

pub(super) fn addend(tokens: &[Token], at: usize, first: Unit) -> Option<(Exact, usize)> {
    // '1 tablespoon, plus 2 teaspoons, vinegar' stands between commas.
    let comma = tokens.get(at)?.sign() == Some(',') && tokens.get(at + 1).is_some_and(|t| t.is("plus"));
    let at = at + usize::from(comma);
    let joins = tokens.get(at)?.is_any(&["plus", "and"]) || matches!(tokens.get(at)?.sign(), Some('+' | '&'));
    let start = at + usize::from(joins);
    let one = tokens.get(start).filter(|t| joins && number::is_article(t));
    let counted = number::number(tokens, start).or(one.map(|_| (Exact::ONE, start + 1)));
    let (number, next) = counted?;
    let (second, next) = unit(tokens, next)?;
    let size = |unit: Unit| unit.mass(Measures::Us).or_else(|| unit.volume(Measures::Us));
    let like = second.dimension() == first.dimension() && first.dimension() != Dimension::Piece;
    let smaller = like && second != first && size(second)? < size(first)?;
    // 'three pounds four ounces', '1 qt 1 cup': side by side, but not in columns side by side.
    let beside = tokens.get(start).is_some_and(|t| t.gap < Gap::Wide);
    let belongs = smaller && (joins || beside);
    let closes = comma && tokens.get(next).is_some_and(|t| t.sign() == Some(','));
    let next = next + usize::from(closes);
    // A noun, the end of the line or the next column.
    let ends = tokens.get(next).is_none_or(|t| {
        let noun = t.is_word() && !t.is_any(&["plus", "or"]);
        noun || t.gap == Gap::Wide || matches!(t.kind, Kind::Aside(_)) || matches!(t.sign(), Some(',' | ';'))
    });
    if !belongs || !ends {
        return None;
    }
    Some((number.checked_mul(size(second)?.checked_div(size(first)?)?)?, next))
}

/// '/ 115 g', 'or 1 kg', '(240 ml)' directly after the unit: the amount said again.
pub(super) fn said_again(line: &Line, found: &mut Measured, first: Unit) {
    loop {
        let Some(token) = line.tokens.get(found.next) else {
            return;
        };
        if let Kind::Aside(index) = token.kind {
            let quantity = line
                .asides
                .get(index)
                .map(aside_quantities)
                .filter(|all| !all.is_empty());
            let Some(quantities) = quantity else { return };
            if is_package(first) && found.package.is_none() {
                found.package = quantities.first().copied();
            } else {
                found.also.extend(quantities);
            }
            found.next += 1;
            continue;
        }
        if !matches!(token.sign(), Some('/' | '|' | '=')) && !token.is("or") {
            return;
        }
        let Some(inner) = number::amount(&line.tokens, found.next + 1).filter(|c| !c.article) else {
            return;
        };
        let Some((unit, next)) = measure_unit(&line.tokens, inner.next) else {
            return;
        };
        let (amount, next) = sums(&line.tokens, inner.amount, unit, next);
        if unit == first || token.is("or") && !continues(line, next) {
            return;
        }
        let Some(span) = line.span(found.next + 1, next) else {
            return;
        };
        found.also.push(Quantity {
            amount,
            unit: Some(unit),
            span,
        });
        found.next = next;
    }
}

/// The amounts in brackets when the brackets hold amounts alone: '(about 2 ounces [55 grams])', '(1 lb/450 g)'.
pub(crate) fn aside_quantities(aside: &Line) -> Vec<Quantity> {
    let mut found = Vec::new();
    let mut at = 0;
    while at < aside.tokens.len() {
        let token = &aside.tokens[at];
        if let Kind::Aside(index) = token.kind {
            found.extend(aside.asides.get(index).map(aside_quantities).unwrap_or_default());
            at += 1;
            continue;
        }
        let joins = matches!(token.sign(), Some('/' | ',' | ';' | '=' | '~' | '|' | '.'))
            || token.is_any(&["or", "weighing", "total", "of", "drained", "weight", "in", "all"]);
        if joins && token.sign() != Some('~') {
            at += 1;
            continue;
        }
        let Some(inner) = number::amount(&aside.tokens, at).filter(|c| !c.article) else {
            return Vec::new();
        };
        let Some((unit, next)) = measure_unit(&aside.tokens, inner.next) else {
            return Vec::new();
        };
        let (about, next) =
            number::vaguely(&aside.tokens, next).map_or((inner.amount.about, next), |after| (true, after));
        let Some(span) = aside.span(at, next) else {
            return Vec::new();
        };
        found.push(Quantity {
            amount: Amount { about, ..inner.amount },
            unit: Some(unit),
            span,
        });
        at = next;
    }
    found
}
