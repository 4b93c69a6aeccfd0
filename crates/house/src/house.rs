//! A book opened for cooking.

use std::borrow::Cow;
use std::collections::BTreeMap;
use std::panic::resume_unwind;
use std::sync::atomic::{AtomicUsize, Ordering};
use std::sync::{Arc, Mutex, PoisonError};
use std::thread;

use potwright_book::{Book, own_larder};
use potwright_larder::Larder;
use potwright_manuscript::{Recipe, read};
use potwright_pot::{Made, resolve};
use potwright_proof::{Query, Recook};
use potwright_reckon::{DRAWS, Prices, Reckoned, add_variations, reckon, side_by_side};

use crate::content::Content;
use crate::error::HouseError;
use crate::variants::variants;
use crate::{order, prices};

/// A book opened for cooking.
#[derive(Debug)]
pub struct House {
    book: Book,
    larder: Cow<'static, Larder>,
    prices: Prices,
    notes: Vec<String>,
    recipes: Vec<Recipe>,
    uses: Vec<Vec<usize>>,
    draws: usize,
    /// Hash of what all dishes share: kitchen, settings, prices, the book's own foods.
    shared: Content,
    kept: Mutex<BTreeMap<Content, Arc<Cooked>>>,
    times_cooked: AtomicUsize,
}

/// A dish, read, cooked, reckoned and queried.
#[derive(Clone, Debug, PartialEq)]
pub struct Cooked {
    /// The page as read.
    pub recipe: Recipe,
    /// The page.
    pub text: String,
    /// What came of cooking it.
    pub reckoned: Reckoned,
    /// The open questions to its author, heaviest first.
    pub queries: Vec<Query>,
    /// Hash of everything it was cooked from.
    content: Content,
}

impl House {
    /// Opens a book: reads all its pages and finds which dish uses which.
    #[must_use]
    pub fn open(book: Book) -> House {
        let larder = || {
            if book.foods.is_empty() {
                Cow::Borrowed(Larder::built_in())
            } else {
                Cow::Owned(book.foods.larder())
            }
        };
        let pages = || side_by_side(&book.dishes, |dish| read(&dish.text));
        let (recipes, larder) = both(pages, larder);
        let settings = &book.settings;
        let (prices, mut notes) = prices::placed(&book.prices, &settings.currency, &larder, settings.measures);
        let of_dish = |dish: &potwright_book::Dish| dish.note.as_ref().map(|note| format!("{}: {note}", dish.file));
        notes.extend(book.dishes.iter().filter_map(of_dish));
        House {
            uses: order::uses(&recipes),
            shared: shared(&book, &prices),
            larder,
            prices,
            notes,
            recipes,
            draws: DRAWS,
            kept: Mutex::new(BTreeMap::new()),
            times_cooked: AtomicUsize::new(0),
            book,
        }
    }

    /// The same with another number of runs for the spreads; nought gives central figures only.
    #[must_use]
    pub fn with_draws(mut self, draws: usize) -> House {
        self.draws = draws;
        self
    }

    /// The book.
    #[must_use]
    pub fn book(&self) -> &Book {
        &self.book
    }

    /// The larder its dishes are cooked from.
    #[must_use]
    pub fn larder(&self) -> &Larder {
        &self.larder
    }

    /// What the opening of the book has to say, a sentence a line: prices that found no food, pages in old encodings.
    #[must_use]
    pub fn notes(&self) -> &[String] {
        &self.notes
    }

    /// The title of a dish: its page's, or its file's name where the page has none.
    #[must_use]
    pub fn title(&self, dish: usize) -> String {
        let title = self.recipes.get(dish).map_or(String::new(), order::title);
        if title.is_empty() {
            self.book
                .dishes
                .get(dish)
                .map_or(String::new(), |dish| dish.file.clone())
        } else {
            title
        }
    }

    /// How often a dish was really cooked since the book was opened, and not taken from what was kept.
    #[must_use]
    pub fn times_cooked(&self) -> usize {
        self.times_cooked.load(Ordering::Relaxed)
    }

