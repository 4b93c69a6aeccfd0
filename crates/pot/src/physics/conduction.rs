//! Transient conduction in a slab, a long cylinder, a sphere or a body between and beyond them: finite volumes, a theta
//! scheme, a film at the surface. Bricks and short cylinders are such bodies ([`crate::physics::bodies`]).
//!
//! The new profile is a linear function of the new temperature outside, so a pot and its pieces can be stepped
//! together: `profile = base + slope · (outside − outside before)`.

use std::f64::consts::PI;
use std::sync::OnceLock;

/// Cells from the centre to the surface. Twenty keep the error under 0.3 % of the step in temperature.
pub const CELLS: usize = 20;

/// The forms, by the power of the radius that the area grows with: areas at a share x of the radius are as x^(n−1), with
/// n the dimensions heat spreads in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum Form {
    /// Flat, both faces exposed; the radius is half the thickness. n = 1.
    Slab,
    /// Long and round. n = 2.
    Cylinder,
    /// Round. n = 3.
    Sphere,
    /// n = 1 + k/32, of k from 0 to 96: what stands for a brick or a short cylinder.
    Like(u8),
}

/// Parts of a dimension that [`Form::Like`] counts, and the most of them.
const PARTS: usize = 32;
const MOST_PARTS: usize = 3 * PARTS;

/// The first zeros of the Bessel functions J₋½, J₀, J½ and J₁ (Abramowitz & Stegun, table 9.5): the modes of a body with
/// its surface held, in 1, 2, 3 and 4 dimensions.
const ZEROS: [[f64; 4]; 4] = [
    [0.5 * PI, 2.404_826, PI, 3.831_706],
    [1.5 * PI, 5.520_078, 2.0 * PI, 7.015_587],
    [2.5 * PI, 8.653_728, 3.0 * PI, 10.173_468],
    [3.5 * PI, 11.791_534, 4.0 * PI, 13.323_692],
];

/// Modes that [`Form::eigenvalue`] knows.
pub const EIGENVALUES: usize = ZEROS.len();

impl Form {
    /// The form of so many dimensions, 1 to 4, to the nearest thirty-second.
    #[must_use]
    pub fn of_dimensions(dimensions: f64) -> Self {
        let parts = ((dimensions.clamp(1.0, 4.0) - 1.0) * PARTS as f64).round();
        match parts as usize {
            0 => Form::Slab,
            PARTS => Form::Cylinder,
            parts if parts == 2 * PARTS => Form::Sphere,
            parts => Form::Like(parts.min(MOST_PARTS) as u8),
        }
    }

    fn parts(self) -> usize {
        match self {
            Form::Slab => 0,
            Form::Cylinder => PARTS,
            Form::Sphere => 2 * PARTS,
            Form::Like(parts) => usize::from(parts).min(MOST_PARTS),
        }
    }

    /// The dimensions heat spreads in, n: 1 for a slab, 2 for a long cylinder, 3 for a sphere.
    #[must_use]
    pub fn dimensions(self) -> f64 {
        1.0 + self.parts() as f64 / PARTS as f64
    }

    /// Surface per volume, 1/m, for a radius (half thickness) in metres: n/R.
    #[must_use]
    pub fn surface_per_volume(self, radius_m: f64) -> f64 {
        self.dimensions() / radius_m
    }

    /// Square of the first eigenvalue with the surface held at a temperature: π²/4, 2.4048², π². The slowest mode
    /// decays as exp(−ζ²·Fo).
    #[must_use]
    pub fn first_eigenvalue_squared(self) -> f64 {
        match self {
            Form::Slab => 2.467,
            Form::Cylinder => 5.783,
            Form::Sphere => 9.870,
            Form::Like(_) => {
                let zeta = self.eigenvalue(0);
                zeta * zeta
            }
        }
    }

    /// An eigenvalue with the surface held, `mode` from 0 to 3: the zero of the Bessel function of order n/2 − 1, between
    /// those of whole dimensions by the cubic through four of them (right to 2e-4).
    #[must_use]
    pub fn eigenvalue(self, mode: usize) -> f64 {
        let zeros = &ZEROS[mode.min(EIGENVALUES - 1)];
        let n = self.dimensions();
        let weight = |node: usize| {
            (0..4)
                .filter(|&other| other != node)
                .map(|other| (n - (other + 1) as f64) / (node as f64 - other as f64))
                .product::<f64>()
        };
        zeros.iter().enumerate().map(|(node, zero)| zero * weight(node)).sum()
    }

    fn grid(self) -> &'static Grid {
        static GRIDS: [OnceLock<Grid>; MOST_PARTS + 1] = [const { OnceLock::new() }; MOST_PARTS + 1];
        GRIDS[self.parts()].get_or_init(|| grid(self))
    }
}

/// Shares of the volume by cell, and areas of the faces in units of (volume ÷ radius).
struct Grid {
    volume: [f64; CELLS],
    face: [f64; CELLS + 1],
}

