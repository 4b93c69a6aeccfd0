//! What a food of an official table is, as far as its group and its description tell: `groups.tsv`.

use super::OfficialFood;
use super::household::words;
use crate::error::{Fault, TableError};
use crate::table::{Row, read as rows};
use crate::words::singular;
use crate::{Hazard, Kind, State};

const TABLE: &str = include_str!("../../data/groups.tsv");
const COLUMNS: [&str; 8] = ["group", "word", "kind", "state", "animal", "hazard", "shop", "source"];

/// What is told of a food.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Told<'a> {
    pub(super) kind: Kind,
    /// Its word in tables.
    pub(super) kind_word: &'a str,
    pub(super) state: State,
    /// None is not known.
    pub(super) animal: Option<bool>,
    /// The hazard's word in tables; empty when that of the kind holds.
    pub(super) hazard: &'a str,
    pub(super) shop: &'a str,
}

/// The table.
pub(super) struct Groups<'a> {
    rows: Vec<(&'a str, &'a str, Told<'a>)>,
}

impl Groups<'static> {
    /// The project's own table.
    pub(super) fn built_in() -> Result<Groups<'static>, TableError> {
        let mut groups = Groups { rows: Vec::new() };
        for row in rows("groups.tsv", TABLE, &COLUMNS)? {
            let animal = match row.filled(4)? {
                "yes" => Some(true),
                "no" => Some(false),
                "not_known" => None,
                other => return Err(row.fault(Fault::UnknownWord("animal", other.to_owned()))),
            };
            let told = Told {
                kind: row.word(2)?,
                kind_word: row.text(2),
                state: row.word(3)?,
                animal,
                hazard: hazard(&row)?,
                shop: row.filled(6)?,
            };
            groups.rows.push((row.filled(0)?, row.text(1), told));
        }
        Ok(groups)
    }
}

/// The word of the hazard, checked.
fn hazard<'a>(row: &Row<'a, 8>) -> Result<&'a str, TableError> {
    if !row.text(5).is_empty() {
        row.word::<Hazard>(5)?;
    }
    Ok(row.text(5))
}

/// What a food is when the table itself has no row for it.
pub(super) const NOTHING: Told<'static> = Told {
    kind: Kind::Other,
    kind_word: "other",
    state: State::Prepared,
    animal: None,
    hazard: "",
    shop: "imported",
};

impl<'a> Groups<'a> {
    /// What a food is. A plant that holds cholesterol has something of an animal with it.
    pub(super) fn of(&self, food: &OfficialFood) -> Told<'a> {
        let words: Vec<String> = words(&food.description).iter().map(|word| singular(word)).collect();
        let fits = |(group, word, _): &&(&str, &str, Told<'_>)| {
            (*group == food.group || *group == "*") && (word.is_empty() || words.iter().any(|its| its == word))
        };
        let mut told = self.rows.iter().rfind(fits).map_or(NOTHING, |(_, _, told)| *told);
        told.state = state(&words, told.state);
        if told.animal == Some(false) {
            let natural = matches!(told.state, State::Raw | State::Dried);
            told.animal = match super::value(&food.figures, "cholesterol_mg") {
                Some(cholesterol_mg) if cholesterol_mg > 0.0 => Some(true),
                None if !natural => None,
                _ => Some(false),
            };
        }
        told
    }
}

/// The state the description's words tell; a dried seed that is called raw stays dried.
fn state(words: &[String], usual: State) -> State {
    const TELLING: [(State, &[&str]); 6] = [
        (State::Canned, &["canned"]),
        (
            State::Cooked,
            &[
                "cooked",
                "boiled",
                "roasted",
                "braised",
                "fried",
                "baked",
                "grilled",
                "broiled",
                "stewed",
                "simmered",
                "steamed",
                "toasted",
                "poached",
                "scrambled",
            ],
        ),
        (State::Frozen, &["frozen"]),
        (State::Smoked, &["smoked"]),
        (State::Dried, &["dried", "dehydrated"]),
        (State::Raw, &["raw", "fresh", "uncooked", "unprepared"]),
    ];
    let said = |telling: &[&str]| words.iter().any(|word| telling.contains(&word.as_str()));
    match TELLING.iter().find(|(_, telling)| said(telling)) {
        Some((State::Raw, _)) if usual == State::Dried => State::Dried,
        Some((state, _)) => *state,
        None => usual,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Expectations by hand, from what the words say.
    #[test]
    fn what_descriptions_tell() {
        let groups = Groups::built_in().unwrap_or_else(|error| panic!("{error}"));
        let food = |group: &str, description: &str, cholesterol: Option<f64>| {
            let mut figures = [None; crate::official::FIGURES];
            figures[15] = cholesterol;
            let food = OfficialFood {
                description: description.into(),
                group: group.into(),
                figures,
                refuse_percent: None,
                weights: Vec::new(),
                source: "invented".into(),
            };
            let told = groups.of(&food);
            (told.kind, told.state, told.animal, told.hazard)
        };
        assert_eq!(
            food("1600", "Beans, kidney, red, mature seeds, raw", Some(0.0)),
            (Kind::Pulse, State::Dried, Some(false), "kidney_bean")
        );
        assert_eq!(
            food("1600", "Beans, baked, canned, with beef", Some(22.0)),
            (Kind::Pulse, State::Canned, Some(true), "")
        );
        assert_eq!(
            food("1300", "Beef, ground, 80% lean meat / 20% fat, raw", Some(71.0)),
            (Kind::Meat, State::Raw, Some(true), "minced_meat")
        );
        assert_eq!(
            food("1500", "Crustaceans, shrimp, mixed species, raw", Some(126.0)),
            (Kind::Shellfish, State::Raw, Some(true), "crustacean")
        );
        assert_eq!(food("1100", "Leeks, boiled", None).2, None);
        assert_eq!(
            food("9999", "Something", None),
            (Kind::Other, State::Prepared, None, "")
        );
    }
}
