//! What a clause says with its foods found: which of the list each noun is, what is kept back, work told by the way.

use super::build::Builder;
use super::clauses::Clause;
use super::nouns::Mention;
use super::refer::{Referrer, Standing};
use super::said::{Reader, Role, Said};
use super::takes;
use super::words::{Meaning, entry};
use crate::token::Token;
use crate::{FoodRef, Form, Operation, Share, Span, Target, Unsure, Verb};

/// A clause with everything that was found out about it.
pub(super) struct Told<'c> {
    pub(super) clause: &'c Clause,
    pub(super) said: Said,
    pub(super) foods: Vec<(Role, FoodRef)>,
    pub(super) span: Span,
    pub(super) verb_span: Span,
    /// 'half' stands before the verb.
    pub(super) half: bool,
}

impl<'a> Builder<'a> {
    fn referrer(&self, verb: &'static str, moved: bool, goes_to: Option<usize>) -> Referrer<'a> {
        Referrer {
            text: self.text,
            recipe: self.recipe,
            names: self.names,
            section: self.section,
            block: self.block.clone(),
            verb,
            moved,
            goes_to,
        }
    }

    /// What a clause says, its foods found, the vessels that it names known to the scene.
    pub(super) fn told<'c>(&mut self, tokens: &[Token], clause: &'c Clause) -> Told<'c> {
        let rows = entry(clause.verb).map_or(&[][..], |entry| &entry.rows);
        let does = |test: fn(Verb) -> bool| {
            rows.iter()
                .any(|row| matches!(row.meaning, Meaning::Do(verb) if test(verb)))
        };
        let reader = Reader {
            text: self.text,
            tokens,
            lasts: rows.iter().any(|row| super::said::lasts(row.meaning)),
            puts: does(takes::puts),
        };
        let mut said = reader.said(clause);
        if clause.first {
            self.before(&reader, clause, &mut said);
        }
        let foods = self.foods_said(&said, clause.verb, does(takes::places));
        let first = tokens.get(clause.from).map_or(Span::default(), |token| token.span);
        let last = tokens
            .get(said.end)
            .or(tokens.get(clause.at))
            .map_or(first, |token| token.span);
        let span = Span::new(first.start, last.end.max(first.end));
        let verb_span = tokens.get(clause.at).map_or(span, |token| token.span);
        let before = clause.at.checked_sub(1).and_then(|at| tokens.get(at));
        let half = before.is_some_and(|token| token.is("half"));
        Told {
            clause,
            said,
            foods,
            span,
            verb_span,
            half,
        }
    }

    /// The foods of a clause with the part each plays. Work that stands before a noun is an operation ahead of it.
    fn foods_said(&mut self, said: &Said, verb: &'static str, asks: bool) -> Vec<(Role, FoodRef)> {
        let mut referrer = self.referrer_to(said, verb);
        referrer.section = referrer.section.or_else(|| self.section_told(said));
        let mut foods: Vec<(Role, FoodRef)> = Vec::new();
        let mut kept: Vec<FoodRef> = Vec::new();
        for (role, mention) in &said.foods {
            let object = *role == Role::Object;
            let standing = Standing {
                asks: asks && matches!(role, Role::Object | Role::With),
                object,
            };
            let found = referrer.foods(mention, &self.scene, standing);
            if let Some(left) = mention.but {
                kept.extend(found.iter().map(|food| FoodRef {
                    share: Share::Measure(left),
                    ..food.clone()
                }));
            }
            let work = referrer.work_before(mention, &found, &|verb, target| self.is_done(verb, target));
            for verb in work
                .into_iter()
                .filter(|_| matches!(role, Role::Object | Role::With | Role::In))
            {
                self.operations
                    .push(work_said_before(verb, &found, self.step, mention.words_span));
            }
            if mention.most {
                self.guess_most(mention.span);
            }
            let apart = matches!(role, Role::Keep | Role::Discard) && !mention.pronoun;
            for food in found {
                let food = if apart { of_its_own(food, mention) } else { food };
                let known = *role != Role::Except
                    && foods.iter().any(|(other, held)| {
                        let again = *other == *role && !parted(held) && !parted(&food);
                        held.target == food.target && (held.share == food.share || again)
                    });
                if !known {
                    foods.push((*role, food));
                }
            }
        }
        foods.extend(kept.into_iter().map(|food| (Role::Keep, food)));
        // 'everything except the leek'.
        let (left, mut foods): (Vec<_>, Vec<_>) = foods.into_iter().partition(|(role, _)| *role == Role::Except);
        foods.retain(|(_, food)| !left.iter().any(|(_, out)| out.target == food.target));
        foods
    }

    /// The part of the list that the foods of a clause are of, when those that have but one name in the list agree: 'mix
    /// the suet with 1 tsp of the salt' is the salt of the dumplings.
    fn section_told(&self, said: &Said) -> Option<usize> {
        if self.recipe.sections.len() < 2 {
            return None;
        }
        let objects = said
            .foods
            .iter()
            .filter(|(role, mention)| !mention.pronoun && matches!(role, Role::Object | Role::With | Role::In));
        let mut sections = objects.filter_map(|(_, mention)| self.names.only_section(mention));
        let first = sections.next()?;
        sections.all(|section| section == first).then_some(first)
    }

    /// What finds the foods of a clause, told where they go.
    fn referrer_to(&self, said: &Said, verb: &'static str) -> Referrer<'a> {
        let food = said.foods.iter().find(|(role, _)| *role == Role::To);
        let vessel = said.vessels.iter().find(|(role, _)| *role == Role::To);
        let moved = food.is_some() || vessel.is_some();
        let plain = self.referrer(verb, moved, None);
        let there = food.and_then(|(_, mention)| {
            let found = plain.foods(
                mention,
                &self.scene,
                Standing {
                    asks: false,
                    object: false,
                },
            );
            found.first().and_then(|food| self.scene.holds(&food.target))
        });
        let goes_to = there.or_else(|| vessel.and_then(|(_, vessel)| self.scene.peek(vessel)));
        self.referrer(verb, moved, goes_to)
    }

    fn guess_most(&mut self, span: Span) {
        self.unsure.push(Unsure {
            span,
            what: "How much is ‘most’? A number would settle it.".to_owned(),
            taken_as: Some("three quarters".to_owned()),
        });
    }

    /// Whether the work has been done to a food, by its line or by an operation before.
    pub(super) fn is_done(&self, verb: Verb, target: &Target) -> bool {
        let earlier = self
            .operations
            .iter()
            .rev()
            .take(super::NEAR)
            .any(|op| op.verb == verb && op.foods.iter().any(|food| food.target == *target));
        let line = match target {
            Target::Ingredient { index, item } => self
                .names
                .get((*index, *item))
                .is_some_and(|name| !name.done.is_empty()),
            _ => false,
        };
        earlier || line
    }
}

/// What is kept or thrown away out of a food or a pot is a thing of its own: 'reserving the liquid'.
fn of_its_own(mut food: FoodRef, mention: &Mention) -> FoodRef {
    food.target = match food.target {
        Target::Unlisted(name) => Target::Component(name),
        Target::Pot => Target::Component(mention.words.last().cloned().unwrap_or_default()),
        other => other,
    };
    food
}

/// Whether only a part is meant, so that the same food may be named twice: 'half the butter'.
fn parted(food: &FoodRef) -> bool {
    !matches!(food.share, Share::Whole | Share::Measure(_))
}

/// 'sliced potatoes': the slicing, before what is done with them.
fn work_said_before(verb: Verb, foods: &[FoodRef], step: usize, span: Span) -> Operation {
    Operation {
        foods: foods.to_vec(),
        form: Form::Participle,
        ..Operation::new(verb, step, span, span)
    }
}
