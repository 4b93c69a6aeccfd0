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
/// Parts of the time the inside takes to follow the outside that one step of the field may be.
const SHARE_OF_LAG: f64 = 0.03;
const MOST_STEPS: f64 = 20.0;
/// Food so near to its surroundings, and so even, conducts nothing to speak of, kelvins.
const EVEN_K: f64 = 0.3;

impl VesselState {
    /// Whether it neither mixes by itself nor is stirred: a pot in a sink or in ice is stirred now and then.
    pub(super) fn is_thick(&self, cond: &Conditions) -> bool {
        let liquid = self.liquid.total_kg();
        let pieces: f64 = self.groups.iter().map(|group| group.volume_m3()).sum();
        let over = |limit: Spread, part: f64, whole: f64| part > limit.at(cond.food) * whole;
        over(THICK_STARCH, self.liquid.kg(Stuff::GelatinisedStarch), liquid)
            || over(THICK_FIBRE, self.liquid.kg(Stuff::Fibre), liquid)
            || over(THICK_PIECES, pieces, pieces + self.liquid_m3())
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
        let filling = self.filling();
        let heat_j = self.heat_j + self.groups.iter().map(|group| group.heat_j).sum::<f64>();
        let mut field = match self.inside.take() {
            Some(field) => field,
            None => Box::new(Field::uniform(heat_j, filling.content.temperature(heat_j, self.temp_c))),
        };
        let calm =
            (self.temp_c - cond.air_c(self.place)).abs() < EVEN_K && field.warmest_c() - field.coldest_c() < EVEN_K;
        if !calm {
            let faces = self.faces(&filling, cond);
            let steps = (dt_s / (SHARE_OF_LAG * lag_s(&filling, &faces)))
                .ceil()
                .clamp(1.0, MOST_STEPS);
            // Between one and twenty.
            for _ in 0..steps as u32 {
                field.step(dt_s / steps, &filling, &faces);
            }
            field.rebase(heat_j, &filling.content);
            let [top_c, wall_c, base_c] = field.faces_c(&filling, &faces);
            self.skin = Skin {
                top_k: self.temp_c - top_c,
                wall_k: self.temp_c - wall_c,
                base_k: self.temp_c - base_c,
            };
        }
        self.inside = Some(field);
    }

    /// Everything in the vessel, and the vessel, as one body.
    fn filling(&self) -> Filling {
        let mut matter: Matter = self.liquid;
        self.groups.iter().for_each(|group| matter.add(&group.matter));
        let bone_kg: f64 = self.groups.iter().map(|group| group.inedible_kg).sum();
        let capacity = self.measures.metal_j_k + bone_kg * practice::BONE_J_KG_K;
        let temp_c = self.temp_c.max(0.0);
        Filling {
            radius_m: 0.5 * self.measures.diameter_m,
            height_m: (self.volume_m3() / self.measures.area_m2).max(1e-3),
            content: HeatContent::of(&matter).with_capacity(capacity),
            conductivity: properties::conductivity(&matter, temp_c),
            frozen_conductivity: frozen_conductivity(&matter, self.temp_c.min(0.0), FREEZABLE),
        }
    }

    /// The films of the faces at their present temperatures: straight lines about them.
    fn faces(&self, filling: &Filling, cond: &Conditions) -> Faces {
        let measures = &self.measures;
        let depth = filling.height_m.min(measures.height_m);
        let height = depth + measures.rim_m(measures.height_m - depth, practice::FILM_RIM);
        let vapour = |face_c: f64| {
            let latent = latent_heat(face_c.clamp(0.0, 100.0));
            let rate = self.vapour_kg_s(face_c + self.skin.top_k, latent, cond);
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

/// Seconds with which the inside follows the outside: the slowest mode of a slab and the film, in series.
fn lag_s(filling: &Filling, faces: &Faces) -> f64 {
    let half_m = (0.5 * filling.height_m).min(filling.radius_m);
    let volume = std::f64::consts::PI * filling.radius_m * filling.radius_m * filling.height_m;
    let capacity = (filling.content.capacity(10.0) / volume).max(1.0);
    let film = faces.top.film.max(faces.wall.film).max(faces.base.film);
    half_m * capacity * (half_m / filling.conductivity / 2.467 + 1.0 / film)
}
