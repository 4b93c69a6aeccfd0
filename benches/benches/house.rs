//! A whole dish from its page, and the whole demo book.

use potwright_benches::{DISHES, book, page, whole};
use potwright_house::House;

fn main() {
    divan::main();
}

/// Read, resolve, cook and reckon: central figures. Meant to be at most 3 ms.
#[divan::bench(args = DISHES)]
fn page_to_dossier(bencher: divan::Bencher, dish: usize) {
    let (book, page) = (book(), page(dish));
    bencher.bench_local(|| whole(divan::black_box(&page), &book));
}

/// All twelve dishes on all cores, nothing kept from before.
#[divan::bench(sample_count = 10, sample_size = 1)]
fn demo_book(bencher: divan::Bencher) {
    bencher
        .with_inputs(book)
        .bench_local_values(|book| House::open(book).with_draws(0).reckon_all().len());
}
