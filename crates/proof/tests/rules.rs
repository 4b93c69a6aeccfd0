//! Every rule fires on the example of its own page and keeps silent on the other.

use potwright_larder::Larder;
use potwright_measure::Measures;
use potwright_pot::Kitchen;
use potwright_proof::{Query, queries, rules};
use potwright_reckon::{Prices, Target, reckon};

fn proofread(text: &str) -> Vec<Query> {
    let recipe = potwright_manuscript::read(text);
    let (kitchen, larder) = (Kitchen::default(), Larder::built_in());
    let process = potwright_pot::resolve(&recipe, text, larder, &[], &kitchen, Measures::Metric);
    let reckoned = reckon(
        process,
        &kitchen,
        larder,
        &[],
        &Prices::default(),
        &Target::default(),
        0,
        1,
    );
    queries(&recipe, text, &reckoned)
}

#[test]
fn every_rule_fires_on_its_example() {
    for rule in rules::ALL {
        let found = proofread(rule.fires);
        assert!(
            found.iter().any(|query| query.code == rule.code),
            "{} kept silent; found {found:#?}",
            rule.code
        );
    }
}

#[test]
fn every_rule_keeps_silent_on_its_other_example() {
    for rule in rules::ALL {
        let found = proofread(rule.silent);
        assert!(
            !found.iter().any(|query| query.code == rule.code),
            "{} fired: {found:#?}",
            rule.code
        );
    }
}

#[test]
fn codes_are_unique_and_pages_complete() {
    let mut codes: Vec<&str> = rules::ALL.iter().map(|rule| rule.code).collect();
    codes.sort_unstable();
    codes.dedup();
    assert_eq!(codes.len(), rules::ALL.len());
    for rule in rules::ALL {
        let page = rule.page();
        for part in [rule.finds, rule.why, rule.fires, rule.silent, rule.instead, rule.source] {
            assert!(
                !part.trim().is_empty() && page.contains(part),
                "{} has an empty part",
                rule.code
            );
        }
    }
}

#[test]
fn every_query_stands_on_words_of_the_page() {
    for rule in rules::ALL {
        for query in proofread(rule.fires) {
            assert!(
                !query.span.of(rule.fires).trim().is_empty(),
                "{} points at nothing",
                query.code
            );
        }
    }
}

/// What each name may be, from the larder's tables; what hangs on it by hand: a paste of which only 'paste' is known may
/// hold anything, and no carrot holds an allergen of the law.
#[test]
fn what_hangs_on_a_name() {
    use potwright_proof::Weight::{MustSettle, WorthALook};
    for (name, expected) in [
        ("satay paste", Some(MustSettle)),
        ("almond flour", Some(MustSettle)),
        ("nut butter", Some(MustSettle)),
        ("zwxq", Some(MustSettle)),
        ("purple carrots", Some(WorthALook)),
        ("onions", None),
    ] {
        let text = format!(
            "Soup\n\n100 g {name}\n1 litre water\n\nPut the {name} and the water in a pot and simmer for 20 minutes.\n"
        );
        let found = proofread(&text);
        let query = found.iter().find(|query| query.code == "L11");
        assert_eq!(query.map(|query| query.weight), expected, "{name}: {found:#?}");
    }
}
