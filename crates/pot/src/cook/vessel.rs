//! A vessel in use: what is in it, where it stands, what the cook does with its heat.

use potwright_manuscript::Cover;

use crate::cook::cold::Skin;
use crate::cook::conditions::Conditions;
use crate::cook::cooling::Follow;
use crate::cook::exchange::Exchange;
use crate::cook::group::Group;
use crate::cook::practice;
use crate::physics::cooling_field::Field;
use crate::physics::gelatinisation::{self, Range};
use crate::physics::properties::{self, HeatContent};
use crate::physics::water;
use crate::{Aim, Matter, Place, Stuff, Vessel};

/// Measures of a vessel in SI units.
#[derive(Clone, Copy, Debug)]
pub(super) struct Measures {
    pub(super) diameter_m: f64,
    pub(super) height_m: f64,
    pub(super) area_m2: f64,
    /// Heat capacity of the vessel itself, J/K.
    pub(super) metal_j_k: f64,
    pub(super) emissivity: f64,
    /// Whether the kitchen knows them; a bowl's are assumed and it has no level.
    pub(super) known: bool,
}

impl Measures {
    fn of(vessel: &Vessel) -> Self {
        let (diameter, height, metal, emissivity) = practice::BOWL;
        let sound = |value: f64, low: f64, high: f64, otherwise: f64| {
            if value.is_finite() && value > 0.0 {
                value.clamp(low, high)
            } else {
                otherwise
            }
        };
        let (diameter_m, height_m, metal_j_k, emissivity) = match &vessel.pot {
            Some(pot) => (
                sound(pot.diameter.metres(), 0.02, 5.0, diameter),
                sound(pot.height.metres(), 0.01, 5.0, height),
                sound(pot.tare.kilograms(), 0.0, 1000.0, 0.0) * pot.material.specific_heat(),
                pot.material.emissivity(),
            ),
            None => (diameter, height, metal, emissivity),
        };
        let area_m2 = std::f64::consts::PI * diameter_m * diameter_m / 4.0;
        Measures {
            diameter_m,
            height_m,
            area_m2,
            metal_j_k,
            emissivity,
            known: vessel.pot.is_some(),
        }
    }
}

/// A vessel in use. Its liquid and its metal share one temperature; its pieces have their own.
pub(super) struct VesselState {
    pub(super) measures: Measures,
    /// Whether the metal's enthalpy is in the books, and when the vessel was last emptied, seconds.
    pub(super) in_use: bool,
    pub(super) emptied_s: Option<f64>,
    /// Nothing is done with what is left in it.
    pub(super) aside: bool,
    pub(super) place: Place,
    pub(super) aim: Aim,
    pub(super) cover: Cover,
    pub(super) burner: Option<usize>,
    /// Share of the burner's power that a word stands for.
    pub(super) setting: f64,
    /// Batches that share the pan in turn.
    pub(super) turns: f64,
    pub(super) liquid: Matter,
    pub(super) gel: Range,
    pub(super) dairy: bool,
    /// Enthalpy of liquid and metal, joules.
    pub(super) heat_j: f64,
    pub(super) temp_c: f64,
    pub(super) boil_c: f64,
    liquid_m3: f64,
    pub(super) groups: Vec<Group>,
    pub(super) exchange: Exchange,
    pub(super) skin: Skin,
    /// What the burner gives, watts.
    pub(super) power_w: f64,
    /// The step to be tried next and how much of it was, seconds, and how fast the liquid warmed in the last one, K/s.
    pub(super) step_s: f64,
    pub(super) tried_s: f64,
    /// The longest step that is accurate now, how far it is behind the clock, seconds; whether it makes every step.
    pub(super) own_s: f64,
    pub(super) behind_s: f64,
    pub(super) keeps_up: bool,
    pub(super) rate_k_s: f64,
    /// Water shed by pieces, kg/s, in the last step.
    pub(super) shed_kg_s: f64,
    /// Matter that went between pieces and liquid, kg/s, in the last step.
    pub(super) flow_kg_s: f64,
    /// Water that left as bubbles in the last step, kg.
    pub(super) boiled_kg: f64,
    pub(super) watch: Watch,
    pub(super) cooling: Option<Follow>,
    /// How the heat of thick food that stands is spread.
    pub(super) inside: Option<Box<Field>>,
}

