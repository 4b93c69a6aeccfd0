//! Fuzz target of the reader `data`; see `readers.rs`.
#![no_main]

#[path = "../readers.rs"]
mod readers;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| readers::run("data", bytes));
