//! Bringing a complete composition table into a book: the official files of a folder become `larder_table.tsv`.

use std::fs::{self, File};
use std::io::{BufRead as _, BufReader, ErrorKind, Write as _};
use std::path::{Path, PathBuf};

use potwright_larder::official::{Layout, OfficialError, Reading, is_weighed, table};

use crate::decode::decode;
use crate::own_larder::IMPORTED;

/// Why a table cannot be brought in.
#[derive(Debug)]
pub enum ImportError {
    /// A folder or file cannot be read.
    Read(PathBuf, std::io::Error),
    /// The folder holds no table in a layout that is known.
    NoTable(PathBuf),
    /// A table's file is missing.
    Lacking(PathBuf, &'static str),
    /// A file of the table is not what it should be; in which folder.
    Official(PathBuf, OfficialError),
    /// A table was brought in before.
    InTheWay(PathBuf),
    /// The book's folder is none, or the table cannot be written.
    Write(PathBuf, std::io::Error),
}

impl std::fmt::Display for ImportError {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        match self {
            ImportError::Read(path, error) => write!(f, "cannot read {}: {error}", path.display()),
            ImportError::NoTable(folder) => write!(
                f,
                "{} holds no composition table that is known: neither FOOD_DES.txt and NUT_DATA.txt nor food.csv, \
                 nutrient.csv and food_nutrient.csv",
                folder.display()
            ),
            ImportError::Lacking(folder, file) => write!(
                f,
                "{} lacks {file}, without which no food has figures",
                folder.display()
            ),
            ImportError::Official(folder, error) => write!(f, "{}: {error}", folder.display()),
            ImportError::InTheWay(path) => write!(
                f,
                "{} is there already and is not overwritten; to put the new table in its place say --replace",
                path.display()
            ),
            ImportError::Write(path, error) => write!(f, "cannot write {}: {error}", path.display()),
        }
    }
}

/// The cause is in the words already, so no source is named: a chain of errors would say it twice.
impl std::error::Error for ImportError {}

/// What to do when a table was brought in before.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Before {
    /// Leave it and say so.
    Keep,
    /// Put the new one in its place.
    Replace,
}

/// How far a file is read.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct Progress {
    /// The file.
    pub file: &'static str,
    /// Bytes read.
    pub read_bytes: u64,
    /// Bytes it has.
    pub of_bytes: u64,
}

/// What was done.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Imported {
    /// What the table is called.
    pub title: &'static str,
    /// Where it is now.
    pub path: PathBuf,
    /// How many foods it has.
    pub foods: usize,
    /// How many of them have a weight of a cup, spoon or piece.
    pub weighed: usize,
    /// A food of it, key and name, as an example.
    pub example: (String, String),
    /// What was passed over, by the table's own word, and how many.
    pub passed_over: Vec<(String, usize)>,
    /// Files that were not there and could be done without.
    pub lacking: Vec<&'static str>,
}

/// After how many bytes progress is told again.
const STEP_BYTES: u64 = 1 << 23;

