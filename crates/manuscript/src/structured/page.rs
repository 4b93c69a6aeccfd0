//! A recipe of data as a typed page: title, headnote, yield, times, list, method, notes, tools.

use serde_json::{Map, Value};

use super::find::{Within, words};
use super::ingredients::{lines, time, yields};
use super::instructions::{Told, told};
use super::{Left, TypedPage};

/// Properties that only say what the data is.
const FORM: [&str; 4] = ["@context", "@type", "@id", "mainEntityOfPage"];

/// The page of a recipe.
pub(super) fn page<'d>(recipe: &'d Map<String, Value>, within: &Within<'d>) -> TypedPage {
    let mut taken: Vec<&str> = FORM.to_vec();
    let mut get = |names: &[&'static str]| {
        let found = names
            .iter()
            .find_map(|name| recipe.get(*name).filter(|value| !value.is_null()).map(|v| (*name, v)));
        found.map(|(name, value)| {
            taken.push(name);
            value
        })
    };
    let title = get(&["name", "headline"])
        .and_then(words)
        .unwrap_or_default()
        .replace('\n', " ");
    let mut sheet = Sheet::default();
    sheet.block(vec![title.clone()]);
    let description = get(&["description"]).and_then(words).unwrap_or_default();
    description.lines().for_each(|line| sheet.block(vec![line.to_owned()]));
    let mut head = get(&["recipeYield", "yield"]).map_or(Vec::new(), |value| yields(value, within));
    let mut unsaid: Vec<(&str, &Value)> = Vec::new();
    for (names, label) in [
        (&["prepTime"][..], "Preparation time"),
        (&["cookTime", "performTime"][..], "Cooking time"),
        (&["totalTime"][..], "Total time"),
    ] {
        if let Some(value) = get(names) {
            match time(value, within) {
                Some(said) => head.push(format!("{label}: {said}")),
                None => unsaid.push((names[0], value)),
            }
        }
    }
    sheet.block(head);
    let list = get(&["recipeIngredient", "ingredients", "supply"]).map_or(Vec::new(), |value| lines(value, within));
    if !list.is_empty() {
        sheet.block(vec!["Ingredients".into()]);
        sheet.block(list);
    }
    let method = get(&["recipeInstructions", "step", "steps"]).map_or(Vec::new(), |value| told(value, within));
    let mut left = method_blocks(&method, &mut sheet);
    if let Some(tools) = get(&["tool"])
        .map(|value| lines(value, within))
        .filter(|tools| !tools.is_empty())
    {
        sheet.block(vec!["Equipment".into()]);
        sheet.block(tools);
    }
    let others = recipe
        .iter()
        .filter(|(key, value)| !taken.contains(&key.as_str()) && !value.is_null());
    let others = others.map(|(key, value)| (key.as_str(), value)).chain(unsaid);
    let mut all: Vec<Left> = others
        .map(|(key, value)| Left {
            property: key.into(),
            value: as_text(value),
        })
        .collect();
    all.append(&mut left);
    TypedPage {
        title,
        text: sheet.text,
        left: all,
    }
}

/// Steps with their headings, then variations, then notes; what has no place is handed back.
fn method_blocks(method: &[Told], sheet: &mut Sheet) -> Vec<Left> {
    let mut left = Vec::new();
    let (mut variations, mut notes) = (Vec::new(), Vec::new());
    let mut number = 0;
    for told in method {
        match told {
            Told::Heading(name) => {
                method_heading(&mut number, sheet);
                let name = name.trim().trim_end_matches(':');
                sheet.block(vec![format!("{name}:")]);
            }
            Told::Step(said) => {
                method_heading(&mut number, sheet);
                sheet.block(vec![format!("{number}. {}", unnumbered(said))]);
                number += 1;
            }
            Told::Tip(said) => notes.push(said.clone()),
            Told::Variation(said) => variations.push(said.clone()),
            Told::Left(property, value) => left.push(Left {
                property: property.clone(),
                value: as_text(value),
            }),
        }
    }
    for (heading, said) in [("Variations", variations), ("Notes", notes)] {
        if !said.is_empty() {
            sheet.block(vec![heading.into()]);
            said.into_iter().for_each(|said| sheet.block(vec![said]));
        }
    }
    left
}

/// The heading of the method, before its first part.
fn method_heading(number: &mut usize, sheet: &mut Sheet) {
    if *number == 0 {
        sheet.block(vec!["Method".into()]);
        *number = 1;
    }
}

/// A step without the number it brings itself.
fn unnumbered(said: &str) -> &str {
    let rest = said.trim_start_matches(|letter: char| letter.is_ascii_digit());
    let figures = said.len() - rest.len();
    match rest.strip_prefix(['.', ')']) {
        Some(rest) if (1..=2).contains(&figures) && rest.starts_with(' ') => rest.trim_start(),
        _ => said,
    }
}

fn as_text(value: &Value) -> String {
    match value {
        Value::String(text) => text.clone(),
        other => other.to_string(),
    }
}

/// A page that grows block by block.
#[derive(Default)]
struct Sheet {
    text: String,
}

impl Sheet {
    /// Lines that stand together, a blank line before them.
    fn block(&mut self, lines: Vec<String>) {
        let lines: Vec<String> = lines.into_iter().filter(|line| !line.trim().is_empty()).collect();
        if lines.is_empty() {
            return;
        }
        if !self.text.is_empty() {
            self.text.push('\n');
        }
        for line in lines {
            self.text.push_str(&line);
            self.text.push('\n');
        }
    }
}
