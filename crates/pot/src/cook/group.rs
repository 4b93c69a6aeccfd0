//! A group of pieces: their matter, their heat, their temperature profile and what they do.

use potwright_larder::Shape;

use crate::cook::conditions::Conditions;
use crate::cook::habits::{Habits, positive};
use crate::cook::practice;
use crate::cook::solutes::Solutes;
use crate::physics::bodies::Body;
use crate::physics::conduction::{Form, Profile, Stepper};
use crate::physics::gelatinisation::{self, Range};
use crate::physics::lethality::{Decline, Tally};
use crate::physics::properties::{self, HeatContent};
use crate::{Lot, Matter, PieceTrace, Pieces, Reduction, Stuff};

/// What was shaped of several lots.
#[derive(Clone, Copy, Debug)]
pub(super) struct Shaped {
    /// A dough with leavening: full of bubbles once it is hot.
    pub(super) risen: bool,
    /// In how many pieces.
    pub(super) count: Option<u32>,
}

/// A group of pieces.
#[derive(Clone, Debug)]
pub(super) struct Group {
    pub(super) lot: usize,
    pub(super) matter: Matter,
    pub(super) inedible_kg: f64,
    /// Enthalpy, joules: what the books balance.
    pub(super) heat_j: f64,
    /// Temperatures inside; its mean is that of `heat_j`.
    pub(super) profile: Profile,
    pub(super) mean_c: f64,
    /// What stands for its shape, as it went in.
    body: Body,
    volume_raw_m3: f64,
    pub(super) raw_kg: f64,
    pub(super) raw_water_kg: f64,
    pub(super) raw_fat_kg: f64,
    pub(super) habits: Habits,
    pub(super) gel: Range,
    pub(super) tender: f64,
    pub(super) shed_kg: f64,
    pub(super) rendered_kg: f64,
    pub(super) absorbed_kg: f64,
    pub(super) dispersed: f64,
    /// What of it passes through its surface, and how far that has come.
    pub(super) solutes: Solutes,
    /// Fat taken up in frying, kilograms.
    pub(super) oiled_kg: f64,
    /// Decimal reductions by now, where they are counted.
    pub(super) tally: Option<Box<Tally>>,
    /// Shaped of several lots.
    pub(super) shaped: Option<Shaped>,
    pub(super) hottest_c: f64,
    pub(super) centre: Vec<(f64, f64)>,
    /// Backward steps still to be made after something changed.
    pub(super) fresh: u8,
    thermal: Thermal,
    /// The heat it holds by temperature, when last settled.
    pub(super) settled: HeatContent,
    volume_m3: f64,
    pub(super) stepper: Option<Box<Stepper>>,
    /// Biot number of the last step, and whether that was short-cut because all was as warm as outside.
    pub(super) biot: f64,
    pub(super) even: bool,
    /// Whether the surface is held at the boil: what the outside gives and the inside does not take drives water off.
    pub(super) held: bool,
    pub(super) conducted_j: f64,
    pub(super) steam_j: f64,
    /// Scratch of the step being made: profile if the outside stays, its heat, heat per kelvin outside.
    pub(super) base: [f64; crate::physics::conduction::CELLS],
    pub(super) heat_base_j: f64,
    pub(super) heat_slope_j_k: f64,
}

/// Properties that change slowly, kept until they matter.
#[derive(Clone, Copy, Debug, Default)]
struct Thermal {
    at_c: f64,
    mass_kg: f64,
    conductivity: f64,
    diffusivity: f64,
    radius_m: f64,
}

/// Temperature at which a lot goes in, °C; the room's when it is not a number.
pub(super) fn entry_c(lot: &Lot, cond: &Conditions) -> f64 {
    let celsius = lot.temperature.celsius();
    if celsius.is_finite() {
        celsius.clamp(-40.0, 120.0)
    } else {
        cond.room_c
    }
}

/// What stands for a shape, its dimensions times `size`.
fn body_of(shape: Shape, size: f64) -> Body {
    let metres = |mm: f64| positive(mm, 20.0).clamp(0.5, 1000.0) * size / 1000.0;
    match shape {
        Shape::Slab { thickness_mm } => Body::plain(Form::Slab, 0.5 * metres(thickness_mm)),
        Shape::Cylinder { diameter_mm } => Body::plain(Form::Cylinder, 0.5 * metres(diameter_mm)),
        Shape::Sphere { diameter_mm } => Body::plain(Form::Sphere, 0.5 * metres(diameter_mm)),
        Shape::ShortCylinder { diameter_mm, length_mm } => Body::cylinder(metres(diameter_mm), metres(length_mm)),
        Shape::Brick {
            thickness_mm,
            width_mm,
            length_mm,
        } => Body::brick([thickness_mm, width_mm, length_mm].map(metres)),
    }
}

