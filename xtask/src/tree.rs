//! The files of the project, as text.

use std::fs;
use std::path::{Path, PathBuf};

use anyhow::{Context, Result};

use crate::run;

/// A text file of the project.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct File {
    /// Its place from the root, with forward slashes.
    pub path: String,
    /// What it holds.
    pub text: String,
}

/// The root of the workspace.
pub(crate) fn root() -> Result<PathBuf> {
    let here = Path::new(env!("CARGO_MANIFEST_DIR"));
    let root = here.parent().context("the folder xtask has no parent")?;
    Ok(root.to_owned())
}

/// Every text file that is tracked, or new and not ignored, in order of path. Files that are no UTF-8 are left out.
pub(crate) fn files(root: &Path) -> Result<Vec<File>> {
    let mut paths = match run::output(root, "git", &["ls-files", "-co", "--exclude-standard"]) {
        Some(listed) => listed.lines().map(str::to_owned).collect(),
        None => walked(root)?,
    };
    paths.sort();
    paths.dedup();
    let read = |path: String| {
        fs::read_to_string(root.join(&path))
            .ok()
            .map(|text| File { path, text })
    };
    Ok(paths.into_iter().filter_map(read).collect())
}

/// Without git: all files but those of build folders and hidden stores.
fn walked(root: &Path) -> Result<Vec<String>> {
    let mut found = Vec::new();
    let mut folders = vec![root.to_owned()];
    while let Some(folder) = folders.pop() {
        for entry in fs::read_dir(&folder)? {
            let path = entry?.path();
            let name = path
                .file_name()
                .map(|name| name.to_string_lossy().into_owned())
                .unwrap_or_default();
            if path.is_dir() && name != "target" && name != ".git" {
                folders.push(path);
            } else if path.is_file() {
                let place = path.strip_prefix(root)?.to_string_lossy().replace('\\', "/");
                found.push(place);
            }
        }
    }
    Ok(found)
}
