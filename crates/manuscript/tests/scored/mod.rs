//! How a reading of ingredient lines is held against one made by hand.
//!
//! Lines are paired in page order. A pair is exact when amount, unit and foods agree with a reading that counts as right;
//! missing and invented lines cost both. Words of state, hyphens, case and plural do not count in a name.

use std::collections::BTreeSet;

use serde_json::Value;

const STATE: &str =
    "fresh dried dry raw ground stale whole unsalted salted lean fine coarse granulated pure extra virgin";

/// How many lines there are, were read, and were read right.
#[derive(Default)]
pub struct Score {
    pub truth: usize,
    read: usize,
    exact: usize,
    with_preparation: usize,
    /// What is read otherwise, for people.
    pub missed: Vec<String>,
}

impl Score {
    /// Twice the right ones over all there are and all that were read: without and with the preparation.
    pub fn shares(&self) -> (f64, f64) {
        let share = |right: usize| (2 * right) as f64 / (self.truth + self.read) as f64;
        (share(self.exact), share(self.with_preparation))
    }
}

fn singular(word: &str) -> String {
    for (end, put) in [("leaves", "leaf"), ("oes", "o"), ("ies", "y")] {
        if let Some(stem) = word.strip_suffix(end) {
            return format!("{stem}{put}");
        }
    }
    match word.strip_suffix('s') {
        Some(stem) if !word.ends_with("ss") => stem.to_owned(),
        _ => word.to_owned(),
    }
}

fn is_state(word: &str) -> bool {
    STATE.split(' ').any(|state| state == word)
}

/// A name by its words: what stands in brackets or after a comma says no more of which food it is.
fn key(name: &str) -> String {
    let outside = name
        .split(['(', ','])
        .next()
        .unwrap_or("")
        .to_lowercase()
        .replace('-', " ");
    let all: Vec<&str> = outside.split_whitespace().collect();
    if all.last() == Some(&"water") {
        return "water".to_owned();
    }
    let kept: Vec<&str> = all.iter().copied().filter(|word| !is_state(word)).collect();
    let words = if kept.is_empty() { all } else { kept };
    let Some((last, front)) = words.split_last() else {
        return String::new();
    };
    let last = singular(last);
    front
        .iter()
        .copied()
        .chain([last.as_str()])
        .collect::<Vec<_>>()
        .join(" ")
}

fn keys(items: &Value) -> BTreeSet<String> {
    let names = items.as_array().into_iter().flatten().filter_map(Value::as_str);
    names.map(key).collect()
}

/// The readings that are right: the first and those that are as good.
fn accepted<'v>(truth: &'v Value, field: &str) -> Vec<&'v Value> {
    let also = truth.get(format!("{field}_also")).and_then(Value::as_array);
    std::iter::once(&truth[field])
        .chain(also.into_iter().flatten())
        .collect()
}

fn amount(value: &Value) -> Option<(f64, f64)> {
    value["min"].as_f64().zip(value["max"].as_f64())
}

fn same_amount(truth: &Value, read: &Value) -> bool {
    let found = amount(&read["amount"]);
    accepted(truth, "amount")
        .into_iter()
        .any(|right| match (amount(right), found) {
            (None, None) => true,
            (Some(a), Some(b)) => {
                let near = |a: f64, b: f64| (a - b).abs() <= 0.005 * a.abs().max(1.0);
                near(a.0, b.0) && near(a.1, b.1)
            }
            _ => false,
        })
}

fn same_unit(truth: &Value, read: &Value) -> bool {
    let unit = |value: &Value| singular(&value.as_str().unwrap_or("").to_lowercase());
    accepted(truth, "unit")
        .into_iter()
        .any(|right| unit(right) == unit(&read["unit"]))
}

fn same_items(truth: &Value, read: &Value) -> bool {
    let found = keys(&read["items"]);
    accepted(truth, "items").into_iter().any(|right| keys(right) == found)
}

fn words(value: &Value) -> BTreeSet<String> {
    let mut text = value.as_str().unwrap_or("").to_lowercase();
    for (sign, plain) in [
        ("½", " 1/2"),
        ("¼", " 1/4"),
        ("¾", " 3/4"),
        ("⅓", " 1/3"),
        ("⅔", " 2/3"),
        ("⅛", " 1/8"),
    ] {
        text = text.replace(sign, plain);
    }
    let small = ["", "and", "the", "a", "of", "in", "into"];
    text.split(|c: char| !c.is_alphanumeric() && c != '/')
        .map(singular)
        .filter(|word| !small.contains(&word.as_str()) && !is_state(word))
        .collect()
}

/// Twice the words they share over the words of both.
fn likeness(a: &BTreeSet<String>, b: &BTreeSet<String>) -> f64 {
    let all = a.len() + b.len();
    if all == 0 {
        return 1.0;
    }
    (2 * a.intersection(b).count()) as f64 / all as f64
}

