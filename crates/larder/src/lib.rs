//! The larder: what a cook's name for a food means.
//!
//! A [`Food`] is composition, weights of a cup and a piece, refuse, allergens, behaviour in the pot, packs, keeping
//! and preparation times. All of it stands in the tables of `data/`, one subject a file, every row with its source;
//! an empty cell means *not determined*, never nought.
//!
//! [`Larder::built_in`] gives the project's own tables; [`Larder::find`] resolves a name with a score and its rivals.
//! [`own`] reads the foods of a book, [`official`] complete tables as they are published; [`Larder::with`] adds both.

pub mod allergen;
pub mod behaviour;
pub mod composition;
pub mod error;
mod find;
pub mod food;
mod hash;
mod hints;
mod imported;
mod index;
mod larder;
mod load;
pub mod official;
pub mod own;
pub mod packs;
mod spelling;
mod table;
mod tables;
mod weigh;
mod words;

pub use allergen::{Allergen, Contains};
pub use behaviour::{Absorbs, Behaviour, Hazard, Shape, Softens, StarchKind};
pub use composition::Composition;
pub use error::{Fault, TableError};
pub use find::Match;
pub use food::{Food, FoodId, Kind, State, Weight};
pub use hints::Hints;
pub use larder::Larder;
pub use packs::{Market, Pack, Season};
pub use tables::Tables;
pub use weigh::{Fit, Heaped, Weighed};
