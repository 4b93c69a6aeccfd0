//! What goes in, for how many, how long it takes: properties of data as lines of a page.

use serde_json::{Map, Value};

use super::duration;
use super::find::{Within, words};

/// The lines of a list of ingredients or tools.
pub(super) fn lines(value: &Value, within: &Within) -> Vec<String> {
    let said = within.each(value).into_iter().filter_map(one);
    said.flat_map(|text| text.lines().map(str::to_owned).collect::<Vec<_>>())
        .collect()
}

/// An ingredient: its words, or its amount, unit and name.
fn one(value: &Value) -> Option<String> {
    let Value::Object(object) = value else {
        return words(value);
    };
    let name = object.get("name").or_else(|| object.get("item")).and_then(words);
    let amount = ["requiredQuantity", "amount", "value", "quantity"]
        .iter()
        .find_map(|key| object.get(*key));
    let Some(name) = name else { return words(value) };
    let amount = amount.and_then(|amount| quantity(amount, object));
    Some(amount.map_or(name.clone(), |amount| format!("{amount} {name}")))
}

/// '2 kg': a number with the unit that stands beside it.
fn quantity(value: &Value, beside: &Map<String, Value>) -> Option<String> {
    let (number, unit) = match value {
        Value::Object(object) => (range(object)?, object),
        plain => (words(plain)?, beside),
    };
    let unit = ["unitText", "unitCode", "unit"]
        .iter()
        .find_map(|key| unit.get(*key))
        .and_then(words);
    Some(unit.map_or(number.clone(), |unit| format!("{number} {unit}")))
}

/// The number of a quantity, or its two ends.
fn range(object: &Map<String, Value>) -> Option<String> {
    let number = |key: &str| object.get(key).and_then(words);
    match (number("value"), number("minValue"), number("maxValue")) {
        (Some(value), ..) => Some(value),
        (None, Some(low), Some(high)) => Some(format!("{low} to {high}")),
        (None, low, high) => low.or(high),
    }
}

/// No more yields of one recipe are looked at.
const YIELDS: usize = 16;
/// Words that a yield line begins with.
const OPENERS: [&str; 7] = ["serves", "makes", "yield", "yields", "feeds", "for", "enough"];
/// Words for those who eat.
const PEOPLE: [&str; 6] = ["serving", "servings", "portion", "portions", "people", "persons"];

/// The yield as lines; what says the same number with fewer words is not said twice.
pub(super) fn yields(value: &Value, within: &Within) -> Vec<String> {
    let said = within
        .each(value)
        .into_iter()
        .take(YIELDS)
        .filter_map(|value| match value {
            Value::Object(object) => {
                let unit = object.get("unitText").and_then(words);
                let number = range(object).or_else(|| words(value))?;
                Some(unit.map_or(number.clone(), |unit| format!("{number} {unit}")))
            }
            plain => words(plain),
        });
    let said: Vec<String> = said.map(|words| words.replace('\n', ", ")).collect();
    let repeats = |at: usize, words: &str| {
        let longer = |(other, text): (usize, &String)| {
            other != at && text.split_whitespace().any(|word| word == words) && (text.len() > words.len() || other < at)
        };
        bare(words) && said.iter().enumerate().any(longer)
    };
    said.iter()
        .enumerate()
        .filter(|(at, words)| !repeats(*at, words))
        .map(|(_, words)| yield_line(words))
        .collect()
}

/// Whether nothing but a number or range stands there.
fn bare(words: &str) -> bool {
    !words.contains(|letter: char| !(letter.is_ascii_digit() || " .,-–/".contains(letter)))
}

/// A yield in the words that a page uses.
fn yield_line(words: &str) -> String {
    let small = words.to_lowercase();
    let mut each = small
        .split(|letter: char| !letter.is_alphanumeric())
        .filter(|word| !word.is_empty());
    let first = each.next().unwrap_or("");
    let people = each.any(|word| PEOPLE.contains(&word));
    let counted = first.starts_with(|letter: char| letter.is_ascii_digit());
    match () {
        () if bare(words) || small.strip_suffix(" to") == Some(first) => format!("Serves {words}"),
        () if OPENERS.contains(&first) || counted && people => words.to_owned(),
        () if counted => format!("Makes {words}"),
        () => format!("Yield: {words}"),
    }
}

/// A time as a line of the page: '1 hour 30 minutes', or its own words where it is no duration. Nought says nothing.
pub(super) fn time(value: &Value, within: &Within) -> Option<String> {
    let said = words(within.each(value).first()?)?;
    match duration::minutes(&said) {
        Some(minutes) => Some(duration::words(minutes)).filter(|words| !words.is_empty()),
        None => Some(said.replace('\n', " ")),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use serde_json::json;

    /// What each value says is what its words say; hand-read.
    #[test]
    fn yields_in_a_page_s_words() {
        for (value, expected) in [
            (json!("6"), vec!["Serves 6"]),
            (json!(6), vec!["Serves 6"]),
            (json!("4-6"), vec!["Serves 4-6"]),
            (json!("6 servings"), vec!["6 servings"]),
            (json!(["6", "6 servings"]), vec!["6 servings"]),
            (json!("24 biscuits"), vec!["Makes 24 biscuits"]),
            (json!("Serves 4 to 6"), vec!["Serves 4 to 6"]),
            (json!("a big pot"), vec!["Yield: a big pot"]),
            (
                json!({"@type": "QuantitativeValue", "value": 2, "unitText": "litres"}),
                vec!["Makes 2 litres"],
            ),
            (json!(["8", "Makes 2 loaves"]), vec!["Serves 8", "Makes 2 loaves"]),
        ] {
            let within = Within::new(&Value::Null);
            assert_eq!(yields(&value, &within), expected, "{value}");
        }
    }
}
