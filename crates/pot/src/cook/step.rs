//! One step of one vessel: heat, vapour and pieces together, implicit in the liquid's temperature.
//!
//! The new profile of every piece is a straight line in the new temperature of the liquid, and so are losses and
//! evaporation; so the liquid's new temperature is one division. What flows is then booked once, in the vessel and in
//! the ledger alike.

use crate::cook::conditions::Conditions;
use crate::cook::fire::Passed;
use crate::cook::group::Group;
use crate::cook::practice;
use crate::cook::vessel::VesselState;
use crate::physics::alcohol;
use crate::physics::conduction::{CELLS, Step, Stepper, TWO_STAGES};
use crate::physics::properties::{specific_enthalpy, water_enthalpy};
use crate::physics::water::saturation_kpa;
use crate::{Aim, Ledger, Matter, Place, Stuff};
use potwright_manuscript::Cover;

/// A profile no farther from the temperature outside than this, kelvins, is even.
const EVEN_K: f64 = 0.05;
/// How much longer a step may be than the one before.
pub(super) const GROWTH: f64 = 2.0;
/// Biot number of a surface that has the temperature outside.
const HELD: f64 = 1e6;
/// Temperature that moves no more in a step, kelvins, and matter that moves no more between pieces and liquid, share of
/// all there is: so calm a vessel may take steps of minutes.
const CALM_K: f64 = 0.25;
const CALM_SHARE: f64 = 2e-3;

/// What lies around pieces: the air of an oven, with a film in W/(m²·K) over what they show of themselves, or the liquid
/// and the bottom they share a temperature with, with a film over their whole surface.
#[derive(Clone, Copy, Debug)]
enum Around {
    Air { temp_c: f64, film: f64 },
    Liquid { film: f64 },
}

/// What a step would do.
#[derive(Clone, Copy, Debug)]
pub(super) struct Plan {
    pub(super) dt_s: f64,
    /// Rise of the liquid, kelvins.
    pub(super) rise_k: f64,
    passed: Passed,
    /// Water that leaves from the surface and as steam.
    surface_kg: f64,
    boiled_kg: f64,
    /// Share of the step after which the liquid first boils or reaches what is aimed at; none if it does not.
    pub(super) crossing: Option<f64>,
}

impl VesselState {
    /// What lies around the pieces now.
    fn around(&self, cond: &Conditions) -> Around {
        let surface: f64 = self.groups.iter().map(Group::surface_m2).sum::<f64>().max(1e-9);
        let area = self.measures.area_m2;
        if self.in_oven_air() {
            // Packed in a dish, pieces show the air no more than the dish lets them.
            let shown: f64 = self.groups.iter().map(Group::shown_m2).sum::<f64>().max(1e-9);
            let mean_c = self.pieces_mean_c().unwrap_or(self.temp_c);
            let film = self.oven_film_w_m2k(mean_c, practice::WET_EMISSIVITY, cond);
            return Around::Air {
                temp_c: cond.oven.temp_c,
                film: film * (practice::SHOWN_DISH * area / shown).min(1.0),
            };
        }
        let pan = self.pan_film(surface, cond);
        let below = self.boil_c - self.temp_c;
        let liquid = if !self.covers_pieces() {
            practice::FILM_SCANT
        } else if below < 1.0 {
            practice::FILM_BOIL
        } else if below < 14.0 {
            practice::FILM_SIMMER
        } else {
            practice::FILM_STILL
        };
        let pieces: f64 = self.groups.iter().map(Group::total_kg).sum();
        let fries = self.fries() && self.water_kg() < 0.25 * pieces;
        Around::Liquid {
            film: if fries { pan } else { liquid },
        }
    }

