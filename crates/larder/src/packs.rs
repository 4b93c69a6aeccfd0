//! Packs as sold, and seasons.

use potwright_measure::Mass;
use serde::{Deserialize, Serialize};

/// Where a pack or a season holds.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Market {
    /// The United Kingdom.
    Uk,
    /// The United States.
    Us,
}

/// A pack as sold.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Pack {
    /// Where it is sold so.
    pub market: Market,
    /// What it is called there: `bag`, `can`, `bunch`.
    pub pack: String,
    /// What it holds; for a tin the whole contents.
    pub mass: Mass,
    /// Source of the figure.
    pub source: String,
}

/// A stretch of the year in which a food is at its best, home-grown and cheap.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Season {
    /// Where it holds.
    pub market: Market,
    /// First month, 1–12.
    pub from: u8,
    /// Last month, 1–12; before `from` when the stretch runs over the turn of the year.
    pub to: u8,
    /// Source of the months.
    pub source: String,
}

impl Season {
    /// Whether a month (1–12) lies in it.
    #[must_use]
    pub fn holds(&self, month: u8) -> bool {
        if self.from <= self.to {
            (self.from..=self.to).contains(&month)
        } else {
            month >= self.from || month <= self.to
        }
    }
}

#[cfg(test)]
mod tests {
    use super::{Market, Season};

    #[test]
    fn a_season_may_run_over_the_turn_of_the_year() {
        let season = Season {
            market: Market::Uk,
            from: 9,
            to: 4,
            source: "a test".into(),
        };
        let months: Vec<u8> = (1..=12).filter(|month| season.holds(*month)).collect();
        assert_eq!(months, [1, 2, 3, 4, 9, 10, 11, 12]);
    }
}
