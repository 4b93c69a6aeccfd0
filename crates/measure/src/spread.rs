//! A number with its 5–95 % range.

use serde::{Deserialize, Serialize};

/// A central value and the range that holds the true one nine times in ten: 5 % lie below `low`, 5 % above `high`.
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
        if z == 0.0 {
            return self.mid;
        }
        let share = z.abs() / Z95;
        let end = if z < 0.0 { self.low } else { self.high };
        if self.low > 0.0 && self.mid > 0.0 && end > 0.0 {
            self.mid * libm::pow(end / self.mid, share)
        } else {
            self.mid + (end - self.mid) * share
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The 5 % point of the standard normal distribution is 1.645; half way there on a geometric scale is a square
    /// root: from 4 towards 16 it is 8, towards 1 it is 2.
    #[test]
    fn deviates_reach_the_ends() {
        let spread = Spread::within_factor(4.0, 4.0);
        for (z, expected) in [(0.0, 4.0), (1.645, 16.0), (-1.645, 1.0), (0.8225, 8.0), (-0.8225, 2.0)] {
            assert!((spread.at(z) / expected - 1.0).abs() < 2e-4, "{z}");
        }
        let about_nought = Spread {
            low: -1.0,
            mid: 0.0,
            high: 2.0,
        };
        assert!((about_nought.at(0.8225) - 1.0).abs() < 2e-4);
        assert_eq!(Spread::within_factor(4.0, 0.5), Spread::exact(4.0));
    }
}
