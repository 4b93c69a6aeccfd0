//! The tidy test over all built-in tables: whatever can be told wrong without a book is told wrong here.

use potwright_larder::{Allergen, Contains, Fault, Food, Kind, Larder, State, Tables};

fn larder() -> Larder {
    // Keys, words, numbers and sources are checked while reading; the error names file and line.
    Larder::from_tables(&Tables::BUILT_IN).unwrap_or_else(|error| panic!("{error}"))
}

fn complain(faults: &[String]) {
    assert!(faults.is_empty(), "{} faults:\n{}", faults.len(), faults.join("\n"));
}

#[test]
fn the_built_in_larder_is_the_one_the_tables_give() {
    assert_eq!(Larder::built_in().len(), larder().len());
    assert!(!Larder::built_in().is_empty());
}

#[test]
fn proximates_make_a_hundred_grams() {
    // Rows of the official tables that are off by more are balanced by the generator and say so in their source.
    let mut faults = Vec::new();
    for (_, food) in larder().foods() {
        let c = &food.composition;
        let parts = [c.water_g, c.protein_g, c.fat_g, c.carbohydrate_g, c.ash_g, c.alcohol_g];
        let sum: f64 = parts.iter().flatten().sum();
        if (sum - 100.0).abs() > 1.0 {
            faults.push(format!("{}: {sum:.2} g", food.key));
        }
    }
    complain(&faults);
}

#[test]
fn energy_is_what_the_foods_own_factors_give() {
    // The tables of origin compute energy by these factors, alcohol at 6.93 kcal/g; a few per cent are roundings.
    let mut faults = Vec::new();
    for (_, food) in larder().foods() {
        let c = &food.composition;
        let (Some(kcal), Some(p), Some(f), Some(h)) =
            (c.energy_kcal, c.protein_factor, c.fat_factor, c.carbohydrate_factor)
        else {
            continue;
        };
        let part = |grams: Option<f64>, factor: f64| grams.unwrap_or(0.0) * factor;
        let sum = part(c.protein_g, p) + part(c.fat_g, f) + part(c.carbohydrate_g, h) + part(c.alcohol_g, 6.93);
        if (sum - kcal).abs() > 12.0 && (sum - kcal).abs() > 0.06 * kcal {
            faults.push(format!("{}: {kcal} kcal, by factors {sum:.0}", food.key));
        }
    }
    complain(&faults);
}

#[test]
fn parts_are_not_more_than_their_whole() {
    let mut faults = Vec::new();
    for (_, food) in larder().foods() {
        let c = &food.composition;
        let over =
            |part: Option<f64>, whole: Option<f64>| part.zip(whole).is_some_and(|(part, whole)| part > whole + 1.0);
        if over(c.saturated_g, c.fat_g) || over(c.fibre_g, c.carbohydrate_g) || over(c.sugars_g, c.carbohydrate_g) {
            faults.push(food.key.clone());
        }
        let minerals_mg = [c.sodium_mg, c.potassium_mg, c.calcium_mg, c.iron_mg]
            .iter()
            .flatten()
            .sum::<f64>();
        if over(Some(minerals_mg / 1000.0), c.ash_g) {
            faults.push(format!("{}: more minerals than ash", food.key));
        }
    }
    complain(&faults);
}

