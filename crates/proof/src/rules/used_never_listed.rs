//! Used, never listed.

use potwright_manuscript::{Layout, Target, Verb};

use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "L02",
    name: "used, never listed",
    finds: "A food that the method uses and the list does not have. Water is let pass where no amount hangs on it.",
    why: "The reader shops from the list and stands at the stove without it.",
    fires: "Leek soup\n\n2 leeks, sliced\n1 litre stock\n\nPut the leeks and the stock in a pot with 2 bay leaves and simmer for 20 minutes.\n",
    silent: "Leek soup\n\n2 leeks, sliced\n1 litre stock\n2 bay leaves\n\nPut the leeks, stock and bay leaves in a pot and simmer for 20 minutes.\n",
    instead: "Put a line for it on the list, at its place in the order of use.",
    source: "common practice of copy editing, no source",
    check,
};

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let recipe = manuscript.recipe;
    if recipe.layout == Layout::Prose {
        return Vec::new();
    }
    let mut asked: Vec<String> = Vec::new();
    let mut queries = Vec::new();
    for operation in &recipe.operations {
        // What the finished dish is eaten with is the reader's own affair.
        if matches!(operation.verb, Verb::Serve | Verb::Soak | Verb::Wash) {
            continue;
        }
        for food in &operation.foods {
            let Target::Unlisted(food_name) = &food.target else {
                continue;
            };
            let name = food_name.to_lowercase();
            if name.split_whitespace().any(|word| word == "water" || word == "ice") || asked.contains(&name) {
                continue;
            }
            queries.push(Query {
                code: RULE.code.into(),
                weight: Weight::WorthALook,
                span: food.words.span,
                asks: format!("Should the list have the {name}? The method uses it here."),
                because: "no line of the list names it".into(),
                try_words: None,
                see: Vec::new(),
            });
            asked.push(name);
        }
    }
    queries
}
