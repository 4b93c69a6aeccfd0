//! The layout of a page: what each of its rows is.
//!
//! Rows are judged one after the other in a small number of states (before the list, list, method, after it); headings
//! change the state, and so does a row that can only belong to the next one. Nothing is dropped: what no rule claims
//! is a headnote before the list and a closing paragraph after the method.

mod cells;
mod head;
mod heading;
mod notes;
mod prose;
mod rows;
mod variation;

use self::heading::Form;
use self::notes::Note;
use self::rows::{Mark, Row, reads_as_prose};
use crate::lexicon::{Class, Part, class};
use crate::line::{self, Line};
use crate::token::Token;
use crate::{Block, BlockKind, DeskNote, Ingredient, Layout, Recipe, Span, Step, Unsure, Words};

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
    let rows = cells::split(text, rows::rows(text));
    let strong: Vec<bool> = rows.iter().map(|row| is_ingredient(text, row)).collect();
    let listed = list_stands(text, &rows, &strong);
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
    for at in 0..rows.len() {
        page.row(&rows, &strong, at, listed);
    }
    page.settle_sections();
    if !listed {
        prose::ingredients(text, &mut page.recipe);
    }
    page.parts_of();
    page.desk_notes();
    variation::read(text, &mut page.recipe);
    page.yield_in_headnote();
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
    }
}

/// Whether the page has a list: a heading says so, or two rows can only be ingredients.
fn list_stands(text: &str, rows: &[Row], strong: &[bool]) -> bool {
    let opened = |row: &Row| heading::opened_part(text, row.span).is_some_and(|(part, _)| part == Part::List);
    let headed = rows
        .iter()
        .any(|row| heading::part(text, row) == Some(Part::List) || opened(row));
    headed || strong.iter().filter(|strong| **strong).count() >= 2
}

/// Whether a row by itself reads as a line of an ingredient list.
fn is_ingredient(text: &str, row: &Row) -> bool {
    let length = row.span.end - row.span.start;
    if length > 240 || matches!(row.mark, Mark::Heading | Mark::Action) || reads_as_prose(text, row.span) {
        return false;
    }
    if head::head(text, row.span).is_some() {
        return false;
    }
    let reading = line::read(text, row.span, &[]);
    let timed = |t: &Token| {
        t.is_any(&[
            "minutes", "minute", "hours", "hour", "mins", "hrs", "days", "of", "people", "weeks", "calories", "kcal",
            "min",
        ])
    };
    let second_is_time = Line::new(text, row.span).tokens.iter().take(4).any(timed) && row.mark == Mark::Number;
    let numbered = row.mark == Mark::Number && second_is_time;
    let measured = |i: &Ingredient| {
        let food = i
            .items
            .iter()
            .flat_map(|item| item.name.split(' '))
            .any(|w| class(&w.to_lowercase()).is(Class::FOOD));
        let unit = i.open.is_some() || i.quantity.is_some_and(|q| q.unit.is_some()) || i.package.is_some();
        let counted = i
            .quantity
            .is_some_and(|q| !matches!(q.span.of(text), "a" | "A" | "an" | "An"));
        !i.items.is_empty()
            && (unit || counted && (food || row.mark == Mark::Bullet) || food && i.quantity.is_some() && length < 40)
    };
    let long = reading
        .entries
        .iter()
        .flat_map(|i| &i.items)
        .any(|item| item.name.split(' ').count() > 6);
    let sentence = text[row.span.start..row.span.end].contains(". ") && row.mark != Mark::Bullet && length > 100;
    reading.entries.iter().any(measured) && !long && !numbered && !sentence && reading.label.is_none()
}

