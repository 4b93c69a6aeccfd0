//! The demo book, carried in the program: the Lock House suppers. All of it is invented, prices included.

use crate::book::{Book, SourceFile};
use crate::error::BookError;

macro_rules! files {
    ($($name:literal),+ $(,)?) => {
        &[$(($name, include_bytes!(concat!("../../../demo/lock-house/", $name)))),+]
    };
}

/// The files of the demo book; a test compares them with the folder.
const FILES: &[(&str, &[u8])] = files![
    "book.toml",
    "kitchen.toml",
    "prices.tsv",
    "in_the_house.tsv",
    "larder.tsv",
    "dishes/01-smoked-haddock-chowder.txt",
    "dishes/02-beef-shin-prunes-stout.txt",
    "dishes/03-celeriac-apple-soup.txt",
    "dishes/04-white-beans-kale-sausage.txt",
    "dishes/05-red-lentils-squash-cumin.txt",
    "dishes/06-chicken-leeks-barley.txt",
    "dishes/07-pork-cider-parsnips-dumplings.txt",
    "dishes/08-mussels-saffron-tomato.txt",
    "dishes/09-brown-beef-stock.txt",
    "dishes/10-seeded-soda-bread.txt",
    "dishes/11-pickled-red-cabbage.txt",
    "dishes/12-baked-apples-oats.txt",
    "menus/friday-for-four.txt",
    "menus/supper-for-twelve.txt",
];

/// The demo book.
///
/// # Errors
///
/// A fault in its tables; the tests of this crate see to it that there is none.
pub fn book() -> Result<Book, BookError> {
    let own = |(name, bytes): &(&str, &[u8])| SourceFile {
        name: (*name).into(),
        bytes: bytes.to_vec(),
    };
    Book::of(FILES.iter().map(own).collect())
}
