//! What can be settled only when every row of the page has been read.

use super::judge::Seen;
use super::{Page, head};
use crate::lexicon::singular;
use crate::number;
use crate::sentence::sentences;
use crate::token::tokens;
use crate::{Block, BlockKind, DeskNote, Ingredient, Layout, Recipe, Span, Words};

impl Page<'_> {
    /// Steps belong to the component whose list stands right before them, when the page gives each part its method.
    pub(super) fn settle_sections(&mut self) {
        for (step, section) in std::mem::take(&mut self.owed) {
            let start = self.recipe.steps[step].words.span.start;
            let heading = self.recipe.sections[section].words.span.start;
            let earlier = self.recipe.steps.first().is_some_and(|s| s.words.span.start < heading);
            let later = self.recipe.ingredients.last().is_some_and(|i| i.span.start > start);
            if (earlier || later) && self.recipe.steps[step].section.is_none() && !self.method_headed {
                self.recipe.steps[step].section = Some(section);
            }
        }
    }

    /// Rows that read as lines of a list and were taken for something else, up to the last step.
    pub(super) fn strays(&mut self, seen: &[Seen]) {
        if self.recipe.layout == Layout::Prose {
            return;
        }
        let last = self.recipe.steps.last().map_or(0, |step| step.words.span.end);
        let kind = |block: &&Block| matches!(block.kind, BlockKind::Step | BlockKind::Headnote | BlockKind::Closing);
        let mut blocks: Vec<Span> = self.recipe.blocks.iter().filter(kind).map(|block| block.span).collect();
        blocks.sort_unstable_by_key(|block| block.start);
        let other = |span: Span| {
            let first = blocks.partition_point(|block| block.start < span.start);
            let mut near = blocks[first..].iter().take_while(|block| block.start <= span.end);
            near.any(|block| span.contains(*block))
        };
        let rows = seen.iter().filter(|one| one.strong).map(|one| one.row.span);
        let strays = rows.filter(|span| span.start < last && other(*span));
        self.recipe.strays = strays.map(|span| Words::at(self.text, span)).collect();
    }

    /// '2 litres of the stock': taken from what an earlier line lists.
    pub(super) fn parts_of(&mut self) {
        for at in 1..self.recipe.ingredients.len() {
            let ingredient = &self.recipe.ingredients[at];
            let words = ingredient.span.of(self.text).to_lowercase();
            let Some(item) = ingredient.items.first() else { continue };
            let taken = words.contains(" of the ") && ingredient.items.len() == 1;
            if !taken {
                continue;
            }
            let head = singular(&item.name);
            let fits = |earlier: &Ingredient| {
                earlier.part_of.is_none()
                    && earlier.items.iter().any(|i| {
                        let name = singular(&i.name);
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

    /// The notes to the desk, each with the step it stands in.
    pub(super) fn desk_notes(&mut self) {
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
    pub(super) fn yield_in_headnote(&mut self) {
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
            let all = tokens(self.text, words.span);
            let opens = |at: usize| at == 0 || all[at - 1].sign().is_some();
            let said = |at: usize| all[at].is_any(&["serves", "feeds", "makes", "does"]) && opens(at);
            let at = (0..all.len()).find(|at| said(*at) || head::for_so_many(&all, *at))?;
            number::amount(&all, at + 1).filter(|c| !c.article)?;
            head::yields(self.text, &all[at..])
        });
        self.recipe.yields = said.into_iter().next();
    }

    /// 'Time, about three hours.' at the end of a step.
    pub(super) fn times_in_steps(&mut self) {
        for step in &self.recipe.steps {
            if !step.words.text.contains("ime") {
                continue;
            }
            let all = tokens(self.text, step.words.span);
            let said = sentences(&all).into_iter();
            let times = said.flat_map(|(from, to)| head::times_said(self.text, &all[from..to]));
            self.recipe.declared_times.extend(times);
        }
    }

    /// Fills the gaps between the blocks.
    pub(super) fn close(mut self) -> Recipe {
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
