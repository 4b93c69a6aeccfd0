//! Bricks and short cylinders as bodies of one coordinate.
//!
//! Heat leaves a brick by three pairs of faces at once. Solved whole that is a field of three coordinates; for a pot of
//! pieces it is too dear. What stands for it is the body of one coordinate ([`Form::of_dimensions`]) that agrees in three
//! things: how long its centre and its mean take to follow a step at the surface (their *mean action times*, exact), and
//! its surface per volume (exact, so that a film counts for what it does). Against the product of slabs or of slab and
//! cylinder, which is exact, means are within 2 % of the step; centres within 3.5 % for cubes, square bars and cylinders
//! about as long as they are wide, within 5 % for bricks up to 1½ times as wide as thick. Flatter ones are taken for slabs.

use std::f64::consts::PI;

use crate::physics::conduction::Form;

/// A piece flatter than this, width by thickness, is a slab: the error of the centre would be greater than that of
/// forgetting its rims.
const FLATTEST: f64 = 2.0;

/// A body of one coordinate and the true body's surface.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Body {
    /// Its form.
    pub form: Form,
    /// Its radius, or half thickness, metres.
    pub radius_m: f64,
    /// Surface of the true body per volume, 1/m.
    pub surface_per_volume: f64,
    /// Half the true body's least dimension, metres.
    pub half_m: f64,
}

impl Body {
    /// A slab, long cylinder or sphere of a radius (half thickness) in metres: nothing stands for it but itself.
    #[must_use]
    pub fn plain(form: Form, radius_m: f64) -> Self {
        Body {
            form,
            radius_m,
            surface_per_volume: form.surface_per_volume(radius_m),
            half_m: radius_m,
        }
    }

    /// A brick of three edges in metres, in any order; a slab or a square bar where the others are far longer.
    #[must_use]
    pub fn brick(edges_m: [f64; 3]) -> Self {
        let mut half = edges_m.map(|edge| 0.5 * edge);
        half.sort_by(f64::total_cmp);
        let [a, b, c] = half;
        if b > FLATTEST * a {
            return Body::plain(Form::Slab, a);
        }
        let surface = 1.0 / a + 1.0 / b + 1.0 / c;
        Body::with_times(brick_times([a, b, c]), surface, a)
    }

    /// A cylinder of a diameter and a length in metres; a slab where it is a flat disc.
    #[must_use]
    pub fn cylinder(diameter_m: f64, length_m: f64) -> Self {
        let (radius, half) = (0.5 * diameter_m, 0.5 * length_m);
        if radius > FLATTEST * half {
            return Body::plain(Form::Slab, half);
        }
        let surface = 2.0 / radius + 1.0 / half;
        Body::with_times(cylinder_times(radius, half), surface, radius.min(half))
    }

    /// The body whose mean action times at the centre and on the mean, each times the diffusivity (m²), are these:
    /// R²/(2n) and R²/(n·(n + 2)), so that n = 2·centre/mean − 2 and R² = 2n·centre.
    fn with_times((centre, mean): (f64, f64), surface_per_volume: f64, half_m: f64) -> Self {
        let form = Form::of_dimensions(2.0 * centre / mean - 2.0);
        Body {
            form,
            radius_m: libm::sqrt(2.0 * form.dimensions() * centre),
            surface_per_volume,
            half_m,
        }
    }

    /// What a film at its surface counts for beside that of the plain body of this form and radius.
    #[must_use]
    pub fn film_factor(&self) -> f64 {
        self.surface_per_volume / self.form.surface_per_volume(self.radius_m)
    }
}

/// Odd numbers that the series of a brick runs over, and their sign in the middle.
const ODD: [(f64, f64); 7] = [
    (1.0, 1.0),
    (3.0, -1.0),
    (5.0, 1.0),
    (7.0, -1.0),
    (9.0, 1.0),
    (11.0, -1.0),
    (13.0, 1.0),
];

/// Mean action times, times the diffusivity, at the centre and on the mean of a brick with its surface held: the solution
/// of ∇²w = −1 with w = 0 on the faces, as a double series over the two thin directions and closed along the third:
/// w(0) = Σ 16/(π²·i·j)·(±1)·[1 − 1/cosh(γc)]/γ², w̄ = Σ 64/(π⁴·i²·j²)·[1 − tanh(γc)/(γc)]/γ²,
/// γ² = π²/4·(i²/a² + j²/b²), i and j odd.
fn brick_times([a, b, c]: [f64; 3]) -> (f64, f64) {
    let (mut centre, mut mean) = (0.0, 0.0);
    for (i, sign_i) in ODD {
        for (j, sign_j) in ODD {
            let gamma = 0.5 * PI * libm::sqrt(i * i / (a * a) + j * j / (b * b));
            let (middle, all) = along(gamma, c);
            centre += sign_i * sign_j * 16.0 / (PI * PI * i * j) * middle;
            mean += 64.0 / (PI * PI * PI * PI * i * i * j * j) * all;
        }
    }
    (centre, mean)
}

/// Zeros of J₀ and what J₁ is there (Abramowitz & Stegun, table 9.5).
const J0_ZEROS: [(f64, f64); 8] = [
    (2.404_825_6, 0.519_147_5),
    (5.520_078_1, -0.340_264_8),
    (8.653_727_9, 0.271_452_3),
    (11.791_534_4, -0.232_459_8),
    (14.930_917_7, 0.206_546_4),
    (18.071_064_0, -0.187_728_8),
    (21.211_636_6, 0.173_265_9),
    (24.352_471_5, -0.161_701_6),
];

/// The same for a cylinder: w(0) = Σ 2/(j·J₁(j))·[1 − 1/cosh(γc)]/γ², w̄ = Σ 4/j²·[1 − tanh(γc)/(γc)]/γ², γ = j/R, with j
/// the zeros of J₀ and c half the length.
fn cylinder_times(radius: f64, half_length: f64) -> (f64, f64) {
    let (mut centre, mut mean) = (0.0, 0.0);
    for (zero, slope) in J0_ZEROS {
        let (middle, all) = along(zero / radius, half_length);
        centre += 2.0 / (zero * slope) * middle;
        mean += 4.0 / (zero * zero) * all;
    }
    (centre, mean)
}

/// [1 − 1/cosh(γc)]/γ² and [1 − tanh(γc)/(γc)]/γ².
fn along(gamma: f64, half: f64) -> (f64, f64) {
    let x = gamma * half;
    let fallen = libm::exp(-2.0 * x);
    let inverse_cosh = 2.0 * libm::exp(-x) / (1.0 + fallen);
    let tanh = (1.0 - fallen) / (1.0 + fallen);
    (
        (1.0 - inverse_cosh) / (gamma * gamma),
        (1.0 - tanh / x) / (gamma * gamma),
    )
}

#[cfg(test)]
mod tests;
