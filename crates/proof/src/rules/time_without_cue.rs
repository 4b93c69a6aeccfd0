//! A time without a sign to stop.

use potwright_manuscript::Verb;

use crate::cooked::{Cooked, cooks, on_the_heat, said_of, says};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "C01",
    name: "time without a cue",
    finds: "Cooking for so many minutes with no word of how the food looks, feels or sounds when they are over.",
    why: "Burners, pots and carrots differ: by the clock alone the reader cannot tell done from not yet.",
    fires: "Carrot soup\n\n500 g carrots, sliced\n1 litre stock\n\nPut the carrots and stock in a pot, bring to the boil over a high heat and simmer for 20 minutes. Blend.\n",
    silent: "Carrot soup\n\n500 g carrots, sliced\n1 litre stock\n\nPut the carrots and stock in a pot, bring to the boil over a high heat and simmer for 20 minutes until a knife slides in. Blend.\n",
    instead: "Say the sign after the time: 'until a knife slides in', 'until the onions are soft but not coloured'.",
    source: "common practice of test kitchens, no source",
    check,
};

/// A shorter time needs no sign (common practice, no source; 3 to 7 minutes).
const SHORT_MIN: f64 = 4.0;

/// Longer is keeping, not cooking.
const DAY_MIN: f64 = 1440.0;

/// Words that bring in a sign.
const SIGNS: &[&str] = &[
    "until", "till", "til", "when", "once", "should", "by", "test", "check", "look*", "feel*", "taste", "enough", "so",
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let mut asked = Vec::new();
    let mut queries = Vec::new();
    for cooked in on_the_heat(manuscript) {
        let operation = cooked.operation;
        let Some(minutes) = &operation.minutes else { continue };
        let signed = operation.cue.is_some() || operation.core.is_some();
        let short = minutes.high < SHORT_MIN || minutes.from_end || minutes.high > DAY_MIN;
        // Boiling hard for ten minutes is a time of its own right: beans, cider, a glaze.
        let short = short || operation.verb == Verb::Boil && minutes.high <= 10.0;
        if !cooks(operation.verb) || signed || short || asked.contains(&cooked.index) {
            continue;
        }
        if says(&sentence(manuscript, &cooked), SIGNS) {
            continue;
        }
        asked.push(cooked.index);
        queries.push(Query {
            code: RULE.code.into(),
            weight: Weight::HouseStyle,
            span: operation.span,
            asks: "How does the cook see that the time is up? A sign to look for would help.".into(),
            because: "only the minutes are said".into(),
            try_words: None,
            see: vec![(minutes.span, "the time".into())],
        });
    }
    queries
}

/// What is said up to the end of the sentence, and the next one when that tells how it should be.
fn sentence(manuscript: &Manuscript<'_>, cooked: &Cooked<'_>) -> String {
    let said = said_of(manuscript, cooked.index);
    let mut sentences = said.split_inclusive(". ");
    let first = sentences.next().unwrap_or("").to_owned();
    let next = sentences
        .next()
        .filter(|next| says(next, &["should", "ready", "done", "test", "check"]));
    first + next.unwrap_or("")
}
