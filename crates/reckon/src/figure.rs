//! A figure with its spread and how it is known.

use serde::{Deserialize, Serialize};

/// How a figure is known.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Known {
    /// From masses and compositions.
    ByBalance,
    /// From a published relation or table.
    ByHandbook,
    /// Hangs on evaporation, burner, lid or oven: wide until the kitchen is calibrated.
    NeedsYourKitchen,
    /// Body words, doneness times, preparation times.
    RuleOfThumb,
    /// Flavour, colour, fragrance, or something missing: said, not hidden.
    NotComputed,
}

impl Known {
    /// The words on the page.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Known::ByBalance => "by balance",
            Known::ByHandbook => "by handbook",
            Known::NeedsYourKitchen => "needs your kitchen",
            Known::RuleOfThumb => "rule of thumb",
            Known::NotComputed => "not computed",
        }
    }
}

/// What a figure's number counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "each variant is the unit of its name")]
pub enum Measure {
    Kilograms,
    Grams,
    Milligrams,
    Micrograms,
    Litres,
    Millilitres,
    Minutes,
    Celsius,
    /// Of the mass, 0–100.
    Percent,
    Kilocalories,
    /// In the book's own currency.
    Money,
    /// A plain number.
    Count,
}

/// A figure: central value, 5–95 % range, unit, how it is known.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Figure {
    /// The central run's value.
    pub value: f64,
    /// 5th and 95th percentile over the draws; none while only the central run is done.
    pub spread: Option<(f64, f64)>,
    /// Unit.
    pub measure: Measure,
    /// How it is known.
    pub known: Known,
    /// What it hangs on, in one phrase, when that helps: 'evaporation of an uncovered 24 cm pot'.
    pub because: Option<String>,
}

impl Figure {
    /// A figure of the central run alone.
    #[must_use]
    pub const fn central(value: f64, measure: Measure, known: Known) -> Self {
        Figure {
            value: unsigned_nought(value),
            spread: None,
            measure,
            known,
            because: None,
        }
    }

    /// A figure that is not computed.
    #[must_use]
    pub const fn nothing() -> Self {
        Figure::central(0.0, Measure::Count, Known::NotComputed)
    }

    /// The same with what it hangs on.
    #[must_use]
    pub fn because(self, phrase: impl Into<String>) -> Self {
        Figure {
            because: Some(phrase.into()),
            ..self
        }
    }

    /// With the digits a cook can use and the range behind it: `2.6 l (2.3 to 3.0)`, `1 h 25 min`, `450 kcal`.
    ///
    /// The range is left out when it rounds to the value itself. Money comes without its currency, which only the
    /// book knows. What is not computed says so.
    #[must_use]
    pub fn display(&self) -> String {
        if self.known == Known::NotComputed || !self.value.is_finite() {
            return Known::NotComputed.words().to_owned();
        }
        let scale = Scale::of(self.value, self.measure);
        let value = scale.number(self.value);
        let with_unit = |number: &str| match scale.unit {
            "" => number.to_owned(),
            unit => format!("{number} {unit}"),
        };
        let range = self.spread.map(|(low, high)| (scale.number(low), scale.number(high)));
        match range {
            Some((low, high)) if low != value || high != value => {
                format!("{} ({low} to {high})", with_unit(&value))
            }
            _ => with_unit(&value),
        }
    }

    /// The value alone, with its unit and the digits a cook can use: `2.6 l`.
    #[must_use]
    pub fn display_value(&self) -> String {
        Figure {
            spread: None,
            ..self.clone()
        }
        .display()
    }
}

/// The same number; nought is never negative, as the sum of nothing is in floating point.
pub(crate) const fn unsigned_nought(value: f64) -> f64 {
    value + 0.0
}

/// In what unit and in what steps a figure is printed.
#[derive(Clone, Copy, Debug)]
struct Scale {
    /// From the measure's unit to the printed one.
    factor: f64,
    unit: &'static str,
    /// In the printed unit.
    step: f64,
    decimals: usize,
    /// Minutes printed as hours and minutes.
    hours: bool,
}

