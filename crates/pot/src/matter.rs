//! Matter: what food is made of, as far as the simulation tells it apart.

use serde::{Deserialize, Serialize};

/// The constituents that are balanced by mass. Together they make up the whole mass of a food.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Stuff {
    /// Water.
    Water,
    /// Fat.
    Fat,
    /// Protein.
    Protein,
    /// Starch in its granules.
    Starch,
    /// Gelatinised starch.
    GelatinisedStarch,
    /// Sugars.
    Sugar,
    /// Dietary fibre.
    Fibre,
    /// Organic acids, citric-acid equivalent.
    Acid,
    /// Ethanol.
    Alcohol,
    /// Salt: the sodium-chloride equivalent of all sodium.
    Salt,
    /// The rest of the ash.
    Ash,
}

impl Stuff {
    /// Every constituent, in the order of [`Matter`]'s masses.
    pub const ALL: [Stuff; 11] = [
        Stuff::Water,
        Stuff::Fat,
        Stuff::Protein,
        Stuff::Starch,
        Stuff::GelatinisedStarch,
        Stuff::Sugar,
        Stuff::Fibre,
        Stuff::Acid,
        Stuff::Alcohol,
        Stuff::Salt,
        Stuff::Ash,
    ];

    /// What is dissolved in the water of a food or a broth.
    pub const DISSOLVED: [Stuff; 5] = [Stuff::Sugar, Stuff::Acid, Stuff::Alcohol, Stuff::Salt, Stuff::Ash];

    const fn is_carbohydrate(self) -> bool {
        matches!(
            self,
            Stuff::Starch | Stuff::GelatinisedStarch | Stuff::Sugar | Stuff::Fibre
        )
    }

    /// The nutrients that go where it goes.
    const fn carries(self) -> &'static [Nutrient] {
        match self {
            Stuff::Water => &[Nutrient::PotassiumMg, Nutrient::VitaminCMg],
            Stuff::Fat => &[
                Nutrient::FatKcal,
                Nutrient::SaturatedG,
                Nutrient::CholesterolMg,
                Nutrient::VitaminAUg,
                Nutrient::VitaminDUg,
            ],
            Stuff::Protein => &[Nutrient::ProteinKcal],
            Stuff::Starch | Stuff::GelatinisedStarch | Stuff::Sugar | Stuff::Fibre => &[Nutrient::CarbohydrateKcal],
            Stuff::Ash => &[Nutrient::CalciumMg, Nutrient::IronMg],
            Stuff::Acid | Stuff::Alcohol | Stuff::Salt => &[],
        }
    }
}

/// What travels with the masses and is reckoned from them at the end; not part of the mass balance, but conserved
/// in the same way. Vitamins are carried undiminished: loss by heat is reckoned from retention factors later.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Nutrient {
    /// Energy of the protein by the food's own factor; travels with the protein.
    ProteinKcal,
    /// Energy of the fat by the food's own factor; travels with the fat.
    FatKcal,
    /// Energy of the carbohydrate by the food's own factor; travels with starch, sugar and fibre.
    CarbohydrateKcal,
    /// Travels with the fat.
    SaturatedG,
    /// Travels with the fat.
    CholesterolMg,
    /// Travels with the water, as potassium does in practice.
    PotassiumMg,
    /// Travels with the ash.
    CalciumMg,
    /// Travels with the ash.
    IronMg,
    /// Travels with the fat.
    VitaminAUg,
    /// Travels with the water.
    VitaminCMg,
    /// Travels with the fat.
    VitaminDUg,
}

impl Nutrient {
    /// Every nutrient, in the order of [`Matter`]'s nutrients.
    pub const ALL: [Nutrient; 11] = [
        Nutrient::ProteinKcal,
        Nutrient::FatKcal,
        Nutrient::CarbohydrateKcal,
        Nutrient::SaturatedG,
        Nutrient::CholesterolMg,
        Nutrient::PotassiumMg,
        Nutrient::CalciumMg,
        Nutrient::IronMg,
        Nutrient::VitaminAUg,
        Nutrient::VitaminCMg,
        Nutrient::VitaminDUg,
    ];
}

/// An amount of matter: masses of its constituents in kilograms, and the nutrients that travel with them.
#[derive(Clone, Copy, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Matter {
    /// Kilograms, in the order of [`Stuff::ALL`].
    pub mass_kg: [f64; Stuff::ALL.len()],
    /// In the units of their names, in the order of [`Nutrient::ALL`].
    pub nutrients: [f64; Nutrient::ALL.len()],
}

impl Matter {
    /// Mass of one constituent in kilograms.
    #[must_use]
    pub fn kg(&self, stuff: Stuff) -> f64 {
        self.mass_kg[stuff as usize]
    }

    /// A nutrient in the unit of its name.
    #[must_use]
    pub fn nutrient(&self, nutrient: Nutrient) -> f64 {
        self.nutrients[nutrient as usize]
    }

    /// The whole mass in kilograms.
    #[must_use]
    pub fn total_kg(&self) -> f64 {
        self.mass_kg.iter().sum()
    }

    /// Nothing.
    #[must_use]
    pub fn nothing() -> Self {
        Matter::default()
    }

    /// So many kilograms of one constituent, without nutrients.
    #[must_use]
    pub fn of(stuff: Stuff, kg: f64) -> Self {
        let mut matter = Matter::default();
        matter.mass_kg[stuff as usize] = kg;
        matter
    }

    /// Whether every number is finite and no mass is negative.
    #[must_use]
    pub fn is_sound(&self) -> bool {
        self.mass_kg.iter().all(|kg| kg.is_finite() && *kg >= 0.0) && self.nutrients.iter().all(|n| n.is_finite())
    }

