//! Composition of a food per 100 g edible portion.

use serde::{Deserialize, Serialize};

use crate::official::Figures;

/// What 100 g of the edible part hold; `None` is *not determined*, never nought.
///
/// Units stand in the field names. Energy uses the food's own factors, as the tables of origin do; alcohol counts
/// 6.93 kcal/g.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
#[expect(
    missing_docs,
    reason = "each field is the nutrient of its name, in the unit of its name, per 100 g"
)]
pub struct Composition {
    pub water_g: Option<f64>,
    pub energy_kcal: Option<f64>,
    pub protein_g: Option<f64>,
    pub fat_g: Option<f64>,
    pub saturated_g: Option<f64>,
    /// Carbohydrate by difference, fibre included.
    pub carbohydrate_g: Option<f64>,
    pub fibre_g: Option<f64>,
    pub sugars_g: Option<f64>,
    /// Measured starch; where it is empty, [`Composition::starch_estimate_g`] stands in.
    pub starch_g: Option<f64>,
    pub ash_g: Option<f64>,
    pub alcohol_g: Option<f64>,
    pub sodium_mg: Option<f64>,
    pub potassium_mg: Option<f64>,
    pub calcium_mg: Option<f64>,
    pub iron_mg: Option<f64>,
    pub cholesterol_mg: Option<f64>,
    /// Vitamin A, retinol activity equivalents.
    pub vitamin_a_ug: Option<f64>,
    pub vitamin_c_mg: Option<f64>,
    pub vitamin_d_ug: Option<f64>,
    /// kcal per gram of protein, the food's own factor.
    pub protein_factor: Option<f64>,
    /// kcal per gram of fat, the food's own factor.
    pub fat_factor: Option<f64>,
    /// kcal per gram of carbohydrate, the food's own factor.
    pub carbohydrate_factor: Option<f64>,
}

impl Composition {
    /// From figures in the order of [`crate::official::COLUMNS`].
    #[must_use]
    pub const fn from_figures(figures: &Figures) -> Composition {
        let &[
            water_g,
            energy_kcal,
            protein_g,
            fat_g,
            saturated_g,
            carbohydrate_g,
            fibre_g,
            sugars_g,
            starch_g,
            ash_g,
            alcohol_g,
            sodium_mg,
            potassium_mg,
            calcium_mg,
            iron_mg,
            cholesterol_mg,
            vitamin_a_ug,
            vitamin_c_mg,
            vitamin_d_ug,
            protein_factor,
            fat_factor,
            carbohydrate_factor,
        ] = figures;
        Composition {
            water_g,
            energy_kcal,
            protein_g,
            fat_g,
            saturated_g,
            carbohydrate_g,
            fibre_g,
            sugars_g,
            starch_g,
            ash_g,
            alcohol_g,
            sodium_mg,
            potassium_mg,
            calcium_mg,
            iron_mg,
            cholesterol_mg,
            vitamin_a_ug,
            vitamin_c_mg,
            vitamin_d_ug,
            protein_factor,
            fat_factor,
            carbohydrate_factor,
        }
    }

    /// The figures in the order of [`crate::official::COLUMNS`].
    #[must_use]
    pub const fn figures(&self) -> Figures {
        [
            self.water_g,
            self.energy_kcal,
            self.protein_g,
            self.fat_g,
            self.saturated_g,
            self.carbohydrate_g,
            self.fibre_g,
            self.sugars_g,
            self.starch_g,
            self.ash_g,
            self.alcohol_g,
            self.sodium_mg,
            self.potassium_mg,
            self.calcium_mg,
            self.iron_mg,
            self.cholesterol_mg,
            self.vitamin_a_ug,
            self.vitamin_c_mg,
            self.vitamin_d_ug,
            self.protein_factor,
            self.fat_factor,
            self.carbohydrate_factor,
        ]
    }

    /// Starch per 100 g: measured, or what is left of carbohydrate after fibre and sugars.
    ///
    /// Organic acids hide in the remainder, so a fruit's few tenths are not to be leaned on.
    #[must_use]
    pub fn starch_estimate_g(&self) -> f64 {
        self.starch_g.unwrap_or_else(|| {
            let carbohydrate = self.carbohydrate_g.unwrap_or(0.0);
            (carbohydrate - self.fibre_g.unwrap_or(0.0) - self.sugars_g.unwrap_or(0.0)).max(0.0)
        })
    }
}
