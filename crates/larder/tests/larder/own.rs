//! A book's own foods: invented ones, and faults in a writer's words.

use potwright_larder::own::{Asked, read};
use potwright_larder::{Allergen, Contains, Food, Hints, Kind, Larder, Match};
use potwright_measure::Unit;

const FILE: &str = "larder.tsv";

fn foods(text: &str) -> Vec<Food> {
    read(FILE, text, Larder::built_in(), Asked::OfAWriter).unwrap_or_else(|faults| panic!("{faults:?}"))
}

fn larder(text: &str) -> Larder {
    Larder::built_in().with(&foods(text), &[])
}

fn faults(text: &str) -> Vec<String> {
    let faults = read(FILE, text, Larder::built_in(), Asked::OfAWriter).expect_err("faults");
    faults
        .iter()
        .map(|fault| format!("{}: {}", fault.line, fault.wrong))
        .collect()
}

fn find(larder: &Larder, name: &str) -> Match {
    larder.find(name, &Hints::default())
}

fn key(larder: &Larder, name: &str) -> String {
    let found = find(larder, name);
    assert!(found.sure, "{name} is not sure: {found:?}");
    larder.get(found.best.expect("sure")).expect("its own").key.clone()
}

#[test]
fn a_food_like_another_takes_its_row_and_says_so() {
    let text = "# ours\nname\tplural\tsynonyms\tlike\tcup_g\tsesame\tnotes\nlock seed mix\tlock seed mixes\tlock seeds\tsunflower seeds\t140\tyes\tfrom the mill\n";
    let larder = larder(text);
    let base = Larder::built_in();
    let like = base
        .get(find(base, "sunflower seeds").best.expect("known"))
        .expect("known");
    for name in ["lock seed mix", "Lock seed mixes", "lock seeds"] {
        assert_eq!(key(&larder, name), "lock_seed_mix", "{name}");
    }
    let food = larder.by_key("lock_seed_mix").expect("added");
    assert_eq!((food.kind, &food.composition), (like.kind, &like.composition));
    assert!(
        food.source.contains(&like.source) && food.source.contains("larder.tsv, line 3"),
        "{}",
        food.source
    );
    let cup = food.weight_of(Some(Unit::Cup), "", "").expect("given");
    assert!((cup.mass_g.mid - 140.0).abs() < 1e-9 && cup.source.contains("line 3"));
    // What the other is free of this one need not be.
    assert_eq!(food.contains(Allergen::Sesame), Contains::Yes);
    assert_eq!(food.contains(Allergen::Milk), Contains::NotKnown);
    assert_eq!(larder.len(), base.len() + 1);
}

#[test]
fn a_row_of_a_known_food_changes_that_food_only_where_it_says_something() {
    let larder = larder("key\tpiece_g\tsource\nonion\t140\tweighed at the lock, ten of them\n");
    let (before, after) = (
        Larder::built_in().by_key("onion").expect("there"),
        larder.by_key("onion").expect("there"),
    );
    assert_eq!(larder.len(), Larder::built_in().len());
    assert_eq!(
        (&before.name, &before.synonyms, &before.composition),
        (&after.name, &after.synonyms, &after.composition)
    );
    assert_eq!(after.weight_of(None, "", "").expect("given").mass_g.mid, 140.0);
    // A cup of it is still what it was.
    assert_eq!(
        before.weight_of(Some(Unit::Cup), "chopped", ""),
        after.weight_of(Some(Unit::Cup), "chopped", "")
    );
    assert_eq!(key(&larder, "brown onions"), "onion");
    assert_eq!(
        larder.by_key("onion").map(|food| food.contains(Allergen::Milk)),
        Some(Contains::No)
    );
}

