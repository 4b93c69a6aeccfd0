//! Cooling of hot food: how long its warmest place takes from 57 °C to 21 and to 5 °C.
//!
//! What is thin mixes by itself and is as warm everywhere as on the mean. What is thick conducts: its centre lags, and
//! the cautious answer is the warmer of the two. The centre of a short cylinder is the product of a long cylinder and a
//! slab (exact for a uniform start and constant surroundings); when the surroundings change, another such product is
//! added, for the equation is linear.

use crate::cook::conditions::Conditions;
use crate::cook::vessel::VesselState;
use crate::physics::conduction::{CELLS, Form, Profile, Step, Stepper};
use crate::physics::properties;
use crate::{Cooling, Matter, Place, Stuff};

/// The clock of the two-stage rule of the FDA Food Code (3-501.14): from 57 °C to 21 °C and to 5 °C.
const FROM_C: f64 = 57.0;
const STAGE_ONE_C: f64 = 21.0;
const TOTAL_C: f64 = 5.0;
/// From here on a liquid no longer mixes by itself: gelatinised starch by mass, or pieces by volume (common practice,
/// no source).
const THICK_STARCH: f64 = 0.02;
const THICK_PIECES: f64 = 0.35;

/// One product solution: cylinder × slab, falling from one to nought.
#[derive(Clone, Debug)]
struct Product {
    amplitude_k: f64,
    round: Profile,
    flat: Profile,
}

/// A cooling that is being followed.
#[derive(Clone, Debug)]
pub(super) struct Follow {
    products: Vec<Product>,
    outside_c: f64,
    fresh: u8,
    /// Seconds at which the warmest place passed 57, 21 and 5 °C.
    passed_s: [Option<f64>; 3],
    last: Option<(f64, f64)>,
    start_s: f64,
    counter_only: bool,
    acid: f64,
}

impl Follow {
    pub(super) fn new(time_s: f64, temp_c: f64, outside_c: f64) -> Self {
        let mut follow = Follow {
            products: Vec::new(),
            outside_c,
            fresh: 3,
            passed_s: [None; 3],
            last: Some((time_s, temp_c)),
            start_s: time_s,
            counter_only: true,
            acid: 0.0,
        };
        follow.add(temp_c - outside_c);
        follow
    }

    fn add(&mut self, amplitude_k: f64) {
        self.products.push(Product {
            amplitude_k,
            round: Profile::uniform(Form::Cylinder, 1.0),
            flat: Profile::uniform(Form::Slab, 1.0),
        });
        self.fresh = 3;
    }

    /// Something was stirred in or poured out: what was known of the inside no longer holds, the clock goes on.
    pub(super) fn restart(&mut self, _liquid: &Matter) {
        self.products.clear();
    }

    /// Temperature of the centre by conduction alone, °C.
    fn centre_c(&self) -> f64 {
        self.outside_c
            + self
                .products
                .iter()
                .map(|p| p.amplitude_k * p.round.centre_c() * p.flat.centre_c())
                .sum::<f64>()
    }

    /// Conducts for a step; radius and half height in metres, film in W/(m²·K).
    fn conduct(&mut self, dt_s: f64, body: &Body) {
        let stepper = |form, size_m: f64| {
            let fourier = body.diffusivity * dt_s / (size_m * size_m);
            let stiff = fourier * (CELLS * CELLS) as f64 > 6.0;
            let theta = if self.fresh > 0 || stiff { 1.0 } else { 0.5 };
            Stepper::new(
                form,
                Step {
                    fourier,
                    biot: body.film * size_m / body.conductivity,
                    theta,
                },
            )
        };
        let (round, flat) = (
            stepper(Form::Cylinder, body.radius_m),
            stepper(Form::Slab, body.half_height_m),
        );
        for product in &mut self.products {
            for (stepper, profile) in [(&round, &mut product.round), (&flat, &mut product.flat)] {
                let base = stepper.base(profile, 0.0);
                stepper.finish(profile, &base, 0.0);
            }
        }
        self.fresh = self.fresh.saturating_sub(1);
    }

