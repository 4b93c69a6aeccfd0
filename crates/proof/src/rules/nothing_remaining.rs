//! 'The remaining' with nothing remaining.

use potwright_manuscript::Share;

use super::divided_sum::ratio;
use crate::usage::{name, uses};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "L05",
    name: "'remaining' with nothing remaining",
    finds: "'The remaining' or 'the rest' of a food of which nothing is left, or of which nothing was taken before.",
    why: "The cook looks for a part that was never kept back.",
    fires: "Barley broth\n\n100 g pearl barley\n1 litre stock\n\nPut the barley in a pot, pour in the stock and simmer for 40 minutes. Add the remaining stock if it looks dry.\n",
    silent: "Barley broth\n\n100 g pearl barley\n1 litre stock\n\nPut the barley in a pot, pour in half of the stock and simmer for 40 minutes. Add the remaining stock and simmer for 10 minutes.\n",
    instead: "Say how much is taken the first time.",
    source: "arithmetic",
    check,
};

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let recipe = manuscript.recipe;
    let mut queries = Vec::new();
    for (index, line) in recipe.ingredients.iter().enumerate() {
        let uses = uses(recipe, index);
        let mut taken = 0.0;
        for (at, one) in uses.iter().enumerate() {
            match one.share {
                Share::Fraction(part) => taken += part.to_f64(),
                Share::Measure(part) => {
                    taken += line
                        .quantity
                        .and_then(|whole| ratio(part, whole))
                        .map_or(0.0, |(low, _)| low)
                }
                // Naming a food again after it went in whole means what is in the pot, not a second helping.
                Share::Whole => taken = 1.0,
                Share::Some => {}
                Share::Rest if at == 0 || taken > 0.995 => {
                    let because = if at == 0 {
                        "none of it was used before".to_owned()
                    } else {
                        "all of it has gone in before".to_owned()
                    };
                    queries.push(Query {
                        code: RULE.code.into(),
                        weight: Weight::WorthALook,
                        span: one.span,
                        asks: format!("Which {} is meant here? There is no rest of it.", name(line)),
                        because,
                        try_words: None,
                        see: uses
                            .iter()
                            .take(at)
                            .map(|before| (before.span, "taken here".into()))
                            .collect(),
                    });
                }
                Share::Rest => taken = 1.0,
            }
        }
    }
    queries
}
