//! Liquid that never reduces as told.

use potwright_pot::{Cue, Happening};

use crate::cooked::on_the_heat;
use crate::placed::longer;
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "D06",
    name: "never reduces as told",
    finds: "'Until reduced by half' that does not come in the minutes given or in the longest time a cook waits; or is reached in a fraction of the minutes.",
    why: "The sauce is soup, or it is burnt, and the reader followed the page.",
    fires: "Gravy\n\n3 litres stock\n1 tsp salt\n\nBring the stock and salt to the boil in a pot and boil for 5 minutes until reduced by half.\n",
    silent: "Gravy\n\n1 litre stock\n\nBring the stock to the boil in a wide pot and boil until reduced by half.\n",
    instead: "The computed minutes, a wider pan, no lid, or a smaller reduction.",
    source: "heat and mass balance of the simulation",
    check,
};

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let trace = &manuscript.reckoned.trace;
    let mut queries = Vec::new();
    for cooked in on_the_heat(manuscript) {
        let reduces = matches!(
            cooked.stretch.lasts.cue,
            Some(Cue::ReducedTo(_) | Cue::ReducedToVolume(_))
        );
        let missed = trace
            .events
            .iter()
            .any(|event| event.act == cooked.act && event.what == Happening::CueNotReached);
        if !reduces || !missed {
            continue;
        }
        let volume = |at_min: f64| {
            let sample = trace
                .samples
                .iter()
                .rfind(|sample| sample.time_s <= at_min * 60.0 + 1.0)?;
            Some(sample.vessels.iter().find(|one| one.vessel == cooked.vessel)?.volume_l)
        };
        let (Some(before), Some(after)) = (volume(cooked.start_min), volume(cooked.end_min)) else {
            continue;
        };
        let because = format!(
            "{before:.2} l become {after:.2} l in {:.0} minutes; central run",
            cooked.minutes()
        );
        let mut query = RULE.query(
            Weight::WorthALook,
            cooked.operation.span,
            "Does it reduce so far in this time? By computation it does not.",
            because,
        );
        if let Some(minutes) = &cooked.operation.minutes {
            let act = cooked.act;
            query.try_words = longer(manuscript, minutes, |again| {
                !again
                    .trace
                    .events
                    .iter()
                    .any(|event| event.act == act && event.what == Happening::CueNotReached)
            });
        }
        query
            .see
            .extend(cooked.operation.cue.iter().map(|cue| (cue.span, "the sign".into())));
        queries.push(query);
    }
    queries
}
