//! One row of a `larder.tsv`: its cells, and the food they make.

use super::columns::{COLUMNS, Column};
use super::error::Wrong;
use super::{Asked, Reader, figures, weights};
use crate::food::word_of;
use crate::words::fold;
use crate::{Behaviour, Composition, Contains, Food, Hints, Kind, State};

/// The cells of a row under their columns.
pub(super) struct Row<'a> {
    cells: Vec<(Column, &'a str)>,
}

impl<'a> Row<'a> {
    /// Parts a line; cells at its end may be left out.
    pub(super) fn read(columns: &[Option<Column>], line: &'a str) -> Result<Row<'a>, Wrong> {
        let texts: Vec<&str> = line.split('\t').map(str::trim).collect();
        if texts.len() > columns.len() && texts.iter().skip(columns.len()).any(|text| !text.is_empty()) {
            return Err(Wrong::Cells(texts.len(), columns.len()));
        }
        let cells = columns.iter().zip(texts);
        let filled =
            cells.filter_map(|(column, text)| column.filter(|_| !text.is_empty()).map(|column| (column, text)));
        Ok(Row {
            cells: filled.collect(),
        })
    }

    /// The text of a cell; empty when it is.
    pub(super) fn text(&self, column: Column) -> &'a str {
        self.cells
            .iter()
            .find(|(its, _)| *its == column)
            .map_or("", |(_, text)| text)
    }

    pub(super) fn has(&self, column: Column) -> bool {
        !self.text(column).is_empty()
    }

    /// A number from nought to `most`, or nothing.
    pub(super) fn figure(
        &self,
        column: Column,
        name: &'static str,
        wanted: &'static str,
        most: f64,
    ) -> Result<Option<f64>, Wrong> {
        let text = self.text(column);
        if text.is_empty() {
            return Ok(None);
        }
        match text.parse::<f64>() {
            Ok(value) if (0.0..=most).contains(&value) => Ok(Some(value)),
            _ => Err(Wrong::Number(name, text.to_owned(), wanted)),
        }
    }

    /// A number above nought, or nothing.
    pub(super) fn number(
        &self,
        column: Column,
        name: &'static str,
        wanted: &'static str,
        most: f64,
    ) -> Result<Option<f64>, Wrong> {
        match self.figure(column, name, wanted, most)? {
            Some(0.0) => Err(Wrong::Number(name, self.text(column).to_owned(), wanted)),
            value => Ok(value),
        }
    }

    /// A word of one of the larder's lists, or nothing.
    fn word<T: serde::de::DeserializeOwned>(
        &self,
        column: Column,
        name: &'static str,
        known: &'static str,
    ) -> Result<Option<T>, Wrong> {
        let text = self.text(column);
        if text.is_empty() {
            return Ok(None);
        }
        word_of(text)
            .map(Some)
            .ok_or_else(|| Wrong::Word(name, text.to_owned(), known))
    }

    /// The food of the row.
    pub(super) fn food(&self, reader: &Reader<'_>, source: String) -> Result<Food, Wrong> {
        let (mut food, begun, named) = self.begun(reader)?;
        if let Begun::AsAnother(name) = &begun {
            food.source = format!("{source}; what it does not say as {name}: {}", food.source);
        }
        self.names(&mut food, named, reader)?;
        let own_source = if self.has(Column::Source) {
            self.text(Column::Source).to_owned()
        } else {
            source
        };
        if figures::lay(self, &mut food.composition, reader.asked)? && !matches!(begun, Begun::AsAnother(_)) {
            food.source.clone_from(&own_source);
        }
        if food.source.is_empty() || self.has(Column::Source) {
            food.source.clone_from(&own_source);
        }
        weights::lay(self, &mut food, &own_source)?;
        if let Some(percent) = self.figure(Column::Refuse, "refuse_percent", "per cent, like 15", 99.0)? {
            food.refuse = Some(percent / 100.0);
        }
        self.allergens(&mut food)?;
        self.keeping(&mut food, &own_source)?;
        Ok(food)
    }