    /// Notes the warmest place after a step.
    fn note(&mut self, time_s: f64, warmest_c: f64) {
        let (before_s, before_c) = self.last.unwrap_or((time_s, warmest_c));
        for (limit, passed) in [FROM_C, STAGE_ONE_C, TOTAL_C].into_iter().zip(&mut self.passed_s) {
            if passed.is_none() && warmest_c <= limit {
                let share = if before_c > warmest_c {
                    (before_c - limit) / (before_c - warmest_c)
                } else {
                    1.0
                };
                *passed = Some(before_s + share.clamp(0.0, 1.0) * (time_s - before_s));
            }
        }
        self.last = Some((time_s, warmest_c));
    }

    /// What is to be told of it; nothing of a rest at the table, or of what never left the hot.
    pub(super) fn tell(&self, vessel: usize, act: usize) -> Option<Cooling> {
        let (end_s, end_c) = self.last?;
        let from_s = self.passed_s[0]?;
        let followed_h = (end_s - from_s) / 3600.0;
        if followed_h <= 0.0 || (self.counter_only && end_s - self.start_s < 3600.0) {
            return None;
        }
        let hours = |passed: Option<f64>| passed.map(|s| (s - from_s) / 3600.0);
        Some(Cooling {
            vessel,
            act,
            stage_one_h: hours(self.passed_s[1]),
            total_h: hours(self.passed_s[2]),
            end_c,
            followed_h,
            acid: self.acid,
        })
    }
}

/// The body of food in a vessel, as conduction sees it.
struct Body {
    radius_m: f64,
    half_height_m: f64,
    conductivity: f64,
    diffusivity: f64,
    film: f64,
}

impl VesselState {
    /// Whether it stands where hot food cools.
    fn cools(&self, cond: &Conditions) -> bool {
        !self.aside && self.place != Place::Oven && !self.is_heated(cond) && !self.is_empty()
    }

    /// Acid by mass of everything edible.
    fn acid(&self) -> f64 {
        let of = |matter: &Matter| (matter.kg(Stuff::Acid), matter.total_kg());
        let all = self.groups.iter().map(|group| of(&group.matter));
        let (acid, whole) = all.fold(of(&self.liquid), |sum, more| (sum.0 + more.0, sum.1 + more.1));
        if whole > 0.0 { acid / whole } else { 0.0 }
    }

    fn is_thick(&self) -> bool {
        let liquid = self.liquid.total_kg();
        let pieces: f64 = self.groups.iter().map(|group| group.volume_m3()).sum();
        self.liquid.kg(Stuff::GelatinisedStarch) > THICK_STARCH * liquid
            || pieces > THICK_PIECES * (pieces + self.liquid_m3())
    }

    fn body(&self, outside_c: f64) -> Body {
        let mut matter = self.liquid;
        self.groups.iter().for_each(|group| matter.add(&group.matter));
        let temp_c = self.temp_c;
        let conductivity = properties::conductivity(&matter, temp_c);
        let volumetric = properties::HeatContent::of(&matter).capacity(temp_c.max(0.0))
            / properties::volume_m3(&matter, temp_c).max(1e-12);
        let height = (self.volume_m3() / self.measures.area_m2).clamp(1e-3, self.measures.height_m.max(1e-3));
        // The film that the vessel's whole loss stands for, vapour included, spread over all its faces.
        let faces = 2.0 * self.measures.area_m2 + std::f64::consts::PI * self.measures.diameter_m * height;
        let vapour_w = self.exchange.vapour(temp_c).0 * self.exchange.latent(temp_c);
        let film = (self.exchange.loss(temp_c).0 + vapour_w) / ((temp_c - outside_c).max(1.0) * faces);
        Body {
            radius_m: self.measures.diameter_m / 2.0,
            half_height_m: height / 2.0,
            conductivity,
            diffusivity: conductivity / volumetric.max(1.0),
            film: film.clamp(1.0, 1000.0),
        }
    }

