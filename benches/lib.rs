//! What the benchmarks of `benches/` work on: the dishes of the demo book, ready for each stage.
//!
//! Dishes are benchmarked without what other dishes made, so that each stands for itself.

use potwright_book::{Book, demo};
use potwright_larder::Larder;
use potwright_manuscript::{Recipe, read};
use potwright_pot::{Process, resolve};
use potwright_reckon::{Cookings, Design, Prices, Reckoned, Target, reckon};

/// Numbers of the demo dishes that are benchmarked: a soup that is thickened, a braise of three hours, a purée, twelve
/// minutes of mussels, a stock of eight hours.
pub const DISHES: [usize; 5] = [1, 2, 3, 8, 9];

/// A braise of four hours with twelve kinds of pieces, invented for the benchmark.
pub const BRAISE: &str = "Braise of twelve

Serves 6

1 kg beef shin, in 4 cm pieces
2 onions, chopped
2 leeks, sliced
2 carrots, in 2 cm pieces
2 parsnips, in 2 cm pieces
2 sticks celery, sliced
1 small celeriac, in 2 cm pieces
1 swede, in 2 cm pieces
400 g potatoes, in 3 cm pieces
200 g mushrooms, halved
150 g prunes
150 g pearl barley
2 litres beef stock
2 tsp salt

1. Put everything into a casserole and bring to the boil.
2. Cover and cook in the oven at 140 C for 4 hours.
";

/// The demo book.
#[must_use]
pub fn book() -> Book {
    demo::book().unwrap_or_default()
}

/// The page of a demo dish.
#[must_use]
pub fn page(dish: usize) -> String {
    book()
        .dishes
        .get(dish - 1)
        .map_or(String::new(), |dish| dish.text.clone())
}

/// A page, read, as a process.
#[must_use]
pub fn process(recipe: &Recipe, page: &str, book: &Book) -> Process {
    resolve(
        recipe,
        page,
        Larder::built_in(),
        &[],
        &book.kitchen,
        book.settings.measures,
    )
}

/// A process, reckoned with a number of draws for the spreads.
#[must_use]
pub fn reckoned(process: Process, book: &Book, draws: usize) -> Reckoned {
    reckon(
        process,
        &book.kitchen,
        Larder::built_in(),
        &[],
        &Prices::default(),
        &Target::default(),
        draws,
        1,
    )
}

/// A process, cooked in so many kitchens on all cores.
#[must_use]
pub fn kitchens(process: Process, book: &Book, count: usize) -> Cookings {
    let cores = std::thread::available_parallelism().map_or(1, usize::from);
    Cookings::of(
        process,
        &book.kitchen,
        (Larder::built_in(), &[]),
        &Target::default(),
        (Design::Even, count, 1),
        cores,
    )
}

/// The whole way from a page to central figures.
#[must_use]
pub fn whole(page: &str, book: &Book) -> Reckoned {
    reckoned(process(&read(page), page, book), book, 0)
}
