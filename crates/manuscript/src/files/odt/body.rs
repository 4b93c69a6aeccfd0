//! The body of a document: its paragraphs and tables. What tracked changes have struck out is kept by the form outside
//! the text, so passing that store over is accepting them.

use std::collections::{BTreeMap, BTreeSet};

use super::super::OWN_NAME;
use super::super::letters::Letters;
use super::super::limits;
use super::super::outline::{Paragraph, Part, Row, flat};
use super::super::xml::{Element, Space, Visit};
use super::lists::Lists;
use super::styles::Styles;

/// A body being read.
pub(super) struct Body<'f> {
    styles: &'f Styles,
    /// Comments that end somewhere else than they begin.
    ends: &'f BTreeSet<String>,
    letters: &'f mut Letters,
    /// What stands around: the page, then cells, boxes, notes and comments, the innermost last.
    around: Vec<Inner>,
    tables: Vec<Table>,
    lists: Vec<Lists>,
    open: Vec<Paragraph>,
    /// Whether each span around raises its letters.
    spans: Vec<bool>,
    footnotes: Vec<Paragraph>,
    /// Comments that wait for their end: author and words by name.
    waiting: BTreeMap<String, (String, String)>,
    comment: Option<Comment>,
    in_author: bool,
    in_body: bool,
    skipped: usize,
    /// Comments that the program itself had made.
    pub own_comments: usize,
    /// Whether hidden text was met.
    pub hidden: bool,
}

#[derive(Default)]
struct Inner {
    parts: Vec<Part>,
    /// Paragraphs that were open when it began: text of its own needs one more.
    outside: usize,
}

#[derive(Default)]
struct Table {
    rows: Vec<Row>,
    row: Row,
}

#[derive(Default)]
struct Comment {
    name: Option<String>,
    author: String,
}

impl<'f> Body<'f> {
    pub(super) fn new(styles: &'f Styles, ends: &'f BTreeSet<String>, letters: &'f mut Letters) -> Self {
        Body {
            styles,
            ends,
            letters,
            around: vec![Inner::default()],
            tables: Vec::new(),
            lists: vec![Lists::default()],
            open: Vec::new(),
            spans: Vec::new(),
            footnotes: Vec::new(),
            waiting: BTreeMap::new(),
            comment: None,
            in_author: false,
            in_body: false,
            skipped: 0,
            own_comments: 0,
            hidden: false,
        }
    }

    /// What was read, footnotes as notes at the end.
    pub(super) fn finish(self) -> Vec<Part> {
        let mut parts: Vec<Part> = self.around.into_iter().flat_map(|inner| inner.parts).collect();
        for note in self.footnotes.into_iter().filter(|note| !note.is_empty()) {
            let opener = Paragraph {
                text: "Note: ".into(),
                ..Paragraph::default()
            };
            parts.push(Part::Paragraph(opener.join(Paragraph {
                label: None,
                heading: None,
                ..note
            })));
        }
        parts
    }

    /// The paragraph that text goes into.
    fn paragraph(&mut self) -> Option<&mut Paragraph> {
        let outside = self.around.last().map_or(0, |inner| inner.outside);
        if self.open.len() > outside {
            self.open.last_mut()
        } else {
            None
        }
    }

    fn push(&mut self, words: &str) {
        let mut letters = std::mem::take(self.letters);
        if let Some(paragraph) = self.paragraph() {
            paragraph.push(words, &mut letters);
        }
        *self.letters = letters;
    }

    fn put(&mut self, part: Part) {
        if let Some(inner) = self.around.last_mut() {
            inner.parts.push(part);
        }
    }

    fn begin_inner(&mut self) {
        self.around.push(Inner {
            parts: Vec::new(),
            outside: self.open.len(),
        });
        self.lists.push(Lists::default());
    }

    fn end_inner(&mut self) -> Vec<Part> {
        if self.around.len() < 2 {
            return Vec::new();
        }
        self.lists.pop();
        self.around.pop().map_or(Vec::new(), |inner| inner.parts)
    }

    fn begin_paragraph(&mut self, element: &Element) {
        let style = element.get("style-name").unwrap_or("");
        let heading = match element.name.as_str() {
            "h" => Some(element.number("outline-level").unwrap_or(1).max(1)),
            _ => self.styles.is_title(style).then_some(0),
        };
        let label = match self.lists.last_mut() {
            Some(lists) => lists.label(self.styles),
            None => None,
        };
        self.open.push(Paragraph {
            heading,
            label,
            ..Paragraph::default()
        });
    }

    fn end_paragraph(&mut self) {
        if self.paragraph().is_some()
            && let Some(mut paragraph) = self.open.pop()
        {
            if paragraph.heading.is_some() {
                paragraph.label = None;
            }
            self.put(Part::Paragraph(paragraph));
        }
    }

    /// An element of `text:`.
    fn text_element(&mut self, element: &Element) {
        match element.name.as_str() {
            "p" | "h" => self.begin_paragraph(element),
            "s" => {
                let count = element.number("c").unwrap_or(1).min(limits::SPACES);
                self.push(&" ".repeat(count));
            }
            "tab" => self.push("\t"),
            "line-break" => self.push("\n"),
            "span" => self
                .spans
                .push(self.styles.is_raised(element.get("style-name").unwrap_or(""))),
            "note-body" => self.begin_inner(),
            "list" => {
                if let Some(lists) = self.lists.last_mut() {
                    lists.open(element);
                }
            }
            "list-item" => {
                if let Some(lists) = self.lists.last_mut() {
                    lists.item(element, self.styles);
                }
            }
            _ => {}
        }
    }

