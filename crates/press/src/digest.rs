//! The digest: a book at a glance, a dish a line.

use potwright_larder::Contains;
use potwright_proof::Query;
use potwright_reckon::{Figure, Reckoned};

use crate::words::{allergen, body, clock, title};
use crate::{Column, Page, Part};

/// A dish of the digest.
#[derive(Clone, Copy, Debug)]
pub enum Dish<'a> {
    /// Cooked, with the open queries on it.
    Cooked(&'a Reckoned, &'a [Query]),
    /// Not cooked: its title, and the reason in a word or two.
    Not(&'a str, &'a str),
}

/// The digest of a book. `dishes` in the order of the book.
#[must_use]
pub fn page(book: &str, dishes: &[Dish<'_>]) -> Page {
    let columns = vec![
        Column::left("dish"),
        Column::right("kg"),
        Column::right("portion"),
        Column::right("time"),
        Column::right("hands"),
        Column::right("salt %"),
        Column::right("kcal"),
        Column::right("cost"),
        Column::right("asked"),
    ];
    let rows = dishes.iter().map(figures_row).collect();
    let words = dishes.iter().map(words_row).collect();
    let parts = vec![
        Part::Heading(figures_heading(dishes)),
        Part::Table { columns, rows },
        Part::Heading("Body and allergens".into()),
        Part::Table {
            columns: vec![
                Column::left("dish"),
                Column::left("body"),
                Column::left("to declare (US or EU law)"),
            ],
            rows: words,
        },
        Part::Heading("How to read it".into()),
        Part::Paragraph(
            "Portion, kcal and cost are of one portion; time is from start to table, hands the part of it with hands \
             busy; salt is of the whole dish; asked counts the open author queries. All of it is computed from the \
             page: the spread of each figure and how it is known stand in the dossier of the dish."
                .into(),
        ),
        Part::Paragraph(
            "A computation, not a measurement: a thermometer in the thickest part decides, and local codes and \
             licensed practice prevail."
                .into(),
        ),
    ];
    Page {
        title: book.into(),
        under: under(dishes),
        parts,
    }
}

/// Says once for the whole column what the book calls its currency, where it names one and any dish has a cost.
fn figures_heading(dishes: &[Dish<'_>]) -> String {
    let currency = dishes.iter().find_map(|dish| match dish {
        Dish::Cooked(reckoned, _) => {
            let dossier = &reckoned.dossier;
            (dossier.cost_per_portion.is_some() && !dossier.currency.is_empty()).then_some(&dossier.currency)
        }
        Dish::Not(..) => None,
    });
    currency.map_or("Figures".into(), |currency| format!("Figures, cost in {currency}"))
}

fn under(dishes: &[Dish<'_>]) -> String {
    let mut asked = 0;
    let mut not = 0;
    for dish in dishes {
        match dish {
            Dish::Cooked(_, queries) => asked += queries.len(),
            Dish::Not(..) => not += 1,
        }
    }
    let counted =
        |count: usize, one: &str, several: &str| format!("{count} {}", if count == 1 { one } else { several });
    let mut under = counted(dishes.len(), "dish", "dishes");
    if not > 0 {
        under.push_str(&format!(", {not} of them not cooked"));
    }
    format!("{under} · {} open", counted(asked, "author query", "author queries"))
}

fn figures_row(dish: &Dish<'_>) -> Vec<String> {
    let (reckoned, queries) = match dish {
        Dish::Cooked(reckoned, queries) => (reckoned, queries),
        Dish::Not(name, why) => return vec![format!("{}: {why}", title(name))],
    };
    let dossier = &reckoned.dossier;
    let energy = dossier
        .nutrition
        .first()
        .map_or(String::new(), |row| bare(&row.per_portion));
    vec![
        title(&dossier.title),
        format!("{:.1}", dossier.yield_mass.value),
        dossier.portion_mass.display_value(),
        clock(dossier.elapsed.value),
        clock(dossier.hands_on.value),
        bare(&dossier.salinity),
        energy,
        dossier
            .cost_per_portion
            .as_ref()
            .map_or(String::new(), Figure::display_value),
        queries.len().to_string(),
    ]
}

/// The number without its unit, which stands over the column.
fn bare(figure: &Figure) -> String {
    let text = figure.display_value();
    text.split_whitespace().next().unwrap_or("").to_owned()
}

fn words_row(dish: &Dish<'_>) -> Vec<String> {
    let reckoned = match dish {
        Dish::Cooked(reckoned, _) => reckoned,
        Dish::Not(name, why) => return vec![title(name), "–".into(), format!("not known: {why}")],
    };
    let dossier = &reckoned.dossier;
    let known = dossier.allergens.iter().filter(|row| row.contains == Contains::Yes);
    let declared: Vec<&str> = known
        .filter(|row| row.declare_us || row.declare_eu)
        .map(|row| allergen(row.allergen))
        .collect();
    let mut packets: Vec<&str> = Vec::new();
    for row in dossier
        .allergens
        .iter()
        .filter(|row| row.contains == Contains::NotKnown)
    {
        for cause in &row.causes {
            if !packets.contains(&cause.as_str()) {
                packets.push(cause);
            }
        }
    }
    let mut says = if declared.is_empty() {
        "none found".to_owned()
    } else {
        declared.join(", ")
    };
    if !packets.is_empty() {
        says.push_str(&format!("; not known for {}", packets.join(", ")));
    }
    vec![title(&dossier.title), dossier.body.word.map_or("–", body).into(), says]
}
