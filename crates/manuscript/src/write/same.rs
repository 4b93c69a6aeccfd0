//! Whether a page set afresh is the same recipe: the same reading, and no word lost.

use potwright_measure::{Exact, GasMark, WrittenTemperature};
use serde_json::Value;

use crate::line::read as read_line;
use crate::token::tokens;
use crate::{BlockKind, Ingredient, Recipe, Span, read, reading};

use super::names::renamed;
use super::style::HouseStyle;
use super::{line, prose};

/// A typed line in house style; `None` where it would be read otherwise or lose a word.
pub(super) fn line_in_style(typed: &str, style: &HouseStyle) -> Option<String> {
    let had = entries(typed);
    let afresh = match had.as_slice() {
        [one] => line::line(one, style),
        _ => None,
    };
    let same = |set: &String| plain(&entries(set)) == plain(&had);
    afresh
        .filter(|set| loses_nothing(typed, set) && same(set))
        .or_else(|| Some(prose::spelt(typed, style)).filter(same))
}

fn entries(text: &str) -> Vec<Ingredient> {
    read_line(text, Span::new(0, text.len()), &[]).entries
}

/// What was read, without places.
fn plain(entries: &[Ingredient]) -> Value {
    let mut value = serde_json::to_value(entries).unwrap_or_default();
    without(&mut value, &["span", "line"]);
    value
}

/// Whether every word of `typed` stands in `set`, and as often; units and numbers may be spelt otherwise, the
/// reading answers for them.
fn loses_nothing(typed: &str, set: &str) -> bool {
    let words = |text: &str| {
        let found = tokens(text, Span::new(0, text.len()));
        let words = found.iter().filter(|token| token.is_word());
        let mut words: Vec<String> = words
            .map(|token| match potwright_measure::Unit::from_spelling(token.text) {
                Some(unit) => unit.name().to_owned(),
                None => token.lower.to_string(),
            })
            .filter(|word| !matches!(word.as_str(), "of" | "a" | "an" | "the" | "and" | "to" | "each"))
            .collect();
        words.sort();
        words
    };
    let (had, has) = (words(typed), words(set));
    let mut left = has.iter().peekable();
    had.iter().all(|word| {
        while left.peek().is_some_and(|next| *next < word) {
            left.next();
        }
        left.next_if(|next| *next == word).is_some()
    })
}

/// Whether the page that was set is the recipe that was typed.
pub(super) fn page(recipe: &Recipe, text: &str, set: &str, style: &HouseStyle) -> bool {
    let again = read(set);
    let kept = recipe
        .blocks
        .iter()
        .filter(|block| !matches!(block.kind, BlockKind::Gap | BlockKind::PartHeading));
    let typed: Vec<&str> = kept.map(|block| block.span.of(text)).collect();
    let typed = renamed(&typed.join("\n"), style.names);
    loses_nothing(&typed, set) && alike(&outline(recipe, text, style), &outline(&again, set, style))
}

/// Two scales of one temperature are this far apart at most, in kelvins: half a step of a dial in degrees Celsius and
/// in gas marks (common practice, no source; calibration may move it by half).
const SAME_SETTING: f64 = 6.0;

/// Equal, but for the scale in which a temperature is given.
fn alike(one: &Value, other: &Value) -> bool {
    match (one, other) {
        (Value::Object(a), Value::Object(b)) => {
            if let (Some(a), Some(b)) = (celsius(one), celsius(other)) {
                return (a - b).abs() <= SAME_SETTING;
            }
            a.len() == b.len() && a.iter().all(|(key, a)| b.get(key).is_some_and(|b| alike(a, b)))
        }
        (Value::Array(a), Value::Array(b)) => a.len() == b.len() && a.iter().zip(b).all(|(a, b)| alike(a, b)),
        _ => one == other,
    }
}

/// The temperature that a reading gives as its number and its scale.
fn celsius(value: &Value) -> Option<f64> {
    let number = value.get("value")?.as_f64()?;
    let written = match value.get("unit")?.as_str()? {
        "C" => WrittenTemperature::Celsius(number),
        "F" => WrittenTemperature::Fahrenheit(number),
        _ => WrittenTemperature::Gas(GasMark::from_number(Exact::nearest(number, 4)?)?),
    };
    Some(written.temperature().celsius())
}

/// The reading without the words that the house may spell otherwise.
fn outline(recipe: &Recipe, text: &str, style: &HouseStyle) -> Value {
    let mut value = reading(recipe, text, "");
    without(&mut value, &["raw", "text", "section", "temperatures"]);
    spelt(&mut value, style);
    value
}

/// Takes these entries out wherever they stand.
fn without(value: &mut Value, keys: &[&str]) {
    match value {
        Value::Object(entries) => {
            for key in keys {
                entries.remove(*key);
            }
            entries.values_mut().for_each(|inner| without(inner, keys));
        }
        Value::Array(values) => values.iter_mut().for_each(|inner| without(inner, keys)),
        _ => {}
    }
}

/// Words of the page in the spelling of the house, so that only their meaning is compared.
fn spelt(value: &mut Value, style: &HouseStyle) {
    match value {
        Value::String(words) => *words = renamed(&prose::spelt(words, style), style.names),
        Value::Object(entries) => entries.values_mut().for_each(|inner| spelt(inner, style)),
        Value::Array(values) => values.iter_mut().for_each(|inner| spelt(inner, style)),
        _ => {}
    }
}
