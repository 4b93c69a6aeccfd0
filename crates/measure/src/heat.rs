//! Oven temperatures as written: degrees Celsius or Fahrenheit, gas marks, fan and ordinary ovens.

use std::fmt;

use serde::{Deserialize, Serialize};

use crate::{Exact, Temperature, TemperatureDelta, fractions};

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

/// What a temperature is written in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum HeatScale {
    /// Degrees Celsius.
    Celsius,
    /// Degrees Fahrenheit.
    Fahrenheit,
    /// Gas marks.
    Gas,
}

/// How an oven moves its air.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Oven {
    /// Still air: top and bottom heat, or gas.
    Conventional,
    /// A fan; it is set lower for the same effect.
    Fan,
}

impl Oven {
    /// How much lower a fan oven is set (common practice, no source; makers say 10 to 30 K).
    pub const FAN_DROP: TemperatureDelta = TemperatureDelta::from_kelvins(20.0);

    /// What this oven is set to where the page gives the setting of a conventional one.
    #[must_use]
    pub fn setting(self, conventional: Temperature) -> Temperature {
        match self {
            Oven::Conventional => conventional,
            Oven::Fan => conventional - Self::FAN_DROP,
        }
    }

    /// The setting of a conventional oven that does what this one does at `set`.
    #[must_use]
    pub fn conventional(self, set: Temperature) -> Temperature {
        match self {
            Oven::Conventional => set,
            Oven::Fan => set + Self::FAN_DROP,
        }
    }
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

    /// The scale it is written in.
    #[must_use]
    pub const fn scale(self) -> HeatScale {
        match self {
            WrittenTemperature::Celsius(_) => HeatScale::Celsius,
            WrittenTemperature::Fahrenheit(_) => HeatScale::Fahrenheit,
            WrittenTemperature::Gas(_) => HeatScale::Gas,
        }
    }
}

impl fmt::Display for WrittenTemperature {
    /// As written: `180 °C`, `350 °F`, `gas 4`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match self {
            WrittenTemperature::Celsius(c) => write!(f, "{c} °C"),
            WrittenTemperature::Fahrenheit(degrees) => write!(f, "{degrees} °F"),
            WrittenTemperature::Gas(mark) => write!(f, "gas {mark}"),
        }
    }
}

impl GasMark {
    /// From the number as written, ¼ to 9 by quarters; `None` for any other.
    ///
    /// ```
    /// use potwright_measure::{Exact, GasMark};
    /// assert_eq!(GasMark::from_number(Exact::whole(4)), Some(GasMark { quarters: 16 }));
    /// assert_eq!(GasMark::from_number(Exact::whole(10)), None);
    /// ```
    #[must_use]
    pub fn from_number(number: Exact) -> Option<Self> {
        let quarters = number.checked_mul(Exact::whole(4)).filter(|q| q.is_whole())?;
        let quarters = u8::try_from(quarters.numerator()).ok()?;
        (1..=36).contains(&quarters).then_some(GasMark { quarters })
    }

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

impl fmt::Display for GasMark {
    /// `4`, `½`, `4½`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        match Exact::ratio(i64::from(self.quarters), 4) {
            Some(number) => f.write_str(&fractions::cook(number)),
            None => Err(fmt::Error),
        }
    }
}