    /// Prepares every group's answer to the liquid's temperature; gives heat taken if that stays, and per kelvin.
    fn respond(&mut self, dt_s: f64, cond: &Conditions) -> (f64, f64) {
        let around = self.around(cond);
        let (temp_c, boil_c) = (self.temp_c, self.boil_c);
        let (mut heat, mut slope) = (0.0, 0.0);
        for group in &mut self.groups {
            match around {
                Around::Air { temp_c, film } => {
                    let share = group.shown_m2() / group.surface_m2().max(1e-9);
                    let film = group.past_crust(film) * share;
                    group.respond(dt_s, film, temp_c, boil_c);
                }
                Around::Liquid { film } => {
                    group.respond(dt_s, film, temp_c, boil_c);
                    heat += group.heat_base_j;
                    slope += group.heat_slope_j_k;
                }
            }
        }
        (heat, slope)
    }

    /// What a step of this length would do.
    pub(super) fn plan(&mut self, dt_s: f64, cond: &Conditions) -> Plan {
        self.refresh_exchange(cond);
        let (piece_heat, piece_slope) = self.respond(dt_s, cond);
        let (loss, loss_slope) = self.exchange.loss(self.temp_c);
        let (vapour, vapour_slope) = self.vapour_in(dt_s);
        let latent = self.exchange.latent(self.temp_c.min(self.boil_c)).max(1.0e6);
        let capacity = self.content().capacity_at(self.heat_j, self.temp_c)
            + piece_slope
            + dt_s * (loss_slope + vapour_slope * latent);
        let capacity = capacity.max(1e-9);
        let drain = piece_heat + dt_s * (loss + vapour * latent);
        let most = self.most_power_w(cond);
        // A cook does not force what has hardly any liquid left.
        let driven_w = self.driven_kg_s(cond).min(self.water_kg() / dt_s) * latent;
        let steady_w = (drain / dt_s + driven_w).max(0.0);
        // A cook counts on what plate and base still hold, and on what they will hold at the power that keeps the food.
        let lacks_j = self.fire.lacks_j(steady_w);
        let knob_w = self.kept_c(cond).map_or(most, |target| {
            let needed = drain + capacity * (target - self.temp_c) + lacks_j;
            (needed / dt_s + driven_w).clamp(0.0, most)
        });
        self.fire.ready(dt_s);
        let passed = self.fire.pass(knob_w, dt_s);
        let free_rise = (dt_s * passed.into_food_w - drain) / capacity;
        let to_boil = self.boil_c - self.temp_c;
        let water = self.water_kg();
        let mut boiled_kg = 0.0;
        let mut rise_k = free_rise;
        if water > 0.0 && free_rise > to_boil {
            let there = (water - dt_s * (vapour + vapour_slope * to_boil)).max(0.0);
            boiled_kg = ((free_rise - to_boil) * capacity / latent).min(there);
            rise_k = free_rise - boiled_kg * latent / capacity;
        }
        let full_w = self.fire.pass(most, dt_s).into_food_w;
        let given = |watts: f64| (dt_s * watts - drain) / capacity;
        let crossing = self.crossing(given(full_w), given(most), lacks_j / capacity, cond);
        Plan {
            dt_s,
            rise_k,
            passed,
            surface_kg: (dt_s * (vapour + vapour_slope * rise_k)).clamp(0.0, water),
            boiled_kg,
            crossing,
        }
    }

    /// The temperature the knob is turned for, °C; none where it stays as it is: what is brought to the boil has all the
    /// burner gives until it boils.
    fn kept_c(&self, cond: &Conditions) -> Option<f64> {
        let brought = |target: &f64| *target >= self.boil_c && !self.watch.boiled && self.can_boil();
        self.target_c(cond).filter(|target| !brought(target))
    }

    /// Evaporation below the boil, kg/s, and its slope, no more than there is water for in a step.
    fn vapour_in(&self, dt_s: f64) -> (f64, f64) {
        let (rate, slope) = self.exchange.vapour(self.temp_c);
        let most = self.water_kg() / dt_s;
        if rate > most { (most, 0.0) } else { (rate, slope) }
    }

