//! Weights of cups, spoons and pieces from the cells of a row.

use potwright_measure::{Dimension, Mass, Measures, Unit};

use super::columns::Column;
use super::error::Wrong;
use super::row::Row;
use crate::{Food, Weight};

/// What a cup may weigh, grams: from puffed grain to syrup, with room.
const MOST_G: f64 = 20_000.0;

/// Lays the row's weights over those of the food; a measure of volume takes the place of all of them, as does a piece.
pub(super) fn lay(row: &Row<'_>, food: &mut Food, source: &str) -> Result<(), Wrong> {
    let mut own: Vec<Weight> = Vec::new();
    let mut push = |unit: Option<Unit>, cut: &str, grams: f64| {
        own.push(Weight {
            unit,
            cut: cut.to_owned(),
            mass: Mass::from_grams(grams),
            source: source.to_owned(),
        });
    };
    let cells = [
        (Column::Cup, "cup_g", Some(Unit::Cup)),
        (Column::Tablespoon, "tablespoon_g", Some(Unit::Tablespoon)),
        (Column::Teaspoon, "teaspoon_g", Some(Unit::Teaspoon)),
        (Column::Piece, "piece_g", None),
    ];
    for (column, name, unit) in cells {
        if let Some(grams) = row.number(column, name, "grams above nought, like 150", MOST_G)? {
            push(unit, "", grams);
        }
    }
    if let Some(g_per_ml) = row.number(Column::Density, "g_per_ml", "grams to the millilitre, like 1.03", 3.0)? {
        if row.has(Column::Cup) {
            return Err(Wrong::Both("g_per_ml", "cup_g"));
        }
        let cup_ml = Unit::Cup.volume(Measures::Us).map_or(236.588, |ml| ml.to_f64());
        push(Some(Unit::Cup), "", g_per_ml * cup_ml);
    }
    for piece in row
        .text(Column::Weights)
        .split(';')
        .map(str::trim)
        .filter(|piece| !piece.is_empty())
    {
        let (unit, cut, grams) = measure(piece).ok_or_else(|| Wrong::Weight(piece.to_owned()))?;
        push(unit, &cut, grams);
    }
    let volume =
        |unit: Option<Unit>| unit.is_some_and(|unit| unit.dimension() == Dimension::Volume && unit.spread() <= 1.0);
    let poured = own.iter().any(|weight| volume(weight.unit));
    food.weights
        .retain(|old| !(own.iter().any(|new| new.unit == old.unit) || poured && volume(old.unit)));
    own.append(&mut food.weights);
    food.weights = own;
    Ok(())
}

/// `cup chopped=160`: unit (none for `each`), cut, grams.
fn measure(piece: &str) -> Option<(Option<Unit>, String, f64)> {
    let (words, grams) = piece.split_once('=')?;
    let grams = grams.trim().trim_end_matches('g').trim().parse::<f64>().ok()?;
    if !(grams > 0.0 && grams <= MOST_G) {
        return None;
    }
    let words = words.trim();
    let (first, cut) = words.split_once(' ').unwrap_or((words, ""));
    let unit = match first {
        "each" | "piece" if cut.is_empty() || first == "each" => None,
        first => Some(Unit::from_spelling(&first.replace('_', " "))?),
    };
    let kitchen = unit.is_none_or(|unit| unit.dimension() != Dimension::Mass);
    kitchen.then(|| (unit, cut.trim().to_owned(), grams))
}

#[cfg(test)]
mod tests {
    use super::measure;
    use potwright_measure::Unit;

    #[test]
    fn measures_with_their_grams() {
        assert_eq!(
            measure("cup chopped=160"),
            Some((Some(Unit::Cup), "chopped".into(), 160.0))
        );
        assert_eq!(
            measure("fluid_ounce = 30.5 g"),
            Some((Some(Unit::FluidOunce), String::new(), 30.5))
        );
        assert_eq!(measure("each large=150"), Some((None, "large".into(), 150.0)));
        for wrong in ["cup", "cup=", "cup=0", "sack=9", "kg=1000", "cup=-3", "cup=NaN"] {
            assert_eq!(measure(wrong), None, "{wrong}");
        }
    }
}
