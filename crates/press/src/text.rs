//! Setting a page in plain text.

use std::fmt::Write as _;

use anstyle::{AnsiColor, Style as Ansi};
use textwrap::{Options, wrap};
use unicode_width::UnicodeWidthStr;

use crate::{Align, Column, Page, Part};

/// Whether colour may be used.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Style {
    /// Characters only.
    Plain,
    /// With ANSI escape sequences.
    Colour,
}

const HEADING: Ansi = Ansi::new().bold();
const TITLE: Ansi = Ansi::new()
    .bold()
    .fg_color(Some(anstyle::Color::Ansi(AnsiColor::Yellow)));
const QUIET: Ansi = Ansi::new().dimmed();

/// Space left between columns.
const GUTTER: usize = 2;
/// A column is never broken narrower than this.
const NARROWEST: usize = 12;
/// Left margin of what stands under a heading.
const INDENT: &str = "  ";

/// Text without control characters, which a terminal would act on: a tab is a space, a line's end stays, the others go.
#[must_use]
pub fn printable(text: &str) -> String {
    let printed = |c: char| match c {
        '\n' => Some(c),
        '\t' => Some(' '),
        c if c.is_control() => None,
        c => Some(c),
    };
    text.chars().filter_map(printed).collect()
}

/// Characters after which a paragraph, an item or a cell is cut: no sentence of ours is near it, only a page of which
/// one word runs on for ever.
const LONGEST: usize = 2_000;

/// Printable text of no more than [`LONGEST`] characters.
pub(crate) fn set_words(text: &str) -> String {
    let text = printable(text);
    match text.char_indices().nth(LONGEST) {
        Some((at, _)) => format!("{}…", text.get(..at).unwrap_or("")),
        None => text,
    }
}

/// Sets a page in lines of at most `width` characters, 40 at least. Figures are never broken: a table whose figures
/// alone are wider stays wider (the nutrition table needs 80).
#[must_use]
pub fn render(page: &Page, width: usize, style: Style) -> String {
    let width = width.max(40);
    let mut out = String::new();
    for line in wrap(&set_words(&page.title), width) {
        put_line(&mut out, &line, TITLE, style);
    }
    for line in wrap(&set_words(&page.under), width) {
        put_line(&mut out, &line, QUIET, style);
    }
    for part in &page.parts {
        match part {
            Part::Heading(words) => {
                out.push('\n');
                put_line(&mut out, &printable(words), HEADING, style);
            }
            Part::Paragraph(words) => put_wrapped(&mut out, words, width, INDENT, INDENT),
            Part::List(items) => {
                for item in items {
                    put_wrapped(&mut out, item, width, "  – ", "    ");
                }
            }
            Part::Table { columns, rows } => {
                let printed = |row: &Vec<String>| row.iter().map(|cell| set_words(cell)).collect();
                let rows: Vec<Vec<String>> = rows.iter().map(printed).collect();
                put_table(&mut out, columns, &rows, width, style);
            }
        }
    }
    out
}

fn put_line(out: &mut String, line: &str, ansi: Ansi, style: Style) {
    put_styled(out, line, ansi, style);
    out.push('\n');
}

fn put_styled(out: &mut String, words: &str, ansi: Ansi, style: Style) {
    match style {
        Style::Plain => out.push_str(words),
        // Writing to a string cannot fail.
        Style::Colour => _ = write!(out, "{ansi}{words}{ansi:#}"),
    }
}

fn put_wrapped(out: &mut String, words: &str, width: usize, first: &str, rest: &str) {
    let options = Options::new(width).initial_indent(first).subsequent_indent(rest);
    for line in wrap(&set_words(words), options) {
        out.push_str(line.trim_end());
        out.push('\n');
    }
}

fn put_table(out: &mut String, columns: &[Column], rows: &[Vec<String>], width: usize, style: Style) {
    let widths = column_widths(columns, rows, width.saturating_sub(INDENT.len()));
    if columns.iter().any(|column| !column.head.is_empty()) {
        let heads: Vec<String> = columns.iter().map(|column| column.head.clone()).collect();
        put_row(out, columns, &heads, &widths, style, true);
    }
    for row in rows {
        put_row(out, columns, row, &widths, style, false);
    }
}

/// Natural widths; of the columns ranged left the widest gives way, a character at a time, until the table fits.
fn column_widths(columns: &[Column], rows: &[Vec<String>], room: usize) -> Vec<usize> {
    let mut widths: Vec<usize> = columns.iter().map(|column| column.head.width()).collect();
    for row in rows {
        for (width, cell) in widths.iter_mut().zip(row) {
            *width = (*width).max(cell.width());
        }
    }
    loop {
        let total = widths.iter().sum::<usize>() + GUTTER * widths.len().saturating_sub(1);
        let widest = (0..widths.len())
            .filter(|&at| columns[at].align == Align::Left)
            .max_by_key(|&at| widths[at]);
        match widest {
            Some(at) if total > room && widths[at] > NARROWEST => widths[at] -= 1,
            _ => return widths,
        }
    }
}

