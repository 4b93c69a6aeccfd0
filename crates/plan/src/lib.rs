//! A dish planned for another table.
//!
//! | | what goes in | what comes out |
//! | --- | --- | --- |
//! | [`convert()`] | a typed page, a size, the measures wanted | the page re-set by the trade's plain factor method, and what that method does not solve |
//! | [`quantity_kitchen`] | a card's amount and a factor | the amount as quantity kitchens write it, step by step |
//! | [`trade`] | a factor | what spice traders say of herbs and red pepper |
//!
//! The plain factor method multiplies and rounds; it computes no evaporation, no pot and no time, and says so on every
//! page it makes.

pub mod convert;
pub mod quantity_kitchen;
mod rules;
mod splice;
pub mod trade;

pub use convert::{BatchSize, Change, Converted, MeasuresWanted, Request, Subject, Warning, WarningKind, convert};
