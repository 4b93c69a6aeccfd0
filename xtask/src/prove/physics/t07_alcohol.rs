//! Table 07: what heat and standing leave of alcohol, ten published rows cooked by the engine.

use std::sync::LazyLock;

use potwright_pot::checks::alcohol::{AlcoholCase, cases};

use super::check::{Check, Judged, digits};
use super::held;
use super::row::Row;
use crate::prove::figures::Table;

/// Of the six stirred rows the pot may be off by so many percentage points.
const POINTS: f64 = 8.0;

static CASES: LazyLock<Vec<AlcoholCase>> = LazyLock::new(cases);

fn of_code(code: u16) -> Option<&'static AlcoholCase> {
    CASES.iter().find(|case| case.usda_code == code)
}

/// Within eight points where it is one of the six rows that one stated pot is held to; else shown.
fn left(case: &AlcoholCase) -> Check {
    let published = case.published_percent;
    let printed = digits(published);
    if case.stirred {
        Check::between(
            "% left",
            case.computed_percent,
            &printed,
            published - POINTS,
            published + POINTS,
        )
    } else {
        Check::shown("% left", case.computed_percent, &printed, published)
    }
}

/// 07: the rows of the published table.
pub(super) fn retention(row: &Row) -> Judged {
    let code = row.text("usda_code").parse().ok();
    match code.and_then(of_code) {
        Some(case) => held([Some(left(case))]),
        None => Judged::LeftOut("a note, not a treatment"),
    }
}

/// 16, E10: the stew of an hour and a half.
pub(super) fn stew() -> Judged {
    held([of_code(5007).map(left)])
}

/// Under what condition each row was cooked, and what water it lost.
pub(super) fn conditions() -> Table {
    let heads = [
        "row",
        "treatment",
        "cooked as",
        "published, %",
        "ours, %",
        "points off",
        "water lost, kg",
        "of all water, %",
    ];
    let mut table = Table::new("Alcohol: how the rows were cooked", &heads);
    table.rows = CASES
        .iter()
        .map(|case| {
            vec![
                case.usda_code.to_string(),
                case.treatment.into(),
                case.condition.clone(),
                digits(case.published_percent),
                format!("{:.1}", case.computed_percent),
                format!("{:+.1}", case.deviation_points()),
                format!("{:.3}", case.water_lost_kg),
                format!("{:.1}", case.water_lost_percent),
            ]
        })
        .collect();
    table
}
