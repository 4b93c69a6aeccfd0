//! Why a value is off: a figure of an ingredient that the publication itself contradicts.
//!
//! A dish in which one ingredient brings most of a nutrient shows what figure the USDA reckoned that ingredient by:
//! what is published of the dish, less what the others bring, over its grams. When that differs from SR28's figure,
//! a dish that was off is worked out again with it. The dish that is off never bears witness for itself.

use std::collections::BTreeMap;

use anyhow::Result;
use potwright_larder::Larder;

use super::super::fndds::{Dish, Fndds, Line, place};
use super::{Judged, reckoned};
use crate::larder::official::Figures;

/// The least share of a nutrient that an ingredient brings to a dish that bears witness to its figure.
const LEAST_SHARE: f64 = 0.5;

/// Figures of one column that stand instead of the table's, by food.
#[derive(Clone, Debug, Default)]
pub(super) struct Revised {
    column: &'static str,
    figures: BTreeMap<String, f64>,
}

impl Revised {
    /// The figures of a food, the revised one among them.
    pub(super) fn figures_of(&self, code: &str, table: &Figures) -> Figures {
        let mut figures = *table;
        let (Some(figure), Some(at)) = (self.figures.get(code), place(self.column)) else {
            return figures;
        };
        figures[at] = Some(*figure);
        if self.column == "energy_kcal" {
            // The food's own factors would win over its energy.
            for factor in ["protein_factor", "fat_factor", "carbohydrate_factor"] {
                place(factor).into_iter().for_each(|at| figures[at] = None);
            }
        }
        figures
    }
}

/// Why a value is off.
pub(super) struct Reason {
    /// Whether the value is within once the figures are those that other dishes show.
    pub(super) borne_out: bool,
    pub(super) says: String,
}

/// A figure that a dish shows.
struct Shown {
    figure: f64,
    /// Half a step of the published value, in the figure's own terms.
    rounding: f64,
    share: f64,
    dish: String,
}

/// Why the value of a dish is off.
pub(super) fn reason(fndds: &Fndds, dish: &Dish, judged: &Judged) -> Result<Reason> {
    let published = fndds.figure(&dish.code, judged.column).unwrap_or(0.0);
    let (revised, mut says) = revisions(fndds, dish, judged);
    let again = judged.ours(&reckoned(fndds, dish, &revised)?);
    let borne_out = judged.holds(again, published);
    if !says.is_empty() {
        says.push(format!("with that {}", judged.print(again)));
    }
    if !borne_out {
        let plain = plain_sum(fndds, dish, &revised, judged);
        says.push(if judged.holds(plain, published) {
            format!(
                "the plain sum of the tables' figures is {}: {}",
                judged.print(plain),
                judged.ours_differs()
            )
        } else if says.is_empty() {
            "not found: no other dish shows another figure of an ingredient".into()
        } else {
            "not the whole reason".into()
        });
    }
    Ok(Reason {
        borne_out,
        says: says.join("; "),
    })
}

/// The figures that other dishes contradict, and the words for those that matter.
fn revisions(fndds: &Fndds, dish: &Dish, judged: &Judged) -> (Revised, Vec<String>) {
    let mut revised = Revised {
        column: judged.column,
        figures: BTreeMap::new(),
    };
    let mut changes: Vec<(f64, String)> = Vec::new();
    for line in dish.lines.iter().filter(|line| line.code.len() == 5) {
        let table = fndds.figure(&line.code, judged.column).filter(|figure| *figure > 0.0);
        let (Some(table), Some(shown)) = (table, witness(fndds, &line.code, &dish.code, judged)) else {
            continue;
        };
        if (shown.figure - table).abs() <= (super::WITHIN * table).max(shown.rounding) {
            continue;
        }
        revised.figures.insert(line.code.clone(), shown.figure);
        let weight = line.grams * fndds.kept(line, judged.column) / dish.finished_g();
        let says = format!(
            "{}: {} in dish {}, {table} in SR28",
            named(&line.code),
            judged.print(shown.figure),
            shown.dish,
        );
        changes.push((((shown.figure - table) * weight).abs(), says));
    }
    changes.sort_by(|one, other| other.0.total_cmp(&one.0));
    // What moves the value by less than a tenth of the greatest change is no reason.
    let least = changes.first().map_or(0.0, |first| first.0 / 10.0);
    changes.retain(|(change, _)| *change >= least);
    (revised, changes.into_iter().map(|(_, says)| says).collect())
}

/// The tables' figures added up as they stand, per 100 g of the dish.
fn plain_sum(fndds: &Fndds, dish: &Dish, revised: &Revised, judged: &Judged) -> f64 {
    let brought = dish.lines.iter().map(|line| {
        let table = fndds.figure(&line.code, judged.column);
        let figure = revised.figures.get(&line.code).copied().or(table);
        line.grams * fndds.kept(line, judged.column) * figure.unwrap_or(0.0)
    });
    let gained = if judged.column == "water_g" {
        100.0 * dish.water_g()
    } else {
        0.0
    };
    (brought.sum::<f64>() + gained) / dish.finished_g()
}

/// What the dish shows in which the ingredient brings the greatest share of the nutrient.
fn witness(fndds: &Fndds, code: &str, but: &str, judged: &Judged) -> Option<Shown> {
    let others = fndds.dishes.values().filter(|dish| dish.code != but);
    let shown = others.filter_map(|dish| shows(fndds, dish, code, judged));
    shown.max_by(|one, other| {
        one.share
            .total_cmp(&other.share)
            .then(other.rounding.total_cmp(&one.rounding))
    })
}

/// The figure of an ingredient as a dish shows it, when it stands in its list once and brings most of the nutrient.
fn shows(fndds: &Fndds, dish: &Dish, code: &str, judged: &Judged) -> Option<Shown> {
    let mut its = dish.lines.iter().filter(|line| line.code == code);
    let (line, None) = (its.next()?, its.next()) else {
        return None;
    };
    let grams_kept = |line: &Line| line.grams * fndds.kept(line, judged.column);
    let mut rest = 0.0;
    for other in dish.lines.iter().filter(|other| other.code != code) {
        rest += grams_kept(other) * fndds.figure(&other.code, judged.column)?;
    }
    let finished_g = dish.finished_g();
    let all = fndds.figure(&dish.code, judged.column)? * finished_g;
    let grams = grams_kept(line);
    let share = (all - rest) / all;
    (all > 0.0 && grams > 0.0 && share >= LEAST_SHARE).then(|| Shown {
        figure: (all - rest) / grams,
        rounding: 0.5 * judged.step * finished_g / grams,
        share,
        dish: dish.code.clone(),
    })
}

/// A food by its number and, where our larder has it, its name.
fn named(ndb: &str) -> String {
    let source = format!("USDA SR28, NDB {ndb}");
    let ours = Larder::built_in().foods().find(|(_, food)| food.source == source);
    match ours {
        Some((_, food)) => format!("{} (NDB {ndb})", food.name),
        None => format!("NDB {ndb}"),
    }
}
