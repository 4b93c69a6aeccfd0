//! Books: the demo book of the program, a folder, the book a page lies in, another kitchen.

use crate::bench::{Bench, SOUP};

#[test]
fn without_a_word_the_demo_book_is_shown() {
    let bench = Bench::new("bare");
    let done = bench.run(&[]);
    assert_eq!((done.code, done.err.as_str()), (Some(0), ""));
    assert!(done.out.starts_with("The Lock House suppers\n"), "{}", done.out);
    assert!(done.out.contains("12 dishes"));
    // demo/lock-house/book.toml: currency = "tokens".
    assert!(done.out.contains("cost in tokens"));
    assert!(done.out.lines().all(|line| line.chars().count() <= 80));
    assert_eq!(bench.files(), [""; 0], "nothing is written");
}

#[test]
fn a_folder_is_a_book() {
    let bench = Bench::new("folder");
    bench.put("suppers/dishes/1.txt", SOUP.as_bytes());
    let done = bench.run(&["digest", "suppers"]);
    assert_eq!(done.code, Some(0), "{}", done.err);
    assert!(done.out.starts_with("suppers\n"));
    assert!(done.out.contains("Leek soup"));
    assert!(!done.out.contains("cost in"), "it names no currency and no price");
}

#[test]
fn a_page_in_a_book_is_cooked_in_its_kitchen() {
    let bench = Bench::new("around");
    bench.put("book/dishes/1.txt", SOUP.as_bytes());
    bench.put("book/kitchen.toml", b"altitude = \"2500 m\"\n");
    bench.put("1.txt", SOUP.as_bytes());
    let high = bench.run(&["reckon", "book/dishes/1.txt"]);
    let low = bench.run(&["reckon", "1.txt"]);
    assert_eq!((high.code, low.code), (Some(0), Some(0)));
    assert_ne!(high.out, low.out);
    assert_eq!(bench.run(&["reckon", "1.txt", "--book", "book"]).out, high.out);
    assert_eq!(
        bench.run(&["reckon", "1.txt", "--kitchen", "book/kitchen.toml"]).out,
        high.out
    );
}

#[test]
fn circles_are_told_and_the_rest_is_cooked() {
    let bench = Bench::new("circle");
    bench.put(
        "b/dishes/1.txt",
        b"Red sauce\n\n200 ml brown gravy\n100 g tomatoes\n\nSimmer the gravy and the tomatoes for 10 minutes.\n",
    );
    bench.put(
        "b/dishes/2.txt",
        b"Brown gravy\n\n200 ml red sauce\n100 g onions\n\nSimmer the sauce and the onions for 10 minutes.\n",
    );
    bench.put("b/dishes/3.txt", SOUP.as_bytes());
    bench.put("b/book.toml", b"title = \"Round\"\n");
    let done = bench.run(&["digest", "b"]);
    assert_eq!(done.code, Some(2));
    assert!(done.out.contains("Leek soup"));
    assert!(done.out.contains("3 dishes, 2 of them not cooked"), "{}", done.out);
    assert_eq!(
        done.out.matches("not known: not cooked: circle").count(),
        2,
        "{}",
        done.out
    );
    assert!(done.out.contains("Red sauce: not cooked:"), "{}", done.out);
    assert!(done.out.contains("Brown gravy: not cooked:"), "{}", done.out);
    assert!(
        done.err.contains("'Red sauce' → 'Brown gravy' → 'Red sauce'"),
        "{}",
        done.err
    );
    let done = bench.run(&["reckon", "b/dishes/1.txt"]);
    assert_eq!(done.code, Some(2), "{}", done.out);
}
