//! From a process to its dossier: central figures, and with spreads.

use potwright_benches::{DISHES, book, page, process, reckoned};
use potwright_manuscript::read;

fn main() {
    divan::main();
}

#[divan::bench(args = DISHES)]
fn central(bencher: divan::Bencher, dish: usize) {
    let (book, page) = (book(), page(dish));
    let process = process(&read(&page), &page, &book);
    bencher
        .with_inputs(|| process.clone())
        .bench_local_values(|process| reckoned(process, &book, 0));
}

#[divan::bench(args = DISHES, sample_count = 10, sample_size = 1)]
fn with_spreads_of_100_draws(bencher: divan::Bencher, dish: usize) {
    let (book, page) = (book(), page(dish));
    let process = process(&read(&page), &page, &book);
    bencher
        .with_inputs(|| process.clone())
        .bench_local_values(|process| reckoned(process, &book, 100));
}
