//! Amount, size, package and unit at the head of an ingredient line.

use potwright_measure::{Amount, Dimension, Exact, Measures, Unit};

use super::Line;
use crate::lexicon::Class;
use crate::number::{self, Counted};
use crate::token::{Gap, Kind, Token};
use crate::{Open, Quantity, Size, Span, Words};

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

/// Units of which one is meant when no number stands before them.
const IMPLIED: &[Unit] = &[
    Unit::Pinch,
    Unit::Dash,
    Unit::Splash,
    Unit::Knob,
    Unit::Handful,
    Unit::Sprig,
    Unit::Blade,
    Unit::Bunch,
    Unit::Drop,
    Unit::Glug,
    Unit::Thumb,
    Unit::Piece,
    Unit::Bit,
    Unit::Clove,
    Unit::Slice,
    Unit::Can,
    Unit::Stick,
    Unit::Strip,
    Unit::Head,
    Unit::Cup,
    Unit::Packet,
    Unit::Grain,
    Unit::Spoonful,
];

/// Packages without a unit of their own, after a weight: '200 g block feta'.
const FORMS: &str = "block bar tube punnet ball wedge container pot log joint piece pieces";

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
    let mut amount = counted.amount;
    length_of_one(tokens, &mut found);
    let packed = multiple(line, &mut found);
    // '400 g can', 'a 28 oz can': the number is the size of the package.
    if packed.is_none()
        && !counted.article
        && let Some(package) = package(line, at, counted)
    {
        let (package, unit, next) = package;
        found.package = Some(package);
        found.has_unit = true;
        found.next = next;
        let one = Amount {
            low: Exact::ONE,
            high: Exact::ONE,
            about: false,
        };
        found.quantity = Some(Quantity {
            amount: one,
            unit: Some(unit),
            span: place(next),
        });
        return Some(finish(line, found));
    }
    found.package = packed;
    qualify(line, &mut found, &mut amount);
    let unit = unit(tokens, found.next).filter(|(_, next)| noun_before || continues(line, *next));
    if let Some((unit, next)) = unit {
        found.next = next;
        found.has_unit = true;
        let ranged =
            unit_again(tokens, next, unit).and_then(|(high, after)| Some((Amount::range(amount.low, high)?, after)));
        if let Some((range, after)) = ranged {
            (amount, found.next) = (
                Amount {
                    about: amount.about,
                    ..range
                },
                after,
            );
        }
        if let Some(after) = number::vaguely(tokens, found.next) {
            (amount.about, found.next) = (true, after);
        }
        (amount, found.next) = sums(tokens, amount, unit, found.next);
        found.quantity = Some(Quantity {
            amount,
            unit: Some(unit),
            span: place(found.next),
        });
        said_again(line, &mut found, unit);
        drop_form(tokens, &mut found, unit);
    } else {
        let one = tokens.get(found.next).is_some_and(|t| t.is("one"));
        let of =
            |at: usize| tokens.get(at).is_some_and(|t| t.is("of")) && !tokens.get(at + 1).is_some_and(|t| t.is("them"));
        if counted.article && one && of(found.next + 1) {
            found.next += 1;
            found.ellipsis = true;
        }
        found.ellipsis |= !counted.article && of(found.next);
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
    Some(finish(line, found))
}

/// 'full', 'of', 'of the', 'worth of', 'each' after the unit.
fn finish(line: &Line, mut found: Measured) -> Measured {
    let tokens = &line.tokens;
    let is = |index: usize, words: &[&str]| tokens.get(index).is_some_and(|t| t.is_any(words));
    // An ear of corn is counted as one corn.
    if is(found.next, &["ear", "ears", "cob", "cobs"]) && tokens.get(found.next + 1).is_some_and(Token::is_word) {
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
            found.next += 1;
            found.of_the = true;
        }
    }
    found
}

/// Whether a food can follow, so that the word before was a unit: '2 cloves garlic' against '2 cloves'.
fn continues(line: &Line, next: usize) -> bool {
    let mut at = next;
    while line
        .tokens
        .get(at)
        .is_some_and(|t| matches!(t.kind, Kind::Aside(_)) || t.sign() == Some('.') || t.sign() == Some('+'))
    {
        at += 1;
    }
    match line.tokens.get(at) {
        Some(token) if token.sign().is_some() => matches!(
            token.sign(),
            Some('/' | '|' | '=' | '-' | '–' | ':' | '“' | '"' | '\'' | '‘' | '*')
        ),
        Some(token) => {
            !token.is_any(&["and", "for", "to", "at", "in", "if", "is", "are"])
                || token.is("to") && unit_ahead(line, at + 1)
        }
        None => false,
    }
}

