//! Books as folders: opening, faults with their place, saving without loss and without overwriting.

use std::fs;
use std::path::{Path, PathBuf};

use potwright_book::{Book, BookError, demo};

/// A folder of its own for one test, removed afterwards.
struct Folder(PathBuf);

impl Folder {
    fn new(name: &str) -> Folder {
        let path = std::env::temp_dir().join(format!("potwright-book-{}-{name}", std::process::id()));
        _ = fs::remove_dir_all(&path);
        fs::create_dir_all(path.join("dishes")).expect("a folder to test in");
        Folder(path)
    }

    fn put(&self, name: &str, bytes: &[u8]) {
        fs::write(self.0.join(name), bytes).expect("a file to test with");
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        _ = fs::remove_dir_all(&self.0);
    }
}

fn demo_folder() -> PathBuf {
    Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo/lock-house")
}

#[test]
fn the_demo_book_in_the_program_is_the_one_in_the_folder() {
    assert_eq!(demo::book().expect("sound"), Book::open(&demo_folder()).expect("opens"));
}

#[test]
fn a_book_of_dishes_alone_takes_the_defaults() {
    let folder = Folder::new("alone");
    folder.put("dishes/b.txt", b"Second");
    folder.put("dishes/a.TXT", b"First");
    folder.put("dishes/notes.md", b"not a dish");
    let book = Book::open(&folder.0).expect("opens");
    let texts: Vec<&str> = book.dishes.iter().map(|dish| dish.text.as_str()).collect();
    assert_eq!(texts, ["First", "Second"]);
    assert_eq!(book.kitchen, potwright_pot::Kitchen::default());
    assert!(book.settings.title.starts_with("potwright-book-"));
}

#[test]
fn faults_of_all_tables_come_together() {
    let folder = Folder::new("faults");
    folder.put("dishes/a.txt", b"Soup");
    folder.put("book.toml", b"titel = 1\n");
    folder.put("kitchen.toml", b"\nroom = \"warm\"\n");
    folder.put("prices.tsv", b"name\tamount\tunit\tprice\nsalt\t0\tkg\t1\n");
    let error = Book::open(&folder.0).expect_err("three faults");
    let BookError::Misread(faults) = &error else {
        panic!("{error}")
    };
    let places: Vec<(&str, usize)> = faults.iter().map(|fault| (fault.file.as_str(), fault.line)).collect();
    assert_eq!(places, [("book.toml", 1), ("kitchen.toml", 2), ("prices.tsv", 2)]);
    assert_eq!(error.to_string().lines().count(), 3);
}

#[test]
fn no_folder_and_no_dishes_are_told_apart() {
    let folder = Folder::new("empty");
    assert!(matches!(Book::open(&folder.0), Err(BookError::NoDishes(_))));
    assert!(matches!(
        Book::open(&folder.0.join("nowhere")),
        Err(BookError::Read(..))
    ));
}

#[test]
fn saving_loses_no_byte_and_overwrites_nothing() {
    let folder = Folder::new("save");
    folder.put("dishes/a.txt", b"pur\xE9e \r\n\t\n");
    folder.put("kitchen.toml", b"# mine\nroom=20 # warm\n");
    let book = Book::open(&folder.0).expect("opens");
    assert!(book.dishes[0].note.is_some());
    let copy = folder.0.join("copy");
    book.save_as(&copy).expect("a new place");
    for name in ["dishes/a.txt", "kitchen.toml"] {
        let read = |folder: &Path| fs::read(folder.join(name)).expect("is there");
        assert_eq!(read(&copy), read(&folder.0), "{name}");
    }
    assert!(matches!(book.save_as(&copy), Err(BookError::InTheWay(_))));
    assert!(matches!(book.save_as(&folder.0), Err(BookError::InTheWay(_))));
}
