//! `cargo xtask prove proof`: what the author queries find of the faults planted in sound pages, and how often a query is
//! right.
//!
//! The planter and its tables are those of the test `crates/proof/tests/planted.rs`; here every page is cooked with all
//! draws, as the program cooks it. Verdicts on queries were given by hand.

#[path = "../../../crates/proof/tests/planted/planter.rs"]
mod planter;
mod precision;

use std::collections::BTreeMap;
use std::path::Path;

use anyhow::{Error, Result};
use potwright_proof::Weight;
use potwright_reckon::DRAWS;

use super::figures::{Figures, Table, meant};
use planter::{Fault, Page, Planted, plant};

/// Of a hundred planted faults, so many are to be found.
const FOUND_PERCENT: f64 = 95.0;

pub(super) fn work(root: &Path) -> Result<Figures> {
    let planted = plant(root, DRAWS).map_err(Error::msg)?;
    let mut tables = vec![
        families(&planted.faults),
        kinds(&planted.faults),
        misses(&planted.faults),
        sound(&planted.pages),
    ];
    tables.extend(precision::tables(root)?);
    Ok(Figures {
        title: "Author queries: faults found, and queries that are right".into(),
        says: says(&planted),
        tables,
    })
}

fn says(planted: &Planted) -> String {
    let unusual = planted.faults.iter().filter(|fault| !fault.usual).count();
    format!(
        "{} faults are planted, one at a time, in {} sound pages (`crates/proof/tests/planted/`): an edit of plain text, \
         {unusual} of them in words that are not the first to come to mind for the fault. They were written down without a look at \
         the rules, and before there were any but those of list and method. A fault is found when a query of a rule that answers to its kind (`kinds.tsv`), which the \
         sound page does not raise there, stands on the words at fault. Pages are cooked by {DRAWS} draws in the kitchen that \
         the program takes when none is described. Who planted knows what a cook or an editor would call wrong; how often \
         such faults stand in real drafts is not shown here.",
        planted.faults.len(),
        planted.pages.len(),
    )
}

/// How many of them are found, of how many.
#[derive(Clone, Copy, Default)]
struct Share {
    found: usize,
    all: usize,
}

impl Share {
    fn of<'a>(faults: impl Iterator<Item = &'a Fault>) -> Self {
        faults.fold(Share::default(), |share, fault| Share {
            found: share.found + usize::from(fault.found),
            all: share.all + 1,
        })
    }

    fn percent(self) -> f64 {
        100.0 * self.found as f64 / self.all.max(1) as f64
    }

    fn cells(self) -> [String; 3] {
        [
            self.found.to_string(),
            self.all.to_string(),
            format!("{:.0} %", self.percent()),
        ]
    }
}

fn families(faults: &[Fault]) -> Table {
    let mut table = Table::new(
        "Found, by family",
        &[
            "family",
            "found",
            "planted",
            "share",
            "unusual found",
            "unusual planted",
            "share of these",
            "meant",
        ],
    );
    let mut row = |name: &str, of: &dyn Fn(&&Fault) -> bool| {
        let share = Share::of(faults.iter().filter(of));
        let unusual = Share::of(faults.iter().filter(|fault| of(fault) && !fault.usual));
        let mut row = vec![name.to_owned()];
        row.extend(share.cells());
        row.extend(unusual.cells());
        row.push(meant("≥ 95 %", share.percent() >= FOUND_PERCENT));
        table.rows.push(row);
    };
    for family in in_order(faults.iter().map(|fault| fault.family.as_str())) {
        row(&family.replace('_', " "), &|fault| fault.family == family);
    }
    row("all", &|_| true);
    table
}

fn kinds(faults: &[Fault]) -> Table {
    let mut table = Table::new("Found, by kind", &["kind", "rules", "found", "planted", "share"]);
    for kind in in_order(faults.iter().map(|fault| fault.kind.as_str())) {
        let of: Vec<&Fault> = faults.iter().filter(|fault| fault.kind == kind).collect();
        let codes = of.first().map_or(String::new(), |fault| fault.codes.join(" "));
        let codes = if codes.is_empty() { "none yet".into() } else { codes };
        let mut row = vec![kind.to_owned(), codes];
        row.extend(Share::of(of.into_iter()).cells());
        table.rows.push(row);
    }
    table
}

fn misses(faults: &[Fault]) -> Table {
    let mut table = Table::new(
        "Every miss",
        &["fault", "page", "kind", "usual", "what was put", "words"],
    );
    table.rows = faults
        .iter()
        .filter(|fault| !fault.found)
        .map(|fault| {
            let edits: Vec<String> = fault.edits.iter().map(|(_, put)| quoted(put)).collect();
            let usual = if fault.usual { "yes" } else { "no" };
            vec![
                fault.id.clone(),
                fault.page.clone(),
                fault.kind.clone(),
                usual.into(),
                edits.join(", "),
                quoted(&fault.words.join(" / ")),
            ]
        })
        .collect();
    table
}

fn sound(pages: &[Page]) -> Table {
    let mut table = Table::new(
        "Queries on the sound pages",
        &["page", "must settle", "worth a look", "house style", "meant"],
    );
    let weights = [Weight::MustSettle, Weight::WorthALook, Weight::HouseStyle];
    for page in pages {
        let mut row = vec![page.name.clone()];
        row.extend(weights.map(|weight| page.asked(weight).to_string()));
        row.push(meant("≤ 1, ≤ 4", page.within_budget()));
        table.rows.push(row);
    }
    let mut by_code: BTreeMap<&str, usize> = BTreeMap::new();
    for query in pages.iter().flat_map(|page| &page.queries) {
        *by_code.entry(&query.code).or_default() += 1;
    }
    let codes: Vec<String> = by_code.iter().map(|(code, count)| format!("{code} {count}")).collect();
    let all = weights.map(|weight| pages.iter().map(|page| page.asked(weight)).sum::<usize>().to_string());
    let mut row = vec![format!("all ({})", codes.join(", "))];
    row.extend(all);
    row.push(String::new());
    table.rows.push(row);
    table
}

/// Each name once, where it comes first.
fn in_order<'a>(names: impl Iterator<Item = &'a str>) -> Vec<&'a str> {
    let mut once: Vec<&str> = Vec::new();
    for name in names {
        if !once.contains(&name) {
            once.push(name);
        }
    }
    once
}

/// Words of a page as they can stand in a cell.
fn quoted(words: &str) -> String {
    let words = one_line(words).replace('|', "\\|");
    if words.is_empty() {
        "(taken out)".into()
    } else {
        format!("‘{words}’")
    }
}

fn one_line(words: &str) -> String {
    words.split_whitespace().collect::<Vec<_>>().join(" ")
}
