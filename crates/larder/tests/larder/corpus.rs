//! Names of foods in pages nobody here wrote, when a folder of readings is at hand.

use std::collections::BTreeMap;
use std::fs;
use std::path::Path;

use potwright_larder::{Hints, Larder};
use serde_json::Value;

/// Item names of all readings, each with its place.
fn items(folder: &Path) -> BTreeMap<String, usize> {
    let mut names = BTreeMap::new();
    let entries = fs::read_dir(folder.join("readings")).expect("POTWRIGHT_CORPUS holds a folder 'readings'");
    for entry in entries.flatten() {
        let text = fs::read_to_string(entry.path()).expect("a reading can be read");
        let reading: Value = serde_json::from_str(&text).expect("a reading is JSON");
        let lines = reading["ingredients"].as_array().cloned().unwrap_or_default();
        for item in lines
            .iter()
            .flat_map(|line| line["items"].as_array().cloned().unwrap_or_default())
        {
            if let Some(name) = item.as_str() {
                *names.entry(name.to_owned()).or_default() += 1;
            }
        }
    }
    names
}

#[test]
fn nearly_every_name_on_real_pages_is_known() {
    let Ok(folder) = std::env::var("POTWRIGHT_CORPUS") else {
        println!("not run: POTWRIGHT_CORPUS names no folder of readings");
        return;
    };
    let larder = Larder::built_in();
    let names = items(Path::new(&folder));
    let mut sure = 0;
    for name in names.keys() {
        let found = larder.find(name, &Hints::default());
        let key = found
            .best
            .and_then(|id| larder.get(id))
            .map_or("–", |food| food.key.as_str());
        sure += usize::from(found.sure);
        let rivals: Vec<String> = found
            .rivals
            .iter()
            .filter_map(|(id, score)| larder.get(*id).map(|food| format!("{} {score:.2}", food.key)))
            .collect();
        println!(
            "{} {name} → {key} {:.2} | {}",
            if found.sure { "  " } else { "? " },
            found.score,
            rivals.join(", ")
        );
    }
    println!("{sure} of {} sure", names.len());
    // A name that several foods may bear ('cream', 'cheese', 'stock') is rightly unsure.
    assert!(sure * 100 >= names.len() * 85, "{sure} of {} sure", names.len());
}
