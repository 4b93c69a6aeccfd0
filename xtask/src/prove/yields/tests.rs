//! The pages are read whole and balance; the list of a page is held to the published one.

use potwright_book::Book;

use super::super::fndds::Line;
use super::*;

/// The list has 100 + 50.5 g; '2 g' inside a sentence of the method is no line of the list.
#[test]
fn a_list_gives_its_grams() {
    let text = "Soup\n\n100 g water\n50.5 g leeks, sliced\n\nSimmer. Add 2 g salt.\n";
    assert_eq!(grams(text), [100.0, 50.5]);
}

#[test]
fn another_list_is_no_proof() {
    let line = |grams: f64| Line {
        code: "14411".into(),
        grams,
        factor: "0".into(),
        moisture_percent: -10.0,
    };
    let dish = Dish {
        code: "1".into(),
        name: "soup".into(),
        lines: vec![line(50.54), line(100.0)],
    };
    assert!(same_grams("100 g water\n50.5 g leeks\n", &dish).is_ok());
    assert!(same_grams("100 g water\n50.6 g leeks\n", &dish).is_err());
    assert!(same_grams("100 g water\n", &dish).is_err());
}

/// All amounts of all pages are read; and what is in, less what is lost, is what is made, as masses must.
#[test]
fn pages_are_read_and_balance() {
    let house = House::open(Book::default()).with_draws(0);
    for page in &PAGES {
        let cooked = house.reckon_page(page.text).expect("a page that is read");
        all_weighed(&cooked, page.text).expect(page.code);
        let (process, trace) = (&cooked.reckoned.process, &cooked.reckoned.trace);
        let lost = Lost::of(process, trace);
        let gone = lost.sum_g();
        let unused: f64 = process.lots.iter().map(|lot| lot.mass.grams()).sum::<f64>()
            - 1000.0 * (trace.ledger.put_in.total_kg() + trace.ledger.inedible_in_kg);
        let ours = 1000.0 * cooked.reckoned.dossier.yield_mass.value;
        let listed: f64 = grams(page.text).iter().sum();
        assert!(
            (listed - unused - gone - ours).abs() < 1.0,
            "{}: {listed} − {unused} − {gone} is not {ours}",
            page.code
        );
        assert!(lost.else_g > -1.0, "{}: {lost:?}", page.code);
    }
}

#[test]
fn the_median_lies_in_the_middle() {
    assert_eq!(middle(vec![3.0, 1.0, 2.0]), 2.0);
    assert_eq!(middle(vec![4.0, 1.0, 2.0, 3.0]), 2.5);
}
