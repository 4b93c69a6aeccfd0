//! No vessel.

use potwright_manuscript::Verb;

use crate::cooked::{cooks, lower, on_the_heat, says};
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
    let mut stretches = on_the_heat(manuscript).into_iter();
    let Some(first) = stretches.find(|cooked| cooks(cooked.operation.verb) || warms(cooked.operation.verb)) else {
        return Vec::new();
    };
    let before = lower(manuscript.text, 0, first.operation.span.end);
    let method_from = manuscript.recipe.steps.first().map_or(0, |step| step.words.span.start);
    let in_method = before.get(method_from..).unwrap_or(&before);
    let listed = manuscript.recipe.ingredients.iter().any(|line| line.equipment);
    let noted = manuscript
        .recipe
        .desk_notes
        .iter()
        .any(|note| says(&note.words.text.to_lowercase(), VESSELS));
    if says(in_method, VESSELS) || listed || noted {
        return Vec::new();
    }
    let vessel = manuscript.reckoned.process.vessels.get(first.vessel);
    let taken = vessel.and_then(|vessel| vessel.pot.as_ref()).map_or_else(
        || "none is named before".to_owned(),
        |pot| format!("none is named before; a {} is reckoned with", pot.name),
    );
    vec![Query {
        code: RULE.code.into(),
        weight: Weight::WorthALook,
        span: first.operation.span,
        asks: "In what is this cooked? Its kind and size would help.".into(),
        because: taken,
        try_words: None,
        see: Vec::new(),
    }]
}
