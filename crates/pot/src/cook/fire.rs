//! From the knob to the food: what a hob's plate and a pot's base hold back.
//!
//! Both are stores of heat that pass on what they hold with a time constant τ, dE/dt = in − E/τ. Behind a steady fire
//! each holds τ times its power, which still arrives when the knob is turned down.

/// A store of heat that follows what comes in.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Store {
    /// Heat held beyond what the food's own temperature accounts for, joules.
    pub(super) held_j: f64,
    /// Time constant, seconds.
    pub(super) lag_s: f64,
    /// The step and time constant it is ready for, seconds, and what is left of a difference after that step.
    ready: (f64, f64),
    left: f64,
}

/// What a step lets through.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Passed {
    /// Heat that goes from the plate into the pot and from the pot's base into the food, watts on the mean.
    pub(super) into_pot_w: f64,
    pub(super) into_food_w: f64,
    plate_j: f64,
    base_j: f64,
}

/// The plate under a pot and the pot's base.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Fire {
    pub(super) plate: Store,
    pub(super) base: Store,
}

impl Store {
    /// Makes it ready for steps of a length; steps are of few lengths, so that this is rarely work.
    fn ready(&mut self, dt_s: f64) {
        if self.lag_s > 0.0 && self.ready != (dt_s, self.lag_s) {
            self.ready = (dt_s, self.lag_s);
            self.left = libm::exp(-dt_s / self.lag_s);
        }
    }

    /// Mean outflow over a step under a constant inflow, watts, and what is held after it, joules.
    fn pass(&self, in_w: f64, dt_s: f64) -> (f64, f64) {
        if self.held_j == 0.0 && self.lag_s <= 0.0 {
            return (in_w, 0.0);
        }
        let steady_j = in_w * self.lag_s;
        let left = if self.lag_s > 0.0 { self.left } else { 0.0 };
        let after_j = steady_j + (self.held_j - steady_j) * left;
        (in_w + (self.held_j - after_j) / dt_s, after_j)
    }

    /// What it lacks of a steady power, joules.
    fn lacks_j(&self, steady_w: f64) -> f64 {
        steady_w * self.lag_s - self.held_j
    }
}

impl Fire {
    /// Makes both ready for steps of a length, seconds.
    pub(super) fn ready(&mut self, dt_s: f64) {
        self.plate.ready(dt_s);
        self.base.ready(dt_s);
    }

    /// What comes through in a step, for which it is ready, at a setting of the knob, watts.
    pub(super) fn pass(&self, knob_w: f64, dt_s: f64) -> Passed {
        let (into_pot_w, plate_j) = self.plate.pass(knob_w, dt_s);
        let (into_food_w, base_j) = self.base.pass(into_pot_w, dt_s);
        Passed {
            into_pot_w,
            into_food_w,
            plate_j,
            base_j,
        }
    }

    /// After the step.
    pub(super) fn take(&mut self, passed: &Passed) {
        self.plate.held_j = passed.plate_j;
        self.base.held_j = passed.base_j;
    }

    /// What plate and base lack of what they hold behind a steady power, joules; less than nought while they still give.
    pub(super) fn lacks_j(&self, steady_w: f64) -> f64 {
        self.plate.lacks_j(steady_w) + self.base.lacks_j(steady_w)
    }

    /// Lifted off the hob: what the plate holds stays there.
    pub(super) fn lift(&mut self) {
        self.plate = Store::default();
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Constant 1000 W into a store of 100 s: after 100 s it holds 100 kJ·(1 − 1/e) = 63.2 kJ and has passed on 36.8 kJ
    /// of the 100 kJ; shut, it gives back what it held.
    #[test]
    fn a_store_follows_by_its_time_constant() {
        let mut store = Store {
            lag_s: 100.0,
            ..Store::default()
        };
        let pass = |store: &mut Store, in_w: f64, dt_s: f64| {
            store.ready(dt_s);
            store.pass(in_w, dt_s)
        };
        let (out_w, held_j) = pass(&mut store, 1000.0, 100.0);
        assert!(
            (held_j - 63_212.0).abs() < 1.0 && (out_w - 367.88).abs() < 0.01,
            "{held_j} {out_w}"
        );
        // In ten steps the same.
        for _ in 0..10 {
            store.held_j = pass(&mut store, 1000.0, 10.0).1;
        }
        assert!((store.held_j - held_j).abs() < 1e-6);
        let (out_w, left_j) = pass(&mut store, 0.0, 1e5);
        assert!(left_j < 1e-6 && (out_w * 1e5 - held_j).abs() < 1e-3);
    }
}
