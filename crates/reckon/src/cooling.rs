//! Cooling of hot food against the two-stage rule: from 57 to 21 °C within 2 h and to 5 °C within 6 h in all (FDA
//! Food Code 2022 3-501.14(A)).

use potwright_pot::{Act, ActTrace, Aim, Cooling, Doing, Place, Process, Trace};

use crate::remedies::remedy;
use crate::sampling::five_to_ninety_five;
use crate::{CoolingRow, Figure, Known, Measure, Verdict};

/// Hours allowed from 57 to 21 °C.
const STAGE_ONE_H: f64 = 2.0;
/// Hours allowed from 57 to 5 °C.
const TOTAL_H: f64 = 6.0;
/// Where the rule begins and what its stages reach, °C.
const RULE_C: (f64, f64, f64) = (57.0, 21.0, 5.0);

/// Share of the draws that must meet the rule.
const CAUTIOUS: f64 = 0.95;

/// Acid by mass, citric-acid equivalent, from which a food is so sour that the rule most likely does not hold for it
/// (common practice, no source; ×/÷1.5: lemon juice has 0.05, a vinegar pickle 0.02, sharp apples 0.01, a tomato soup
/// 0.004).
pub(crate) const SOUR: f64 = 0.012;

/// The verdict on hours from 57 °C, none for a stage that was not reached in the hours followed.
///
/// *Near* when nothing is broken yet but the end was not seen.
#[must_use]
pub fn judge_cooling(stage_one_h: Option<f64>, total_h: Option<f64>, followed_h: f64) -> Verdict {
    let stage = |hours: Option<f64>, limit_h: f64| match hours {
        Some(hours) if hours <= limit_h => Verdict::Meets,
        Some(_) => Verdict::Fails,
        None if followed_h >= limit_h => Verdict::Fails,
        None => Verdict::Near,
    };
    match (stage(stage_one_h, STAGE_ONE_H), stage(total_h, TOTAL_H)) {
        (Verdict::Fails, _) | (_, Verdict::Fails) => Verdict::Fails,
        (Verdict::Meets, Verdict::Meets) => Verdict::Meets,
        _ => Verdict::Near,
    }
}

/// The verdict on a cooling that was measured: hours and °C in order of time, straight lines between the readings.
///
/// A log that never shows 57 °C counts from its first reading, which is the stricter way; an empty one is *near*.
#[must_use]
pub fn judge_cooling_log(log: &[(f64, f64)]) -> Verdict {
    let first_h = log.first().map_or(0.0, |reading| reading.0);
    let start_h = falls_to(log, RULE_C.0).unwrap_or(first_h);
    let since = |temp_c| falls_to(log, temp_c).map(|hours| hours - start_h);
    let followed_h = log.last().map_or(0.0, |reading| reading.0 - start_h);
    judge_cooling(since(RULE_C.1), since(RULE_C.2), followed_h)
}

/// When a log first falls to a temperature; none if it never does or begins below it.
fn falls_to(log: &[(f64, f64)], temp_c: f64) -> Option<f64> {
    let (first_h, first_c) = *log.first()?;
    if first_c == temp_c {
        return Some(first_h);
    }
    log.windows(2).find_map(|pair| {
        let ((from_h, from_c), (to_h, to_c)) = (pair[0], pair[1]);
        let crosses = from_c > temp_c && to_c <= temp_c;
        crosses.then(|| from_h + (to_h - from_h) * (from_c - temp_c) / (from_c - to_c))
    })
}

