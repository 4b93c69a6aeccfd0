//! Verbs of heat and time as stretches.

use potwright_larder::Kind;
use potwright_manuscript::{Cover, HeatWord, Operation, Verb};
use potwright_measure::{Spread, Temperature};

use super::bench::Bench;
use super::cues::{self, Sight, Sign};
use super::place::Site;
use super::verbs::{self, Class, Manner, Way};
use super::vessels::{self, Style};
use super::words::has;
use crate::{Aim, Cue, Doing, Lasts, Part, Place, Stretch};

/// What an oven is set to when the page never says (common practice, no source; 160–200 °C).
const USUAL_OVEN_C: f64 = 180.0;

/// A grill, as an oven (common practice, no source; 220–260 °C).
const GRILL_C: f64 = 240.0;

/// Food is kept hot at this (FDA Food Code 3-501.16: 57 °C or above; a few degrees on top are common practice).
const KEEP_HOT_C: f64 = 65.0;

/// A night: from the evening to the next day, minutes (common practice, no source).
const NIGHT: Spread = Spread {
    low: 480.0,
    mid: 600.0,
    high: 840.0,
};

/// Soaking what is not dried pulses or grain: minutes (common practice, no source).
const SHORT_SOAK: Spread = Spread {
    low: 5.0,
    mid: 10.0,
    high: 20.0,
};

