//! Recipes as structured data: schema.org/Recipe written as JSON-LD, in and out.
//!
//! [`pages`] takes the text of a JSON-LD file or of a saved web page and gives a typed page for each recipe in it, in
//! the plain form that the reader reads; what a typed page has no place for is listed with its value. [`recipe_json`]
//! writes a page that was read, and what was computed from it where that is given.
//!
//! The vocabulary is that of schema.org 28 (Recipe, HowTo, HowToSection, HowToStep, HowToDirection, HowToTip,
//! NutritionInformation), its times are durations of ISO 8601.

mod duration;
mod error;
mod find;
mod ingredients;
mod instructions;
mod markup;
mod out;
mod page;

use std::collections::BTreeSet;

pub use error::StructuredError;
pub use out::{Computed, Nutrition, recipe_json};

/// A recipe of structured data as a typed page.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct TypedPage {
    /// Its title; empty when it has none.
    pub title: String,
    /// The page.
    pub text: String,
    /// What the page has no place for, in the order of the data.
    pub left: Vec<Left>,
}

/// A property that a typed page has no place for.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Left {
    /// Its name in the vocabulary.
    pub property: String,
    /// Its value: a text as it is, anything else as JSON.
    pub value: String,
}

/// The most text that is read, in bytes.
const LONGEST: usize = 32 << 20;

/// Whether a text is structured data or a saved web page rather than a typed page.
#[must_use]
pub fn is_structured(text: &str) -> bool {
    let start = text.trim_start_matches('\u{feff}').trim_start();
    if start.starts_with('[') {
        // A typed page may begin with a note to the desk.
        let inner = start.trim_start_matches('[').trim_start();
        return inner.starts_with('{') && serde_json::from_str::<serde::de::IgnoredAny>(start).is_ok();
    }
    start.starts_with('{') || markup::is_web_page(start)
}

/// The recipes of structured data, a typed page each.
///
/// ```
/// use potwright_manuscript::structured::pages;
/// let data = r#"{"@type": "Recipe", "name": "Leek soup", "recipeYield": "4", "totalTime": "PT1H5M",
///     "recipeIngredient": ["2 leeks"], "recipeInstructions": "Slice the leeks.", "keywords": "soup"}"#;
/// let page = &pages(data)?[0];
/// assert!(page.text.starts_with("Leek soup\n\nServes 4\nTotal time: 1 hour 5 minutes\n"));
/// assert_eq!(page.left[0].property, "keywords");
/// # Ok::<(), potwright_manuscript::structured::StructuredError>(())
/// ```
///
/// # Errors
///
/// The text is no JSON and no web page with JSON-LD in it, holds no recipe, or is larger than 32 MiB.
pub fn pages(text: &str) -> Result<Vec<TypedPage>, StructuredError> {
    if text.len() > LONGEST {
        return Err(StructuredError::TooLarge(LONGEST >> 20));
    }
    let mut found: Vec<TypedPage> = Vec::new();
    let mut known: BTreeSet<String> = BTreeSet::new();
    for data in find::data(text)? {
        let within = find::Within::new(&data);
        for recipe in within.recipes() {
            let page = page::page(recipe, &within);
            if known.insert(page.text.clone()) {
                found.push(page);
            }
        }
    }
    if found.is_empty() {
        return Err(StructuredError::NoRecipe);
    }
    Ok(found)
}
