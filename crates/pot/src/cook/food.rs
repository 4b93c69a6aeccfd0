//! What food does while it is hot: sheds water, renders fat, drinks, swells, softens, falls apart, gives and takes salt.
//!
//! Matter goes from the pieces to the liquid or back with its enthalpy; nothing here touches the surroundings but
//! spatter.

use crate::cook::conditions::Conditions;
use crate::cook::group::Group;
use crate::cook::practice;
use crate::cook::vessel::VesselState;
use crate::physics::conduction::mean;
use crate::physics::gelatinisation::Range;
use crate::physics::properties::HeatContent;
use crate::physics::softening::time_multiple;
use crate::{Ledger, Matter, Stuff};

#[cfg(test)]
thread_local! {
    /// Steps of groups of pieces that were made: what a cooking costs.
    pub(super) static TENDED: std::cell::Cell<u32> = const { std::cell::Cell::new(0) };
}

/// Share done in a step by a process of first order, 1 − e^(−x) with x = Δt/τ: by the series of e^x to the third power,
/// right to 1 % up to x = 1 and never above one.
fn done(dt_s: f64, tau_s: f64) -> f64 {
    let x = dt_s / tau_s;
    1.0 - 1.0 / (1.0 + x * (1.0 + x / 2.0 * (1.0 + x / 3.0)))
}

/// Linear rise from 0 to 1 between two temperatures.
fn ramp(temp_c: f64, from_c: f64, to_c: f64) -> f64 {
    ((temp_c - from_c) / (to_c - from_c)).clamp(0.0, 1.0)
}

/// Native starch swells as its range and the water there allow.
fn gelatinise(matter: &mut Matter, range: Range, temp_c: f64, dt_s: f64, cond: &Conditions) {
    let native = matter.kg(Stuff::Starch);
    if native <= 0.0 || temp_c <= range.low_c {
        return;
    }
    let swollen = matter.kg(Stuff::GelatinisedStarch);
    let all = native + swollen;
    let watered = (matter.kg(Stuff::Water) / (cond.water_per_starch * all)).min(1.0);
    let due = all * range.swollen(temp_c) * watered - swollen;
    if due > 0.0 {
        let moved = due.min(native) * done(dt_s, cond.gelatinise_s);
        matter.mass_kg[Stuff::Starch as usize] -= moved;
        matter.mass_kg[Stuff::GelatinisedStarch as usize] += moved;
    }
}

impl VesselState {
    /// How far pieces lie in the liquid: 1 when there is as much as bathes them, less in proportion, so that what they drink
    /// and give off does not hang on the moment at which it no longer does.
    fn wetness(&self) -> f64 {
        let pieces: f64 = self.groups.iter().map(Group::volume_m3).sum();
        if pieces > 0.0 {
            (self.liquid_m3() / (practice::BATHES * pieces)).clamp(0.0, 1.0)
        } else {
            1.0
        }
    }

    /// Everything food does by itself in a step.
    pub(super) fn tend(&mut self, dt_s: f64, cond: &Conditions, ledger: &mut Ledger) {
        gelatinise(&mut self.liquid, self.gel, self.temp_c, dt_s, cond);
        let wet = self.wetness();
        let fries = self.fries();
        let mut groups = std::mem::take(&mut self.groups);
        let (mut shed, mut flow) = (0.0, 0.0);
        for group in &mut groups {
            #[cfg(test)]
            TENDED.with(|count| count.set(count.get() + 1));
            let before = group.matter.total_kg();
            gelatinise(&mut group.matter, group.gel, group.mean_c, dt_s, cond);
            shed += self.shed(group, dt_s, wet, cond);
            self.render(group, dt_s, cond);
            self.oil(group, dt_s, wet >= 1.0, cond);
            if wet > 0.0 {
                self.soak(group, wet * dt_s);
                self.exchange_solutes(group, wet * dt_s, cond);
            }
            let lingering = if wet > 0.0 {
                self.lingering(group, cond.food)
            } else {
                1.0
            };
            group.soften(dt_s / lingering);
            if let Some(tally) = &mut group.tally {
                tally.count(&group.profile, dt_s);
            }
            self.fall_apart(group, wet);
            flow += (group.matter.total_kg() - before).abs();
        }
        groups.retain(|group| group.total_kg() > 1e-9);
        self.groups = groups;
        self.shed_kg_s = shed / dt_s.max(1e-9);
        self.flow_kg_s = flow / dt_s.max(1e-9);
        if fries && self.temp_c > practice::BROWNS_FROM_C {
            self.spatter(dt_s, ledger);
        }
    }

    /// Matter goes from a piece into the liquid, as warm as the piece.
    fn receive(&mut self, group: &mut Group, matter: &Matter) {
        let joules = HeatContent::of(matter).enthalpy(group.mean_c);
        group.heat_j -= joules;
        self.heat_j += joules;
        self.liquid.add(matter);
    }

