//! An order becomes an operation: which foods, in which vessel, with which time; and what follows from it.

use super::build::{Builder, Told};
use super::clauses::Lead;
use super::foods::plain;
use super::said::Role;
use super::scene::{Focus, acts};
use super::takes;
use super::words::{Meaning, VesselKind, is};
use crate::token::Token;
use crate::{Cover, FoodRef, HeatWord, Layout, Operation, Share, Target, Verb, VesselRef, Words};

impl Builder<'_> {
    /// One order: the operation, and the cooking that its time says when the verb itself takes none.
    pub(super) fn order(&mut self, verb: Verb, told: &Told) {
        let foods = self.foods_of(verb, told);
        // 'adding a third at a time' only says how.
        let how = told.clause.lead == Lead::Doing && takes::puts(verb) && told.foods.is_empty();
        if how {
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
        self.operations.push(operation);
        self.follow(verb, told, &foods, before);
        if split {
            self.cook_on(told);
        }
        self.further_times(verb, told);
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

    /// The foods an operation names, or those that it must mean.
    fn foods_of(&self, verb: Verb, told: &Told) -> Vec<FoodRef> {
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
    fn is_fresh(&self, target: &Target) -> bool {
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
    fn go_to_vessel(&mut self, verb: Verb, told: &Told, foods: &[FoodRef]) -> Option<VesselRef> {
        let mut shown: Option<VesselRef> = None;
        let mut oven = false;
        let mut turned = false;
        for (role, mention) in &told.said.vessels {
            let tool = *role == Role::With && !matches!(mention.kind, VesselKind::Cook | VesselKind::Bowl);
            if tool || matches!(role, Role::From | Role::Aside | Role::Discard) {
                continue;
            }
            let words = Words::at(self.text, mention.span);
            match mention.kind {
                VesselKind::Cook | VesselKind::Bowl => {
                    let known = self.scene.vessels.len();
                    let index = self.scene.vessel(mention, without_article(words, &mention.name));
                    let first = self
                        .scene
                        .vessels
                        .get(index)
                        .map(|vessel| vessel.words.clone())
                        .unwrap_or_default();
                    shown.get_or_insert(VesselRef {
                        words: first,
                        inferred: index < known && !mention.fresh,
                    });
                    self.scene.working = Some(index);
                    turned = true;
                }
                VesselKind::Oven => {
                    oven = true;
                    self.set_baking(true);
                }
                VesselKind::Tool => {}
                VesselKind::Sink | VesselKind::Cold | VesselKind::Frozen => {
                    shown = Some(VesselRef {
                        words: without_article(words, &mention.name),
                        inferred: false,
                    });
                }
                _ => {
                    shown.get_or_insert(VesselRef {
                        words: without_article(words, &mention.name),
                        inferred: false,
                    });
                }
            }
        }
        if !turned {
            self.turn_to_food(verb, told, foods);
            self.turn_to_new(verb, told, foods);
        }
        let has_hob_heat = told.said.heat.is_some() || told.said.says("hob") || told.said.says("stove");
        if !oven && (has_hob_heat || (turned && takes::cooks(verb) && !takes::in_oven(verb))) {
            self.set_baking(false);
        }
        let baked =
            oven || (takes::in_oven(verb) && self.scene.oven.is_some()) || (self.baking() && takes::in_oven(verb));
        if baked && (takes::in_oven(verb) || verb == Verb::Heat || verb == Verb::Toast) && !(turned && !oven) {
            let named = told
                .said
                .vessels
                .iter()
                .find(|(_, vessel)| vessel.kind == VesselKind::Oven);
            let words = named.map_or_else(
                || Words {
                    text: "oven".to_owned(),
                    span: told.verb_span,
                },
                |(_, vessel)| without_article(Words::at(self.text, vessel.span), &vessel.name),
            );
            self.set_baking(true);
            return Some(VesselRef {
                words,
                inferred: named.is_none(),
            });
        }
        shown
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
            self.scene.to_the_stove();
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

    /// The heat that is said, else the one that was set before this work.
    fn heat_of(&mut self, operation: &mut Operation, told: &Told) {
        let carried =
            takes::cooks(operation.verb) || matches!(operation.verb, Verb::Add | Verb::Stir | Verb::Pour | Verb::Cover);
        let pending = if carried && told.said.heat.is_none() {
            self.take_heat()
        } else {
            None
        };
        operation.heat = told.said.heat.or(pending);
        let cooking = takes::cooks(operation.verb) && !takes::in_oven(operation.verb);
        if operation.heat.is_none() && cooking && told.said.gentle {
            operation.heat = Some(HeatWord::Low);
        }
        if takes::cooks(operation.verb) && operation.cover.is_none() {
            operation.cover = self.lid();
        }
    }

    /// Keeps the setting of the oven and gives it to what is done there.
    fn temperature_of(&mut self, operation: &mut Operation, told: &Told) {
        let said = told.said.temperature;
        let oven_said = told
            .said
            .vessels
            .iter()
            .any(|(_, vessel)| vessel.kind == VesselKind::Oven);
        if operation.verb == Verb::Heat && (oven_said || (said.is_some() && told.foods.is_empty())) {
            operation.foods.clear();
            self.scene.oven = said.or(self.scene.oven);
            self.set_baking(false);
            if operation.into.as_ref().is_none_or(|into| into.inferred) {
                operation.into = Some(VesselRef {
                    words: Words {
                        text: "oven".to_owned(),
                        span: told.verb_span,
                    },
                    inferred: !oven_said,
                });
            }
        } else if let Some(setting) = said.filter(|_| self.baking() || takes::in_oven(operation.verb)) {
            self.scene.oven = Some(setting);
        }
        let inherits = takes::in_oven(operation.verb) || (operation.verb == Verb::Toast && oven_said);
        let setting = said.or(self.scene.oven.filter(|_| inherits));
        let Some((temperature, fan)) = setting else { return };
        operation.temperature = Some(if fan {
            self.conventional(temperature, operation)
        } else {
            temperature
        });
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
                let ajar = told.said.words.iter().any(|word| is(word, "partly"))
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

    /// What follows for the kitchen: where the foods are now, what the next words are about.
    fn follow(&mut self, verb: Verb, told: &Told, foods: &[FoodRef], before: Option<usize>) {
        for food in foods {
            self.learn(&food.target);
        }
        for (_, food) in &told.foods {
            self.learn(&food.target);
        }
        let goes_in = (takes::places(verb) || takes::cooks(verb) || matches!(verb, Verb::Parboil | Verb::Puree))
            && !matches!(verb, Verb::Garnish | Verb::Serve | Verb::Dredge | Verb::Spread);
        let seasons_hand = verb == Verb::Season && matches!(self.scene.focus, Focus::Hand(_))
            || (verb == Verb::Season && self.hand_object(told));
        let holder = told
            .said
            .vessels
            .iter()
            .any(|(role, vessel)| vessel.kind == VesselKind::Holder && *role != Role::From);
        if goes_in && !seasons_hand && !(verb == Verb::Heat && foods.is_empty()) && !holder {
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
        let helped = matches!(verb, Verb::Season | Verb::Dredge | Verb::Soak);
        self.scene.turn_to(verb, foods, if helped { &with } else { &[] });
    }

    /// Whether what is seasoned is a food that is not in the vessel.
    fn hand_object(&self, told: &Told) -> bool {
        let object = told.foods.iter().find(|(role, _)| *role == Role::Object);
        object.is_some_and(|(_, food)| food.target != Target::Pot && self.scene.holds(&food.target).is_none())
            && told.foods.iter().any(|(role, _)| *role == Role::With)
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

    /// Names of things made on the way and of foods that are not listed are kept for later words.
    fn learn(&mut self, target: &Target) {
        let (names, name) = match target {
            Target::Component(name) => (&mut self.scene.made, name),
            Target::Unlisted(name) => (&mut self.scene.unlisted, name),
            _ => return,
        };
        if !names.iter().any(|known| plain(known) == plain(name)) {
            names.push(name.clone());
        }
    }

    /// 'Add the paste, 1 minute': the minute is cooking.
    fn cook_on(&mut self, told: &Told) {
        let timed = told.said.times.iter().find(|timed| !timed.minutes.from_end);
        let span = timed
            .map(|timed| timed.minutes.span)
            .or(told.said.cue.as_ref().map(|cue| cue.span))
            .unwrap_or(told.span);
        self.scene.to_the_stove();
        let inner = Told {
            clause: told.clause,
            said: told.said.clone(),
            foods: Vec::new(),
            span,
            verb_span: span,
            half: false,
        };
        let verb = match self.facts(&inner, |facts| facts.meaning("cook")) {
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
            .find(|token| token.is_word() && !is(&token.lower, "adverb") && !is(&token.lower, "joiner"));
        let begins = told
            .foods
            .first()
            .is_some_and(|(_, food)| food.words.span.start <= first.map_or(usize::MAX, |token| token.span.start))
            || first.is_some_and(|token| token.is_any(&["rest", "same"]) || token.number().is_some());
        if stretch
            .iter()
            .any(|token| is(&token.lower, "finite") || is(&token.lower, "person") || is(&token.lower, "never"))
        {
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
            let taste = told.said.says("taste");
            let verb = if taste { Verb::Season } else { Verb::Add };
            let before = self.scene.working;
            self.go_to_vessel(verb, told, &foods);
            let mut operation = self.blank(verb, told);
            operation.foods.clone_from(&foods);
            operation.into = self.inferred();
            operation.cue.clone_from(&told.said.cue);
            self.operations.push(operation);
            self.follow(verb, told, &foods, before);
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
    let remark = rest.iter().any(|token| {
        ["finite", "person", "never"]
            .iter()
            .any(|class| is(&token.lower, class))
    });
    if remark { dash } else { to }
}

/// The words of a vessel without 'a', 'your', 'the same'.
fn without_article(words: Words, name: &str) -> Words {
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