/// Words in a name that give an allergen away, whatever the tables say: from Annex II of Regulation (EU) 1169/2011
/// and the US lists. The second word, when it stands in the name too, takes the suspicion away.
const GIVEAWAYS: [(&str, &[&str], Allergen); 60] = [
    ("celery", &[], Allergen::Celery),
    ("celeriac", &[], Allergen::Celery),
    ("mustard", &["greens"], Allergen::Mustard),
    ("milk", &["coconut", "almond", "soya", "rice", "oat"], Allergen::Milk),
    (
        "cream",
        &["coconut", "tartar", "cracker", "creamed", "cream-style", "ice"],
        Allergen::Milk,
    ),
    (
        "butter",
        &[
            "bean",
            "beans",
            "squash",
            "peanut",
            "almond",
            "nut",
            "cashew",
            "butternut",
            "cocoa",
            "butterhead",
            "lettuce",
            "pumpkin",
            "sunflower",
        ],
        Allergen::Milk,
    ),
    ("cheese", &[], Allergen::Milk),
    ("yogurt", &[], Allergen::Milk),
    ("buttermilk", &[], Allergen::Milk),
    ("ghee", &[], Allergen::Milk),
    ("egg", &["plant", "aubergine"], Allergen::Eggs),
    ("mayonnaise", &[], Allergen::Eggs),
    ("cod", &[], Allergen::Fish),
    ("haddock", &[], Allergen::Fish),
    ("salmon", &[], Allergen::Fish),
    ("anchovy", &[], Allergen::Fish),
    ("tuna", &[], Allergen::Fish),
    ("trout", &[], Allergen::Fish),
    ("fish", &[], Allergen::Fish),
    ("prawn", &[], Allergen::Crustaceans),
    ("crab", &["apple"], Allergen::Crustaceans),
    ("lobster", &[], Allergen::Crustaceans),
    ("crayfish", &[], Allergen::Crustaceans),
    ("langoustine", &[], Allergen::Crustaceans),
    ("mussel", &[], Allergen::Molluscs),
    ("clam", &[], Allergen::Molluscs),
    ("oyster", &["mushroom", "cracker", "vegetable"], Allergen::Molluscs),
    ("scallop", &[], Allergen::Molluscs),
    ("squid", &[], Allergen::Molluscs),
    ("octopus", &[], Allergen::Molluscs),
    ("cuttlefish", &[], Allergen::Molluscs),
    ("whelk", &[], Allergen::Molluscs),
    ("snail", &[], Allergen::Molluscs),
    ("wheat", &["buckwheat"], Allergen::Wheat),
    ("spelt", &[], Allergen::Wheat),
    ("semolina", &[], Allergen::Wheat),
    ("couscous", &[], Allergen::Wheat),
    ("bulgur", &[], Allergen::Wheat),
    ("bread", &["soda", "rye", "gluten-free"], Allergen::Wheat),
    ("baguette", &[], Allergen::Wheat),
    ("breadcrumbs", &[], Allergen::Wheat),
    ("cracker", &["rice"], Allergen::Wheat),
    ("pasta", &["gluten-free", "maize"], Allergen::Wheat),
    ("barley", &[], Allergen::OtherGluten),
    ("rye", &[], Allergen::OtherGluten),
    ("oats", &[], Allergen::OtherGluten),
    ("beer", &["ginger"], Allergen::OtherGluten),
    ("stout", &[], Allergen::OtherGluten),
    ("malt", &[], Allergen::OtherGluten),
    ("peanut", &["oil"], Allergen::Peanuts),
    ("soya", &["oil"], Allergen::Soybeans),
    ("tofu", &[], Allergen::Soybeans),
    ("miso", &[], Allergen::Soybeans),
    ("sesame", &[], Allergen::Sesame),
    ("tahini", &[], Allergen::Sesame),
    ("almond", &[], Allergen::TreeNuts),
    ("hazelnut", &[], Allergen::TreeNuts),
    ("walnut", &["pickled"], Allergen::TreeNuts),
    ("lupin", &[], Allergen::Lupin),
    ("wine", &["vinegar"], Allergen::Sulphites),
];

#[test]
fn no_food_hides_the_allergen_in_its_name() {
    let mut faults = Vec::new();
    for (_, food) in larder().foods() {
        let names = format!("{} {} {}", food.name, food.plural, food.key.replace('_', " ")).to_lowercase();
        let words: Vec<&str> = names.split(|c: char| !c.is_alphanumeric() && c != '-').collect();
        for (word, unless, allergen) in GIVEAWAYS {
            let there = words.contains(&word) && !unless.iter().any(|other| words.contains(other));
            if there && food.contains(allergen) == Contains::No {
                faults.push(format!("{}: {allergen:?} said to be absent", food.key));
            }
        }
    }
    complain(&faults);
}

#[test]
fn what_comes_from_an_animal_is_marked() {
    let animal = |kind: Kind| {
        matches!(
            kind,
            Kind::Meat
                | Kind::Bacon
                | Kind::Poultry
                | Kind::Fish
                | Kind::Shellfish
                | Kind::Egg
                | Kind::Milk
                | Kind::Cheese
        )
    };
    let allergens = [
        Allergen::Milk,
        Allergen::Eggs,
        Allergen::Fish,
        Allergen::Crustaceans,
        Allergen::Molluscs,
    ];
    let mut faults = Vec::new();
    for (_, food) in larder().foods() {
        let holds = allergens
            .iter()
            .any(|allergen| food.contains(*allergen) == Contains::Yes);
        let cholesterol = food.composition.cholesterol_mg.unwrap_or(0.0) > 5.0;
        let plant_milk = food.kind == Kind::Milk && food.contains(Allergen::Milk) == Contains::No;
        if (animal(food.kind) && !plant_milk || holds || cholesterol) && !food.animal {
            faults.push(food.key.clone());
        }
    }
    complain(&faults);
}

