//! Cooling of hot food: how long its warmest place takes from 57 °C to 21 and to 5 °C.
//!
//! What is thin mixes by itself and is nearly as warm everywhere as on the mean. What is thick conducts
//! (`cold_inside`): its middle lags. The cautious answer is the warmest place of liquid, pieces and inside.

use crate::cook::conditions::Conditions;
use crate::cook::vessel::VesselState;
use crate::{Cooling, Matter, Place, Stuff};
use potwright_measure::Spread;

/// The clock of the two-stage rule of the FDA Food Code (3-501.14): from 57 °C to 21 °C and to 5 °C.
const FROM_C: f64 = 57.0;
const STAGE_ONE_C: f64 = 21.0;
const TOTAL_C: f64 = 5.0;
/// Clear liquid that nobody stirs moves by itself past cold walls and lies in layers: its top is warmer than its mean by
/// what its faces lose over this film, W/(m²·K) (common practice, no source).
const CLEAR_FILM: Spread = Spread::within_factor(250.0, 1.7);

/// A cooling that is being followed.
#[derive(Clone, Debug)]
pub(super) struct Follow {
    /// Seconds at which the warmest place passed 57, 21 and 5 °C.
    passed_s: [Option<f64>; 3],
    last: (f64, f64),
    start_s: f64,
    counter_only: bool,
    acid: f64,
}

impl Follow {
    const fn new(time_s: f64, temp_c: f64) -> Self {
        Follow {
            passed_s: [None; 3],
            last: (time_s, temp_c),
            start_s: time_s,
            counter_only: true,
            acid: 0.0,
        }
    }

    /// Notes the warmest place after a step.
    fn note(&mut self, time_s: f64, warmest_c: f64) {
        let (before_s, before_c) = self.last;
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
        self.last = (time_s, warmest_c);
    }

    /// What is to be told of it; nothing of a rest at the table, or of what never left the hot.
    pub(super) fn tell(&self, vessel: usize, act: usize) -> Option<Cooling> {
        let (end_s, end_c) = self.last;
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

impl VesselState {
    /// Acid by mass of everything edible.
    fn acid(&self) -> f64 {
        let of = |matter: &Matter| (matter.kg(Stuff::Acid), matter.total_kg());
        let all = self.groups.iter().map(|group| of(&group.matter));
        let (acid, whole) = all.fold(of(&self.liquid), |sum, more| (sum.0 + more.0, sum.1 + more.1));
        if whole > 0.0 { acid / whole } else { 0.0 }
    }

    /// The warmest place of what stands and cools, °C.
    fn warmest_c(&self, cond: &Conditions) -> f64 {
        let centres = self.groups.iter().map(|group| group.centre_c());
        let warmest = centres.fold(self.shown_c(), f64::max);
        if let Some(inside) = &self.inside {
            return warmest.max(self.temp_c + inside.lead_k);
        }
        // In a sink or in ice it is stirred now and then.
        if matches!(self.place, Place::Sink | Place::IceBath) {
            return warmest;
        }
        let depth = self.volume_m3() / self.measures.area_m2;
        let faces = 2.0 * self.measures.area_m2 + std::f64::consts::PI * self.measures.diameter_m * depth;
        let vapour_w = self.exchange.vapour(self.temp_c).0 * self.exchange.latent(self.temp_c);
        let lost = (self.exchange.loss(self.temp_c).0 + vapour_w).max(0.0) / faces.max(1e-9);
        warmest + lost / CLEAR_FILM.at(cond.food)
    }

    /// Starts, follows or ends the cooling after a step; gives a cooling that has ended by being heated again.
    pub(super) fn follow_cooling(&mut self, time_s: f64, dt_s: f64, cond: &Conditions) -> Option<Follow> {
        self.conduct_inside(dt_s, cond);
        if !self.stands(cond) {
            return self.cooling.take();
        }
        let warmest = self.warmest_c(cond);
        let Some(mut follow) = self.cooling.take() else {
            if self.shown_c() > FROM_C {
                self.cooling = Some(Follow::new(time_s, warmest));
            }
            return None;
        };
        follow.counter_only &= self.place == Place::Counter || self.place == Place::Hob;
        follow.note(time_s, warmest);
        follow.acid = self.acid();
        self.cooling = Some(follow);
        None
    }
}
