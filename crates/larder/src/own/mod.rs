//! Foods of a book's own: the text of its `larder.tsv`, and of a table that was imported into it.
//!
//! In: the text and the larder it adds to. Out: whole [`Food`]s for [`Larder::with`], or every fault with its line, in
//! words for the writer. Columns are found by their names and may be any of those in [`columns`]; the layout is told in
//! `docs/larder-tsv.md`.

pub mod columns;
mod error;
mod figures;
mod row;
mod weights;

use std::collections::HashMap;

use crate::load::OfKind;
use crate::words::fold;
use crate::{Food, Larder};

pub use error::{Misread, Wrong};

use columns::{COLUMNS, Column};
use row::Row;

/// What is asked of a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Asked {
    /// A writer's own food: it must be like another or say what it is made of.
    OfAWriter,
    /// A row of an imported table: what the table does not determine stays open.
    OfATable,
}

/// Reads the foods of a `larder.tsv`. `file` names it in the sources of foods that give none.
///
/// # Errors
///
/// Every fault, with its line.
pub fn read(file: &str, text: &str, base: &Larder, asked: Asked) -> Result<Vec<Food>, Vec<Misread>> {
    let mut lines = text
        .lines()
        .zip(1..)
        .filter(|(line, _)| !line.starts_with('#') && !line.trim().is_empty());
    let Some((heading, at)) = lines.next() else {
        return Ok(Vec::new());
    };
    let columns = heading_of(heading).map_err(|faults| {
        let misread = |wrong| Misread { line: at, wrong };
        faults.into_iter().map(misread).collect::<Vec<_>>()
    })?;
    let mut reader = Reader {
        file,
        base,
        asked,
        of_kind: OfKind::built_in().ok(),
        foods: Vec::new(),
        lines: HashMap::new(),
    };
    let mut faults = Vec::new();
    for (line, at) in lines {
        if let Err(wrong) = reader.line(&columns, line, at) {
            faults.push(Misread { line: at, wrong });
        }
    }
    if faults.is_empty() {
        Ok(reader.foods)
    } else {
        Err(faults)
    }
}

/// What has been read so far, and what rows may refer to.
struct Reader<'a> {
    file: &'a str,
    base: &'a Larder,
    asked: Asked,
    of_kind: Option<OfKind<'static>>,
    foods: Vec<Food>,
    /// Key, and folded name, to the line where it stands.
    lines: HashMap<String, usize>,
}

impl Reader<'_> {
    fn line(&mut self, columns: &[Option<Column>], line: &str, at: usize) -> Result<(), Wrong> {
        let row = Row::read(columns, line)?;
        let source = format!("{}, line {at}", self.file);
        let food = row.food(self, source)?;
        for name in [food.key.clone(), format!("name {}", fold(&food.name))] {
            match self.lines.get(&name) {
                // Two rows of an official table may bear one description; their keys tell them apart.
                Some(first) if self.asked == Asked::OfAWriter || name == food.key => {
                    return Err(Wrong::Twice(food.name, *first));
                }
                Some(_) => {}
                None => _ = self.lines.insert(name, at),
            }
        }
        self.foods.push(food);
        Ok(())
    }

    /// A food by key: one of this file before one of the larder.
    fn by_key(&self, key: &str) -> Option<&Food> {
        let own = || self.foods.iter().find(|food| food.key == key);
        let seen = self.lines.contains_key(key);
        if seen { own() } else { self.base.by_key(key) }
    }

    /// A food by its very name, singular or plural.
    fn by_name(&self, name: &str) -> Option<&Food> {
        let name = fold(name);
        let bears = |food: &&Food| fold(&food.name) == name || fold(&food.plural) == name;
        let known = || self.base.foods().map(|(_, food)| food).find(|food| bears(food));
        self.foods.iter().find(bears).or_else(known)
    }
}

/// The columns of a heading, in order; none for one whose content is the writer's own affair.
fn heading_of(heading: &str) -> Result<Vec<Option<Column>>, Vec<Wrong>> {
    let (mut columns, mut faults) = (Vec::new(), Vec::new());
    for word in heading.split('\t').map(str::trim) {
        match COLUMNS.iter().find(|known| known.name.eq_ignore_ascii_case(word)) {
            Some(known) if columns.contains(&Some(known.column)) && known.column != Column::Notes => {
                faults.push(Wrong::ColumnTwice(known.name));
            }
            Some(known) => columns.push(Some(known.column)),
            None if word.is_empty() => columns.push(None),
            None => faults.push(Wrong::UnknownColumn(word.to_owned(), columns::nearest(word))),
        }
    }
    if !columns
        .iter()
        .any(|column| matches!(column, Some(Column::Key | Column::Name)))
        && faults.is_empty()
    {
        faults.push(Wrong::NoNameColumn);
    }
    if faults.is_empty() { Ok(columns) } else { Err(faults) }
}