#[test]
fn what_must_be_made_safe_says_by_which_rule() {
    let wants = |food: &Food| match food.kind {
        Kind::Meat | Kind::Bacon | Kind::Poultry | Kind::Fish | Kind::Shellfish | Kind::Egg | Kind::Sausage => true,
        _ => food.key.starts_with("beans_kidney") && food.state == State::Dried,
    };
    let larder = larder();
    let missing = larder
        .foods()
        .filter(|(_, food)| wants(food) && food.behaviour.hazard.is_none());
    complain(&missing.map(|(_, food)| food.key.clone()).collect::<Vec<_>>());
}

#[test]
fn a_solid_that_softens_has_a_shape() {
    let larder = larder();
    let missing = larder
        .foods()
        .filter(|(_, food)| food.behaviour.softens.is_some() && food.behaviour.shape.is_none());
    complain(&missing.map(|(_, food)| food.key.clone()).collect::<Vec<_>>());
}

/// Whether a food is poured as it is bought.
fn is_liquid(food: &Food) -> bool {
    let poured = matches!(
        food.kind,
        Kind::Stock | Kind::Vinegar | Kind::Wine | Kind::Beer | Kind::Spirit | Kind::Oil | Kind::Water | Kind::Milk
    );
    let juice = food.key.ends_with("_juice");
    (poured || juice) && !matches!(food.state, State::Dried | State::Frozen)
}

/// Grams per millilitre at 20 °C of a mixture without air: one over the sum of share by density. Densities of water,
/// protein, fat, carbohydrate, fibre and ash by the polynomials of Choi and Okos as in ASHRAE Refrigeration (2006)
/// chapter 9, table 1; ethanol 0.789 g/ml (from memory).
fn by_composition(food: &Food) -> f64 {
    let c = &food.composition;
    let fibre = c.fibre_g.unwrap_or(0.0);
    let carbohydrate = c.carbohydrate_g.unwrap_or(0.0) - fibre;
    let t = 20.0;
    let parts = [
        (c.water_g.unwrap_or(0.0), 0.99718 + 3.1439e-6 * t - 3.7574e-6 * t * t),
        (c.protein_g.unwrap_or(0.0), 1.3299 - 5.184e-4 * t),
        (c.fat_g.unwrap_or(0.0), 0.92559 - 4.1757e-4 * t),
        (carbohydrate, 1.5991 - 3.1046e-4 * t),
        (fibre, 1.3115 - 3.6589e-4 * t),
        (c.ash_g.unwrap_or(0.0), 2.4238 - 2.8063e-4 * t),
        (c.alcohol_g.unwrap_or(0.0), 0.789),
    ];
    let grams: f64 = parts.iter().map(|(grams, _)| grams).sum();
    let millilitres: f64 = parts.iter().map(|(grams, density)| grams / density).sum();
    grams / millilitres
}

#[test]
fn a_liquid_weighs_what_a_liquid_can_weigh() {
    // From oil to honey. And a cup of it weighs within 5 % of what its parts weigh: the rows of origin are rounded
    // measurements, and sour milks hold a little air.
    let (mut faults, mut seen) = (Vec::new(), 0);
    for (_, food) in larder().foods().filter(|(_, food)| is_liquid(food)) {
        let Some(density) = food.density("").map(|heaped| heaped.g_per_ml.mid) else {
            continue;
        };
        seen += 1;
        let expected = by_composition(food);
        if !(0.9..=1.45).contains(&density) || (density / expected - 1.0).abs() > 0.05 {
            faults.push(format!("{}: {density:.3} g/ml, by its parts {expected:.3}", food.key));
        }
    }
    assert!(seen > 100, "only {seen} liquids have a density");
    complain(&faults);
}

#[test]
fn what_is_sour_says_how_sour() {
    // 5 % acetic acid counts as 5 × (192.12 / 3) / 60.05 = 5.33 g citric acid to 100 g: three acid groups against one.
    let acid = |key: &str| Larder::built_in().by_key(key).and_then(|food| food.behaviour.acid_g);
    let white = acid("vinegar_white").expect("distilled vinegar has its acid");
    assert!((white - 5.0 * 192.12 / 3.0 / 60.05).abs() < 0.05, "{white}");
    let larder = larder();
    let without = larder
        .foods()
        .filter(|(_, food)| food.kind == Kind::Vinegar && food.behaviour.acid_g.is_none_or(|acid_g| acid_g < 1.0));
    complain(&without.map(|(_, food)| food.key.clone()).collect::<Vec<_>>());
}

