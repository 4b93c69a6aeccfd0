//! What happened in the pot, in a cook's sentences.

use potwright_pot::{Assumption, Cue, Curdling, Doing, Event, Happening, Process, Trace};

/// Minutes to the boil that are worth a word: a cook who reads 'bring to the boil' reckons with less (common practice,
/// no source).
const LONG_WAIT_MIN: f64 = 10.0;

/// Share of the draws that must boil dry before a cook is told that it may: the 5th percentile.
const MAY: f64 = 0.05;

/// A vessel that boiled dry, and the act in which it did.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Dry {
    vessel: usize,
    act: usize,
}

/// The vessels that boil dry in a run, each where it first does.
pub(crate) fn boiled_dry(trace: &Trace) -> Vec<Dry> {
    let mut found: Vec<Dry> = Vec::new();
    for event in trace.events.iter().filter(|event| event.what == Happening::BoiledDry) {
        if !found.iter().any(|dry| dry.vessel == event.vessel) {
            found.push(Dry {
                vessel: event.vessel,
                act: event.act,
            });
        }
    }
    found
}

/// One sentence for each event that a cook would not expect, in order of time; the same sentence about the same words
/// only once. At the end what does not happen in the central run and happens in enough of the draws.
pub(crate) fn happenings(process: &Process, trace: &Trace, draws: &[Vec<Dry>]) -> Vec<Assumption> {
    let mut said: Vec<Assumption> = Vec::new();
    let expected = |event: &Event| match event.what {
        Happening::Boiled => since_min(trace, event) < LONG_WAIT_MIN,
        // An assumption, not a surprise.
        Happening::Clings(_) => true,
        _ => false,
    };
    for event in trace.events.iter().filter(|event| !expected(event)) {
        let sentence = Assumption {
            text: sentence(process, trace, event),
            span: process.acts.get(event.act).and_then(|act| act.span),
        };
        if !said.contains(&sentence) {
            said.push(sentence);
        }
    }
    let central = boiled_dry(trace);
    let vessels = (0..process.vessels.len()).filter(|vessel| !central.iter().any(|dry| dry.vessel == *vessel));
    said.extend(vessels.filter_map(|vessel| may_boil_dry(process, draws, vessel)));
    said
}

/// What was assumed to cling to strained pieces, each at its words.
pub(crate) fn assumed(process: &Process, trace: &Trace) -> Vec<Assumption> {
    let clings = |event: &Event| matches!(event.what, Happening::Clings(_));
    let sentence = |event: &Event| Assumption {
        text: sentence(process, trace, event),
        span: process.acts.get(event.act).and_then(|act| act.span),
    };
    trace
        .events
        .iter()
        .filter(|event| clings(event))
        .map(sentence)
        .collect()
}

fn clings(vessel: &str, kg: f64) -> String {
    format!(
        "{:.0} g of liquid cling to the solids strained or lifted out of the {vessel} and stay with them.",
        1000.0 * kg
    )
}

/// 'The pot may boil dry' where it does in enough of the draws, at the words where the first of them does.
fn may_boil_dry(process: &Process, draws: &[Vec<Dry>], vessel: usize) -> Option<Assumption> {
    let of_it = |draw: &Vec<Dry>| draw.iter().copied().find(|dry| dry.vessel == vessel);
    let dry: Vec<Dry> = draws.iter().filter_map(of_it).collect();
    let act = dry.iter().map(|dry| dry.act).min()?;
    let enough = dry.len() as f64 >= MAY * draws.len() as f64;
    enough.then(|| Assumption {
        text: format!(
            "The {} may boil dry: it does in {} of {} reckonings.",
            process.vessels.get(vessel).map_or("pot", |vessel| vessel.name.as_str()),
            dry.len(),
            draws.len()
        ),
        span: process.acts.get(act).and_then(|act| act.span),
    })
}

/// Minutes from the start of the act to the event.
fn since_min(trace: &Trace, event: &Event) -> f64 {
    trace
        .acts
        .get(event.act)
        .map_or(0.0, |act| ((event.time_s - act.start_s) / 60.0).max(0.0))
}

