//! Paragraphs and tables to a typed page: a line a paragraph, blank lines where paragraphs stand apart, cells parted by
//! tabs, remarks in square brackets behind the sentence they are about.

use super::Comment;
use super::outline::{Paragraph, Part, Remark, Row};
use crate::Span;

/// A typed page and the places of its remarks.
#[derive(Debug, Default)]
pub(super) struct Sheet {
    pub text: String,
    pub comments: Vec<Comment>,
    /// The line before, while no blank line has followed.
    before: Option<Before>,
    /// A blank line is wanted before what comes next.
    gap: bool,
}

/// What matters of a line to what stands below it.
#[derive(Clone, Copy, Debug)]
struct Before {
    width: usize,
    stopped: bool,
    listed: bool,
    /// Its words stand in typed columns.
    columns: bool,
    heading: bool,
}

/// Wider lines than this may have been broken by hand, so a paragraph of that width stands apart from the next:
/// else the second could be taken for the rest of the first.
const WIDE: usize = 32;
/// A paragraph of more characters than this is running text.
const RUNNING: usize = 60;
/// A remark is put into notes of no more bytes than this: the reader takes no longer bracket for a note.
const NOTE: usize = 300;

/// Lays out a page.
pub(super) fn lay(parts: Vec<Part>) -> Sheet {
    let mut sheet = Sheet::default();
    for part in parts {
        match part {
            Part::Paragraph(paragraph) => sheet.paragraph(paragraph),
            Part::Table(rows) => sheet.table(rows),
        }
    }
    if !sheet.text.is_empty() {
        sheet.text.push('\n');
    }
    sheet
}

impl Sheet {
    /// A paragraph; an empty one parts what stands around it.
    fn paragraph(&mut self, paragraph: Paragraph) {
        if paragraph.is_empty() {
            self.gap = true;
            return;
        }
        let Paragraph {
            text,
            heading,
            label,
            remarks,
        } = paragraph;
        let first = self.text.is_empty();
        let marks = match (heading, label) {
            (Some(level), _) if level > 0 && !first => "## ".to_owned(),
            (_, Some(label)) if !label.is_empty() => format!("{label} "),
            _ => String::new(),
        };
        let now = Before {
            width: text.lines().map(|line| line.chars().count()).max().unwrap_or(0) + marks.len(),
            stopped: text.trim_end().ends_with(['.', '!', '?']),
            listed: !marks.is_empty() && heading.is_none(),
            columns: text.trim().contains("   ") || text.trim().contains('\t'),
            heading: heading.is_some(),
        };
        self.part_from(now);
        self.lines(&marks, &text, &remarks, heading.is_some());
        self.before = Some(now);
        // A title and a heading over the whole stand alone.
        self.gap = heading.is_some_and(|level| level <= 1);
    }

    /// Ends the line before, and puts a blank one where the two stand apart.
    fn part_from(&mut self, now: Before) {
        if let Some(before) = self.before {
            self.text.push('\n');
            let listed = before.listed && now.listed || before.columns && now.columns;
            let running = before.width > RUNNING || now.width > RUNNING || before.stopped && !before.heading;
            let joined = before.width > WIDE;
            let changes = before.listed != now.listed && !before.heading;
            if self.gap || now.heading || changes || !listed && (running || joined) {
                self.text.push('\n');
            }
        }
    }

    /// The lines of a paragraph with its remarks.
    fn lines(&mut self, marks: &str, text: &str, remarks: &[Remark], heading: bool) {
        let below = heading || text.trim_end().ends_with(':');
        let indent = if marks.is_empty() { "" } else { "   " };
        let mut at = 0;
        let mut remarks = remarks
            .iter()
            .map(|remark| (behind(text, remark.at), remark))
            .peekable();
        self.text.push_str(marks);
        for line in text.split_inclusive('\n') {
            let end = at + line.len();
            let body = line.trim();
            if at > 0 && !body.is_empty() {
                self.text.push('\n');
                self.text.push_str(indent);
            }
            let mut from = at + (line.len() - line.trim_start().len());
            let to = from + body.len();
            while let Some((place, remark)) = remarks.next_if(|(place, _)| *place <= to || end == text.len()) {
                let place = place.clamp(from, to);
                self.text.push_str(text.get(from..place).unwrap_or(""));
                from = place;
                self.note(remark, below);
            }
            self.text.push_str(text.get(from..to).unwrap_or(""));
            at = end;
        }
        for (_, remark) in remarks {
            self.note(remark, below);
        }
    }

