//! The one place that puts everything together: a book is opened, and its dishes are read, cooked in order of
//! dependency, reckoned and queried.
//!
//! * [`House::open`] takes a [`potwright_book::Book`]; [`House::reckon`] gives a [`Cooked`] dish;
//!   [`House::reckon_all`] all of them, on all cores.
//! * A dish whose list names another dish of the book is cooked after it and gets what was made; dishes that use each
//!   other in a circle are reported by name.
//! * What was cooked is kept by content: after an edit only that dish and those that use it are cooked again.

mod content;
pub mod error;
mod order;
mod prices;
mod variants;

mod house;

pub use error::HouseError;
pub use house::{Cooked, House};
