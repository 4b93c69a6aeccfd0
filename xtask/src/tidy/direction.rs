//! The crates depend one way, from measure to cli: the table of ARCHITECTURE.md, read from the manifests.

use super::{Fault, crate_of};
use crate::tree::File;

/// Every crate with the crates it may name in its manifest (the tests of a crate count too).
const MAY_USE: &[(&str, &[&str])] = &[
    ("measure", &[]),
    ("larder", &["measure"]),
    ("manuscript", &["measure"]),
    ("pot", &["measure", "larder", "manuscript"]),
    ("reckon", &["measure", "larder", "manuscript", "pot"]),
    ("plan", &["measure", "larder", "manuscript", "pot", "reckon"]),
    ("trials", &["measure", "larder", "manuscript", "pot", "reckon"]),
    ("proof", &["measure", "larder", "manuscript", "pot", "reckon"]),
    (
        "press",
        &[
            "measure",
            "larder",
            "manuscript",
            "pot",
            "reckon",
            "plan",
            "trials",
            "proof",
        ],
    ),
    ("imprint", &["press"]),
    ("book", &["measure", "larder", "manuscript", "pot", "reckon", "trials"]),
    (
        "house",
        &[
            "measure",
            "larder",
            "manuscript",
            "pot",
            "reckon",
            "plan",
            "trials",
            "proof",
            "press",
            "imprint",
            "book",
        ],
    ),
    (
        "desk",
        &[
            "measure",
            "manuscript",
            "reckon",
            "plan",
            "trials",
            "proof",
            "press",
            "book",
            "house",
        ],
    ),
    (
        "cli",
        &[
            "measure",
            "larder",
            "manuscript",
            "pot",
            "reckon",
            "plan",
            "trials",
            "proof",
            "press",
            "imprint",
            "book",
            "house",
            "desk",
        ],
    ),
];

pub(super) fn check(files: &[File]) -> Vec<Fault> {
    files
        .iter()
        .filter_map(manifest)
        .flat_map(|(name, file)| check_manifest(name, file))
        .collect()
}

fn manifest(file: &File) -> Option<(&str, &File)> {
    crate_of(&file.path)
        .filter(|(_, rest)| *rest == "Cargo.toml")
        .map(|(name, _)| (name, file))
}

fn check_manifest(name: &str, file: &File) -> Vec<Fault> {
    let Some((_, allowed)) = MAY_USE.iter().find(|(known, _)| *known == name) else {
        return vec![Fault::new(
            &file.path,
            0,
            format!("the crate '{name}' has no place in the order"),
        )];
    };
    let manifest: toml::Table = match file.text.parse() {
        Ok(manifest) => manifest,
        Err(error) => return vec![Fault::new(&file.path, 0, error.to_string())],
    };
    used(&manifest)
        .into_iter()
        .filter(|used| !allowed.contains(&used.as_str()))
        .map(|used| Fault::new(&file.path, 0, format!("'{name}' may not use '{used}'")))
        .collect()
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

    #[test]
    fn forward_is_fine() {
        let text = "[dependencies]\npotwright-measure.workspace = true\nserde = \"1\"\n";
        assert_eq!(check(&[file("crates/larder/Cargo.toml", text)]), []);
    }

    #[test]
    fn backward_is_a_fault_in_any_table() {
        for table in ["dependencies", "dev-dependencies", "target.'cfg(unix)'.dependencies"] {
            let text = format!("[{table}]\npotwright-pot.workspace = true\n");
            let faults = check(&[file("crates/larder/Cargo.toml", &text)]);
            assert_eq!(faults.len(), 1, "{table}");
            assert_eq!(faults[0].says, "'larder' may not use 'pot'");
        }
    }

    #[test]
    fn a_crate_out_of_the_order_is_a_fault() {
        assert_eq!(check(&[file("crates/cellar/Cargo.toml", "")]).len(), 1);
    }

    #[test]
    fn the_order_has_no_way_back() {
        for (at, (name, allowed)) in MAY_USE.iter().enumerate() {
            for used in *allowed {
                assert!(
                    MAY_USE[..at].iter().any(|(earlier, _)| earlier == used),
                    "{name} uses {used}"
                );
            }
        }
    }
}
