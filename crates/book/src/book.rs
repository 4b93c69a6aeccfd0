//! Opening a book and saving it elsewhere.

use std::fs;
use std::io::{ErrorKind, Write as _};
use std::path::{Path, PathBuf};

use potwright_pot::Kitchen;

use crate::dish::Dish;
use crate::error::{BookError, Misread};
use crate::menu::Menu;
use crate::own_larder::{self, OwnFoods};
use crate::prices::PriceLine;
use crate::settings::Settings;
use crate::stock::Stock;
use crate::typed::DISHES;
use crate::{decode, kitchen, menu, prices, stock};

/// A book: its dishes and what holds for all of them.
#[derive(Clone, Debug, PartialEq)]
pub struct Book {
    /// What holds for the whole book.
    pub settings: Settings,
    /// The kitchen it is cooked in.
    pub kitchen: Kitchen,
    /// The price list.
    pub prices: Vec<PriceLine>,
    /// What is in the house.
    pub stock: Stock,
    /// Foods it adds to the larder.
    pub foods: OwnFoods,
    /// The dishes in order of file name.
    pub dishes: Vec<Dish>,
    /// The menus in order of file name.
    pub menus: Vec<Menu>,
    /// All files as they are, in order of name; the first three lists are read from them.
    pub files: Vec<SourceFile>,
}

/// A file of the book, byte for byte.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct SourceFile {
    /// Its place in the folder, with a forward slash.
    pub name: String,
    /// What it holds.
    pub bytes: Vec<u8>,
}

/// The files of a book beside its dishes.
const TABLES: [&str; 6] = [
    "book.toml",
    "kitchen.toml",
    "prices.tsv",
    "in_the_house.tsv",
    own_larder::OWN,
    own_larder::IMPORTED,
];

impl Default for Book {
    /// No dishes, and the settings and kitchen of books that name none.
    fn default() -> Self {
        Book {
            settings: Settings::default(),
            kitchen: Kitchen::default(),
            prices: Vec::new(),
            stock: Stock::default(),
            foods: OwnFoods::default(),
            dishes: Vec::new(),
            menus: Vec::new(),
            files: Vec::new(),
        }
    }
}

impl Book {
    /// Opens the book in a folder. A book without a title is called by the folder's name.
    ///
    /// # Errors
    ///
    /// The folder or a file cannot be read, there is no dish, or a table is not what it should be.
    pub fn open(folder: &Path) -> Result<Book, BookError> {
        let mut files = Vec::new();
        for name in TABLES {
            let path = folder.join(name);
            match fs::read(&path) {
                Ok(bytes) => files.push(SourceFile {
                    name: name.into(),
                    bytes,
                }),
                Err(error) if error.kind() == ErrorKind::NotFound => {}
                Err(error) => return Err(BookError::Read(path, error)),
            }
        }
        let dishes = pages(folder, "dishes", &DISHES)?;
        if dishes.is_empty() {
            return Err(BookError::NoDishes(folder.to_owned()));
        }
        files.extend(dishes);
        files.extend(pages(folder, "menus", &["txt"])?);
        let mut book = Book::of(files)?;
        if book.settings.title.is_empty() {
            book.settings.title = folder
                .file_name()
                .map_or(String::new(), |name| name.to_string_lossy().into_owned());
        }
        Ok(book)
    }

    /// A book made of files that are at hand already.
    ///
    /// # Errors
    ///
    /// A table is not what it should be; all faults of all tables are given.
    pub fn of(files: Vec<SourceFile>) -> Result<Book, BookError> {
        let mut book = Book::default();
        let mut faults: Vec<Misread> = Vec::new();
        match Settings::read(&table(&files, "book.toml")) {
            Ok(settings) => book.settings = settings,
            Err(found) => faults.extend(found),
        }
        match kitchen::read(&table(&files, "kitchen.toml"), book.settings.measures) {
            Ok(kitchen) => book.kitchen = kitchen,
            Err(found) => faults.extend(found),
        }
        match prices::read(&table(&files, "prices.tsv")) {
            Ok(prices) => book.prices = prices,
            Err(found) => faults.extend(found),
        }
        match stock::read(&table(&files, "in_the_house.tsv")) {
            Ok((stock, _)) => book.stock = stock,
            Err(found) => faults.extend(found),
        }
        match OwnFoods::read(&table(&files, own_larder::OWN), &table(&files, own_larder::IMPORTED)) {
            Ok(foods) => book.foods = foods,
            Err(found) => faults.extend(found),
        }
        for file in files.iter().filter(|file| file.name.starts_with("menus/")) {
            match menu::read(&file.name, &decode::decode(&file.bytes).text) {
                Ok(page) => book.menus.push(page.menu),
                Err(found) => faults.extend(found),
            }
        }
        if !faults.is_empty() {
            return Err(BookError::Misread(faults));
        }
        let dishes = |file: &SourceFile| {
            file.name
                .strip_prefix("dishes/")
                .map(|name| Dish::read(name, &file.bytes))
        };
        book.dishes = files.iter().filter_map(dishes).flatten().collect();
        book.files = files;
        Ok(book)
    }

