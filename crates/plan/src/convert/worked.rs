//! US weights and measures worked as quantity kitchens do, step by step.

use potwright_manuscript::{Ingredient, Recipe};
use potwright_measure::{Dimension, Exact, Measures, Unit, fractions};
use serde::{Deserialize, Serialize};

use super::size::Size;
use crate::quantity_kitchen::{volume_text, weight_text};

/// From so many portions a kitchen works by the card (the cards of TM 10-412 are for 100).
const QUANTITY: i64 = 100;

/// One amount, worked.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Worked {
    /// Index into [`Recipe::ingredients`].
    pub ingredient: usize,
    /// The amount times the factor, before anything is rounded: `19.98 gal`.
    pub product: String,
    /// As measured out: `19 gal 3 qt 1 pt 1 c 10 tbsp 2 3/4 tsp`.
    pub measured: String,
    /// The line as written.
    pub line: String,
}

/// All lines in US weights and measures, when the card is for a hundred or a hundred are wanted.
pub(super) fn all(recipe: &Recipe, text: &str, size: &Size, home: Measures) -> Vec<Worked> {
    let quantity = Exact::whole(QUANTITY);
    let listed = size.listed.is_some_and(|listed| listed.high >= quantity);
    let wanted = size.wanted.is_some_and(|wanted| wanted >= quantity);
    if home != Measures::Us || size.factor == Exact::ONE || !(listed || wanted) {
        return Vec::new();
    }
    let lines = recipe.ingredients.iter().enumerate();
    lines
        .filter_map(|(index, line)| one(line, index, text, size.factor))
        .collect()
}

fn one(line: &Ingredient, ingredient: usize, text: &str, factor: Exact) -> Option<Worked> {
    let quantity = line.quantity.filter(|quantity| quantity.amount.is_single())?;
    let unit = quantity.unit.filter(|unit| !unit.is_metric() && unit.spread() == 1.0)?;
    let (large, in_large) = match unit.dimension() {
        Dimension::Mass => (
            Unit::Pound,
            unit.mass(Measures::Us)?.checked_div(Unit::Pound.mass(Measures::Us)?)?,
        ),
        Dimension::Volume => (
            Unit::Gallon,
            unit.volume(Measures::Us)?
                .checked_div(Unit::Gallon.volume(Measures::Us)?)?,
        ),
        Dimension::Piece => return None,
    };
    let product = quantity.amount.low.checked_mul(factor)?.checked_mul(in_large)?;
    let measured = if large == Unit::Pound {
        weight_text(product)?
    } else {
        volume_text(product)?
    };
    let product = format!("{} {}", fractions::decimal(product, 2), large.abbreviation());
    let words = line.line.span.of(text).split_whitespace().collect::<Vec<_>>().join(" ");
    Some(Worked {
        ingredient,
        product,
        measured,
        line: words,
    })
}
