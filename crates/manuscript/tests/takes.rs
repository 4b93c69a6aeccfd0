//! Stove notes against what a careful listener noted down, and any text at all.
//!
//! The takes and their truth in `tests/takes/` were written by hand before any program had read them; further ones are
//! read from the folder that `POTWRIGHT_TAKES` names.

#![expect(clippy::unwrap_used, reason = "a test stops where it cannot go on")]

use std::fs;
use std::path::{Path, PathBuf};

use potwright_manuscript::{Draft, Ingredient, Notes, Quantity, draft, read};
use potwright_measure::Unit;
use serde_json::Value;

/// Share of the spoken amounts that have to be bound to the right food.
const BOUND: f64 = 0.95;

#[test]
fn takes_are_drafted_as_a_listener_notes_them() {
    let mut folders = vec![PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/takes")];
    match std::env::var_os("POTWRIGHT_TAKES") {
        Some(folder) => folders.push(folder.into()),
        None => println!("POTWRIGHT_TAKES names no folder: only the takes in the repository are read"),
    }
    let mut faults = Vec::new();
    let mut count = 0;
    for folder in folders {
        for (truth, text) in takes(&folder) {
            count += 1;
            judge(&truth, &draft(&text), &mut faults);
        }
    }
    assert!(count >= 4, "the takes of the repository are there");
    assert!(faults.is_empty(), "{}", faults.join("\n"));
}

/// Truth and text of every take of a folder, in the order of their names.
fn takes(folder: &Path) -> Vec<(Value, String)> {
    let mut files: Vec<PathBuf> = fs::read_dir(folder)
        .unwrap()
        .map(|entry| entry.unwrap().path())
        .collect();
    files.sort();
    let truths = files
        .iter()
        .filter(|path| path.extension().is_some_and(|end| end == "json"));
    truths
        .map(|path| {
            let truth: Value = serde_json::from_str(&fs::read_to_string(path).unwrap()).unwrap();
            let text = fs::read_to_string(folder.join(truth["text"].as_str().unwrap())).unwrap();
            (truth, text)
        })
        .collect()
}

fn judge(truth: &Value, notes: &Notes, faults: &mut Vec<String>) {
    let take = truth["take"].as_str().unwrap();
    let dishes = truth["dishes"].as_array().unwrap();
    if notes.drafts.len() != dishes.len() {
        faults.push(format!(
            "{take}: {} drafts for {} dishes",
            notes.drafts.len(),
            dishes.len()
        ));
    }
    let (mut said, mut missed) = (0, Vec::new());
    for dish in dishes {
        let Some(found) = the_draft(dish, notes) else {
            faults.push(format!("{take}: no draft for {}", dish["title_words"]));
            continue;
        };
        let recipe = read(&found.page);
        let measured = |item: &&Value| !item["amount"].is_null() && item["optional"] != true;
        for item in dish["ingredients"].as_array().unwrap().iter().filter(measured) {
            said += 1;
            if !recipe.ingredients.iter().any(|line| binds(line, &found.page, item)) {
                missed.push(format!("{take}: not bound: {} ({})", item["said"], found.title));
            }
        }
        for gap in dish["gaps"].as_array().unwrap() {
            if !asked(gap.as_str().unwrap(), found) {
                faults.push(format!("{take}: not asked: {gap} ({})", found.title));
            }
        }
        invented(take, truth, dish, found, faults);
    }
    if ((said - missed.len()) as f64) < BOUND * said as f64 {
        faults.extend(missed);
    }
    for word in truth["misheard"].as_array().unwrap() {
        let heard = word["heard"].as_str().unwrap();
        let queried = notes
            .drafts
            .iter()
            .flat_map(|draft| &draft.queries)
            .any(|query| query.what.contains(heard));
        if !queried {
            faults.push(format!("{take}: believed: {heard}"));
        }
    }
}

/// The draft whose title shares the most words with the dish's.
fn the_draft<'n>(dish: &Value, notes: &'n Notes) -> Option<&'n Draft> {
    let titled = dish["title_words"].as_array()?.iter().filter_map(Value::as_str);
    let words: Vec<String> = titled.map(singular).collect();
    let joined = words.concat();
    let shared = |draft: &Draft| {
        let own = words_of(&draft.title);
        // 'corn bread' is cornbread.
        own.iter().filter(|word| words.contains(word)).count() + usize::from(own.contains(&joined))
    };
    let found = notes.drafts.iter().filter(|draft| shared(draft) > 0);
    found.max_by_key(|draft| shared(draft))
}

