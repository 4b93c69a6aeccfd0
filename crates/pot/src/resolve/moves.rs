//! Verbs that put in, take out, pour off, throw away, blend.

use potwright_larder::Kind;
use potwright_manuscript::{Cover, FoodRef, Operation, Share, Target, Verb};

use super::bench::{Bench, NOTHING};
use super::place::Site;
use super::verbs::{self, Class, Manner};
use super::vessels::{self, Meaning, Style};
use super::words::{has, plain, share_a_word};
use crate::{Aim, Doing, FatOff, Part, Place};

/// Share of the free fat that a careful cook lifts off (common practice, no source; 0.7–0.95).
const FAT_LIFTED: f64 = 0.85;

/// Share of the free fat that goes with the scum (common practice, no source; 0.05–0.2).
const FAT_WITH_SCUM: f64 = 0.1;

/// Share of the pieces that goes through a sieve (common practice, no source; 0.7–0.97).
const THROUGH_SIEVE: f64 = 0.9;

/// 'Crush a few of the potatoes' (common practice, no source; ×/÷2).
const A_FEW: f64 = 0.15;

impl Bench<'_> {
    /// Adding, pouring, stirring in, returning, scattering.
    pub(super) fn put(&mut self, operation: &Operation, manner: &Manner) {
        if self.dishes_up(operation) {
            self.serve(operation);
            return;
        }
        if operation.verb == Verb::Garnish && self.takes_served(operation) {
            return;
        }
        let from_end = operation
            .minutes
            .as_ref()
            .filter(|minutes| minutes.from_end)
            .map(|m| f64::midpoint(m.low, m.high));
        // What is scattered over the bowls goes over the dish.
        let dish = self.here.or(self.fire).filter(|_| self.served.is_some());
        let site = match dish {
            Some(vessel) => Site { vessel, place: None },
            None => self.site(operation, manner.class, manner.way),
        };
        let vessel = site.vessel;
        if let (Some(minutes), Some(fire)) = (from_end, self.fire) {
            self.at_the_end(fire, minutes, |bench| {
                bench.bring(operation, fire);
            });
            self.here = Some(fire);
            return;
        }
        if let Some(place) = site.place {
            self.held[vessel].place = place;
        }
        self.note_knob(vessel, operation);
        let named = self.bring(operation, vessel);
        self.here = Some(vessel);
        if self.uses[vessel].style != Style::Hold {
            self.fire = Some(vessel);
        }
        let waits = operation.minutes.is_some() || (operation.cue.is_some() && manner.class == Class::Loosen);
        if manner.class == Class::Loosen && self.uses[vessel].style != Style::Hold && (waits || !self.cooks_next()) {
            self.held[vessel].place = if self.held[vessel].place == Place::Oven {
                Place::Oven
            } else {
                Place::Hob
            };
            self.go_on(vessel, operation, &named);
        } else if operation.minutes.is_some() {
            self.go_on(vessel, operation, &named);
        }
    }

    /// 'Ladle into warm bowls': all of it goes into what is eaten from, and nothing is cooked after.
    fn dishes_up(&self, operation: &Operation) -> bool {
        let all_of_it = !operation.foods.is_empty() && operation.foods.iter().all(|food| food.target == Target::Pot);
        let table = operation
            .into
            .as_ref()
            .filter(|into| !into.inferred)
            .is_some_and(|into| {
                let hay = plain(&into.words.text);
                [
                    "bowls",
                    "plates",
                    "cups",
                    "tureen",
                    "soup plates",
                    "platter",
                    "serving dish",
                ]
                .iter()
                .any(|word| has(&hay, word))
            });
        let later = self
            .shelf
            .recipe
            .operations
            .iter()
            .skip(self.said.operation.map_or(0, |at| at + 1));
        let cooked = |operation: &Operation| {
            let class = verbs::manner(operation.verb).class;
            matches!(
                class,
                Class::Cook | Class::Loosen | Class::Strain | Class::Blend | Class::Wait | Class::Mix
            )
        };
        all_of_it && table && !later.into_iter().any(cooked)
    }

    /// Heat and lid that stand with a verb that does not itself cook hold for what follows.
    pub(super) fn note_knob(&mut self, vessel: usize, operation: &Operation) {
        let held = &mut self.held[vessel];
        if let Some(heat) = operation.heat {
            held.heat = Some(match heat {
                potwright_manuscript::HeatWord::Lower => {
                    verbs::lower(held.heat.unwrap_or(potwright_manuscript::HeatWord::Medium))
                }
                heat => heat,
            });
            held.place = Place::Hob;
        }
        held.cover = operation.cover.or(held.cover);
    }

    /// Whether everything an operation takes is for serving only.
    fn takes_served(&self, operation: &Operation) -> bool {
        let served = |food: &FoodRef| match food.target {
            Target::Ingredient { index, item } => self
                .stocked
                .lot(index, item)
                .and_then(|lot| self.stocked.lots.get(lot))
                .is_some_and(|lot| lot.for_serving),
            _ => false,
        };
        !operation.foods.is_empty() && operation.foods.iter().all(served)
    }

    /// Whether the next operation heats.
    fn cooks_next(&self) -> bool {
        let next = self
            .said
            .operation
            .and_then(|at| self.shelf.recipe.operations.get(at + 1));
        next.is_some_and(|next| verbs::manner(next.verb).class == Class::Cook && next.step == self.said.step)
    }

    /// Taken out to be kept, or off the fire.
    pub(super) fn lift(&mut self, operation: &Operation, manner: &Manner) {
        let words = self.words();
        if has(&words, "fat") || has(&words, "scum") || has(&words, "foam") {
            self.skim(operation, manner);
            return;
        }
        let lots = self.lots_named(&operation.foods);
        let site = self.holder(&lots).or(self.here).or(self.fire);
        let Some(vessel) = site else { return };
        if lots.is_empty() {
            self.lift_all(vessel, operation);
            return;
        }
        let aromatic = |lot: &usize| matches!(self.stocked.lots[*lot].kind, Kind::Herb | Kind::Spice);
        let kept = self.lots_named(&operation.keep);
        let thrown = self.lots_named(&operation.discard);
        let all_goes = !thrown.is_empty() && kept.is_empty() || lots.iter().all(aromatic);
        let goes = |lot: &usize| all_goes || thrown.contains(lot) && !kept.contains(lot);
        let (gone, lots): (Vec<usize>, Vec<usize>) = match operation.verb {
            Verb::Remove => lots.iter().partition(|lot| goes(lot)),
            _ => (Vec::new(), lots),
        };
        if !gone.is_empty() {
            self.discard(vessel, Part::Lots(gone));
        }
        if lots.is_empty() {
            return;
        }
        let to = self.side_vessel(operation, vessel);
        self.transfer(vessel, to, Part::Lots(lots));
    }

    /// 'Set aside', 'take off the heat', 'take out of the oven' of all that is in hand.
    fn lift_all(&mut self, vessel: usize, operation: &Operation) {
        let fried = matches!(self.held[vessel].aim, Some(Aim::Fry(_)));
        let off_the_fire = ["heat", "oven", "hob", "stove"]
            .iter()
            .any(|word| has(&self.words(), word));
        let whole_pan = operation.foods.iter().any(|food| {
            ["pan", "pot", "casserole"]
                .iter()
                .any(|w| has(&plain(&food.words.text), w))
        });
        if off_the_fire || whole_pan {
            let held = &mut self.held[vessel];
            held.heat = None;
            held.place = Place::Hob;
            return;
        }
        let to_vessel = operation
            .into
            .as_ref()
            .is_some_and(|into| matches!(vessels::meaning(&into.words.text), Some(Meaning::Vessel(_))));
        if self.uses[vessel].style != Style::Hold && (fried || to_vessel) {
            let to = self.side_vessel(operation, vessel);
            let part = if self.is_wet(vessel) { Part::All } else { Part::Solids };
            self.transfer(vessel, to, part);
        }
    }

    /// The plate or bowl that something is kept on.
    fn side_vessel(&mut self, operation: &Operation, from: usize) -> usize {
        let named = operation
            .into
            .as_ref()
            .filter(|into| matches!(vessels::meaning(&into.words.text), Some(Meaning::Vessel(_))));
        if named.is_some() {
            let site = self.site(operation, Class::Lift, None);
            if site.vessel != from {
                return site.vessel;
            }
        }
        self.take_out("plate", Style::Hold)
    }

    /// Thrown away.
    pub(super) fn throw(&mut self, operation: &Operation, manner: &Manner) {
        let words = self.words();
        if has(&words, "fat") {
            self.skim(operation, manner);
            return;
        }
        let all: Vec<FoodRef> = operation.foods.iter().chain(&operation.discard).cloned().collect();
        let lots = self.lots_named(&all);
        let liquid = ["liquid", "water", "juices"].iter().any(|word| has(&words, word));
        let Some(vessel) = self.holder(&lots).or(self.here).or(self.fire) else {
            return;
        };
        if !lots.is_empty() {
            // 'Any that stay shut', 'the broken ones': some of them, and nobody knows how many.
            let some = ["any", "those", "that"].iter().any(|word| has(&words, word));
            if some {
                self.assume("None of them is thrown away: the page does not say how many would be.");
            } else {
                self.discard(vessel, Part::Lots(lots));
            }
        } else if liquid {
            self.discard(vessel, Part::Liquid);
        } else {
            let solids = ["bones", "solids", "vegetables", "rest", "pulp"]
                .iter()
                .any(|word| has(&words, word));
            if solids {
                let strained = (0..self.held.len())
                    .rev()
                    .find(|v| self.held[*v].names.iter().any(|n| n == "solids") && !self.is_empty(*v));
                self.discard(strained.unwrap_or(vessel), Part::Solids);
            }
        }
    }

    /// Liquid poured off; kept when the page says so.
    pub(super) fn drain(&mut self, operation: &Operation, manner: &Manner) {
        let site = self.site(operation, manner.class, manner.way);
        let lots = self.lots_named(&operation.foods);
        let vessel = self.holder(&lots).unwrap_or(site.vessel);
        if self.is_empty(vessel) {
            return;
        }
        // 'Pour off all but a spoonful of the fat.'
        if has(&self.words(), "fat") && !self.is_wet(vessel) {
            let off = self.fat_named(operation).unwrap_or(FatOff::Share(FAT_LIFTED));
            self.act(vessel, Doing::Skim(off));
            return;
        }
        match self.kept_liquid(operation) {
            Some(name) => {
                let bowl = self.take_out("bowl", Style::Hold);
                self.held[bowl].names.push(name);
                self.transfer(vessel, bowl, Part::Liquid);
            }
            None => self.discard(vessel, Part::Liquid),
        }
        self.here = Some(vessel);
    }

    /// The words of a liquid that is kept.
    fn kept_liquid(&self, operation: &Operation) -> Option<String> {
        let pours = |food: &&FoodRef| {
            let words = plain(&food.words.text);
            [
                "liquid", "water", "stock", "broth", "juice", "juices", "milk", "fat", "cup",
            ]
            .iter()
            .any(|word| has(&words, word))
        };
        operation.keep.iter().find(pours).map(|food| food.words.text.clone())
    }

    /// Solids held back, liquid kept in another vessel.
    pub(super) fn strain(&mut self, operation: &Operation, manner: &Manner) {
        let from = self
            .holder(&self.lots_named(&operation.foods))
            .or(self.here)
            .or(self.fire);
        let Some(from) = from.filter(|from| !self.is_empty(*from)) else {
            return;
        };
        if operation.verb == Verb::RubThroughSieve {
            self.act(from, Doing::Puree(THROUGH_SIEVE));
        }
        let sieve = |words: &str| {
            let hay = plain(words);
            ["sieve", "colander", "strainer", "muslin", "cheesecloth"]
                .iter()
                .any(|word| has(&hay, word))
        };
        let into = operation.into.as_ref().filter(|into| {
            !sieve(&into.words.text) && matches!(vessels::meaning(&into.words.text), Some(Meaning::Vessel(_)))
        });
        let to = if into.is_some() {
            self.site(operation, manner.class, manner.way).vessel
        } else {
            from
        };
        let to = if to == from {
            self.take_out(&format!("clean {}", self.uses[from].name), self.uses[from].style)
        } else {
            to
        };
        self.transfer(from, to, Part::Liquid);
        let kept = operation.keep.iter().any(|food| self.kept_liquid_words(food).is_none());
        if kept {
            self.held[from].names.push("solids".to_owned());
        } else {
            self.discard(from, Part::All);
        }
        self.here = Some(to);
        if self.uses[to].style != Style::Hold {
            self.fire = Some(to);
        }
    }

    fn kept_liquid_words<'f>(&self, food: &'f FoodRef) -> Option<&'f str> {
        let hay = plain(&food.words.text);
        let pours = ["liquid", "stock", "broth", "juice", "juices", "soup", "water", "it"];
        pours
            .iter()
            .any(|word| has(&hay, word))
            .then_some(food.words.text.as_str())
    }

    /// Blended or mashed, where it is; foods from the shelf are blended in a bowl of their own.
    pub(super) fn blend(&mut self, operation: &Operation, manner: &Manner) {
        let from_shelf = operation.foods.iter().any(|food| match food.target {
            Target::Ingredient { index, item } => self
                .stocked
                .lot(index, item)
                .is_some_and(|lot| self.left[lot] > NOTHING),
            _ => false,
        });
        if from_shelf {
            self.mix(operation, manner);
        }
        let lots = self.lots_named(&operation.foods);
        let vessel = self.holder(&lots).or(self.here).or(self.fire);
        let Some(vessel) = vessel.filter(|vessel| !self.is_empty(*vessel)) else {
            return;
        };
        let share = self.blended_share(operation, vessel, &lots);
        self.held[vessel].cover = None;
        if share > NOTHING && self.has_pieces(vessel) {
            self.act(vessel, Doing::Puree(share));
        }
    }

    fn has_pieces(&self, vessel: usize) -> bool {
        self.inside(vessel).into_iter().any(|lot| self.is_solid(lot))
    }

    /// The share of the pieces that is blended: what is said, or the named foods' part of all pieces.
    fn blended_share(&self, operation: &Operation, vessel: usize, lots: &[usize]) -> f64 {
        let of_all = match operation.foods.first().map(|food| food.share) {
            Some(Share::Fraction(part)) => part.to_f64(),
            Some(Share::Some) => A_FEW,
            _ => 1.0,
        };
        let pieces = |lot: usize| {
            self.stocked
                .lots
                .get(lot)
                .filter(|lot| lot.pieces.is_some())
                .map_or(0.0, |lot| lot.mass.kilograms())
        };
        let all: f64 = self.inside(vessel).into_iter().map(pieces).sum();
        let named: f64 = lots.iter().copied().map(pieces).sum();
        let part = if named > 0.0 && all > 0.0 { named / all } else { 1.0 };
        (of_all * part).clamp(0.0, 1.0)
    }

    /// Fat or scum taken off.
    pub(super) fn skim(&mut self, operation: &Operation, _manner: &Manner) {
        let site = self.here.filter(|here| !self.is_empty(*here)).or(self.fire);
        let Some(vessel) = site else { return };
        let words = self.words();
        let fat = has(&words, "fat")
            || operation
                .discard
                .iter()
                .any(|food| share_a_word(&food.words.text, "fat"));
        let named = self.fat_named(operation).filter(|_| fat);
        let usual = FatOff::Share(if fat { FAT_LIFTED } else { FAT_WITH_SCUM });
        self.act(vessel, Doing::Skim(named.unwrap_or(usual)));
    }

    /// 'Do not let it boil': the stretch before and those that follow stay below.
    pub(super) fn guard(&mut self) {
        let Some(vessel) = self.here.or(self.fire) else { return };
        self.held[vessel].guarded = true;
        let step = self.said.step;
        let last = self.acts.iter_mut().rev().find(|act| act.vessel == vessel);
        if let Some(act) = last
            && let Doing::Cook(stretch) = &mut act.doing
            && matches!(stretch.aim, Aim::Setting(_) | Aim::Simmer | Aim::Boil)
            && self.held[vessel].step == step
            && stretch.lasts.cue != Some(crate::Cue::Boils)
        {
            stretch.aim = Aim::BelowBoil;
        }
    }

    /// Lid on or off for what follows.
    pub(super) fn lid(&mut self, operation: &Operation) {
        let Some(vessel) = self.here.or(self.fire) else { return };
        let usual = if operation.verb == Verb::Uncover {
            Cover::Off
        } else {
            Cover::On
        };
        self.held[vessel].cover = Some(operation.cover.unwrap_or(usual));
        if operation.minutes.is_some() || operation.cue.is_some() {
            self.go_on(vessel, operation, &[]);
        }
    }

    /// The lots that food words name.
    pub(super) fn lots_named(&self, foods: &[FoodRef]) -> Vec<usize> {
        let mut lots = Vec::new();
        for food in foods {
            let found: Vec<usize> = match &food.target {
                Target::Ingredient { index, item } => self.stocked.lot(*index, *item).into_iter().collect(),
                Target::Unlisted(name) => {
                    let own = |lot: &crate::Lot| lot.ingredient.is_none() && share_a_word(&lot.name, name);
                    self.stocked.lots.iter().position(own).into_iter().collect()
                }
                Target::Component(name) => self.shaped_named(name).map(|shaped| shaped.main).into_iter().collect(),
                Target::Pot => Vec::new(),
            };
            for lot in found {
                if !lots.contains(&lot) {
                    lots.push(lot);
                }
            }
        }
        lots
    }

    /// The vessel that holds the first of these lots that is in any.
    pub(super) fn holder(&self, lots: &[usize]) -> Option<usize> {
        lots.iter().find_map(|lot| self.where_is(*lot).first().copied())
    }
}
