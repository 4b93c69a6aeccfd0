//! The trace of a cooking: what was in each vessel, minute by minute, and what came of it.

use potwright_larder::Hazard;
use potwright_measure::Duration;
use serde::{Deserialize, Serialize};

use crate::physics::lethality::Decline;
use crate::{Ledger, Matter};

/// Everything a run shows. Every answer of the program is read off this.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Trace {
    /// Mass of each lot in this run, kilograms, as drawn or solved.
    pub lot_kg: Vec<f64>,
    /// Samples in order of time: at every act's start and end, and between them at least each minute while something hot
    /// changes; up to ten minutes apart where a straight line between two of them is as good.
    pub samples: Vec<Sample>,
    /// When each act began and ended; same order as the process's acts.
    pub acts: Vec<ActTrace>,
    /// What happened: boils, dry pots, overflow, cues not reached.
    pub events: Vec<Event>,
    /// Each group of pieces that must be made safe or tender, by lot.
    pub pieces: Vec<PieceTrace>,
    /// Every stretch in which the contents cooled from above 57 °C.
    pub coolings: Vec<Cooling>,
    /// When an oven was heated for a dish to go into it hot.
    #[serde(default)]
    pub ovens: Vec<OvenHeated>,
    /// Liquid of the finished dish (all that is dispersed).
    pub served_liquid: Matter,
    /// Pieces of the finished dish, by lot.
    pub served_pieces: Vec<ServedPieces>,
    /// Temperature of the finished dish, °C.
    pub served_c: f64,
    /// Volume of the finished dish in litres, pieces included, bones and shells too.
    pub served_volume_l: f64,
    /// Accounts.
    pub ledger: Ledger,
    /// From the first act to the last.
    pub elapsed: Duration,
    /// Time of one pair of hands: preparation of lots, acts, frying and stirring.
    pub hands_on: Duration,
    /// Boiling point of the liquid in the dish's vessel at its highest, °C.
    pub boiling_c: f64,
}

/// The vessels at one moment.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Sample {
    /// Seconds from the start.
    pub time_s: f64,
    /// The act going on.
    pub act: usize,
    /// One entry for each vessel that holds something.
    pub vessels: Vec<VesselSample>,
}

/// One vessel at one moment.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct VesselSample {
    /// Index into the process's vessels.
    pub vessel: usize,
    /// Temperature of the liquid (of the pan's contents when there is none), °C.
    pub temp_c: f64,
    /// Mass of everything in it, kilograms.
    pub mass_kg: f64,
    /// Volume of everything in it, litres.
    pub volume_l: f64,
    /// Height of the contents as a share of the vessel's height (0 when the vessel has no measures).
    pub level: f64,
    /// Salt in the liquid, kilogram per kilogram.
    pub liquid_salinity: f64,
    /// Gelatinised starch in the liquid, kilogram per kilogram of liquid.
    pub gelatinised: f64,
    /// Heat going in from burner or oven, watts.
    pub heat_w: f64,
}

/// When an act began and ended.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct ActTrace {
    /// Seconds from the start.
    pub start_s: f64,
    /// Seconds from the start.
    pub end_s: f64,
    /// Hands busy during it, seconds.
    pub hands_s: f64,
}

/// An oven that was heated up before a dish went into it.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct OvenHeated {
    /// The act for which it was hot.
    pub act: usize,
    /// When it had to be hot, seconds from the start, and how long that took, seconds.
    pub hot_s: f64,
    /// Seconds.
    pub takes_s: f64,
    /// What its dial says, °C.
    pub to_c: f64,
}

/// Something that happened.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Event {
    /// Seconds from the start.
    pub time_s: f64,
    /// The vessel.
    pub vessel: usize,
    /// The act.
    pub act: usize,
    /// What.
    pub what: Happening,
}

