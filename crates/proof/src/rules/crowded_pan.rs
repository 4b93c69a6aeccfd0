//! Too much meat for the pan in the stated batches.

use potwright_larder::Kind;
use potwright_manuscript::Verb;
use potwright_pot::{Act, Cue, Doing, Happening, Part, Portion};

use crate::cooked::{on_the_heat, said_before, said_of, says};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "C06",
    name: "too much meat for the pan in the stated batches",
    finds: "Meat, poultry or fish to be browned that does not lie in one layer, or gives off more water than the heat drives off, in the batches the page says.",
    why: "It stews grey in its own juice, and the flavour that the browning was for is not there.",
    fires: "Beef stew\n\n2 tbsp oil\n2 kg beef shin, cut into 3 cm cubes\n1 litre stock\n\nHeat the oil in a 24 cm pan over a high heat and brown the beef for 6 minutes until well coloured. Pour in the stock and simmer for 3 hours until tender.\n",
    silent: "Beef stew\n\n2 tbsp oil\n2 kg beef shin, cut into 3 cm cubes\n1 litre stock\n\nHeat the oil in a 24 cm pan over a high heat and brown the beef in eight batches, 6 minutes each, until well coloured. Pour in the stock and simmer for 3 hours until tender.\n",
    instead: "Say in how many batches, or name a wider pan.",
    source: "areas and heat of the simulation",
    check,
};

/// Pieces vary and cooks push them together: only more than so many times the batches said are asked about (common
/// practice, no source).
const LEEWAY: f64 = 1.5;

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let mut queries: Vec<Query> = Vec::new();
    for cooked in on_the_heat(manuscript) {
        let needed = needed(manuscript, cooked.act);
        let said = cooked.stretch.batches.max(1);
        let words = format!(
            "{} {}",
            said_before(manuscript, cooked.index),
            said_of(manuscript, cooked.index)
        );
        // 'In batches' leaves the number to the cook.
        let left_open = said == 1
            && says(
                &words,
                &["batches", "turns", "lots", "relays", "instalments", "loads", "goes"],
            );
        let softened = matches!(cooked.stretch.lasts.cue, Some(Cue::Softened)) || cooked.operation.verb == Verb::Sweat;
        let many_more = f64::from(needed) > LEEWAY * f64::from(said);
        if !many_more || softened || left_open || !meat_in(manuscript, cooked.act, cooked.vessel) {
            continue;
        }
        if queries.iter().any(|query| query.span == cooked.operation.span) {
            continue;
        }
        let vessel = manuscript.reckoned.process.vessels.get(cooked.vessel);
        let name = vessel.map_or("pan", |vessel| vessel.name.as_str());
        let page = match said {
            1 => "the page has all at once".to_owned(),
            several => format!("the page has {several}"),
        };
        queries.push(Query {
            code: RULE.code.into(),
            weight: Weight::WorthALook,
            span: cooked.operation.span,
            asks: format!("Does so much brown in the {name} this way? It would take more batches."),
            because: format!("{needed} batches are computed for it, {page}; central run"),
            try_words: Some(format!("in {needed} batches")),
            see: cooked
                .operation
                .repeat
                .iter()
                .map(|repeat| (repeat.words.span, "the batches said".into()))
                .collect(),
        });
    }
    queries
}

/// Batches the run found to be needed in an act; nought when it noted nothing.
fn needed(manuscript: &Manuscript<'_>, act: usize) -> u32 {
    let events = &manuscript.reckoned.trace.events;
    let of_act = events.iter().filter(|event| event.act == act);
    of_act
        .filter_map(|event| match event.what {
            Happening::CrowdedPan { batches_needed } => Some(batches_needed),
            Happening::TooMuchForThePan { batches } => Some(batches),
            _ => None,
        })
        .max()
        .unwrap_or(0)
}

/// Whether flesh has gone into the vessel by an act and not been taken out again.
fn meat_in(manuscript: &Manuscript<'_>, act: usize, vessel: usize) -> bool {
    let process = &manuscript.reckoned.process;
    let flesh = |lot: &usize| {
        process.lots.get(*lot).is_some_and(|lot| {
            matches!(
                lot.kind,
                Kind::Meat | Kind::Poultry | Kind::Fish | Kind::Sausage | Kind::Bacon | Kind::Shellfish
            )
        })
    };
    let mut held: Vec<Vec<usize>> = vec![Vec::new(); process.vessels.len()];
    for done in process.acts.iter().take(act) {
        follow(&mut held, done);
    }
    held.get(vessel).is_some_and(|lots| lots.iter().any(flesh))
}

/// Which lots stand in which vessel after an act.
fn follow(held: &mut [Vec<usize>], act: &Act) {
    match &act.doing {
        Doing::Add(portions) => {
            if let Some(lots) = held.get_mut(act.vessel) {
                lots.extend(portions.iter().map(|Portion { lot, .. }| *lot));
            }
        }
        Doing::Transfer { to, what } => {
            let Some(from) = held.get_mut(act.vessel) else { return };
            let moved: Vec<usize> = match what {
                Part::All | Part::Solids => std::mem::take(from),
                Part::Lots(lots) => {
                    from.retain(|lot| !lots.contains(lot));
                    lots.clone()
                }
                Part::Liquid | Part::Share(_) => from.clone(),
            };
            if let Some(lots) = held.get_mut(*to) {
                lots.extend(moved);
            }
        }
        Doing::Discard(Part::All | Part::Solids) => {
            if let Some(lots) = held.get_mut(act.vessel) {
                lots.clear();
            }
        }
        _ => {}
    }
}
