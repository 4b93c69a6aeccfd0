//! The layout of a page: what each of its rows is.
//!
//! Rows are judged one after the other in a small number of states (before the list, list, method, after it); headings
//! change the state, and so does a row that can only belong to the next one. Nothing is dropped: what no rule claims
//! is a headnote before the list and a closing paragraph after the method.

mod beside;
mod cells;
mod figures;
mod finish;
mod head;
mod heading;
mod judge;
mod notes;
mod places;
mod prose;
mod rows;
mod stretch;
mod variation;

use self::head::Head;
use self::heading::Form;
use self::judge::{Seen, food_alone, is_bare_food, list_stands, trimmed};
use self::notes::Note;
use self::rows::{Mark, Row};
use crate::lexicon::Part;
use crate::number;
use crate::{Block, BlockKind, Layout, Recipe, Span, Words};

/// Where on the page the reader is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Place {
    Front,
    List,
    Method,
    Variation,
    After,
    /// Nutrition, comments, equipment: only a heading of list or method leads out.
    Aside,
}

/// A page being read.
struct Page<'t> {
    text: &'t str,
    notes: Vec<Note>,
    recipe: Recipe,
    place: Place,
    section: Option<usize>,
    /// Sections of steps are known only when the page is over: (step, section, a heading of the method stood between).
    owed: Vec<(usize, usize)>,
    /// The last row ended with 'or': the next ingredient stands in the place of this one.
    or_open: Option<usize>,
    /// A heading of list or method stands on the page.
    method_headed: bool,
}

/// Reads everything of a page but what the method does.
pub(crate) fn lay(text: &str) -> Recipe {
    let mut seen = cells::split(text, rows::rows(text));
    let listed = list_stands(text, &seen);
    let mut page = Page {
        text,
        notes: notes::notes(text),
        recipe: empty(listed),
        place: Place::Front,
        section: None,
        owed: Vec::new(),
        or_open: None,
        method_headed: false,
    };
    for at in 0..seen.len() {
        page.row(&mut seen, at, listed);
    }
    page.settle_sections();
    page.strays(&seen);
    if !listed {
        prose::ingredients(text, &mut page.recipe);
    }
    page.parts_of();
    page.desk_notes();
    variation::read(text, &mut page.recipe);
    page.yield_in_headnote();
    page.times_in_steps();
    page.close()
}

fn empty(listed: bool) -> Recipe {
    Recipe {
        title: None,
        headnote: Vec::new(),
        yields: None,
        declared_times: Vec::new(),
        sections: Vec::new(),
        ingredients: Vec::new(),
        steps: Vec::new(),
        operations: Vec::new(),
        variations: Vec::new(),
        desk_notes: Vec::new(),
        closing: Vec::new(),
        layout: if listed { Layout::List } else { Layout::Prose },
        blocks: Vec::new(),
        unsure: Vec::new(),
        strays: Vec::new(),
    }
}