    /// The dish of a number (the first is 1) or a title; part of a title will do when only one dish has it.
    ///
    /// # Errors
    ///
    /// No dish is called so, or several are.
    pub fn find(&self, asked: &str) -> Result<usize, HouseError> {
        let count = self.book.dishes.len();
        if let Ok(number) = asked.trim().parse::<usize>() {
            let dish = number.checked_sub(1).filter(|dish| *dish < count);
            return dish.ok_or_else(|| HouseError::NoSuchDish(asked.into()));
        }
        let small = asked.trim().to_lowercase();
        let titles: Vec<String> = (0..count).map(|dish| self.title(dish).to_lowercase()).collect();
        if let Some(dish) = titles.iter().position(|title| *title == small) {
            return Ok(dish);
        }
        let fitting: Vec<usize> = (0..count)
            .filter(|dish| !small.is_empty() && titles[*dish].contains(&small))
            .collect();
        match fitting.as_slice() {
            [dish] => Ok(*dish),
            [] => Err(HouseError::NoSuchDish(asked.into())),
            several => {
                let titles = several.iter().map(|dish| self.title(*dish)).collect();
                Err(HouseError::SeveralDishes(asked.into(), titles))
            }
        }
    }

    /// A dish of the book, cooked; those it uses are cooked first.
    ///
    /// # Errors
    ///
    /// There is no such dish, or nothing was read on its page, or it is in a circle of dishes that use each other, or
    /// leads into one.
    pub fn reckon(&self, dish: usize) -> Result<Arc<Cooked>, HouseError> {
        self.reckon_with(dish, self.draws)
    }

    /// A page that is no dish of the book, cooked in its kitchen; it may use the book's dishes.
    ///
    /// # Errors
    ///
    /// Nothing was read on it, or it uses a dish that is in a circle or leads into one.
    pub fn reckon_page(&self, text: &str) -> Result<Arc<Cooked>, HouseError> {
        let recipe = read(text);
        if tells_nothing(&recipe) {
            return Err(HouseError::NotRead(order::title(&recipe)));
        }
        let titles: Vec<String> = self.recipes.iter().map(order::title).collect();
        let own = order::title(&recipe);
        let own = titles.iter().position(|title| *title == own);
        let used = order::used_by(&recipe, own, &titles);
        Ok(self.cook(&recipe, text, &self.made_of(&used)?, self.draws))
    }

    /// All dishes in order of the book, cooked on all cores.
    ///
    /// A dish that cannot be cooked has its reason in its place.
    #[must_use]
    pub fn reckon_all(&self) -> Vec<Result<Arc<Cooked>, HouseError>> {
        for round in order::rounds(&self.uses) {
            self.cook_round(&round);
        }
        (0..self.recipes.len()).map(|dish| self.reckon(dish)).collect()
    }

    /// Gives a dish a new page. What does not hang on it stays cooked.
    pub fn edit(&mut self, dish: usize, text: &str) {
        let (Some(page), Some(recipe)) = (self.book.dishes.get_mut(dish), self.recipes.get_mut(dish)) else {
            return;
        };
        text.clone_into(&mut page.text);
        *recipe = read(text);
        self.uses = order::uses(&self.recipes);
    }

    /// Cooks dishes that do not use each other side by side. Their results are kept, so none need be handed back.
    fn cook_round(&self, round: &[usize]) {
        side_by_side(round, |dish| _ = self.reckon(*dish));
    }

    fn reckon_with(&self, dish: usize, draws: usize) -> Result<Arc<Cooked>, HouseError> {
        let (Some(recipe), Some(page)) = (self.recipes.get(dish), self.book.dishes.get(dish)) else {
            return Err(HouseError::NoSuchDish((dish + 1).to_string()));
        };
        if tells_nothing(recipe) {
            return Err(HouseError::NotRead(page.file.clone()));
        }
        self.no_circle(dish)?;
        let used = self.uses.get(dish).map_or(&[][..], Vec::as_slice);
        Ok(self.cook(recipe, &page.text, &self.made_of(used)?, draws))
    }

    fn no_circle(&self, dish: usize) -> Result<(), HouseError> {
        match order::circle(dish, &self.uses) {
            Some(round) => Err(HouseError::Circle(
                round.into_iter().map(|dish| self.title(dish)).collect(),
            )),
            None => Ok(()),
        }
    }

