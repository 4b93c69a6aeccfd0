//! Table 05, second half: cooling that was measured, rules of two readings, stirred pots.

use potwright_pot::{Aim, Cooling, Cue, Draw, Kitchen, Material, Place, Pot, Trace, cook};
use potwright_reckon::{Verdict, judge_cooling, judge_cooling_log};

use super::check::{Check, Judged, Wanted};
use super::held;
use super::pots::{central, hours_to, process, room, stretch, thick, water, weightless};
use super::row::Row;

/// The stated kitchen with the moving air of a walk-in cold room: 1.5 m/s in the refrigerator, 3 in the freezer (common
/// practice, no source: fans of walk-in rooms blow 1 to 6 m/s).
fn walk_in() -> Kitchen {
    Kitchen {
        refrigerator_air_m_s: 1.5,
        freezer_air_m_s: 3.0,
        ..Kitchen::default()
    }
}

/// A thick food at a temperature, put uncovered in a walk-in cold place for some hours.
fn put_away(pot: Pot, kg: f64, from_c: f64, place: Place, hours: f64) -> Trace {
    let cool = stretch(place, Aim::Off, Some(60.0 * hours), None);
    central(&process(pot, vec![thick(kg, from_c)], vec![cool]), &walk_in())
}

/// A steel pan of 40 cm filled so many centimetres deep.
fn pan(depth_cm: f64, place: Place) -> Option<Cooling> {
    let kg = std::f64::consts::PI / 4.0 * 40.0 * 40.0 * depth_cm / 1000.0 * 1.03;
    let pan = Pot::new("pan", 40.0, depth_cm + 1.5, Material::Steel, 1.2);
    put_away(pan, kg, 90.0, place, 48.0).coolings.last().copied()
}

/// Thick food of so many US gallons (3.785 litres) in a container as wide as it is high.
fn container(gallons: f64) -> Option<Cooling> {
    let litres = 3.785 * gallons;
    let centimetres = libm::cbrt(4000.0 * litres / std::f64::consts::PI);
    let pot = Pot::new(
        "container",
        centimetres,
        centimetres * 1.1,
        Material::Steel,
        litres / 8.0,
    );
    put_away(pot, litres * 1.03, 90.0, Place::Refrigerator, 240.0)
        .coolings
        .last()
        .copied()
}

/// Whether a cooling keeps to both limits of the rule.
fn passes(cooling: Option<Cooling>) -> bool {
    let meets =
        |cooling: Cooling| judge_cooling(cooling.stage_one_h, cooling.total_h, cooling.followed_h) == Verdict::Meets;
    cooling.is_some_and(meets)
}

/// 05d: published observations, by sign or by inequality, as the rows word them.
pub(super) fn observed(row: &Row) -> Judged {
    let result = row.text("result");
    let fails = |cooling| Check::seen("fails a limit", !passes(cooling), result);
    let check = match row.id() {
        // Hours were seen in containers and rooms that nobody stated: only that such a pot fails is asserted.
        "ms-whitesauce" => fails(container(8.0)),
        "ms-beefstew" => fails(container(14.0)),
        "ms-square" => doubling(row),
        "ms-2in-freezer" => {
            let cooling = pan(5.1, Place::Freezer);
            Check::seen("meets both limits", passes(cooling), result)
        }
        "ms-2in-fridge" => fails(pan(5.1, Place::Refrigerator)),
        "ms-3in-any" => {
            let both = !passes(pan(7.6, Place::Refrigerator)) && !passes(pan(7.6, Place::Freezer));
            Check::seen("fails in refrigerator and freezer", both, result)
        }
        "ms-3in-retail" => fails(pan(7.6, Place::Refrigerator)),
        _ => return Judged::LeftOut("walls of plastic, chill sticks, covers with vents, advice: not in the engine"),
    };
    held([Some(check)])
}

/// Twice the depth takes four times as long: conduction alone, films left out of it, within a fifth.
fn doubling(row: &Row) -> Check {
    let ratio = super::t04_conduction::unstirred_s(10.0, 0.20) / super::t04_conduction::unstirred_s(10.0, 0.10);
    Check::between("time for twice the depth", ratio, row.text("result"), 3.2, 4.8)
}

