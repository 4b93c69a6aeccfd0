//! The resolver against a table of names with what each means, written down by hand.

use potwright_larder::{Hints, Larder, Market, Match};
use potwright_measure::Unit;

const NAMES: &str = include_str!("names.tsv");

/// State words and unit of a row, as the hints want them.
fn hints<'a>(state: &'a [String], preparation: &'a str, unit: &str) -> Hints<'a> {
    let unit = match unit {
        "" | "each" => None,
        "can" => Some(Unit::Can),
        "sprig" => Some(Unit::Sprig),
        "bunch" => Some(Unit::Bunch),
        "handful" => Some(Unit::Handful),
        "teaspoon" => Some(Unit::Teaspoon),
        "tablespoon" => Some(Unit::Tablespoon),
        "clove" => Some(Unit::Clove),
        other => panic!("the table names a unit this test does not know: {other}"),
    };
    Hints {
        state,
        preparation,
        unit,
        ..Hints::default()
    }
}

#[test]
fn names_mean_what_a_cook_means() {
    let larder = Larder::built_in();
    let mut wrong = Vec::new();
    for line in NAMES
        .lines()
        .filter(|line| !line.starts_with('#') && !line.is_empty())
        .skip(1)
    {
        let cells: Vec<&str> = line.split('\t').collect();
        let &[name, state, preparation, unit, expected, sure] = cells.as_slice() else {
            panic!("six cells are wanted: {line}");
        };
        let state: Vec<String> = state.split_whitespace().map(str::to_owned).collect();
        let mut asked = hints(&state, preparation, unit);
        asked.counted = unit == "each";
        let found = larder.find(name, &asked);
        let key = found
            .best
            .and_then(|id| larder.get(id))
            .map_or("-", |food| food.key.as_str());
        let expected_sure = sure == "yes";
        if found.sure != expected_sure || (expected != "any" && key != expected) {
            wrong.push(format!("{line} → {key} {:.2} sure {}", found.score, found.sure));
        }
    }
    assert!(wrong.is_empty(), "{}", wrong.join("\n"));
}

fn find(name: &str) -> Match {
    Larder::built_in().find(name, &Hints::default())
}

#[test]
fn a_misspelt_name_scores_lower_than_the_right_one() {
    for (right, slip) in [
        ("carrot", "carot"),
        ("parsnips", "parsnps"),
        ("celeriac", "celariac"),
        ("haddock", "hadock"),
    ] {
        let (right, slip) = (find(right), find(slip));
        assert_eq!(right.best, slip.best);
        assert!(slip.score < right.score, "{} {}", slip.score, right.score);
    }
}

#[test]
fn what_no_food_bears_is_never_sure() {
    for name in [
        "",
        "   ",
        "unobtainium",
        "½",
        "of the",
        "a",
        "🍲",
        "ragged robin root beer float",
        "?",
        "onion juice",
    ] {
        let found = find(name);
        assert!(!found.sure, "{name}: {found:?}");
    }
}

#[test]
fn a_whole_line_is_read_up_to_its_commas() {
    let key = |name: &str| {
        let found = find(name);
        assert!(found.sure, "{name}: {found:?}");
        found
            .best
            .and_then(|id| Larder::built_in().get(id))
            .map(|food| food.key.clone())
    };
    assert_eq!(
        key("large shrimp, peeled and scraped of their veins").as_deref(),
        Some("prawn")
    );
    assert_eq!(
        key("boneless, skinless chicken thighs, cut into 1-inch pieces").as_deref(),
        Some("chicken_thigh_boneless")
    );
    // What stands behind the comma may say another food; then nothing is cut off.
    assert!(!find("mussels, smoked over oak and put up in oil").sure);
}

#[test]
fn no_name_breaks_the_resolver() {
    let larder = Larder::built_in();
    for (_, food) in larder.foods() {
        for synonym in food.synonyms.iter().chain([&food.name]) {
            for (at, _) in synonym.char_indices() {
                let (begin, end) = synonym.split_at(at);
                for name in [begin, end] {
                    let found = larder.find(name, &Hints::default());
                    assert!((0.0..=1.0).contains(&found.score), "{name}: {found:?}");
                    assert!(found.best.is_some() || !found.sure, "{name}: {found:?}");
                }
            }
        }
    }
}

#[test]
fn every_food_is_found_under_its_own_name_and_plural() {
    let larder = Larder::built_in();
    for (id, food) in larder.foods() {
        for name in [&food.name, &food.plural] {
            let found = larder.find(name, &Hints::default());
            assert!(
                found.best == Some(id) && found.sure,
                "{name} of {}: {found:?}",
                food.key
            );
        }
    }
}

#[test]
fn every_synonym_leads_to_its_food() {
    let larder = Larder::built_in();
    let mut wrong = Vec::new();
    for (id, food) in larder.foods() {
        for synonym in &food.synonyms {
            let name = synonym.trim_start_matches(['?', '=']);
            let found = larder.find(name, &Hints::default());
            let listed = found.best == Some(id) || found.rivals.iter().any(|(rival, _)| *rival == id);
            let right = if synonym.starts_with('?') {
                listed
            } else {
                found.best == Some(id) && found.sure
            };
            if !right {
                let best = found
                    .best
                    .and_then(|id| larder.get(id))
                    .map_or("-", |food| food.key.as_str());
                wrong.push(format!(
                    "'{name}' of {} → {best} {:.2} sure {}",
                    food.key, found.score, found.sure
                ));
            }
        }
    }
    assert!(wrong.is_empty(), "{} names:\n{}", wrong.len(), wrong.join("\n"));
}

/// American packers call sieved tomatoes purée; in Britain it is what America calls paste (common kitchen usage).
#[test]
fn a_name_that_two_markets_use_for_two_foods_is_asked_about_in_one_of_them() {
    let larder = Larder::built_in();
    let find = |name: &str, market, unit| {
        let hints = Hints {
            market,
            unit,
            ..Hints::default()
        };
        let found = larder.find(name, &hints);
        let key = found.best.and_then(|id| larder.get(id)).map(|food| food.key.clone());
        (key.unwrap_or_default(), found.sure)
    };
    let (us, uk) = (Some(Market::Us), Some(Market::Uk));
    assert_eq!(
        find("tomato purée", us, Some(Unit::Cup)),
        ("tomato_passata".into(), false)
    );
    assert_eq!(
        find("tomato puree", us, Some(Unit::Tablespoon)),
        ("tomato_puree".into(), false)
    );
    for market in [uk, None] {
        assert_eq!(
            find("tomato purée", market, Some(Unit::Tablespoon)),
            ("tomato_puree".into(), true)
        );
    }
    for market in [us, uk] {
        assert_eq!(find("tomato paste", market, None), ("tomato_puree".into(), true));
        assert_eq!(find("passata", market, None), ("tomato_passata".into(), true));
    }
}
