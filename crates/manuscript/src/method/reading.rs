//! The method part of a reading: operations, and the times, temperatures, vessels and unlisted foods in them.

use potwright_measure::WrittenTemperature;
use serde_json::{Value, json};

use crate::reading::item;
use crate::{FoodRef, HeatWord, Operation, Recipe, Target};

/// The operations of a recipe and what they name, as plain data: `times`, `temperatures`, `vessels`,
/// `used_but_not_listed` and `operations`, each in page order and each thing once.
pub(crate) fn method_value(text: &str, recipe: &Recipe) -> Value {
    let operations = &recipe.operations;
    json!({
        "times": times(text, recipe),
        "temperatures": once(operations.iter().filter_map(|o| o.temperature).map(temperature)),
        "vessels": once(vessels(operations).map(|name| json!(name))),
        "used_but_not_listed": once(unlisted(operations).map(|name| json!(name))),
        "operations": operations.iter().map(|o| operation(recipe, o, text)).collect::<Vec<_>>(),
    })
}

/// Every time that is said, with the foods it is the time of.
fn times(text: &str, recipe: &Recipe) -> Vec<Value> {
    let timed = recipe
        .operations
        .iter()
        .filter_map(|operation| Some((operation, operation.minutes.as_ref()?)));
    timed
        .map(|(operation, minutes)| {
            let words: Vec<&str> = minutes.span.of(text).split_whitespace().collect();
            let foods: Vec<String> = operation.foods.iter().map(|food| food_name(recipe, food)).collect();
            json!({ "text": words.join(" "), "minutes": [minutes.low, minutes.high], "what": foods.join(", ") })
        })
        .collect()
}

fn vessels(operations: &[Operation]) -> impl Iterator<Item = &str> {
    let named = operations.iter().filter_map(|operation| operation.into.as_ref());
    named
        .map(|vessel| vessel.words.text.as_str())
        .filter(|name| !name.is_empty())
}

fn unlisted(operations: &[Operation]) -> impl Iterator<Item = &str> {
    operations
        .iter()
        .flat_map(|operation| &operation.foods)
        .filter_map(|food| match &food.target {
            Target::Unlisted(name) => Some(name.as_str()),
            _ => None,
        })
}

/// Each value once, in the order of its first standing.
fn once(values: impl Iterator<Item = Value>) -> Vec<Value> {
    let mut seen: Vec<Value> = Vec::new();
    for value in values {
        if !seen.contains(&value) {
            seen.push(value);
        }
    }
    seen
}

/// A temperature in the scale it is written in; a gas mark as its number.
fn temperature(written: WrittenTemperature) -> Value {
    match written {
        WrittenTemperature::Celsius(value) => json!({ "value": value, "unit": "C" }),
        WrittenTemperature::Fahrenheit(value) => json!({ "value": value, "unit": "F" }),
        WrittenTemperature::Gas(mark) => json!({ "value": f64::from(mark.quarters) / 4.0, "unit": "gas" }),
    }
}

fn operation(recipe: &Recipe, operation: &Operation, text: &str) -> Value {
    let foods = |refs: &[FoodRef]| refs.iter().map(|food| food_name(recipe, food)).collect::<Vec<_>>();
    json!({
        "text": operation.span.of(text).split_whitespace().collect::<Vec<_>>().join(" "),
        "verb": operation.verb.name(),
        "foods": foods(&operation.foods),
        "into": operation.into.as_ref().map(|vessel| &vessel.words.text),
        "into_inferred": operation.into.as_ref().is_some_and(|vessel| vessel.inferred),
        "heat": operation.heat.map(heat_name),
        "temperature": operation.temperature.map(temperature),
        "fan": operation.fan.map(temperature),
        "core": operation.core.map(temperature),
        "minutes": operation.minutes.as_ref().map(|m| [m.low, m.high]),
        "from_end": operation.minutes.as_ref().is_some_and(|m| m.from_end),
        "cue": operation.cue.as_ref().map(|cue| &cue.text),
        "cover": operation.cover,
        "discard": foods(&operation.discard),
        "keep": foods(&operation.keep),
        "repeat": operation.repeat.as_ref().map(|repeat| &repeat.words.text),
        "form": operation.form,
        "optional": operation.optional,
    })
}

fn food_name(recipe: &Recipe, food: &FoodRef) -> String {
    match &food.target {
        Target::Ingredient { index, item: at } => {
            let named = recipe.ingredients.get(*index).and_then(|i| i.items.get(*at));
            named.map_or_else(|| food.words.text.clone(), item)
        }
        Target::Pot => "<pot>".to_owned(),
        Target::Component(name) => format!("<{name}>"),
        Target::Unlisted(name) => name.clone(),
    }
}

fn heat_name(heat: HeatWord) -> &'static str {
    match heat {
        HeatWord::Off => "off",
        HeatWord::Low => "low",
        HeatWord::MediumLow => "medium-low",
        HeatWord::Medium => "medium",
        HeatWord::MediumHigh => "medium-high",
        HeatWord::High => "high",
        HeatWord::Lower => "lower",
    }
}
