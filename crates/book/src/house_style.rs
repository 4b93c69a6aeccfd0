//! `[house_style]` in `book.toml`: how `potwright manuscript` sets a page.
//!
//! ```toml
//! [house_style]
//! measures = "both"                              # as typed, metric, us, both
//! fractions = "signs"                            # signs: 1½, figures: 1 1/2
//! temperatures = "celsius, fahrenheit, gas"      # in which order they stand
//! names = "uk"                                   # as typed, uk: courgette, tin; us: zucchini, can
//! ```

use potwright_manuscript::write::{Fractions, HouseStyle, Names};
use potwright_measure::HeatScale;

use crate::entries::{Entry, Reader};
use crate::error::Fault;

/// The house style of a book.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct House {
    /// Spelling and order.
    pub style: HouseStyle,
    /// Which systems of measures stand on a page.
    pub systems: Systems,
}

/// Which systems of measures stand on a page.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Systems {
    /// As the writer has them.
    #[default]
    AsTyped,
    /// Grams and millilitres.
    Metric,
    /// Cups, spoons, ounces and pounds.
    Us,
    /// Metric, with US measures in brackets.
    Both,
}

const WORDS: &[&str] = &["measures", "fractions", "temperatures", "names"];

impl House {
    /// Takes the entries of the section; faults go to the reader.
    pub(crate) fn take(&mut self, section: &Entry<'_>, reader: &mut Reader<'_>) {
        let Some(table) = section.value.get_ref().as_table() else {
            let said = reader.said(section.value);
            let wanted = "a section, [house_style] on a line of its own";
            return reader.fault(section.line, Fault::NotUnderstood(section.word.into(), said, wanted));
        };
        for entry in reader.entries(table) {
            let said = reader.said(entry.value).to_lowercase();
            let fault = match entry.word {
                "measures" => set(&mut self.systems, systems(&said)),
                "fractions" => set(&mut self.style.fractions, fractions(&said)),
                "temperatures" => set(&mut self.style.temperatures, scales(&said)),
                "names" => set(&mut self.style.names, names(&said)),
                other => {
                    reader.fault(entry.line, Fault::UnknownWord(other.into(), WORDS));
                    continue;
                }
            };
            if fault.is_err() {
                reader.fault(
                    entry.line,
                    Fault::NotUnderstood(entry.word.into(), said, wanted(entry.word)),
                );
            }
        }
    }
}

/// Puts what was understood in its place; an error when nothing was.
fn set<T>(place: &mut T, understood: Option<T>) -> Result<(), ()> {
    *place = understood.ok_or(())?;
    Ok(())
}

fn wanted(word: &str) -> &'static str {
    match word {
        "measures" => "\"as typed\", \"metric\", \"us\" or \"both\"",
        "fractions" => "\"signs\" (1½) or \"figures\" (1 1/2)",
        "temperatures" => "an order, like \"celsius, fahrenheit, gas\"",
        _ => "\"as typed\", \"uk\" or \"us\"",
    }
}

fn systems(said: &str) -> Option<Systems> {
    match said {
        "as typed" => Some(Systems::AsTyped),
        "metric" => Some(Systems::Metric),
        "us" => Some(Systems::Us),
        "both" => Some(Systems::Both),
        _ => None,
    }
}

fn fractions(said: &str) -> Option<Fractions> {
    match said {
        "signs" => Some(Fractions::Signs),
        "figures" => Some(Fractions::Figures),
        _ => None,
    }
}

/// Each scale once at most.
fn scales(said: &str) -> Option<Vec<HeatScale>> {
    let scale = |word: &str| match word {
        "celsius" | "c" | "°c" => Some(HeatScale::Celsius),
        "fahrenheit" | "f" | "°f" => Some(HeatScale::Fahrenheit),
        "gas" | "gas mark" => Some(HeatScale::Gas),
        _ => None,
    };
    let mut all: Vec<HeatScale> = Vec::new();
    for word in said.split(',') {
        let scale = scale(word.trim())?;
        if all.contains(&scale) {
            return None;
        }
        all.push(scale);
    }
    Some(all)
}

fn names(said: &str) -> Option<Names> {
    match said {
        "as typed" => Some(Names::AsTyped),
        "uk" => Some(Names::Uk),
        "us" => Some(Names::Us),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Settings;

    #[test]
    fn a_whole_section() {
        let text = "title = \"a\"\n[house_style]\nmeasures = \"both\"\nfractions = \"figures\"\n\
                    temperatures = \"fahrenheit, celsius\"\nnames = \"us\"\n";
        let house = Settings::read(text).expect("sound").house;
        assert_eq!(house.systems, Systems::Both);
        assert_eq!(house.style.fractions, Fractions::Figures);
        assert_eq!(house.style.temperatures, [HeatScale::Fahrenheit, HeatScale::Celsius]);
        assert_eq!(house.style.names, Names::Us);
    }

    #[test]
    fn every_fault_has_its_line() {
        let text = "[house_style]\nmeasure = 1\nnames = \"fr\"\ntemperatures = \"gas, gas\"\n";
        let faults = Settings::read(text).expect_err("three faults");
        assert_eq!(faults.iter().map(|fault| fault.line).collect::<Vec<_>>(), [2, 3, 4]);
        assert_eq!(Settings::read("house_style = 3\n").expect_err("no section")[0].line, 1);
    }
}
