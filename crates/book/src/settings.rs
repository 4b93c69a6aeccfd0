//! `book.toml`: what holds for the whole book.
//!
//! ```toml
//! title = "The Lock House suppers"
//! measures = "metric"        # us, metric, imperial, australian: whose cups and spoons
//! market = "uk"              # uk, us: whose names, packs and seasons
//! salt = "0.6 to 1.0 %"      # what 'to taste' is to bring the finished dish to
//! currency = "tokens"        # what prices.tsv counts in
//!
//! [house_style]              # how `potwright manuscript` sets a page (`house_style.rs`)
//! fractions = "signs"
//! ```

use potwright_larder::Market;
use potwright_measure::Measures;
use potwright_reckon::Target;

use crate::entries::{Entry, Reader};
use crate::error::{Fault, Misread};
use crate::house_style::House;
use crate::said::Of;

/// What holds for the whole book.
#[derive(Clone, Debug, PartialEq)]
pub struct Settings {
    /// The title.
    pub title: String,
    /// Whose cups and spoons are meant.
    pub measures: Measures,
    /// Whose names, packs and seasons.
    pub market: Market,
    /// The writer's own target for salt.
    pub target: Target,
    /// What prices are counted in; empty for none.
    pub currency: String,
    /// How a page is set for the editor.
    pub house: House,
}

impl Default for Settings {
    /// No title, US measures and market, the usual salt, no currency.
    fn default() -> Self {
        Settings {
            title: String::new(),
            measures: Measures::Us,
            market: Market::Us,
            target: Target::default(),
            currency: String::new(),
            house: House::default(),
        }
    }
}

const WORDS: &[&str] = &["title", "measures", "market", "salt", "currency", "house_style"];

/// Saltier than this is no dish but a brine; percent. Sea water holds about 3.5 % salt.
const SALTIEST: f64 = 5.0;

impl Settings {
    /// Reads a `book.toml`; what it does not say stays at its default.
    ///
    /// # Errors
    ///
    /// Every fault, with its line.
    pub fn read(text: &str) -> Result<Settings, Vec<Misread>> {
        let mut settings = Settings::default();
        let mut reader = Reader::new("book.toml", text);
        if let Some(table) = reader.table() {
            for entry in reader.entries(table.get_ref()) {
                settings.take(&entry, &mut reader);
            }
        }
        reader.end(settings)
    }

    fn take(&mut self, entry: &Entry<'_>, reader: &mut Reader<'_>) {
        let said = reader.said(entry.value);
        let understood = match entry.word {
            "house_style" => {
                self.house.take(entry, reader);
                true
            }
            "title" => put(&mut self.title, Some(said.clone())),
            "currency" => put(&mut self.currency, Some(said.clone())),
            "measures" => put(&mut self.measures, measures(&said)),
            "market" => put(&mut self.market, market(&said)),
            "salt" => put(&mut self.target, salt(&said)),
            other => return reader.fault(entry.line, Fault::UnknownWord(other.into(), WORDS)),
        };
        if !understood {
            reader.fault(
                entry.line,
                Fault::NotUnderstood(entry.word.into(), said, wanted(entry.word)),
            );
        }
    }
}

/// Puts what was understood in its place; false when nothing was.
fn put<T>(place: &mut T, understood: Option<T>) -> bool {
    match understood {
        Some(value) => {
            *place = value;
            true
        }
        None => false,
    }
}

fn wanted(word: &str) -> &'static str {
    match word {
        "measures" => "\"us\", \"metric\", \"imperial\" or \"australian\"",
        "market" => "\"uk\" or \"us\"",
        _ => "two shares of salt of at most 5 %, the lower first, like \"0.6 to 1.0 %\"",
    }
}

fn measures(said: &str) -> Option<Measures> {
    match said.to_lowercase().as_str() {
        "us" => Some(Measures::Us),
        "metric" => Some(Measures::Metric),
        "imperial" => Some(Measures::Imperial),
        "australian" => Some(Measures::Australian),
        _ => None,
    }
}

fn market(said: &str) -> Option<Market> {
    match said.to_lowercase().as_str() {
        "uk" => Some(Market::Uk),
        "us" => Some(Market::Us),
        _ => None,
    }
}

fn salt(said: &str) -> Option<Target> {
    let (low, high) = said
        .split_once(" to ")
        .or_else(|| said.split_once(['–', '-']))
        .unwrap_or((said, said));
    let share = |text: &str| Of::Share.read(text, Measures::Metric);
    let salt_percent = (share(low)?, share(high)?);
    let sound = 0.0 <= salt_percent.0 && salt_percent.0 <= salt_percent.1 && salt_percent.1 <= SALTIEST;
    sound.then_some(Target { salt_percent })
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_whole_file() {
        let text =
            "title = \"Pots\"\nmeasures = \"australian\"\nmarket = \"uk\"\nsalt = \"0.5–0.9 %\"\ncurrency = \"x\"";
        let settings = Settings::read(text).expect("sound");
        assert_eq!(settings.title, "Pots");
        assert_eq!(settings.measures, Measures::Australian);
        assert_eq!(settings.market, Market::Uk);
        assert_eq!(settings.target.salt_percent, (0.5, 0.9));
    }

    #[test]
    fn an_empty_file_is_the_default() {
        assert_eq!(Settings::read("# nothing yet\n"), Ok(Settings::default()));
    }

    #[test]
    fn every_fault_has_its_line() {
        let text = "titel = \"Pots\"\n\nmeasures = \"french\"\nsalt = \"1.0 to 0.6\"\n";
        let faults = Settings::read(text).expect_err("three faults");
        assert_eq!(faults.iter().map(|fault| fault.line).collect::<Vec<_>>(), [1, 3, 4]);
        assert_eq!(
            faults[0].to_string(),
            "book.toml, line 1: nothing is called 'titel' here; there are title, measures, market, salt, currency, house_style"
        );
    }

    #[test]
    fn what_is_no_settings_file_says_where() {
        let faults = Settings::read("title = \"a\"\nmeasures = = 2\n").expect_err("no toml");
        assert_eq!((faults.len(), faults[0].line), (1, 2));
    }
}
