//! Figures taken from the official tables without the generator, and what the larder makes of them.

use potwright_larder::{Fit, Larder};
use potwright_measure::Unit;

const FACTS: &str = include_str!("facts.tsv");

#[test]
fn compositions_are_the_official_ones() {
    // facts.tsv: figures read from USDA SR28 under the NDB number of the row, not through the generator; each row read by
    // eye beside the official one, its name too, on 30 November 2026. Every kind of food has a row.
    let larder = Larder::built_in();
    let mut rows = 0;
    let mut kinds = Vec::new();
    for line in FACTS.lines().filter(|line| !line.starts_with('#')).skip(1) {
        let cells: Vec<&str> = line.split('\t').collect();
        let food = larder
            .by_key(cells[0])
            .unwrap_or_else(|| panic!("no food {}", cells[0]));
        assert!(
            food.source.starts_with(&format!("USDA SR28, NDB {}", cells[1])),
            "{}: {}",
            food.key,
            food.source
        );
        let c = &food.composition;
        let ours = [
            c.water_g,
            c.energy_kcal,
            c.protein_g,
            c.fat_g,
            c.carbohydrate_g,
            c.sodium_mg,
            c.potassium_mg,
            c.vitamin_c_mg,
        ];
        let balanced = food.source.contains("to make 100 g");
        for (place, (ours, theirs)) in ours.iter().zip(&cells[2..]).enumerate() {
            if place == 0 && balanced {
                continue;
            }
            assert_eq!(*ours, theirs.parse().ok(), "{} column {place}", food.key);
        }
        rows += 1;
        kinds.push(food.kind);
    }
    assert!(rows >= 54, "{rows} rows");
    for (_, food) in larder.foods().filter(|(_, food)| food.source.starts_with("USDA")) {
        assert!(kinds.contains(&food.kind), "no row is of the kind of {}", food.key);
    }
}

fn grams(key: &str, unit: Option<Unit>, cut: &str, size: &str) -> (f64, f64, f64, Fit) {
    let food = Larder::built_in()
        .by_key(key)
        .unwrap_or_else(|| panic!("no food {key}"));
    let weighed = food
        .weight_of(unit, cut, size)
        .unwrap_or_else(|| panic!("{key} has no such weight"));
    assert!(!weighed.source.is_empty());
    let round = |grams: f64| (grams * 100.0).round() / 100.0;
    (
        round(weighed.mass_g.low),
        round(weighed.mass_g.mid),
        round(weighed.mass_g.high),
        weighed.fit,
    )
}

#[test]
fn a_food_that_is_weighed_by_the_piece_is_counted_so() {
    // USDA SR28 WEIGHT, NDB 11266 seq 3: 1 piece whole 20 g; the spread of a single row is ×/÷1.5, 20 / 1.5 = 13.33.
    assert_eq!(
        grams("mushroom_chestnut", None, "", ""),
        (13.33, 20.0, 30.0, Fit::Unsaid)
    );
}

#[test]
fn cups_and_spoons_by_their_cut() {
    // USDA SR28 WEIGHT, NDB 11282: 1 cup chopped 160 g, 1 cup sliced 115 g, 1 tbsp chopped 10 g.
    assert_eq!(
        grams("onion", Some(Unit::Cup), "finely chopped", ""),
        (160.0, 160.0, 160.0, Fit::Same)
    );
    assert_eq!(
        grams("onion", Some(Unit::Cup), "sliced", ""),
        (115.0, 115.0, 115.0, Fit::Same)
    );
    // 160 g to the cup is 10 g to the sixteenth of it.
    assert_eq!(
        grams("onion", Some(Unit::Tablespoon), "chopped", ""),
        (10.0, 10.0, 10.0, Fit::Same)
    );
    // A cut that is not on record: at least ×/÷1.5 about one that is.
    let (low, mid, high, fit) = grams("onion", Some(Unit::Cup), "grated", "");
    assert_eq!(fit, Fit::OtherCut);
    assert!(low <= mid / 1.5 + 0.01 && high >= mid * 1.5 - 0.01);
    // NDB 01077: 1 cup 244 g; a pint is two.
    assert_eq!(grams("milk", Some(Unit::Cup), "", "").1, 244.0);
    assert_eq!(grams("milk", Some(Unit::Pint), "", "").1, 488.0);
    // NDB 20481: 1 cup 125 g, the sixteenth 7.81 g.
    assert_eq!(
        grams("flour", Some(Unit::Tablespoon), "", ""),
        (7.81, 7.81, 7.81, Fit::Same)
    );
}

