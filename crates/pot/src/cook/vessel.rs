//! A vessel in use: what is in it, where it stands, what the cook does with its heat.

use potwright_manuscript::{Cover, HeatWord};

use crate::cook::cold::Skin;
use crate::cook::cold_inside::Inside;
use crate::cook::conditions::Conditions;
use crate::cook::cooling::Follow;
use crate::cook::curdle::Fragile;
use crate::cook::exchange::Exchange;
use crate::cook::fire::Fire;
use crate::cook::group::Group;
use crate::cook::practice;
use crate::physics::gelatinisation::{self, Range};
use crate::physics::properties::{self, HeatContent};
use crate::physics::water;
use crate::{Aim, Heated, Material, Matter, Place, PotKind, Stuff, Vessel};

/// Measures of a vessel in SI units.
#[derive(Clone, Copy, Debug)]
pub(super) struct Measures {
    pub(super) diameter_m: f64,
    pub(super) height_m: f64,
    pub(super) area_m2: f64,
    /// Heat capacity of the vessel itself, J/K.
    pub(super) metal_j_k: f64,
    pub(super) emissivity: f64,
    /// Conductivity times thickness of the wall, W/K, and time constant of the base on a fire, seconds.
    wall_w_k: f64,
    pub(super) base_lag_s: f64,
    pub(super) kind: PotKind,
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
        let mut measures = Measures {
            diameter_m,
            height_m,
            area_m2,
            metal_j_k,
            emissivity,
            wall_w_k: 0.0,
            base_lag_s: 0.0,
            kind: vessel.pot.as_ref().map_or(PotKind::Plain, |pot| pot.kind),
            known: vessel.pot.is_some(),
        };
        if let Some(pot) = &vessel.pot {
            measures.shape(pot.material);
        }
        measures
    }

    /// Thickness of wall and base from the weight, and what follows from it. The base holds back C·(1/(h·A) + d/(2·k·A)):
    /// its heat capacity over the film to the food and half its own depth.
    fn shape(&mut self, material: Material) {
        let (conductivity, density) = material.conductivity_density();
        let wall_m2 = std::f64::consts::PI * self.diameter_m * self.height_m;
        let base_share = practice::BASE_THICKER * self.area_m2 / (wall_m2 + practice::BASE_THICKER * self.area_m2);
        let kilograms = self.metal_j_k / material.specific_heat();
        let wall_m = kilograms * (1.0 - base_share) / (density * wall_m2);
        let resistance = 1.0 / practice::FILM_BASE + practice::BASE_THICKER * wall_m / (2.0 * conductivity);
        self.wall_w_k = conductivity * wall_m;
        self.base_lag_s = self.metal_j_k * base_share * resistance / self.area_m2;
    }

    /// How much of a dry wall above the liquid is as warm as it, metres: a fin of length L loses as much as L₀·tanh(L/L₀)
    /// of it would at the temperature of its foot, L₀ = √(k·d/h) (any heat-transfer text), h in W/(m²·K).
    pub(super) fn rim_m(&self, dry_m: f64, film_w_m2k: f64) -> f64 {
        let reach = (self.wall_w_k / film_w_m2k.max(0.1)).sqrt();
        if reach > 0.0 {
            reach * libm::tanh(dry_m.max(0.0) / reach)
        } else {
            0.0
        }
    }

    /// Litres to the rim.
    pub(super) fn litres(&self) -> f64 {
        1000.0 * self.area_m2 * self.height_m
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
    pub(super) fragile: Fragile,
    /// Enthalpy of liquid and metal, joules.
    pub(super) heat_j: f64,
    pub(super) temp_c: f64,
    pub(super) boil_c: f64,
    liquid_m3: f64,
    pub(super) groups: Vec<Group>,
    pub(super) exchange: Exchange,
    /// What plate and base hold back.
    pub(super) fire: Fire,
    /// The lid is locked and under pressure; the word for how much.
    pub(super) sealed: Option<HeatWord>,
    /// What this pot was weighed to lose, kg/(s·m²), by lid and word.
    pub(super) weighed: Vec<(Cover, Heated, f64)>,
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
    pub(super) inside: Option<Box<Inside>>,
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
            fragile: Fragile::default(),
            heat_j: 0.0,
            temp_c: cond.room_c,
            boil_c: cond.boiling_c,
            liquid_m3: 0.0,
            groups: Vec::new(),
            exchange: Exchange::default(),
            fire: Fire::default(),
            sealed: None,
            weighed: vessel.pot.as_ref().map_or(Vec::new(), |pot| cond.weighed_of(&pot.name)),
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
        if self.is_empty() {
            // The base of an emptied pot is metal like the rest of it.
            self.heat_j += std::mem::take(&mut self.fire.base.held_j);
        }
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
        let pure_c = self.sealed.map_or(cond.boiling_c, |word| cond.pressed_c(word));
        self.boil_c = pure_c + water::broth_elevation_k(&self.liquid);
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

    /// Whether there is water enough outside the pieces to be seen boiling.
    pub(super) fn can_boil(&self) -> bool {
        self.water_kg() > 0.02
    }

    /// Whether it boils: bubbles rise, or it is at its boiling point. What loses alcohol boils while its boiling point
    /// rises ahead of it.
    pub(super) fn boils(&self) -> bool {
        self.can_boil() && (self.temp_c >= self.boil_c - 0.05 || self.boiled_kg > 0.0)
    }

    /// Whether pieces are bathed in the liquid rather than lying in a little of it.
    pub(super) fn covers_pieces(&self) -> bool {
        let pieces: f64 = self.groups.iter().map(Group::volume_m3).sum();
        self.liquid_m3() > practice::BATHES * pieces
    }

    /// Whether pieces stand in the oven's air, there being no liquid to speak of.
    pub(super) fn in_oven_air(&self) -> bool {
        self.place == Place::Oven && !self.covers_pieces()
    }

    /// What temperature the cook keeps, °C, where the burner is turned to keep one.
    pub(super) fn target_c(&self, cond: &Conditions) -> Option<f64> {
        if self.place != Place::Hob {
            return None;
        }
        match self.aim {
            Aim::Boil | Aim::Pressure(_) => Some(self.boil_c),
            Aim::Simmer => Some(self.boil_c - cond.simmer_below_k),
            Aim::BelowBoil => Some(practice::BELOW_BOIL_C.min(self.boil_c - practice::BELOW_BOIL_K)),
            Aim::Hold(t) if t.celsius().is_finite() => Some(t.celsius().clamp(-20.0, 250.0)),
            Aim::Fry(word) => {
                let over = practice::pan_limit_c(word) - practice::PAN_LIMIT_FROM_C;
                Some(practice::PAN_LIMIT_FROM_C + over * if over > 0.0 { cond.pan_limit } else { 1.0 })
            }
            Aim::Setting(_) | Aim::Oven(_) | Aim::Off | Aim::Hold(_) => None,
        }
    }

    /// The most the burner gives under the aim, watts.
    pub(super) fn most_power_w(&self, cond: &Conditions) -> f64 {
        if self.place != Place::Hob || self.watch.dry {
            return 0.0;
        }
        if self.measures.kind == PotKind::SlowCooker {
            let word = match self.aim {
                Aim::Off => HeatWord::Off,
                Aim::Setting(word) | Aim::Fry(word) => word,
                _ => HeatWord::High,
            };
            return cond.slow_w_l(word) * self.measures.litres();
        }
        let Some(full) = self.burner.and_then(|index| cond.burner_w.get(index)).copied() else {
            return 0.0;
        };
        match self.aim {
            Aim::Boil | Aim::Simmer | Aim::BelowBoil | Aim::Hold(_) | Aim::Pressure(_) => full,
            // A cook who sweats warms the pan up first, then turns it down.
            Aim::Fry(_) if self.temp_c < practice::PAN_WARM_C => full * self.setting.max(practice::WARM_UP),
            Aim::Setting(_) | Aim::Fry(_) => full * self.setting,
            Aim::Oven(_) | Aim::Off => 0.0,
        }
    }

    /// Whether anything heats it.
    pub(super) fn is_heated(&self, cond: &Conditions) -> bool {
        self.most_power_w(cond) > 0.0 || (self.place == Place::Oven && cond.oven.temp_c > self.temp_c)
    }
}