fn same_preparation(truth: &Value, read: &Value) -> bool {
    let found = words(&read["preparation"]);
    let mut right = accepted(truth, "preparation").into_iter().map(words);
    right.any(|right| likeness(&right, &found) >= 0.8)
}

fn credit(truth: &Value, read: &Value) -> f64 {
    let by_word = |items: &Value| -> BTreeSet<String> {
        let names = keys(items);
        names
            .iter()
            .flat_map(|name| name.split(' '))
            .map(str::to_owned)
            .collect()
    };
    let found = by_word(&read["items"]);
    let names = accepted(truth, "items")
        .into_iter()
        .map(|right| likeness(&by_word(right), &found));
    let amount = if same_amount(truth, read) { 0.3 } else { 0.0 };
    let unit = if same_unit(truth, read) { 0.2 } else { 0.0 };
    0.05 + names.fold(0.0, f64::max) + amount + unit
}

/// Foods of one amount that were read as a line each are read right too.
fn joined(truth: &[Value], read: &[Value]) -> Vec<Value> {
    let mut read = read.to_vec();
    for line in truth {
        let wanted = keys(&line["items"]);
        let fits =
            |one: &Value| keys(&one["items"]).is_subset(&wanted) && same_amount(line, one) && same_unit(line, one);
        for from in (0..read.len()).filter(|_| wanted.len() > 1) {
            let run = read[from..].iter().take_while(|one| fits(one)).count();
            let found: BTreeSet<String> = read[from..from + run]
                .iter()
                .flat_map(|one| keys(&one["items"]))
                .collect();
            if run > 1 && found == wanted {
                let works: BTreeSet<String> = read[from..from + run]
                    .iter()
                    .filter_map(|one| one["preparation"].as_str().map(str::to_owned))
                    .collect();
                let names = found.into_iter().map(Value::from).collect::<Vec<_>>();
                let work = works.into_iter().collect::<Vec<_>>().join("; ");
                let mut one = read[from].clone();
                one["items"] = Value::from(names);
                one["preparation"] = Value::from(work);
                read.splice(from..from + run, [one]);
                break;
            }
        }
    }
    read
}

/// Pairs the lines in order, so that the credit of all pairs is the highest.
fn pairs(truth: &[Value], read: &[Value]) -> Vec<(usize, usize)> {
    let mut best = vec![vec![0.0_f64; read.len() + 1]; truth.len() + 1];
    for i in (0..truth.len()).rev() {
        for j in (0..read.len()).rev() {
            let pair = best[i + 1][j + 1] + credit(&truth[i], &read[j]);
            best[i][j] = pair.max(best[i + 1][j]).max(best[i][j + 1]);
        }
    }
    let (mut i, mut j, mut found) = (0, 0, Vec::new());
    while i < truth.len() && j < read.len() {
        let pair = best[i + 1][j + 1] + credit(&truth[i], &read[j]);
        if (best[i][j] - pair).abs() < 1e-12 {
            found.push((i, j));
            (i, j) = (i + 1, j + 1);
        } else if (best[i][j] - best[i + 1][j]).abs() < 1e-12 {
            i += 1;
        } else {
            j += 1;
        }
    }
    found
}

/// Adds the lines of one page to a score; `name` is for people.
pub fn score(truth: &[Value], read: &[Value], name: &str, total: &mut Score) {
    let named = |lines: &[Value]| -> Vec<Value> {
        let has = |line: &&Value| line["items"].as_array().is_some_and(|items| !items.is_empty());
        lines.iter().filter(has).cloned().collect()
    };
    let truth = named(truth);
    let read = joined(&truth, &named(read));
    let either = |line: &Value| line["counts"] == "either";
    let pairs = pairs(&truth, &read);
    let gone = pairs.iter().filter(|(i, _)| either(&truth[*i])).count();
    let counted = truth.iter().filter(|line| !either(line)).count();
    total.truth += counted;
    total.read += read.len() - gone;
    let mut right = 0;
    for (i, j) in pairs.into_iter().filter(|(i, _)| !either(&truth[*i])) {
        let (line, one) = (&truth[i], &read[j]);
        let exact = same_amount(line, one) && same_unit(line, one) && same_items(line, one);
        let whole = exact && same_preparation(line, one);
        total.exact += usize::from(exact);
        total.with_preparation += usize::from(whole);
        right += usize::from(whole);
        if !whole {
            total.missed.push(format!("{name}: {} read as {one}", line["raw"]));
        }
    }
    if right < counted.max(read.len() - gone) && counted != read.len() - gone {
        total
            .missed
            .push(format!("{name}: {counted} lines, {} read", read.len() - gone));
    }
}
