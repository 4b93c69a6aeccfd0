//! `kinds.tsv`: what holds for a kind of food, in whatever state or in one, unless a food's own row says otherwise.

use std::collections::BTreeMap;

use potwright_measure::Spread;

use super::behaviour::Entry;
use crate::error::{Fault, TableError};
use crate::table::{Row, read as rows};
use crate::tables::KINDS;
use crate::{Allergen, Contains, Kind, State};

/// The rows of `kinds.tsv`, those for any state before those for one.
pub(super) struct Kinds<'a> {
    rows: BTreeMap<Kind, Vec<(Option<State>, What<'a>)>>,
}

/// What a row of `kinds.tsv` lays under a food.
pub(super) enum What<'a> {
    /// A property of behaviour.
    Behaviour(Entry<'a>),
    /// An allergen and what is known of it.
    Allergen(Allergen, Contains),
    /// Whether what is not listed is free of it.
    AllergensComplete(bool),
    /// Days in the refrigerator, low and high; source.
    Keeping(Spread, &'a str),
    /// A work and its minutes for a kilogram.
    Preparation(&'a str, f64),
}

/// Reads the table.
pub(super) fn read(text: &str) -> Result<Kinds<'_>, TableError> {
    let rows = rows("kinds.tsv", text, &KINDS)?;
    let mut kinds = Kinds { rows: BTreeMap::new() };
    for row in &rows {
        let state: Option<State> = if row.text(1).is_empty() {
            None
        } else {
            Some(row.word(1)?)
        };
        kinds.rows.entry(row.word(0)?).or_default().push((state, what(row)?));
    }
    for rows in kinds.rows.values_mut() {
        rows.sort_by_key(|(state, _)| state.is_some());
    }
    Ok(kinds)
}

fn what<'a>(row: &Row<'a, 9>) -> Result<What<'a>, TableError> {
    let property = row.filled(3)?;
    Ok(match row.filled(2)? {
        "behaviour" => What::Behaviour(Entry::new(row, 3)?),
        "allergen" if property == "complete" => What::AllergensComplete(row.yes(7)?),
        "allergen" => What::Allergen(row.word(3)?, row.word(7)?),
        "keeping" => What::Keeping(
            Spread {
                low: row.needed(4)?,
                mid: row.needed(4)?,
                high: row.needed(6)?,
            },
            row.text(8),
        ),
        "preparation" => What::Preparation(property, row.needed(5)?),
        other => return Err(row.fault(Fault::UnknownWord("table", other.to_owned()))),
    })
}

impl<'a> Kinds<'a> {
    /// What holds for foods of this kind in this state; the more particular last.
    pub(super) fn of(&self, kind: Kind, state: State) -> impl Iterator<Item = &What<'a>> {
        let rows = self.rows.get(&kind).map_or(&[][..], Vec::as_slice);
        rows.iter()
            .filter(move |(its, _)| its.is_none_or(|its| its == state))
            .map(|(_, what)| what)
    }
}