#[test]
fn pieces_by_their_size() {
    // NDB 11282: large 150 g, medium 110 g, small 70 g.
    assert_eq!(
        grams("onion", None, "finely chopped", "large"),
        (150.0, 150.0, 150.0, Fit::Same)
    );
    assert_eq!(grams("onion", None, "", ""), (70.0, 110.0, 150.0, Fit::Unsaid));
    // NDB 11215: 1 clove 3 g; NDB 11143: a stalk 17, 40 or 64 g, and a stick is a stalk.
    assert_eq!(grams("garlic", Some(Unit::Clove), "crushed", "").1, 3.0);
    assert_eq!(
        grams("celery", Some(Unit::Stalk), "sliced", ""),
        (17.0, 40.0, 64.0, Fit::Unsaid)
    );
    assert_eq!(
        grams("celery", Some(Unit::Stick), "sliced", ""),
        (17.0, 40.0, 64.0, Fit::Unsaid)
    );
    assert_eq!(grams("celery", Some(Unit::Rib), "", "").1, 40.0);
    // Only one weight on record: ×/÷1.5, and a large one is guessed at 1.4 of it.
    let (low, mid, high, fit) = grams("leek", None, "sliced", "large");
    assert_eq!((mid, fit), (124.6, Fit::OtherCut));
    assert!(low < 84.0 && high > 186.0);
}

#[test]
fn a_teaspoon_of_salt_depends_on_the_salt() {
    // 6 g fine (NDB 02047), 2.8 g light flakes, 4.8 g dense flakes (common practice, no source).
    let spoon = |key| grams(key, Some(Unit::Teaspoon), "", "");
    assert_eq!(spoon("salt").1, 6.0);
    assert_eq!(spoon("salt_flakes_light").1, 2.8);
    assert_eq!(spoon("salt_flakes_dense").1, 4.8);
    let (low, mid, high, _) = spoon("salt_kosher");
    assert_eq!((low, high), (2.8, 4.8));
    assert!(low < mid && mid < high);
    assert!(spoon("salt").0 <= 2.8);
}

#[test]
fn what_has_no_weight_gives_none() {
    let food = |key| {
        Larder::built_in()
            .by_key(key)
            .unwrap_or_else(|| panic!("no food {key}"))
    };
    assert_eq!(food("onion").weight_of(Some(Unit::Gram), "", ""), None);
    assert_eq!(food("beef_shin").weight_of(Some(Unit::Cup), "", ""), None);
    assert_eq!(food("salt").weight_of(Some(Unit::Rasher), "", ""), None);
}

#[test]
fn what_is_sold_or_measured_off_the_cob_and_out_of_the_shell_is_weighed_so() {
    for key in [
        "sweetcorn_kernels",
        "sweetcorn_cooked",
        "prawn_cooked",
        "prawn_brown",
        "broad_beans_frozen",
    ] {
        let food = Larder::built_in().by_key(key).expect(key);
        assert_eq!(food.refuse, Some(0.0), "{key}");
    }
    // USDA SR28 FOOD_DES, NDB 11167: refuse 64 %, cob, husk and silk.
    assert_eq!(
        Larder::built_in().by_key("sweetcorn").and_then(|food| food.refuse),
        Some(0.64)
    );
}