    /// The food before the row's own cells: the one of its key or name, the one it is like, or nothing but its kind;
    /// and whether it bears the names of the food whose key it has.
    fn begun(&self, reader: &Reader<'_>) -> Result<(Food, Begun, bool), Wrong> {
        let (key, name) = (self.text(Column::Key), self.text(Column::Name));
        if key.is_empty() && name.is_empty() {
            return Err(Wrong::NoName);
        }
        if !key
            .bytes()
            .all(|byte| byte.is_ascii_lowercase() || byte.is_ascii_digit() || byte == b'_')
        {
            return Err(Wrong::Key(key.to_owned()));
        }
        let known = if key.is_empty() {
            reader.by_name(name)
        } else {
            reader.by_key(key)
        };
        let found = self.base(known, reader)?;
        let mut food = found.cloned().unwrap_or_else(|| nothing(self.text(Column::Shop)));
        let begun = match (found, known) {
            (Some(found), Some(known)) if found.key == known.key => Begun::AsItself,
            (Some(found), _) => Begun::AsAnother(found.name.clone()),
            (None, _) => Begun::New,
        };
        if let Begun::AsAnother(_) = begun {
            // What another food is free of, this one need not be.
            food.allergens_complete = false;
            food.allergens.retain(|(_, contains)| *contains != Contains::No);
        }
        let known = known.filter(|_| reader.asked == Asked::OfAWriter);
        match known {
            Some(known) => {
                food.key.clone_from(&known.key);
                food.name.clone_from(&known.name);
                food.plural.clone_from(&known.plural);
                food.synonyms.clone_from(&known.synonyms);
            }
            None if key.is_empty() => food.key = key_of(name, reader),
            None => key.clone_into(&mut food.key),
        }
        self.character(&mut food)?;
        if matches!(begun, Begun::New)
            && let Some(of_kind) = &reader.of_kind
        {
            of_kind.lay(&mut food);
            food.allergens_complete = false;
        }
        self.hazard(&mut food)?;
        Ok((food, begun, known.is_some()))
    }

    /// The food a row begins from: what it is like, else the one it is about, else one that bears its name.
    fn base<'r>(&self, known: Option<&'r Food>, reader: &'r Reader<'_>) -> Result<Option<&'r Food>, Wrong> {
        let like = self.text(Column::Like);
        if !like.is_empty() {
            return like_of(like, reader).map(Some);
        }
        if reader.asked == Asked::OfATable {
            return Ok(None);
        }
        Ok(known.or_else(|| borne(self.text(Column::Name), reader)))
    }

    /// What must be made safe, over what holds for the kind.
    fn hazard(&self, food: &mut Food) -> Result<(), Wrong> {
        const HAZARDS: &str = "poultry, minced meat, whole meat, fish, crustacean, bivalve, egg, kidney bean, ready to \
                               eat or none";
        if self.text(Column::Hazard) == "none" {
            food.behaviour.hazard = None;
        } else if let Some(hazard) = self.word(Column::Hazard, "hazard", HAZARDS)? {
            food.behaviour.hazard = Some(hazard);
        }
        Ok(())
    }

    /// Kind, state, shop, animal or not.
    fn character(&self, food: &mut Food) -> Result<(), Wrong> {
        const KINDS: &str = "a kind like vegetable, root, leaf, fruit, pulse, grain, flour, pasta, bread, meat, sausage, \
                             poultry, fish, shellfish, milk, cheese, fat, oil, herb, spice, sugar, condiment, stock, nut";
        const STATES: &str = "raw, cooked, dried, canned, frozen, smoked or prepared";
        if let Some(kind) = self.word::<Kind>(Column::Kind, "kind", KINDS)? {
            food.kind = kind;
        }
        if let Some(state) = self.word::<State>(Column::State, "state", STATES)? {
            food.state = state;
        }
        if self.has(Column::Shop) {
            self.text(Column::Shop).clone_into(&mut food.shop);
        }
        match yes(self.text(Column::Animal)) {
            Some(Contains::No) => food.animal = false,
            // What is not known is not sold to anyone as free of animals.
            Some(_) => food.animal = true,
            None if self.has(Column::Animal) => {
                return Err(Wrong::Word("animal", self.text(Column::Animal).to_owned(), YES));
            }
            None => {}
        }
        Ok(())
    }

    fn names(&self, food: &mut Food, itself: bool, reader: &Reader<'_>) -> Result<(), Wrong> {
        let name = self.text(Column::Name);
        if !itself {
            food.plural.clear();
            food.synonyms.clear();
        }
        if !name.is_empty() {
            name.clone_into(&mut food.name);
        } else if !itself {
            food.name = food.key.replace('_', " ");
        }
        if self.has(Column::Plural) {
            self.text(Column::Plural).clone_into(&mut food.plural);
        } else if food.plural.is_empty() {
            food.plural.clone_from(&food.name);
        }
        let synonyms = self.text(Column::Synonyms).split(';').map(str::trim);
        for synonym in synonyms.filter(|name| !name.is_empty()) {
            // The marks of the built-in name table are no part of a name.
            let plain = synonym.trim_start_matches(['?', '=']).replace(':', " ");
            food.synonyms.push(plain);
        }
        if reader.asked == Asked::OfAWriter && fold(&food.name).trim().is_empty() {
            return Err(Wrong::NoName);
        }
        Ok(())
    }

    fn allergens(&self, food: &mut Food) -> Result<(), Wrong> {
        for known in &COLUMNS {
            let Column::Allergen(allergen) = known.column else {
                continue;
            };
            let text = self.text(known.column);
            if text.is_empty() {
                continue;
            }
            let contains = yes(text).ok_or_else(|| Wrong::Word(known.name, text.to_owned(), YES))?;
            food.allergens.retain(|(its, _)| *its != allergen);
            food.allergens.push((allergen, contains));
        }
        let others = self.text(Column::OtherAllergens);
        match yes(others) {
            Some(Contains::No) => food.allergens_complete = true,
            Some(Contains::NotKnown) => food.allergens_complete = false,
            _ if others.is_empty() => {}
            _ => return Err(Wrong::Word("other_allergens", others.to_owned(), "no or not known")),
        }
        Ok(())
    }

    /// `5` or `3 to 5`.
    fn keeping(&self, food: &mut Food, source: &str) -> Result<(), Wrong> {
        let text = self.text(Column::Keeping);
        if text.is_empty() {
            return Ok(());
        }
        let (low, high) = text.split_once(" to ").unwrap_or((text, text));
        match (low.trim().parse::<f64>(), high.trim().parse::<f64>()) {
            (Ok(low), Ok(high)) if 0.0 < low && low <= high && high <= 3650.0 => {
                food.keeping_days = Some((low, high, source.to_owned()));
                Ok(())
            }
            _ => Err(Wrong::Number("keeps_days", text.to_owned(), "days, like 5 or 3 to 5")),
        }
    }
}

