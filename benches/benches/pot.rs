//! From a recipe to a process, and the cooking of it.

use potwright_benches::{BRAISE, DISHES, book, page, process};
use potwright_manuscript::read;
use potwright_pot::{Draw, cook};

fn main() {
    divan::main();
}

#[divan::bench(args = DISHES)]
fn recipe_to_process(bencher: divan::Bencher, dish: usize) {
    let (book, page) = (book(), page(dish));
    let recipe = read(&page);
    bencher.bench_local(|| process(divan::black_box(&recipe), &page, &book));
}

#[divan::bench(args = DISHES)]
fn process_to_trace(bencher: divan::Bencher, dish: usize) {
    let (book, page) = (book(), page(dish));
    let process = process(&read(&page), &page, &book);
    bencher.bench_local(|| cook(divan::black_box(&process), &book.kitchen, &Draw::central()));
}

/// Meant to be at most 1.5 ms.
#[divan::bench]
fn braise_of_twelve(bencher: divan::Bencher) {
    let book = book();
    let process = process(&read(BRAISE), BRAISE, &book);
    bencher.bench_local(|| cook(divan::black_box(&process), &book.kitchen, &Draw::central()));
}