/// What can happen.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Happening {
    /// It came to the boil.
    Boiled,
    /// The liquid boiled away.
    BoiledDry,
    /// The level passed what the vessel can hold at this heat: share of the height.
    TooFull(f64),
    /// The cue was not reached within the longest time that is waited.
    CueNotReached,
    /// The dish boiled although the page says it must not.
    BoiledThoughForbidden,
    /// Pieces gave off water faster than the pan could drive it off: they stew instead of browning.
    CrowdedPan {
        /// Batches in which they would brown.
        batches_needed: u32,
    },
    /// More than lies in the pan side by side. Where the page says nothing of batches these are cooked one after the other,
    /// each for the time that is said.
    TooMuchForThePan {
        /// Batches that each lie in one layer.
        batches: u32,
    },
    /// The setting cannot hold what the page asks for.
    NotEnoughHeat,
    /// Milk or cream was above the temperature at which it curdles or boils over, °C.
    DairyHot(f64),
    /// So much liquid clings to pieces that were strained or lifted out of it, kilograms.
    Clings(f64),
    /// Something in the liquid curdled or broke, at this temperature, °C.
    Curdles {
        /// What.
        what: Curdling,
        /// Temperature of the liquid then, °C.
        temp_c: f64,
    },
    /// Something of the process cannot be cooked (an amount that is not a number, a vessel or lot that does not
    /// exist) and was left out: one phrase that names it.
    LeftOut(String),
}

/// What curdles or breaks in a liquid, each by its rule ([`crate::physics::emulsions`]).
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Curdling {
    /// Milk or thin cream with acid.
    MilkWithAcid,
    /// Yoghurt, soured cream, buttermilk.
    Cultured,
    /// Egg that was stirred in.
    Egg,
    /// Grated or melted cheese.
    Cheese,
}

/// What a group of pieces went through.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct PieceTrace {
    /// Index into the process's lots.
    pub lot: usize,
    /// What must be made safe.
    pub hazard: Option<Hazard>,
    /// Centre temperature against time from the start: (seconds, °C), at every sample.
    pub centre: Vec<(f64, f64)>,
    /// Hottest the centre has been, °C.
    pub hottest_centre_c: f64,
    /// What the heat did to the growing cells of its hazard's organism, by calculation; none where no confirmed table gives
    /// figures. The published tables decide, not this.
    pub reduction: Option<Reduction>,
    /// Share of the way to tender (1 = a cook calls it tender; above 1 softer still); none when not computed.
    pub tender: Option<f64>,
    /// Mass as it went in, kilograms.
    pub raw_kg: f64,
    /// Mass at the end, kilograms.
    pub cooked_kg: f64,
}

/// Decimal reductions of an organism's growing cells in a piece; more than
/// [`crate::physics::lethality::MOST_LOG10`] are not told apart. Spores and toxins stand such heat.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Reduction {
    /// The organism's figures.
    pub decline: Decline,
    /// log₁₀ at the point that had least.
    pub coldest_log10: f64,
    /// log₁₀ of the whole piece.
    pub whole_log10: f64,
}

/// A cooling of hot food.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Cooling {
    /// The vessel.
    pub vessel: usize,
    /// The act in which the cooling ends.
    pub act: usize,
    /// Hours from 57 °C to 21 °C in the warmest place; none if not reached.
    pub stage_one_h: Option<f64>,
    /// Hours from 57 °C to 5 °C in the warmest place; none if not reached.
    pub total_h: Option<f64>,
    /// Temperature of the warmest place at the end, °C.
    pub end_c: f64,
    /// Hours it was followed.
    pub followed_h: f64,
    /// Organic acid in what cools, citric-acid equivalent, kilogram per kilogram of everything edible.
    pub acid: f64,
}

/// Pieces of the finished dish.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct ServedPieces {
    /// Index into the process's lots.
    pub lot: usize,
    /// Their edible matter.
    pub matter: Matter,
    /// Bone and shell, kilograms.
    pub inedible_kg: f64,
    /// Centre temperature, °C.
    pub centre_c: f64,
}