impl Group {
    /// Pieces of a lot as they go in; `matter` and `inedible_kg` are those of the share that does.
    pub(super) fn new(
        index: usize,
        lot: &Lot,
        pieces: &Pieces,
        matter: Matter,
        inedible_kg: f64,
        cond: &Conditions,
    ) -> Self {
        let temp_c = entry_c(lot, cond);
        let size = positive(pieces.size_spread.at(cond.food), 1.0).clamp(0.1, 10.0);
        let body = body_of(pieces.shape, size);
        let mut group = Group {
            lot: index,
            inedible_kg,
            heat_j: 0.0,
            profile: Profile::uniform(body.form, temp_c),
            mean_c: temp_c,
            body,
            volume_raw_m3: properties::volume_m3(&matter, temp_c),
            raw_kg: matter.total_kg() + inedible_kg,
            raw_water_kg: matter.kg(Stuff::Water),
            raw_fat_kg: matter.kg(Stuff::Fat),
            habits: Habits::read(pieces, lot.kind, matter.total_kg(), cond.food),
            gel: gelatinisation::range(lot.starch),
            tender: 0.0,
            shed_kg: 0.0,
            rendered_kg: 0.0,
            absorbed_kg: 0.0,
            dispersed: 0.0,
            solutes: Solutes::new(body.form),
            oiled_kg: 0.0,
            tally: pieces
                .hazard
                .and_then(Decline::of)
                .map(|decline| Box::new(Tally::new(decline, temp_c))),
            shaped: None,
            hottest_c: temp_c,
            centre: Vec::new(),
            fresh: 3,
            thermal: Thermal::default(),
            settled: HeatContent::default(),
            volume_m3: 0.0,
            stepper: None,
            biot: 1.0,
            even: false,
            held: false,
            conducted_j: 0.0,
            steam_j: 0.0,
            base: [temp_c; crate::physics::conduction::CELLS],
            heat_base_j: 0.0,
            heat_slope_j_k: 0.0,
            matter,
        };
        group.heat_j = group.content().enthalpy(temp_c);
        group.settle();
        group
    }

    /// The heat it holds, by temperature.
    pub(super) fn content(&self) -> HeatContent {
        HeatContent::of(&self.matter).with_capacity(self.inedible_kg * practice::BONE_J_KG_K)
    }

    /// Brings mean temperature and profile in line with the enthalpy.
    pub(super) fn settle(&mut self) {
        self.settled = self.content();
        let mean = self.settled.temperature(self.heat_j, self.mean_c);
        self.profile.shift(mean - self.profile.mean_c());
        self.mean_c = mean;
        self.volume_m3 = self.edible_m3() + self.inedible_kg / practice::BONE_KG_M3;
        self.hottest_c = self.hottest_c.max(self.centre_c());
    }

    pub(super) fn centre_c(&self) -> f64 {
        self.profile.centre_c()
    }

    pub(super) fn total_kg(&self) -> f64 {
        self.matter.total_kg() + self.inedible_kg
    }

    /// Volume when last settled, m³.
    pub(super) fn volume_m3(&self) -> f64 {
        self.volume_m3
    }

    /// Conductivity W/(m·K) as a film over it sees it, diffusivity m²/s and radius m, reckoned again when temperature or
    /// mass have moved. A film counts for the true surface, and the body that stands for a brick has a little less: so
    /// much less does it conduct beside the film.
    pub(super) fn thermal(&mut self, capacity_j_k: f64) -> (f64, f64, f64) {
        let mass = self.matter.total_kg();
        let old = &self.thermal;
        if old.mass_kg <= 0.0 || (old.at_c - self.mean_c).abs() > 6.0 || (old.mass_kg / mass - 1.0).abs() > 0.015 {
            let volume = self.edible_m3().max(1e-12);
            let capacity = capacity_j_k - self.inedible_kg * practice::BONE_J_KG_K;
            let (conductivity, diffusivity) = match self.shaped {
                Some(Shaped { risen: true, .. }) => {
                    (practice::crumb_m2_s() * capacity / volume, practice::crumb_m2_s())
                }
                _ => {
                    let conductivity = properties::conductivity(&self.matter, self.mean_c);
                    (conductivity, conductivity * volume / capacity.max(1e-9))
                }
            };
            // A ball of dough swells all round; a flat round spreads and stays about as deep as it was made.
            let spreads = self.shaped.is_some_and(|shaped| shaped.risen) && self.profile.form == Form::Slab;
            let swollen = match spreads {
                true => 1.0,
                false => libm::cbrt(volume / self.volume_raw_m3.max(1e-12)).clamp(0.2, 3.0),
            };
            self.thermal = Thermal {
                at_c: self.mean_c,
                mass_kg: mass,
                conductivity: conductivity / self.body.film_factor(),
                diffusivity,
                radius_m: self.body.radius_m * swollen,
            };
        }
        (
            self.thermal.conductivity,
            self.thermal.diffusivity,
            self.thermal.radius_m,
        )
    }

    /// Radius (half thickness), metres.
    pub(super) fn radius_m(&self) -> f64 {
        positive(self.thermal.radius_m, self.body.radius_m)
    }

    /// Their least dimension, metres.
    pub(super) fn thickness_m(&self) -> f64 {
        2.0 * self.body.half_m * self.radius_m() / self.body.radius_m
    }

