//! The kitchen a dish is cooked in: pots, burners, oven, cold places, air.

use potwright_manuscript::Cover;
use potwright_measure::{Duration, Length, Mass, Power, Spread, Temperature};
use serde::{Deserialize, Serialize};

/// A kitchen. [`Kitchen::default`] is the stated one of the books that name none.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Kitchen {
    /// Height above the sea in metres.
    pub altitude_m: f64,
    /// Air of the room.
    pub room: Temperature,
    /// Relative humidity of the room, 0–1.
    pub humidity: f64,
    /// Refrigerator.
    pub refrigerator: Temperature,
    /// Freezer.
    pub freezer: Temperature,
    /// How fast a fan moves the refrigerator's air, metres per second; 0 in most homes, 1 to 2 in a walk-in one (common
    /// practice, no source).
    #[serde(default)]
    pub refrigerator_air_m_s: f64,
    /// How fast a fan moves the freezer's air, metres per second; as above, 2 to 6 in a blast freezer.
    #[serde(default)]
    pub freezer_air_m_s: f64,
    /// Cold water of the tap, for sinks and ice baths.
    pub tap: Temperature,
    /// Pots and pans.
    pub pots: Vec<Pot>,
    /// Burners of the hob, strongest first.
    pub burners: Vec<Burner>,
    /// The oven.
    pub oven: Oven,
    /// Factor on the default evaporation rate below the boil, by what weighings of this kitchen have shown.
    pub evaporation: Spread,
    /// What single pots were weighed to lose; goes before the factor and before the laws.
    #[serde(default)]
    pub weighed: Vec<Weighed>,
}

/// What one pot loses under one lid at one word of heat, found by weighing it before and after.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Weighed {
    /// The pot's name.
    pub pot: String,
    /// The lid.
    pub cover: Cover,
    /// The word.
    pub at: Heated,
    /// Vapour, kg/(h·m²) of the pot's opening.
    pub kg_h_m2: Spread,
}

/// How hot a cook keeps what is in a pot, in the three words a page has for it.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Heated {
    /// Hot, and never boiling.
    BelowBoil,
    /// A simmer.
    Simmer,
    /// A full rolling boil.
    Boil,
}

/// A pot or pan, known by its printed size and its weight.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Pot {
    /// What the cook calls it.
    pub name: String,
    /// Inner diameter.
    pub diameter: Length,
    /// Inner height.
    pub height: Length,
    /// What it is made of.
    pub material: Material,
    /// Its weight empty, without lid.
    pub tare: Mass,
    /// What it is made for.
    #[serde(default)]
    pub kind: PotKind,
}

/// What a pot is made for.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum PotKind {
    /// The hob or the oven.
    #[default]
    Plain,
    /// Its lid can be locked; a valve lets out what is above its working pressure.
    PressureCooker,
    /// It has an element of its own, low and high, and a housing.
    SlowCooker,
}

/// What a pot is made of.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Material {
    /// Thin steel or aluminium-based pots.
    Steel,
    /// Aluminium.
    Aluminium,
    /// Cast iron, bare or enamelled.
    CastIron,
    /// Earthenware, stoneware, glass.
    Earthenware,
}

/// A burner.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Burner {
    /// What kind.
    pub kind: BurnerKind,
    /// Rated power at full.
    pub power: Power,
    /// Share of the rated power that reaches the pot, 0–1.
    pub efficiency: Spread,
}

/// Kinds of burner.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "each variant is the kind of its name")]
pub enum BurnerKind {
    Gas,
    Radiant,
    Induction,
    SolidPlate,
}

/// An oven.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Oven {
    /// Whether a fan moves the air.
    pub fan: bool,
    /// Heat-transfer coefficient from its air to what stands in it, W/(m²·K); radiation of its walls comes on top.
    pub convection_w_m2k: Spread,
    /// True temperature minus the dial's, kelvins.
    pub offset_k: Spread,
    /// Power at full.
    pub power: Power,
    /// Heat capacity of lining, shelves and door, J/K.
    pub capacity_j_k: Spread,
    /// Heat lost to the room per kelvin, W/K.
    pub loss_w_k: Spread,
}

