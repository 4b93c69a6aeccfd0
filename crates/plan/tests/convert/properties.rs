//! What holds for every page.

use potwright_larder::Larder;
use potwright_measure::{Exact, Measures, Unit};
use potwright_plan::{BatchSize, MeasuresWanted, Request, Subject, convert};
use proptest::prelude::*;

use super::{corpus, demo_dishes, reset};

const HOMES: [Measures; 4] = [Measures::Metric, Measures::Us, Measures::Imperial, Measures::Australian];
const WANTED: [MeasuresWanted; 4] = [
    MeasuresWanted::Metric,
    MeasuresWanted::Us,
    MeasuresWanted::Both,
    MeasuresWanted::AsWritten,
];

fn pages() -> Vec<(String, String)> {
    let mut pages = demo_dishes();
    pages.extend(corpus());
    pages
}

/// Once the size of the page in its own measures: not a letter of it changes.
#[test]
fn its_own_size_in_its_own_measures_is_the_page() {
    for (name, text) in pages() {
        for home in HOMES {
            let done = reset(&text, BatchSize::AsWritten, MeasuresWanted::AsWritten, home);
            assert_eq!(done.changes, [], "{name}");
        }
    }
}

/// Numbers, units and the ending of a counted noun may change; every other word of a line is still there, in order.
#[test]
fn no_word_of_a_line_is_lost() {
    for (name, text) in pages() {
        for (factor, wanted, home) in ["1/3", "1", "5/2", "20/3"]
            .into_iter()
            .flat_map(|f| WANTED.into_iter().flat_map(move |w| HOMES.map(|h| (f, w, h))))
        {
            let done = reset(&text, BatchSize::Times(factor.parse().expect("a number")), wanted, home);
            for change in &done.changes {
                let kept = stems(&change.now);
                let mut rest = kept.iter();
                for word in stems(&change.was) {
                    assert!(
                        rest.any(|other| *other == word),
                        "{name}, times {factor}, {wanted:?}: '{word}' is lost\n{}\n{}",
                        change.was,
                        change.now
                    );
                }
            }
        }
    }
}

/// The beginnings of all words that are neither numbers nor units.
fn stems(text: &str) -> Vec<String> {
    const NUMBERS: [&str; 29] = [
        "a", "an", "and", "half", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten",
        "twelve", "dozen", "couple", "quarter", "quarters", "third", "thirds", "fourth", "another", "to", "or", "of",
        "about", "more", "plus",
    ];
    // 'leaves' and 'leaf', 'loaves' and 'loaf' begin alike in three letters.
    let words = text.split(|c: char| !c.is_alphabetic()).map(str::to_lowercase);
    words
        .filter(|word| {
            let length = [
                "inch",
                "inches",
                "cm",
                "mm",
                "celsius",
                "fahrenheit",
                "f",
                "c",
                "degrees",
            ]
            .contains(&word.as_str());
            !word.is_empty()
                && !NUMBERS.contains(&word.as_str())
                && Unit::from_spelling(word).is_none()
                && !length
                && !["fl", "lb", "oz", "fluid"].contains(&word.as_str())
        })
        .map(|word| word.chars().take(3).collect())
        .collect()
}

/// Rounding to what a kitchen has: the table in the kit's own documentation allows a third below ¼ tsp, 12.5 % for a
/// count and half of one thing left whole; a multiple of the page is never off by more than that.
#[test]
fn rounding_keeps_to_what_the_kit_allows() {
    for (name, text) in pages() {
        for factor in ["3/2", "4", "20/3"] {
            let done = reset(
                &text,
                BatchSize::Times(factor.parse().expect("a number")),
                MeasuresWanted::Metric,
                Measures::Metric,
            );
            for change in &done.changes {
                if let Subject::Ingredient(_) = change.subject {
                    assert!(
                        change.off.abs() <= 0.5,
                        "{name}: {} → {} is off by {}",
                        change.was,
                        change.now,
                        change.off
                    );
                }
            }
        }
    }
}

/// Twice the same: the same words.
#[test]
fn it_is_deterministic() {
    for (_, text) in demo_dishes() {
        let once = || {
            reset(
                &text,
                BatchSize::Times(Exact::whole(3)),
                MeasuresWanted::Both,
                Measures::Metric,
            )
        };
        assert_eq!(once().text(), once().text());
    }
}

fn any_request() -> impl Strategy<Value = Request> {
    let size = prop_oneof![
        Just(BatchSize::AsWritten),
        (-3_i64..5000, 1_i64..60).prop_map(|(n, d)| BatchSize::Times(Exact::ratio(n, d).unwrap_or(Exact::ONE))),
        (-3_i64..100_000).prop_map(|n| BatchSize::ForServings(Exact::whole(n))),
        Just(BatchSize::Times(Exact::whole(i64::MAX))),
    ];
    (size, 0_usize..4, 0_usize..4).prop_map(|(size, wanted, home)| Request {
        size,
        measures: WANTED[wanted],
        home: HOMES[home],
        ..Request::default()
    })
}

/// A page made of pieces that look like pages.
fn any_page() -> impl Strategy<Value = String> {
    let piece = prop_oneof![
        "[0-9½¼⅔/.–-]{0,6}",
        "(g|kg|cups?|tbsp|oz|fl oz|lb|litres?|inch|cm|C|°F|gas mark|a|half|dozen|to|or) ?",
        "(onions?|flour|water|butter|leaves|salt|the oil|in a pot|for 20 minutes|\\(|\\)|\\[|\\]|/|,|\\+) ?",
        "(Serves |Makes |\n\n|\n|1\\. |Heat the oven to |Simmer |Add )",
        "\\PC{0,4}",
    ];
    proptest::collection::vec(piece, 0..40).prop_map(|pieces| pieces.concat())
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn no_page_and_no_request_brings_it_down(page in any_page(), request in any_request()) {
        let recipe = potwright_manuscript::read(&page);
        let done = convert(&recipe, &page, &request, Larder::built_in());
        prop_assert!(done.text().lines().count() > 0);
        prop_assert!(done.factor.is_positive());
    }
}
