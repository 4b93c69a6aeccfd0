//! Named accounts: where mass and energy went that are no longer in a vessel.

use serde::{Deserialize, Serialize};

use crate::Matter;

/// What left or entered the vessels, integrated by the same steps as the vessels themselves.
///
/// Matter: everything put in = everything in the vessels and served + these accounts. Energy (joules): enthalpy
/// brought in + heat supplied = enthalpy in the vessels, served and discarded + heat lost + enthalpy of the vapour.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Ledger {
    /// Matter put into vessels, all lots together.
    pub put_in: Matter,
    /// Vapour: water and alcohol that left by evaporation and boiling.
    pub vapour: Matter,
    /// Fat and water spattered from a frying pan.
    pub spattered: Matter,
    /// What was thrown away: strained solids, skimmings, water drained off.
    pub discarded: Matter,
    /// What stayed in a vessel that was emptied (clinging to the pot).
    pub left_behind: Matter,
    /// Enthalpy of all that was put in, joules above water at 0 °C.
    pub enthalpy_in_j: f64,
    /// Heat from burners.
    pub burner_j: f64,
    /// Heat from the oven (negative when the oven takes it up).
    pub oven_j: f64,
    /// Heat lost to the room, the refrigerator, a bath, by convection and radiation.
    pub room_j: f64,
    /// Enthalpy carried off by vapour.
    pub vapour_j: f64,
    /// Enthalpy of what was spattered, discarded and left behind.
    pub discarded_j: f64,
    /// Enthalpy of the metal of vessels when they came into use.
    pub vessels_in_j: f64,
}
