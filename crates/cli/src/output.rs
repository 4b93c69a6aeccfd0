//! The standard output and the standard error.

use std::fmt;
use std::io::{self, Write};

use anstream::{AutoStream, ColorChoice};
use potwright_press::{Style, text};

/// Width of a page in characters.
pub(crate) const WIDTH: usize = 80;

/// The standard output took no more.
#[derive(Debug)]
pub(crate) struct CannotPrint(pub io::Error);

impl fmt::Display for CannotPrint {
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        write!(f, "cannot print: {}", self.0)
    }
}

impl std::error::Error for CannotPrint {}

/// Whether the standard output takes colour: a terminal, unless `NO_COLOR` or the like says otherwise.
pub(crate) fn style() -> Style {
    match AutoStream::choice(&io::stdout()) {
        ColorChoice::Never => Style::Plain,
        _ => Style::Colour,
    }
}

/// Prints to the standard output.
pub(crate) fn print(bytes: &[u8]) -> anyhow::Result<()> {
    // The style was chosen when the page was set, so nothing is taken out here.
    let mut out = io::stdout().lock();
    out.write_all(bytes)
        .and_then(|()| out.flush())
        .map_err(|error| CannotPrint(error).into())
}

/// Prints a value as JSON, indented, with a line's end.
pub(crate) fn print_json(value: &impl serde::Serialize) -> anyhow::Result<()> {
    let mut text = serde_json::to_string_pretty(value)?;
    text.push('\n');
    print(text.as_bytes())
}

/// Says something on the standard error, a line of words after its mark. That no one hears it is no fault.
pub(crate) fn say(mark: &str, words: &str) {
    let mut out = anstream::stderr().lock();
    for line in text::printable(words).lines() {
        _ = writeln!(out, "{mark}: {line}");
    }
}

/// Says something on the standard error in the place of what was said so before; nothing clears the line.
pub(crate) fn say_in_place(words: &str) {
    let mut out = anstream::stderr().lock();
    _ = write!(out, "\r\x1b[K{words}");
    _ = out.flush();
}
