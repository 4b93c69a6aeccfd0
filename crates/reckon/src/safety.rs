//! Doneness and safety: has the centre been hot enough for long enough, by the published rules?
//!
//! Verdicts come from confirmed tables only (`data/holding.tsv`); where two differ the stricter stands. Beside them goes
//! what a calculation makes of the growing cells of the organism, over time and inside the piece; where table and
//! calculation differ the stricter of the two decides. The verdict is that of the cautious end: of nineteen draws in
//! twenty. Of spores and toxins nothing is ever said but that they stand heat.

use potwright_larder::{Hazard, Kind};
use potwright_pot::{Cue, Doing, Part, Process, Reduction, Trace};

use potwright_pot::physics::lethality::{Decline, MOST_LOG10};

use crate::foods::{Foods, is_bone};
use crate::reading::spread_about;
use crate::table::{Table, rows};
use crate::whereabouts::Whereabouts;
use crate::{Calculation, Doneness, Figure, Known, Measure, Tenderness, Verdict};

static TABLE: Table = Table::of(include_str!("../data/holding.tsv"));

/// Kelvins that stand for the cautious end while only the central run is done (common practice, no source).
const MARGIN_K: f64 = 5.0;

/// Share of the draws that must meet a rule: the 5th percentile of the coldest point.
const CAUTIOUS: f64 = 0.95;

/// Hours of soaking that kidney beans need (FDA Bad Bug Book, phytohaemagglutinin: soak at least 5 h, throw the water
/// away, boil in fresh water).
const SOAK_H: f64 = 5.0;

/// Minutes of boiling that kidney beans need, to be sure (the same: at least 30 min).
const BOIL_MIN: f64 = 30.0;

/// The least minutes of boiling that the same source speaks of: less fails, more is near.
const BOIL_LEAST_MIN: f64 = 10.0;

/// Kelvins below the boiling point that still count as boiling: what a household thermometer cannot tell apart
/// (common practice, no source).
const BOILING_WITHIN_K: f64 = 1.5;

/// What one run did to the pieces of a lot: the coldest group where there are several.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Outcome {
    pub(crate) lot: usize,
    pub(crate) hazard: Option<Hazard>,
    pub(crate) hottest_c: f64,
    pub(crate) tender: Option<f64>,
    /// Meets the rule of its hazard, and the calculation agrees.
    pub(crate) safe: bool,
    /// Would meet it [`MARGIN_K`] colder.
    pub(crate) safe_colder: bool,
    /// Meets the rule, and the calculation does not agree.
    pub(crate) disputed: bool,
    /// The calculation, where there is one.
    pub(crate) reduction: Option<Reduction>,
    /// Does not meet it, but the least that is asked of beans was done.
    pub(crate) nearly: bool,
    /// What the page gives it, where minutes and not degrees are the rule.
    pub(crate) given: Given,
}

/// What a page gives a food of which the rule counts hours and minutes.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Given {
    /// Hours of soaking in water that is thrown away.
    pub(crate) soaked_h: f64,
    /// Minutes at the boil.
    pub(crate) boiled_min: f64,
    /// Minutes on the heat.
    pub(crate) heated_min: f64,
}

/// The outcomes of a run, one for each lot that must be made safe or tender, in the order of the lots.
pub(crate) fn outcomes(process: &Process, trace: &Trace, places: &Whereabouts, foods: &dyn Foods) -> Vec<Outcome> {
    (0..process.lots.len())
        .filter_map(|lot| outcome(process, trace, places, foods, lot))
        .collect()
}

