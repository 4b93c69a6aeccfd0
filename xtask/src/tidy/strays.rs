//! What belongs to one machine or one day's work and strays into files: absolute paths, private package registries,
//! notes of things left to do, numbers of tickets.

use super::Fault;
use crate::tree::File;

/// The only registry a locked package may come from.
const REGISTRY: &str = "registry+https://github.com/rust-lang/crates.io-index";

/// Begins of absolute paths, written in two halves so that this file passes its own rule.
const ROOTS: &[(&str, &str)] = &[
    ("/ho", "me/"),
    ("/ro", "ot/"),
    ("/tm", "p/"),
    ("/wo", "rk/"),
    ("/Us", "ers/"),
    ("C:", "\\"),
];

/// Notes of things left to do, likewise in halves.
const NOTES: &[(&str, &str)] = &[
    ("TO", "DO"),
    ("FIX", "ME"),
    ("XX", "X"),
    ("to", "do!("),
    ("#[ig", "nore]"),
];

pub(super) fn check(files: &[File]) -> Vec<Fault> {
    files
        .iter()
        .flat_map(|file| {
            if file.path.ends_with(".lock") {
                locked(file)
            } else {
                written(file)
            }
        })
        .collect()
}

/// Packages from anywhere but the public registry.
fn locked(file: &File) -> Vec<Fault> {
    let lines = file
        .text
        .lines()
        .enumerate()
        .filter_map(|(at, line)| Some((at, line.strip_prefix("source = ")?)));
    lines
        .filter(|(_, source)| source.trim_matches('"') != REGISTRY)
        .map(|(at, source)| Fault::new(&file.path, at + 1, format!("a package from {source}")))
        .collect()
}

fn written(file: &File) -> Vec<Fault> {
    let mut faults = Vec::new();
    for (at, line) in file.text.lines().enumerate() {
        for (says, words) in [
            ("a path of one machine", ROOTS),
            ("a note of something left to do", NOTES),
        ] {
            for word in words
                .iter()
                .map(|(head, tail)| format!("{head}{tail}"))
                .filter(|word| holds(line, word))
            {
                faults.push(Fault::new(&file.path, at + 1, format!("{says}: '{word}'")));
            }
        }
        if names_a_ticket(line) {
            faults.push(Fault::new(
                &file.path,
                at + 1,
                "a ticket's number: say the reason itself",
            ));
        }
    }
    faults
}

/// Whether the word stands in the line by itself: not as the middle of a longer word or path.
fn holds(line: &str, word: &str) -> bool {
    line.match_indices(word).any(|(at, _)| {
        let before = line[..at].chars().next_back();
        before.is_none_or(|c| !c.is_alphanumeric() && !matches!(c, '.' | '_' | '-' | '/' | '}' | ')'))
    })
}

/// A ticket by its number, with or without the sign before it.
fn names_a_ticket(line: &str) -> bool {
    let small = line.to_lowercase();
    ["issue", "ticket"].iter().any(|word| {
        small.split(word).skip(1).any(|rest| {
            let rest = rest.trim_start_matches('s');
            rest.starts_with(' ')
                && rest
                    .trim_start_matches([' ', '#'])
                    .starts_with(|c: char| c.is_ascii_digit())
        })
    })
}

#[cfg(test)]
mod tests {
    use super::super::file;
    use super::*;

    fn faults(line: &str) -> usize {
        check(&[file("notes.md", line)]).len()
    }

    #[test]
    fn paths_of_a_machine_are_faults() {
        assert_eq!(faults(&["see ", "/ho", "me/cook/notes"].concat()), 1);
        assert_eq!(faults("target/work/x, a/tmp/b, https://example.org/home/x"), 0);
    }

    #[test]
    fn things_left_to_do_are_faults() {
        assert_eq!(faults(&["// TO", "DO: salt"].concat()), 1);
        assert_eq!(faults("nothing left to do"), 0);
    }

    #[test]
    fn tickets_are_faults() {
        assert_eq!(faults(&["mends iss", "ue 12"].concat()), 1);
        assert_eq!(faults(&["mends iss", "ues #3 and #4"].concat()), 1);
        assert_eq!(faults("issued 12 portions; at issue is 1 litre"), 0);
    }

    #[test]
    fn packages_of_a_private_registry_are_faults() {
        let public = format!("source = \"{REGISTRY}\"\n");
        let private = "source = \"registry+https://packages.example/index\"\n";
        assert_eq!(check(&[file("Cargo.lock", &public)]), []);
        assert_eq!(check(&[file("Cargo.lock", private)]).len(), 1);
    }
}
