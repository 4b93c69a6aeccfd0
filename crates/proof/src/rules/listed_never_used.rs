//! Listed, never used.

use crate::usage::{expected, has_method, name, uses};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "L01",
    name: "listed, never used",
    finds: "A food on the list that the method never puts anywhere.",
    why: "The reader has bought it, and finds it on the table when the dish is done.",
    fires: "Leek soup\n\n2 leeks, sliced\n1 litre water\n2 bay leaves\n\nPut the leeks and the water in a pot and simmer for 20 minutes.\n",
    silent: "Leek soup\n\n2 leeks, sliced\n1 litre water\n2 bay leaves\n\nPut the leeks, water and bay leaves in a pot and simmer for 20 minutes.\n",
    instead: "Name it at the moment it goes in, or strike the line.",
    source: "common practice of copy editing, no source",
    check,
};

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let recipe = manuscript.recipe;
    if !has_method(recipe) {
        return Vec::new();
    }
    let unused = recipe
        .ingredients
        .iter()
        .enumerate()
        .filter(|(index, line)| expected(line) && !line.optional && uses(recipe, *index).is_empty());
    unused
        .map(|(_, line)| Query {
            code: RULE.code.into(),
            weight: Weight::WorthALook,
            span: line.span,
            asks: format!("Where in the method would the {} belong? No step uses it.", name(line)),
            because: format!(
                "{} operations were read, and none of them names it",
                recipe.operations.len()
            ),
            try_words: None,
            see: Vec::new(),
        })
        .collect()
}
