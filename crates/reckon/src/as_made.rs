//! A finished dish as another dish may use it.

use potwright_larder::Allergen;
use potwright_measure::Money;
use potwright_pot::Made;

use crate::AllergenRow;
use crate::reading::{Reading, share};
use crate::retention::with_nutrients;

/// What only ever comes out of a kitchen: a title that ends so is also known by its last two words. A title that ends
/// in a food (`Pickled red cabbage`) is not, or the raw food would be taken for the dish.
const MADE_THINGS: [&str; 24] = [
    "bread",
    "broth",
    "broths",
    "brine",
    "chutney",
    "crumbs",
    "dough",
    "dressing",
    "dumplings",
    "gravy",
    "jam",
    "mayonnaise",
    "pastry",
    "pesto",
    "pickle",
    "pickles",
    "relish",
    "rolls",
    "salsa",
    "sauce",
    "soup",
    "stew",
    "stock",
    "vinaigrette",
];

/// What is known of a dish besides its reading.
pub(crate) struct Facts<'a> {
    pub(crate) title: &'a str,
    pub(crate) allergens: &'a [AllergenRow],
    pub(crate) animal: Option<bool>,
    pub(crate) sulphite_mg: f64,
    /// Cost of the whole; none when a price is missing.
    pub(crate) cost: Option<f64>,
}

/// The whole yield of the central run: what is eaten of it, with the nutrients as heat has left them.
///
/// A dish of which it is not known whether an animal product is in it counts as holding one.
pub(crate) fn as_made(central: &Reading, facts: &Facts<'_>) -> Made {
    let density = share(central.yield_kg, central.volume_l);
    Made {
        names: names(facts.title),
        matter: with_nutrients(&central.whole, &central.nutrients),
        density_g_ml: if density > 0.0 { density } else { 1.0 },
        allergens: facts
            .allergens
            .iter()
            .map(|row| (row.allergen, row.contains, cause(row)))
            .collect(),
        animal: facts.animal.unwrap_or(true),
        sulphite_mg: facts.sulphite_mg,
        cost: facts.cost.map(Money::from_units),
    }
}

/// Foods in a row of words; for sulphites without the figure, which holds for this dish only.
pub(crate) fn cause(row: &AllergenRow) -> String {
    let bare = |cause: &String| match (row.allergen, cause.split_once(" (")) {
        (Allergen::Sulphites, Some((name, _))) => name.to_owned(),
        _ => cause.clone(),
    };
    row.causes.iter().map(bare).collect::<Vec<_>>().join(", ")
}

/// The title, and the short names by which other pages call what it makes.
fn names(title: &str) -> Vec<String> {
    let full = title.trim();
    let mut names = vec![full.to_owned()];
    let plain = full.to_lowercase();
    let words: Vec<&str> = plain.split_whitespace().collect();
    let ends_in_a_made_thing = words.last().is_some_and(|word| MADE_THINGS.contains(word));
    // 'Celeriac and apple soup' is not the apple soup.
    let one_thing = !words
        .iter()
        .any(|word| ["and", "with", "in", "of", "or", "&"].contains(word));
    if ends_in_a_made_thing && one_thing && words.len() > 2 {
        names.extend((1..words.len() - 1).map(|from| words[from..].join(" ")));
    }
    names
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn short_names_only_for_what_is_made() {
        assert_eq!(names("Brown beef stock"), ["Brown beef stock", "beef stock"]);
        assert_eq!(names("Seeded soda bread"), ["Seeded soda bread", "soda bread"]);
        assert_eq!(names("Celeriac and apple soup"), ["Celeriac and apple soup"]);
        assert_eq!(names("Pickled red cabbage"), ["Pickled red cabbage"]);
        assert_eq!(names("BEEF SHIN WITH PRUNES"), ["BEEF SHIN WITH PRUNES"]);
        assert_eq!(names("Stock"), ["Stock"]);
    }
}
