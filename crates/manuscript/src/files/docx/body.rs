//! The body of a document: its paragraphs and tables, tracked changes as if accepted.

use super::super::OWN_NAME;
use super::super::letters::Letters;
use super::super::limits;
use super::super::outline::{Paragraph, Part, Row, flat};
use super::super::xml::{Element, Space, Visit};
use super::comments::Comments;
use super::numbering::Numbering;
use super::styles::Styles;

/// A body being read.
pub(super) struct Body<'f> {
    styles: &'f Styles,
    numbering: &'f mut Numbering,
    comments: &'f Comments,
    letters: &'f mut Letters,
    /// What stands around: the page, then cells and boxes, the innermost last.
    around: Vec<Vec<Part>>,
    tables: Vec<Table>,
    open: Vec<Open>,
    /// Words whose paragraph's end was struck out: they go on in the next.
    carried: Option<Paragraph>,
    /// Elements that are passed over with all that is in them.
    skipped: usize,
    in_words: bool,
    run: Run,
    /// Comments that the program itself had made.
    pub own_comments: usize,
    /// Whether hidden text was met.
    pub hidden: bool,
}

#[derive(Default)]
struct Table {
    rows: Vec<Row>,
    row: Row,
    row_struck: bool,
}

/// A paragraph being read.
#[derive(Default)]
struct Open {
    paragraph: Paragraph,
    style: String,
    list: Option<String>,
    level: Option<usize>,
    outline: Option<usize>,
    in_properties: bool,
    /// Its end was struck out.
    end_struck: bool,
}

#[derive(Clone, Copy, Default)]
struct Run {
    in_properties: bool,
    hidden: bool,
    raised: bool,
}

/// What is passed over: what was struck out or moved away, former properties, second forms of the same thing, phonetic
/// guides.
fn is_skipped(element: &Element) -> bool {
    match element.space {
        Space::Word => matches!(
            element.name.as_str(),
            "moveFrom" | "pPrChange" | "rPrChange" | "tblPrChange" | "trPrChange" | "tcPrChange" | "sectPr" | "rt"
        ),
        Space::Forms => element.name == "Fallback",
        _ => false,
    }
}

impl<'f> Body<'f> {
    pub(super) fn new(
        styles: &'f Styles,
        numbering: &'f mut Numbering,
        comments: &'f Comments,
        letters: &'f mut Letters,
    ) -> Self {
        Body {
            styles,
            numbering,
            comments,
            letters,
            around: vec![Vec::new()],
            tables: Vec::new(),
            open: Vec::new(),
            carried: None,
            skipped: 0,
            in_words: false,
            run: Run::default(),
            own_comments: 0,
            hidden: false,
        }
    }

    /// What was read.
    pub(super) fn finish(mut self) -> Vec<Part> {
        if let Some(paragraph) = self.carried.take() {
            self.put(Part::Paragraph(paragraph));
        }
        self.around.into_iter().flatten().collect()
    }

    fn put(&mut self, part: Part) {
        if let Some(inner) = self.around.last_mut() {
            inner.push(part);
        }
    }

    fn push(&mut self, words: &str) {
        if self.run.hidden {
            self.hidden |= !words.trim().is_empty();
            return;
        }
        let Some(open) = self.open.last_mut() else { return };
        // A raised 1 behind a 1 is '1 1/2', not '11/2'.
        let figure = |letter: char| letter.is_ascii_digit();
        if self.run.raised && words.starts_with(figure) && open.paragraph.text.ends_with(figure) {
            open.paragraph.push(" ", self.letters);
        }
        open.paragraph.push(words, self.letters);
    }

    /// An element of the text itself.
    fn word(&mut self, element: &Element) {
        match element.name.as_str() {
            "p" => self.open.push(Open::default()),
            "tbl" => self.tables.push(Table::default()),
            "tr" => {
                if let Some(table) = self.tables.last_mut() {
                    table.row = Row::default();
                    table.row_struck = false;
                }
            }
            "tc" | "txbxContent" => self.around.push(Vec::new()),
            "t" => self.in_words = true,
            "r" => self.run = Run::default(),
            "rPr" => self.run.in_properties = true,
            "rStyle" if !self.in_paragraph_properties() => {
                let key = element.get("val").unwrap_or("");
                self.run.hidden = self.styles.is_hidden(key);
                self.run.raised = self.styles.is_raised(key);
            }
            "vanish" if !self.in_paragraph_properties() => self.run.hidden = element.is_on(),
            "vertAlign" => self.run.raised = element.get("val") == Some("superscript"),
            "tab" if !self.in_paragraph_properties() => self.push("\t"),
            "br" | "cr" => self.push("\n"),
            "noBreakHyphen" => self.push("-"),
            "sym" => self.push(symbol(
                element.get("font").unwrap_or(""),
                element.get("char").unwrap_or(""),
            )),
            "commentReference" => self.comment(element.get("id").unwrap_or("")),
            "del" => self.struck(),
            _ => self.paragraph_property(element),
        }
    }

    fn in_paragraph_properties(&self) -> bool {
        self.open.last().is_some_and(|open| open.in_properties)
    }

