//! Heat inside food that does not mix: a short cylinder of rings and layers, by finite volumes, with a film of its own at
//! the top, at the wall and below, freezing and thawing by enthalpy.
//!
//! One step solves all columns and then all rings, each implicitly (locally one-dimensional splitting): sound at any
//! length of step. Where water freezes the step counts the heat, not the temperature, and the temperature follows from
//! the heat (the quasi-enthalpy method, Pham 1985).

use crate::physics::properties::{FREEZING_C, HeatContent};

/// Rings from the middle to the wall, layers from the base to the top.
const RINGS: usize = 6;
const LAYERS: usize = 12;
/// The longest line of cells.
const LONGEST: usize = if RINGS > LAYERS { RINGS } else { LAYERS };
const PI: f64 = std::f64::consts::PI;

/// What fills the cylinder; all of it alike.
#[derive(Clone, Copy, Debug)]
pub struct Filling {
    /// Radius, metres.
    pub radius_m: f64,
    /// Height, metres.
    pub height_m: f64,
    /// The heat the whole body holds, by temperature.
    content: HeatContent,
    /// Conductivity thawed, and with all water frozen that freezes, W/(m·K).
    conductivity: f64,
    frozen_conductivity: f64,
    /// Heat of the whole body when it begins to freeze and when all is frozen that freezes, joules.
    thawed_j: f64,
    solid_j: f64,
}

/// A film at a face, and the temperature behind it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Face {
    /// W/(m²·K).
    pub film: f64,
    /// °C.
    pub outside_c: f64,
}

/// The three faces.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Faces {
    /// The surface.
    pub top: Face,
    /// The round wall.
    pub wall: Face,
    /// The bottom.
    pub base: Face,
}

/// Heat and temperature of each cell: a column of layers for each ring, base first.
#[derive(Clone, Debug)]
pub struct Field {
    /// What the whole body would hold if all of it were like this cell, joules.
    heat_j: [[f64; LAYERS]; RINGS],
    temp_c: [[f64; LAYERS]; RINGS],
}

/// Share of a ring in the area of the circle.
const fn ring_share(ring: usize) -> f64 {
    (2 * ring + 1) as f64 / (RINGS * RINGS) as f64
}

impl Filling {
    /// A body of a radius and a height in metres, of the heat it holds by temperature, and of its conductivity thawed and
    /// with all water frozen that freezes, W/(m·K).
    #[must_use]
    pub fn new(
        radius_m: f64,
        height_m: f64,
        content: HeatContent,
        conductivity: f64,
        frozen_conductivity: f64,
    ) -> Self {
        Filling {
            radius_m,
            height_m,
            content,
            conductivity,
            frozen_conductivity,
            thawed_j: content.enthalpy(FREEZING_C),
            solid_j: content.enthalpy(FREEZING_C - 1e-9),
        }
    }

    /// The heat the whole body holds, by temperature.
    #[must_use]
    pub const fn content(&self) -> &HeatContent {
        &self.content
    }

    /// Seconds with which the inside follows the outside: the slowest mode of a slab (π²/4) and the film, in series.
    #[must_use]
    pub fn lag_s(&self, faces: &Faces) -> f64 {
        let half_m = (0.5 * self.height_m).min(self.radius_m);
        let volume = PI * self.radius_m * self.radius_m * self.height_m;
        let capacity = (self.content.capacity(10.0) / volume).max(1.0);
        let film = faces.top.film.max(faces.wall.film).max(faces.base.film);
        half_m * capacity * (half_m / self.conductivity / 2.467 + 1.0 / film)
    }

    /// Conductivity at a heat of the whole body, between thawed and frozen by the share that is frozen.
    fn conductivity_at(&self, heat_j: f64) -> f64 {
        if heat_j >= self.thawed_j || self.thawed_j <= self.solid_j {
            return self.conductivity;
        }
        let frozen = ((self.thawed_j - heat_j) / (self.thawed_j - self.solid_j)).min(1.0);
        self.conductivity + frozen * (self.frozen_conductivity - self.conductivity)
    }

    /// Heat capacity of the whole body at a heat and its temperature, J/K.
    fn capacity_at(&self, heat_j: f64, temp_c: f64) -> f64 {
        if heat_j >= self.thawed_j {
            return self.content.capacity(temp_c);
        }
        self.content.capacity_at(heat_j, temp_c)
    }
}

