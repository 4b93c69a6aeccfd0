//! Finding recipes in data: bare, in a list, in a graph, inside a saved web page, referred to by key.

use std::collections::BTreeMap;

use serde_json::{Map, Value};

use super::error::StructuredError;
use super::markup;

/// The data of a text: one of a JSON file, one a script of a web page.
///
/// # Errors
///
/// No JSON; a web page without any.
pub(super) fn data(text: &str) -> Result<Vec<Value>, StructuredError> {
    let text = text.trim_start_matches('\u{feff}').trim_start();
    if !markup::is_web_page(text) {
        return parsed(text).map(|value| vec![value]);
    }
    let scripts = markup::scripts(text);
    let mut fault = StructuredError::NoData;
    let mut found = Vec::new();
    for script in scripts {
        match parsed(script) {
            Ok(value) => found.push(value),
            Err(error) => fault = error,
        }
    }
    if found.is_empty() { Err(fault) } else { Ok(found) }
}

/// The value of a JSON text. Line ends and tabs inside strings are taken as they are meant, though JSON forbids them.
fn parsed(text: &str) -> Result<Value, StructuredError> {
    let first = match serde_json::from_str(text) {
        Ok(value) => return Ok(value),
        Err(error) => error,
    };
    let spaced: String = text
        .chars()
        .map(|letter| if letter.is_control() { ' ' } else { letter })
        .collect();
    serde_json::from_str(&spaced).map_err(|_| StructuredError::NotJson(first.line(), first.column(), first.to_string()))
}

/// Data with its objects by key.
pub(super) struct Within<'d> {
    data: &'d Value,
    by_key: BTreeMap<&'d str, &'d Value>,
}

impl<'d> Within<'d> {
    pub(super) fn new(data: &'d Value) -> Self {
        let mut by_key = BTreeMap::new();
        each(data, &mut |object, value| {
            if let (Some(key), true) = (object.get("@id").and_then(Value::as_str), object.len() > 1) {
                by_key.entry(key).or_insert(value);
            }
        });
        Within { data, by_key }
    }

    /// The recipes in order.
    pub(super) fn recipes(&self) -> Vec<&'d Map<String, Value>> {
        let mut found = Vec::new();
        each(self.data, &mut |object, _| {
            if is_a(object, "Recipe") {
                found.push(object);
            }
        });
        found
    }

    /// A value, or what it refers to.
    pub(super) fn value(&self, value: &'d Value) -> &'d Value {
        let key = value
            .as_object()
            .filter(|object| object.len() == 1)
            .and_then(|object| object.get("@id"));
        key.and_then(Value::as_str)
            .and_then(|key| self.by_key.get(key))
            .copied()
            .unwrap_or(value)
    }

    /// The values of a list, or the one value.
    pub(super) fn each(&self, value: &'d Value) -> Vec<&'d Value> {
        match self.value(value) {
            Value::Array(values) => values.iter().map(|value| self.value(value)).collect(),
            Value::Null => Vec::new(),
            Value::Object(object) if object.contains_key("@list") => object
                .get("@list")
                .and_then(Value::as_array)
                .map_or(Vec::new(), |values| values.iter().collect()),
            one => vec![one],
        }
    }
}

/// Every object of some data, outer before inner. The depth is bounded by the reader of JSON (128).
fn each<'d>(value: &'d Value, found: &mut impl FnMut(&'d Map<String, Value>, &'d Value)) {
    let mut open = vec![value];
    while let Some(value) = open.pop() {
        match value {
            Value::Object(object) => {
                found(object, value);
                open.extend(object.values().rev());
            }
            Value::Array(values) => open.extend(values.iter().rev()),
            _ => {}
        }
    }
}

/// Whether an object is of a type of the vocabulary, however that is written.
pub(super) fn is_a(object: &Map<String, Value>, name: &str) -> bool {
    let fits = |value: &Value| {
        value
            .as_str()
            .is_some_and(|of| of.rsplit(['/', '#', ':']).next() == Some(name))
    };
    match object.get("@type") {
        Some(Value::Array(types)) => types.iter().any(fits),
        Some(one) => fits(one),
        None => false,
    }
}

/// The plain words of a value: a text, a number, or an object that names something.
pub(super) fn words(value: &Value) -> Option<String> {
    match value {
        Value::String(text) => Some(markup::plain(text)),
        Value::Number(number) => Some(number.to_string()),
        Value::Object(object) => {
            let of = ["@value", "text", "name", "value"]
                .iter()
                .find_map(|key| object.get(*key));
            of.filter(|value| value.is_string() || value.is_number())
                .and_then(words)
        }
        _ => None,
    }
    .filter(|words| !words.is_empty())
}
