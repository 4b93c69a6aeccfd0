//! The crates depend one way: what a manifest names is held against the table of crates in ARCHITECTURE.md.
//!
//! A row of that table names a crate and what it uses: crates of earlier rows only. A manifest may name these and what
//! they use in their turn, and it must name all of them (the tests of a crate count too).

use std::collections::{BTreeMap, BTreeSet};

use super::{Fault, crate_of};
use crate::tree::File;

const MAP: &str = "ARCHITECTURE.md";
const HEADING: &str = "## The crates";

/// A row of the table: where it stands, and what its crate uses.
struct Row<'a> {
    line: usize,
    uses: Vec<&'a str>,
    /// What it uses, and what that uses in its turn.
    reaches: BTreeSet<&'a str>,
}

pub(super) fn check(files: &[File]) -> Vec<Fault> {
    let Some(map) = files.iter().find(|file| file.path == MAP) else {
        return vec![Fault::new(MAP, 0, "is missing")];
    };
    let (rows, mut faults) = table(&map.text);
    if rows.is_empty() {
        faults.push(Fault::new(MAP, 0, format!("has no table of crates under '{HEADING}'")));
    }
    let mut seen = BTreeSet::new();
    for (name, file) in files.iter().filter_map(manifest) {
        seen.insert(name);
        match rows.get(name) {
            Some(row) => faults.extend(check_manifest(name, file, row)),
            None => faults.push(Fault::new(
                &file.path,
                0,
                format!("the crate '{name}' has no row in {MAP}"),
            )),
        }
    }
    let gone = rows.iter().filter(|(name, _)| !seen.contains(**name));
    faults.extend(gone.map(|(name, row)| Fault::new(MAP, row.line, format!("there is no crate '{name}'"))));
    faults
}

/// The rows of the table, and its faults: a row that uses what stands in no earlier one.
fn table(map: &str) -> (BTreeMap<&str, Row<'_>>, Vec<Fault>) {
    let mut rows: BTreeMap<&str, Row<'_>> = BTreeMap::new();
    let mut faults = Vec::new();
    let lines = map.lines().enumerate().skip_while(|(_, line)| *line != HEADING).skip(1);
    for (at, line) in lines.take_while(|(_, line)| !line.starts_with("## ")) {
        let cells: Vec<&str> = line.split('|').map(str::trim).collect();
        let ["", name, _, uses, ""] = cells.as_slice() else {
            continue;
        };
        let Some(name) = name.strip_prefix('`').and_then(|name| name.strip_suffix('`')) else {
            continue;
        };
        let uses: Vec<&str> = uses.split(", ").filter(|used| *used != "–").collect();
        let mut reaches = BTreeSet::new();
        for used in &uses {
            match rows.get(used) {
                Some(earlier) => {
                    reaches.insert(*used);
                    reaches.extend(&earlier.reaches);
                }
                None => faults.push(Fault::new(
                    MAP,
                    at + 1,
                    format!("'{name}' uses '{used}', which is in no row above"),
                )),
            }
        }
        let line = at + 1;
        rows.insert(name, Row { line, uses, reaches });
    }
    (rows, faults)
}

fn manifest(file: &File) -> Option<(&str, &File)> {
    crate_of(&file.path)
        .filter(|(_, rest)| *rest == "Cargo.toml")
        .map(|(name, _)| (name, file))
}

fn check_manifest(name: &str, file: &File, row: &Row<'_>) -> Vec<Fault> {
    let manifest: toml::Table = match file.text.parse() {
        Ok(manifest) => manifest,
        Err(error) => return vec![Fault::new(&file.path, 0, error.to_string())],
    };
    let used = used(&manifest);
    let beyond = used.iter().filter(|used| !row.reaches.contains(used.as_str()));
    let beyond = beyond.map(|used| Fault::new(&file.path, 0, format!("'{name}' may not use '{used}'")));
    let unused = row.uses.iter().filter(|said| !used.iter().any(|used| used == *said));
    let unused = unused.map(|said| Fault::new(MAP, row.line, format!("'{name}' does not use '{said}'")));
    beyond.chain(unused).collect()
}

/// The crates of this workspace that a manifest names, in any of its tables of dependencies.
fn used(manifest: &toml::Table) -> Vec<String> {
    let mut found = Vec::new();
    for (key, value) in manifest {
        let Some(table) = value.as_table() else { continue };
        if key.ends_with("dependencies") {
            found.extend(
                table
                    .keys()
                    .filter_map(|name| name.strip_prefix("potwright-"))
                    .map(str::to_owned),
            );
        } else {
            found.extend(used(table));
        }
    }
    found
}

#[cfg(test)]
mod tests {
    use super::super::file;
    use super::*;

    const TABLE: &str = "# Map\n\n## The crates\n\n| crate | what it is | uses |\n| --- | --- | --- |\n\
        | `measure` | amounts | – |\n| `larder` | foods | measure |\n| `pot` | cooks | larder |\n\n## More\n";

    /// What is wrong with crates of these manifests' bodies, in order of path.
    fn faults(map: &str, manifests: &[(&str, &str)]) -> Vec<String> {
        let mut files = vec![file(MAP, map)];
        for (name, text) in manifests {
            files.push(file(&format!("crates/{name}/Cargo.toml"), text));
        }
        check(&files).into_iter().map(|fault| fault.says).collect()
    }

    fn naming(name: &str) -> String {
        format!("[dependencies]\npotwright-{name}.workspace = true\nserde = \"1\"\n")
    }

    #[test]
    fn forward_is_fine_and_so_is_what_is_reached() {
        let pot = naming("larder") + "potwright-measure.workspace = true\n";
        let manifests = [("measure", ""), ("larder", &naming("measure")), ("pot", &pot)];
        assert_eq!(faults(TABLE, &manifests), [""; 0]);
    }

    #[test]
    fn backward_is_a_fault_in_any_table() {
        for table in [
            "dev-dependencies",
            "build-dependencies",
            "target.'cfg(unix)'.dependencies",
        ] {
            let larder = naming("measure") + &format!("[{table}]\npotwright-pot.workspace = true\n");
            let manifests = [("measure", ""), ("larder", &larder), ("pot", &naming("larder"))];
            assert_eq!(faults(TABLE, &manifests), ["'larder' may not use 'pot'"], "{table}");
        }
    }

    #[test]
    fn a_row_that_is_not_true_is_a_fault() {
        let manifests = [("measure", ""), ("larder", ""), ("pot", &naming("larder"))];
        assert_eq!(faults(TABLE, &manifests), ["'larder' does not use 'measure'"]);
        let manifests = [("measure", ""), ("larder", &naming("measure"))];
        assert_eq!(faults(TABLE, &manifests), ["there is no crate 'pot'"]);
    }

    #[test]
    fn a_row_may_not_look_down_the_table() {
        let map = TABLE.replace("amounts | – |", "amounts | pot |");
        assert!(faults(&map, &[])[0].contains("'measure' uses 'pot', which is in no row above"));
    }

    #[test]
    fn a_crate_without_a_row_and_a_map_without_a_table_are_faults() {
        let manifests = [("cellar", ""), ("measure", "")];
        assert!(faults(TABLE, &manifests)[0].contains("'cellar' has no row"));
        assert!(faults("# Map\n", &[])[0].contains("no table"));
    }
}
