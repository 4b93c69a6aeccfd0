//! Lines of a CSV file (RFC 4180), of which each record stands on one line, and columns by their names.

use super::OfficialFault;

/// The cells of a line; a doubled quotation mark inside a quoted cell stands for one.
pub(super) fn cells(line: &str) -> Result<Vec<String>, OfficialFault> {
    let (mut cells, mut rest) = (Vec::new(), line);
    loop {
        let (cell, after) = match rest.strip_prefix('"') {
            Some(quoted) => quoted_cell(quoted)?,
            None => match rest.split_once(',') {
                Some((cell, after)) => (cell.to_owned(), Some(after)),
                None => (rest.to_owned(), None),
            },
        };
        cells.push(cell);
        match after {
            Some(after) => rest = after,
            None => return Ok(cells),
        }
    }
}

/// The cell up to its closing mark, and what follows the comma after it; none at the end of the line.
fn quoted_cell(mut rest: &str) -> Result<(String, Option<&str>), OfficialFault> {
    let mut cell = String::new();
    loop {
        let (part, after) = rest.split_once('"').ok_or(OfficialFault::Quote)?;
        cell.push_str(part);
        if let Some(after) = after.strip_prefix('"') {
            cell.push('"');
            rest = after;
        } else {
            return Ok((cell, after.split_once(',').map(|(_, next)| next)));
        }
    }
}

/// Which of the columns wanted stands where.
#[derive(Clone, Copy, Debug)]
pub(super) struct Columns<const N: usize> {
    places: [usize; N],
}

impl<const N: usize> Columns<N> {
    /// Finds the columns in a heading; case does not count.
    pub(super) fn find(heading: &[String], wanted: [&'static str; N]) -> Result<Columns<N>, OfficialFault> {
        let mut places = [0; N];
        for (place, column) in places.iter_mut().zip(wanted) {
            let found = heading.iter().position(|name| name.trim().eq_ignore_ascii_case(column));
            *place = found.ok_or(OfficialFault::Column(column))?;
        }
        Ok(Columns { places })
    }

    /// The cells of those columns.
    pub(super) fn of<'c>(&self, cells: &'c [String]) -> Result<[&'c str; N], OfficialFault> {
        let mut found = [""; N];
        for (cell, place) in found.iter_mut().zip(self.places) {
            let its = cells.get(place).ok_or(OfficialFault::Cells(cells.len(), place + 1))?;
            *cell = its.trim();
        }
        Ok(found)
    }
}

#[cfg(test)]
mod tests {
    use super::{Columns, cells};
    use crate::official::OfficialFault;

    /// The cases are those of RFC 4180, section 2.
    #[test]
    fn quotes_commas_and_empty_cells() {
        let check = |line: &str, expected: &[&str]| assert_eq!(cells(line).expect(line), expected, "{line}");
        check("aaa,bbb,ccc", &["aaa", "bbb", "ccc"]);
        check("\"aaa\",\"b,bb\",ccc", &["aaa", "b,bb", "ccc"]);
        check("\"aaa\",\"b\"\"bb\",\"ccc\"", &["aaa", "b\"bb", "ccc"]);
        check("1,,", &["1", "", ""]);
        check("", &[""]);
        check("\"\"", &[""]);
        assert_eq!(cells("\"aaa,bbb"), Err(OfficialFault::Quote));
    }

    #[test]
    fn columns_by_name() {
        let heading = cells("\"id\",\"FDC_ID\",\"amount\"").expect("sound");
        let columns = Columns::find(&heading, ["amount", "fdc_id"]).expect("both are there");
        let row = cells("9,77,1.5").expect("sound");
        assert_eq!(columns.of(&row), Ok(["1.5", "77"]));
        assert_eq!(columns.of(&row[..2]), Err(OfficialFault::Cells(2, 3)));
        let lacking = Columns::find(&heading, ["grams"]).map(|_| ());
        assert_eq!(lacking, Err(OfficialFault::Column("grams")));
    }
}
