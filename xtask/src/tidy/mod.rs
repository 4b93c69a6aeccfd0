//! Tidy rules: what neither compiler nor linter looks after. One rule, one file.

mod direction;
mod module_docs;
mod purity;
mod readmes;
mod sizes;
mod sources;
mod strays;

use std::path::Path;

use anyhow::{Result, bail};

use crate::tree::{self, File};

/// A rule: its name and what finds the faults in the files of the project.
struct Rule {
    name: &'static str,
    check: fn(&[File]) -> Vec<Fault>,
}

const RULES: &[Rule] = &[
    Rule {
        name: "crates depend one way",
        check: direction::check,
    },
    Rule {
        name: "core crates stay by themselves",
        check: purity::check,
    },
    Rule {
        name: "every table row has a source",
        check: sources::check,
    },
    Rule {
        name: "every module says what it is",
        check: module_docs::check,
    },
    Rule {
        name: "no file is too long",
        check: sizes::check,
    },
    Rule {
        name: "every crate has a README",
        check: readmes::check,
    },
    Rule {
        name: "nothing strays in",
        check: strays::check,
    },
];

/// A fault at a place.
#[derive(Clone, Debug, PartialEq, Eq)]
struct Fault {
    path: String,
    /// Counted from 1; nought for the whole file.
    line: usize,
    says: String,
}

impl Fault {
    fn new(path: &str, line: usize, says: impl Into<String>) -> Self {
        Fault {
            path: path.into(),
            line,
            says: says.into(),
        }
    }
}

/// The rules by themselves.
///
/// # Errors
///
/// There are faults.
pub(crate) fn alone() -> Result<()> {
    match run(&tree::root()?)? {
        0 => Ok(()),
        faults => bail!("{faults} faults"),
    }
}

/// Checks all rules, prints the faults and counts them.
pub(crate) fn run(root: &Path) -> Result<usize> {
    let files = tree::files(root)?;
    let mut found = 0;
    for rule in RULES {
        let faults = (rule.check)(&files);
        println!(
            "{}: {}",
            rule.name,
            if faults.is_empty() {
                "yes".into()
            } else {
                format!("{} faults", faults.len())
            }
        );
        for fault in &faults {
            println!("  {}:{}: {}", fault.path, fault.line, fault.says);
        }
        found += faults.len();
    }
    Ok(found)
}

/// The crate a path belongs to, and the rest of the path.
fn crate_of(path: &str) -> Option<(&str, &str)> {
    path.strip_prefix("crates/")?.split_once('/')
}

/// The lines of a source file before its unit tests, each with its number.
fn before_tests(text: &str) -> impl Iterator<Item = (usize, &str)> {
    text.lines()
        .enumerate()
        .map(|(at, line)| (at + 1, line))
        .take_while(|(_, line)| line.trim() != "#[cfg(test)]")
}

#[cfg(test)]
fn file(path: &str, text: &str) -> File {
    File {
        path: path.into(),
        text: text.into(),
    }
}
