//! Allergens of US and EU law, and what is known of a food.

use serde::{Deserialize, Serialize};

/// A substance that a page must declare under US law (FALCPA 2004, FASTER 2021) or Annex II of Regulation (EU)
/// 1169/2011.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Allergen {
    /// Wheat: its own entry in US law, one of the cereals containing gluten in EU law.
    Wheat,
    /// Rye, barley, oats: cereals containing gluten in EU law, not US major allergens.
    OtherGluten,
    /// Crustaceans.
    Crustaceans,
    /// Eggs.
    Eggs,
    /// Fish.
    Fish,
    /// Peanuts.
    Peanuts,
    /// Soybeans.
    Soybeans,
    /// Milk and what is made of it.
    Milk,
    /// Tree nuts.
    TreeNuts,
    /// Sesame.
    Sesame,
    /// Celery, celeriac (EU only).
    Celery,
    /// Mustard (EU only).
    Mustard,
    /// Lupin (EU only).
    Lupin,
    /// Molluscs (EU only).
    Molluscs,
    /// Sulphur dioxide and sulphites above 10 mg/kg of the finished food.
    Sulphites,
}

impl Allergen {
    /// All of them, in the order in which a label names them.
    pub const ALL: [Allergen; 15] = [
        Allergen::Wheat,
        Allergen::OtherGluten,
        Allergen::Crustaceans,
        Allergen::Eggs,
        Allergen::Fish,
        Allergen::Peanuts,
        Allergen::Soybeans,
        Allergen::Milk,
        Allergen::TreeNuts,
        Allergen::Sesame,
        Allergen::Celery,
        Allergen::Mustard,
        Allergen::Lupin,
        Allergen::Molluscs,
        Allergen::Sulphites,
    ];
}

/// What is known of an allergen in a food.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Contains {
    /// By nature free of it.
    No,
    /// Varies with the maker: read the packet (bought stock, sausages).
    NotKnown,
    /// Contains it.
    Yes,
}
