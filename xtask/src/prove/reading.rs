//! How fast pages are read: many dishes, long pages, and whether a page ten times as long takes ten times as long.

use std::fs;
use std::hint::black_box;
use std::path::Path;
use std::time::{Duration, Instant};

use anyhow::{Context, Result, bail};

use super::figures::{Table, meant};

/// Dishes that are read.
const DISHES: usize = 10_000;

/// Seconds they may take.
const MOST: u64 = 20;

/// A page of ten megabytes may take so many times as long as one of a megabyte: ten, and a fifth for the machine.
const TEN_TIMES: f64 = 12.0;

/// The rows of the table.
pub(super) fn table(root: &Path) -> Result<Table> {
    let mut table = Table::new("Reading", &["what", "time", "meant to be"]);
    table.rows.push(dishes(root)?);
    table.rows.push(lines());
    for (name, row) in [
        ("a list", "2 leeks, finely sliced\n"),
        (
            "prose",
            "Melt the butter, add the leeks and simmer for twenty minutes until soft. ",
        ),
    ] {
        table.rows.push(long(name, row));
    }
    Ok(table)
}

fn took(text: &str) -> Duration {
    let begun = Instant::now();
    black_box(potwright_manuscript::read(black_box(text)));
    begun.elapsed()
}

fn dishes(root: &Path) -> Result<Vec<String>> {
    let mut pages = Vec::new();
    for entry in fs::read_dir(root.join("demo/lock-house/dishes"))? {
        pages.push(fs::read_to_string(entry?.path()).context("a dish of the demo is not read")?);
    }
    if pages.is_empty() {
        bail!("the demo has no dishes");
    }
    let time: Duration = pages.iter().cycle().take(DISHES).map(|page| took(page)).sum();
    Ok(vec![
        format!("{DISHES} dishes of the demo"),
        format!("{:.1} s", time.as_secs_f64()),
        meant(&format!("≤ {MOST} s"), time <= Duration::from_secs(MOST)),
    ])
}

/// A page of two hundred lines: half of them list, half method; the median of a hundred.
fn lines() -> Vec<String> {
    let page = format!(
        "Pot\n\n{}\n{}",
        "2 leeks, finely sliced\n".repeat(99),
        "Simmer for 20 minutes until the leeks are soft.\n".repeat(98)
    );
    let mut times: Vec<Duration> = (0..100).map(|_| took(&page)).collect();
    times.sort();
    let median = times[times.len() / 2];
    vec![
        "a page of 200 lines".into(),
        format!("{:.2} ms", median.as_secs_f64() * 1e3),
        meant("≤ 1 ms", median <= Duration::from_millis(1)),
    ]
}

fn long(name: &str, row: &str) -> Vec<String> {
    let page = |bytes: usize| format!("Pot\n\n{}", row.repeat(bytes / row.len()));
    let (one, ten) = (took(&page(1_000_000)), took(&page(10_000_000)));
    let ratio = ten.as_secs_f64() / one.as_secs_f64().max(1e-9);
    vec![
        format!("{name} of 1 MB, of 10 MB"),
        format!("{:.2} s, {:.2} s: × {ratio:.1}", one.as_secs_f64(), ten.as_secs_f64()),
        meant(&format!("× ≤ {TEN_TIMES}"), ratio <= TEN_TIMES),
    ]
}
