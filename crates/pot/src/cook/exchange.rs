//! What a vessel exchanges with its surroundings: heat and vapour, as straight lines about a temperature.
//!
//! The correlations are costly and change slowly: they are evaluated when the vessel has moved by a kelvin and kept as
//! value and slope between.

use crate::cook::cold::Skin;
use crate::cook::conditions::Conditions;
use crate::cook::practice;
use crate::cook::vessel::VesselState;
use crate::physics::cool_skin::{CoolSkin, cool_skin};
use crate::physics::evaporation::{Bracket, Surface};
use crate::physics::film::{Air, radiation_w_m2, radiation_w_m2k};
use crate::physics::water::latent_heat;
use crate::{Aim, Heated, Place, PotKind, Stuff};
use potwright_manuscript::Cover;

/// Heat lost and vapour driven off near a temperature.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Exchange {
    valid: bool,
    at_c: f64,
    wetted_m: f64,
    skin: Skin,
    oven_c: f64,
    loss_w: f64,
    loss_slope_w_k: f64,
    vapour_kg_s: f64,
    vapour_slope_kg_s_k: f64,
    latent_j_kg: f64,
}

/// What the laws of evaporation make of a face, and how many times as much moving air carries off.
#[derive(Clone, Copy, Debug, Default)]
struct Law {
    bracket: Bracket,
    stirred: f64,
}

impl Law {
    /// By the mean of the laws, kg/(s·m²).
    fn kg_s_m2(&self) -> f64 {
        self.bracket.mean() / 3600.0 * self.stirred
    }

    /// The same of a face over a liquid whose own temperature Carrier's formula, made for pools, goes by.
    fn over(mut self, bulk: &Law) -> Law {
        self.bracket.carrier = bulk.bracket.carrier;
        self
    }
}

impl Exchange {
    /// Heat lost at a temperature, watts, and its slope; negative where the oven is hotter.
    pub(super) fn loss(&self, temp_c: f64) -> (f64, f64) {
        (
            self.loss_w + self.loss_slope_w_k * (temp_c - self.at_c),
            self.loss_slope_w_k,
        )
    }

    /// Evaporation below the boil, kg/s, and its slope; never negative.
    pub(super) fn vapour(&self, temp_c: f64) -> (f64, f64) {
        let rate = self.vapour_kg_s + self.vapour_slope_kg_s_k * (temp_c - self.at_c);
        if rate > 0.0 {
            (rate, self.vapour_slope_kg_s_k)
        } else {
            (0.0, 0.0)
        }
    }

    /// Latent heat of water at a temperature, J/kg; its slope near the boil is −2.55 kJ/(kg·K) (IAPWS).
    pub(super) fn latent(&self, temp_c: f64) -> f64 {
        self.latent_j_kg - 2_550.0 * (temp_c - self.at_c)
    }
}

impl VesselState {
    /// Depth of the contents, metres, no deeper than the vessel.
    fn depth_m(&self) -> f64 {
        (self.volume_m3() / self.measures.area_m2).min(self.measures.height_m)
    }

    /// Brings the exchange up to date for the present temperature.
    pub(super) fn refresh_exchange(&mut self, cond: &Conditions) {
        let depth = self.depth_m();
        let old = &self.exchange;
        let moved = (old.at_c - self.temp_c).abs() > 1.0
            || (old.wetted_m - depth).abs() > 0.02 * depth + 5e-4
            || self.skin.moved_k(&old.skin) > 0.5
            || self.place == Place::Oven && (old.oven_c - cond.oven.temp_c).abs() > 0.5;
        if old.valid && !moved {
            return;
        }
        let (temp, step) = (self.temp_c, 1.0);
        let (loss, more_loss) = (self.loss_w(temp, depth, cond), self.loss_w(temp + step, depth, cond));
        let latent_j_kg = latent_heat(temp);
        let most = self.most_vapour_kg_s(loss, latent_j_kg, cond);
        let (vapour, vapour_slope) = self.vapour_line(temp, latent_j_kg, cond);
        self.exchange = Exchange {
            valid: true,
            at_c: temp,
            wetted_m: depth,
            skin: self.skin,
            oven_c: cond.oven.temp_c,
            loss_w: loss,
            loss_slope_w_k: ((more_loss - loss) / step).max(0.0),
            vapour_kg_s: vapour.min(most),
            vapour_slope_kg_s_k: if vapour < most { vapour_slope } else { 0.0 },
            latent_j_kg,
        };
    }