fn outcome(process: &Process, trace: &Trace, places: &Whereabouts, foods: &dyn Foods, lot: usize) -> Option<Outcome> {
    let beans = |centre: &[(f64, f64)], colder_k: f64, boil_min: f64| {
        boiled_min(trace, centre, colder_k) >= boil_min && soaked_and_drained_h(process, trace, places, lot) >= SOAK_H
    };
    let judge = |hazard: Option<Hazard>, centre: &[(f64, f64)], reduction: Option<Reduction>| {
        let meets = |colder_k: f64| match hazard {
            Some(Hazard::KidneyBean) => beans(centre, colder_k, BOIL_MIN),
            Some(hazard) => meets_rule(hazard, centre, colder_k),
            None => true,
        };
        let agrees = reduction.is_none_or(|found| found.coldest_log10 >= needed_log10(hazard));
        let agrees_colder = reduction.is_none_or(|found| log10_colder(&found, centre) >= needed_log10(hazard));
        Outcome {
            lot,
            hazard,
            hottest_c: hottest(centre),
            tender: None,
            safe: meets(0.0) && agrees,
            safe_colder: meets(MARGIN_K) && agrees_colder,
            disputed: meets(0.0) && !agrees,
            reduction,
            nearly: hazard == Some(Hazard::KidneyBean) && beans(centre, 0.0, BOIL_LEAST_MIN),
            given: given(process, trace, places, lot, centre),
        }
    };
    // Nobody asks it of bones for stock.
    let bone = process.lots.get(lot).and_then(|lot| foods.of(lot)).is_some_and(is_bone);
    let of_use = !bone && tenderness_is_of_use(process, lot);
    let shaped = is_shaped(process, lot);
    let groups = trace.pieces.iter().filter(|pieces| pieces.lot == lot);
    let in_pieces = groups
        .filter(|pieces| pieces.hazard.is_some() || shaped || (of_use && pieces.tender.is_some()))
        .map(|pieces| {
            let mut found = judge(pieces.hazard, &pieces.centre, pieces.reduction);
            found.tender = pieces.tender.filter(|_| of_use);
            // The engine's own maximum may lie between two entries of the history.
            found.hottest_c = found.hottest_c.max(pieces.hottest_centre_c);
            found
        })
        .min_by(|a, b| a.hottest_c.total_cmp(&b.hottest_c));
    in_pieces.or_else(|| {
        // What disperses has the temperature of the liquid it is in: eggs, minced meat. What was shaped into one is
        // judged with it.
        let entry = process.lots.get(lot).filter(|lot| lot.pieces.is_none())?;
        if shaped || is_in_shaped(process, places, lot) {
            return None;
        }
        let hazard = foods.of(entry)?.behaviour.hazard?;
        let history = liquid_history(trace, places, lot);
        (!history.is_empty()).then(|| judge(Some(hazard), &history, in_liquid(hazard, &history)))
    })
}

/// The calculation of what disperses in a liquid, from the liquid's own temperature: every part has the same.
fn in_liquid(hazard: Hazard, history: &[(f64, f64)]) -> Option<Reduction> {
    let decline = Decline::of(hazard)?;
    let log10 = decline.over(history).min(MOST_LOG10);
    Some(Reduction {
        decline,
        coldest_log10: log10,
        whole_log10: log10,
    })
}

/// Decimal reductions that the tables stand for: 6.5 of Salmonella in red meat, the column that the figures of the
/// calculation were fitted to, 7 in poultry (FSIS Appendix A, 1999; FSIS tables for ready-to-eat poultry). A twentieth
/// less is the same: the printed times are rounded to seconds and minutes.
fn needed_log10(hazard: Option<Hazard>) -> f64 {
    match hazard {
        Some(Hazard::Poultry) => 7.0 - 0.05,
        _ => 6.5 - 0.05,
    }
}

/// The calculation at the centre, [`MARGIN_K`] colder than it was.
fn log10_colder(reduction: &Reduction, centre: &[(f64, f64)]) -> f64 {
    let colder: Vec<(f64, f64)> = centre.iter().map(|(s, c)| (*s, c - MARGIN_K)).collect();
    reduction.decline.over(&colder)
}

fn given(process: &Process, trace: &Trace, places: &Whereabouts, lot: usize, centre: &[(f64, f64)]) -> Given {
    let heat = places.heat(process, trace, lot);
    Given {
        soaked_h: soaked_and_drained_h(process, trace, places, lot),
        boiled_min: boiled_min(trace, centre, 0.0),
        heated_min: heat.fried_min + heat.baked_min + heat.wet_min,
    }
}

