//! Where a vessel is put, and what that does: burner and plate, the oven and its door, a lid that is locked or opened.

use potwright_manuscript::Cover;

use crate::cook::conditions::Conditions;
use crate::cook::vessel::VesselState;
use crate::cook::{Run, practice, vessels_of};
use crate::{Act, Aim, Doing, Happening, OvenHeated, Place, PotKind, Stretch};

impl Run<'_> {
    /// What is done to a vessel under pressure opens it; what is done to one in the oven opens the oven's door.
    pub(super) fn open_up(&mut self, act: &Act) {
        if matches!(act.doing, Doing::Cook(_)) {
            return;
        }
        for vessel in vessels_of(act) {
            let Some(state) = self.vessels.get_mut(vessel) else {
                continue;
            };
            state.open(&self.cond, &mut self.ledger);
            if state.place == Place::Oven {
                self.cond.oven.open_door(self.cond.room_c);
            }
        }
    }

    /// Turns the oven for a vessel that goes in, stays in or comes out. What goes in goes into a hot oven.
    fn see_to_oven(&mut self, act: usize, vessel: usize, stretch: &Stretch) {
        let room_c = self.cond.room_c;
        let inside = |state: &VesselState| state.place == Place::Oven && !state.aside && !state.is_empty();
        let was_in = self.vessels[vessel].place == Place::Oven;
        let others = (0..self.vessels.len()).any(|other| other != vessel && inside(&self.vessels[other]));
        let oven = &mut self.cond.oven;
        if stretch.place == Place::Oven {
            oven.turn(match stretch.aim {
                Aim::Oven(t) | Aim::Hold(t) => Some(t.celsius()),
                Aim::Off => None,
                _ => Some(practice::USUAL_OVEN_C),
            });
            if !was_in {
                if let Some((takes_s, to_c)) = (!others).then(|| oven.heat_up(room_c)).flatten() {
                    self.ovens.push(OvenHeated {
                        act,
                        hot_s: self.time_s,
                        takes_s,
                        to_c,
                    });
                }
                oven.open_door(room_c);
            }
        } else if was_in {
            oven.open_door(room_c);
            if !others {
                oven.turn(None);
            }
        }
    }

    /// Puts a vessel where a stretch wants it and turns its heat.
    pub(super) fn place(&mut self, act: usize, vessel: usize, stretch: &Stretch) {
        self.see_to_oven(act, vessel, stretch);
        let own_fire = self.vessels[vessel].measures.kind == PotKind::SlowCooker;
        if stretch.place == Place::Hob && self.vessels[vessel].burner.is_none() && !own_fire {
            let taken: Vec<usize> = self.vessels.iter().filter_map(|state| state.burner).collect();
            let free = (0..self.cond.burner_w.len()).find(|burner| !taken.contains(burner));
            self.vessels[vessel].burner = free;
            if free.is_none() {
                self.note(act, vessel, Happening::NotEnoughHeat);
            }
        }
        let state = &mut self.vessels[vessel];
        if stretch.place != Place::Hob {
            state.burner = None;
        }
        match stretch.aim {
            Aim::Pressure(word) => state.sealed = Some(word),
            // Off the heat with its lid on the pressure falls by itself.
            Aim::Off if stretch.cover == Cover::On => {}
            _ => state.open(&self.cond, &mut self.ledger),
        }
        state.place = stretch.place;
        state.aim = stretch.aim;
        state.cover = stretch.cover;
        state.light(&self.cond);
        // A page that says nothing of batches has as many as the pan needs.
        let (said, layers) = (stretch.batches.clamp(1, 100), state.layers(&self.cond));
        state.turns = f64::from(if said == 1 { layers } else { said });
        if let Aim::Setting(word) | Aim::Fry(word) = stretch.aim {
            let share = practice::setting_share(word).map(|share| share * self.cond.setting);
            let before = if state.setting > 0.0 { state.setting } else { 0.7 };
            state.setting = share.unwrap_or(before * practice::LOWER).clamp(0.0, 1.0);
        } else {
            state.setting = 1.0;
        }
        state.watch.browned = 0.0;
        state.watch.wet_s = 0.0;
        state.watch.crowded = false;
        state.disturb();
        if layers > said {
            self.note(act, vessel, Happening::TooMuchForThePan { batches: layers });
        }
    }
}

impl VesselState {
    /// Puts it over its burner: how much plate and base hold back there. The textbook pot holds nothing.
    fn light(&mut self, cond: &Conditions) {
        let lag_s = self.burner.and_then(|index| cond.burner_lag_s.get(index));
        match lag_s {
            Some(lag_s) if cond.losses => self.fire.plate.lag_s = *lag_s,
            Some(_) => {}
            None => self.fire.lift(),
        }
        // A pan that fries is as hot as what lies in it.
        let soaks = self.place == Place::Hob && !self.fries() && cond.losses;
        self.fire.base.lag_s = if soaks { self.measures.base_lag_s } else { 0.0 };
    }
}
