//! `prices.tsv`: what the writer pays, a food a line.
//!
//! ```text
//! name          amount  unit    price
//! plain flour   1.5     kg      1.20
//! eggs          6       each    2.10
//! ```
//!
//! Cells are parted by tabs; lines that begin with `#` are remarks. `unit` is a weight, a volume or a piece; `each`
//! or nothing counts pieces. More columns may follow; they are the writer's own.

use potwright_measure::{Exact, Money, Unit, fractions};

use crate::error::{Fault, Misread};

/// A line of the price list. Which food the name means is found when a house is opened.
#[derive(Clone, Debug, PartialEq)]
pub struct PriceLine {
    /// Line in the file, counted from 1.
    pub line: usize,
    /// The writer's name for the food.
    pub name: String,
    /// How much the price buys.
    pub amount: Exact,
    /// In what; none for pieces.
    pub unit: Option<Unit>,
    /// The price of that.
    pub price: Money,
}

const COLUMNS: [&str; 4] = ["name", "amount", "unit", "price"];
const FILE: &str = "prices.tsv";

/// Reads a `prices.tsv`.
///
/// # Errors
///
/// Every fault, with its line.
pub fn read(text: &str) -> Result<Vec<PriceLine>, Vec<Misread>> {
    let mut lines = text.lines().enumerate().map(|(at, line)| (at + 1, line));
    let mut lines = lines
        .by_ref()
        .filter(|(_, line)| !line.starts_with('#') && !line.trim().is_empty());
    let Some((at, heading)) = lines.next() else {
        return Ok(Vec::new());
    };
    let columns: Vec<&str> = heading.split('\t').map(str::trim).collect();
    if !columns.starts_with(&COLUMNS) {
        let says = format!("the heading must begin with {}, parted by tabs", COLUMNS.join(", "));
        return Err(vec![misread(at, Fault::Form(says))]);
    }
    let (mut prices, mut faults) = (Vec::<PriceLine>::new(), Vec::new());
    for (at, line) in lines {
        match price(at, line, columns.len()) {
            Ok(price) => match prices.iter().find(|other| other.name == price.name) {
                Some(first) => faults.push(misread(at, Fault::Twice(price.name, first.line))),
                None => prices.push(price),
            },
            Err(fault) => faults.push(misread(at, fault)),
        }
    }
    if faults.is_empty() { Ok(prices) } else { Err(faults) }
}

/// The table of a price list; reading it gives the same list, but for the lines of a table that had remarks. Prices
/// are written to four places at most, two at least.
#[must_use]
pub fn write(prices: &[PriceLine]) -> String {
    let mut out = format!("{}\n", COLUMNS.join("\t"));
    for price in prices {
        let unit = price.unit.map_or("each", crate::stock::said);
        let money =
            Exact::nearest(price.price.units(), 10_000).map_or_else(String::new, |money| fractions::decimal(money, 4));
        let places = money.split_once('.').map_or(0, |(_, places)| places.len());
        let money = match places {
            0 => format!("{money}.00"),
            1 => format!("{money}0"),
            _ => money,
        };
        out.push_str(&format!(
            "{}\t{}\t{unit}\t{money}\n",
            price.name,
            fractions::ascii(price.amount)
        ));
    }
    out
}

fn price(line: usize, text: &str, columns: usize) -> Result<PriceLine, Fault> {
    let cells: Vec<&str> = text.split('\t').map(str::trim).collect();
    let [name, amount, unit, price, ..] = cells.as_slice() else {
        return Err(Fault::Cells(cells.len(), columns));
    };
    if name.is_empty() {
        return Err(Fault::Missing("this line".into(), "name", "plain flour"));
    }
    let amount_read = fractions::parse(amount).ok().filter(|amount| amount.is_positive());
    let amount = amount_read.ok_or_else(|| not("amount", amount, "a number above nought, like 1.5 or 1 1/2"))?;
    let unit = match *unit {
        "" | "each" => None,
        said => Some(Unit::from_spelling(said).ok_or_else(|| not("unit", said, "a unit, like kg, ml, bunch or each"))?),
    };
    let price_read = Exact::from_decimal(price).ok().filter(|price| !price.is_negative());
    let price = price_read.ok_or_else(|| not("price", price, "a number, like 1.20, without the currency"))?;
    Ok(PriceLine {
        line,
        name: (*name).into(),
        amount,
        unit,
        price: Money::from_units(price.to_f64()),
    })
}

fn not(word: &str, text: &str, wanted: &'static str) -> Fault {
    Fault::NotUnderstood(word.into(), text.into(), wanted)
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
    fn a_list_with_a_remark_and_a_column_of_the_writers_own() {
        let text = "# at the bridge\nname\tamount\tunit\tprice\tshop\nplain flour\t1 1/2\tkg\t1.20\tmill\neggs\t6\teach\t2.10\t\n";
        let prices = read(text).expect("sound");
        assert_eq!(prices.len(), 2);
        assert_eq!((prices[0].line, prices[0].unit), (3, Some(Unit::Kilogram)));
        assert_eq!(prices[0].amount.to_f64(), 1.5);
        assert_eq!((prices[1].unit, prices[1].price), (None, Money::from_units(2.1)));
    }

    #[test]
    fn faults_have_their_lines() {
        let text = "name\tamount\tunit\tprice\nflour\tsome\tkg\t1\nflour 1 kg 1\nmilk\t1\tl\tfree\noil\t1\tl\t3\noil\t1\tl\t3\nrye\t1\tsacks\t2\n";
        let faults = read(text).expect_err("faults");
        let says: Vec<String> = faults.iter().map(ToString::to_string).collect();
        assert_eq!(
            says[0],
            "prices.tsv, line 2: 'amount' says 'some'; write a number above nought, like 1.5 or 1 1/2"
        );
        assert_eq!(
            says[1],
            "prices.tsv, line 3: 1 cells, where the heading has 4; cells are parted by tabs"
        );
        assert!(says[2].contains("line 4: 'price' says 'free'"));
        assert_eq!(says[3], "prices.tsv, line 6: 'oil' stands in line 5 already");
        assert!(says[4].contains("line 7: 'unit' says 'sacks'"));
    }

    #[test]
    fn no_list_is_no_prices() {
        assert_eq!(read("# none yet\n\n"), Ok(Vec::new()));
        assert!(read("flour\t1\tkg\t1\n").is_err());
    }
}