/// What has been noticed of a vessel since it was filled.
#[derive(Clone, Copy, Debug, Default)]
pub(super) struct Watch {
    pub(super) boiled: bool,
    pub(super) dry: bool,
    /// Below the boil under an aim that forbids it.
    pub(super) calm: bool,
    pub(super) crowded: bool,
    pub(super) too_full: f64,
    /// Index of the event that tells of hot dairy.
    pub(super) dairy_event: Option<usize>,
    /// Most water there has been, kg.
    pub(super) most_water_kg: f64,
    /// Progress of browning, 1 at its onset; seconds the pan has been wet while it should brown.
    pub(super) browned: f64,
    pub(super) wet_s: f64,
    /// Highest boiling point, °C.
    pub(super) boiling_c: f64,
}

impl VesselState {
    pub(super) fn new(vessel: &Vessel, cond: &Conditions) -> Self {
        VesselState {
            measures: Measures::of(vessel),
            in_use: false,
            emptied_s: None,
            aside: false,
            place: Place::Counter,
            aim: Aim::Off,
            cover: Cover::Off,
            burner: None,
            setting: 0.0,
            turns: 1.0,
            liquid: Matter::nothing(),
            gel: gelatinisation::UNKNOWN,
            dairy: false,
            heat_j: 0.0,
            temp_c: cond.room_c,
            boil_c: cond.boiling_c,
            liquid_m3: 0.0,
            groups: Vec::new(),
            exchange: Exchange::default(),
            skin: Skin::default(),
            power_w: 0.0,
            step_s: 1.0,
            tried_s: 0.0,
            own_s: 0.0,
            behind_s: 0.0,
            keeps_up: true,
            rate_k_s: 0.0,
            shed_kg_s: 0.0,
            flow_kg_s: 0.0,
            boiled_kg: 0.0,
            watch: Watch::default(),
            cooling: None,
            inside: None,
        }
    }

    pub(super) fn is_empty(&self) -> bool {
        self.groups.is_empty() && self.liquid.total_kg() <= 0.0
    }

    /// The heat liquid and metal hold, by temperature.
    pub(super) fn content(&self) -> HeatContent {
        HeatContent::of(&self.liquid).with_capacity(self.measures.metal_j_k)
    }

    /// Something has been put in, taken out or moved: small steps again.
    pub(super) fn disturb(&mut self) {
        self.step_s = 1.0;
        self.tried_s = 0.0;
        self.rate_k_s = 0.0;
        self.boiled_kg = 0.0;
        self.exchange = Exchange::default();
        self.groups.iter_mut().for_each(|group| group.fresh = 3);
    }

    /// Off the heat for good.
    pub(super) fn set_aside(&mut self) {
        self.aside = true;
        self.burner = None;
        self.place = Place::Counter;
        self.aim = Aim::Off;
        self.disturb();
    }

    /// Brings temperatures in line with enthalpies, and the boiling point with the liquid.
    pub(super) fn settle(&mut self, cond: &Conditions) {
        if self.liquid.total_kg() > 0.0 || self.measures.metal_j_k > 0.0 {
            self.temp_c = self.content().temperature(self.heat_j, self.temp_c);
        }
        self.groups.iter_mut().for_each(Group::settle);
        if self.measures.metal_j_k <= 0.0 && self.liquid.total_kg() <= 1e-9 {
            // Nothing but pieces in a vessel without weight: it is as warm as they are.
            if let Some(mean) = self.pieces_mean_c() {
                self.temp_c = mean;
            }
        }
        self.liquid_m3 = properties::volume_m3(&self.liquid, self.temp_c);
        self.boil_c = cond.boiling_c + water::broth_elevation_k(&self.liquid);
    }

    pub(super) fn water_kg(&self) -> f64 {
        self.liquid.kg(Stuff::Water)
    }

    /// Volume of the liquid when last settled, m³.
    pub(super) fn liquid_m3(&self) -> f64 {
        self.liquid_m3
    }

    pub(super) fn volume_m3(&self) -> f64 {
        self.liquid_m3() + self.groups.iter().map(Group::volume_m3).sum::<f64>()
    }

    pub(super) fn mass_kg(&self) -> f64 {
        self.liquid.total_kg() + self.groups.iter().map(Group::total_kg).sum::<f64>()
    }

