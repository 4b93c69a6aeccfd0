//! An ingredient line in house style: amount, unit, size, name, work, remarks.

use potwright_measure::{Amount, Exact, Unit, fractions};

use crate::{Ingredient, Item, Quantity, Size};

use super::style::{HouseStyle, Names};

/// The line of one ingredient, from what was read alone; `None` where it says more than there is a place for.
pub(super) fn line(entry: &Ingredient, style: &HouseStyle) -> Option<String> {
    if entry.items.is_empty() {
        return None;
    }
    let mut parts: Vec<String> = Vec::new();
    match (&entry.quantity, &entry.open) {
        (Some(quantity), _) => parts.push(measure(quantity, entry, style)),
        (None, Some(open)) => parts.push(open.words.text.clone()),
        (None, None) => {}
    }
    parts.push(names(entry)?);
    let mut out = parts.join(" ");
    for also in &entry.also {
        out.push_str(&format!(" ({})", quantity(also, style)));
    }
    for other in &entry.alternatives {
        let own = other
            .quantity
            .as_ref()
            .map_or(String::new(), |own| format!("{} ", quantity(own, style)));
        out.push_str(&format!(" or {own}{}", item(&other.item)));
    }
    out.push_str(&remarks(entry));
    Some(out)
}

/// What stands after the name, in one order.
fn remarks(entry: &Ingredient) -> String {
    let mut out = String::new();
    if let Some(preparation) = &entry.preparation {
        out.push_str(&format!(", {}", preparation.text));
    }
    if let Some(more) = &entry.plus_more {
        out.push_str(&format!(", plus {}", more.text));
    }
    for (said, words) in [
        (entry.divided, ", divided"),
        (entry.optional, ", optional"),
        (entry.to_taste, ", to taste"),
        (entry.for_serving, ", for serving"),
    ] {
        out.push_str(if said { words } else { "" });
    }
    out
}

/// '3 large', '2 × 400 g tins' as '2 400 g tins', 'about 300 g'.
fn measure(said: &Quantity, entry: &Ingredient, style: &HouseStyle) -> String {
    let mut out = amount(said.amount, said.unit, style);
    if let Some(package) = &entry.package {
        // '1 400 g tin' runs together; the size of the pack goes in brackets before its name.
        out.push_str(&format!(" ({})", quantity(package, style)));
    }
    if let Some(size) = entry.size.as_ref().and_then(size) {
        out.push_str(&format!(" {size}"));
    }
    if let Some(unit) = said.unit {
        out.push_str(&format!(" {}", unit_word(unit, said.amount, style)));
    }
    out
}

/// An amount with its unit: `1½ tbsp`, `400 g`, `2 to 3 cups`.
fn quantity(said: &Quantity, style: &HouseStyle) -> String {
    let number = amount(said.amount, said.unit, style);
    said.unit.map_or(number.clone(), |unit| {
        format!("{number} {}", unit_word(unit, said.amount, style))
    })
}

/// Metric units take decimals, all others the fractions of the house; ranges a dash, which no sentence begins with.
fn amount(amount: Amount, unit: Option<Unit>, style: &HouseStyle) -> String {
    let about = if amount.about { "about " } else { "" };
    let number = |number: Exact| match unit.filter(|unit| unit.is_metric()) {
        Some(_) => decimal(number).unwrap_or_else(|| style.number(number)),
        None => style.number(number),
    };
    let low = number(amount.low);
    if amount.is_single() {
        return format!("{about}{low}");
    }
    format!("{about}{low}–{}", number(amount.high))
}

/// As a decimal, where three places hold it without loss.
fn decimal(number: Exact) -> Option<String> {
    let thousandths = number.checked_mul(Exact::whole(1000))?;
    thousandths.is_whole().then(|| fractions::decimal(number, 3))
}

/// Short where the trade has a short form that all pages share, else the whole word.
fn unit_word(unit: Unit, amount: Amount, style: &HouseStyle) -> &'static str {
    match unit {
        Unit::Can if style.names == Names::Uk => {
            if amount.high > Exact::ONE {
                "tins"
            } else {
                "tin"
            }
        }
        Unit::Teaspoon
        | Unit::Tablespoon
        | Unit::FluidOunce
        | Unit::Millilitre
        | Unit::Ounce
        | Unit::Pound
        | Unit::Gram
        | Unit::Kilogram => unit.abbreviation(),
        _ => unit.written(amount.high),
    }
}

fn size(size: &Size) -> Option<&'static str> {
    match size {
        Size::Small => Some("small"),
        Size::Medium => Some("medium"),
        Size::Large => Some("large"),
        Size::Millimetres(..) => None,
    }
}

/// The foods that share the amount.
fn names(entry: &Ingredient) -> Option<String> {
    let names: Vec<String> = entry.items.iter().map(item).collect();
    let (last, before) = names.split_last()?;
    Some(if before.is_empty() {
        last.clone()
    } else {
        let each = if entry.quantity.is_some() { "each " } else { "" };
        format!("{each}{} and {last}", before.join(", "))
    })
}

/// State before name: 'dried white beans'.
fn item(item: &Item) -> String {
    let words = item.state.iter().map(String::as_str).chain([item.name.as_str()]);
    words.collect::<Vec<_>>().join(" ")
}
