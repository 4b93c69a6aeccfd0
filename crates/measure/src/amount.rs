//! Amounts as a cook writes them: a number or a range, exact or 'about'.

use std::fmt;

use serde::{Deserialize, Serialize};

use crate::{Exact, fractions};

/// A number as written: `2`, `2 to 3`, `about 2`.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Amount {
    /// The lower end; equal to `high` for a single number. Never negative.
    pub low: Exact,
    /// The upper end; never below `low`.
    pub high: Exact,
    /// The writer said 'about', 'scant', 'heaped' or the like: the number is not to be leaned on.
    pub about: bool,
}

impl Amount {
    /// One number. The caller gives nought or more; see [`Amount::is_sound`].
    #[must_use]
    pub const fn single(number: Exact) -> Self {
        Amount {
            low: number,
            high: number,
            about: false,
        }
    }

    /// From `low` to `high`; `None` when they stand the wrong way round or below nought, for the writer to settle.
    #[must_use]
    pub fn range(low: Exact, high: Exact) -> Option<Self> {
        let amount = Amount {
            low,
            high,
            about: false,
        };
        amount.is_sound().then_some(amount)
    }

    /// The same amount, said to be 'about' so much.
    #[must_use]
    pub const fn about(self) -> Self {
        Amount { about: true, ..self }
    }

    /// Whether the ends stand the right way round and at nought or above.
    #[must_use]
    pub fn is_sound(self) -> bool {
        !self.low.is_negative() && self.low <= self.high
    }

    /// Whether it is one number, not a range.
    #[must_use]
    pub fn is_single(self) -> bool {
        self.low == self.high
    }

    /// Half way between the ends, in the unit the amount is of; relative error at most 2^-50.
    #[must_use]
    pub fn midpoint(self) -> f64 {
        f64::midpoint(self.low.to_f64(), self.high.to_f64())
    }

    /// Both ends times `factor`, exactly; `None` beyond the range of exact numbers or for a negative factor.
    #[must_use]
    pub fn checked_scale(self, factor: Exact) -> Option<Self> {
        if factor.is_negative() {
            return None;
        }
        Some(Amount {
            low: self.low.checked_mul(factor)?,
            high: self.high.checked_mul(factor)?,
            about: self.about,
        })
    }
}

impl fmt::Display for Amount {
    /// In cook's fractions: `1½`, `2–3`, `about 1½`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        if self.about {
            f.write_str("about ")?;
        }
        f.write_str(&fractions::cook(self.low))?;
        if !self.is_single() {
            write!(f, "–{}", fractions::cook(self.high))?;
        }
        Ok(())
    }
}