impl Page<'_> {
    /// Takes one row.
    fn row(&mut self, rows: &[Row], strong: &[bool], at: usize, listed: bool) {
        let row = &rows[at];
        if self.whole_note(row) {
            return;
        }
        if let Some(part) = heading::part(self.text, row).filter(|_| self.recipe.title.is_some() || at > 0) {
            self.part(part, row);
            return;
        }
        if self.title_row(rows, strong, at) {
            self.recipe.title = Some(self.words(row.span));
            self.block(row.span, BlockKind::Title);
            return;
        }
        if self.place != Place::Aside && row.mark != Mark::Number && self.head_row(row) {
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
        if self.heading_row(rows, strong, at, listed) {
            return;
        }
        match self.place {
            Place::Front => self.front(rows, strong, at, listed),
            Place::List => self.list(rows, strong, at),
            Place::Method => self.method(rows, strong, at, listed),
            Place::Variation => self.variation(row),
            Place::After | Place::Aside => self.closing(
                row,
                strong[at] && self.place == Place::After && self.section_open(rows, at),
            ),
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
        self.block(row.span, BlockKind::PartHeading);
        self.section = None;
        self.place = match part {
            Part::List => Place::List,
            Part::Method => Place::Method,
            Part::Variation => Place::Variation,
            Part::Closing => Place::Aside,
            Part::Equipment => Place::Aside,
        };
        self.method_headed |= part == Part::Method;
        if matches!(part, Part::Closing | Part::Equipment) {
            self.recipe.closing.push(self.words(row.span));
        }
    }

    /// The first row, unless it can only be something else.
    fn title_row(&self, rows: &[Row], strong: &[bool], at: usize) -> bool {
        let row = &rows[at];
        let first = self.recipe.title.is_none()
            && self.recipe.ingredients.is_empty()
            && self.recipe.steps.is_empty()
            && self.recipe.headnote.is_empty()
            && self.place == Place::Front;
        let words = row.span.of(self.text).split_whitespace().count();
        let running = reads_as_prose(self.text, row.span) && words > 9 || words > 25;
        first
            && !running
            && (!strong[at] || row.mark == Mark::Heading || row.last && row.mark == Mark::None && rows.len() > 2)
            && !matches!(row.mark, Mark::Bullet | Mark::Action | Mark::Number)
    }

    /// A yield line or declared times.
    fn head_row(&mut self, row: &Row) -> bool {
        let Some(found) = head::head(self.text, row.span) else {
            return false;
        };
        let kind = if found.yields.is_some() {
            BlockKind::Yield
        } else {
            BlockKind::DeclaredTime
        };
        // 'Time about two hours. Two and a half pounds of chops …' goes on with the recipe.
        if reads_as_prose(self.text, row.span) && row.span.end - row.span.start > 120 {
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
                self.ingredient(&rest);
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
                self.closing(row, false);
            }
            _ => return false,
        }
        true
    }

    /// A heading of a component, judged by its form and by what follows.
    fn heading_row(&mut self, rows: &[Row], strong: &[bool], at: usize, listed: bool) -> bool {
        let row = &rows[at];
        let form = heading::form(self.text, row);
        if form == Form::No || self.place == Place::Aside || (self.recipe.title.is_none() && !listed) {
            return false;
        }
        let Some(next) = rows.get(at + 1) else { return false };
        let list_follows = strong[at + 1]
            || strong.get(at + 2).copied().unwrap_or(false) && !reads_as_prose(self.text, next.span) && !next.apart;
        let prose_follows = reads_as_prose(self.text, next.span) || next.mark == Mark::Number;
        let food = food_alone(self.text, row) && form == Form::Perhaps;
        let taken = match form {
            Form::Yes => {
                (list_follows || prose_follows || self.place == Place::List)
                    && !(self.place == Place::Front && !list_follows)
            }
            Form::Perhaps => {
                let opens = row.apart
                    && (list_follows && (strong.get(at + 2).copied().unwrap_or(false) || next.apart)
                        || prose_follows && self.place != Place::Front && row.last);
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

    fn front(&mut self, rows: &[Row], strong: &[bool], at: usize, listed: bool) {
        let row = &rows[at];
        if strong[at] && listed {
            self.place = Place::List;
            self.list(rows, strong, at);
        } else if !listed
            && (has_imperative(self.text, row.span) || self.recipe.steps.is_empty() && lists_foods(self.text, row.span))
        {
            self.place = Place::Method;
            self.step(row);
        } else if listed && row.mark == Mark::Bullet && strong.get(at + 1).copied().unwrap_or(false) {
            self.place = Place::List;
            self.list(rows, strong, at);
        } else if listed && row.mark == Mark::Number && has_imperative(self.text, row.span) {
            self.place = Place::Method;
            self.step(row);
        } else {
            self.recipe.headnote.push(self.words(row.span));
            self.block(row.span, BlockKind::Headnote);
        }
    }

    fn list(&mut self, rows: &[Row], strong: &[bool], at: usize) {
        let row = &rows[at];
        let words = row.span.of(self.text).split_whitespace().count();
        let prose = reads_as_prose(self.text, row.span) && !strong[at];
        if row.mark == Mark::Action || row.mark == Mark::Number && (prose || words > 6) && !strong[at] {
            let stays = row.mark == Mark::Action;
            self.step(row);
            if !stays {
                self.place = Place::Method;
            }
        } else if prose && (words > 2 || row.apart) {
            if closes(self.text, row.span) && !self.recipe.steps.is_empty() {
                self.place = Place::After;
                self.closing(row, false);
            } else if bracketed(self.text, row.span) {
                self.remark(row);
            } else {
                self.place = Place::Method;
                self.step(row);
            }
        } else if !strong[at] && (bracketed(self.text, row.span) || words > 24) {
            self.remark(row);
        } else if closes(self.text, row.span) && !strong[at] && !self.recipe.steps.is_empty() {
            self.place = Place::After;
            self.closing(row, false);
        } else {
            self.ingredient(row);
        }
    }

    /// A remark among the ingredients, kept with the headnote or the closing.
    fn remark(&mut self, row: &Row) {
        let words = self.words(row.span);
        if self.recipe.steps.is_empty() {
            self.recipe.headnote.push(words);
            self.block(row.span, BlockKind::Headnote);
        } else {
            self.recipe.closing.push(words);
            self.block(row.span, BlockKind::Closing);
        }
    }

    fn method(&mut self, rows: &[Row], strong: &[bool], at: usize, listed: bool) {
        let row = &rows[at];
        let imperative = has_imperative(self.text, row.span);
        let weak = row.apart && !row.last && is_bare_food(self.text, row);
        let run = strong.get(at + 1).copied().unwrap_or(false) || rows.get(at + 1).is_none_or(|next| next.apart);
        if (strong[at] || weak)
            && listed
            && row.mark != Mark::Number
            && row.mark != Mark::Action
            && (run || weak || row.mark == Mark::Bullet)
            && !imperative
        {
            self.place = Place::List;
            self.list(rows, strong, at);
        } else if closes(self.text, row.span) && row.mark != Mark::Number && !self.recipe.steps.is_empty() {
            self.place = Place::After;
            self.closing(row, false);
        } else if row.mark == Mark::Number || imperative || !row.apart || self.recipe.steps.is_empty() {
            self.step(row);
        } else {
            self.closing(row, false);
        }
    }

    fn step(&mut self, row: &Row) {
        let index = self.recipe.steps.len();
        if let Some(section) = self.section {
            self.owed.push((index, section));
        }
        let words = self.words(row.span);
        let section = self.section.filter(|_| self.method_headed);
        self.recipe.steps.push(Step { words, section });
        self.block(row.span, BlockKind::Step);
    }

    fn variation(&mut self, row: &Row) {
        let words = self.words(row.span);
        let name = variation::name(self.text, row.span);
        self.recipe.variations.push(crate::Variation {
            name,
            words,
            changes: Vec::new(),
        });
        self.block(row.span, BlockKind::Variation);
    }

    fn closing(&mut self, row: &Row, ingredient: bool) {
        if ingredient {
            self.place = Place::List;
            self.ingredient(row);
            return;
        }
        self.recipe.closing.push(self.words(row.span));
        self.block(row.span, BlockKind::Closing);
    }

    /// Whether a component heading has opened a new list after the method.
    fn section_open(&self, rows: &[Row], at: usize) -> bool {
        at > 0 && heading::form(self.text, &rows[at - 1]) == Form::Yes
    }

    fn ingredient(&mut self, row: &Row) {
        let holes = self.holes(row.span);
        let reading = line::read(self.text, row.span, &holes);
        let mut section = self.section;
        let mut serving = false;
        let optional = reading
            .label
            .is_some_and(|label| label.of(self.text).eq_ignore_ascii_case("optional"));
        if let Some(label) = reading.label.filter(|_| !optional) {
            section = Some(self.recipe.sections.len());
            self.recipe.sections.push(heading::section(self.text, label));
            self.block(label, BlockKind::SectionHeading);
            let words = label.of(self.text).to_lowercase();
            serving = ["topping", "serve", "serving", "garnish", "top"]
                .iter()
                .any(|w| words.contains(w));
            self.block(Span::new(label.end, row.span.end), BlockKind::Ingredient);
        } else {
            self.block(row.span, BlockKind::Ingredient);
        }
        serving |= self.section.and_then(|s| self.recipe.sections.get(s)).is_some_and(|s| {
            matches!(
                s.name.as_str(),
                "serve" | "garnish" | "toppings" | "topping" | "serving"
            )
        });
        let first = self.recipe.ingredients.len();
        for mut entry in reading.entries {
            entry.section = section;
            entry.for_serving |= serving;
            entry.optional |= optional;
            entry.instead_of = self.or_open.take();
            if entry.items.is_empty() && !entry.equipment {
                self.recipe.unsure.push(Unsure {
                    span: entry.span,
                    what: "I could not tell which food this line asks for.".to_owned(),
                    taken_as: None,
                });
            }
            self.recipe.ingredients.push(entry);
        }
        if reading.or_next && self.recipe.ingredients.len() > first {
            self.or_open = Some(self.recipe.ingredients.len() - 1);
        }
    }

    /// Steps belong to the component whose list stands right before them, when the page gives each part its method.
    fn settle_sections(&mut self) {
        for (step, section) in std::mem::take(&mut self.owed) {
            let start = self.recipe.steps[step].words.span.start;
            let heading = self.recipe.sections[section].words.span.start;
            let earlier = self.recipe.steps.iter().any(|s| s.words.span.start < heading);
            let later = self.recipe.ingredients.last().is_some_and(|i| i.span.start > start);
            if (earlier || later) && self.recipe.steps[step].section.is_none() && !self.method_headed {
                self.recipe.steps[step].section = Some(section);
            }
        }
    }

    /// '2 litres of the stock': taken from what an earlier line lists.
    fn parts_of(&mut self) {
        for at in 1..self.recipe.ingredients.len() {
            let ingredient = &self.recipe.ingredients[at];
            let words = ingredient.span.of(self.text).to_lowercase();
            let Some(item) = ingredient.items.first() else { continue };
            let taken = words.contains(" of the ") && ingredient.items.len() == 1;
            if !taken {
                continue;
            }
            let head = crate::lexicon::singular(&item.name);
            let fits = |earlier: &Ingredient| {
                earlier.part_of.is_none()
                    && earlier.items.iter().any(|i| {
                        let name = crate::lexicon::singular(&i.name);
                        name == head || name.ends_with(&format!(" {head}"))
                    })
            };
            // Only the lines just above are looked at: a page's own list is never longer.
            let from = at.saturating_sub(200);
            let found = self.recipe.ingredients[from..at]
                .iter()
                .position(fits)
                .map(|i| i + from);
            self.recipe.ingredients[at].part_of = found;
        }
    }

    fn desk_notes(&mut self) {
        let steps = &self.recipe.steps;
        let notes = self.notes.iter().map(|note| {
            let after = steps.partition_point(|step| step.words.span.end < note.outer.end);
            let step = steps
                .get(after)
                .filter(|step| step.words.span.contains(note.outer))
                .map(|_| after);
            DeskNote {
                words: Words::at(self.text, note.inner),
                step,
            }
        });
        self.recipe.desk_notes = notes.collect();
    }

    /// '(… feeds 4, and …)' in the headnote, when no line states the yield.
    fn yield_in_headnote(&mut self) {
        if self.recipe.yields.is_some() {
            return;
        }
        let running = self
            .recipe
            .steps
            .iter()
            .map(|step| &step.words)
            .chain(&self.recipe.closing);
        let notes = self.recipe.headnote.iter().chain(&self.recipe.title).chain(running);
        let said = notes.filter_map(|words| {
            let all = crate::token::tokens(self.text, words.span);
            let opens = |at: usize| at == 0 || all[at - 1].sign().is_some();
            let at = (0..all.len()).find(|at| all[*at].is_any(&["serves", "feeds", "makes"]) && opens(*at))?;
            crate::number::amount(&all, at + 1).filter(|c| !c.article)?;
            head::yields(self.text, &all[at..])
        });
        self.recipe.yields = said.into_iter().next();
    }

    /// Fills the gaps between the blocks.
    fn close(mut self) -> Recipe {
        let mut blocks = std::mem::take(&mut self.recipe.blocks);
        blocks.retain(|block| block.span.start < block.span.end);
        blocks.sort_by_key(|block| block.span);
        let mut whole = Vec::with_capacity(blocks.len() * 2 + 1);
        let mut at = 0;
        for block in blocks {
            let start = block.span.start.max(at);
            if start >= block.span.end {
                continue;
            }
            if start > at {
                whole.push(Block {
                    span: Span::new(at, start),
                    kind: BlockKind::Gap,
                });
            }
            whole.push(Block {
                span: Span::new(start, block.span.end),
                ..block
            });
            at = block.span.end;
        }
        if at < self.text.len() {
            whole.push(Block {
                span: Span::new(at, self.text.len()),
                kind: BlockKind::Gap,
            });
        }
        self.recipe.blocks = whole;
        self.recipe
    }
}

/// Whether a short row names a food and says no more: 'Salt', 'Black pepper'.
fn is_bare_food(text: &str, row: &Row) -> bool {
    let body = row.span.of(text);
    let short = body.split_whitespace().count() <= 5 && !body.ends_with(['.', '!', '?', ':']);
    if !short || reads_as_prose(text, row.span) {
        return false;
    }
    let food = |name: &str| {
        name.split(' ')
            .next_back()
            .is_some_and(|last| class(&last.to_lowercase()).is(Class::FOOD))
    };
    line::read(text, row.span, &[])
        .entries
        .iter()
        .all(|i| i.items.iter().any(|item| food(&item.name)))
}

/// A place without the blank space at its ends.
fn trimmed(text: &str, span: Span) -> Span {
    let body = span.of(text);
    let start = span.start + (body.len() - body.trim_start().len());
    Span::new(start, start + body.trim().len())
}

/// Whether a clause of the row tells the cook to do something.
fn has_imperative(text: &str, span: Span) -> bool {
    let words = crate::token::tokens(text, span);
    (0..words.len()).any(|at| {
        let opens = at == 0
            || matches!(words[at - 1].sign(), Some('.' | ',' | ';' | ':' | '!' | ')' | '–'))
            || words[at - 1].is_any(&["and", "then"]);
        opens && rows::begins_with_verb(&words[at..words.len().min(at + 12)])
    })
}

/// Whether a row enumerates foods with their amounts: 'Two pounds of chops, eight potatoes, four turnips'.
fn lists_foods(text: &str, span: Span) -> bool {
    let reading = line::read(text, span, &[]);
    reading
        .entries
        .iter()
        .filter(|i| i.quantity.is_some() && !i.items.is_empty())
        .count()
        > 1
}

/// A food and nothing else, such as a bare line of a list.
fn food_alone(text: &str, row: &Row) -> bool {
    let body = row.span.of(text).to_lowercase();
    body.split_whitespace()
        .last()
        .is_some_and(|word| class(word.trim_matches(|c: char| !c.is_alphanumeric())).is(Class::FOOD))
}

fn bracketed(text: &str, span: Span) -> bool {
    let body = span.of(text);
    body.starts_with('(') && body.trim_end_matches('.').ends_with(')')
}

/// Words that open what is said after the method: keeping, leftovers, serving remarks.
fn closes(text: &str, span: Span) -> bool {
    let body = span.of(text);
    let start: String = body.chars().take(60).collect::<String>().to_lowercase();
    let words: Vec<&str> = start
        .split(|c: char| !c.is_alphanumeric() && c != '\'')
        .filter(|w| !w.is_empty())
        .take(4)
        .collect();
    let Some(first) = words.first() else { return false };
    match *first {
        "keeps" | "freezes" | "doubles" | "halves" | "leftover" | "leftovers" | "note" | "notes" | "nb" | "tip"
        | "tips" | "nutrition" | "suitable" | "comments" | "storage" | "source" | "copyright" | "adapted" | "ps" => {
            true
        }
        "any" | "if" => words.contains(&"leftovers") || words.contains(&"holding") && *first == "any",
        "can" | "may" => words.get(1).is_some_and(|w| *w == "be"),
        _ => false,
    }
}
