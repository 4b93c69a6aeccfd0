//! The larder: what a cook's name for a food means.
//!
//! A [`Food`] is composition, weights of a cup and a piece, refuse, allergens, behaviour in the pot, packs, keeping
//! and preparation times. All of it stands in the tables of `data/`, one subject a file, every row with its source;
//! an empty cell means *not determined*, never nought.
//!
//! [`Larder::built_in`] gives the project's own tables; [`Larder::find`] resolves a name with a score and its rivals.

pub mod allergen;
pub mod behaviour;
pub mod composition;
pub mod food;

pub use allergen::{Allergen, Contains};
pub use behaviour::{Absorbs, Behaviour, Hazard, Shape, Softens, StarchKind};
pub use composition::Composition;
pub use food::{Food, FoodId, Kind, State, Weight};
