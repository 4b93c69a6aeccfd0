//! Thick food that nobody stirs and nothing heats: its inside conducts, and its faces are colder (thawing, warmer) than
//! its middle.
//!
//! The vessel's enthalpy is what the books say; the field inside only says how it is spread, and so how cold the faces
//! are that lose it. After every step the field is brought to the vessel's enthalpy again: there is one account of heat.

use crate::cook::cold::Skin;
use crate::cook::conditions::Conditions;
use crate::cook::practice;
use crate::cook::vessel::VesselState;
use crate::physics::cooling_field::{Face, Faces, Field, Filling};
use crate::physics::freezing::frozen_conductivity;
use crate::physics::properties::{self, FREEZABLE, HeatContent};
use crate::physics::water::latent_heat;
use crate::{Matter, Place, Stuff};
use potwright_measure::Spread;

/// From here on a liquid no longer mixes by itself: gelatinised starch or fibre (what a purée is thick of) by mass of the
/// liquid, or pieces by volume of the whole (common practice, no source).
const THICK_STARCH: Spread = Spread::within_factor(0.02, 1.5);
const THICK_FIBRE: Spread = Spread::within_factor(0.012, 1.5);
const THICK_PIECES: Spread = Spread::within_factor(0.35, 1.5);
/// Share of the time the inside takes to follow the outside that one step of the field may be, and of the time since it
/// was even, when its faces change fast; shorter steps of the vessel are saved up.
const SHARE_OF_LAG: f64 = 0.06;
const SHARE_OF_AGE: f64 = 0.1;
const MOST_STEPS: f64 = 20.0;
/// Food so near to its surroundings, and so even, conducts nothing to speak of, kelvins.
const EVEN_K: f64 = 0.3;

/// The limits from which food counts as thick, in one kitchen.
#[derive(Clone, Copy, Debug)]
pub(super) struct Thick {
    starch: f64,
    fibre: f64,
    pieces: f64,
}

impl Thick {
    pub(super) fn at(food: f64) -> Self {
        Thick {
            starch: THICK_STARCH.at(food),
            fibre: THICK_FIBRE.at(food),
            pieces: THICK_PIECES.at(food),
        }
    }
}

/// How the heat of thick food is spread.
#[derive(Clone, Debug)]
pub(super) struct Inside {
    field: Field,
    /// Seconds the field is behind the vessel, and the time it takes to follow the outside.
    waits_s: f64,
    lag_s: f64,
    /// Seconds since it was the same throughout.
    age_s: f64,
    /// How much warmer the warmest place is than the mean, kelvins.
    pub(super) lead_k: f64,
}

impl VesselState {
    /// Whether it neither mixes by itself nor is stirred: a pot in a sink or in ice is stirred now and then.
    pub(super) fn is_thick(&self, cond: &Conditions) -> bool {
        let liquid = self.liquid.total_kg();
        let pieces: f64 = self.groups.iter().map(|group| group.volume_m3()).sum();
        let thick = &cond.thick;
        self.liquid.kg(Stuff::GelatinisedStarch) > thick.starch * liquid
            || self.liquid.kg(Stuff::Fibre) > thick.fibre * liquid
            || pieces > thick.pieces * (pieces + self.liquid_m3())
    }

    /// Whether it stands unheated where food cools or thaws.
    pub(super) fn stands(&self, cond: &Conditions) -> bool {
        !self.aside && self.place != Place::Oven && !self.is_heated(cond) && !self.is_empty()
    }

    /// It was stirred: what was known of the inside no longer holds.
    pub(super) fn mix(&mut self) {
        self.inside = None;
        self.skin = Skin::default();
    }

