//! What a run writes down: samples, events, what comes of the dish.

use crate::cook::practice;
use crate::cook::vessel::VesselState;
use crate::cook::{Run, Served};
use crate::{Aim, Event, Happening, Matter, Sample, ServedPieces, Stuff, Trace, VesselSample};
use potwright_measure::Duration;

impl Run<'_> {
    /// Notes an event now.
    pub(super) fn note(&mut self, act: usize, vessel: usize, what: Happening) {
        self.events.push(Event {
            time_s: self.time_s,
            vessel,
            act,
            what,
        });
    }

    /// Writes down how things stand now, once at any moment.
    pub(super) fn sample(&mut self, act: usize) {
        self.catch_up_all();
        if self
            .samples
            .last()
            .is_some_and(|last| last.time_s >= self.time_s && last.act == act)
        {
            self.samples.pop();
        }
        let vessels: Vec<VesselSample> = self
            .vessels
            .iter()
            .enumerate()
            .filter(|(_, state)| !state.is_empty())
            .map(|(index, state)| state.sample(index))
            .collect();
        for state in &mut self.vessels {
            if !state.is_empty() {
                if state.is_broth() && state.sealed.is_none() {
                    state.watch.boiling_c = state.watch.boiling_c.max(state.boil_c);
                }
                for group in &mut state.groups {
                    group.centre.push((self.time_s, group.centre_c()));
                }
            }
        }
        self.samples.push(Sample {
            time_s: self.time_s,
            act,
            vessels,
        });
    }

    /// Looks at a vessel after a step for what a cook would notice.
    pub(super) fn notice(&mut self, vessel: usize, dt_s: f64) {
        let act = self.act_of(vessel);
        let state = &mut self.vessels[vessel];
        state.brown(dt_s, self.cond.browning_s);
        for what in state.noticed(dt_s, &self.cond) {
            self.note(act, vessel, what);
        }
        self.notice_curdling(act, vessel);
    }

    /// The dish as it is now.
    pub(super) fn dish(&self) -> Served {
        let Some(state) = self.vessels.get(self.process.dish_vessel) else {
            return Served::default();
        };
        let mut pieces: Vec<ServedPieces> = Vec::new();
        for group in &state.groups {
            match pieces.iter_mut().find(|other| other.lot == group.lot) {
                Some(other) => {
                    other.matter.add(&group.matter);
                    other.inedible_kg += group.inedible_kg;
                    other.centre_c = other.centre_c.min(group.centre_c());
                }
                None => pieces.push(ServedPieces {
                    lot: group.lot,
                    matter: group.matter,
                    inedible_kg: group.inedible_kg,
                    centre_c: group.centre_c(),
                }),
            }
        }
        Served {
            liquid: state.liquid,
            pieces,
            temp_c: state.shown_c(),
            volume_l: 1000.0 * state.volume_m3(),
        }
    }

    /// Closes the books and hands the trace over.
    pub(super) fn into_trace(mut self) -> Trace {
        let served = self.served.take().unwrap_or_else(|| self.dish());
        let last_act = self.process.acts.len().saturating_sub(1);
        for index in 0..self.vessels.len() {
            self.close_cooling(index, last_act);
        }
        for state in &self.vessels {
            self.ledger.in_vessels.add(&state.liquid);
            self.ledger.in_vessels_j += state.heat_j + state.fire.base.held_j;
            for group in &state.groups {
                self.ledger.in_vessels.add(&group.matter);
                self.ledger.inedible_in_vessels_kg += group.inedible_kg;
                self.ledger.in_vessels_j += group.heat_j;
                self.pieces.extend(group.trace());
            }
        }
        self.pieces.sort_by_key(|piece| piece.lot);
        let preparation: f64 = self
            .process
            .lots
            .iter()
            .map(|lot| finite(lot.preparation.seconds()))
            .sum();
        let hands: f64 = self.acts.iter().map(|act| act.hands_s).sum();
        let boiling_c = self
            .vessels
            .get(self.process.dish_vessel)
            .map_or(0.0, |state| state.watch.boiling_c)
            .max(self.cond.boiling_c);
        Trace {
            lot_kg: self.lot_kg,
            samples: self.samples,
            acts: self.acts,
            events: self.events,
            pieces: self.pieces,
            coolings: self.coolings,
            ovens: self.ovens,
            served_liquid: served.liquid,
            served_pieces: served.pieces,
            served_c: served.temp_c,
            served_volume_l: served.volume_l,
            ledger: self.ledger,
            elapsed: Duration::from_seconds(self.time_s),
            hands_on: Duration::from_seconds(preparation + hands),
            boiling_c,
        }
    }
}

