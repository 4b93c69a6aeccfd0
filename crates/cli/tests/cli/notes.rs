//! Stove notes drafted to pages.

use crate::bench::Bench;

/// Two dishes in one take, stamped; what each line has to hold is in the words.
const NOTES: &str = "[0:05] so I'm making the leek soup and then a cucumber salad to go with it.\n\n\
    [0:20] two leeks sliced and fifty grams, no, sixty grams of butter in the big pot, low heat, ten minutes till they're soft. \
    Then a litre of water and three hundred grams of potatoes and it simmers twenty minutes. And some thyme.\n\n\
    [31:00] now the salad. One cucumber sliced and two tablespoons of vinegar. My aunt puts dill in hers. That feeds four.\n";

#[test]
fn a_page_a_dish_is_printed_or_written_and_nothing_overwritten() {
    let bench = Bench::new("notes");
    bench.put("friday.txt", NOTES.as_bytes());
    let done = bench.run(&["draft", "friday.txt"]);
    assert_eq!(done.code, Some(0), "{}", done.err);
    let pages: Vec<&str> = done.out.split("\n----------\n\n").collect();
    assert_eq!(pages.len(), 2, "{}", done.out);
    assert!(
        pages[0].starts_with("Leek soup\n") && pages[0].contains("\n60 g butter\n"),
        "{}",
        pages[0]
    );
    assert!(
        pages[0].contains("[Thyme: how much?") && !pages[0].contains("50 g"),
        "{}",
        pages[0]
    );
    assert!(
        pages[1].contains("\n2 tbsp vinegar\n") && !pages[1].contains("\ndill"),
        "{}",
        pages[1]
    );

    let written = bench.run(&["draft", "friday.txt", "-o", "drafts"]);
    assert_eq!((written.code, written.out.as_str()), (Some(0), ""), "{}", written.err);
    let again = bench.run(&["draft", "friday.txt", "-o", "drafts"]);
    assert_eq!(again.code, Some(2));
    assert!(again.err.contains("is not overwritten"), "{}", again.err);
    let cooked = bench.run(&["reckon", "drafts/01-leek-soup.txt"]);
    assert_eq!(cooked.code, Some(0), "{}", cooked.err);
}

#[test]
fn what_was_set_aside_is_in_the_data() {
    let bench = Bench::new("notes-data");
    bench.put("friday.txt", NOTES.as_bytes());
    let done = bench.run(&["draft", "friday.txt", "--json"]);
    assert_eq!(done.code, Some(0), "{}", done.err);
    assert!(done.out.contains("My aunt puts dill in hers"), "{}", done.out);
    let none = bench.run(&["draft", "nobody.txt"]);
    assert_eq!(none.code, Some(2));
    assert!(none.err.contains("cannot read nobody.txt"), "{}", none.err);
}
