//! Kitchen amounts and measures.
//!
//! Two forms of every quantity are kept apart, and never mixed up:
//!
//! * *as written*: [`Exact`] rationals in an [`Amount`] of a [`Unit`] – what stands on the page, to be printed
//!   again, scaled and rounded without loss;
//! * *in base units*: [`Mass`], [`Volume`], [`Temperature`], [`Duration`] … – what the simulation computes with.
//!
//! Going from one to the other asks for what it needs: a volume needs the market's [`Measures`] (an Australian
//! tablespoon holds 20 ml), a mass from a volume needs a density, which only the larder knows.
//!
//! The crate does no I/O, reads no clock and depends on nothing else of the workspace.

pub mod amount;
pub mod error;
pub mod exact;
mod factors;
pub mod fractions;
pub mod heat;
pub mod in_words;
pub mod kit;
mod names;
pub mod oven;
mod print;
pub mod quantity;
pub mod rounding;
mod rungs;
mod spelling;
pub mod spread;
pub mod unit;

pub use amount::Amount;
pub use error::NumberError;
pub use exact::Exact;
pub use heat::{GasMark, HeatScale, Oven, WrittenTemperature};
pub use kit::{Kit, Pieces, Rounder, Scales};
pub use oven::OvenWord;
pub use quantity::{Density, Duration, Energy, Length, Mass, Money, Power, Temperature, TemperatureDelta, Volume};
pub use rounding::{Ladder, Measured};
pub use spread::Spread;
pub use unit::{Dimension, Measures, Unit};
