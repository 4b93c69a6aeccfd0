//! Fuzz target of the reader `settings`; see `readers.rs`.
#![no_main]

#[path = "../readers.rs"]
mod readers;

libfuzzer_sys::fuzz_target!(|bytes: &[u8]| readers::run("settings", bytes));