    /// Starts, follows or ends the cooling after a step; gives a cooling that has ended by being heated again.
    pub(super) fn follow_cooling(&mut self, time_s: f64, dt_s: f64, cond: &Conditions) -> Option<Follow> {
        if !self.cools(cond) {
            return self.cooling.take();
        }
        let outside_c = cond.bath_c(self.place).unwrap_or(cond.air_c(self.place));
        let shown = self.shown_c();
        let Some(mut follow) = self.cooling.take() else {
            if shown > FROM_C {
                self.cooling = Some(Follow::new(time_s, shown, outside_c));
            }
            return None;
        };
        follow.counter_only &= self.place == Place::Counter || self.place == Place::Hob;
        let stirred = matches!(self.place, Place::Sink | Place::IceBath) || !self.is_thick();
        let mut warmest = shown.max(
            self.groups
                .iter()
                .map(|g| g.centre_c())
                .fold(f64::NEG_INFINITY, f64::max),
        );
        if stirred {
            follow.products.clear();
        } else {
            if follow.products.is_empty() {
                follow.outside_c = outside_c;
                follow.add(warmest - outside_c);
            } else if (follow.outside_c - outside_c).abs() > 0.01 {
                let amplitude = follow.outside_c - outside_c;
                follow.outside_c = outside_c;
                follow.add(amplitude);
            }
            follow.conduct(dt_s, &self.body(outside_c));
            warmest = warmest.max(follow.centre_c());
        }
        follow.note(time_s, warmest);
        follow.acid = self.acid();
        self.cooling = Some(follow);
        None
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Seconds until the centre of a short cylinder passes 21 °C from 57 °C, all faces held at 4 °C.
    fn bound_s(radius_m: f64, height_m: f64) -> f64 {
        let mut follow = Follow::new(0.0, 57.0, 4.0);
        let body = Body {
            radius_m,
            half_height_m: height_m / 2.0,
            conductivity: 0.56,
            diffusivity: 1.4e-7,
            film: 1e9,
        };
        let dt = 5.0;
        for i in 1..20_000 {
            follow.conduct(dt, &body);
            follow.note(f64::from(i) * dt, follow.centre_c());
            if let Some(passed) = follow.passed_s[1] {
                return passed;
            }
        }
        f64::NAN
    }

    /// Unstirred stew, α 1.4e-7 m²/s, surfaces held at 4 °C: a 30 × 25 cm pot takes 8.82 h to 21 °C at the centre, a
    /// 20 × 5 cm pan 0.69 h (product solution, independent library). The pot cannot meet the two hours.
    #[test]
    fn pot_and_pan_of_stew() {
        let (pot, pan) = (bound_s(0.15, 0.25), bound_s(0.10, 0.05));
        assert!((pot / 31_735.0 - 1.0).abs() < 0.01, "{pot}");
        assert!((pan / 2_492.0 - 1.0).abs() < 0.01, "{pan}");
        assert!(pot > 7200.0 && pan < 7200.0);
    }

    /// Observed of viscous foods: the time grows with the square of the least dimension (J. Milk Food Technol.,
    /// abstract).
    #[test]
    fn twice_as_deep_takes_four_times_as_long() {
        let (shallow, deep) = (bound_s(1.0, 0.05), bound_s(1.0, 0.10));
        assert!((deep / shallow - 4.0).abs() < 0.2, "{}", deep / shallow);
    }

    /// Surroundings that change on the way are followed: the answer lies between those of either alone.
    #[test]
    fn a_change_of_place_on_the_way() {
        let body = Body {
            radius_m: 0.1,
            half_height_m: 0.03,
            conductivity: 0.56,
            diffusivity: 1.4e-7,
            film: 10.0,
        };
        let mut moved = Follow::new(0.0, 80.0, 20.0);
        let (mut cold, mut warm) = (Follow::new(0.0, 80.0, 4.0), Follow::new(0.0, 80.0, 20.0));
        for i in 0..2000 {
            if i == 500 {
                moved.outside_c = 4.0;
                moved.add(16.0);
            }
            for follow in [&mut moved, &mut cold, &mut warm] {
                follow.conduct(10.0, &body);
            }
        }
        assert!(cold.centre_c() < moved.centre_c() && moved.centre_c() < warm.centre_c());
    }
}
