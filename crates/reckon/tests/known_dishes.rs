//! Thirty dishes whose nutrients the USDA publishes, from grams of ingredients to the declaration of 100 g.
//!
//! Weights, water gained or lost and retention codes are published with the nutrients (USDA FNDDS 2019–2020 At A
//! Glance); foods are composed by USDA SR28, dishes in dishes as published. A value is right when it is off by no more
//! than 2 % or one step of the published figure. Those that are not stand in `misses.tsv`, each with its reason: the
//! list is exact, so that a value that goes wrong shows, and one that comes right too.

use std::collections::{BTreeMap, BTreeSet};

use potwright_larder::Composition;
use potwright_larder::official::COLUMNS;
use potwright_pot::{Nutrient, make_up_100_g};
use potwright_reckon::{ByWeight, Part, by_weight};

const DISHES: &str = include_str!("known_dishes/dishes.tsv");
const INGREDIENTS: &str = include_str!("known_dishes/ingredients.tsv");
const FOODS: &str = include_str!("known_dishes/foods.tsv");
const RETENTION: &str = include_str!("known_dishes/retention.tsv");
const MISSES: &str = include_str!("known_dishes/misses.tsv");

/// Row of the declaration, column of the tables, one step of the published figure.
const JUDGED: [(&str, &str, f64); 17] = [
    ("Water", "water_g", 0.01),
    ("Energy", "energy_kcal", 1.0),
    ("Protein", "protein_g", 0.01),
    ("Fat", "fat_g", 0.01),
    ("of which saturates", "saturated_g", 0.001),
    ("Carbohydrate with fibre", "carbohydrate_g", 0.01),
    ("Fibre", "fibre_g", 0.1),
    ("of which sugars", "sugars_g", 0.01),
    ("Alcohol", "alcohol_g", 0.1),
    ("Sodium", "sodium_mg", 1.0),
    ("Potassium", "potassium_mg", 1.0),
    ("Calcium", "calcium_mg", 1.0),
    ("Iron", "iron_mg", 0.01),
    ("Cholesterol", "cholesterol_mg", 1.0),
    ("Vitamin A", "vitamin_a_ug", 1.0),
    ("Vitamin C", "vitamin_c_mg", 0.1),
    ("Vitamin D", "vitamin_d_ug", 0.1),
];

/// The share a value may be off, where that is more than its step.
const WITHIN: f64 = 0.02;

/// A row of a table by the names of its columns.
type Row = BTreeMap<&'static str, &'static str>;

fn rows(table: &'static str) -> Vec<Row> {
    let mut lines = table.lines().filter(|line| !line.starts_with('#'));
    let heads: Vec<&str> = lines.next().expect("a header").split('\t').collect();
    let row = |line: &'static str| {
        let cells: Vec<&str> = line.split('\t').collect();
        assert_eq!(cells.len(), heads.len(), "{line}");
        assert!(cells.last().is_some_and(|source| !source.is_empty()), "{line}");
        heads.iter().copied().zip(cells).collect()
    };
    lines.map(row).collect()
}

/// The number of a cell; none when it is empty.
fn number(row: &Row, column: &str) -> Option<f64> {
    let cell = row[column];
    (!cell.is_empty()).then(|| cell.parse().unwrap_or_else(|_| panic!("no number: {cell}")))
}

