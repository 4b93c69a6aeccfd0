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
}

/// What travels with the masses and is reckoned from them at the end; not part of the mass balance, but conserved
/// in the same way. Vitamins are carried undiminished: loss by heat is reckoned from retention factors later.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "each variant is the nutrient of its name, in the unit of its name")]
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
    CalciumMg,
    IronMg,
    VitaminAUg,
    VitaminCMg,
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
}