    /// Heat lost by convection and radiation, watts. A lid does not lessen it: near the boil the lid is nearly as hot
    /// as the liquid and has the same surface; below it the loss is small beside the vapour a lid holds back.
    fn loss_w(&self, temp_c: f64, depth_m: f64, cond: &Conditions) -> f64 {
        if !cond.losses {
            return 0.0;
        }
        let measures = &self.measures;
        let film = match self.place {
            Place::Oven => self.oven_film_w_m2k(temp_c, measures.emissivity, cond),
            Place::Sink | Place::IceBath => self.bath_film_w_m2k(cond),
            _ => practice::FILM_RIM,
        };
        let wall_height = depth_m + measures.rim_m(measures.height_m - depth_m, film);
        let wall_m2 = std::f64::consts::PI * measures.diameter_m * wall_height;
        let air_c = cond.air_c(self.place);
        match self.place {
            Place::Oven => {
                let top = if self.in_oven_air() {
                    0.0
                } else {
                    self.oven_top_w_m2k(temp_c, film, cond)
                };
                let all = top * measures.area_m2 + film * (measures.area_m2 + wall_m2);
                all * (temp_c - cond.oven.temp_c)
            }
            Place::Sink | Place::IceBath => {
                let bath_c = cond.bath_c(self.place).unwrap_or(air_c);
                let bathed = self.bath_film_w_m2k(cond) * (wall_m2 + measures.area_m2) * (temp_c - bath_c);
                bathed + self.top_flux_w_m2(temp_c, cond) * measures.area_m2
            }
            Place::Hob | Place::Counter | Place::Refrigerator | Place::Freezer => {
                let Skin { top_k, wall_k, base_k } = self.skin;
                let housed = measures.kind == PotKind::SlowCooker;
                let wall_m2 = if housed { practice::HOUSING * wall_m2 } else { wall_m2 };
                self.wall_flux_w_m2(temp_c - wall_k, wall_height, cond) * wall_m2
                    + self.top_flux_w_m2(temp_c - top_k, cond) * measures.area_m2
                    + self.base_flux_w_m2(temp_c - base_k, cond) * measures.area_m2
            }
        }
    }

    pub(super) fn surface(&self, temp_c: f64, cond: &Conditions) -> Surface {
        let air_c = if self.place == Place::Oven {
            cond.oven.temp_c
        } else {
            cond.air_c(self.place)
        };
        Surface {
            temp_c,
            diameter_m: self.measures.diameter_m,
            air_c,
            vapour_kpa: cond.vapour_kpa(self.place),
            pressure_kpa: cond.pressure_kpa,
        }
    }

    /// What may evaporate, kg/s, while a cook brings it to the boil: near the boil the laws' bracket reaches beyond
    /// what a burner gives, yet an open pot on full heat does boil.
    fn most_vapour_kg_s(&self, loss_w: f64, latent_j_kg: f64, cond: &Conditions) -> f64 {
        let most_w = self.most_power_w(cond);
        if self.aim != Aim::Boil || self.place != Place::Hob || most_w <= 0.0 {
            return f64::MAX;
        }
        practice::EVAPORATES_AT_MOST * (most_w - loss_w).max(0.0) / latent_j_kg
    }

    /// From an oven's air and walls to a face at a temperature, W/(m²·K): convection, and radiation between grey surfaces of
    /// which the walls are much the larger.
    pub(super) fn oven_film_w_m2k(&self, face_c: f64, emissivity: f64, cond: &Conditions) -> f64 {
        cond.oven.convection_w_m2k + radiation_w_m2k(emissivity, face_c, cond.oven.temp_c)
    }

    /// The same through the top. A lid in an oven is hotter than the liquid: nothing condenses on it, and past its own film
    /// the heat has to radiate down from it and cross the air under it.
    fn oven_top_w_m2k(&self, temp_c: f64, lid_film: f64, cond: &Conditions) -> f64 {
        let open = self.oven_film_w_m2k(temp_c, practice::WET_EMISSIVITY, cond);
        let mean_c = 0.5 * (temp_c + cond.oven.temp_c);
        let between = 1.0 / (1.0 / self.measures.emissivity + 1.0 / practice::WET_EMISSIVITY - 1.0);
        let free_m = (self.measures.height_m - self.depth_m()).max(0.005);
        let gap = radiation_w_m2k(between, temp_c, mean_c) + Air::at(mean_c, cond.pressure_kpa).conductivity / free_m;
        let lidded = 1.0 / (1.0 / lid_film + 1.0 / gap);
        match self.cover {
            Cover::Off => open,
            Cover::Ajar => 0.5 * (open + lidded),
            Cover::On => lidded,
        }
    }

    /// How many times as much evaporates in an oven's air, or a fan's, as its own buoyancy would carry off.
    fn stirred_vapour(&self, law: &Bracket, face_c: f64, cond: &Conditions) -> f64 {
        match self.place {
            Place::Oven => cond.oven.convection_w_m2k / law.convection_w_m2k.max(1e-9),
            _ => self.blown_vapour(face_c, cond),
        }
    }

    /// The surface that evaporates, m²: a film of a millimetre no longer covers the bottom.
    fn wet_m2(&self) -> f64 {
        let area_m2 = self.measures.area_m2;
        area_m2 * (self.liquid_m3() / area_m2 / 1e-3).min(1.0)
    }

