//! Amount, size, package and unit at the head of an ingredient line.

use potwright_measure::{Amount, Exact, Unit};

use super::Line;
use super::again::{and_part, or_more, said_again, sums, unit_again};
use super::open::{implied, loose, loosely, open};
use super::package::{drop_form, length_of_one, multiple, package, qualify, sized};
use super::unit::{continues, length, unit};
use crate::number;
use crate::token::Token;
use crate::{Open, Quantity, Size};

/// What stands before the food: how much of it.
#[derive(Clone, Debug, Default)]
pub(crate) struct Measured {
    pub(crate) quantity: Option<Quantity>,
    pub(crate) open: Option<Open>,
    pub(crate) also: Vec<Quantity>,
    pub(crate) package: Option<Quantity>,
    pub(crate) size: Option<Size>,
    /// Index of the token after it, 'of' included.
    pub(crate) next: usize,
    /// 'of the': it is taken from something listed.
    pub(crate) of_the: bool,
    /// No number stands there, or only an article.
    pub(crate) implied: bool,
    /// It is more than a number: it has a unit, a package or an open word.
    pub(crate) has_unit: bool,
    /// 'each' stands behind it.
    pub(crate) each: bool,
    /// 'one of flour': the unit is that of the amount before.
    pub(crate) ellipsis: bool,
}

/// The measure at this token; `None` when there is none.
///
/// `noun_before` says that the food has been named already, so that a unit may end the line ('butter – 1 stick').
pub(crate) fn measured(line: &Line, at: usize, noun_before: bool) -> Option<Measured> {
    let tokens = &line.tokens;
    let first = tokens.get(at)?;
    if let Some(found) = open(line, at) {
        return Some(found);
    }
    let Some(counted) = number::amount(tokens, at) else {
        return implied(line, at, noun_before);
    };
    let place = |next: usize| line.span(at, next).unwrap_or(first.span);
    if let Some(size) = length(tokens, counted) {
        return sized(line, at, counted, size);
    }
    let mut found = Measured {
        next: counted.next,
        implied: counted.article,
        ..Measured::default()
    };
    length_of_one(tokens, &mut found);
    found.package = multiple(line, &mut found);
    // '400 g can', 'a 28 oz can': the number is the size of the package.
    let bare = found.package.is_none();
    if let Some((size, unit, next)) = package(line, at, counted).filter(|_| bare) {
        found.package = Some(size);
        (found.has_unit, found.next) = (true, next);
        found.quantity = Some(Quantity {
            amount: Amount::single(Exact::ONE),
            unit: Some(unit),
            span: place(next),
        });
        return Some(finish(line, found));
    }
    let mut amount = counted.amount;
    qualify(line, &mut found, &mut amount);
    match unit(tokens, found.next).filter(|(_, next)| noun_before || continues(line, *next)) {
        Some((unit, next)) => {
            found.next = next;
            with_unit(line, &mut found, amount, unit);
            if let Some(quantity) = &mut found.quantity {
                quantity.span = quantity.span.join(first.span);
            }
        }
        None => {
            ellipsis(tokens, &mut found, counted.article);
            if !noun_before && loose(tokens, found.next) {
                return loosely(line, at, found.next);
            }
            found.quantity = Some(Quantity {
                amount,
                unit: None,
                span: place(found.next),
            });
            found.has_unit = found.package.is_some();
        }
    }
    Some(finish(line, found))
}

/// The amount with the unit that has just been read: ranges and sums in it, and the same amount said again.
fn with_unit(line: &Line, found: &mut Measured, mut amount: Amount, unit: Unit) {
    let tokens = &line.tokens;
    let (from, mut next) = (found.next.saturating_sub(1), found.next);
    let about = amount.about;
    if let Some((high, after)) = unit_again(tokens, next, unit)
        && let Some(range) = Amount::range(amount.low, high)
    {
        (amount, next) = (Amount { about, ..range }, after);
    }
    if let Some((high, after)) = or_more(tokens, next)
        && let Some(range) = Amount::range(amount.low, high)
    {
        (amount, next) = (Amount { about, ..range }, after);
    }
    if let Some(after) = number::vaguely(tokens, next) {
        (amount.about, next) = (true, after);
    }
    if let Some((part, after)) = and_part(tokens, next)
        && let (Some(low), Some(high)) = (amount.low.checked_add(part), amount.high.checked_add(part))
    {
        (amount, next) = (Amount { low, high, ..amount }, after);
    }
    (amount, found.next) = sums(tokens, amount, unit, next);
    found.has_unit = true;
    let span = line.span(from, found.next).unwrap_or_default();
    found.quantity = Some(Quantity {
        amount,
        unit: Some(unit),
        span,
    });
    said_again(line, found, unit);
    drop_form(tokens, found, unit);
}

/// 'a large one of flour', 'one of mustard': the unit was said with the food before.
fn ellipsis(tokens: &[Token], found: &mut Measured, article: bool) {
    let is = |at: usize, word: &str| tokens.get(at).is_some_and(|t| t.is(word));
    let of = |at: usize| is(at, "of") && !is(at + 1, "them");
    if article && is(found.next, "one") && of(found.next + 1) {
        found.next += 1;
        found.ellipsis = true;
    }
    found.ellipsis |= !article && of(found.next);
}

/// 'full', 'of', 'of the', 'worth of', 'each' after the unit.
pub(super) fn finish(line: &Line, mut found: Measured) -> Measured {
    let tokens = &line.tokens;
    let is = |index: usize, words: &[&str]| tokens.get(index).is_some_and(|t| t.is_any(words));
    // An ear of corn is counted as one corn.
    if is(found.next, &["ear", "ears", "cob", "cobs"]) && tokens.get(found.next + 1).is_some_and(Token::is_word) {
        found.next += 1;
    }
    // '½ recipe egg balls', '1 batch of dumplings': that much of what another page makes.
    let made = is(found.next, &["recipe", "recipes", "quantity"]);
    if made && !found.has_unit && tokens.get(found.next + 1).is_some_and(Token::is_word) {
        found.next += 1;
    }
    if is(found.next, &["full"]) && found.has_unit {
        found.next += 1;
    }
    if is(found.next, &["each"]) && !is(found.next + 1, &["of"]) || is(found.next, &["each"]) {
        found.each = true;
        found.next += 1;
        if tokens.get(found.next).is_some_and(|t| t.sign() == Some(':')) {
            found.next += 1;
        }
    }
    if is(found.next, &["worth"]) && is(found.next + 1, &["of"]) {
        found.next += 1;
    }
    if is(found.next, &["of"]) && is(found.next + 1, &["them"]) {
        found.next += 2;
    } else if is(found.next, &["of"]) {
        found.next += 1;
        if is(found.next, &["each"]) {
            found.each = true;
            found.next += 1 + usize::from(is(found.next + 1, &["of"]));
        }
        if is(found.next, &["the", "your", "that", "this"]) {
            // 'of your best oil' is the cook's own store, nothing that the page has named.
            found.of_the = !is(found.next, &["your"]);
            found.next += 1;
        }
    }
    found
}