    /// Water shed: the share due by the temperature reached, with a lag. Gives the water, kg.
    fn shed(&mut self, group: &mut Group, dt_s: f64, wet: f64, cond: &Conditions) -> f64 {
        // Plants keep their juice under liquid.
        let open = if group.habits.flesh || self.fries() {
            1.0
        } else {
            1.0 - wet
        };
        if group.habits.sheds * open <= 0.0 {
            return 0.0;
        }
        let share = group.let_go();
        let due = group.raw_water_kg * group.habits.sheds * share - group.shed_kg;
        if due <= 0.0 {
            return 0.0;
        }
        let juice = group.matter.take_juice(due * done(open * dt_s, cond.shed_s));
        let water = juice.kg(Stuff::Water);
        group.shed_kg += water;
        self.receive(group, &juice);
        water
    }

    fn render(&mut self, group: &mut Group, dt_s: f64, cond: &Conditions) {
        if group.habits.renders <= 0.0 || group.mean_c < practice::RENDER_FROM_C {
            return;
        }
        let due = group.raw_fat_kg * group.habits.renders - group.rendered_kg;
        if due <= 0.0 {
            return;
        }
        let faster = libm::exp2((self.temp_c.min(200.0) - 90.0) / practice::RENDER_DOUBLING_K);
        let fat = group.matter.take(Stuff::Fat, due * done(dt_s, cond.render_s / faster));
        group.rendered_kg += fat.kg(Stuff::Fat);
        self.receive(group, &fat);
    }

    /// Dry food drinks: to what soaking gives in the cold, to the whole near the boil; the broth's salt goes along.
    fn soak(&mut self, group: &mut Group, dt_s: f64) {
        let Some(uptake) = group.habits.uptake else {
            return;
        };
        let share = practice::SOAKED_SHARE
            + (1.0 - practice::SOAKED_SHARE) * ramp(group.mean_c, practice::SOAK_ENDS_C, practice::SWELLS_FULLY_C);
        let due = (uptake.capacity_kg * share - group.absorbed_kg).min(0.95 * self.water_kg());
        let rate = uptake.rate(group.mean_c);
        if due <= 0.0 || rate <= 0.0 {
            return;
        }
        let drunk = self.liquid.take_juice(due * done(dt_s, 1.0 / rate));
        group.absorbed_kg += drunk.kg(Stuff::Water);
        let joules = HeatContent::of(&drunk).enthalpy(self.temp_c);
        self.heat_j -= joules;
        group.heat_j += joules;
        group.matter.add(&drunk);
    }

    /// Soft pieces go over into the liquid, as far as the food does at all.
    fn fall_apart(&mut self, group: &mut Group, wet: f64) {
        // A fifth of the way no piece has gone.
        if group.habits.falls_apart * wet <= 0.0 || group.tender < 0.2 {
            return;
        }
        let ratio = practice::FALLS_HALF / group.tender;
        let square = ratio * ratio;
        let due = wet * group.habits.falls_apart / (1.0 + square * square * ratio);
        if due <= group.dispersed {
            return;
        }
        // Share of what is still in pieces.
        let share = (due - group.dispersed) / (1.0 - group.dispersed).max(1e-9);
        group.dispersed = due;
        self.disperse(group, share);
    }

    /// A share of a group's edible matter becomes part of the liquid.
    pub(super) fn disperse(&mut self, group: &mut Group, share: f64) {
        let matter = group.matter.take_share(share);
        self.gel = self
            .gel
            .mixed(self.liquid.kg(Stuff::Starch), group.gel, matter.kg(Stuff::Starch));
        self.receive(group, &matter);
    }

    fn spatter(&mut self, dt_s: f64, ledger: &mut Ledger) {
        let fat = self.liquid.kg(Stuff::Fat);
        let lost = self
            .liquid
            .take(Stuff::Fat, fat * (practice::SPATTER_PER_S * dt_s).min(0.5));
        let joules = HeatContent::of(&lost).enthalpy(self.temp_c);
        self.heat_j -= joules;
        ledger.discarded_j += joules;
        ledger.spattered.add(&lost);
    }
}

impl Group {
    /// Share of the water it sheds that it no longer holds at the temperatures inside: flesh layer by layer, the outer ones
    /// first.
    fn let_go(&self) -> f64 {
        if !self.habits.flesh {
            return ramp(self.mean_c, practice::SHED_FROM_C, practice::SHED_TO_C);
        }
        let (from, to) = practice::FLESH_SHEDS_C;
        let smooth = |temp_c: f64| {
            let x = ramp(temp_c, from, to);
            x * x * (3.0 - 2.0 * x)
        };
        mean(self.profile.form, &self.profile.cells_c.map(smooth))
    }

    /// Progress to tender by the temperature of the centre.
    fn soften(&mut self, dt_s: f64) {
        let Some((seconds_at_100, activation)) = self.habits.softens else {
            return;
        };
        let centre = self.centre_c();
        if centre > 40.0 {
            self.tender += dt_s / (seconds_at_100 * time_multiple(centre, activation));
        }
    }
}

impl super::habits::Uptake {
    /// Rate at a temperature, 1/s: geometric between the cold soak and the boil; without a cold rate nothing below 50 °C.
    fn rate(&self, temp_c: f64) -> f64 {
        match self.rate_cold {
            Some(cold) => {
                let share = ((temp_c - practice::SOAK_C) / (100.0 - practice::SOAK_C)).clamp(0.0, 1.0);
                cold * libm::pow(self.rate_hot / cold, share)
            }
            None if temp_c < 50.0 => 0.0,
            None => self.rate_hot * libm::exp2((temp_c.min(110.0) - 100.0) / 10.0),
        }
    }
}