/// One row for each cooling in which the rule has a say: a pot that rests half an hour before it is eaten has none.
///
/// A cooling that does not meet the rule is cooked again by `cook`, in a kitchen at the cautious end, with what would help,
/// and the row says what came of that.
pub(crate) fn rows(
    process: &Process,
    central: &Trace,
    others: &[Vec<Cooling>],
    cook: &dyn Fn(&Process) -> Trace,
) -> Vec<CoolingRow> {
    let coolings = central.coolings.iter().enumerate();
    coolings
        .filter(|(_, cooling)| cooling.stage_one_h.is_some() || cooling.followed_h >= STAGE_ONE_H)
        .map(|(index, cooling)| {
            let same = |run: &Vec<Cooling>| run.get(index).copied();
            let others: Vec<Cooling> = others.iter().filter_map(same).collect();
            let ranges = Ranges::of(cooling, &others);
            let assumed = assumed(process, central, cooling);
            let verdict = match cautious(cooling, &others) {
                // What is sour is no failure, and no computation says that it is safe.
                Verdict::Fails if cooling.acid >= SOUR => Verdict::Near,
                // Nobody is bound to what was assumed: no clearance hangs on it.
                Verdict::Meets if assumed.is_some() => Verdict::Near,
                verdict => verdict,
            };
            let found = ranges.found(cooling);
            CoolingRow {
                span: process.acts.get(cooling.act).and_then(|act| act.span),
                stage_one_h: cooling.stage_one_h,
                stage_one_range_h: ranges.stage_one_h.filter(|(_, high)| high.is_finite()),
                total_h: cooling.total_h,
                total_range_h: ranges.total_h.filter(|(_, high)| high.is_finite()),
                assumed: assumed.is_some(),
                verdict,
                says: match (&assumed, verdict) {
                    _ if cooling.acid >= SOUR => sour(&found, cooling),
                    (Some(stands), Verdict::Fails) => [
                        as_assumed(&found, stands, verdict),
                        remedy(process, central, cooling, cook),
                    ]
                    .concat(),
                    (None, Verdict::Fails) => {
                        [says(&found, cooling, verdict), remedy(process, central, cooling, cook)].concat()
                    }
                    (Some(stands), verdict) => as_assumed(&found, stands, verdict),
                    (None, verdict) => says(&found, cooling, verdict),
                },
            }
        })
        .collect()
}

fn of(cooling: &Cooling) -> Verdict {
    judge_cooling(cooling.stage_one_h, cooling.total_h, cooling.followed_h)
}

fn cautious(central: &Cooling, others: &[Cooling]) -> Verdict {
    let verdict = of(central);
    let met = others.iter().filter(|cooling| of(cooling) == Verdict::Meets).count();
    if verdict == Verdict::Meets && (met as f64) < CAUTIOUS * others.len() as f64 {
        Verdict::Near
    } else {
        verdict
    }
}

/// The 5–95 % ranges of the hours, with infinity for what is not reached in the hours followed; none without draws.
struct Ranges {
    stage_one_h: Option<(f64, f64)>,
    total_h: Option<(f64, f64)>,
}

impl Ranges {
    /// Stands for never among hours.
    const NEVER_H: f64 = 1e9;

    fn of(central: &Cooling, others: &[Cooling]) -> Self {
        let range = |pick: fn(&Cooling) -> Option<f64>| {
            let hours = |cooling: &Cooling| pick(cooling).unwrap_or(Self::NEVER_H);
            let (low, high) = five_to_ninety_five(others.iter().map(hours))?;
            let (low, high) = (low.min(hours(central)), high.max(hours(central)));
            // Between hours and never there are none.
            let end = |hours: f64| {
                if hours > Self::NEVER_H / 1e4 {
                    f64::INFINITY
                } else {
                    hours
                }
            };
            Some((end(low), end(high)))
        };
        Ranges {
            stage_one_h: range(|cooling| cooling.stage_one_h),
            total_h: range(|cooling| cooling.total_h),
        }
    }

    /// 'From 57 °C the warmest place is at 21 °C after 1.2 h (1.0 to 1.5), 5 °C after 4.0 h (3.5 to 4.9)'.
    fn found(&self, cooling: &Cooling) -> String {
        let hours = |hours: f64, range: Option<(f64, f64)>| match range {
            Some((low, high)) if high.is_infinite() => format!("{hours:.1} h ({low:.1} to more than was followed)"),
            Some((low, high)) if high - low >= 0.1 => format!("{hours:.1} h ({low:.1} to {high:.1})"),
            _ => format!("{hours:.1} h"),
        };
        let one = match cooling.stage_one_h {
            Some(found) => format!("at 21 °C after {}", hours(found, self.stage_one_h)),
            None => format!("still above 21 °C after {}", hours(cooling.followed_h, None)),
        };
        let two = match (cooling.stage_one_h, cooling.total_h) {
            (_, Some(found)) => format!(", 5 °C after {}", hours(found, self.total_h)),
            (Some(_), None) => {
                let followed = hours(cooling.followed_h, None);
                format!(", still at {:.0} °C after {followed}", cooling.end_c)
            }
            (None, None) => String::new(),
        };
        format!("From 57 °C the warmest place is {one}{two}")
    }
}

