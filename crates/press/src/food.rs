//! What a name is taken for: the page of a food of the larder.

use potwright_larder::{Allergen, Contains, Food, FoodId, Hazard, Larder, Match, State, Weight};
use potwright_measure::Unit;

use crate::words::allergen;
use crate::{Column, Page, Part};

/// How many foods of an imported table are offered.
const OFFERED: usize = 6;

/// The page of what a name is taken for, `found` by this larder.
#[must_use]
pub fn page(larder: &Larder, name: &str, found: &Match) -> Page {
    let best = found.best.and_then(|id| larder.get(id));
    let Some(food) = best else {
        let mut parts = vec![Part::Paragraph(
            "No food of the larder bears this name or one like it. A food of your own goes into the book's larder.tsv \
             (docs/larder-tsv.md)."
                .into(),
        )];
        parts.extend(of_the_table(larder, name, &[]));
        return Page {
            title: name.into(),
            under: "not in the larder".into(),
            parts,
        };
    };
    let under = if found.sure {
        format!("‘{name}’ is taken for this without asking")
    } else {
        format!("‘{name}’ may be this; on a page it becomes a query")
    };
    let mut parts = likenesses(larder, found);
    parts.extend(of_the_table(larder, name, &found.best.into_iter().collect::<Vec<_>>()));
    parts.push(Part::Heading("What it is".into()));
    parts.push(Part::Paragraph(character(food)));
    parts.extend(composition(food));
    parts.extend(weights(food));
    parts.push(Part::Heading("Allergens (US or EU law)".into()));
    parts.push(Part::Paragraph(allergens(food)));
    Page {
        title: food.name.clone(),
        under,
        parts,
    }
}

/// The foods it may be, with their scores.
fn likenesses(larder: &Larder, found: &Match) -> Vec<Part> {
    let best = found.best.map(|id| (id, found.score));
    let row = |(id, score): (FoodId, f64)| {
        let food = larder.get(id)?;
        Some(vec![format!("{score:.2}"), food.name.clone(), food.key.clone()])
    };
    let rows: Vec<Vec<String>> = best
        .into_iter()
        .chain(found.rivals.iter().copied())
        .filter_map(row)
        .collect();
    vec![
        Part::Heading("How well it fits".into()),
        Part::Table {
            columns: vec![Column::right("score"), Column::left("food"), Column::quiet("key")],
            rows,
        },
        Part::Paragraph(
            "1 is a name that one food bears alone; foods that bear it stand before those that only come near.".into(),
        ),
    ]
}

/// Foods of an imported table that hold the name's words.
fn of_the_table(larder: &Larder, name: &str, but: &[FoodId]) -> Vec<Part> {
    let found: Vec<FoodId> = larder
        .in_the_table(name)
        .into_iter()
        .filter(|id| !but.contains(id))
        .collect();
    if found.is_empty() {
        return Vec::new();
    }
    let row = |id: &FoodId| larder.get(*id).map(|food| vec![food.name.clone(), food.key.clone()]);
    let rows = found.iter().take(OFFERED).filter_map(row).collect();
    let more = found.len().saturating_sub(OFFERED);
    let mut parts = vec![
        Part::Heading("In the imported table".into()),
        Part::Table {
            columns: vec![Column::left("whole name"), Column::quiet("key")],
            rows,
        },
    ];
    let tail = if more > 0 {
        format!("{more} more hold these words. ")
    } else {
        String::new()
    };
    parts.push(Part::Paragraph(format!(
        "{tail}Such a food is named on a page by its key or its whole name."
    )));
    parts
}

/// Kind, state, shop, what must be made safe, source, in sentences.
fn character(food: &Food) -> String {
    let state = match food.state {
        State::Raw => "raw",
        State::Cooked => "cooked",
        State::Dried => "dried",
        State::Canned => "canned",
        State::Frozen => "frozen",
        State::Smoked => "smoked",
        State::Prepared => "as sold",
    };
    let kind = format!("{:?}", food.kind);
    let mut says = format!("{}, {state}; {}.", spaced(&kind), food.shop);
    let other: Vec<&str> = food
        .synonyms
        .iter()
        .map(|name| bare(name))
        .filter(|name| !name.is_empty())
        .collect();
    if !other.is_empty() {
        says.push_str(&format!(" Also called {}.", other.join(", ")));
    }
    let animal = if food.animal {
        " From an animal, or not known to be free of one."
    } else {
        " Nothing of an animal."
    };
    says.push_str(animal);
    if let Some(hazard) = food.behaviour.hazard {
        says.push_str(&format!(" Must be made safe as {}.", spaced(hazard_word(hazard))));
    }
    if let Some(share) = food.refuse {
        says.push_str(&format!(" {:.0} % of it as bought is thrown away.", share * 100.0));
    }
    says.push_str(&format!(" Figures: {}.", food.source));
    says
}

