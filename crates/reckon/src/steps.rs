//! The method as a timetable, and the time the whole takes with one pair of hands.

use potwright_manuscript::Cover;
use potwright_pot::{Aim, Doing, Part, Place, Portion, Process, Stretch, Trace};

use crate::StepRow;
use crate::whereabouts::Whereabouts;

/// When each act happens once the time for preparing the food is counted.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Clock {
    /// Seconds by which each act is later than the run has it.
    later_s: Vec<f64>,
    /// From start to finish, minutes.
    pub(crate) elapsed_min: f64,
}

impl Clock {
    /// One pair of hands prepares what an act needs before it, in the idle time of the acts so far if there is enough
    /// of it; what does not fit holds the act up. What is only served with the dish is prepared before the last act.
    pub(crate) fn of(process: &Process, trace: &Trace, places: &Whereabouts) -> Self {
        let mut needed_s = vec![0.0; process.acts.len().max(1)];
        let last = needed_s.len() - 1;
        for (index, lot) in process.lots.iter().enumerate() {
            let act = places.goes_in(index).unwrap_or(last).min(last);
            needed_s[act] += lot.preparation.seconds().max(0.0);
        }
        let (mut idle_s, mut late_s) = (0.0_f64, 0.0);
        let mut later_s = Vec::with_capacity(process.acts.len());
        for (index, needed_s) in needed_s.into_iter().enumerate() {
            let done_meanwhile_s = needed_s.min(idle_s);
            idle_s -= done_meanwhile_s;
            late_s += needed_s - done_meanwhile_s;
            later_s.push(late_s);
            if let Some(act) = trace.acts.get(index) {
                idle_s += (act.end_s - act.start_s - act.hands_s).max(0.0);
            }
        }
        Clock {
            later_s,
            elapsed_min: trace.elapsed.minutes() + late_s / 60.0,
        }
    }

    fn minutes(&self, act: usize, time_s: f64) -> f64 {
        (time_s + self.later_s.get(act).copied().unwrap_or(0.0)) / 60.0
    }
}

/// One row for each operation that takes time or hands; acts of one operation share a row.
pub(crate) fn rows(process: &Process, trace: &Trace, clock: &Clock) -> Vec<StepRow> {
    let mut rows: Vec<(Option<usize>, StepRow)> = Vec::new();
    for (index, (act, times)) in process.acts.iter().zip(&trace.acts).enumerate() {
        if times.end_s - times.start_s < 1.0 && times.hands_s < 1.0 {
            continue;
        }
        let (temp_c, mass_kg) = at_the_end(trace, index, act.vessel);
        let what = what(process, &act.doing);
        let end_min = clock.minutes(index, times.end_s);
        match rows.last_mut() {
            Some((operation, row)) if operation.is_some() && *operation == act.operation => {
                if !row.what.contains(&what) {
                    row.what = format!("{}, {what}", row.what);
                }
                row.end_min = end_min;
                row.temp_c = temp_c.or(row.temp_c);
                row.mass_kg = mass_kg.or(row.mass_kg);
            }
            _ => {
                let start_min = clock.minutes(index, times.start_s);
                rows.push((
                    act.operation,
                    StepRow {
                        span: act.span,
                        what,
                        start_min,
                        end_min,
                        temp_c,
                        mass_kg,
                    },
                ));
            }
        }
    }
    rows.into_iter().map(|(_, row)| row).collect()
}

/// Temperature and mass of a vessel in the last sample of an act.
fn at_the_end(trace: &Trace, act: usize, vessel: usize) -> (Option<f64>, Option<f64>) {
    let sample = trace.samples.iter().rev().find(|sample| sample.act == act);
    let found = sample.and_then(|sample| sample.vessels.iter().find(|v| v.vessel == vessel));
    (found.map(|v| v.temp_c), found.map(|v| v.mass_kg))
}

/// What is done, in a word or two.
fn what(process: &Process, doing: &Doing) -> String {
    let vessel = |index: usize| process.vessels.get(index).map_or("other vessel", |vessel| &vessel.name);
    match doing {
        Doing::Add(portions) => format!("add {}", names(process, portions.iter().map(lot_of))),
        Doing::Cook(stretch) => cooking(stretch),
        Doing::Transfer { to, what: Part::All } => format!("move to the {}", vessel(*to)),
        Doing::Transfer { what: Part::Liquid, .. } => "strain off the liquid".to_owned(),
        Doing::Transfer { what: Part::Solids, .. } => "lift out the pieces".to_owned(),
        Doing::Transfer {
            what: Part::Lots(lots), ..
        } => {
            format!("lift out {}", names(process, lots.iter().copied()))
        }
        Doing::Transfer {
            what: Part::Share(_), ..
        } => "take out a part".to_owned(),
        Doing::Discard(Part::Liquid) => "pour off the liquid".to_owned(),
        Doing::Discard(Part::Lots(lots)) => {
            format!("throw away {}", names(process, lots.iter().copied()))
        }
        Doing::Discard(_) => "throw away what is left".to_owned(),
        Doing::Puree(share) if *share < 0.75 => "crush a part".to_owned(),
        Doing::Puree(_) => "purée".to_owned(),
        Doing::Skim(_) => "skim off the fat".to_owned(),
        Doing::Serve => "serve".to_owned(),
    }
}

const fn lot_of(portion: &Portion) -> usize {
    portion.lot
}

