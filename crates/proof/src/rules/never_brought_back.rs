//! Taken from the pot and never brought back.

use potwright_larder::Kind;
use potwright_manuscript::{Operation, Target, Verb};
use potwright_pot::{Doing, Part};

use crate::cooked::says;
use crate::usage::name;
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "C13",
    name: "taken from the pot and never brought back",
    finds: "Food that is lifted out or set aside in the middle of the cooking and that no later words put back, serve or throw away.",
    why: "The browned beef stays on its plate, or goes back at a time the reader has to guess.",
    fires: "Beef stew\n\n2 tbsp oil\n500 g beef shin, diced\n2 onions, sliced\n1 litre stock\n\nHeat the oil in a pot over a high heat and brown the beef for 6 minutes. Lift it out on to a plate. Fry the onions for 10 minutes until soft. Pour in the stock and simmer for 2 hours.\n",
    silent: "Beef stew\n\n2 tbsp oil\n500 g beef shin, diced\n2 onions, sliced\n1 litre stock\n\nHeat the oil in a pot over a high heat and brown the beef for 6 minutes. Lift it out on to a plate. Fry the onions for 10 minutes until soft. Return the beef to the pot, pour in the stock and simmer for 2 hours.\n",
    instead: "Say when it goes back: 'return the beef to the pot with the stock'.",
    source: "contents of the vessels at the end of the simulation",
    check,
};

/// Less than this share of the dish left behind is no matter.
const SHARE: f64 = 0.02;

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let mut queries: Vec<Query> = Vec::new();
    let acts = manuscript.reckoned.process.acts.len();
    let to_the_end = left_behind(manuscript).into_iter().map(|vessel| (vessel, acts));
    for (vessel, until) in to_the_end.chain(came_back_unsaid(manuscript)) {
        let Some((operation, lots)) = taken_out(manuscript, vessel, until) else {
            continue;
        };
        let lots = pieces_of(manuscript, &lots);
        let names = names_of(manuscript, &lots);
        let taken_up = lots.iter().any(|lot| named_later(manuscript, operation, *lot));
        if names.is_empty() || taken_up || queries.iter().any(|query| query.span == operation.span) {
            continue;
        }
        queries.push(Query {
            code: RULE.code.into(),
            weight: Weight::WorthALook,
            span: operation.span,
            asks: format!("When do the {names} go back? No later words take them up."),
            because: "at the end of the cooking it still stands beside the pot".into(),
            try_words: None,
            see: Vec::new(),
        });
    }
    queries
}

/// Vessels that still hold something when the dish is done, and those that the reading had to empty into it unasked.
fn left_behind(manuscript: &Manuscript<'_>) -> Vec<usize> {
    let (process, trace) = (&manuscript.reckoned.process, &manuscript.reckoned.trace);
    let mut vessels: Vec<usize> = process
        .acts
        .iter()
        .filter(|act| act.operation.is_none())
        .filter_map(|act| match act.doing {
            Doing::Transfer { to, what: Part::All } if to == process.dish_vessel => Some(act.vessel),
            _ => None,
        })
        .collect();
    let Some(last) = trace.samples.last() else {
        return vessels;
    };
    let total: f64 = last.vessels.iter().map(|vessel| vessel.mass_kg).sum();
    let others = last.vessels.iter().filter(|held| {
        held.vessel != process.dish_vessel && held.mass_kg > SHARE * total && !vessels.contains(&held.vessel)
    });
    let more: Vec<usize> = others.map(|held| held.vessel).collect();
    vessels.extend(more);
    vessels
}

/// Vessels whose contents the reading put back with words that do not say it ('set it by', 'leave it to stand'), each with
/// the act that did.
fn came_back_unsaid(manuscript: &Manuscript<'_>) -> Vec<(usize, usize)> {
    let process = &manuscript.reckoned.process;
    let acts = process.acts.iter().enumerate();
    acts.filter_map(|(at, act)| {
        let Doing::Transfer { to, .. } = act.doing else {
            return None;
        };
        let cooks = |vessel: usize| process.vessels.get(vessel).is_some_and(|vessel| vessel.pot.is_some());
        let operation = manuscript.recipe.operations.get(act.operation?)?;
        let back = !cooks(act.vessel) && cooks(to);
        (back && stays_away(manuscript, operation)).then_some((act.vessel, at))
    })
    .collect()
}