impl Scale {
    fn of(value: f64, measure: Measure) -> Self {
        let size = value.abs();
        let plain = |unit, (step, decimals)| Scale {
            factor: 1.0,
            unit,
            step,
            decimals,
            hours: false,
        };
        match measure {
            Measure::Kilograms if size < 0.9995 => {
                let small = Scale::of(value * 1000.0, Measure::Grams);
                Scale {
                    factor: 1000.0,
                    ..small
                }
            }
            Measure::Litres if size < 0.9995 => {
                let small = Scale::of(value * 1000.0, Measure::Millilitres);
                Scale {
                    factor: 1000.0,
                    ..small
                }
            }
            Measure::Kilograms => plain("kg", tenths_then_ones(size)),
            Measure::Litres => plain("l", tenths_then_ones(size)),
            Measure::Grams => plain("g", three_steps(size)),
            Measure::Milligrams => plain("mg", three_steps(size)),
            Measure::Micrograms => plain("µg", three_steps(size)),
            Measure::Millilitres => plain("ml", if size < 100.0 { (5.0, 0) } else { (10.0, 0) }),
            Measure::Minutes if size >= 89.5 => Scale {
                hours: true,
                ..plain("", (5.0, 0))
            },
            Measure::Minutes => plain("min", if size > 30.0 { (5.0, 0) } else { (1.0, 0) }),
            Measure::Celsius => plain("°C", (1.0, 0)),
            Measure::Percent if size < 1.0 => plain("%", (0.01, 2)),
            Measure::Percent => plain("%", tenths_then_ones(size)),
            Measure::Kilocalories if size < 10.0 => plain("kcal", (1.0, 0)),
            Measure::Kilocalories => plain("kcal", if size < 100.0 { (5.0, 0) } else { (10.0, 0) }),
            Measure::Money => plain("", if size < 1.0 { (0.01, 2) } else { (0.1, 2) }),
            Measure::Count => plain("", tenths_then_ones(size)),
        }
    }

    fn number(&self, value: f64) -> String {
        let steps = (value * self.factor / self.step).round();
        // Adding nought turns a negative nought into nought.
        let rounded = steps * self.step + 0.0;
        if !self.hours {
            let decimals = if rounded == 0.0 { 0 } else { self.decimals };
            return format!("{rounded:.decimals$}");
        }
        let (hours, minutes) = ((rounded / 60.0).floor(), rounded.rem_euclid(60.0));
        match (hours == 0.0, minutes == 0.0) {
            (true, _) => format!("{minutes:.0} min"),
            (false, true) => format!("{hours:.0} h"),
            (false, false) => format!("{hours:.0} h {minutes:.0} min"),
        }
    }
}

const fn tenths_then_ones(size: f64) -> (f64, usize) {
    if size < 9.95 { (0.1, 1) } else { (1.0, 0) }
}

const fn three_steps(size: f64) -> (f64, usize) {
    if size < 9.95 {
        (0.1, 1)
    } else if size < 200.0 {
        (1.0, 0)
    } else {
        (10.0, 0)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn show(value: f64, spread: Option<(f64, f64)>, measure: Measure) -> String {
        Figure {
            spread,
            ..Figure::central(value, measure, Known::ByBalance)
        }
        .display()
    }

    #[test]
    fn digits_a_cook_can_use() {
        for (value, measure, expected) in [
            (2.634, Measure::Litres, "2.6 l"),
            (12.4, Measure::Litres, "12 l"),
            (0.438, Measure::Litres, "440 ml"),
            (0.9996, Measure::Kilograms, "1.0 kg"),
            (0.347, Measure::Kilograms, "350 g"),
            (0.78, Measure::Grams, "0.8 g"),
            (23.34, Measure::Grams, "23 g"),
            (23.4, Measure::Minutes, "23 min"),
            (33.0, Measure::Minutes, "35 min"),
            (89.0, Measure::Minutes, "90 min"),
            (92.0, Measure::Minutes, "1 h 30 min"),
            (118.0, Measure::Minutes, "2 h"),
            (185.0, Measure::Minutes, "3 h 5 min"),
            (0.857, Measure::Percent, "0.86 %"),
            (4.494, Measure::Percent, "4.5 %"),
            (37.2, Measure::Percent, "37 %"),
            (5.4, Measure::Kilocalories, "5 kcal"),
            (147.0, Measure::Kilocalories, "150 kcal"),
            (82.0, Measure::Kilocalories, "80 kcal"),
            (99.6, Measure::Celsius, "100 °C"),
            (11.43, Measure::Money, "11.40"),
            (0.87, Measure::Money, "0.87"),
            (-0.001, Measure::Percent, "0 %"),
            (0.0, Measure::Grams, "0 g"),
        ] {
            assert_eq!(show(value, None, measure), expected);
        }
    }

    #[test]
    fn the_range_follows_the_value_in_the_same_steps() {
        assert_eq!(show(2.634, Some((2.31, 3.04)), Measure::Litres), "2.6 l (2.3 to 3.0)");
        assert_eq!(
            show(0.96, Some((0.91, 1.04)), Measure::Kilograms),
            "960 g (910 to 1040)"
        );
        assert_eq!(
            show(100.0, Some((80.0, 125.0)), Measure::Minutes),
            "1 h 40 min (1 h 20 min to 2 h 5 min)"
        );
        assert_eq!(
            show(2.634, Some((2.61, 2.64)), Measure::Litres),
            "2.6 l",
            "a range inside one step says nothing"
        );
    }

    #[test]
    fn what_is_not_computed_says_so() {
        assert_eq!(show(f64::NAN, None, Measure::Grams), "not computed");
        let colour = Figure::central(0.0, Measure::Count, Known::NotComputed);
        assert_eq!(colour.display(), "not computed");
    }
}
