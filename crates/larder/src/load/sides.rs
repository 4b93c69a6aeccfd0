//! The small tables beside composition and behaviour: allergens, preparation, keeping, packs, seasons.

use potwright_measure::Mass;

use super::Shelf;
use super::kinds::{Kinds, What};
use crate::error::{Fault, TableError};
use crate::packs::{Pack, Season};
use crate::table::{Row, read as rows};
use crate::tables::{ALLERGENS, KEEPING, PACKS, PREPARATION, SEASON, Tables};
use crate::{Allergen, Contains, Food};

/// Lays the kinds under every food, then reads the food's own rows.
pub(super) fn read(
    tables: &Tables<'_>,
    kinds: &Kinds<'_>,
    shelf: &Shelf,
    foods: &mut [Food],
) -> Result<(), TableError> {
    for food in foods.iter_mut() {
        lay(kinds, food);
    }
    for row in rows("allergens.tsv", tables.allergens, &ALLERGENS)? {
        let food = shelf.food(&row, foods)?;
        if row.filled(1)? == "complete" {
            food.allergens_complete = row.yes(2)?;
        } else {
            put(food, row.word(1)?, row.word(2)?);
        }
    }
    for row in rows("preparation.tsv", tables.preparation, &PREPARATION)? {
        let minutes = row.needed(2)?;
        prepare(shelf.food(&row, foods)?, row.filled(1)?, minutes);
    }
    for row in rows("keeping.tsv", tables.keeping, &KEEPING)? {
        let (low, high) = (row.needed(1)?, row.needed(2)?);
        if low > high {
            return Err(row.fault(Fault::Order));
        }
        shelf.food(&row, foods)?.keeping_days = Some((low, high, row.text(3).to_owned()));
    }
    Ok(())
}

/// Lays what holds for its kind and state under a food.
pub(super) fn lay(kinds: &Kinds<'_>, food: &mut Food) {
    for what in kinds.of(food.kind, food.state) {
        match what {
            What::Behaviour(_) => {}
            What::Allergen(allergen, contains) => put(food, *allergen, *contains),
            What::AllergensComplete(complete) => food.allergens_complete = *complete,
            What::Keeping(days, source) => {
                food.keeping_days = Some((days.low, days.high, (*source).to_owned()));
            }
            What::Preparation(work, minutes) => prepare(food, work, *minutes),
        }
    }
}

fn put(food: &mut Food, allergen: Allergen, contains: Contains) {
    match food.allergens.iter_mut().find(|(which, _)| *which == allergen) {
        Some((_, what)) => *what = contains,
        None => food.allergens.push((allergen, contains)),
    }
}

fn prepare(food: &mut Food, work: &str, minutes: f64) {
    match food.preparation.iter_mut().find(|(which, _)| which == work) {
        Some((_, what)) => *what = minutes,
        None => food.preparation.push((work.to_owned(), minutes)),
    }
}

/// Reads `packs.tsv`; smallest pack first.
pub(super) fn packs(text: &str, shelf: &Shelf, foods: usize) -> Result<Vec<Vec<Pack>>, TableError> {
    let mut packs = vec![Vec::new(); foods];
    for row in rows("packs.tsv", text, &PACKS)? {
        let pack = Pack {
            market: row.word(1)?,
            pack: row.filled(2)?.to_owned(),
            mass: Mass::from_grams(row.needed(3)?),
            source: row.text(4).to_owned(),
        };
        if let Some(place) = packs.get_mut(shelf.place(&row)?) {
            place.push(pack);
        }
    }
    for place in &mut packs {
        place.sort_by(|a, b| a.mass.grams().total_cmp(&b.mass.grams()));
    }
    Ok(packs)
}

/// Reads `season.tsv`.
pub(super) fn seasons(text: &str, shelf: &Shelf, foods: usize) -> Result<Vec<Vec<Season>>, TableError> {
    let mut seasons = vec![Vec::new(); foods];
    for row in rows("season.tsv", text, &SEASON)? {
        let season = Season {
            market: row.word(1)?,
            from: month(&row, 2)?,
            to: month(&row, 3)?,
            source: row.text(4).to_owned(),
        };
        if let Some(place) = seasons.get_mut(shelf.place(&row)?) {
            place.push(season);
        }
    }
    Ok(seasons)
}

fn month(row: &Row<'_, 5>, column: usize) -> Result<u8, TableError> {
    let text = row.filled(column)?;
    match text.parse::<u8>() {
        Ok(month) if (1..=12).contains(&month) => Ok(month),
        _ => Err(row.fault(Fault::Number("from, to", text.to_owned(), "from 1 to 12"))),
    }
}
