//! A menu: its dishes side by side, and what the table eats and pays.

use potwright_larder::Contains;
use potwright_reckon::{Figure, Reckoned};

use crate::words::{allergen, clock, title};
use crate::{Column, Page, Part};

/// A dish of a menu.
#[derive(Clone, Copy, Debug)]
pub struct Course<'a> {
    /// What the menu calls it.
    pub name: &'a str,
    /// The dish, cooked; none when the book has no dish of this name.
    pub cooked: Option<&'a Reckoned>,
}

/// The page of a menu for a number of people.
#[must_use]
pub fn page(name: &str, day: Option<&str>, people: u32, courses: &[Course<'_>]) -> Page {
    let columns = vec![
        Column::left("dish"),
        Column::right("portions"),
        Column::right("batches"),
        Column::right("portion"),
        Column::right("kcal"),
        Column::right("time"),
        Column::right("hands"),
    ];
    let rows = courses.iter().map(|course| row(course, people)).collect();
    let declared = courses
        .iter()
        .map(|course| vec![title(course.name), declares(course)])
        .collect();
    let mut parts = vec![
        Part::Heading("Dishes".into()),
        Part::Table { columns, rows },
        Part::Heading("To declare (US or EU law)".into()),
        Part::Table {
            columns: vec![Column::left(""), Column::left("")],
            rows: declared,
        },
    ];
    parts.push(Part::Paragraph(
        "Batches are the number of people by the portions a page makes; a bigger batch is not solved for here. Time is \
         of one batch, hours and minutes, each dish on its own."
            .into(),
    ));
    let missing: Vec<&str> = courses
        .iter()
        .filter(|course| course.cooked.is_none())
        .map(|course| course.name)
        .collect();
    if !missing.is_empty() {
        parts.push(Part::Paragraph(format!(
            "The book has no dish called {}.",
            missing.join(" or ")
        )));
    }
    let under = match day {
        Some(day) => format!("{day} · for {people}"),
        None => format!("For {people}"),
    };
    Page {
        title: title(name),
        under,
        parts,
    }
}

fn row(course: &Course<'_>, people: u32) -> Vec<String> {
    let Some(reckoned) = course.cooked else {
        return vec![title(course.name), "not in the book".into()];
    };
    let dossier = &reckoned.dossier;
    let batches = f64::from(people) / dossier.portions.max(1e-9);
    let energy = dossier
        .nutrition
        .first()
        .map_or(String::new(), |row| row.per_portion.display_value());
    vec![
        title(course.name),
        format!("{:.0}", dossier.portions),
        format!("{batches:.1}"),
        Figure::display_value(&dossier.portion_mass),
        energy,
        clock(dossier.elapsed.value),
        clock(dossier.hands_on.value),
    ]
}

fn declares(course: &Course<'_>) -> String {
    let Some(reckoned) = course.cooked else {
        return "not known".into();
    };
    let rows = &reckoned.dossier.allergens;
    let declared = rows
        .iter()
        .filter(|row| row.contains == Contains::Yes && (row.declare_us || row.declare_eu));
    let mut words: Vec<String> = declared.map(|row| allergen(row.allergen).to_owned()).collect();
    let unknown = rows.iter().filter(|row| row.contains == Contains::NotKnown).count();
    if unknown > 0 {
        words.push(format!("{unknown} more not known: read the packets"));
    }
    if words.is_empty() {
        "none found".into()
    } else {
        words.join(", ")
    }
}