/// `carrots, leeks and 3 more`.
fn names(process: &Process, lots: impl Iterator<Item = usize>) -> String {
    const SHOWN: usize = 3;
    let mut all: Vec<&str> = Vec::new();
    for name in lots
        .filter_map(|lot| process.lots.get(lot))
        .map(|lot| lot.name.as_str())
    {
        if !all.contains(&name) {
            all.push(name);
        }
    }
    let shown = all.len().min(SHOWN);
    match (all.len(), all.split_last()) {
        (0, _) | (_, None) => "nothing".to_owned(),
        (1, Some((only, _))) => (*only).to_owned(),
        (count, Some((last, first))) if count <= SHOWN => format!("{} and {last}", first.join(", ")),
        (count, _) => format!("{} and {} more", all[..shown].join(", "), count - shown),
    }
}

fn cooking(stretch: &Stretch) -> String {
    let what = match (stretch.aim, stretch.place) {
        (Aim::Fry(_), _) => "fry".to_owned(),
        (Aim::Boil, _) => "boil".to_owned(),
        (Aim::Simmer, _) => "simmer".to_owned(),
        (Aim::BelowBoil, _) => "heat below the boil".to_owned(),
        (Aim::Hold(to), _) => format!("hold at {:.0} °C", to.celsius()),
        (Aim::Oven(to), _) => format!("oven at {:.0} °C", to.celsius()),
        (Aim::Setting(_), _) => "heat".to_owned(),
        (Aim::Off, Place::Sink) => "cool in cold water".to_owned(),
        (Aim::Off, Place::IceBath) => "cool in iced water".to_owned(),
        (Aim::Off, Place::Refrigerator) => "chill".to_owned(),
        (Aim::Off, Place::Freezer) => "freeze".to_owned(),
        (Aim::Off, Place::Hob | Place::Oven | Place::Counter) => "leave to stand".to_owned(),
    };
    let lid = match (stretch.aim, stretch.cover) {
        (Aim::Off | Aim::Fry(_), _) | (_, Cover::Off) => "",
        (_, Cover::On) => ", covered",
        (_, Cover::Ajar) => ", lid ajar",
    };
    let batches = match stretch.batches {
        0 | 1 => String::new(),
        many => format!(", in {many} batches"),
    };
    format!("{what}{lid}{batches}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing;
    use potwright_larder::Kind;
    use potwright_measure::Duration;

    /// Onions take 5 min and go in first; beans take 10 and the topping 3, both prepared while the onions fry for 12
    /// without a hand: 12 − 10 leave 2 for the topping, whose last minute fits into the simmer. 5 + 12 + 30 = 47 min.
    #[test]
    fn preparation_fits_into_idle_time() {
        let with_work = |name: &str, kind, minutes| {
            let mut lot = testing::piece_lot(name, kind, 0.1);
            lot.preparation = Duration::from_minutes(minutes);
            lot
        };
        let mut process = testing::process(&[
            with_work("onions", Kind::Onion, 5.0),
            with_work("beans", Kind::Vegetable, 10.0),
            with_work("parsley", Kind::Herb, 3.0),
        ]);
        process.acts = vec![
            testing::add(0, &[0]),
            testing::cook(0, Aim::Fry(potwright_manuscript::HeatWord::Low), 12.0),
            testing::add(0, &[1]),
            testing::cook(0, Aim::Simmer, 30.0),
            testing::act(0, Doing::Serve),
        ];
        let trace = testing::trace(&process);
        let clock = Clock::of(&process, &trace, &Whereabouts::of(&process));
        assert!((clock.elapsed_min - 47.0).abs() < 1e-9, "{}", clock.elapsed_min);
        let found = rows(&process, &trace, &clock);
        let shown: Vec<_> = found
            .iter()
            .map(|row| (row.what.as_str(), row.start_min, row.end_min))
            .collect();
        assert_eq!(shown, [("fry", 5.0, 17.0), ("simmer", 17.0, 47.0)]);
    }

    #[test]
    fn preparation_that_does_not_fit_holds_up() {
        let mut lot = testing::lot("squash", Kind::Vegetable, 1.0);
        lot.preparation = Duration::from_minutes(20.0);
        let mut process = testing::process(&[testing::lot("water", Kind::Water, 1.0), lot]);
        process.acts = vec![
            testing::add(0, &[0]),
            testing::cook(0, Aim::Boil, 8.0),
            testing::add(0, &[1]),
        ];
        let trace = testing::trace(&process);
        let clock = Clock::of(&process, &trace, &Whereabouts::of(&process));
        assert!(
            (clock.elapsed_min - 20.0).abs() < 1e-9,
            "8 minutes of boiling and 12 of cutting"
        );
    }

    #[test]
    fn rows_of_one_operation_are_one() {
        let mut process = testing::process(&[
            testing::lot("a", Kind::Other, 0.1),
            testing::lot("b", Kind::Other, 0.1),
            testing::lot("c", Kind::Other, 0.1),
            testing::lot("d", Kind::Other, 0.1),
        ]);
        let mut add = testing::add(0, &[0, 1, 2, 3]);
        add.operation = Some(4);
        add.hands = Duration::from_minutes(1.0);
        let mut simmer = testing::cook(0, Aim::Simmer, 10.0);
        simmer.operation = Some(4);
        process.acts = vec![add, simmer];
        let trace = testing::trace(&process);
        let found = rows(
            &process,
            &trace,
            &Clock::of(&process, &trace, &Whereabouts::of(&process)),
        );
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].what, "add a, b, c and 1 more, simmer");
        assert_eq!(found[0].end_min, 10.0);
    }
}
