//! Weights of cups and pieces, and refuse.

use potwright_measure::{Mass, Unit};

use super::Shelf;
use crate::error::TableError;
use crate::table::{Row, read as rows};
use crate::tables::{REFUSE, Tables, WEIGHTS, WEIGHTS_OWN};
use crate::{Food, Weight};

/// The cut under which the low end of a spread stands in [`Food::weights`].
pub(crate) const LEAST: &str = "least";
/// The cut under which the high end of a spread stands in [`Food::weights`].
pub(crate) const MOST: &str = "most";

/// Reads the four tables; what is kept by hand stands first, and so is found first.
pub(super) fn read(tables: &Tables<'_>, shelf: &Shelf, foods: &mut [Food]) -> Result<(), TableError> {
    for row in rows("weights_own.tsv", tables.weights_own, &WEIGHTS_OWN)? {
        let spread = row.spread(3)?;
        let unit = unit(&row)?;
        let weights = &mut shelf.food(&row, foods)?.weights;
        weights.push(weight(&row, unit, row.text(2), spread.mid));
        for (end, cut) in [(spread.low, LEAST), (spread.high, MOST)] {
            if end != spread.mid {
                let cut = if row.text(2).is_empty() {
                    cut.to_owned()
                } else {
                    format!("{} {cut}", row.text(2))
                };
                weights.push(weight(&row, unit, &cut, end));
            }
        }
    }
    for row in rows("weights.tsv", tables.weights, &WEIGHTS)? {
        let (unit, grams) = (unit(&row)?, row.needed(3)?);
        shelf
            .food(&row, foods)?
            .weights
            .push(weight(&row, unit, row.text(2), grams));
    }
    for (file, text) in [("refuse.tsv", tables.refuse), ("refuse_own.tsv", tables.refuse_own)] {
        for row in rows(file, text, &REFUSE)? {
            let share = row.share(1)?;
            shelf.food(&row, foods)?.refuse = Some(share);
        }
    }
    Ok(())
}

fn unit<const N: usize>(row: &Row<'_, N>) -> Result<Option<Unit>, TableError> {
    if row.filled(1)? == "each" {
        Ok(None)
    } else {
        row.word(1).map(Some)
    }
}

fn weight<const N: usize>(row: &Row<'_, N>, unit: Option<Unit>, cut: &str, grams: f64) -> Weight {
    Weight {
        unit,
        cut: cut.to_owned(),
        mass: Mass::from_grams(grams),
        source: row.text(N - 1).to_owned(),
    }
}
