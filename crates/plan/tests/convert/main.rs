//! The plain factor method on whole pages.

#![allow(clippy::print_stdout, reason = "a test says when its data is not there")]

mod pages;
mod properties;
mod warnings;

use potwright_larder::Larder;
use potwright_measure::{Exact, Measures};
use potwright_plan::{BatchSize, Converted, MeasuresWanted, Request, convert};

/// A page re-set.
fn reset(text: &str, size: BatchSize, measures: MeasuresWanted, home: Measures) -> Converted {
    let recipe = potwright_manuscript::read(text);
    let request = Request {
        size,
        measures,
        home,
        ..Request::default()
    };
    convert(&recipe, text, &request, Larder::built_in())
}

fn for_servings(people: i64) -> BatchSize {
    BatchSize::ForServings(Exact::whole(people))
}

fn times(factor: &str) -> BatchSize {
    BatchSize::Times(factor.parse().expect("a number"))
}

/// The dishes of the demo book.
fn demo_dishes() -> Vec<(String, String)> {
    folder(&std::path::Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo/lock-house/dishes"))
}

/// The texts of the folder named by the environment variable `POTWRIGHT_CORPUS`; none, and said so, without it.
fn corpus() -> Vec<(String, String)> {
    let Some(place) = std::env::var_os("POTWRIGHT_CORPUS") else {
        println!("POTWRIGHT_CORPUS is not set: only the demo dishes are looked at");
        return Vec::new();
    };
    folder(&std::path::Path::new(&place).join("texts"))
}

fn folder(place: &std::path::Path) -> Vec<(String, String)> {
    let entries = std::fs::read_dir(place).unwrap_or_else(|error| panic!("{}: {error}", place.display()));
    let mut pages: Vec<(String, String)> = entries
        .filter_map(|entry| {
            let path = entry.ok()?.path();
            let text = std::fs::read_to_string(&path).ok()?;
            Some((path.file_name()?.to_string_lossy().into_owned(), text))
        })
        .collect();
    pages.sort();
    assert!(!pages.is_empty(), "{}: no pages", place.display());
    pages
}
