//! Which foods an operation is done to or with: those that it names, else those that it must mean.

use super::build::Builder;
use super::clauses::Lead;
use super::said::Role;
use super::scene::{Focus, acts};
use super::takes;
use super::told::Told;
use super::words::VesselKind;
use crate::{FoodRef, Target, Verb};

impl Builder<'_> {
    /// The foods an operation names, or those that it must mean.
    pub(super) fn foods_of(&self, verb: Verb, told: &Told) -> Vec<FoodRef> {
        if verb == Verb::Repeat {
            let again = told
                .foods
                .iter()
                .filter(|(role, _)| matches!(role, Role::Object | Role::With));
            let foods: Vec<FoodRef> = again.map(|(_, food)| food.clone()).collect();
            return if foods.is_empty() { vec![self.pot(told)] } else { foods };
        }
        let mut foods = self.named(verb, told);
        let object = told.foods.iter().any(|(role, _)| *role == Role::Object) && !foods.is_empty();
        if object && self.drops_into_fat(verb, told, &foods) {
            return self.scene.hand();
        }
        if object && verb == Verb::Pour && self.pours_over(told, &foods) {
            foods.insert(0, self.pot(told));
        }
        if object && verb != Verb::Serve {
            foods
        } else {
            self.implied(verb, told, foods)
        }
    }

    /// The foods that the clause names for this verb.
    fn named(&self, verb: Verb, told: &Told) -> Vec<FoodRef> {
        let goes = |(role, food): &&(Role, FoodRef)| match role {
            Role::Object | Role::With => true,
            Role::In => food.target != Target::Pot && takes::takes_in(verb),
            Role::Over => takes::takes_over(verb),
            Role::To => self.is_fresh(&food.target) && !matches!(verb, Verb::Remove | Verb::Return),
            _ => false,
        };
        let mut foods: Vec<FoodRef> = told.foods.iter().filter(goes).map(|(_, food)| food.clone()).collect();
        match verb {
            // 'scrape up the brown bits', 'cover with foil': no foods.
            Verb::Cover | Verb::Uncover => foods.retain(|food| matches!(food.target, Target::Ingredient { .. })),
            Verb::Deglaze => {
                foods.retain(|food| matches!(food.target, Target::Ingredient { .. } | Target::Unlisted(_)))
            }
            Verb::Cut => self.trimmed(told, &mut foods),
            // 'slip off the skins': of what is in hand.
            Verb::Peel => foods.retain(|food| !matches!(food.target, Target::Component(_))),
            _ => {}
        }
        foods
    }

    /// 'Drop in the hot fat': the fat is there already, what is in hand is dropped into it.
    fn drops_into_fat(&self, verb: Verb, told: &Told, foods: &[FoodRef]) -> bool {
        let order = verb == Verb::Add && told.said.says("in") && told.clause.lead == Lead::Order;
        order && !self.scene.hand().is_empty() && foods.iter().all(|food| self.scene.here_has(&food.target))
    }

    /// The foods of an order without an object: what is in hand or in the vessel, and what it is done with.
    fn implied(&self, verb: Verb, told: &Told, foods: Vec<FoodRef>) -> Vec<FoodRef> {
        let hand = self.scene.hand();
        // 'boil in salted water': what is in hand.
        let wet = told
            .foods
            .iter()
            .any(|(role, food)| *role == Role::In && acts(&food.target, self.names).0);
        let held = if wet && !hand.is_empty() {
            hand.clone()
        } else {
            self.held(verb, told)
        };
        let with = |before: Vec<FoodRef>, foods: Vec<FoodRef>| before.into_iter().chain(foods).collect();
        match verb {
            Verb::Season | Verb::Dredge if !foods.is_empty() => with(
                held.into_iter().filter(|food| food.target != Target::Pot).collect(),
                foods,
            ),
            Verb::Stir
                if foods.is_empty() && !hand.is_empty() && (told.said.says("through") || told.said.says("in")) =>
            {
                hand
            }
            // 'shake the flour with the milk and stir in': what was mixed on the side.
            Verb::Add | Verb::Pour | Verb::Stir
                if foods.is_empty() && self.scene.is_aside() && told.said.says("in") =>
            {
                self.scene
                    .here()
                    .map(|vessel| vessel.contents.clone())
                    .unwrap_or_default()
            }
            // 'chop the garlic; stir in along with the thyme', 'peel the pears; cover with wine'.
            Verb::Add | Verb::Pour | Verb::Stir if !foods.is_empty() && !hand.is_empty() => with(hand, foods),
            // 'stir into the soup': what was mixed in another vessel.
            Verb::Add | Verb::Pour | Verb::Stir if self.goes_elsewhere(told) => with(
                self.scene
                    .here()
                    .map(|vessel| vessel.contents.clone())
                    .unwrap_or_default(),
                foods,
            ),
            Verb::Serve => self.served(told, foods),
            // 'cover with the stock', 'thicken with flour', 'garnish with parsley': what is named is what goes in.
            _ if takes::brings(verb) && !foods.is_empty() => foods,
            _ => with(held, foods),
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
        let sauced = foods.iter().any(|food| food.target == Target::Pot);
        match &self.scene.focus {
            // 'Lift out the beef and serve with the gravy strained over'.
            Focus::TakenOut(out) if sauced && !object => return out.iter().cloned().chain(foods).collect(),
            _ if object || sauced => return foods,
            _ => {}
        }
        std::iter::once(self.pot(told)).chain(foods).collect()
    }

    /// What a verb without an object is done to.
    fn held(&self, verb: Verb, told: &Told) -> Vec<FoodRef> {
        let named_vessel = told
            .said
            .vessel(&[Role::Object])
            .is_some_and(|vessel| !matches!(vessel.kind, VesselKind::Oven | VesselKind::Broiler | VesselKind::Tool));
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
            // 'Stir the mint into the yoghurt. Chill.': what was made on the side, not the pot.
            Focus::Pot if self.scene.is_aside() && matches!(verb, Verb::Chill | Verb::Cool | Verb::Freeze) => {
                let made = self.scene.here().map(|vessel| vessel.contents.clone());
                made.unwrap_or_default()
            }
            Focus::Pot if takes::by_hand(verb) && verb != Verb::Spread => {
                let mut solids = self.scene.solids(self.names);
                if matches!(verb, Verb::Remove | Verb::SetAside) {
                    solids.retain(|food| !self.is_flavour(&food.target));
                }
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

    /// 'Pour over croutons in a tureen', 'pour over the meat' that was taken out: what is poured is the pot.
    fn pours_over(&self, told: &Told, foods: &[FoodRef]) -> bool {
        let dry = |food: &FoodRef| food.target != Target::Pot && !acts(&food.target, self.names).0;
        let serving = told
            .said
            .vessels
            .iter()
            .any(|(_, vessel)| vessel.kind == VesselKind::Serving);
        let out = foods
            .iter()
            .all(|food| matches!(food.target, Target::Ingredient { .. }) && !self.is_fresh(&food.target));
        let over = ["over", "around", "round", "on"]
            .iter()
            .any(|word| told.said.says(word));
        let by_itself = foods.iter().any(|food| self.is_poured(&food.target));
        let ladled = matches!(told.clause.verb, "ladle" | "pour");
        over && foods.iter().all(dry) && (serving || (out || ladled) && !by_itself)
    }

    /// A food that runs by itself: fat, honey, a batter.
    fn is_poured(&self, target: &Target) -> bool {
        const RUNS: &[&str] = &[
            "egg", "honey", "syrup", "sauce", "yoghurt", "custard", "batter", "dressing", "paste", "juice", "oil",
        ];
        match target {
            Target::Ingredient { index, item } => self
                .names
                .get((*index, *item))
                .is_some_and(|name| name.acts_as("fat") || RUNS.iter().any(|word| name.has(word))),
            Target::Unlisted(name) => super::foods::plain(name)
                .iter()
                .any(|word| RUNS.contains(&word.as_str())),
            _ => true,
        }
    }

    /// The clause says where to, by a food that is in another vessel than the one being worked in, and not what.
    fn goes_elsewhere(&self, told: &Told) -> bool {
        let to = told.foods.iter().find(|(role, _)| *role == Role::To);
        let there = to.and_then(|(_, food)| self.scene.holds(&food.target));
        // 'mix the cornflour with the water, stir into the sauce': the sauce is not what was mixed.
        let mixed = self.scene.here().is_some_and(|vessel| vessel.mixed);
        let other = to.is_some_and(|(_, food)| food.target == Target::Pot) && there.is_none() && mixed;
        (other || (there.is_some() && there != self.scene.working)) && matches!(self.scene.focus, Focus::Pot)
    }
}