    /// Surface of all pieces, m².
    pub(super) fn surface_m2(&self) -> f64 {
        self.volume_m3() * self.profile.form.surface_per_volume(self.radius_m()) * self.body.film_factor()
    }

    /// Floor that the pieces cover lying flat, m²: their volume over their mean height, which is two thirds of a ball's
    /// diameter, π/4 of a lying cylinder's, the thickness of all else.
    pub(super) fn floor_m2(&self) -> f64 {
        let height = match self.profile.form {
            Form::Sphere => 2.0 / 3.0,
            Form::Cylinder => std::f64::consts::FRAC_PI_4,
            Form::Slab | Form::Like(_) => 1.0,
        };
        self.volume_m3() / (height * self.thickness_m()).max(1e-6)
    }

    /// What a heap of them shows to the air, m².
    pub(super) fn shown_m2(&self) -> f64 {
        // Loaves and dumplings are set apart.
        if let Some(shaped) = self.shaped {
            return self.surface_m2() + self.rims_m2(shaped);
        }
        let edge = libm::cbrt(self.volume_m3());
        self.surface_m2().min(practice::SHOWN_HEAP * edge * edge)
    }

    /// Volume of the edible matter, m³, with the bubbles of a risen dough.
    fn edible_m3(&self) -> f64 {
        match self.shaped {
            Some(Shaped { risen: true, .. }) => self.matter.total_kg() / practice::CRUMB_KG_M3,
            _ => properties::volume_m3(&self.matter, self.mean_c),
        }
    }

    /// A film in W/(m²·K) behind the crust of a risen dough: the layer that has given up its water conducts and no longer
    /// steams. Its depth is the share of the water gone times volume over surface.
    pub(super) fn past_crust(&self, film: f64) -> f64 {
        let Some(Shaped { risen: true, .. }) = self.shaped else {
            return film;
        };
        let left = self.matter.kg(Stuff::Water) / self.raw_water_kg.max(1e-9);
        let depth_m = (1.0 - left).clamp(0.0, 1.0) * self.volume_m3() / self.shown_m2().max(1e-9);
        film / (1.0 + film * depth_m / practice::CRUST_W_MK)
    }

    /// The rims of flat rounds, m²: n rounds of depth h and volume V in all have rims of n·π·d·h, d² = 4 V ÷ (π n h).
    fn rims_m2(&self, shaped: Shaped) -> f64 {
        let (Form::Slab, Some(count)) = (self.profile.form, shaped.count) else {
            return 0.0;
        };
        let depth = 2.0 * self.radius_m();
        2.0 * libm::sqrt(std::f64::consts::PI * f64::from(count) * self.volume_m3() * depth)
    }

    /// Time constant with which it follows the outside, seconds: the slowest mode and the film in series.
    pub(super) fn lag_s(&self) -> f64 {
        let diffusivity = positive(self.thermal.diffusivity, 1.4e-7);
        let radius = self.radius_m();
        let form = self.profile.form;
        let film = 1.0 / (form.surface_per_volume(1.0) * self.biot.max(1e-3));
        radius * radius / diffusivity * (1.0 / form.first_eigenvalue_squared() + film)
    }

    /// Splits a share off.
    pub(super) fn split(&mut self, share: f64) -> Group {
        let share = share.clamp(0.0, 1.0);
        let mut part = self.clone();
        part.scale(share);
        let whole = self.matter;
        self.scale(1.0 - share);
        // What is left is what is not taken, to the last bit.
        for (kg, (whole, taken)) in self
            .matter
            .mass_kg
            .iter_mut()
            .zip(whole.mass_kg.iter().zip(&part.matter.mass_kg))
        {
            *kg = (whole - taken).max(0.0);
        }
        part
    }

    fn scale(&mut self, share: f64) {
        self.matter = self.matter.scaled(share);
        for value in [
            &mut self.inedible_kg,
            &mut self.heat_j,
            &mut self.volume_raw_m3,
            &mut self.volume_m3,
            &mut self.raw_kg,
            &mut self.raw_water_kg,
            &mut self.raw_fat_kg,
            &mut self.shed_kg,
            &mut self.rendered_kg,
            &mut self.absorbed_kg,
            &mut self.oiled_kg,
        ] {
            *value *= share;
        }
        if let Some(uptake) = &mut self.habits.uptake {
            uptake.capacity_kg *= share;
        }
        self.thermal = Thermal::default();
        self.stepper = None;
    }

    /// What the trace tells of it; none when nothing has to be made safe or tender or is baked through.
    pub(super) fn trace(&self) -> Option<PieceTrace> {
        (self.habits.hazard.is_some() || self.habits.softens.is_some() || self.shaped.is_some()).then(|| PieceTrace {
            lot: self.lot,
            hazard: self.habits.hazard,
            centre: self.centre.clone(),
            hottest_centre_c: self.hottest_c,
            reduction: self.tally.as_ref().map(|tally| Reduction {
                decline: tally.decline,
                coldest_log10: tally.coldest(),
                whole_log10: tally.whole(self.profile.form),
            }),
            tender: self.habits.softens.map(|_| self.tender),
            raw_kg: self.raw_kg,
            cooked_kg: self.total_kg(),
        })
    }
}
