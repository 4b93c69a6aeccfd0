//! How long the larder takes; the bounds hold for an optimised build.

use std::hint::black_box;
use std::time::Instant;

use potwright_larder::{Hints, Larder, Tables};

/// Room for builds without optimisation and for busy machines.
const SLACK: u128 = if cfg!(debug_assertions) { 20 } else { 2 };

#[test]
fn the_built_in_tables_are_read_within_ten_milliseconds() {
    let times = (0..5).map(|_| {
        let start = Instant::now();
        black_box(Larder::from_tables(&Tables::BUILT_IN).expect("the built-in tables are sound"));
        start.elapsed().as_micros()
    });
    let best = times.min().unwrap_or(u128::MAX);
    println!("built-in larder: {best} µs at best of five");
    assert!(best <= 10_000 * SLACK, "{best} µs");
}

#[test]
fn a_name_is_found_within_twenty_microseconds() {
    let larder = Larder::built_in();
    let names = [
        "red onions",
        "boneless skinless chicken thighs",
        "tinned tomatoes",
        "undyed smoked haddock fillet",
        "low-salt stock",
        "carots",
    ];
    black_box(larder.find("warm", &Hints::default()));
    let rounds = 50u128;
    let start = Instant::now();
    for _ in 0..rounds {
        for name in names {
            black_box(larder.find(black_box(name), &Hints::default()));
        }
    }
    let each = start.elapsed().as_nanos() / (rounds * names.len() as u128);
    println!("one name: {each} ns");
    assert!(each <= 20_000 * SLACK, "{each} ns");
}
