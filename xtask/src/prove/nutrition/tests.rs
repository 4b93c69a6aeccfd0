//! The proof's own arithmetic on a hand-made publication, and the carried dishes against the files.

use std::collections::BTreeMap;
use std::fs;

use super::super::fndds::place;
use super::*;
use crate::larder::rows;
use crate::tree;

fn figures(cells: &[(&str, f64)]) -> crate::larder::official::Figures {
    let mut figures = crate::larder::official::Figures::default();
    for (column, figure) in cells {
        figures[place(column).expect("a column")] = Some(*figure);
    }
    figures
}

fn line(code: &str, grams: f64) -> Line {
    Line {
        code: code.into(),
        grams,
        factor: "0".into(),
        moisture_percent: -20.0,
    }
}

fn dish(code: &str, name: &str, lines: Vec<Line>) -> (String, Dish) {
    let dish = Dish {
        code: code.into(),
        name: name.into(),
        lines,
    };
    (code.into(), dish)
}

/// A stock and a leaf in water. The leaf's table says 100 mg of potassium, the publication reckons by 60: leaf alone,
/// 100 g less 20 g of water, is published with 60 ÷ 0.8 = 75 mg; soup of 100 g of leaf and twice 50 g of water, less
/// 40 g, with 60 ÷ 1.6 = 37.5 mg, where the table makes it 100 ÷ 1.6 = 62.5 mg.
fn publication() -> Fndds {
    let leaf = figures(&[("water_g", 90.0), ("carbohydrate_g", 10.0), ("potassium_mg", 100.0)]);
    let published = |potassium_mg| figures(&[("potassium_mg", potassium_mg)]);
    Fndds {
        dishes: BTreeMap::from([
            dish("10000001", "Leaf, cooked", vec![line("00001", 100.0)]),
            dish(
                "10000002",
                "Leaf SOUP, with much water",
                vec![line("00001", 100.0), line("00002", 50.0), line("00003", 50.0)],
            ),
            dish(
                "10000003",
                "Soup of two",
                vec![line("00001", 100.0), line("00002", 50.0)],
            ),
        ]),
        figures: BTreeMap::from([
            ("00001".into(), leaf),
            ("00002".into(), figures(&[("water_g", 100.0), ("potassium_mg", 0.0)])),
            ("00003".into(), figures(&[("water_g", 100.0), ("potassium_mg", 0.0)])),
            ("10000001".into(), published(75.0)),
            ("10000002".into(), published(37.5)),
        ]),
        factors: BTreeMap::new(),
    }
}

fn potassium() -> &'static Judged {
    JUDGED
        .iter()
        .find(|judged| judged.row == "Potassium")
        .expect("it is judged")
}

#[test]
fn dishes_are_chosen_by_name_and_length() {
    let publication = publication();
    let codes: Vec<&str> = chosen(&publication).iter().map(|dish| dish.code.as_str()).collect();
    assert_eq!(codes, ["10000002"]);
    assert_eq!(short("Beef stew with potatoes; gravy"), "Beef stew");
}

#[test]
fn a_value_that_is_off_is_borne_out_by_another_dish() {
    let publication = publication();
    let soups = chosen(&publication);
    let found = outcome(&publication, &soups, potassium()).expect("it is worked out");
    assert_eq!((found.values, found.within), (1, 0));
    let miss = &found.misses[0];
    assert!((miss.ours - 62.5).abs() < 1e-9, "{}", miss.ours);
    assert!(miss.reason.borne_out);
    assert_eq!(
        miss.reason.says,
        "NDB 00001: 60.0 in dish 10000001, 100 in SR28; with that 37.5"
    );
}

#[test]
fn a_dish_bears_no_witness_for_itself() {
    let mut publication = publication();
    publication.dishes.remove("10000001");
    let soups = chosen(&publication);
    let found = outcome(&publication, &soups, potassium()).expect("it is worked out");
    assert!(!found.misses[0].reason.borne_out);
    assert!(found.misses[0].reason.says.starts_with("not found"));
}

#[test]
fn a_food_or_a_factor_that_is_missing_is_an_error() {
    let mut publication = publication();
    let soup = publication.dishes["10000002"].clone();
    publication.figures.remove("00002");
    assert!(reckoned(&publication, &soup, &Revised::default()).is_err());
    let mut line = line("00001", 1.0);
    line.factor = "77".into();
    assert!(part(&publication, &line, &Revised::default()).is_err());
}

#[test]
fn within_is_two_percent_or_a_step() {
    assert!(potassium().holds(102.0, 100.0) && !potassium().holds(102.1, 100.0));
    assert!(potassium().holds(11.0, 10.0) && !potassium().holds(11.1, 10.0));
}

/// The figures that the tests of the crate carry are those of the files.
#[test]
fn carried_dishes_are_the_files_own() {
    let Some(folder) = std::env::var_os(FOLDER) else {
        println!("not run: {FOLDER} names no folder with the official files");
        return;
    };
    let fndds = Fndds::read(Path::new(&folder)).expect("the files are read");
    let carried = tree::root().expect("a root").join("crates/reckon/tests/known_dishes");
    let table = |name: &str| fs::read_to_string(carried.join(name)).expect("the table is there");
    let figures = |name: &str, codes: &mut dyn FnMut(&str)| {
        let text = table(name);
        let heads: Vec<&str> = text
            .lines()
            .find(|line| line.starts_with("code"))
            .expect("heads")
            .split('\t')
            .collect();
        for row in rows(&text) {
            codes(row[0]);
            for (head, cell) in heads.iter().zip(&row).filter(|(head, _)| place(head).is_some()) {
                let (ours, theirs) = (cell.parse::<f64>().ok(), fndds.figure(row[0], head));
                let same = match (ours, theirs) {
                    (Some(ours), Some(theirs)) => {
                        (ours - theirs).abs() < 0.005 + 1e-9 && (*head == "ash_g" || ours == theirs)
                    }
                    (ours, theirs) => ours == theirs,
                };
                assert!(same, "{name}, {} {head}: {ours:?}, {theirs:?}", row[0]);
            }
        }
    };
    let mut dishes = Vec::new();
    figures("dishes.tsv", &mut |code| dishes.push(code.to_owned()));
    figures("foods.tsv", &mut |_| ());
    let text = table("ingredients.tsv");
    let mut lines = rows(&text);
    for code in &dishes {
        for line in &fndds.dishes[code].lines {
            let row = lines.next().expect("a line");
            assert_eq!([row[0], row[1], row[3]], [code, &line.code, &line.factor]);
            assert_eq!(row[2].parse(), Ok(line.grams), "{code} {}", line.code);
        }
    }
    assert!(lines.next().is_none());
    for row in rows(&table("dishes.tsv")) {
        let same = |line: &Line| row[2].parse() == Ok(line.moisture_percent);
        assert!(fndds.dishes[row[0]].lines.iter().all(same), "{}", row[0]);
    }
    for row in rows(&table("retention.tsv")) {
        let carried: Vec<f64> = row[1..8].iter().map(|cell| cell.parse().expect("a factor")).collect();
        assert_eq!(carried, fndds.factors[row[0]], "{}", row[0]);
    }
}
