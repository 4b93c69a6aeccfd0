//! A dish of which the weights are given and nothing is cooked.
//!
//! Tables of composed dishes are worked out in this way: ingredients by weight, water gained or lost by weighing the
//! finished dish, and a published share of each nutrient that heat leaves. The declaration is the one of a cooked
//! dish, by the same balance, so what is published of such dishes judges ours.

use potwright_pot::{Matter, Nutrient, Stuff};

use crate::NutrientRow;
use crate::reading::{Reading, Runs, share};
use crate::{nutrition, retention};

/// An ingredient by weight.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Part {
    /// The edible part as put in.
    pub matter: Matter,
    /// The share of each nutrient that is left, 0–1, in the order of [`Nutrient::ALL`].
    pub kept: [f64; Nutrient::ALL.len()],
    /// The share of the salt that is left, 0–1: the rest went with a liquid that was poured off.
    pub salt_kept: f64,
    /// The share of the alcohol that is left, 0–1: the rest went off as vapour.
    pub alcohol_kept: f64,
}

impl Part {
    /// With nothing lost.
    #[must_use]
    pub const fn whole(matter: Matter) -> Self {
        Part {
            matter,
            kept: [1.0; Nutrient::ALL.len()],
            salt_kept: 1.0,
            alcohol_kept: 1.0,
        }
    }
}

/// The finished dish.
#[derive(Clone, Debug, PartialEq)]
pub struct ByWeight {
    /// All of it, its nutrients as heat has left them.
    pub whole: Matter,
    /// The declaration; the whole dish counts as one portion.
    pub rows: Vec<NutrientRow>,
}

impl ByWeight {
    /// A row of the declaration in 100 g, in the row's own unit; none where there is no such row.
    #[must_use]
    pub fn per_100_g(&self, name: &str) -> Option<f64> {
        let row = self.rows.iter().find(|row| row.name == name);
        row.map(|row| row.per_100_g.value)
    }

    /// Water, grams in 100 g.
    #[must_use]
    pub fn water_per_100_g(&self) -> f64 {
        100.0 * share(self.whole.kg(Stuff::Water), self.whole.total_kg())
    }
}

/// Puts the parts together; `water_kg` is gained (or lost, when negative; never more than there is).
#[must_use]
pub fn by_weight(parts: &[Part], water_kg: f64) -> ByWeight {
    let mut put_in = Matter::default();
    let mut whole = Matter::default();
    for part in parts {
        put_in.add(&part.matter);
        let mut left = part.matter;
        left.mass_kg[Stuff::Salt as usize] *= part.salt_kept;
        left.mass_kg[Stuff::Alcohol as usize] *= part.alcohol_kept;
        whole.add(&left);
    }
    let water = &mut whole.mass_kg[Stuff::Water as usize];
    *water = (*water + water_kg).max(0.0);

    let each: Vec<Matter> = parts.iter().map(|part| part.matter).collect();
    let kept: Vec<retention::Kept> = parts.iter().map(|part| part.kept).collect();
    let nutrients = retention::left(&each, &[], &whole, &kept);
    let whole = retention::with_nutrients(&whole, &nutrients);
    let runs = Runs {
        central: Reading {
            whole,
            liquid: whole,
            yield_kg: whole.total_kg(),
            put_in_kg: put_in.total_kg(),
            alcohol_in_kg: put_in.kg(Stuff::Alcohol),
            nutrients,
            ..Reading::default()
        },
        others: Vec::new(),
    };
    ByWeight {
        whole,
        rows: nutrition::rows(&runs, &|_| 1.0),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::matter;

    /// 100 g of water with 40 mg of vitamin C of which half is left, 2 g of salt of which nine tenths are left, and
    /// 10 g of alcohol of which 4 are left: 100 − 20 of water, 1.8 and 4 g make 85.8 g. Per 100 g: vitamin C
    /// 20 ÷ 0.858 = 23.31 mg, sodium 1.8 · 393.37 ÷ 0.858 = 825.3 mg, alcohol 4.662 g with 6.93 kcal/g, water 93.24 g.
    #[test]
    fn what_is_given_is_balanced() {
        let mut put_in = matter(&[(Stuff::Water, 0.1), (Stuff::Salt, 0.002), (Stuff::Alcohol, 0.01)]);
        put_in.nutrients[Nutrient::VitaminCMg as usize] = 40.0;
        let mut part = Part {
            salt_kept: 0.9,
            alcohol_kept: 0.4,
            ..Part::whole(put_in)
        };
        part.kept[Nutrient::VitaminCMg as usize] = 0.5;
        let dish = by_weight(&[part], -0.02);
        assert!((dish.whole.total_kg() - 0.0858).abs() < 1e-12);
        for (name, expected) in [
            ("Vitamin C", 23.31),
            ("Sodium", 825.3),
            ("Alcohol", 4.662),
            ("Energy", 4.662 * 6.93),
        ] {
            let found = dish.per_100_g(name).unwrap();
            assert!((found / expected - 1.0).abs() < 1e-3, "{name}: {found}");
        }
        assert!((dish.water_per_100_g() - 93.24).abs() < 0.01);
    }

    #[test]
    fn no_more_water_goes_than_there_is() {
        let dish = by_weight(&[Part::whole(matter(&[(Stuff::Water, 0.1), (Stuff::Fat, 0.01)]))], -5.0);
        assert_eq!(dish.water_per_100_g(), 0.0);
        assert_eq!(dish.per_100_g("Fat"), Some(100.0));
        assert_eq!(by_weight(&[], 0.0).water_per_100_g(), 0.0, "nothing is nothing");
    }
}
