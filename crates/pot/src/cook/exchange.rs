//! What a vessel exchanges with its surroundings: heat and vapour, as straight lines about a temperature.
//!
//! The correlations are costly and change slowly: they are evaluated when the vessel has moved by a kelvin and kept as
//! value and slope between.

use crate::cook::cold::Skin;
use crate::cook::conditions::Conditions;
use crate::cook::practice;
use crate::cook::vessel::VesselState;
use crate::physics::evaporation::Surface;
use crate::physics::water::latent_heat;
use crate::{Aim, Place, Stuff};

/// Heat lost and vapour driven off near a temperature.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Exchange {
    valid: bool,
    at_c: f64,
    wetted_m: f64,
    skin: Skin,
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
            || self.skin.moved_k(&old.skin) > 0.5;
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
        let wall_height = (depth_m + practice::WARM_RIM_M).min(measures.height_m);
        let wall_m2 = std::f64::consts::PI * measures.diameter_m * wall_height;
        let air_c = cond.air_c(self.place);
        match self.place {
            Place::Oven => {
                let open = if self.in_oven_air() { 0.0 } else { measures.area_m2 };
                cond.oven_film * (open + measures.area_m2 + wall_m2) * (temp_c - self.oven_c(cond))
            }
            Place::Sink | Place::IceBath => {
                let bath_c = cond.bath_c(self.place).unwrap_or(air_c);
                let bathed = self.bath_film_w_m2k(cond) * (wall_m2 + measures.area_m2) * (temp_c - bath_c);
                bathed + self.top_flux_w_m2(temp_c, cond) * measures.area_m2
            }
            Place::Hob | Place::Counter | Place::Refrigerator | Place::Freezer => {
                let Skin { top_k, wall_k, base_k } = self.skin;
                self.wall_flux_w_m2(temp_c - wall_k, wall_height, cond) * wall_m2
                    + self.top_flux_w_m2(temp_c - top_k, cond) * measures.area_m2
                    + self.base_flux_w_m2(temp_c - base_k, cond) * measures.area_m2
            }
        }
    }

    pub(super) fn surface(&self, temp_c: f64, cond: &Conditions) -> Surface {
        let air_c = if self.place == Place::Oven {
            self.oven_c(cond)
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

    /// Evaporation below the boil, kg/s, past the lid there is.
    pub(super) fn vapour_kg_s(&self, temp_c: f64, latent_j_kg: f64, cond: &Conditions) -> f64 {
        let water = self.liquid.kg(Stuff::Water);
        if !cond.losses || water <= 0.0 {
            return 0.0;
        }
        // The laws hold below the boil; a film of a millimetre no longer covers the bottom.
        let temp_c = temp_c.min(self.boil_c) - self.skin.top_k;
        let covered = (self.liquid_m3() / self.measures.area_m2 / 1e-3).min(1.0);
        let still = self.surface(temp_c, cond).bracket(latent_j_kg).moved(cond.evaporation);
        let rate = still * self.blown_vapour(temp_c, cond);
        rate / 3600.0 * self.measures.area_m2 * covered * cond.cover_share(self.cover)
    }
}
