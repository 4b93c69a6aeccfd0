//! Sentences and pages of `unseen/`, read by hand before the grammar met them, against the program's reading.
//!
//! Pairs of operations stand in page order and have the same verb, an accepted one, or one of the same small group. The
//! credit of a pair is the mean of its verb, the agreement of its foods (F1) and, where a time is said, its minutes; the
//! score is twice the credit of all pairs by the number of operations on both sides.

#![expect(clippy::unwrap_used, reason = "a test stops where it cannot go on")]

use std::collections::BTreeMap;
use std::path::{Path, PathBuf};

use potwright_manuscript::{read, reading};
use serde_json::Value;

/// The least scores: a little under what is reached, so that a word less falls through.
const SENTENCES: (f64, f64) = (0.945, 0.98);
const PAGES: (f64, f64) = (0.92, 0.95);

/// Verbs that differ by word more than by work.
const GROUPS: &[&str] = &[
    "wash pick_over",
    "cut grind",
    "drain strain sift",
    "rub_through_sieve puree",
    "mix stir whisk beat",
    "knead shape",
    "add pour dilute season baste",
    "melt render",
    "heat reheat scald",
    "sweat saute fry brown",
    "boil parboil",
    "simmer poach braise",
    "bake roast",
    "broil toast",
    "remove discard",
    "cool chill",
    "garnish spread",
];

/// Words of state, which count neither for nor against a name.
const STATE: &str =
    "fresh dried dry raw ground stale whole unsalted salted lean fine coarse granulated pure extra virgin";

#[derive(Debug, Default)]
struct Tally {
    truth: usize,
    read: usize,
    credit: f64,
    minutes_truth: usize,
    minutes_read: usize,
    minutes_right: usize,
    /// What is read otherwise than by hand.
    misses: Vec<String>,
}

impl Tally {
    fn scores(&self) -> (f64, f64) {
        let rate = |hits: f64, all: usize| 2.0 * hits / f64::from(u32::try_from(all).unwrap());
        let right = f64::from(u32::try_from(self.minutes_right).unwrap());
        (
            rate(self.credit, self.truth + self.read),
            rate(right, self.minutes_truth + self.minutes_read),
        )
    }
}

fn folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("tests/unseen")
}

fn json(path: &Path) -> Value {
    serde_json::from_str(&std::fs::read_to_string(path).unwrap()).unwrap()
}

fn list<'v>(value: &'v Value, field: &str) -> &'v [Value] {
    value[field].as_array().map_or(&[], Vec::as_slice)
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

/// The name of a food without state, number and what stands in brackets or behind a comma.
fn key(name: &str) -> String {
    let lower = name.trim().to_lowercase();
    if lower.starts_with('<') {
        return lower;
    }
    let plain = lower.split(['(', ',']).next().unwrap_or("").replace('-', " ");
    if plain.trim().ends_with("water") {
        return "water".to_owned();
    }
    let words: Vec<&str> = plain.split_whitespace().collect();
    let kept: Vec<&str> = words
        .iter()
        .copied()
        .filter(|word| !STATE.split(' ').any(|s| s == *word))
        .collect();
    let kept = if kept.is_empty() { words } else { kept };
    let Some((last, before)) = kept.split_last() else {
        return String::new();
    };
    let mut all: Vec<String> = before.iter().map(|word| (*word).to_owned()).collect();
    all.push(singular(last));
    all.join(" ")
}

/// What the names of one text stand for: names accepted for an item, and what components are made of.
struct Known<'t> {
    aliases: BTreeMap<String, String>,
    components: &'t Value,
}

