//! A sign to stop without a time, or neither.

use potwright_pot::Cue;

use crate::cooked::{cooks, on_the_heat, printed, said_of, says};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "C02",
    name: "cue without a time",
    finds: "Cooking 'until tender', or with no word of its end, where the minutes are not said and are more than a few.",
    why: "The reader cannot plan, and a beginner does not know whether tender is ten minutes away or two hours.",
    fires: "Shin of beef\n\n800 g beef shin, diced\n1 litre stock\n\nPut the beef and stock in a pot, bring to the boil over a high heat, then simmer gently until tender.\n",
    silent: "Shin of beef\n\n800 g beef shin, diced\n1 litre stock\n\nPut the beef and stock in a pot, bring to the boil over a high heat, then simmer gently for 2 to 3 hours until tender.\n",
    instead: "Give the time beside the sign: 'about 2 hours, until tender'.",
    source: "common practice of test kitchens, no source; the minutes are the simulation's",
    check,
};

/// Shorter than this, the cook stands by and watches (common practice, no source; 2 to 5 minutes).
const WATCHED_MIN: f64 = 3.0;

/// Words that give a time after all.
const TIMES: &[&str] = &[
    "minute*",
    "min",
    "mins",
    "hour*",
    "hr",
    "hrs",
    "second*",
    "overnight",
    "half-hour",
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let mut asked = Vec::new();
    let mut queries = Vec::new();
    for cooked in on_the_heat(manuscript) {
        let operation = cooked.operation;
        let brought = matches!(cooked.stretch.lasts.cue, Some(Cue::Boils | Cue::Reaches(_)));
        let watched = cooked.minutes() < WATCHED_MIN;
        // Minutes of the tables stand in where the page has none.
        let timed = operation.minutes.is_some() || cooked.stretch.lasts.minutes.is_some() && operation.cue.is_none();
        let told = says(&said_of(manuscript, cooked.index), TIMES);
        if !cooks(operation.verb) || brought || watched || timed || told || asked.contains(&cooked.index) {
            continue;
        }
        // 'Bring to a simmer' and what is said to follow at once need no time of their own.
        if operation.cue.is_none() && followed(manuscript, cooked.index) {
            continue;
        }
        asked.push(cooked.index);
        queries.push(query(manuscript, &cooked));
    }
    queries
}

/// Whether the page goes on cooking the same thing in the same step, with a time or a sign.
fn followed(manuscript: &Manuscript<'_>, index: usize) -> bool {
    let operations = &manuscript.recipe.operations;
    let Some(this) = operations.get(index) else {
        return false;
    };
    operations
        .iter()
        .skip(index + 1)
        .take_while(|later| later.step <= this.step + 1)
        .any(|later| cooks(later.verb) && (later.minutes.is_some() || later.cue.is_some()))
}

fn query(manuscript: &Manuscript<'_>, cooked: &crate::cooked::Cooked<'_>) -> Query {
    let operation = cooked.operation;
    let about = printed(cooked.minutes());
    let computed = matches!(
        cooked.stretch.lasts.cue,
        Some(Cue::Browned | Cue::Softened | Cue::ReducedTo(_) | Cue::ReducedToVolume(_))
    ) || matches!(cooked.stretch.lasts.cue, Some(Cue::Tender(_) | Cue::CookedThrough(_)));
    let because = if computed {
        format!("about {about} are computed until then, without a range")
    } else {
        format!("nothing computes this sign; {about} were taken as usual")
    };
    let try_words = operation.cue.as_ref().filter(|_| computed).map(|cue| {
        let head = manuscript.text.get(operation.span.start..cue.span.start).unwrap_or("");
        let lead = head
            .rfind("until")
            .map_or("until ", |at| head.get(at..).unwrap_or("until "));
        format!("for about {about}, {}{}", lead, cue.text)
    });
    Query {
        code: RULE.code.into(),
        weight: Weight::WorthALook,
        span: operation.span,
        asks: "About how long does this take? No time is said.".into(),
        because,
        try_words,
        see: operation.cue.iter().map(|cue| (cue.span, "the sign".into())).collect(),
    }
}