fn unit_ahead(line: &Line, at: usize) -> bool {
    number::number(&line.tokens, at).is_some_and(|(_, next)| unit(&line.tokens, next).is_some())
}

/// The first words of units that are written in two.
const OPEN_TWO_WORDS: &str = "fl fluid liquid tea pound hand thumb";

/// A unit in one or two words at this token, and the index after it.
pub(crate) fn unit(tokens: &[Token], at: usize) -> Option<(Unit, usize)> {
    let first = tokens.get(at).filter(|t| t.is_word() || t.sign() == Some('#'))?;
    let stop = |index: usize| {
        tokens
            .get(index)
            .is_some_and(|t| t.sign() == Some('.') && t.gap == Gap::None)
    };
    let after = at + 1 + usize::from(stop(at + 1));
    let two = tokens
        .get(after)
        .filter(|t| t.is_word() && t.gap <= Gap::Space && first.is_one_of(OPEN_TWO_WORDS));
    if let Some(second) = two
        && let Some(unit) = Unit::from_spelling(&format!("{} {}", first.text, second.text))
    {
        return Some((unit, after + 1 + usize::from(stop(after + 1))));
    }
    // 'bun' is bread before it is a bunch.
    if first.is_any(&["bun", "lit", "mil", "slug", "curl", "curls", "gr", "grs", "pack"]) && first.class.is(Class::FOOD)
    {
        return None;
    }
    Some((Unit::from_spelling(first.text)?, after))
}

/// Sizes and qualifiers between number and unit: '2 heaped tbsp', '2 large handfuls', '2 (25-ounce) cans'.
fn qualify(line: &Line, found: &mut Measured, amount: &mut Amount) {
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

fn sized_again(line: &Line, at: usize) -> bool {
    line.tokens.get(at).is_some_and(|t| t.class.is(Class::SIZE)) && unit(&line.tokens, at + 1).is_some()
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

/// '2 x 400 g', '1 15-oz', 'two 400 g', 'a 1.5 kg': the size of one, after a count.
fn multiple(line: &Line, found: &mut Measured) -> Option<Quantity> {
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
fn second_system(tokens: &[Token], at: usize) -> usize {
    let stroke = tokens.get(at).is_some_and(|t| matches!(t.sign(), Some('/' | '|')));
    let inner = number::amount(tokens, at + 1).filter(|c| stroke && !c.article);
    inner
        .and_then(|c| measure_unit(tokens, c.next))
        .map_or(at, |(_, next)| next)
}

/// A unit of mass or volume, a hyphen before it allowed: 'g', '-oz'.
fn measure_unit(tokens: &[Token], at: usize) -> Option<(Unit, usize)> {
    let at = at + usize::from(tokens.get(at).is_some_and(Token::is_dash));
    let (unit, next) = unit(tokens, at)?;
    (unit.dimension() != Dimension::Piece).then_some((unit, next))
}

/// '400 g can', '1-15 oz can': weight, container, index after.
fn package(line: &Line, at: usize, counted: Counted) -> Option<(Quantity, Unit, usize)> {
    let tokens = &line.tokens;
    let (weight, next) = measure_unit(tokens, counted.next)?;
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
            amount: counted.amount,
            unit: Some(weight),
            span,
        },
        unit,
        after,
    ))
}

/// Units that are packages with a size of their own.
fn is_package(unit: Unit) -> bool {
    matches!(
        unit,
        Unit::Can | Unit::Jar | Unit::Bottle | Unit::Packet | Unit::Carton | Unit::Tub | Unit::Bag | Unit::Box
    )
}

/// '2 cups to 3 cups', '200 g-250 g': the upper end, when the unit is the same.
fn unit_again(tokens: &[Token], at: usize, first: Unit) -> Option<(Exact, usize)> {
    let joins = tokens.get(at).is_some_and(|t| t.is_dash() || t.is_any(&["to", "or"]));
    let (high, next) = number::number(tokens, at + 1).filter(|_| joins)?;
    let (second, next) = unit(tokens, next)?;
    (second == first).then_some((high, next))
}

