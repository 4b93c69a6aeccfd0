//! The method as a timetable, and the time the whole takes with one pair of hands.

use potwright_manuscript::{Cover, HeatWord};
use potwright_pot::{Act, Aim, Doing, Part, Place, Portion, PotKind, Process, Stretch, Trace};

use crate::StepRow;
use crate::whereabouts::Whereabouts;

/// Idle time from which on nobody has prepared everything beforehand: after an overnight soak the onions are cut in
/// the morning (common practice, no source).
const LONG_IDLE_S: f64 = 3600.0;

/// When each act happens once the time for preparing the food is counted.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Clock {
    /// Seconds by which all acts are later than the run has them.
    prepared_s: f64,
    /// From start to finish, minutes.
    pub(crate) elapsed_min: f64,
}

impl Clock {
    /// One pair of hands prepares the food before the first act, as the list gives it; only what goes in after an
    /// unattended hour or more is prepared in that hour, as far as it suffices.
    pub(crate) fn of(process: &Process, trace: &Trace, places: &Whereabouts) -> Self {
        let idle_s = |act: usize| trace.acts.get(act).map_or(0.0, |a| a.end_s - a.start_s - a.hands_s);
        let long = (0..process.acts.len()).find(|act| idle_s(*act) >= LONG_IDLE_S);
        let (mut before_s, mut meanwhile_s) = (0.0, 0.0);
        for (index, lot) in process.lots.iter().enumerate() {
            let work_s = lot.preparation.seconds().max(0.0);
            match (long, places.goes_in(index)) {
                (Some(long), Some(goes_in)) if goes_in > long => meanwhile_s += work_s,
                (Some(_), None) => meanwhile_s += work_s,
                _ => before_s += work_s,
            }
        }
        before_s += (meanwhile_s - long.map_or(0.0, idle_s)).max(0.0);
        // An oven is lit while the food is prepared; where that is sooner done, it is waited for.
        let waited_s = trace.ovens.iter().map(|oven| oven.takes_s - oven.hot_s);
        before_s = waited_s.fold(before_s, f64::max);
        Clock {
            prepared_s: before_s,
            elapsed_min: trace.elapsed.minutes() + before_s / 60.0,
        }
    }

