//! The method names another amount than the list.

use potwright_manuscript::{Share, Target};

use super::divided_sum::ratio;
use crate::usage::{name, uses};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "L07",
    name: "amount differs",
    finds: "A number in the method, said of the whole of a food ('the six thighs'), that is not the list's; and more of a food taken than there is.",
    why: "One of the two is a slip, and the reader cannot know which.",
    fires: "Braised thighs\n\n8 chicken thighs\n500 ml stock\n\nPut the six thighs in a pot, pour in the stock and simmer for 40 minutes.\n",
    silent: "Braised thighs\n\n8 chicken thighs\n500 ml stock\n\nPut the eight thighs in a pot, pour in the stock and simmer for 40 minutes.\n",
    instead: "Make the two numbers one, or leave the number to the list.",
    source: "arithmetic",
    check,
};

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let recipe = manuscript.recipe;
    let mut queries = Vec::new();
    for operation in &recipe.operations {
        for food in &operation.foods {
            let (Target::Ingredient { index, .. }, Share::Measure(part)) = (&food.target, food.share) else {
                continue;
            };
            let Some(line) = recipe.ingredients.get(*index) else {
                continue;
            };
            let Some((low, high)) = line.quantity.and_then(|whole| ratio(part, whole)) else {
                continue;
            };
            let whole_meant = speaks_of_all(manuscript.text, food.words.span.start, &food.words.text)
                && uses(recipe, *index)
                    .iter()
                    .filter(|one| matches!(one.share, Share::Measure(_)))
                    .count()
                    == 1;
            let too_much = low > 1.005;
            let too_little = whole_meant && high < 0.995;
            if too_much || too_little {
                queries.push(Query {
                    code: RULE.code.into(),
                    weight: Weight::WorthALook,
                    span: food.words.span,
                    asks: format!("Is it this amount of {} or the list's?", name(line)),
                    because: format!("the method's amount is {:.0} % of the list's", 50.0 * (low + high)),
                    try_words: None,
                    see: vec![(line.span, "the list says".into())],
                });
            }
        }
    }
    queries
}

/// 'The six thighs' are all there are; 'six of the thighs' and 'six thighs' may be a part.
fn speaks_of_all(text: &str, start: usize, words: &str) -> bool {
    let lower = words.to_lowercase();
    let before = text.get(..start).unwrap_or("").to_lowercase();
    !lower.contains(" of ") && (lower.starts_with("the ") || before.ends_with("the "))
}
