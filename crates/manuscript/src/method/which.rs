//! Which foods an operation is done to or with: those that it names, else those that it must mean.

use super::build::{Builder, Told};
use super::clauses::Lead;
use super::said::Role;
use super::scene::{Focus, acts};
use super::takes;
use super::words::VesselKind;
use crate::{FoodRef, Target, Verb};

impl Builder<'_> {
    /// The foods an operation names, or those that it must mean.
    pub(super) fn foods_of(&self, verb: Verb, told: &Told) -> Vec<FoodRef> {
        let takes_over = matches!(
            verb,
            Verb::Pour
                | Verb::Strain
                | Verb::Spread
                | Verb::Serve
                | Verb::Garnish
                | Verb::Baste
                | Verb::Season
                | Verb::Dredge
        );
        let mut foods: Vec<FoodRef> = Vec::new();
        for (role, food) in &told.foods {
            let goes = match role {
                Role::Object | Role::With => true,
                Role::In => {
                    food.target != Target::Pot
                        && (takes::cooks(verb) || takes::places(verb) || verb == Verb::Soak || verb == Verb::Parboil)
                }
                Role::Over => takes_over,
                Role::To => self.is_fresh(&food.target) && verb != Verb::Remove,
                _ => false,
            };
            if goes {
                foods.push(food.clone());
            }
        }
        if verb == Verb::Repeat {
            return vec![self.pot(told)];
        }
        if matches!(verb, Verb::Deglaze | Verb::Cover | Verb::Uncover) {
            foods.retain(|food| {
                matches!(food.target, Target::Ingredient { .. })
                    || (verb == Verb::Deglaze && matches!(food.target, Target::Unlisted(_)))
            });
        }
        if verb == Verb::Cut {
            self.trimmed(told, &mut foods);
        }
        let object = told.foods.iter().any(|(role, _)| *role == Role::Object) && !foods.is_empty();
        // 'drop in the hot fat': the fat is there already, what is in hand is dropped into it.
        let hand = self.scene.hand();
        let into_fat = told.said.says("in") && told.clause.lead == Lead::Order;
        if object
            && into_fat
            && verb == Verb::Add
            && !hand.is_empty()
            && foods.iter().all(|food| self.scene.here_has(&food.target))
        {
            return hand;
        }
        if object && verb == Verb::Pour && self.pours_over(told, &foods) {
            foods.insert(0, self.pot(told));
        }
        if object && verb != Verb::Serve {
            return foods;
        }
        // 'boil in salted water': what is in hand.
        let wet = told
            .foods
            .iter()
            .any(|(role, food)| *role == Role::In && acts(&food.target, self.names).0);
        let held = if wet && !hand.is_empty() {
            hand
        } else {
            self.held(verb, told)
        };
        match verb {
            Verb::Season | Verb::Dredge if !foods.is_empty() => {
                let hand: Vec<FoodRef> = held.into_iter().filter(|food| food.target != Target::Pot).collect();
                hand.into_iter().chain(foods).collect()
            }
            // 'chop the garlic; stir in along with the thyme', 'peel the pears; cover with wine'.
            Verb::Add | Verb::Pour | Verb::Stir if !foods.is_empty() && matches!(self.scene.focus, Focus::Hand(_)) => {
                self.scene.hand().into_iter().chain(foods).collect()
            }
            // 'stir into the soup': what was mixed in another vessel.
            Verb::Add | Verb::Pour | Verb::Stir if self.goes_elsewhere(told) => {
                let inside = self
                    .scene
                    .here()
                    .map(|vessel| vessel.contents.clone())
                    .unwrap_or_default();
                inside.into_iter().chain(foods).collect()
            }
            // 'cover with the stock', 'thicken with flour', 'garnish with parsley': what is named is what goes in.
            Verb::Add
            | Verb::Pour
            | Verb::Thicken
            | Verb::Garnish
            | Verb::Stir
            | Verb::Deglaze
            | Verb::Spread
            | Verb::Dilute
                if !foods.is_empty() =>
            {
                foods
            }
            Verb::Serve => self.served(told, foods),
            _ => held.into_iter().chain(foods).collect(),
        }
    }

    /// 'Trim the fat off the meat': it is the meat that is cut.
    fn trimmed(&self, told: &Told, foods: &mut Vec<FoodRef>) {
        let made = foods.iter().all(|food| matches!(food.target, Target::Component(_)));
        let from = told
            .foods
            .iter()
            .find(|(role, food)| *role == Role::From && matches!(food.target, Target::Ingredient { .. }));
        if let Some((_, food)) = from.filter(|_| made && !foods.is_empty()) {
            *foods = vec![food.clone()];
        }
    }

    /// An ingredient that has not gone into anything yet.
    pub(super) fn is_fresh(&self, target: &Target) -> bool {
        match target {
            Target::Ingredient { index, item } => !self.scene.placed.contains_key(&(*index, *item)),
            _ => false,
        }
    }

    /// 'Serve with bread': the pot and the bread; 'serve the stew': the stew.
    fn served(&self, told: &Told, foods: Vec<FoodRef>) -> Vec<FoodRef> {
        let object = told.foods.iter().any(|(role, _)| *role == Role::Object);
        if object || foods.iter().any(|food| food.target == Target::Pot) {
            return foods;
        }
        std::iter::once(self.pot(told)).chain(foods).collect()
    }

    /// What a verb without an object is done to.
    fn held(&self, verb: Verb, told: &Told) -> Vec<FoodRef> {
        let named_vessel = told.said.vessel(&[Role::Object]).is_some();
        let pot = || vec![self.pot(told)];
        match &self.scene.focus {
            _ if named_vessel && !matches!(verb, Verb::Cover | Verb::Remove) => Vec::new(),
            Focus::Hand(foods) if !takes::of_the_pot(verb) => foods.clone(),
            Focus::TakenOut(foods)
                if verb != Verb::Season && !takes::of_the_pot(verb) && !takes::cooks(verb)
                    || matches!(verb, Verb::KeepHot) =>
            {
                foods.clone()
            }
            Focus::Pot if takes::by_hand(verb) && verb != Verb::Spread => {
                let solids = self.scene.solids(self.names);
                let all = matches!(
                    verb,
                    Verb::Cool | Verb::Chill | Verb::Freeze | Verb::Turn | Verb::Discard
                );
                // Many things cut or drained together are the pot.
                let one =
                    self.scene.here().is_some_and(|vessel| vessel.mixed) || matches!(verb, Verb::Shape | Verb::Wash);
                if solids.is_empty() || all || one || (solids.len() > 3 && verb == Verb::Cut) {
                    pot()
                } else {
                    solids
                }
            }
            _ => pot(),
        }
    }

    /// 'Pour over croutons in a tureen': what is poured is the pot.
    fn pours_over(&self, told: &Told, foods: &[FoodRef]) -> bool {
        let serving = told
            .said
            .vessels
            .iter()
            .any(|(_, vessel)| vessel.kind == VesselKind::Serving);
        let wet = foods
            .iter()
            .any(|food| acts(&food.target, self.names).0 || food.target == Target::Pot);
        serving && !wet && told.said.says("over")
    }

    /// The clause says where to, by a food that is in another vessel than the one being worked in, and not what.
    fn goes_elsewhere(&self, told: &Told) -> bool {
        let to = told.foods.iter().find(|(role, _)| *role == Role::To);
        let there = to.and_then(|(_, food)| self.scene.holds(&food.target));
        there.is_some() && there != self.scene.working && matches!(self.scene.focus, Focus::Pot)
    }
}
