//! `potwright convert PAGE`: the plain factor method.

use anyhow::{Context, bail};
use potwright_measure::Exact;
use potwright_plan::{BatchSize, MeasuresWanted, Request, WarningKind, convert};
use potwright_press::text;

use crate::arguments::{Measures, Page};
use crate::{input, output};

/// Prints the page re-set, with what the method does not solve.
pub(crate) fn run(page: &Page, size: BatchSize, measures: Option<Measures>, json: bool) -> anyhow::Result<()> {
    if size == BatchSize::AsWritten && measures.is_none() {
        bail!("nothing to convert: say --for how many, --times how often, or --measures metric, us or both");
    }
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
    if let Some(refused) = converted
        .warnings
        .iter()
        .find(|warning| warning.kind == WarningKind::Size)
    {
        bail!(
            "{}: {} (--times FACTOR)",
            opened.place,
            refused.text.trim_end_matches('.')
        );
    }
    if json {
        return output::print_json(&converted);
    }
    output::print(text::printable(&converted.text()).as_bytes())
}

/// How much is wanted, from what stands behind `--for` and `--times`.
pub(crate) fn size(people: Option<&str>, times: Option<&str>) -> anyhow::Result<BatchSize> {
    Ok(match (people, times) {
        (Some(words), _) => BatchSize::ForServings(number("--for", words, "a number of people, such as --for 40")?),
        (None, Some(words)) => BatchSize::Times(number("--times", words, "a factor, such as --times 2.5")?),
        (None, None) => BatchSize::AsWritten,
    })
}

fn number(option: &str, words: &str, wanted: &str) -> anyhow::Result<Exact> {
    let number: Exact = words
        .parse()
        .ok()
        .with_context(|| format!("{option} {words}: give {wanted}"))?;
    if !number.is_positive() {
        bail!("{option} {words}: it must be above nought; give {wanted}");
    }
    Ok(number)
}
