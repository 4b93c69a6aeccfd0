//! One page: from a file, from the standard input, from the demo book; in text and as data.

use serde_json::Value;

use crate::bench::{Bench, SOUP};

pub(crate) fn json(text: &str) -> Value {
    serde_json::from_str(text).expect("prints JSON")
}

#[test]
fn a_page_gives_a_dossier_of_eighty_columns() {
    let bench = Bench::new("page");
    bench.put("soup.txt", SOUP.as_bytes());
    let done = bench.run(&["reckon", "soup.txt"]);
    assert_eq!((done.code, done.err.as_str()), (Some(0), ""));
    assert!(done.out.starts_with("Leek soup\n"), "{}", done.out);
    let widest = done.out.lines().map(|line| line.chars().count()).max();
    assert!(widest <= Some(80), "{widest:?}");
    assert!(!done.out.contains('\u{1b}'), "no colour where there is no terminal");
    assert_eq!(bench.files(), ["soup.txt"], "nothing is written");
}

#[test]
fn the_standard_input_is_a_page_too() {
    let bench = Bench::new("stdin");
    bench.put("soup.txt", SOUP.as_bytes());
    let piped = bench.run_on(&["reckon", "-"], SOUP.as_bytes());
    assert_eq!(piped.out, bench.run(&["reckon", "soup.txt"]).out);
}

#[test]
fn data_says_the_same_every_time_and_is_documented() {
    let bench = Bench::new("json");
    let one = bench.run_on(&["reckon", "-", "--json"], SOUP.as_bytes());
    let other = bench.run_on(&["reckon", "-", "--json"], SOUP.as_bytes());
    assert_eq!(one.code, Some(0));
    assert_eq!(one.out, other.out);
    let value = json(&one.out);
    assert_eq!(value["dossier"]["version"], 1);
    assert_eq!(value["dossier"]["title"], "Leek soup");
    let told = include_str!("../../../../docs/dossier-json.md");
    let mut missing = Vec::new();
    fields(&value, &mut missing, told);
    assert!(missing.is_empty(), "docs/dossier-json.md does not tell of {missing:?}");
}

/// The names of all fields that the document does not tell of.
pub(crate) fn fields(value: &Value, missing: &mut Vec<String>, told: &str) {
    match value {
        Value::Object(map) => {
            for (name, value) in map {
                if !told.contains(&format!("`{name}`")) && !missing.contains(name) {
                    missing.push(name.clone());
                }
                fields(value, missing, told);
            }
        }
        Value::Array(items) => items.iter().for_each(|item| fields(item, missing, told)),
        _ => {}
    }
}

#[test]
fn a_page_can_be_shown_as_read() {
    let bench = Bench::new("reading");
    let done = bench.run_on(&["reckon", "-", "--reading", "--json"], SOUP.as_bytes());
    let value = json(&done.out);
    assert_eq!(value["title"], "Leek soup");
    assert_eq!(value["ingredients"].as_array().map(Vec::len), Some(5));
    assert_eq!(value["ingredients"][0]["items"][0], "butter");
    let done = bench.run_on(&["reckon", "-", "--reading"], SOUP.as_bytes());
    assert!(done.out.contains("butter"), "{}", done.out);
}

#[test]
fn a_dish_of_the_demo_book_goes_by_number_or_title() {
    let bench = Bench::new("demo-dish");
    let by_number = bench.run(&["reckon", "9"]);
    assert_eq!(by_number.code, Some(0), "{}", by_number.err);
    assert!(by_number.out.starts_with("Brown beef stock\n"));
    assert_eq!(bench.run(&["reckon", "brown beef"]).out, by_number.out);
}

#[test]
fn queries_stand_at_their_words_and_are_counted() {
    let bench = Bench::new("proof");
    let page = SOUP.replace("3 leeks, sliced\n", "3 leeks, sliced\n2 carrots, diced\n");
    let done = bench.run_on(&["proof", "-"], page.as_bytes());
    assert_eq!(done.code, Some(0), "{}", done.err);
    assert!(done.out.contains("2 carrots, diced"), "{}", done.out);
    let last = done.out.lines().last().unwrap_or_default();
    assert!(last.contains("1 query") || last.contains("queries: "), "{last}");
    let queries = json(&bench.run_on(&["proof", "-", "--json"], page.as_bytes()).out);
    let asks = queries
        .as_array()
        .expect("a list")
        .iter()
        .map(|query| query["asks"].to_string());
    assert!(asks.into_iter().any(|asks| asks.contains("carrots")), "{queries}");
}

#[test]
fn pages_of_older_word_processors_are_read_with_a_note() {
    let bench = Bench::new("latin");
    let page: Vec<u8> = SOUP
        .replace("Leek soup", "Pur\u{e9}e")
        .chars()
        .map(|c| c as u8)
        .collect();
    let done = bench.run_on(&["reckon", "-"], &page);
    assert_eq!(done.code, Some(0));
    assert!(done.out.starts_with("Purée\n"), "{}", done.out);
    assert!(done.err.starts_with("note: standard input: "), "{}", done.err);
}

#[test]
fn any_text_at_all_is_answered() {
    let bench = Bench::new("any");
    let pages: [&[u8]; 6] = [
        b"x",
        b"\n\n\n.",
        b"\xFF\xFE\x00",
        b"1\n2\n3",
        "🥣\n\n🥄 🥄".as_bytes(),
        &[b'('; 5000],
    ];
    for page in pages {
        let done = bench.run_on(&["reckon", "-"], page);
        assert!(matches!(done.code, Some(0 | 2)), "{:?}: {}", done.code, done.err);
        assert!(!done.err.contains("panicked"), "{}", done.err);
    }
}
