//! The work done on the project rather than by it: `cargo xtask WORK`.
//!
//! | work | what it does | file |
//! | --- | --- | --- |
//! | `check` | everything a change must pass | `check/` |
//! | `tidy` | its tidy rules alone | `tidy/` |
//! | `prove` | the long proofs, each a table in `docs/figures/` | `prove/` |
//! | `score` | how well the reader does on pages read by hand | `score.rs` |
//! | `screen` | what the program prints, put afresh into README.md | `screen.rs` |
//! | `larder` | the generated tables of the larder, from the official files | `larder.rs` |

#![expect(clippy::print_stdout, clippy::print_stderr, reason = "a program of the terminal")]

mod check;
mod larder;
mod machine;
mod prove;
mod run;
mod score;
mod screen;
mod tidy;
mod tree;

use std::process::ExitCode;

const HELP: &str = "\
cargo xtask WORK

  check [--install]   formatting, lints, tests, documentation, tidy rules;
                      --install first installs what this machine lacks
  tidy                the tidy rules alone
  prove [NAME ...]    the long proofs; each writes docs/figures/NAME.md;
                      without a name it lists them
  screen              what the program prints, put afresh into README.md
  larder --from FOLDER [--check]
                      the generated tables of the larder, from the official
                      composition files in FOLDER
  score FOLDER [--lines] [--json]
                      the reader against the readings made by hand in FOLDER
";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let (work, rest) = match arguments.split_first() {
        Some((work, rest)) => (work.as_str(), rest),
        None => ("help", &[][..]),
    };
    let done = match work {
        "check" => check::run(rest),
        "tidy" => tidy::alone(),
        "prove" => prove::run(rest),
        "screen" => screen::run(),
        "larder" => larder::run(rest),
        "score" => machine::PYTHON.provide(false).and_then(|()| score::run(rest)),
        "help" | "--help" | "-h" => {
            print!("{HELP}");
            Ok(())
        }
        other => Err(anyhow::anyhow!("no work is called '{other}'\n\n{HELP}")),
    };
    match done {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => {
            eprintln!("xtask: {error:#}");
            ExitCode::FAILURE
        }
    }
}
