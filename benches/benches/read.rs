//! Reading a page.

use potwright_benches::{DISHES, page};
use potwright_manuscript::read;

fn main() {
    divan::main();
}

#[divan::bench(args = DISHES)]
fn page_to_recipe(bencher: divan::Bencher, dish: usize) {
    let page = page(dish);
    bencher.bench_local(|| read(divan::black_box(&page)));
}
