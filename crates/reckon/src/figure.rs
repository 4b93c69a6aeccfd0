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
