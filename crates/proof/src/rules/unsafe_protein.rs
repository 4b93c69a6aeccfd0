//! Protein below its safe time and temperature.

use potwright_larder::Hazard;
use potwright_reckon::{Doneness, Verdict};

use crate::placed::{cooking_of, line_of, longer};
use crate::prose::sentences;
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "S01",
    name: "protein below its safe time and temperature",
    finds: "Meat, poultry, fish or egg whose coldest piece does not meet its published rule; pink poultry or mince on the page's own word.",
    why: "Salmonella and its like survive, and the reader trusts the page.",
    fires: "Chicken soup\n\n4 chicken thighs, boned\n1 litre water\n\nBring the water to the boil in a pot. Add the chicken and simmer for 2 minutes. Serve.\n",
    silent: "Chicken soup\n\n4 chicken thighs, boned\n1 litre water\n\nPut the chicken and water in a pot, bring to the boil and simmer for 40 minutes until tender. Serve.\n",
    instead: "A longer time, and the temperature in the thickest part.",
    source: "FDA Food Code 2022 3-401.11; USDA FSIS safe minimum internal temperature chart",
    check,
};

/// Kelvins a kitchen may differ from another at the middle of a piece (common practice, no source; 5 to 8).
const CLOSE_K: f64 = 6.0;

const PINK: &[&str] = &[
    "pink|rosy|bloody|rare … inside|middle|centre|center|bone|heart",
    "still|slightly|little|faintly pink|rosy|rare",
    "inside|middle|centre|center … pink|rosy|rare",
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let rows = &manuscript.reckoned.dossier.doneness;
    let failed = |row: &&Doneness| row.verdict == Verdict::Fails && row.hazard != Some(Hazard::KidneyBean);
    let mut queries: Vec<Query> = rows
        .iter()
        .filter(failed)
        .filter_map(|row| of_row(manuscript, row))
        .collect();
    let bird = rows
        .iter()
        .find(|row| matches!(row.hazard, Some(Hazard::Poultry | Hazard::MincedMeat)));
    if let Some(row) = bird {
        let said = sentences(manuscript.recipe, manuscript.text);
        let pink = said.iter().filter_map(|sentence| sentence.claims(PINK));
        queries.extend(pink.map(|span| {
            let asks = format!(
                "May the {} be pink here? Poultry and mince are done by temperature.",
                row.name
            );
            RULE.query(
                Weight::MustSettle,
                span,
                asks,
                format!("the rule is {}; {}", row.rule, row.source),
            )
        }));
    }
    queries
}

fn of_row(manuscript: &Manuscript<'_>, row: &Doneness) -> Option<Query> {
    let line = line_of(manuscript, row.lot);
    let heat = cooking_of(manuscript, row.lot);
    let span = heat.map(|operation| operation.span).or(line)?;
    // Close to the rule, and the page tells a sign to go on until: the reader is not left with the minutes alone.
    let guarded = heat.is_some_and(|operation| operation.cue.is_some() || operation.core.is_some());
    let rule_c = row
        .rule
        .split(' ')
        .next()
        .and_then(|degrees| degrees.parse::<f64>().ok());
    let close = rule_c.is_some_and(|rule_c| row.centre.value >= rule_c - CLOSE_K);
    let weight = if guarded && close {
        Weight::WorthALook
    } else {
        Weight::MustSettle
    };
    let asks = format!(
        "Is the {} cooked through here? By computation it is not safe yet.",
        row.name
    );
    let because = format!(
        "hottest at its coldest point {}; the rule is {} ({}). A computation, not a measurement: a thermometer in the thickest part decides",
        row.centre.display(),
        row.rule,
        row.source
    );
    let mut query = RULE.query(weight, span, asks, because);
    if let Some(minutes) = heat.and_then(|operation| operation.minutes.as_ref()) {
        query.try_words = longer(manuscript, minutes, |again| {
            let met = |one: &Doneness| one.name == row.name && one.verdict == Verdict::Meets;
            again.dossier.doneness.iter().any(met)
        });
    }
    query.see.extend(line.map(|line| (line, "on the list".into())));
    Some(query)
}