/// '4 tbsp plus 1 tsp', '1 lb 4 oz', '1 cup and 2 tablespoons': one amount in the first unit.
fn sums(tokens: &[Token], mut amount: Amount, first: Unit, mut next: usize) -> (Amount, usize) {
    while let Some((more, after)) = addend(tokens, next, first) {
        let (Some(low), Some(high)) = (amount.low.checked_add(more), amount.high.checked_add(more)) else {
            break;
        };
        amount = Amount { low, high, ..amount };
        next = after;
    }
    (amount, next)
}

fn addend(tokens: &[Token], at: usize, first: Unit) -> Option<(Exact, usize)> {
    let joins = tokens.get(at)?.is_any(&["plus", "and"]) || matches!(tokens.get(at)?.sign(), Some('+' | '&'));
    let (number, next) = number::number(tokens, at + usize::from(joins))?;
    let (second, next) = unit(tokens, next)?;
    let size = |unit: Unit| unit.mass(Measures::Us).or_else(|| unit.volume(Measures::Us));
    let like = second.dimension() == first.dimension() && first.dimension() != Dimension::Piece;
    let smaller = like && second != first && size(second)? < size(first)?;
    // Without a word between them only pounds and ounces stand side by side.
    let belongs = smaller
        && (joins || (first, second) == (Unit::Pound, Unit::Ounce) || (first, second) == (Unit::Kilogram, Unit::Gram));
    let comes_noun = tokens
        .get(next)
        .is_some_and(|t| t.is_word() && !t.is_any(&["plus", "or"]));
    if !belongs || !comes_noun {
        return None;
    }
    Some((number.checked_mul(size(second)?.checked_div(size(first)?)?)?, next))
}

/// '/ 115 g', 'or 1 kg', '(240 ml)' directly after the unit: the amount said again.
fn said_again(line: &Line, found: &mut Measured, first: Unit) {
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
        if unit == first || token.is("or") && !continues(line, next) {
            return;
        }
        let Some(span) = line.span(found.next + 1, next) else {
            return;
        };
        found.also.push(Quantity {
            amount: inner.amount,
            unit: Some(unit),
            span,
        });
        found.next = next;
    }
}

/// '200 g block of feta': the form adds nothing to the weight.
fn drop_form(tokens: &[Token], found: &mut Measured, unit: Unit) {
    let Some(token) = tokens.get(found.next) else { return };
    let more = tokens.get(found.next + 1).is_some_and(|t| t.is_word());
    let piece = token.is_one_of(FORMS);
    if unit.dimension() == Dimension::Mass && piece && more {
        found.next += 1;
    }
}

/// '(2-inch)': a length alone in brackets.
fn aside_length(aside: &Line) -> Option<Size> {
    let counted = number::amount(&aside.tokens, 0).filter(|c| !c.article)?;
    let (one, next) = length(&aside.tokens, counted)?;
    let size = Size::Millimetres(counted.amount.low.to_f64() * one, counted.amount.high.to_f64() * one);
    (next == aside.tokens.len()).then_some(size)
}

