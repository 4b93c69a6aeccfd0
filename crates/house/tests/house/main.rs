//! The house on small books and on the demo book.

mod demo;
mod own_larder;
mod small;
mod sound;

use potwright_book::{Book, SourceFile};
use potwright_house::House;

/// A house of a few pages, central figures only.
fn house(pages: &[(&str, &str)]) -> House {
    let file = |(name, page): &(&str, &str)| SourceFile {
        name: format!("dishes/{name}.txt"),
        bytes: page.as_bytes().to_vec(),
    };
    let book = Book::of(pages.iter().map(file).collect()).expect("dishes alone are a sound book");
    House::open(book).with_draws(0)
}