/// Whether words leave the food where it is, or work on it there.
fn stays_away(manuscript: &Manuscript<'_>, operation: &Operation) -> bool {
    let words = operation.span.of(manuscript.text).to_lowercase();
    matches!(
        operation.verb,
        Verb::Rest | Verb::Cut | Verb::SetAside | Verb::Cool | Verb::KeepHot | Verb::Peel
    ) || says(&words, &["aside", "by", "apart"])
}

/// The operation that last put pieces of another vessel into this one before an act, and the lots it moved.
fn taken_out<'a>(manuscript: &Manuscript<'a>, vessel: usize, until: usize) -> Option<(&'a Operation, Vec<usize>)> {
    let process = &manuscript.reckoned.process;
    let mut inside: Vec<Vec<usize>> = vec![Vec::new(); process.vessels.len()];
    let mut found = None;
    for act in process.acts.iter().take(until) {
        match &act.doing {
            Doing::Add(portions) => inside
                .get_mut(act.vessel)?
                .extend(portions.iter().map(|portion| portion.lot)),
            Doing::Transfer { to, what } if act.operation.is_some() => {
                let moved = match what {
                    Part::Lots(lots) => lots.clone(),
                    Part::Liquid | Part::Share(_) => Vec::new(),
                    Part::All | Part::Solids => inside.get(act.vessel)?.clone(),
                };
                inside.get_mut(act.vessel)?.retain(|lot| !moved.contains(lot));
                inside.get_mut(*to)?.extend(&moved);
                let operation = manuscript.recipe.operations.get(act.operation?)?;
                if *to == vessel && !moved.is_empty() && lifts_out(manuscript, operation) && !throws_away(operation) {
                    found = Some((operation, moved));
                }
            }
            _ => {}
        }
    }
    found
}

/// Whether the words take food out of where it cooks, for a while.
fn lifts_out(manuscript: &Manuscript<'_>, operation: &Operation) -> bool {
    let words = operation.span.of(manuscript.text).to_lowercase();
    matches!(operation.verb, Verb::Remove | Verb::SetAside)
        || !operation.keep.is_empty()
        || says(
            &words,
            &[
                "plate", "bowl", "aside", "out", "off", "dish", "platter", "board", "tray", "reserve", "keep",
            ],
        )
}

/// What is strained off, poured away or fished out for good.
fn throws_away(operation: &Operation) -> bool {
    matches!(
        operation.verb,
        Verb::Strain | Verb::Drain | Verb::Discard | Verb::Skim | Verb::RubThroughSieve | Verb::Serve | Verb::Soak
    ) || !operation.discard.is_empty()
}

/// Only what can be lifted out: the oil and salt that cling to them come along by themselves.
fn pieces_of(manuscript: &Manuscript<'_>, lots: &[usize]) -> Vec<usize> {
    let process = &manuscript.reckoned.process;
    let clings = |kind: Kind| {
        matches!(
            kind,
            Kind::Oil
                | Kind::Fat
                | Kind::Salt
                | Kind::Spice
                | Kind::Flour
                | Kind::Sugar
                | Kind::Condiment
                | Kind::Water
        )
    };
    let in_pieces = |lot: &usize| {
        let lot = process.lots.get(*lot);
        lot.is_some_and(|lot| lot.pieces.is_some() || !clings(lot.kind) && lot.starch.is_none())
    };
    lots.iter().copied().filter(in_pieces).collect()
}

/// The foods in the page's words.
fn names_of(manuscript: &Manuscript<'_>, lots: &[usize]) -> String {
    let process = &manuscript.reckoned.process;
    let mut names: Vec<String> = Vec::new();
    for lot in lots.iter().filter_map(|lot| process.lots.get(*lot)) {
        let line = lot
            .ingredient
            .and_then(|index| manuscript.recipe.ingredients.get(index));
        let name = line.map_or_else(|| lot.name.clone(), name);
        if !names.contains(&name) {
            names.push(name);
        }
    }
    match names.as_slice() {
        [] => String::new(),
        [one] => one.clone(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// Whether later words take a lot's food to the table.
fn named_later(manuscript: &Manuscript<'_>, taken: &Operation, lot: usize) -> bool {
    let Some(index) = manuscript.reckoned.process.lots.get(lot).and_then(|lot| lot.ingredient) else {
        return false;
    };
    let later = manuscript
        .recipe
        .operations
        .iter()
        .filter(|later| later.span.start >= taken.span.end);
    later
        .filter(|later| {
            matches!(
                later.verb,
                Verb::Serve | Verb::Garnish | Verb::Discard | Verb::Add | Verb::Return
            )
        })
        .flat_map(|later| later.foods.iter().chain(&later.discard))
        .any(|food| matches!(food.target, Target::Ingredient { index: other, .. } if other == index))
}
