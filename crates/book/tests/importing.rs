//! Bringing composition tables into a book's folder: small invented tables in both layouts.

use std::fs;
use std::path::{Path, PathBuf};

use potwright_book::importing::{Before, ImportError, Imported, import};
use potwright_book::{Book, own_larder};

/// A folder of its own for one test, with a book and a table in it, removed afterwards.
struct Folder(PathBuf);

impl Folder {
    fn new(name: &str, files: &[(&str, &[u8])]) -> Folder {
        let folder = Folder(std::env::temp_dir().join(format!("potwright-import-{}-{name}", std::process::id())));
        _ = fs::remove_dir_all(&folder.0);
        for place in ["book/dishes", "table"] {
            fs::create_dir_all(folder.0.join(place)).expect("a folder to test in");
        }
        fs::write(
            folder.book().join("dishes/a.txt"),
            "Soup\n\n200 g lockwort, raw\n\nBoil it.\n",
        )
        .expect("a dish");
        for (file, bytes) in files {
            fs::write(folder.table().join(file), bytes).expect("a file to test with");
        }
        folder
    }

    fn book(&self) -> PathBuf {
        self.0.join("book")
    }

    fn table(&self) -> PathBuf {
        self.0.join("table")
    }

    fn import(&self, before: Before) -> Result<Imported, ImportError> {
        import(&self.table(), &self.book(), before, &mut |_| {})
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        _ = fs::remove_dir_all(&self.0);
    }
}

/// Invented foods; the second name has an é of Latin-1 in it, as the release has.
const RELEASE: [(&str, &[u8]); 3] = [
    (
        "FOOD_DES.txt",
        b"~99998~^~1100~^~Lockwort, raw~^~~^~~^~~^~~^~~^12^~~^6.25^4^9^4\r\n~99999~^~0600~^~Lock consomm\xE9~^~~^~~^~~^~~^~~^0^~~^^^^\r\n",
    ),
    (
        "NUT_DATA.txt",
        b"~99998~^~255~^90^\r\n~99998~^~203~^2^\r\n~99998~^~204~^1^\r\n~99998~^~205~^6^\r\n~99998~^~207~^1^\r\n~99999~^~255~^95^\r\n",
    ),
    ("WEIGHT.txt", b"~99998~^1^1^~cup, chopped~^90^^\r\n"),
];

#[test]
fn the_release_becomes_a_table_of_the_book() {
    let folder = Folder::new("release", &RELEASE);
    let mut told = Vec::new();
    let done = import(&folder.table(), &folder.book(), Before::Keep, &mut |progress| {
        told.push((progress.file, progress.read_bytes == progress.of_bytes));
    });
    let done = done.unwrap_or_else(|error| panic!("{error}"));
    assert_eq!((done.foods, done.weighed, done.lacking.len()), (2, 1, 0));
    assert_eq!(done.example, ("sr99998".into(), "Lockwort, raw".into()));
    assert_eq!(
        told.iter().filter(|(_, whole)| *whole).count(),
        3,
        "each file is read to its end"
    );
    let book = Book::open(&folder.book()).unwrap_or_else(|error| panic!("{error}"));
    let names: Vec<&str> = book.foods.imported.iter().map(|food| food.name.as_str()).collect();
    assert_eq!(names, ["Lockwort, raw", "Lock consommé"]);
    assert!(book.files.iter().any(|file| file.name == own_larder::IMPORTED));
}

#[test]
fn nothing_is_overwritten_unasked() {
    let folder = Folder::new("twice", &RELEASE);
    let path = folder.book().join(own_larder::IMPORTED);
    fs::write(&path, "# the writer's own work\n").expect("a file to test with");
    let error = folder.import(Before::Keep).expect_err("it is in the way");
    assert!(
        matches!(&error, ImportError::InTheWay(place) if *place == path),
        "{error}"
    );
    assert_eq!(
        fs::read_to_string(&path).expect("still there"),
        "# the writer's own work\n"
    );
    assert_eq!(
        folder
            .import(Before::Replace)
            .map(|done| done.foods)
            .expect("asked for"),
        2
    );
    assert!(fs::read_to_string(&path).expect("written").contains("Lockwort"));
    let beside = fs::read_dir(folder.book()).expect("there").count();
    assert_eq!(beside, 2, "the dishes and the table, nothing half done");
}

#[test]
fn a_folder_of_csv_files_needs_three_of_them() {
    let food: &[u8] = b"fdc_id,data_type,description,food_category_id\n1,foundation_food,Lockwort,11\n";
    let nutrient: &[u8] = b"id,name,unit_name,nutrient_nbr,rank\n1051,Water,G,255,100\n";
    let amounts: &[u8] = b"id,fdc_id,nutrient_id,amount\n1,1,1051,90\n";
    let folder = Folder::new("csv", &[("food.csv", food), ("nutrient.csv", nutrient)]);
    let error = folder.import(Before::Keep).expect_err("no figures");
    assert!(
        error
            .to_string()
            .ends_with("lacks food_nutrient.csv, without which no food has figures"),
        "{error}"
    );
    fs::write(folder.table().join("food_nutrient.csv"), amounts).expect("a file to test with");
    let done = folder.import(Before::Keep).unwrap_or_else(|error| panic!("{error}"));
    assert_eq!((done.foods, done.example.0.as_str()), (1, "fdc1"));
    assert_eq!(done.lacking.len(), 6);
}

#[test]
fn faults_leave_nothing_behind() {
    let folder = Folder::new(
        "faults",
        &[RELEASE[0], ("NUT_DATA.txt", b"~99998~^~255~^90^\n~99998~^~203~^two^\n")],
    );
    let error = folder.import(Before::Keep).expect_err("no number");
    assert!(
        error
            .to_string()
            .ends_with("NUT_DATA.txt, line 2: 'Nutr_Val' is 'two', which is no number"),
        "{error}"
    );
    assert!(!folder.book().join(own_larder::IMPORTED).exists());
    let empty = Folder::new("empty", &[]);
    let error = empty.import(Before::Keep).expect_err("no table");
    assert!(matches!(error, ImportError::NoTable(_)), "{error}");
    let nowhere = import(Path::new("no such folder"), &empty.book(), Before::Keep, &mut |_| {});
    assert!(matches!(nowhere, Err(ImportError::Read(..))));
    let nobook = import(&folder.table(), Path::new("no such folder"), Before::Keep, &mut |_| {});
    assert!(matches!(nobook, Err(ImportError::Write(..))));
}
