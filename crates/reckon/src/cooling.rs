//! Cooling of hot food against the two-stage rule: from 57 to 21 °C within 2 h and to 5 °C within 6 h in all (FDA
//! Food Code 2022 3-501.14(A)).

use potwright_manuscript::Cover;
use potwright_measure::{Duration, Temperature};
use potwright_pot::{Act, Aim, Cooling, Cue, Doing, Lasts, Place, Process, Stretch, Trace};

use crate::{CoolingRow, Verdict};

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
/// A cooling that does not meet the rule is cooked again by `cook` with iced water first, and the row says what came
/// of that.
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
            let verdict = match cautious(cooling, &others) {
                // What is sour is no failure, and no computation says that it is safe.
                Verdict::Fails if cooling.acid >= SOUR => Verdict::Near,
                verdict => verdict,
            };
            CoolingRow {
                span: process.acts.get(cooling.act).and_then(|act| act.span),
                stage_one_h: cooling.stage_one_h,
                total_h: cooling.total_h,
                verdict,
                says: match verdict {
                    _ if cooling.acid >= SOUR => sour(cooling),
                    Verdict::Fails => [says(cooling, verdict), iced(process, cooling, cook)].concat(),
                    _ => says(cooling, verdict),
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

/// What iced water first would do, as a second sentence; nothing where it stands in iced water already or the cooling
/// is no stretch of its own.
fn iced(process: &Process, cooling: &Cooling, cook: &dyn Fn(&Process) -> Trace) -> String {
    let Some((with_ice, first)) = with_ice_first(process, cooling) else {
        return String::new();
    };
    let trace = cook(&with_ice);
    let again = trace
        .coolings
        .iter()
        .rfind(|c| c.vessel == cooling.vessel && c.act >= first);
    match again.map(|c| (of(c), c.stage_one_h, c.total_h)) {
        Some((Verdict::Meets, Some(one_h), Some(total_h))) => format!(
            " Stood in iced water first, stirred, and then as written, it takes {one_h:.1} h and {total_h:.1} h."
        ),
        Some((_, Some(one_h), _)) => {
            format!(" Iced water alone does not do: even so it is at 21 °C after {one_h:.1} h.")
        }
        _ => " Iced water alone does not do.".to_owned(),
    }
}

/// The process with a stretch in iced water, until nearly cold, before the first of the unheated stretches that end
/// with the cooling's act, and the index of that stretch.
fn with_ice_first(process: &Process, cooling: &Cooling) -> Option<(Process, usize)> {
    /// Where a cook takes the pot out of the ice, °C (common practice, no source).
    const OUT_C: f64 = 10.0;
    let stands = |act: &Act| match &act.doing {
        Doing::Cook(stretch) => act.vessel == cooling.vessel && stretch.aim == Aim::Off,
        _ => false,
    };
    let last = cooling.act.min(process.acts.len().checked_sub(1)?);
    let unheated = process.acts[..=last].iter().rev().take_while(|act| stands(act)).count();
    let first = (last + 1).checked_sub(unheated.max(1))?;
    let template = process.acts.get(first).filter(|act| stands(act))?;
    if matches!(&template.doing, Doing::Cook(stretch) if stretch.place == Place::IceBath) {
        return None;
    }
    let ice = Act {
        doing: Doing::Cook(Stretch {
            place: Place::IceBath,
            aim: Aim::Off,
            lasts: Lasts {
                minutes: None,
                cue: Some(Cue::Reaches(Temperature::from_celsius(OUT_C))),
            },
            cover: Cover::Off,
            batches: 1,
        }),
        operation: None,
        hands: Duration::ZERO,
        ..template.clone()
    };
    let mut changed = process.clone();
    changed.acts.insert(first, ice);
    Some((changed, first))
}

/// 'From 57 °C the warmest place is at 21 °C after 1.2 h, 5 °C after 4.0 h'.
fn found(cooling: &Cooling) -> String {
    let hours = |hours: f64| format!("{hours:.1} h");
    let one = match cooling.stage_one_h {
        Some(found) => format!("at 21 °C after {}", hours(found)),
        None => format!("still above 21 °C after {}", hours(cooling.followed_h)),
    };
    let two = match (cooling.stage_one_h, cooling.total_h) {
        (_, Some(found)) => format!(", 5 °C after {}", hours(found)),
        (Some(_), None) => format!(", still at {:.0} °C after {}", cooling.end_c, hours(cooling.followed_h)),
        (None, None) => String::new(),
    };
    format!("From 57 °C the warmest place is {one}{two}")
}

/// Of a pickle: food that was heated and not packed needs no watching of time and temperature below pH 4.2, and an
/// assessment from there to 4.6 (FDA Food Code 2022 1-201.10, table B). Its pH is not computed.
fn sour(cooling: &Cooling) -> String {
    format!(
        "{}. It holds {:.1} % acid: the rule of 2 and 6 hours is not made for food below pH 4.2 (FDA Food Code 2022 1-201.10, table B), and this most likely is. Its pH is not computed: measure it, or cool it as if the rule held.",
        found(cooling),
        100.0 * cooling.acid
    )
}

fn says(cooling: &Cooling, verdict: Verdict) -> String {
    let so = match verdict {
        Verdict::Meets => "that is inside the 2 and 6 hours allowed.",
        Verdict::Near if cooling.total_h.is_none() => {
            "the page does not follow it down to 5 °C, which must come within 6 hours."
        }
        Verdict::Near => "but it may take longer than the 2 and 6 hours allowed: measure the middle.",
        _ => "it must pass 21 °C within 2 hours and 5 °C within 6: it needs to lose heat faster.",
    };
    format!("{}; {so}", found(cooling))
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

    /// A pot that stands on the counter is tried in iced water; the sentence tells what came of it.
    #[test]
    fn iced_water_is_tried_before_it_is_offered() {
        let mut process = testing::process(&[]);
        process.acts = vec![testing::cook(0, Aim::Simmer, 60.0), testing::cook(0, Aim::Off, 720.0)];
        let slow = Cooling {
            act: 1,
            ..cooling(None, None, 12.0)
        };
        let cook = |good: bool| {
            move |process: &Process| {
                let Doing::Cook(ice) = &process.acts[1].doing else {
                    panic!("the ice comes first")
                };
                assert_eq!(ice.place, Place::IceBath);
                assert_eq!(process.acts.len(), 3);
                let hours = if good {
                    (Some(0.7), Some(2.4))
                } else {
                    (Some(2.6), None)
                };
                let mut trace = testing::trace(process);
                trace.coolings = vec![Cooling {
                    act: 2,
                    ..cooling(hours.0, hours.1, 12.0)
                }];
                trace
            }
        };
        assert_eq!(
            iced(&process, &slow, &cook(true)),
            " Stood in iced water first, stirred, and then as written, it takes 0.7 h and 2.4 h."
        );
        assert_eq!(
            iced(&process, &slow, &cook(false)),
            " Iced water alone does not do: even so it is at 21 °C after 2.6 h."
        );
        if let Doing::Cook(stretch) = &mut process.acts[1].doing {
            stretch.place = Place::IceBath;
        }
        assert_eq!(iced(&process, &slow, &|_| panic!("nothing is tried")), "");
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
