//! The numbers read off one run, and the runs put together into figures.

use potwright_measure::Mass;
use potwright_pot::{Matter, Nutrient, Process, Stuff, Trace};

use crate::figure::unsigned_nought;
use crate::sampling::five_to_ninety_five;
use crate::{Figure, Known, Measure};

/// What one run has to say, in plain numbers.
#[derive(Clone, Debug, Default)]
pub(crate) struct Reading {
    /// Mass of each lot, kilograms.
    pub(crate) lot_kg: Vec<f64>,
    /// Everything in the vessel, bones and shells too, kilograms.
    pub(crate) yield_kg: f64,
    /// Bones and shells in the dish, kilograms.
    pub(crate) inedible_kg: f64,
    pub(crate) volume_l: f64,
    /// What all that is dispersed is made of.
    pub(crate) liquid: Matter,
    /// Liquid and the edible part of the pieces.
    pub(crate) whole: Matter,
    /// Pieces with bones and shells, kilograms.
    pub(crate) pieces_kg: f64,
    pub(crate) elapsed_min: f64,
    pub(crate) hands_on_min: f64,
    pub(crate) alcohol_in_kg: f64,
    pub(crate) boiling_c: f64,
    pub(crate) evaporated_kg: f64,
    pub(crate) put_in_kg: f64,
    /// Nutrients of the dish after loss by heat, in the order of [`Nutrient::ALL`].
    pub(crate) nutrients: [f64; Nutrient::ALL.len()],
    /// Cost of all lots with a price, in the book's currency.
    pub(crate) cost: f64,
}

impl Reading {
    /// Kilograms that are eaten.
    pub(crate) fn edible_kg(&self) -> f64 {
        self.whole.total_kg()
    }

    /// A constituent as percent of what is eaten.
    pub(crate) fn percent(&self, stuff: Stuff) -> f64 {
        100.0 * share(self.whole.kg(stuff), self.edible_kg())
    }

    /// Salt in the liquid, percent; nought without liquid.
    pub(crate) fn liquid_salinity(&self) -> f64 {
        100.0 * share(self.liquid.kg(Stuff::Salt), self.liquid.total_kg())
    }

    /// Salt in the liquid once liquid and pieces are even, percent.
    ///
    /// All salt spreads through all water: w = ms ÷ (water of pieces + water of liquid + ms), the full equilibration
    /// of brining; the liquid then holds its water's share of it. With hardly any water in the liquid: the salt of the whole.
    pub(crate) fn evened_salinity(&self) -> f64 {
        let dry = self.liquid.total_kg() - self.liquid.kg(Stuff::Salt);
        if dry <= 0.0 || self.liquid.kg(Stuff::Water) < 0.02 * self.whole.kg(Stuff::Water) {
            return self.percent(Stuff::Salt);
        }
        let per_water = share(self.whole.kg(Stuff::Salt), self.whole.kg(Stuff::Water));
        let salt = per_water * self.liquid.kg(Stuff::Water);
        100.0 * share(salt, dry + salt)
    }
}

/// `part ÷ whole`; nought when the whole is nothing.
pub(crate) fn share(part: f64, whole: f64) -> f64 {
    if whole > 0.0 { part / whole } else { 0.0 }
}

/// All lots' matter scaled to what was put in of each, kilograms of the lot over kilograms of its make-up.
pub(crate) fn lot_matter(process: &Process, lot: usize, lot_kg: f64) -> Matter {
    let Some(entry) = process.lots.get(lot) else {
        return Matter::default();
    };
    let made_up_of = entry.matter.total_kg() + entry.inedible.kilograms().max(0.0);
    scaled(&entry.matter, share(lot_kg, made_up_of))
}

/// `matter` times a number.
pub(crate) fn scaled(matter: &Matter, by: f64) -> Matter {
    Matter {
        mass_kg: matter.mass_kg.map(|kg| kg * by),
        nutrients: matter.nutrients.map(|amount| amount * by),
    }
}