/// 05e: a log that falls with just the published rate towards the air keeps to the rule, one that is a twentieth slower
/// does not.
pub(super) fn two_points(row: &Row) -> Judged {
    let fahrenheit: Option<f64> = row.id().strip_prefix("rate-").and_then(|degrees| degrees.parse().ok());
    let air_c = fahrenheit.map_or(f64::NAN, |degrees| (degrees - 32.0) / 1.8);
    let check = |column: &str, stage_one: bool| {
        let rate = row.number(column)?;
        let kept = |rate: f64| keeps(air_c, rate, stage_one);
        let sharp = kept(1.05 * rate) && !kept(rate / 1.05);
        Some(Check::seen(
            &format!("{column}: the rule turns there, within 5 %"),
            sharp,
            row.text(column),
        ))
    };
    held([
        check("min_rate_stage1_per_h", true),
        check("min_rate_total_per_h", false),
    ])
}

/// Whether food that falls exponentially from 57 °C, log₁₀ of its distance to the air by `rate` an hour, keeps to the
/// first limit alone or to the whole.
fn keeps(air_c: f64, rate: f64, stage_one: bool) -> bool {
    let log: Vec<(f64, f64)> = (0..=1200)
        .map(|step| f64::from(step) * 0.01)
        .map(|hours| (hours, air_c + (57.0 - air_c) * libm::pow(10.0, -rate * hours)))
        .collect();
    if !stage_one {
        // A first stage that is well within its limit leaves the whole to judge.
        let quick = log.iter().map(|(hours, temp_c)| (*hours, *temp_c));
        let mut log: Vec<(f64, f64)> = vec![(-0.01, 57.0), (0.0, 20.9)];
        log.extend(quick.filter(|(_, temp_c)| *temp_c < 20.9));
        return judge_cooling_log(&log) == Verdict::Meets;
    }
    let mut log: Vec<(f64, f64)> = log.into_iter().filter(|(_, temp_c)| *temp_c > 20.8).collect();
    let last_h = log.last().map_or(0.0, |(hours, _)| *hours);
    log.push((last_h + 0.01, 4.9));
    judge_cooling_log(&log) == Verdict::Meets
}

/// 05f: a stirred pot, integrated independently with the linear law of evaporation. The engine takes the mean of three
/// laws and spreads over their bracket: the row must lie inside it.
pub(super) fn stirred(row: &Row) -> Judged {
    let mut parts = row.id().split('-').skip(1).map_while(|part| part.parse::<f64>().ok());
    let (Some(diameter_m), Some(kg), Some(air_c)) = (parts.next(), parts.next(), parts.next()) else {
        return held([]);
    };
    let pot = || weightless(100.0 * diameter_m, 100.0 * diameter_m);
    let cool = || stretch(Place::Counter, Aim::Off, Some(1440.0), None::<Cue>);
    let hours = |evaporation: f64, temp_c: f64| {
        let draw = Draw {
            evaporation,
            ..Draw::central()
        };
        let process = process(pot(), vec![water(kg, 95.0)], vec![cool()]);
        hours_to(&cook(&process, &room(air_c), &draw), temp_c)
    };
    let target_c = row.number("target_C").unwrap_or(f64::NAN);
    let covered = |column: &str, temp_c: f64, unit: f64| {
        let (value, half) = (row.number(column)?, row.half_unit(column));
        // What evaporates little is slow.
        let (low, high) = (unit * hours(1.645, temp_c) - half, unit * hours(-1.645, temp_c) + half);
        Some(Check {
            quantity: column.into(),
            ours: unit * hours(0.0, temp_c),
            published: row.text(column).into(),
            wanted: Wanted::Covered { value, low, high },
        })
    };
    held([
        covered("min_to_57C", 57.0, 60.0),
        covered("h_from_95_to_target", target_c, 1.0),
    ])
}
