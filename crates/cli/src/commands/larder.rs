//! `potwright larder find` and `potwright larder import`.

use std::io::{self, IsTerminal as _};
use std::path::Path;

use anyhow::bail;
use potwright_book::Book;
use potwright_book::importing::{self, Before, Imported, Progress};
use potwright_larder::{Allergen, Food, Hints, Market, Match, Pack, Season};
use potwright_measure::Measures;
use potwright_press::{Page, Part, food, text};
use serde::Serialize;

use crate::arguments::Larder;
use crate::{input, output};

/// Does what was asked.
pub(crate) fn run(work: &Larder) -> anyhow::Result<()> {
    match work {
        Larder::Find { name, book, json } => find(&name.join(" "), book.as_deref(), *json),
        Larder::Import { folder, book, replace } => {
            let before = if *replace { Before::Replace } else { Before::Keep };
            import(folder, book.as_deref().unwrap_or(Path::new(".")), before)
        }
    }
}

/// What `larder find --json` prints; `docs/larder-json.md` tells its fields.
#[derive(Serialize)]
struct Found<'a> {
    /// The program and its version.
    program: &'a str,
    /// The name that was asked for.
    name: &'a str,
    /// Whether it is taken for the first food without asking.
    sure: bool,
    /// The foods it may be, likeliest first.
    likenesses: Vec<Likeness<'a>>,
}

/// A food that a name may mean.
#[derive(Serialize)]
struct Likeness<'a> {
    /// How well it fits, 0–1.
    score: f64,
    /// What is known of it; every allergen is listed.
    food: Food,
    /// Packs as sold, by market.
    packs: &'a [Pack],
    /// Months in season, by market.
    seasons: &'a [Season],
}

/// Prints what a name is taken for.
fn find(name: &str, book: Option<&Path>, json: bool) -> anyhow::Result<()> {
    let book = match book {
        Some(folder) => Some(Book::open(folder)?),
        None => None,
    };
    // Without a book nothing tells whose English it is.
    let american = book.as_ref().is_some_and(|book| book.settings.measures == Measures::Us);
    let house = input::house(book.unwrap_or_default(), None)?;
    let hints = Hints {
        market: american.then_some(Market::Us),
        ..Hints::default()
    };
    let larder = house.larder();
    let found = larder.find(name, &hints);
    if json {
        return output::print_json(&as_data(larder, name, &found));
    }
    let page = food::page(larder, name, &found);
    output::print(text::render(&page, output::WIDTH, output::style()).as_bytes())
}

/// What was found, as data.
fn as_data<'a>(larder: &'a potwright_larder::Larder, name: &'a str, found: &Match) -> Found<'a> {
    let best = found.best.map(|id| (id, found.score));
    let all = best.into_iter().chain(found.rivals.iter().copied());
    let likeness = |(id, score)| {
        let mut food = larder.get(id)?.clone();
        // An allergen left out of a list could be taken for one that is not in the food.
        food.allergens = Allergen::ALL.map(|which| (which, food.contains(which))).to_vec();
        Some(Likeness {
            score,
            food,
            packs: larder.packs(id),
            seasons: larder.seasons(id),
        })
    };
    Found {
        program: concat!("potwright ", env!("CARGO_PKG_VERSION")),
        name,
        sure: found.sure,
        likenesses: all.filter_map(likeness).collect(),
    }
}

/// Brings a table into a book and says what was done.
fn import(folder: &Path, book: &Path, before: Before) -> anyhow::Result<()> {
    let is_book = ["dishes", "book.toml", "kitchen.toml", "larder.tsv"]
        .iter()
        .any(|of| book.join(of).exists());
    if book.is_dir() && !is_book {
        bail!(
            "{} is no book: it has neither a folder dishes nor a book.toml; say which book with --book FOLDER",
            book.display()
        );
    }
    let mut told = Told::default();
    let done = importing::import(folder, book, before, &mut |progress| told.tell(progress));
    told.end();
    output::print(text::render(&report(&done?), output::WIDTH, output::style()).as_bytes())
}

/// What was done, as a page.
fn report(done: &Imported) -> Page {
    let (key, name) = &done.example;
    let mut says = vec![
        format!(
            "{} have weights of cups, spoons or pieces; the others can be given by weight.",
            done.weighed
        ),
        format!("Each can be named on a page by its key or its whole name: ‘{key}’ or ‘{name}’."),
        "Allergens of these foods are not known; a row of the book's larder.tsv may say them.".into(),
    ];
    if !done.passed_over.is_empty() {
        let parts = done.passed_over.iter();
        let parts: Vec<String> = parts
            .map(|(what, count)| format!("{count} {}", what.replace('_', " ")))
            .collect();
        says.push(format!("Passed over: {}.", parts.join(", ")));
    }
    if !done.lacking.is_empty() {
        says.push(format!("Not there, and done without: {}.", done.lacking.join(", ")));
    }
    Page {
        title: match done.foods {
            1 => format!("1 food of {}", done.title),
            several => format!("{several} foods of {}", done.title),
        },
        under: format!("now in {}", done.path.display()),
        parts: vec![Part::List(says)],
    }
}

/// Tells how far it has got: on a terminal in place, else a line a file.
#[derive(Default)]
struct Told {
    open: bool,
}

impl Told {
    fn tell(&mut self, progress: Progress) {
        let percent = (progress.read_bytes * 100)
            .checked_div(progress.of_bytes)
            .unwrap_or(100);
        if io::stderr().is_terminal() {
            output::say_in_place(&format!("reading {}: {percent} %", progress.file));
            self.open = true;
        } else if progress.read_bytes == 0 {
            output::say("note", &format!("reading {}", progress.file));
        }
    }

    /// Clears the line that was written in place.
    fn end(&mut self) {
        if std::mem::take(&mut self.open) {
            output::say_in_place("");
        }
    }
}
