//! `cargo xtask prove NAME`: the long proofs. Each writes a table, with date and commit, to `docs/figures/NAME.md`;
//! a figure quoted anywhere comes from there. One proof, one file.

mod build;
mod date;
mod figures;
mod fndds;
mod fuzz;
mod nutrition;
mod physics;
mod proof;
mod reading;
mod score;
mod speed;
mod spread;
mod yields;

use std::path::Path;

use anyhow::{Result, bail};

use crate::tree;
use figures::Figures;

/// A proof: its name, what it shows, and what works it out.
struct Proof {
    name: &'static str,
    shows: &'static str,
    work: fn(&Path) -> Result<Figures>,
}

const PROOFS: &[Proof] = &[
    Proof {
        name: "speed",
        shows: "time and memory a dish takes",
        work: speed::work,
    },
    Proof {
        name: "score",
        shows: "how well pages are read that were read by hand (POTWRIGHT_CORPUS names their folder)",
        work: score::work,
    },
    Proof {
        name: "nutrition",
        shows: "nutrients of published dishes by our own path (POTWRIGHT_DATA names the folder of official files)",
        work: nutrition::work,
    },
    Proof {
        name: "yields",
        shows: "finished mass of published dishes, simulated (POTWRIGHT_DATA names the folder of official files)",
        work: yields::work,
    },
    Proof {
        name: "physics",
        shows: "the pot's physics beside published values (POTWRIGHT_REFERENCE names the folder of tables)",
        work: physics::work,
    },
    Proof {
        name: "spread",
        shows: "whether the draws behind every range are enough",
        work: spread::work,
    },
    Proof {
        name: "proof",
        shows: "faults that the author queries find, and how often a query is right",
        work: proof::work,
    },
    Proof {
        name: "fuzz",
        shows: "every reader under libFuzzer (nightly; POTWRIGHT_FUZZ_SECONDS each)",
        work: fuzz::work,
    },
    Proof {
        name: "build",
        shows: "time and packages the first release build takes",
        work: build::work,
    },
];

/// Works out the proofs named; lists them all when none is.
///
/// # Errors
///
/// A name that no proof has; a proof that could not be worked out.
pub(crate) fn run(names: &[String]) -> Result<()> {
    if names.is_empty() {
        for proof in PROOFS {
            println!("{:10} {}", proof.name, proof.shows);
        }
        return Ok(());
    }
    let root = tree::root()?;
    for name in names {
        let Some(proof) = PROOFS.iter().find(|proof| proof.name == name) else {
            let known: Vec<&str> = PROOFS.iter().map(|proof| proof.name).collect();
            bail!("no proof is called '{name}'; there are: {}", known.join(", "));
        };
        println!("── {}: {}", proof.name, proof.shows);
        let figures = (proof.work)(&root)?;
        let place = figures.write(&root, proof.name)?;
        println!("written to {place}");
    }
    Ok(())
}
