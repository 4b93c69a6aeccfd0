//! What follows from an operation for the kitchen: where the foods are now, what the next words are about.

use super::build::Builder;
use super::foods::plain;
use super::place::without_article;
use super::said::Role;
use super::scene::Focus;
use super::takes;
use super::told::Told;
use super::words::VesselKind;
use crate::{FoodRef, Share, Target, Verb, VesselRef, Words};

impl Builder<'_> {
    /// What follows for the kitchen: where the foods are now, what the next words are about.
    pub(super) fn follow(&mut self, verb: Verb, told: &Told, foods: &[FoodRef], before: Option<usize>) {
        for food in foods {
            self.scene.learn(&food.target);
        }
        for (_, food) in &told.foods {
            self.scene.learn(&food.target);
        }
        self.part_of(verb, told, foods);
        let goes_in = (takes::places(verb) || takes::cooks(verb) || matches!(verb, Verb::Parboil | Verb::Puree))
            && !matches!(verb, Verb::Garnish | Verb::Serve | Verb::Dredge | Verb::Spread);
        let in_hand = matches!(self.scene.focus, Focus::Hand(_)) || self.hand_object(told);
        let seasons_hand = verb == Verb::Season && in_hand;
        let oven_alone = verb == Verb::Heat && foods.is_empty();
        let holder = told
            .said
            .vessels
            .iter()
            .any(|(role, vessel)| vessel.kind == VesselKind::Holder && *role != Role::From);
        if goes_in && !(seasons_hand || oven_alone || holder) {
            let into = self.scene.working();
            self.pour_from(verb, told, foods, into, before);
            self.scene.put(foods, into, self.names);
        }
        let serving = told
            .said
            .vessels
            .iter()
            .find(|(role, vessel)| vessel.kind == VesselKind::Serving && *role != Role::From);
        if let Some((_, vessel)) = serving {
            let words = without_article(Words::at(self.text, vessel.span), &vessel.name);
            self.scene.served = Some(VesselRef { words, inferred: true });
        }
        match verb {
            Verb::Drain => self.dry(),
            Verb::Reduce
                if told
                    .said
                    .words
                    .iter()
                    .any(|word| matches!(word.as_str(), "nothing" | "dry" | "evaporated")) =>
            {
                self.dry()
            }
            Verb::Remove | Verb::SetAside | Verb::Discard => {
                for food in foods {
                    self.scene.lift(&food.target, true);
                }
            }
            Verb::Strain => self.strained(told),
            _ => {}
        }
        let with: Vec<FoodRef> = told
            .foods
            .iter()
            .filter(|(role, _)| matches!(role, Role::With | Role::In))
            .map(|(_, food)| food.clone())
            .collect();
        // 'Fish out the bay, then blend': the work goes on with what stays.
        let herbs = !foods.is_empty() && foods.iter().all(|food| self.is_flavour(&food.target));
        if verb == Verb::Remove && herbs {
            self.scene.focus = Focus::Pot;
            return;
        }
        let helped = matches!(verb, Verb::Season | Verb::Dredge | Verb::Soak);
        self.scene.turn_to(verb, foods, if helped { &with } else { &[] });
    }

    /// Keeps of which food a part was worked on, until its rest is.
    fn part_of(&mut self, verb: Verb, told: &Told, foods: &[FoodRef]) {
        let part = foods.iter().find(|food| matches!(food.share, Share::Fraction(_)));
        let moves = takes::places(verb) || matches!(verb, Verb::Remove | Verb::SetAside | Verb::KeepHot);
        if let Some(food) = part.filter(|_| !moves) {
            self.scene.part = Some((told.clause.verb, food.clone()));
        }
        let rest = |food: &FoodRef| food.share == Share::Rest;
        if foods.iter().any(rest) {
            self.scene.part = None;
        }
    }

    fn is_meat(&self, target: &Target) -> bool {
        const KINDS: [&str; 4] = ["meat", "bird", "fish", "shellfish"];
        matches!(target, Target::Ingredient { index, item } if self.names.get((*index, *item))
            .is_some_and(|name| KINDS.iter().any(|kind| name.words().iter().any(|word| super::words::in_group(word, kind)))))
    }

    /// What flavours a pot and is taken out of it again.
    pub(super) fn is_flavour(&self, target: &Target) -> bool {
        let words = match target {
            Target::Ingredient { index, item } => self
                .names
                .get((*index, *item))
                .map_or(&[][..], |name| name.words())
                .to_vec(),
            Target::Unlisted(name) => plain(name),
            _ => return matches!(target, Target::Component(_)),
        };
        words.iter().any(|word| {
            super::words::in_group(word, "herb")
                || super::words::in_group(word, "spice")
                || matches!(word.as_str(), "bouquet" | "lemongrass")
        })
    }

    /// Whether what is seasoned is a food that is not in the vessel.
    fn hand_object(&self, told: &Told) -> bool {
        let object = told.foods.iter().find(|(role, _)| *role == Role::Object);
        object.is_some_and(|(_, food)| food.target != Target::Pot && self.scene.holds(&food.target).is_none())
            && (told.foods.iter().any(|(role, _)| *role == Role::With) || self.is_solid(told))
    }

    /// 'Season the shanks': what is seasoned, not what seasons.
    fn is_solid(&self, told: &Told) -> bool {
        let objects = told.foods.iter().filter(|(role, _)| *role == Role::Object);
        objects.clone().count() == 1 && objects.clone().all(|(_, food)| self.is_meat(&food.target))
    }

    /// The whole contents of one vessel go into another.
    fn pour_from(&mut self, verb: Verb, told: &Told, foods: &[FoodRef], into: usize, before: Option<usize>) {
        let moves = matches!(verb, Verb::Pour | Verb::Add | Verb::Return) || takes::cooks(verb);
        let whole = foods.iter().any(|food| food.target == Target::Pot) && moves;
        if !whole || told.said.vessels.is_empty() {
            return;
        }
        if let Some(from) = before.filter(|from| *from != into) {
            let empty = self
                .scene
                .vessels
                .get(into)
                .is_some_and(|vessel| vessel.contents.is_empty());
            if empty || !takes::cooks(verb) {
                self.scene.empty(from, into, self.names);
            }
        }
    }

    fn strained(&mut self, told: &Told) {
        let into = told
            .said
            .vessels
            .iter()
            .find(|(role, vessel)| vessel.kind == VesselKind::Cook && *role != Role::From);
        let Some((_, mention)) = into else { return };
        let Some(index) = self.scene.peek(mention) else { return };
        if let Some(vessel) = self.scene.vessels.get_mut(index) {
            vessel.liquid = true;
        }
    }

    fn dry(&mut self) {
        if let Some(vessel) = self.scene.working.and_then(|index| self.scene.vessels.get_mut(index)) {
            vessel.liquid = false;
        }
    }
}
