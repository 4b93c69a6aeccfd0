//! The name table and the composition tables.

use std::collections::HashMap;

use super::Shelf;
use crate::error::{Fault, TableError};
use crate::official::{FIGURES, Figures};
use crate::table::{Row, read as rows};
use crate::tables::{COMPOSITION, NAMES, Tables};
use crate::{Behaviour, Composition, Food, FoodId};

/// Reads `names.tsv`: foods with nothing but their names, and the index of their keys.
pub(super) fn read(text: &str) -> Result<(Vec<Food>, HashMap<String, FoodId>), TableError> {
    let rows = rows("names.tsv", text, &NAMES)?;
    let mut foods = Vec::with_capacity(rows.len());
    let mut keys = HashMap::with_capacity(rows.len());
    for row in &rows {
        let food = named(row)?;
        let id = FoodId(foods.len() as u32);
        if keys.insert(food.key.clone(), id).is_some() {
            return Err(row.fault(Fault::KeyTwice(food.key)));
        }
        foods.push(food);
    }
    Ok((foods, keys))
}

fn named(row: &Row<'_, 11>) -> Result<Food, TableError> {
    row.filled(4)?;
    let synonyms = row.text(3).split(';').map(str::trim).filter(|name| !name.is_empty());
    Ok(Food {
        key: row.filled(0)?.to_owned(),
        name: row.filled(1)?.to_owned(),
        plural: row.filled(2)?.to_owned(),
        synonyms: synonyms.map(str::to_owned).collect(),
        kind: row.word(5)?,
        state: row.word(6)?,
        animal: row.yes(7)?,
        shop: row.filled(8)?.to_owned(),
        composition: Composition::default(),
        source: String::new(),
        weights: Vec::new(),
        refuse: None,
        allergens: Vec::new(),
        allergens_complete: false,
        behaviour: Behaviour::default(),
        preparation: Vec::new(),
        keeping_days: None,
    })
}

/// Reads `composition.tsv` and `composition_own.tsv`; every food must come out with one.
pub(super) fn compositions(tables: &Tables<'_>, shelf: &Shelf, foods: &mut [Food]) -> Result<(), TableError> {
    for (file, text) in [
        ("composition.tsv", tables.composition),
        ("composition_own.tsv", tables.composition_own),
    ] {
        for row in rows(file, text, &COMPOSITION)? {
            let food = shelf.food(&row, foods)?;
            if !food.source.is_empty() {
                return Err(row.fault(Fault::KeyTwice(food.key.clone())));
            }
            food.composition = composition(&row)?;
            food.source = row.text(23).to_owned();
        }
    }
    match foods.iter().find(|food| food.source.is_empty()) {
        None => Ok(()),
        Some(food) => Err(TableError {
            file: "composition.tsv".to_owned(),
            line: 1,
            fault: Fault::UnknownKey(food.key.clone()),
        }),
    }
}

fn composition(row: &Row<'_, 24>) -> Result<Composition, TableError> {
    let mut figures: Figures = [None; FIGURES];
    for (figure, column) in figures.iter_mut().zip(1..) {
        *figure = row.number(column)?;
    }
    Ok(Composition::from_figures(&figures))
}
