//! Liquid that boils away.

use potwright_larder::Kind;
use potwright_manuscript::Verb;
use potwright_pot::{Cue, Doing, Happening};

use crate::cooked::says;
use crate::placed::line_of;
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "D05",
    name: "liquid boils away",
    finds: "A pot that boils dry in the central run though the page does not ask for it; one that does in some reckonings is worth a look.",
    why: "It burns, and what was left to eat goes with it.",
    fires: "Barley\n\n200 g pearl barley\n400 ml water\n\nPut the barley and water in a wide pot, bring to the boil and boil, uncovered, for 2 hours until tender.\n",
    silent: "Barley\n\n200 g pearl barley\n2 litres water\n\nPut the barley and water in a pot, bring to the boil, cover and simmer for 40 minutes until tender.\n",
    instead: "A lid, a lower heat, more liquid or less time.",
    source: "mass balance of the simulation",
    check,
};

/// A page that wants it dry says so.
const DRY: &[&str] = &[
    "dry",
    "evaporat*",
    "absorb*",
    "nothing",
    "gone",
    "sizzl*",
    "glaze*",
    "syrup*",
    "fat",
    "oil",
    "drive",
    "driven",
    "toast*",
    "disappear*",
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let reckoned = manuscript.reckoned;
    let mut queries: Vec<Query> = Vec::new();
    for event in reckoned
        .trace
        .events
        .iter()
        .filter(|event| event.what == Happening::BoiledDry)
    {
        let Some(act) = reckoned.process.acts.get(event.act) else {
            continue;
        };
        let Doing::Cook(stretch) = &act.doing else { continue };
        let Some(span) = act.span else { continue };
        let kept = act.operation.and_then(|index| manuscript.recipe.operations.get(index));
        if kept.is_some_and(|operation| operation.verb == Verb::KeepHot) {
            continue;
        }
        let wanted = matches!(stretch.lasts.cue, Some(Cue::ReducedTo(_) | Cue::Browned))
            || says(&span.of(manuscript.text).to_lowercase(), DRY);
        let frying = matches!(stretch.aim, potwright_pot::Aim::Fry(_));
        if wanted || frying || queries.iter().any(|query| query.span == span) {
            continue;
        }
        let minutes = reckoned
            .trace
            .acts
            .get(event.act)
            .map_or(0.0, |act| (event.time_s - act.start_s) / 60.0);
        queries.push(RULE.query(
            Weight::WorthALook,
            span,
            "Is there enough liquid for this? By computation it boils away.",
            format!("dry after {minutes:.0} minutes of it in the central run"),
        ));
    }
    let may = reckoned
        .dossier
        .happenings
        .iter()
        .filter(|said| said.text.contains("may boil dry"));
    let may = may.filter_map(|said| {
        Some(RULE.query(
            Weight::WorthALook,
            said.span?,
            "Could it boil dry here in some kitchens?",
            said.text.clone(),
        ))
    });
    let may: Vec<Query> = may
        .filter(|query| !says(&query.span.of(manuscript.text).to_lowercase(), DRY))
        .collect();
    queries.extend(may);
    let lots = reckoned.process.lots.iter().enumerate();
    let liquids = lots.filter(|(_, lot)| matches!(lot.kind, Kind::Water | Kind::Stock));
    let lines: Vec<_> = liquids.filter_map(|(lot, _)| line_of(manuscript, lot)).collect();
    for query in &mut queries {
        query.see.extend(lines.iter().map(|line| (*line, "the liquid".into())));
    }
    queries
}