/// Whether a cook asks if it is tender: meat, pulses, grain, and whatever the page says to cook until it is.
fn tenderness_is_of_use(process: &Process, lot: usize) -> bool {
    let kind = process.lots.get(lot).map(|lot| lot.kind);
    let by_kind = matches!(
        kind,
        Some(Kind::Meat | Kind::Poultry | Kind::Pulse | Kind::Grain | Kind::Pasta)
    );
    by_kind
        || process.acts.iter().any(|act| match &act.doing {
            Doing::Cook(stretch) => matches!(&stretch.lasts.cue, Some(Cue::Tender(lots)) if lots.contains(&lot)),
            _ => false,
        })
}

/// Whether a lot is what a dough or other mixture goes by: a baker asks how hot its centre is.
fn is_shaped(process: &Process, lot: usize) -> bool {
    let is_it = |act: &potwright_pot::Act| matches!(&act.doing, Doing::Shape { lot: main, .. } if *main == lot);
    process.acts.iter().any(is_it)
}

/// Whether a lot is part of a mixture that goes by another's name.
fn is_in_shaped(process: &Process, places: &Whereabouts, lot: usize) -> bool {
    let mut acts = process.acts.iter().enumerate();
    acts.any(|(index, act)| matches!(act.doing, Doing::Shape { .. }) && places.vessel(index, lot) == Some(act.vessel))
}

/// The rows of the dossier.
pub(crate) fn doneness(process: &Process, central: &[Outcome], others: &[Vec<Outcome>]) -> Vec<Doneness> {
    central
        .iter()
        .map(|outcome| {
            let same: Vec<Outcome> = others
                .iter()
                .filter_map(|run| run.iter().find(|o| o.lot == outcome.lot).copied())
                .collect();
            row(process, outcome, &same)
        })
        .collect()
}

fn row(process: &Process, central: &Outcome, others: &[Outcome]) -> Doneness {
    let lot = process.lots.get(central.lot);
    let dough = lot.is_some_and(|lot| lot.kind == Kind::Flour);
    let name = lot.map_or(String::new(), |lot| {
        let of = if dough { "dough of " } else { "" };
        format!("{of}{}", lot.name)
    });
    let (rule, source) = central.hazard.map_or((String::new(), String::new()), rule_of);
    let centre = spread_about(
        central.hottest_c,
        others.iter().map(|o| o.hottest_c),
        Measure::Celsius,
        Known::ByHandbook,
    );
    // Whole percents, and no more than thrice tender: beyond it there is nothing left to soften.
    let percent = |tender: f64| (100.0 * tender).round().clamp(0.0, 300.0);
    let tender = central.tender.map(|tender| {
        let others = others.iter().filter_map(|o| o.tender);
        spread_about(
            percent(tender),
            others.map(percent),
            Measure::Percent,
            Known::RuleOfThumb,
        )
    });
    let verdict = verdict(central, others);
    let calculation = central.reduction.map(|found| calculation(&found, others));
    let of = |tender: &Figure| Tenderness::of(tender.value);
    let ends = |tender: &Figure| {
        tender
            .spread
            .map(|(low, high)| (Tenderness::of(low), Tenderness::of(high)))
    };
    Doneness {
        finding: finding(central, verdict),
        tenderness: tender.as_ref().map(of),
        tenderness_range: tender.as_ref().and_then(ends),
        lot: central.lot,
        name,
        hazard: central.hazard,
        centre,
        verdict,
        rule,
        source,
        calculation,
        tender,
    }
}

/// What the calculation says, in figures and in a sentence.
fn calculation(central: &Reduction, others: &[Outcome]) -> Calculation {
    let others = others.iter().filter_map(|o| o.reduction);
    let coldest = spread_about(
        central.coldest_log10,
        others.map(|found| found.coldest_log10),
        Measure::Count,
        Known::ByHandbook,
    );
    let least = coldest.spread.map_or(coldest.value, |(low, _)| low);
    let cautious = if coldest.spread.is_some() {
        ", at the cautious end"
    } else {
        ""
    };
    let says = if least >= MOST_LOG10 {
        format!("{} of Salmonella everywhere in the piece{cautious}", log10(least))
    } else {
        let whole = log10(central.whole_log10);
        format!(
            "{} of Salmonella at the coldest point{cautious}; in the whole piece {whole}",
            log10(least)
        )
    };
    let decline = central.decline;
    let constants = format!(
        "D {:.2} min at {:.0} °C, z {:.2} K, counted from {:.1} °C up",
        decline.d_min, decline.reference_c, decline.z_k, decline.from_c
    );
    Calculation {
        coldest,
        whole_log10: central.whole_log10,
        constants,
        says,
    }
}

