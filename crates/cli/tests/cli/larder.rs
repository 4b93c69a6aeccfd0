//! `larder find` and `larder import`, and a book's own foods on the way through the program.

use crate::bench::Bench;
use crate::pages::{fields, json};

/// An invented food in the layout of the release.
const FOODS: &str = "~99999~^~1100~^~Lockwort, raw~^~~^~~^~~^~~^~~^12^~~^6.25^4^9^4\r\n";
const AMOUNTS: &str =
    "~99999~^~255~^90^\r\n~99999~^~203~^2^\r\n~99999~^~204~^1^\r\n~99999~^~205~^6^\r\n~99999~^~207~^1^\r\n";
const PAGE: &str =
    "Lockwort soup\n\nServes 2\n\n300 g lockwort, raw\n500 ml water\n\nSimmer everything in a pot for 10 minutes.\n";

fn book(name: &str) -> Bench {
    let bench = Bench::new(name);
    bench.put("book/dishes/1.txt", PAGE.as_bytes());
    bench.put("table/FOOD_DES.txt", FOODS.as_bytes());
    bench.put("table/NUT_DATA.txt", AMOUNTS.as_bytes());
    bench
}

#[test]
fn a_name_is_looked_for() {
    let bench = Bench::new("find");
    let done = bench.run(&["larder", "find", "tinned", "tomatoes"]);
    assert_eq!((done.code, done.err.as_str()), (Some(0), ""));
    assert!(done.out.starts_with("canned"), "{}", done.out);
    assert!(
        done.out.contains("without asking") && done.out.contains("USDA SR28"),
        "{}",
        done.out
    );
    assert!(done.out.lines().all(|line| line.chars().count() <= 80));
    let done = bench.run(&["larder", "find", "zwxq"]);
    assert_eq!(done.code, Some(0));
    assert!(done.out.contains("not in the larder"));
    assert_eq!(bench.files(), [""; 0], "nothing is written");
}

#[test]
fn a_food_as_data_is_documented_and_leaves_no_allergen_out() {
    let bench = Bench::new("find-json");
    let told = include_str!("../../../../docs/larder-json.md");
    let mut missing = Vec::new();
    for name in [
        "leeks",
        "tinned tomatoes",
        "butter beans",
        "mussels",
        "stout",
        "beef shin",
        "chicken stock",
    ] {
        let done = bench.run(&["larder", "find", name, "--json"]);
        assert_eq!((done.code, done.err.as_str()), (Some(0), ""));
        let value = json(&done.out);
        assert_eq!(value["name"], name);
        fields(&value, &mut missing, told);
        for food in value["likenesses"].as_array().expect("a list") {
            let allergens = food["food"]["allergens"].as_array().expect("a list");
            // Wheat, cereals with gluten, and thirteen more: FALCPA and FASTER, Annex II of Regulation (EU) 1169/2011.
            assert_eq!(allergens.len(), 15, "{name}");
        }
    }
    assert!(missing.is_empty(), "docs/larder-json.md does not tell of {missing:?}");
    let none = json(&bench.run(&["larder", "find", "zwxq", "--json"]).out);
    assert_eq!(
        (&none["sure"], none["likenesses"].as_array().map(Vec::len)),
        (&false.into(), Some(0))
    );
    // USDA SR28, NDB 11282: onions, raw, 40 kcal and 89.11 g of water in 100 g.
    let onion = json(&bench.run(&["larder", "find", "onion", "--json"]).out);
    let composition = &onion["likenesses"][0]["food"]["composition"];
    assert_eq!(composition["energy_kcal"], 40.0);
    assert_eq!(composition["water_g"], 89.11);
}

#[test]
fn a_table_is_brought_in_once_and_its_foods_can_be_named() {
    let bench = book("import");
    let unknown = bench.run(&["reckon", "book/dishes/1.txt"]);
    assert!(unknown.out.contains("‘lockwort’"), "{}", unknown.out);
    assert!(unknown.out.contains("the larder does not"), "{}", unknown.out);
    let done = bench.run(&["larder", "import", "table", "--book", "book"]);
    assert_eq!(done.code, Some(0), "{}", done.err);
    assert!(done.out.starts_with("1 food"), "{}", done.out);
    assert!(
        done.out.contains("sr99999") && done.out.contains("WEIGHT.txt"),
        "{}",
        done.out
    );
    assert!(done.err.contains("reading NUT_DATA.txt"), "{}", done.err);
    let found = bench.run(&["larder", "find", "sr99999", "--book", "book"]);
    assert!(found.out.starts_with("Lockwort, raw\n"), "{}", found.out);
    let known = bench.run(&["reckon", "book/dishes/1.txt"]);
    assert!(!known.out.contains("not in the larder"), "{}", known.out);
    let again = bench.run(&["larder", "import", "table", "--book", "book"]);
    assert_eq!(again.code, Some(2));
    assert!(again.err.contains("--replace"), "{}", again.err);
    assert_eq!(
        bench
            .run(&["larder", "import", "table", "--book", "book", "--replace"])
            .code,
        Some(0)
    );
}

#[test]
fn faults_say_where() {
    let bench = book("larder-faults");
    bench.put("table/NUT_DATA.txt", b"~99999~^~255~^wet^\r\n");
    let done = bench.run(&["larder", "import", "table", "--book", "book"]);
    assert_eq!(done.code, Some(2));
    assert!(
        done.err
            .contains("NUT_DATA.txt, line 1: 'Nutr_Val' is 'wet', which is no number"),
        "{}",
        done.err
    );
    let done = bench.run(&["larder", "import", "table", "--book", "table"]);
    assert!(done.err.contains("is no book"), "{}", done.err);
    bench.put("book/larder.tsv", b"name\tlike\tcup_g\nlockwort\tleeks\theaped\n");
    let done = bench.run(&["reckon", "book/dishes/1.txt"]);
    assert_eq!(done.code, Some(2));
    assert!(
        done.err
            .contains("larder.tsv, line 2: 'cup_g' says 'heaped'; write grams above nought, like 150"),
        "{}",
        done.err
    );
}
