//! How many portions the figures per portion are reckoned with.

use crate::reading::{Reading, share};

/// Grams of a portion where the page does not say whom it serves (common practice, no source: between a starter of
/// 250 g and a main dish of 450 g).
const DEFAULT_G: f64 = 350.0;

/// Portions of a dish.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Portions {
    /// As many as the page says, or the middle of what it says.
    Said(f64),
    /// As many as the yield holds of the default portion.
    OfDefault,
}

impl Portions {
    /// From what the page says it serves.
    pub(crate) fn of(serves: Option<(f64, f64)>) -> Self {
        match serves.map(|(low, high)| f64::midpoint(low, high)) {
            Some(number) if number.is_finite() && number > 0.0 => Portions::Said(number),
            _ => Portions::OfDefault,
        }
    }

    /// How many a run's dish makes.
    pub(crate) fn number(self, reading: &Reading) -> f64 {
        match self {
            Portions::Said(number) => number,
            Portions::OfDefault => reading.yield_kg * 1000.0 / DEFAULT_G,
        }
    }

    /// A whole-dish amount for one portion; nought when there is no dish.
    pub(crate) fn share_of(self, amount: f64, reading: &Reading) -> f64 {
        share(amount, self.number(reading))
    }

    /// Why that many.
    pub(crate) fn because(self, serves: Option<(f64, f64)>) -> String {
        let plain = |number: f64| crate::label::plain(number, 1);
        match (self, serves) {
            (Portions::Said(_), Some((low, high))) if low == high => format!("the page says {}", plain(low)),
            (Portions::Said(number), Some((low, high))) => {
                format!(
                    "the page says {} to {}: reckoned with {}",
                    plain(low),
                    plain(high),
                    plain(number)
                )
            }
            _ => format!("not said: portions of {DEFAULT_G:.0} g"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing;

    #[test]
    fn said_or_default() {
        let mut reading = testing::reading();
        reading.yield_kg = 2.8;
        let six = Portions::of(Some((6.0, 6.0)));
        assert_eq!(six.number(&reading), 6.0);
        assert_eq!(six.because(Some((6.0, 6.0))), "the page says 6");
        let some = Portions::of(Some((4.0, 6.0)));
        assert_eq!(some.because(Some((4.0, 6.0))), "the page says 4 to 6: reckoned with 5");
        let none = Portions::of(None);
        assert_eq!(none.number(&reading), 8.0);
        assert_eq!(none.because(None), "not said: portions of 350 g");
        assert_eq!(Portions::of(Some((0.0, 0.0))), Portions::OfDefault);
    }
}
