//! `potwright digest [FOLDER]`, and `potwright` alone: a book at a glance.

use std::path::Path;

use potwright_book::{Book, demo};
use potwright_press::{digest, text};
use potwright_proof::Query;
use potwright_reckon::Reckoned;

use crate::{input, output};

/// Prints the digest of a book.
pub(crate) fn run(folder: Option<&Path>, kitchen: Option<&Path>) -> anyhow::Result<()> {
    let book = match folder {
        Some(folder) => Book::open(folder)?,
        None => demo::book()?,
    };
    // A line a dish shows no spreads, so none are drawn.
    let house = input::house(book, kitchen)?.with_draws(0);
    let results = house.reckon_all();
    let dishes: Vec<(&Reckoned, &[Query])> = results
        .iter()
        .flatten()
        .map(|cooked| (&cooked.reckoned, cooked.queries.as_slice()))
        .collect();
    let page = digest::page(&house.book().settings.title, &dishes);
    output::print(text::render(&page, output::WIDTH, output::style()).as_bytes())?;
    let mut said = Vec::new();
    for error in results.iter().filter_map(|result| result.as_ref().err()) {
        if !said.contains(&error) {
            output::say("note", &error.to_string());
            said.push(error);
        }
    }
    Ok(())
}
