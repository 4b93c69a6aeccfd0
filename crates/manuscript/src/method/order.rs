//! An order becomes an operation: which foods, in which vessel, with which time; and what follows from it.

use super::build::Builder;
use super::clauses::Lead;
use super::said::Role;
use super::scene::Focus;
use super::takes;
use super::told::Told;
use super::words::Meaning;
use crate::speech::{Speech, speech};
use crate::{Cover, FoodRef, Operation, Target, Verb, Words};

/// From here on a freezer keeps food rather than makes it: an ice or a parfait is hard within the day.
const WEEK_MINUTES: f64 = 7.0 * DAY_MINUTES;
const DAY_MINUTES: f64 = 1440.0;

impl Builder<'_> {
    /// One order: the operation, and the cooking that its time says when the verb itself takes none.
    pub(super) fn order(&mut self, verb: Verb, told: &Told) {
        let foods = self.foods_of(verb, told);
        // 'adding a third at a time' only says how.
        let how = told.clause.lead == Lead::Doing && takes::puts(verb) && told.foods.is_empty();
        if how {
            return;
        }
        self.off &= !takes::cooks(verb);
        if self.stores(verb, told) {
            return;
        }
        let before = self.scene.working;
        let place = self.go_to_vessel(verb, told, &foods);
        let timed = told.said.times.iter().any(|timed| !timed.minutes.from_end);
        let bare_stir = verb == Verb::Stir && foods.iter().all(|food| food.target == Target::Pot);
        let split = (takes::takes_no_time(verb) && timed && !bare_stir)
            || self.boils_on(verb, told)
            || (verb == Verb::Cover && (told.said.cue.is_some() || told.said.heat.is_some()));
        let mut operation = self.blank(verb, told);
        operation.foods.clone_from(&foods);
        let served = self
            .scene
            .served
            .clone()
            .filter(|_| matches!(verb, Verb::Garnish | Verb::Spread | Verb::Serve));
        operation.into = place.or(served).or_else(|| self.inferred());
        operation.cover = told.said.cover();
        operation.repeat.clone_from(&told.said.repeat);
        operation.optional |=
            told.clause.lead == Lead::Doing && (told.said.says("needed") || told.said.says("necessary"));
        if verb == Verb::Heat || !split {
            operation.cue.clone_from(&told.said.cue);
        }
        if !split {
            operation.minutes = Builder::minutes_of(told);
            operation.cue.clone_from(&told.said.cue);
        }
        self.heat_of(&mut operation, told);
        self.temperature_of(&mut operation, told);
        self.special(&mut operation, told);
        // 'Boil, then simmer 25 minutes': up to the boil, which the verb itself says.
        if verb == Verb::Heat && told.clause.verb == "boil" && operation.cue.is_none() {
            operation.cue = Some(Words::at(self.text, told.verb_span));
        }
        self.operations.push(operation);
        self.follow(verb, told, &foods, before);
        if split {
            self.cook_on(told);
        }
        self.further_times(verb, told);
    }

    /// 'Keep in the fridge for up to 5 days, or freeze for 3 months': how it is kept is no part of the cooking.
    fn stores(&self, verb: Verb, told: &Told) -> bool {
        let long = |from: f64| told.said.times.iter().any(|timed| timed.minutes.high >= from);
        match verb {
            Verb::Freeze => self.kept || long(WEEK_MINUTES),
            Verb::Chill => self.kept && long(DAY_MINUTES),
            _ => false,
        }
    }

    /// 'Bring to the boil for 5 minutes': the minutes are those of boiling.
    fn boils_on(&self, verb: Verb, told: &Told) -> bool {
        let to = told
            .said
            .cue
            .as_ref()
            .is_some_and(|cue| cue.text.ends_with("boil") || cue.text.ends_with("simmer"));
        verb == Verb::Heat
            && to
            && told
                .said
                .times
                .first()
                .is_some_and(|timed| !timed.apart && !timed.minutes.from_end)
    }

    /// What is thrown away, kept, covered.
    fn special(&mut self, operation: &mut Operation, told: &Told) {
        let by_role = |wanted: Role| {
            told.foods
                .iter()
                .filter(move |(role, _)| *role == wanted)
                .map(|(_, food)| food.clone())
        };
        operation.discard.extend(by_role(Role::Discard));
        let behind = told.said.says("behind");
        let kept: Vec<FoodRef> = by_role(Role::Keep).collect();
        if behind {
            operation.discard.extend(kept)
        } else {
            operation.keep.extend(kept)
        }
        match operation.verb {
            Verb::Discard => operation.discard.clone_from(&operation.foods),
            Verb::PickOver => {}
            Verb::Skim => self.skimmed(operation, told),
            Verb::Drain if told.said.says("off") => operation.discard.clone_from(&operation.foods),
            Verb::SetAside => operation.keep.clone_from(&operation.foods),
            Verb::Cover => {
                let ajar = told.said.words.iter().any(|word| speech(word).is(Speech::PARTLY))
                    || told.said.cover() == Some(Cover::Ajar)
                    || told.half;
                operation.cover = Some(if ajar { Cover::Ajar } else { Cover::On });
                self.set_lid(operation.cover);
            }
            Verb::Uncover => {
                operation.cover = Some(Cover::Off);
                self.set_lid(operation.cover);
            }
            _ => {}
        }
    }

    /// 'Skim the fat off the sauce': the sauce is skimmed, the fat goes.
    fn skimmed(&self, operation: &mut Operation, told: &Told) {
        let made: Vec<FoodRef> = operation
            .foods
            .iter()
            .filter(|food| matches!(food.target, Target::Component(_)))
            .cloned()
            .collect();
        if !made.is_empty() {
            operation.discard = made;
            let from = told
                .foods
                .iter()
                .find(|(role, _)| *role == Role::From)
                .map(|(_, food)| food.clone());
            operation.foods = vec![from.unwrap_or_else(|| self.pot(told))];
        }
    }

    /// 'Add the paste, 1 minute': the minute is cooking.
    fn cook_on(&mut self, told: &Told) {
        let timed = told.said.times.iter().find(|timed| !timed.minutes.from_end);
        let span = timed
            .map(|timed| timed.minutes.span)
            .or(told.said.cue.as_ref().map(|cue| cue.span))
            .unwrap_or(told.span);
        self.scene.turn_to_stove();
        let inner = Told {
            clause: told.clause,
            said: told.said.clone(),
            foods: Vec::new(),
            span,
            verb_span: span,
            half: false,
        };
        let verb = match self.facts(&inner, |facts| facts.meaning("cook")) {
            _ if self.off => Verb::Rest,
            Some(Meaning::Do(verb)) => verb,
            _ => Verb::Simmer,
        };
        let mut operation = self.blank(verb, &inner);
        operation.foods = vec![self.pot(&inner)];
        operation.into = self.inferred();
        operation.minutes = timed.map(|timed| timed.minutes.clone());
        operation.cue.clone_from(&told.said.cue);
        operation.cover = told.said.cover();
        self.heat_of(&mut operation, &inner);
        self.temperature_of(&mut operation, &inner);
        self.operations.push(operation);
        self.scene.focus = Focus::Pot;
    }

    /// 'Bake 30 minutes covered, then 20 minutes uncovered': the second stretch is the same work again.
    fn further_times(&mut self, verb: Verb, told: &Told) {
        if !takes::cooks(verb) && verb != Verb::Rest {
            return;
        }
        let again: Vec<_> = told
            .said
            .times
            .iter()
            .skip(1)
            .filter(|timed| timed.then)
            .cloned()
            .collect();
        for (at, timed) in again.into_iter().enumerate() {
            let Some(mut operation) = self.operations.last().cloned() else {
                return;
            };
            operation.minutes = Some(timed.minutes);
            operation.cue = None;
            operation.cover = told.said.covers.get(at + 1).copied().or(operation.cover);
            self.operations.push(operation);
        }
    }
}
