//! Salt and other dissolved matter by diffusion into and out of pieces: the solution by modes.
//!
//! Outside a piece the liquid is stirred, and water lets salt pass a thousand times as easily by moving as a piece does
//! by diffusion: the surface has the strength of the liquid. Then the modes of a body are those of its form alone, and
//! each follows the strength outside as a lag of first order, exactly, whatever that does: c̄ = Σ Bₘ·cₘ with
//! dcₘ/dFo = jₘ²·(c_out − cₘ), Fo = D·t/R², jₘ the eigenvalues of the form and Bₘ = 2n/jₘ² (Crank, The Mathematics of
//! Diffusion, chapters 4 to 6, for slab, cylinder and sphere). Heat conduction with the surface held is the same problem.

use crate::physics::conduction::{EIGENVALUES, Form};

/// Modes that are followed: the first four, and one for all the faster ones together, with their share and the time they
/// take on the whole.
pub const MODES: usize = EIGENVALUES + 1;

/// The modes of a form.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Modes {
    rate: [f64; MODES],
    share: [f64; MODES],
}

/// What became of a solute in a step: kilogram per kilogram of water inside, on the mean, and outside.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Strengths {
    /// Mean inside.
    pub inside: f64,
    /// In the liquid.
    pub outside: f64,
}

impl Modes {
    /// The modes of a form: Σ Bₘ = 1, and Σ Bₘ/jₘ² = 1/(n·(n + 2)), the mean action time of the whole; the last mode takes
    /// what the others leave of both.
    #[must_use]
    pub fn of(form: Form) -> Self {
        let n = form.dimensions();
        let mut modes = Modes {
            rate: [0.0; MODES],
            share: [0.0; MODES],
        };
        let (mut share, mut time) = (1.0, 1.0 / (n * (n + 2.0)));
        for mode in 0..EIGENVALUES {
            let zeta = form.eigenvalue(mode);
            modes.rate[mode] = zeta * zeta;
            modes.share[mode] = 2.0 * n / (zeta * zeta);
            share -= modes.share[mode];
            time -= modes.share[mode] / modes.rate[mode];
        }
        modes.share[EIGENVALUES] = share.max(0.0);
        modes.rate[EIGENVALUES] = share.max(0.0) / time.max(1e-9);
        modes
    }

    /// Share of the way to the strength outside that each mode goes in a step of a Fourier number D·Δt/R².
    #[must_use]
    pub fn steps(&self, fourier: f64) -> [f64; MODES] {
        self.rate.map(|rate| 1.0 - libm::exp(-rate * fourier.max(0.0)))
    }

    /// Mean over the body.
    #[must_use]
    pub fn mean(&self, strengths: &[f64; MODES]) -> f64 {
        self.share.iter().zip(strengths).map(|(share, c)| share * c).sum()
    }

