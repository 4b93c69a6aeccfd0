//! `cargo xtask check`: everything a change must pass, in one command.
//!
//! All steps run, whatever became of those before. A step or test that could not run is listed at the end as
//! *not run*; with `CI=true` in the environment that is a failure.

mod summary;
mod testing;

use std::path::Path;
use std::time::Instant;

use anyhow::{Result, bail};

use crate::machine::{CLIPPY, OFFICE, RUSTFMT, Tool};
use crate::{run, screen, tidy, tree};
use summary::{Outcome, Summary};

/// Runs the check. `--install` allows installing what the machine lacks.
///
/// # Errors
///
/// An argument that is not known; the check did not pass.
pub(crate) fn run(arguments: &[String]) -> Result<()> {
    let install = arguments.iter().any(|argument| argument == "--install");
    if let Some(other) = arguments.iter().find(|argument| *argument != "--install") {
        bail!("'check' knows --install and nothing else, not '{other}'");
    }
    let root = tree::root()?;
    let mut summary = Summary::default();
    step(&mut summary, "formatting", || {
        with(&RUSTFMT, install, || formatting(&root))
    });
    step(&mut summary, "tidy rules", || tidy::run(&root).map(found));
    step(&mut summary, "lints", || with(&CLIPPY, install, || lints(&root)));
    step(&mut summary, "documentation", || documentation(&root));
    step(&mut summary, "tests", || {
        // The one test that needs it says itself that it was not run.
        if let Err(error) = OFFICE.provide(install) {
            println!("{error:#}");
        }
        testing::all(&root)
    });
    step(&mut summary, "examples in the documentation", || {
        testing::examples(&root)
    });
    step(&mut summary, "what README.md shows", screens);
    summary.not_run.extend(testing::noted_as_not_run(&root));
    let ci = std::env::var("CI").is_ok_and(|value| value == "true");
    print!("\n{}", summary.text(ci));
    if summary.passes(ci) {
        Ok(())
    } else {
        bail!("the check did not pass")
    }
}

fn step(summary: &mut Summary, name: &'static str, work: impl FnOnce() -> Result<Outcome>) {
    println!("\n── {name}");
    let begun = Instant::now();
    let outcome = work().unwrap_or_else(|error| Outcome::failed(format!("{error:#}")));
    summary.add(name, outcome, begun.elapsed());
}

/// Runs the work when the tool is there or could be installed.
fn with(tool: &Tool, install: bool, work: impl FnOnce() -> Result<Outcome>) -> Result<Outcome> {
    match tool.provide(install) {
        Ok(()) => work(),
        Err(error) => {
            println!("{error:#}");
            Ok(Outcome::not_run(format!("{error:#}")))
        }
    }
}

fn formatting(root: &Path) -> Result<Outcome> {
    let mut command = run::cargo(root);
    command.args(["fmt", "--all", "--check"]);
    Ok(Outcome::of(run::passes(command)?, "run 'cargo fmt --all'"))
}

fn lints(root: &Path) -> Result<Outcome> {
    let mut command = run::cargo(root);
    command.args([
        "clippy",
        "--quiet",
        "--workspace",
        "--all-targets",
        "--",
        "-D",
        "warnings",
    ]);
    Ok(Outcome::of(run::passes(command)?, "see above"))
}

fn documentation(root: &Path) -> Result<Outcome> {
    let mut command = run::cargo(root);
    command
        .args(["doc", "--quiet", "--workspace", "--no-deps"])
        .env("RUSTDOCFLAGS", "-D warnings");
    Ok(Outcome::of(run::passes(command)?, "see above"))
}

fn screens() -> Result<Outcome> {
    let stale = screen::stale()?;
    if let Some(says) = &stale {
        println!("{says}");
    }
    Ok(Outcome::of(stale.is_none(), "run 'cargo xtask screen'"))
}

fn found(faults: usize) -> Outcome {
    Outcome::of(faults == 0, &format!("{faults} faults"))
}
