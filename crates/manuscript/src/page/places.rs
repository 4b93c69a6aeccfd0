//! The places of a page, and what becomes of a row in each.

use super::heading::{self, Form};
use super::judge::{Seen, bracketed, closes, has_imperative, is_bare_food, lists_foods};
use super::rows::{Mark, Row};
use super::{Page, Place, figures, variation};
use crate::line::{self, LineReading};
use crate::{BlockKind, Ingredient, Span, Step, Unsure};

impl Page<'_> {
    /// Before the list.
    pub(super) fn front(&mut self, seen: &mut [Seen], at: usize, listed: bool) {
        let row = seen[at].row.clone();
        let row = &row;
        if seen[at].strong && listed {
            self.place = Place::List;
            self.list(seen, at);
        } else if !listed
            && (has_imperative(self.text, row.span) || self.recipe.steps.is_empty() && lists_foods(self.text, row.span))
        {
            self.place = Place::Method;
            self.step(row);
        } else if listed && row.mark == Mark::Bullet && seen.get(at + 1).is_some_and(|s| s.strong) {
            self.place = Place::List;
            self.list(seen, at);
        } else if listed && row.mark == Mark::Number && has_imperative(self.text, row.span) {
            self.place = Place::Method;
            self.step(row);
        } else {
            self.recipe.headnote.push(self.words(row.span));
            self.block(row.span, BlockKind::Headnote);
        }
    }

    /// In the list.
    pub(super) fn list(&mut self, seen: &mut [Seen], at: usize) {
        let row = seen[at].row.clone();
        let row = &row;
        let words = row.span.of(self.text).split_whitespace().count();
        let prose = seen[at].prose && !seen[at].strong;
        if row.mark == Mark::Action || row.mark == Mark::Number && (prose || words > 6) && !seen[at].strong {
            let stays = row.mark == Mark::Action;
            self.step(row);
            if !stays {
                self.place = Place::Method;
            }
        } else if prose && (words > 2 || row.apart || row.span.of(self.text).ends_with('.')) {
            if closes(self.text, row.span) && !self.recipe.steps.is_empty() {
                self.place = Place::After;
                self.closing(row);
            } else if bracketed(self.text, row.span) {
                self.remark(row);
            } else {
                self.place = Place::Method;
                self.step(row);
            }
        } else if !seen[at].strong && (bracketed(self.text, row.span) || words > 24) {
            self.remark(row);
        } else if closes(self.text, row.span) && !seen[at].strong && !self.recipe.steps.is_empty() {
            self.place = Place::After;
            self.closing(row);
        } else {
            self.ingredient(row, seen[at].reading.take());
        }
    }

    /// A remark among the ingredients, kept with the headnote or the closing.
    pub(super) fn remark(&mut self, row: &Row) {
        let words = self.words(row.span);
        if self.recipe.steps.is_empty() {
            self.recipe.headnote.push(words);
            self.block(row.span, BlockKind::Headnote);
        } else {
            self.recipe.closing.push(words);
            self.block(row.span, BlockKind::Closing);
        }
    }

    /// In the method.
    pub(super) fn method(&mut self, seen: &mut [Seen], at: usize, listed: bool) {
        let row = seen[at].row.clone();
        let row = &row;
        // A numbered row is a step in any case.
        let imperative = row.mark != Mark::Number && has_imperative(self.text, row.span);
        let weak = row.mark != Mark::Number && row.apart && !row.last && is_bare_food(self.text, row);
        let run = seen.get(at + 1).is_some_and(|s| s.strong) || seen.get(at + 1).is_none_or(|next| next.row.apart);
        if (seen[at].strong || weak)
            && listed
            && row.mark != Mark::Number
            && row.mark != Mark::Action
            && (run || weak || row.mark == Mark::Bullet)
            && !imperative
        {
            self.place = Place::List;
            self.list(seen, at);
        } else if closes(self.text, row.span) && row.mark != Mark::Number && !self.recipe.steps.is_empty() {
            self.place = Place::After;
            self.closing(row);
        } else if row.mark == Mark::Number || imperative || !row.apart || self.recipe.steps.is_empty() {
            self.step(row);
        } else {
            self.closing(row);
        }
    }

    /// A step of the method.
    pub(super) fn step(&mut self, row: &Row) {
        let index = self.recipe.steps.len();
        if let Some(section) = self.section {
            self.owed.push((index, section));
        }
        let mut words = self.words(row.span);
        let section = self.section.filter(|_| self.method_headed);
        let pieces = row.pieces.clone();
        if pieces.is_empty() {
            self.block(row.span, BlockKind::Step);
        } else {
            let texts: Vec<String> = pieces.iter().map(|piece| self.words(*piece).text).collect();
            words.text = texts.join(" ");
            for piece in &pieces {
                self.block(*piece, BlockKind::Step);
            }
        }
        self.recipe.steps.push(Step { words, section, pieces });
    }

    /// A paragraph of a variation.
    pub(super) fn variation(&mut self, row: &Row) {
        let words = self.words(row.span);
        let name = variation::name(self.text, row.span);
        self.recipe.variations.push(crate::Variation {
            name,
            words,
            changes: Vec::new(),
        });
        self.block(row.span, BlockKind::Variation);
    }

    /// A paragraph after the method.
    pub(super) fn closing(&mut self, row: &Row) {
        self.recipe.closing.push(self.words(row.span));
        self.block(row.span, BlockKind::Closing);
    }

    /// Whether a component heading has opened a new list after the method.
    pub(super) fn section_open(&self, seen: &[Seen], at: usize) -> bool {
        at > 0 && heading::form(self.text, &seen[at - 1].row) == Form::Yes
    }

    /// A line of the list; `reading` is what the line grammar has made of it already.
    pub(super) fn ingredient(&mut self, row: &Row, reading: Option<LineReading>) {
        let holes = self.holes(row.span);
        let reading = reading.filter(|_| holes.is_empty());
        let reading = reading.unwrap_or_else(|| line::read(self.text, row.span, &holes));
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
        let known = self.recipe.unsure.len();
        let unplaced = figures::unplaced(self.text, row.span, &reading.entries, &holes);
        for mut entry in reading.entries {
            entry.section = section;
            entry.for_serving |= serving;
            entry.optional |= optional;
            entry.instead_of = self.or_open.take();
            if let Some(what) = unclear(self.text, &entry) {
                let taken_as = entry.items.first().map(|item| item.name.clone());
                self.recipe.unsure.push(Unsure {
                    span: entry.span,
                    what: what.to_owned(),
                    taken_as,
                });
            }
            self.recipe.ingredients.push(entry);
        }
        if let Some(span) = unplaced.filter(|_| self.recipe.unsure.len() == known) {
            self.recipe.unsure.push(Unsure {
                span,
                what: "There is a figure in this line that I could not place.".to_owned(),
                taken_as: None,
            });
        }
        if reading.or_next && self.recipe.ingredients.len() > first {
            self.or_open = Some(self.recipe.ingredients.len() - 1);
        }
    }
}

/// What is not clear of an entry, as one sentence to the writer.
fn unclear(text: &str, entry: &Ingredient) -> Option<&'static str> {
    let open = |word: &str| {
        matches!(
            word.trim_matches(['(', ')']).to_lowercase().as_str(),
            "tbc" | "tba" | "tbd" | "?" | "??"
        )
    };
    if entry.items.is_empty() && !entry.equipment {
        return Some("I could not tell which food this line asks for.");
    }
    if entry.span.of(text).split_whitespace().any(open) {
        return Some("The amount on this line is still to be settled.");
    }
    let figures = |name: &str| name.contains(|c: char| c.is_ascii_digit());
    entry
        .items
        .iter()
        .any(|item| figures(&item.name))
        .then_some("There is a figure in this line that I could not place.")
}
