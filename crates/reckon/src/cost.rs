//! Cost from the writer's own prices, by the mass as purchased.

use potwright_larder::Kind;
use potwright_pot::{Made, Process, Source};

use crate::Prices;
use crate::foods::Foods;
use crate::reading::share;

/// What the lots cost.
#[derive(Clone, Debug, Default, PartialEq)]
pub(crate) struct Costs {
    /// Price of a kilogram of each lot as it goes in, in the book's currency; none for what has no price.
    per_kg: Vec<Option<f64>>,
    /// Names of the foods without a price, in the order of the lots.
    pub(crate) unpriced: Vec<String>,
}

impl Costs {
    /// Looks the lots of a process up.
    pub(crate) fn of(process: &Process, made: &[Made], prices: &Prices, foods: &dyn Foods) -> Self {
        let mut costs = Costs::default();
        for lot in &process.lots {
            // A kilogram in the pot takes this much from the shop.
            let purchased = match lot.mass.kilograms() {
                kg if kg > 0.0 && lot.purchased.kilograms() > 0.0 => lot.purchased.kilograms() / kg,
                _ => 1.0,
            };
            let per_kg = match lot.source {
                Source::Larder(_) => foods.of(lot).and_then(|food| price_per_kg(prices, &food.key)),
                Source::Made(index) => made.get(index).and_then(|dish| {
                    let kg = dish.matter.total_kg();
                    (kg > 0.0).then_some(dish.cost?.units() / kg)
                }),
                Source::Unknown => None,
            };
            let free = lot.kind == Kind::Water;
            let priced = per_kg.map(|price| price * purchased).or(free.then_some(0.0));
            let used = lot.mass.kilograms() > 0.0;
            if priced.is_none() && used && !costs.unpriced.contains(&lot.name) {
                costs.unpriced.push(lot.name.clone());
            }
            costs.per_kg.push(priced);
        }
        costs
    }

    /// The cost of all lots that have a price, given their masses in kilograms.
    pub(crate) fn total(&self, lot_kg: &[f64]) -> f64 {
        let lots = self.per_kg.iter().zip(lot_kg);
        lots.map(|(price, kg)| price.unwrap_or(0.0) * kg).sum()
    }

    /// Whether anything costs something.
    pub(crate) fn any(&self) -> bool {
        self.per_kg.iter().flatten().any(|price| *price > 0.0)
    }
}

/// The first row of the writer's table for a food.
fn price_per_kg(prices: &Prices, key: &str) -> Option<f64> {
    let row = prices.rows.iter().find(|row| row.food == key)?;
    let kg = row.mass.kilograms();
    (kg > 0.0).then(|| share(row.money.units(), kg))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Price;
    use crate::testing::{self, Shelf};
    use potwright_larder::FoodId;
    use potwright_measure::{Mass, Money};
    use potwright_pot::{Lot, Stuff};

    /// Carrots at 1.20 the kilogram: 800 g peeled from 1 kg cost 1.20. Half of a stock of 2 kg that cost 3.00: 1.50.
    /// Water is free; what has no price is named.
    #[test]
    fn as_purchased() {
        let shelf = Shelf(vec![testing::food("carrot", Kind::Root, &[])]);
        let carrots = Lot {
            source: Source::Larder(FoodId(0)),
            purchased: Mass::from_kilograms(1.0),
            ..testing::lot("carrots", Kind::Root, 0.8)
        };
        let stock = Lot {
            source: Source::Made(0),
            ..testing::lot("stock", Kind::Stock, 1.0)
        };
        let process = testing::process(&[
            carrots,
            stock,
            testing::lot("water", Kind::Water, 1.0),
            testing::lot("truffle", Kind::Other, 0.01),
        ]);
        let made = [Made {
            names: Vec::new(),
            matter: testing::matter(&[(Stuff::Water, 2.0)]),
            density_g_ml: 1.0,
            allergens: Vec::new(),
            animal: false,
            sulphite_mg: 0.0,
            cost: Some(Money::from_units(3.0)),
        }];
        let prices = Prices {
            currency: "pieces".to_owned(),
            rows: vec![Price {
                food: "carrot".to_owned(),
                name: "carrots".to_owned(),
                mass: Mass::from_kilograms(2.0),
                money: Money::from_units(2.4),
            }],
        };
        let costs = Costs::of(&process, &made, &prices, &shelf);
        assert!((costs.total(&[0.8, 1.0, 1.0, 0.01]) - 2.7).abs() < 1e-9);
        assert_eq!(costs.unpriced, ["truffle"]);
        assert!(costs.any());
        assert!(!Costs::of(&process, &[], &Prices::default(), &shelf).any());
    }
}