/// Decimal reductions in words.
fn log10(of: f64) -> String {
    if of >= MOST_LOG10 {
        format!("more than {MOST_LOG10:.0} log₁₀")
    } else {
        format!("{of:.1} log₁₀")
    }
}

fn verdict(central: &Outcome, others: &[Outcome]) -> Verdict {
    match central.hazard {
        None | Some(Hazard::ReadyToEat) => return Verdict::NoRule,
        Some(Hazard::Crustacean | Hazard::Bivalve) => return Verdict::Look,
        Some(_) => {}
    }
    if !central.safe {
        // The table is met and the calculation is not: neither yes nor no.
        let near = central.nearly || central.disputed;
        return if near { Verdict::Near } else { Verdict::Fails };
    }
    let cautious = if others.is_empty() {
        central.safe_colder
    } else {
        let met = others.iter().filter(|o| o.safe).count();
        met as f64 >= CAUTIOUS * others.len() as f64
    };
    if cautious { Verdict::Meets } else { Verdict::Near }
}

/// A verdict in words that say what to do; nothing where no rule applies.
fn finding(central: &Outcome, verdict: Verdict) -> String {
    let minutes = central.given.heated_min;
    match (verdict, central.hazard) {
        (Verdict::NoRule, _) => String::new(),
        (Verdict::Meets, _) => "meets it, at the cautious end too".to_owned(),
        (Verdict::Near, Some(Hazard::KidneyBean)) => format!("near: {}", for_beans(&central.given)),
        (Verdict::Fails, Some(Hazard::KidneyBean)) => format!("does not meet it: {}", for_beans(&central.given)),
        (Verdict::Near, _) => "near: measure it".to_owned(),
        (Verdict::Fails, _) => "does not meet it".to_owned(),
        (Verdict::Look, Some(Hazard::Bivalve)) if minutes > 0.0 => {
            format!("count the minutes from when they open; with warming up the page has {minutes:.0}")
        }
        (Verdict::Look, _) => "go by the look".to_owned(),
    }
}

/// What beans still need, and what the page has of it.
fn for_beans(given: &Given) -> String {
    let has = |amount: f64| match amount.round() {
        nothing if nothing <= 0.0 => "none".to_owned(),
        some => format!("{some:.0}"),
    };
    let mut wants = Vec::new();
    if given.soaked_h < SOAK_H {
        wants.push(format!(
            "soak {SOAK_H:.0} hours and throw the water away; the page has {}",
            has(given.soaked_h)
        ));
    }
    if given.boiled_min < BOIL_MIN {
        wants.push(format!(
            "boil {BOIL_MIN:.0} minutes; the page has {}",
            has(given.boiled_min)
        ));
    }
    if wants.is_empty() {
        wants.push(format!("boil a little longer than {BOIL_MIN:.0} minutes"));
    }
    wants.join("; ")
}

/// The rule of a hazard in words, and where it is from.
fn rule_of(hazard: Hazard) -> (String, String) {
    let of = |rule: &str, source: &str| (rule.to_owned(), source.to_owned());
    match hazard {
        Hazard::Crustacean => of(
            "until the flesh is pearly and opaque",
            "USDA FSIS safe minimum internal temperature chart",
        ),
        Hazard::Bivalve => of(
            "until the shells open and 4 to 9 minutes more in steam, 3 to 5 in boiling liquid; throw away what was \
             dead before and what stays shut",
            "FDA advice on shellfish, as extension pages print it; USDA FSIS chart: until shells open",
        ),
        Hazard::KidneyBean => of(
            "soaked for 5 hours, the water thrown away, then boiled in fresh water for 30 minutes",
            "FDA Bad Bug Book, phytohaemagglutinin",
        ),
        Hazard::ReadyToEat => of(
            "cooked or cured before: eaten as it is or heated through",
            "common practice, no source",
        ),
        _ => rows(&TABLE)
            .find(|row| row.word(0) == Some(hazard))
            .map_or_else(|| of("", ""), |row| of(row.text(3), row.text(4))),
    }
}

