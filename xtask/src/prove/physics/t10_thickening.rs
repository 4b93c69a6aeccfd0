//! Table 10: thickening by flour, gelatinisation of starch.

use potwright_larder::StarchKind;
use potwright_pot::physics::gelatinisation::range;
use potwright_pot::physics::viscosity::apparent_pa_s;
use potwright_reckon::{BodyWord, flour_for_body_g};

use super::check::{CLOSED_FORM, Check, Judged};
use super::held;
use super::row::Row;

/// Grams of a US gallon of water, and of an ounce.
const GALLON_G: f64 = 3785.0;
const OUNCE_G: f64 = 28.3495;

/// 10a: flour on the liquid, and roux as twice that.
pub(super) fn ratios(row: &Row) -> Judged {
    let word = match row.id() {
        "roux-light" | "flour-thin-pct" => BodyWord::LightCoat,
        "roux-med" | "flour-med-pct" => BodyWord::CoatsTheSpoon,
        "roux-heavy" | "flour-heavy-pct" => BodyWord::HoldsALine,
        _ => return Judged::LeftOut("by the spoon and the cup, or no ratio of flour: needs a recalled weight"),
    };
    // The percentages of the table stand one column to the left of the ounces.
    held([if row.id().starts_with("roux") {
        let roux_oz = 2.0 * flour_for_body_g(GALLON_G, word) / OUNCE_G;
        Check::column(row, "value", roux_oz, CLOSED_FORM)
    } else {
        Check::column(row, "quantity", flour_for_body_g(100.0, word), CLOSED_FORM)
    }])
}

/// 10b: peaks that were measured must lie in the range the engine swells that starch over; where a range was measured,
/// it must overlap ours.
pub(super) fn gelatinisation(row: &Row) -> Judged {
    let name = row.text("starch");
    let kinds = [
        ("potato", StarchKind::Potato),
        ("sweet potato", StarchKind::SweetPotato),
        ("corn", StarchKind::Maize),
        ("wheat", StarchKind::Wheat),
        ("rice", StarchKind::Rice),
    ];
    let named = |(theirs, _): &&(&str, StarchKind)| {
        name == *theirs
            || [",", ":", " ("]
                .iter()
                .any(|end| name.starts_with(&format!("{theirs}{end}")))
    };
    let ours = kinds.iter().find(named).map(|(_, kind)| range(Some(*kind)));
    match (ours, row.number("peak_C"), row.number("lo_C").zip(row.number("hi_C"))) {
        (Some(ours), Some(peak), _) => held([Some(Check::between(
            "measured peak in our range",
            peak,
            &format!("{peak}"),
            ours.low_c,
            ours.high_c,
        ))]),
        (Some(ours), None, Some((low, high))) => held([Some(Check::between(
            "middle of our range",
            0.5 * (ours.low_c + ours.high_c),
            &format!("{low} to {high}"),
            low,
            high,
        ))]),
        _ if row.id() == "gel-any" => held([Some(Check::between(
            "where ours begin, °C",
            kinds
                .iter()
                .map(|(_, kind)| range(Some(*kind)).low_c)
                .fold(f64::INFINITY, f64::min),
            "above 55",
            55.0,
            f64::INFINITY,
        ))]),
        _ => Judged::LeftOut("a starch that the engine does not tell apart"),
    }
}

/// 10d: a power-law liquid.
pub(super) fn power_law(row: &Row) -> Judged {
    let number = |column| row.number(column).unwrap_or(f64::NAN);
    let ours = apparent_pa_s(number("K"), number("n"), number("shear_1_s"));
    held([Check::column(row, "eta_Pa_s", ours, CLOSED_FORM)])
}
