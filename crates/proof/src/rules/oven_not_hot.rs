//! The oven never heated, heated too early, or too late.

use potwright_manuscript::{Operation, Span, Verb};
use potwright_pot::{Place, PotKind};

use crate::cooked::{Cooked, comes_to_min, lower, on_the_heat, said_before, says};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "C07",
    name: "oven never heated, too early, too late",
    finds: "A dish that goes into an oven nobody was told to heat, one told so late that it is still cold, or one that has burned for more than an hour for nothing.",
    why: "A cold oven bakes no crust and makes every stated time wrong; an empty hot one costs gas.",
    fires: "Braised beef\n\n800 g beef, diced\n500 ml stock\n\nPut the beef and stock in a casserole, bring to the boil, cover and cook in the oven at 160°C for 2 hours until tender.\n",
    silent: "Braised beef\n\n800 g beef, diced\n500 ml stock\n\nHeat the oven to 160°C. Put the beef and stock in a casserole, bring to the boil, cover and cook in the oven for 2 hours until tender.\n",
    instead: "Say it one heating-up time before the dish goes in, commonly as the first thing.",
    source: "heating-up time of the kitchen's oven in the simulation; the hour: common practice, no source",
    check,
};

/// Burning empty for longer than this is asked about, minutes (common practice, no source; 40 to 90).
const IDLE_MIN: f64 = 60.0;

/// An oven told to be heated counts as late when less than this share of the time it takes is left (common practice,
/// no source; readers light it a little before they come to the words).
const LATE_SHARE: f64 = 0.5;

/// Words that send the reader to light an oven, a little before the word itself or after it.
const LIGHTS: &[&str] = &[
    "heat", "preheat*", "light", "lit", "set", "turn", "switch", "warm", "hot", "heated", "fire",
];
const HOT: &[&str] = &["hot", "heated", "lit", "heating", "preheat*", "ready", "on", "warming"];
/// So many words away from it.
const NEAR: usize = 4;

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let vessels = &manuscript.reckoned.process.vessels;
    let first = on_the_heat(manuscript).into_iter().find(|cooked| {
        let own_heat = vessels
            .get(cooked.vessel)
            .and_then(|vessel| vessel.pot.as_ref())
            .is_some_and(|pot| pot.kind == PotKind::SlowCooker);
        cooked.stretch.place == Place::Oven && cooked.operation.verb != Verb::Broil && !own_heat
    });
    first
        .and_then(|cooked| asked(manuscript, &cooked))
        .into_iter()
        .collect()
}

/// The place of the words that heat the oven: an operation of its own, or else a clause.
pub(super) fn lighting<'a>(manuscript: &Manuscript<'a>) -> Option<(usize, &'a Operation)> {
    let mut operations = manuscript.recipe.operations.iter().enumerate();
    operations.find(|(_, operation)| {
        let words = operation.span.of(manuscript.text).to_lowercase();
        let oven = words.contains("oven") && !words.contains("dutch oven");
        oven && matches!(operation.verb, Verb::Heat | Verb::Bake)
            && operation.minutes.is_none()
            && operation.cue.is_none()
            && operation.foods.is_empty()
    })
}

fn asked(manuscript: &Manuscript<'_>, cooked: &Cooked<'_>) -> Option<Query> {
    let heated = manuscript
        .reckoned
        .trace
        .ovens
        .iter()
        .find(|oven| oven.act == cooked.act);
    let takes_min = heated.map_or(15.0, |oven| oven.takes_s / 60.0);
    let Some((at, operation)) = lighting(manuscript) else {
        return (!lit_in_words(manuscript, cooked.operation)).then(|| {
            query(
                cooked.operation.span,
                "When is the oven heated? The page does not say it.",
                format!("this oven takes about {takes_min:.0} minutes"),
                Vec::new(),
            )
        });
    };
    let see = vec![(cooked.operation.span, "it goes in here".to_owned())];
    if at > cooked.index || operation.span.start > cooked.operation.span.start {
        return Some(query(
            operation.span,
            "Should the oven be heated before the dish goes in?",
            format!("the dish goes in first; this oven takes about {takes_min:.0} minutes"),
            see,
        ));
    }
    let idle_min = cooked.start_min - lit_min(manuscript, at)?;
    // What is said first is done while things are weighed and cut.
    let opening = operation.step == 0 || manuscript.recipe.operations.iter().take(at).all(is_board_work);
    if !opening && idle_min < LATE_SHARE * takes_min {
        return Some(query(
            operation.span,
            "Should the oven be heated earlier? It is hardly warm when the dish goes in.",
            format!(
                "it takes about {takes_min:.0} minutes, and the dish goes in about {:.0} minutes later",
                idle_min.max(0.0)
            ),
            see,
        ));
    }
    (idle_min > takes_min + IDLE_MIN).then(|| {
        query(
            operation.span,
            "Could the oven be heated later? It stands hot and empty for long.",
            format!("the dish goes in about {idle_min:.0} minutes later, and it takes about {takes_min:.0} minutes"),
            see,
        )
    })
}

/// Minute at which the page has the oven lit: 'meanwhile' and 'while it rises' are from the start of the act before.
fn lit_min(manuscript: &Manuscript<'_>, at: usize) -> Option<f64> {
    let operation = manuscript.recipe.operations.get(at)?;
    let sentence = said_before(manuscript, at);
    let sentence = sentence.rsplit(['.', ';']).next().unwrap_or("");
    if operation.meanwhile
        || says(
            sentence,
            &["while", "meanwhile", "meantime", "before", "as", "towards", "during"],
        )
    {
        comes_to_min(manuscript, at.saturating_sub(1))
    } else {
        comes_to_min(manuscript, at)
    }
}

/// A sentence before or about the dish's going in that tells of a hot oven: 'in a preheated oven', 'have the oven hot'.
fn lit_in_words(manuscript: &Manuscript<'_>, goes_in: &Operation) -> bool {
    let before = lower(manuscript.text, 0, goes_in.span.end);
    let words: Vec<&str> = before
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .collect();
    words.iter().enumerate().any(|(at, word)| {
        let near = |from: usize, to: usize, sought| {
            words
                .get(from..to.min(words.len()))
                .is_some_and(|near| says(&near.join(" "), sought))
        };
        *word == "oven" && (near(at.saturating_sub(NEAR), at, LIGHTS) || near(at + 1, at + 1 + NEAR, HOT))
    })
}

const fn is_board_work(operation: &Operation) -> bool {
    matches!(
        operation.verb,
        Verb::Wash | Verb::PickOver | Verb::Peel | Verb::Cut | Verb::Grind | Verb::Sift
    )
}

fn query(span: Span, asks: &str, because: String, see: Vec<(Span, String)>) -> Query {
    Query {
        code: RULE.code.into(),
        weight: Weight::WorthALook,
        span,
        asks: asks.into(),
        because,
        try_words: None,
        see,
    }
}
