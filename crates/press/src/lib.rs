//! What goes to print: a page model, and its forms.
//!
//! [`dossier::page`] turns a reckoned dish into a [`Page`]; [`text::render`] sets a page in plain text at any width,
//! with or without colour. [`margin::render`] shows queries at their words. Nothing is computed here.

pub mod digest;
pub mod dossier;
pub mod food;
pub mod margin;
pub mod menu;
pub mod page;
pub mod text;
mod variations;
mod words;

pub use page::{Align, Column, Page, Part};
pub use text::Style;
