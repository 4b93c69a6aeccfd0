//! Signs to stop: from the words after 'until' to a [`Cue`].

use potwright_manuscript::Verb;
use potwright_measure::{Measures, Spread, Temperature, Unit, Volume};

use super::table;
use super::verbs::{self, Class};
use super::words::{has, longest, numbers, plain, share_a_word};
use crate::{Cue, Lot};

/// A cue and the minutes that stand in where it cannot be computed.
pub(super) struct Sign {
    pub(super) cue: Option<Cue>,
    pub(super) instead: Option<Spread>,
}

/// What the cue may speak of.
pub(super) struct Sight<'a> {
    /// The verb it belongs to.
    pub(super) verb: Verb,
    /// Lots named by the operation.
    pub(super) named: &'a [usize],
    /// Lots in the vessel.
    pub(super) inside: &'a [usize],
    /// All lots.
    pub(super) lots: &'a [Lot],
    /// Whose litres and cups.
    pub(super) measures: Measures,
}

/// Reads the words of a cue.
pub(super) fn read(words: &str, sight: &Sight) -> Sign {
    let hay = plain(words);
    if let Some(celsius) = celsius(&hay) {
        return Sign {
            cue: Some(Cue::Reaches(Temperature::from_celsius(celsius))),
            instead: None,
        };
    }
    let other = || Some(Cue::Other(words.to_owned()));
    if let Some(volume) = volume(&hay, sight.measures) {
        return Sign {
            cue: Some(Cue::ReducedToVolume(volume)),
            instead: None,
        };
    }
    let Some(row) = longest(&table::CUES, &hay) else {
        return Sign {
            cue: other(),
            instead: verbs::manner(sight.verb).minutes,
        };
    };
    let (kind, value) = row.text("cue").split_once(':').unwrap_or((row.text("cue"), ""));
    let number = value.parse::<f64>().unwrap_or(0.5);
    let fried = verbs::manner(sight.verb).way == Some(verbs::Way::Fry);
    let cue = match kind {
        "boils" => Cue::Boils,
        "reaches" | "cools" => Cue::Reaches(Temperature::from_celsius(number)),
        "browned" if fried => Cue::Browned,
        "softened" => Cue::Softened,
        "soft" if fried => Cue::Softened,
        "soft" | "tender" => Cue::Tender(spoken_of(&hay, sight, |lot| {
            lot.pieces.is_some_and(|p| p.softens.is_some())
        })),
        "cooked_through" => Cue::CookedThrough(spoken_of(&hay, sight, |lot| {
            lot.pieces.is_some_and(|p| p.hazard.is_some())
        })),
        "reduced" => Cue::ReducedTo(number),
        _ => {
            return Sign {
                cue: other(),
                instead: row.minutes().or(verbs::manner(sight.verb).minutes),
            };
        }
    };
    Sign {
        cue: Some(cue),
        instead: None,
    }
}

/// The lots a cue speaks of: those its words name, else those the operation names; all that can show it when empty.
fn spoken_of(hay: &str, sight: &Sight, shows: impl Fn(&Lot) -> bool) -> Vec<usize> {
    let able = |lot: &usize| sight.lots.get(*lot).is_some_and(&shows);
    let named_in_words: Vec<usize> = sight
        .inside
        .iter()
        .copied()
        .filter(|lot| able(lot) && sight.lots.get(*lot).is_some_and(|lot| share_a_word(&lot.name, hay)))
        .collect();
    if !named_in_words.is_empty() {
        return named_in_words;
    }
    let cooks = verbs::manner(sight.verb).class == Class::Cook;
    sight.named.iter().copied().filter(|lot| cooks && able(lot)).collect()
}

/// A temperature in the words: '75C in the middle', '165°F'.
fn celsius(hay: &str) -> Option<f64> {
    let spaced = hay.replace('°', " ");
    numbers(&spaced)
        .into_iter()
        .find_map(|(number, unit)| match unit.as_str() {
            "c" | "celsius" => Some(number),
            "f" | "fahrenheit" => Some(Temperature::from_fahrenheit(number).celsius()),
            _ => None,
        })
}

/// The volume in 'reduced to about 3 litres'.
fn volume(hay: &str, measures: Measures) -> Option<Volume> {
    if !has(hay, "to") {
        return None;
    }
    let one = |word: &str| {
        let word = if matches!(word, "liter" | "liters") {
            "litre"
        } else {
            word
        };
        let named = |unit: &&Unit| [unit.name(), unit.plural(), unit.abbreviation()].contains(&word);
        Unit::ALL.iter().find(named)?.volume(measures).map(|ml| ml.to_f64())
    };
    let found = numbers(hay)
        .into_iter()
        .find_map(|(number, unit)| Some(number * one(&unit)?));
    found
        .filter(|ml| ml.is_finite() && *ml > 0.0)
        .map(Volume::from_millilitres)
}

/// A stated temperature that is of the food and not of an oven.
pub(super) fn is_of_food(celsius: f64) -> bool {
    celsius < 110.0
}
