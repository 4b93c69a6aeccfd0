//! Soaking, resting or chilling time hidden in the list.

use potwright_manuscript::{Ingredient, Span};

use crate::cooked::{lower, says};
use crate::usage::name;
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "C12",
    name: "soaking, resting or chilling hidden in the list",
    finds: "Hours of soaking, marinating, salting, resting, thawing or chilling that only a line of the list speaks of: no step, no stated time and nothing before the list tells of them.",
    why: "The reader finds out at six in the evening that it should have begun the night before.",
    fires: "Bean soup\n\n300 g dried white beans, soaked overnight\n1.5 litres water\n\nPut the beans and water in a pot, bring to the boil and simmer for 90 minutes until soft.\n",
    silent: "Bean soup\n\n300 g dried white beans\n1.5 litres water\n\nSoak the beans overnight in plenty of cold water and drain. Put the beans and water in a pot, bring to the boil and simmer for 90 minutes until soft.\n",
    instead: "Make it the first step: 'The night before, soak the beans', and count it in the total time.",
    source: "common practice of copy editing, no source",
    check,
};

/// What takes hours, by the beginnings of its words.
const WAITS: &[(&str, &[&str])] = &[
    ("soaking", &["soak*", "steep*"]),
    ("marinating", &["marinat*", "marinad*", "macerat*"]),
    ("salting", &["brined", "brine", "salted", "cured", "corned"]),
    (
        "resting",
        &[
            "rested",
            "rest",
            "proved",
            "proofed",
            "risen",
            "leavened",
            "fermented",
            "strained",
            "hung",
        ],
    ),
    ("thawing", &["thaw*", "defrost*"]),
    ("chilling", &["chill*", "refrigerat*", "frozen", "set"]),
    (
        "waiting",
        &[
            "overnight",
            "night",
            "yesterday",
            "day",
            "days",
            "hours",
            "eve",
            "evening",
        ],
    ),
];

/// Words for hours.
const HOURS: &[&str] = &[
    "overnight",
    "night",
    "hour*",
    "hr",
    "hrs",
    "day",
    "days",
    "evening",
    "yesterday",
    "minutes",
    "min",
    "mins",
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let mut queries: Vec<Query> = Vec::new();
    for line in &manuscript.recipe.ingredients {
        let Some((what, span)) = wait(manuscript.text, line) else {
            continue;
        };
        if told(manuscript, what) || queries.iter().any(|query| query.span == span) {
            continue;
        }
        queries.push(Query {
            code: RULE.code.into(),
            weight: Weight::WorthALook,
            span,
            asks: format!(
                "Could the {} of the {} stand in the method, where its time is seen?",
                what.0,
                name(line)
            ),
            because: "only the list speaks of it".into(),
            try_words: None,
            see: Vec::new(),
        });
    }
    queries
}

type Wait = (&'static str, &'static [&'static str]);

/// The wait that a line asks for, after its name or with hours beside it, and the place of its words.
fn wait(text: &str, line: &Ingredient) -> Option<(&'static Wait, Span)> {
    let words = lower(text, line.line.span.start, line.line.span.end);
    let name_ends = line.items.iter().map(|item| item.span.end).max()?;
    let after = lower(text, name_ends, line.line.span.end);
    // 'For chilling', 'to soak' is of something else, and 'if frozen' is no order.
    let timed = says(&words, HOURS);
    let found = WAITS.iter().find(|(what, beginnings)| {
        let hours_needed = !matches!(*what, "soaking" | "marinating" | "thawing");
        says(&after, beginnings) && (timed || !hours_needed) || timed && says(&words, beginnings)
    });
    let what = found.filter(|_| !says(&after, &["old"]))?;
    Some((what, line.preparation.as_ref().map_or(line.span, |words| words.span)))
}

/// Whether anything but the list tells of the wait: a step, a stated time, the lines before the list.
fn told(manuscript: &Manuscript<'_>, what: &Wait) -> bool {
    let recipe = manuscript.recipe;
    let steps = recipe.steps.iter().map(|step| &step.words);
    let times = recipe.declared_times.iter().map(|time| &time.words);
    let mut texts = steps.chain(times).chain(&recipe.headnote);
    texts.any(|words| {
        let words = words.text.to_lowercase();
        let again = match what.0 {
            "salting" => says(&words, &["brine*", "brining", "salting", "cure*"]) || says(&words, &["overnight"]),
            "resting" => says(&words, &["rest", "resting", "prove", "rise", "strain*", "hang"]),
            "chilling" => says(&words, &["chill*", "refrigerat*", "overnight", "freez*"]),
            // Hours of another thing are no word of this wait.
            "waiting" => {
                let before = ["night before", "day before", "evening before"];
                says(&words, &["soak*", "overnight", "yesterday", "eve"])
                    || before.iter().any(|said| words.contains(said))
            }
            _ => says(&words, what.1),
        };
        again || says(&words, &["beforehand"])
    })
}
