//! Every reader of the project as one call over bytes: what the fuzz targets run on nightly and the replay on stable.
//!
//! A reader passes when it returns: a reading or a message that is not empty. A panic fails, and so does a reading that
//! loses bytes of the page.

use potwright_book::{OwnFoods, Settings, kitchen, menu, prices, stock, typed};
use potwright_manuscript::structured;
use potwright_manuscript::write::{HouseStyle, in_house_style};
use potwright_measure::Measures;

/// A reader: its name, which is that of its fuzz target; folders with seeds, from the root of the project; the reader.
pub(crate) type Reader = (&'static str, &'static [&'static str], fn(&[u8]));

const DISHES: &str = "demo/lock-house/dishes";
const BOOK: &str = "demo/lock-house";

/// All readers.
pub(crate) const READERS: &[Reader] = &[
    ("page", &[DISHES], page),
    ("line", &["fuzz/seeds/line"], line),
    ("house_style", &[DISHES], house_style),
    ("menu", &["demo/lock-house/menus"], |bytes| {
        told(menu::read("menu.txt", &words(bytes)).map(drop))
    }),
    ("prices", &[BOOK], |bytes| told(prices::read(&words(bytes)).map(drop))),
    ("stock", &[BOOK], |bytes| told(stock::read(&words(bytes)).map(drop))),
    ("kitchen", &[BOOK], |bytes| {
        told(kitchen::read(&words(bytes), Measures::Metric).map(drop))
    }),
    ("settings", &[BOOK, "fuzz/seeds/settings"], |bytes| {
        told(Settings::read(&words(bytes)).map(drop))
    }),
    ("larder", &[BOOK], |bytes| {
        told(OwnFoods::read(&words(bytes), "").map(drop))
    }),
    ("notes", &["fuzz/seeds/notes"], notes),
    ("files", &["crates/manuscript/tests/files"], files),
    ("data", &["fuzz/seeds/data"], data),
];

/// Runs one reader by its name.
#[allow(dead_code, reason = "the replay goes through the list itself")]
pub(crate) fn run(name: &str, bytes: &[u8]) {
    READERS
        .iter()
        .filter(|(known, ..)| *known == name)
        .for_each(|(_, _, read)| read(bytes));
}

fn words(bytes: &[u8]) -> String {
    potwright_book::decode::decode(bytes).text
}

/// Every fault says what it is about.
fn told<E: std::fmt::Display>(outcome: Result<(), Vec<E>>) {
    if let Err(faults) = outcome {
        assert!(!faults.is_empty(), "an error without a fault");
        assert!(
            faults.iter().all(|fault| !fault.to_string().is_empty()),
            "a fault without a word"
        );
    }
}

/// A typed page: its blocks give every byte back.
fn page(bytes: &[u8]) {
    let text = words(bytes);
    let recipe = potwright_manuscript::read(&text);
    let whole: String = recipe.blocks.iter().map(|block| block.span.of(&text)).collect();
    assert_eq!(whole, text, "the blocks give the page back");
}

/// One ingredient line, in a page that is a list without doubt.
fn line(bytes: &[u8]) {
    let typed = words(bytes).replace(['\n', '\r'], " ");
    let text = format!("Pot\n\nIngredients\n2 leeks\n{typed}\n30 g butter\n\nMethod\nSlice the leeks.\n");
    page(text.as_bytes());
}

/// Writing back, and reading that.
fn house_style(bytes: &[u8]) {
    let text = words(bytes);
    let written = in_house_style(&text, &HouseStyle::default());
    page(written.text.as_bytes());
}

/// Stove notes: plain, with stamps, SubRip, WebVTT.
fn notes(bytes: &[u8]) {
    for draft in potwright_manuscript::draft(&words(bytes)).drafts {
        page(draft.page.as_bytes());
    }
}

/// Files of word processors (.docx, .odt, .rtf) and whatever else is handed in as a page.
fn files(bytes: &[u8]) {
    match typed::typed(bytes) {
        Ok(pages) => pages.iter().for_each(|one| page(one.text.as_bytes())),
        Err(error) => assert!(!error.to_string().is_empty()),
    }
}

/// schema.org/Recipe, as JSON-LD or in a web page.
fn data(bytes: &[u8]) {
    match structured::pages(&words(bytes)) {
        Ok(pages) => pages.iter().for_each(|one| page(one.text.as_bytes())),
        Err(error) => assert!(!error.to_string().is_empty()),
    }
}
