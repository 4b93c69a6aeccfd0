//! Converting a page and reading menus.

use crate::bench::{Bench, SOUP};

#[test]
fn a_page_for_more_people_says_what_the_method_does_not_solve() {
    let bench = Bench::new("convert");
    bench.put("soup.txt", SOUP.as_bytes());
    let done = bench.run(&["convert", "soup.txt", "--for", "40", "--measures", "metric"]);
    assert_eq!(done.code, Some(0), "{}", done.err);
    // Ten times as many people: ten times 3 leeks, 300 g and 1 litre.
    for line in ["30 leeks, sliced", "3 kg potatoes, diced", "10 litres vegetable stock"] {
        assert!(done.out.contains(line), "{line}\n{}", done.out);
    }
    assert!(done.out.contains("plain factor method"));
    assert!(done.out.contains("What this method does not solve"));
    assert!(done.out.lines().all(|line| line.chars().count() <= 80));
    assert_eq!(bench.files(), ["soup.txt"], "nothing is written");
}

#[test]
fn a_conversion_to_nothing_and_for_nobody_is_refused() {
    let bench = Bench::new("convert-faults");
    bench.put("soup.txt", SOUP.as_bytes());
    bench.put("stock.txt", SOUP.replace("Serves 4", "Makes about 2 litres").as_bytes());
    for arguments in [
        &["convert", "soup.txt"][..],
        &["convert", "soup.txt", "--for", "0"],
        &["convert", "soup.txt", "--for", "-2"],
        &["convert", "soup.txt", "--times", "none"],
        &["convert", "soup.txt", "--times", "2", "--for", "8"],
        &["convert", "stock.txt", "--for", "8"],
    ] {
        let done = bench.run(arguments);
        assert_eq!((done.code, done.out.as_str()), (Some(2), ""), "{}", done.err);
    }
}

#[test]
fn a_page_that_counts_no_people_is_set_by_a_factor() {
    let bench = Bench::new("convert-times");
    bench.put("stock.txt", SOUP.replace("Serves 4", "Makes about 2 litres").as_bytes());
    let refused = bench.run(&["convert", "stock.txt", "--for", "8"]);
    assert!(refused.err.contains("--times"), "{}", refused.err);
    let done = bench.run(&["convert", "stock.txt", "--times", "2 1/2"]);
    // Two and a half times 300 g and 1 litre.
    for line in ["750 g potatoes, diced", "2.5 litres vegetable stock"] {
        assert!(done.out.contains(line), "{line}\n{}{}", done.out, done.err);
    }
}

#[test]
fn a_menu_of_the_book_names_its_dishes_and_those_that_are_missing() {
    let bench = Bench::new("menu");
    bench.put("book/dishes/1.txt", SOUP.as_bytes());
    bench.put("book/menus/lunch.txt", b"Lunch\nFor 8\n\nLeek soup\nPlum tart\n");
    let done = bench.run(&["menu", "--book", "book"]);
    assert_eq!(done.code, Some(0), "{}", done.err);
    // Eight people by the four portions of a page are two batches.
    assert!(
        done.out.contains("Leek soup") && done.out.contains("2.0"),
        "{}",
        done.out
    );
    assert!(done.out.contains("The book has no dish called Plum tart."));
    assert_eq!(bench.run(&["menu", "Dinner", "--book", "book"]).code, Some(2));
}

#[test]
fn a_menu_with_a_slip_is_told_by_its_line() {
    let bench = Bench::new("menu-slip");
    bench.put("book/dishes/1.txt", SOUP.as_bytes());
    bench.put("book/menus/lunch.txt", b"Lunch\nFor 8\n\nLeek soup\nLeek soup\n");
    let done = bench.run(&["menu", "--book", "book"]);
    assert_eq!(done.code, Some(2));
    assert!(done.err.contains("menus/lunch.txt, line 5"), "{}", done.err);
}
