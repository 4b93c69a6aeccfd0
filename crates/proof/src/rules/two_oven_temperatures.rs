//! Two oven temperatures at once.

use potwright_pot::{Aim, Place};

use super::oven_not_hot::lighting;
use crate::cooked::{Cooked, lower, on_the_heat, says};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "C08",
    name: "two oven temperatures at once",
    finds: "An oven heated to one temperature and used at another with no word of changing it, and two things in it at the same time at different temperatures.",
    why: "One oven has one temperature: the reader has to guess which of the two was tested.",
    fires: "Braised beef\n\n800 g beef, diced\n500 ml stock\n\nHeat the oven to 160°C. Put the beef and stock in a casserole, bring to the boil, cover and cook in the oven at 200°C for 2 hours until tender.\n",
    silent: "Braised beef\n\n800 g beef, diced\n500 ml stock\n\nHeat the oven to 200°C. Put the beef and stock in a casserole and bring to the boil. Turn the oven down to 160°C, cover and cook in the oven for 2 hours until tender.\n",
    instead: "Print the tested temperature in both places, or say when the oven is turned up or down.",
    source: "common practice of copy editing, no source",
    check,
};

/// Marks of a dial are 10 K apart; a fan's setting stands beside the ordinary one and is read apart.
const SAME_K: f64 = 8.0;

/// Words that change a setting, in the clause that names the oven or its temperature.
const CHANGES: &[&str] = &[
    "reduc*", "lower*", "down", "turn*", "up", "rais*", "increas*", "drop*", "chang*", "decreas*", "cool*", "fall*",
    "adjust*", "reset*", "another", "crank*", "slacken", "ease", "dial", "switch*", "knock*", "bring",
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let in_oven: Vec<Cooked<'_>> = on_the_heat(manuscript)
        .into_iter()
        .filter(|cooked| cooked.stretch.place == Place::Oven)
        .collect();
    let mut queries: Vec<Query> = heated_otherwise(manuscript, &in_oven).into_iter().collect();
    queries.extend(side_by_side(&in_oven));
    queries
}

/// The first dish in is baked at another temperature than the oven was heated to.
fn heated_otherwise(manuscript: &Manuscript<'_>, in_oven: &[Cooked<'_>]) -> Option<Query> {
    let first = in_oven.first()?;
    let (at, lit) = lighting(manuscript)?;
    let heated_c = lit.temperature?.temperature().celsius();
    let stated = first.operation.temperature.filter(|_| at < first.index)?;
    let baked_c = stated.temperature().celsius();
    let between = lower(manuscript.text, lit.span.end, first.operation.span.end);
    let fan = lit.fan.or(first.operation.fan).map(|fan| fan.temperature().celsius());
    let is_fan = fan.is_some_and(|fan| (fan - baked_c).abs() < SAME_K || (fan - heated_c).abs() < SAME_K);
    if (heated_c - baked_c).abs() < SAME_K || is_fan || changed(&between) {
        return None;
    }
    Some(Query {
        code: RULE.code.into(),
        weight: Weight::WorthALook,
        span: first.operation.span,
        asks: "Which of the two temperatures was the oven at?".into(),
        because: format!("heated to {heated_c:.0} °C, used at {baked_c:.0} °C, and nothing between changes it"),
        try_words: None,
        see: vec![(lit.span, "heated here".into())],
    })
}

/// Whether a clause turns the oven up or down.
fn changed(between: &str) -> bool {
    between.split(['.', ';', ',', '\n']).any(|clause| {
        let of_the_oven = says(clause, &["oven", "temperature", "thermostat", "gas"]) || clause.contains('°');
        of_the_oven && says(clause, CHANGES)
    })
}

/// Two things in the oven during the same minutes.
fn side_by_side(in_oven: &[Cooked<'_>]) -> Vec<Query> {
    let mut queries = Vec::new();
    for (at, later) in in_oven.iter().enumerate() {
        let clash = in_oven.iter().take(at).find(|earlier| {
            let together = later.start_min < earlier.end_min - 1.0 && earlier.start_min < later.end_min - 1.0;
            together && earlier.vessel != later.vessel && apart(earlier.stretch.aim, later.stretch.aim).is_some()
        });
        let Some((earlier, (one_c, other_c))) =
            clash.and_then(|earlier| Some((earlier, apart(earlier.stretch.aim, later.stretch.aim)?)))
        else {
            continue;
        };
        queries.push(Query {
            code: RULE.code.into(),
            weight: Weight::WorthALook,
            span: later.operation.span,
            asks: "At which temperature do both stand in the oven?".into(),
            because: format!(
                "at minute {:.0} one thing bakes at {one_c:.0} °C and another at {other_c:.0} °C",
                later.start_min.max(earlier.start_min)
            ),
            try_words: None,
            see: vec![(earlier.operation.span, "the other one".into())],
        });
    }
    queries
}

/// The two settings, when they are not the same.
fn apart(one: Aim, other: Aim) -> Option<(f64, f64)> {
    match (one, other) {
        (Aim::Oven(one), Aim::Oven(other)) => {
            let (one, other) = (one.celsius(), other.celsius());
            ((one - other).abs() >= SAME_K).then_some((one, other))
        }
        _ => None,
    }
}
