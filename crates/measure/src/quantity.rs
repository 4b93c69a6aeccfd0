//! Physical quantities in base units: the numbers the simulation computes with.
//!
//! Each is a newtype over `f64` in the SI-coherent unit of its field name. Sums of unlike quantities do not compile:
//!
//! ```compile_fail
//! use potwright_measure::{Mass, Volume};
//! let nonsense = Mass::from_grams(1.0) + Volume::from_millilitres(1.0);
//! ```
//!
//! A temperature is a point on a scale, a [`TemperatureDelta`] a distance along it; two points do not add:
//!
//! ```compile_fail
//! use potwright_measure::Temperature;
//! let nonsense = Temperature::from_celsius(20.0) + Temperature::from_celsius(30.0);
//! ```

use std::iter::Sum;
use std::ops::{Add, AddAssign, Div, Mul, Neg, Sub, SubAssign};

use serde::{Deserialize, Serialize};

/// Defines a linear quantity: arithmetic among its own kind, scaling by plain numbers, a ratio of two.
macro_rules! linear {
    ($(#[$doc:meta])* $name:ident, $($(#[$udoc:meta])* $from:ident / $to:ident = $factor:expr),+ $(,)?) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, Default, PartialEq, PartialOrd, Serialize, Deserialize)]
        #[serde(transparent)]
        pub struct $name(f64);

        impl $name {
            /// Nothing of it.
            pub const ZERO: $name = $name(0.0);

            $(
                #[doc = concat!("From a number in the unit of the name.")]
                $(#[$udoc])*
                #[must_use]
                pub const fn $from(value: f64) -> Self { $name(value * $factor) }

                #[doc = concat!("As a number in the unit of the name.")]
                $(#[$udoc])*
                #[must_use]
                pub const fn $to(self) -> f64 { self.0 / $factor }
            )+

            /// The larger of two.
            #[must_use]
            pub const fn max(self, other: Self) -> Self { $name(self.0.max(other.0)) }

            /// The smaller of two.
            #[must_use]
            pub const fn min(self, other: Self) -> Self { $name(self.0.min(other.0)) }

            /// Whether the number is neither infinite nor not-a-number.
            #[must_use]
            pub const fn is_finite(self) -> bool { self.0.is_finite() }
        }

        impl Add for $name { type Output = $name; fn add(self, o: $name) -> $name { $name(self.0 + o.0) } }
        impl Sub for $name { type Output = $name; fn sub(self, o: $name) -> $name { $name(self.0 - o.0) } }
        impl Neg for $name { type Output = $name; fn neg(self) -> $name { $name(-self.0) } }
        impl AddAssign for $name { fn add_assign(&mut self, o: $name) { self.0 += o.0; } }
        impl SubAssign for $name { fn sub_assign(&mut self, o: $name) { self.0 -= o.0; } }
        impl Mul<f64> for $name { type Output = $name; fn mul(self, k: f64) -> $name { $name(self.0 * k) } }
        impl Mul<$name> for f64 { type Output = $name; fn mul(self, q: $name) -> $name { $name(self * q.0) } }
        impl Div<f64> for $name { type Output = $name; fn div(self, k: f64) -> $name { $name(self.0 / k) } }
        /// The ratio of two of a kind is a plain number.
        impl Div for $name { type Output = f64; fn div(self, o: $name) -> f64 { self.0 / o.0 } }
        impl Sum for $name { fn sum<I: Iterator<Item = $name>>(i: I) -> $name { $name(i.map(|q| q.0).sum()) } }
    };
}

linear!(
    /// A mass; base unit kilogram.
    Mass, from_kilograms / kilograms = 1.0, from_grams / grams = 1e-3
);
linear!(
    /// A volume; base unit cubic metre.
    Volume, from_cubic_metres / cubic_metres = 1.0, from_litres / litres = 1e-3, from_millilitres / millilitres = 1e-6
);
linear!(
    /// A length; base unit metre.
    Length, from_metres / metres = 1.0, from_centimetres / centimetres = 1e-2, from_millimetres / millimetres = 1e-3
);
linear!(
    /// A span of time; base unit second.
    Duration, from_seconds / seconds = 1.0, from_minutes / minutes = 60.0, from_hours / hours = 3600.0
);
linear!(
    /// A distance along the temperature scale; base unit kelvin.
    TemperatureDelta, from_kelvins / kelvins = 1.0
);
linear!(
    /// An energy; base unit joule. A kilocalorie is the thermochemical one, 4184 J exactly (NIST SP 811, App. B).
    Energy, from_joules / joules = 1.0, from_kilojoules / kilojoules = 1e3, from_kilocalories / kilocalories = 4184.0
);
linear!(
    /// A power; base unit watt.
    Power, from_watts / watts = 1.0
);
linear!(
    /// A density; base unit kilogram per cubic metre.
    Density, from_kilograms_per_cubic_metre / kilograms_per_cubic_metre = 1.0,
    from_grams_per_millilitre / grams_per_millilitre = 1e3
);
linear!(
    /// An amount of money in the book's own currency, whatever that is; base unit one.
    Money, from_units / units = 1.0
);

impl Mul<Volume> for Density {
    type Output = Mass;
    fn mul(self, volume: Volume) -> Mass {
        Mass(self.0 * volume.0)
    }
}

impl Div<Density> for Mass {
    type Output = Volume;
    fn div(self, density: Density) -> Volume {
        Volume(self.0 / density.0)
    }
}

impl Mul<Duration> for Power {
    type Output = Energy;
    fn mul(self, time: Duration) -> Energy {
        Energy(self.0 * time.0)
    }
}

/// A temperature: a point on the scale, held in degrees Celsius.
#[derive(Clone, Copy, Debug, PartialEq, PartialOrd, Serialize, Deserialize)]
#[serde(transparent)]
pub struct Temperature(f64);

impl Temperature {
    /// From degrees Celsius.
    #[must_use]
    pub const fn from_celsius(celsius: f64) -> Self {
        Temperature(celsius)
    }

    /// From degrees Fahrenheit: C = (F − 32) · 5/9, exact by definition.
    #[must_use]
    pub const fn from_fahrenheit(fahrenheit: f64) -> Self {
        Temperature((fahrenheit - 32.0) * 5.0 / 9.0)
    }

    /// In degrees Celsius.
    #[must_use]
    pub const fn celsius(self) -> f64 {
        self.0
    }

    /// In degrees Fahrenheit.
    #[must_use]
    pub const fn fahrenheit(self) -> f64 {
        self.0 * 9.0 / 5.0 + 32.0
    }

    /// In kelvins: K = C + 273.15, exact by definition.
    #[must_use]
    pub const fn kelvins(self) -> f64 {
        self.0 + 273.15
    }

    /// The hotter of two.
    #[must_use]
    pub const fn max(self, other: Self) -> Self {
        Temperature(self.0.max(other.0))
    }

    /// The cooler of two.
    #[must_use]
    pub const fn min(self, other: Self) -> Self {
        Temperature(self.0.min(other.0))
    }
}

impl Sub for Temperature {
    type Output = TemperatureDelta;
    fn sub(self, other: Temperature) -> TemperatureDelta {
        TemperatureDelta(self.0 - other.0)
    }
}

impl Add<TemperatureDelta> for Temperature {
    type Output = Temperature;
    fn add(self, delta: TemperatureDelta) -> Temperature {
        Temperature(self.0 + delta.0)
    }
}

impl Sub<TemperatureDelta> for Temperature {
    type Output = Temperature;
    fn sub(self, delta: TemperatureDelta) -> Temperature {
        Temperature(self.0 - delta.0)
    }
}