fn sentence(process: &Process, trace: &Trace, event: &Event) -> String {
    let vessel = process
        .vessels
        .get(event.vessel)
        .map_or("pot", |vessel| vessel.name.as_str());
    let since_min = since_min(trace, event);
    match &event.what {
        Happening::Boiled => format!("The {vessel} takes {} to come to the boil.", minutes(since_min)),
        Happening::BoiledDry => format!("The {vessel} boils dry after {}.", minutes(since_min)),
        Happening::TooFull(level) => {
            format!(
                "The {vessel} is full to {:.0} % of its height: too full for this heat.",
                100.0 * level
            )
        }
        Happening::CueNotReached => format!("{} is not reached in the time given.", cue(process, event.act)),
        Happening::BoiledThoughForbidden => format!("The {vessel} boils here, though the page says it must not."),
        Happening::CrowdedPan { batches_needed } => format!(
            "The {vessel} is crowded: the food stews in its own water instead of browning. It would brown in {batches_needed} batches."
        ),
        Happening::TooMuchForThePan { batches } => {
            let said = match process.acts.get(event.act).map(|act| &act.doing) {
                Some(Doing::Cook(stretch)) => stretch.batches,
                _ => 1,
            };
            let then = if said > 1 {
                format!("it would lie in one layer in {batches} batches")
            } else {
                format!("{batches} batches are counted, each for the time that is said")
            };
            format!("It is more than lies in the {vessel} side by side: {then}.")
        }
        Happening::NotEnoughHeat => {
            format!("The heat does not suffice for the {vessel}: it cannot hold what the page asks for.")
        }
        Happening::DairyHot(temp_c) => {
            format!("The milk or cream in the {vessel} reaches {temp_c:.0} °C: it may curdle or boil over.")
        }
        Happening::Clings(kg) => clings(vessel, *kg),
        Happening::Curdles { what, temp_c } => curdles(*what, vessel, *temp_c),
        Happening::LeftOut(what) => format!("Left out of the reckoning: {what}."),
    }
}

fn curdles(what: Curdling, vessel: &str, temp_c: f64) -> String {
    match what {
        Curdling::MilkWithAcid => format!(
            "The milk or thin cream in the {vessel} meets enough acid to curdle at {temp_c:.0} °C: cream of a quarter fat or more, or flour in the liquid, would not."
        ),
        Curdling::Cultured => format!(
            "The yoghurt or soured cream in the {vessel} separates at {temp_c:.0} °C: stir it in off the heat, or with a little starch."
        ),
        Curdling::Egg => {
            format!(
                "The egg stirred into the {vessel} curdles at {temp_c:.0} °C: keep it below, or bind it with starch."
            )
        }
        Curdling::Cheese => format!(
            "The cheese in the {vessel} may string and let go of its fat at {temp_c:.0} °C: melt it off the boil, or with a little starch."
        ),
    }
}

fn minutes(minutes: f64) -> String {
    match minutes.round() {
        at_most_one if at_most_one <= 1.0 => "1 minute".to_owned(),
        many => format!("{many:.0} minutes"),
    }
}

