//! Menus and the house's stock: what is written is read again as the same, and no bytes bring the reader down.

use potwright_book::menu::{self, Menu, MenuDish};
use potwright_book::prices::{self, PriceLine};
use potwright_book::stock::{self, Stock, StockLine};
use potwright_measure::{Exact, Money, Unit};
use proptest::prelude::*;

/// Words that are no list mark, no bracket, and begin and end with a letter.
fn words() -> impl Strategy<Value = String> {
    "[A-Za-zé]{1,8}( [a-zé'’,&½-]{1,8}){0,3} [a-z]{2,8}"
}

fn note() -> impl Strategy<Value = Option<String>> {
    proptest::option::of("[a-z0-9,;.]{1,9}( [a-z0-9()]{1,9}){0,3}")
}

fn any_menu() -> impl Strategy<Value = Menu> {
    let dish = (words(), note()).prop_map(|(name, note)| MenuDish { name, note });
    let day = proptest::option::of("(Monday|Saturday|13|the) [a-z]{1,8}( December)?");
    let notes = proptest::collection::vec("[a-z0-9]{1,9}( [a-z0-9()]{1,9}){0,3}", 0..3);
    (
        words(),
        day,
        1_u32..=menu::MOST_PEOPLE,
        proptest::collection::vec(dish, 1..8),
        notes,
    )
        .prop_filter_map(
            "a dish stands once, and a day is not a number of people",
            |(title, day, people, dishes, notes)| {
                let mut names: Vec<String> = dishes.iter().map(|dish| dish.name.to_lowercase()).collect();
                names.sort();
                names.dedup();
                (names.len() == dishes.len()).then_some(Menu {
                    title,
                    day,
                    people,
                    dishes,
                    notes,
                })
            },
        )
}

fn any_exact() -> impl Strategy<Value = Exact> {
    (1_i64..5000, 1_i64..40).prop_filter_map("a number", |(above, below)| Exact::ratio(above, below))
}

fn any_unit() -> impl Strategy<Value = Option<Unit>> {
    proptest::option::of(proptest::sample::select(Unit::ALL.to_vec()))
}

fn any_stock() -> impl Strategy<Value = Stock> {
    let remarks = || proptest::collection::vec("[a-z0-9]{0,6}( [a-z0-9]{1,6}){0,2}", 0..3).prop_map(trimmed);
    let own = proptest::collection::vec("[a-z]{0,6}", 0..3);
    let line = (remarks(), words(), proptest::option::of(any_exact()), any_unit(), own);
    let columns = proptest::collection::vec("[a-z]{1,6}", 2..4);
    (columns, proptest::collection::vec(line, 0..6), remarks()).prop_map(|(own_columns, lines, remarks)| {
        let mut stock = Stock {
            own_columns,
            lines: Vec::new(),
            remarks,
        };
        for (remarks, name, amount, unit, mut own) in lines {
            // Empty cells at the end of a line are not told from cells that are not there.
            while own.last().is_some_and(String::is_empty) {
                own.pop();
            }
            if stock.lines.iter().all(|other| other.name != name) {
                stock.lines.push(StockLine {
                    remarks,
                    name,
                    amount,
                    unit,
                    own,
                });
            }
        }
        stock
    })
}

fn trimmed(remarks: Vec<String>) -> Vec<String> {
    remarks.into_iter().map(|remark| remark.trim().to_owned()).collect()
}

proptest! {
    #[test]
    fn a_menu_written_is_the_menu_read(menu in any_menu()) {
        let page = menu::write(&menu);
        let read = menu::read("m.txt", &page);
        prop_assert_eq!(read.map(|page| page.menu), Ok(menu), "{}", page);
    }

    #[test]
    fn a_stock_written_is_the_stock_read(stock in any_stock()) {
        let table = stock::write(&stock);
        prop_assert_eq!(stock::read(&table).map(|(stock, _)| stock), Ok(stock), "{}", table);
    }

    #[test]
    fn a_price_list_written_is_the_list_read(
        rows in proptest::collection::btree_map(words(), (any_exact(), any_unit(), 0_i64..100_000), 0..6)
    ) {
        let lines: Vec<PriceLine> = rows
            .into_iter()
            .enumerate()
            .map(|(at, (name, (amount, unit, hundredths)))| PriceLine {
                line: at + 2,
                name,
                amount,
                unit,
                price: Money::from_units(Exact::ratio(hundredths, 100).unwrap_or(Exact::ZERO).to_f64()),
            })
            .collect();
        prop_assert_eq!(prices::read(&prices::write(&lines)), Ok(lines));
    }

    /// Reading what was read and written gives the same again, whatever the page was.
    #[test]
    fn any_page_is_read_or_refused(page in "([A-Za-z0-9\\[\\] \t#-]{0,12}|For [0-9]{1,3}|name\tamount\tunit|\n|\\PC){0,20}") {
        if let Ok(read) = menu::read("m.txt", &page) {
            prop_assert_eq!(menu::read("m.txt", &menu::write(&read.menu)).map(|again| again.menu), Ok(read.menu));
        }
        if let Ok((read, _)) = stock::read(&page) {
            prop_assert_eq!(stock::read(&stock::write(&read)).map(|(again, _)| again), Ok(read));
        }
    }
}
