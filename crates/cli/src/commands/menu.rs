//! `potwright menu`: the menus of a book, their dishes cooked.

use std::path::Path;
use std::sync::Arc;

use anyhow::bail;
use potwright_book::menu::Menu;
use potwright_book::{Book, demo};
use potwright_house::{Cooked, House};
use potwright_press::{menu, text};

use crate::{input, output};

/// Prints the menus of a book, or those whose title holds the words.
pub(crate) fn run(title: Option<&str>, folder: Option<&Path>) -> anyhow::Result<()> {
    let book = match folder {
        Some(folder) => Book::open(folder)?,
        None => demo::book()?,
    };
    let house = input::house(book, None)?;
    let wanted = title.unwrap_or("").to_lowercase();
    let menus: Vec<&Menu> = house
        .book()
        .menus
        .iter()
        .filter(|menu| menu.title.to_lowercase().contains(&wanted))
        .collect();
    if menus.is_empty() {
        let known: Vec<&str> = house.book().menus.iter().map(|menu| menu.title.as_str()).collect();
        match known.as_slice() {
            [] => bail!("the book has no menus; a menu is a typed page in its folder menus"),
            known => bail!(
                "no menu is called '{}'; there are: {}",
                title.unwrap_or(""),
                known.join(", ")
            ),
        }
    }
    let mut out = String::new();
    for menu in menus {
        if !out.is_empty() {
            out.push_str("\n\n");
        }
        out.push_str(&text::render(&page(&house, menu)?, output::WIDTH, output::style()));
    }
    output::print(out.as_bytes())
}

fn page(house: &House, menu: &Menu) -> anyhow::Result<potwright_press::Page> {
    let mut courses: Vec<(String, Option<Arc<Cooked>>)> = Vec::new();
    for dish in &menu.dishes {
        let cooked = match house.find(&dish.name) {
            Ok(found) => Some(house.reckon(found)?),
            Err(_) => None,
        };
        let name = match &dish.note {
            Some(note) => format!("{} ({note})", dish.name),
            None => dish.name.clone(),
        };
        courses.push((name, cooked));
    }
    let courses: Vec<menu::Course<'_>> = courses
        .iter()
        .map(|(name, cooked)| menu::Course {
            name,
            cooked: cooked.as_deref().map(|cooked| &cooked.reckoned),
        })
        .collect();
    Ok(menu::page(&menu.title, menu.day.as_deref(), menu.people, &courses))
}
