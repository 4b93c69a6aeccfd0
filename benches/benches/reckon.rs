//! From a process to its dossier: central figures, with spreads, and in many kitchens.

use potwright_benches::{DISHES, book, kitchens, page, process, reckoned};
use potwright_manuscript::read;
use potwright_reckon::DRAWS;

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

/// The spread as the desk waits for it. Meant to be at most 150 ms.
#[divan::bench(args = DISHES, sample_count = 10, sample_size = 1)]
fn with_spread(bencher: divan::Bencher, dish: usize) {
    let (book, page) = (book(), page(dish));
    let process = process(&read(&page), &page, &book);
    bencher
        .with_inputs(|| process.clone())
        .bench_local_values(|process| reckoned(process, &book, DRAWS));
}

/// The same dish in a thousand kitchens. Meant to be at most 1.5 s.
#[divan::bench(args = DISHES, sample_count = 3, sample_size = 1)]
fn thousand_kitchens(bencher: divan::Bencher, dish: usize) {
    let (book, page) = (book(), page(dish));
    let process = process(&read(&page), &page, &book);
    bencher
        .with_inputs(|| process.clone())
        .bench_local_values(|process| kitchens(process, &book, 1000).cooked.len());
}