fn put_row(out: &mut String, columns: &[Column], row: &[String], widths: &[usize], style: Style, head: bool) {
    let cells: Vec<Vec<String>> = widths
        .iter()
        .enumerate()
        .map(|(at, width)| {
            let cell = row.get(at).map_or("", String::as_str);
            wrap(cell, (*width).max(1)).into_iter().map(String::from).collect()
        })
        .collect();
    let height = cells.iter().map(Vec::len).max().unwrap_or(0);
    for line in 0..height {
        let mut set = String::from(INDENT);
        for (at, (cell, width)) in cells.iter().zip(widths).enumerate() {
            let words = cell.get(line).map_or("", String::as_str);
            let gap = " ".repeat(width.saturating_sub(words.width()));
            let ansi = if head || columns[at].quiet { QUIET } else { Ansi::new() };
            if columns[at].align == Align::Right {
                set.push_str(&gap);
            }
            if !words.is_empty() {
                put_styled(&mut set, words, ansi, style);
            }
            if columns[at].align == Align::Left {
                set.push_str(&gap);
            }
            set.push_str(&" ".repeat(GUTTER));
        }
        out.push_str(set.trim_end());
        out.push('\n');
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn table() -> Page {
        Page {
            title: "Leek soup".into(),
            under: "Serves 4".into(),
            parts: vec![
                Part::Heading("Yield".into()),
                Part::Table {
                    columns: vec![Column::left(""), Column::right("grams"), Column::quiet("")],
                    rows: vec![
                        vec![
                            "finished".into(),
                            "1,200".into(),
                            "by balance, as far as the lid is what the page says it is, and no further".into(),
                        ],
                        vec!["a portion".into(), "300".into(), String::new()],
                    ],
                },
                Part::List(vec![
                    "a first note that is long enough to have to be broken over two lines at this width".into(),
                ]),
            ],
        }
    }

    #[test]
    fn no_line_is_wider_than_asked() {
        for width in [40, 60, 80] {
            for line in render(&table(), width, Style::Plain).lines() {
                assert!(line.width() <= width, "{width}: {line:?}");
            }
        }
    }

    #[test]
    fn nothing_typed_reaches_the_terminal_as_a_command() {
        let mut page = table();
        page.title = "Leek\u{1b}]0;x\u{7}soup".into();
        page.parts.push(Part::Paragraph("a\u{9b}31mb\tc\rd\u{0}".into()));
        if let Part::Table { rows, .. } = &mut page.parts[1] {
            rows[0][0] = "fin\u{8}ished".into();
        }
        let set = render(&page, 80, Style::Plain);
        assert!(set.starts_with("Leek]0;xsoup\n"), "{set:?}");
        assert!(set.contains("a31mb cd") && set.contains("finished"), "{set:?}");
        assert!(set.chars().all(|c| c == '\n' || !c.is_control()), "{set:?}");
    }

    #[test]
    fn a_word_that_runs_on_for_ever_is_cut() {
        let mut page = table();
        page.parts = vec![Part::List(vec!["stir ".repeat(250_000)])];
        let set = render(&page, 80, Style::Plain);
        assert!(
            set.len() < 3_000 && set.trim_end().ends_with('…'),
            "{} bytes",
            set.len()
        );
    }

    #[test]
    fn numbers_are_ranged_right() {
        let set = render(&table(), 80, Style::Plain);
        let ends: Vec<usize> = set
            .lines()
            .filter_map(|line| {
                line.find("1,200")
                    .map(|at| at + 5)
                    .or(line.find(" 300").map(|at| at + 4))
            })
            .collect();
        assert_eq!(ends.len(), 2);
        assert_eq!(ends[0], ends[1]);
    }

    #[test]
    fn plain_has_no_escapes_and_colour_says_the_same() {
        let plain = render(&table(), 80, Style::Plain);
        let colour = render(&table(), 80, Style::Colour);
        assert!(!plain.contains('\u{1b}'));
        assert!(colour.contains('\u{1b}'));
        let mut bare = String::new();
        let mut escape = false;
        for c in colour.chars() {
            match c {
                '\u{1b}' => escape = true,
                'm' if escape => escape = false,
                c if !escape => bare.push(c),
                _ => {}
            }
        }
        assert_eq!(bare, plain);
    }
}
