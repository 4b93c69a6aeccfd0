//! `potwright`: a recipe as its writer typed it, cooked by computation, on the terminal.
//!
//! In: arguments and pages. Out: text or JSON on the standard output, notes on the standard error. Ends with 0 when
//! the work is done, 2 when the input is wrong, 1 when the machine fails. Only `larder import`, `draft`,
//! `manuscript` and `gather` write files, never over others.

mod arguments;
mod commands;
mod input;
mod output;

use std::io;
use std::process::ExitCode;

use clap::Parser;

use arguments::{Arguments, Command};

fn main() -> ExitCode {
    match run(Arguments::parse()) {
        Ok(()) => ExitCode::SUCCESS,
        Err(error) => ended(&error),
    }
}

fn run(arguments: Arguments) -> anyhow::Result<()> {
    match arguments.command {
        None => commands::digest::run(None, None),
        Some(Command::Digest { folder, kitchen }) => commands::digest::run(folder.as_deref(), kitchen.as_deref()),
        Some(Command::Reckon { page, reading, json }) => commands::reckon::run(&page, reading, json),
        Some(Command::Proof { page, json }) => commands::proof::run(&page, json),
        Some(Command::Convert {
            page,
            people,
            times,
            measures,
            json,
        }) => {
            let size = commands::convert::size(people.as_deref(), times.as_deref())?;
            commands::convert::run(&page, size, measures, json)
        }
        Some(Command::Draft { notes, output, json }) => commands::draft::run(&notes, output.as_deref(), json),
        Some(Command::Manuscript { page, output }) => commands::manuscript::run(&page, output.as_deref()),
        Some(Command::Gather { folder, into }) => commands::gather::run(&folder, &into),
        Some(Command::Menu { title, book }) => commands::menu::run(title.as_deref(), book.as_deref()),
        Some(Command::Larder { work }) => commands::larder::run(&work),
        Some(Command::Completions { shell }) => commands::completions::run(shell),
        Some(Command::Man) => commands::man::run(),
    }
}

/// Says what went wrong and how the program ends. A reader that has seen enough is no fault.
fn ended(error: &anyhow::Error) -> ExitCode {
    match error
        .downcast_ref::<output::CannotPrint>()
        .map(|output::CannotPrint(cause)| cause.kind())
    {
        Some(io::ErrorKind::BrokenPipe) => ExitCode::SUCCESS,
        Some(_) => {
            output::say("fault", &format!("{error:#}"));
            ExitCode::from(1)
        }
        None => {
            output::say("fault", &format!("{error:#}"));
            ExitCode::from(2)
        }
    }
}
