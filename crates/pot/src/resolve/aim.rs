//! What the cook aims at: where the vessel stands, how the knob is set, what is to happen in it.

use potwright_larder::Kind;
use potwright_manuscript::{HeatWord, Operation, Verb};
use potwright_measure::Temperature;

use super::bench::Bench;
use super::cues;
use super::place::Site;
use super::verbs::{self, Manner, Way};
use super::vessels::Style;
use super::words::{has, plain};
use crate::{Aim, Place};

/// What an oven is set to when the page never says (common practice, no source; 160–200 °C).
const USUAL_OVEN_C: f64 = 180.0;

/// A grill, as an oven (common practice, no source; 220–260 °C).
const GRILL_C: f64 = 240.0;

/// Food is kept hot at this (FDA Food Code 3-501.16: 57 °C or above; a few degrees on top are common practice).
const KEEP_HOT_C: f64 = 65.0;

/// Words of a cue that mean the boil.
const BOILS: [&str; 8] = [
    "boil",
    "boils",
    "boiling",
    "simmer",
    "simmers",
    "bubbling",
    "bubbles",
    "boiling point",
];

impl Bench<'_> {
    /// Where the vessel stands: what is said, else where it stood, else what the verb asks for.
    pub(super) fn place_for(&mut self, site: &Site, manner: &Manner, operation: &Operation) -> Place {
        let vessel = site.vessel.min(self.held.len().saturating_sub(1));
        let vessel = self.here.unwrap_or(vessel);
        let words = self.words();
        let oven_heat = operation
            .temperature
            .is_some_and(|t| !cues::is_of_food(t.temperature().celsius()) && manner.way != Some(Way::Fry));
        let in_oven = site.place == Some(Place::Oven)
            || has(&words, "oven") && !has(&words, "dutch oven")
            || manner.way == Some(Way::Oven)
            || oven_heat;
        let on_hob = site.place == Some(Place::Hob)
            || operation.heat.is_some()
            || ["hob", "stove", "burner"].iter().any(|word| has(&words, word));
        let stays = self.held[vessel].place == Place::Oven && matches!(manner.way, Some(Way::Simmer | Way::Setting));
        let oven_dish = self.uses[vessel].style == Style::Oven && !on_hob;
        let place = if in_oven || (!on_hob && (stays || oven_dish)) {
            Place::Oven
        } else {
            Place::Hob
        };
        let held = &mut self.held[vessel];
        if held.place != place {
            held.cover = None;
        }
        held.place = place;
        place
    }

    /// The knob: what is said, else where it was, else what the verb asks for.
    pub(super) fn heat_for(&self, vessel: usize, operation: &Operation, manner: &Manner) -> Option<HeatWord> {
        let before = self.held[vessel].heat;
        let words = self.words();
        let gently = ["gently", "very gently", "slowly"].iter().any(|word| has(&words, word));
        match operation.heat {
            Some(HeatWord::Lower) => Some(verbs::lower(before.unwrap_or(HeatWord::Medium))),
            Some(heat) => Some(heat),
            None if gently => Some(HeatWord::Low),
            // Browning and the rest of frying keep the knob where the last words put it.
            None if matches!(manner.way, Some(Way::Fry | Way::Setting)) => before.or(manner.heat),
            None => manner.heat,
        }
    }

    /// What the cook aims at.
    pub(super) fn aim(
        &mut self,
        vessel: usize,
        place: Place,
        heat: Option<HeatWord>,
        operation: &Operation,
        manner: &Manner,
    ) -> Aim {
        if place == Place::Oven {
            let to = self.oven_heat(operation);
            self.light_oven(to);
            return Aim::Oven(to);
        }
        if let Some(aim) = self.special_aim(vessel, operation, manner) {
            return aim;
        }
        let heat = heat.unwrap_or(HeatWord::Medium);
        if heat == HeatWord::Off {
            return Aim::Off;
        }
        let wet = self.is_wet(vessel);
        let boils = self.is_to_boil(operation, manner);
        // A boil that is asked for ends what was forbidden before.
        self.held[vessel].guarded &= !boils;
        let guarded = self.held[vessel].guarded;
        match manner.way {
            Some(Way::BelowBoil) => Aim::BelowBoil,
            Some(Way::Hold) => Aim::Hold(Temperature::from_celsius(KEEP_HOT_C)),
            _ if boils && self.liquid_kg(vessel) > 0.0 => Aim::Boil,
            Some(Way::Fry) if !wet => Aim::Fry(heat),
            Some(Way::Simmer | Way::Boil) if !wet => self.dry(vessel, heat),
            _ if !wet => Aim::Fry(heat),
            _ if guarded => Aim::BelowBoil,
            Some(Way::Simmer) if matches!(operation.heat, Some(HeatWord::High | HeatWord::MediumHigh)) => Aim::Boil,
            // 'Cook for ten minutes' over a pot of liquid is a simmer, whatever the verb.
            Some(Way::Fry | Way::Simmer | Way::Boil) => Aim::Simmer,
            _ if heat == HeatWord::Low && operation.cue.is_some() => Aim::BelowBoil,
            _ => Aim::Setting(heat),
        }
    }

    /// Whether a boil is asked for: the verb, or 'bring to the boil', 'to a simmer'.
    fn is_to_boil(&self, operation: &Operation, manner: &Manner) -> bool {
        let cue = operation.cue.as_ref().map_or(String::new(), |cue| plain(&cue.text));
        let brought = operation.minutes.is_none() && BOILS.iter().any(|word| has(&cue, word));
        match manner.way {
            Some(Way::Boil) => true,
            Some(Way::Setting | Way::Simmer) => brought,
            _ => false,
        }
    }

    /// A simmer or boil with next to nothing that pours: pieces that give off water, as mussels do, or a fry.
    fn dry(&self, vessel: usize, heat: HeatWord) -> Aim {
        let inside = self.inside(vessel);
        let gives_water = |lot: &usize| {
            let kind = self.stocked.lots.get(*lot).map(|lot| lot.kind);
            matches!(kind, Some(Kind::Shellfish | Kind::Fruit | Kind::Leaf))
        };
        if inside.iter().any(gives_water) || self.liquid_kg(vessel) > 0.0 {
            Aim::Simmer
        } else {
            Aim::Fry(heat)
        }
    }

    /// The oven's heat: what is said here, what it was heated to before, or the usual.
    pub(super) fn oven_heat(&mut self, operation: &Operation) -> Temperature {
        let said = operation
            .temperature
            .map(|t| t.temperature())
            .filter(|t| !cues::is_of_food(t.celsius()));
        if let Some(said) = said {
            self.oven = Some(said);
            return said;
        }
        if operation.verb == Verb::Broil {
            return Temperature::from_celsius(GRILL_C);
        }
        let before = self.oven;
        before.unwrap_or_else(|| {
            self.assume(format!(
                "How hot the oven is, is not said: {USUAL_OVEN_C:.0} °C is taken."
            ));
            Temperature::from_celsius(USUAL_OVEN_C)
        })
    }
}
