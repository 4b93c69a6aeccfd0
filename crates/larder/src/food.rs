//! A food of the larder.

use crate::{Allergen, Behaviour, Composition, Contains};
use potwright_measure::{Mass, Unit};
use serde::{Deserialize, Serialize};

/// Index of a food in its larder; only meaningful together with the larder that gave it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
pub struct FoodId(pub u32);

/// A food under the name cooks use.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Food {
    /// Stable key: `carrot`, `haddock_smoked`.
    pub key: String,
    /// Singular name as printed: `carrot`.
    pub name: String,
    /// Plural name as printed: `carrots`.
    pub plural: String,
    /// Other names: British and American, spelling variants.
    pub synonyms: Vec<String>,
    /// What kind of food it is.
    pub kind: Kind,
    /// Raw, cooked, dried, canned, frozen.
    pub state: State,
    /// Whether it comes from an animal: flesh, fish, milk, egg, honey.
    pub animal: bool,
    /// Where it stands in a shop, in the writer's words: `greengrocer`, `fishmonger`, `dairy` …
    pub shop: String,
    /// Composition per 100 g edible portion, and its source.
    pub composition: Composition,
    /// Source of the composition: `USDA SR28, NDB 11124`.
    pub source: String,
    /// Weights of cups and pieces.
    pub weights: Vec<Weight>,
    /// Share of the food as purchased that is thrown away in preparation (0–1).
    pub refuse: Option<f64>,
    /// Allergens; one that is not in the list is *not known* unless the food's row is marked complete.
    pub allergens: Vec<(Allergen, Contains)>,
    /// Whether the allergen row was gone through for all of US and EU law: what is not listed is then `No`.
    pub allergens_complete: bool,
    /// Behaviour in the pot.
    pub behaviour: Behaviour,
    /// Minutes of one pair of hands to prepare a kilogram, by the work done: `peel`, `chop`, `slice` …
    pub preparation: Vec<(String, f64)>,
    /// Days it keeps in the refrigerator once bought, low and high, and the source.
    pub keeping_days: Option<(f64, f64, String)>,
}

impl Food {
    /// What is known of an allergen in this food.
    #[must_use]
    pub fn contains(&self, allergen: Allergen) -> Contains {
        let listed = self
            .allergens
            .iter()
            .find(|(which, _)| *which == allergen)
            .map(|(_, what)| *what);
        match listed {
            Some(what) => what,
            None if self.allergens_complete => Contains::No,
            None => Contains::NotKnown,
        }
    }
}

/// What kind of food: decides group words ('the vegetables', 'the meat') and retention factors.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "each variant is the kind of its name")]
pub enum Kind {
    Vegetable,
    Root,
    Leaf,
    Onion,
    Mushroom,
    Fruit,
    DriedFruit,
    Pulse,
    Grain,
    Flour,
    Pasta,
    Bread,
    Meat,
    Bacon,
    Sausage,
    Poultry,
    Fish,
    Shellfish,
    Egg,
    Milk,
    Cheese,
    Fat,
    Oil,
    Herb,
    Spice,
    Salt,
    Sugar,
    Condiment,
    Vinegar,
    Wine,
    Beer,
    Spirit,
    Stock,
    Water,
    Nut,
    Leavening,
    Other,
}

impl Kind {
    /// The kind of its word in tables: `dried_fruit`; spaces may stand for the low lines.
    #[must_use]
    pub fn from_word(word: &str) -> Option<Kind> {
        word_of(word)
    }
}

/// A variant by its serialised word, spaces for low lines.
pub(crate) fn word_of<T: serde::de::DeserializeOwned>(word: &str) -> Option<T> {
    use serde::de::IntoDeserializer;
    use serde::de::value::Error;
    let word = word.trim().to_lowercase().replace(' ', "_");
    T::deserialize(IntoDeserializer::<Error>::into_deserializer(word.as_str())).ok()
}

/// The state in which a food is bought.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "each variant is the state of its name")]
pub enum State {
    Raw,
    Cooked,
    Dried,
    Canned,
    Frozen,
    Smoked,
    Prepared,
}

/// The weight of one unit of a food.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Weight {
    /// The unit; none for one piece counted without a unit ('2 onions').
    pub unit: Option<Unit>,
    /// The cut or size it holds for: `chopped`, `sliced`, `medium`; empty for any. A cut that ends in `least` or
    /// `most` is an end of the spread of the row before it.
    pub cut: String,
    /// Mass of one unit, edible part unless the food is weighed whole.
    pub mass: Mass,
    /// Where the figure is from.
    pub source: String,
}
