//! From the arguments to a page and the house it is cooked in.

use std::fs;
use std::io::{self, Read};
use std::path::{Path, PathBuf};
use std::sync::Arc;

use anyhow::{Context, anyhow, bail};
use potwright_book::{Book, demo};
use potwright_house::{Cooked, House, HouseError};
use potwright_larder::Larder;

use crate::arguments::Page;
use crate::output;

/// A page with the house it is cooked in.
pub(crate) struct Opened {
    /// The house.
    pub house: House,
    /// The page.
    pub text: String,
    /// What the page is called: its file, or its dish's title.
    pub place: String,
    /// Its dish in the book, when it was asked for by number or title.
    dish: Option<usize>,
}

impl Opened {
    /// The page, cooked.
    pub(crate) fn cooked(&self) -> anyhow::Result<Arc<Cooked>> {
        Ok(match self.dish {
            Some(dish) => self.house.reckon(dish)?,
            None => self
                .house
                .reckon_page(&self.text)
                .map_err(|error| self.of_the_page(error))?,
        })
    }

    /// A page is called by its file where it is told that nothing was read on it.
    fn of_the_page(&self, error: HouseError) -> HouseError {
        match error {
            HouseError::NotRead(_) => HouseError::NotRead(self.place.clone()),
            other => other,
        }
    }
}

/// Opens a page: the standard input, a file, or a dish of the book.
pub(crate) fn page(asked: &Page) -> anyhow::Result<Opened> {
    if asked.page == "-" {
        let mut bytes = Vec::new();
        io::stdin()
            .lock()
            .read_to_end(&mut bytes)
            .context("cannot read the standard input")?;
        return typed(&bytes, "standard input", asked.book.as_deref(), asked);
    }
    let path = Path::new(&asked.page);
    if path.is_dir() {
        bail!(
            "{} is a folder; for a whole book: potwright digest {}",
            path.display(),
            path.display()
        );
    }
    if path.exists() {
        let bytes = fs::read(path).with_context(|| format!("cannot read {}", path.display()))?;
        let book = asked.book.clone().or_else(|| book_around(path));
        return typed(&bytes, &asked.page, book.as_deref(), asked);
    }
    dish(asked)
}

/// A page that was typed somewhere.
fn typed(bytes: &[u8], place: &str, book: Option<&Path>, asked: &Page) -> anyhow::Result<Opened> {
    let pages = potwright_book::typed::typed(bytes).map_err(|why| anyhow!("{place}: {why}"))?;
    let others = pages.len().saturating_sub(1);
    let page = pages.into_iter().next().unwrap_or_default();
    for note in &page.notes {
        output::say("note", &format!("{place}: {note}"));
    }
    if others > 0 {
        let says = format!("it holds {others} more; to bring all into a book: potwright gather FOLDER --into BOOK");
        output::say("note", &format!("{place}: '{}' is taken; {says}", page.title));
    }
    let book = match book {
        Some(folder) => Book::open(folder)?,
        None => Book::default(),
    };
    Ok(Opened {
        house: house(book, asked.kitchen.as_deref())?,
        text: page.text,
        place: place.into(),
        dish: None,
    })
}

/// A dish of the book, by number or title.
fn dish(asked: &Page) -> anyhow::Result<Opened> {
    let book = match &asked.book {
        Some(folder) => Book::open(folder)?,
        None => demo::book()?,
    };
    let house = house(book, asked.kitchen.as_deref())?;
    let dish = house.find(&asked.page).with_context(|| {
        let count = house.book().dishes.len();
        let title = &house.book().settings.title;
        format!(
            "no file is called '{}'. For a dish of '{title}' give its number, 1 to {count}, or title",
            asked.page
        )
    })?;
    let text = house
        .book()
        .dishes
        .get(dish)
        .map_or(String::new(), |dish| dish.text.clone());
    Ok(Opened {
        text,
        place: house.title(dish),
        house,
        dish: Some(dish),
    })
}

/// The house of a book, in another kitchen when one is named. What its opening has to say is said.
pub(crate) fn house(book: Book, kitchen: Option<&Path>) -> anyhow::Result<House> {
    if let Some(fault) = Larder::built_in_fault() {
        bail!("the program's own tables of foods have a fault, so nothing can be cooked: {fault}");
    }
    let book = match kitchen {
        Some(path) => {
            let text = fs::read_to_string(path).with_context(|| format!("cannot read {}", path.display()))?;
            book.in_kitchen(&path.display().to_string(), &text)?
        }
        None => book,
    };
    let house = House::open(book);
    for note in house.notes() {
        output::say("note", note);
    }
    Ok(house)
}

/// The folder of the book a page lies in: the parent of its folder `dishes`, when that has a table of a book.
fn book_around(page: &Path) -> Option<PathBuf> {
    let page = page.canonicalize().ok()?;
    let dishes = page.parent()?;
    let folder = dishes.parent()?;
    let named = dishes.file_name().is_some_and(|name| name == "dishes");
    let tables = [
        "book.toml",
        "kitchen.toml",
        "prices.tsv",
        "larder.tsv",
        "larder_table.tsv",
    ];
    (named && tables.iter().any(|table| folder.join(table).exists())).then(|| folder.to_owned())
}
