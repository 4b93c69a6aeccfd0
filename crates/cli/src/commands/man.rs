//! `potwright man`: the manual page, all commands on it.

use clap::{Command, CommandFactory as _};
use clap_mangen::Man;

use crate::arguments::Arguments;
use crate::output;

/// Prints the manual page.
pub(crate) fn run() -> anyhow::Result<()> {
    let mut program = Arguments::command();
    program.build();
    let man = Man::new(program.clone());
    let mut page = Vec::new();
    man.render_title(&mut page)?;
    man.render_name_section(&mut page)?;
    man.render_synopsis_section(&mut page)?;
    man.render_description_section(&mut page)?;
    man.render_options_section(&mut page)?;
    for command in program.get_subcommands().filter(|command| command.get_name() != "help") {
        let parts: Vec<&Command> = command
            .get_subcommands()
            .filter(|part| part.get_name() != "help")
            .collect();
        if parts.is_empty() {
            section(command, command.get_name(), &mut page)?;
        }
        for part in parts {
            section(part, &format!("{} {}", command.get_name(), part.get_name()), &mut page)?;
        }
    }
    man.render_extra_section(&mut page)?;
    // What the library calls extra is the example.
    output::print(String::from_utf8_lossy(&page).replace("EXTRA", "EXAMPLE").as_bytes())
}

/// A section for one command: its heading, synopsis, options and example.
fn section(command: &Command, name: &str, page: &mut Vec<u8>) -> anyhow::Result<()> {
    let man = Man::new(command.clone());
    page.extend(format!(".SH {}\n", name.to_uppercase()).into_bytes());
    let mut parts = Vec::new();
    man.render_synopsis_section(&mut parts)?;
    man.render_description_section(&mut parts)?;
    man.render_options_section(&mut parts)?;
    man.render_extra_section(&mut parts)?;
    // A section of the whole page holds these as its own subsections.
    page.extend(String::from_utf8_lossy(&parts).replace("\n.SH ", "\n.SS ").into_bytes());
    Ok(())
}
