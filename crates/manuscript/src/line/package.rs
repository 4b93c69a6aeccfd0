//! What one of the count is like: its package, its length, small or large.

use potwright_measure::{Amount, Dimension, Exact, Unit};

use super::Line;
use super::again::{aside_quantities, sums};
use super::quantity::{Measured, finish};
use super::unit::{continues, is_package, length, measure_unit, size_word, unit};
use crate::lexicon::Class;
use crate::number::{self, Counted};
use crate::token::{Gap, Kind, Token};
use crate::{Quantity, Size};

/// Packages without a unit of their own, after a weight: '200 g block feta'.
pub(super) const FORMS: &str = "block bar tube punnet ball wedge container pot log joint piece pieces";

/// Sizes and qualifiers between number and unit: '2 heaped tbsp', '2 large handfuls', '2 (25-ounce) cans'.
pub(super) fn qualify(line: &Line, found: &mut Measured, amount: &mut Amount) {
    loop {
        let Some(token) = line.tokens.get(found.next) else {
            return;
        };
        if let Kind::Aside(index) = token.kind {
            if let Some(size) = line.asides.get(index).and_then(aside_length) {
                found.size = Some(size);
                found.next += 1;
                continue;
            }
            let Some(quantity) = line.asides.get(index).and_then(aside_quantity) else {
                return;
            };
            let unit = unit(&line.tokens, found.next + 1).map(|(unit, _)| unit);
            if !unit.is_some_and(|unit| unit.dimension() == Dimension::Piece) && unit.is_some() {
                return;
            }
            found.package = Some(quantity);
            found.next += 1;
            continue;
        }
        // '“good” handfuls'.
        let quote = |at: usize| {
            let sign = line.tokens.get(at).and_then(Token::sign);
            matches!(sign, Some('“' | '”' | '"' | '‘' | '’' | '\''))
        };
        if quote(found.next) && quote(found.next + 2) && unit(&line.tokens, found.next + 3).is_some() {
            (amount.about, found.next) = (true, found.next + 3);
            continue;
        }
        if let Some(next) = numbered(&line.tokens, found.next) {
            found.next = next;
            continue;
        }
        let words = token.class;
        let likened = token.lower.ends_with("-sized") || token.lower.ends_with("-size");
        let before_unit = || unit(&line.tokens, found.next + 1).is_some() || sized_again(line, found.next + 1);
        if words.is(Class::SIZE) && !words.is(Class::FOOD) {
            found.size = found.size.take().or(size_word(words));
        } else if (words.is(Class::ABOUT) && before_unit())
            || token.is_any(&["heaped", "heaping", "scant", "generous", "rounded"])
        {
            amount.about = true;
        } else if !(likened || token.is_any(&["good", "fat", "plump"]) || words.is(Class::EXACTLY) && before_unit()) {
            return;
        }
        found.next += 1;
        let stop = |t: &Token| t.sign() == Some('.') && t.gap == Gap::None;
        found.next += usize::from(words.is(Class::SIZE) && line.tokens.get(found.next).is_some_and(stop));
    }
}

/// 'No. 10 cans', '#2 can': the trade's number for the size of the can, and the index after it.
pub(super) fn numbered(tokens: &[Token], at: usize) -> Option<usize> {
    let stop = |at: usize| {
        tokens
            .get(at)
            .is_some_and(|t| t.sign() == Some('.') && t.gap == Gap::None)
    };
    let sign = tokens.get(at).filter(|t| t.is("no") || t.sign() == Some('#'))?;
    let figure = at + 1 + usize::from(sign.is_word() && stop(at + 1));
    tokens.get(figure).filter(|t| t.number().is_some())?;
    let next = figure + 1 + usize::from(tokens.get(figure + 1).is_some_and(Token::is_dash));
    let (unit, _) = unit(tokens, next)?;
    is_package(unit).then_some(next)
}

pub(super) fn sized_again(line: &Line, at: usize) -> bool {
    line.tokens.get(at).is_some_and(|t| t.class.is(Class::SIZE)) && unit(&line.tokens, at + 1).is_some()
}

/// '2 x 400 g', '1 15-oz', 'two 400 g', 'a 1.5 kg': the size of one, after a count.
pub(super) fn multiple(line: &Line, found: &mut Measured) -> Option<Quantity> {
    let tokens = &line.tokens;
    let times = tokens
        .get(found.next)
        .is_some_and(|t| t.is("x") || matches!(t.sign(), Some('×' | '*')));
    let at = found.next + usize::from(times);
    // 'a large 400 g tin'.
    let at = at + usize::from(tokens.get(at).is_some_and(|t| t.class.is(Class::SIZE)));
    let inner = number::amount(tokens, at).filter(|inner| !inner.article)?;
    let (unit, next) = measure_unit(tokens, inner.next)?;
    found.next = second_system(tokens, next);
    Some(Quantity {
        amount: inner.amount,
        unit: Some(unit),
        span: line.span(at, next)?,
    })
}

