//! The tables of `data/`: rows of tab-separated cells, by the names of their header.

use potwright_measure::Spread;

/// A table as embedded.
pub(super) struct Table {
    header: Vec<&'static str>,
    rows: Vec<Vec<&'static str>>,
}

/// One row of a [`Table`].
#[derive(Clone, Copy)]
pub(super) struct Row<'a> {
    header: &'a [&'static str],
    cells: &'a [&'static str],
}

impl Table {
    /// Reads a table: comment lines begin with `#`, the first other line is the header.
    pub(super) fn read(text: &'static str) -> Self {
        let mut lines = text.lines().filter(|line| !line.starts_with('#') && !line.is_empty());
        let header = lines.next().unwrap_or("").split('\t').collect();
        Table {
            header,
            rows: lines.map(|line| line.split('\t').collect()).collect(),
        }
    }

    /// Its rows in order.
    pub(super) fn rows(&self) -> impl Iterator<Item = Row<'_>> {
        self.rows.iter().map(|cells| Row {
            header: &self.header,
            cells,
        })
    }
}

impl Row<'_> {
    /// A cell by the name of its column; empty when there is none.
    pub(super) fn text(&self, column: &str) -> &'static str {
        let place = self.header.iter().position(|name| *name == column);
        place.and_then(|place| self.cells.get(place)).copied().unwrap_or("")
    }

    /// A number; `None` for an empty cell.
    pub(super) fn number(&self, column: &str) -> Option<f64> {
        self.text(column).parse().ok()
    }

    /// A factor of spread; 1 for an empty cell.
    pub(super) fn factor(&self, column: &str) -> f64 {
        self.number(column).unwrap_or(1.0)
    }

    /// The columns `minutes_low`, `minutes`, `minutes_high`; `None` for empty cells.
    pub(super) fn minutes(&self) -> Option<Spread> {
        let (low, mid, high) = (
            self.number("minutes_low")?,
            self.number("minutes")?,
            self.number("minutes_high")?,
        );
        Some(Spread { low, mid, high })
    }
}

/// Defines the tables: a name, its file, read once.
macro_rules! tables {
    ($($name:ident = $file:literal),+ $(,)?) => {
        $(
            #[doc = concat!("`data/", $file, ".tsv`.")]
            pub(super) static $name: std::sync::LazyLock<Table> =
                std::sync::LazyLock::new(|| Table::read(include_str!(concat!("../../data/", $file, ".tsv"))));
        )+
        #[cfg(test)]
        const FILES: &[(&str, &str)] = &[$(($file, include_str!(concat!("../../data/", $file, ".tsv")))),+];
    };
}

tables! {
    VERBS = "verbs",
    VESSELS = "vessels",
    CUES = "cues",
    CUTS = "cuts",
    STORAGE = "storage",
    WARM_WORDS = "warm_words",
    AMOUNT_WORDS = "amount_words",
    AMOUNT_SPREADS = "amount_spreads",
    LOOSE_UNITS = "loose_units",
    PIECE_WEIGHTS = "piece_weights",
    UNSAID_AMOUNTS = "unsaid_amounts",
    DENSITIES = "densities",
    JUICE_OF = "juice_of",
    WORK = "work",
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_is_whole_and_has_a_source() {
        for (file, text) in FILES {
            let table = Table::read(text);
            assert!(table.header.contains(&"source"), "{file} has a column for the source");
            for row in table.rows() {
                assert_eq!(row.cells.len(), table.header.len(), "{file}: {:?}", row.cells);
                assert!(!row.text("source").is_empty(), "{file}: {:?}", row.cells);
            }
        }
    }

    #[test]
    fn minutes_and_factors_stand_in_order() {
        for (file, text) in FILES {
            for row in Table::read(text).rows() {
                if let Some(minutes) = row.minutes() {
                    assert!(
                        minutes.low <= minutes.mid && minutes.mid <= minutes.high,
                        "{file}: {:?}",
                        row.cells
                    );
                }
                assert!(row.factor("spread") >= 1.0, "{file}: {:?}", row.cells);
            }
        }
    }
}
