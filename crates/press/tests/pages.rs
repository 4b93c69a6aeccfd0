//! The pages of a short manuscript: what must stand on them, and that they fit.

use potwright_larder::Larder;
use potwright_manuscript::Recipe;
use potwright_measure::Measures;
use potwright_pot::Kitchen;
use potwright_press::{Style, digest, dossier, margin, text};
use potwright_proof::{Query, queries};
use potwright_reckon::{Prices, Reckoned, Target, Variant, add_variations, reckon};
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
    let cooked = digest::Dish::Cooked(&reckoned, &found);
    let page = digest::page("A book", &[cooked, digest::Dish::Not("scan", "not read"), cooked]);
    let set = text::render(&page, 80, Style::Plain);
    assert_eq!(set.matches("Leek and potato soup").count(), 4, "{set}");
    assert!(set.contains("3 dishes, 1 of them not cooked"), "{set}");
    assert!(set.contains("scan: not read"), "{set}");
    assert!(set.contains("not known: not read"), "{set}");
    for line in set.lines() {
        assert!(line.width() <= 80, "{line}");
    }
}

#[test]
fn variations_stand_beside_the_dish() {
    let variation = |soup: &str| {
        let (recipe, reckoned, _) = read(soup);
        let larder = Larder::built_in();
        let varied = potwright_pot::varied(&recipe, soup, larder, 0).expect("understood");
        let process = potwright_pot::resolve(&varied.recipe, soup, larder, &[], &Kitchen::default(), Measures::Metric);
        let (kitchen, prices, target) = (Kitchen::default(), Prices::default(), Target::default());
        let of_it = reckon(process, &kitchen, larder, &[], &prices, &target, 0, 1);
        (recipe, reckoned, varied.changes, of_it)
    };
    let soup = format!("{SOUP}\nVariation: without butter. Use 2 tbsp olive oil instead of the butter.\n");
    let (recipe, mut reckoned, changes, of_it) = variation(&soup);
    let variant = Variant {
        name: "without butter".into(),
        span: recipe.variations[0].words.span,
        changes,
        reckoned: Some(Box::new(of_it)),
    };
    add_variations(&mut reckoned, &[variant]);
    let set = text::render(&dossier::page(&recipe, &soup, &reckoned, &[]), 80, Style::Plain);
    let part = set.split("Variations\n").nth(1).expect("a part of its own");
    let part = part.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        part.contains("as written") && part.contains("olive oil instead of butter"),
        "{part}"
    );
    // The bought stock may hold milk: nobody may be told that there is none.
    assert!(!part.contains("No milk"), "{part}");
    assert!(part.contains("Whether it is free of milk is not known"), "{part}");
    assert!(set.lines().all(|line| line.width() <= 80));
}

/// A method typed as one long line: what is shown of it stays in the width asked for, each mark under its words.
#[test]
fn marks_stay_under_their_words_in_a_long_line() {
    let long = "Heat the oil in a large pot, add the onions and sweat them very gently for 10 minutes without any colour, \
        then add the carrots, the celery, the bay leaves and the thyme and let everything go on for another 10 minutes.";
    let text = format!("Soup\n\n2 onions\n\n{long}\n");
    let start = text.find("very gently").expect("is there");
    let end = text.find("go on").expect("is there");
    let span = potwright_manuscript::Span { start, end };
    let query = Query {
        code: "L00".into(),
        weight: potwright_proof::Weight::WorthALook,
        span,
        asks: "Is all that is said between these two words meant to be done in one and the same ten minutes?".into(),
        because: "what is said here is long enough to be broken over several lines of the terminal on its own".into(),
        try_words: None,
        see: vec![(potwright_manuscript::Span { start: 6, end: 14 }, "on the list".into())],
    };
    for width in [60, 80] {
        let set = margin::render(std::slice::from_ref(&query), &text, "soup.txt", width, Style::Plain);
        for line in set.lines() {
            assert!(line.width() <= width, "{width}: {line}");
        }
        assert!(set.contains("soup.txt:5"), "{set}");
        let lines: Vec<&str> = set.lines().collect();
        let mut marked = Vec::new();
        for pair in lines.windows(2) {
            let under = |at: usize| pair[1].chars().nth(at) == Some('━');
            let words: String = (0..pair[0].chars().count())
                .filter(|at| under(*at))
                .filter_map(|at| pair[0].chars().nth(at))
                .collect();
            marked.extend(words.split_whitespace().map(str::to_owned));
        }
        let wanted: Vec<&str> = text[start..end].split_whitespace().collect();
        assert_eq!(marked, wanted, "{set}");
    }
}
