//! Exact rational numbers with checked arithmetic: a third of a cup stays a third of a cup.

use std::fmt;

use num_rational::Ratio;
use serde::{Deserialize, Serialize};

/// An exact rational number.
///
/// Every operation that can leave the range of 128-bit numerators returns `None` instead of wrapping: quantities
/// come from a writer's page, and a page can hold any number of digits.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Exact(Ratio<i128>);

impl Exact {
    /// Nought.
    pub const ZERO: Exact = Exact(Ratio::new_raw(0, 1));
    /// One.
    pub const ONE: Exact = Exact(Ratio::new_raw(1, 1));

    /// A whole number.
    #[must_use]
    pub const fn whole(n: i64) -> Self {
        Exact(Ratio::new_raw(n as i128, 1))
    }

    /// `numerator / denominator`, reduced; `None` when the denominator is nought.
    #[must_use]
    pub fn ratio(numerator: i64, denominator: i64) -> Option<Self> {
        (denominator != 0).then(|| Exact(Ratio::new(i128::from(numerator), i128::from(denominator))))
    }
}

impl fmt::Display for Exact {
    /// `3`, `3/4`, `-7/2`: plain and lossless; cook's fractions are printed by [`crate::fractions`].
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}
