//! 'or': another food, another amount, or another way to prepare it.

use super::Line;
use super::name::{Context, Named, named, nounlike};
use super::quantity::{Measured, measured};
use crate::lexicon::{Class, class};
use crate::token::{Kind, Token};
use crate::{Alternative, Item};

/// Where the words of a segment are cut at 'or' between foods; `None` when there is no such 'or'.
pub(crate) fn split(words: &[&Token]) -> Option<usize> {
    let at = words.iter().position(|t| t.is("or") || t.sign() == Some('/'))?;
    let (left, right) = (&words[..at], &words[at + 1..]);
    let slash = words[at].sign().is_some();
    let noun = left.iter().any(|t| nounlike(t))
        || left
            .last()
            .is_some_and(|t| t.class.is(Class::KIND | Class::OIL | Class::BOUGHT));
    let right_noun = right.iter().any(|t| nounlike(t)) || right.first().is_some_and(|t| t.number().is_some());
    // 'minced or pressed' after the noun is work, not food.
    let works = left
        .last()
        .is_some_and(|t| t.class.is(Class::PREPARED) && !t.class.is(Class::BOUGHT | Class::FOOD))
        && right
            .first()
            .is_some_and(|t| t.class.is(Class::PREPARED | Class::MANNER));
    let more = right.first().is_some_and(|t| t.is_any(&["more", "so", "less", "to"]));
    (noun && right_noun && !works && !more && !(slash && right.first().is_some_and(|t| t.number().is_some())))
        .then_some(at)
}

/// The words of the left food, with the head it shares with the right one: '**red** or white **wine**'.
pub(crate) fn with_shared_head<'a, 't>(left: &[&'a Token<'t>], right: &[&'a Token<'t>]) -> Vec<&'a Token<'t>> {
    let mut words = left.to_vec();
    let (Some(last), Some(head)) = (left.last(), end_noun(right)) else {
        return words;
    };
    let kind = last.class;
    let carrier = head.class.is(Class::CARRIER);
    let describes = kind.is(Class::KIND | Class::BOUGHT) && !kind.is(Class::FOOD);
    let pressed = head.is("oil") && kind.is(Class::OIL);
    let stock = head.is_any(&["stock", "broth", "bouillon"])
        && !last.is_any(&["water", "wine", "stock", "broth", "milk", "cider"]);
    let two = right.iter().filter(|t| t.is_word()).count() > 1;
    // 'the neck or scrag of mutton': two parts of one animal.
    let of = right.iter().position(|t| t.is("of")).filter(|of| *of > 0);
    if let Some(of) = of.filter(|of| kind.is(Class::PART) && right[of - 1].class.is(Class::PART)) {
        let used = named("", right, Context::default()).map_or(right.len(), |n| n.used);
        words.extend(right[of..used.max(of)].iter().copied());
        return words;
    }
    if two && describes && (carrier || !nounlike(last)) {
        // 'hot or sweet Italian sausage': all but the kind that is changed.
        let used = named("", right, Context::default()).map_or(right.len(), |n| n.used);
        words.extend(right[1..used.max(1)].iter().copied().filter(|t| t.is_word()));
    } else if two && (pressed || stock) {
        words.push(head);
    }
    words
}

/// The last noun of a name, before what follows it.
fn end_noun<'a, 't>(words: &[&'a Token<'t>]) -> Option<&'a Token<'t>> {
    let used = named("", words, Context::default()).map_or(words.len(), |n| n.used);
    words.get(..used)?.iter().rev().copied().find(|t| t.is_word())
}

/// The foods after 'or', each with its own amount if it has one. `own` is the food they may replace.
pub(crate) fn alternatives(line: &Line, from: usize, to: usize, own: &Item) -> Vec<Alternative> {
    let mut found: Vec<Alternative> = Vec::new();
    let mut shared: Option<Measured> = None;
    let mut at = from;
    while at < to {
        let next = (at..to)
            .find(|i| line.tokens[*i].is("or") || matches!(line.tokens[*i].sign(), Some(',' | ';' | '/')))
            .unwrap_or(to);
        if next > at {
            let measure = measured(line, at, false).filter(|m| m.next <= next && (m.has_unit || !m.implied));
            let start = measure.as_ref().map_or(at, |m| m.next);
            let words: Vec<&Token> = plain(&line.tokens[start..next]);
            let packed = measured(line, at, true).filter(|m| m.next >= next && m.has_unit && !own.name.is_empty());
            if let Some(packed) = packed {
                // 'or one 400 g tin': the same food by the tin.
                let quantity = packed.quantity;
                found.push(Alternative {
                    item: own.clone(),
                    quantity,
                });
            } else if let Some(item) = item(line, &words, own, measure.is_some()) {
                if measure.is_some() {
                    shared = measure;
                }
                let quantity = shared.as_ref().and_then(|m| m.quantity);
                found.push(Alternative { item, quantity });
            }
        }
        at = next + 1;
    }
    found
}

fn item(line: &Line, words: &[&Token], own: &Item, measured: bool) -> Option<Item> {
    let words: Vec<&Token> = words
        .iter()
        .copied()
        .skip_while(|t| {
            t.is_one_of(
                "any other another similar else even use just a an the some preferably ideally like such as e.g \
                either additional",
            ) || t.sign().is_some()
        })
        .collect();
    let nouns = words.iter().any(|t| nounlike(t));
    if !nouns {
        // 'or 1 tsp dried', 'red is fine': the same food in another state or kind.
        let state: Vec<String> = words
            .iter()
            .filter(|t| t.class.is(Class::STATE))
            .map(|t| t.lower.to_string())
            .collect();
        let kind: Vec<&&Token> = words.iter().filter(|t| t.class.is(Class::KIND)).collect();
        if state.is_empty() && kind.is_empty() {
            return (measured && words.is_empty()).then(|| own.clone()).filter(|_| false);
        }
        let head = own.name.rsplit(' ').next().unwrap_or(&own.name);
        let name = kind
            .first()
            .map_or(own.name.clone(), |kind| format!("{} {head}", kind.lower));
        let span = words.first()?.span;
        return Some(Item { name, state, span });
    }
    let Named { item, .. } = named(line.text, &words, Context::default())?;
    let last = item.name.rsplit(' ').next().unwrap_or("");
    let prepared = class(last).is(Class::PREPARED) && !class(last).is(Class::FOOD);
    (!prepared).then_some(item)
}

/// The tokens without those in brackets.
pub(crate) fn plain<'a, 't>(tokens: &'a [Token<'t>]) -> Vec<&'a Token<'t>> {
    tokens.iter().filter(|t| !matches!(t.kind, Kind::Aside(_))).collect()
}
