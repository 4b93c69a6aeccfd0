//! A recipe as plain data: names, amounts and operations in words, without places.

use potwright_measure::{Amount, Unit, fractions};
use serde_json::{Value, json};

use crate::method::reading::method_value;
use crate::{Ingredient, Item, Layout, Quantity, Recipe};

/// The reading of a page in the format that readings by hand are kept in.
///
/// One object a page: `title`, `layout`, `yield`, `declared_times`, `ingredients` (one a line and amount, in page
/// order) and `method.operations`. `id` names the page.
#[must_use]
pub fn reading(recipe: &Recipe, text: &str, id: &str) -> Value {
    json!({
        "id": id,
        "title": recipe.title.as_ref().map(|words| &words.text),
        "layout": match recipe.layout { Layout::List => "list", Layout::Prose => "prose" },
        "yield": recipe.yields.as_ref().map(|yields| json!({
            "text": yields.words.text,
            "min": yields.amount.map(|a| a.low.to_f64()),
            "max": yields.amount.map(|a| a.high.to_f64()),
            "unit": yields.unit.as_deref().map(|unit| if unit == "litre" { "l" } else { unit }),
        })),
        "declared_times": declared_times(recipe),
        "ingredients": recipe.ingredients.iter().map(|i| ingredient(recipe, i, text)).collect::<Vec<_>>(),
        "method": method_value(text, recipe),
    })
}

fn declared_times(recipe: &Recipe) -> Value {
    let minutes = |what: &str| {
        recipe
            .declared_times
            .iter()
            .find(|t| t.what == what)
            .map(|t| t.minutes.1)
    };
    match (minutes("preparation").or_else(|| minutes("active")), minutes("cooking")) {
        (None, None) => Value::Null,
        (prep, cook) => json!({ "prep_min": prep, "cook_min": cook }),
    }
}

fn ingredient(recipe: &Recipe, ingredient: &Ingredient, text: &str) -> Value {
    let quantity = ingredient.quantity;
    let unit = quantity
        .and_then(|q| q.unit)
        .or_else(|| ingredient.open.as_ref().and_then(|open| open.unit));
    let section = ingredient
        .section
        .and_then(|at| recipe.sections.get(at))
        .map(|s| &s.words.text);
    json!({
        "raw": ingredient.span.of(text),
        "section": section,
        "amount": quantity.map(|q| amount(q.amount)),
        "unit": unit.map(unit_name),
        "items": ingredient.items.iter().map(item).collect::<Vec<_>>(),
        "preparation": ingredient.preparation.as_ref().map(|words| &words.text),
        "optional": ingredient.optional,
        "divided": ingredient.divided,
        "measured": quantity.is_some(),
        "alternatives": ingredient.alternatives.iter().map(alternative).collect::<Vec<_>>(),
        "flags": flags(ingredient),
    })
}

fn amount(amount: Amount) -> Value {
    let low = fractions::ascii(amount.low);
    let text = if amount.low == amount.high {
        low
    } else {
        format!("{low}-{}", fractions::ascii(amount.high))
    };
    json!({ "text": text, "min": amount.low.to_f64(), "max": amount.high.to_f64() })
}

pub(crate) fn item(item: &Item) -> String {
    if item.state.is_empty() {
        item.name.clone()
    } else {
        format!("{}, {}", item.name, item.state.join(" "))
    }
}

fn alternative(alternative: &crate::Alternative) -> String {
    let name = item(&alternative.item);
    alternative
        .quantity
        .map_or_else(|| name.clone(), |q| format!("{} {name}", quantity(q)))
}

fn quantity(quantity: Quantity) -> String {
    let number = |n| fractions::ascii(n);
    let amount = quantity.amount;
    let text = if amount.low == amount.high {
        number(amount.low)
    } else {
        format!("{}-{}", number(amount.low), number(amount.high))
    };
    quantity
        .unit
        .map_or_else(|| text.clone(), |unit| format!("{text} {}", unit_name(unit)))
}

fn flags(ingredient: &Ingredient) -> Value {
    let mut flags = serde_json::Map::new();
    let mut put = |name: &str, value: Value| {
        flags.insert(name.to_owned(), value);
    };
    if ingredient.to_taste {
        put("to_taste", json!(true));
    }
    if ingredient.for_serving {
        put("serving", json!(true));
    }
    if ingredient.equipment {
        put("equipment", json!(true));
    }
    if let Some(package) = ingredient.package {
        put("pkg", json!(quantity(package)));
    }
    if let Some(more) = &ingredient.plus_more {
        put("plus", json!(more.text));
    }
    if !ingredient.also.is_empty() {
        put(
            "equivalent",
            json!(
                ingredient
                    .also
                    .iter()
                    .map(|q| quantity(*q))
                    .collect::<Vec<_>>()
                    .join(", ")
            ),
        );
    }
    Value::Object(flags)
}

/// The short word of a unit: `tsp`, `cup`, `clove`.
fn unit_name(unit: Unit) -> &'static str {
    match unit {
        Unit::Dessertspoon => "dessertspoon",
        Unit::Pint | Unit::Quart | Unit::Gallon | Unit::Grain => unit.name(),
        Unit::Packet => "package",
        _ => unit.abbreviation(),
    }
}
