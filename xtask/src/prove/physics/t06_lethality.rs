//! Table 06: what heat kills, and how long it takes.

use potwright_pot::physics::lethality::{equivalent_minutes, log_reduction};

use super::check::{CLOSED_FORM, Check, Judged};
use super::held;
use super::row::Row;

/// Salmonella in beef as the published table implies it (06e, fitted to 06c): reference °C, minutes a log, kelvins a
/// tenfold.
const SALMONELLA: (f64, f64, f64) = (60.0, 1.77, 5.56);
/// Listeria: 70 °C for two minutes are six logs.
pub(super) const LISTERIA: (f64, f64, f64) = (70.0, 2.0 / 6.0, 7.5);

/// Logs that a minute held at a temperature kills.
fn logs_a_minute(temp_c: f64, (reference_c, d_min, z_k): (f64, f64, f64)) -> f64 {
    let held = [(0.0, temp_c), (60.0, temp_c)];
    log_reduction(equivalent_minutes(&held, reference_c, z_k, 0.0), d_min)
}

/// The table of the verdicts: hazard, °C, seconds of hold.
const VERDICTS: &str = include_str!("../../../../crates/reckon/data/holding.tsv");

/// Seconds that the verdicts ask for at a centre temperature: the shortest of a hazard's rows that it has reached;
/// infinite where no row is so cool.
fn asked_s(hazard: &str, temp_c: f64) -> f64 {
    let lines = VERDICTS.lines().filter(|line| !line.starts_with('#'));
    let row = |line: &str| {
        let mut cells = line.split('\t');
        let of_hazard = cells.next()? == hazard;
        let (from_c, hold_s): (f64, f64) = (cells.next()?.parse().ok()?, cells.next()?.parse().ok()?);
        // The published temperatures are rounded from °F to a tenth.
        (of_hazard && from_c <= temp_c + 0.05).then_some(hold_s)
    };
    lines.filter_map(row).fold(f64::INFINITY, f64::min)
}

/// The verdicts must ask for no less than a published time.
fn no_less(row: &Row, column: &str, hazard: &str) -> Option<Check> {
    let asked = asked_s(hazard, row.number("C")?);
    // What is told as instantaneous is so for a table that prints whole seconds: it asks for nothing.
    let published = row.number(column).unwrap_or(0.0);
    let quantity = format!("{column}, asked for by the verdicts");
    Some(Check::between(
        &quantity,
        asked,
        row.text(column),
        published,
        f64::INFINITY,
    ))
}

/// 06c: seconds for 6.5 logs, within the ten per cent that table 16 states for it (E04), from 54.4 to 69.4 °C; for 7
/// logs, that the verdicts ask for as much.
pub(super) fn roast(row: &Row) -> Judged {
    let calculated = row
        .number("F")
        .filter(|fahrenheit| *fahrenheit < 157.5)
        .and_then(|fahrenheit| {
            let seconds = 60.0 * 6.5 / logs_a_minute((fahrenheit - 32.0) / 1.8, SALMONELLA);
            Check::column(row, "s_for_6.5_log", seconds, 0.10)
        });
    held([calculated, no_less(row, "s_for_7_log", "whole_meat")])
}

/// 06d: for 7 logs in chicken by its fat: that the verdicts ask for as much.
pub(super) fn chicken(row: &Row) -> Judged {
    held([no_less(row, "s_for_7_log", "poultry")])
}

/// 06f: minutes for six logs of Listeria.
pub(super) fn listeria(row: &Row) -> Judged {
    let minutes = row.number("C").map(|temp_c| 6.0 / logs_a_minute(temp_c, LISTERIA));
    let Some(minutes) = minutes else {
        return held([]);
    };
    held([
        Check::column(row, "min_for_6D", minutes, CLOSED_FORM),
        Check::column(row, "s_for_6D", 60.0 * minutes, CLOSED_FORM),
    ])
}

/// 06g: integrals over a course of temperature.
pub(super) fn integrals(row: &Row) -> Judged {
    let history: Vec<(f64, f64)> = match row.id() {
        "ramp-1" => vec![(0.0, 50.0), (1200.0, 80.0)],
        // Straight pieces of half a second.
        "ramp-2" => (0..=2400)
            .map(|half| 0.5 * f64::from(half))
            .map(|seconds| (seconds, 20.0 + 80.0 * (1.0 - libm::exp(-seconds / 480.0))))
            .collect(),
        _ => return held([]),
    };
    let minutes = equivalent_minutes(&history, 70.0, 7.5, 0.0);
    held([Check::column(row, "F_min", minutes, CLOSED_FORM)])
}

/// 16, E05: a centre that warms by a kelvin a minute from 50 °C; minutes at 70 °C and logs of Listeria.
pub(super) fn warming_centre(minutes: f64) -> (f64, f64) {
    let history = [(0.0, 50.0), (60.0 * minutes, 50.0 + minutes)];
    let (reference_c, d_min, z_k) = LISTERIA;
    let equivalent = equivalent_minutes(&history, reference_c, z_k, 0.0);
    (equivalent, log_reduction(equivalent, d_min))
}

/// 16, E04: logs of Salmonella for a hold of seconds at a temperature in °F.
pub(super) fn held_roast(fahrenheit: f64, seconds: f64) -> f64 {
    seconds / 60.0 * logs_a_minute((fahrenheit - 32.0) / 1.8, SALMONELLA)
}
