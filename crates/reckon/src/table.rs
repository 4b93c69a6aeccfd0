//! Reading the tables of `data/`: tab-separated, `#` for comments, a header line, the source in the last column.

use std::str::FromStr;
use std::sync::OnceLock;

use serde::de::DeserializeOwned;
use serde::de::IntoDeserializer;
use serde::de::value::{Error, StrDeserializer};

/// A table as embedded, split into cells when it is first asked for.
pub(crate) struct Table {
    text: &'static str,
    cells: OnceLock<Vec<Vec<&'static str>>>,
}

impl Table {
    /// The table of a file.
    pub(crate) const fn of(text: &'static str) -> Self {
        Table {
            text,
            cells: OnceLock::new(),
        }
    }
}

/// One row of a table.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Row<'a> {
    cells: &'a [&'static str],
}

impl Row<'_> {
    /// The text of a column; empty when the row is too short.
    pub(crate) fn text(&self, column: usize) -> &'static str {
        self.cells.get(column).copied().unwrap_or("")
    }

    /// The number of a column; none when it is not one.
    pub(crate) fn number(&self, column: usize) -> Option<f64> {
        f64::from_str(self.text(column)).ok().filter(|x| x.is_finite())
    }

    /// The text of a column as the variant of an enumeration, by its name in the data of the program.
    pub(crate) fn word<T: DeserializeOwned>(&self, column: usize) -> Option<T> {
        let word: StrDeserializer<'_, Error> = self.text(column).into_deserializer();
        T::deserialize(word).ok()
    }
}

/// The rows of a table under its header.
pub(crate) fn rows(table: &Table) -> impl Iterator<Item = Row<'_>> {
    let cells = table.cells.get_or_init(|| {
        let lines = table.text.lines();
        lines
            .filter(|line| !line.starts_with('#') && !line.trim().is_empty())
            .skip(1)
            .map(|line| line.split('\t').collect())
            .collect()
    });
    cells.iter().map(|cells| Row { cells })
}

#[cfg(test)]
mod tests {
    use super::*;

    const TABLES: [(&str, &str); 7] = [
        ("alcohol", include_str!("../data/alcohol.tsv")),
        ("allergen_law", include_str!("../data/allergen_law.tsv")),
        ("body", include_str!("../data/body.tsv")),
        ("daily_values", include_str!("../data/daily_values.tsv")),
        ("holding", include_str!("../data/holding.tsv")),
        ("retention", include_str!("../data/retention.tsv")),
        ("to_taste", include_str!("../data/to_taste.tsv")),
    ];

    /// House rule: every row has as many cells as the header, and the last one, the source, is never empty.
    #[test]
    fn every_row_is_whole_and_has_a_source() {
        for (name, table) in TABLES {
            let mut lines = table.lines().filter(|line| !line.starts_with('#'));
            let header: Vec<&str> = lines.next().unwrap().split('\t').collect();
            assert_eq!(header.last(), Some(&"source"), "{name}");
            let mut count = 0;
            for line in lines {
                let cells: Vec<&str> = line.split('\t').collect();
                assert_eq!(cells.len(), header.len(), "{name}: {line}");
                assert!(cells.iter().all(|cell| !cell.trim().is_empty()), "{name}: {line}");
                count += 1;
            }
            assert!(count > 0, "{name} is empty");
        }
    }

    #[test]
    fn words_become_variants() {
        use potwright_larder::Kind;
        let table = Table::of("kind\tx\ndried_fruit\t1\n");
        let row = rows(&table).next().unwrap();
        assert_eq!(row.word::<Kind>(0), Some(Kind::DriedFruit));
        assert_eq!(row.word::<Kind>(1), None);
        assert_eq!(row.number(1), Some(1.0));
        assert_eq!(row.number(0), None);
    }
}