impl Bench<'_> {
    /// A verb of heat: foods go in, then time passes.
    pub(super) fn cook(&mut self, operation: &Operation, manner: &Manner) {
        if self.preheats(operation) {
            return;
        }
        if self.is_from_end(operation) {
            self.cook_at_the_end(operation);
            return;
        }
        let site = self.site(operation, manner.class, manner.way);
        let vessel = self.fit_for_heat(&site, manner, operation);
        let named = self.bring(operation, vessel);
        self.here = Some(vessel);
        self.fire = Some(vessel);
        let place = self.place_for(&site, manner, operation);
        let heat = self.heat_for(vessel, operation, manner);
        let aim = self.aim(vessel, place, heat, operation, manner);
        self.stretch(vessel, place, aim, operation, manner, &named);
        let held = &mut self.held[vessel];
        held.heat = heat.or(held.heat);
    }

    /// 'Heat the oven to 150': nothing but a setting.
    fn preheats(&mut self, operation: &Operation) -> bool {
        let words = self.words();
        let oven = has(&words, "oven") || has(&words, "grill") || has(&words, "broiler");
        let heats = matches!(operation.verb, Verb::Heat | Verb::Bake) && operation.minutes.is_none();
        let hot = operation
            .temperature
            .map(potwright_measure::WrittenTemperature::temperature);
        let no_food = operation
            .foods
            .iter()
            .all(|food| !matches!(food.target, potwright_manuscript::Target::Ingredient { .. }));
        if !(oven && heats && no_food && operation.cue.is_none()) {
            return false;
        }
        self.oven = hot.filter(|t| !cues::is_of_food(t.celsius())).or(self.oven);
        true
    }

    /// 'For the last half hour': the stretch before is divided.
    fn is_from_end(&self, operation: &Operation) -> bool {
        operation.minutes.as_ref().is_some_and(|minutes| minutes.from_end)
            && self.fire.is_some_and(|fire| self.last_stretch(fire).is_some())
    }

    fn cook_at_the_end(&mut self, operation: &Operation) {
        let Some(fire) = self.fire else { return };
        let minutes = operation
            .minutes
            .as_ref()
            .map_or(0.0, |minutes| f64::midpoint(minutes.low, minutes.high));
        let cover = operation.cover;
        self.at_the_end(fire, minutes, |bench| {
            bench.bring(operation, fire);
            bench.held[fire].cover = cover.or(bench.held[fire].cover);
        });
    }

    /// The last act of a vessel when it is a stretch with minutes.
    fn last_stretch(&self, vessel: usize) -> Option<usize> {
        let last = self
            .acts
            .iter()
            .rposition(|act| act.vessel == vessel && matches!(act.doing, Doing::Cook(_)))?;
        match &self.acts[last].doing {
            Doing::Cook(stretch) if stretch.lasts.minutes.is_some() => Some(last),
            _ => None,
        }
    }

    /// Does something so many minutes before the last stretch of a vessel ends: the stretch is divided there.
    pub(super) fn at_the_end(&mut self, vessel: usize, minutes: f64, work: impl FnOnce(&mut Self)) {
        let Some(last) = self.last_stretch(vessel) else {
            work(self);
            return;
        };
        let mut tail = self.acts[last].clone();
        let (mut before, mut after) = (None, None);
        if let Doing::Cook(stretch) = &mut self.acts[last].doing
            && let Some(whole) = stretch.lasts.minutes
            && minutes.is_finite()
        {
            let late = minutes.clamp(0.0, whole.mid);
            let early = |end: f64| (end - late).max(0.0);
            stretch.lasts.minutes = Some(Spread {
                low: early(whole.low),
                mid: early(whole.mid),
                high: early(whole.high),
            });
            before = stretch.lasts.cue.take();
            after = Some(Spread::exact(late));
        }
        work(self);
        if let Doing::Cook(stretch) = &mut tail.doing {
            stretch.lasts = Lasts {
                minutes: after,
                cue: before,
            };
            stretch.cover = self.held[vessel].cover.unwrap_or(stretch.cover);
            self.act(vessel, Doing::Cook(stretch.clone()));
        }
    }

    /// A vessel that can go on the fire or into the oven: what is in a bowl goes into one first.
    fn fit_for_heat(&mut self, site: &Site, manner: &Manner, operation: &Operation) -> usize {
        let vessel = site.vessel;
        if self.uses[vessel].style != Style::Hold {
            return vessel;
        }
        let oven = manner.way == Some(Way::Oven) || site.place == Some(Place::Oven);
        let known = operation
            .into
            .as_ref()
            .is_some_and(|into| has(&super::words::plain(&into.words.text), "steamer"));
        let (name, style) = if oven {
            ("baking dish", Style::Oven)
        } else {
            ("pan", Style::Pot)
        };
        if known || self.is_empty(vessel) && self.acts.is_empty() {
            self.uses[vessel].style = style;
            return vessel;
        }
        let hot = self.implied(name, style);
        self.transfer(vessel, hot, Part::All);
        hot
    }

    /// Where the vessel stands: what is said, else where it stood, else what the verb asks for.
    fn place_for(&mut self, site: &Site, manner: &Manner, operation: &Operation) -> Place {
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
        self.held[vessel].place = place;
        place
    }

    /// The knob: what is said, else where it was, else what the verb asks for.
    fn heat_for(&self, vessel: usize, operation: &Operation, manner: &Manner) -> Option<HeatWord> {
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
    fn aim(
        &mut self,
        vessel: usize,
        place: Place,
        heat: Option<HeatWord>,
        operation: &Operation,
        manner: &Manner,
    ) -> Aim {
        if place == Place::Oven {
            return Aim::Oven(self.oven_heat(operation));
        }
        let heat = heat.unwrap_or(HeatWord::Medium);
        if heat == HeatWord::Off {
            return Aim::Off;
        }
        let wet = self.is_wet(vessel);
        let guarded = self.held[vessel].guarded;
        let cue = operation
            .cue
            .as_ref()
            .map_or(String::new(), |cue| super::words::plain(&cue.text));
        let to_boil = [
            "boil",
            "boils",
            "boiling",
            "simmer",
            "simmers",
            "bubbling",
            "bubbles",
            "boiling point",
        ];
        let boils = to_boil.iter().any(|word| has(&cue, word) || has(&self.words(), word));
        match manner.way {
            Some(Way::BelowBoil) => Aim::BelowBoil,
            Some(Way::Hold) => Aim::Hold(Temperature::from_celsius(KEEP_HOT_C)),
            Some(Way::Boil) if wet && !guarded => Aim::Boil,
            Some(Way::Boil | Way::Simmer) if guarded => Aim::BelowBoil,
            Some(Way::Simmer) if wet => Aim::Simmer,
            Some(Way::Simmer | Way::Boil) => self.dry(vessel, heat),
            Some(Way::Fry) if !wet => Aim::Fry(heat),
            // 'Cook for ten minutes' over a pot of liquid is a simmer, whatever the verb.
            Some(Way::Fry) if guarded => Aim::BelowBoil,
            Some(Way::Fry) => Aim::Simmer,
            _ if self.is_only_fat(vessel) || !wet => Aim::Fry(heat),
            _ if guarded => Aim::BelowBoil,
            _ if boils => Aim::Boil,
            _ if heat == HeatWord::Low && operation.cue.is_some() => Aim::BelowBoil,
            _ => Aim::Setting(heat),
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
    fn oven_heat(&mut self, operation: &Operation) -> Temperature {
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

    /// Records a stretch: how long, with what lid, in how many batches.
    fn stretch(
        &mut self,
        vessel: usize,
        place: Place,
        aim: Aim,
        operation: &Operation,
        manner: &Manner,
        named: &[usize],
    ) {
        let lasts = self.lasts(vessel, operation, manner, named);
        let cover = self.cover_for(vessel, operation, manner);
        let batches = batches(operation);
        self.held[vessel].aim = Some(aim);
        self.act(
            vessel,
            Doing::Cook(Stretch {
                place,
                aim,
                lasts,
                cover,
                batches,
            }),
        );
    }

    /// Minutes and cue; a default time where neither can be reckoned with.
    pub(super) fn lasts(&mut self, vessel: usize, operation: &Operation, manner: &Manner, named: &[usize]) -> Lasts {
        let words = operation.cue.as_ref().map(|cue| cue.text.clone());
        let sight = Sight {
            verb: operation.verb,
            named,
            inside: &self.inside(vessel),
            lots: &self.stocked.lots,
            held_kg: self.mass_kg(vessel),
        };
        let mut sign = words.as_ref().map_or(
            Sign {
                cue: None,
                instead: None,
            },
            |words| cues::read(words, &sight),
        );
        if sign.cue.is_none() && to_the_boil(operation, &self.words()) {
            sign.cue = Some(Cue::Boils);
        }
        let of_food = operation
            .temperature
            .map(|t| t.temperature())
            .filter(|t| cues::is_of_food(t.celsius()));
        if let Some(reaches) = of_food.filter(|_| !matches!(sign.cue, Some(Cue::Reaches(_)))) {
            sign.cue = Some(Cue::Reaches(reaches));
        }
        let mut minutes = operation
            .minutes
            .as_ref()
            .map(|minutes| times(operation, minutes.low, minutes.high));
        if minutes.is_none() && has(&self.words(), "overnight") {
            minutes = Some(NIGHT);
        }
        let computed = !matches!(sign.cue, None | Some(Cue::Other(_)));
        if minutes.is_none() && !computed {
            minutes = sign.instead.or_else(|| self.usual_minutes(vessel, operation, manner));
            self.note_default(operation, minutes, words.as_deref());
        }
        Lasts { minutes, cue: sign.cue }
    }

    /// The verb's own minutes; soaking is short but for what drinks slowly.
    fn usual_minutes(&self, vessel: usize, operation: &Operation, manner: &Manner) -> Option<Spread> {
        let drinks = |lot: usize| {
            let pieces = self.stocked.lots.get(lot).and_then(|lot| lot.pieces);
            pieces
                .and_then(|pieces| pieces.absorbs)
                .is_some_and(|absorbs| absorbs.soaking_hours.is_some())
        };
        let quick = operation.verb == Verb::Soak && !self.inside(vessel).into_iter().any(drinks);
        if quick { Some(SHORT_SOAK) } else { manner.minutes }
    }

    fn note_default(&mut self, operation: &Operation, minutes: Option<Spread>, cue: Option<&str>) {
        let Some(minutes) = minutes else { return };
        let time = super::amount::tidy(minutes.mid);
        match cue {
            Some(cue) => self.assume(format!("‘Until {cue}’ cannot be computed: {time} minutes stand in.")),
            None => {
                let verb = operation.verb.name().replace('_', " ");
                self.assume(format!("How long to {verb} is not said: {time} minutes are taken."));
            }
        }
    }

    /// The lid: what is said here, in a note to the desk of this step, by the verb, as it was; else off.
    pub(super) fn cover_for(&mut self, vessel: usize, operation: &Operation, manner: &Manner) -> Cover {
        let recipe = self.shelf.recipe;
        let notes = recipe
            .desk_notes
            .iter()
            .filter(|note| note.step == Some(operation.step));
        let noted = notes.filter_map(|note| vessels::lid_in(&note.words.text)).next();
        let cover = operation
            .cover
            .or(noted)
            .or(manner.lid)
            .or(self.held[vessel].cover)
            .unwrap_or(Cover::Off);
        self.held[vessel].cover = Some(cover);
        cover
    }

    /// Time without heat: soaking, standing, cooling, chilling, freezing.
    pub(super) fn wait(&mut self, operation: &Operation, manner: &Manner) {
        let site = self.site(operation, manner.class, manner.way);
        let vessel = site.vessel;
        let named = self.bring(operation, vessel);
        if operation.verb == Verb::Soak {
            self.water_for_soaking(vessel);
        }
        self.here = Some(vessel);
        let words = self.words();
        let said = |list: &[&str]| list.iter().any(|word| has(&words, word));
        let place = match site.place {
            Some(place @ (Place::Refrigerator | Place::Freezer | Place::IceBath | Place::Sink)) => place,
            _ if said(&["iced water", "ice water", "ice bath", "ice"]) => Place::IceBath,
            _ if said(&["refrigerator", "fridge", "refrigerate", "chill", "chilled"]) => Place::Refrigerator,
            _ if said(&["freezer", "freeze"]) => Place::Freezer,
            _ if said(&["sink", "cold water"]) && operation.verb == Verb::Cool => Place::Sink,
            _ => match manner.way {
                Some(Way::Refrigerator) => Place::Refrigerator,
                Some(Way::Freezer) => Place::Freezer,
                _ => Place::Counter,
            },
        };
        self.held[vessel].place = place;
        self.held[vessel].heat = None;
        self.stretch(vessel, place, Aim::Off, operation, manner, &named);
    }

    /// A verb that puts something in and goes on cooking for a while: 'stir in the flour and cook', 'add … for 5 minutes'.
    pub(super) fn go_on(&mut self, vessel: usize, operation: &Operation, named: &[usize]) {
        let manner = verbs::manner(Verb::Heat);
        let simmer = verbs::manner(Verb::Simmer);
        let before = self.held[vessel].aim;
        let heat = self.heat_for(vessel, operation, &manner).unwrap_or(HeatWord::Medium);
        let place = self.held[vessel].place;
        let aim = match before {
            Some(Aim::Oven(t)) if place == Place::Oven => Aim::Oven(t),
            _ if self.uses[vessel].style == Style::Hold => Aim::Off,
            Some(Aim::BelowBoil) => Aim::BelowBoil,
            _ if self.held[vessel].guarded => Aim::BelowBoil,
            Some(Aim::Boil) if self.is_wet(vessel) => Aim::Boil,
            _ if self.is_wet(vessel) => Aim::Simmer,
            _ => Aim::Fry(heat),
        };
        let place = if aim == Aim::Off { Place::Counter } else { place };
        self.stretch(
            vessel,
            place,
            aim,
            operation,
            &Manner {
                lid: None,
                class: Class::Cook,
                ..simmer
            },
            named,
        );
        self.held[vessel].heat = Some(heat);
    }
}

/// The minutes as written, low to high; for each side, twice.
fn times(operation: &Operation, low: f64, high: f64) -> Spread {
    let sides = operation.repeat.as_ref().filter(|repeat| per_side(&repeat.words.text));
    let factor = sides.map_or(1.0, |repeat| f64::from(repeat.times.unwrap_or(2).clamp(1, 6)));
    let sound = |minutes: f64| {
        if minutes.is_finite() {
            minutes.clamp(0.0, 60_000.0)
        } else {
            0.0
        }
    };
    let (low, high) = (sound(low.min(high)) * factor, sound(low.max(high)) * factor);
    Spread {
        low,
        mid: f64::midpoint(low, high),
        high,
    }
}

fn per_side(words: &str) -> bool {
    let hay = super::words::plain(words);
    has(&hay, "side") || has(&hay, "sides")
}

/// In how many batches; two when 'in batches' does not say.
fn batches(operation: &Operation) -> u32 {
    let Some(repeat) = &operation.repeat else { return 1 };
    let hay = super::words::plain(&repeat.words.text);
    let in_batches = has(&hay, "batch") || has(&hay, "batches");
    if in_batches {
        repeat.times.unwrap_or(2).clamp(1, 20)
    } else {
        1
    }
}

/// 'Bring to the boil' is a stretch that ends when it boils.
fn to_the_boil(operation: &Operation, words: &str) -> bool {
    let brings = matches!(operation.verb, Verb::Heat | Verb::Boil | Verb::Simmer | Verb::Reheat);
    let to = [
        "to the boil",
        "to a boil",
        "to boil",
        "to a simmer",
        "to the simmer",
        "to boiling point",
        "to a rolling boil",
    ];
    brings && operation.minutes.is_none() && to.iter().any(|said| has(words, said))
}