/// The sign of an act in words, as the subject of a sentence.
fn cue(process: &Process, act: usize) -> String {
    let Some(Doing::Cook(stretch)) = process.acts.get(act).map(|act| &act.doing) else {
        return "The sign to stop".to_owned();
    };
    let of = |lots: &[usize]| {
        let names: Vec<&str> = lots
            .iter()
            .filter_map(|lot| process.lots.get(*lot))
            .map(|lot| lot.name.as_str())
            .collect();
        if names.is_empty() {
            String::new()
        } else {
            format!(" ({})", names.join(", "))
        }
    };
    match &stretch.lasts.cue {
        Some(Cue::Boils) => "The boil".to_owned(),
        Some(Cue::Reaches(to)) => format!("A temperature of {:.0} °C", to.celsius()),
        Some(Cue::Browned) => "'Browned'".to_owned(),
        Some(Cue::Softened) => "'Soft'".to_owned(),
        Some(Cue::ReducedTo(share)) => format!("A reduction to {:.0} % of the volume", 100.0 * share),
        Some(Cue::ReducedToVolume(to)) => format!("A reduction to {:.1} litres", to.litres()),
        Some(Cue::Tender(lots)) => format!("'Tender'{}", of(lots)),
        Some(Cue::CookedThrough(lots)) => format!("'Cooked through'{}", of(lots)),
        Some(Cue::Other(words)) => format!("'{words}'"),
        None => "The sign to stop".to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing;
    use potwright_pot::Aim;

    #[test]
    fn sentences_a_cook_understands() {
        let mut process = testing::process(&[]);
        process.acts = vec![testing::cook(0, Aim::Boil, 20.0), testing::cook(0, Aim::Simmer, 20.0)];
        let mut trace = testing::trace(&process);
        let event = |time_s, act, what| Event {
            time_s,
            vessel: 0,
            act,
            what,
        };
        trace.events = vec![
            event(840.0, 0, Happening::Boiled),
            event(1210.0, 1, Happening::Boiled),
            event(1200.0, 1, Happening::CrowdedPan { batches_needed: 3 }),
            event(1260.0, 1, Happening::CrowdedPan { batches_needed: 3 }),
            event(1300.0, 1, Happening::CueNotReached),
            event(1300.0, 1, Happening::TooFull(0.97)),
        ];
        let found: Vec<String> = happenings(&process, &trace, &[])
            .into_iter()
            .map(|said| said.text)
            .collect();
        assert_eq!(
            found,
            [
                "The pot takes 14 minutes to come to the boil.",
                "The pot is crowded: the food stews in its own water instead of browning. It would brown in 3 batches.",
                "The sign to stop is not reached in the time given.",
                "The pot is full to 97 % of its height: too full for this heat.",
            ]
        );
    }

    /// Batches that the page leaves unsaid are counted; those it says stay as they are said.
    #[test]
    fn batches_of_a_pan_that_is_too_small() {
        for (said, then) in [
            (1, "2 batches are counted, each for the time that is said"),
            (3, "it would lie in one layer in 2 batches"),
        ] {
            let mut process = testing::process(&[]);
            process.acts = vec![testing::cook(0, Aim::Off, 8.0)];
            if let Doing::Cook(stretch) = &mut process.acts[0].doing {
                stretch.batches = said;
            }
            let mut trace = testing::trace(&process);
            trace.events = vec![Event {
                time_s: 0.0,
                vessel: 0,
                act: 0,
                what: Happening::TooMuchForThePan { batches: 2 },
            }];
            let found = happenings(&process, &trace, &[]);
            assert_eq!(
                found[0].text,
                format!("It is more than lies in the pot side by side: {then}.")
            );
        }
    }

    /// What clings is an assumption, not an event; what curdles is an event with its temperature.
    #[test]
    fn what_clings_and_what_curdles() {
        let mut process = testing::process(&[]);
        process.acts = vec![testing::cook(0, Aim::Boil, 20.0)];
        let mut trace = testing::trace(&process);
        let event = |what| Event {
            time_s: 60.0,
            vessel: 0,
            act: 0,
            what,
        };
        let curdles = Happening::Curdles {
            what: Curdling::Egg,
            temp_c: 86.2,
        };
        trace.events = vec![event(Happening::Clings(0.0604)), event(curdles)];
        let said = assumed(&process, &trace);
        assert_eq!(said.len(), 1);
        assert!(
            said[0].text.starts_with("60 g of liquid cling to the solids"),
            "{}",
            said[0].text
        );
        let happened = happenings(&process, &trace, &[]);
        assert_eq!(happened.len(), 1);
        assert!(happened[0].text.contains("curdles at 86 °C"), "{}", happened[0].text);
    }

    /// Two of forty are the 5 % of a range's end; one is not. What boils dry in the central run is said as it is.
    #[test]
    fn what_boils_dry_in_some_draws_may() {
        let mut process = testing::process(&[]);
        process.acts = vec![testing::cook(0, Aim::Boil, 20.0)];
        let mut trace = testing::trace(&process);
        let draws = |dry: usize| {
            let mut all = vec![vec![Dry { vessel: 0, act: 0 }]; dry];
            all.resize(40, Vec::new());
            all
        };
        assert_eq!(happenings(&process, &trace, &draws(1)), Vec::new());
        let found = happenings(&process, &trace, &draws(2));
        assert!(
            found[0]
                .text
                .starts_with("The pot may boil dry: it does in 2 of 40 reckonings."),
            "{found:?}"
        );
        trace.events = vec![Event {
            time_s: 600.0,
            vessel: 0,
            act: 0,
            what: Happening::BoiledDry,
        }];
        let found = happenings(&process, &trace, &draws(20));
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].text, "The pot boils dry after 10 minutes.");
    }
}