#[test]
fn names_of_two_foods_are_marked_as_shared() {
    let larder = larder();
    let mut borne: Vec<(String, &str)> = Vec::new();
    for (_, food) in larder.foods() {
        for name in food.synonyms.iter().filter(|name| !name.starts_with('?')) {
            borne.push((name.to_lowercase().replace('-', " "), food.key.as_str()));
        }
    }
    borne.sort_unstable();
    let twice = borne
        .windows(2)
        .filter(|pair| pair[0].0 == pair[1].0 && pair[0].1 != pair[1].1);
    complain(
        &twice
            .map(|pair| format!("{} of {} and {}", pair[0].0, pair[0].1, pair[1].1))
            .collect::<Vec<_>>(),
    );
}

#[test]
fn what_has_no_source_has_a_wide_spread() {
    // 'common practice, no source' goes with at least ×/÷1.5; a share cannot go above one.
    let tables = [
        ("weights_own.tsv", Tables::BUILT_IN.weights_own, 3),
        ("behaviour.tsv", Tables::BUILT_IN.behaviour, 2),
        ("kinds.tsv", Tables::BUILT_IN.kinds, 4),
    ];
    let mut faults = Vec::new();
    for (file, text, low) in tables {
        for line in text.lines().filter(|line| !line.starts_with('#')) {
            let cells: Vec<&str> = line.split('\t').collect();
            let number = |place: usize| cells.get(place).and_then(|cell| cell.parse::<f64>().ok());
            let (Some(low), Some(mid), Some(high)) = (number(low), number(low + 1), number(low + 2)) else {
                continue;
            };
            let unsourced = cells
                .last()
                .is_some_and(|source| source.starts_with("common practice, no source"));
            // Figures are rounded to three decimals.
            let wide = low <= mid / 1.49 + 0.001 && (high >= mid * 1.49 - 0.001 || high == 1.0);
            if unsourced && mid > 0.0 && !wide {
                faults.push(format!("{file}: {line}"));
            }
        }
    }
    complain(&faults);
}

#[test]
fn a_fault_names_its_file_and_line() {
    let check = |change: &dyn Fn(&mut Tables<'static>), file: &str, line: usize, fault: &dyn Fn(&Fault) -> bool| {
        let mut tables = Tables::BUILT_IN;
        change(&mut tables);
        let error = Larder::from_tables(&tables).expect_err("a fault was put in");
        assert_eq!((error.file.as_str(), error.line), (file, line), "{error}");
        assert!(fault(&error.fault), "{error}");
    };
    check(
        &|t| t.packs = "key\tmarket\tpack\tgrams\tsource\nno_such_food\tuk\tbag\t1\tx\n",
        "packs.tsv",
        2,
        &|fault| matches!(fault, Fault::UnknownKey(key) if key == "no_such_food"),
    );
    check(
        &|t| t.packs = "key\tmarket\tpack\tgrams\tsource\nonion\tmoon\tbag\t1\tx\n",
        "packs.tsv",
        2,
        &|fault| matches!(fault, Fault::UnknownWord("market", _)),
    );
    check(
        &|t| t.refuse_own = "key\tshare\tsource\n# note\nonion\t1.5\tx\n",
        "refuse_own.tsv",
        3,
        &|fault| matches!(fault, Fault::Number("share", _, _)),
    );
    check(
        &|t| t.keeping = "key\tlow_days\thigh_days\tsource\nonion\t9\t3\tx\n",
        "keeping.tsv",
        2,
        &|fault| *fault == Fault::Order,
    );
    check(
        &|t| t.allergens = "key\tallergen\tcontains\tsource\nonion\tmilk\tyes\t\n",
        "allergens.tsv",
        2,
        &|fault| *fault == Fault::Empty("source"),
    );
    check(&|t| t.composition = "key\tsource\n", "composition.tsv", 1, &|fault| {
        matches!(fault, Fault::Header(_))
    });
    check(
        &|t| t.words = "words\tclass\tstands_for\tsource\nx\tsilly\t\ty\n",
        "words.tsv",
        2,
        &|fault| matches!(fault, Fault::UnknownWord("class", _)),
    );
}