/// `sum` and `other` together.
pub(crate) fn add(sum: &mut Matter, other: &Matter) {
    for (to, from) in sum.mass_kg.iter_mut().zip(other.mass_kg) {
        *to += from;
    }
    for (to, from) in sum.nutrients.iter_mut().zip(other.nutrients) {
        *to += from;
    }
}

/// What is eaten of the finished dish: liquid and pieces.
pub(crate) fn served(trace: &Trace) -> Matter {
    let mut whole = trace.served_liquid;
    for pieces in &trace.served_pieces {
        add(&mut whole, &pieces.matter);
    }
    whole
}

/// Mass of a lot in a run, kilograms; the process's own where the run does not say.
pub(crate) fn lot_kg(process: &Process, trace: &Trace, lot: usize) -> f64 {
    let central = process.lots.get(lot).map_or(Mass::ZERO, |lot| lot.mass);
    let drawn = trace.lot_kg.get(lot).copied();
    drawn.unwrap_or(central.kilograms()).max(0.0)
}

/// The central run and the others.
#[derive(Clone, Debug, Default)]
pub(crate) struct Runs {
    pub(crate) central: Reading,
    pub(crate) others: Vec<Reading>,
}

impl Runs {
    /// A figure of every run: the central value and the range of the others, which always takes in the central one.
    pub(crate) fn figure(&self, measure: Measure, known: Known, pick: impl Fn(&Reading) -> f64) -> Figure {
        let value = pick(&self.central);
        spread_about(value, self.others.iter().map(&pick), measure, known)
    }
}

/// A central value and the 5–95 % range of others, widened where the central one lies outside.
pub(crate) fn spread_about(value: f64, others: impl Iterator<Item = f64>, measure: Measure, known: Known) -> Figure {
    let spread = five_to_ninety_five(others)
        .map(|(low, high)| (unsigned_nought(low.min(value)), unsigned_nought(high.max(value))));
    Figure {
        spread,
        ..Figure::central(value, measure, known)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing;

    /// 1.0 kg of meat with 700 g water and no salt, 1.0 kg of liquid with 980 g water and 20 g salt: even, the salt
    /// is 20 ÷ (700 + 980) per gram of water, so 11.667 g are with the liquid's 980 g: 1.1766 % of 991.67 g.
    #[test]
    fn salt_evens_out_through_the_water() {
        let mut reading = testing::reading();
        reading.liquid = testing::matter(&[(Stuff::Water, 0.98), (Stuff::Salt, 0.02)]);
        let meat = testing::matter(&[(Stuff::Water, 0.7), (Stuff::Protein, 0.3)]);
        reading.whole = reading.liquid;
        add(&mut reading.whole, &meat);
        assert!((reading.liquid_salinity() - 2.0).abs() < 1e-12);
        assert!((reading.percent(Stuff::Salt) - 1.0).abs() < 1e-12);
        assert!((reading.evened_salinity() - 1.176_47).abs() < 1e-4);
        reading.liquid = testing::matter(&[(Stuff::Fat, 0.05)]);
        assert!(
            (reading.evened_salinity() - 1.0).abs() < 1e-12,
            "fat alone takes no salt up"
        );
    }

    #[test]
    fn the_range_takes_in_the_central_value() {
        let figure = spread_about(1.0, [2.0, 3.0].into_iter(), Measure::Grams, Known::ByBalance);
        assert_eq!(figure.spread.map(|s| s.0), Some(1.0));
        let none = spread_about(1.0, std::iter::empty(), Measure::Grams, Known::ByBalance);
        assert_eq!(none.spread, None);
    }

    /// IEEE 754 has two noughts, and a sum of nothing gives the negative one.
    #[test]
    fn nought_has_no_sign() {
        let nothing: f64 = std::iter::empty::<f64>().sum();
        let figure = spread_about(
            -nothing.abs(),
            [-0.0, -0.0].into_iter(),
            Measure::Percent,
            Known::ByBalance,
        );
        assert!(figure.value.is_sign_positive());
        assert!(
            figure
                .spread
                .is_some_and(|(low, high)| low.is_sign_positive() && high.is_sign_positive())
        );
    }
}
