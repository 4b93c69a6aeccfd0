//! What the groups of a Rich Text file hold: fonts, styles, the body's paragraphs, tables, notes and comments.

use std::collections::BTreeMap;

use encoding_rs::Encoding;

use super::super::OWN_NAME;
use super::super::error::FileError;
use super::super::letters::Letters;
use super::super::limits;
use super::super::outline::{Paragraph, Part, Row};
use super::code_pages;
use super::tokens::Token;

/// What a group's words are for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
enum Place {
    #[default]
    Body,
    /// Nothing that is read.
    Nowhere,
    Fonts,
    Styles,
    /// The number or mark before a paragraph of a list.
    ListText,
    Author,
    Comment,
    Footnote,
    /// What runs over or under every page.
    Running,
}

/// How letters and paragraphs are set; a group's end brings back what was before.
#[derive(Clone, Copy, Debug)]
struct State {
    place: Place,
    page: i32,
    font: i32,
    /// Bytes that stand for a Unicode letter to old readers.
    fallback: usize,
    hidden: bool,
    struck: bool,
    raised: bool,
    in_table: bool,
    style: i32,
    outline: Option<usize>,
}

impl Default for State {
    fn default() -> Self {
        State {
            place: Place::Body,
            page: 1252,
            font: -1,
            fallback: 1,
            hidden: false,
            struck: false,
            raised: false,
            in_table: false,
            style: 0,
            outline: None,
        }
    }
}

/// A file being read.
#[derive(Default)]
pub(super) struct Body {
    state: State,
    around: Vec<State>,
    /// A group has begun and its first word says what it is.
    fresh: bool,
    /// `\*`: a group that old readers may pass over.
    passable: bool,
    /// Fallback bytes still to be passed over.
    passing: usize,
    bytes: Vec<u8>,
    units: Vec<u16>,
    page: i32,
    fonts: BTreeMap<i32, i32>,
    headings: BTreeMap<i32, usize>,
    /// A font or style whose entry is being read, and its name so far.
    entry: (i32, String),
    label: String,
    author: String,
    comment: String,
    footnote: String,
    footnotes: Vec<String>,
    running: String,
    paragraph: Paragraph,
    cell: Vec<Paragraph>,
    row: Row,
    rows: Vec<Row>,
    parts: Vec<Part>,
    letters: Letters,
    own_comments: usize,
    hidden: bool,
}

impl Body {
    /// Takes the next token.
    ///
    /// # Errors
    ///
    /// Groups stand too deep in each other, or there is too much text.
    pub(super) fn token(&mut self, token: Token) -> Result<(), FileError> {
        match token {
            Token::Open => {
                self.flush();
                if self.around.len() >= limits::DEPTH {
                    return Err(FileError::TooDeep("its groups", limits::DEPTH));
                }
                self.passing = 0;
                self.around.push(self.state);
                self.fresh = true;
                self.passable = false;
            }
            Token::Close => {
                self.flush();
                self.passing = 0;
                self.close();
            }
            Token::Word(word, number) => {
                // A letter beyond the first 65,536 comes in two words.
                if word != "u" {
                    self.flush();
                }
                self.passing = 0;
                self.word(word, number);
                self.fresh = false;
            }
            Token::Symbol(symbol) => self.symbol(symbol),
            Token::Byte(byte) => {
                if self.passing > 0 {
                    self.passing -= 1;
                } else {
                    self.flush_units();
                    self.bytes.push(byte);
                }
            }
            Token::Plain(bytes) => {
                let passed = self.passing.min(bytes.len());
                self.passing -= passed;
                let bytes = bytes.get(passed..).unwrap_or(&[]);
                if !bytes.is_empty() {
                    self.flush_units();
                    self.bytes.extend_from_slice(bytes);
                }
                self.fresh = false;
            }
        }
        if self.letters.length() > limits::TEXT {
            return Err(FileError::TooLarge("its text", limits::mebibytes(limits::TEXT)));
        }
        Ok(())
    }

    /// What there is to say of the file: own comments, hidden text, letters left out, running heads.
    pub(super) fn notes(&self) -> (usize, bool, Option<String>, String) {
        (
            self.own_comments,
            self.hidden,
            self.letters.says(),
            self.running.clone(),
        )
    }

    /// What was read, footnotes as notes at the end.
    pub(super) fn finish(mut self) -> Vec<Part> {
        self.flush();
        self.end_paragraph();
        self.end_table();
        let notes = self
            .footnotes
            .iter()
            .map(|note| note.trim())
            .filter(|note| !note.is_empty());
        let notes = notes.map(|note| Paragraph {
            text: format!("Note: {note}"),
            ..Paragraph::default()
        });
        self.parts.extend(notes.map(Part::Paragraph));
        self.parts
    }

