//! Rows that are typed in columns: two ingredients side by side, a title and its yield, the head of a table.

use super::judge::{Seen, see, trimmed};
use super::rows::{Mark, Row};
use crate::Span;

/// Words that head the columns of a table of ingredients.
const COLUMNS: &[&str] = &[
    "ingredient",
    "ingredients",
    "item",
    "items",
    "qty",
    "quantity",
    "amount",
    "unit",
    "units",
    "weight",
    "weights",
    "measures",
    "method",
    "procedure",
    "step",
    "steps",
    "directions",
    "prep",
    "preparation",
    "notes",
    "note",
    "product",
    "metric",
    "imperial",
    "us",
    "measure",
    "volume",
];

/// Looks at every row, and cuts those whose columns are things of their own.
pub(crate) fn split(text: &str, rows: Vec<Row>) -> Vec<Seen> {
    let mut found = Vec::with_capacity(rows.len());
    for row in rows {
        if !row.pieces.is_empty() {
            found.push(Seen::running(row));
            continue;
        }
        let cells = cells(text, row.span);
        let last = cells.len().saturating_sub(1);
        let one = |(index, span): (usize, &Span)| Row {
            span: *span,
            mark: if index == 0 { row.mark } else { Mark::None },
            apart: row.apart && index == 0,
            last: row.last && index == last,
            pieces: Vec::new(),
        };
        let columns = (2..5).contains(&cells.len()) && row.mark != Mark::Number;
        let seen: Vec<Seen> = if columns {
            cells.iter().enumerate().map(|cell| see(text, one(cell))).collect()
        } else {
            Vec::new()
        };
        let whole = see(text, row.clone());
        if stand_alone(text, &seen, &whole) {
            found.extend(seen);
        } else {
            found.push(whole);
        }
    }
    found
}

/// Whether every column is an ingredient, or one of them is a yield, or what is done stands beside what is needed.
fn stand_alone(text: &str, seen: &[Seen], whole: &Seen) -> bool {
    let Some((last, rest)) = seen.split_last() else {
        return false;
    };
    let listed = rest.iter().all(|cell| cell.strong);
    let states = last.head.as_ref().is_some_and(|head| head.yields.is_some());
    let titled = !rest.iter().any(|cell| cell.strong) && states && whole.head.is_none();
    // 'Beef stock, 1 litre   Salt'.
    let bare = || !rest.is_empty() && super::judge::is_bare_food(text, &last.row);
    listed && (last.strong || last.prose || bare()) || titled
}

/// The columns of a row: what stands between tabs, bars and runs of three or more spaces.
fn cells(text: &str, span: Span) -> Vec<Span> {
    let body = span.of(text);
    if body.contains(['\n', '\r']) || !(body.contains(['\t', '|']) || body.contains("   ")) {
        return vec![span];
    }
    let mut found = Vec::new();
    let mut from = 0;
    let mut spaces = 0;
    for (at, letter) in body.char_indices() {
        spaces = if letter == ' ' { spaces + 1 } else { 0 };
        if matches!(letter, '\t' | '|') || spaces == 3 {
            found.push(trimmed(text, Span::new(span.start + from, span.start + at)));
            from = at + letter.len_utf8();
        }
    }
    found.push(trimmed(text, Span::new(span.start + from, span.end)));
    found.retain(|cell| cell.start < cell.end);
    found
}

/// Whether a row is the head of a table: 'Ingredient | Qty | Unit'.
pub(crate) fn heads_table(text: &str, span: Span) -> bool {
    let cells = cells(text, span);
    cells.len() > 1 && cells.iter().all(|cell| names_column(text, *cell))
}

/// The name of the component in the first cell of a table's head: 'A. SOUP BASE | QTY | UNIT | PREP'.
pub(crate) fn heads_component(text: &str, span: Span) -> Option<Span> {
    let cells = cells(text, span);
    let (first, rest) = cells.split_first()?;
    let named = rest.len() > 1 && rest.iter().all(|cell| names_column(text, *cell));
    (named && !names_column(text, *first)).then_some(*first)
}

fn names_column(text: &str, cell: Span) -> bool {
    let words = cell.of(text).to_lowercase();
    COLUMNS.contains(&words.trim_matches(|c: char| !c.is_alphanumeric()))
}
