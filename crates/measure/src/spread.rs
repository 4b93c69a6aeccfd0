//! A number with its 5–95 % range.

use serde::{Deserialize, Serialize};

/// A central value and the range that holds it nineteen times in twenty, bar the tails: 5 % lie below `low` and 5 %
/// above `high`.
///
/// The unit is that of the field that holds the spread.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Spread {
    /// 5th percentile.
    pub low: f64,
    /// The central value: the one that is computed with when only one is.
    pub mid: f64,
    /// 95th percentile.
    pub high: f64,
}

impl Spread {
    /// A value known exactly.
    #[must_use]
    pub const fn exact(value: f64) -> Self {
        Spread {
            low: value,
            mid: value,
            high: value,
        }
    }

    /// A value known within a factor: `mid ÷ factor` to `mid × factor`. A factor below one counts as one.
    #[must_use]
    pub const fn within_factor(mid: f64, factor: f64) -> Self {
        let factor = factor.max(1.0);
        Spread {
            low: mid / factor,
            mid,
            high: mid * factor,
        }
    }

    /// The value at a standard normal deviate `z`: geometric between the ends when all are positive, else linear.
    ///
    /// ±1.645 gives the ends (the 5 % points of the normal distribution, any statistical table).
    #[must_use]
    pub fn at(&self, z: f64) -> f64 {
        const Z95: f64 = 1.644_853_626_951_472_7;
        let share = z.abs() / Z95;
        let end = if z < 0.0 { self.low } else { self.high };
        if self.low > 0.0 && self.mid > 0.0 && end > 0.0 {
            self.mid * libm::pow(end / self.mid, share)
        } else {
            self.mid + (end - self.mid) * share
        }
    }
}
