//! The rows and the known misses that are carried with the project, so that a machine without the folder checks them.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result, bail};

use super::check::{Check, Judged};
use super::row::{Row, carried_line};

pub(super) const ROWS: &str = "xtask/data/reference_rows.tsv";
const MISSES: &str = "xtask/data/reference_misses.tsv";

/// Another word chooses other rows.
const SEED: &str = "rows";
/// About so many rows are chosen.
const CHOSEN: usize = 200;
/// So many at least of every table.
const OF_EACH: usize = 2;

/// A figure known not to be met.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Miss {
    table: String,
    id: String,
    quantity: String,
    /// How far off it is, percent.
    percent: f64,
    pub why: String,
}

impl Miss {
    pub(super) fn is_of(&self, row: &Row, check: &Check) -> bool {
        self.table == row.table && self.id == row.id() && self.quantity == check.quantity
    }

    /// Whether it is still as far off as it was: within a tenth of that, and a hundredth of a percent.
    #[cfg(test)]
    fn stands(&self, check: &Check) -> bool {
        let percent = 100.0 * check.deviation();
        (percent - self.percent).abs() <= 0.1 * self.percent.abs() + 0.01
    }
}

/// The known misses.
pub(super) fn misses(root: &Path) -> Result<Vec<Miss>> {
    let text = fs::read_to_string(root.join(MISSES)).with_context(|| format!("cannot read {MISSES}"))?;
    let lines = text.lines().filter(|line| !line.starts_with('#')).skip(1);
    let miss = |line: &str| {
        let cells: Vec<&str> = line.split('\t').collect();
        let &[table, id, quantity, percent, why] = cells.as_slice() else {
            bail!("{MISSES}: five cells are meant to stand in '{line}'");
        };
        Ok(Miss {
            table: table.into(),
            id: id.into(),
            quantity: quantity.into(),
            percent: percent.parse().with_context(|| format!("{MISSES}: '{percent}'"))?,
            why: why.into(),
        })
    };
    lines.map(miss).collect()
}

/// Writes the carried rows: of each table its share of the choice, the rows of least hash, and all that have a figure
/// not met.
pub(super) fn write(root: &Path, judged: &[(&Row, Judged)]) -> Result<()> {
    let held: Vec<(&Row, bool)> = judged
        .iter()
        .filter_map(|(row, judged)| match judged {
            Judged::Held(checks) => Some((*row, checks.iter().all(Check::met))),
            Judged::LeftOut(_) => None,
        })
        .collect();
    let mut text = String::from(
        "# Rows of the reference tables, chosen by the least hash of table and name, and every row not met. Each carries its\n\
         # source in its cells. Written by `cargo xtask prove physics`.\ntable\tcells\n",
    );
    for table in tables(&held) {
        let mut of_table: Vec<&(&Row, bool)> = held.iter().filter(|(row, _)| row.table == table).collect();
        of_table.sort_by_key(|(row, _)| hash(&format!("{SEED} {} {}", row.table, row.id())));
        let share = (of_table.len() * CHOSEN).div_ceil(held.len().max(1)).max(OF_EACH);
        let chosen = of_table
            .iter()
            .enumerate()
            .filter(|(place, (_, met))| *place < share || !met);
        for (_, (row, _)) in chosen {
            _ = writeln!(text, "{}", carried_line(row));
        }
    }
    fs::write(root.join(ROWS), text).with_context(|| format!("cannot write {ROWS}"))
}

fn tables<'a>(held: &[(&'a Row, bool)]) -> Vec<&'a str> {
    let mut tables: Vec<&str> = held.iter().map(|(row, _)| row.table.as_str()).collect();
    tables.dedup();
    tables
}

/// FNV-1a, 64 bits (Fowler, Noll and Vo; offset and prime as in its published description).
fn hash(text: &str) -> u64 {
    text.bytes().fold(0xcbf2_9ce4_8422_2325, |hash: u64, byte| {
        (hash ^ u64::from(byte)).wrapping_mul(0x0000_0100_0000_01b3)
    })
}

#[cfg(test)]
mod tests {
    use super::super::row::of_carried;
    use super::super::{checks, judged};
    use super::*;
    use crate::tree;

    /// The carried rows by the evaluators of the proof: each figure meets its row, or is a known miss that has not moved.
    #[test]
    fn carried_rows_are_met() {
        let root = tree::root().expect("the project");
        let rows = of_carried(&fs::read_to_string(root.join(ROWS)).expect("the carried rows"));
        let misses = misses(&root).expect("the known misses");
        assert!(rows.len() >= CHOSEN, "{} rows", rows.len());
        let (mut found, mut faults) = (vec![false; misses.len()], Vec::new());
        for row in &rows {
            let judged = judged(row).expect("a table that is known");
            let checks = checks(&judged).expect("a row that concerns the engine");
            assert!(
                !row.text("source").is_empty() || !row.text("formula").is_empty() || !row.text("method").is_empty()
            );
            for check in checks {
                let known = misses.iter().position(|miss| miss.is_of(row, check));
                let name = format!(
                    "{} {}, {}: {} for {}",
                    row.table,
                    row.id(),
                    check.quantity,
                    check.ours,
                    check.published
                );
                match known {
                    None if !check.met() => faults.push(format!("{name}: {}", check.deviation_text())),
                    Some(place) if check.met() => {
                        found[place] = true;
                        faults.push(format!("{name}: met now, strike it from {MISSES}"));
                    }
                    Some(place) => {
                        found[place] = true;
                        if !misses[place].stands(check) {
                            faults.push(format!(
                                "{name}: {} where {} % is known",
                                check.deviation_text(),
                                misses[place].percent
                            ));
                        }
                    }
                    None => {}
                }
            }
        }
        for (miss, _) in misses.iter().zip(&found).filter(|(_, found)| !**found) {
            faults.push(format!("{miss:?} is no figure of a carried row"));
        }
        assert!(faults.is_empty(), "{}", faults.join("\n"));
    }

    /// Test values printed with the hash's description: of nothing the offset, of 'a' af63dc4c8601ec8c.
    #[test]
    fn the_choice_is_by_the_published_hash() {
        assert_eq!(hash(""), 0xcbf2_9ce4_8422_2325);
        assert_eq!(hash("a"), 0xaf63_dc4c_8601_ec8c);
    }
}
