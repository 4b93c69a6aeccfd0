//! Lines whose amount stands after the noun, and lines with a heading in front.

use super::Line;
use super::quantity::{Measured, measured};
use crate::token::{Gap, Kind, Token};

/// Takes 'TOPPINGS:' off the front of the line; 'olive oil: 3 tbsp' is no heading.
pub(crate) fn label(line: &mut Line) -> Option<crate::Span> {
    let colon = line.tokens.iter().take(7).position(|t| t.sign() == Some(':'))?;
    let words = &line.tokens[..colon];
    let named = colon > 0 && words.iter().all(|t| t.is_word());
    let rest = line.tokens.len() - colon - 1;
    let amount_only = measured(line, colon + 1, true).is_some_and(|m| ends(line, m.next));
    let each = words.last().is_some_and(|t| t.is("each"));
    if !named || rest == 0 || amount_only || each {
        return None;
    }
    let span = line.span(0, colon)?;
    line.tokens.drain(..=colon);
    Some(span)
}

/// Puts an amount that follows its noun in front: 'butter – 20 g, cold', 'Salt' and 8 g in the next column, 'Aitchbone, weighing 5 lbs'.
pub(crate) fn amount_first(line: &mut Line) {
    if let Some(wide) = column(line) {
        move_front(line, wide.0, wide.1);
        return;
    }
    if measured(line, 0, false).is_some() {
        return;
    }
    for at in 1..line.tokens.len() {
        let token = &line.tokens[at];
        let dash = token.is_dash() && token.gap > Gap::None;
        let sign = dash
            || matches!(token.sign(), Some(':' | ',' | '=' | '…'))
            || token.is("weighing")
            || token.sign() == Some('.');
        let start = if sign { at + 1 } else { at };
        let direct = token.number().is_some() || (dash && !sign);
        if !(sign || direct) {
            continue;
        }
        let Some(found) = measured(line, start, true).filter(|m| good(m, sign)) else {
            continue;
        };
        if ends(line, found.next) {
            move_front(line, at, found.next);
            return;
        }
        if direct {
            return;
        }
    }
}

/// Bare numbers without a unit are taken for amounts only after a sign.
fn good(found: &Measured, sign: bool) -> bool {
    let piece = found.open.is_none() && (found.has_unit || !found.implied);
    piece && (sign || found.has_unit || found.quantity.is_some())
}

/// Whether nothing of the noun can follow: the end, a comma, brackets.
fn ends(line: &Line, at: usize) -> bool {
    match line.tokens.get(at) {
        None => true,
        Some(token) => {
            matches!(token.sign(), Some(',' | ';'))
                || token.gap == Gap::Wide
                || matches!(token.kind, Kind::Aside(_))
                || token.is_any(&["each", "ea", "optional", "pcs", "pc", "or", "plus"])
        }
    }
}

/// A table's cell that holds an amount alone, when the first cell does not: its first token and the one after it.
fn column(line: &Line) -> Option<(usize, usize)> {
    let cell = |token: &Token| token.gap == Gap::Wide;
    let mut starts =
        (1..line.tokens.len()).filter(|at| cell(&line.tokens[*at]) || line.tokens[*at].sign() == Some('|'));
    let first = starts.next()?;
    if measured(line, 0, false).is_some_and(|m| m.next >= first) {
        return None;
    }
    std::iter::once(first).chain(starts).find_map(|at| {
        let start = at + usize::from(line.tokens[at].sign() == Some('|'));
        let next = match measured(line, start, true) {
            Some(found) => found.next,
            None => return None,
        };
        let last = next + usize::from(line.tokens.get(next).is_some_and(count_word));
        let done = line
            .tokens
            .get(last)
            .is_none_or(|t| cell(t) || matches!(t.sign(), Some('|' | ',')) || matches!(t.kind, Kind::Aside(_)));
        done.then_some((at, last))
    })
}

fn count_word(token: &Token) -> bool {
    token.is_any(&["ea", "each", "pcs", "pc", "no", "nos", "whole", "x"])
}

/// Moves the tokens of an amount to the front; a sign that stood before them goes.
fn move_front(line: &mut Line, at: usize, next: usize) {
    let mut amount: Vec<Token> = line.tokens.drain(at..next).collect();
    while amount
        .first()
        .is_some_and(|t| (t.sign().is_some() && t.sign() != Some('~')) || t.is("weighing"))
    {
        amount.remove(0);
    }
    if at > 0
        && line
            .tokens
            .get(at - 1)
            .is_some_and(|t| matches!(t.sign(), Some('.' | '…' | ':' | '×')) || t.is("x"))
    {
        line.tokens.remove(at - 1);
    }
    if amount.last().is_some_and(|token| count_word(token) && !token.is("x")) {
        amount.pop();
    }
    if let Some(token) = line.tokens.first_mut() {
        token.gap = Gap::Space;
    }
    amount.append(&mut line.tokens);
    line.tokens = amount;
}
