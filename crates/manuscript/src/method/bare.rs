//! Words without a verb: foods that go in, a time that is cooking.

use super::build::Builder;
use super::said::Role;
use super::scene::{Focus, acts};
use super::takes;
use super::told::Told;
use super::words::{self, Meaning, VesselKind};
use crate::speech::Speech;
use crate::token::Token;
use crate::{FoodRef, Layout, Share, Target, Unsure, Verb};

impl Builder<'_> {
    /// Words without a verb: foods that go in, a time that is cooking, a lid.
    pub(super) fn bare(&mut self, tokens: &[Token], told: &Told) {
        let (from, to) = told.clause.body;
        let to = remark_at(tokens, from, to);
        let stretch = tokens.get(from..to).unwrap_or_default();
        let foods: Vec<FoodRef> = told
            .foods
            .iter()
            .filter(|(role, food)| matches!(role, Role::Object | Role::With) && known(food))
            .map(|(_, food)| food.clone())
            .collect();
        let timed = told.said.times.iter().any(|timed| !timed.minutes.from_end);
        let first = stretch
            .iter()
            .find(|token| token.is_word() && !token.speech.is(Speech::ADVERB) && !token.speech.is(Speech::JOINER));
        let begins = told
            .foods
            .first()
            .is_some_and(|(_, food)| food.words.span.start <= first.map_or(usize::MAX, |token| token.span.start))
            || first.is_some_and(|token| token.is_any(&["rest", "same"]) || token.number().is_some());
        // 'until it offers no resistance' is a sign to stop, not a statement.
        let in_cue = |token: &Token| told.said.cue.as_ref().is_some_and(|cue| cue.span.contains(token.span));
        let states =
            |token: &Token| token.speech.is(Speech::FINITE.or(Speech::PERSON).or(Speech::NEVER)) || third_person(token);
        if stretch.iter().any(|token| states(token) && !in_cue(token)) {
            if begins && !foods.is_empty() && self.recipe.layout == Layout::Prose {
                self.scene.focus = Focus::Hand(foods);
            }
            return;
        }
        if timed {
            self.timed_without_verb(told, foods);
        } else if self.operations.is_empty() && self.recipe.layout == Layout::Prose {
            // The foods of a dish, told before anything is done.
        } else if !foods.is_empty() && begins {
            let verb = place_told(stretch);
            let before = self.scene.working;
            self.go_to_vessel(verb, told, &foods);
            let mut operation = self.blank(verb, told);
            operation.foods.clone_from(&foods);
            operation.into = self.inferred();
            operation.cue.clone_from(&told.said.cue);
            self.operations.push(operation);
            self.follow(verb, told, &foods, before);
        } else if !foods.is_empty() {
            self.ask_what_is_done(told);
        }
    }

    /// A sentence that names foods of the list and gives no order that is known.
    fn ask_what_is_done(&mut self, told: &Told) {
        let listed = told
            .foods
            .iter()
            .any(|(_, food)| matches!(food.target, Target::Ingredient { .. }));
        if listed && !self.optional {
            self.unsure.push(Unsure {
                span: told.span,
                what: "What is to be done here could not be read; might a plainer verb say it?".to_owned(),
                taken_as: None,
            });
        }
    }

    /// 'Bacon, high heat, 3 minutes'; '5 more minutes in the oven'.
    fn timed_without_verb(&mut self, told: &Told, foods: Vec<FoodRef>) {
        let before = self.scene.working;
        self.go_to_vessel(Verb::Simmer, told, &foods);
        let oven = told
            .said
            .vessels
            .iter()
            .any(|(_, vessel)| vessel.kind == VesselKind::Oven);
        let last = self
            .operations
            .iter()
            .rev()
            .take(super::NEAR)
            .find(|op| takes::in_oven(op.verb))
            .map(|op| op.verb);
        // What is named goes into what is there, unless it brings the fat to fry it in.
        let fries = foods.iter().any(|food| acts(&food.target, self.names).1);
        let joins = Told {
            foods: if fries { told.foods.clone() } else { Vec::new() },
            said: told.said.clone(),
            ..*told
        };
        let cook = match self.facts(&joins, |facts| facts.meaning("cook")) {
            Some(Meaning::Do(verb)) => verb,
            _ => Verb::Simmer,
        };
        let verb = if oven { last.unwrap_or(cook) } else { cook };
        let mut operation = self.blank(verb, told);
        operation.foods = if foods.is_empty() {
            vec![self.pot(told)]
        } else {
            foods.clone()
        };
        operation.minutes = Builder::minutes_of(told);
        operation.cue.clone_from(&told.said.cue);
        operation.cover = told.said.cover();
        operation.repeat.clone_from(&told.said.repeat);
        operation.into = self.inferred();
        self.heat_of(&mut operation, told);
        self.temperature_of(&mut operation, told);
        self.operations.push(operation);
        self.follow(verb, told, &foods, before);
    }
}

/// 'Lime on the side', 'coriander on top', 'salt to taste': where it goes says what is done.
fn place_told(stretch: &[Token]) -> Verb {
    let last: Vec<&str> = stretch
        .iter()
        .filter(|t| t.is_word())
        .map(|t| t.lower.as_str())
        .collect();
    match last.as_slice() {
        _ if last.contains(&"taste") => Verb::Season,
        [.., "on", "the", "side"] | [.., "at", "the", "table" | "side"] | [.., "alongside"] | [.., "to", "serve"] => {
            Verb::Serve
        }
        [.., "on", "top"] | [.., "over", "the", "top"] | [.., "to", "finish"] | [.., "to", "garnish"] => Verb::Garnish,
        _ => Verb::Add,
    }
}

/// 'any stock left over thins the soup': a verb that tells, not one that orders.
fn third_person(token: &Token) -> bool {
    let stem = token.lower.strip_suffix("es").or(token.lower.strip_suffix('s'));
    let one = token.lower.strip_suffix('s');
    let verb = |word: Option<&str>| word.is_some_and(crate::lexicon::verb);
    // 'thins', 'thickens': an order by its stem that names no thing.
    let tells = one.and_then(words::verb).is_some_and(|(base, form)| {
        let marks = words::entry(base).map(|entry| entry.marks).unwrap_or_default();
        form == words::Inflection::Base && !marks.noun && !marks.food
    });
    token.is_word()
        && token.text.len() > 3
        && (tells || (token.class == crate::lexicon::Class::default() && (verb(stem) || verb(one))))
        && !token.class.is(crate::lexicon::Class::FOOD)
}

/// Foods of the list and foods that a page may name without listing them.
fn known(food: &FoodRef) -> bool {
    matches!(
        food.target,
        Target::Ingredient { .. } | Target::Unlisted(_) | Target::Component(_)
    ) || food.share != Share::Whole
}

/// Where a remark after a dash begins: 'lid on, 15 minutes – they should not brown'.
fn remark_at(tokens: &[Token], from: usize, to: usize) -> usize {
    let dash = (from..to).find(|at| {
        tokens
            .get(*at)
            .is_some_and(|t| t.is_dash() && t.gap != crate::token::Gap::None)
    });
    let Some(dash) = dash else { return to };
    let rest = tokens.get(dash..to).unwrap_or_default();
    let remark = rest
        .iter()
        .any(|token| token.speech.is(Speech::FINITE.or(Speech::PERSON).or(Speech::NEVER)));
    if remark { dash } else { to }
}
