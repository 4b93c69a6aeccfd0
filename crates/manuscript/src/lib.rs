//! Typed pages to [`Recipe`], and back.
//!
//! The writer's own typed page is the format: there is no markup. [`read`] cannot fail: what was not understood
//! stays as text with its place and is listed in [`Recipe::unsure`]. Reading is lossless: [`Recipe::blocks`] cover
//! the file end to end, and every amount, name, verb, time and cue keeps its byte span.
//!
//! The crate knows words, not foods: it says 'this line asks for two of something called *red onions*'; what a red
//! onion is, the larder knows.

mod explained;
pub mod files;
pub mod ingredient;
mod lexicon;
mod likened;
mod line;
mod method;
mod notes;
mod number;
pub mod operation;
mod page;
pub mod reading;
pub mod recipe;
mod sentence;
pub mod span;
mod speech;
pub mod structured;
mod token;
pub mod verb;
pub mod write;

pub use explained::{Explained, Taken, explained};
pub use ingredient::{Alternative, Ingredient, Item, Open, Quantity, Size};
pub use operation::{Cover, FoodRef, Form, HeatWord, Minutes, Operation, Repeat, Share, Target, VesselRef};
pub use recipe::{
    Block, BlockKind, Change, DeclaredTime, DeskNote, Layout, Recipe, Section, Step, Unsure, Variation, YieldLine,
};
pub use span::{Span, Words};
pub use verb::Verb;

pub use notes::{Draft, DraftLine, DraftTime, Notes, SetAside, draft};
pub use reading::reading;

/// Reads a typed page.
///
/// It cannot fail: what was not understood stays in the blocks as text and is listed in [`Recipe::unsure`].
///
/// ```
/// let recipe = potwright_manuscript::read("Leek Soup\n\n2 leeks\n30 g butter\n\nMelt the butter, add the leeks.\n");
/// assert_eq!(recipe.ingredients[0].items[0].name, "leeks");
/// assert_eq!(recipe.steps.len(), 1);
/// ```
#[must_use]
pub fn read(text: &str) -> Recipe {
    let mut recipe = page::lay(text);
    method::read(text, &mut recipe);
    recipe
}