/// From a packet: protein 8, fat 3, carbohydrate with fibre 50, salt 1.1 g. Water is the rest, 39 g; energy by 4, 9 and
/// 4 kcal/g is 8·4 + 3·9 + 50·4 = 259 kcal; sodium is salt by 2.5, 440 mg.
#[test]
fn a_packet_is_enough() {
    let text = "name\tkind\tanimal\tprotein_g\tfat_g\tcarbohydrate_g\tsalt_g\twheat\tother_allergens\nlock rusk\tbread\tno\t8\t3\t50\t1.1\tyes\tno\n";
    let foods = foods(text);
    let food = &foods[0];
    let c = &food.composition;
    let near = |value: Option<f64>, expected: f64| value.is_some_and(|value| (value - expected).abs() < 1e-9);
    assert!(
        near(c.water_g, 39.0) && near(c.energy_kcal, 259.0) && near(c.sodium_mg, 440.0),
        "{c:?}"
    );
    assert_eq!(
        (food.kind, food.animal, food.source.as_str()),
        (Kind::Bread, false, "larder.tsv, line 2")
    );
    assert_eq!(
        (food.contains(Allergen::Wheat), food.contains(Allergen::Eggs)),
        (Contains::Yes, Contains::No)
    );
    assert!(food.behaviour.shape.is_some(), "what holds for bread holds for it");
}

/// Giving fat anew makes water and energy follow: whole milk has 88.13 g water, 3.15 protein, 4.8 carbohydrate and 0.67
/// ash (USDA SR28, NDB 01077) with factors 4.27, 8.79 and 3.87; with 5 g fat water is 100 − 3.15 − 5 − 4.8 − 0.67 =
/// 86.38 g and energy 3.15·4.27 + 5·8.79 + 4.8·3.87 = 75.98 kcal.
#[test]
fn water_and_energy_follow_a_changed_part() {
    let foods = foods("name\tlike\tfat_g\nlock cow milk\tmilk\t5\n");
    let c = &foods[0].composition;
    let near = |value: Option<f64>, expected: f64| value.is_some_and(|value| (value - expected).abs() < 0.02);
    assert!(near(c.water_g, 86.38) && near(c.energy_kcal, 75.98), "{c:?}");
}

#[test]
fn a_books_own_name_is_taken_from_whoever_bore_it() {
    let larder = larder("name\tsynonyms\tlike\tkey\nquay mustard\tEnglish mustard; mustard\tmustard\tquay_mustard\n");
    assert_eq!(key(&larder, "mustard"), "quay_mustard");
    assert_eq!(key(&larder, "quay_mustard"), "quay_mustard");
    assert_eq!(key(&larder, "Dijon mustard"), "mustard_dijon");
}

#[test]
fn a_row_may_be_like_an_earlier_one() {
    let foods = foods("name\tlike\tpiece_g\nlock roll\twhite bread\t60\nlong lock roll\tlock roll\t90\n");
    assert_eq!(foods[0].composition, foods[1].composition);
    assert_eq!(
        foods[1].weight_of(None, "", "").map(|weighed| weighed.mass_g.mid),
        Some(90.0)
    );
}

#[test]
fn weights_and_densities() {
    let foods = foods("name\tlike\tg_per_ml\tweights\nlock cordial\tapple juice\t1.25\tbottle=625; slice thin=4\n");
    let density = foods[0].density("").expect("given").g_per_ml;
    assert!(
        (density.mid - 1.25).abs() < 1e-9 && density.low == density.high,
        "{density:?}"
    );
    let bottle = foods[0].weight_of(Some(Unit::Bottle), "", "").expect("given");
    assert_eq!(bottle.mass_g.mid, 625.0);
}

