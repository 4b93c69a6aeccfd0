//! `potwright convert PAGE`: the plain factor method.

use anyhow::{Context, bail};
use potwright_measure::Exact;
use potwright_plan::{BatchSize, MeasuresWanted, Request, convert};
use potwright_press::text;

use crate::arguments::{Measures, Page};
use crate::{input, output};

/// Prints the page re-set, with what the method does not solve.
pub(crate) fn run(page: &Page, people: Option<&str>, measures: Option<Measures>, json: bool) -> anyhow::Result<()> {
    if people.is_none() && measures.is_none() {
        bail!("nothing to convert: say --for how many, or --measures metric, us or both");
    }
    let size = match people {
        Some(words) => BatchSize::ForServings(number(words)?),
        None => BatchSize::AsWritten,
    };
    let opened = input::page(page)?;
    let recipe = potwright_manuscript::read(&opened.text);
    let book = opened.house.book();
    let request = Request {
        size,
        measures: match measures {
            Some(Measures::Metric) => MeasuresWanted::Metric,
            Some(Measures::Us) => MeasuresWanted::Us,
            Some(Measures::Both) => MeasuresWanted::Both,
            None => MeasuresWanted::AsWritten,
        },
        home: book.settings.measures,
        kitchen: book.kitchen.clone(),
    };
    let converted = convert(&recipe, &opened.text, &request, opened.house.larder());
    if json {
        return output::print_json(&converted);
    }
    output::print(text::printable(&converted.text()).as_bytes())
}

fn number(words: &str) -> anyhow::Result<Exact> {
    let number: Exact = words
        .parse()
        .ok()
        .with_context(|| format!("--for {words}: give a number of people, such as --for 40"))?;
    if !number.is_positive() {
        bail!("--for {words}: the number of people must be above nought");
    }
    Ok(number)
}
