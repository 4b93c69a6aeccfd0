//! Ingredients out of the order of use.

use crate::usage::{expected, name, uses};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "L03",
    name: "out of order of use",
    finds: "A line of the list that stands before or after its turn: the fewest lines whose moving puts the list in order of use.",
    why: "A reader lays things out in the order of the list and reaches for them in that order.",
    fires: "Leek soup\n\n1 litre stock\n2 leeks, sliced\n30 g butter\n\nMelt the butter in a pot. Add the leeks and sweat for 10 minutes. Pour in the stock and simmer for 20 minutes.\n",
    silent: "Leek soup\n\n30 g butter\n2 leeks, sliced\n1 litre stock\n\nMelt the butter in a pot. Add the leeks and sweat for 10 minutes. Pour in the stock and simmer for 20 minutes.\n",
    instead: "Move the line to its place.",
    source: "common practice of cookery writing, no source",
    check,
};

/// More moves than this and the list follows some other order, which is asked about once.
const MOST_MOVES: usize = 3;

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let recipe = manuscript.recipe;
    let sections: Vec<Option<usize>> = {
        let mut all: Vec<_> = recipe.ingredients.iter().map(|line| line.section).collect();
        all.dedup();
        all
    };
    sections
        .into_iter()
        .flat_map(|section| check_section(manuscript, section))
        .collect()
}

fn check_section(manuscript: &Manuscript<'_>, section: Option<usize>) -> Vec<Query> {
    let recipe = manuscript.recipe;
    // Seasoning stands at the end of a list by custom, wherever it is used first.
    let turns: Vec<(usize, usize)> = recipe
        .ingredients
        .iter()
        .enumerate()
        .filter(|(_, line)| line.section == section && expected(line) && !line.to_taste && line.quantity.is_some())
        .filter_map(|(index, _)| Some((index, uses(recipe, index).first()?.operation)))
        .collect();
    let in_order = longest_rising(&turns.iter().map(|(_, turn)| *turn).collect::<Vec<_>>());
    let strays: Vec<(usize, usize)> = turns
        .iter()
        .enumerate()
        .filter(|(at, _)| !in_order.contains(at))
        .map(|(_, turn)| *turn)
        .collect();
    let shown = if strays.len() > MOST_MOVES { 1 } else { strays.len() };
    strays
        .iter()
        .take(shown)
        .filter_map(|&(index, turn)| {
            let line = recipe.ingredients.get(index)?;
            let operation = recipe.operations.get(turn)?;
            let asks = if strays.len() > MOST_MOVES {
                "Shall the list follow the order of use? Several lines stand out of it.".to_owned()
            } else {
                format!(
                    "Could the line with the {} move to its place in the order of use?",
                    name(line)
                )
            };
            Some(Query {
                code: RULE.code.into(),
                weight: Weight::HouseStyle,
                span: line.span,
                asks,
                because: match strays.len() {
                    1 => format!("all other {} lines stand in the order of use", turns.len() - 1),
                    several => format!("{several} of {} lines stand out of the order of use", turns.len()),
                },
                try_words: None,
                see: vec![(operation.span, "first used here".into())],
            })
        })
        .collect()
}

/// Positions of a longest run that never falls (patience sorting kept simple: a list has a few dozen lines).
fn longest_rising(turns: &[usize]) -> Vec<usize> {
    let mut best: Vec<(usize, Option<usize>)> = Vec::with_capacity(turns.len());
    for (at, turn) in turns.iter().enumerate() {
        let before = (0..at)
            .filter(|&earlier| turns[earlier] <= *turn)
            .max_by_key(|&earlier| (best[earlier].0, std::cmp::Reverse(earlier)));
        best.push((before.map_or(0, |earlier| best[earlier].0) + 1, before));
    }
    let mut chain = Vec::new();
    let mut at = (0..turns.len()).max_by_key(|&at| (best[at].0, std::cmp::Reverse(at)));
    while let Some(here) = at {
        chain.push(here);
        at = best[here].1;
    }
    chain
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn the_longest_rising_run_leaves_out_the_fewest_lines() {
        let mut run = longest_rising(&[0, 5, 1, 2, 3]);
        run.sort_unstable();
        assert_eq!(run, [0, 2, 3, 4]);
        assert!(longest_rising(&[]).is_empty());
    }
}