fn finite(value: f64) -> f64 {
    if value.is_finite() { value.max(0.0) } else { 0.0 }
}

impl VesselState {
    fn sample(&self, vessel: usize) -> VesselSample {
        let liquid = self.liquid.total_kg();
        let per_liquid = |kg: f64| if liquid > 0.0 { kg / liquid } else { 0.0 };
        let volume_m3 = self.volume_m3();
        VesselSample {
            vessel,
            temp_c: self.shown_c(),
            mass_kg: self.mass_kg(),
            volume_l: 1000.0 * volume_m3,
            level: self.level(volume_m3),
            liquid_salinity: per_liquid(self.liquid.kg(Stuff::Salt)),
            gelatinised: per_liquid(self.liquid.kg(Stuff::GelatinisedStarch)),
            heat_w: self.heat_in_w(),
        }
    }

    fn heat_in_w(&self) -> f64 {
        if self.place == crate::Place::Oven {
            (-self.exchange.loss(self.temp_c).0).max(0.0)
        } else {
            self.power_w
        }
    }

    fn level(&self, volume_m3: f64) -> f64 {
        if self.measures.known {
            volume_m3 / (self.measures.area_m2 * self.measures.height_m)
        } else {
            0.0
        }
    }

    /// What is new since the last step.
    fn noticed(&mut self, dt_s: f64, cond: &super::Conditions) -> Vec<Happening> {
        let mut new = Vec::new();
        let boils = self.boils();
        if boils && !self.watch.boiled {
            self.watch.boiled = true;
            if !self.fries() && self.sealed.is_none() {
                new.push(Happening::Boiled);
            }
        }
        // Coming down from a boil is not boiling again.
        self.watch.calm |= self.aim == Aim::BelowBoil && self.temp_c < self.boil_c - 2.0;
        if boils && self.aim == Aim::BelowBoil && std::mem::take(&mut self.watch.calm) {
            new.push(Happening::BoiledThoughForbidden);
        }
        if !boils && self.temp_c < self.boil_c - 10.0 {
            self.watch.boiled = false;
        }
        let had_broth = self.watch.most_water_kg > practice::BROTH_KG && !self.fries();
        if had_broth && !self.watch.dry && self.water_kg() < 0.002 && self.temp_c >= self.boil_c - 1.0 {
            self.watch.dry = true;
            new.push(Happening::BoiledDry);
        }
        new.extend(self.too_full());
        new.extend(self.crowded(dt_s, cond));
        new
    }

    /// A level past what the heat allows; told again only when it is a tenth worse.
    fn too_full(&mut self) -> Option<Happening> {
        let limit = match self.aim {
            Aim::Pressure(_) if self.groups.iter().any(|group| group.habits.uptake.is_some()) => practice::FULL_FOAMING,
            Aim::Boil | Aim::Pressure(_) => practice::FULL_BOIL,
            Aim::Simmer | Aim::BelowBoil | Aim::Setting(_) | Aim::Oven(_) => practice::FULL_SIMMER,
            Aim::Fry(_) | Aim::Hold(_) | Aim::Off => practice::FULL,
        };
        // What lies dry on a sheet stands over its rim and spills nothing.
        if self.in_oven_air() {
            return None;
        }
        let level = self.level(self.volume_m3());
        let worse = level > limit && level > 1.1 * self.watch.too_full;
        worse.then(|| {
            self.watch.too_full = level;
            Happening::TooFull(level)
        })
    }
}

impl Run<'_> {
    /// Ends the following of a cooling and tells of it.
    pub(super) fn close_cooling(&mut self, vessel: usize, act: usize) {
        if let Some(follow) = self.vessels[vessel].cooling.take() {
            self.coolings.extend(follow.tell(vessel, act));
        }
    }

    pub(super) fn close_cooling_if_empty(&mut self, vessel: usize) {
        if self.vessels[vessel].is_empty() {
            let act = self.act_of(vessel);
            self.close_cooling(vessel, act);
        }
    }
}

/// Nothing served.
impl Default for Served {
    fn default() -> Self {
        Served {
            liquid: Matter::nothing(),
            pieces: Vec::new(),
            temp_c: 0.0,
            volume_l: 0.0,
        }
    }
}
