//! Composition from the cells of a row, over that of the food it is like.

use super::Asked;
use super::columns::{COLUMNS, Column};
use super::error::Wrong;
use super::row::Row;
use crate::Composition;
use crate::official::FIGURES;

/// The proximates by their places: water first.
const PROXIMATES: [usize; 6] = [0, 2, 3, 5, 9, 10];
const WATER: usize = 0;
const ENERGY: usize = 1;
const PROTEIN: usize = 2;
const FAT: usize = 3;
const CARBOHYDRATE: usize = 5;
const FIBRE: usize = 6;
const SUGARS: usize = 7;
const ALCOHOL: usize = 10;
const SODIUM: usize = 11;
/// Grams that the parts of a writer's 100 g may be off.
const OFF_BY_G: f64 = 1.0;
/// Salt is sodium times 2.5: Annex I of Regulation (EU) 1169/2011.
const SODIUM_MG_OF_SALT_G: f64 = 400.0;
/// Energy of alcohol, kcal/g: the tables of origin.
const ALCOHOL_KCAL: f64 = 6.93;

/// Lays the row's figures over a composition; gives whether there were any.
///
/// What is left out: water is the rest to 100 g, and energy is computed by the factors (4, 9 and 4 kcal/g where the food
/// has none of its own, the general ones of the tables of origin), whenever protein, fat, carbohydrate, ash or alcohol
/// are given anew. In a table that was imported nothing is left out: an empty cell is not determined.
pub(super) fn lay(row: &Row<'_>, composition: &mut Composition, asked: Asked) -> Result<bool, Wrong> {
    let mut figures = composition.figures();
    let mut given = [false; FIGURES];
    for known in &COLUMNS {
        let Column::Figure(place) = known.column else { continue };
        let (wanted, most) = range(known.name);
        if let Some(value) = row.figure(known.column, known.name, wanted, most)? {
            (figures[place], given[place]) = (Some(value), true);
        }
    }
    if let Some(salt_g) = row.figure(Column::Salt, "salt_g", "grams in 100 g, like 1.2", 100.0)? {
        if given[SODIUM] {
            return Err(Wrong::Both("salt_g", "sodium_mg"));
        }
        (figures[SODIUM], given[SODIUM]) = (Some(salt_g * SODIUM_MG_OF_SALT_G), true);
    }
    let anew = PROXIMATES.iter().skip(1).any(|place| given[*place]);
    let of = |figures: &[Option<f64>; FIGURES], place: usize| figures[place].unwrap_or(0.0);
    let founded = [PROTEIN, FAT, CARBOHYDRATE]
        .iter()
        .all(|place| figures[*place].is_some());
    if asked == Asked::OfATable {
        *composition = Composition::from_figures(&figures);
        return Ok(true);
    }
    if !founded {
        return Err(Wrong::Unfounded);
    }
    if !given[WATER] && (anew || figures[WATER].is_none()) {
        let dry: f64 = PROXIMATES.iter().skip(1).map(|place| of(&figures, *place)).sum();
        figures[WATER] = Some((100.0 - dry).max(0.0));
    }
    sound(&figures)?;
    if !given[ENERGY] && (anew || figures[ENERGY].is_none()) {
        let kcal = |place: usize, factor: usize, usual: f64| of(&figures, place) * figures[factor].unwrap_or(usual);
        figures[ENERGY] = Some(
            kcal(PROTEIN, 19, 4.0)
                + kcal(FAT, 20, 9.0)
                + kcal(CARBOHYDRATE, 21, 4.0)
                + of(&figures, ALCOHOL) * ALCOHOL_KCAL,
        );
    }
    *composition = Composition::from_figures(&figures);
    Ok(given.contains(&true))
}

/// Parts make their whole, and no part is more than it.
fn sound(figures: &[Option<f64>; FIGURES]) -> Result<(), Wrong> {
    let sum: f64 = PROXIMATES.iter().filter_map(|place| figures[*place]).sum();
    if (sum - 100.0).abs() > OFF_BY_G {
        return Err(Wrong::Sum((sum * 10.0).round() as i64));
    }
    let over = |part: usize, whole: usize| {
        figures[part]
            .zip(figures[whole])
            .is_some_and(|(part, whole)| part > whole + OFF_BY_G)
    };
    match () {
        () if over(4, FAT) => Err(Wrong::Part("saturated_g", "fat_g")),
        () if over(FIBRE, CARBOHYDRATE) => Err(Wrong::Part("fibre_g", "carbohydrate_g")),
        () if over(SUGARS, CARBOHYDRATE) => Err(Wrong::Part("sugars_g", "carbohydrate_g")),
        () => Ok(()),
    }
}

/// What a figure's cell may hold, and the most it can be in 100 g.
fn range(column: &str) -> (&'static str, f64) {
    match column.rsplit_once('_').map(|(_, unit)| unit) {
        Some("kcal") => ("kilocalories of 100 g, like 250", 950.0),
        Some("mg") => ("milligrams in 100 g, like 120", 100_000.0),
        Some("ug") => ("micrograms in 100 g, like 12", 1_000_000.0),
        Some("factor") => ("kilocalories to the gram, like 4", 12.0),
        _ => ("grams in 100 g, like 12.5", 100.0),
    }
}
