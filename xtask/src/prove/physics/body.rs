//! A body in a bath, stepped by the engine's own conduction.

use potwright_pot::physics::conduction::{Form, Profile, Step, Stepper};

/// A form by the tables' names.
pub(super) fn form(name: &str) -> Option<Form> {
    match name {
        "slab" => Some(Form::Slab),
        "cyl" | "cylinder" => Some(Form::Cylinder),
        "sphere" => Some(Form::Sphere),
        _ => None,
    }
}

/// A Biot number as the tables print it: `inf` is a surface held at the temperature outside.
pub(super) fn biot(cell: &str) -> Option<f64> {
    match cell.trim() {
        "inf" => Some(1e9),
        number => number.parse().ok(),
    }
}

/// Steps a profile until it has gone through a Fourier number: the first in four quarters by backward Euler, which
/// damps the jump at the surface, the others by Crank and Nicolson.
pub(super) fn soak(profile: &mut Profile, biot: f64, fourier: f64, outside: f64, steps: u32) {
    let whole = fourier / f64::from(steps);
    let mut run = |fourier: f64, theta: f64, times: u32| {
        let stepper = Stepper::new(profile.form, Step { fourier, biot, theta });
        for _ in 0..times {
            let base = stepper.base(profile, outside);
            stepper.finish(profile, &base, 0.0);
        }
    };
    run(whole / 4.0, 1.0, 4);
    run(whole, 0.5, steps - 1);
}

/// What is left of a step of one at the centre after a Fourier number.
pub(super) fn left_at(form: Form, biot: f64, fourier: f64, steps: u32) -> Profile {
    let mut profile = Profile::uniform(form, 1.0);
    soak(&mut profile, biot, fourier, 0.0, steps);
    profile
}

/// First eigenvalue ζ and coefficient C of the centre, read off the engine's steps: once the faster modes have died,
/// a step of Crank and Nicolson leaves (1 − λδ/2)/(1 + λδ/2) of the profile, λ = ζ².
pub(super) fn first_term(form: Form, biot: f64) -> (f64, f64) {
    const SETTLED: f64 = 1.0;
    const STEP: f64 = 1e-3;
    let mut profile = left_at(form, biot, SETTLED, 1000);
    let settled = profile.centre_c();
    let step = Step {
        fourier: STEP,
        biot,
        theta: 0.5,
    };
    let stepper = Stepper::new(form, step);
    let base = stepper.base(&profile, 0.0);
    stepper.finish(&mut profile, &base, 0.0);
    let ratio = profile.centre_c() / settled;
    let square = 2.0 / STEP * (1.0 - ratio) / (1.0 + ratio);
    (square.sqrt(), settled * libm::exp(square * SETTLED))
}

/// A body: form, radius (half thickness) in metres, film in W/(m²·K), conductivity in W/(m·K), diffusivity in m²/s.
#[derive(Clone, Copy)]
pub(super) struct Body {
    pub form: Form,
    pub radius_m: f64,
    pub film_w_m2k: f64,
    pub conductivity_w_mk: f64,
    pub diffusivity_m2_s: f64,
}

impl Body {
    pub(super) fn biot(&self) -> f64 {
        self.film_w_m2k * self.radius_m / self.conductivity_w_mk
    }

    fn fourier(&self, seconds: f64) -> f64 {
        self.diffusivity_m2_s * seconds / (self.radius_m * self.radius_m)
    }

    /// The profile of a step of one that has gone on for so many seconds.
    pub(super) fn left(&self, seconds: f64) -> Profile {
        left_at(self.form, self.biot(), self.fourier(seconds), 1000)
    }

    /// Seconds until so much of a step of one is left at the centre.
    pub(super) fn seconds_until(&self, left: f64) -> f64 {
        falls_to(left, |seconds| self.left(seconds).centre_c())
    }
}

/// Seconds at which a falling function passes a value, by halving to a ten-millionth; none found is no number.
pub(super) fn falls_to(value: f64, of: impl Fn(f64) -> f64) -> f64 {
    let (mut low, mut high) = (0.0, 1.0);
    while of(high) > value {
        (low, high) = (high, 2.0 * high);
        if high > 1e9 {
            return f64::NAN;
        }
    }
    while high - low > 1e-7 * high {
        let middle = 0.5 * (low + high);
        if of(middle) > value {
            low = middle;
        } else {
            high = middle;
        }
    }
    0.5 * (low + high)
}