/// Where and how long it stands by assumption until it is cold: '1 h on the counter and 20 h in the freezer'; none when
/// the page says all of it.
fn assumed(process: &Process, central: &Trace, cooling: &Cooling) -> Option<String> {
    let end_s = central.acts.get(cooling.act)?.end_s;
    let start_s = end_s - 3600.0 * cooling.followed_h;
    let cold_s = cooling.total_h.map_or(end_s, |hours| start_s + 3600.0 * hours);
    let stands = |(act, times): (&Act, &ActTrace)| match &act.doing {
        Doing::Cook(stretch) if act.vessel == cooling.vessel && stretch.aim == Aim::Off && stretch.assumed => {
            let counts = times.end_s > start_s && times.start_s < cold_s;
            let minutes = (times.end_s - times.start_s) / 60.0;
            counts.then(|| format!("{} {}", hours_and_minutes(minutes), stands_in(stretch.place)))
        }
        _ => None,
    };
    let acts = process.acts.iter().zip(&central.acts).take(cooling.act + 1);
    let all: Vec<String> = acts.filter_map(stands).collect();
    (!all.is_empty()).then(|| all.join(" and "))
}

fn hours_and_minutes(minutes: f64) -> String {
    Figure::central(minutes, Measure::Minutes, Known::RuleOfThumb).display_value()
}

const fn stands_in(place: Place) -> &'static str {
    match place {
        Place::Refrigerator => "in the refrigerator",
        Place::Freezer => "in the freezer",
        Place::IceBath => "in iced water",
        Place::Sink => "in a sink of cold water",
        Place::Hob => "on the hob, without heat",
        Place::Oven => "in the oven, without heat",
        Place::Counter => "on the counter",
    }
}

/// What was found of a cooling that the page leaves to the cook.
fn as_assumed(found: &str, stands: &str, verdict: Verdict) -> String {
    let so = match verdict {
        Verdict::Fails => " So it would be too slow.",
        _ => "",
    };
    format!(
        "{found}, if it stands {stands}, as assumed.{so} The page does not say: 21 °C must come within 2 hours and 5 °C \
         within 6."
    )
}

/// Of a pickle: food that was heated and not packed needs no watching of time and temperature below pH 4.2, and an
/// assessment from there to 4.6 (FDA Food Code 2022 1-201.10, table B). Its pH is not computed.
fn sour(found: &str, cooling: &Cooling) -> String {
    format!(
        "{found}. It holds {:.1} % acid: the rule of 2 and 6 hours is not made for food below pH 4.2 (FDA Food Code 2022 1-201.10, table B), and this most likely is. Its pH is not computed: measure it, or cool it as if the rule held.",
        100.0 * cooling.acid
    )
}

