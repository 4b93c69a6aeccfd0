//! Whatever is typed: nothing is lost, every place fits the text, nothing panics.

use potwright_manuscript::{Recipe, Span, read};
use proptest::prelude::*;

/// Bits of pages that the grammar has rules for, and a few that nobody types.
const BITS: &[&str] = &[
    "2",
    "½",
    "1-1/2",
    "3–4",
    " cups ",
    "g",
    " tbsp",
    " onions",
    "salt",
    ", ",
    "chopped",
    " or ",
    " and ",
    " each ",
    "(",
    ")",
    "[",
    "]",
    "400g ",
    "tin ",
    "of ",
    "the ",
    "juice ",
    "lemons",
    "\n",
    "\r\n",
    "\n\n",
    "\t",
    "   ",
    "- ",
    "1. ",
    "> ",
    "## ",
    "For the ",
    "sauce",
    ":",
    "Serves 4",
    "Method",
    "Ingredients",
    "Melt the butter",
    ". ",
    "simmer 20 minutes",
    " to taste",
    "divided",
    "optional",
    "plus more",
    "Variation: ",
    "without cream",
    "instead of ",
    "é",
    "\u{301}",
    "🥕",
    "\u{feff}",
    "\0",
    "—",
    "'",
    "’",
    "/",
    "0/0",
    "99999999999999999999",
    "1/",
    "|",
    "*",
    "**",
    "a ",
    "few ",
    "half ",
    "dozen ",
    "optional optional optional",
    "((((",
    "]]]]",
    "\u{2028}",
    "İ",
    "ß",
    "ﬁ",
    "of of of",
];

fn check(text: &str) {
    let recipe = read(text);
    let whole: String = recipe.blocks.iter().map(|block| block.span.of(text)).collect();
    assert_eq!(whole, text, "the blocks give the page back");
    let mut at = 0;
    for block in &recipe.blocks {
        assert_eq!(block.span.start, at, "blocks stand end to end");
        assert!(block.span.end > block.span.start, "no block is empty");
        at = block.span.end;
    }
    assert_eq!(at, text.len());
    for span in spans(&recipe) {
        assert!(text.get(span.start..span.end).is_some(), "{span:?} does not fit");
    }
}

fn spans(recipe: &Recipe) -> Vec<Span> {
    let mut all: Vec<Span> = Vec::new();
    all.extend(recipe.title.iter().map(|w| w.span));
    all.extend(recipe.headnote.iter().chain(&recipe.closing).map(|w| w.span));
    all.extend(recipe.sections.iter().map(|s| s.words.span));
    all.extend(recipe.steps.iter().map(|s| s.words.span));
    all.extend(recipe.variations.iter().map(|v| v.words.span));
    all.extend(recipe.desk_notes.iter().map(|n| n.words.span));
    all.extend(recipe.unsure.iter().map(|u| u.span));
    all.extend(recipe.yields.iter().map(|y| y.words.span));
    all.extend(recipe.declared_times.iter().map(|t| t.words.span));
    all.extend(recipe.operations.iter().flat_map(|o| [o.span, o.verb_span]));
    for ingredient in &recipe.ingredients {
        all.extend([ingredient.span, ingredient.line.span]);
        all.extend(ingredient.items.iter().map(|i| i.span));
        let quantities = ingredient
            .quantity
            .iter()
            .chain(&ingredient.also)
            .chain(&ingredient.package);
        all.extend(quantities.map(|q| q.span));
        all.extend(
            ingredient
                .preparation
                .iter()
                .chain(&ingredient.plus_more)
                .map(|w| w.span),
        );
    }
    all
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(400))]

    #[test]
    fn any_text(text in "\\PC*|(?s:.{0,200})") {
        check(&text);
    }

    #[test]
    fn any_page(bits in proptest::collection::vec(proptest::sample::select(BITS), 0..120)) {
        check(&bits.concat());
    }

    #[test]
    fn the_same_bytes_twice(bits in proptest::collection::vec(proptest::sample::select(BITS), 0..60)) {
        let text = bits.concat();
        prop_assert_eq!(read(&text), read(&text));
    }
}

#[test]
fn odd_pages() {
    for text in [
        "", " ", "\n", "\r", "\r\n\r\n", "\0", "\u{feff}", "[", "[]", "(", "1", "½", "-", "2 leeks", "\t\t\t",
        "a\rb\rc",
    ] {
        check(text);
    }
}

#[test]
fn one_line_of_every_bit_many_times_over() {
    for bit in BITS {
        check(&bit.repeat(500));
    }
}
