//! From trace to dossier: every answer a writer asks for, read off one simulation.
//!
//! [`Dossier`] is the plain data that goes to print, to the screen and to other programs. Each [`Figure`] carries
//! its spread and *how it is known*; what cannot be computed says so instead of being left out.
//! No I/O, no clock.

pub mod dossier;
pub mod figure;
pub mod prices;

pub use dossier::{
    AllergenRow, Body, BodyWord, CoolingRow, Doneness, Dossier, NutrientRow, Reckoned, StepRow, Target, ToTaste, Verdict,
};
pub use figure::{Figure, Known, Measure};
pub use prices::{Price, Prices};
