//! The planter of faults: takes a sound page, plants one fault by an edit of plain text, reads and cooks the page, and
//! sees whether a query about that fault stands on the words at fault.
//!
//! It knows the rules by their codes only, from `kinds.tsv`, and the program by what it offers everyone.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use potwright_larder::Larder;
use potwright_manuscript::Span;
use potwright_measure::Measures;
use potwright_pot::Kitchen;
use potwright_proof::{Query, Weight, queries};
use potwright_reckon::{Prices, Target, reckon, side_by_side};

/// A sound page and its queries.
#[derive(Debug)]
pub(crate) struct Page {
    /// Its name in `pages.tsv`.
    pub name: String,
    /// What was typed.
    pub text: String,
    /// Whose cups and spoons are meant.
    measures: Measures,
    /// What is asked about it: on a sound page, nothing that must be settled.
    pub queries: Vec<Query>,
}

/// A fault, and whether a query found it.
#[derive(Clone, Debug)]
pub(crate) struct Fault {
    /// Its number in `faults.tsv`.
    pub id: String,
    /// The page it is planted in.
    pub page: String,
    /// The family of its kind.
    pub family: String,
    /// What is wrong, in a few words.
    pub kind: String,
    /// Whether the wording is the first that comes to mind.
    pub usual: bool,
    /// What is put for what, one after the other.
    pub edits: Vec<(String, String)>,
    /// Words a query should stand on, any of them.
    pub words: Vec<String>,
    /// Codes of the rules that answer to the kind; none as long as there is none.
    pub codes: Vec<String>,
    /// Whether a query that the sound page does not raise stands on the words.
    pub found: bool,
}

/// All sound pages and all faults, each page read and cooked.
#[derive(Debug)]
pub(crate) struct Planted {
    /// The sound pages.
    pub pages: Vec<Page>,
    /// The faults.
    pub faults: Vec<Fault>,
}

/// Plants every fault of the tables. `root` is the folder of the workspace; `draws` cookings give the ranges.
///
/// # Errors
///
/// What is wrong with the tables, in words.
pub(crate) fn plant(root: &Path, draws: usize) -> Result<Planted, String> {
    let folder = root.join("crates/proof/tests/planted");
    let listed = rows(&folder.join("pages.tsv"))?;
    let pages = side_by_side(&listed, |row| page(root, row, draws));
    let pages: Vec<Page> = pages.into_iter().collect::<Result<_, _>>()?;
    let codes: BTreeMap<String, Vec<String>> = rows(&folder.join("kinds.tsv"))?
        .iter()
        .map(|row| (row[1].clone(), row[2].split_whitespace().map(Into::into).collect()))
        .collect();
    let faults = rows(&folder.join("faults.tsv"))?;
    let faults = side_by_side(&faults, |row| fault(row, &codes, &pages, draws));
    let faults = faults.into_iter().collect::<Result<_, _>>()?;
    Ok(Planted { pages, faults })
}

/// The rows of a table, without its remarks and its heads.
///
/// # Errors
///
/// A file that cannot be read, a row of another length than the heads.
pub(crate) fn rows(place: &Path) -> Result<Vec<Vec<String>>, String> {
    let table = fs::read_to_string(place).map_err(|error| format!("{}: {error}", place.display()))?;
    let cells = |line: &str| -> Vec<String> { line.split('\t').map(Into::into).collect() };
    let mut rows: Vec<Vec<String>> = table.lines().filter(|line| !line.starts_with('#')).map(cells).collect();
    if let Some(odd) = rows.iter().find(|row| row.len() != rows[0].len()) {
        return Err(format!("{}: cells do not fit the heads: {odd:?}", place.display()));
    }
    rows.drain(..rows.len().min(1));
    Ok(rows)
}

fn page(root: &Path, row: &[String], draws: usize) -> Result<Page, String> {
    let name = row[0].clone();
    let place = match name.strip_prefix("demo/") {
        Some(dish) => root.join(format!("demo/lock-house/dishes/{dish}.txt")),
        None => root.join(format!("crates/proof/tests/planted/pages/{name}.txt")),
    };
    let text = fs::read_to_string(&place).map_err(|error| format!("{}: {error}", place.display()))?;
    let measures = match row[1].as_str() {
        "us" => Measures::Us,
        "metric" => Measures::Metric,
        other => return Err(format!("pages.tsv: '{other}' is neither us nor metric")),
    };
    let queries = asked(&text, measures, draws);
    Ok(Page {
        name,
        text,
        measures,
        queries,
    })
}

/// What is asked about a page, read, cooked and queried as anyone would.
fn asked(text: &str, measures: Measures, draws: usize) -> Vec<Query> {
    let (kitchen, larder) = (Kitchen::default(), Larder::built_in());
    let (prices, target) = (Prices::default(), Target::default());
    let recipe = potwright_manuscript::read(text);
    let process = potwright_pot::resolve(&recipe, text, larder, &[], &kitchen, measures);
    let reckoned = reckon(process, &kitchen, larder, &[], &prices, &target, draws, 1);
    queries(&recipe, text, &reckoned)
}

