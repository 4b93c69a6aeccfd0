//! How well the reader does on a folder of pages with readings made by hand: `cargo xtask score FOLDER [--lines]`.
//!
//! FOLDER holds `texts/ID.txt`, `readings/ID.json` and a `score.py` that compares two folders of readings. Every text is
//! read into a folder under `target/`, then the folder's own scorer judges them.

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
    for part in ["texts", "readings", "score.py"] {
        if !folder.join(part).exists() {
            bail!("{} has no {part}", folder.display());
        }
    }
    // Of its own for every run: two may go on at once.
    let read = root.join("target").join(format!("readings-{}", std::process::id()));
    read_texts(&root, &folder.join("texts"), &read)?;
    let mut scorer = Command::new("python3");
    scorer
        .arg(folder.join("score.py"))
        .arg(folder.join("readings"))
        .arg(&read)
        .args(flags);
    let judged = run::passes(scorer)?;
    std::fs::remove_dir_all(&read).with_context(|| format!("removing {}", read.display()))?;
    if !judged {
        bail!("the scorer did not end well");
    }
    Ok(())
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
