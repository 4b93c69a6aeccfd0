//! Pages in other forms than typed text: as dishes of a book, and gathered into one.

use std::fs;
use std::path::PathBuf;

use potwright_book::gathering::gather;
use potwright_book::{Book, BookError};
use potwright_manuscript::files::to_docx;

struct Folder(PathBuf);

impl Folder {
    fn new(name: &str) -> Folder {
        let path = std::env::temp_dir().join(format!("potwright-forms-{}-{name}", std::process::id()));
        _ = fs::remove_dir_all(&path);
        fs::create_dir_all(&path).expect("a folder to test in");
        Folder(path)
    }

    fn put(&self, name: &str, bytes: &[u8]) {
        let path = self.0.join(name);
        fs::create_dir_all(path.parent().expect("lies in a folder")).expect("a folder to test in");
        fs::write(path, bytes).expect("a file to test with");
    }

    fn names(&self, inner: &str) -> Vec<String> {
        let entries = fs::read_dir(self.0.join(inner)).expect("is there");
        let mut names: Vec<String> = entries
            .map(|entry| entry.expect("is there").file_name().to_string_lossy().into_owned())
            .collect();
        names.sort();
        names
    }
}

impl Drop for Folder {
    fn drop(&mut self) {
        _ = fs::remove_dir_all(&self.0);
    }
}

const SOUP: &str = "Leek soup\n\n2 leeks\n\nSlice the leeks.\n";
const TWO: &[u8] =
    br#"[{"@type": "Recipe", "name": "Pea Soup!", "keywords": "green"}, {"@type": "Recipe", "name": "Ham"}]"#;

#[test]
fn dishes_in_any_form() {
    let folder = Folder::new("dishes");
    folder.put("dishes/a.docx", &to_docx(SOUP, &[]).expect("is packed"));
    folder.put("dishes/b.RTF", b"{\\rtf1 Broth\\par}");
    folder.put("dishes/c.jsonld", TWO);
    folder.put("dishes/d.docx", b"PK\x03\x04 and no more");
    folder.put("dishes/e.pdf", b"%PDF");
    let book = Book::open(&folder.0).expect("one damaged file does not close the book");
    let dishes: Vec<(&str, &str)> = book
        .dishes
        .iter()
        .map(|dish| (dish.file.as_str(), dish.text.as_str()))
        .collect();
    assert_eq!(
        dishes,
        [
            ("a.docx", SOUP),
            ("b.RTF", "Broth\n"),
            ("c.jsonld", "Pea Soup!\n"),
            ("c.jsonld", "Ham\n"),
            ("d.docx", "")
        ]
    );
    assert_eq!(
        book.dishes[2].note.as_deref(),
        Some("the data says more than a page holds: keywords")
    );
    let why = book.dishes[4].note.as_deref().expect("says why");
    assert!(why.starts_with("the packing is damaged"), "{why}");
}

#[test]
fn a_folder_gathered() {
    let folder = Folder::new("gather");
    folder.put("in/soup.docx", &to_docx(SOUP, &[]).expect("is packed"));
    folder.put("in/old/latin.txt", b"pur\xE9e");
    folder.put(
        "in/web.html",
        &[b"<html><script type='application/ld+json'>", TWO, b"</script></html>"].concat(),
    );
    folder.put("in/broken.docx", b"PK\x03\x04");
    folder.put("in/blank.txt", b" \n");
    folder.put("in/photo.jpg", b"x");
    folder.put("in/.hidden.txt", b"x");
    folder.put("book/dishes/latin.txt", b"another page");
    let mut told = Vec::new();
    let book = folder.0.join("book");
    let done = gather(&folder.0.join("in"), &book, &mut |p| {
        told.push((p.file.to_owned(), p.number, p.of))
    })
    .expect("is gathered");
    let taken: Vec<(&str, &str)> = done.taken.iter().map(|t| (t.from.as_str(), t.file.as_str())).collect();
    assert_eq!(
        taken,
        [
            ("old/latin.txt", "latin-2.txt"),
            ("soup.docx", "soup.txt"),
            ("web.html", "pea-soup.txt"),
            ("web.html", "ham.txt")
        ]
    );
    assert_eq!(done.taken[2].left[0].value, "green");
    let refused: Vec<&str> = done.refused.iter().map(|(file, _)| file.as_str()).collect();
    assert_eq!(refused, ["blank.txt", "broken.docx"]);
    assert!(
        done.refused[1].1.contains("save the file afresh"),
        "{}",
        done.refused[1].1
    );
    assert_eq!(done.passed_over, ["photo.jpg"]);
    assert_eq!((told.len(), told[5].clone()), (6, ("web.html".to_owned(), 6, 6)));
    assert_eq!(
        fs::read(book.join("dishes/latin.txt")).expect("is there"),
        b"another page"
    );
    assert_eq!(
        fs::read_to_string(book.join("dishes/latin-2.txt")).expect("is there"),
        "purée"
    );
    assert_eq!(
        folder.names("book/dishes"),
        ["ham.txt", "latin-2.txt", "latin.txt", "pea-soup.txt", "soup.txt"]
    );
    // A second time nothing is written.
    let again = gather(&folder.0.join("in"), &book, &mut |_| {}).expect("is gathered");
    assert_eq!((again.taken.len(), again.there.len()), (0, 4));
    assert_eq!(folder.names("book/dishes").len(), 5);
}

#[test]
fn a_book_inside_the_folder_is_not_gathered_into_itself() {
    let folder = Folder::new("inside");
    folder.put("soup.txt", SOUP.as_bytes());
    folder.put("book/dishes/other.txt", SOUP.as_bytes());
    let done = gather(&folder.0, &folder.0.join("book"), &mut |_| {}).expect("is gathered");
    assert_eq!(done.taken.len(), 1);
    assert_eq!(folder.names("book/dishes"), ["other.txt", "soup.txt"]);
    assert!(matches!(
        gather(&folder.0.join("no"), &folder.0.join("new"), &mut |_| {}),
        Err(BookError::Read(..))
    ));
    assert!(
        !folder.0.join("new").exists(),
        "nothing is made when there is nothing to read"
    );
}