    /// Share of a step after which, at full power, the food first reaches the boil or a cook turns the knob down: what plate
    /// and base hold counts as given. Rises in kelvins: of the food, of what the knob gives, and what the stores lack.
    fn crossing(&self, rise_k: f64, given_k: f64, lacks_k: f64, cond: &Conditions) -> Option<f64> {
        let to_boil = self.boil_c - self.temp_c;
        let (distance, full_rise_k, least) = match self.target_c(cond) {
            Some(target) if target < self.boil_c => (target - self.temp_c + lacks_k, given_k, 0.5),
            // Once it boils it hovers there.
            _ if self.watch.boiled => return None,
            _ => (to_boil, rise_k, 0.02),
        };
        (distance > least && full_rise_k > distance).then(|| distance / full_rise_k)
    }

    /// Vapour that a cook drives off on purpose at the boil, beyond what leaves by itself, or lets go by the valve, kg/s.
    fn driven_kg_s(&self, cond: &Conditions) -> f64 {
        match self.aim {
            Aim::Boil => {
                let usual = cond.rolling_kg_s_m2 * cond.cover_share(self.cover);
                let rate = self.weighed_kg_s_m2().unwrap_or(usual);
                (rate * self.measures.area_m2 - self.exchange.vapour(self.boil_c).0).max(0.0)
            }
            Aim::Pressure(_) => cond.vents_kg_s,
            _ => 0.0,
        }
    }

    /// Opens a lid that is under pressure: what is hotter than the boil at the air's pressure flashes off until it is not.
    pub(super) fn open(&mut self, cond: &Conditions, ledger: &mut Ledger) {
        if self.sealed.take().is_none() {
            return;
        }
        self.cover = Cover::Off;
        self.settle(cond);
        // The latent heat is not quite that of the mean: twice is exact enough.
        for _ in 0..2 {
            let over_j = self.content().capacity_at(self.heat_j, self.temp_c) * (self.temp_c - self.boil_c);
            if over_j > 0.0 {
                self.drive_off(0.0, over_j / cond.boiling_latent, self.boil_c, cond, ledger);
                self.settle(cond);
            }
        }
        self.disturb();
    }

    /// Does the step and books it.
    pub(super) fn apply(&mut self, plan: &Plan, cond: &Conditions, ledger: &mut Ledger) {
        let dt_s = plan.dt_s;
        let (loss, loss_slope) = self.exchange.loss(self.temp_c);
        let lost_j = dt_s * (loss + loss_slope * plan.rise_k);
        self.power_w = plan.passed.into_pot_w;
        self.fire.take(&plan.passed);
        self.boiled_kg = plan.boiled_kg;
        self.heat_j += dt_s * plan.passed.into_food_w - lost_j;
        ledger.burner_j += dt_s * self.power_w;
        let in_oven = self.place == Place::Oven;
        if in_oven {
            ledger.oven_j -= lost_j;
        } else {
            ledger.room_j += lost_j;
        }
        let air = self.in_oven_air();
        let boil_c = self.boil_c;
        for group in &mut self.groups {
            let taken = group.take_heat(if air { 0.0 } else { plan.rise_k });
            if air {
                ledger.oven_j += taken;
            } else {
                self.heat_j -= taken;
            }
            group.drive_off(boil_c, cond, ledger);
        }
        let new_c = self.temp_c + plan.rise_k;
        self.drive_off(plan.surface_kg, plan.boiled_kg, new_c, cond, ledger);
        self.rate_k_s = plan.rise_k / dt_s;
    }

    /// Water and the alcohol that goes with it leave as vapour.
    fn drive_off(&mut self, surface_kg: f64, boiled_kg: f64, temp_c: f64, cond: &Conditions, ledger: &mut Ledger) {
        let before = self.water_kg();
        let gone = self.liquid.evaporate(Stuff::Water, surface_kg + boiled_kg);
        if gone <= 0.0 {
            return;
        }
        let steam_c = temp_c.min(self.boil_c);
        let mut joules = gone * (water_enthalpy(steam_c) + self.exchange.latent(steam_c).max(1.0e6));
        let spirit = self.liquid.kg(Stuff::Alcohol);
        if spirit > 0.0 {
            let alpha = alcohol::relative_volatility(alcohol::mole_fraction(before, spirit));
            let leaving = alcohol::Leaving {
                boiled: boiled_kg / gone,
                past_lid: cond.cover_share(self.cover),
                humidity: cond.vapour_kpa(self.place) / saturation_kpa(temp_c).max(1e-6),
            };
            let volatility = alcohol::volatility(alpha, leaving);
            let left = alcohol::left_after(spirit, before, before - gone, volatility);
            let flown = self.liquid.evaporate(Stuff::Alcohol, spirit - left);
            joules += flown * (specific_enthalpy(Stuff::Alcohol, steam_c) + alcohol::LATENT_J_KG);
            ledger.vapour.mass_kg[Stuff::Alcohol as usize] += flown;
        }
        self.heat_j -= joules;
        ledger.vapour_j += joules;
        #[cfg(test)]
        if cond.fault == Some(super::Fault::VapourForgotten) {
            return;
        }
        let _ = cond;
        ledger.vapour.add(&Matter::of(Stuff::Water, gone));
    }

