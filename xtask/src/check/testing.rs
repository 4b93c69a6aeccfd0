//! The test steps: running them, counting them, listing what could not run.
//!
//! A test that finds it cannot run (a program is missing) writes its reason to `target/not-run/NAME` and returns.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use super::summary::Outcome;
use crate::run;

/// All unit and integration tests: by nextest where it is installed, by cargo itself otherwise.
pub(super) fn all(root: &Path) -> Result<Outcome> {
    let notes = notes(root);
    if notes.exists() {
        fs::remove_dir_all(&notes).with_context(|| format!("cannot empty {}", notes.display()))?;
    }
    let mut command = run::cargo(root);
    if run::succeeds("cargo", &["nextest", "--version"]) {
        command.args([
            "nextest",
            "run",
            "--workspace",
            "--no-fail-fast",
            "--status-level",
            "fail",
        ]);
        command.args(["--final-status-level", "skip", "--hide-progress-bar"]);
    } else {
        command.args(["test", "--workspace", "--lib", "--bins", "--tests", "--no-fail-fast"]);
    }
    for variable in ["POTWRIGHT_REFERENCE", "POTWRIGHT_DATA", "POTWRIGHT_CORPUS"] {
        if std::env::var_os(variable).is_none() {
            println!("{variable} is not set: comparisons with that folder are left out, their figures are tested");
        }
    }
    counted(run::lines(command)?)
}

/// The examples in the documentation.
pub(super) fn examples(root: &Path) -> Result<Outcome> {
    let mut command = run::cargo(root);
    command.args(["test", "--workspace", "--doc", "--no-fail-fast"]);
    counted(run::lines(command)?)
}

/// What tests noted down as not run, a line each.
pub(super) fn noted_as_not_run(root: &Path) -> Vec<String> {
    let Ok(entries) = fs::read_dir(notes(root)) else {
        return Vec::new();
    };
    let mut lines: Vec<String> = entries
        .filter_map(Result::ok)
        .map(|entry| {
            let reason = fs::read_to_string(entry.path()).unwrap_or_default();
            format!("{}: {}", entry.file_name().to_string_lossy(), reason.trim())
        })
        .collect();
    lines.sort();
    lines
}

fn notes(root: &Path) -> PathBuf {
    root.join("target").join("not-run")
}

fn counted((passed, lines): (bool, Vec<String>)) -> Result<Outcome> {
    let (good, bad, skipped) = count(&lines);
    let mut outcome = Outcome::of(passed, "see above");
    if good + bad == 0 {
        outcome = Outcome::failed("no test was run".into());
    }
    outcome.tests = Some((good, bad));
    outcome.skipped = skipped;
    Ok(outcome)
}

/// Tests passed and failed, and the names of those skipped, from the lines of either runner.
///
/// Under nextest the output of a failed test holds a result line of its own, so only the summary counts there.
fn count(lines: &[String]) -> (usize, usize, Vec<String>) {
    let summary = |line: &&String| line.trim_start().starts_with("Summary [");
    let results: Vec<&String> = match lines.iter().rfind(summary) {
        Some(line) => vec![line],
        None => lines.iter().filter(|line| line.starts_with("test result:")).collect(),
    };
    let sum = |word: &str| results.iter().map(|line| before(line, word)).sum();
    let skipped = lines
        .iter()
        .filter_map(|line| skipped(line.trim()))
        .map(str::to_owned)
        .collect();
    (sum(" passed"), sum(" failed"), skipped)
}

/// The name of the test that a line says is skipped.
fn skipped(line: &str) -> Option<&str> {
    let by_cargo = line
        .strip_prefix("test ")
        .and_then(|rest| rest.split_once(" ... ignored"))
        .map(|(name, _)| name);
    let by_nextest = || {
        line.strip_prefix("SKIP [")
            .and_then(|rest| rest.split_once("] "))
            .map(|(_, name)| name)
    };
    by_cargo.or_else(by_nextest).map(str::trim)
}

/// The number that stands before a word.
fn before(line: &str, word: &str) -> usize {
    let Some((head, _)) = line.split_once(word) else {
        return 0;
    };
    let digits = head.rsplit(|c: char| !c.is_ascii_digit()).next().unwrap_or("");
    digits.parse().unwrap_or(0)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn lines(text: &str) -> Vec<String> {
        text.lines().map(str::to_owned).collect()
    }

    #[test]
    fn counts_what_cargo_prints() {
        let text = "test a::b ... ok\ntest c::d ... ignored, slow\n\
            test result: FAILED. 12 passed; 1 failed; 1 ignored; 0 measured; 0 filtered out; finished in 0.1s\n\
            test result: ok. 3 passed; 0 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.1s";
        assert_eq!(count(&lines(text)), (15, 1, vec!["c::d".to_owned()]));
    }

    #[test]
    fn counts_what_nextest_prints() {
        let text = "        SKIP [         ] (   4/  4) crate tests::slow\n\
            test result: FAILED. 0 passed; 1 failed; 0 ignored; 0 measured; 0 filtered out; finished in 0.0s\n\
            ------------\n     Summary [   0.02s] 3 tests run: 2 passed (1 slow), 1 failed, 1 skipped";
        let (passed, failed, skipped) = count(&lines(text));
        assert_eq!((passed, failed, skipped.len()), (2, 1, 1));
    }

    #[test]
    fn a_run_without_tests_fails() {
        let outcome = counted((true, lines("test result: ok. 0 passed; 0 failed;"))).expect("counts");
        assert_eq!(outcome.state, super::super::summary::State::Failed);
    }
}
