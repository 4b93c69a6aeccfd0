//! The first release build of the program, from nothing.

use std::fs;
use std::path::Path;
use std::time::Instant;

use anyhow::{Result, bail};

use super::figures::{Figures, Table, meant};
use crate::run;

pub(super) fn work(root: &Path) -> Result<Figures> {
    let folder = root.join("target").join("prove-build");
    if folder.exists() {
        fs::remove_dir_all(&folder)?;
    }
    let mut fetch = run::cargo(root);
    fetch.args(["fetch", "--quiet", "--locked"]);
    run::passes(fetch)?;
    let mut build = run::cargo(root);
    build
        .args(["build", "--release", "--locked"])
        .env("CARGO_TARGET_DIR", &folder);
    let begun = Instant::now();
    if !run::passes(build)? {
        bail!("the release build failed");
    }
    let took = begun.elapsed().as_secs_f64();
    let size = fs::metadata(folder.join("release").join(super::speed::PROGRAM))?.len();
    fs::remove_dir_all(&folder)?;
    let mut table = Table::new("", &["what", "figure", "meant to be"]);
    let mut row = |what: &str, figure: String, meant: String| table.rows.push(vec![what.into(), figure, meant]);
    row(
        "time of the first release build",
        format!("{took:.0} s"),
        meant("≤ 240 s on two cores", took <= 240.0),
    );
    row("packages built", packages(root).to_string(), String::new());
    row(
        "size of the program",
        format!("{:.1} MB", size as f64 / 1e6),
        String::new(),
    );
    Ok(Figures {
        title: "The first build".into(),
        says: "Downloads are not counted: packages were fetched before. Other work on the machine is.".into(),
        tables: vec![table],
    })
}

/// Packages the program is built of, itself included.
fn packages(root: &Path) -> usize {
    let cargo = std::env::var("CARGO").unwrap_or_else(|_| "cargo".into());
    let arguments = [
        "tree",
        "--package",
        "potwright",
        "--prefix",
        "none",
        "--edges",
        "normal,build",
    ];
    let listed = run::output(root, &cargo, &arguments).unwrap_or_default();
    let names = listed.lines().map(|line| line.trim_end_matches(" (*)"));
    names
        .filter(|line| !line.is_empty())
        .collect::<std::collections::BTreeSet<_>>()
        .len()
}
