//! How a food comes and what is done to it before it goes in, as it is said right after its amount.

use crate::lexicon::Class;
use crate::token::Token;

use super::{food, mention, numbers};

/// ', skin on, bone in, chopped': what follows the name on its line; empty when nothing was said.
pub(super) fn said(tokens: &[Token], at: usize) -> String {
    let (mut out, mut next) = (String::new(), at);
    while let Some(after) = food::left_on(tokens, next) {
        out.push_str(&format!(", {}", mention::text(tokens, next, after)));
        next = after;
    }
    out.push_str(&work(tokens, next));
    out
}

/// Work said right after an amount: 'chopped', 'cut in half', 'peeled and cut in half inch cubes'.
fn work(tokens: &[Token], at: usize) -> String {
    const LONGEST: usize = 10;
    let comma = usize::from(tokens.get(at).is_some_and(|t| t.sign() == Some(',')));
    let from = at + comma;
    let starts = tokens
        .get(from)
        .is_some_and(|t| t.class.is(Class::PREPARED) && !t.class.is(Class::FOOD) && !t.is_any(&["left", "that's"]));
    let manner = tokens
        .get(from)
        .is_some_and(|t| t.class.is(Class::MANNER) && t.lower.ends_with("ly"));
    let manner = manner && tokens.get(from + 1).is_some_and(|t| t.class.is(Class::PREPARED));
    if !(starts || manner) {
        return String::new();
    }
    let (mut next, mut end) = (from, from);
    while let Some(token) = tokens.get(next).filter(|_| next < from + LONGEST) {
        let work = token.class.is(Class::PREPARED | Class::SHAPE | Class::MANNER) && !token.class.is(Class::FOOD);
        let between = token.is_any(&[
            "and",
            "in",
            "into",
            "inch",
            "centimetre",
            "about",
            "across",
            "thin",
            "fine",
            "two",
            "half",
            "crosswise",
            "thinly",
        ]) || numbers::one(tokens, next).is_some();
        let into = next > from
            && tokens.get(next - 1).is_some_and(|t| t.is_any(&["in", "into"]))
            && token.is_any(&["half", "two", "three", "four"]);
        let counts = numbers::one(tokens, next).is_some()
            && !tokens
                .get(next.wrapping_sub(1))
                .is_some_and(|t| t.is_any(&["in", "into", "about"]));
        if token.is("mixed") || counts {
            break;
        }
        if work || into {
            end = next + 1;
        } else if !between {
            break;
        }
        next += 1;
    }
    format!(", {}", mention::text(tokens, from, end))
}
