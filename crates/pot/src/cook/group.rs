//! A group of pieces: their matter, their heat, their temperature profile and what they do.

use potwright_larder::{Hazard, Kind, Shape};

use crate::cook::conditions::Conditions;
use crate::cook::practice;
use crate::physics::conduction::{Form, Profile, Stepper};
use crate::physics::gelatinisation::{self, Range};
use crate::physics::properties::{self, HeatContent};
use crate::physics::softening::time_multiple;
use crate::{Lot, Matter, PieceTrace, Pieces, Stuff};

/// How pieces behave, read once at the draw.
#[derive(Clone, Copy, Debug)]
pub(super) struct Habits {
    pub(super) hazard: Option<Hazard>,
    /// Seconds at 100 °C until tender, and activation energy, kJ/mol.
    pub(super) softens: Option<(f64, f64)>,
    pub(super) uptake: Option<Uptake>,
    /// Share of the water shed.
    pub(super) sheds: f64,
    /// Share of the fat rendered.
    pub(super) renders: f64,
    /// Share that disperses.
    pub(super) falls_apart: f64,
    /// Flesh sheds its juice in liquid too; plants only where they are not under liquid.
    pub(super) flesh: bool,
}

/// Uptake of water.
#[derive(Clone, Copy, Debug)]
pub(super) struct Uptake {
    /// Kilograms in all.
    pub(super) capacity_kg: f64,
    /// 1/s at 100 °C.
    pub(super) rate_hot: f64,
    /// 1/s in the cold; none if it does not soak.
    pub(super) rate_cold: Option<f64>,
}

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
    radius_raw_m: f64,
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
    pub(super) leaky: bool,
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

/// Factor by which a spread is read for foods, bounded to a share.
fn share(spread: Option<potwright_measure::Spread>, z: f64) -> f64 {
    spread.map_or(0.0, |spread| spread.at(z)).clamp(0.0, 1.0)
}

fn positive(value: f64, otherwise: f64) -> f64 {
    if value.is_finite() && value > 0.0 {
        value
    } else {
        otherwise
    }
}

impl Habits {
    fn read(pieces: &Pieces, kind: Kind, edible_kg: f64, z: f64) -> Self {
        let softens = pieces.softens.map(|softens| {
            let seconds = positive(softens.minutes_at_simmer.at(z) * 60.0, 600.0).clamp(1.0, 1e6);
            let activation = softens.activation_kj_mol.clamp(0.0, 400.0);
            (
                seconds / time_multiple(practice::COOKS_SIMMER_C, activation),
                activation,
            )
        });
        let uptake = pieces.absorbs.map(|absorbs| Uptake {
            capacity_kg: absorbs.water_per_gram.at(z).clamp(0.0, 10.0) * edible_kg,
            rate_hot: std::f64::consts::LN_10 / positive(absorbs.minutes_at_boil.at(z) * 60.0, 1200.0),
            rate_cold: absorbs
                .soaking_hours
                .map(|hours| std::f64::consts::LN_10 / positive(hours.at(z) * 3600.0, 28_800.0)),
        });
        Habits {
            hazard: pieces.hazard,
            softens,
            uptake,
            sheds: share(pieces.sheds_water, z),
            renders: share(pieces.renders, z),
            falls_apart: share(pieces.falls_apart, z),
            flesh: matches!(
                kind,
                Kind::Meat | Kind::Bacon | Kind::Sausage | Kind::Poultry | Kind::Fish | Kind::Shellfish | Kind::Egg
            ),
        }
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
        let (form, diameter_mm) = match pieces.shape {
            Shape::Slab { thickness_mm } => (Form::Slab, thickness_mm),
            Shape::Cylinder { diameter_mm } => (Form::Cylinder, diameter_mm),
            Shape::Sphere { diameter_mm } => (Form::Sphere, diameter_mm),
        };
        let size = positive(pieces.size_spread.at(cond.food), 1.0).clamp(0.1, 10.0);
        let radius = positive(diameter_mm, 20.0).clamp(0.5, 1000.0) * size / 2000.0;
        let mut group = Group {
            lot: index,
            inedible_kg,
            heat_j: 0.0,
            profile: Profile::uniform(form, temp_c),
            mean_c: temp_c,
            radius_raw_m: radius,
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
            leaky: false,
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

    /// Conductivity W/(m·K), diffusivity m²/s and radius m, reckoned again when temperature or mass have moved.
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
                conductivity,
                diffusivity,
                radius_m: self.radius_raw_m * swollen,
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
        positive(self.thermal.radius_m, self.radius_raw_m)
    }

    /// Surface of all pieces, m².
    pub(super) fn surface_m2(&self) -> f64 {
        self.volume_m3() * self.profile.form.surface_per_volume(self.radius_m())
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
            tender: self.habits.softens.map(|_| self.tender),
            raw_kg: self.raw_kg,
            cooked_kg: self.total_kg(),
        })
    }
}
