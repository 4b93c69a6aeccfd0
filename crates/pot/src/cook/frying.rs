//! Frying, sweating, browning: what fits a pan in one layer, its batches, contact with it, when browning sets in, and
//! fat that is taken up.
//!
//! Water that pieces give off keeps a pan at the boil until the heat under it has driven it off; only then can anything
//! brown. How brown it gets is not computed, only when it begins.

use potwright_manuscript::HeatWord;

use crate::cook::conditions::Conditions;
use crate::cook::group::Group;
use crate::cook::practice;
use crate::cook::vessel::VesselState;
use crate::physics::properties::solid_enthalpy;
use crate::{Aim, Happening, Stuff};

impl VesselState {
    /// Whether the page wants food browned here: fried, and not gently.
    fn browns(&self) -> bool {
        self.fries()
            && matches!(
                self.aim,
                Aim::Fry(HeatWord::Medium | HeatWord::MediumHigh | HeatWord::High)
            )
    }

    /// Batches in which the pieces of meat and fish lie on the pan's bottom side by side: the floor they cover over what a
    /// pan holds of pieces with room for their steam. What is cut smaller is stirred about in a heap.
    pub(super) fn layers(&self, cond: &Conditions) -> u32 {
        if !self.browns() {
            return 1;
        }
        let laid = self.groups.iter().filter(|group| group.habits.flesh);
        let floor: f64 = laid
            .filter(|group| group.thickness_m() >= practice::LAID_FROM_M)
            .map(Group::floor_m2)
            .sum();
        let batches = floor / (practice::LAYER_SHARE.at(cond.reading) * self.measures.area_m2.max(1e-6));
        // A little more than a layer is pressed in.
        (batches - practice::PRESSED_IN).ceil().clamp(1.0, 50.0) as u32
    }

    /// Contact of the pieces with the hot bottom, as a film over their whole surface, W/(m²·K): of the batch that is in the
    /// pan a share of the surface touches it, as far as there is bottom; over all batches each piece has its turn.
    pub(super) fn pan_film(&self, surface_m2: f64, cond: &Conditions) -> f64 {
        let touching =
            (practice::CONTACT_PIECES * surface_m2 / self.turns).min(practice::CONTACT_PAN * self.measures.area_m2);
        cond.film_pan * touching / surface_m2.max(1e-9)
    }

    /// Onset of browning: a dry, hot pan, the hotter the sooner.
    pub(super) fn brown(&mut self, dt_s: f64, browning_s: f64) {
        if self.temp_c > practice::BROWNS_FROM_C && self.water_kg() < 0.003 + 0.01 * self.liquid.total_kg() {
            let faster = libm::exp2((self.temp_c - practice::BROWNING_C) / 10.0).min(4.0);
            self.watch.browned += dt_s * faster / (browning_s * self.turns);
        }
    }

    /// Pieces that should brown lie in their own juice: what they give off over what the heat can drive off.
    pub(super) fn crowded(&mut self, dt_s: f64, cond: &Conditions) -> Option<Happening> {
        let flesh = self.groups.iter().any(|group| group.habits.flesh);
        let wet = self.water_kg() > 0.004 && self.temp_c < practice::BROWNS_FROM_C;
        if !self.browns() || !flesh || !wet || self.watch.crowded || self.watch.browned >= 1.0 {
            return None;
        }
        self.watch.wet_s += dt_s;
        if self.watch.wet_s < practice::WET_LONG_S {
            return None;
        }
        self.watch.crowded = true;
        let spare_w = (0.8 * self.most_power_w(cond) - self.exchange.loss(self.temp_c).0).max(1.0);
        let steam_w = self.shed_kg_s * cond.boiling_latent * self.turns;
        let needed = (steam_w / spare_w).ceil().clamp(self.turns + 1.0, 50.0);
        // A number of batches between two and fifty.
        Some(Happening::CrowdedPan {
            batches_needed: needed as u32,
        })
    }

    /// Fat clings to what is fried, as much as its surface holds; in hot broth it floats off again.
    pub(super) fn oil(&mut self, group: &mut Group, dt_s: f64, bathed: bool, cond: &Conditions) {
        let due = if self.fries() && self.temp_c > practice::PAN_WARM_C {
            let most = practice::OIL_KG_M2.at(cond.food) * group.surface_m2();
            (most - group.oiled_kg).min(0.5 * self.liquid.kg(Stuff::Fat)).max(0.0)
        } else if bathed && self.temp_c > practice::RENDER_FROM_C {
            -group.oiled_kg
        } else {
            return;
        };
        let kg = due * (dt_s / practice::OIL_S).min(1.0);
        if kg.abs() < 1e-9 {
            return;
        }
        let joules = if kg > 0.0 {
            self.liquid.pass(Stuff::Fat, kg, &mut group.matter) * solid_enthalpy(Stuff::Fat, self.temp_c)
        } else {
            -group.matter.pass(Stuff::Fat, -kg, &mut self.liquid) * solid_enthalpy(Stuff::Fat, group.mean_c)
        };
        group.oiled_kg += kg;
        self.heat_j -= joules;
        group.heat_j += joules;
    }
}