fn grid(form: Form) -> Grid {
    let whole = form.parts().is_multiple_of(PARTS);
    let power = form.parts() / PARTS;
    let dimensions = form.dimensions();
    // x^(n − less): the whole powers by multiplication.
    let at = |i: usize, less: usize| {
        let x = i as f64 / CELLS as f64;
        if whole {
            (0..power + 1 - less).fold(1.0, |product, _| product * x)
        } else {
            libm::pow(x, dimensions - less as f64)
        }
    };
    Grid {
        volume: std::array::from_fn(|i| at(i + 1, 0) - at(i, 0)),
        face: std::array::from_fn(|i| dimensions * at(i, 1)),
    }
}

/// Temperatures of the cells from the centre outwards, °C.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Profile {
    /// Form.
    pub form: Form,
    /// Cells, centre first.
    pub cells_c: [f64; CELLS],
}

impl Profile {
    /// The same temperature throughout.
    #[must_use]
    pub fn uniform(form: Form, temp_c: f64) -> Self {
        Profile {
            form,
            cells_c: [temp_c; CELLS],
        }
    }

    /// Mean over the volume.
    #[must_use]
    pub fn mean_c(&self) -> f64 {
        mean(self.form, &self.cells_c)
    }

    /// At the centre: a parabola through the two innermost cells, level at the centre.
    #[must_use]
    pub fn centre_c(&self) -> f64 {
        self.cells_c[0] - (self.cells_c[1] - self.cells_c[0]) / 8.0
    }

    /// At the surface, for a Biot number and a temperature outside: where the half cell and the film meet.
    #[must_use]
    pub fn surface_c(&self, biot: f64, outside_c: f64) -> f64 {
        let half_cell = 2.0 * CELLS as f64;
        let last = self.cells_c[CELLS - 1];
        (half_cell * last + biot * outside_c) / (half_cell + biot)
    }

    /// The largest distance of any cell from a temperature, kelvins.
    #[must_use]
    pub fn farthest_k(&self, temp_c: f64) -> f64 {
        // Four lanes at a time.
        let mut far = [0.0_f64; 4];
        for cells in self.cells_c.chunks_exact(4) {
            for (far, cell) in far.iter_mut().zip(cells) {
                let off = (cell - temp_c).abs();
                *far = if off > *far { off } else { *far };
            }
        }
        far.into_iter().fold(0.0, f64::max)
    }

    /// Every cell moved by as much.
    pub fn shift(&mut self, kelvins: f64) {
        self.cells_c.iter_mut().for_each(|cell| *cell += kelvins);
    }

    /// Volume share of a cell.
    #[must_use]
    pub fn share(&self, cell: usize) -> f64 {
        self.form.grid().volume.get(cell).copied().unwrap_or(0.0)
    }
}

/// Mean of cells over the volume of a form.
#[must_use]
pub fn mean(form: Form, cells: &[f64; CELLS]) -> f64 {
    // Four sums side by side: one alone waits for itself.
    let mut sums = [0.0; 4];
    for (shares, cells) in form.grid().volume.chunks_exact(4).zip(cells.chunks_exact(4)) {
        for ((sum, share), cell) in sums.iter_mut().zip(shares).zip(cells) {
            *sum += share * cell;
        }
    }
    (sums[0] + sums[1]) + (sums[2] + sums[3])
}

/// [`mean`] and [`Profile::farthest_k`] take cells by fours.
const _: () = assert!(CELLS.is_multiple_of(4));

/// The weight of a step in two stages, 1 − √½: each is a backward step of so much of the whole, the second from where the
/// first points. Right to the second order and damped like backward Euler's, however long the step (Alexander, SIAM Journal
/// on Numerical Analysis 14 (1977) 1006), at twice its cost.
pub const TWO_STAGES: f64 = 1.0 - std::f64::consts::FRAC_1_SQRT_2;

/// A time step: Fourier number α·Δt/R², Biot number h·R/k, and weight of the new time (½ Crank–Nicolson, 1 backward
/// Euler, or [`TWO_STAGES`]).
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Step {
    /// α·Δt/R².
    pub fourier: f64,
    /// h·R/k.
    pub biot: f64,
    /// 0.5 to 1; less is [`TWO_STAGES`].
    pub theta: f64,
}

/// A factorised step, good for any profile of the form while the step stays the same.
#[derive(Clone, Debug)]
pub struct Stepper {
    form: Form,
    step: Step,
    inner: [f64; CELLS + 1],
    film: f64,
    eliminated: [f64; CELLS],
    lower: [f64; CELLS],
    pivot: [f64; CELLS],
    slope: [f64; CELLS],
    /// Rise of the mean for a rise of one kelvin outside.
    pub mean_slope: f64,
}

impl Stepper {
    /// Factorises a step; Fourier and Biot numbers must be positive and finite, else nothing moves.
    #[must_use]
    pub fn new(form: Form, step: Step) -> Self {
        let mut stepper = Stepper {
            form,
            step,
            inner: [0.0; CELLS + 1],
            film: 0.0,
            eliminated: [0.0; CELLS],
            lower: [0.0; CELLS],
            pivot: [0.0; CELLS],
            slope: [0.0; CELLS],
            mean_slope: 0.0,
        };
        stepper.prepare(form, step);
        stepper
    }

