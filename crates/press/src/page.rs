//! The page model: what stands on a page, before it is set.

use serde::{Deserialize, Serialize};

/// A page: a title, a line under it, and parts in order.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Page {
    /// The title.
    pub title: String,
    /// One line under the title.
    pub under: String,
    /// The parts, top to bottom.
    pub parts: Vec<Part>,
}

/// Part of a page.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Part {
    /// A heading.
    Heading(String),
    /// A paragraph.
    Paragraph(String),
    /// Short paragraphs under each other, each with its mark.
    List(Vec<String>),
    /// A table.
    Table {
        /// Columns, left to right.
        columns: Vec<Column>,
        /// Rows; a row shorter than the columns leaves the rest empty.
        rows: Vec<Vec<String>>,
    },
}

/// A column of a table.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Column {
    /// The word over it; empty for none.
    pub head: String,
    /// How its cells are set.
    pub align: Align,
    /// Set quietly: how a figure is known, a note.
    pub quiet: bool,
}

/// How a cell is set.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Align {
    /// Ranged left; the widest such column is broken over lines when the table is too wide.
    Left,
    /// Ranged right.
    Right,
}

impl Column {
    /// A column ranged left.
    #[must_use]
    pub fn left(head: &str) -> Self {
        Column {
            head: head.into(),
            align: Align::Left,
            quiet: false,
        }
    }

    /// A column ranged right.
    #[must_use]
    pub fn right(head: &str) -> Self {
        Column {
            head: head.into(),
            align: Align::Right,
            quiet: false,
        }
    }

    /// A quiet column ranged left.
    #[must_use]
    pub fn quiet(head: &str) -> Self {
        Column {
            head: head.into(),
            align: Align::Left,
            quiet: true,
        }
    }
}
