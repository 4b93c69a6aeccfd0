//! `cargo xtask prove physics`: every reference row of the pot's physics, our result beside the published one.
//!
//! The rows are read from the folder that POTWRIGHT_REFERENCE names. A seeded choice of them, and every row that is not
//! met, is carried in `xtask/data/reference_rows.tsv` (written afresh by the proof); `xtask/data/reference_misses.tsv`
//! lists by hand what is known not to be met and why. Tests judge the carried rows by the same evaluators.

mod body;
mod carried;
mod check;
mod pots;
mod row;
mod t03_properties;
mod t04_conduction;
mod t05_cooling;
mod t05_pots;
mod t06_lethality;
mod t07_alcohol;
mod t10_thickening;
mod t14_freezing;
mod t15_softening;
mod t16_whole;

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use super::figures::{Figures, Table};
use carried::Miss;
pub(super) use check::digits;
use check::{Check, Judged};
use row::Row;

/// A table, and what judges its rows.
struct Judge {
    table: &'static str,
    judge: fn(&Row) -> Judged,
    /// Columns of figures that are not the engine's, and why; may be empty.
    unused: &'static str,
}

const fn judge(table: &'static str, judge: fn(&Row) -> Judged, unused: &'static str) -> Judge {
    Judge { table, judge, unused }
}

/// Rows of a table that no part of the engine computes.
fn guidance(_: &Row) -> Judged {
    Judged::LeftOut("guidance, or facts of other crates: nothing the pot computes")
}

fn organisms(_: &Row) -> Judged {
    Judged::LeftOut("constants of organisms: inputs of the integrals of 06c, 06f and 06g, which are held")
}

fn rheology(_: &Row) -> Judged {
    Judged::LeftOut("the engine has words for the body of a dish and no viscosity of it")
}

const JUDGES: &[Judge] = &[
    judge("03a_choi_okos_coefficients", t03_properties::coefficients, ""),
    judge("03b_choi_okos_checks", t03_properties::at_a_temperature, ""),
    judge(
        "03c_food_property_checks",
        t03_properties::foods,
        "k_perpendicular: the engine conducts in parallel",
    ),
    judge("03d_ashrae_worked_examples", t03_properties::worked_examples, ""),
    judge(
        "03e_water_saturation",
        t03_properties::saturation,
        "p_sat_antoine_kPa: another equation, from memory; mu_liq_mPa_s: the engine has no viscosity",
    ),
    judge("03f_boiling_vs_altitude", t03_properties::height, "feet and °F: units"),
    judge(
        "03g_salt_boiling_freezing",
        t03_properties::brine,
        "dT_boil_ideal_K: without the osmotic coefficient; dT_freeze_approx_K: the engine freezes all food at one temperature",
    ),
    judge("04a_first_term_coefficients", t04_conduction::first_terms, ""),
    judge(
        "04b_conduction_checks",
        t04_conduction::series,
        "theta_centre_one_term: the approximation, not the answer",
    ),
    judge("04c_conduction_worked_examples", t04_conduction::worked_examples, ""),
    judge(
        "05a_open_surface_evaporation",
        t05_pots::open_surface,
        "Ra, Le: on the way to the rest",
    ),
    judge("05b_pot_correlation_checks", t05_pots::correlations, ""),
    judge("05c_burners", t05_pots::burners, ""),
    judge("05d_measured_cooling", t05_cooling::observed, ""),
    judge("05e_two_point_cooling_rates", t05_cooling::two_points, ""),
    judge("05f_stirred_pot_cooling", t05_cooling::stirred, ""),
    judge("06a_food_code_times", guidance, ""),
    judge("06b_consumer_safe_temps", guidance, ""),
    judge("06c_fsis_roast_lethality", t06_lethality::roast, ""),
    judge("06d_fsis_chicken_lethality", t06_lethality::chicken, ""),
    judge("06e_d_and_z", organisms, ""),
    judge("06f_listeria_equivalents", t06_lethality::listeria, ""),
    judge("06g_lethality_integral_checks", t06_lethality::integrals, ""),
    judge("06h_storage_times", guidance, ""),
    judge("06i_shellfish_beans_growth", guidance, ""),
    judge("07_alcohol_retention", t07_alcohol::retention, ""),
    judge("10a_thickening_ratios", t10_thickening::ratios, ""),
    judge("10b_gelatinisation", t10_thickening::gelatinisation, ""),
    judge("10c_viscosity", rheology, ""),
    judge("10d_power_law_checks", t10_thickening::power_law, ""),
    judge("14_freezing", t14_freezing::freezing, ""),
    judge(
        "15a_softening_kinetics",
        t15_softening::kinetics,
        "min_to_10pct_at_100C: absolute times are cooks', not kinetics'",
    ),
    judge("15b_time_equivalence", t15_softening::equivalence, ""),
    judge("15c_temperatures", t15_softening::temperatures, ""),
    judge("15d_pulse_times", t15_softening::pulses, ""),
    judge("16_end_to_end_checks", t16_whole::cases, ""),
];

/// The figures of a row that were held against ours; a row of which none could be is a fault that shows as one not met.
fn held<const N: usize>(checks: [Option<Check>; N]) -> Judged {
    let checks: Vec<Check> = checks.into_iter().flatten().collect();
    if checks.is_empty() {
        return Judged::Held(vec![Check::seen("the row could be read", false, "")]);
    }
    Judged::Held(checks)
}

/// What became of a row.
fn judged(row: &Row) -> Option<Judged> {
    let judge = JUDGES.iter().find(|judge| judge.table == row.table)?;
    Some(match row.not_asserted() {
        Some(why) => Judged::LeftOut(why),
        None => (judge.judge)(row),
    })
}