const fn hazard_word(hazard: Hazard) -> &'static str {
    match hazard {
        Hazard::Poultry => "poultry",
        Hazard::MincedMeat => "minced meat",
        Hazard::WholeMeat => "whole meat",
        Hazard::Fish => "fish",
        Hazard::Crustacean => "crustaceans",
        Hazard::Bivalve => "live bivalves",
        Hazard::Egg => "eggs",
        Hazard::KidneyBean => "kidney beans",
        Hazard::ReadyToEat => "food that is ready to eat",
    }
}

/// 'DriedFruit' as 'dried fruit'.
fn spaced(word: &str) -> String {
    let mut out = String::new();
    for letter in word.chars() {
        if letter.is_ascii_uppercase() && !out.is_empty() {
            out.push(' ');
        }
        out.extend(letter.to_lowercase());
    }
    out
}

/// A name without the marks of the name table.
fn bare(name: &str) -> &str {
    let name = name.split_once(':').map_or(name, |(_, name)| name);
    name.trim_start_matches(['?', '='])
}

/// The composition of 100 g in two columns of figures.
fn composition(food: &Food) -> Vec<Part> {
    let c = &food.composition;
    let lines = [
        ("energy", c.energy_kcal, "kcal"),
        ("water", c.water_g, "g"),
        ("protein", c.protein_g, "g"),
        ("fat", c.fat_g, "g"),
        ("  saturated", c.saturated_g, "g"),
        ("carbohydrate", c.carbohydrate_g, "g"),
        ("  fibre", c.fibre_g, "g"),
        ("  sugars", c.sugars_g, "g"),
        ("  starch", c.starch_g, "g"),
        ("ash", c.ash_g, "g"),
        ("alcohol", c.alcohol_g, "g"),
        ("acid, as citric", food.behaviour.acid_g, "g"),
        ("sodium", c.sodium_mg, "mg"),
        ("potassium", c.potassium_mg, "mg"),
        ("calcium", c.calcium_mg, "mg"),
        ("iron", c.iron_mg, "mg"),
        ("cholesterol", c.cholesterol_mg, "mg"),
        ("vitamin A", c.vitamin_a_ug, "µg"),
        ("vitamin C", c.vitamin_c_mg, "mg"),
        ("vitamin D", c.vitamin_d_ug, "µg"),
    ];
    let known: Vec<[String; 2]> = lines
        .iter()
        .filter_map(|(what, value, unit)| value.map(|value| [(*what).to_owned(), format!("{} {unit}", figure(value))]))
        .collect();
    let half = known.len().div_ceil(2);
    let row = |at: usize| -> Vec<String> {
        let cells = |at: usize| known.get(at).cloned().unwrap_or_default();
        let ([left, its], [right, other]) = (cells(at), cells(at + half));
        vec![left, its, String::new(), right, other]
    };
    let unknown: Vec<&str> = lines
        .iter()
        .filter(|(_, value, _)| value.is_none())
        .map(|(what, ..)| what.trim())
        .collect();
    let mut parts = vec![
        Part::Heading("In 100 g, edible part".into()),
        Part::Table {
            columns: vec![
                Column::left(""),
                Column::right(""),
                Column::left(""),
                Column::left(""),
                Column::right(""),
            ],
            rows: (0..half).map(row).collect(),
        },
    ];
    if !unknown.is_empty() {
        parts.push(Part::Paragraph(format!("Not determined: {}.", unknown.join(", "))));
    }
    parts
}

/// Three digits at most that a cook can use.
fn figure(value: f64) -> String {
    let text = match value {
        value if value >= 100.0 => format!("{value:.0}"),
        value if value >= 10.0 => format!("{value:.1}"),
        value => format!("{value:.2}"),
    };
    match text.split_once('.') {
        Some(_) => text.trim_end_matches('0').trim_end_matches('.').to_owned(),
        None => text,
    }
}

