//! The pages of a short manuscript: what must stand on them, and that they fit.

use potwright_larder::Larder;
use potwright_manuscript::Recipe;
use potwright_measure::Measures;
use potwright_pot::Kitchen;
use potwright_press::{Style, digest, dossier, margin, text};
use potwright_proof::{Query, queries};
use potwright_reckon::{Prices, Reckoned, Target, reckon};
use unicode_width::UnicodeWidthStr;

const SOUP: &str = "LEEK AND POTATO SOUP\n\nServes 4\n\n30 g butter\n3 leeks, sliced\n500 g potatoes, peeled and diced\n\
    1 litre vegetable stock\n2 bay leaves\nsalt to taste\n\n1. Melt the butter in a large pot and sweat the leeks for 10 minutes.\n\
    2. Add the potatoes and the stock, bring to the boil and simmer for 20 minutes until tender. Season with salt.\n";

fn read(text: &str) -> (Recipe, Reckoned, Vec<Query>) {
    let recipe = potwright_manuscript::read(text);
    let (kitchen, larder) = (Kitchen::default(), Larder::built_in());
    let process = potwright_pot::resolve(&recipe, text, larder, &[], &kitchen, Measures::Metric);
    let reckoned = reckon(
        process,
        &kitchen,
        larder,
        &[],
        &Prices::default(),
        &Target::default(),
        8,
        1,
    );
    let found = queries(&recipe, text, &reckoned);
    (recipe, reckoned, found)
}

#[test]
fn a_dossier_fits_its_width_and_says_what_it_must() {
    let (recipe, reckoned, found) = read(SOUP);
    let page = dossier::page(&recipe, SOUP, &reckoned, &found);
    for width in [80, 100] {
        let set = text::render(&page, width, Style::Plain);
        for line in set.lines() {
            assert!(line.width() <= width, "{width}: {line}");
        }
    }
    let set = text::render(&page, 80, Style::Plain);
    // A title typed in capitals is set in small letters.
    assert!(set.starts_with("Leek and potato soup\n"));
    for part in [
        "What it makes",
        "How it eats",
        "To taste",
        "How it goes",
        "Nutrition",
        "Allergens",
        "Author queries",
    ] {
        assert!(set.contains(part), "{part} is missing");
    }
    // The packet of stock is not known, and the page says so rather than that it is free of anything.
    assert!(set.contains("not known"));
}

#[test]
fn the_unused_bay_leaves_are_asked_about_at_their_line() {
    let (_, _, found) = read(SOUP);
    let set = margin::render(&found, SOUP, "leek-soup.txt", 80, Style::Plain);
    // Line 9 of the page holds '2 bay leaves'.
    assert!(set.contains("leek-soup.txt:9:"), "{set}");
    assert!(set.contains("2 bay leaves"));
    assert!(!set.contains('\u{1b}'));
}

#[test]
fn a_digest_has_a_line_for_each_dish() {
    let (_, reckoned, found) = read(SOUP);
    let page = digest::page("A book", &[(&reckoned, &found), (&reckoned, &found)]);
    let set = text::render(&page, 80, Style::Plain);
    assert_eq!(set.matches("Leek and potato soup").count(), 4, "{set}");
    for line in set.lines() {
        assert!(line.width() <= 80, "{line}");
    }
}