    /// Dishes that another one uses. Only what they make counts, so no spreads are drawn for them. A page on which
    /// nothing was read makes nothing, and its name is then a food like any other.
    fn made_of(&self, dishes: &[usize]) -> Result<Vec<Arc<Cooked>>, HouseError> {
        let cooked = dishes.iter().map(|dish| self.reckon_with(*dish, 0));
        cooked
            .filter(|made| !matches!(made, Err(HouseError::NotRead(_))))
            .collect()
    }

    /// Cooks a recipe with what it uses, unless the very same was cooked before.
    fn cook(&self, recipe: &Recipe, text: &str, used: &[Arc<Cooked>], draws: usize) -> Arc<Cooked> {
        let with = |content: Content, used: &Arc<Cooked>| content.with(&used.content.number().to_le_bytes());
        let content = used.iter().fold(self.shared.with(text.as_bytes()), with);
        let content = content.with(&(draws as u64).to_le_bytes());
        if let Some(kept) = self.kept().get(&content) {
            return Arc::clone(kept);
        }
        self.times_cooked.fetch_add(1, Ordering::Relaxed);
        let made: Vec<Made> = used.iter().map(|used| used.reckoned.made.clone()).collect();
        let (kitchen, settings) = (&self.book.kitchen, &self.book.settings);
        let reckon_it = |recipe: &Recipe, draws: usize| {
            let process = resolve(recipe, text, &self.larder, &made, kitchen, settings.measures);
            let (prices, target, seed) = (&self.prices, &settings.target, content.number());
            reckon(process, kitchen, &self.larder, &made, prices, target, draws, seed)
        };
        // Of a variation only the central figures are shown.
        let of_variations = || variants(recipe, text, &self.larder, |varied| reckon_it(varied, 0));
        let (mut reckoned, variants) = both(|| reckon_it(recipe, draws), of_variations);
        add_variations(&mut reckoned, &variants);
        let changed = |recipe: &Recipe, text: &str| {
            let process = resolve(recipe, text, &self.larder, &made, kitchen, settings.measures);
            reckon(
                process,
                kitchen,
                &self.larder,
                &made,
                &self.prices,
                &settings.target,
                0,
                content.number(),
            )
        };
        let queries = potwright_proof::queries_with(recipe, text, &reckoned, Recook(&changed));
        let cooked = Arc::new(Cooked {
            recipe: recipe.clone(),
            text: text.into(),
            reckoned,
            queries,
            content,
        });
        self.kept().insert(content, Arc::clone(&cooked));
        cooked
    }

    /// What was cooked so far. A thread that died while it held the lock has left a whole map: entries are only added.
    fn kept(&self) -> std::sync::MutexGuard<'_, BTreeMap<Content, Arc<Cooked>>> {
        self.kept.lock().unwrap_or_else(PoisonError::into_inner)
    }
}

/// What two pieces of work make, done side by side.
fn both<A, B: Send>(here: impl FnOnce() -> A, there: impl FnOnce() -> B + Send) -> (A, B) {
    thread::scope(|scope| {
        let there = scope.spawn(there);
        let here = here();
        (here, there.join().unwrap_or_else(|panic| resume_unwind(panic)))
    })
}

/// Whether a page holds neither a food nor a step: a scan, a list of names, a file of another kind.
fn tells_nothing(recipe: &Recipe) -> bool {
    recipe.operations.is_empty() && recipe.ingredients.iter().all(|line| line.items.is_empty())
}

/// Hash of what all dishes of a book share and their figures hang on, by its one printed form.
fn shared(book: &Book, prices: &Prices) -> Content {
    let settings = &book.settings;
    let printed = format!(
        "{:?}\n{:?} {:?} {:?}\n{prices:?}",
        book.kitchen, settings.measures, settings.market, settings.target
    );
    let foods = book
        .files
        .iter()
        .filter(|file| [own_larder::OWN, own_larder::IMPORTED].contains(&file.name.as_str()));
    foods.fold(Content::new().with(printed.as_bytes()), |content, file| {
        content.with(&file.bytes)
    })
}
