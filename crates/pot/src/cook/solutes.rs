//! Salt, and what broken cells no longer hold, passing between the water of the pieces and of the liquid: while it cooks,
//! and while it stands.

use crate::cook::conditions::Conditions;
use crate::cook::group::Group;
use crate::cook::practice;
use crate::cook::vessel::VesselState;
use crate::physics::conduction::Form;
use crate::physics::diffusion::{MODES, Modes};
use crate::physics::properties::solid_enthalpy;
use crate::physics::softening::time_multiple;
use crate::{Matter, Stuff};

/// How far dissolved matter has come in a group of pieces.
#[derive(Clone, Debug)]
pub(super) struct Solutes {
    modes: Modes,
    /// Strengths by mode, kilogram per kilogram of water, of each of [`Stuff::DISSOLVED`].
    strengths: [[f64; MODES]; Stuff::DISSOLVED.len()],
    /// Heat has broken the membranes, or there were none: all that is dissolved passes, not salt alone.
    leaky: bool,
    /// The greatest strength of salt inside before it was hot, kilogram per kilogram of water.
    pub(super) brined: f64,
}

impl Solutes {
    /// Of pieces of a form; what is in them is evenly spread.
    pub(super) fn new(form: Form) -> Self {
        Solutes {
            modes: Modes::of(form),
            strengths: [[0.0; MODES]; Stuff::DISSOLVED.len()],
            leaky: false,
            brined: 0.0,
        }
    }

    /// Brings the modes of one stuff in line with what is in the pieces: juice that left or was drunk, water that boiled
    /// off took or left its share everywhere.
    fn align(&mut self, place: usize, strength: f64) {
        let modes = &mut self.strengths[place];
        let mean = self.modes.mean(modes);
        if (mean - strength).abs() <= 1e-9 * strength {
            return;
        }
        if mean > 1e-12 {
            let factor = strength / mean;
            modes.iter_mut().for_each(|mode| *mode *= factor);
        } else {
            *modes = [strength; MODES];
        }
    }
}

/// Diffusivity in food, m²/s, by temperature, °C: Arrhenius, from 25 °C.
fn diffusivity_m2_s(at_25: f64, temp_c: f64) -> f64 {
    let activation = practice::DIFFUSION_KJ_MOL;
    at_25 * time_multiple(25.0, activation) / time_multiple(temp_c, activation)
}

impl VesselState {
    /// A step of what passes between a group of pieces and the liquid it lies in.
    pub(super) fn exchange_solutes(&mut self, group: &mut Group, dt_s: f64, cond: &Conditions) {
        let water_kg = (group.matter.kg(Stuff::Water), self.water_kg());
        if water_kg.0 <= 1e-6 || water_kg.1 <= 1e-6 {
            return;
        }
        let solutes = &mut group.solutes;
        solutes.leaky |= group.habits.flesh || group.mean_c > practice::MEMBRANES_GIVE_C;
        let radius = group.radius_m();
        let diffusivity = diffusivity_m2_s(cond.diffusivity_25, group.mean_c);
        let steps = group.solutes.modes.steps(diffusivity * dt_s / (radius * radius));
        for (place, stuff) in Stuff::DISSOLVED.into_iter().enumerate() {
            if group.solutes.leaky || stuff == Stuff::Salt {
                self.exchange(group, (place, stuff), &steps, water_kg);
            }
        }
        if group.mean_c < practice::SOAK_ENDS_C {
            let strength = group.matter.kg(Stuff::Salt) / water_kg.0;
            group.solutes.brined = group.solutes.brined.max(strength);
        }
    }

    fn exchange(
        &mut self,
        group: &mut Group,
        (place, stuff): (usize, Stuff),
        steps: &[f64; MODES],
        water_kg: (f64, f64),
    ) {
        let (inside, outside) = (group.matter.kg(stuff), self.liquid.kg(stuff));
        let all = inside + outside;
        // A microgram is not worth following.
        if all < 1e-9 {
            return;
        }
        let solutes = &mut group.solutes;
        solutes.align(place, inside / water_kg.0);
        let Solutes { modes, strengths, .. } = solutes;
        let found = modes.go(&mut strengths[place], steps, water_kg, all);
        let kg = found.inside * water_kg.0 - inside;
        if kg.abs() < 1e-9 {
            return;
        }
        let joules = if kg > 0.0 {
            let moved = self.liquid.pass(stuff, kg, &mut group.matter);
            moved * solid_enthalpy(stuff, self.temp_c)
        } else {
            let moved = group.matter.pass(stuff, -kg, &mut self.liquid);
            -moved * solid_enthalpy(stuff, group.mean_c)
        };
        self.heat_j -= joules;
        group.heat_j += joules;
    }
}

/// Strength of something dissolved in the water of some matter, kilogram per kilogram; nought where there is no water.
pub(super) fn strength(matter: &Matter, stuff: Stuff) -> f64 {
    let water = matter.kg(Stuff::Water);
    if water > 0.0 { matter.kg(stuff) / water } else { 0.0 }
}
