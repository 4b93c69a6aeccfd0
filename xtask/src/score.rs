//! How well the reader does on a folder of pages with readings made by hand: `cargo xtask score FOLDER [--lines]`.
//!
//! FOLDER holds `texts/ID.txt` and `readings/ID.json`. Every text is read into a folder under `target/`, then a `score.py`
//! that compares two folders of readings judges them: the folder's own, or that of the folder POTWRIGHT_CORPUS names.

use std::path::{Path, PathBuf};
use std::process::Command;

use anyhow::{Context, bail};

use crate::{run, tree};

/// Reads the texts and runs the scorer.
///
/// # Errors
/// When the folder is not laid out so, when the reader does not build or python3 is missing, when the scorer fails.
pub(crate) fn run(arguments: &[String]) -> anyhow::Result<()> {
    let (flags, folders): (Vec<&String>, Vec<&String>) = arguments.iter().partition(|a| a.starts_with("--"));
    let [folder] = folders.as_slice() else {
        bail!("say which folder: cargo xtask score FOLDER [--lines]");
    };
    if let Some(unknown) = flags.iter().find(|flag| *flag != &"--lines" && *flag != &"--json") {
        bail!("'{unknown}' is no option of score; there are --lines and --json");
    }
    let root = tree::root()?;
    let folder = std::path::absolute(PathBuf::from(folder))?;
    for part in ["texts", "readings"] {
        if !folder.join(part).exists() {
            bail!("{} has no {part}", folder.display());
        }
    }
    let scorer = scorer_for(&folder)?;
    // Of its own for every run: two may go on at once.
    let read = root.join("target").join(format!("readings-{}", std::process::id()));
    read_texts(&root, &folder.join("texts"), &read)?;
    let mut judge = Command::new("python3");
    judge.arg(scorer).arg(folder.join("readings")).arg(&read).args(flags);
    let judged = run::passes(judge)?;
    std::fs::remove_dir_all(&read).with_context(|| format!("removing {}", read.display()))?;
    if !judged {
        bail!("the scorer did not end well");
    }
    Ok(())
}

/// The folder's own scorer, or that of the corpus.
fn scorer_for(folder: &Path) -> anyhow::Result<PathBuf> {
    let corpus = std::env::var_os("POTWRIGHT_CORPUS").map(PathBuf::from);
    let places = std::iter::once(folder.to_owned()).chain(corpus);
    let found = places
        .map(|place| place.join("score.py"))
        .find(|scorer| scorer.exists());
    found.with_context(|| {
        format!(
            "{} has no score.py; put one there, or let POTWRIGHT_CORPUS name a folder that has one",
            folder.display()
        )
    })
}

fn read_texts(root: &Path, texts: &Path, read: &Path) -> anyhow::Result<()> {
    let mut reader = run::cargo(root);
    reader.args([
        "run",
        "--quiet",
        "--package",
        "potwright-manuscript",
        "--example",
        "readings",
        "--",
    ]);
    reader.arg(texts).arg(read);
    if !run::passes(reader)? {
        bail!("{} could not be read", texts.display());
    }
    Ok(())
}
