//! What the cook does at one moment: adding, moving, throwing away, puréeing, skimming, serving.

use crate::cook::Run;
use crate::cook::curdle::Fragile;
use crate::cook::group::{Group, Shaped, entry_c};
use crate::cook::practice;
use crate::cook::vessel::VesselState;
use crate::physics::gelatinisation;
use crate::physics::properties::HeatContent;
use crate::{FatOff, Happening, Lot, Matter, Part, Pieces, Place, Portion, Stuff};

/// What is taken out of a vessel.
pub(super) struct Taken {
    liquid: Matter,
    liquid_j: f64,
    gel: gelatinisation::Range,
    fragile: Fragile,
    /// Liquid that went or stayed with pieces because it clings to them, kilograms.
    clings_kg: f64,
    groups: Vec<Group>,
}

impl<'a> Run<'a> {
    /// A lot's share in this run: its matter and bones.
    fn portion(&self, portion: &Portion) -> Option<(&'a Lot, Matter, f64)> {
        let lot = self.process.lots.get(portion.lot)?;
        let kg = *self.lot_kg.get(portion.lot)?;
        let left = 1.0 - self.added.get(portion.lot)?;
        let share = if portion.share.is_finite() {
            portion.share.clamp(0.0, left.max(0.0))
        } else {
            return None;
        };
        let inedible = lot.inedible.kilograms().max(0.0);
        let whole = lot.matter.total_kg() + inedible;
        if !lot.matter.is_sound() || !whole.is_finite() {
            return None;
        }
        let matter = if whole > 0.0 {
            lot.matter.scaled(kg * share / whole)
        } else {
            Matter::of(Stuff::Water, kg * share)
        };
        let bones = if whole > 0.0 {
            inedible * (kg * share / whole)
        } else {
            0.0
        };
        Some((lot, matter, bones))
    }

    /// Shares of lots go in.
    pub(super) fn add(&mut self, act: usize, vessel: usize, portions: &[Portion]) {
        self.take_into_use(vessel);
        for portion in portions {
            let Some((lot, matter, bones)) = self.portion(portion) else {
                self.note(
                    act,
                    vessel,
                    Happening::LeftOut(format!("lot {} cannot be added", portion.lot)),
                );
                continue;
            };
            if matter.total_kg() + bones <= 0.0 {
                continue;
            }
            let temp_c = entry_c(lot, &self.cond);
            let state = &mut self.vessels[vessel];
            let ledger = &mut self.ledger;
            let mut joules = 0.0;
            match &lot.pieces {
                Some(pieces) => {
                    let group = Group::new(portion.lot, lot, pieces, matter, bones, &self.cond);
                    joules += group.heat_j;
                    state.groups.push(group);
                }
                None => {
                    joules += HeatContent::of(&matter)
                        .with_capacity(bones * practice::BONE_J_KG_K)
                        .enthalpy(temp_c);
                    let range = gelatinisation::range(lot.starch);
                    state.gel = state
                        .gel
                        .mixed(state.liquid.kg(Stuff::Starch), range, matter.kg(Stuff::Starch));
                    state.liquid.add(&matter);
                    state.fragile.add(Fragile::of(lot, &matter));
                    state.heat_j += joules;
                }
            }
            ledger.put_in.add(&matter);
            ledger.inedible_in_kg += bones;
            ledger.enthalpy_in_j += joules;
            self.added[portion.lot] += portion.share.clamp(0.0, 1.0);
        }
        self.refresh(vessel);
    }

    /// Books a vessel's metal when it comes into use, at the temperature of the room; one emptied earlier has cooled.
    fn take_into_use(&mut self, vessel: usize) {
        let room_c = self.cond.room_c;
        let state = &mut self.vessels[vessel];
        if !state.in_use {
            state.in_use = true;
            state.temp_c = room_c;
            state.heat_j = state.measures.metal_j_k * room_c;
            self.ledger.vessels_in_j += state.heat_j;
        } else if let (true, Some(since)) = (state.is_empty(), state.emptied_s) {
            let left = libm::exp(-(self.time_s - since).max(0.0) / practice::EMPTY_COOLS_S);
            let cold_j = state.measures.metal_j_k * room_c;
            let lost = (state.heat_j - cold_j) * (1.0 - left);
            state.heat_j -= lost;
            self.ledger.room_j += lost;
        }
        if self.vessels[vessel].is_empty() {
            self.vessels[vessel].emptied_s = None;
            self.refresh(vessel);
        }
    }

    /// After something was put in or taken out.
    pub(super) fn refresh(&mut self, vessel: usize) {
        let state = &mut self.vessels[vessel];
        state.settle(&self.cond);
        state.disturb();
        state.watch.most_water_kg = state.watch.most_water_kg.max(state.water_kg());
        if state.water_kg() > 0.05 {
            state.watch.dry = false;
        }
        state.mix();
    }