    /// A remark in brackets; long ones in several. A heading keeps its line, the note comes below it.
    fn note(&mut self, remark: &Remark, below: bool) {
        let words = inside_brackets(&remark.text);
        let author = inside_brackets(&remark.author);
        for piece in pieces(&words, NOTE) {
            if below {
                self.text.push('\n');
            } else if !self.text.ends_with([' ', '\n']) && !self.text.is_empty() {
                self.text.push(' ');
            }
            let start = self.text.len();
            let opened = if author.is_empty() { "remark" } else { author.as_str() };
            self.text.push_str(&format!("[{opened}: {piece}]"));
            self.comments.push(Comment {
                span: Span::new(start, self.text.len()),
                author: remark.author.clone(),
                text: piece.to_owned(),
            });
        }
    }

    /// A table: a line a row, or column by column where its cells hold paragraphs of their own.
    fn table(&mut self, rows: Vec<Row>) {
        self.gap = true;
        let columns = rows.iter().map(|row| row.cells.len()).max().unwrap_or(0);
        let several = |cell: &Vec<Paragraph>| cell.iter().filter(|paragraph| !paragraph.is_empty()).count() > 1;
        let pages_side_by_side = columns > 1
            && rows.iter().any(|row| row.cells.iter().any(several))
            && !rows.iter().any(|row| level(row).is_some());
        if columns == 1 || pages_side_by_side {
            let mut columns: Vec<Vec<Paragraph>> = vec![Vec::new(); columns];
            for row in rows {
                for (at, cell) in row.cells.into_iter().enumerate() {
                    if let Some(column) = columns.get_mut(at) {
                        column.extend(cell);
                    }
                }
            }
            for column in columns {
                column.into_iter().for_each(|paragraph| self.paragraph(paragraph));
                self.gap = true;
            }
            return;
        }
        for row in rows {
            for line in as_lines(row) {
                self.paragraph(line);
            }
        }
        self.gap = true;
    }
}

/// How many paragraphs each cell of a row holds, when at least two cells hold the same number of several: their lines
/// belong to each other ('flour' and 'butter' beside '1 kg' and '500 g').
fn level(row: &Row) -> Option<usize> {
    let filled = |cell: &Vec<Paragraph>| cell.iter().filter(|paragraph| !paragraph.is_empty()).count();
    let counts: Vec<usize> = row.cells.iter().map(filled).filter(|count| *count > 0).collect();
    let most = counts.iter().copied().max().filter(|most| *most > 1)?;
    let equal = counts.iter().filter(|count| **count == most).count();
    let short = row
        .cells
        .iter()
        .flatten()
        .all(|paragraph| paragraph.text.chars().count() <= RUNNING);
    (equal > 1 && equal == counts.len() && short).then_some(most)
}

/// A row as lines, cells parted by tabs; cells of several paragraphs line by line.
fn as_lines(row: Row) -> Vec<Paragraph> {
    let count = level(&row).unwrap_or(1);
    let mut lines: Vec<Paragraph> = vec![Paragraph::default(); count];
    for cell in row.cells {
        let filled = cell.into_iter().filter(|paragraph| !paragraph.is_empty());
        for (at, mut paragraph) in filled.enumerate() {
            let Some(line) = lines.get_mut(at.min(count - 1)) else {
                continue;
            };
            // A heading in a cell is a cell; a number before a step stays.
            let label = paragraph.label.take().filter(|label| !label.is_empty());
            let mut before = std::mem::take(line);
            if !before.text.is_empty() {
                before.text.push('\t');
            } else {
                before.label = label.clone();
            }
            *line = before.join(Paragraph {
                heading: None,
                text: paragraph.text.replace('\n', " "),
                ..paragraph
            });
        }
    }
    lines
}

/// Where a remark goes: behind the sentence it is about, outside round brackets, at the end of the line at the latest.
/// In the middle of a sentence it could part an amount from its food.
fn behind(text: &str, at: usize) -> usize {
    let at = (0..=at.min(text.len()))
        .rev()
        .find(|at| text.is_char_boundary(*at))
        .unwrap_or(0);
    let line = text[at..].find('\n').map_or(text.len(), |end| at + end);
    let start = text[..at].rfind('\n').map_or(0, |end| end + 1);
    // A remark on a full stop is about the sentence before it.
    if at > start && text[start..at].trim_end().ends_with(['.', '!', '?']) && text[at..].starts_with([' ', '\t']) {
        return at;
    }
    let mut depth = 0_usize;
    let mut stopped = false;
    for (place, letter) in text[start..line]
        .char_indices()
        .map(|(place, letter)| (start + place, letter))
    {
        if stopped && depth == 0 && place >= at && letter == ' ' {
            return place;
        }
        match letter {
            '(' => depth += 1,
            ')' => depth = depth.saturating_sub(1),
            _ => {}
        }
        stopped = matches!(letter, '.' | '!' | '?')
            && text[place + 1..line].starts_with(' ')
            && sentence(&text[place + 1..line]);
    }
    line
}

