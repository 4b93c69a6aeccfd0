//! The columns a `larder.tsv` may have.

use crate::Allergen;
use crate::spelling::one_slip;

/// A column.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Column {
    /// The key.
    Key,
    /// The name, singular.
    Name,
    /// The plural.
    Plural,
    /// Other names, parted by `;`.
    Synonyms,
    /// The food whose row is taken where this one says nothing.
    Like,
    /// Kind of food.
    Kind,
    /// The state it is bought in.
    State,
    /// Whether it comes from an animal.
    Animal,
    /// What must be made safe.
    Hazard,
    /// Where it stands in a shop.
    Shop,
    /// A figure of composition, by its place among [`crate::official::COLUMNS`].
    Figure(usize),
    /// Salt as packets print it: sodium × 2.5.
    Salt,
    /// Weight of a cup.
    Cup,
    /// Weight of a tablespoon.
    Tablespoon,
    /// Weight of a teaspoon.
    Teaspoon,
    /// Weight of a piece.
    Piece,
    /// Grams to the millilitre.
    Density,
    /// Weights of other measures and cuts.
    Weights,
    /// Refuse, per cent of the food as bought.
    Refuse,
    /// What is known of an allergen.
    Allergen(Allergen),
    /// What is known of all allergens that have no cell.
    OtherAllergens,
    /// Days it keeps.
    Keeping,
    /// Where the figures are from.
    Source,
    /// Anything.
    Notes,
}

/// A column and its name in the heading.
#[derive(Clone, Copy, Debug)]
pub struct Named {
    /// The name.
    pub name: &'static str,
    /// The column.
    pub column: Column,
}

const fn of(name: &'static str, column: Column) -> Named {
    Named { name, column }
}

/// All columns.
pub const COLUMNS: [Named; 61] = [
    of("key", Column::Key),
    of("name", Column::Name),
    of("plural", Column::Plural),
    of("synonyms", Column::Synonyms),
    of("like", Column::Like),
    of("kind", Column::Kind),
    of("state", Column::State),
    of("animal", Column::Animal),
    of("hazard", Column::Hazard),
    of("shop", Column::Shop),
    of("water_g", Column::Figure(0)),
    of("energy_kcal", Column::Figure(1)),
    of("protein_g", Column::Figure(2)),
    of("fat_g", Column::Figure(3)),
    of("saturated_g", Column::Figure(4)),
    of("carbohydrate_g", Column::Figure(5)),
    of("fibre_g", Column::Figure(6)),
    of("sugars_g", Column::Figure(7)),
    of("starch_g", Column::Figure(8)),
    of("ash_g", Column::Figure(9)),
    of("alcohol_g", Column::Figure(10)),
    of("sodium_mg", Column::Figure(11)),
    of("potassium_mg", Column::Figure(12)),
    of("calcium_mg", Column::Figure(13)),
    of("iron_mg", Column::Figure(14)),
    of("cholesterol_mg", Column::Figure(15)),
    of("vitamin_a_ug", Column::Figure(16)),
    of("vitamin_c_mg", Column::Figure(17)),
    of("vitamin_d_ug", Column::Figure(18)),
    of("protein_factor", Column::Figure(19)),
    of("fat_factor", Column::Figure(20)),
    of("carbohydrate_factor", Column::Figure(21)),
    of("salt_g", Column::Salt),
    of("cup_g", Column::Cup),
    of("tablespoon_g", Column::Tablespoon),
    of("teaspoon_g", Column::Teaspoon),
    of("piece_g", Column::Piece),
    of("g_per_ml", Column::Density),
    of("weights", Column::Weights),
    of("refuse_percent", Column::Refuse),
    of("wheat", Column::Allergen(Allergen::Wheat)),
    of("other_gluten", Column::Allergen(Allergen::OtherGluten)),
    of("crustaceans", Column::Allergen(Allergen::Crustaceans)),
    of("eggs", Column::Allergen(Allergen::Eggs)),
    of("fish", Column::Allergen(Allergen::Fish)),
    of("peanuts", Column::Allergen(Allergen::Peanuts)),
    of("soybeans", Column::Allergen(Allergen::Soybeans)),
    of("milk", Column::Allergen(Allergen::Milk)),
    of("tree_nuts", Column::Allergen(Allergen::TreeNuts)),
    of("sesame", Column::Allergen(Allergen::Sesame)),
    of("celery", Column::Allergen(Allergen::Celery)),
    of("mustard", Column::Allergen(Allergen::Mustard)),
    of("lupin", Column::Allergen(Allergen::Lupin)),
    of("molluscs", Column::Allergen(Allergen::Molluscs)),
    of("sulphites", Column::Allergen(Allergen::Sulphites)),
    of("other_allergens", Column::OtherAllergens),
    of("keeps_days", Column::Keeping),
    of("source", Column::Source),
    of("notes", Column::Notes),
    of("remarks", Column::Notes),
    of("note", Column::Notes),
];

/// The known column a misspelt one is nearest to: one slip away, or the same but for its unit.
pub(super) fn nearest(word: &str) -> Option<&'static str> {
    let word = word.to_lowercase().replace(' ', "_");
    let stem = |name: &str| {
        name.rsplit_once('_')
            .map_or(name.to_owned(), |(stem, _)| stem.to_owned())
    };
    let slip = COLUMNS
        .iter()
        .find(|known| known.name == word || one_slip(known.name, &word));
    let unit = || {
        COLUMNS.iter().find(|known| {
            let its = stem(known.name);
            its == word || its == stem(&word) || one_slip(&its, &word)
        })
    };
    slip.or_else(unit).map(|known| known.name)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn figures_stand_in_the_order_of_the_official_columns() {
        let figures = COLUMNS.iter().filter_map(|known| match known.column {
            Column::Figure(place) => Some((place, known.name)),
            _ => None,
        });
        let expected = crate::official::COLUMNS
            .iter()
            .enumerate()
            .map(|(place, (name, _))| (place, *name));
        assert!(figures.eq(expected));
    }

    #[test]
    fn slips_and_forgotten_units() {
        assert_eq!(nearest("protien_g"), Some("protein_g"));
        assert_eq!(nearest("protein"), Some("protein_g"));
        assert_eq!(nearest("sodium_g"), Some("sodium_mg"));
        assert_eq!(nearest("other allergens"), Some("other_allergens"));
        assert_eq!(nearest("sugar"), Some("sugars_g"));
        assert_eq!(nearest("colour"), None);
    }
}
