//! Core crates do no input or output, read no clock and no environment, and print nothing.

use super::{Fault, before_tests, crate_of};
use crate::tree::File;

/// The crates that only compute.
const CORE: &[&str] = &[
    "measure",
    "larder",
    "manuscript",
    "pot",
    "reckon",
    "plan",
    "trials",
    "proof",
    "press",
];

/// What reaches out of a computation. Threads and locks are no way out.
const OUTSIDE: &[&str] = &[
    "std::fs",
    "std::env",
    "std::net",
    "std::process",
    "std::io",
    "SystemTime",
    "Instant",
    "println!",
    "eprintln!",
];

pub(super) fn check(files: &[File]) -> Vec<Fault> {
    files.iter().filter(|file| is_core(file)).flat_map(check_file).collect()
}

fn is_core(file: &File) -> bool {
    let Some((name, rest)) = crate_of(&file.path) else {
        return false;
    };
    let tests = ["tests/", "tests.rs", "testing.rs"]
        .iter()
        .any(|word| rest.contains(word));
    CORE.contains(&name) && rest.starts_with("src/") && rest.ends_with(".rs") && !tests
}

/// The traits and the cursor of reading bytes in memory: they reach nothing by themselves.
const IN_MEMORY: [&str; 4] = ["Cursor", "Read", "Seek", "Write"];

/// `use std::io::{Cursor, Read};` and nothing else of that module.
fn stays_in_memory(line: &str) -> bool {
    let names = line
        .trim()
        .strip_prefix("use std::io::")
        .and_then(|rest| rest.strip_suffix(';'));
    names.is_some_and(|names| {
        let mut names = names.trim_matches(['{', '}']).split(',');
        names.all(|name| IN_MEMORY.contains(&name.trim().trim_end_matches(" as _")))
    })
}

fn check_file(file: &File) -> Vec<Fault> {
    let code =
        before_tests(&file.text).filter(|(_, line)| !line.trim_start().starts_with("//") && !stays_in_memory(line));
    let mut faults = Vec::new();
    for (at, line) in code {
        for word in OUTSIDE.iter().filter(|word| line.contains(**word)) {
            faults.push(Fault::new(
                &file.path,
                at,
                format!("'{word}' reaches out of a core crate"),
            ));
        }
    }
    faults
}

#[cfg(test)]
mod tests {
    use super::super::file;
    use super::*;

    #[test]
    fn a_file_read_in_the_pot_is_a_fault() {
        let faults = check(&[file("crates/pot/src/lib.rs", "//! Pot.\nuse std::fs;\n")]);
        assert_eq!(
            faults,
            [Fault::new(
                "crates/pot/src/lib.rs",
                2,
                "'std::fs' reaches out of a core crate"
            )]
        );
    }

    #[test]
    fn bytes_in_memory_may_be_read_and_nothing_else() {
        let may = file(
            "crates/pot/src/lib.rs",
            "//! Pot.\nuse std::io::{Cursor, Read};\nuse std::io::Write as _;\n",
        );
        assert_eq!(check(&[may]), []);
        let may_not = file(
            "crates/pot/src/lib.rs",
            "//! Pot.\nuse std::io::{Cursor, stdin};\nuse std::io;\n",
        );
        assert_eq!(check(&[may_not]).len(), 2);
    }

    #[test]
    fn tests_comments_and_other_crates_may() {
        let tested = "//! Not std::fs.\n#[cfg(test)]\nmod tests { use std::env; }\n";
        let files = [
            file("crates/pot/src/lib.rs", tested),
            file("crates/pot/src/cook/tests/mod.rs", "use std::env;\n"),
            file("crates/book/src/lib.rs", "use std::fs;\n"),
        ];
        assert_eq!(check(&files), []);
    }
}
