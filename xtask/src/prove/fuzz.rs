//! Every reader under libFuzzer: as many executions as time allows, none with a panic or a hang.

use std::fs;
use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result, bail};

use super::figures::{Figures, Table, meant};
use crate::run;

/// Executions each reader is meant to stand.
const EXECUTIONS: u64 = 10_000_000;

/// Seconds each reader gets, unless `POTWRIGHT_FUZZ_SECONDS` says otherwise.
const SECONDS: u64 = 100;

/// A single input may take so many seconds, built for fuzzing, before it counts as a hang.
const HANG: u64 = 10;

/// Folders with seeds, which every target is given; what it finds new goes to `fuzz/corpus/NAME`, outside the repository.
const SEEDS: [&str; 3] = ["demo/lock-house", "fuzz/seeds", "crates/manuscript/tests/files"];

pub(super) fn work(root: &Path) -> Result<Figures> {
    let seconds = match std::env::var("POTWRIGHT_FUZZ_SECONDS") {
        Ok(said) => said.parse().context("POTWRIGHT_FUZZ_SECONDS is a whole number")?,
        Err(_) => SECONDS,
    };
    if !run::succeeds("cargo", &["+nightly", "fuzz", "--version"]) {
        bail!("cargo-fuzz is needed: rustup toolchain install nightly && cargo +nightly install cargo-fuzz");
    }
    let mut table = Table::new("", &["reader", "executions", "seconds", "found", "meant to be"]);
    for name in names(root)? {
        table.rows.push(row(root, &name, seconds)?);
    }
    Ok(Figures {
        title: "Fuzzing".into(),
        says: format!(
            "Every reader under libFuzzer on one core, at most {seconds} seconds each, beginning with the seeds in the \
             repository. A panic, a page that does not give its bytes back, or an input that takes more than {HANG} \
             seconds is a find. The executions are those that were run, not those that are meant."
        ),
        tables: vec![table],
    })
}

/// The names of the readers: those of the targets' files, in order.
fn names(root: &Path) -> Result<Vec<String>> {
    let found = fs::read_dir(root.join("fuzz/fuzz_targets")).context("fuzz/fuzz_targets is not there")?;
    let files = found.filter_map(Result::ok).map(|entry| entry.path());
    let stem = |file: std::path::PathBuf| Some(file.file_stem()?.to_string_lossy().into_owned());
    let mut names: Vec<String> = files.filter_map(stem).collect();
    names.sort();
    Ok(names)
}

fn row(root: &Path, name: &str, seconds: u64) -> Result<Vec<String>> {
    let own = format!("fuzz/corpus/{name}");
    fs::create_dir_all(root.join(&own))?;
    let mut command = Command::new("cargo");
    command
        .current_dir(root)
        .args([
            "+nightly",
            "fuzz",
            "run",
            "-O",
            "--sanitizer",
            "none",
            name,
            own.as_str(),
        ])
        .args(SEEDS)
        .arg("--")
        .args([format!("-runs={EXECUTIONS}"), format!("-max_total_time={seconds}")])
        .args([format!("-timeout={HANG}"), "-max_len=4096".into()]);
    let (passed, lines) = run::lines(command)?;
    let done = lines.iter().rev().find_map(|line| executions(line));
    let (runs, took) = done.unwrap_or((0, 0));
    let met = passed && runs >= EXECUTIONS;
    let found = match (passed, done) {
        (true, _) => "nothing",
        (false, Some(_)) => "a failure, see above",
        (false, None) => "a failure before the end, see above",
    };
    Ok(vec![
        name.into(),
        runs.to_string(),
        took.to_string(),
        found.into(),
        meant(&format!("≥ {EXECUTIONS}"), met),
    ])
}

/// 'Done 5812 runs in 11 second(s)'.
fn executions(line: &str) -> Option<(u64, u64)> {
    let (runs, rest) = line.strip_prefix("Done ")?.split_once(" runs in ")?;
    Some((runs.parse().ok()?, rest.split(' ').next()?.parse().ok()?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_target_is_named_and_its_end_is_read() {
        let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("..");
        let names = names(&root).expect("is there");
        assert!(
            names.contains(&"page".to_owned()) && names.contains(&"files".to_owned()),
            "{names:?}"
        );
        assert_eq!(executions("Done 5812 runs in 11 second(s)"), Some((5812, 11)));
        assert_eq!(executions("#5812 DONE"), None);
    }
}