    /// A step of `steps`, with so many kilograms of water inside and outside and so much solute in both together: the
    /// strength outside at its end is the one that leaves nothing over, which holds for steps of any length.
    pub fn go(
        &self,
        strengths: &mut [f64; MODES],
        steps: &[f64; MODES],
        water_kg: (f64, f64),
        solute_kg: f64,
    ) -> Strengths {
        let (inside_kg, outside_kg) = water_kg;
        let (mut kept, mut open) = (0.0, 0.0);
        for mode in 0..MODES {
            kept += self.share[mode] * (1.0 - steps[mode]) * strengths[mode];
            open += self.share[mode] * steps[mode];
        }
        let outside = (solute_kg - inside_kg * kept).max(0.0) / (outside_kg + inside_kg * open).max(1e-12);
        for (strength, step) in strengths.iter_mut().zip(steps) {
            *strength += step * (outside - *strength);
        }
        Strengths {
            inside: kept + open * outside,
            outside,
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Form, water of the bath by that of the body, Fourier number, share of the salt that is in the body, the bath being
    /// salted at the start: method of lines on 400 cells (`tests/scipy/pieces.py`).
    const IN_A_BATH: [(usize, f64, f64, f64); 36] = [
        (0, 0.5, 0.01, 0.19098),
        (0, 0.5, 0.03, 0.29621),
        (0, 0.5, 0.1, 0.44639),
        (0, 0.5, 0.3, 0.59270),
        (0, 2.0, 0.01, 0.05401),
        (0, 2.0, 0.03, 0.09068),
        (0, 2.0, 0.1, 0.15610),
        (0, 2.0, 0.3, 0.24513),
        (0, 10.0, 0.01, 0.01118),
        (0, 10.0, 0.03, 0.01925),
        (0, 10.0, 0.1, 0.03471),
        (0, 10.0, 0.3, 0.05846),
        (1, 0.5, 0.01, 0.31729),
        (1, 0.5, 0.03, 0.44493),
        (1, 0.5, 0.1, 0.57999),
        (1, 0.5, 0.3, 0.65601),
        (1, 2.0, 0.01, 0.09912),
        (1, 2.0, 0.03, 0.15672),
        (1, 2.0, 0.1, 0.24075),
        (1, 2.0, 0.3, 0.31308),
        (1, 10.0, 0.01, 0.02118),
        (1, 10.0, 0.03, 0.03496),
        (1, 10.0, 0.1, 0.05767),
        (1, 10.0, 0.3, 0.08140),
        (2, 0.5, 0.01, 0.40416),
        (2, 0.5, 0.03, 0.52742),
        (2, 0.5, 0.1, 0.63021),
        (2, 0.5, 0.3, 0.66515),
        (2, 2.0, 0.01, 0.13691),
        (2, 2.0, 0.03, 0.20506),
        (2, 2.0, 0.1, 0.28635),
        (2, 2.0, 0.3, 0.32939),
        (2, 10.0, 0.01, 0.03010),
        (2, 10.0, 0.03, 0.04767),
        (2, 10.0, 0.1, 0.07217),
        (2, 10.0, 0.3, 0.08862),
    ];

    const FORMS: [Form; 3] = [Form::Slab, Form::Cylinder, Form::Sphere];

    fn salted(form: Form, beta: f64, fourier: f64, count: u32) -> f64 {
        let modes = Modes::of(form);
        let steps = modes.steps(fourier / f64::from(count));
        let mut strengths = [0.0; MODES];
        let mut found = Strengths {
            inside: 0.0,
            outside: 1.0,
        };
        for _ in 0..count {
            found = modes.go(&mut strengths, &steps, (1.0, beta), beta);
        }
        found.inside / beta
    }

    /// Within 1 % of all the salt in a hundred steps.
    #[test]
    fn salt_into_a_body_in_a_bath() {
        for (form, beta, fourier, share) in IN_A_BATH {
            let found = salted(FORMS[form], beta, fourier, 100);
            assert!(
                (found - share).abs() < 0.01,
                "{form} {beta} {fourier}: {found} for {share}"
            );
        }
    }

    /// The reference series of conduction with the surface held, the same problem: share of a step left on the mean
    /// (full series of 400 terms, scipy). In one step, since the strength outside stands still.
    #[test]
    fn the_series_of_conduction() {
        for (form, fourier, left) in [
            (Form::Slab, 0.1, 0.643_176_60),
            (Form::Slab, 0.3, 0.386_763_93),
            (Form::Cylinder, 0.3, 0.122_028_47),
            (Form::Sphere, 0.1, 0.229_521_26),
        ] {
            let found = 1.0 - salted(form, 1e9, fourier, 1) * 1e9;
            assert!((found - left).abs() < 0.002, "{form:?} {fourier}: {found} for {left}");
        }
    }

    /// What went in is there: inside and outside together, in steps of any length, into or out of the body.
    #[test]
    fn nothing_is_lost() {
        let modes = Modes::of(Form::of_dimensions(2.3));
        for (start, all) in [(0.0, 3.0), (0.4, 0.4 * 1.5)] {
            let mut strengths = [start; MODES];
            for fourier in [1e-6, 0.01, 0.5, 40.0] {
                let found = modes.go(&mut strengths, &modes.steps(fourier), (1.5, 2.5), all);
                assert!((1.5 * found.inside + 2.5 * found.outside - all).abs() < 1e-12);
                assert!((modes.mean(&strengths) - found.inside).abs() < 1e-12);
            }
            assert!((strengths[0] - all / 4.0).abs() < 1e-9, "evened out at last");
        }
    }
}