    /// The book with another kitchen, read from the text of a `kitchen.toml`; `file` is what it is called, for the
    /// faults.
    ///
    /// # Errors
    ///
    /// The text is not what it should be.
    pub fn in_kitchen(mut self, file: &str, text: &str) -> Result<Book, BookError> {
        let of_the_file = |fault: Misread| Misread {
            file: file.into(),
            ..fault
        };
        self.kitchen = kitchen::read(text, self.settings.measures)
            .map_err(|faults| BookError::Misread(faults.into_iter().map(of_the_file).collect()))?;
        Ok(self)
    }

    /// Writes all files, byte for byte, into a new folder.
    ///
    /// # Errors
    ///
    /// The folder is there already (nothing is ever overwritten), or something cannot be written.
    pub fn save_as(&self, folder: &Path) -> Result<(), BookError> {
        match fs::create_dir(folder) {
            Ok(()) => {}
            Err(error) if error.kind() == ErrorKind::AlreadyExists => {
                return Err(BookError::InTheWay(folder.to_owned()));
            }
            Err(error) => return Err(BookError::Write(folder.to_owned(), error)),
        }
        for file in &self.files {
            write_new(&folder.join(&file.name), &file.bytes)?;
        }
        Ok(())
    }
}

/// The pages in a folder of the book, in order of name; none when it is not there.
fn pages(folder: &Path, inner: &str, endings: &[&str]) -> Result<Vec<SourceFile>, BookError> {
    let place = folder.join(inner);
    let entries = match fs::read_dir(&place) {
        Ok(entries) => entries,
        Err(error) if error.kind() == ErrorKind::NotFound && folder.is_dir() => return Ok(Vec::new()),
        Err(error) => return Err(BookError::Read(folder.to_owned(), error)),
    };
    let mut paths: Vec<PathBuf> = Vec::new();
    for entry in entries {
        let path = entry.map_err(|error| BookError::Read(place.clone(), error))?.path();
        let ends = |end: &&str| path.extension().is_some_and(|of| of.eq_ignore_ascii_case(end));
        if endings.iter().any(ends) && path.is_file() {
            paths.push(path);
        }
    }
    paths.sort();
    let read = |path: PathBuf| match (fs::read(&path), path.file_name()) {
        (Ok(bytes), Some(name)) => Ok(SourceFile {
            name: format!("{inner}/{}", name.to_string_lossy()),
            bytes,
        }),
        (Err(error), _) => Err(BookError::Read(path, error)),
        (Ok(_), None) => Err(BookError::Read(path, ErrorKind::InvalidInput.into())),
    };
    paths.into_iter().map(read).collect()
}

/// The text of a table; empty when it is missing.
fn table(files: &[SourceFile], name: &str) -> String {
    let found = files.iter().find(|file| file.name == name);
    found.map_or(String::new(), |file| decode::decode(&file.bytes).text)
}

pub(crate) fn write_new(path: &Path, bytes: &[u8]) -> Result<(), BookError> {
    let write = || -> std::io::Result<()> {
        if let Some(parent) = path.parent() {
            fs::create_dir_all(parent)?;
        }
        fs::File::create_new(path)?.write_all(bytes)
    };
    write().map_err(|error| match error.kind() {
        ErrorKind::AlreadyExists => BookError::InTheWay(path.to_owned()),
        _ => BookError::Write(path.to_owned(), error),
    })
}
