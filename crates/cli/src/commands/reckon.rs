//! `potwright reckon PAGE`: one dish in full.

use potwright_press::{dossier, text};
use potwright_proof::Query;
use potwright_reckon::Dossier;
use serde::Serialize;

use super::reading;
use crate::arguments::Page;
use crate::{input, output};

/// What `--json` prints; `docs/dossier-json.md` tells its fields.
#[derive(Serialize)]
struct Printed<'a> {
    /// The program and its version.
    program: &'a str,
    /// The answers.
    dossier: &'a Dossier,
    /// The open questions to the author.
    queries: &'a [Query],
}

/// Prints a dish.
pub(crate) fn run(page: &Page, only_reading: bool, json: bool) -> anyhow::Result<()> {
    let opened = input::page(page)?;
    if only_reading {
        return reading::run(&opened, json);
    }
    let cooked = opened.cooked()?;
    if json {
        let program = concat!("potwright ", env!("CARGO_PKG_VERSION"));
        let dossier = &cooked.reckoned.dossier;
        return output::print_json(&Printed {
            program,
            dossier,
            queries: &cooked.queries,
        });
    }
    let page = dossier::page(&cooked.recipe, &cooked.text, &cooked.reckoned, &cooked.queries);
    output::print(text::render(&page, output::WIDTH, output::style()).as_bytes())
}
