//! `potwright completions SHELL`.

use clap::CommandFactory as _;
use clap_complete::Shell;

use crate::arguments::Arguments;
use crate::output;

/// Prints the completions of a shell.
pub(crate) fn run(shell: Shell) -> anyhow::Result<()> {
    let mut script = Vec::new();
    clap_complete::generate(shell, &mut Arguments::command(), "potwright", &mut script);
    output::print(&script)
}