    /// Contents go to another vessel.
    pub(super) fn transfer(&mut self, act: usize, from: usize, to: usize, what: &Part) {
        if to >= self.vessels.len() {
            self.note(act, from, Happening::LeftOut(format!("vessel {to} does not exist")));
            return;
        }
        if from == to {
            return;
        }
        self.take_into_use(to);
        let mut taken = self.take(from, what);
        self.note_clinging(act, from, &taken);
        if *what == Part::All {
            self.leave_behind(from, &mut taken);
        }
        let state = &mut self.vessels[to];
        state.gel = state.gel.mixed(
            state.liquid.kg(Stuff::Starch),
            taken.gel,
            taken.liquid.kg(Stuff::Starch),
        );
        state.fragile.add(taken.fragile);
        state.liquid.add(&taken.liquid);
        state.heat_j += taken.liquid_j;
        state.groups.extend(taken.groups);
        self.refresh(to);
        self.emptied(from);
    }

    /// Contents are thrown away.
    pub(super) fn discard(&mut self, act: usize, vessel: usize, what: &Part) {
        let taken = self.take(vessel, what);
        self.note_clinging(act, vessel, &taken);
        self.ledger.discarded.add(&taken.liquid);
        self.ledger.discarded_j += taken.liquid_j;
        for group in taken.groups {
            self.ledger.discarded.add(&group.matter);
            self.ledger.discarded_j += group.heat_j;
            self.ledger.inedible_discarded_kg += group.inedible_kg;
            self.pieces.extend(group.trace());
        }
        self.emptied(vessel);
    }

    /// Tells of what clings to strained pieces, where it is worth a word.
    fn note_clinging(&mut self, act: usize, vessel: usize, taken: &Taken) {
        if taken.clings_kg >= practice::CLINGING_TOLD_KG {
            self.note(act, vessel, Happening::Clings(taken.clings_kg));
        }
    }

    /// Pieces become part of the liquid.
    pub(super) fn puree(&mut self, vessel: usize, share: f64) {
        let share = if share.is_finite() { share.clamp(0.0, 1.0) } else { 0.0 };
        let state = &mut self.vessels[vessel];
        let mut groups = std::mem::take(&mut state.groups);
        for group in &mut groups {
            state.disperse(group, share);
            if group.total_kg() <= 1e-9 {
                // What heat is left in a group of nothing belongs to the liquid.
                state.heat_j += group.heat_j;
                self.pieces.extend(group.trace());
            }
        }
        groups.retain(|group| group.total_kg() > 1e-9);
        state.groups = groups;
        self.refresh(vessel);
    }

    /// Everything becomes pieces of one make-up.
    pub(super) fn shape(&mut self, act: usize, vessel: usize, (lot, pieces): (usize, &Pieces), shaped: Shaped) {
        let Some(of) = self.process.lots.get(lot) else {
            self.note(act, vessel, Happening::LeftOut(format!("lot {lot} does not exist")));
            return;
        };
        let state = &mut self.vessels[vessel];
        let mut matter = state.liquid.take_share(1.0);
        let mut joules = HeatContent::of(&matter).enthalpy(state.temp_c);
        state.heat_j -= joules;
        let mut bones = 0.0;
        for group in std::mem::take(&mut state.groups) {
            matter.add(&group.matter);
            joules += group.heat_j;
            bones += group.inedible_kg;
        }
        if matter.total_kg() + bones > 0.0 {
            let mut group = Group::new(lot, of, pieces, matter, bones, &self.cond);
            group.heat_j = joules;
            group.settle();
            group.hottest_c = group.centre_c();
            group.shaped = Some(shaped);
            state.groups.push(group);
        }
        self.refresh(vessel);
    }

    /// Fat on top is taken off.
    pub(super) fn skim(&mut self, vessel: usize, off: FatOff) {
        let state = &mut self.vessels[vessel];
        let there = state.liquid.kg(Stuff::Fat);
        let kg = match off {
            FatOff::Share(share) => share * there,
            FatOff::Amount(mass) => mass.kilograms(),
            FatOff::AllBut(mass) => there - mass.kilograms(),
        };
        // What is no number, or less than nothing, takes nothing.
        let fat = state.liquid.take(Stuff::Fat, kg);
        let joules = HeatContent::of(&fat).enthalpy(state.temp_c);
        state.heat_j -= joules;
        self.ledger.discarded.add(&fat);
        self.ledger.discarded_j += joules;
        self.refresh(vessel);
    }

