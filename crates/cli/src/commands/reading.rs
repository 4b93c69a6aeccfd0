//! `potwright reckon PAGE --reading`: what was read on the page, before anything is cooked.

use std::path::Path;

use potwright_manuscript::{Ingredient, Recipe, explained, read, reading};
use potwright_press::{Column, Page, Part, text};
use serde_json::Value;

use crate::input::Opened;
use crate::output;

/// Prints what was read, as a page of two tables or as JSON.
pub(crate) fn run(opened: &Opened, json: bool) -> anyhow::Result<()> {
    let id = Path::new(&opened.place)
        .file_stem()
        .map_or(String::new(), |stem| stem.to_string_lossy().into_owned());
    let recipe = read(&opened.text);
    let value = reading(&recipe, &opened.text, &id);
    if json {
        return output::print_json(&value);
    }
    let mut page = page(&value);
    page.parts.extend(word_by_word(&recipe, &opened.text));
    page.parts.extend(not_sure(&recipe, &opened.text));
    output::print(text::render(&page, output::WIDTH, output::style()).as_bytes())
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

/// Every stretch of every line: what it was taken for, and what its words can be elsewhere.
fn word_by_word(recipe: &Recipe, text: &str) -> Vec<Part> {
    let rows = |(number, entry): (usize, &Ingredient)| {
        let stretches = explained(text, entry).into_iter().enumerate();
        stretches
            .map(|(at, stretch)| {
                let number = if at == 0 {
                    (number + 1).to_string()
                } else {
                    String::new()
                };
                let known = if stretch.known_as.is_empty() {
                    "in no table".to_owned()
                } else {
                    stretch.known_as.join(", ")
                };
                let figures = stretch.words.text.chars().all(|c| !c.is_alphabetic());
                let known = if figures { "a number".to_owned() } else { known };
                vec![number, stretch.words.text, stretch.taken.name().to_owned(), known]
            })
            .collect::<Vec<_>>()
    };
    vec![
        Part::Heading("The list, word by word".into()),
        Part::Table {
            columns: vec![
                Column::right("line"),
                Column::left("words"),
                Column::left("taken as"),
                Column::quiet("the tables know them as"),
            ],
            rows: recipe.ingredients.iter().enumerate().flat_map(rows).collect(),
        },
    ]
}

/// Where the reader was not sure, and what it took meanwhile.
fn not_sure(recipe: &Recipe, text: &str) -> Vec<Part> {
    let rows: Vec<Vec<String>> = recipe
        .unsure
        .iter()
        .map(|unsure| {
            let words = unsure.span.of(text).split_whitespace().collect::<Vec<_>>().join(" ");
            vec![words, unsure.what.clone(), unsure.taken_as.clone().unwrap_or_default()]
        })
        .collect();
    if rows.is_empty() {
        return Vec::new();
    }
    vec![
        Part::Heading("Not sure of".into()),
        Part::Table {
            columns: vec![
                Column::left("words"),
                Column::left("why"),
                Column::quiet("taken meanwhile as"),
            ],
            rows,
        },
    ]
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
