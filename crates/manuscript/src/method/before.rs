//! What stands before the first order of a sentence: a vessel, 'meanwhile', 'off the heat', 'for the dumplings', foods.

use super::build::Builder;
use super::clauses::Clause;
use super::said::{Reader, Role, Said};
use super::scene::Focus;
use super::takes;
use super::words::{self, Inflection};
use crate::speech::{Speech, speech};
use crate::token::Token;
use crate::{FoodRef, Form, HeatWord, Operation, Share, Span, Target, Verb, Words};

impl Builder<'_> {
    /// What stands before the first verb: 'in a large pot', 'meanwhile', 'off the heat', 'for the dumplings'.
    pub(super) fn before(&mut self, reader: &Reader, clause: &Clause, said: &mut Said) {
        let (from, to) = clause.before;
        let ahead = reader.stretch((from, to));
        let word = |index: usize| reader.tokens.get(index).map_or("", |token| token.lower.as_str());
        self.meanwhile = (from..to).any(|at| matches!(word(at), "meanwhile" | "meantime" | "while"));
        if let Some(section) = self.section_before(reader.tokens, (from, to)) {
            self.section = Some(section);
            self.scene.focus = Focus::Pot;
        }
        if word(from) == "after" {
            self.time_after(&ahead);
        } else if speech(word(from)).is(Speech::CLAUSE) {
            self.time_passed(reader.tokens, (from, to), &ahead);
        }
        let side = speech(word(from)).is(Speech::CLAUSE) || word(from) == "after";
        let some_day = (from..to).any(|at| matches!(word(at), "can" | "may" | "ahead" | "leftovers"));
        self.optional |= some_day
            && reader
                .tokens
                .get(from..to)
                .is_some_and(|t| t.iter().any(|t| t.sign() == Some(':')));
        if !side {
            said.vessels
                .extend(ahead.vessels.iter().filter(|(role, _)| *role != Role::From).cloned());
            if said.covers.is_empty() {
                said.covers.clone_from(&ahead.covers);
            }
            said.repeat = said.repeat.take().or(ahead.repeat.clone());
        }
        // 'Ten minutes before they are done squeeze in the lemon'.
        let back = ahead.times.iter().filter(|timed| timed.minutes.from_end);
        said.times.extend(back.cloned());
        said.heat = said.heat.or(ahead.heat);
        let off = (from..to).any(|at| word(at) == "off" && matches!(word(at + 1), "heat" | "the"));
        if off && said.heat.is_none() {
            said.heat = Some(HeatWord::Off);
        }
    }

    /// 'Wine, turn up the heat': foods that stand alone before the first order go in.
    pub(super) fn foods_ahead(&mut self, tokens: &[Token], clause: &Clause) {
        let (from, to) = clause.before;
        let stretch = tokens.get(from..to).unwrap_or_default();
        let first = stretch
            .iter()
            .find(|token| token.is_word() && !token.speech.is(Speech::ADVERB) && !token.speech.is(Speech::JOINER));
        let small = Speech::PREPOSITION
            .or(Speech::CLAUSE)
            .or(Speech::FINITE)
            .or(Speech::PERSON)
            .or(Speech::MANNER)
            .or(Speech::NEVER);
        let led = stretch
            .iter()
            .any(|token| token.speech.is(small) || token.sign() == Some(':'));
        let ends = stretch
            .last()
            .is_some_and(|token| token.sign() == Some(',') || token.is("then"));
        if first.is_none() || led || !ends {
            return;
        }
        let clause = super::clauses::bare((from, to));
        let told = self.told(tokens, &clause);
        let listed = told
            .foods
            .iter()
            .any(|(_, food)| matches!(food.target, Target::Ingredient { .. }));
        if listed {
            self.bare(tokens, &told);
        }
    }

    /// 'For the broth, …', 'Sauce: …'.
    fn section_before(&self, tokens: &[Token], (from, to): (usize, usize)) -> Option<usize> {
        let first = tokens.get(from)?;
        let colon = tokens.get(from..to)?.iter().any(|token| token.sign() == Some(':'));
        if !first.is("for") && !colon {
            return None;
        }
        let words: Vec<String> = tokens
            .get(from..to)?
            .iter()
            .filter(|token| token.is_word())
            .flat_map(|token| super::foods::plain(&token.lower))
            .collect();
        self.section_of(&words)
    }

    /// 'Meanwhile, make the cobbler': the words that follow are about that part of the list.
    pub(super) fn turn_to_section(&mut self, tokens: &[Token], clause: &Clause) {
        let (from, to) = clause.body;
        let stretch = tokens.get(from..to).unwrap_or_default();
        let words: Vec<String> = stretch
            .iter()
            .take_while(|token| token.is_word())
            .flat_map(|token| super::foods::plain(&token.lower))
            .collect();
        if let Some(section) = self.section_of(&words) {
            self.section = Some(section);
        }
    }

    /// The first section whose name ends in one of the words.
    fn section_of(&self, words: &[String]) -> Option<usize> {
        let ends = words
            .iter()
            .take(40)
            .filter_map(|word| self.names.sections_ending(word).next());
        ends.map(|(at, _)| at).min()
    }

    /// 'When it has boiled gently for one hour, add …': cooking that no order has told, with its time. Where an order
    /// has given the time of the cooking already, this is a moment within it.
    fn time_passed(&mut self, tokens: &[Token], (from, to): (usize, usize), ahead: &Said) {
        let Some(timed) = ahead.times.iter().find(|timed| !timed.minutes.from_end) else {
            return;
        };
        let past = |at: usize| words::verb(&tokens.get(at)?.lower).filter(|(_, form)| *form == Inflection::Past);
        let has = |at: &usize| {
            tokens
                .get(*at)
                .is_some_and(|token| token.is_any(&["has", "have", "had"]))
        };
        let Some(has) = (from..to).find(has) else { return };
        // 'has been boiling' tells the same by another form, and is left to the words.
        let done = (has + 1..to.min(has + 4)).find_map(|at| Some((at, past(at)?.0)));
        let meaning = |base: &str| words::entry(base)?.rows.last().map(|row| row.meaning);
        let Some((at, Some(words::Meaning::Do(verb)))) = done.map(|(at, base)| (at, meaning(base))) else {
            return;
        };
        let near = self.operations.iter_mut().rev().take(super::NEAR);
        let last = near.into_iter().find(|op| takes::cooks(op.verb));
        let goes_on = last.filter(|op| op.verb != Verb::Heat);
        if let Some(operation) = goes_on {
            operation.minutes.get_or_insert_with(|| timed.minutes.clone());
        } else if takes::cooks(verb) {
            let span = super::phrases::span(tokens, from, to);
            let verb_span = tokens.get(at).map_or(span, |token| token.span);
            let words = Words::at(self.text, Span::new(verb_span.end, verb_span.end));
            self.operations.push(Operation {
                foods: vec![FoodRef {
                    words,
                    target: Target::Pot,
                    share: Share::Whole,
                }],
                into: self.inferred(),
                minutes: Some(timed.minutes.clone()),
                heat: ahead.gentle.then_some(HeatWord::Low),
                form: Form::Participle,
                ..Operation::new(verb, self.step, span, verb_span)
            });
        }
    }

    /// 'After 15 minutes of frying, add …' tells how long the work before goes on.
    fn time_after(&mut self, ahead: &Said) {
        let Some(timed) = ahead.times.first() else { return };
        let last = self
            .operations
            .iter_mut()
            .rev()
            .take(super::NEAR)
            .find(|op| takes::cooks(op.verb));
        if let Some(operation) = last.filter(|op| op.minutes.is_none()) {
            operation.minutes = Some(timed.minutes.clone());
        }
    }
}
