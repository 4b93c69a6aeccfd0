//! Rows of published and computed reference tables, each with its source, held against this crate's relations.

mod conduction;
mod properties;
mod softening;
