//! `cargo xtask larder --from FOLDER`: rewrites the generated tables of the larder from the official USDA files.
//!
//! In: the hand-kept key file `names.tsv` (our name → NDB number), `blends.tsv` (foods computed from several rows),
//! and a folder with the official tables in one of the layouts that [`official`] reads. Out: `composition.tsv`,
//! `weights.tsv` and `refuse.tsv`, marked as generated in their first line. With `--check` nothing is written and a
//! difference is an error.
//!
//! Only figures are carried over, under our own names; no description and no trade name of the official files
//! reaches a table.

#![allow(clippy::print_stdout, reason = "a task talks to the terminal")]

mod blend;
pub(crate) mod official;
mod render;

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result, bail};

use potwright_larder::Kind;
use potwright_larder::official::household;

/// A row of the key file, as far as the generator needs it.
pub(crate) struct Named {
    pub(crate) key: String,
    /// Words of the food's own names: 'leek' in a weight's text is then a piece of it.
    pub(crate) words: Vec<String>,
    /// NDB number; none for a blend and for what is kept by hand.
    pub(crate) ndb: Option<String>,
    pub(crate) blend: bool,
    /// The row is another food's, for want of one of its own: the notes say whose.
    pub(crate) stands_in: bool,
    pub(crate) kind: Kind,
}

/// Runs the generator: `--from FOLDER [--check]`.
pub(crate) fn run(args: &[String]) -> Result<()> {
    let folder = folder(args)?;
    let check = args.iter().any(|arg| arg == "--check");
    let differing = regenerate(&folder, check)?;
    match (check, differing.as_slice()) {
        (_, []) => println!("larder tables: up to date"),
        (true, files) => bail!(
            "not as the official files give them: {}; run without --check",
            files.join(", ")
        ),
        (false, files) => println!("larder tables: wrote {}", files.join(", ")),
    }
    Ok(())
}

fn folder(args: &[String]) -> Result<PathBuf> {
    let place = args.iter().position(|arg| arg == "--from");
    let folder = place.and_then(|place| args.get(place + 1));
    folder
        .map(PathBuf::from)
        .context("usage: cargo xtask larder --from FOLDER [--check]")
}

/// Makes the tables afresh; gives the names of those that differ from what stands in the project, and writes them
/// unless only a check was asked for.
fn regenerate(folder: &Path, check: bool) -> Result<Vec<String>> {
    let data = Path::new(env!("CARGO_MANIFEST_DIR")).join("../crates/larder/data");
    let names = names(&read(&data.join("names.tsv"))?)?;
    let blends = blend::read(&read(&data.join("blends.tsv"))?)?;
    let official = official::read(folder)?;
    let tables = [
        ("composition.tsv", render::composition(&names, &blends, &official)?),
        ("weights.tsv", render::weights(&names, &official)?),
        ("refuse.tsv", render::refuse(&names, &official)?),
    ];
    let mut differing = Vec::new();
    for (file, text) in tables {
        let path = data.join(file);
        if fs::read_to_string(&path).unwrap_or_default() != text {
            differing.push(file.to_owned());
            if !check {
                fs::write(&path, text).with_context(|| format!("writing {}", path.display()))?;
            }
        }
    }
    Ok(differing)
}

fn read(path: &Path) -> Result<String> {
    fs::read_to_string(path).with_context(|| format!("reading {}", path.display()))
}

/// The rows of a project table without comments and header, split into cells.
pub(crate) fn rows(text: &str) -> impl Iterator<Item = Vec<&str>> {
    text.lines()
        .filter(|line| !line.starts_with('#') && !line.is_empty())
        .skip(1)
        .map(|line| line.split('\t').collect())
}

fn names(text: &str) -> Result<Vec<Named>> {
    let mut names = Vec::new();
    for cells in rows(text) {
        let &[
            key,
            name,
            plural,
            synonyms,
            ndb,
            kind,
            _state,
            _animal,
            _shop,
            notes,
            ..,
        ] = cells.as_slice()
        else {
            bail!("names.tsv: too few cells in '{}'", cells.join(" "));
        };
        let numbered = ndb.len() == 5 && ndb.bytes().all(|byte| byte.is_ascii_digit());
        if !numbered && !["blend", "own"].contains(&ndb) {
            bail!("names.tsv: '{ndb}' of '{key}' is neither an NDB number nor 'blend' nor 'own'");
        }
        names.push(Named {
            key: key.to_owned(),
            words: household::words(&[name, plural, synonyms].join(" ")),
            ndb: numbered.then(|| ndb.to_owned()),
            blend: ndb == "blend",
            stands_in: notes.contains("stands for"),
            kind: Kind::from_word(kind).with_context(|| format!("names.tsv: '{kind}' of '{key}' is no kind"))?,
        });
    }
    Ok(names)
}

#[cfg(test)]
mod tests {
    use super::regenerate;
    use std::path::Path;

    #[test]
    fn the_tables_are_what_the_official_files_give() {
        let Ok(folder) = std::env::var("POTWRIGHT_DATA") else {
            println!("not run: POTWRIGHT_DATA names no folder with the official tables");
            return;
        };
        let differing = regenerate(Path::new(&folder), true).expect("the official files can be read");
        assert!(differing.is_empty(), "differ: {differing:?}");
    }
}