/// The weights on record, the ends of a spread beside the row they belong to.
fn weights(food: &Food) -> Vec<Part> {
    let end = |weight: &Weight| ["least", "most"].iter().any(|end| weight.cut.ends_with(end));
    let rows: Vec<Vec<String>> = food
        .weights
        .iter()
        .filter(|weight| !end(weight))
        .map(|weight| row(food, weight))
        .collect();
    if rows.is_empty() {
        return vec![
            Part::Heading("Weights".into()),
            Part::Paragraph("Nothing on record says what a cup or a piece of it weighs.".into()),
        ];
    }
    let mut columns = vec![
        Column::left("measure"),
        Column::right("g"),
        Column::right("spread"),
        Column::quiet("source"),
    ];
    let mut rows = rows;
    if rows.iter().all(|row| row.get(SPREAD).is_none_or(String::is_empty)) {
        columns.remove(SPREAD);
        for row in rows.iter_mut().filter(|row| row.len() > SPREAD) {
            row.remove(SPREAD);
        }
    }
    vec![Part::Heading("Weights".into()), Part::Table { columns, rows }]
}

/// The column of spreads, left out when no weight has one.
const SPREAD: usize = 2;

fn row(food: &Food, weight: &Weight) -> Vec<String> {
    let end = |word: &str| {
        let cut = format!("{} {word}", weight.cut);
        let its = food
            .weights
            .iter()
            .find(|other| other.unit == weight.unit && other.cut == cut.trim() && other.source == weight.source);
        its.map_or(weight.mass, |other| other.mass).grams()
    };
    let (low, high) = (end("least"), end("most"));
    let spread = if low < high {
        format!("{} to {}", figure(low), figure(high))
    } else {
        String::new()
    };
    let unit = weight.unit.map_or("piece", Unit::name);
    let measure = if weight.cut.is_empty() {
        unit.to_owned()
    } else {
        format!("{unit}, {}", weight.cut)
    };
    vec![measure, figure(weight.mass.grams()), spread, weight.source.clone()]
}

fn allergens(food: &Food) -> String {
    let of = |what: Contains| -> Vec<&str> {
        let its = Allergen::ALL.iter().filter(|which| food.contains(**which) == what);
        its.map(|which| allergen(*which)).collect()
    };
    let (yes, open) = (of(Contains::Yes), of(Contains::NotKnown));
    let rest = yes.len() + open.len() == Allergen::ALL.len() && open.len() > 3;
    let contains = format!("Contains {}.", yes.join(", "));
    match (yes.is_empty(), open.is_empty()) {
        (true, true) => "Contains none of them.".into(),
        (true, false) if rest => "Whether it contains any of them is not known.".into(),
        (true, false) => format!(
            "Whether it contains {} is not known; none of the others.",
            open.join(" or ")
        ),
        (false, true) => contains,
        (false, false) if rest => format!("{contains} Whether any of the others is not known."),
        (false, false) => format!("{contains} Whether {} is not known.", open.join(" or ")),
    }
}

#[cfg(test)]
mod tests {
    use super::page;
    use crate::{Style, text};
    use potwright_larder::{Hints, Larder};

    fn set(name: &str) -> String {
        let larder = Larder::built_in();
        text::render(
            &page(larder, name, &larder.find(name, &Hints::default())),
            80,
            Style::Plain,
        )
    }

    #[test]
    fn a_sure_name_an_unsure_one_and_none() {
        let onion = set("brown onions");
        assert!(
            onion.starts_with("onion\n‘brown onions’ is taken for this without asking\n"),
            "{onion}"
        );
        // USDA SR28, NDB 11282: 40 kcal, 89.11 g water, a chopped cup 160 g.
        for words in ["40 kcal", "89.1 g", "cup, chopped", "160", "NDB 11282"] {
            assert!(onion.contains(words), "{words}: {onion}");
        }
        let stock = set("stock");
        assert!(
            stock.contains("becomes a query") && stock.contains("chicken stock"),
            "{stock}"
        );
        assert!(set("zwxq").starts_with("zwxq\nnot in the larder\n"));
    }

    #[test]
    fn no_line_is_wider_than_the_page() {
        for (_, food) in Larder::built_in().foods() {
            for line in set(&food.name).lines() {
                assert!(line.chars().count() <= 80, "{}: {line}", food.key);
            }
        }
    }
}