impl Default for Kitchen {
    /// The kitchen of books that name none: a four-burner gas hob, a fan oven, three pots and a sauté pan, 110 m above
    /// the sea. Every figure is common practice, no source, but the efficiency of gas (boiling-water tests quoted by the
    /// US Department of Energy: 40 %).
    fn default() -> Self {
        Kitchen {
            altitude_m: 110.0,
            room: Temperature::from_celsius(21.0),
            humidity: 0.5,
            refrigerator: Temperature::from_celsius(4.0),
            freezer: Temperature::from_celsius(-18.0),
            refrigerator_air_m_s: 0.0,
            freezer_air_m_s: 0.0,
            tap: Temperature::from_celsius(12.0),
            pots: vec![
                Pot::new("2.8-litre pot", 18.0, 11.0, Material::Steel, 1.1),
                Pot::new("5.5-litre pot", 24.0, 12.2, Material::CastIron, 4.4),
                Pot::new("9.5-litre pot", 28.0, 15.5, Material::Steel, 2.6),
                Pot::new("30 cm sauté pan", 30.0, 6.5, Material::Steel, 2.2),
            ],
            burners: vec![
                Burner::gas(3500.0),
                Burner::gas(2800.0),
                Burner::gas(1750.0),
                Burner::gas(1000.0),
            ],
            oven: Oven::default(),
            // The half width of the bracket of three laws at a bare simmer (see `physics::evaporation`).
            evaporation: Spread::within_factor(1.0, 1.97),
            weighed: Vec::new(),
        }
    }
}

impl Default for Oven {
    /// A domestic fan oven.
    fn default() -> Self {
        Oven::new(true)
    }
}

impl Oven {
    /// A domestic oven, with a fan or still: 8 or 5 W/(m²·K) by convection, the dial within 10 K, 2.5 kW, 9 kJ/K, 5 W/K
    /// (common practice, no source, ×/÷1.5). With the 14 that walls at 180 °C radiate to food, a fan oven's 8 make the
    /// usual 22; over cakes at 186 to 225 °C 20 to 48 were measured, 75 to 80 % of it radiation (Baik and others,
    /// J. Food Sci. 64 (1999) 688, abstract).
    #[must_use]
    pub fn new(fan: bool) -> Self {
        Oven {
            fan,
            convection_w_m2k: Spread::within_factor(if fan { 8.0 } else { 5.0 }, 1.5),
            offset_k: Spread {
                low: -10.0,
                mid: 0.0,
                high: 10.0,
            },
            power: Power::from_watts(2500.0),
            capacity_j_k: Spread::within_factor(9000.0, 1.5),
            loss_w_k: Spread::within_factor(5.0, 1.5),
        }
    }

    /// How long it takes from the room's temperature to the dial's, empty: C·dT/dt = P − U·(T − room), so
    /// t = C/U · ln(P ÷ (P − U·ΔT)). None when it never gets there.
    #[must_use]
    pub fn preheat(&self, to: Temperature, room: Temperature) -> Option<Duration> {
        let rise_k = (to.celsius() - room.celsius()).max(0.0);
        let (watts, loss) = (self.power.watts(), self.loss_w_k.mid.max(1e-6));
        let spare = watts - loss * rise_k;
        (spare > 0.0).then(|| Duration::from_seconds(self.capacity_j_k.mid / loss * libm::log(watts / spare)))
    }
}

impl Pot {
    /// A pot from its inner measures in centimetres and its weight in kilograms.
    #[must_use]
    pub fn new(name: &str, diameter_cm: f64, height_cm: f64, material: Material, tare_kg: f64) -> Self {
        Pot {
            name: name.to_owned(),
            diameter: Length::from_centimetres(diameter_cm),
            height: Length::from_centimetres(height_cm),
            material,
            tare: Mass::from_kilograms(tare_kg),
            kind: PotKind::Plain,
        }
    }

    /// Inner volume to the rim, litres: a cylinder.
    #[must_use]
    pub fn litres(&self) -> f64 {
        let radius = self.diameter.metres() / 2.0;
        1000.0 * std::f64::consts::PI * radius * radius * self.height.metres()
    }
}

impl Material {
    /// Specific heat, J/(kg·K): steel 490, aluminium 900, cast iron 460, earthenware and glass 840 (engineering
    /// handbooks, from memory; within 5 %).
    #[must_use]
    pub const fn specific_heat(self) -> f64 {
        match self {
            Material::Steel => 490.0,
            Material::Aluminium => 900.0,
            Material::CastIron => 460.0,
            Material::Earthenware => 840.0,
        }
    }