impl Field {
    /// The same throughout: so much heat in the whole body, joules, at a temperature in °C.
    #[must_use]
    pub const fn uniform(heat_j: f64, temp_c: f64) -> Self {
        Field {
            heat_j: [[heat_j; LAYERS]; RINGS],
            temp_c: [[temp_c; LAYERS]; RINGS],
        }
    }

    fn cells(&self) -> impl Iterator<Item = f64> {
        self.temp_c.iter().flatten().copied()
    }

    /// The warmest cell, °C.
    #[must_use]
    pub fn warmest_c(&self) -> f64 {
        self.cells().fold(f64::NEG_INFINITY, f64::max)
    }

    /// The coldest cell, °C.
    #[must_use]
    pub fn coldest_c(&self) -> f64 {
        self.cells().fold(f64::INFINITY, f64::min)
    }

    /// Heat of the whole body, joules.
    #[must_use]
    pub fn heat_j(&self) -> f64 {
        let columns = self.heat_j.iter().enumerate();
        columns
            .map(|(ring, column)| ring_share(ring) * column.iter().sum::<f64>() / LAYERS as f64)
            .sum()
    }

    /// Brings the whole to so much heat, joules, every cell by as much.
    pub fn rebase(&mut self, heat_j: f64, content: &HeatContent) {
        let change = heat_j - self.heat_j();
        for (heat, temp) in self.heat_j.iter_mut().flatten().zip(self.temp_c.iter_mut().flatten()) {
            *heat += change;
            *temp = content.temperature(*heat, *temp);
        }
    }

    /// Temperature of the faces, °C: top, wall, base, each the mean over it.
    #[must_use]
    pub fn faces_c(&self, filling: &Filling, faces: &Faces) -> [f64; 3] {
        let at = |ring: usize, layer: usize, half_m: f64, face: &Face| {
            let inside = filling.conductivity_at(self.heat_j[ring][layer]) / half_m;
            (inside * self.temp_c[ring][layer] + face.film * face.outside_c) / (inside + face.film)
        };
        let (half_z, half_r) = (
            0.5 * filling.height_m / LAYERS as f64,
            0.5 * filling.radius_m / RINGS as f64,
        );
        let flat = |layer: usize, face: &Face| {
            let rings = 0..RINGS;
            rings
                .map(|ring| ring_share(ring) * at(ring, layer, half_z, face))
                .sum::<f64>()
        };
        let wall = (0..LAYERS).map(|layer| at(RINGS - 1, layer, half_r, &faces.wall));
        [
            flat(LAYERS - 1, &faces.top),
            wall.sum::<f64>() / LAYERS as f64,
            flat(0, &faces.base),
        ]
    }

    /// A step of so many seconds.
    pub fn step(&mut self, dt_s: f64, filling: &Filling, faces: &Faces) {
        self.along_columns(dt_s, filling, faces);
        self.along_rings(dt_s, filling, faces);
    }

    fn along_columns(&mut self, dt_s: f64, filling: &Filling, faces: &Faces) {
        let depth = filling.height_m / LAYERS as f64;
        for ring in 0..RINGS {
            let area = PI * filling.radius_m * filling.radius_m * ring_share(ring);
            let mut line = Line::of(LAYERS, dt_s, 0.5 * depth);
            for layer in 0..LAYERS {
                line.cell(layer, filling, ring_share(ring) / LAYERS as f64, self.at(ring, layer));
                line.between[layer] = area;
            }
            line.first = Some((area, faces.base));
            line.last = Some((area, faces.top));
            line.solve();
            for layer in 0..LAYERS {
                self.take(ring, layer, &line, layer, filling);
            }
        }
    }

    fn along_rings(&mut self, dt_s: f64, filling: &Filling, faces: &Faces) {
        let (depth, width) = (filling.height_m / LAYERS as f64, filling.radius_m / RINGS as f64);
        for layer in 0..LAYERS {
            let mut line = Line::of(RINGS, dt_s, 0.5 * width);
            for ring in 0..RINGS {
                line.cell(ring, filling, ring_share(ring) / LAYERS as f64, self.at(ring, layer));
                line.between[ring] = 2.0 * PI * width * ring as f64 * depth;
            }
            line.last = Some((2.0 * PI * filling.radius_m * depth, faces.wall));
            line.solve();
            for ring in 0..RINGS {
                self.take(ring, layer, &line, ring, filling);
            }
        }
    }