impl Page<'_> {
    /// Takes one row.
    fn row(&mut self, seen: &mut [Seen], at: usize, listed: bool) {
        let row = seen[at].row.clone();
        let row = &row;
        if !row.pieces.is_empty() {
            // What is done with the lines beside it; the list goes on below.
            self.step(row);
            self.place = Place::List;
            return;
        }
        if self.whole_note(row) {
            return;
        }
        if let Some(part) = heading::part(self.text, row).filter(|_| self.recipe.title.is_some() || at > 0) {
            self.part(part, row);
            return;
        }
        if self.title_row(seen, at) {
            self.recipe.title = Some(self.words(row.span));
            self.block(row.span, BlockKind::Title);
            return;
        }
        let head = seen[at]
            .head
            .take()
            .filter(|_| self.place != Place::Aside && row.mark != Mark::Number);
        if head.is_some_and(|head| self.head_row(row, seen[at].prose, head)) {
            return;
        }
        let opened = heading::opened_part(self.text, row.span).filter(|_| row.mark != Mark::Number);
        if opened.is_some_and(|(part, from)| self.opened(part, row, from)) {
            return;
        }
        if cells::heads_table(self.text, row.span) {
            self.block(row.span, BlockKind::PartHeading);
            return;
        }
        if let Some(name) = cells::heads_component(self.text, row.span) {
            self.section = Some(self.recipe.sections.len());
            self.recipe.sections.push(heading::section(self.text, name));
            self.block(name, BlockKind::SectionHeading);
            self.block(Span::new(name.end, row.span.end), BlockKind::PartHeading);
            self.place = Place::List;
            return;
        }
        if self.heading_row(seen, at, listed) {
            return;
        }
        match self.place {
            Place::Front => self.front(seen, at, listed),
            Place::List => self.list(seen, at),
            Place::Method => self.method(seen, at, listed),
            Place::Variation => self.variation(row),
            Place::After if seen[at].strong && self.section_open(seen, at) => {
                self.place = Place::List;
                self.ingredient(row, seen[at].reading.take());
            }
            Place::After | Place::Aside => self.closing(row),
        }
    }

    fn words(&self, span: Span) -> Words {
        let mut text = String::new();
        for piece in self.pieces(span) {
            for word in piece.of(self.text).split_whitespace() {
                if !text.is_empty() {
                    text.push(' ');
                }
                text.push_str(&word.replace("**", ""));
            }
        }
        Words { text, span }
    }

    /// A place without the notes that stand in it.
    fn pieces(&self, span: Span) -> Vec<Span> {
        let mut pieces = Vec::new();
        let mut from = span.start;
        for note in self.holes(span) {
            pieces.push(Span::new(from, note.start));
            from = note.end;
        }
        pieces.push(Span::new(from, span.end));
        pieces.retain(|piece| !piece.of(self.text).trim().is_empty());
        pieces
    }

    /// The notes that stand in a place, brackets included.
    fn holes(&self, span: Span) -> Vec<Span> {
        let first = self.notes.partition_point(|note| note.outer.end <= span.start);
        let here = self.notes[first..].iter().map(|note| note.outer);
        here.take_while(|outer| outer.start < span.end)
            .filter(|outer| span.contains(*outer))
            .collect()
    }

    fn block(&mut self, span: Span, kind: BlockKind) {
        for piece in self.pieces(span) {
            self.recipe.blocks.push(Block { span: piece, kind });
        }
        for note in self.holes(span) {
            self.recipe.blocks.push(Block {
                span: note,
                kind: BlockKind::DeskNote,
            });
        }
    }

    /// A row that is a note and nothing else.
    fn whole_note(&mut self, row: &Row) -> bool {
        if !self.pieces(row.span).is_empty() || self.holes(row.span).is_empty() {
            return false;
        }
        self.block(row.span, BlockKind::DeskNote);
        true
    }

    fn part(&mut self, part: Part, row: &Row) {
        if part == Part::Furniture {
            return self.remark(row);
        }
        self.block(row.span, BlockKind::PartHeading);
        self.section = None;
        self.place = match part {
            Part::List => Place::List,
            Part::Method => Place::Method,
            Part::Variation => Place::Variation,
            Part::Furniture => return,
            Part::Closing => Place::Aside,
            Part::Equipment => Place::Aside,
        };
        self.method_headed |= part == Part::Method;
        if matches!(part, Part::Closing | Part::Equipment) {
            self.recipe.closing.push(self.words(row.span));
        }
    }

    /// The first row, unless it can only be something else.
    fn title_row(&self, seen: &[Seen], at: usize) -> bool {
        let row = seen[at].row.clone();
        let row = &row;
        let first = self.recipe.title.is_none()
            && self.recipe.ingredients.is_empty()
            && self.recipe.steps.is_empty()
            && self.recipe.headnote.is_empty()
            && self.place == Place::Front;
        let words = row.span.of(self.text).split_whitespace().count();
        let running = seen[at].prose && words > 9 || words > 25;
        first
            && !running
            && (!seen[at].strong
                || numbered_behind(self.text, row)
                || row.mark == Mark::Heading
                || row.last && row.mark == Mark::None && seen.len() > 2)
            && !matches!(row.mark, Mark::Bullet | Mark::Action | Mark::Number)
    }

    /// A yield line or declared times.
    fn head_row(&mut self, row: &Row, prose: bool, found: Head) -> bool {
        let kind = if found.yields.is_some() {
            BlockKind::Yield
        } else {
            BlockKind::DeclaredTime
        };
        // 'Time about two hours. Two and a half pounds of chops …' goes on with the recipe.
        if prose && row.span.end - row.span.start > 120 {
            return false;
        }
        if self.recipe.yields.is_none() {
            self.recipe.yields = found.yields;
        }
        self.recipe.declared_times.extend(found.times);
        self.block(row.span, kind);
        true
    }

    /// 'Variation: …', 'Note: …', 'Tip: …' at the start of a paragraph.
    fn opened(&mut self, part: Part, row: &Row, from: usize) -> bool {
        let inside = Span::new(from, row.span.end);
        let rest = Row {
            span: trimmed(self.text, inside),
            ..row.clone()
        };
        match part {
            Part::List if !rest.span.of(self.text).is_empty() => {
                self.block(Span::new(row.span.start, from), BlockKind::PartHeading);
                self.place = Place::List;
                self.ingredient(&rest, None);
            }
            Part::Method if !rest.span.of(self.text).is_empty() => {
                self.block(Span::new(row.span.start, from), BlockKind::PartHeading);
                self.place = Place::Method;
                self.method_headed = true;
                self.step(&rest);
            }
            Part::Variation => {
                self.variation(row);
                self.place = Place::Variation;
            }
            Part::Closing if self.place != Place::Front => {
                self.place = Place::After;
                self.closing(row);
            }
            _ => return false,
        }
        true
    }

    /// A heading of a component, judged by its form and by what follows.
    fn heading_row(&mut self, seen: &[Seen], at: usize, listed: bool) -> bool {
        let row = seen[at].row.clone();
        let row = &row;
        let form = heading::form(self.text, row);
        if form == Form::No || self.place == Place::Aside || (self.recipe.title.is_none() && !listed) {
            return false;
        }
        let Some(next) = seen.get(at + 1) else { return false };
        let (next_prose, next) = (next.prose, &next.row);
        let list_follows =
            seen[at + 1].strong || seen.get(at + 2).is_some_and(|s| s.strong) && !next_prose && !next.apart;
        let prose_follows = next_prose || next.mark == Mark::Number;
        let food = food_alone(self.text, row) && form == Form::Perhaps;
        let taken = match form {
            Form::Yes => {
                (list_follows || prose_follows || self.place == Place::List)
                    && (self.place != Place::Front || list_follows)
            }
            Form::Perhaps => {
                let opens = row.apart
                    && (list_follows && (seen.get(at + 2).is_some_and(|s| s.strong) || next.apart)
                        || prose_follows && self.place != Place::Front && row.last && row.mark != Mark::Number);
                opens && !(food && self.place == Place::List && !next.apart)
            }
            Form::No => false,
        };
        let shouted = form == Form::Yes && !row.apart && !list_follows && is_bare_food(self.text, row);
        if !taken || shouted {
            return false;
        }
        self.section = Some(self.recipe.sections.len());
        self.recipe.sections.push(heading::section(self.text, row.span));
        self.block(row.span, BlockKind::SectionHeading);
        self.place = if list_follows {
            Place::List
        } else if prose_follows && self.place != Place::Front {
            Place::Method
        } else {
            Place::List
        };
        if self.place == Place::Method {
            self.method_headed = true;
        }
        true
    }
}

/// 'LENTIL SOUP rev. 3', 'Chicken broth no. 2': a number at the end that measures nothing.
fn numbered_behind(text: &str, row: &Row) -> bool {
    let tokens = crate::token::tokens(text, row.span);
    let Some((last, before)) = tokens.split_last() else {
        return false;
    };
    let plain = last.number().is_some_and(|n| n.is_whole()) && !before.iter().any(|t| t.number().is_some());
    let measured = number::amount(&tokens, 0).is_some();
    plain && !measured && before.iter().filter(|t| t.is_word()).count() > 1
}
