//! Faults planted in sound pages: how many the rules find.
//!
//! `planted/pages/` holds sound pages, `planted/faults.tsv` what is made wrong in them, `planted/kinds.tsv` which rules
//! answer to which kind. The faults share nothing with the rules, and were written down without a look at them.
//! `cargo xtask prove proof` writes the same tables with all draws, every miss listed.

#[path = "planted/planter.rs"]
mod planter;

use std::collections::{BTreeMap, BTreeSet};
use std::path::Path;
use std::sync::OnceLock;

use planter::{Planted, plant};

/// Draws behind every range: fewer than the program takes, so that the tests do not wait; the long proof takes them all.
const FEW_DRAWS: usize = 16;

/// Faults found of each family. These only rise.
const FLOORS: [(&str, usize); 5] = [
    ("list_and_method", 34),
    ("can_it_be_cooked", 53),
    ("does_it_come_out", 0),
    ("safe_and_honest", 0),
    ("language", 3),
];

/// Sound pages that are asked about more than the budget allows. It only falls.
const OVER_BUDGET: usize = 2;

/// So many faults are planted at least, and so many of a hundred are unusual.
const FAULTS: usize = 150;
const UNUSUAL_PERCENT: usize = 30;

/// Read and cooked once for all tests of this file.
fn planted() -> &'static Planted {
    static PLANTED: OnceLock<Planted> = OnceLock::new();
    PLANTED.get_or_init(|| {
        let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
        plant(&root, FEW_DRAWS).unwrap_or_else(|what| panic!("{what}"))
    })
}

#[test]
fn as_many_faults_are_found_as_ever() {
    let mut families: BTreeMap<&str, (usize, usize)> = BTreeMap::new();
    for fault in &planted().faults {
        let (found, all) = families.entry(&fault.family).or_default();
        *found += usize::from(fault.found);
        *all += 1;
        if !fault.found && !fault.codes.is_empty() {
            println!(
                "missed {} ({}, {}): {:?}",
                fault.id, fault.page, fault.kind, fault.words
            );
        }
    }
    println!("found of all, by family: {families:?}");
    for (family, floor) in FLOORS {
        let (found, all) = families[family];
        assert!(found >= floor, "{family}: {found} of {all} found, {floor} before");
    }
    assert_eq!(families.len(), FLOORS.len());
}

#[test]
fn sound_pages_are_left_alone() {
    let over: Vec<&planter::Page> = planted().pages.iter().filter(|page| !page.within_budget()).collect();
    for page in &over {
        for query in &page.queries {
            println!("{} {} {}: {}", page.name, query.code, query.weight.words(), query.asks);
        }
    }
    assert!(over.len() <= OVER_BUDGET, "{} pages over the budget", over.len());
}

#[test]
fn the_faults_are_many_and_not_all_usual() {
    let faults = &planted().faults;
    let unusual = faults.iter().filter(|fault| !fault.usual).count();
    assert!(faults.len() >= FAULTS, "{} faults", faults.len());
    assert!(
        unusual * 100 >= faults.len() * UNUSUAL_PERCENT,
        "{unusual} unusual of {}",
        faults.len()
    );
    let ids: BTreeSet<&str> = faults.iter().map(|fault| fault.id.as_str()).collect();
    assert_eq!(ids.len(), faults.len(), "two faults have one number");
    let mut kinds: BTreeMap<&str, usize> = BTreeMap::new();
    for fault in faults {
        *kinds.entry(&fault.kind).or_default() += 1;
    }
    let once: Vec<_> = kinds.iter().filter(|(_, count)| **count < 2).collect();
    assert!(once.is_empty(), "planted but once: {once:?}");
}

/// Codes in `kinds.tsv` are codes of rules there are.
#[test]
fn kinds_name_rules_there_are() {
    for code in planted().faults.iter().flat_map(|fault| &fault.codes) {
        assert!(
            potwright_proof::rules::ALL.iter().any(|rule| rule.code == code),
            "no rule has the code {code}"
        );
    }
}
