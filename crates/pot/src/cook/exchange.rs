//! What a vessel exchanges with its surroundings: heat and vapour, as straight lines about a temperature.
//!
//! The correlations are costly and change slowly: they are evaluated when the vessel has moved by a kelvin and kept as
//! value and slope between.

use crate::cook::cold::Skin;
use crate::cook::conditions::Conditions;
use crate::cook::practice;
use crate::cook::vessel::VesselState;
use crate::physics::evaporation::Surface;
use crate::physics::film::{Air, radiation_w_m2k};
use crate::physics::water::latent_heat;
use crate::{Aim, Heated, Place, PotKind, Stuff};
use potwright_manuscript::Cover;

/// Bubbles wet the wall from here up, kelvins below the boil, and do so fully so much nearer to it (common practice, no
/// source: a simmer is 2.5 to 11 K below).
const BUBBLES_BELOW_K: f64 = 5.0;
const BUBBLES_OVER_K: f64 = 9.0;

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
        let (vapour, more_vapour) = (
            self.vapour_kg_s(temp, latent_j_kg, cond).min(most),
            self.vapour_kg_s(temp + step, latent_j_kg, cond).min(most),
        );
        self.exchange = Exchange {
            valid: true,
            at_c: temp,
            wetted_m: depth,
            skin: self.skin,
            oven_c: cond.oven.temp_c,
            loss_w: loss,
            loss_slope_w_k: ((more_loss - loss) / step).max(0.0),
            vapour_kg_s: vapour,
            vapour_slope_kg_s_k: ((more_vapour - vapour) / step).max(0.0),
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

    /// How many times as much evaporates in an oven's air as its own buoyancy would carry off.
    fn stirred_vapour(&self, temp_c: f64, cond: &Conditions) -> f64 {
        match self.place {
            Place::Oven => cond.oven.convection_w_m2k / self.surface(temp_c, cond).convection_w_m2k().max(1e-9),
            _ => self.blown_vapour(temp_c, cond),
        }
    }

    /// The surface that evaporates, m²: that of the liquid, and near the simmer the wall above it that the bubbles keep wet.
    fn wet_m2(&self, temp_c: f64) -> f64 {
        let measures = &self.measures;
        let dry_m = (measures.height_m - self.depth_m()).max(0.0);
        let bubbles = (1.0 - (self.boil_c - temp_c - BUBBLES_BELOW_K) / BUBBLES_OVER_K).clamp(0.0, 1.0);
        let wall_m = practice::WET_WALL_M.min(dry_m) * bubbles;
        let covered = (self.liquid_m3() / measures.area_m2 / 1e-3).min(1.0);
        measures.area_m2 * covered + std::f64::consts::PI * measures.diameter_m * wall_m
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

    /// Evaporation below the boil, kg/s, past the lid there is.
    pub(super) fn vapour_kg_s(&self, temp_c: f64, latent_j_kg: f64, cond: &Conditions) -> f64 {
        let water = self.liquid.kg(Stuff::Water);
        if !cond.losses || water <= 0.0 || self.sealed.is_some() {
            return 0.0;
        }
        // The laws hold below the boil; a film of a millimetre no longer covers the bottom.
        let temp_c = temp_c.min(self.boil_c) - self.skin.top_k;
        let law = |temp_c: f64| self.surface(temp_c, cond).bracket(latent_j_kg);
        let kept_c = self.target_c(cond).filter(|kept| *kept < self.boil_c);
        if let (Some(weighed), Some(kept_c)) = (self.weighed_kg_s_m2(), kept_c) {
            // As weighed where it is kept, and by the laws on the way there.
            let share = law(temp_c).mean() / law(kept_c).mean().max(1e-9);
            return weighed * self.measures.area_m2 * share;
        }
        let rate = law(temp_c).moved(cond.evaporation) * self.stirred_vapour(temp_c, cond);
        rate / 3600.0 * self.wet_m2(temp_c) * cond.cover_share(self.cover)
    }
}
