//! Which operations use which line of the list, and how much of it.

use potwright_manuscript::{Ingredient, Recipe, Share, Span, Target, Verb};

/// One use of an ingredient.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Use {
    /// Index into the recipe's operations.
    pub(crate) operation: usize,
    /// How much.
    pub(crate) share: Share,
    /// The words that name it.
    pub(crate) span: Span,
}

/// Every use of the ingredient, in page order. Work on the board alone (washing, peeling, cutting) is no use: the
/// food has to go somewhere.
pub(crate) fn uses(recipe: &Recipe, ingredient: usize) -> Vec<Use> {
    let mut found = Vec::new();
    for (operation, doing) in recipe.operations.iter().enumerate() {
        if is_board_work(doing.verb) && doing.into.is_none() {
            continue;
        }
        for food in doing.foods.iter().chain(&doing.keep).chain(&doing.discard) {
            if matches!(food.target, Target::Ingredient { index, .. } if index == ingredient) {
                found.push(Use {
                    operation,
                    share: food.share,
                    span: food.words.span,
                });
            }
        }
    }
    found
}

/// Whether a verb is work on the board only.
fn is_board_work(verb: Verb) -> bool {
    matches!(
        verb,
        Verb::Wash | Verb::PickOver | Verb::Peel | Verb::Cut | Verb::Grind | Verb::Sift
    )
}

/// Whether the method is expected to use the line: equipment and what is put on the table are not.
pub(crate) fn expected(ingredient: &Ingredient) -> bool {
    !ingredient.equipment && !ingredient.for_serving && !ingredient.items.is_empty()
}

/// The foods of a line in the writer's words: 'carrots', 'salt and pepper'.
pub(crate) fn name(ingredient: &Ingredient) -> String {
    let names: Vec<&str> = ingredient.items.iter().map(|item| item.name.as_str()).collect();
    match names.as_slice() {
        [] => ingredient.line.text.clone(),
        [one] => (*one).to_owned(),
        [first @ .., last] => format!("{} and {last}", first.join(", ")),
    }
}

/// How many acts of cooking are in the method at all: without any, the list cannot be checked against it.
pub(crate) fn has_method(recipe: &Recipe) -> bool {
    !recipe.operations.is_empty()
}