fn fault(row: &[String], codes: &BTreeMap<String, Vec<String>>, pages: &[Page], draws: usize) -> Result<Fault, String> {
    let parts = |cell: &str| -> Vec<String> { cell.split(" ‖ ").map(|part| part.replace("\\n", "\n")).collect() };
    let edits = parts(&row[5]).into_iter().map(|edit| {
        let (find, put) = edit.split_once(" → ")?;
        Some((find.to_owned(), put.to_owned()))
    });
    let of = |what: &str| format!("faults.tsv, {}: {what}", row[0]);
    let mut fault = Fault {
        id: row[0].clone(),
        page: row[1].clone(),
        family: row[2].clone(),
        kind: row[3].clone(),
        usual: row[4] == "yes",
        edits: edits.collect::<Option<_>>().ok_or_else(|| of("an edit without →"))?,
        words: parts(&row[6]),
        codes: codes
            .get(&row[3])
            .cloned()
            .ok_or_else(|| of("kinds.tsv lacks its kind"))?,
        found: false,
    };
    let sound = pages.iter().find(|page| page.name == fault.page);
    let sound = sound.ok_or_else(|| of("pages.tsv lacks its page"))?;
    let faulty = Faulty::of(&sound.text, &fault.edits).map_err(|what| of(&what))?;
    if let Some(lost) = fault.words.iter().find(|words| !faulty.text.contains(*words)) {
        return Err(of(&format!("'{lost}' is not on the faulty page")));
    }
    if !fault.codes.is_empty() {
        let queries = asked(&faulty.text, sound.measures, draws);
        fault.found = queries.iter().any(|query| fault.is_meant(query, &faulty, sound));
    }
    Ok(fault)
}

impl Fault {
    /// Whether a query is about this fault: of the right rule, on the right words, and not raised by the sound page.
    fn is_meant(&self, query: &Query, faulty: &Faulty, sound: &Page) -> bool {
        let places = self.words.iter().flat_map(|words| {
            let starts = faulty.text.match_indices(words.as_str());
            starts.map(|(start, words)| Span::new(start, start + words.len()))
        });
        let stands = |place: Span| spans(query).any(|span| touch(span, place));
        let before = faulty.before(query.span);
        let old = |known: &Query| {
            known.code == query.code && known.weight <= query.weight && touch_or_meet(known.span, before)
        };
        self.codes.contains(&query.code) && places.into_iter().any(stands) && !sound.queries.iter().any(old)
    }
}

/// All words a query points at.
fn spans(query: &Query) -> impl Iterator<Item = Span> {
    std::iter::once(query.span).chain(query.see.iter().map(|(span, _)| *span))
}

const fn touch(a: Span, b: Span) -> bool {
    a.start < b.end && b.start < a.end
}

/// Likewise, but words taken out leave a place without length.
const fn touch_or_meet(a: Span, b: Span) -> bool {
    a.start <= b.end && b.start <= a.end
}

/// A page with its fault, and where its words were before.
#[derive(Debug)]
struct Faulty {
    text: String,
    /// Of each edit, in order: where it was made, how long what was found is, and how long what was put.
    edits: Vec<(usize, usize, usize)>,
}

impl Faulty {
    /// Every edit is made once; what it looks for must stand in one place only.
    fn of(sound: &str, edits: &[(String, String)]) -> Result<Self, String> {
        let mut faulty = Faulty {
            text: sound.to_owned(),
            edits: Vec::new(),
        };
        for (find, put) in edits {
            let mut places = faulty.text.match_indices(find.as_str());
            let (Some((at, _)), None) = (places.next(), places.next()) else {
                return Err(format!("'{find}' does not stand on the page once"));
            };
            faulty.text.replace_range(at..at + find.len(), put);
            faulty.edits.push((at, find.len(), put.len()));
        }
        Ok(faulty)
    }

    /// Where words of the faulty page were on the sound one; what was put in stands where it was put.
    fn before(&self, span: Span) -> Span {
        self.edits.iter().rev().fold(span, |span, &(at, found, put)| {
            let start = if span.start < at + put {
                span.start.min(at)
            } else {
                span.start - put + found
            };
            let end = if span.end <= at {
                span.end
            } else if span.end < at + put {
                at + found
            } else {
                span.end - put + found
            };
            Span::new(start, end)
        })
    }
}

impl Page {
    /// Queries of a weight.
    pub(crate) fn asked(&self, weight: Weight) -> usize {
        self.queries.iter().filter(|query| query.weight == weight).count()
    }

    /// Whether a page that is sound is asked about more than a careful editor would: one thing to settle, four worth a look.
    pub(crate) fn within_budget(&self) -> bool {
        self.asked(Weight::MustSettle) <= 1 && self.asked(Weight::WorthALook) <= 4
    }
}
