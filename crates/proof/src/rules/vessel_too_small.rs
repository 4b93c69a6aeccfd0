//! A vessel too small at some minute.

use potwright_manuscript::Span;
use potwright_pot::Happening;

use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "C05",
    name: "vessel too small at some minute",
    finds: "A pot or pan that its contents fill past what the heat allows, at the fullest minute of the cooking.",
    why: "It boils over, or the last litre of stock has no room.",
    fires: "Bean soup\n\n3 litres stock\n1 kg carrots, sliced\n\nPut the stock and carrots in a 2-litre saucepan, bring to the boil and simmer for 20 minutes until tender.\n",
    silent: "Bean soup\n\n3 litres stock\n1 kg carrots, sliced\n\nPut the stock and carrots in an 8-litre pot, bring to the boil and simmer for 20 minutes until tender.\n",
    instead: "Name a larger vessel, or cook in two.",
    source: "volumes of the simulation against the vessel's measures",
    check,
};

/// Fuller than this at its fullest minute is asked about, as a share of the height: what is left is within what cups,
/// tins and a pot's printed size are off by (common practice, no source; 0.8 to 1.0).
const FULL: f64 = 0.9;

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let reckoned = manuscript.reckoned;
    let mut fullest: Vec<(usize, usize, f64, f64)> = Vec::new();
    for event in &reckoned.trace.events {
        let Happening::TooFull(level) = event.what else {
            continue;
        };
        if level < FULL {
            continue;
        }
        match fullest.iter_mut().find(|(vessel, ..)| *vessel == event.vessel) {
            Some(known) if known.3 >= level => {}
            Some(known) => *known = (event.vessel, event.act, event.time_s, level),
            None => fullest.push((event.vessel, event.act, event.time_s, level)),
        }
    }
    fullest
        .into_iter()
        .filter_map(|(vessel, act, time_s, level)| query(manuscript, vessel, act, time_s, level))
        .collect()
}

fn query(manuscript: &Manuscript<'_>, vessel: usize, act: usize, time_s: f64, level: f64) -> Option<Query> {
    let reckoned = manuscript.reckoned;
    let named = reckoned.process.vessels.get(vessel)?;
    let pot = named.pot.as_ref()?;
    let acts = &reckoned.process.acts;
    // What is implied stands on the words before it.
    let span = acts.get(..=act)?.iter().rev().find_map(|act| act.span)?;
    let litres = pot.litres();
    let words = named_at(manuscript, vessel);
    Some(Query {
        code: RULE.code.into(),
        weight: Weight::WorthALook,
        span: words.unwrap_or(span),
        asks: format!("Does it all fit into the {}?", named.name),
        because: format!(
            "at minute {:.0} it comes to {:.0} % of the height of a pot of {litres:.1} litres: about {:.1} litres; \
             central run",
            time_s / 60.0,
            100.0 * level,
            level * litres,
        ),
        try_words: None,
        see: words.map(|_| (span, "fullest here".to_owned())).into_iter().collect(),
    })
}

/// The words that name the vessel: the first operation that works in it by its own words.
fn named_at(manuscript: &Manuscript<'_>, vessel: usize) -> Option<Span> {
    let acts = manuscript
        .reckoned
        .process
        .acts
        .iter()
        .filter(|act| act.vessel == vessel);
    let mut operations = acts.filter_map(|act| manuscript.recipe.operations.get(act.operation?));
    operations.find_map(|operation| {
        let into = operation.into.as_ref().filter(|into| !into.inferred)?;
        Some(into.words.span)
    })
}