/// The one amount in brackets, when it is nothing else.
fn aside_quantity(aside: &Line) -> Option<Quantity> {
    aside_quantities(aside).into_iter().next()
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

/// Millimetres of a length in inches, centimetres or millimetres after a number, and the index after it.
fn length(tokens: &[Token], counted: Counted) -> Option<(f64, usize)> {
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

/// 'a 2-inch piece', '1 3-inch stick': the length of each, after the count.
fn length_of_one(tokens: &[Token], found: &mut Measured) {
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
fn sized(line: &Line, at: usize, counted: Counted, (one, next): (f64, usize)) -> Option<Measured> {
    let tokens = &line.tokens;
    let next = next + usize::from(tokens.get(next).is_some_and(Token::is_dash));
    let next = next + usize::from(tokens.get(next).is_some_and(|t| t.is_any(&["thick", "long", "square"])));
    let (unit, after) =
        unit(tokens, next).filter(|(unit, after)| unit.dimension() == Dimension::Piece && continues(line, *after))?;
    let amount = Amount {
        low: Exact::ONE,
        high: Exact::ONE,
        about: false,
    };
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

/// 'few grains', 'a few', 'several', 'some', 'a little', 'a bit of': an amount left to the cook.
fn open(line: &Line, at: usize) -> Option<Measured> {
    let tokens = &line.tokens;
    let article = usize::from(tokens.get(at).is_some_and(number::is_article));
    let article = article + usize::from(tokens.get(at + article).is_some_and(|t| t.is_any(&["good", "very"])));
    let word = tokens.get(at + article)?;
    let mut next = at + article + 1;
    let mut size_next = next;
    if tokens.get(size_next).is_some_and(|t| t.class.is(Class::SIZE)) {
        size_next += 1;
    }
    // 'a few grindings of pepper'.
    let loose_next = tokens.get(size_next).is_some_and(|t| t.class.is(Class::LOOSE));
    let unit_after = unit(tokens, size_next).filter(|(_, after)| continues(line, *after));
    let mut unit_open = None;
    if word.is_any(&["few", "several"]) || article == 0 && word.is_any(&["some"]) {
        if let Some((unit, after)) = unit_after {
            (unit_open, next) = (Some(unit), after);
        } else if loose_next {
            next = size_next + 1;
        }
    } else if article > 0 && word.is("little") {
        // 'a little milk', not 'a little gem lettuce'.
        if tokens.get(next).is_some_and(|t| t.is("gem")) {
            return None;
        }
        if let Some((unit, after)) = unit_after {
            (unit_open, next) = (Some(unit), after);
        }
    } else if (article > 0 || at == 0) && word.is_any(&["bit", "bits"]) {
        unit_open = Some(Unit::Bit);
    } else if word.is("enough") && article == 0 || article == 0 && word.is("some") {
    } else {
        return None;
    }
    let words = words(line, at, next)?;
    let found = Measured {
        open: Some(Open { words, unit: unit_open }),
        next,
        implied: true,
        has_unit: true,
        ..Measured::default()
    };
    Some(finish(line, found))
}

fn words(line: &Line, at: usize, next: usize) -> Option<Words> {
    Some(Words::at(line.text, line.span(at, next)?))
}

fn loose(tokens: &[Token], at: usize) -> bool {
    tokens.get(at).is_some_and(|t| t.class.is(Class::LOOSE)) && tokens.get(at + 1).is_some_and(|t| t.is("of"))
}

/// 'a drizzle of oil', 'a good grating of nutmeg'.
fn loosely(line: &Line, at: usize, word: usize) -> Option<Measured> {
    let found = Measured {
        open: Some(Open {
            words: words(line, at, word + 1)?,
            unit: None,
        }),
        next: word + 1,
        implied: true,
        has_unit: true,
        ..Measured::default()
    };
    Some(finish(line, found))
}

/// A unit without a number: 'sprig of parsley', 'pinch salt', 'good handful of dill'.
fn implied(line: &Line, at: usize, noun_before: bool) -> Option<Measured> {
    let tokens = &line.tokens;
    let mut found = Measured {
        next: at,
        implied: true,
        has_unit: true,
        ..Measured::default()
    };
    let one = Amount {
        low: Exact::ONE,
        high: Exact::ONE,
        about: false,
    };
    let mut amount = one;
    qualify(line, &mut found, &mut amount);
    if loose(tokens, found.next) {
        return loosely(line, at, found.next);
    }
    if let Some(package) = line
        .tokens
        .get(found.next)
        .filter(|_| found.next > at)
        .and_then(|_| number::amount(tokens, found.next))
    {
        // 'large 400 g tin'.
        return (!package.article && found.next > at)
            .then(|| measured(line, found.next, noun_before))
            .flatten();
    }
    let (unit, next) = unit(tokens, found.next)?;
    let of = tokens.get(next).is_some_and(|t| t.is("of"));
    let small = tokens.get(found.next).is_some_and(|t| t.text.len() > 2);
    let food = tokens.get(next).is_some_and(|t| t.class.is(Class::FOOD));
    let loosely_named = matches!(
        unit,
        Unit::Pinch
            | Unit::Piece
            | Unit::Thumb
            | Unit::Dash
            | Unit::Splash
            | Unit::Knob
            | Unit::Handful
            | Unit::Glug
            | Unit::Sprig
            | Unit::Blade
            | Unit::Bunch
    );
    let said = of && (IMPLIED.contains(&unit)) || loosely_named && (food || noun_before && !continues(line, next));
    if !small || !said || found.package.is_some() {
        return None;
    }
    found.next = next;
    found.quantity = Some(Quantity {
        amount,
        unit: Some(unit),
        span: line.span(at, next).unwrap_or(Span::default()),
    });
    said_again(line, &mut found, unit);
    Some(finish(line, found))
}
