//! Gathering pages: a folder of files in any form that is read, brought into a book as typed pages.
//!
//! Nothing is overwritten: a page whose name is taken gets a number behind it, and one that is there already, word for
//! word, is left alone. What could not be read is listed with the reason, and so is what the data of a recipe says
//! beyond a page.

use std::fs;
use std::path::{Path, PathBuf};

use potwright_manuscript::structured::Left;

use crate::book::write_new;
use crate::error::BookError;
use crate::typed::{PAGES, Typed, typed};

/// What came of a folder.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Gathered {
    /// Pages that were brought in, in order.
    pub taken: Vec<Taken>,
    /// Files whose pages were there already, word for word.
    pub there: Vec<String>,
    /// Files that could not be read, and why.
    pub refused: Vec<(String, String)>,
    /// Files of forms that hold no pages.
    pub passed_over: Vec<String>,
}

/// A page that was brought in.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Taken {
    /// The file it came from, in the folder.
    pub from: String,
    /// Its name in `dishes/`.
    pub file: String,
    /// What was taken for granted or left out.
    pub notes: Vec<String>,
    /// What its data says beyond a page.
    pub left: Vec<Left>,
}

/// How far it has got.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Progress<'a> {
    /// The file that is read now.
    pub file: &'a str,
    /// Its number, the first is 1.
    pub number: usize,
    /// How many there are.
    pub of: usize,
}

/// The largest file that is opened, in bytes; what reads it has limits of its own.
const LARGEST: u64 = 64 << 20;
/// No more pages of one name are tried.
const ALIKE: usize = 1000;
/// The longest name of a file that is made from a title, in characters.
const NAME: usize = 60;

/// Brings the pages of a folder, and of the folders in it, into a book; the book's folder is made when it is missing.
/// `told` hears of every file before it is read.
///
/// # Errors
///
/// The folder cannot be read, or the book's cannot be written.
pub fn gather(folder: &Path, book: &Path, told: &mut dyn FnMut(Progress)) -> Result<Gathered, BookError> {
    let dishes = book.join("dishes");
    let mut done = Gathered::default();
    let files = files(folder, book)?;
    fs::create_dir_all(&dishes).map_err(|error| BookError::Write(dishes.clone(), error))?;
    for (index, path) in files.iter().enumerate() {
        let name = name_in(folder, path);
        told(Progress {
            file: &name,
            number: index + 1,
            of: files.len(),
        });
        if !PAGES
            .iter()
            .any(|end| path.extension().is_some_and(|of| of.eq_ignore_ascii_case(end)))
        {
            done.passed_over.push(name);
            continue;
        }
        match pages(path) {
            Ok(pages) => {
                for page in pages {
                    put(page, path, &name, &dishes, &mut done)?;
                }
            }
            Err(why) => done.refused.push((name, why)),
        }
    }
    Ok(done)
}

/// The pages of a file, or why there are none.
fn pages(path: &Path) -> Result<Vec<Typed>, String> {
    let length = fs::metadata(path).map_err(|error| error.to_string())?.len();
    if length > LARGEST {
        return Err(format!(
            "the file is larger than {} MiB, the most that is read",
            LARGEST >> 20
        ));
    }
    let bytes = fs::read(path).map_err(|error| error.to_string())?;
    typed(&bytes).map_err(|why| why.to_string())
}

/// Puts a page among the dishes under a name that is free.
fn put(page: Typed, path: &Path, from: &str, dishes: &Path, done: &mut Gathered) -> Result<(), BookError> {
    let stem = match called(&page.title) {
        name if name.is_empty() => path
            .file_stem()
            .map_or(String::new(), |stem| stem.to_string_lossy().into_owned()),
        name => name,
    };
    for count in 1..ALIKE {
        let file = if count == 1 {
            format!("{stem}.txt")
        } else {
            format!("{stem}-{count}.txt")
        };
        let place = dishes.join(&file);
        match fs::read(&place) {
            Ok(bytes) if bytes == page.text.as_bytes() => {
                done.there.push(from.to_owned());
                return Ok(());
            }
            Ok(_) => {}
            Err(_) => {
                write_new(&place, page.text.as_bytes())?;
                done.taken.push(Taken {
                    from: from.to_owned(),
                    file,
                    notes: page.notes,
                    left: page.left,
                });
                return Ok(());
            }
        }
    }
    let why = format!("{ALIKE} pages are called '{stem}' already");
    done.refused.push((from.to_owned(), why));
    Ok(())
}

/// A file name made of a title: small letters and figures, parted by hyphens.
fn called(title: &str) -> String {
    let words = title
        .split(|letter: char| !letter.is_alphanumeric())
        .filter(|word| !word.is_empty());
    let name = words.map(str::to_lowercase).collect::<Vec<_>>().join("-");
    name.chars()
        .take(NAME)
        .collect::<String>()
        .trim_end_matches('-')
        .to_owned()
}

/// All files of a folder and of those in it, in order; links are not followed, hidden files and the book itself are
/// left out.
fn files(folder: &Path, book: &Path) -> Result<Vec<PathBuf>, BookError> {
    let book = book.canonicalize().ok();
    let mut found = Vec::new();
    let mut open = vec![folder.to_owned()];
    while let Some(inner) = open.pop() {
        let fault = |error| BookError::Read(inner.clone(), error);
        for entry in fs::read_dir(&inner).map_err(fault)? {
            let entry = entry.map_err(fault)?;
            let (path, kind) = (entry.path(), entry.file_type().map_err(fault)?);
            let hidden = entry.file_name().to_string_lossy().starts_with('.');
            let own = book.is_some() && kind.is_dir() && path.canonicalize().ok() == book;
            if kind.is_dir() && !hidden && !own {
                open.push(path);
            } else if kind.is_file() && !hidden {
                found.push(path);
            }
        }
    }
    found.sort();
    Ok(found)
}

fn name_in(folder: &Path, path: &Path) -> String {
    path.strip_prefix(folder)
        .unwrap_or(path)
        .to_string_lossy()
        .replace('\\', "/")
}

#[cfg(test)]
mod tests {
    use super::called;

    #[test]
    fn names_from_titles() {
        for (title, name) in [
            ("Pea & Ham Soup!", "pea-ham-soup"),
            ("  ", ""),
            ("../../etc", "etc"),
            ("Crème", "crème"),
        ] {
            assert_eq!(called(title), name);
        }
    }
}