    const fn at(&self, ring: usize, layer: usize) -> (f64, f64) {
        (self.heat_j[ring][layer], self.temp_c[ring][layer])
    }

    /// A cell takes the heat it gained in the solved line.
    fn take(&mut self, ring: usize, layer: usize, line: &Line, cell: usize, filling: &Filling) {
        let heat = &mut self.heat_j[ring][layer];
        *heat += line.gained_j(cell);
        // Thawed, heat and temperature move together; [`Field::rebase`] brings them in line to the last digit.
        self.temp_c[ring][layer] = if *heat >= filling.thawed_j {
            line.new_c[cell]
        } else {
            filling.content.temperature(*heat, line.new_c[cell])
        };
    }
}

/// A row of cells that is solved at once: C·(T' − T)/Δt = what flows in from both sides at T'.
struct Line {
    cells: usize,
    dt_s: f64,
    /// From the middle of a cell to its side, metres.
    half_m: f64,
    share: [f64; LONGEST],
    capacity_w_k: [f64; LONGEST],
    conductivity: [f64; LONGEST],
    old_c: [f64; LONGEST],
    /// Area between each cell and the one before it, m².
    between: [f64; LONGEST],
    /// Area and face at either end; none at the axis.
    first: Option<(f64, Face)>,
    last: Option<(f64, Face)>,
    new_c: [f64; LONGEST],
}

impl Line {
    const fn of(cells: usize, dt_s: f64, half_m: f64) -> Self {
        Line {
            cells,
            dt_s,
            half_m,
            share: [0.0; LONGEST],
            capacity_w_k: [0.0; LONGEST],
            conductivity: [0.0; LONGEST],
            old_c: [0.0; LONGEST],
            between: [0.0; LONGEST],
            first: None,
            last: None,
            new_c: [0.0; LONGEST],
        }
    }

    /// Sets a cell: its share of the volume, its heat (as if all were like it) and its temperature.
    fn cell(&mut self, cell: usize, filling: &Filling, share: f64, (heat_j, temp_c): (f64, f64)) {
        self.share[cell] = share;
        self.capacity_w_k[cell] = share * filling.capacity_at(heat_j, temp_c) / self.dt_s;
        self.conductivity[cell] = filling.conductivity_at(heat_j);
        self.old_c[cell] = temp_c;
    }

    /// What a cell gained in the step, joules, as if all were like it.
    fn gained_j(&self, cell: usize) -> f64 {
        self.capacity_w_k[cell] * self.dt_s * (self.new_c[cell] - self.old_c[cell]) / self.share[cell]
    }

    /// From a cell to the one before it, W/K.
    fn back_w_k(&self, cell: usize) -> f64 {
        let (here, before) = (self.conductivity[cell], self.conductivity[cell - 1]);
        if here == before {
            return self.between[cell] * 0.5 * here / self.half_m;
        }
        self.between[cell] * here * before / (self.half_m * (here + before))
    }

    /// From a cell at an end to what is outside, W/K.
    fn out_w_k(&self, (area, face): (f64, Face), cell: usize) -> f64 {
        area / (self.half_m / self.conductivity[cell] + 1.0 / face.film)
    }

    /// Thomas' elimination; diagonally dominant, so no pivot is nought.
    fn solve(&mut self) {
        let last = self.cells - 1;
        // What leaves at the ends counts at the cells there.
        let mut diagonal = self.capacity_w_k;
        let mut right: [f64; LONGEST] = std::array::from_fn(|cell| self.capacity_w_k[cell] * self.old_c[cell]);
        for (end, cell) in [(self.first, 0), (self.last, last)] {
            if let Some(end) = end {
                let film = self.out_w_k(end, cell);
                diagonal[cell] += film;
                right[cell] += film * end.1.outside_c;
            }
        }
        let mut eliminated = [0.0; LONGEST];
        let mut before = (0.0, 0.0);
        let mut back = 0.0;
        for cell in 0..self.cells {
            let on = if cell < last { self.back_w_k(cell + 1) } else { 0.0 };
            let pivot = 1.0 / (diagonal[cell] + back + on - back * before.0);
            eliminated[cell] = on * pivot;
            self.new_c[cell] = (right[cell] + back * before.1) * pivot;
            before = (eliminated[cell], self.new_c[cell]);
            back = on;
        }
        for cell in (0..last).rev() {
            self.new_c[cell] += eliminated[cell] * self.new_c[cell + 1];
        }
    }
}

#[cfg(test)]
mod tests;