fn by_code(table: &'static str) -> BTreeMap<&'static str, Row> {
    rows(table).into_iter().map(|row| (row["code"], row)).collect()
}

fn composition(row: &Row) -> Composition {
    Composition::from_figures(&COLUMNS.map(|(column, _)| number(row, column)))
}

fn part(food: &Row, grams: f64, retention: Option<&Row>) -> Part {
    let mut part = Part::whole(make_up_100_g(&composition(food), None).scaled(grams / 100.0));
    let Some(retention) = retention else {
        return part;
    };
    let share = |column| number(retention, column).expect("a factor") / 100.0;
    for (column, nutrient) in [
        ("calcium_mg", Nutrient::CalciumMg),
        ("iron_mg", Nutrient::IronMg),
        ("potassium_mg", Nutrient::PotassiumMg),
        ("vitamin_a_ug", Nutrient::VitaminAUg),
        ("vitamin_c_mg", Nutrient::VitaminCMg),
    ] {
        part.kept[nutrient as usize] = share(column);
    }
    part.salt_kept = share("sodium_mg");
    part.alcohol_kept = share("alcohol_g");
    part
}

/// Every dish with its row of published figures, as our path has it.
fn dishes() -> Vec<(Row, ByWeight)> {
    let (foods, retention) = (by_code(FOODS), by_code(RETENTION));
    let ingredients = rows(INGREDIENTS);
    let dish = |row: Row| {
        let mut weighed_g = 0.0;
        let mut parts = Vec::new();
        for line in ingredients.iter().filter(|line| line["dish"] == row["code"]) {
            let grams = number(line, "grams").expect("grams");
            let factors = (line["retention"] != "0").then(|| &retention[line["retention"]]);
            weighed_g += grams;
            parts.push(part(&foods[line["food"]], grams, factors));
        }
        let gained_g = weighed_g * number(&row, "moisture_percent").expect("a percentage") / 100.0;
        let dish = by_weight(&parts, gained_g / 1000.0);
        (row, dish)
    };
    rows(DISHES).into_iter().map(dish).collect()
}

fn ours(dish: &ByWeight, row: &str) -> f64 {
    match row {
        "Water" => dish.water_per_100_g(),
        // A dish without alcohol has no row for it.
        row => dish.per_100_g(row).unwrap_or(0.0),
    }
}

#[test]
fn the_declaration_is_what_is_published() {
    let dishes = dishes();
    assert_eq!(dishes.len(), 30);
    let mut off = BTreeSet::new();
    for (row, dish) in &dishes {
        for (name, column, step) in JUDGED {
            let published = number(row, column).expect("a published figure");
            let ours = ours(dish, name);
            // A hair more, because steps are no binary fractions.
            if (ours - published).abs() > (WITHIN * published).max(step) + 1e-9 {
                println!(
                    "{} {}, {name}: published {published}, ours {ours:.4}",
                    row["code"], row["dish"]
                );
                off.insert((row["code"], name));
            }
        }
    }
    let listed: BTreeSet<_> = rows(MISSES).iter().map(|row| (row["dish"], row["nutrient"])).collect();
    let new: Vec<_> = off.difference(&listed).collect();
    let gone: Vec<_> = listed.difference(&off).collect();
    assert!(new.is_empty(), "off, and not listed: {new:?}");
    assert!(gone.is_empty(), "listed, and not off: {gone:?}");
}

/// What a dish weighs is what went in, the water gained or lost, less the salt that its factors let go.
#[test]
fn only_water_and_salt_go() {
    let (foods, retention, ingredients) = (by_code(FOODS), by_code(RETENTION), rows(INGREDIENTS));
    for (row, dish) in dishes() {
        let (mut weighed_g, mut salt_lost_g) = (0.0, 0.0);
        for line in ingredients.iter().filter(|line| line["dish"] == row["code"]) {
            let grams = number(line, "grams").expect("grams");
            let sodium_mg = number(&foods[line["food"]], "sodium_mg").unwrap_or(0.0);
            let factors = retention.get(line["retention"]);
            let kept = factors
                .and_then(|factors| number(factors, "sodium_mg"))
                .unwrap_or(100.0);
            weighed_g += grams;
            // Molar masses of NaCl and Na.
            salt_lost_g += grams / 100.0 * sodium_mg / 1000.0 * 58.443 / 22.990 * (1.0 - kept / 100.0);
        }
        let gained = number(&row, "moisture_percent").expect("a percentage") / 100.0;
        let finished_g = weighed_g * (1.0 + gained) - salt_lost_g;
        let error = dish.whole.total_kg() * 1000.0 / finished_g - 1.0;
        assert!(error.abs() < 1e-6, "{}: {error}", row["dish"]);
    }
}
