//! What a vessel that stands in air loses, face by face: its open top or its lid, its wall, its underside.
//!
//! The faces of thick food are colder than its middle; by how much is what [`Skin`] says, and the losses are those of
//! the faces.

use crate::cook::conditions::Conditions;
use crate::cook::practice;
use crate::cook::vessel::VesselState;
use crate::physics::cooling::{forced_convection, mixed_convection, under_lid, underside_convection};
use crate::physics::film::{radiation_w_m2, wall_convection};
use crate::{Aim, Place};
use potwright_manuscript::Cover;
use potwright_measure::Spread;

/// Films of a pot that stands in cold or iced water, W/(m²·K): the water's, and that of what is in the pot and is stirred
/// now and then, clear or thick (common practice, no source).
const BATH_WATER: f64 = 250.0;
const BATH_CLEAR: Spread = Spread::within_factor(250.0, 1.7);
const BATH_THICK: Spread = Spread::within_factor(80.0, 1.7);

/// How much colder than the mean of the contents each face is, kelvins; nought where the food is stirred or mixes by
/// itself.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Skin {
    pub(super) top_k: f64,
    pub(super) wall_k: f64,
    pub(super) base_k: f64,
}

impl Skin {
    /// The largest change of any face since another one, kelvins.
    pub(super) fn moved_k(&self, since: &Skin) -> f64 {
        let changes = [
            self.top_k - since.top_k,
            self.wall_k - since.wall_k,
            self.base_k - since.base_k,
        ];
        changes.into_iter().fold(0.0, |most, change| change.abs().max(most))
    }
}

impl VesselState {
    /// Convection helped by moving air where there is any, W/(m²·K); `along_m` is the way of the air along the face.
    fn blown(&self, free: f64, face_c: f64, along_m: f64, cond: &Conditions) -> f64 {
        let speed = cond.air_m_s(self.place);
        if speed <= 0.0 {
            return free;
        }
        let film_c = 0.5 * (face_c + cond.air_c(self.place));
        mixed_convection(free, forced_convection(speed, film_c, along_m, cond.pressure_kpa))
    }

    /// How many times as much evaporates in the moving air of a place as in still air: mass follows heat (Lewis).
    pub(super) fn blown_vapour(&self, face_c: f64, cond: &Conditions) -> f64 {
        if cond.air_m_s(self.place) <= 0.0 {
            return 1.0;
        }
        let free = self.surface(face_c, cond).convection_w_m2k();
        self.blown(free, face_c, self.measures.diameter_m, cond) / free.max(1e-9)
    }

    /// Convection and radiation of the top at a temperature of the food there, W/m². An unheated vessel's lid is colder
    /// than the food: heat reaches it across the gap, the more by vapour the hotter the food is. A lid over steam is as
    /// hot as the steam.
    pub(super) fn top_flux_w_m2(&self, face_c: f64, cond: &Conditions) -> f64 {
        let air_c = cond.air_c(self.place);
        let free = self.surface(face_c, cond).convection_w_m2k();
        let film = self.blown(free, face_c, self.measures.diameter_m, cond);
        if self.cover != Cover::On || self.aim != Aim::Off {
            return film * (face_c - air_c) + radiation_w_m2(practice::WET_EMISSIVITY, face_c, air_c);
        }
        let mean_c = 0.5 * (face_c + air_c);
        let radiation = radiation_w_m2(self.measures.emissivity, mean_c + 0.5, mean_c - 0.5);
        let (inside, outside) = (under_lid(face_c, free, cond.pressure_kpa), film + radiation);
        (face_c - air_c) / (1.0 / inside + 1.0 / outside)
    }

    /// Convection and radiation of the wall, W/m², for so high a wall in metres.
    pub(super) fn wall_flux_w_m2(&self, face_c: f64, height_m: f64, cond: &Conditions) -> f64 {
        let air_c = cond.air_c(self.place);
        let free = wall_convection(face_c, air_c, height_m, cond.pressure_kpa);
        self.blown(free, face_c, self.measures.diameter_m, cond) * (face_c - air_c)
            + radiation_w_m2(self.measures.emissivity, face_c, air_c)
    }

    /// From what is in a pot to the water it stands in, W/(m²·K): two films in series.
    pub(super) fn bath_film_w_m2k(&self, cond: &Conditions) -> f64 {
        let inside = if self.is_thick(cond) { BATH_THICK } else { BATH_CLEAR };
        1.0 / (1.0 / BATH_WATER + 1.0 / inside.at(cond.food))
    }

    /// Convection and radiation of the underside, W/m²: on the wire shelf of a refrigerator or freezer it has air below
    /// it; a table or a cold hob takes next to nothing.
    pub(super) fn base_flux_w_m2(&self, face_c: f64, cond: &Conditions) -> f64 {
        if !matches!(self.place, Place::Refrigerator | Place::Freezer) {
            return 0.0;
        }
        let air_c = cond.air_c(self.place);
        let diameter = self.measures.diameter_m;
        let free = underside_convection(face_c, air_c, diameter / 4.0, cond.pressure_kpa);
        self.blown(free, face_c, diameter, cond) * (face_c - air_c)
            + radiation_w_m2(self.measures.emissivity, face_c, air_c)
    }
}
