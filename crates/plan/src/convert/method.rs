//! Amounts that the method names: 'a tablespoon of the oil', 'the remaining 6 cups broth', 'reduced to 3 litres'.
//!
//! Those that the reader of pages gave to a food are set first; then every measured amount that is left in the running
//! text, unless it is the size of a vessel or so much at a time.

use potwright_larder::Hints;
use potwright_manuscript::{FoodRef, Ingredient, Item, Quantity, Recipe, Share, Span, Target};
use potwright_measure::{Dimension, Unit};

use super::food::Known;
use super::line::{Setting, Task};
use super::phrase::{self, Measure};
use crate::splice::Splices;

pub(super) fn set(setting: &Setting<'_>, recipe: &Recipe, splices: &mut Splices) {
    let listed = listed(recipe);
    let is_free = |place: Span| {
        !listed
            .iter()
            .any(|span| span.start < place.end && place.start < span.end)
    };
    for operation in &recipe.operations {
        for food in operation.foods.iter().chain(&operation.keep).chain(&operation.discard) {
            let Share::Measure(quantity) = &food.share else {
                continue;
            };
            if !is_free(quantity.span) || is_each(setting.text, quantity) {
                continue;
            }
            let line = line_of(recipe, food);
            let item = match &food.target {
                Target::Ingredient { item, .. } => line.items.get(*item),
                _ => line.items.first(),
            };
            let known = Known::of(setting.larder, &line, item);
            Task::whole(setting, quantity, &known, &[]).set(setting, splices);
        }
    }
    // Of a list, only what the line says beside its amounts: 'juice of 2 lemons (you want a good 80 ml)'.
    let lines = recipe.ingredients.iter().map(|line| line.span);
    let steps = recipe.steps.iter().map(|step| step.words.span);
    for measure in lines.chain(steps).flat_map(|span| phrase::measures(setting.text, span)) {
        let place = measure.quantity.span;
        if is_free(place) && !splices.touches(place) && !is_a_size(setting.text, &measure) {
            set_stray(setting, &measure.quantity, splices);
        }
    }
}

/// The places of all amounts of the list: on a page in running text they stand in the method.
fn listed<'a>(recipe: &'a Recipe) -> Vec<Span> {
    let lines = recipe.ingredients.iter();
    let own = |line: &'a Ingredient| {
        let others = line.alternatives.iter().filter_map(|other| other.quantity.as_ref());
        line.quantity
            .iter()
            .chain(&line.also)
            .chain(&line.package)
            .chain(others)
    };
    lines.flat_map(own).map(|quantity| quantity.span).collect()
}

/// The line a food of the method stands on, or one made of its name.
fn line_of(recipe: &Recipe, food: &FoodRef) -> Ingredient {
    let listed = match &food.target {
        Target::Ingredient { index, .. } => recipe.ingredients.get(*index),
        _ => None,
    };
    match (listed, &food.target) {
        (Some(line), _) => line.clone(),
        (None, Target::Unlisted(name)) => line_named(name),
        (None, _) => line_named(&food.words.text),
    }
}

fn line_named(name: &str) -> Ingredient {
    Ingredient {
        items: vec![Item {
            name: name.to_owned(),
            ..Item::default()
        }],
        ..Ingredient::default()
    }
}

/// An amount of which only the words around it tell what it is of.
fn set_stray(setting: &Setting<'_>, quantity: &Quantity, splices: &mut Splices) {
    let liquid = quantity.unit.is_some_and(|unit| unit.dimension() == Dimension::Volume);
    let line = following(setting, quantity.span.end);
    let known = line
        .as_ref()
        .map(|line| Known::of(setting.larder, line, line.items.first()));
    // 'Reduced to 3 litres' is of the pot's contents.
    let known = known.unwrap_or(if liquid { Known::liquid() } else { Known::default() });
    Task::whole(setting, quantity, &known, &[]).set(setting, splices);
}

/// The food that is named right after an amount: up to three words that the larder is sure of.
fn following(setting: &Setting<'_>, end: usize) -> Option<Ingredient> {
    let rest = setting.text.get(end..)?;
    let clause = rest.split(['.', ',', ';', ':', '(', '\n']).next().unwrap_or(rest);
    let words: Vec<&str> = clause
        .split_whitespace()
        .skip_while(|word| matches!(*word, "of" | "the" | "more"))
        .take(3)
        .collect();
    (1..=words.len()).rev().find_map(|count| {
        let name = words.get(..count)?.join(" ");
        let found = setting.larder.find(&name, &Hints::default());
        found.sure.then(|| line_named(&name))
    })
}

/// What an amount may be the size of.
const VESSELS: &[&str] = &[
    "pot",
    "pan",
    "saucepan",
    "casserole",
    "dish",
    "tin",
    "tub",
    "jar",
    "mould",
    "mold",
    "bowl",
    "jug",
    "box",
    "bag",
    "container",
    "can",
    "pail",
    "basin",
    "cooker",
    "bottle",
    "packet",
    "measure",
    "oven",
    "kettle",
    "piece",
    "portion",
    "slice",
    "ball",
    "chunk",
    "tumbler",
];

/// The size of a vessel or a piece, or so much at a time: it does not grow with the batch.
fn is_a_size(text: &str, measure: &Measure) -> bool {
    if measure.hyphened {
        return true;
    }
    let clause = clause_after(text, &measure.quantity);
    let vessel = clause.split_whitespace().take(3).any(|word| {
        let word = word.trim_matches(|c: char| !c.is_alphabetic());
        VESSELS.contains(&word) || word.strip_suffix('s').is_some_and(|one| VESSELS.contains(&one))
    });
    let of = clause
        .split_whitespace()
        .next()
        .is_some_and(|word| matches!(word, "of" | "the"));
    (vessel && !of) || is_each(text, &measure.quantity)
}

/// So much at a time, a head, a batch: it goes with something that does not grow.
fn is_each(text: &str, quantity: &Quantity) -> bool {
    const EACH: [&str; 6] = [" at a time", " per ", " each", " a person", " a head", " a batch"];
    let clause = clause_after(text, quantity);
    EACH.iter().any(|words| clause.contains(words))
}

/// The words after an amount up to the next mark or 'and', in small letters.
fn clause_after(text: &str, quantity: &Quantity) -> String {
    let rest = text.get(quantity.span.end..).unwrap_or("");
    let clause = rest.split(['.', ',', ';', '\n']).next().unwrap_or("").to_lowercase();
    clause.split(" and ").next().unwrap_or("").to_owned()
}

/// Units whose letter may be another thing in running text: 'C' is a scale of temperature, 't' anything.
pub(super) fn is_clear(word: &str, unit: Unit) -> bool {
    unit.dimension() != Dimension::Piece && !matches!(word, "c" | "C" | "t" | "T" | "gr")
}