fn says(found: &str, cooling: &Cooling, verdict: Verdict) -> String {
    let so = match verdict {
        Verdict::Meets => "that is inside the 2 and 6 hours allowed.",
        Verdict::Near if cooling.total_h.is_none() => {
            "the page does not follow it down to 5 °C, which must come within 6 hours."
        }
        Verdict::Near => "but it may take longer than the 2 and 6 hours allowed: measure the middle.",
        _ => "it must pass 21 °C within 2 hours and 5 °C within 6: it needs to lose heat faster.",
    };
    format!("{found}; {so}")
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing;

    /// FDA Food Code 3-501.14(A), as logs: pass; 22 °C at 2.0 h; 6 °C at 6.0 h.
    #[test]
    fn three_logs() {
        let log = [(0.0, 57.0), (1.9, 21.0), (5.8, 5.0)];
        assert_eq!(judge_cooling_log(&log), Verdict::Meets);
        let slow = [(0.0, 57.0), (2.0, 22.0), (5.8, 5.0)];
        assert_eq!(judge_cooling_log(&slow), Verdict::Fails);
        let late = [(0.0, 57.0), (1.9, 21.0), (6.0, 6.0)];
        assert_eq!(judge_cooling_log(&late), Verdict::Fails);
    }

    #[test]
    fn a_log_counts_from_57_degrees() {
        // 80 °C at the start, 57 after half an hour: 21 °C at 2.4 h is 1.9 h later.
        let log = [(0.0, 80.0), (0.5, 57.0), (2.4, 21.0), (6.3, 5.0)];
        assert_eq!(judge_cooling_log(&log), Verdict::Meets);
        assert_eq!(judge_cooling_log(&[]), Verdict::Near);
        assert_eq!(judge_cooling_log(&[(0.0, 57.0), (1.0, 40.0)]), Verdict::Near);
    }

    #[test]
    fn limits_belong_to_the_rule() {
        assert_eq!(judge_cooling(Some(2.0), Some(6.0), 8.0), Verdict::Meets);
        assert_eq!(judge_cooling(Some(2.01), Some(6.0), 8.0), Verdict::Fails);
        assert_eq!(judge_cooling(Some(2.0), Some(6.01), 8.0), Verdict::Fails);
        assert_eq!(judge_cooling(None, None, 2.0), Verdict::Fails);
        assert_eq!(judge_cooling(Some(1.0), None, 3.0), Verdict::Near);
    }

    fn cooling(stage_one_h: Option<f64>, total_h: Option<f64>, followed_h: f64) -> Cooling {
        Cooling {
            vessel: 0,
            act: 0,
            stage_one_h,
            total_h,
            end_c: 30.0,
            followed_h,
            acid: 0.0,
        }
    }

    /// 'Cool it and freeze it': what nobody is bound to clears nothing. Once it is cold, what was assumed after it does
    /// not count.
    #[test]
    fn what_was_assumed_gets_no_clearance() {
        let mut process = testing::process(&[]);
        process.acts = vec![
            testing::cook(0, Aim::Simmer, 60.0),
            testing::cook(0, Aim::Off, 60.0),
            testing::cook(0, Aim::Off, 1200.0),
        ];
        let stand = |process: &mut Process, act: usize, place: Place, assumed: bool| {
            if let Doing::Cook(stretch) = &mut process.acts[act].doing {
                (stretch.place, stretch.assumed) = (place, assumed);
            }
        };
        stand(&mut process, 2, Place::Freezer, true);
        let found = |process: &Process, total_h: f64, others: &[Vec<Cooling>]| {
            let mut trace = testing::trace(process);
            trace.coolings = vec![Cooling {
                act: 2,
                ..cooling(Some(0.9), Some(total_h), 21.0)
            }];
            rows(process, &trace, others, &|process| testing::trace(process)).remove(0)
        };
        let row = found(&process, 5.5, &[]);
        assert_eq!((row.verdict, row.assumed), (Verdict::Near, true));
        assert!(
            row.says.contains("if it stands 20 h in the freezer, as assumed"),
            "{}",
            row.says
        );
        assert!(!row.says.contains("inside"), "{}", row.says);
        // Cold in the hour on the counter that the page asks for: the freezer does not matter.
        assert_eq!(found(&process, 0.95, &[]).verdict, Verdict::Meets);
        stand(&mut process, 2, Place::Freezer, false);
        assert_eq!(found(&process, 5.5, &[]).verdict, Verdict::Meets);
        // Of 21 draws from 4.0 to 6.0 h every twentieth of the way, 5 and 95 % are 4.1 and 5.9 h.
        let draw = |n: u32| vec![cooling(Some(0.9), Some(4.0 + 0.1 * f64::from(n)), 21.0)];
        let draws: Vec<Vec<Cooling>> = (0..=20).map(draw).collect();
        let row = found(&process, 5.5, &draws);
        assert_eq!(row.verdict, Verdict::Meets);
        assert!(
            row.says.contains("5 °C after 5.5 h (4.1 to 5.9); that is inside"),
            "{}",
            row.says
        );
    }

    /// A crock of pickle that stands on the counter all night: no failure of the rule, but no silent pass either.
    #[test]
    fn what_is_sour_is_measured_not_judged() {
        let process = testing::process(&[]);
        let mut trace = testing::trace(&process);
        let pickle = |acid| Cooling {
            acid,
            ..cooling(Some(5.0), None, 12.0)
        };
        trace.coolings = vec![pickle(0.024), pickle(0.004)];
        let found = rows(&process, &trace, &[], &|process| testing::trace(process));
        assert_eq!((found[0].verdict, found[1].verdict), (Verdict::Near, Verdict::Fails));
        assert!(found[0].says.contains("2.4 % acid") && found[0].says.contains("pH is not computed"));
    }

    #[test]
    fn a_short_rest_has_no_row_and_a_big_pot_fails() {
        let process = testing::process(&[]);
        let mut trace = testing::trace(&process);
        trace.coolings = vec![cooling(None, None, 0.5), cooling(None, None, 12.0)];
        let found = rows(&process, &trace, &[], &|process| testing::trace(process));
        assert_eq!(found.len(), 1);
        assert_eq!(found[0].verdict, Verdict::Fails);
        assert!(
            found[0]
                .says
                .starts_with("From 57 °C the warmest place is still above 21 °C after 12.0 h;")
        );
        let good = cooling(Some(1.5), Some(5.0), 8.0);
        let bad = cooling(Some(2.5), Some(5.0), 8.0);
        assert_eq!(cautious(&good, &[good, bad]), Verdict::Near);
        assert_eq!(cautious(&good, &[good, good]), Verdict::Meets);
    }
}