/// Over the same size said in the other system: '400g/14oz can'.
pub(super) fn second_system(tokens: &[Token], at: usize) -> usize {
    let stroke = tokens.get(at).is_some_and(|t| matches!(t.sign(), Some('/' | '|')));
    let inner = number::amount(tokens, at + 1).filter(|c| stroke && !c.article);
    inner
        .and_then(|c| measure_unit(tokens, c.next))
        .map_or(at, |(_, next)| next)
}

/// '400 g can', '1-15 oz can': weight, container, index after.
pub(super) fn package(line: &Line, at: usize, counted: Counted) -> Option<(Quantity, Unit, usize)> {
    let tokens = &line.tokens;
    let (weight, next) = measure_unit(tokens, counted.next)?;
    let (amount, next) = sums(tokens, counted.amount, weight, next);
    let second = second_system(tokens, next);
    let second = second + usize::from(matches!(tokens.get(second)?.kind, Kind::Aside(_)));
    let (unit, after) = unit(tokens, second)?;
    let packed = is_package(unit);
    let said = tokens.get(second).is_some_and(|t| t.class.is(Class::CONTAINER)) && packed;
    if !said || !continues(line, after) {
        return None;
    }
    let span = line.span(at, next)?;
    Some((
        Quantity {
            amount,
            unit: Some(weight),
            span,
        },
        unit,
        after,
    ))
}

/// '200 g block of feta': the form adds nothing to the weight.
pub(super) fn drop_form(tokens: &[Token], found: &mut Measured, unit: Unit) {
    let Some(token) = tokens.get(found.next) else { return };
    let more = tokens.get(found.next + 1).is_none_or(|t| t.is_word());
    let piece = token.is_one_of(FORMS);
    if unit.dimension() != Dimension::Piece && piece && more {
        found.next += 1;
    }
}

/// '(2-inch)': a length alone in brackets.
pub(super) fn aside_length(aside: &Line) -> Option<Size> {
    let counted = number::amount(&aside.tokens, 0).filter(|c| !c.article)?;
    let (one, next) = length(&aside.tokens, counted)?;
    let size = Size::Millimetres(counted.amount.low.to_f64() * one, counted.amount.high.to_f64() * one);
    (next == aside.tokens.len()).then_some(size)
}

/// The one amount in brackets, when it is nothing else.
pub(super) fn aside_quantity(aside: &Line) -> Option<Quantity> {
    aside_quantities(aside).into_iter().next()
}

/// 'a 2-inch piece', '1 3-inch stick': the length of each, after the count.
pub(super) fn length_of_one(tokens: &[Token], found: &mut Measured) {
    let Some(inner) = number::amount(tokens, found.next).filter(|c| !c.article) else {
        return;
    };
    let Some((one, next)) = length(tokens, inner) else {
        return;
    };
    let next = next + usize::from(tokens.get(next).is_some_and(Token::is_dash));
    found.size = Some(Size::Millimetres(
        inner.amount.low.to_f64() * one,
        inner.amount.high.to_f64() * one,
    ));
    found.next = next + usize::from(tokens.get(next).is_some_and(|t| t.is_any(&["thick", "long", "square"])));
}

/// '1½-inch cube of pork', '2-inch piece': the number is a size, and one is meant.
pub(super) fn sized(line: &Line, at: usize, counted: Counted, (one, next): (f64, usize)) -> Option<Measured> {
    let tokens = &line.tokens;
    let next = next + usize::from(tokens.get(next).is_some_and(Token::is_dash));
    let next = next + usize::from(tokens.get(next).is_some_and(|t| t.is_any(&["thick", "long", "square"])));
    let (unit, after) =
        unit(tokens, next).filter(|(unit, after)| unit.dimension() == Dimension::Piece && continues(line, *after))?;
    let amount = Amount::single(Exact::ONE);
    let found = Measured {
        quantity: Some(Quantity {
            amount,
            unit: Some(unit),
            span: line.span(at, after)?,
        }),
        size: Some(Size::Millimetres(
            counted.amount.low.to_f64() * one,
            counted.amount.high.to_f64() * one,
        )),
        next: after,
        has_unit: true,
        ..Measured::default()
    };
    Some(finish(line, found))
}