    /// Everything times a factor.
    #[must_use]
    pub fn scaled(&self, factor: f64) -> Self {
        Matter {
            mass_kg: self.mass_kg.map(|kg| kg * factor),
            nutrients: self.nutrients.map(|n| n * factor),
        }
    }

    /// Adds other matter.
    pub fn add(&mut self, other: &Matter) {
        self.mass_kg
            .iter_mut()
            .zip(&other.mass_kg)
            .for_each(|(kg, more)| *kg += more);
        self.nutrients
            .iter_mut()
            .zip(&other.nutrients)
            .for_each(|(n, more)| *n += more);
    }

    /// Takes a share of everything out, 0–1.
    #[must_use]
    pub fn take_share(&mut self, share: f64) -> Matter {
        let share = share.clamp(0.0, 1.0);
        let taken = self.scaled(share);
        if share >= 1.0 {
            *self = Matter::default();
        } else {
            self.mass_kg
                .iter_mut()
                .zip(&taken.mass_kg)
                .for_each(|(kg, less)| *kg -= less);
            self.nutrients
                .iter_mut()
                .zip(&taken.nutrients)
                .for_each(|(n, less)| *n -= less);
        }
        taken
    }

    /// Takes a mass of one constituent out, at most what is there, with the nutrients that travel with it.
    #[must_use]
    pub fn take(&mut self, stuff: Stuff, kg: f64) -> Matter {
        let mut taken = Matter::default();
        self.pass(stuff, kg, &mut taken);
        taken
    }

    /// Passes a mass of one constituent on to other matter, as [`Matter::take`] and [`Matter::add`] would; gives the mass.
    pub fn pass(&mut self, stuff: Stuff, kg: f64, to: &mut Matter) -> f64 {
        let there = self.kg(stuff);
        if kg.is_nan() || kg.min(there) <= 0.0 {
            return 0.0;
        }
        let kg = kg.min(there);
        let whole = if stuff.is_carbohydrate() {
            self.carbohydrate_kg()
        } else {
            there
        };
        for &nutrient in stuff.carries() {
            let amount = self.nutrients[nutrient as usize] * (kg / whole);
            self.nutrients[nutrient as usize] -= amount;
            to.nutrients[nutrient as usize] += amount;
        }
        self.mass_kg[stuff as usize] = there - kg;
        to.mass_kg[stuff as usize] += kg;
        kg
    }

    /// Lets a mass of one constituent go as vapour, at most what is there: its nutrients stay. Gives the mass gone.
    pub fn evaporate(&mut self, stuff: Stuff, kg: f64) -> f64 {
        let gone = if kg.is_nan() {
            0.0
        } else {
            kg.clamp(0.0, self.kg(stuff).max(0.0))
        };
        self.mass_kg[stuff as usize] -= gone;
        gone
    }

    /// Takes water out together with the same share of what is dissolved in it: salt, sugar, acid, alcohol, ash.
    #[must_use]
    pub fn take_juice(&mut self, water_kg: f64) -> Matter {
        let there = self.kg(Stuff::Water);
        if there <= 0.0 || water_kg.is_nan() || water_kg <= 0.0 {
            return Matter::default();
        }
        let share = (water_kg / there).min(1.0);
        let mut juice = self.take(Stuff::Water, share * there);
        for stuff in Stuff::DISSOLVED {
            self.pass(stuff, share * self.kg(stuff), &mut juice);
        }
        juice
    }

    /// Sugars, starches and fibre, kilograms.
    #[must_use]
    pub fn carbohydrate_kg(&self) -> f64 {
        Stuff::ALL
            .iter()
            .filter(|stuff| stuff.is_carbohydrate())
            .map(|&stuff| self.kg(stuff))
            .sum()
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn milk() -> Matter {
        let mut milk = Matter::default();
        for (stuff, kg) in [
            (Stuff::Water, 0.88),
            (Stuff::Fat, 0.04),
            (Stuff::Protein, 0.033),
            (Stuff::Sugar, 0.047),
        ] {
            milk.mass_kg[stuff as usize] = kg;
        }
        milk.nutrients[Nutrient::SaturatedG as usize] = 24.0;
        milk.nutrients[Nutrient::PotassiumMg as usize] = 1500.0;
        milk
    }

    #[test]
    fn what_is_taken_and_what_is_left_make_the_whole() {
        let whole = milk();
        let mut rest = milk();
        let mut sum = rest.take(Stuff::Fat, 0.01);
        assert!((sum.nutrient(Nutrient::SaturatedG) - 6.0).abs() < 1e-12);
        sum.add(&rest.take_share(0.3));
        sum.add(&rest.take_juice(0.2));
        sum.add(&rest);
        for (a, b) in sum.mass_kg.iter().zip(&whole.mass_kg) {
            assert!((a - b).abs() < 1e-12);
        }
        for (a, b) in sum.nutrients.iter().zip(&whole.nutrients) {
            assert!((a - b).abs() < 1e-9);
        }
    }

    #[test]
    fn vapour_leaves_the_minerals_behind() {
        let mut milk = milk();
        assert!((milk.evaporate(Stuff::Water, 2.0) - 0.88).abs() < 1e-12);
        assert_eq!(milk.nutrient(Nutrient::PotassiumMg), 1500.0);
        assert_eq!(milk.kg(Stuff::Water), 0.0);
    }

    #[test]
    fn nonsense_takes_nothing() {
        let mut milk = milk();
        assert_eq!(milk.take(Stuff::Fat, f64::NAN), Matter::default());
        assert_eq!(milk.take_juice(-1.0), Matter::default());
        assert_eq!(milk.evaporate(Stuff::Water, f64::NAN), 0.0);
        assert!(!milk.scaled(f64::NAN).is_sound());
    }
}
