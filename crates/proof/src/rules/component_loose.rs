//! A component made and not used, or used and not made.

use potwright_manuscript::{Operation, Recipe, Target};

use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "L06",
    name: "component made, not used, or used, not made",
    finds: "Something put together in a bowl of its own that no later words take up, and something taken up that nothing before has made.",
    why: "The dumplings stay in the bowl, or the cook turns back the page to look for the roux.",
    fires: "Stew with dumplings\n\n500 g beef, diced\n1 litre stock\n\nFor the dumplings:\n100 g flour\n50 g suet\n60 ml milk\n\nPut the beef and stock in a pot and simmer for 2 hours. Mix the flour, suet and milk in a bowl. Ladle the stew into plates.\n",
    silent: "Stew with dumplings\n\n500 g beef, diced\n1 litre stock\n\nFor the dumplings:\n100 g flour\n50 g suet\n60 ml milk\n\nPut the beef and stock in a pot and simmer for 2 hours. Mix the flour, suet and milk in a bowl and shape into dumplings. Put the dumplings in the pot, cover and simmer for 20 minutes.\n",
    instead: "Say when it goes in, by the name its heading gives it.",
    source: "common practice of copy editing, no source",
    check,
};

/// What cooking itself gives: nobody has to make it first.
const GIVEN_OFF: &[&str] = &[
    "fat",
    "juice",
    "juices",
    "liquid",
    "liquor",
    "scum",
    "froth",
    "foam",
    "dripping",
    "drippings",
    "sauce",
    "gravy",
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let mut queries = made_not_used(manuscript.recipe);
    queries.extend(used_not_made(manuscript));
    queries
}

fn made_not_used(recipe: &Recipe) -> Vec<Query> {
    let mut queries = Vec::new();
    for (index, section) in recipe.sections.iter().enumerate() {
        let of_section = |operation: &Operation| {
            operation.foods.iter().any(|food| {
                matches!(food.target, Target::Ingredient { index: line, .. }
                    if recipe.ingredients.get(line).is_some_and(|line| line.section == Some(index)))
            })
        };
        let Some(last) = recipe.operations.iter().rposition(of_section) else {
            continue;
        };
        let stands_apart = recipe.operations[last]
            .into
            .as_ref()
            .is_some_and(|vessel| is_bowl(&vessel.words.text));
        let taken_up = recipe.operations[last + 1..].iter().any(|operation| {
            operation
                .foods
                .iter()
                .any(|food| matches!(food.target, Target::Component(_)))
        });
        if stands_apart && !taken_up {
            queries.push(Query {
                code: RULE.code.into(),
                weight: Weight::MustSettle,
                span: section.words.span,
                asks: format!(
                    "When do the {} go in? They are made, and no later words take them up.",
                    section.name
                ),
                because: "what was mixed in the bowl is not named again".into(),
                try_words: None,
                see: vec![(recipe.operations[last].span, "made here".into())],
            });
        }
    }
    queries
}

fn is_bowl(vessel: &str) -> bool {
    vessel
        .split_whitespace()
        .any(|word| matches!(word, "bowl" | "basin" | "jug" | "cup"))
}

fn used_not_made(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let recipe = manuscript.recipe;
    let mut queries = Vec::new();
    for operation in &recipe.operations {
        for food in &operation.foods {
            let Target::Component(name) = &food.target else {
                continue;
            };
            let before = manuscript
                .text
                .get(..food.words.span.start)
                .unwrap_or("")
                .to_lowercase();
            if name.split_whitespace().any(|word| GIVEN_OFF.contains(&word)) {
                continue;
            }
            // Four letters stand for the word: 'soaking liquid' is made where something soaks.
            let known = name
                .split_whitespace()
                .filter_map(stem)
                .any(|stem| before.contains(&stem));
            if !known {
                queries.push(Query {
                    code: RULE.code.into(),
                    weight: Weight::WorthALook,
                    span: food.words.span,
                    asks: format!("Where is the {name} made? Nothing before these words speaks of it."),
                    because: "neither the list nor an earlier step names it".into(),
                    try_words: None,
                    see: Vec::new(),
                });
            }
        }
    }
    queries
}

fn stem(word: &str) -> Option<String> {
    let stem: String = word.to_lowercase().chars().take(4).collect();
    (stem.chars().count() >= 3).then_some(stem)
}