    /// Takes part of a vessel's contents out, with its heat.
    fn take(&mut self, vessel: usize, what: &Part) -> Taken {
        let clinging = practice::CLINGING.at(self.cond.food);
        let state = &mut self.vessels[vessel];
        let gel = state.gel;
        let mut groups = Vec::new();
        let share = match what {
            Part::All => {
                groups = std::mem::take(&mut state.groups);
                1.0
            }
            Part::Share(share) => {
                let share = if share.is_finite() { share.clamp(0.0, 1.0) } else { 0.0 };
                groups.extend(state.groups.iter_mut().map(|group| group.split(share)));
                share
            }
            // Egg that was stirred in runs through a sieve with the liquid.
            Part::Liquid => {
                let share = 1.0 - state.clinging_share(clinging, |group| !group.is_stirred_egg());
                groups = state.groups.extract_if(.., |group| group.is_stirred_egg()).collect();
                share
            }
            Part::Solids => {
                let share = state.clinging_share(clinging, |group| !group.is_stirred_egg());
                groups = state.groups.extract_if(.., |group| !group.is_stirred_egg()).collect();
                share
            }
            Part::Lots(lots) => {
                let share = state.clinging_share(clinging, |group| lots.contains(&group.lot));
                let (out, stay) = std::mem::take(&mut state.groups)
                    .into_iter()
                    .partition(|g| lots.contains(&g.lot));
                groups = out;
                state.groups = stay;
                share
            }
        };
        let liquid = state.liquid.total_kg();
        let clings_kg = match what {
            // Fat on what is lifted from a pan is no liquid that is strained off.
            _ if state.water_kg() < 0.5 * liquid => 0.0,
            Part::Liquid => (1.0 - share) * liquid,
            Part::Solids | Part::Lots(_) => share * liquid,
            Part::All | Part::Share(_) => 0.0,
        };
        let fragile = state.fragile.take_share(share);
        let before = state.liquid;
        let mut liquid = state.liquid.take_share(share);
        if share < 1.0 && share > 0.0 {
            // What is taken is what is no longer there, to the last bit.
            for (kg, (was, is)) in liquid
                .mass_kg
                .iter_mut()
                .zip(before.mass_kg.iter().zip(&state.liquid.mass_kg))
            {
                *kg = was - is;
            }
        }
        let liquid_j = HeatContent::of(&liquid).enthalpy(state.temp_c);
        state.heat_j -= liquid_j;
        Taken {
            liquid,
            liquid_j,
            gel,
            fragile,
            clings_kg,
            groups,
        }
    }

    /// What clings to the wall of a vessel that was poured out is lost; dry things are shaken out whole.
    fn leave_behind(&mut self, vessel: usize, taken: &mut Taken) {
        let total = taken.liquid.total_kg();
        if total <= 0.0 || taken.liquid.kg(Stuff::Water) < 0.5 * total {
            return;
        }
        let measures = &self.vessels[vessel].measures;
        let depth = (total / 1000.0 / measures.area_m2).min(measures.height_m);
        let wetted = measures.area_m2 + std::f64::consts::PI * measures.diameter_m * depth;
        let share = (practice::LEFT_KG_M2 * wetted / total).min(practice::LEFT_SHARE);
        let left = taken.liquid.take_share(share);
        let joules = taken.liquid_j * share;
        taken.liquid_j -= joules;
        self.ledger.left_behind.add(&left);
        self.ledger.discarded_j += joules;
    }

    /// A vessel that holds nothing is off the heat; a last gram is not worth following and stays behind.
    pub(super) fn emptied(&mut self, vessel: usize) {
        let state = &mut self.vessels[vessel];
        if state.groups.is_empty() && state.liquid.total_kg() < 1e-3 {
            let left = state.liquid.take_share(1.0);
            let joules = HeatContent::of(&left).enthalpy(state.temp_c);
            state.heat_j -= joules;
            self.ledger.left_behind.add(&left);
            self.ledger.discarded_j += joules;
        }
        self.close_cooling_if_empty(vessel);
        let time_s = self.time_s;
        let state = &mut self.vessels[vessel];
        if state.is_empty() {
            state.emptied_s = Some(time_s);
            state.burner = None;
            state.place = Place::Counter;
            state.aim = crate::Aim::Off;
            state.fragile = Fragile::default();
            let boiling_c = state.watch.boiling_c;
            state.watch = super::vessel::Watch {
                boiling_c,
                ..Default::default()
            };
        }
        self.refresh(vessel);
    }
}

impl VesselState {
    /// Share of the liquid that clings to the pieces of some groups.
    fn clinging_share(&self, per_mass: f64, which: impl Fn(&Group) -> bool) -> f64 {
        let pieces: f64 = self
            .groups
            .iter()
            .filter(|group| which(group))
            .map(Group::total_kg)
            .sum();
        let liquid = self.liquid.total_kg();
        if liquid > 0.0 {
            (per_mass * pieces / liquid).min(1.0)
        } else {
            0.0
        }
    }
}
