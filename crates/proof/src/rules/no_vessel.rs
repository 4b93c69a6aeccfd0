//! No vessel.

use potwright_manuscript::Verb;

use crate::cooked::{Cooked, cooks, lower, on_the_heat, says};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "C04",
    name: "no vessel",
    finds: "Food that goes on the heat before any pot, pan, dish or tin has been named.",
    why: "Width decides how fast a sauce reduces, height whether the soup fits at all.",
    fires: "Leek soup\n\n30 g butter\n3 leeks, sliced\n1 litre stock\n\nSweat the leeks in the butter over a low heat for 10 minutes until soft. Pour in the stock and simmer for 20 minutes until tender.\n",
    silent: "Leek soup\n\n30 g butter\n3 leeks, sliced\n1 litre stock\n\nSweat the leeks in the butter in a 4-litre pot over a low heat for 10 minutes until soft. Pour in the stock and simmer for 20 minutes until tender.\n",
    instead: "Name it where the first food goes in, with its size: 'a 5-litre pot', 'a 28 cm frying pan'.",
    source: "common practice of test kitchens, no source",
    check,
};

/// Words for what food is cooked in.
const VESSELS: &[&str] = &[
    "pot",
    "pots",
    "pan",
    "pans",
    "saucepan*",
    "skillet*",
    "casserole*",
    "kettle*",
    "stewpan*",
    "stockpot*",
    "wok*",
    "tin",
    "tins",
    "tray*",
    "dish",
    "dishes",
    "sheet*",
    "cooker*",
    "boiler*",
    "griddle*",
    "cauldron*",
    "marmite*",
    "crock*",
    "roaster*",
    "ramekin*",
    "mould*",
    "mold*",
    "steamer*",
    "frypan*",
    "tagine*",
    "braiser*",
    "rondeau*",
    "dutch",
    "cocotte*",
    "stone",
    "rack",
];

const fn warms(verb: Verb) -> bool {
    matches!(
        verb,
        Verb::Melt | Verb::Heat | Verb::Scald | Verb::Add | Verb::Reheat | Verb::Deglaze
    )
}

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let recipe = manuscript.recipe;
    let listed = recipe.ingredients.iter().any(|line| line.equipment);
    let noted = recipe
        .desk_notes
        .iter()
        .any(|note| says(&note.words.text.to_lowercase(), VESSELS));
    if listed || noted {
        return Vec::new();
    }
    let mut queries = Vec::new();
    let mut sections: Vec<Option<usize>> = Vec::new();
    let mut used: Vec<usize> = Vec::new();
    for cooked in on_the_heat(manuscript) {
        if !cooks(cooked.operation.verb) && !warms(cooked.operation.verb) {
            continue;
        }
        let section = section_of(manuscript, cooked.operation.step);
        let first = !sections.contains(&section) && !used.contains(&cooked.vessel);
        sections.push(section);
        used.push(cooked.vessel);
        if first && !named(manuscript, &cooked, section) {
            queries.push(query(manuscript, &cooked));
        }
    }
    queries
}

/// The heading that a step stands under.
fn section_of(manuscript: &Manuscript<'_>, step: usize) -> Option<usize> {
    manuscript.recipe.steps.get(step).and_then(|step| step.section)
}

/// Whether the steps of a section name a vessel up to the end of the words.
fn named(manuscript: &Manuscript<'_>, cooked: &Cooked<'_>, section: Option<usize>) -> bool {
    let steps = manuscript.recipe.steps.iter().take(cooked.operation.step + 1);
    let of_section = steps.filter(|step| step.section == section);
    of_section
        .map(|step| {
            lower(
                manuscript.text,
                step.words.span.start,
                step.words.span.end.min(cooked.operation.span.end),
            )
        })
        .any(|words| says(&words, VESSELS))
}

fn query(manuscript: &Manuscript<'_>, cooked: &Cooked<'_>) -> Query {
    let vessel = manuscript.reckoned.process.vessels.get(cooked.vessel);
    let because = vessel.and_then(|vessel| vessel.pot.as_ref()).map_or_else(
        || "none is named before".to_owned(),
        |pot| format!("none is named before; a {} is reckoned with", pot.name),
    );
    Query {
        code: RULE.code.into(),
        weight: Weight::WorthALook,
        span: cooked.operation.span,
        asks: "In what is this cooked? Its kind and size would help.".into(),
        because,
        try_words: None,
        see: Vec::new(),
    }
}
