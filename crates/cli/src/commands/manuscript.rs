//! `potwright manuscript PAGE`: a page in house style; with `-o FILE` in another form – for the editor, as data, as
//! typed text.

use std::fs;
use std::io::{ErrorKind, Write as _};
use std::path::Path;

use anyhow::{Context, bail};
use potwright_book::house_style::Systems;
use potwright_house::Cooked;
use potwright_manuscript::files::{OWN_NAME, Remark, to_docx};
use potwright_manuscript::structured::{Computed, Nutrition, recipe_json};
use potwright_manuscript::write::in_house_style;
use potwright_plan::{BatchSize, MeasuresWanted, Request, convert};
use potwright_press::text;
use potwright_proof::Query;
use potwright_reckon::{Dossier, Known};

use crate::arguments::Page;
use crate::input::Opened;
use crate::{input, output};

/// Prints the page in house style, or writes it to a file.
pub(crate) fn run(page: &Page, file: Option<&Path>) -> anyhow::Result<()> {
    match file {
        Some(file) => to_file(page, file),
        None => in_style(page),
    }
}

/// Prints the page in the style of its book's house, and says what stands in it as it was typed.
fn in_style(page: &Page) -> anyhow::Result<()> {
    let opened = input::page(page)?;
    let house = &opened.house.book().settings.house;
    let measures = match house.systems {
        Systems::AsTyped => None,
        Systems::Metric => Some(MeasuresWanted::Metric),
        Systems::Us => Some(MeasuresWanted::Us),
        Systems::Both => Some(MeasuresWanted::Both),
    };
    let text = match measures {
        Some(measures) => re_measured(&opened, measures),
        None => opened.text.clone(),
    };
    let written = in_house_style(&text, &house.style);
    output::print(text::printable(&written.text).as_bytes())?;
    for part in &written.as_typed {
        output::say("as typed", &format!("{}: {}", part.words, part.why));
    }
    Ok(())
}

/// The page in other measures, by the plain factor method.
fn re_measured(opened: &Opened, measures: MeasuresWanted) -> String {
    let book = opened.house.book();
    let request = Request {
        size: BatchSize::AsWritten,
        measures,
        home: book.settings.measures,
        kitchen: book.kitchen.clone(),
    };
    let recipe = potwright_manuscript::read(&opened.text);
    let converted = convert(&recipe, &opened.text, &request, opened.house.larder());
    let (mut out, mut from) = (String::new(), 0);
    for change in converted
        .changes
        .iter()
        .filter(|change| change.span.start <= change.span.end)
    {
        // What overlaps the change before is left as it was.
        if let Some(before) = opened.text.get(from..change.span.start) {
            out.push_str(before);
            out.push_str(&change.now);
            from = change.span.end;
        }
    }
    out.push_str(opened.text.get(from..).unwrap_or(""));
    out
}

/// Writes the page to a new file whose ending says in which form.
fn to_file(page: &Page, file: &Path) -> anyhow::Result<()> {
    let ending = file
        .extension()
        .map_or(String::new(), |end| end.to_string_lossy().to_lowercase());
    if !matches!(ending.as_str(), "docx" | "jsonld" | "json" | "txt") {
        bail!(
            "'{}' does not say in which form: .docx for the editor, .jsonld for schema.org/Recipe, .txt for typed text",
            file.display()
        );
    }
    let opened = input::page(page)?;
    let bytes = match ending.as_str() {
        "txt" => opened.text.clone().into_bytes(),
        "docx" => {
            let cooked = opened.cooked()?;
            to_docx(&cooked.text, &remarks(&cooked.queries))?
        }
        _ => {
            let cooked = opened.cooked()?;
            data(&cooked)?
        }
    };
    write_new(file, &bytes)?;
    output::say("note", &format!("written to {}", file.display()));
    Ok(())
}

/// The open queries as comments of the program's own.
fn remarks(queries: &[Query]) -> Vec<Remark> {
    let remark = |query: &Query| {
        let suggests = query.try_words.as_ref().map(|words| format!("Perhaps: {words}"));
        let lines = [Some(query.asks.clone()), Some(query.because.clone()), suggests];
        let lines: Vec<String> = lines.into_iter().flatten().filter(|line| !line.is_empty()).collect();
        Remark {
            span: query.span,
            author: OWN_NAME.into(),
            text: lines.join("\n"),
        }
    };
    queries.iter().map(remark).collect()
}

/// The dish as schema.org/Recipe, with what was computed.
fn data(cooked: &Cooked) -> anyhow::Result<Vec<u8>> {
    let dossier = &cooked.reckoned.dossier;
    let computed = Computed {
        yields: Some(format!("{:.1} kg", dossier.yield_mass.value)),
        total_minutes: Some(dossier.elapsed.value),
        nutrition: Some(nutrition(dossier)),
    };
    let value = recipe_json(&cooked.text, &cooked.recipe, &computed);
    let mut text = serde_json::to_string_pretty(&value)?;
    text.push('\n');
    Ok(text.into_bytes())
}

/// What is known of a portion, read off the dossier.
fn nutrition(dossier: &Dossier) -> Nutrition {
    let row = |name: &str| {
        let row = dossier.nutrition.iter().find(|row| row.name == name)?;
        (row.per_portion.known != Known::NotComputed).then_some(row.per_portion.value)
    };
    Nutrition {
        portion_g: Some(dossier.portion_mass.value),
        energy_kcal: row("Energy"),
        fat_g: row("Fat"),
        saturated_fat_g: row("of which saturates"),
        carbohydrate_g: row("Carbohydrate"),
        sugar_g: row("of which sugars"),
        fibre_g: row("Fibre"),
        protein_g: row("Protein"),
        sodium_mg: row("Sodium"),
        cholesterol_mg: row("Cholesterol"),
    }
}

/// Writes a file that is not there yet.
fn write_new(file: &Path, bytes: &[u8]) -> anyhow::Result<()> {
    let written = fs::File::create_new(file).and_then(|mut open| open.write_all(bytes));
    match written {
        Err(error) if error.kind() == ErrorKind::AlreadyExists => {
            bail!(
                "{} is there already and is not overwritten; name a new file",
                file.display()
            )
        }
        other => other.with_context(|| format!("cannot write {}", file.display())),
    }
}