/// What a row begins from.
enum Begun {
    /// The food of its own key or name.
    AsItself,
    /// A food it is like, by name.
    AsAnother(String),
    /// Nothing.
    New,
}

const YES: &str = "yes, no or not known";

fn yes(text: &str) -> Option<Contains> {
    match text.to_lowercase().as_str() {
        "yes" => Some(Contains::Yes),
        "no" => Some(Contains::No),
        "not known" | "not_known" | "?" => Some(Contains::NotKnown),
        _ => None,
    }
}

/// A food whose name fits worse is not worth a mention.
const NEAR: f64 = 0.5;

/// The food that `like` names, by key or by a name that leaves no doubt.
fn like_of<'r>(like: &str, reader: &'r Reader<'_>) -> Result<&'r Food, Wrong> {
    if let Some(food) = reader.by_key(like).or_else(|| reader.by_name(like)) {
        return Ok(food);
    }
    let found = reader.base.find(like, &Hints::default());
    let name = |id| reader.base.get(id).map(|food| food.name.clone());
    match found.best.and_then(|id| reader.base.get(id)) {
        Some(food) if found.sure => Ok(food),
        Some(food) if found.score >= NEAR => {
            let rivals = found.rivals.iter().filter_map(|(id, _)| name(*id));
            let may = std::iter::once(food.name.clone()).chain(rivals).take(3).collect();
            Err(Wrong::LikeUnsure(like.to_owned(), may))
        }
        _ => Err(Wrong::LikeUnknown(like.to_owned())),
    }
}

/// The food that bears a name as one of its other names.
fn borne<'r>(name: &str, reader: &'r Reader<'_>) -> Option<&'r Food> {
    let found = reader.base.find(name, &Hints::default());
    let wanted = fold(name);
    let food = found.best.filter(|_| found.sure).and_then(|id| reader.base.get(id))?;
    food.synonyms.iter().any(|its| fold(its) == wanted).then_some(food)
}

/// A key made of a name, other than any of the larder.
fn key_of(name: &str, reader: &Reader<'_>) -> String {
    let plain: Vec<String> = fold(name)
        .split_whitespace()
        .map(|word| word.chars().filter(char::is_ascii_alphanumeric).collect())
        .collect();
    let key = plain.join("_");
    if key.is_empty() || reader.by_key(&key).is_some() {
        format!("{key}_own")
    } else {
        key
    }
}

/// A food of which nothing is known yet: it may come from an animal.
fn nothing(shop: &str) -> Food {
    Food {
        key: String::new(),
        name: String::new(),
        plural: String::new(),
        synonyms: Vec::new(),
        kind: Kind::Other,
        state: State::Prepared,
        animal: true,
        shop: if shop.is_empty() { "other" } else { shop }.to_owned(),
        composition: Composition::default(),
        source: String::new(),
        weights: Vec::new(),
        refuse: None,
        allergens: Vec::new(),
        allergens_complete: false,
        behaviour: Behaviour::default(),
        preparation: Vec::new(),
        keeping_days: None,
    }
}
