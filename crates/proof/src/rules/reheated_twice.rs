//! A second reheating.

use crate::prose::sentences;
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "S08",
    name: "second reheating",
    finds: "Advice to reheat more than once, or to cool and keep again what was reheated.",
    why: "Each round through the warm hours lets what survived grow.",
    fires: "Leek soup\n\n3 leeks, sliced\n1 litre water\n1 tsp salt\n\nPut the leeks, water and salt in a pot and simmer for 20 minutes until soft. Blend.\n\nIt can be reheated as often as you like.\n",
    silent: "Leek soup\n\n3 leeks, sliced\n1 litre water\n1 tsp salt\n\nPut the leeks, water and salt in a pot and simmer for 20 minutes until soft. Blend.\n\nReheat it once only, until steaming hot.\n",
    instead: "'Reheat once, only what will be eaten, until it is 74 °C.'",
    source: "FDA Food Code 2022 3-403.11 for the temperature; 'once only': common advice of food authorities, no source",
    check,
};

const AGAIN: &[&str] = &[
    "reheat*|rewarm*|warm*|heat* … second|third time|day|evening",
    "reheat*|rewarm* … again|twice|repeatedly|often|times|nightly|daily",
    "warm*|heat* … again and again|twice|repeatedly|often|times",
    "again|twice|repeatedly|often|times|nightly … reheat*|rewarm*|warm*",
    "cool|chill|refrigerate|fridge|put … again … reheat*|warm*",
    "second|third reheat*|warming",
    "reheated … back … fridge|refrigerator",
    "back into|in the fridge|refrigerator … again|reheat*|warm*",
    "each|every time|night|day … reheat*|warm*|heat*",
    "reheat*|warm*|heat* … each|every night|day|evening|time",
    "keep reheating|rewarming",
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let said = sentences(manuscript.recipe, manuscript.text);
    let asked = said.iter().filter_map(|sentence| {
        sentence
            .claims(AGAIN)
            .map(|_| sentence.span)
            .filter(|_| !sentence.says(&["once only", "only once", "more than once"]))
    });
    asked
        .map(|span| {
            RULE.query(
                Weight::MustSettle,
                span,
                "Is it reheated more than once? What was reheated should be eaten or thrown away.",
                "reheated once to 74 °C within 2 hours (FDA Food Code 2022 3-403.11)",
            )
        })
        .collect()
}
