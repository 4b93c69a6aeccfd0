//! Cooling too slow for the two-stage rule.

use potwright_reckon::Verdict;

use crate::prose::sentences;
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "S02",
    name: "cooling too slow for the two-stage rule",
    finds: "Hot food whose warmest place is not at 21 °C within 2 hours and 5 °C within 6; and food left to stand out overnight or for many hours.",
    why: "Spores that outlive the boil grow out between 52 and 10 °C.",
    fires: "Leek soup\n\n3 leeks, sliced\n1 litre water\n1 tsp salt\n\nPut the leeks, water and salt in a pot and simmer for 20 minutes until soft. Blend.\n\nLeave the pot on the worktop overnight, then refrigerate.\n",
    silent: "Leek soup\n\n3 leeks, sliced\n1 litre water\n1 tsp salt\n\nPut the leeks, water and salt in a pot and simmer for 20 minutes until soft. Blend.\n\nServe at once.\n",
    instead: "Iced water and stirring, or small amounts apart from each other in a freezer; never a shallow pan in the refrigerator alone.",
    source: "FDA Food Code 2022 3-501.14(A); Food Protection Trends 33 (2013) 27-31",
    check,
};

const STANDS: &[&str] = &[
    "leave|left|let|stand|stands|sit|sits|cool|cools|rest|rests|stay|stays|keep|keeps … overnight|counter|worktop|workbench|bench|side|sideboard|hob|stove|stovetop|porch|doorstep|windowsill|larder|pantry|cellar|garage|scullery",
    "room|kitchen temperature",
    "out overnight",
    "overnight … on|in the pot|stove|hob|side|counter|kitchen|porch|oven",
];
const LONG: &[&str] = &[
    "overnight",
    "all|whole night|day|afternoon|evening",
    "until|till … morning",
    "next|following|in the morning|day",
    "half|several|few|many days|hours",
    "3|4|5|6|7|8|9|10|12|24|three|four|five|six|seven|eight|nine|ten|twelve hours",
];
const COLD: &[&str] = &[
    "refrigerat*",
    "fridge*",
    "chill*",
    "freez*",
    "ice*",
    "icy",
    "soak*",
    "dough",
    "prove*",
    "rise*",
];
/// The cold comes only after the long stand.
const THEN_COLD: &[&str] = &["then|before|and … refrigerat*|chill*|fridge|freez*", "in the morning"];
/// A full pot that goes into the refrigerator hot.
const HOT_IN: &[&str] = &["hot|warm pot|soup|stock|stew|pan|casserole … fridge|refrigerator"];
const COOKED: &[&str] = &[
    "pots|pans",
    "its",
    "soups",
    "pot",
    "soup",
    "stew",
    "stock",
    "broth",
    "it",
    "them",
    "leftover*",
    "rest",
    "what",
    "chilli",
    "curry",
    "rice",
    "ham",
    "pan",
    "casserole",
    "sauce",
    "any",
    "remainder",
    "braise",
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let rows = &manuscript.reckoned.dossier.cooling;
    let mut queries: Vec<Query> = rows
        .iter()
        .filter(|row| row.verdict == Verdict::Fails)
        .filter_map(|row| {
            let weight = if row.assumed {
                Weight::WorthALook
            } else {
                Weight::MustSettle
            };
            Some(RULE.query(
                weight,
                row.span?,
                "Does it cool fast enough this way? By computation it does not.",
                row.says.clone(),
            ))
        })
        .collect();
    let said = sentences(manuscript.recipe, manuscript.text);
    for sentence in &said {
        let straight_in = sentence.claims(HOT_IN).is_some();
        if sentence.claims(STANDS).is_none() && !straight_in {
            continue;
        }
        let span = sentence.span;
        let long = straight_in || (sentence.says(LONG) && sentence.says(COOKED));
        let cold = !straight_in && sentence.says(COLD) && !sentence.says(THEN_COLD);
        if long && !cold && !queries.iter().any(|query| sentence.span.contains(query.span)) {
            queries.push(RULE.query(
                Weight::MustSettle,
                span,
                "May cooked food stand out for so long? It has to be at 21 °C within 2 hours and at 5 °C within 6.",
                "FDA Food Code 2022 3-501.14(A); iced water and stirring does it, or small amounts apart in a freezer",
            ));
        }
    }
    queries
}