    /// Conductivity, W/(m·K), and density, kg/m³: stainless steel 16 and 7900, aluminium 200 and 2700, cast iron 50 and
    /// 7200, earthenware 1.2 and 2200 (engineering handbooks, from memory; earthenware within 30 %).
    #[must_use]
    pub const fn conductivity_density(self) -> (f64, f64) {
        match self {
            Material::Steel => (16.0, 7900.0),
            Material::Aluminium => (200.0, 2700.0),
            Material::CastIron => (50.0, 7200.0),
            Material::Earthenware => (1.2, 2200.0),
        }
    }

    /// Emissivity of the outside for radiation, 0–1: bright metal 0.3, enamel, bare iron and earthenware 0.9 (handbooks,
    /// from memory).
    #[must_use]
    pub const fn emissivity(self) -> f64 {
        match self {
            Material::Steel | Material::Aluminium => 0.3,
            Material::CastIron | Material::Earthenware => 0.9,
        }
    }
}

impl Burner {
    /// A burner of a kind at its rated power in watts, with the efficiency of its kind.
    #[must_use]
    pub fn new(kind: BurnerKind, watts: f64) -> Self {
        Burner {
            kind,
            power: Power::from_watts(watts),
            efficiency: kind.efficiency(),
        }
    }

    /// A gas burner.
    #[must_use]
    pub fn gas(watts: f64) -> Self {
        Burner::new(BurnerKind::Gas, watts)
    }
}

impl BurnerKind {
    /// Time constant with which the heat it gives follows the knob, seconds. A gas flame and an induction field follow at
    /// once. Under a radiant ring's glass (18 cm, 4 mm, some 350 K above the pot: 80 kJ) it is what 1.1 kW takes a minute
    /// and a quarter to bring; in a solid plate (1.8 kg of iron, some 300 K: 270 kJ) four minutes (common practice, no
    /// source).
    #[must_use]
    pub const fn lag_s(self) -> Spread {
        match self {
            BurnerKind::Gas | BurnerKind::Induction => Spread::exact(0.0),
            BurnerKind::Radiant => Spread::within_factor(75.0, 1.5),
            BurnerKind::SolidPlate => Spread::within_factor(240.0, 1.5),
        }
    }

    /// Share of the rated power that reaches the pot. Gas 0.40, radiant 0.74, induction 0.84: boiling-water tests
    /// quoted by the US Department of Energy, and the abstract of an ACEEE 2014 paper (about 40 % for gas, up to 90 %
    /// for induction). A solid plate 0.65, and the spreads: common practice, no source.
    #[must_use]
    pub const fn efficiency(self) -> Spread {
        match self {
            BurnerKind::Gas => Spread {
                low: 0.30,
                mid: 0.40,
                high: 0.50,
            },
            BurnerKind::Radiant => Spread {
                low: 0.62,
                mid: 0.74,
                high: 0.80,
            },
            BurnerKind::Induction => Spread {
                low: 0.74,
                mid: 0.84,
                high: 0.90,
            },
            BurnerKind::SolidPlate => Spread {
                low: 0.50,
                mid: 0.65,
                high: 0.75,
            },
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The names of the default pots are their volumes.
    #[test]
    fn default_pots_hold_what_they_are_called() {
        for (pot, litres) in Kitchen::default().pots.iter().zip([2.8, 5.5, 9.5]) {
            assert!(
                (pot.litres() / litres - 1.0).abs() < 0.01,
                "{}: {}",
                pot.name,
                pot.litres()
            );
        }
    }

    /// 2.5 kW, 9 kJ/K, 5 W/K, from 20 to 180 °C: 1800 s · ln(2500 ÷ 1700) = 694 s; at 521 °C above the room it stands still.
    #[test]
    fn an_oven_takes_its_time() {
        let at = Temperature::from_celsius;
        let seconds = |to: f64| Oven::default().preheat(at(to), at(20.0)).map(Duration::seconds);
        assert!((seconds(180.0).unwrap() - 694.2).abs() < 0.5, "{:?}", seconds(180.0));
        assert_eq!(seconds(541.0), None);
    }

    #[test]
    fn burners_stand_strongest_first() {
        let kitchen = Kitchen::default();
        assert!(kitchen.burners.windows(2).all(|pair| pair[0].power >= pair[1].power));
    }
}
