//! Reading a table: tab-separated, a header line, comment lines that begin with `#`, no quoting.

use serde::Deserialize;
use serde::de::IntoDeserializer;
use serde::de::value::Error as WordError;

use potwright_measure::Spread;

use crate::error::{Fault, TableError};

/// A row and where it stands.
#[derive(Clone, Copy, Debug)]
pub(crate) struct Row<'a, const N: usize> {
    file: &'a str,
    line: usize,
    columns: &'a [&'static str; N],
    cells: [&'a str; N],
}

/// All rows of a table whose header must be `columns`; a column called `source` may never be empty.
pub(crate) fn read<'a, const N: usize>(
    file: &'a str,
    text: &'a str,
    columns: &'a [&'static str; N],
) -> Result<Vec<Row<'a, N>>, TableError> {
    let fault = |line, fault| TableError {
        file: file.to_owned(),
        line,
        fault,
    };
    let mut rows = Vec::new();
    let mut header_seen = false;
    for (index, text) in text.lines().enumerate() {
        let line = index + 1;
        if text.starts_with('#') || text.trim().is_empty() {
            continue;
        }
        let mut cells = [""; N];
        let mut count = 0;
        for cell in text.split('\t') {
            if let Some(place) = cells.get_mut(count) {
                *place = cell.trim();
            }
            count += 1;
        }
        if !header_seen {
            if count != N || cells != *columns {
                return Err(fault(line, Fault::Header(columns.join("\t"))));
            }
            header_seen = true;
            continue;
        }
        if count != N {
            return Err(fault(line, Fault::Cells(count, N)));
        }
        let row = Row {
            file,
            line,
            columns,
            cells,
        };
        if let Some(place) = columns.iter().position(|column| *column == "source") {
            row.filled(place)?;
        }
        rows.push(row);
    }
    if header_seen {
        Ok(rows)
    } else {
        Err(fault(1, Fault::Header(columns.join("\t"))))
    }
}

impl<'a, const N: usize> Row<'a, N> {
    /// The text of a cell.
    pub(crate) fn text(&self, column: usize) -> &'a str {
        self.cells.get(column).copied().unwrap_or("")
    }

    /// The text of a cell that must not be empty.
    pub(crate) fn filled(&self, column: usize) -> Result<&'a str, TableError> {
        let text = self.text(column);
        if text.is_empty() {
            Err(self.fault(Fault::Empty(self.column(column))))
        } else {
            Ok(text)
        }
    }

    /// A word of one of the project's word lists, in the spelling of its serde form.
    pub(crate) fn word<T: Deserialize<'a>>(&self, column: usize) -> Result<T, TableError> {
        let text = self.filled(column)?;
        T::deserialize(IntoDeserializer::<WordError>::into_deserializer(text))
            .map_err(|_| self.fault(Fault::UnknownWord(self.column(column), text.to_owned())))
    }

    /// `yes` or `no`.
    pub(crate) fn yes(&self, column: usize) -> Result<bool, TableError> {
        match self.filled(column)? {
            "yes" => Ok(true),
            "no" => Ok(false),
            other => Err(self.fault(Fault::UnknownWord(self.column(column), other.to_owned()))),
        }
    }

    /// A number that is nought or more, or nothing.
    pub(crate) fn number(&self, column: usize) -> Result<Option<f64>, TableError> {
        let text = self.text(column);
        if text.is_empty() {
            return Ok(None);
        }
        match text.parse::<f64>() {
            Ok(value) if value.is_finite() && value >= 0.0 => Ok(Some(value)),
            _ => Err(self.fault(Fault::Number(self.column(column), text.to_owned(), "of nought or more"))),
        }
    }

    /// A number that must be there.
    pub(crate) fn needed(&self, column: usize) -> Result<f64, TableError> {
        self.filled(column)?;
        Ok(self.number(column)?.unwrap_or(0.0))
    }

    /// A share: a number from 0 to 1.
    pub(crate) fn share(&self, column: usize) -> Result<f64, TableError> {
        let value = self.needed(column)?;
        if value <= 1.0 {
            return Ok(value);
        }
        Err(self.fault(Fault::Number(
            self.column(column),
            self.text(column).to_owned(),
            "from 0 to 1",
        )))
    }

    /// Low, mid and high in three cells in a row; an empty end is the mid.
    pub(crate) fn spread(&self, low: usize) -> Result<Spread, TableError> {
        let mid = self.needed(low + 1)?;
        let spread = Spread {
            low: self.number(low)?.unwrap_or(mid),
            mid,
            high: self.number(low + 2)?.unwrap_or(mid),
        };
        if spread.low <= mid && mid <= spread.high {
            Ok(spread)
        } else {
            Err(self.fault(Fault::Order))
        }
    }

    /// A fault at this row.
    pub(crate) fn fault(&self, fault: Fault) -> TableError {
        TableError {
            file: self.file.to_owned(),
            line: self.line,
            fault,
        }
    }

    fn column(&self, column: usize) -> &'static str {
        self.columns.get(column).copied().unwrap_or("")
    }
}

#[cfg(test)]
mod tests {
    use super::read;
    use crate::error::Fault;

    const COLUMNS: [&str; 3] = ["key", "grams", "source"];

    #[test]
    fn faults_name_file_and_line() {
        let check = |text: &str, line: usize, fault: Fault| {
            let error = read("weights.tsv", text, &COLUMNS).expect_err("a fault stands in the text");
            assert_eq!((error.line, error.fault), (line, fault));
            assert_eq!(error.file, "weights.tsv");
        };
        check("", 1, Fault::Header("key\tgrams\tsource".into()));
        check("key\tgram\tsource\n", 1, Fault::Header("key\tgrams\tsource".into()));
        check("# c\nkey\tgrams\tsource\na\t1\n", 3, Fault::Cells(2, 3));
        check("key\tgrams\tsource\n\n# c\na\t1\t \n", 4, Fault::Empty("source"));
    }

    #[test]
    fn numbers_are_checked() {
        let text = "key\tgrams\tsource\na\t-1\tx\nb\tNaN\tx\nc\t\tx\nd\t2.5\tx\n";
        let rows = read("t", text, &COLUMNS).expect("the frame is sound");
        let numbers: Vec<_> = rows.iter().map(|row| row.number(1).ok()).collect();
        assert_eq!(numbers, [None, None, Some(None), Some(Some(2.5))]);
        assert!(rows[2].needed(1).is_err() && rows[3].share(1).is_err());
    }
}
