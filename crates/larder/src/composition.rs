//! Composition of a food per 100 g edible portion.

use serde::{Deserialize, Serialize};

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
