//! Verbs of heat and time as stretches.

use potwright_manuscript::{HeatWord, Operation, Verb};
use potwright_measure::Spread;

use super::bench::Bench;
use super::cues::{self};
use super::place::Site;
use super::verbs::{self, Class, Manner, Way};
use super::vessels::Style;
use super::words::has;
use crate::{Aim, Doing, Lasts, Part, Place, Stretch};

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
        if matches!(aim, Aim::Pressure(_)) && operation.minutes.is_some() {
            self.let_pressure_off(vessel, operation);
        }
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
        self.oven_lit = true;
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
        let (lasts, assumed) = self.lasts(vessel, operation, manner, named);
        let cover = self.cover_for(vessel, operation, manner);
        let batches = super::lasts::batches(operation);
        self.held[vessel].aim = Some(aim);
        self.act(
            vessel,
            Doing::Cook(Stretch {
                place,
                aim,
                lasts,
                cover,
                assumed,
                batches,
            }),
        );
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
        let mut taken = false;
        let place = match site.place {
            Some(place @ (Place::Refrigerator | Place::Freezer | Place::IceBath | Place::Sink)) => place,
            _ if said(&["iced water", "ice water", "ice bath", "ice"]) => Place::IceBath,
            _ if said(&["refrigerator", "fridge", "refrigerate", "chill", "chilled"]) => Place::Refrigerator,
            _ if said(&["freezer", "freeze"]) => Place::Freezer,
            _ if said(&["sink", "cold water"]) && operation.verb == Verb::Cool => Place::Sink,
            _ => match manner.way {
                Some(Way::Refrigerator) => Place::Refrigerator,
                Some(Way::Freezer) => Place::Freezer,
                _ => {
                    // What rests stands where it is; what is cooled may be anywhere.
                    taken = operation.verb == Verb::Cool;
                    Place::Counter
                }
            },
        };
        self.held[vessel].place = place;
        self.held[vessel].heat = None;
        self.stretch(vessel, place, Aim::Off, operation, manner, &named);
        if let Some(Doing::Cook(stretch)) = self.acts.last_mut().map(|act| &mut act.doing) {
            stretch.assumed |= taken;
        }
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