    /// After a step: conducts inside thick food and finds how cold its faces are.
    pub(super) fn conduct_inside(&mut self, dt_s: f64, cond: &Conditions) {
        let bathed = matches!(self.place, Place::Sink | Place::IceBath);
        if !self.stands(cond) || bathed || !self.is_thick(cond) {
            if self.inside.is_some() {
                self.mix();
            }
            return;
        }
        let heat_j = self.heat_j + self.groups.iter().map(|group| group.heat_j).sum::<f64>();
        let mut inside = self.inside.take().unwrap_or_else(|| {
            let temp_c = self.filling().content().temperature(heat_j, self.temp_c);
            Box::new(Inside {
                field: Field::uniform(heat_j, temp_c),
                waits_s: 0.0,
                lag_s: 0.0,
                age_s: 0.0,
                lead_k: 0.0,
            })
        });
        inside.waits_s += dt_s;
        inside.age_s += dt_s;
        let even = (self.temp_c - cond.air_c(self.place)).abs() < EVEN_K
            && inside.field.warmest_c() - inside.field.coldest_c() < EVEN_K;
        if !even && inside.waits_s >= (SHARE_OF_LAG * inside.lag_s).min(SHARE_OF_AGE * inside.age_s) {
            self.spread(&mut inside, heat_j, cond);
        }
        self.inside = Some(inside);
    }

    /// Conducts for as long as the field waits, and reads the faces.
    fn spread(&mut self, inside: &mut Inside, heat_j: f64, cond: &Conditions) {
        let filling = self.filling();
        let faces = self.faces(&filling, cond);
        inside.lag_s = filling.lag_s(&faces);
        let waits_s = std::mem::take(&mut inside.waits_s);
        let steps = (waits_s / (SHARE_OF_LAG * inside.lag_s)).ceil().clamp(1.0, MOST_STEPS);
        // Between one and twenty.
        for _ in 0..steps as u32 {
            inside.field.step(waits_s / steps, &filling, &faces);
        }
        inside.field.rebase(heat_j, filling.content());
        let [top_c, wall_c, base_c] = inside.field.faces_c(&filling, &faces);
        self.skin = Skin {
            top_k: self.temp_c - top_c,
            wall_k: self.temp_c - wall_c,
            base_k: self.temp_c - base_c,
        };
        inside.lead_k = inside.field.warmest_c() - self.temp_c;
    }

    /// Everything in the vessel, and the vessel, as one body.
    fn filling(&self) -> Filling {
        let mut matter: Matter = self.liquid;
        self.groups.iter().for_each(|group| matter.add(&group.matter));
        let bone_kg: f64 = self.groups.iter().map(|group| group.inedible_kg).sum();
        let capacity = self.measures.metal_j_k + bone_kg * practice::BONE_J_KG_K;
        let temp_c = self.temp_c.max(0.0);
        Filling::new(
            0.5 * self.measures.diameter_m,
            (self.volume_m3() / self.measures.area_m2).max(1e-3),
            HeatContent::of(&matter).with_capacity(capacity),
            properties::conductivity(&matter, temp_c),
            frozen_conductivity(&matter, self.temp_c.min(0.0), FREEZABLE),
        )
    }

    /// The films of the faces at their present temperatures: straight lines about them.
    fn faces(&self, filling: &Filling, cond: &Conditions) -> Faces {
        let measures = &self.measures;
        let depth = filling.height_m.min(measures.height_m);
        let height = depth + measures.rim_m(measures.height_m - depth, practice::FILM_RIM);
        let vapour = |face_c: f64| {
            let latent = latent_heat(face_c.clamp(0.0, 100.0));
            let rate = self.vapour_kg_s(face_c, latent, cond);
            rate * latent / measures.area_m2
        };
        let line = |skin_k: f64, flux: &dyn Fn(f64) -> f64| {
            let face_c = self.temp_c - skin_k;
            let (here, more) = (flux(face_c), flux(face_c + 1.0));
            let film = (more - here).clamp(0.1, 1e4);
            Face {
                film,
                outside_c: face_c - here / film,
            }
        };
        Faces {
            top: line(self.skin.top_k, &|c| self.top_flux_w_m2(c, cond) + vapour(c)),
            wall: line(self.skin.wall_k, &|c| {
                self.wall_flux_w_m2(c, height, cond) * height / depth
            }),
            base: line(self.skin.base_k, &|c| self.base_flux_w_m2(c, cond)),
        }
    }
}
