//! Rows that are typed in columns: two ingredients side by side, a title and its yield, the head of a table.

use super::head;
use super::is_ingredient;
use super::rows::{Mark, Row, reads_as_prose};
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
    "method",
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

/// Cuts a row where its columns are things of their own.
pub(crate) fn split(text: &str, rows: Vec<Row>) -> Vec<Row> {
    let mut found = Vec::with_capacity(rows.len());
    for row in rows {
        let cells = cells(text, row.span);
        let one = |span: &Span| Row {
            span: *span,
            ..row.clone()
        };
        let apart = cells.len() > 1 && cells.len() < 5 && row.mark != Mark::Number && stand_alone(text, &cells, &row);
        if !apart {
            found.push(row);
            continue;
        }
        let last = cells.len() - 1;
        for (index, cell) in cells.iter().enumerate() {
            found.push(Row {
                apart: row.apart && index == 0,
                last: row.last && index == last,
                ..one(cell)
            });
        }
    }
    found
}

/// Whether every column is an ingredient, or one of them is a yield, or what is done stands beside what is needed.
fn stand_alone(text: &str, cells: &[Span], row: &Row) -> bool {
    let of = |span: &Span| Row {
        span: *span,
        mark: Mark::None,
        ..row.clone()
    };
    let ingredient = |span: &Span| is_ingredient(text, &of(span));
    let (last, rest) = match cells.split_last() {
        Some(parts) => parts,
        None => return false,
    };
    let beside = rest.iter().all(ingredient) && reads_as_prose(text, *last);
    let yields = !rest.iter().any(ingredient) && head::head(text, *last).is_some_and(|h| h.yields.is_some());
    cells.iter().all(ingredient) || beside || yields && head::head(text, row.span).is_none()
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
            found.push(super::trimmed(text, Span::new(span.start + from, span.start + at)));
            from = at + letter.len_utf8();
        }
    }
    found.push(super::trimmed(text, Span::new(span.start + from, span.end)));
    found.retain(|cell| cell.start < cell.end);
    found
}

/// Whether a row is the head of a table: 'Ingredient | Qty | Unit'.
pub(crate) fn heads_table(text: &str, span: Span) -> bool {
    let cells = cells(text, span);
    let known = |cell: &Span| {
        COLUMNS.contains(
            &cell
                .of(text)
                .to_lowercase()
                .trim_matches(|c: char| !c.is_alphanumeric()),
        )
    };
    cells.len() > 1 && cells.iter().all(known)
}
