//! The method: sections, steps, directions and tips, or plain text.

use serde_json::{Map, Value};

use super::find::{Within, is_a, words};

/// A part of the method, in order.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) enum Told {
    /// The heading over the steps that follow.
    Heading(String),
    /// A step.
    Step(String),
    /// A remark that is no step.
    Tip(String),
    /// A named change to the recipe.
    Variation(String),
    /// Something of a step that a typed page has no place for: the property, the value.
    Left(String, Value),
}

/// Properties of a step that are read, or only say what it is.
const READ: [&str; 8] = [
    "@type",
    "@id",
    "@context",
    "text",
    "name",
    "itemListElement",
    "position",
    "url",
];
/// No deeper nesting is followed.
const DEPTH: usize = 12;
/// No more parts are looked at: parts that refer to each other by key could be walked through without end.
const VISITS: usize = 100_000;

/// The method in order.
pub(super) fn told<'d>(value: &'d Value, within: &Within<'d>) -> Vec<Told> {
    let mut walk = Walk { within, visits: VISITS };
    let mut found = Vec::new();
    for value in within.each(value) {
        walk.tell(value, DEPTH, &mut found);
    }
    found
}

/// A walk through the parts of a method.
struct Walk<'w, 'd> {
    within: &'w Within<'d>,
    /// Parts that may still be looked at.
    visits: usize,
}

impl<'d> Walk<'_, 'd> {
    fn tell(&mut self, value: &'d Value, depth: usize, found: &mut Vec<Told>) {
        if self.visits == 0 {
            return;
        }
        self.visits -= 1;
        match value {
            Value::String(_) => {
                let said = words(value).unwrap_or_default();
                found.extend(said.lines().map(|line| Told::Step(line.to_owned())));
            }
            Value::Array(values) => self.inner(
                values.iter().map(|value| self.within.value(value)).collect(),
                depth,
                found,
            ),
            Value::Object(object) => {
                self.object(object, depth, found);
                let rest = object
                    .iter()
                    .filter(|(key, value)| !READ.contains(&key.as_str()) && !value.is_null());
                found.extend(rest.map(|(key, value)| Told::Left(format!("recipeInstructions: {key}"), value.clone())));
            }
            _ => {}
        }
    }

    fn inner(&mut self, values: Vec<&'d Value>, depth: usize, found: &mut Vec<Told>) {
        if depth > 0 {
            values.into_iter().for_each(|value| self.tell(value, depth - 1, found));
        }
    }

    fn object(&mut self, object: &'d Map<String, Value>, depth: usize, found: &mut Vec<Told>) {
        let text = object.get("text").and_then(words);
        let name = object.get("name").and_then(words).map(|name| name.replace('\n', " "));
        let inner: Vec<&Value> = object
            .get("itemListElement")
            .map_or(Vec::new(), |value| self.within.each(value));
        if is_a(object, "HowToTip") {
            found.extend(tip(text, name));
        } else if is_a(object, "HowToSection")
            || is_a(object, "ItemList")
            || text.is_none() && inner.len() > 1 && !is_a(object, "HowToStep")
        {
            found.extend(name.map(Told::Heading));
            let said = text.unwrap_or_default();
            found.extend(said.lines().map(|line| Told::Step(line.into())));
            self.inner(inner, depth, found);
        } else {
            let mut directions = Vec::new();
            self.inner(inner, depth, &mut directions);
            step(text.unwrap_or_default(), name, directions, found);
        }
    }
}

/// A tip, a paragraph a line; one that is named so is a variation.
fn tip(text: Option<String>, name: Option<String>) -> Vec<Told> {
    let varies = name
        .as_ref()
        .is_some_and(|name| name.to_lowercase().starts_with("variation"));
    let said = text.or(name).unwrap_or_default();
    let told = |line: &str| {
        if varies {
            Told::Variation(line.into())
        } else {
            Told::Tip(line.into())
        }
    };
    said.lines().map(told).collect()
}

/// A step: its own words, then those of its directions that they do not hold already.
fn step(text: String, name: Option<String>, directions: Vec<Told>, found: &mut Vec<Told>) {
    let mut said: Vec<String> = text.lines().map(str::to_owned).collect();
    let mut others = Vec::new();
    for told in directions {
        match told {
            Told::Step(words) if text.contains(&words) => {}
            Told::Step(words) => said.push(words),
            other => others.push(other),
        }
    }
    let said = said.join(" ");
    match (named(name, &said), said.is_empty()) {
        (Some(name), true) => found.push(Told::Step(name)),
        // The name of a step is a note to the desk: as a sentence it would tell the cook to do the same thing twice.
        (Some(name), false) => found.push(Told::Step(format!(
            "[{}] {said}",
            name.replace('[', "(").replace(']', ")")
        ))),
        (None, false) => found.push(Told::Step(said)),
        (None, true) => {}
    }
    found.extend(others);
}

/// A step's name, unless it is its number or the beginning of its words.
fn named(name: Option<String>, said: &str) -> Option<String> {
    let name = name?;
    let small = name.trim_end_matches(['.', '…', ':', ' ']).to_lowercase();
    let number = small
        .trim_start_matches("step")
        .trim()
        .chars()
        .all(|letter| letter.is_ascii_digit());
    (!number && !said.to_lowercase().starts_with(&small)).then_some(name)
}
