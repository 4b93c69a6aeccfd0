//! From the texts of the tables to a larder.
//!
//! The name table comes first and gives every food its index; all others refer to its keys. What holds for a kind of
//! food (`kinds.tsv`) is laid under each food before the food's own rows.

mod behaviour;
mod kinds;
mod names;
mod sides;
pub(crate) mod weights;

use std::collections::HashMap;

use crate::error::{Fault, TableError};
use crate::imported::Table;
use crate::index::Index;
use crate::larder::Larder;
use crate::table::Row;
use crate::tables::Tables;
use crate::words::Words;
use crate::{Food, FoodId};

/// What holds for kinds of food, for foods that stand in no table of the project.
pub(crate) struct OfKind<'a>(kinds::Kinds<'a>);

impl OfKind<'static> {
    /// From the project's own table.
    pub(crate) fn built_in() -> Result<OfKind<'static>, TableError> {
        kinds::read(Tables::BUILT_IN.kinds).map(OfKind)
    }

    /// Lays behaviour, allergens, keeping and preparation times of its kind and state under a food.
    pub(crate) fn lay(&self, food: &mut Food) {
        behaviour::lay(&self.0, food);
        sides::lay(&self.0, food);
    }
}

/// Reads all tables.
pub(crate) fn larder(tables: &Tables<'_>) -> Result<Larder, TableError> {
    let (mut foods, keys) = names::read(tables.names)?;
    let shelf = Shelf { keys };
    names::compositions(tables, &shelf, &mut foods)?;
    weights::read(tables, &shelf, &mut foods)?;
    let kinds = kinds::read(tables.kinds)?;
    behaviour::read(tables.behaviour, &kinds, &shelf, &mut foods)?;
    sides::read(tables, &kinds, &shelf, &mut foods)?;
    let packs = sides::packs(tables.packs, &shelf, foods.len())?;
    let seasons = sides::seasons(tables.season, &shelf, foods.len())?;
    let index = Index::new(&foods, Words::read(tables.words)?);
    Ok(Larder {
        foods,
        keys: shelf.keys,
        packs,
        seasons,
        index,
        table: Table::default(),
    })
}

/// The keys and their places.
struct Shelf {
    keys: HashMap<String, FoodId>,
}

impl Shelf {
    /// The place of the key in the row's first cell.
    fn place<const N: usize>(&self, row: &Row<'_, N>) -> Result<usize, TableError> {
        let key = row.filled(0)?;
        match self.keys.get(key) {
            Some(id) => Ok(id.0 as usize),
            None => Err(row.fault(Fault::UnknownKey(key.to_owned()))),
        }
    }

    /// The food of the key in the row's first cell.
    fn food<'f, const N: usize>(&self, row: &Row<'_, N>, foods: &'f mut [Food]) -> Result<&'f mut Food, TableError> {
        let place = self.place(row)?;
        foods
            .get_mut(place)
            .ok_or_else(|| row.fault(Fault::UnknownKey(row.text(0).to_owned())))
    }
}
