//! A row of a reference table, and the tables as they are kept: CSV in their folder, a carried choice in a TSV.

use std::fs;
use std::path::Path;

use anyhow::{Context, Result, bail};

/// A row of a reference table.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Row {
    /// The table's file without its ending.
    pub table: String,
    /// Column and cell, in order.
    pub cells: Vec<(String, String)>,
}

impl Row {
    /// The cell of a column; empty where the table has no such column.
    pub(super) fn text(&self, column: &str) -> &str {
        let cell = self.cells.iter().find(|(name, _)| name == column);
        cell.map_or("", |(_, cell)| cell.as_str())
    }

    /// What the row is called in its table.
    pub(super) fn id(&self) -> &str {
        self.text("id")
    }

    /// The cell of a column as a number; `~`, a second figure behind a dash and words make it none.
    pub(super) fn number(&self, column: &str) -> Option<f64> {
        self.text(column).trim().parse().ok()
    }

    /// Half a unit of the last digit that a column's figure is printed with: what its own rounding may hide.
    pub(super) fn half_unit(&self, column: &str) -> f64 {
        half_unit(self.text(column))
    }

    /// Whether the figure was computed here, but from inputs or beside an answer that were recalled.
    pub(super) fn recalled(&self) -> bool {
        let status = self.text("status");
        status.contains('+') && status.contains("memory")
    }

    /// Why a row of this status is not asserted; none for what is exact, confirmed or computed.
    pub(super) fn not_asserted(&self) -> Option<&'static str> {
        match self.text("status") {
            "memory" => Some("recalled, not confirmed: not to be asserted"),
            "practice" => Some("common practice: not a published figure"),
            _ => None,
        }
    }
}

/// Half a unit of the last digit of a printed number: 0.0005 for `12.345`, 0.5 for `12`, 5e-11 for `1.35e-9`.
pub(super) fn half_unit(printed: &str) -> f64 {
    let printed = printed.trim();
    let (digits, power) = printed.split_once(['e', 'E']).unwrap_or((printed, "0"));
    let decimals = digits.split_once('.').map_or(0, |(_, behind)| behind.len());
    let power: i32 = power.parse().unwrap_or(0);
    0.5 * 10_f64.powi(power - i32::try_from(decimals).unwrap_or(0))
}

/// All rows of a table's file.
pub(super) fn of_file(folder: &Path, table: &str) -> Result<Vec<Row>> {
    let path = folder.join(format!("{table}.csv"));
    let text = fs::read_to_string(&path).with_context(|| format!("cannot read {}", path.display()))?;
    let mut records = records(&text).into_iter();
    let heads = records.next().with_context(|| format!("{} is empty", path.display()))?;
    let row = |record: Vec<String>| {
        if record.len() != heads.len() {
            bail!(
                "{}: {} cells under {} columns",
                path.display(),
                record.len(),
                heads.len()
            );
        }
        Ok(Row {
            table: table.into(),
            cells: heads.iter().cloned().zip(record).collect(),
        })
    };
    records.map(row).collect()
}

/// The records of a CSV text (RFC 4180): cells apart by commas, quoted where they hold commas, quotes or new lines.
fn records(text: &str) -> Vec<Vec<String>> {
    let mut records = vec![vec![String::new()]];
    let (mut quoted, mut letters) = (false, text.chars().peekable());
    while let Some(letter) = letters.next() {
        let Some(cell) = records.last_mut().and_then(|record| record.last_mut()) else {
            continue;
        };
        match letter {
            '"' if quoted && letters.peek() == Some(&'"') => {
                letters.next();
                cell.push('"');
            }
            '"' => quoted = !quoted,
            _ if quoted => cell.push(letter),
            ',' => {
                if let Some(record) = records.last_mut() {
                    record.push(String::new());
                }
            }
            '\n' => records.push(vec![String::new()]),
            '\r' => {}
            _ => cell.push(letter),
        }
    }
    records.retain(|record| record.iter().any(|cell| !cell.is_empty()));
    records
}

/// Between the cells of a carried row: a sign that no table holds.
const BETWEEN: char = '¦';

/// A row as a line of the carried file.
pub(super) fn carried_line(row: &Row) -> String {
    let cells: Vec<String> = row.cells.iter().map(|(name, cell)| format!("{name}={cell}")).collect();
    format!("{}\t{}", row.table, cells.join(&BETWEEN.to_string()))
}

/// The rows of a carried file.
#[cfg(test)]
pub(super) fn of_carried(text: &str) -> Vec<Row> {
    let lines = text.lines().filter(|line| !line.starts_with('#')).skip(1);
    let row = |line: &str| {
        let (table, cells) = line.split_once('\t')?;
        let cells = cells.split(BETWEEN).filter_map(|cell| cell.split_once('='));
        Some(Row {
            table: table.into(),
            cells: cells.map(|(name, cell)| (name.into(), cell.into())).collect(),
        })
    };
    lines.filter_map(row).collect()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The example of RFC 4180, section 2: quoted commas and doubled quotes.
    #[test]
    fn csv() {
        let found = records("a,b\r\n\"1, 2\",\"say \"\"so\"\"\"\n\nx,\n");
        assert_eq!(found, [["a", "b"], ["1, 2", "say \"so\""], ["x", ""]]);
    }

    #[test]
    fn digits() {
        for (printed, half) in [("12.345", 5e-4), ("12", 0.5), ("1.35e-9", 5e-12), ("-0.5", 0.05)] {
            assert!((half_unit(printed) / half - 1.0).abs() < 1e-9, "{printed}");
        }
    }

    #[test]
    fn a_carried_row_comes_back() {
        let row = Row {
            table: "03".into(),
            cells: vec![("id".into(), "a".into()), ("note".into(), "x=1, y".into())],
        };
        let file = format!("# note\ntable\tcells\n{}\n", carried_line(&row));
        assert_eq!(of_carried(&file), [row]);
    }
}
