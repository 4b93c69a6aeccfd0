//! What a word processor's file holds, whatever its form: paragraphs and tables.

use super::letters::Letters;

/// A part of the page.
#[derive(Clone, Debug, PartialEq)]
pub(super) enum Part {
    Paragraph(Paragraph),
    Table(Vec<Row>),
}

/// A row of a table.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Row {
    pub cells: Vec<Vec<Paragraph>>,
}

/// A paragraph.
#[derive(Clone, Debug, Default, PartialEq)]
pub(super) struct Paragraph {
    /// Its words; a line break inside it is a line feed.
    pub text: String,
    /// Level of a heading, the first is 1; the title of the whole is 0.
    pub heading: Option<usize>,
    /// The number or mark of a list that stands before it: '1.', '-'.
    pub label: Option<String>,
    /// Remarks on its words, in order.
    pub remarks: Vec<Remark>,
}

/// A remark, and the byte of its paragraph behind the words it is about.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Remark {
    pub at: usize,
    pub author: String,
    pub text: String,
}

impl Paragraph {
    /// Adds words, cleaned by `letters`.
    pub(super) fn push(&mut self, words: &str, letters: &mut Letters) {
        letters.push(words, &mut self.text);
    }

    /// Adds a remark behind the words so far.
    pub(super) fn remark(&mut self, author: &str, text: &str) {
        self.remarks.push(Remark {
            at: self.text.len(),
            author: author.trim().to_owned(),
            text: text.split_whitespace().collect::<Vec<_>>().join(" "),
        });
    }

    /// Joins what follows when the mark between two paragraphs was struck out.
    pub(super) fn join(mut self, mut next: Paragraph) -> Paragraph {
        let behind = self.text.len();
        self.text.push_str(&next.text);
        for remark in &mut next.remarks {
            remark.at += behind;
        }
        self.remarks.append(&mut next.remarks);
        Paragraph {
            heading: next.heading.or(self.heading),
            label: self.label.or(next.label),
            ..self
        }
    }

    /// Whether nothing stands in it.
    pub(super) fn is_empty(&self) -> bool {
        self.text.trim().is_empty() && self.remarks.is_empty()
    }
}

/// The paragraphs of parts, tables taken row by row.
pub(super) fn flat(parts: Vec<Part>) -> Vec<Paragraph> {
    let mut found = Vec::new();
    for part in parts {
        match part {
            Part::Paragraph(paragraph) => found.push(paragraph),
            Part::Table(rows) => found.extend(rows.into_iter().map(Row::into_line)),
        }
    }
    found
}

impl Row {
    /// The row as one line, its cells parted by tabs.
    fn into_line(self) -> Paragraph {
        let mut line = Paragraph::default();
        for (at, paragraph) in self.cells.into_iter().flatten().enumerate() {
            if at > 0 {
                line.text.push('\t');
            }
            line = line.join(paragraph);
        }
        line.label = None;
        line
    }
}
