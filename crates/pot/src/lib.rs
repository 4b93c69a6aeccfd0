//! The pot: a recipe becomes a process, and the process is cooked by computation.
//!
//! * `resolve`: a recipe, the larder and what other dishes have [`Made`] give a [`Process`] – masses, pieces,
//!   vessels and a list of [`Act`]s, each tied to the words it came from;
//! * `cook`: a process in a [`Kitchen`] gives a [`Trace`] – what was in each vessel, minute by minute.
//!
//! Masses and enthalpy are balanced: whatever leaves a vessel arrives in another one or in a named account of the
//! [`Ledger`]. One run takes about a millisecond; the spread of every figure comes from runs under other [`Draw`]s.
//! No I/O, no clock; the same process, kitchen and draw give the same bytes on every machine.

pub mod checks;
pub mod cook;
pub mod draw;
pub mod kitchen;
pub mod ledger;
pub mod matter;
pub mod physics;
pub mod process;
mod resolve;
pub mod trace;

pub use cook::cook;
pub use draw::Draw;
pub use kitchen::{Burner, BurnerKind, Heated, Kitchen, Material, Oven, Pot, PotKind, Weighed};
pub use ledger::Ledger;
pub use matter::{Matter, Nutrient, Stuff};
pub use process::{
    Act, Aim, Alternative, Assumption, Cue, Doing, Doubt, FatOff, Lasts, Lot, Made, Makes, Part, Pieces, Place,
    Portion, Process, Rival, Source, Stretch, Vessel,
};
pub use resolve::{Varied, grams_per_ml, make_up_100_g, names_dish, resolve, varied};
pub use trace::{
    ActTrace, Cooling, Curdling, Event, Happening, OvenHeated, PieceTrace, Reduction, Sample, ServedPieces, Trace,
    VesselSample,
};
