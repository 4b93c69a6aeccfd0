//! The crate from outside: published factors, gas marks and rounding rules, and what must hold for any input.

#![allow(clippy::unwrap_used, reason = "a test fails by panicking")]

mod heat;
mod numbers;
mod rounding;
mod units;
