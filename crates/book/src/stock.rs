//! `in_the_house.tsv`: what is in the house already, a food a line.
//!
//! ```text
//! name          amount  unit
//! plain flour   1.5     kg
//! eggs          6       each
//! fine salt     plenty
//! ```
//!
//! Cells are parted by tabs; lines that begin with `#` are remarks. `unit` is a weight, a volume or a piece; `each`
//! or nothing counts pieces. `plenty` is more than any dish will ask for. More columns may follow; they are the
//! writer's own and are kept.

use potwright_measure::{Exact, Unit, fractions};

use crate::error::{Fault, Misread};

/// What is in the house.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Stock {
    /// Names of the writer's own columns, in order.
    pub own_columns: Vec<String>,
    /// The foods in order of the table; no name twice.
    pub lines: Vec<StockLine>,
    /// Remarks after the last line, without `#`.
    pub remarks: Vec<String>,
}

/// A food in the house. Which food the name means is found when a house is opened.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct StockLine {
    /// Remarks on the lines before it, without `#`; those before the heading belong to the first food.
    pub remarks: Vec<String>,
    /// The writer's name for the food.
    pub name: String,
    /// How much there is, more than nought; none for plenty.
    pub amount: Option<Exact>,
    /// In what; none for pieces.
    pub unit: Option<Unit>,
    /// The writer's own columns, as many as [`Stock::own_columns`] or fewer.
    pub own: Vec<String>,
}

const COLUMNS: [&str; 3] = ["name", "amount", "unit"];
const FILE: &str = "in_the_house.tsv";
const PLENTY: &str = "plenty";

/// Reads an `in_the_house.tsv`: the table, and for every food its line, counted from 1.
///
/// # Errors
///
/// Every fault, with its line.
pub fn read(text: &str) -> Result<(Stock, Vec<usize>), Vec<Misread>> {
    let (mut stock, mut places, mut faults) = (Stock::default(), Vec::new(), Vec::new());
    let mut headed = false;
    for (at, line) in text.lines().enumerate().map(|(at, line)| (at + 1, line)) {
        if let Some(remark) = line.strip_prefix('#') {
            stock.remarks.push(remark.trim().to_owned());
        } else if line.trim().is_empty() {
        } else if !headed {
            headed = true;
            match heading(line) {
                Some(own) => stock.own_columns = own,
                None => {
                    let says = format!("the heading must begin with {}, parted by tabs", COLUMNS.join(", "));
                    return Err(vec![misread(at, Fault::Form(says))]);
                }
            }
        } else {
            match food(line, &stock) {
                Ok(mut food) => {
                    food.remarks = std::mem::take(&mut stock.remarks);
                    stock.lines.push(food);
                    places.push(at);
                }
                Err(Fault::Twice(name, index)) => {
                    faults.push(misread(
                        at,
                        Fault::Twice(name, places.get(index).copied().unwrap_or(at)),
                    ));
                }
                Err(fault) => faults.push(misread(at, fault)),
            }
        }
    }
    if faults.is_empty() {
        Ok((stock, places))
    } else {
        Err(faults)
    }
}

/// The table of a stock; reading it gives the same stock.
#[must_use]
pub fn write(stock: &Stock) -> String {
    let mut out = String::new();
    let mut row = |cells: &[&str]| {
        out.push_str(cells.join("\t").trim_end_matches('\t'));
        out.push('\n');
    };
    let own = stock.own_columns.iter().map(String::as_str);
    row(&COLUMNS.into_iter().chain(own).collect::<Vec<_>>());
    let remark = |text: &String| format!("# {text}").trim_end().to_owned();
    for food in &stock.lines {
        food.remarks.iter().for_each(|text| row(&[&remark(text)]));
        let amount = food.amount.map_or(PLENTY.to_owned(), fractions::ascii);
        let unit = match (food.amount, food.unit) {
            (_, Some(unit)) => said(unit),
            (Some(_), None) => "each",
            (None, None) => "",
        };
        let cells = [food.name.as_str(), &amount, unit];
        row(&cells
            .into_iter()
            .chain(food.own.iter().map(String::as_str))
            .collect::<Vec<_>>());
    }
    stock.remarks.iter().for_each(|text| row(&[&remark(text)]));
    out
}

/// The writer's own columns, when the heading begins with ours.
fn heading(line: &str) -> Option<Vec<String>> {
    let columns: Vec<&str> = line.trim_start_matches('\u{feff}').split('\t').map(str::trim).collect();
    let own = columns.strip_prefix(COLUMNS.as_slice())?;
    Some(trimmed(own))
}