    /// After as long as was to be tried the next step may be longer; short ones, cut by the clock or by a neighbour, add up.
    pub(super) fn grow_step(&mut self, dt_s: f64) {
        self.tried_s += dt_s;
        if self.tried_s >= 0.99 * rounded_s(self.step_s) {
            self.step_s = (GROWTH * self.step_s).min(1e4);
            self.tried_s = 0.0;
        }
    }

    /// The longest step that is still accurate, seconds.
    pub(super) fn longest_step_s(&self, cond: &Conditions) -> f64 {
        let rate = self.rate_k_s.abs().max(1e-9);
        let heated = self.is_heated(cond);
        let quiet = self.temp_c < 45.0 && !heated && rate < 0.002;
        let mut longest: f64 = if quiet { 600.0 } else { 60.0 };
        // Where neither temperature nor matter moves, a step may be long.
        let calm = (CALM_K / rate).min(CALM_SHARE * self.mass_kg() / self.flow_kg_s.max(1e-12));
        longest = longest.max(calm.min(if heated { 300.0 } else { 600.0 }));
        // Evaporation grows fast on the way up to the boil: steps are the shorter there.
        let nears_boil = heated && self.rate_k_s > 0.0 && self.temp_c > 75.0 && self.temp_c < self.boil_c;
        let most_k = if nears_boil && !self.fries() { 1.0 } else { 4.0 };
        longest = longest.min((most_k / rate).max(0.5));
        if heated && !self.groups.is_empty() && (self.fries() || !self.covers_pieces()) {
            longest = longest.min(16.0);
        }
        let outside = if self.in_oven_air() {
            cond.oven.temp_c
        } else {
            self.temp_c
        };
        for group in &self.groups {
            if group.even {
                continue;
            }
            let farthest = group.profile.farthest_k(if group.held { self.boil_c } else { outside });
            if farthest > 4.0 {
                longest = longest.min((0.3 * group.lag_s()).max(4.0));
            } else if farthest > 2.0 * CALM_K && longest > 60.0 {
                longest = longest.min((0.3 * group.lag_s()).max(60.0));
            }
        }
        #[cfg(test)]
        let longest = longest.min(cond.finest_s);
        longest.min(self.step_s)
    }
}

/// Steps are of few lengths, so that what was reckoned for one serves the next: the longest of these that is allowed.
pub(super) fn rounded_s(dt_s: f64) -> f64 {
    const LENGTHS: [f64; 15] = [
        1.0, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0, 12.0, 16.0, 24.0, 32.0, 60.0, 120.0, 300.0, 600.0,
    ];
    LENGTHS
        .iter()
        .rev()
        .find(|length| **length <= dt_s + 1e-6)
        .copied()
        .unwrap_or(dt_s)
}

