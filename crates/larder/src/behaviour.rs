//! How a food behaves in the pot.

use potwright_measure::Spread;
use serde::{Deserialize, Serialize};

/// Behaviour of a food while it cooks; `None` where it does not apply.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Behaviour {
    /// Which starch it carries, for gelatinisation and thickening.
    pub starch: Option<StarchKind>,
    /// Drinks water and swells (pulses, grains, pasta).
    pub absorbs: Option<Absorbs>,
    /// Softens with time and temperature.
    pub softens: Option<Softens>,
    /// The shape of a piece and its least dimension in millimetres as used whole or cut without a size being said.
    pub shape: Option<Shape>,
    /// Share of its own fat that leaves the piece on frying or long simmering (0–1).
    pub renders: Option<Spread>,
    /// Share of its own water a piece of meat or fish loses when cooked through (0–1), and a vegetable when sweated.
    pub sheds_water: Option<Spread>,
    /// Share of its mass as it goes into the pot that is never eaten: bone, shell (0–1).
    pub inedible: Option<f64>,
    /// Softens to a mash or dissolves into the liquid when fully cooked (red lentils, floury potato: partly; 0–1).
    pub falls_apart: Option<Spread>,
    /// What must be made safe, and by which rule.
    pub hazard: Option<Hazard>,
    /// Organic acid, citric-acid equivalent, grams per 100 g.
    pub acid_g: Option<f64>,
    /// Total sulphur dioxide, milligrams per kilogram (wine, dried fruit).
    pub sulphite_mg_kg: Option<f64>,
    /// Dissolves or disperses in the liquid at once: salt, sugar, flour, ground spice, stock, cream.
    pub disperses: bool,
}

/// Starches told apart by their gelatinisation range.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "each variant is the plant of its name")]
pub enum StarchKind {
    Wheat,
    Maize,
    Potato,
    Tapioca,
    Rice,
    Oat,
    Barley,
    SweetPotato,
    Pulse,
}

/// Uptake of water.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Absorbs {
    /// Grams of water taken up in all by a gram of the food as it goes in.
    pub water_per_gram: Spread,
    /// Minutes near the boil to take up nine tenths of it.
    pub minutes_at_boil: Spread,
    /// Hours in cold water to take up nine tenths of what soaking gives; `None` if it is not soaked.
    pub soaking_hours: Option<Spread>,
}

/// Softening: a time to 'done' at a simmer for a piece of the usual size, moved to other temperatures by an activation
/// energy. Only the ratio of times is a published relation; the time itself is a cook's, and cooks time a simmer.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Softens {
    /// Minutes of simmering until a cook calls it tender.
    pub minutes_at_simmer: Spread,
    /// Activation energy in kJ/mol.
    pub activation_kj_mol: f64,
}

/// The shape that heat sees.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Shape {
    /// A flat piece: thickness in millimetres.
    Slab {
        /// Full thickness, millimetres.
        thickness_mm: f64,
    },
    /// A long piece: diameter in millimetres.
    Cylinder {
        /// Diameter, millimetres.
        diameter_mm: f64,
    },
    /// A round piece: diameter in millimetres.
    Sphere {
        /// Diameter, millimetres.
        diameter_mm: f64,
    },
    /// A length cut off something long and round.
    ShortCylinder {
        /// Diameter, millimetres.
        diameter_mm: f64,
        /// Length, millimetres.
        length_mm: f64,
    },
    /// A piece with six faces: a cube, a baton.
    Brick {
        /// Least edge, millimetres.
        thickness_mm: f64,
        /// Middle edge, millimetres.
        width_mm: f64,
        /// Greatest edge, millimetres.
        length_mm: f64,
    },
}

impl Shape {
    /// A cube of an edge in millimetres.
    #[must_use]
    pub const fn cube(edge_mm: f64) -> Self {
        Shape::Brick {
            thickness_mm: edge_mm,
            width_mm: edge_mm,
            length_mm: edge_mm,
        }
    }

    /// The least dimension, millimetres.
    #[must_use]
    pub fn least_mm(self) -> f64 {
        match self {
            Shape::Slab { thickness_mm } => thickness_mm,
            Shape::Cylinder { diameter_mm } | Shape::Sphere { diameter_mm } => diameter_mm,
            Shape::ShortCylinder { diameter_mm, length_mm } => diameter_mm.min(length_mm),
            Shape::Brick {
                thickness_mm,
                width_mm,
                length_mm,
            } => thickness_mm.min(width_mm).min(length_mm),
        }
    }
}

/// What must be made safe, and the rule that says when.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Hazard {
    /// Poultry of any kind.
    Poultry,
    /// Minced or mechanically tenderised meat, sausages.
    MincedMeat,
    /// Whole cuts of beef, pork, lamb, game.
    WholeMeat,
    /// Fin fish.
    Fish,
    /// Prawns, crab, lobster.
    Crustacean,
    /// Live bivalves: mussels, clams, oysters.
    Bivalve,
    /// Eggs.
    Egg,
    /// Kidney beans: phytohaemagglutinin; boil hard.
    KidneyBean,
    /// Already cooked or cured for eating as it is: reheated only.
    ReadyToEat,
}