    /// Factorises another step in place.
    pub fn prepare(&mut self, form: Form, step: Step) {
        let grid = form.grid();
        let width = 1.0 / CELLS as f64;
        let valid = step.fourier.is_finite() && step.fourier > 0.0 && step.biot > 0.0;
        let fourier = if valid { step.fourier } else { 0.0 };
        for (place, face) in self.inner.iter_mut().zip(&grid.face).take(CELLS).skip(1) {
            *place = fourier * face / width;
        }
        self.film = if valid {
            fourier * grid.face[CELLS] / (1.0 / step.biot + 0.5 * width)
        } else {
            0.0
        };
        self.form = form;
        self.step = Step {
            theta: if step.theta < 0.5 {
                TWO_STAGES
            } else {
                step.theta.min(1.0)
            },
            ..step
        };
        self.factorise(&grid.volume);
        // Only the outermost cell feels the outside at once; the others by back substitution.
        self.slope[CELLS - 1] = self.step.theta * self.film * self.pivot[CELLS - 1];
        for i in (0..CELLS - 1).rev() {
            self.slope[i] = self.eliminated[i] * self.slope[i + 1];
        }
        if self.in_two_stages() {
            // The outside rises evenly: after the first stage it has risen by that stage's share of the whole.
            let onward = std::array::from_fn(|i| grid.volume[i] * (1.0 - TWO_STAGES) * self.slope[i]);
            let later = self.solve(onward);
            for (slope, later) in self.slope.iter_mut().zip(later) {
                *slope += later;
            }
        }
        self.mean_slope = mean(form, &self.slope);
    }

    fn in_two_stages(&self) -> bool {
        self.step.theta < 0.5
    }

    /// Whether it was made for this step.
    #[must_use]
    pub fn fits(&self, form: Form, step: &Step) -> bool {
        self.form == form && self.step == *step
    }

    fn factorise(&mut self, volume: &[f64; CELLS]) {
        let theta = self.step.theta;
        // Only the pivots hang on each other; all else is done for all cells at once.
        let beside = self.inner.map(|face| theta * face);
        let mut before = 0.0;
        for i in 0..CELLS {
            let outward = if i + 1 == CELLS {
                theta * self.film
            } else {
                beside[i + 1]
            };
            let diagonal = volume[i] + (beside[i] + outward);
            self.pivot[i] = 1.0 / (diagonal - beside[i] * beside[i] * before);
            before = self.pivot[i];
        }
        for i in 0..CELLS {
            self.lower[i] = beside[i] * self.pivot[i];
            self.eliminated[i] = beside[i + 1] * self.pivot[i];
        }
    }

    fn solve(&self, mut right: [f64; CELLS]) -> [f64; CELLS] {
        for (value, pivot) in right.iter_mut().zip(&self.pivot) {
            *value *= pivot;
        }
        for i in 1..CELLS {
            right[i] += self.lower[i] * right[i - 1];
        }
        for i in (0..CELLS - 1).rev() {
            right[i] += self.eliminated[i] * right[i + 1];
        }
        right
    }

    /// The profile after the step if the temperature outside stays what it was, °C.
    #[must_use]
    pub fn base(&self, profile: &Profile, outside_c: f64) -> [f64; CELLS] {
        if self.in_two_stages() {
            return self.two_stages(&profile.cells_c, outside_c);
        }
        let old = 1.0 - self.step.theta;
        let cells = &profile.cells_c;
        let grid = self.form.grid();
        let mut right = [0.0; CELLS];
        let mut inward = 0.0;
        for i in 0..CELLS {
            let outward = if i + 1 == CELLS {
                self.film * (outside_c - cells[i])
            } else {
                self.inner[i + 1] * (cells[i + 1] - cells[i])
            };
            right[i] = grid.volume[i] * cells[i] + old * (outward - inward);
            inward = outward;
        }
        right[CELLS - 1] += self.step.theta * self.film * outside_c;
        self.solve(right)
    }

    fn two_stages(&self, cells: &[f64; CELLS], outside_c: f64) -> [f64; CELLS] {
        let volume = &self.form.grid().volume;
        let given = TWO_STAGES * self.film * outside_c;
        let mut right: [f64; CELLS] = std::array::from_fn(|i| volume[i] * cells[i]);
        right[CELLS - 1] += given;
        let first = self.solve(right);
        const ONWARD: f64 = (1.0 - TWO_STAGES) / TWO_STAGES;
        right = std::array::from_fn(|i| volume[i] * (cells[i] + ONWARD * (first[i] - cells[i])));
        right[CELLS - 1] += given;
        self.solve(right)
    }

    /// Completes a step: `base` and how much warmer it is outside after it than before.
    pub fn finish(&self, profile: &mut Profile, base: &[f64; CELLS], rise_k: f64) {
        for ((cell, base), slope) in profile.cells_c.iter_mut().zip(base).zip(&self.slope) {
            *cell = base + slope * rise_k;
        }
    }
}

#[cfg(test)]
mod tests;