#[test]
fn faults_are_told_in_a_writers_words_with_their_lines() {
    let check = |text: &str, expected: &[&str]| assert_eq!(faults(text), expected, "{text}");
    check(
        "name\tprotien_g\tcolour\n",
        &[
            "1: no column is called 'protien_g'; 'protein_g' may be meant",
            "1: no column is called 'colour'; what is for your own eyes goes under 'notes'",
        ],
    );
    check(
        "like\tcup_g\n",
        &["1: the heading needs a column 'name' or 'key'; columns are parted by tabs"],
    );
    check(
        "name\tlike\tcup_g\tmilk\n# a remark\nrusk\twhite bread\tlots\nrusk two\tzwxq\nrusk three\tstock\n\twhite bread\t1\n",
        &[
            "3: 'cup_g' says 'lots'; write grams above nought, like 150",
            "4: no food is called 'zwxq'; say another in 'like'",
            "5: 'stock' in 'like' may be beef stock or chicken stock or vegetable stock; write which",
            "6: neither name nor key says which food this is",
        ],
    );
    check(
        "name\tlike\tmilk\tanimal\nrusk\twhite bread\tmaybe\nrusk\twhite bread\tno\nrusk\twhite bread\tno\nslab\twhite bread\tno\tsome\n",
        &[
            "2: 'milk' says 'maybe'; write yes, no or not known",
            "4: 'rusk' stands in line 3 already",
            "5: 'animal' says 'some'; write yes, no or not known",
        ],
    );
    check(
        "name\tprotein_g\tfat_g\tcarbohydrate_g\tsaturated_g\nquay paste\na b\t60\t50\t9\nc d\t1\t2\t3\t9\ne\t1\t2\t3\t1\tmore\n",
        &[
            "2: nothing says what it is made of; name a food it resembles in 'like', or give protein_g, fat_g and carbohydrate_g",
            "3: water, protein, fat, carbohydrate, ash and alcohol make 119.0 g of 100 g",
            "4: saturated_g is more than fat_g, of which it is a part",
            "5: 6 cells, where the heading has 5; cells are parted by tabs",
        ],
    );
    check(
        "name\tlike\tsalt_g\tsodium_mg\tweights\tkey\nrusk\twhite bread\t1\t400\nslab\twhite bread\t\t\tsack 9\nlump\twhite bread\t\t\t\tLump!\n",
        &[
            "2: 'salt_g' and 'sodium_mg' say the same thing; keep one of them",
            "3: 'sack 9' in 'weights' is no measure with its grams; write like cup chopped=160; bunch=120",
            "4: the key 'Lump!' may hold only small letters, figures and low lines, like seed_mix",
        ],
    );
}

#[test]
fn no_text_breaks_the_reader() {
    let pieces = [
        "name", "\t", "\n", "like", "onion", "#", "é", "1e999", "weights", "=", ";", "\u{0}", "key", "-1", "cup_g",
    ];
    for seed in 0..400usize {
        let text: String = (0..40)
            .map(|at| pieces[(seed * 31 + at * at * 7 + at) % pieces.len()])
            .collect();
        _ = read(FILE, &text, Larder::built_in(), Asked::OfAWriter);
        _ = read(FILE, &text, Larder::built_in(), Asked::OfATable);
    }
    assert_eq!(
        read(FILE, "# nothing yet\n", Larder::built_in(), Asked::OfAWriter),
        Ok(Vec::new())
    );
}

#[test]
fn an_unknown_food_is_not_known_by_its_state_or_cut() {
    for (name, state) in [
        ("lockwort", "raw"),
        ("lockwort", "dried"),
        ("chopped lockwort", ""),
        ("fresh lockwort", "cooked"),
    ] {
        let state = [state.to_owned()];
        let hints = Hints {
            state: &state,
            preparation: "finely sliced",
            ..Hints::default()
        };
        assert_eq!(Larder::built_in().find(name, &hints).best, None, "{state:?} {name}");
    }
}

#[test]
fn a_key_names_its_food_with_low_lines_or_spaces() {
    let larder = Larder::built_in();
    for (name, expected) in [
        ("beef_stock_home", "beef_stock_home"),
        ("beef stock home", "beef_stock_home"),
        ("haddock_smoked", "haddock_smoked"),
        // A name that is borne comes before a key that happens to read like it.
        ("tomato puree", "tomato_puree"),
        ("onion", "onion"),
    ] {
        assert_eq!(key(larder, name), expected, "{name}");
    }
}