impl Group {
    /// Prepares the answer to the temperature outside after a step.
    fn respond(&mut self, dt_s: f64, film_w_m2k: f64, outside_c: f64, boil_c: f64) {
        let capacity = self.settled.capacity(self.mean_c);
        let (conductivity, diffusivity, radius) = self.thermal(capacity);
        let fourier = diffusivity * dt_s / (radius * radius);
        let biot = film_w_m2k * radius / conductivity.max(1e-3);
        // A film is not known to two per cent: what was reckoned for one serves its neighbours.
        if (biot - self.biot).abs() > 0.02 * self.biot {
            self.biot = biot;
        }
        self.held = false;
        if outside_c > boil_c && self.is_moist() && self.profile.surface_c(self.biot, outside_c) >= boil_c {
            let given = film_w_m2k * self.surface_m2() * dt_s;
            self.conduct(dt_s, fourier, HELD, boil_c, capacity);
            self.conducted_j = self.heat_base_j;
            if given * (outside_c - boil_c) >= self.conducted_j {
                self.held = true;
                self.heat_base_j = given * (outside_c - boil_c);
                self.heat_slope_j_k = given;
                return;
            }
        }
        self.conduct(dt_s, fourier, self.biot, outside_c, capacity);
    }

    /// A piece that is nearly dry browns through and is no longer held at the boil.
    fn is_moist(&self) -> bool {
        self.matter.kg(Stuff::Water) >= 0.05 * self.matter.total_kg()
    }

    /// Prepares the step of the profile past a film.
    fn conduct(&mut self, dt_s: f64, fourier: f64, biot: f64, outside_c: f64, capacity: f64) {
        self.even = self.profile.farthest_k(outside_c) < EVEN_K;
        if self.even {
            // As warm as outside all through: it follows as a whole.
            self.heat_base_j = 0.0;
            self.heat_slope_j_k = capacity * dt_s / (dt_s + self.lag_s());
            return;
        }
        let stiff = fourier * (CELLS * CELLS) as f64 > 6.0;
        let theta = if self.fresh > 0 || stiff { TWO_STAGES } else { 0.5 };
        let step = Step { fourier, biot, theta };
        let form = self.profile.form;
        let stepper = self.stepper.get_or_insert_with(|| Box::new(Stepper::new(form, step)));
        if !stepper.fits(form, &step) {
            stepper.prepare(form, step);
        }
        self.base = stepper.base(&self.profile, outside_c);
        let warmed = crate::physics::conduction::mean(form, &self.base);
        self.heat_base_j = capacity * (warmed - self.mean_c);
        self.heat_slope_j_k = capacity * stepper.mean_slope;
    }

    /// Completes the step; gives the heat taken, joules.
    fn take_heat(&mut self, rise_k: f64) -> f64 {
        let taken = self.heat_base_j + self.heat_slope_j_k * rise_k;
        // An even profile is moved as a whole when the temperature is settled.
        if let (false, Some(stepper)) = (self.even, &self.stepper) {
            stepper.finish(&mut self.profile, &self.base, if self.held { 0.0 } else { rise_k });
        }
        if self.held {
            self.steam_j = (taken - self.conducted_j).max(0.0);
        }
        self.heat_j += taken;
        self.fresh = self.fresh.saturating_sub(1);
        taken
    }

    /// No part of a moist piece gets hotter than the boil: the surplus drives its water off.
    fn drive_off(&mut self, boil_c: f64, cond: &Conditions, ledger: &mut Ledger) {
        let over = self.profile.cells_c[CELLS - 1] > boil_c;
        let mut surplus = std::mem::take(&mut self.steam_j);
        if !(over || surplus > 0.0) || !self.is_moist() {
            return;
        }
        let capacity = self.settled.capacity(self.mean_c);
        for cell in 0..CELLS {
            let over = self.profile.cells_c[cell] - boil_c;
            if over > 0.0 {
                surplus += over * self.profile.share(cell) * capacity;
                self.profile.cells_c[cell] = boil_c;
            }
        }
        // Water that boils off at the surface has come from all over the piece: it is warmed from the mean first.
        let steam = water_enthalpy(boil_c) + cond.boiling_latent;
        let gone = self.matter.evaporate(
            Stuff::Water,
            surplus / (steam - water_enthalpy(self.mean_c.min(boil_c))),
        );
        self.heat_j -= gone * steam;
        ledger.vapour.mass_kg[Stuff::Water as usize] += gone;
        ledger.vapour_j += gone * steam;
    }
}