/// The cells as text, empty ones at the end left off.
fn trimmed(cells: &[&str]) -> Vec<String> {
    let filled = cells
        .iter()
        .rposition(|cell| !cell.is_empty())
        .map_or(0, |last| last + 1);
    cells.iter().take(filled).map(|cell| (*cell).to_owned()).collect()
}

/// One food; a name that is there already is [`Fault::Twice`] with the index of the first.
fn food(text: &str, stock: &Stock) -> Result<StockLine, Fault> {
    let cells: Vec<&str> = text.split('\t').map(str::trim).collect();
    let (name, amount, unit) = match cells.as_slice() {
        [name, amount] => (*name, *amount, ""),
        [name, amount, unit, ..] => (*name, *amount, *unit),
        _ => return Err(Fault::Cells(cells.len(), COLUMNS.len() + stock.own_columns.len())),
    };
    let own = trimmed(cells.get(COLUMNS.len()..).unwrap_or(&[]));
    if own.len() > stock.own_columns.len() {
        return Err(Fault::Cells(cells.len(), COLUMNS.len() + stock.own_columns.len()));
    }
    if name.is_empty() {
        return Err(Fault::Missing("this line".into(), "name", "plain flour"));
    }
    if let Some(first) = stock.lines.iter().position(|other| other.name == name) {
        return Err(Fault::Twice(name.into(), first));
    }
    let not = |word: &str, text: &str, wanted| Fault::NotUnderstood(word.into(), text.into(), wanted);
    let amount = if amount.eq_ignore_ascii_case(PLENTY) {
        None
    } else {
        let read = fractions::parse(amount).ok().filter(|amount| amount.is_positive());
        Some(read.ok_or_else(|| not("amount", amount, "a number above nought, like 1.5 or 1 1/2, or plenty"))?)
    };
    let unit = match unit {
        "" | "each" => None,
        said => Some(Unit::from_spelling(said).ok_or_else(|| not("unit", said, "a unit, like kg, ml, bunch or each"))?),
    };
    Ok(StockLine {
        remarks: Vec::new(),
        name: name.into(),
        amount,
        unit,
        own,
    })
}

/// The short form of a unit where it is read back as the same.
pub(crate) fn said(unit: Unit) -> &'static str {
    let short = unit.abbreviation();
    if Unit::from_spelling(short) == Some(unit) {
        short
    } else {
        unit.name()
    }
}

fn misread(line: usize, fault: Fault) -> Misread {
    Misread {
        file: FILE.into(),
        line,
        fault,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_table_with_remarks_and_a_column_of_the_writers_own() {
        let text = "# after market day\nname\tamount\tunit\twhere\nplain flour\t1 1/2\tkg\tcellar\n# count again\neggs\t6\teach\nfine salt\tplenty\n";
        let (stock, lines) = read(text).expect("sound");
        assert_eq!(lines, [3, 5, 6]);
        assert_eq!(stock.own_columns, ["where"]);
        assert_eq!(stock.lines[0].remarks, ["after market day"]);
        assert_eq!(stock.lines[0].own, ["cellar"]);
        assert_eq!(stock.lines[0].amount.map(Exact::to_f64), Some(1.5));
        assert_eq!(
            (stock.lines[1].unit, &stock.lines[1].remarks[..]),
            (None, &["count again".to_owned()][..])
        );
        assert_eq!(stock.lines[2].amount, None);
        assert_eq!(
            write(&stock),
            "name\tamount\tunit\twhere\n# after market day\nplain flour\t1 1/2\tkg\tcellar\n# count again\neggs\t6\teach\nfine salt\tplenty\n"
        );
    }

    #[test]
    fn faults_have_their_lines() {
        let text = "name\tamount\tunit\nflour\tsome\tkg\nflour 1 kg\n\t1\tkg\noil\t1\tl\noil\t1\tl\nrye\t2\tsacks\nrice\t1\tkg\tcellar\n";
        let faults = read(text).expect_err("faults");
        let says: Vec<String> = faults.iter().map(ToString::to_string).collect();
        assert_eq!(
            says[0],
            "in_the_house.tsv, line 2: 'amount' says 'some'; write a number above nought, like 1.5 or 1 1/2, or plenty"
        );
        assert_eq!(
            says[1],
            "in_the_house.tsv, line 3: 1 cells, where the heading has 3; cells are parted by tabs"
        );
        assert!(says[2].contains("line 4: this line lacks 'name'"));
        assert_eq!(says[3], "in_the_house.tsv, line 6: 'oil' stands in line 5 already");
        assert!(says[4].contains("line 7: 'unit' says 'sacks'"));
        assert!(says[5].contains("line 8: 4 cells"));
        assert!(read("flour\t1\tkg\n").is_err());
    }

    #[test]
    fn no_table_is_an_empty_house() {
        assert_eq!(read("\n"), Ok((Stock::default(), Vec::new())));
    }
}
