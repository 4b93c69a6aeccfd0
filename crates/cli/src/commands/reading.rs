//! `potwright reckon PAGE --reading`: what was read on the page, before anything is cooked.

use std::path::Path;

use potwright_manuscript::{read, reading};
use potwright_press::{Column, Page, Part, text};
use serde_json::Value;

use crate::input::Opened;
use crate::output;

/// Prints what was read, as a page of two tables or as JSON.
pub(crate) fn run(opened: &Opened, json: bool) -> anyhow::Result<()> {
    let id = Path::new(&opened.place)
        .file_stem()
        .map_or(String::new(), |stem| stem.to_string_lossy().into_owned());
    let value = reading(&read(&opened.text), &opened.text, &id);
    if json {
        return output::print_json(&value);
    }
    output::print(text::render(&page(&value), output::WIDTH, output::style()).as_bytes())
}

fn page(reading: &Value) -> Page {
    let list = reading["ingredients"].as_array().map_or(&[][..], Vec::as_slice);
    let method = reading["method"]["operations"]
        .as_array()
        .map_or(&[][..], Vec::as_slice);
    Page {
        title: words(&reading["title"]),
        under: format!(
            "{} · {} lines · {} operations",
            words(&reading["yield"]["text"]),
            list.len(),
            method.len()
        ),
        parts: vec![
            Part::Heading("The list, as read".into()),
            Part::Table {
                columns: vec![
                    Column::right("amount"),
                    Column::left("food"),
                    Column::quiet("preparation"),
                ],
                rows: list.iter().map(line).collect(),
            },
            Part::Heading("The method, as read".into()),
            Part::Table {
                columns: vec![
                    Column::left("what"),
                    Column::left("foods"),
                    Column::right("minutes"),
                    Column::quiet("how"),
                ],
                rows: method.iter().map(operation).collect(),
            },
        ],
    }
}

fn line(line: &Value) -> Vec<String> {
    let amount = [words(&line["amount"]["text"]), words(&line["unit"])].join(" ");
    vec![amount.trim().into(), words(&line["items"]), words(&line["preparation"])]
}

fn operation(operation: &Value) -> Vec<String> {
    let minutes = match operation["minutes"].as_array().map(Vec::as_slice) {
        Some([low, high]) if low == high => words(low),
        Some([low, high]) => format!("{} to {}", words(low), words(high)),
        _ => String::new(),
    };
    let how = ["into", "heat", "temperature", "cover", "cue"].map(|word| words(&operation[word]));
    let how: Vec<&str> = how.iter().map(String::as_str).filter(|word| !word.is_empty()).collect();
    vec![
        words(&operation["verb"]),
        words(&operation["foods"]),
        minutes,
        how.join("; "),
    ]
}

/// A value in words: nothing for null, a list with commas, the parts of an object in a row.
fn words(value: &Value) -> String {
    match value {
        Value::Null => String::new(),
        Value::String(text) => text.clone(),
        Value::Number(number) => number
            .as_f64()
            .map_or_else(|| number.to_string(), |number| number.to_string()),
        Value::Array(items) => items.iter().map(words).collect::<Vec<_>>().join(", "),
        Value::Object(parts) => parts.values().map(words).collect::<Vec<_>>().join(" "),
        Value::Bool(truth) => truth.to_string(),
    }
}
