//! `potwright proof PAGE`: the author queries at their words.

use potwright_press::margin;
use potwright_proof::{Query, Weight};

use crate::arguments::Page;
use crate::{input, output};

/// Prints the queries on a page and counts them.
pub(crate) fn run(page: &Page, json: bool) -> anyhow::Result<()> {
    let opened = input::page(page)?;
    let cooked = opened.cooked()?;
    if json {
        return output::print_json(&cooked.queries);
    }
    let mut out = margin::render(
        &cooked.queries,
        &cooked.text,
        &opened.place,
        output::WIDTH,
        output::style(),
    );
    if !out.is_empty() {
        out.push_str("\n\n");
    }
    out.push_str(&count(&cooked.queries));
    output::print(out.as_bytes())
}

/// '3 queries: 1 must settle, 2 worth a look'.
fn count(queries: &[Query]) -> String {
    let of = |weight: Weight| queries.iter().filter(|query| query.weight == weight).count();
    let parts: Vec<String> = [Weight::MustSettle, Weight::WorthALook, Weight::HouseStyle]
        .into_iter()
        .filter(|weight| of(*weight) > 0)
        .map(|weight| format!("{} {}", of(weight), weight.words()))
        .collect();
    match queries.len() {
        0 => "no queries\n".into(),
        1 => format!("1 query: {}\n", parts.join(", ")),
        several => format!("{several} queries: {}\n", parts.join(", ")),
    }
}
