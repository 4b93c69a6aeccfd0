//! From the writer's price list to the foods of the larder.

use potwright_book::PriceLine;
use potwright_larder::{FoodId, Hints, Larder, Market};
use potwright_measure::{Dimension, Mass, Measures, Unit};
use potwright_pot::grams_per_ml;
use potwright_reckon::{Price, Prices};

/// The prices that could be placed, and a sentence for each line that could not, with its line.
pub(crate) fn placed(
    lines: &[PriceLine],
    currency: &str,
    larder: &Larder,
    measures: Measures,
) -> (Prices, Vec<String>) {
    let mut prices = Prices {
        currency: currency.into(),
        rows: Vec::new(),
    };
    let mut notes = Vec::new();
    for line in lines {
        match place(line, larder, measures) {
            Ok(price) => prices.rows.push(price),
            Err(says) => notes.push(format!("prices.tsv, line {}: {says}", line.line)),
        }
    }
    (prices, notes)
}

fn place(line: &PriceLine, larder: &Larder, measures: Measures) -> Result<Price, String> {
    let hints = Hints {
        unit: line.unit,
        counted: line.unit.is_none(),
        market: (measures == Measures::Us).then_some(Market::Us),
        ..Hints::default()
    };
    let found = larder.find(&line.name, &hints);
    let food = |id: FoodId| larder.get(id).map(|food| food.name.clone());
    let Some(id) = found.best else {
        return Err(format!("no food of the larder is called '{}'", line.name));
    };
    if !found.sure {
        let rivals = found.rivals.iter().map(|(rival, _)| *rival);
        let names: Vec<String> = std::iter::once(id).chain(rivals).filter_map(food).take(3).collect();
        return Err(format!("'{}' may be {}; write which", line.name, names.join(" or ")));
    }
    let unit_g = unit_g(id, line.unit, larder, measures);
    let unit_g = unit_g.ok_or_else(|| format!("nothing says what a {} of '{}' weighs", words(line.unit), line.name))?;
    let key = larder.get(id).map_or(String::new(), |food| food.key.clone());
    let mass = Mass::from_grams(line.amount.to_f64() * unit_g);
    Ok(Price {
        food: key,
        name: line.name.clone(),
        mass,
        money: line.price,
    })
}

/// Grams of one unit of a food as bought.
fn unit_g(id: FoodId, unit: Option<Unit>, larder: &Larder, measures: Measures) -> Option<f64> {
    let food = larder.get(id)?;
    match unit.map(|unit| (unit, unit.dimension())) {
        Some((unit, Dimension::Mass)) => unit.mass(measures).map(|grams| grams.to_f64()),
        Some((unit, Dimension::Volume)) => {
            let volume_ml = unit.volume(measures)?.to_f64();
            Some(grams_per_ml(food, "").0.mid * volume_ml)
        }
        // A piece's weight is that of its edible part; what is paid for has its refuse.
        _ => food
            .weight_of(unit, "", "")
            .map(|weight| weight.mass_g.mid / (1.0 - food.refuse.unwrap_or(0.0).min(0.9))),
    }
}

fn words(unit: Option<Unit>) -> &'static str {
    unit.map_or("piece", Unit::name)
}