    /// The word of heat a pot is kept at, and what it was weighed to lose there, kg/(s·m²).
    pub(super) fn weighed_kg_s_m2(&self) -> Option<f64> {
        let at = match self.aim {
            Aim::BelowBoil => Heated::BelowBoil,
            Aim::Simmer => Heated::Simmer,
            Aim::Boil => Heated::Boil,
            _ => return None,
        };
        let on_hob = self.place == Place::Hob;
        let found = self
            .weighed
            .iter()
            .find(|(cover, word, _)| *cover == self.cover && *word == at && on_hob);
        found.map(|(.., rate)| *rate)
    }

    /// The laws of evaporation at a face, in the air that is there.
    fn law(&self, face_c: f64, latent_j_kg: f64, cond: &Conditions) -> Law {
        let bracket = self.surface(face_c, cond).bracket(latent_j_kg);
        let stirred = self.stirred_vapour(&bracket, face_c, cond);
        Law { bracket, stirred }
    }

    /// Whether anything evaporates below the boil.
    fn evaporates(&self, cond: &Conditions) -> bool {
        cond.losses && self.liquid.kg(Stuff::Water) > 0.0 && self.sealed.is_none()
    }

    /// Evaporation below the boil from a face at a temperature, kg/s, past the lid there is.
    pub(super) fn vapour_kg_s(&self, face_c: f64, latent_j_kg: f64, cond: &Conditions) -> f64 {
        if !self.evaporates(cond) {
            return 0.0;
        }
        let law = self.law(face_c, latent_j_kg, cond);
        law.kg_s_m2() * law.bracket.moved_by(cond.evaporation) * self.wet_m2() * cond.cover_share(self.cover)
    }

    /// The cool skin of a pot kept hot over a fire, open, by what evaporates, convects and radiates there; the laws at the
    /// temperature of the liquid and at its face. What stands is reckoned as stirred, and in an oven the air heats the face:
    /// neither has a skin.
    fn skinned(&self, temp_c: f64, latent_j_kg: f64, cond: &Conditions) -> (CoolSkin, Law, Law) {
        let bulk = self.law(temp_c, latent_j_kg, cond);
        if self.place != Place::Hob || !self.is_heated(cond) {
            return (CoolSkin::NONE, bulk, bulk);
        }
        let skin = cool_skin(temp_c, |face_c| {
            let own = if face_c < temp_c {
                self.law(face_c, latent_j_kg, cond)
            } else {
                bulk
            };
            let air_c = cond.air_c(self.place);
            own.over(&bulk).kg_s_m2() * latent_j_kg
                + own.bracket.convection_w_m2k * (face_c - air_c)
                + radiation_w_m2(practice::WET_EMISSIVITY, face_c, air_c)
        });
        (skin, bulk, self.law(temp_c - skin.kelvins, latent_j_kg, cond))
    }

    /// Evaporation below the boil past the lid there is, kg/s, and its slope by the temperature of the liquid.
    fn vapour_line(&self, temp_c: f64, latent_j_kg: f64, cond: &Conditions) -> (f64, f64) {
        if !self.evaporates(cond) {
            return (0.0, 0.0);
        }
        // The laws hold below the boil.
        let temp_c = temp_c.min(self.boil_c) - self.skin.top_k;
        let (skin, bulk, face) = self.skinned(temp_c, latent_j_kg, cond);
        let rate = face.over(&bulk).kg_s_m2();
        if rate <= 0.0 {
            return (0.0, 0.0);
        }
        let here = rate * self.moved(&bulk.bracket, latent_j_kg, cond);
        if skin.kelvins <= 0.0 {
            let more = self.law(temp_c + 1.0, latent_j_kg, cond).kg_s_m2();
            return (here, here * (more / rate - 1.0).max(0.0));
        }
        // As straight in the logarithm as vapour pressure is: the face's own laws follow the face, Carrier's the liquid.
        let carrier = libm::log(bulk.bracket.carrier / face.bracket.carrier.max(1e-12)) / 3.0;
        let films = libm::log(bulk.kg_s_m2() / rate);
        let per_k = (carrier + skin.follows * films) / skin.kelvins;
        (here, here * per_k.clamp(0.0, 1.0))
    }

    /// What a kitchen makes of the rate by the laws, m²: its spread, understood at the temperature of the liquid, its surface
    /// and its lid; or what was weighed where the pot is kept, and by the laws on the way there.
    fn moved(&self, bulk: &Bracket, latent_j_kg: f64, cond: &Conditions) -> f64 {
        let kept_c = self.target_c(cond).filter(|kept| *kept < self.boil_c);
        if let (Some(weighed), Some(kept_c)) = (self.weighed_kg_s_m2(), kept_c) {
            let (_, bulk, face) = self.skinned(kept_c, latent_j_kg, cond);
            return weighed * self.measures.area_m2 / face.over(&bulk).kg_s_m2().max(1e-12);
        }
        bulk.moved_by(cond.evaporation) * self.wet_m2() * cond.cover_share(self.cover)
    }
}
