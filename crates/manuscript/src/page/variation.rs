//! Variations: the changes they name, as far as they are understood.

use std::borrow::Cow;

use crate::lexicon::{Class, class, singular};
use crate::line;
use crate::token::{Token, tokens};
use crate::{Change, Ingredient, Recipe, Span, Words};

/// The name of a variation: what stands between 'Variation:' and the first full stop, or before the first colon.
pub(crate) fn name(text: &str, span: Span) -> Option<Words> {
    let body = span.of(text);
    let head = body.char_indices().take(80);
    let stops: Vec<(usize, char)> = head.filter(|(_, c)| matches!(c, ':' | '.' | '\n')).collect();
    let (first, sign) = *stops.first()?;
    let opens = body[..first].to_lowercase().starts_with("varia");
    let (from, to) = match (opens, stops.get(1)) {
        (true, Some((second, _))) => (first + 1, *second),
        (false, _) if sign == ':' => (0, first),
        _ => return None,
    };
    let named = Span::new(span.start + from, span.start + to);
    let words = Words::at(text, named);
    (!words.text.is_empty() && words.text.split(' ').count() <= 8).then_some(words)
}

/// Fills in the changes of every variation.
pub(crate) fn read(text: &str, recipe: &mut Recipe) {
    let mut variations = std::mem::take(&mut recipe.variations);
    for variation in &mut variations {
        let all = tokens(text, variation.words.span);
        for clause in clauses(&all) {
            variation.changes.extend(change(text, clause, recipe));
        }
        dedup(&mut variation.changes);
    }
    recipe.variations = variations;
}

/// The same change said twice ('without cream. Leave out the cream') is one.
fn dedup(changes: &mut Vec<Change>) {
    let mut kept: Vec<Change> = Vec::new();
    for change in changes.drain(..) {
        let out = |index: usize| {
            kept.iter()
                .any(|k| matches!(k, Change::LeaveOut(i) | Change::Swap { ingredient: i, .. } if *i == index))
        };
        let again = match &change {
            Change::LeaveOut(index) => out(*index),
            _ => kept.contains(&change),
        };
        if !again {
            kept.push(change);
        }
    }
    *changes = kept;
}

/// Sentences, and their halves around 'and' before a verb of change.
fn clauses<'a, 't>(all: &'a [Token<'t>]) -> Vec<&'a [Token<'t>]> {
    let mut found = Vec::new();
    let mut from = 0;
    for at in 0..all.len() {
        let verb_next = all
            .get(at + 1)
            .is_some_and(|t| t.is_one_of("use add omit leave replace swap blend stir substitute skip put"));
        let cuts = matches!(all[at].sign(), Some('.' | ';' | ':'))
            || (all[at].is("and") || all[at].sign() == Some(',')) && verb_next;
        if cuts {
            found.push(&all[from..at]);
            from = at + 1;
        }
    }
    found.push(&all[from..]);
    found
}

fn change(text: &str, clause: &[Token], recipe: &Recipe) -> Vec<Change> {
    let position = |words: &[&str]| clause.iter().position(|t| t.is_any(words));
    let Some(first) = clause.first() else { return Vec::new() };
    let after = |at: usize| &clause[at.min(clause.len())..];
    if first.is_any(&["without", "no"]) || first.is_any(&["omit", "skip"]) {
        return listed(after(1), recipe).into_iter().map(Change::LeaveOut).collect();
    }
    if first.is("leave") && clause.get(1).is_some_and(|t| t.is("out")) {
        return listed(after(2), recipe).into_iter().map(Change::LeaveOut).collect();
    }
    if first.is("leave") && clause.last().is_some_and(|t| t.is("out")) {
        return listed(&clause[1..clause.len() - 1], recipe)
            .into_iter()
            .map(Change::LeaveOut)
            .collect();
    }
    // 'X instead of Y', 'X in place of Y'.
    let instead = position(&["instead"]).or_else(|| {
        clause
            .windows(3)
            .position(|w| w[0].is("in") && w[1].is("place") && w[2].is("of"))
    });
    if let Some(at) = instead {
        let from = usize::from(first.is_any(&["use", "with", "take", "put", "try"]));
        let old = listed(after(at + 1), recipe).first().copied();
        return swap(text, old, &clause[from..at.max(from)]);
    }
    if first.is_any(&["replace", "swap", "substitute", "change"]) {
        let Some(at) = position(&["with", "for", "by", "to"]) else {
            return Vec::new();
        };
        // 'substitute X for Y' names the new food first.
        let (old, new) = if first.is("substitute") && clause[at].is("for") {
            (after(at + 1), &clause[1..at])
        } else {
            (&clause[1..at], after(at + 1))
        };
        return swap(text, listed(old, recipe).first().copied(), new);
    }
    if first.is_any(&["add", "blend", "stir", "put"]) {
        let from = 1 + clause[1..]
            .iter()
            .take_while(|t| t.is_any(&["in", "also", "some"]))
            .count();
        let end = position(&["to", "with", "for", "at", "when", "before", "after", "until", "into"])
            .unwrap_or(clause.len())
            .max(from);
        return entries(text, &clause[from..end])
            .into_iter()
            .map(|new| Change::Add(Box::new(new)))
            .collect();
    }
    Vec::new()
}

fn swap(text: &str, old: Option<usize>, new: &[Token]) -> Vec<Change> {
    let with = entries(text, new).into_iter().next();
    match (old, with) {
        (Some(ingredient), Some(with)) => vec![Change::Swap {
            ingredient,
            with: Box::new(with),
        }],
        _ => Vec::new(),
    }
}

fn entries(text: &str, words: &[Token]) -> Vec<Ingredient> {
    let Some(span) = words.iter().map(|t| t.span).reduce(Span::join) else {
        return Vec::new();
    };
    let food = |i: &Ingredient| {
        i.items
            .iter()
            .any(|item| item.name.split(' ').any(|w| class(&w.to_lowercase()).is(Class::FOOD)))
    };
    line::read(text, span, &[]).entries.into_iter().filter(food).collect()
}

/// The ingredients of the list that are named in these words.
fn listed(words: &[Token], recipe: &Recipe) -> Vec<usize> {
    let said: Vec<Cow<str>> = words.iter().map(|t| singular(&t.lower)).collect();
    let named = |item: &crate::Item| {
        let last = item.name.rsplit(' ').next().map(str::to_lowercase);
        last.is_some_and(|last| said.contains(&singular(&last)))
    };
    let mut found: Vec<usize> = Vec::new();
    for (index, ingredient) in recipe.ingredients.iter().enumerate().take(500) {
        if ingredient.items.iter().any(named) {
            found.push(index);
        }
    }
    // Of several that share a noun, the one whose other words are said as well.
    let best = |index: &usize| {
        recipe.ingredients[*index]
            .items
            .iter()
            .map(|i| {
                i.name
                    .split(' ')
                    .filter(|w| said.contains(&singular(&w.to_lowercase())))
                    .count()
            })
            .max()
            .unwrap_or(0)
    };
    let most = found.iter().map(best).max().unwrap_or(0);
    if found.len() > 1 && most > 1 {
        found.retain(|index| best(index) == most);
    }
    found
}