/// Whether a line names the food and gives the amount that was said, or one that is equally right.
fn binds(line: &Ingredient, page: &str, item: &Value) -> bool {
    let last = item["item"].as_str().unwrap().split(' ').next_back().unwrap();
    let heads: Vec<String> = match item["heads"].as_array() {
        Some(heads) => heads.iter().map(|head| singular(head.as_str().unwrap())).collect(),
        None => vec![singular(last)],
    };
    let words = words_of(line.span.of(page));
    let heard = words_of(item["heard"].as_str().unwrap_or(""));
    let named = heads.iter().any(|head| words.contains(head))
        || !heard.is_empty() && heard.iter().all(|word| words.contains(word));
    let quantities: Vec<&Quantity> = line.quantity.iter().chain(&line.also).collect();
    let fits = |amount: &Value, unit: &Value| {
        let wanted = unit.as_str();
        quantities.iter().any(|quantity| {
            let low = quantity.amount.low.to_f64();
            let celery = ["stick", "stalk", "rib"];
            let unit = match (wanted, quantity.unit) {
                (None, unit) => unit.is_none_or(|unit| matches!(unit, Unit::Clove | Unit::Leaf | Unit::Cube)),
                (Some(wanted), Some(unit)) => {
                    Unit::from_spelling(wanted) == Some(unit)
                        || celery.contains(&wanted) && celery.contains(&unit.written(quantity.amount.low))
                }
                (Some(wanted), None) => words.contains(&singular(wanted)),
            };
            (low - amount["min"].as_f64().unwrap()).abs() < 0.011 && unit
        })
    };
    let also = item["also_ok"].as_array().into_iter().flatten();
    named && (fits(&item["amount"], &item["unit"]) || also.into_iter().any(|other| fits(other, &other["unit"])))
}

/// Whether a query names what a gap is about.
fn asked(gap: &str, draft: &Draft) -> bool {
    let about = gap.split(':').next().unwrap_or("");
    let words = words_of(about);
    let part = |query: &str| words_of(query).iter().any(|word| words.contains(word));
    draft.queries.iter().any(|query| part(&query.what))
}

/// Lines of foods that were only talked about.
fn invented(take: &str, truth: &Value, dish: &Value, draft: &Draft, faults: &mut Vec<String>) {
    let own: Vec<String> = dish["ingredients"]
        .as_array()
        .unwrap()
        .iter()
        .flat_map(|item| words_of(item["item"].as_str().unwrap()))
        .collect();
    let talk = truth["not_ingredients"]
        .as_array()
        .into_iter()
        .chain(dish["not_here"].as_array())
        .flatten();
    for word in talk.filter_map(Value::as_str) {
        let words = words_of(word);
        if words.iter().all(|word| own.contains(word)) {
            continue;
        }
        for line in &draft.lines {
            let has = words_of(&line.line);
            if words.iter().all(|word| has.contains(word)) {
                faults.push(format!("{take}: invented: {} ({})", line.line, draft.title));
            }
        }
    }
}

fn words_of(text: &str) -> Vec<String> {
    let words = text.split(|c: char| !c.is_alphabetic()).filter(|word| !word.is_empty());
    words.map(|word| singular(&word.to_lowercase())).collect()
}

fn singular(word: &str) -> String {
    let word = word
        .strip_suffix("leaves")
        .map_or_else(|| word.to_owned(), |stem| format!("{stem}leaf"));
    for (end, put) in [("ies", "y"), ("oes", "o"), ("ches", "ch"), ("shes", "sh")] {
        if let Some(stem) = word.strip_suffix(end) {
            return format!("{stem}{put}");
        }
    }
    match word.strip_suffix('s') {
        Some(stem) if word.len() > 3 && !stem.ends_with('s') => stem.to_owned(),
        _ => word,
    }
}

#[test]
fn every_place_fits_the_notes() {
    for (_, text) in takes(&PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/takes")) {
        sound(&text, &draft(&text));
    }
}

/// Every place lies in the text on character boundaries.
fn sound(text: &str, notes: &Notes) {
    let aside = notes.set_aside.iter().map(|aside| aside.words.span);
    let lines = notes
        .drafts
        .iter()
        .flat_map(|draft| &draft.lines)
        .map(|line| line.said.span);
    let queries = notes
        .drafts
        .iter()
        .flat_map(|draft| &draft.queries)
        .map(|query| query.span);
    for span in aside.chain(lines).chain(queries) {
        assert!(
            span.start <= span.end && text.get(span.start..span.end).is_some(),
            "{span:?}"
        );
    }
}

#[test]
fn no_text_makes_it_stumble() {
    // 100,000 takes made from the words of real ones by a fixed row of numbers (xorshift, Marsaglia 2003).
    let bits: Vec<String> = takes(&PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("tests/takes"))
        .iter()
        .flat_map(|(_, text)| text.split_inclusive([' ', '\n']).map(str::to_owned).collect::<Vec<_>>())
        .chain(
            [
                "[",
                "]",
                "(",
                "12:05",
                "-->",
                "00:00:01,000 --> 00:00:02,000\n",
                "\u{301}",
                "\0",
                "🥕",
                "½",
                "WEBVTT\n",
                "\u{202e}",
                "<v ",
                "9999999999999999999 ",
            ]
            .map(str::to_owned),
        )
        .collect();
    let mut state = 0x2545_F491_4F6C_DD1D_u64;
    let mut next = move || {
        state ^= state << 13;
        state ^= state >> 7;
        state ^= state << 17;
        state
    };
    for _ in 0..100_000 {
        let length = next() % 16;
        let text: String = (0..length)
            .map(|_| bits[(next() % bits.len() as u64) as usize].as_str())
            .collect();
        sound(&text, &draft(&text));
    }
}

#[test]
fn time_grows_with_the_length() {
    // A line of one megabyte and ten thousand brackets are read; the test fails by not ending.
    let long = "two cups of flour and a hundred and fifty grams of butter ".repeat(18_000);
    assert!(!draft(&long).drafts.is_empty());
    assert!(draft(&"[(<".repeat(10_000)).drafts.is_empty());
}
