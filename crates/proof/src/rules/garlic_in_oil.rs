//! Raw garlic or herbs kept in oil.

use crate::prose::sentences;
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "S07",
    name: "raw garlic or herbs in oil",
    finds: "Garlic, herbs, chillies or other raw vegetables put up in oil to keep.",
    why: "Oil shuts out the air: botulinum grows on what is under it.",
    fires: "Leek soup\n\n3 leeks, sliced\n1 litre water\n1 tsp salt\n\nPut the leeks, water and salt in a pot and simmer for 20 minutes until soft. Blend.\n\nCover the spare garlic with olive oil and keep it on the shelf for weeks.\n",
    silent: "Leek soup\n\n3 leeks, sliced\n1 litre water\n1 tsp salt\n\nPut the leeks, water and salt in a pot and simmer for 20 minutes until soft. Blend.\n\nTrickle with olive oil.\n",
    instead: "Make it for the day; or refrigerate at once and use within 4 days, or freeze.",
    source: "US extension services and FDA on garlic in oil (refrigerate, use within 4 days); common practice, no source for other herbs",
    check,
};

const OIL: &[&str] = &["oil|oils"];
const RAW: &[&str] = &[
    "garlic|cloves",
    "herb*|basil|rosemary|thyme|sage|oregano|tarragon|dill|parsley|chive*|coriander|leaves|sprigs",
    "chilli*|chili*|chile*|pepper*|ginger|shallot*|mushroom*|tomato*|lemon",
];
const KEPT: &[&str] = &[
    "keep*|kept|store|stored|last*",
    "steep*|infus*|macerat*",
    "jar*|bottle*",
    "week*|month*|days|fortnight",
    "room temperature|cupboard|shelf|larder|pantry",
    "make … ahead|advance",
    "overnight",
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let said = sentences(manuscript.recipe, manuscript.text);
    let asked = said.iter().filter_map(|sentence| {
        (sentence.says(OIL) && sentence.says(RAW) && !sentence.says(&["at once|immediately"]))
            .then(|| sentence.claims(KEPT).map(|_| sentence.span))
            .flatten()
    });
    asked
        .map(|span| {
            RULE.query(
                Weight::MustSettle,
                span,
                "Is this oil made for the day? Raw garlic and herbs under oil must not be kept.",
                "botulinum grows without air; refrigerated at once it is used within 4 days, or frozen",
            )
        })
        .collect()
}
