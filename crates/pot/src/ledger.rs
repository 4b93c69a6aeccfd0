//! Named accounts: where mass and energy went that are no longer in a vessel.

use serde::{Deserialize, Serialize};

use crate::Matter;

/// What left or entered the vessels, integrated by the same steps as the vessels themselves.
///
/// Matter: `put_in` = `in_vessels` + `vapour` + `spattered` + `discarded` + `left_behind`, constituent by constituent
/// (starch and gelatinised starch together). Energy in joules above liquid water at 0 °C: `enthalpy_in_j` +
/// `vessels_in_j` + `burner_j` + `oven_j` = `in_vessels_j` + `room_j` + `vapour_j` + `discarded_j`.
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
    /// What is in all vessels at the end, the finished dish among it.
    pub in_vessels: Matter,
    /// Bone and shell put in, kilograms.
    pub inedible_in_kg: f64,
    /// Bone and shell thrown away, kilograms.
    pub inedible_discarded_kg: f64,
    /// Bone and shell in all vessels at the end, kilograms.
    pub inedible_in_vessels_kg: f64,
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
    /// Enthalpy of all vessels and what is in them at the end.
    pub in_vessels_j: f64,
}
