//! Every crate has a README: the map of its files. A path it names must be there.

use std::collections::BTreeSet;

use super::{Fault, crate_of};
use crate::tree::File;

pub(super) fn check(files: &[File]) -> Vec<Fault> {
    let crates: BTreeSet<&str> = files
        .iter()
        .filter_map(|file| crate_of(&file.path))
        .map(|(name, _)| name)
        .collect();
    crates.into_iter().flat_map(|name| check_crate(name, files)).collect()
}

fn check_crate(name: &str, files: &[File]) -> Vec<Fault> {
    let path = format!("crates/{name}/README.md");
    let Some(readme) = files.iter().find(|file| file.path == path) else {
        return vec![Fault::new(&path, 0, "is missing: a table 'to change …, edit …'")];
    };
    let there = |place: &str| {
        let place = format!("crates/{name}/{place}");
        files
            .iter()
            .any(|file| file.path == place || (place.ends_with('/') && file.path.starts_with(&place)))
    };
    let mut faults = Vec::new();
    for (at, line) in readme.text.lines().enumerate() {
        for place in paths(line).filter(|place| !there(place)) {
            faults.push(Fault::new(&path, at + 1, format!("'{place}' is not there")));
        }
    }
    faults
}

/// What stands between back-ticks and begins like a path inside the crate.
fn paths(line: &str) -> impl Iterator<Item = &str> {
    let quoted = line.split('`').skip(1).step_by(2);
    quoted.filter(|words| {
        let inside = ["src/", "data/", "tests/"]
            .iter()
            .any(|folder| words.starts_with(folder));
        inside && !words.contains(['*', ' ', '{', '<']) && words.chars().all(|c| !c.is_uppercase())
    })
}

#[cfg(test)]
mod tests {
    use super::super::file;
    use super::*;

    #[test]
    fn a_crate_without_a_map_is_a_fault() {
        let faults = check(&[file("crates/pot/src/lib.rs", "")]);
        assert_eq!(faults.len(), 1);
    }

    #[test]
    fn a_map_to_nowhere_is_a_fault() {
        let files = [
            file("crates/pot/src/lib.rs", ""),
            file("crates/pot/README.md", "`src/lib.rs`\n`src/gone.rs`\n"),
        ];
        assert_eq!(
            check(&files),
            [Fault::new("crates/pot/README.md", 2, "'src/gone.rs' is not there")]
        );
    }
}
