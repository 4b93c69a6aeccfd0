//! `potwright digest [FOLDER]`, and `potwright` alone: a book at a glance.

use std::path::Path;

use anyhow::bail;
use potwright_book::{Book, demo};
use potwright_press::{digest, text};

use crate::{input, output};

/// Prints the digest of a book. That a dish could not be cooked is a fault, told when the others have been shown.
pub(crate) fn run(folder: Option<&Path>, kitchen: Option<&Path>) -> anyhow::Result<()> {
    let book = match folder {
        Some(folder) => Book::open(folder)?,
        None => demo::book()?,
    };
    // A line a dish shows no spreads, so none are drawn.
    let house = input::house(book, kitchen)?.with_draws(0);
    let results = house.reckon_all();
    let titles: Vec<String> = (0..results.len()).map(|dish| house.title(dish)).collect();
    let dishes: Vec<digest::Dish<'_>> = results
        .iter()
        .zip(&titles)
        .map(|(result, title)| match result {
            Ok(cooked) => digest::Dish::Cooked(&cooked.reckoned, &cooked.queries),
            Err(error) => digest::Dish::Not(title, error.in_short()),
        })
        .collect();
    let page = digest::page(&house.book().settings.title, &dishes);
    output::print(text::render(&page, output::WIDTH, output::style()).as_bytes())?;
    let mut faults: Vec<String> = Vec::new();
    for error in results.iter().filter_map(|result| result.as_ref().err()) {
        let says = error.to_string();
        if !faults.contains(&says) {
            faults.push(says);
        }
    }
    if faults.is_empty() {
        Ok(())
    } else {
        bail!(faults.join("\n"))
    }
}
