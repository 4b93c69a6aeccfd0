//! The oven never heated, heated too early, or too late.

use potwright_manuscript::{Operation, Span, Verb};
use potwright_pot::{Place, PotKind};

use crate::cooked::{Cooked, comes_to_min, lower, on_the_heat, oven_named_at, says};
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

/// Minutes an oven takes where the run has none (common practice, no source; 10 to 20).
const USUAL_MIN: f64 = 15.0;

/// An oven told to be heated counts as late when less than this share of the time it takes is left (common practice,
/// no source; readers light it a little before they come to the words).
const LATE_SHARE: f64 = 0.5;

/// Words before 'the oven' that light it, those that tell of a hot one, and those that only do with a word after it.
const LIGHTS: &[&str] = &[
    "heat", "preheat", "light", "set", "turn", "switch", "warm", "fire", "start",
];
const ALREADY: &[&str] = &["heated", "preheated", "lit", "hot", "warmed"];
const GETS: &[&str] = &["get", "have", "bring", "prepare", "take", "crank", "keep"];
/// Words that may stand between.
const BETWEEN: &[&str] = &[
    "the", "your", "an", "a", "up", "on", "fan", "electric", "gas", "big", "main", "small", "pre",
];
/// Words after 'the oven' that tell of it.
const HOT: &[&str] = &[
    "hot",
    "heated",
    "preheated",
    "lit",
    "heating",
    "ready",
    "going",
    "on",
    "warming",
    "to",
];
/// So many words after it they stand.
const NEAR: usize = 3;

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

/// Where the method first has the oven lit.
struct Lit {
    /// Bytes into the text.
    at: usize,
    /// Told of as done: 'in a preheated oven'.
    already: bool,
}

/// The first words of the method that light the oven or tell of a hot one.
fn lit(manuscript: &Manuscript<'_>) -> Option<Lit> {
    manuscript.recipe.steps.iter().find_map(|step| {
        let start = step.words.span.start;
        let words = words_of(manuscript.text, start, step.words.span.end);
        let text_of = |at: usize| words.get(at).map_or("", |(_, word)| word.as_str());
        (0..words.len()).filter(|at| text_of(*at) == "oven").find_map(|oven| {
            let before = (0..oven).rev().find(|at| !BETWEEN.contains(&text_of(*at)))?;
            let (place, lead) = words.get(before)?;
            let after = (oven + 1..=oven + NEAR).any(|at| HOT.contains(&text_of(at)));
            let lead = lead.as_str();
            let lights = LIGHTS.contains(&lead) || GETS.contains(&lead) && after;
            let told = (oven + 1..=oven + NEAR).any(|at| ALREADY.contains(&text_of(at)));
            let moved = matches!(lead, "in" | "into" | "from" | "to" | "of");
            let already = ALREADY.contains(&lead) || !lights && told && !moved;
            (lights || already).then_some(Lit { at: *place, already })
        })
    })
}

/// The words of a stretch in small letters, each with the byte it begins at.
fn words_of(text: &str, start: usize, end: usize) -> Vec<(usize, String)> {
    let stretch = text.get(start..end).unwrap_or("");
    let mut words = Vec::new();
    let mut from = None;
    for (at, c) in stretch.char_indices().chain([(stretch.len(), ' ')]) {
        match (c.is_alphanumeric(), from) {
            (true, None) => from = Some(at),
            (false, Some(begun)) => {
                words.push((start + begun, stretch.get(begun..at).unwrap_or("").to_lowercase()));
                from = None;
            }
            _ => {}
        }
    }
    words
}

fn asked(manuscript: &Manuscript<'_>, cooked: &Cooked<'_>) -> Option<Query> {
    let heated = manuscript
        .reckoned
        .trace
        .ovens
        .iter()
        .find(|oven| oven.act == cooked.act);
    let takes_min = heated.map_or(USUAL_MIN, |oven| oven.takes_s / 60.0);
    let goes_in = cooked.operation.span;
    let Some(lit) = lit(manuscript) else {
        let because = format!("this oven takes about {takes_min:.0} minutes");
        let named = oven_named_at(manuscript, cooked).unwrap_or(goes_in);
        return Some(query(
            named,
            "When is the oven heated? The page does not say it.",
            because,
            vec![(goes_in, "it goes in here".to_owned())],
        ));
    };
    let span = clause_at(manuscript, lit.at);
    let see = vec![(goes_in, "it goes in here".to_owned())];
    if lit.at >= goes_in.end {
        return Some(query(
            span,
            "Should the oven be heated before the dish goes in?",
            format!("the dish goes in first; this oven takes about {takes_min:.0} minutes"),
            see,
        ));
    }
    if lit.already {
        return None;
    }
    let operations = &manuscript.recipe.operations;
    let at = operations.iter().position(|operation| operation.span.end > lit.at)?;
    let idle_min = (cooked.start_min - lit_min(manuscript, at, lit.at)?).max(0.0);
    // What is said first is done while things are weighed and cut.
    let opening = operations.iter().take(at).all(is_board_work) || operations.get(at)?.step == 0 && at == 0;
    if !opening && idle_min < LATE_SHARE * takes_min {
        return Some(query(
            span,
            "Should the oven be heated earlier? It is hardly warm when the dish goes in.",
            format!("it takes about {takes_min:.0} minutes, and the dish goes in about {idle_min:.0} minutes later"),
            see,
        ));
    }
    (idle_min > takes_min + IDLE_MIN).then(|| {
        query(
            span,
            "Could the oven be heated later? It stands hot and empty for long.",
            format!("the dish goes in about {idle_min:.0} minutes later, and it takes about {takes_min:.0} minutes"),
            see,
        )
    })
}

/// From the word that lights the oven to the end of the clause.
fn clause_at(manuscript: &Manuscript<'_>, at: usize) -> Span {
    let rest = manuscript.text.get(at..).unwrap_or("");
    let end = rest.find(['.', ',', ';', '\n']).unwrap_or(rest.len());
    Span::new(at, at + end)
}

/// Minute at which the page has the oven lit: 'meanwhile' and 'while it rises' are from the start of the act before.
fn lit_min(manuscript: &Manuscript<'_>, at: usize, place: usize) -> Option<f64> {
    let operation = manuscript.recipe.operations.get(at)?;
    let step = manuscript.recipe.steps.get(operation.step)?;
    let start = step.words.span.start;
    let before = lower(manuscript.text, start, place);
    let sentence = before.rsplit(['.', ';']).next().unwrap_or("").to_owned();
    let sentence = sentence + &clause_at(manuscript, place).of(manuscript.text).to_lowercase();
    let earlier = says(
        &sentence,
        &["while", "meanwhile", "meantime", "before", "as", "towards", "during"],
    );
    if operation.meanwhile || earlier {
        comes_to_min(manuscript, at.saturating_sub(1))
    } else {
        comes_to_min(manuscript, at)
    }
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
