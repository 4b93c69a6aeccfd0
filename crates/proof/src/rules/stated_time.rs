//! The stated total time against the computed one.

use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "L09",
    name: "stated total time against computed",
    finds: "A total time on the page that the computed time does not meet, its whole spread outside what the page says, give or take a fifth.",
    why: "Supper is late, and the reader does not trust the next page either.",
    fires: "Bean pot\n\nTotal time: 30 minutes\n\n300 g tinned white beans\n1 litre stock\n\nPut the beans and stock in a pot, bring to the boil and simmer for 2 hours.\n",
    silent: "Bean pot\n\n300 g tinned white beans\n1 litre stock\n\nPut the beans and stock in a pot, bring to the boil and simmer for 2 hours.\n",
    instead: "Print the computed time, soaking and resting counted in or named beside it.",
    source: "sum of the simulation's acts and the preparation table",
    check,
};

/// Times are rounded on a page and cooks differ (common practice, no source).
const LEEWAY: f64 = 0.20;

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let figure = &manuscript.reckoned.dossier.elapsed;
    let (low, high) = figure.spread.unwrap_or((figure.value, figure.value));
    let totals = manuscript
        .recipe
        .declared_times
        .iter()
        .filter(|time| time.what.eq_ignore_ascii_case("total"));
    totals
        .filter(|time| low > time.minutes.1 * (1.0 + LEEWAY) || high < time.minutes.0 * (1.0 - LEEWAY))
        .map(|time| Query {
            code: RULE.code.into(),
            weight: Weight::WorthALook,
            span: time.words.span,
            asks: "Does it take this long? The steps come to another time.".into(),
            because: format!("computed {:.0} minutes ({low:.0} to {high:.0})", figure.value),
            try_words: None,
            see: Vec::new(),
        })
        .collect()
}