    fn paragraph_property(&mut self, element: &Element) {
        let Some(open) = self.open.last_mut() else { return };
        match element.name.as_str() {
            "pPr" => open.in_properties = true,
            "pStyle" => element.get("val").unwrap_or("").clone_into(&mut open.style),
            "numId" => open.list = element.get("val").map(str::to_owned),
            "ilvl" => open.level = element.number("val"),
            "outlineLvl" => open.outline = element.number("val"),
            _ => {}
        }
    }

    /// Something is struck out: a row, a paragraph's end, or the words inside.
    fn struck(&mut self) {
        if self.in_paragraph_properties() {
            if let Some(open) = self.open.last_mut() {
                open.end_struck = true;
            }
        } else if !self.run.in_properties
            && self.open.is_empty()
            && self.around.len() == self.tables.len()
            && let Some(table) = self.tables.last_mut()
        {
            table.row_struck = true;
        } else {
            self.skipped = 1;
        }
    }

    fn comment(&mut self, key: &str) {
        let Some((author, words)) = self.comments.get(key) else {
            return;
        };
        if author == OWN_NAME {
            self.own_comments += 1;
        } else if let Some(open) = self.open.last_mut()
            && !words.trim().is_empty()
        {
            open.paragraph.remark(author, words);
        }
    }

    fn end_paragraph(&mut self) {
        let Some(open) = self.open.pop() else { return };
        let mut paragraph = open.paragraph;
        let own = |level: usize| (level < 9).then_some(level + 1);
        paragraph.heading = open.outline.and_then(own).or_else(|| self.styles.heading(&open.style));
        let list = match open.list {
            Some(list) => Some((list, open.level.unwrap_or(0))),
            None => self
                .styles
                .list(&open.style)
                .map(|(list, level)| (list, open.level.unwrap_or(level))),
        };
        if !paragraph.text.trim().is_empty() {
            paragraph.label = list.and_then(|(list, level)| self.numbering.label(&list, level));
        }
        if let Some(before) = self.carried.take() {
            paragraph = before.join(paragraph);
        }
        if open.end_struck {
            self.carried = Some(paragraph);
        } else {
            self.put(Part::Paragraph(paragraph));
        }
    }

    /// A cell or box ends: it goes into its row, or stands before the paragraph that holds it.
    fn end_inner(&mut self, cell: bool) {
        if self.around.len() < 2 {
            return;
        }
        if let Some(paragraph) = self.carried.take() {
            self.put(Part::Paragraph(paragraph));
        }
        let inner = self.around.pop().unwrap_or_default();
        match self.tables.last_mut() {
            Some(table) if cell => table.row.cells.push(flat(inner)),
            _ => inner.into_iter().for_each(|part| self.put(part)),
        }
    }
}

impl Visit for Body<'_> {
    fn open(&mut self, element: &Element) {
        if self.skipped > 0 {
            self.skipped += 1;
        } else if is_skipped(element) {
            self.skipped = 1;
        } else if element.space == Space::Word {
            self.word(element);
        } else if element.is(Space::Formula, "t") {
            self.in_words = true;
        } else if element.is(Space::Formula, "den") {
            self.push("/");
        } else if element.is(Space::Formula, "f")
            && self
                .open
                .last()
                .is_some_and(|open| open.paragraph.text.ends_with(|c: char| c.is_ascii_digit()))
        {
            // '1' and a set fraction are '1 1/2'.
            self.push(" ");
        }
    }

    fn close(&mut self, space: Space, name: &str) {
        if self.skipped > 0 {
            self.skipped -= 1;
            return;
        }
        match (space, name) {
            (Space::Word | Space::Formula, "t") => self.in_words = false,
            (Space::Word, "p") => self.end_paragraph(),
            (Space::Word, "r") => self.run = Run::default(),
            (Space::Word, "rPr") => self.run.in_properties = false,
            (Space::Word, "pPr") => {
                if let Some(open) = self.open.last_mut() {
                    open.in_properties = false;
                }
                self.run = Run::default();
            }
            (Space::Word, "tc") => self.end_inner(true),
            (Space::Word, "txbxContent") => self.end_inner(false),
            (Space::Word, "tr") => {
                if let Some(table) = self.tables.last_mut() {
                    let row = std::mem::take(&mut table.row);
                    if !table.row_struck {
                        table.rows.push(row);
                    }
                }
            }
            (Space::Word, "tbl") => {
                if let Some(table) = self.tables.pop() {
                    self.put(Part::Table(table.rows));
                }
            }
            _ => {}
        }
    }

    fn text(&mut self, text: &str) {
        if self.skipped == 0 && self.in_words {
            self.push(text);
        }
    }

    fn is_full(&self) -> bool {
        self.letters.length() > limits::TEXT
    }
}

/// A sign of a font of symbols: those of the font called Symbol that a page needs (its own encoding, octal 260, 261,
/// 264, 055); a dot stands for all others, which are list marks and ornaments.
fn symbol(font: &str, code: &str) -> &'static str {
    match (
        font,
        code.to_ascii_uppercase()
            .trim_start_matches('F')
            .trim_start_matches('0'),
    ) {
        ("Symbol", "B0") => "°",
        ("Symbol", "B1") => "±",
        ("Symbol", "B4") => "×",
        ("Symbol", "2D") => "-",
        _ => "•",
    }
}
