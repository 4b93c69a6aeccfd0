//! Lines of a folder of pages read by hand: POTWRIGHT_CORPUS names it (`texts/ID.txt`, `readings/ID.json`).

#![expect(clippy::unwrap_used, reason = "a test stops where it cannot go on")]

use std::path::{Path, PathBuf};

use potwright_manuscript::{read, reading};
use serde_json::Value;

/// The least share of lines whose amount, unit and foods are read as by hand.
const LEAST: f64 = 0.95;

fn plain(name: &str) -> String {
    let outside: String = name
        .split('(')
        .next()
        .unwrap_or("")
        .split(',')
        .next()
        .unwrap_or("")
        .to_lowercase();
    outside.replace('-', " ").trim().trim_end_matches('s').to_owned()
}

fn items(names: &Value) -> Vec<String> {
    let mut all: Vec<String> = names
        .as_array()
        .into_iter()
        .flatten()
        .filter_map(Value::as_str)
        .map(plain)
        .collect();
    all.sort();
    all
}

fn amount(value: &Value) -> Option<(i64, i64)> {
    let thousandths = |key: &str| {
        value
            .get(key)
            .and_then(Value::as_f64)
            .map(|n| (n * 1000.0).round() as i64)
    };
    thousandths("min").zip(thousandths("max"))
}

/// Whether one of the readings that are equally right is met.
fn meets<T: PartialEq>(truth: &Value, field: &str, read: &Value, of: impl Fn(&Value) -> T) -> bool {
    let also = truth.get(format!("{field}_also")).and_then(Value::as_array);
    let null = Value::Null;
    let first = truth.get(field).unwrap_or(&null);
    let found = of(read.get(field).unwrap_or(&null));
    std::iter::once(first)
        .chain(also.into_iter().flatten())
        .any(|value| of(value) == found)
}

fn same(truth: &Value, read: &Value) -> bool {
    let unit = |value: &Value| value.as_str().map(str::to_owned);
    meets(truth, "amount", read, amount) && meets(truth, "unit", read, unit) && meets(truth, "items", read, items)
}

/// The length of the longest common run of lines in order.
fn in_order(truth: &[&Value], read: &[&Value]) -> usize {
    let mut best = vec![vec![0; read.len() + 1]; truth.len() + 1];
    for i in (0..truth.len()).rev() {
        for j in (0..read.len()).rev() {
            let skipped = best[i + 1][j].max(best[i][j + 1]);
            best[i][j] = if same(truth[i], read[j]) {
                skipped.max(best[i + 1][j + 1] + 1)
            } else {
                skipped
            };
        }
    }
    best[0][0]
}

fn pages(folder: &Path) -> Vec<PathBuf> {
    let mut found: Vec<PathBuf> = std::fs::read_dir(folder.join("texts"))
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    found.sort();
    found
}

#[test]
fn lines_are_read_as_by_hand() {
    let Some(folder) = std::env::var_os("POTWRIGHT_CORPUS").map(PathBuf::from) else {
        println!("not run: POTWRIGHT_CORPUS names no folder of pages");
        return;
    };
    let (mut hits, mut lines) = (0, 0);
    for path in pages(&folder) {
        let id = path.file_stem().unwrap().to_str().unwrap().to_owned();
        let text = std::fs::read_to_string(&path).unwrap();
        let truth: Value =
            serde_json::from_str(&std::fs::read_to_string(folder.join(format!("readings/{id}.json"))).unwrap())
                .unwrap();
        let found = reading(&read(&text), &text, &id);
        let counted = |value: &Value| !value["items"].as_array().is_none_or(Vec::is_empty);
        let of = |value: &'static str| move |page: &Value| page[value].as_array().cloned().unwrap_or_default();
        let (truth, found) = (of("ingredients")(&truth), of("ingredients")(&found));
        let truth: Vec<&Value> = truth.iter().filter(|v| counted(v) && v["counts"] != "either").collect();
        let found: Vec<&Value> = found.iter().filter(|v| counted(v)).collect();
        let met = in_order(&truth, &found);
        println!("{id}: {met} of {} lines, {} read", truth.len(), found.len());
        hits += 2 * met;
        lines += truth.len() + found.len();
    }
    let share = f64::from(u32::try_from(hits).unwrap()) / f64::from(u32::try_from(lines).unwrap());
    assert!(share >= LEAST, "only {share:.3} of the lines");
}
