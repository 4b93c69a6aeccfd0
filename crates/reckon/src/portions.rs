//! How many portions the figures per portion are reckoned with.

use potwright_measure::{Dimension, Unit};
use potwright_pot::{Makes, Process};

use crate::reading::{Reading, share};

/// Grams of a portion where the page does not say whom it serves (common practice, no source: between a starter of
/// 250 g and a main dish of 450 g).
const DEFAULT_G: f64 = 350.0;

/// What a dish is made by and not eaten by: one of these is no portion.
const WHOLES: [&str; 12] = [
    "batch", "cake", "dish", "jar", "loaf", "pan", "pie", "pot", "recipe", "tart", "terrine", "tin",
];

/// Portions of a dish.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) enum Portions {
    /// As many as the page says, or the middle of what it says.
    Said(f64),
    /// As many as the page counts of what is eaten piece by piece: slices, dumplings.
    Counted(f64),
    /// As many as the yield holds of the default portion.
    OfDefault,
}

impl Portions {
    /// From what the page says of its yield.
    pub(crate) fn of(process: &Process) -> Self {
        let sound = |(low, high): (f64, f64)| {
            let number = f64::midpoint(low, high);
            (number.is_finite() && number > 0.0).then_some(number)
        };
        if let Some(number) = process.servings.and_then(sound) {
            return Portions::Said(number);
        }
        let measured = |unit: &str| {
            let unit = Unit::from_spelling(unit);
            unit.is_some_and(|unit| matches!(unit.dimension(), Dimension::Volume | Dimension::Mass))
        };
        let counts = |makes: &&Makes| !measured(&makes.unit) && !WHOLES.contains(&&*makes.unit);
        match process
            .makes
            .as_ref()
            .filter(counts)
            .and_then(|makes| sound(makes.amount))
        {
            Some(number) => Portions::Counted(number),
            None => Portions::OfDefault,
        }
    }

    /// How many a run's dish makes.
    pub(crate) fn number(self, reading: &Reading) -> f64 {
        match self {
            Portions::Said(number) | Portions::Counted(number) => number,
            // Less than a portion is one small portion.
            Portions::OfDefault if reading.yield_kg > 0.0 => (reading.yield_kg * 1000.0 / DEFAULT_G).max(1.0),
            Portions::OfDefault => 0.0,
        }
    }

    /// A whole-dish amount for one portion; nought when there is no dish.
    pub(crate) fn share_of(self, amount: f64, reading: &Reading) -> f64 {
        share(amount, self.number(reading))
    }

    /// Why that many.
    pub(crate) fn because(self, process: &Process, central: &Reading) -> String {
        let plain = |number: f64| crate::label::plain(number, 1);
        if self == Portions::OfDefault && central.yield_kg * 1000.0 < DEFAULT_G {
            return format!("not said, and all of it is less than {DEFAULT_G:.0} g: it is one");
        }
        match (self, process.servings, &process.makes) {
            (Portions::Said(_), Some((low, high)), _) if low == high => format!("the page says {}", plain(low)),
            (Portions::Said(number), Some((low, high)), _) => {
                format!(
                    "the page says {} to {}: reckoned with {}",
                    plain(low),
                    plain(high),
                    plain(number)
                )
            }
            (Portions::Counted(_), _, Some(makes)) => {
                format!("the page says '{}': a portion is one {}", makes.words, makes.unit)
            }
            (_, _, Some(makes)) => format!(
                "the page says '{}' and not for how many: portions of {DEFAULT_G:.0} g",
                makes.words
            ),
            _ => format!("not said: portions of {DEFAULT_G:.0} g"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing;

    fn serving(servings: Option<(f64, f64)>) -> Process {
        Process {
            servings,
            ..testing::process(&[])
        }
    }

    fn making(words: &str, number: f64, unit: &str) -> Process {
        Process {
            makes: Some(Makes {
                words: words.to_owned(),
                amount: (number, number),
                unit: unit.to_owned(),
            }),
            ..testing::process(&[])
        }
    }

    #[test]
    fn said_or_default() {
        let mut reading = testing::reading();
        reading.yield_kg = 2.8;
        let six = serving(Some((6.0, 6.0)));
        assert_eq!(Portions::of(&six).number(&reading), 6.0);
        assert_eq!(Portions::of(&six).because(&six, &reading), "the page says 6");
        let some = serving(Some((4.0, 6.0)));
        assert_eq!(
            Portions::of(&some).because(&some, &reading),
            "the page says 4 to 6: reckoned with 5"
        );
        let none = serving(None);
        assert_eq!(Portions::of(&none).number(&reading), 8.0);
        assert_eq!(
            Portions::of(&none).because(&none, &reading),
            "not said: portions of 350 g"
        );
        assert_eq!(Portions::of(&serving(Some((0.0, 0.0)))), Portions::OfDefault);
        // 14 g of garnish are not a twenty-fifth of a portion.
        reading.yield_kg = 0.014;
        assert_eq!(Portions::of(&none).number(&reading), 1.0);
        assert!(Portions::of(&none).because(&none, &reading).ends_with("it is one"));
    }

    /// A loaf in twelve slices is twelve portions; litres and loaves are none.
    #[test]
    fn pieces_are_portions_and_measures_are_not() {
        let mut reading = testing::reading();
        reading.yield_kg = 2.8;
        let bread = making("Makes 1 loaf, 12 slices", 12.0, "slice");
        assert_eq!(Portions::of(&bread), Portions::Counted(12.0));
        assert_eq!(
            Portions::of(&bread).because(&bread, &reading),
            "the page says 'Makes 1 loaf, 12 slices': a portion is one slice"
        );
        let stock = making("Makes about 3 litres", 3.0, "litre");
        assert_eq!(Portions::of(&stock), Portions::OfDefault);
        assert_eq!(
            Portions::of(&stock).because(&stock, &reading),
            "the page says 'Makes about 3 litres' and not for how many: portions of 350 g"
        );
        assert_eq!(Portions::of(&making("Makes 1 loaf", 1.0, "loaf")), Portions::OfDefault);
    }
}
