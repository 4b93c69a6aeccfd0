//! The variations of a dish, beside the dish as written.

use potwright_larder::Allergen;
use potwright_reckon::{Body, Dossier, Figure, VariationRow, words_thicker};

use crate::words::{allergen, body};
use crate::{Column, Part};

/// A table with a row for each variation, and what each changes.
pub(crate) fn variations(parts: &mut Vec<Part>, dossier: &Dossier) {
    if dossier.variations.is_empty() {
        return;
    }
    parts.push(Part::Heading("Variations".into()));
    let columns = vec![
        Column::left(""),
        Column::right("yield"),
        Column::right("a portion"),
        Column::right("energy"),
        Column::right("salt"),
        Column::left("body"),
        Column::right("cost"),
    ];
    let energy = dossier.nutrition.iter().find(|row| row.name == "Energy");
    let mut rows = vec![row(
        "as written",
        [
            Some(&dossier.yield_mass),
            Some(&dossier.portion_mass),
            energy.map(|row| &row.per_portion),
            Some(&dossier.salinity),
        ],
        &dossier.body,
        dossier.cost_per_portion.as_ref(),
    )];
    rows.extend(dossier.variations.iter().map(|one| {
        row(
            &one.name,
            [
                Some(&one.yield_mass),
                Some(&one.portion_mass),
                Some(&one.energy),
                Some(&one.salinity),
            ],
            &one.body,
            one.cost_per_portion.as_ref(),
        )
    }));
    parts.push(Part::Table { columns, rows });
    parts.push(Part::List(
        dossier.variations.iter().map(|one| says(one, &dossier.body)).collect(),
    ));
}

fn row(name: &str, figures: [Option<&Figure>; 4], of: &Body, cost: Option<&Figure>) -> Vec<String> {
    let shown = |figure: Option<&Figure>| figure.map_or(String::new(), Figure::display_value);
    let mut cells = vec![name.to_owned()];
    cells.extend(figures.into_iter().map(shown));
    cells.push(of.word.map_or("no liquid", body).into());
    cells.push(shown(cost));
    cells
}

/// How much thicker or thinner a variation is, in half words; nothing where that is less than the rule can tell.
fn thicker(one: &Body, as_written: &Body) -> String {
    let Some((_, words, _)) = words_thicker(one, as_written) else {
        return String::new();
    };
    let way = if words > 0.0 { "thicker" } else { "thinner" };
    let by = match (2.0 * words.abs()).round() {
        less if less < 1.0 => return String::new(),
        half if half < 2.0 => "half a word".to_owned(),
        whole if whole < 3.0 => "a word".to_owned(),
        more => format!("{:.0} words", (0.5 * more).round()),
    };
    format!(" Its body is {by} {way}, give or take half a word.")
}

/// What is changed, and what that does to the allergens. Free of something is only said where it is known.
fn says(one: &VariationRow, as_written: &Body) -> String {
    let names = |list: &[Allergen]| -> String {
        let names: Vec<&str> = list.iter().map(|which| allergen(*which)).collect();
        names.join(", ")
    };
    let mut says = format!("{}: {}.", one.name, one.changes.join(", "));
    says.push_str(&thicker(&one.body, as_written));
    if !one.allergens_gained.is_empty() {
        says.push_str(&format!(" It brings {}.", names(&one.allergens_gained)));
    }
    if !one.allergens_lost.is_empty() {
        says.push_str(&format!(" No {} in this variation.", names(&one.allergens_lost)));
    }
    if !one.allergens_open.is_empty() {
        says.push_str(&format!(
            " Whether it is free of {} is not known: read the packets.",
            names(&one.allergens_open)
        ));
    }
    if one.animal == Some(false) {
        says.push_str(" No animal products.");
    }
    for note in &one.open {
        says.push(' ');
        says.push_str(&note.text);
    }
    says
}