    /// An element of `table:`. Cells and rows said to be repeated stand once: a page repeats none, and a file that says
    /// so many times over would grow without end.
    fn table_element(&mut self, element: &Element) {
        match element.name.as_str() {
            "table" => self.tables.push(Table::default()),
            "table-row" => {
                if let Some(table) = self.tables.last_mut() {
                    table.row = Row::default();
                }
            }
            "table-cell" | "covered-table-cell" => self.begin_inner(),
            _ => {}
        }
    }

    fn end_table_element(&mut self, name: &str) {
        match name {
            "table-cell" | "covered-table-cell" => {
                let cell = flat(self.end_inner());
                if let Some(table) = self.tables.last_mut() {
                    table.row.cells.push(cell);
                }
            }
            "table-row" => {
                if let Some(table) = self.tables.last_mut() {
                    table.rows.push(std::mem::take(&mut table.row));
                }
            }
            "table" => {
                if let Some(table) = self.tables.pop() {
                    self.put(Part::Table(table.rows));
                }
            }
            _ => {}
        }
    }

    fn begin_comment(&mut self, element: &Element) {
        self.comment = Some(Comment {
            name: element.get("name").map(str::to_owned),
            author: String::new(),
        });
        self.begin_inner();
    }

    fn end_comment(&mut self) {
        let words: Vec<String> = flat(self.end_inner())
            .into_iter()
            .map(|paragraph| paragraph.text)
            .collect();
        let words = words.join(" ");
        let Some(comment) = self.comment.take() else { return };
        match comment.name.filter(|name| self.ends.contains(name)) {
            Some(name) => _ = self.waiting.insert(name, (comment.author, words)),
            None => self.place_comment(&comment.author, &words),
        }
    }

    fn place_comment(&mut self, author: &str, words: &str) {
        if author == OWN_NAME {
            self.own_comments += 1;
        } else if !words.trim().is_empty()
            && let Some(paragraph) = self.paragraph()
        {
            paragraph.remark(author, words);
        }
    }
}

impl Visit for Body<'_> {
    fn open(&mut self, element: &Element) {
        let styled = || element.get("style-name").unwrap_or("");
        let hides = element.space == Space::Text
            && matches!(element.name.as_str(), "span" | "p" | "h")
            && self.styles.is_hidden(styled());
        if self.skipped > 0 {
            self.skipped += 1;
        } else if hides || is_skipped(element) {
            self.hidden |= hides;
            self.skipped = 1;
        } else if element.is(Space::Office, "body") {
            self.in_body = true;
        } else if !self.in_body {
        } else if element.is(Space::Office, "annotation") {
            self.begin_comment(element);
        } else if element.is(Space::Office, "annotation-end") {
            if let Some((author, words)) = element.get("name").and_then(|name| self.waiting.remove(name)) {
                self.place_comment(&author, &words);
            }
        } else if element.is(Space::Core, "creator") {
            self.in_author = true;
        } else if element.name == "text-box" {
            self.begin_inner();
        } else if element.space == Space::Text {
            self.text_element(element);
        } else if element.space == Space::Table {
            self.table_element(element);
        }
    }

    fn close(&mut self, space: Space, name: &str) {
        if self.skipped > 0 {
            self.skipped -= 1;
            return;
        }
        match (space, name) {
            (Space::Office, "body") => self.in_body = false,
            _ if !self.in_body => {}
            (Space::Text, "p" | "h") => self.end_paragraph(),
            (Space::Text, "span") => _ = self.spans.pop(),
            (Space::Text, "list") => {
                if let Some(lists) = self.lists.last_mut() {
                    lists.close();
                }
            }
            (Space::Text, "note-body") => {
                let note = flat(self.end_inner());
                self.footnotes.extend(note);
            }
            (Space::Office, "annotation") => self.end_comment(),
            (Space::Core, "creator") => self.in_author = false,
            (Space::Other, "text-box") => {
                let inner = self.end_inner();
                inner.into_iter().for_each(|part| self.put(part));
            }
            (Space::Table, name) => self.end_table_element(name),
            _ => {}
        }
    }

    fn text(&mut self, text: &str) {
        if self.skipped > 0 || !self.in_body {
            return;
        }
        if self.in_author {
            if let Some(comment) = &mut self.comment {
                comment.author.push_str(text);
            }
            return;
        }
        let Some(paragraph) = self.paragraph() else { return };
        // White space counts once, and not at all at the start (OpenDocument 1.3 part 3, 6.1.2).
        let mut folded = String::with_capacity(text.len());
        let mut spaced = paragraph.text.is_empty() || paragraph.text.ends_with([' ', '\n', '\t']);
        for letter in text.chars() {
            let space = matches!(letter, ' ' | '\t' | '\n' | '\r');
            if !space {
                folded.push(letter);
            } else if !spaced {
                folded.push(' ');
            }
            spaced = space;
        }
        // A raised 1 behind a 1 is '1 1/2', not '11/2'.
        let figure = |letter: char| letter.is_ascii_digit();
        let follows = paragraph.text.ends_with(figure) && folded.starts_with(figure);
        if follows && self.spans.last() == Some(&true) {
            folded.insert(0, ' ');
        }
        self.push(&folded);
    }

    fn is_full(&self) -> bool {
        self.letters.length() > limits::TEXT
    }
}

/// What is passed over: struck-out text, the signs of footnotes, indexes, phonetic guides, hidden text.
fn is_skipped(element: &Element) -> bool {
    let text = element.space == Space::Text
        && matches!(
            element.name.as_str(),
            "tracked-changes" | "note-citation" | "table-of-content" | "ruby-text" | "hidden-text" | "hidden-paragraph"
        );
    text || element.is(Space::Office, "forms")
}