    /// The set of characters that bytes belong to here.
    fn encoding(&self) -> &'static Encoding {
        let page = self.fonts.get(&self.state.font).copied();
        code_pages::of_page(page.unwrap_or(if self.page == 0 { self.state.page } else { self.page }))
    }

    /// Ends a run of bytes and of Unicode letters.
    fn flush(&mut self) {
        self.flush_units();
        if !self.bytes.is_empty() {
            let bytes = std::mem::take(&mut self.bytes);
            let (words, _) = self.encoding().decode_without_bom_handling(&bytes);
            self.words(&words);
        }
    }

    fn flush_units(&mut self) {
        if !self.units.is_empty() {
            let units = std::mem::take(&mut self.units);
            self.words(&String::from_utf16_lossy(&units));
        }
    }

    /// Words for wherever we are.
    fn words(&mut self, words: &str) {
        if self.state.hidden || self.state.struck {
            self.hidden |= self.state.hidden && self.state.place == Place::Body && !words.trim().is_empty();
            return;
        }
        match self.state.place {
            Place::Nowhere => {}
            Place::Fonts | Place::Styles => self.named(words),
            Place::ListText => self.letters.push(words, &mut self.label),
            Place::Author => self.letters.push(words, &mut self.author),
            Place::Comment => self.letters.push(words, &mut self.comment),
            Place::Footnote => self.letters.push(words, &mut self.footnote),
            Place::Running => self.letters.push(words, &mut self.running),
            Place::Body => {
                // A raised 1 behind a 1 is '1 1/2', not '11/2'.
                let figure = |letter: char| letter.is_ascii_digit();
                if self.state.raised && words.starts_with(figure) && self.paragraph.text.ends_with(figure) {
                    self.paragraph.text.push(' ');
                }
                self.paragraph.push(words, &mut self.letters);
            }
        }
    }

    /// The name of a style; a semicolon ends it.
    fn named(&mut self, words: &str) {
        self.entry.1.push_str(words);
        if self.state.place == Place::Styles
            && let Some(name) = self.entry.1.trim().strip_suffix(';')
        {
            let name = name.to_lowercase();
            let level = name
                .strip_prefix("heading ")
                .and_then(|level| level.trim().parse().ok());
            let level = level.or((name == "title").then_some(0));
            if let Some(level) = level {
                self.headings.insert(self.entry.0, level);
            }
            self.entry.1.clear();
        }
    }

    /// A group ends.
    fn close(&mut self) {
        self.fresh = false;
        let ended = self.state.place;
        let Some(before) = self.around.pop() else { return };
        let state = std::mem::replace(&mut self.state, before);
        if ended == self.state.place {
            // What a group says of its paragraph holds for the paragraph.
            self.state.in_table |= state.in_table;
            return;
        }
        match ended {
            Place::ListText => {
                let mark = self.label.trim();
                let figures = mark.chars().any(char::is_alphanumeric) && !matches!(mark, "o" | "§");
                let label = if figures { mark.to_owned() } else { "-".to_owned() };
                self.paragraph.label = Some(label);
                self.label.clear();
            }
            Place::Comment => {
                let (author, words) = (std::mem::take(&mut self.author), std::mem::take(&mut self.comment));
                if author.trim() == OWN_NAME {
                    self.own_comments += 1;
                } else if !words.trim().is_empty() {
                    self.paragraph.remark(&author, &words);
                }
            }
            Place::Footnote => {
                let note = std::mem::take(&mut self.footnote);
                self.footnotes
                    .push(note.split_whitespace().collect::<Vec<_>>().join(" "));
            }
            _ => {}
        }
    }

    fn symbol(&mut self, symbol: u8) {
        self.flush();
        match symbol {
            b'*' if self.fresh => {
                self.passable = true;
                return;
            }
            _ if self.passing > 0 => self.passing -= 1,
            b'~' => self.words(" "),
            b'_' => self.words("-"),
            b'\\' | b'{' | b'}' => self.words(char::from(symbol).encode_utf8(&mut [0; 4])),
            b'\r' | b'\n' => self.paragraph_mark(),
            _ => {}
        }
        self.fresh = false;
    }

    /// A control word.
    fn word(&mut self, word: &str, number: Option<i32>) {
        if self.fresh && self.opens(word, number) {
            return;
        }
        if self.state.place == Place::Nowhere {
            return;
        }
        let on = number != Some(0);
        match word {
            "u" => self.unicode(number.unwrap_or(0)),
            "uc" => self.state.fallback = number.and_then(|count| usize::try_from(count).ok()).unwrap_or(1).min(8),
            "ansicpg" => self.page = number.unwrap_or(0),
            "mac" => self.page = 10000,
            "f" if self.state.place == Place::Fonts => self.entry = (number.unwrap_or(0), String::new()),
            "s" if self.state.place == Place::Styles => self.entry = (number.unwrap_or(0), String::new()),
            "f" => self.state.font = number.unwrap_or(-1),
            "fcharset" => {
                if let Some(page) = code_pages::of_font(number.unwrap_or(1)) {
                    self.fonts.insert(self.entry.0, page);
                }
            }
            "v" => self.state.hidden = on,
            "deleted" => self.state.struck = on,
            "super" => self.state.raised = on,
            "nosupersub" | "sub" => self.state.raised = false,
            "plain" => {
                (self.state.hidden, self.state.struck, self.state.raised) = (false, false, false);
            }
            "pard" => (self.state.in_table, self.state.style, self.state.outline) = (false, 0, None),
            "intbl" => self.state.in_table = true,
            "s" => self.state.style = number.unwrap_or(0),
            "outlinelevel" => self.state.outline = number.and_then(|level| usize::try_from(level).ok()),
            "par" | "sect" | "page" => self.paragraph_mark(),
            "line" | "softline" => self.words("\n"),
            "cell" | "nestcell" if self.state.place == Place::Body => self.end_cell(),
            "row" | "nestrow" if self.state.place == Place::Body => self.end_row(),
            _ => {
                if let Some(letters) = letters_of(word) {
                    self.words(letters);
                }
            }
        }
    }

    /// The first word of a group says what it holds; whether it was such a word.
    fn opens(&mut self, word: &str, number: Option<i32>) -> bool {
        let starred = std::mem::take(&mut self.passable);
        let place = match word {
            "fonttbl" => Place::Fonts,
            "stylesheet" => Place::Styles,
            "listtext" | "pntext" => Place::ListText,
            "atnauthor" => Place::Author,
            "annotation" => Place::Comment,
            "footnote" => Place::Footnote,
            "header" | "headerl" | "headerr" | "headerf" | "footer" | "footerl" | "footerr" | "footerf" => {
                Place::Running
            }
            "colortbl" | "info" | "pict" | "objdata" | "nonshppict" | "fldinst" | "sp" | "ftnsep" | "ftnsepc"
            | "aftnsep" | "aftnsepc" | "filetbl" | "revtbl" | "xe" | "tc" | "rxe" | "bkmkstart" | "bkmkend" => {
                Place::Nowhere
            }
            "shpinst" | "ud" | "shprslt" => self.state.place,
            "f" | "s" | "cs" | "ds" | "ts" if starred || matches!(self.state.place, Place::Fonts | Place::Styles) => {
                self.entry = (
                    if word == "s" || word == "f" {
                        number.unwrap_or(0)
                    } else {
                        -1
                    },
                    String::new(),
                );
                return true;
            }
            _ if starred => Place::Nowhere,
            _ => return false,
        };
        // Nothing is read inside what is not read, nor is a comment's own date its words.
        if self.state.place != Place::Nowhere {
            self.state.place = place;
            if place != Place::Body {
                (self.state.struck, self.state.hidden) = (false, false);
            }
        }
        true
    }

    fn unicode(&mut self, number: i32) {
        if !self.bytes.is_empty() {
            let bytes = std::mem::take(&mut self.bytes);
            let (words, _) = self.encoding().decode_without_bom_handling(&bytes);
            self.words(&words);
        }
        let unit = number.rem_euclid(65536);
        self.units.push(u16::try_from(unit).unwrap_or(0xFFFD));
        self.passing = self.state.fallback;
    }

    /// A paragraph's end; in notes and comments it is a space.
    fn paragraph_mark(&mut self) {
        match self.state.place {
            Place::Body if self.state.in_table => {
                let paragraph = self.ended();
                self.cell.push(paragraph);
            }
            Place::Body => {
                self.end_table();
                self.end_paragraph();
            }
            _ => self.words(" "),
        }
    }

    /// The paragraph that was read.
    fn ended(&mut self) -> Paragraph {
        let mut paragraph = std::mem::take(&mut self.paragraph);
        let outline = self.state.outline.filter(|level| *level < 9).map(|level| level + 1);
        paragraph.heading = self.headings.get(&self.state.style).copied().or(outline);
        paragraph
    }

    fn end_paragraph(&mut self) {
        let paragraph = self.ended();
        self.parts.push(Part::Paragraph(paragraph));
    }

    fn end_cell(&mut self) {
        let paragraph = self.ended();
        self.cell.push(paragraph);
        self.row.cells.push(std::mem::take(&mut self.cell));
    }

    fn end_row(&mut self) {
        let row = std::mem::take(&mut self.row);
        if !row.cells.is_empty() {
            self.rows.push(row);
        }
    }

    /// A paragraph outside ends the table before it.
    fn end_table(&mut self) {
        if !self.cell.is_empty() {
            self.row.cells.push(std::mem::take(&mut self.cell));
        }
        self.end_row();
        if !self.rows.is_empty() {
            self.parts.push(Part::Table(std::mem::take(&mut self.rows)));
        }
    }
}

/// Letters that have words of their own.
fn letters_of(word: &str) -> Option<&'static str> {
    Some(match word {
        "tab" => "\t",
        "emdash" => "—",
        "endash" => "–",
        "lquote" => "‘",
        "rquote" => "’",
        "ldblquote" => "“",
        "rdblquote" => "”",
        "bullet" => "•",
        "emspace" | "enspace" | "qmspace" => " ",
        _ => return None,
    })
}