/// Whether a new sentence begins: a capital or a figure stands next.
fn sentence(rest: &str) -> bool {
    rest.trim_start()
        .starts_with(|letter: char| letter.is_uppercase() || letter.is_ascii_digit())
}

/// Square brackets inside a note would end it early.
fn inside_brackets(words: &str) -> String {
    words.replace('[', "(").replace(']', ")")
}

/// Words cut at spaces into pieces of no more bytes than `most`.
fn pieces(words: &str, most: usize) -> Vec<&str> {
    let mut found = Vec::new();
    let mut rest = words.trim();
    while rest.len() > most {
        let limit = (0..=most).rev().find(|at| rest.is_char_boundary(*at)).unwrap_or(0);
        let cut = rest[..limit].rfind(' ').filter(|cut| *cut > 0).unwrap_or(limit);
        let (piece, after) = rest.split_at(cut);
        found.push(piece.trim());
        rest = after.trim();
    }
    found.push(rest);
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn plain(text: &str) -> Part {
        Part::Paragraph(Paragraph {
            text: text.into(),
            ..Paragraph::default()
        })
    }

    fn remarked(text: &str, word: &str) -> String {
        let at = text.find(word).map_or(0, |at| at + word.len());
        let remark = Remark {
            at,
            author: "ed".into(),
            text: "sure?".into(),
        };
        lay(vec![Part::Paragraph(Paragraph {
            text: text.into(),
            remarks: vec![remark],
            ..Paragraph::default()
        })])
        .text
    }

    #[test]
    fn a_line_a_paragraph_and_running_text_apart() {
        let page = lay(vec![
            plain("Leek soup"),
            plain(""),
            plain("2 leeks"),
            plain("30 g butter"),
            plain("Melt the butter."),
            plain("Stir."),
        ]);
        assert_eq!(
            page.text,
            "Leek soup\n\n2 leeks\n30 g butter\nMelt the butter.\n\nStir.\n"
        );
        assert_eq!(lay(Vec::new()).text, "");
    }

    #[test]
    fn remarks_stand_behind_their_sentence() {
        assert_eq!(
            remarked("Add 1.5 kg (about 3 lb) beef. Stir.", "about"),
            "Add 1.5 kg (about 3 lb) beef. [ed: sure?] Stir.\n"
        );
        assert_eq!(
            remarked("30 g butter, soft", "butter"),
            "30 g butter, soft [ed: sure?]\n"
        );
        assert_eq!(remarked("For the sauce:", "sauce"), "For the sauce:\n[ed: sure?]\n");
        assert_eq!(remarked("Stir. Serve.", "Stir."), "Stir. [ed: sure?] Serve.\n");
    }

    #[test]
    fn long_remarks_are_cut_and_stay_in_their_brackets() {
        let long = "] word".repeat(120);
        let remark = Remark {
            at: 0,
            author: String::new(),
            text: long,
        };
        let page = lay(vec![Part::Paragraph(Paragraph {
            text: "Stir.".into(),
            remarks: vec![remark],
            ..Paragraph::default()
        })]);
        assert!(page.comments.len() > 1);
        for comment in &page.comments {
            let words = comment.span.of(&page.text);
            assert!(
                words.starts_with("[remark: ") && words.len() < 400 && words.matches(']').count() == 1,
                "{words}"
            );
        }
    }

    #[test]
    fn cells_become_lines() {
        let row = |cells: &[&[&str]]| Row {
            cells: cells
                .iter()
                .map(|cell| {
                    cell.iter()
                        .map(|text| Paragraph {
                            text: (*text).into(),
                            ..Paragraph::default()
                        })
                        .collect()
                })
                .collect(),
        };
        let page = lay(vec![Part::Table(vec![
            row(&[&["2 kg"], &["beef shin"]]),
            row(&[&["flour", "butter"], &["1 kg", "500 g"]]),
        ])]);
        assert_eq!(page.text, "2 kg\tbeef shin\nflour\t1 kg\nbutter\t500 g\n");
        let page = lay(vec![Part::Table(vec![
            row(&[&["Ingredients"], &["Method"]]),
            row(&[&["2 leeks", "salt"], &["Slice the leeks. Boil them."]]),
        ])]);
        assert_eq!(
            page.text,
            "Ingredients\n2 leeks\nsalt\n\nMethod\nSlice the leeks. Boil them.\n"
        );
    }
}
