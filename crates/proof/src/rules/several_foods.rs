//! A name that may be several foods.

use potwright_pot::Doubt;

use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "L11",
    name: "a name that may be several foods",
    finds: "A name that is not taken for one food without asking, or that the larder does not have. It must be settled when allergens hang on it.",
    why: "One reader's stock is of chicken, another's of fish: figures, allergens and the dish itself differ.",
    fires: "Leek soup\n\n2 leeks, sliced\n100 g satay paste\n1 litre water\n\nPut the leeks, satay paste and water in a pot and simmer for 20 minutes.\n",
    silent: "Leek soup\n\n2 leeks, sliced\n100 g tomato purée\n1 litre water\n\nPut the leeks, tomato purée and water in a pot and simmer for 20 minutes.\n",
    instead: "Name the food as the shop does: 'chicken stock', 'double cream'. A food of your own goes into the book's larder.tsv.",
    source: "common practice of copy editing, no source; allergens by name: Regulation (EU) 1169/2011, Annex II",
    check,
};

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let process = &manuscript.reckoned.process;
    let lots = process.lots.iter().map(|lot| (lot.name.as_str(), &lot.doubt));
    let others = process
        .alternatives
        .iter()
        .map(|other| (other.name.as_str(), &other.doubt));
    let mut queries: Vec<Query> = Vec::new();
    for (name, doubt) in lots.chain(others) {
        let Some(query) = doubt.as_ref().and_then(|doubt| query(name, doubt)) else {
            continue;
        };
        // The same name further down the page is the same question.
        if let Some(first) = queries.iter_mut().find(|first| first.asks == query.asks) {
            if first.span != query.span {
                first.see.push((query.span, "here too".to_owned()));
            }
        } else {
            queries.push(query);
        }
    }
    queries
}

fn query(name: &str, doubt: &Doubt) -> Option<Query> {
    let mut foods: Vec<&str> = doubt.taken_for.as_deref().into_iter().collect();
    foods.extend(doubt.rivals.iter().map(|rival| rival.name.as_str()));
    let (asks, taken) = match doubt.taken_for.as_deref() {
        Some(food) if foods.len() > 1 => (
            format!("Which is ‘{name}’: {}?", foods.join(", ")),
            format!("{food} is reckoned"),
        ),
        Some(food) => (format!("Is ‘{name}’ {food}?"), format!("{food} is reckoned")),
        None => (
            format!("What is ‘{name}’?"),
            "the larder does not have it; its weight is reckoned as water".to_owned(),
        ),
    };
    let hang = if doubt.allergens_hang {
        ", and no allergen is denied of it"
    } else {
        ""
    };
    Some(Query {
        code: RULE.code.into(),
        weight: if doubt.allergens_hang {
            Weight::MustSettle
        } else {
            Weight::WorthALook
        },
        span: doubt.span?,
        asks,
        because: format!("{taken}{hang}"),
        try_words: None,
        see: Vec::new(),
    })
}
