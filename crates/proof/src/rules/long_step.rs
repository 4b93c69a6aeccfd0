//! A step with too many actions.

use potwright_manuscript::Form;

use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "C14",
    name: "step with too many actions",
    finds: "A numbered step or a paragraph of the method that tells the cook to do more than ten things.",
    why: "With a spoon in one hand the reader looks back and has lost the place.",
    fires: "Stew\n\n2 tbsp oil\n2 onions\n2 carrots\n500 g beef\n1 litre stock\n2 tbsp flour\n\n1. Heat the oil in a pot over a medium heat. Peel the onions. Chop the onions. Fry the onions for 5 minutes until soft. Peel the carrots. Slice the carrots. Add the carrots. Brown the beef for 5 minutes until coloured. Stir in the flour. Pour in the stock. Bring to the boil. Skim the top. Cover the pot. Simmer for 2 hours until tender.\n2. Serve.\n",
    silent: "Stew\n\n2 tbsp oil\n2 onions, sliced\n500 g beef\n1 litre stock\n\n1. Heat the oil in a pot over a medium heat and fry the onions for 5 minutes until soft.\n2. Add the beef, pour in the stock and simmer for 2 hours until tender.\n3. Serve.\n",
    instead: "Part it where the cook waits, or where the pan changes.",
    source: "common practice of copy editing, no source (8 to 12)",
    check,
};

/// More orders than this in one step are asked about (common practice, no source; 8 to 12).
const MOST: usize = 10;

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let recipe = manuscript.recipe;
    let steps = recipe.steps.iter().enumerate();
    steps
        .filter_map(|(index, step)| {
            let orders = recipe
                .operations
                .iter()
                .filter(|operation| operation.step == index && operation.form == Form::Imperative)
                .count();
            (orders > MOST).then(|| Query {
                code: RULE.code.into(),
                weight: Weight::HouseStyle,
                span: step.words.span,
                asks: "Could this step be parted? It asks for many things in a row.".into(),
                because: format!("{orders} orders in one step"),
                try_words: None,
                see: Vec::new(),
            })
        })
        .collect()
}