    /// Mean temperature of the pieces, by mass.
    pub(super) fn pieces_mean_c(&self) -> Option<f64> {
        let mass: f64 = self.groups.iter().map(Group::total_kg).sum();
        (mass > 0.0).then(|| {
            self.groups
                .iter()
                .map(|group| group.total_kg() * group.mean_c)
                .sum::<f64>()
                / mass
        })
    }

    /// What a thermometer in the vessel shows: the liquid, or the pieces where there is hardly any.
    pub(super) fn shown_c(&self) -> f64 {
        if self.liquid.total_kg() < 0.02 * self.mass_kg() && !self.fries() {
            self.pieces_mean_c().unwrap_or(self.temp_c)
        } else {
            self.temp_c
        }
    }

    pub(super) fn fries(&self) -> bool {
        matches!(self.aim, Aim::Fry(_)) && self.place == Place::Hob
    }

    /// Whether there is a liquid that can boil as one: the salty juices of a frying pan are none.
    pub(super) fn is_broth(&self) -> bool {
        let water_kg = self.water_kg();
        !self.fries() && water_kg > practice::BROTH_KG && water_kg > 0.5 * self.liquid.total_kg()
    }

    /// Whether it boils: bubbles rise, or it is at its boiling point. What loses alcohol boils while its boiling point
    /// rises ahead of it.
    pub(super) fn boils(&self) -> bool {
        self.water_kg() > 0.02 && (self.temp_c >= self.boil_c - 0.05 || self.boiled_kg > 0.0)
    }

    /// Whether pieces are bathed in the liquid rather than lying in a little of it.
    pub(super) fn covers_pieces(&self) -> bool {
        let pieces: f64 = self.groups.iter().map(Group::volume_m3).sum();
        self.liquid_m3() > 0.25 * pieces
    }

    /// Whether pieces stand in the oven's air, there being no liquid to speak of.
    pub(super) fn in_oven_air(&self) -> bool {
        self.place == Place::Oven && !self.covers_pieces()
    }

    /// True temperature of the oven it stands in, °C.
    pub(super) fn oven_c(&self, cond: &Conditions) -> f64 {
        let dial = match self.aim {
            Aim::Oven(t) | Aim::Hold(t) if t.celsius().is_finite() => t.celsius().clamp(-20.0, 350.0),
            Aim::Off => return cond.room_c,
            _ => 180.0,
        };
        dial + cond.oven_offset_k
    }

    /// What temperature the cook keeps, °C, where the burner is turned to keep one.
    pub(super) fn target_c(&self, cond: &Conditions) -> Option<f64> {
        if self.place != Place::Hob {
            return None;
        }
        match self.aim {
            Aim::Boil => Some(self.boil_c),
            Aim::Simmer => Some(self.boil_c - cond.simmer_below_k),
            Aim::BelowBoil => Some(practice::BELOW_BOIL_C.min(self.boil_c - practice::BELOW_BOIL_K)),
            Aim::Hold(t) if t.celsius().is_finite() => Some(t.celsius().clamp(-20.0, 250.0)),
            Aim::Fry(word) => Some(practice::pan_limit_c(word)),
            Aim::Setting(_) | Aim::Oven(_) | Aim::Off | Aim::Hold(_) => None,
        }
    }

    /// The most the burner gives under the aim, watts.
    pub(super) fn most_power_w(&self, cond: &Conditions) -> f64 {
        let Some(full) = self.burner.and_then(|index| cond.burner_w.get(index)).copied() else {
            return 0.0;
        };
        if self.place != Place::Hob || self.watch.dry {
            return 0.0;
        }
        match self.aim {
            Aim::Boil | Aim::Simmer | Aim::BelowBoil | Aim::Hold(_) => full,
            // A cook who sweats warms the pan up first, then turns it down.
            Aim::Fry(_) if self.temp_c < practice::PAN_WARM_C => full * self.setting.max(practice::WARM_UP),
            Aim::Setting(_) | Aim::Fry(_) => full * self.setting,
            Aim::Oven(_) | Aim::Off => 0.0,
        }
    }

    /// Whether anything heats it.
    pub(super) fn is_heated(&self, cond: &Conditions) -> bool {
        self.most_power_w(cond) > 0.0 || (self.place == Place::Oven && self.oven_c(cond) > self.temp_c)
    }
}
