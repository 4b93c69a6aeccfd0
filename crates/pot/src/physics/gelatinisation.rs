//! Gelatinisation of starch: the range of each plant, from `data/gelatinisation.tsv`.

use std::sync::LazyLock;

use potwright_larder::StarchKind;

/// A range of temperature in which granules swell.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Range {
    /// Where the first granules swell, °C.
    pub low_c: f64,
    /// Where the last have swollen, °C.
    pub high_c: f64,
}

const KINDS: [(StarchKind, &str); 9] = [
    (StarchKind::Wheat, "wheat"),
    (StarchKind::Maize, "maize"),
    (StarchKind::Potato, "potato"),
    (StarchKind::Tapioca, "tapioca"),
    (StarchKind::Rice, "rice"),
    (StarchKind::Oat, "oat"),
    (StarchKind::Barley, "barley"),
    (StarchKind::SweetPotato, "sweet_potato"),
    (StarchKind::Pulse, "pulse"),
];

/// Starch of unknown plant: the widest range of the table.
pub const UNKNOWN: Range = Range {
    low_c: 58.0,
    high_c: 75.0,
};

static TABLE: LazyLock<[Range; KINDS.len()]> = LazyLock::new(|| {
    read(include_str!("../../data/gelatinisation.tsv")).expect("the table is part of the program and read by a test")
});

fn read(text: &str) -> Option<[Range; KINDS.len()]> {
    let mut table = [UNKNOWN; KINDS.len()];
    for (place, (_, name)) in table.iter_mut().zip(KINDS) {
        let line = text.lines().find(|line| line.split('\t').next() == Some(name))?;
        let mut numbers = line.split('\t').skip(1).map_while(|cell| cell.parse::<f64>().ok());
        *place = Range {
            low_c: numbers.next()?,
            high_c: numbers.next()?,
        };
    }
    Some(table)
}

/// The range of a starch.
#[must_use]
pub fn range(kind: Option<StarchKind>) -> Range {
    kind.and_then(|kind| KINDS.iter().position(|(other, _)| *other == kind))
        .map_or(UNKNOWN, |index| TABLE[index])
}

impl Range {
    /// Share of the starch that has swollen once a temperature in °C is held: linear between the ends.
    #[must_use]
    pub fn swollen(&self, temp_c: f64) -> f64 {
        ((temp_c - self.low_c) / (self.high_c - self.low_c).max(1.0)).clamp(0.0, 1.0)
    }

    /// The range of a mixture: means weighted by mass.
    #[must_use]
    pub fn mixed(self, kg: f64, other: Range, other_kg: f64) -> Range {
        let total = kg + other_kg;
        if total <= 0.0 {
            return self;
        }
        let mean = |a: f64, b: f64| (a * kg + b * other_kg) / total;
        Range {
            low_c: mean(self.low_c, other.low_c),
            high_c: mean(self.high_c, other.high_c),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Peaks measured by calorimetry in excess water (a thesis: potato and wheat 62, maize 72, sweet potato 78 °C) lie in
    /// the ranges; nothing swells cold and all has swollen near the boil.
    #[test]
    fn published_peaks_lie_in_the_ranges() {
        for (kind, peak) in [
            (StarchKind::Potato, 62.0),
            (StarchKind::Wheat, 62.0),
            (StarchKind::Maize, 72.0),
            (StarchKind::SweetPotato, 78.0),
        ] {
            let range = range(Some(kind));
            assert!(range.low_c <= peak && peak <= range.high_c);
            assert!(range.swollen(50.0) == 0.0 && range.swollen(95.0) == 1.0);
        }
        for (kind, _) in KINDS {
            assert!(range(Some(kind)).low_c < range(Some(kind)).high_c);
        }
    }

    /// Eleven kinds of rice by calorimetry: onset 56.4 to 71.1, end 68.8 to 82.0 °C (abstract of a study). Maize thickens
    /// very sharply between 65 and 67 °C (Cereal Chemistry 60:116, abstract): half of its range by then, no more than a
    /// third before. Most starches begin above 55 °C (a review).
    #[test]
    fn published_onsets_and_ends() {
        let rice = range(Some(StarchKind::Rice));
        assert!((56.4..=71.1).contains(&rice.low_c) && (68.8..=82.0).contains(&rice.high_c));
        let maize = range(Some(StarchKind::Maize));
        assert!(maize.swollen(65.0) < 0.34 && maize.swollen(67.0) >= 0.5);
        let late = KINDS.iter().filter(|(kind, _)| range(Some(*kind)).low_c > 55.0).count();
        assert!(2 * late > KINDS.len());
    }
}
