//! Dishes that use dishes: order, circles, what is kept, what a name means.

use potwright_book::{Book, SourceFile};
use potwright_house::{House, HouseError};

use super::house;

const STOCK: &str = "Brown onion stock\n\nMakes about 1 litre\n\n1 kg onions, sliced\n1.5 litres water\n20 g salt\n\n\
    Put the onions, the water and the salt in a large pot, bring to the boil and simmer, covered, for 40 minutes. Strain.\n";
const SOUP: &str = "Barley broth\n\nServes 4\n\n1 litre brown onion stock\n100 g pearl barley\n\n\
    Put the stock and the barley in a large pot, bring to the boil and simmer, covered, for 40 minutes.\n";
const SALAD: &str =
    "Tomato salad\n\nServes 2\n\n500 g tomatoes, sliced\n1 tbsp olive oil\n\nMix the tomatoes and the oil in a bowl.\n";

#[test]
fn a_dish_takes_what_another_has_made() {
    let house = house(&[("1", SOUP), ("2", STOCK)]);
    let soup = house.reckon(0).expect("cooks");
    let stock = house.reckon(1).expect("cooks");
    let made = soup
        .reckoned
        .process
        .lots
        .iter()
        .filter(|lot| matches!(lot.source, potwright_pot::Source::Made(_)));
    assert_eq!(made.count(), 1, "{:?}", soup.reckoned.process.lots);
    // 20 g of salt in some 1.4 kg of stock; none is added to the soup, so a litre of it brings its share.
    let salt = |percent: f64| (0.5..2.0).contains(&percent);
    assert!(
        salt(stock.reckoned.dossier.liquid_salinity.value),
        "{:?}",
        stock.reckoned.dossier.liquid_salinity
    );
    assert!(
        soup.reckoned.dossier.salinity.value > 0.5,
        "{:?}",
        soup.reckoned.dossier.salinity
    );
}

#[test]
fn every_dish_is_cooked_once() {
    let house = house(&[("1", SOUP), ("2", STOCK), ("3", SALAD)]);
    let all = house.reckon_all();
    assert!(all.iter().all(Result::is_ok));
    assert_eq!(house.times_cooked(), 3);
    house.reckon(0).expect("kept");
    assert_eq!(house.times_cooked(), 3);
}

#[test]
fn an_edit_cooks_again_what_hangs_on_it_and_nothing_else() {
    let mut house = house(&[("1", SOUP), ("2", STOCK), ("3", SALAD)]);
    _ = house.reckon_all();
    house.edit(0, &SOUP.replace("100 g", "120 g"));
    _ = house.reckon_all();
    assert_eq!(house.times_cooked(), 4, "the soup");
    house.edit(1, &STOCK.replace("20 g salt", "10 g salt"));
    let all = house.reckon_all();
    assert_eq!(house.times_cooked(), 6, "the stock and the soup");
    house.edit(1, STOCK);
    assert_ne!(
        all[0],
        house.reckon_all()[0],
        "less salt in the stock shows in the soup"
    );
    assert_eq!(house.times_cooked(), 6, "as before: kept");
}

#[test]
fn circles_name_their_dishes_and_stop_no_other() {
    let one = "Red sauce\n\n200 ml brown gravy\n100 g tomatoes\n\nSimmer the gravy and the tomatoes for 10 minutes.\n";
    let two = "Brown gravy\n\n200 ml red sauce\n100 g onions\n\nSimmer the sauce and the onions for 10 minutes.\n";
    let three = "Pie\n\n300 ml brown gravy\n500 g potatoes\n\nSimmer the potatoes in the gravy for 20 minutes.\n";
    let house = house(&[("1", one), ("2", two), ("3", three), ("4", SALAD)]);
    let all = house.reckon_all();
    for (dish, result) in all.iter().take(3).enumerate() {
        let Err(HouseError::Circle(titles)) = result else {
            panic!("{dish}: {:?}", result.is_ok())
        };
        let mut titles = titles.clone();
        titles.sort();
        assert_eq!(titles, ["Brown gravy", "Red sauce"], "{dish}");
    }
    assert!(all[3].is_ok());
    let error = HouseError::Circle(vec!["Red sauce".into(), "Brown gravy".into()]);
    assert_eq!(
        error.to_string(),
        "none of these can be cooked first, each uses the next: 'Red sauce' → 'Brown gravy' → 'Red sauce'"
    );
}

#[test]
fn a_page_outside_the_book_may_use_its_dishes() {
    let house = house(&[("2", STOCK)]);
    let soup = house.reckon_page(SOUP).expect("cooks");
    assert!(soup.reckoned.dossier.salinity.value > 0.5);
}

#[test]
fn a_dish_is_found_by_number_title_or_part_of_it() {
    let house = house(&[("1", SOUP), ("2", STOCK), ("3", SALAD)]);
    assert_eq!(house.find("2"), Ok(1));
    assert_eq!(house.find("tomato SALAD"), Ok(2));
    assert_eq!(house.find("broth"), Ok(0));
    assert_eq!(house.find("0"), Err(HouseError::NoSuchDish("0".into())));
    assert_eq!(house.find("pie"), Err(HouseError::NoSuchDish("pie".into())));
    assert!(matches!(house.find("o"), Err(HouseError::SeveralDishes(..))));
}

#[test]
fn the_same_content_gives_the_same_figures() {
    let with_draws = || house(&[("1", SOUP), ("2", STOCK)]).with_draws(8);
    let (one, other) = (with_draws(), with_draws());
    for dish in 0..2 {
        let json = |house: &House| format!("{:?}", house.reckon(dish).expect("cooks").reckoned.dossier);
        assert_eq!(json(&one), json(&other));
    }
}

#[test]
fn prices_that_find_no_food_are_told_with_their_line() {
    let files = [
        ("dishes/a.txt", SALAD),
        (
            "prices.tsv",
            "name\tamount\tunit\tprice\nolive oil\t1\tlitre\t9\nmoon dust\t1\tkg\t1\n",
        ),
    ];
    let files = files.map(|(name, text)| SourceFile {
        name: name.into(),
        bytes: text.as_bytes().to_vec(),
    });
    let house = House::open(Book::of(files.to_vec()).expect("sound")).with_draws(0);
    let [note] = house.notes() else {
        panic!("one note, not {:?}", house.notes())
    };
    assert!(note.starts_with("prices.tsv, line 3: "), "{note}");
    assert!(note.contains("'moon dust'"), "{note}");
    assert_eq!(house.reckon(0).expect("cooks").reckoned.dossier.unpriced.len(), 1);
}
