//! Oven temperatures as written: degrees Celsius or Fahrenheit, gas marks, fan and ordinary ovens.

use serde::{Deserialize, Serialize};

use crate::Temperature;

/// A gas mark of a British oven, ¼ to 9, counted in quarters (mark 4 is 16).
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct GasMark {
    /// The mark in quarters: 1 for ¼, 2 for ½, 4 for 1 … 36 for 9.
    pub quarters: u8,
}

/// A temperature as written, with the scale it was written in.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase", tag = "scale", content = "value")]
pub enum WrittenTemperature {
    /// Degrees Celsius.
    Celsius(f64),
    /// Degrees Fahrenheit.
    Fahrenheit(f64),
    /// A gas mark.
    Gas(GasMark),
}

impl WrittenTemperature {
    /// The temperature itself; a gas mark by the convention '1 is 275 °F, 25 °F a mark'.
    #[must_use]
    pub fn temperature(self) -> Temperature {
        match self {
            WrittenTemperature::Celsius(c) => Temperature::from_celsius(c),
            WrittenTemperature::Fahrenheit(f) => Temperature::from_fahrenheit(f),
            WrittenTemperature::Gas(mark) => mark.temperature(),
        }
    }
}

impl GasMark {
    /// Gas 1 is 275 °F and each mark 25 °F more; ½ is 250 °F, ¼ is 225 °F (common practice, no source).
    #[must_use]
    pub fn temperature(self) -> Temperature {
        let fahrenheit = match self.quarters {
            0 | 1 => 225.0,
            2 | 3 => 250.0,
            quarters => 250.0 + 25.0 * f64::from(quarters) / 4.0,
        };
        Temperature::from_fahrenheit(fahrenheit)
    }
}
