//! The kitchen a dish is cooked in: pots, burners, oven, cold places, air.

use potwright_measure::{Length, Mass, Power, Spread, Temperature};
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
    /// Heat-transfer coefficient from air to a pot's surface, W/(m²·K), radiation of the walls included.
    pub film_w_m2k: Spread,
    /// True temperature minus the dial's, kelvins.
    pub offset_k: Spread,
}
