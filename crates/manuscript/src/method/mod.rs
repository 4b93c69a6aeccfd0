//! The method: what it tells the cook to do.
//!
//! In goes a [`Recipe`] whose list and steps are laid; out come its operations, in page order.
//!
//! | step of the reading | file |
//! | --- | --- |
//! | sentences and clauses; which words lead one | [`clauses`], [`heads`], [`participles`], [`turns`] |
//! | what a clause says: foods, vessels, times, heats, lids, cues | [`said`], [`parts`], [`nouns`], [`vessels`], [`phrases`], [`degrees`], [`cue`] |
//! | what stands before the first order; orders that share their words | [`before`], [`shared`] |
//! | what a noun stands for | [`told`], [`refer`], [`foods`], [`name`], [`index`] |
//! | the kitchen as the method goes along | [`scene`] |
//! | what the verb means at that moment, by `data/verbs.tsv` | [`facts`], [`words`], [`takes`] |
//! | the operation: foods, vessel, heat, what follows from it | [`build`], [`order`], [`which`], [`place`], [`heat`], [`follow`] |
//! | words without a verb | [`bare`] |
//! | what is settled last; the reading as plain data | [`finish`], [`reading`] |
//!
//! Words are in the tables of `data/`, grammar is here. Each token is looked at a bounded number of times.

mod bare;
mod before;
mod build;
mod clauses;
mod cue;
mod degrees;
mod facts;
mod finish;
mod follow;
mod foods;
mod heads;
mod heat;
mod index;
mod name;
mod nouns;
mod order;
mod participles;
mod parts;
pub(crate) mod phrases;
mod place;
pub(crate) mod reading;
mod refer;
mod said;
mod scene;
mod shared;
mod takes;
mod told;
mod turns;
mod vessels;
mod which;
pub(crate) mod words;

#[cfg(test)]
mod tests;

use crate::{Operation, Recipe, Unsure};

/// Reads the method of a laid page: fills [`Recipe::operations`] and adds to [`Recipe::unsure`].
pub(crate) fn read(text: &str, recipe: &mut Recipe) {
    if recipe.steps.is_empty() {
        strays(recipe);
        return;
    }
    let names = foods::Names::of(text, recipe);
    let mut builder = build::Builder::new(text, recipe, &names);
    for (index, step) in recipe.steps.iter().enumerate() {
        builder.step(index, step, listed_above(recipe, &names, index));
    }
    let (mut operations, mut unsure) = (builder.operations, builder.unsure);
    finish::settle(&mut operations);
    recipe.operations = operations;
    recipe.unsure.append(&mut unsure);
    strays(recipe);
}

/// So many operations around a place are looked at, so that reading stays linear.
pub(crate) const NEAR: usize = 300;

/// What no operation has taken either is lost to the dish, and the writer is told so.
fn strays(recipe: &mut Recipe) {
    let operations = &recipe.operations;
    recipe.strays.retain(|row| {
        let taken = |op: &Operation| op.span.start < row.span.end && row.span.start < op.span.end;
        // Operations stand in the order of the page, but for work said before a noun.
        let end = operations.partition_point(|op| op.span.start < row.span.end);
        let near = end.saturating_sub(NEAR)..operations.len().min(end + NEAR);
        !operations[near].iter().any(taken)
    });
    recipe.unsure.extend(recipe.strays.iter().map(|row| Unsure {
        span: row.span,
        what: format!(
            "‘{}’ reads like a line of the list, but stands outside it: it is not cooked.",
            row.text
        ),
        taken_as: None,
    }));
}

/// The foods that stand between the step before and this one, on a page where lists and steps take turns.
fn listed_above(recipe: &Recipe, names: &foods::Names, index: usize) -> Vec<foods::Place> {
    let Some(step) = recipe.steps.get(index) else {
        return Vec::new();
    };
    let first_step = recipe.steps.first().map_or(0, |step| step.words.span.start);
    let taking_turns = recipe.layout == crate::Layout::List && names.any_after(first_step);
    if !taking_turns {
        return Vec::new();
    }
    let from = index
        .checked_sub(1)
        .and_then(|before| recipe.steps.get(before))
        .map_or(0, |before| before.words.span.end);
    // Beside its text, the foods of a step stand before its end.
    let until = if step.pieces.is_empty() {
        step.words.span.start
    } else {
        step.words.span.end
    };
    names.between(from, until)
}
