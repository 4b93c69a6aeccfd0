//! In which vessel an operation is done: one that it names, the one where its foods are, or one that must be there.

use super::build::Builder;
use super::clauses::Lead;
use super::said::Role;
use super::scene::acts;
use super::takes;
use super::told::Told;
use super::words::VesselKind;
use crate::{FoodRef, Share, Target, Verb, VesselRef, Words};

impl Builder<'_> {
    /// 'Lower the heat under the soup pot': the work goes on there.
    pub(super) fn go_under(&mut self, told: &Told) {
        let named = told
            .said
            .vessels
            .iter()
            .find(|(_, vessel)| vessel.kind == VesselKind::Cook);
        if let Some(index) = named.and_then(|(_, vessel)| self.scene.peek(vessel)) {
            self.scene.working = Some(index);
        }
    }

    /// Finds the vessel of an operation and turns to it; the words to be shown when it is named here.
    pub(super) fn go_to_vessel(&mut self, verb: Verb, told: &Told, foods: &[FoodRef]) -> Option<VesselRef> {
        let before = self.scene.working;
        self.scene.working = None;
        let shown = self.vessel_named(told);
        let turned = self.scene.working.is_some();
        if !turned {
            self.scene.working = before;
            self.turn_to_food(verb, told, foods);
            self.turn_to_new(verb, told, foods);
        }
        self.oven_place(verb, told, turned).or(shown)
    }

    /// Turns to the vessels that are named; gives the one to be shown.
    fn vessel_named(&mut self, told: &Told) -> Option<VesselRef> {
        let mut shown: Option<VesselRef> = None;
        for (role, mention) in &told.said.vessels {
            let holds = matches!(mention.kind, VesselKind::Cook | VesselKind::Bowl);
            let tool = (*role == Role::With && !holds) || matches!(mention.kind, VesselKind::Tool | VesselKind::Oven);
            if tool || matches!(role, Role::From | Role::Aside | Role::Discard) {
                continue;
            }
            let words = without_article(Words::at(self.text, mention.span), &mention.name);
            let place = matches!(mention.kind, VesselKind::Sink | VesselKind::Cold | VesselKind::Frozen);
            let mut vessel = VesselRef { words, inferred: false };
            if holds {
                let known = self.scene.vessels.len();
                let index = self.scene.vessel(mention, vessel.words.clone());
                let first = self.scene.vessels.get(index).map(|vessel| vessel.words.clone());
                vessel = VesselRef {
                    words: first.unwrap_or_default(),
                    inferred: index < known && !mention.fresh,
                };
                self.scene.working = Some(index);
            }
            // 'stand the pot in iced water': the place is what matters.
            if shown.is_none() || place {
                shown = Some(vessel);
            }
        }
        shown
    }

    /// The oven as the place of the work, and whether the work goes on there.
    fn oven_place(&mut self, verb: Verb, told: &Told, turned: bool) -> Option<VesselRef> {
        let named = told.said.vessels.iter().find(|(role, vessel)| {
            vessel.kind == VesselKind::Oven && !matches!(role, Role::From | Role::Aside | Role::Discard)
        });
        let oven = named.is_some();
        let hob = told.said.heat.is_some() || told.said.says("hob") || told.said.says("stove");
        let bakes = takes::in_oven(verb);
        if oven {
            self.baking = true;
        } else if hob || (turned && takes::cooks(verb) && !bakes) {
            self.baking = false;
        }
        let baked = oven || (bakes && (self.baking || self.scene.oven.is_said()));
        let shows = bakes || matches!(verb, Verb::Heat | Verb::Toast);
        if !baked || !shows || (turned && !oven) {
            return None;
        }
        self.baking = true;
        let plain = Words {
            text: "oven".to_owned(),
            span: told.verb_span,
        };
        let words = named.map(|(_, vessel)| without_article(Words::at(self.text, vessel.span), &vessel.name));
        Some(VesselRef {
            inferred: words.is_none(),
            words: words.unwrap_or(plain),
        })
    }

    /// Without a vessel of its own, an operation is done where its foods are, or on the stove when it is heat that works.
    fn turn_to_food(&mut self, verb: Verb, told: &Told, foods: &[FoodRef]) {
        let goes_to = told
            .foods
            .iter()
            .find(|(role, food)| matches!(role, Role::To | Role::Over) && !foods.contains(food));
        let taken_to = goes_to.and_then(|(_, food)| self.scene.holds(&food.target));
        if let Some(index) = taken_to {
            self.scene.working = Some(index);
            return;
        }
        // 'return the meat' is to the pot.
        let stove = takes::cooks(verb) || verb == Verb::Return;
        if self.scene.is_aside() && matches!(verb, Verb::Add | Verb::Pour | Verb::Stir) && self.brings_contents(foods) {
            self.scene.back();
            return;
        }
        if stove {
            self.scene.turn_to_stove();
        }
        let single = foods.first().filter(|_| takes::cooks(verb));
        let there = single
            .filter(|food| food.target != Target::Pot)
            .and_then(|food| self.scene.holds(&food.target));
        let cooking = there.filter(|index| {
            self.scene
                .vessels
                .get(*index)
                .is_some_and(|vessel| vessel.kind == VesselKind::Cook)
        });
        if let Some(index) = cooking {
            self.scene.working = Some(index);
        }
    }

    /// Whether everything in a bowl without a name is what is brought.
    fn brings_contents(&self, foods: &[FoodRef]) -> bool {
        let inside = self
            .scene
            .here()
            .map(|vessel| vessel.contents.clone())
            .unwrap_or_default();
        inside
            .iter()
            .all(|held| foods.iter().any(|food| food.target == held.target))
    }

    /// Fat melted or foods fried while the only vessel holds a soup, flour mixed with butter: that is done in another
    /// vessel, though the page names none.
    fn turn_to_new(&mut self, verb: Verb, told: &Told, foods: &[FoodRef]) {
        let Some(here) = self.scene.here() else { return };
        let held = |food: &FoodRef| {
            here.contents
                .iter()
                .any(|held| held.target == food.target && food.share == Share::Whole)
        };
        let foreign = !foods.is_empty() && foods.iter().all(|food| food.target != Target::Pot && !held(food));
        let full = here.liquid && !here.contents.is_empty();
        let fries = matches!(
            verb,
            Verb::Melt
                | Verb::Saute
                | Verb::Sweat
                | Verb::Fry
                | Verb::Brown
                | Verb::Toast
                | Verb::Parboil
                | Verb::Scald
        );
        let water = verb == Verb::Boil && told.foods.iter().any(|(role, _)| *role == Role::In);
        let heated = verb == Verb::Heat
            && !told.said.says("through")
            && told.said.cue.is_none()
            && foods.iter().any(|food| acts(&food.target, self.names).1);
        if foreign && full && (fries || water || heated) {
            self.scene.unnamed(VesselKind::Cook);
            return;
        }
        let fresh = foreign
            && foods
                .iter()
                .all(|food| self.scene.holds(&food.target).is_none() || food.share != Share::Whole);
        let mixes = matches!(verb, Verb::Mix | Verb::Whisk | Verb::Beat | Verb::Dilute)
            && told.clause.lead == Lead::Order
            && !told.said.says("in");
        let into_other = verb == Verb::Stir
            && told
                .foods
                .iter()
                .any(|(role, food)| *role == Role::To && self.is_fresh(&food.target));
        let busy = !here.contents.is_empty();
        if fresh && busy && (mixes || into_other) {
            self.scene.unnamed(VesselKind::Bowl);
        }
    }
}

/// The words of a vessel without 'a', 'your', 'the same'.
pub(super) fn without_article(words: Words, name: &str) -> Words {
    let first = name.split(' ').next().unwrap_or("");
    let lower = words.text.to_lowercase();
    let start = lower
        .find(first)
        .filter(|start| words.text.is_char_boundary(*start))
        .unwrap_or(0);
    Words {
        text: words.text.get(start..).unwrap_or("").to_owned(),
        span: words.span,
    }
}