/// Reads the official files in `from` and writes them, in our own layout, into the folder of a book.
///
/// Progress is told at the beginning and the end of each file and every 8 MiB between. Nothing is written unless all
/// files were read without a fault, and no table is overwritten unless `before` says so.
///
/// # Errors
///
/// See [`ImportError`].
pub fn import(
    from: &Path,
    book: &Path,
    before: Before,
    progress: &mut dyn FnMut(Progress),
) -> Result<Imported, ImportError> {
    let path = book.join(IMPORTED);
    if !book.is_dir() {
        return Err(ImportError::Write(path, ErrorKind::NotFound.into()));
    }
    if before == Before::Keep && path.exists() {
        return Err(ImportError::InTheWay(path));
    }
    let layout = layout_in(from)?;
    let mut reading = Reading::new(layout);
    let mut lacking = Vec::new();
    for file in layout.files() {
        match File::open(from.join(file.name)) {
            Ok(opened) => take(&mut reading, from, file.name, opened, progress)?,
            Err(error) if error.kind() == ErrorKind::NotFound && file.may_lack => lacking.push(file.name),
            Err(error) if error.kind() == ErrorKind::NotFound => {
                return Err(ImportError::Lacking(from.to_owned(), file.name));
            }
            Err(error) => return Err(ImportError::Read(from.join(file.name), error)),
        }
    }
    let official = reading
        .done()
        .map_err(|error| ImportError::Official(from.to_owned(), error))?;
    write(&path, &table(&official, layout.title()), before)?;
    let example = official.foods.iter().next();
    Ok(Imported {
        title: layout.title(),
        path,
        foods: official.foods.len(),
        weighed: official.foods.values().filter(|food| is_weighed(food)).count(),
        example: example.map_or_else(Default::default, |(key, food)| (key.clone(), food.description.clone())),
        passed_over: official.passed_over.into_iter().collect(),
        lacking,
    })
}

/// The layout that a folder holds, told by its first file.
fn layout_in(folder: &Path) -> Result<Layout, ImportError> {
    if let Err(error) = fs::read_dir(folder) {
        return Err(ImportError::Read(folder.to_owned(), error));
    }
    let first = |layout: &Layout| {
        layout
            .files()
            .first()
            .is_some_and(|file| folder.join(file.name).is_file())
    };
    Layout::ALL
        .into_iter()
        .find(first)
        .ok_or_else(|| ImportError::NoTable(folder.to_owned()))
}

/// Hands a file over line by line.
fn take(
    reading: &mut Reading,
    folder: &Path,
    name: &'static str,
    file: File,
    progress: &mut dyn FnMut(Progress),
) -> Result<(), ImportError> {
    let of_bytes = file.metadata().map_or(0, |data| data.len());
    let (mut read_bytes, mut told_bytes) = (0, 0);
    let mut tell = |read_bytes| {
        progress(Progress {
            file: name,
            read_bytes,
            of_bytes,
        });
    };
    tell(0);
    let mut lines = BufReader::with_capacity(1 << 16, file);
    let mut bytes = Vec::new();
    for number in 1.. {
        bytes.clear();
        let count = lines
            .read_until(b'\n', &mut bytes)
            .map_err(|error| ImportError::Read(folder.join(name), error))?;
        if count == 0 {
            break;
        }
        let line = match std::str::from_utf8(&bytes) {
            Ok(line) => reading.line(name, number, line),
            Err(_) => reading.line(name, number, &decode(&bytes).text),
        };
        line.map_err(|error| ImportError::Official(folder.to_owned(), error))?;
        read_bytes += count as u64;
        if read_bytes - told_bytes >= STEP_BYTES {
            told_bytes = read_bytes;
            tell(read_bytes);
        }
    }
    tell(read_bytes);
    Ok(())
}

/// Writes beside the place and then moves there, so that what is there stays whole when something fails.
fn write(path: &Path, text: &str, before: Before) -> Result<(), ImportError> {
    let beside = path.with_extension("tsv.new");
    let put = || -> std::io::Result<()> {
        let mut file = File::create(&beside)?;
        file.write_all(text.as_bytes())?;
        file.sync_all()?;
        if before == Before::Keep {
            // Fails when something has come to stand there meanwhile.
            fs::hard_link(&beside, path).or_else(|error| match error.kind() {
                ErrorKind::AlreadyExists => Err(error),
                _ => fs::copy(&beside, path).map(|_| ()),
            })?;
            fs::remove_file(&beside)
        } else {
            fs::rename(&beside, path)
        }
    };
    put().map_err(|error| {
        _ = fs::remove_file(&beside);
        match error.kind() {
            ErrorKind::AlreadyExists => ImportError::InTheWay(path.to_owned()),
            _ => ImportError::Write(path.to_owned(), error),
        }
    })
}
