//! Typed pages to [`Recipe`], and back.
//!
//! The writer's own typed page is the format: there is no markup. [`read`] cannot fail: what was not understood
//! stays as text with its place and is listed in [`Recipe::unsure`]. Reading is lossless: [`Recipe::blocks`] cover
//! the file end to end, and every amount, name, verb, time and cue keeps its byte span.
//!
//! The crate knows words, not foods: it says 'this line asks for two of something called *red onions*'; what a red
//! onion is, the larder knows.

pub mod ingredient;
pub mod operation;
pub mod recipe;
pub mod span;
pub mod verb;

pub use ingredient::{Alternative, Ingredient, Item, Quantity, Size};
pub use operation::{Cover, FoodRef, Form, HeatWord, Minutes, Operation, Repeat, Share, Target, VesselRef};
pub use recipe::{
    Block, BlockKind, Change, DeclaredTime, DeskNote, Layout, Recipe, Section, Step, Unsure, Variation, YieldLine,
};
pub use span::{Span, Words};
pub use verb::Verb;