    fn minutes(&self, time_s: f64) -> f64 {
        (time_s + self.prepared_s) / 60.0
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
        let what = what(process, act);
        let end_min = clock.minutes(times.end_s);
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
                let start_min = clock.minutes(times.start_s);
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
    let mut rows: Vec<StepRow> = rows.into_iter().map(|(_, row)| row).collect();
    for oven in &trace.ovens {
        let row = StepRow {
            span: None,
            what: format!("heat the oven to {:.0} °C", oven.to_c),
            start_min: clock.minutes(oven.hot_s - oven.takes_s),
            end_min: clock.minutes(oven.hot_s),
            temp_c: None,
            mass_kg: None,
        };
        let place = rows.partition_point(|other| other.start_min <= row.start_min);
        rows.insert(place, row);
    }
    rows
}

/// Temperature and mass of a vessel in the last sample of an act.
fn at_the_end(trace: &Trace, act: usize, vessel: usize) -> (Option<f64>, Option<f64>) {
    let sample = trace.samples.iter().rev().find(|sample| sample.act == act);
    let found = sample.and_then(|sample| sample.vessels.iter().find(|v| v.vessel == vessel));
    (found.map(|v| v.temp_c), found.map(|v| v.mass_kg))
}

/// What is done, in a word or two.
fn what(process: &Process, act: &Act) -> String {
    let vessel = |index: usize| process.vessels.get(index).map_or("other vessel", |vessel| &vessel.name);
    match &act.doing {
        Doing::Add(portions) => format!("add {}", names(process, portions.iter().map(lot_of))),
        Doing::Cook(stretch) if is_slow_cooker(process, act.vessel) && stretch.aim != Aim::Off => {
            let low = matches!(stretch.aim, Aim::Setting(HeatWord::Low));
            format!("slow cooker on {}", if low { "low" } else { "high" })
        }
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
        Doing::Shape { .. } => "shape".to_owned(),
        Doing::Skim(_) => "skim off the fat".to_owned(),
        Doing::Serve => "serve".to_owned(),
    }
}

fn is_slow_cooker(process: &Process, vessel: usize) -> bool {
    let pot = process.vessels.get(vessel).and_then(|vessel| vessel.pot.as_ref());
    pot.is_some_and(|pot| pot.kind == PotKind::SlowCooker)
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
        (Aim::Pressure(HeatWord::Low), _) => "cook at low pressure".to_owned(),
        (Aim::Pressure(_), _) => "cook under pressure".to_owned(),
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
        (Aim::Off | Aim::Fry(_) | Aim::Pressure(_), _) | (_, Cover::Off) => "",
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

    fn with_work(name: &str, kind: Kind, minutes: f64) -> potwright_pot::Lot {
        let mut lot = testing::piece_lot(name, kind, 0.1);
        lot.preparation = Duration::from_minutes(minutes);
        lot
    }

    /// Onions take 5 min, beans 10, a topping 3: 18 before the pan goes on; then 12 and 30 min: 60 in all.
    #[test]
    fn the_list_is_prepared_first() {
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
        assert!((clock.elapsed_min - 60.0).abs() < 1e-9, "{}", clock.elapsed_min);
        let found = rows(&process, &trace, &clock);
        let shown: Vec<_> = found
            .iter()
            .map(|row| (row.what.as_str(), row.start_min, row.end_min))
            .collect();
        assert_eq!(shown, [("fry", 18.0, 30.0), ("simmer", 30.0, 60.0)]);
    }

    /// Beans (2 min to pick over) soak 12 h; the squash that follows takes 20 min, which the soak holds: 722 min. A
    /// first stretch of an hour does not hold 70 min of work: ten of them come first.
    #[test]
    fn what_follows_a_long_wait_is_prepared_meanwhile() {
        let elapsed_min = |waits: f64, work: f64| {
            let mut process = testing::process(&[
                with_work("beans", Kind::Pulse, 2.0),
                with_work("squash", Kind::Vegetable, work),
            ]);
            process.acts = vec![
                testing::add(0, &[0]),
                testing::cook(0, Aim::Off, waits),
                testing::add(0, &[1]),
            ];
            let trace = testing::trace(&process);
            Clock::of(&process, &trace, &Whereabouts::of(&process)).elapsed_min
        };
        assert!((elapsed_min(720.0, 20.0) - 722.0).abs() < 1e-9);
        assert!((elapsed_min(60.0, 70.0) - 72.0).abs() < 1e-9);
    }

    /// Twelve minutes of oven before a dish that is prepared in five: it goes in after twelve. Prepared in twenty, it goes in
    /// after twenty and the oven is lit after eight.
    #[test]
    fn the_oven_is_lit_in_time() {
        let shown = |work: f64| {
            let mut process = testing::process(&[with_work("apples", Kind::Fruit, work)]);
            let to = potwright_measure::Temperature::from_celsius(180.0);
            process.acts = vec![testing::add(0, &[0]), testing::cook(0, Aim::Oven(to), 30.0)];
            let mut trace = testing::trace(&process);
            trace.ovens.push(potwright_pot::OvenHeated {
                act: 1,
                hot_s: 0.0,
                takes_s: 720.0,
                to_c: 180.0,
            });
            let clock = Clock::of(&process, &trace, &Whereabouts::of(&process));
            let rows = rows(&process, &trace, &clock);
            (rows[0].what.clone(), rows[0].start_min, rows[1].start_min)
        };
        assert_eq!(shown(5.0), ("heat the oven to 180 °C".to_owned(), 0.0, 12.0));
        assert_eq!(shown(20.0), ("heat the oven to 180 °C".to_owned(), 8.0, 20.0));
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