/// Whether the centre, `colder_k` colder than it was, meets any row of the hazard's rules.
fn meets_rule(hazard: Hazard, centre: &[(f64, f64)], colder_k: f64) -> bool {
    rows(&TABLE)
        .filter(|row| row.word(0) == Some(hazard))
        .filter_map(|row| Some((row.number(1)?, row.number(2)?)))
        .any(|(temp_c, hold_s)| {
            let needed_c = temp_c + colder_k;
            hottest(centre) >= needed_c && seconds_at(centre, needed_c) >= hold_s
        })
}

/// Seconds at or above a temperature, straight lines between the entries.
fn seconds_at(centre: &[(f64, f64)], temp_c: f64) -> f64 {
    centre
        .windows(2)
        .map(|pair| {
            let ((from_s, from_c), (to_s, to_c)) = (pair[0], pair[1]);
            let lasts_s = (to_s - from_s).max(0.0);
            let (above, over) = (from_c - temp_c, to_c - temp_c);
            match (above >= 0.0, over >= 0.0) {
                (true, true) => lasts_s,
                (false, false) => 0.0,
                (true, false) => lasts_s * above / (above - over),
                (false, true) => lasts_s * over / (over - above),
            }
        })
        .sum()
}

fn hottest(centre: &[(f64, f64)]) -> f64 {
    centre.iter().fold(f64::NEG_INFINITY, |hottest, (_, c)| hottest.max(*c))
}

/// The temperature of the liquid a lot is in, against time.
fn liquid_history(trace: &Trace, places: &Whereabouts, lot: usize) -> Vec<(f64, f64)> {
    let at = |sample: &potwright_pot::Sample| {
        let vessel = places.vessel(sample.act, lot)?;
        let found = sample.vessels.iter().find(|v| v.vessel == vessel)?;
        Some((sample.time_s, found.temp_c))
    };
    trace.samples.iter().filter_map(at).collect()
}

/// Minutes that a centre, `colder_k` colder than it was, spent at the boil. The margin is held inside what still counts
/// as boiling: nothing in a pot is hotter.
fn boiled_min(trace: &Trace, centre: &[(f64, f64)], colder_k: f64) -> f64 {
    let boiling_c = trace.boiling_c - BOILING_WITHIN_K + colder_k.min(BOILING_WITHIN_K);
    seconds_at(centre, boiling_c) / 60.0
}

/// Hours from when a lot goes into cold liquid until that is drained off; nought when no cold draining is seen.
fn soaked_and_drained_h(process: &Process, trace: &Trace, places: &Whereabouts, lot: usize) -> f64 {
    let Some(start) = places.goes_in(lot) else {
        return 0.0;
    };
    let hot =
        |act: &potwright_pot::Act| matches!(&act.doing, Doing::Cook(stretch) if stretch.aim != potwright_pot::Aim::Off);
    for (index, act) in process.acts.iter().enumerate().skip(start) {
        let before = if index == start {
            None
        } else {
            places.vessel(index - 1, lot)
        };
        if before != Some(act.vessel) {
            continue;
        }
        let drains = match &act.doing {
            Doing::Discard(Part::Liquid) => true,
            Doing::Transfer { what: Part::Solids, .. } => true,
            Doing::Transfer {
                what: Part::Lots(lots), ..
            } => lots.contains(&lot),
            _ => false,
        };
        let time_s = |index: usize| trace.acts.get(index).map_or(0.0, |act| act.start_s);
        if drains {
            return (time_s(index) - time_s(start)) / 3600.0;
        }
        if hot(act) {
            return 0.0;
        }
    }
    0.0
}

#[cfg(test)]
mod tests;
