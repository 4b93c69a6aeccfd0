//! How much stands in the pot at most: everything on the list that is cooked in it.

use potwright_manuscript::{Ingredient, Share, Target, Verb};
use potwright_measure::{Dimension, Exact, Measures};

use super::{About, in_dish};
use crate::convert::food::Known;

/// What the list comes to.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Contents {
    /// Litres of the batch as wanted, a kilogram being taken as a litre: water 1.0, fat 0.9, vegetables and meat 1.0
    /// to 1.1 kg/l (common practice, no source).
    pub(super) litres: f64,
    /// Names on the list that no weight is known for.
    pub(super) unweighed: Vec<String>,
}

impl Contents {
    pub(super) fn of(about: &About<'_>) -> Contents {
        let mut contents = Contents::default();
        for (index, line) in about.recipe.ingredients.iter().enumerate() {
            if line.equipment || line.for_serving || line.instead_of.is_some() || line.part_of.is_some() {
                continue;
            }
            if !goes_into_a_pot(about, index) {
                continue;
            }
            match kilograms(about, line) {
                Some(kg) => contents.litres += kg * about.factor(),
                None if line.quantity.is_some() => contents
                    .unweighed
                    .extend(line.items.iter().map(|item| item.name.clone())),
                None => {}
            }
        }
        contents
    }
}

/// Whether a line is ever put into a pot; one the method never names is taken to be.
fn goes_into_a_pot(about: &About<'_>, index: usize) -> bool {
    let names = |target: &Target| matches!(target, Target::Ingredient { index: named, .. } if *named == index);
    let uses = about.operations(|operation| {
        operation
            .foods
            .iter()
            .any(|food| names(&food.target) && food.share != Share::Some)
            && !matches!(operation.verb, Verb::Garnish | Verb::Serve | Verb::Wash | Verb::Soak)
    });
    uses.is_empty() || uses.iter().any(|operation| !in_dish(operation))
}

/// Kilograms of a line as written; none where that is not on record.
fn kilograms(about: &About<'_>, line: &Ingredient) -> Option<f64> {
    let home = about.setting.kitchens.home();
    let known = Known::of(about.setting.larder, line, line.items.first());
    let items = line.items.len().max(1) as f64;
    // '6 sausages (about 450 g)': the weight said beside a count is the better figure.
    let quantities = line.quantity.iter().chain(&line.also);
    let own = quantities.filter_map(|quantity| {
        let amount = quantity.amount.midpoint();
        let unit = quantity.unit;
        match unit.map(potwright_measure::Unit::dimension) {
            Some(Dimension::Mass) => Some(amount * grams(unit?, home)?),
            Some(Dimension::Volume) => {
                let ml = amount * unit?.volume(home)?.to_f64();
                let density = known.density().map(|(density, _)| density);
                density
                    .or_else(|| (known.liquid == Some(true)).then_some(1.0))
                    .map(|density| ml * density)
            }
            _ => None,
        }
    });
    let said = own.fold(None, |best: Option<f64>, grams| {
        Some(best.map_or(grams, |best| best.max(grams)))
    });
    let counted = || {
        let quantity = line.quantity?;
        let of_one = match line.package {
            Some(package) => package.amount.midpoint() * grams(package.unit?, home)?,
            None => known.grams_of_one(quantity.unit)?,
        };
        Some(quantity.amount.midpoint() * of_one)
    };
    said.or_else(counted).map(|grams| grams * items / 1000.0)
}

/// Grams of one unit of mass; millilitres of one of volume count as grams.
fn grams(unit: potwright_measure::Unit, home: Measures) -> Option<f64> {
    unit.mass(home).or_else(|| unit.volume(home)).map(Exact::to_f64)
}
