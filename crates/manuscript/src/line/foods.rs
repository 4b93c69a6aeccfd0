//! The foods that an entry names: one, several joined by 'and', one with others that may take its place.

use super::alternative::{alternatives, split, with_shared_head};
use super::entry::Draft;
use super::name::{Context, kept, named, nounlike};
use super::quantity::measured;
use super::{Line, tail};
use crate::lexicon::{self, Class};
use crate::token::Token;
use crate::{Alternative, Item};

/// 'stock, veg or chicken': the kind follows the noun.
pub(super) fn kind_after(line: &Line, segment: &[usize], draft: &mut Draft) -> bool {
    let words: Vec<&Token> = segment.iter().map(|at| &line.tokens[*at]).collect();
    let [item] = draft.made.items.as_slice() else {
        return false;
    };
    let broth = item.name.ends_with("stock") || item.name.ends_with("broth");
    let fits = |t: &Token| {
        t.class.is(Class::KIND | Class::OIL) && !t.class.is(Class::PREPARED | Class::TEMPERATURE)
            || broth && t.class.is(Class::FOOD)
    };
    let kinds: Vec<&&Token> = words
        .iter()
        .filter(|t| !t.is("or") && !t.is_any(&["a", "the"]))
        .collect();
    let joined = words.iter().all(|t| t.is("or") || fits(t));
    if kinds.is_empty() || !joined || words.len() > 3 || item.name.contains(' ') {
        return false;
    }
    let names: Vec<String> = kinds
        .iter()
        .map(|t| format!("{} {}", lexicon::meant(&t.lower, true).unwrap_or(&t.lower), item.name))
        .collect();
    let span = item.span;
    for (at, name) in names.into_iter().enumerate() {
        let state = draft.made.items[0].state.clone();
        if at == 0 {
            draft.made.items[0].name = name;
        } else {
            let item = Item { name, state, span };
            draft.made.alternatives.push(Alternative { item, quantity: None });
        }
    }
    true
}

/// The foods named in a stretch, their alternatives and what follows each name.
pub(super) fn names(line: &Line, segment: &[usize], draft: &mut Draft) {
    let words: Vec<&Token> = segment.iter().map(|at| &line.tokens[*at]).collect();
    let ranges = conjuncts(&words);
    for (from, to) in ranges {
        one_name(line, &segment[from..to], draft);
    }
}

fn one_name(line: &Line, segment: &[usize], draft: &mut Draft) {
    let words: Vec<&Token> = segment.iter().map(|at| &line.tokens[*at]).collect();
    if words.first().is_some_and(|t| t.is("or")) && two_counts(line, segment, draft) {
        return;
    }
    let or = split(&words);
    let (left, right) = or.map_or((words.as_slice(), &[][..]), |at| (&words[..at], &words[at + 1..]));
    let shared = with_shared_head(left, right);
    let Some(found) = named(line.text, &shared, draft.context) else {
        return;
    };
    let index = draft.made.items.len();
    draft.made.size = draft.made.size.take().or(found.size);
    if let (Some(unit), Some(quantity)) = (found.unit, &mut draft.made.quantity) {
        quantity.unit = Some(unit);
    }
    if let (Some(unit), Some(open)) = (found.unit, &mut draft.made.open) {
        open.unit = Some(unit);
    }
    draft
        .prepared
        .extend(found.prepared.into_iter().map(|words| (Some(index), words)));
    let own = found.item.clone();
    draft.made.items.push(found.item);
    let used = found.used.min(left.len());
    if used < left.len() {
        tail::apply(line, &segment[used..left.len()], draft);
    }
    if let Some(at) = or
        && let (Some(first), Some(last)) = (segment.get(at + 1), segment.last())
    {
        let others = alternatives(line, *first, last + 1, &own);
        draft.made.alternatives.extend(others);
        // 'parsley or chives chopped': the work after the last name is told of both.
        let after = words
            .get(at + 1..)
            .and_then(|right| named(line.text, right, Context::default()).map(|n| n.used));
        if let Some(after) =
            after.filter(|after| at + 1 + after < segment.len() && line.tokens[*first].number().is_none())
        {
            tail::apply(line, &segment[at + 1 + after..], draft);
        }
    }
}

/// '1 large or 2 small leeks': the noun after the second count is that of the first.
fn two_counts(line: &Line, segment: &[usize], draft: &mut Draft) -> bool {
    let Some(measure) = segment
        .get(1)
        .and_then(|at| measured(line, *at, false))
        .filter(|m| !m.implied)
    else {
        return false;
    };
    let Some(from) = segment.iter().position(|at| *at >= measure.next) else {
        return false;
    };
    let size = draft.made.size.take();
    let others = draft.made.alternatives.len();
    one_name(line, &segment[from..], draft);
    draft.made.size = size;
    if let Some(item) = draft.made.items.last().cloned() {
        draft.made.alternatives.insert(
            others,
            Alternative {
                item,
                quantity: measure.quantity,
            },
        );
    }
    true
}

/// The stretches between 'and' that each name a food of their own.
fn conjuncts(words: &[&Token]) -> Vec<(usize, usize)> {
    let mut ranges = Vec::new();
    let mut from = 0;
    let kept = kept(words);
    let mut noun = false;
    for at in 0..words.len() {
        let token = words[at];
        let joins = token.is("and") || matches!(token.sign(), Some('&' | '+'));
        // In 'butter or butter and bacon fat' the second 'and' joins what may take its place.
        let other = words[from..at].iter().any(|t| t.is("or"));
        if joins && noun && !kept[at] && !other {
            let rest = &words[at + 1..];
            let head = rest.iter().find(|t| nounlike(t));
            let parts = words[at - 1].class.is(Class::PART)
                && rest.first().is_some_and(|t| t.class.is(Class::PART))
                && (at - from == 1 || rest.iter().any(|t| t.is("of")));
            let food = head.is_some_and(|t| t.class.is(Class::FOOD) || at - from <= 3)
                && !rest.first().is_some_and(|t| {
                    t.is_any(&["their", "its", "the", "more", "extra", "all", "then", "cut"])
                        || t.class.is(Class::PREPARED) && !rest.iter().any(|t| t.class.is(Class::FOOD))
                });
            // Once the name is over, 'and' joins words of work.
            let over = named("", &words[from..at], Context::default()).is_some_and(|n| n.used < at - from);
            if food && !parts && !over {
                ranges.push((from, at));
                from = at + 1;
                noun = false;
                continue;
            }
        }
        noun |= nounlike(token);
    }
    ranges.push((from, words.len()));
    ranges.retain(|(from, to)| from < to);
    ranges
}