/// The folder of the reference tables.
fn folder() -> Result<PathBuf> {
    let folder = std::env::var_os("POTWRIGHT_REFERENCE");
    let folder = folder.context("POTWRIGHT_REFERENCE is not set: it names the folder of the reference tables")?;
    Ok(folder.into())
}

pub(super) fn work(root: &Path) -> Result<Figures> {
    let folder = folder()?;
    let mut rows = Vec::new();
    for judge in JUDGES {
        rows.extend(row::of_file(&folder, judge.table)?);
    }
    let judged: Vec<(&Row, Judged)> = rows
        .iter()
        .filter_map(|row| judged(row).map(|judged| (row, judged)))
        .collect();
    let misses = carried::misses(root)?;
    carried::write(root, &judged)?;
    Ok(Figures {
        title: "Physics, held to published values".into(),
        says: "Every row of the reference tables 03 to 07, 10, 14, 15 and 16 that is exact, confirmed or computed and \
               that the pot has a figure for; one line a figure. Tolerances where a row states none: closed forms and \
               properties 0.1 %, conduction 0.5 %, rows whose inputs or constants were recalled 3 %, evaporation inside \
               the bracket of its three laws, observations by sign – each with half a unit of the last digit that the \
               row prints. *Computed* says that two computations agree, not that a kitchen does. Rows that are left out \
               are counted with the reason."
            .into(),
        tables: vec![
            not_met(&judged, &misses),
            summary(&judged),
            left_out(&judged),
            t07_alcohol::conditions(),
            all(&judged),
        ],
    })
}

/// Rows and figures by table.
fn summary(judged: &[(&Row, Judged)]) -> Table {
    let heads = [
        "table",
        "rows",
        "held",
        "figures",
        "met",
        "not met",
        "shown",
        "figures not used",
    ];
    let mut table = Table::new("By table", &heads);
    for judge in JUDGES {
        let of_table: Vec<&Judged> = judged
            .iter()
            .filter(|(row, _)| row.table == judge.table)
            .map(|(_, judged)| judged)
            .collect();
        let held: Vec<&Vec<Check>> = of_table.iter().filter_map(|judged| checks(judged)).collect();
        let figures: Vec<&Check> = held.iter().flat_map(|checks| checks.iter()).collect();
        let shown = figures.iter().filter(|check| check.only_shown()).count();
        let missed = figures.iter().filter(|check| !check.met()).count();
        let met = figures.len() - missed - shown;
        let counts = [of_table.len(), held.len(), figures.len(), met, missed, shown];
        let mut cells = vec![judge.table.to_owned()];
        cells.extend(counts.map(|count| count.to_string()));
        cells.push(judge.unused.into());
        table.rows.push(cells);
    }
    table
}

fn checks(judged: &Judged) -> Option<&Vec<Check>> {
    match judged {
        Judged::Held(checks) => Some(checks),
        Judged::LeftOut(_) => None,
    }
}

const HEADS: [&str; 7] = ["table", "row", "figure", "ours", "published", "deviation", "meant"];

fn line(row: &Row, check: &Check) -> Vec<String> {
    let number = row.table.split('_').next().unwrap_or("");
    vec![
        number.into(),
        cell(row.id()),
        cell(&check.quantity),
        digits(check.ours),
        cell(&check.published),
        check.deviation_text(),
        check.wanted_text(),
    ]
}

/// A cell of the page: a bar would end it.
fn cell(text: &str) -> String {
    text.replace('|', "/")
}

fn every<'a>(judged: &'a [(&'a Row, Judged)]) -> impl Iterator<Item = (&'a Row, &'a Check)> {
    judged
        .iter()
        .filter_map(|(row, judged)| checks(judged).map(|checks| (*row, checks)))
        .flat_map(|(row, checks)| checks.iter().map(move |check| (row, check)))
}

fn not_met(judged: &[(&Row, Judged)], misses: &[Miss]) -> Table {
    let mut heads = HEADS.to_vec();
    heads.push("why");
    let mut table = Table::new("Not met", &heads);
    for (row, check) in every(judged).filter(|(_, check)| !check.met()) {
        let known = misses.iter().find(|miss| miss.is_of(row, check));
        let mut cells = line(row, check);
        cells.push(known.map_or("**not looked into**".into(), |miss| cell(&miss.why)));
        table.rows.push(cells);
    }
    table
}

fn left_out(judged: &[(&Row, Judged)]) -> Table {
    let mut counts: BTreeMap<(&str, &str), Vec<&str>> = BTreeMap::new();
    for (row, judged) in judged {
        if let Judged::LeftOut(why) = judged {
            counts.entry((row.table.as_str(), why)).or_default().push(row.id());
        }
    }
    let mut table = Table::new("Left out, and why", &["table", "rows", "why", "which"]);
    for ((name, why), ids) in counts {
        // Long lists of one kind are named by their ends.
        let which = match ids.as_slice() {
            [first, .., last] if ids.len() > 8 => format!("{first} … {last}"),
            _ => ids.join(", "),
        };
        table
            .rows
            .push(vec![name.into(), ids.len().to_string(), why.into(), cell(&which)]);
    }
    table
}

fn all(judged: &[(&Row, Judged)]) -> Table {
    let mut table = Table::new("All figures", &HEADS);
    table.rows = every(judged)
        .map(|(row, check)| {
            let mut cells = line(row, check);
            if let Some(deviation) = cells.get_mut(5)
                && !check.met()
            {
                *deviation = format!("{deviation}: **not met**");
            }
            cells
        })
        .collect();
    table
}
