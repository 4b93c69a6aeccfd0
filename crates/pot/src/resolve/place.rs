//! Which vessel an operation happens in, said or not.

use potwright_manuscript::{Operation, Target};

use super::bench::{Bench, NOTHING};
use super::lots;
use super::verbs::{Class, Way};
use super::vessels::{self, Meaning, Style, same_vessel};
use super::words::{has, plain, share_a_word};
use crate::{Part, Place};

/// Share of what pours from which on things are boiled in it; below, they fry (common practice, no source; ×/÷1.5: a
/// braise holds a third, a splash of wine over vegetables a tenth).
const WET: f64 = 0.12;

/// Where an operation happens.
pub(super) struct Site {
    pub(super) vessel: usize,
    /// A place that the words name: the oven, the refrigerator.
    pub(super) place: Option<Place>,
}

impl Bench<'_> {
    /// Turns to the part of the page an operation stands in: another component has its own vessel.
    pub(super) fn turn_to_section(&mut self, step: usize) {
        let section = self.shelf.recipe.steps.get(step).and_then(|step| step.section);
        if section == self.section {
            return;
        }
        self.section = section;
        let of_section = |vessel: &usize| section.is_some() && self.held[*vessel].section == section;
        let own = (0..self.held.len()).rev().find(of_section);
        self.here = if section.is_some() {
            own
        } else {
            self.fire.or(self.here)
        };
    }

    /// The vessel and place of an operation.
    pub(super) fn site(&mut self, operation: &Operation, class: Class, way: Option<Way>) -> Site {
        // What is mixed together on its own is so in a bowl, whatever vessel was last in hand.
        let on_its_own = |inferred: bool| inferred && matches!(class, Class::Mix | Class::Dress);
        let into = operation.into.as_ref().filter(|into| !on_its_own(into.inferred));
        let named = into.map(|into| into.words.text.clone());
        let mut place = None;
        if let Some(words) = named {
            match vessels::meaning(&words) {
                Some(Meaning::Place(found)) => place = Some(found),
                Some(Meaning::Vessel(style)) => {
                    return Site {
                        vessel: self.named_vessel(&words, style, operation),
                        place,
                    };
                }
                None => {
                    return Site {
                        vessel: self.named_vessel(&words, Style::Pot, operation),
                        place,
                    };
                }
            }
        }
        Site {
            vessel: self.unnamed_vessel(operation, class, way),
            place,
        }
    }

    /// The vessel of these words: one in use, or a new one.
    fn named_vessel(&mut self, words: &str, style: Style, operation: &Operation) -> usize {
        let hay = plain(words);
        let fresh = ["clean", "another", "second", "fresh", "separate", "new"]
            .iter()
            .any(|word| has(&hay, word));
        // Plates and boards are never told apart, but what lies on one is not put under what comes next.
        let known = |vessel: &usize| same_vessel(&self.uses[*vessel].name, words);
        let inferred = operation.into.as_ref().is_some_and(|into| into.inferred);
        let found = (0..self.uses.len())
            .rev()
            .find(|vessel| known(vessel) && (inferred || !fresh));
        let generic = hay.trim() == "pot" || hay.trim() == "pan";
        let found = found.or_else(|| self.fire.filter(|_| generic && !fresh));
        match found {
            Some(vessel) => {
                self.note_size(vessel);
                vessel
            }
            None => self.take_out(words, style),
        }
    }

    /// The vessel of an operation that names none.
    fn unnamed_vessel(&mut self, operation: &Operation, class: Class, way: Option<Way>) -> usize {
        let vessel = match class {
            Class::Cook | Class::Loosen => self.heated_vessel(operation, way),
            Class::Mix | Class::Blend => self.mixing_vessel(operation),
            Class::Dress => self.dressing_vessel(operation),
            Class::Wait if way == Some(Way::Counter) => self.waiting_vessel(operation),
            _ => self.working_vessel(operation),
        };
        self.note_size(vessel);
        vessel
    }

    /// The vessel in hand; in a later step than the one a bowl was used in, the pot on the fire.
    fn working_vessel(&mut self, operation: &Operation) -> usize {
        if let Some(vessel) = self.holder_of_named(operation) {
            return vessel;
        }
        let bowl_of_before =
            |here: usize| self.uses[here].style == Style::Hold && self.held[here].step != operation.step;
        match (self.here, self.fire) {
            (Some(here), Some(fire)) if bowl_of_before(here) && self.section.is_none() && !self.is_empty(fire) => fire,
            (Some(here), _) => here,
            (None, Some(fire)) if self.section.is_none() => fire,
            _ => self.implied("bowl", Style::Hold),
        }
    }

    /// Things that are taken out, thrown away or poured off are where they are.
    fn holder_of_named(&self, operation: &Operation) -> Option<usize> {
        use super::verbs::manner;
        let takes_out = matches!(
            manner(operation.verb).class,
            Class::Lift | Class::Throw | Class::Drain | Class::Strain | Class::Wait | Class::Skim
        );
        if !takes_out {
            return None;
        }
        operation
            .foods
            .iter()
            .chain(&operation.discard)
            .find_map(|food| match &food.target {
                Target::Ingredient { index, item } => {
                    let lot = self.stocked.lot(*index, *item)?;
                    self.where_is(lot).first().copied()
                }
                Target::Component(name) => {
                    let named = |vessel: &usize| self.held[*vessel].names.iter().any(|known| share_a_word(known, name));
                    (0..self.held.len())
                        .rev()
                        .find(|vessel| named(vessel) && !self.is_empty(*vessel))
                }
                _ => None,
            })
    }

    /// What is to be heated: the pot in hand, else the one last on the fire; what is in a bowl goes in first.
    fn heated_vessel(&mut self, operation: &Operation, way: Option<Way>) -> usize {
        let oven = way == Some(Way::Oven);
        let here = self.here;
        if let Some(here) = here.filter(|here| self.uses[*here].style != Style::Hold) {
            return here;
        }
        let fire = self.fire.filter(|_| self.section.is_none() || here.is_none());
        if let Some(fire) = fire {
            let bowl = here.filter(|here| self.is_empty(fire) && !self.is_empty(*here));
            if let Some(bowl) = bowl {
                self.assume(format!(
                    "What is in the {} goes back into the {} to be heated.",
                    self.uses[bowl].name, self.uses[fire].name
                ));
                self.transfer(bowl, fire, Part::All);
            }
            return fire;
        }
        let (name, style) = match way {
            _ if oven => ("baking dish", Style::Oven),
            Some(Way::Fry) => ("pan", Style::Pot),
            _ => ("pot", Style::Pot),
        };
        let vessel = self.implied(name, style);
        let takes_it = operation.foods.is_empty() || operation.foods.iter().any(|food| food.target == Target::Pot);
        if let Some(bowl) = here.filter(|here| takes_it && !self.is_empty(*here)) {
            self.transfer(bowl, vessel, Part::All);
        }
        vessel
    }

    /// Mixed among themselves in a bowl, or into what is in hand.
    fn mixing_vessel(&mut self, operation: &Operation) -> usize {
        let into_pot = operation.foods.iter().any(|food| food.target == Target::Pot) || self.says_into(operation);
        let from_shelf = operation
            .foods
            .iter()
            .filter(|food| self.on_shelf(&food.target))
            .count();
        let in_hand = self.here.filter(|here| !self.is_empty(*here));
        let own_bowl = self.here.filter(|here| {
            let held = &self.held[*here];
            self.uses[*here].style == Style::Hold && held.step == operation.step && held.section == self.section
        });
        if into_pot || from_shelf == 0 {
            return self.working_vessel(operation);
        }
        if from_shelf == 1
            && operation.foods.len() == 1
            && let Some(in_hand) = in_hand
        {
            return in_hand;
        }
        if let Some(bowl) = own_bowl.filter(|bowl| self.is_empty(*bowl)) {
            return bowl;
        }
        let all_from_shelf = from_shelf == operation.foods.len();
        match in_hand {
            Some(in_hand) if !all_from_shelf => in_hand,
            _ => self.implied("bowl", Style::Hold),
        }
    }

    /// Whether 'in' or 'into' follows the verb: 'whisk in the cream'.
    fn says_into(&self, operation: &Operation) -> bool {
        let after = self
            .shelf
            .text
            .get(operation.verb_span.end..operation.span.end.max(operation.verb_span.end));
        let after = plain(after.unwrap_or(""));
        ["in", "into", "through"].contains(&after.split_whitespace().next().unwrap_or(""))
    }

    /// Whether a food is still on the shelf.
    fn on_shelf(&self, target: &Target) -> bool {
        match target {
            Target::Ingredient { index, item } => self
                .stocked
                .lot(*index, *item)
                .is_some_and(|lot| self.left[lot] > NOTHING),
            Target::Unlisted(_) => true,
            Target::Pot | Target::Component(_) => false,
        }
    }

    /// Salt and flour go on a food where it is; on one that is still on the shelf, on a plate with it.
    fn dressing_vessel(&mut self, operation: &Operation) -> usize {
        let mut dressed = None;
        let mut raw = false;
        for food in &operation.foods {
            let Target::Ingredient { index, item } = food.target else {
                continue;
            };
            let Some(lot) = self.stocked.lot(index, item) else {
                continue;
            };
            let is_food = self.is_solid(lot);
            let found = self.where_is(lot).first().copied();
            raw |= is_food && found.is_none() && self.left[lot] > NOTHING;
            dressed = dressed.or(found.filter(|_| is_food));
        }
        match dressed {
            Some(vessel) => vessel,
            None if raw => self.implied("board", Style::Hold),
            None => self.working_vessel(operation),
        }
    }

    /// What is left to soak, stand or cool: where it is, or in a new bowl when it comes from the shelf.
    fn waiting_vessel(&mut self, operation: &Operation) -> usize {
        let from_shelf = operation
            .foods
            .iter()
            .any(|food| self.on_shelf(&food.target) && !is_water(self, &food.target));
        if from_shelf {
            self.implied("bowl", Style::Hold)
        } else {
            self.working_vessel(operation)
        }
    }

    /// A vessel that the page does not name.
    pub(super) fn implied(&mut self, name: &str, style: Style) -> usize {
        if style != Style::Hold {
            self.assume(format!("The page names no vessel here: a {name} is taken."));
        }
        self.take_out(name, style)
    }

    /// Whether a vessel holds enough that pours to be boiled or simmered in.
    pub(super) fn is_wet(&self, vessel: usize) -> bool {
        self.liquid_kg(vessel) > WET * self.mass_kg(vessel)
    }
}

/// Whether a target is water.
fn is_water(bench: &Bench, target: &Target) -> bool {
    match target {
        Target::Unlisted(name) => share_a_word(name, "water"),
        Target::Ingredient { index, item } => bench
            .stocked
            .lot(*index, *item)
            .and_then(|lot| bench.stocked.lots.get(lot))
            .is_some_and(|lot| lot.kind == potwright_larder::Kind::Water && lots::is_liquid(lot)),
        _ => false,
    }
}
