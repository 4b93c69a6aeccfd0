//! No heat level.

use potwright_manuscript::{HeatWord, Span};
use potwright_pot::{Aim, Place};

use crate::cooked::{Cooked, cooks, lower, on_the_heat, oven_named_at, said_before, said_of, says};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "C03",
    name: "no heat level",
    finds: "Frying or sweating in a pan whose heat is nowhere said, and baking in an oven whose heat is nowhere said.",
    why: "Onions sweat at a low heat and burn at a high one in the same eight minutes.",
    fires: "Onion soup\n\n40 g butter\n4 onions, sliced\n1 litre stock\n\nMelt the butter in a large pot. Fry the onions for 15 minutes until soft. Pour in the stock and simmer for 20 minutes until sweet.\n",
    silent: "Onion soup\n\n40 g butter\n4 onions, sliced\n1 litre stock\n\nMelt the butter in a large pot over a low heat. Fry the onions for 15 minutes until soft. Pour in the stock and simmer for 20 minutes until sweet.\n",
    instead: "Name the heat once, where the pan goes on it: 'over a medium heat'; for an oven the degrees.",
    source: "common practice of test kitchens, no source",
    check,
};

/// Words that tell how hot, of a hob, by themselves.
const OF_A_HOB: &[&str] = &[
    "gentl*", "slow", "slowly", "brisk*", "fierce*", "hard", "lively", "lowest", "highest", "softly", "rolling",
    "simmer*",
];

/// Words that tell how hot with the heat near them: a medium pan is no medium heat.
const LEVELS: &[&str] = &[
    "low",
    "medium",
    "moderate*",
    "high",
    "hot",
    "quick",
    "strong",
    "warm",
    "full",
    "half",
    "bare*",
];
const HEATS: &[&str] = &["heat", "flame", "gas", "fire", "setting", "burner", "hob"];

/// Words that tell how hot, of an oven.
const OF_AN_OVEN: &[&str] = &[
    "hot",
    "moderate*",
    "slow",
    "low",
    "cool",
    "gas",
    "mark",
    "warm",
    "°c",
    "degrees",
    "c",
    "f",
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let mut known: Vec<usize> = Vec::new();
    // Where each pan came on the heat: the words on which its heat would stand.
    let mut lit: Vec<(usize, Span)> = Vec::new();
    let mut oven_known = false;
    let mut queries = Vec::new();
    for cooked in on_the_heat(manuscript) {
        let asked = match cooked.stretch.place {
            Place::Oven if !oven_known => {
                oven_known = true;
                oven_unsaid(manuscript, &cooked).then_some("How hot should the oven be?")
            }
            Place::Hob if !known.contains(&cooked.vessel) => {
                let frying = matches!(cooked.stretch.aim, Aim::Fry(_)) && cooks(cooked.operation.verb);
                let said = hob_said(manuscript, &cooked);
                if said || frying {
                    known.push(cooked.vessel);
                }
                (frying && !said).then_some("Over what heat? It is not said so far.")
            }
            _ => None,
        };
        if cooked.stretch.place == Place::Hob && !lit.iter().any(|(vessel, _)| *vessel == cooked.vessel) {
            lit.push((cooked.vessel, cooked.operation.span));
        }
        if let Some(asks) = asked {
            let place = match cooked.stretch.place {
                Place::Oven => oven_named_at(manuscript, &cooked),
                _ => lit
                    .iter()
                    .find(|(vessel, _)| *vessel == cooked.vessel)
                    .map(|(_, span)| *span),
            };
            queries.push(Query {
                code: RULE.code.into(),
                weight: Weight::WorthALook,
                span: place.unwrap_or(cooked.operation.span),
                asks: asks.into(),
                because: format!("{} is reckoned for want of a word", reckoned_with(&cooked)),
                try_words: None,
                see: Vec::new(),
            });
        }
    }
    queries
}

fn hob_said(manuscript: &Manuscript<'_>, cooked: &Cooked<'_>) -> bool {
    let operation = cooked.operation;
    operation.heat.is_some()
        || operation.temperature.is_some()
        || tells_heat(&said_before(manuscript, cooked.index))
        || tells_heat(&said_of(manuscript, cooked.index))
}

/// Whether the words tell how hot: by one word, or by a level and then the heat within three words.
fn tells_heat(text: &str) -> bool {
    let words: Vec<&str> = text
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .collect();
    let near = |at: usize| words.get(at + 1..words.len().min(at + 4)).unwrap_or_default().join(" ");
    says(text, OF_A_HOB) || (0..words.len()).any(|at| says(words[at], LEVELS) && says(&near(at), HEATS))
}

/// No degrees on the page up to here, and no word for an oven's heat.
fn oven_unsaid(manuscript: &Manuscript<'_>, cooked: &Cooked<'_>) -> bool {
    let operations = &manuscript.recipe.operations;
    let degrees = operations
        .iter()
        .take(cooked.index + 1)
        .any(|operation| operation.temperature.is_some() || operation.fan.is_some());
    let before = lower(manuscript.text, 0, cooked.operation.span.end);
    let worded = before
        .split(['.', '\n'])
        .any(|sentence| sentence.contains("oven") && says(sentence, OF_AN_OVEN));
    !degrees && !worded
}

fn reckoned_with(cooked: &Cooked<'_>) -> String {
    match cooked.stretch.aim {
        Aim::Oven(temperature) => format!("{:.0} °C", temperature.celsius()),
        Aim::Fry(word) | Aim::Setting(word) => format!("a {} heat", heat_word(word)),
        _ => "a usual heat".to_owned(),
    }
}

const fn heat_word(word: HeatWord) -> &'static str {
    match word {
        HeatWord::Off => "dead",
        HeatWord::Low | HeatWord::Lower => "low",
        HeatWord::MediumLow => "medium-low",
        HeatWord::Medium => "medium",
        HeatWord::MediumHigh => "medium-high",
        HeatWord::High => "high",
    }
}
