//! What the work needs on a machine, and the one command that installs it.

use std::process::Command;

use anyhow::{Result, bail};

use crate::run;

/// A program that some work needs.
pub(crate) struct Tool {
    /// What it is called here.
    pub name: &'static str,
    /// What it is for.
    pub purpose: &'static str,
    /// Program and arguments that end well when it is there.
    probe: &'static [&'static str],
    /// Its name for `rustup component add`; empty when it does not come with Rust.
    component: &'static str,
    /// Its name for `apt-get install`.
    package: &'static str,
}

/// Sets code.
pub(crate) const RUSTFMT: Tool = Tool {
    name: "rustfmt",
    purpose: "formatting",
    probe: &["cargo", "fmt", "--version"],
    component: "rustfmt",
    package: "rustfmt",
};

/// Lints code.
pub(crate) const CLIPPY: Tool = Tool {
    name: "clippy",
    purpose: "lints",
    probe: &["cargo", "clippy", "--version"],
    component: "clippy",
    package: "rust-clippy",
};

/// Runs the scorer that comes with a folder of readings.
pub(crate) const PYTHON: Tool = Tool {
    name: "python3",
    purpose: "the scorer of readings",
    probe: &["python3", "--version"],
    component: "",
    package: "python3",
};

/// Opens the manuscripts that are written for the editor: the tests see to it that it can.
pub(crate) const OFFICE: Tool = Tool {
    name: "LibreOffice Writer",
    purpose: "opening the manuscripts that are written",
    probe: &["soffice", "--version"],
    component: "",
    package: "libreoffice-writer-nogui",
};

impl Tool {
    /// Whether it is there.
    pub(crate) fn present(&self) -> bool {
        self.probe
            .split_first()
            .is_some_and(|(program, arguments)| run::succeeds(program, arguments))
    }

    /// The command that installs it here.
    fn command(&self) -> Vec<&'static str> {
        if !self.component.is_empty() && run::succeeds("rustup", &["--version"]) {
            vec!["rustup", "component", "add", self.component]
        } else {
            vec!["apt-get", "install", "--yes", "--no-install-recommends", self.package]
        }
    }

    /// Sees to it that the tool is there: installs it when that needs no leave (a Rust component, or as root), or
    /// when `install` asks for it.
    ///
    /// # Errors
    ///
    /// It is missing, and why it was not installed; the text names the command to give.
    pub(crate) fn provide(&self, install: bool) -> Result<()> {
        if self.present() {
            return Ok(());
        }
        let command = self.command();
        let says = command.join(" ");
        if !install && !is_root() {
            bail!("{} is missing ({}); to install it: {says}", self.name, self.purpose);
        }
        println!("installing {} ({}): {says}", self.name, self.purpose);
        let Some((program, arguments)) = command.split_first() else {
            bail!("no command installs {}", self.name)
        };
        if *program == "apt-get" {
            // A new machine does not know yet what there is to install.
            run::passes(privileged(program, &["update", "-qq"]))?;
        }
        run::passes(privileged(program, arguments))?;
        if !self.present() {
            bail!(
                "{} is missing ({}) and could not be installed with: {says}",
                self.name,
                self.purpose
            );
        }
        Ok(())
    }
}

/// A package manager needs root; a Rust component does not.
fn privileged(program: &str, arguments: &[&str]) -> Command {
    let mut command = if program == "apt-get" && !is_root() {
        Command::new("sudo")
    } else {
        Command::new(program)
    };
    if program == "apt-get" && !is_root() {
        command.arg(program);
    }
    command.args(arguments);
    command
}

fn is_root() -> bool {
    Command::new("id")
        .arg("-u")
        .output()
        .is_ok_and(|done| done.stdout.trim_ascii() == b"0")
}
