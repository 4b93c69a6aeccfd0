//! Amounts without a number: 'a few sprigs', 'a little', 'pinch of salt'.

use potwright_measure::{Amount, Exact, Unit};

use super::Line;
use super::again::{or_more, said_again};
use super::package::qualify;
use super::quantity::{Measured, finish, measured};
use super::unit::{continues, unit};
use crate::lexicon::Class;
use crate::number;
use crate::token::Token;
use crate::{Open, Quantity, Words};

/// Units of which one is meant when no number stands before them.
pub(super) const IMPLIED: &[Unit] = &[
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

/// 'few grains', 'a few', 'several', 'some', 'a little', 'a bit of': an amount left to the cook.
pub(super) fn open(line: &Line, at: usize) -> Option<Measured> {
    let tokens = &line.tokens;
    if let Some(next) = wished(tokens, at) {
        return Some(Measured {
            open: Some(Open {
                words: words(line, at, next)?,
                unit: None,
            }),
            next,
            implied: true,
            has_unit: true,
            ..Measured::default()
        });
    }
    let article = usize::from(tokens.get(at).is_some_and(number::is_article));
    let article = article + usize::from(tokens.get(at + article).is_some_and(|t| t.is_any(&["good", "very"])));
    let word = tokens.get(at + article)?;
    let mut next = at + article + 1;
    let describes = |t: &Token| t.class.is(Class::SIZE | Class::ABOUT | Class::EXACTLY);
    let size_next = next
        + tokens[next.min(tokens.len())..]
            .iter()
            .take_while(|t| describes(t))
            .count();
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
    } else if article > 0 || !word.is_any(&["enough", "some"]) {
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

/// 'As needed   Salt', 'to taste   Pepper': the column of amounts of a card says that there is none.
fn wished(tokens: &[Token], at: usize) -> Option<usize> {
    let is = |at: usize, words: &[&str]| tokens.get(at).is_some_and(|t| t.is_any(words));
    let said = is(at, &["as"]) && is(at + 1, &["needed", "required", "desired", "necessary"])
        || is(at, &["to"]) && is(at + 1, &["taste"]);
    let noun = tokens.get(at + 2).is_some_and(Token::is_word);
    (at == 0 && said && noun).then_some(at + 2)
}

pub(super) fn words(line: &Line, at: usize, next: usize) -> Option<Words> {
    Some(Words::at(line.text, line.span(at, next)?))
}

pub(super) fn loose(tokens: &[Token], at: usize) -> bool {
    let measures = |t: &Token| t.class.is(Class::LOOSE) || fills(t);
    tokens.get(at).is_some_and(measures) && tokens.get(at + 1).is_some_and(|t| t.is("of"))
}

/// 'a thimbleful', 'two panfuls': as much as a thing holds that is no measure.
fn fills(token: &Token) -> bool {
    let ends = ["ful", "fuls", "full", "fulls"];
    let stem = ends.iter().find_map(|end| token.lower.strip_suffix(end));
    stem.is_some_and(|stem| stem.len() > 2) && Unit::from_spelling(token.text).is_none()
}

/// 'a drizzle of oil', 'a good grating of nutmeg'.
pub(super) fn loosely(line: &Line, at: usize, word: usize) -> Option<Measured> {
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
pub(super) fn implied(line: &Line, at: usize, noun_before: bool) -> Option<Measured> {
    let tokens = &line.tokens;
    let mut found = Measured {
        next: at,
        implied: true,
        has_unit: true,
        ..Measured::default()
    };
    let one = Amount::single(Exact::ONE);
    let mut amount = one;
    qualify(line, &mut found, &mut amount);
    let about = amount.about;
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
    let (next, mut amount) = match or_more(tokens, next) {
        Some((high, after)) => (after, Amount::range(amount.low, high).unwrap_or(amount)),
        None => (next, amount),
    };
    amount.about |= about;
    let of = tokens.get(next).is_some_and(|t| t.is("of"));
    let small = tokens.get(found.next).is_some_and(|t| t.text.len() > 2);
    let food = tokens.get(next).is_some_and(|t| t.class.is(Class::FOOD));
    // 'small bunch flat-leaf parsley': only what describes stands between.
    let kinds = tokens[next.min(tokens.len())..]
        .iter()
        .take(3)
        .take_while(|t| t.class.is(Class::KIND | Class::STATE) && !t.class.is(Class::FOOD))
        .count();
    let described = at == 0 && tokens.get(next + kinds).is_some_and(|t| t.class.is(Class::FOOD));
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
    // 'Slice onion' at the front of a line.
    let opens = at == 0
        && food
        && matches!(
            unit,
            Unit::Slice | Unit::Stalk | Unit::Stick | Unit::Head | Unit::Strip | Unit::Can
        );
    // 'Sprig each thyme and parsley'.
    let each = at == 0 && tokens.get(next).is_some_and(|t| t.is("each"));
    let said = opens
        || (of || each) && (IMPLIED.contains(&unit))
        || loosely_named && (food || described || noun_before && !continues(line, next));
    if !small || !said || found.package.is_some() {
        return None;
    }
    found.next = next;
    found.quantity = Some(Quantity {
        amount,
        unit: Some(unit),
        span: line.span(at, next).unwrap_or_default(),
    });
    said_again(line, &mut found, unit);
    Some(finish(line, found))
}