impl<'t> Known<'t> {
    fn of(ingredients: &[Value], components: &'t Value) -> Known<'t> {
        let names = |value: &Value| -> Vec<String> {
            value
                .as_array()
                .into_iter()
                .flatten()
                .filter_map(Value::as_str)
                .map(key)
                .collect()
        };
        let taken: Vec<String> = ingredients.iter().flat_map(|line| names(&line["items"])).collect();
        let mut aliases = BTreeMap::new();
        for line in ingredients {
            let items = names(&line["items"]);
            for also in list(line, "items_also")
                .iter()
                .map(names)
                .filter(|also| also.len() == items.len())
            {
                let other = also
                    .into_iter()
                    .zip(items.clone())
                    .filter(|(name, _)| !taken.contains(name));
                aliases.extend(other);
            }
        }
        Known { aliases, components }
    }

    fn food(&self, name: &Value) -> String {
        let key = key(name.as_str().unwrap_or(""));
        self.aliases.get(&key).cloned().unwrap_or(key)
    }

    fn agreement(&self, truth: &[Value], found: &[Value]) -> f64 {
        let mut open: Vec<String> = found.iter().map(|name| self.food(name)).collect();
        let mut hits = 0_usize;
        for name in truth.iter().map(|name| self.food(name)) {
            let of = list(&self.components[name.as_str()], "of");
            let made_of = match of {
                [one] if name.starts_with('<') => Some(self.food(one)),
                _ => None,
            };
            let hit = open
                .iter()
                .position(|other| *other == name || Some(other) == made_of.as_ref());
            if let Some(at) = hit {
                open.remove(at);
                hits += 1;
            }
        }
        let all = truth.len() + found.len();
        if all == 0 {
            return 1.0;
        }
        2.0 * f64::from(u32::try_from(hits).unwrap()) / f64::from(u32::try_from(all).unwrap())
    }

    fn credit(&self, truth: &Value, found: &Value) -> f64 {
        if !same_verb(truth, found) {
            return 0.0;
        }
        let also = list(truth, "foods_also").iter().filter_map(Value::as_array);
        let accepted = truth["foods"].as_array().into_iter().chain(also);
        let foods = accepted
            .map(|foods| self.agreement(foods, list(found, "foods")))
            .fold(0.0, f64::max);
        if truth["minutes"].is_null() && found["minutes"].is_null() {
            return (1.0 + foods) / 2.0;
        }
        (1.0 + foods + if same_minutes(truth, found) { 1.0 } else { 0.0 }) / 3.0
    }
}

fn same_verb(truth: &Value, found: &Value) -> bool {
    let (wanted, got) = (
        truth["verb"].as_str().unwrap_or(""),
        found["verb"].as_str().unwrap_or(""),
    );
    let grouped = GROUPS.iter().any(|group| {
        let holds = |verb: &str| group.split(' ').any(|word| word == verb);
        holds(wanted) && holds(got)
    });
    wanted == got || grouped || list(truth, "also").iter().any(|verb| verb == got)
}

fn same_minutes(truth: &Value, found: &Value) -> bool {
    let range = |value: &Value| {
        let part = |at: usize| value.get(at).and_then(Value::as_f64);
        part(0).zip(part(1))
    };
    let got = range(&found["minutes"]);
    std::iter::once(&truth["minutes"])
        .chain(list(truth, "minutes_also"))
        .any(|wanted| match (range(wanted), got) {
            (None, None) => true,
            (Some(wanted), Some(got)) => (wanted.0 - got.0).abs() < 0.01 && (wanted.1 - got.1).abs() < 0.01,
            _ => false,
        })
}

/// The pairs in order with the greatest credit.
fn pairs(truth: &[Value], found: &[Value], credit: impl Fn(&Value, &Value) -> f64) -> Vec<(usize, usize, f64)> {
    let mut best = vec![vec![0.0_f64; found.len() + 1]; truth.len() + 1];
    for i in (0..truth.len()).rev() {
        for j in (0..found.len()).rev() {
            let paired = best[i + 1][j + 1] + credit(&truth[i], &found[j]);
            best[i][j] = best[i + 1][j].max(best[i][j + 1]).max(paired);
        }
    }
    let (mut i, mut j, mut all) = (0, 0, Vec::new());
    while i < truth.len() && j < found.len() {
        let own = credit(&truth[i], &found[j]);
        if own > 0.0 && (best[i][j] - best[i + 1][j + 1] - own).abs() < 1e-12 {
            all.push((i, j, own));
            (i, j) = (i + 1, j + 1);
        } else if (best[i][j] - best[i + 1][j]).abs() < 1e-12 {
            i += 1;
        } else {
            j += 1;
        }
    }
    all
}

fn judge(tally: &mut Tally, id: &str, truth: &[Value], found: &[Value], known: &Known) {
    let optional = |at: usize| truth[at]["optional"] == true;
    let all = pairs(truth, found, |one, other| known.credit(one, other));
    let free: Vec<usize> = all.iter().filter(|(i, ..)| optional(*i)).map(|(_, j, _)| *j).collect();
    let timed = |value: &Value| !value["minutes"].is_null();
    tally.truth += (0..truth.len()).filter(|at| !optional(*at)).count();
    tally.read += found.len() - free.len();
    tally.minutes_truth += (0..truth.len())
        .filter(|at| !optional(*at) && timed(&truth[*at]))
        .count();
    tally.minutes_read += (0..found.len())
        .filter(|at| !free.contains(at) && timed(&found[*at]))
        .count();
    for (i, j, own) in all.into_iter().filter(|(i, ..)| !optional(*i)) {
        tally.credit += own;
        let right = (timed(&truth[i]) || timed(&found[j])) && same_minutes(&truth[i], &found[j]);
        tally.minutes_right += usize::from(right);
        if own < 0.99 {
            let (text, verb, foods) = (&truth[i]["text"], &found[j]["verb"], &found[j]["foods"]);
            tally.misses.push(format!("{id}: {text}: {verb} {foods}"));
        }
    }
}

fn operations(text: &str, id: &str) -> Vec<Value> {
    list(&reading(&read(text), text, id)["method"], "operations").to_vec()
}

/// A sentence under its list, as it would stand on a page.
fn page(sentence: &Value) -> String {
    let lines: Vec<&str> = list(sentence, "list").iter().filter_map(Value::as_str).collect();
    let text = sentence["text"].as_str().unwrap_or("");
    format!(
        "Supper\n\nServes 4\n\nIngredients\n{}\n\nMethod\n{text}\n",
        lines.join("\n")
    )
}

#[track_caller]
fn at_least((score, minutes): (f64, f64), least: (f64, f64)) {
    assert!(score >= least.0, "operations {score:.3}, at least {}", least.0);
    assert!(minutes >= least.1, "minutes {minutes:.3}, at least {}", least.1);
}

#[test]
fn sentences_are_read_as_by_hand() {
    let sentences = json(&folder().join("sentences.json"));
    let mut tally = Tally::default();
    for sentence in sentences.as_array().unwrap() {
        let truth = list(sentence, "operations");
        let id = sentence["id"].as_str().unwrap();
        if !truth.is_empty() {
            let known = Known::of(&[], &sentence["components"]);
            judge(&mut tally, id, truth, &operations(&page(sentence), id), &known);
        }
    }
    println!("{}\n{:?}", tally.misses.join("\n"), tally.scores());
    at_least(tally.scores(), SENTENCES);
}

#[test]
fn talk_gives_no_order() {
    let sentences = json(&folder().join("sentences.json"));
    let talk = sentences
        .as_array()
        .unwrap()
        .iter()
        .filter(|one| list(one, "operations").is_empty());
    let mut seen = 0;
    for sentence in talk {
        seen += 1;
        assert!(operations(&page(sentence), "talk").is_empty(), "{}", sentence["text"]);
    }
    assert!(seen >= 2, "the sentences of talk are gone");
}

#[test]
fn orders_of_whole_pages_are_read_as_by_hand() {
    let mut paths: Vec<PathBuf> = std::fs::read_dir(folder().join("readings"))
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    paths.sort();
    let mut tally = Tally::default();
    for path in paths {
        let truth = json(&path);
        let id = path.file_stem().unwrap().to_str().unwrap();
        let text = std::fs::read_to_string(folder().join(format!("pages/{id}.txt"))).unwrap();
        let method = &truth["method"];
        let known = Known::of(list(&truth, "ingredients"), &method["components"]);
        judge(
            &mut tally,
            id,
            list(method, "operations"),
            &operations(&text, id),
            &known,
        );
    }
    println!("{}\n{:?}", tally.misses.join("\n"), tally.scores());
    at_least(tally.scores(), PAGES);
}
