//! One draw of everything that is not known exactly.

use serde::{Deserialize, Serialize};

/// Standard normal deviates for every uncertain input of a run: 0 is the central value, ±1.645 the ends of a
/// [`potwright_measure::Spread`]. [`Draw::central`] is the run whose figures are shown first.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Draw {
    /// One for each lot's mass; a lot beyond the end is central.
    pub lots: Vec<f64>,
    /// Evaporation below the boil.
    pub evaporation: f64,
    /// Power and efficiency of the burner.
    pub burner: f64,
    /// Oven: film coefficient and offset.
    pub oven: f64,
    /// How the cook reads 'simmer', 'medium' and a time range.
    pub reading: f64,
    /// Behaviour of foods: shedding, rendering, softening, uptake.
    pub food: f64,
}

impl Draw {
    /// The central run.
    #[must_use]
    pub fn central() -> Self {
        Draw::default()
    }

    /// The deviate of a lot's mass.
    #[must_use]
    pub fn lot(&self, index: usize) -> f64 {
        self.lots.get(index).copied().unwrap_or(0.0)
    }
}
