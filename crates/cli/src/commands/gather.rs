//! `potwright gather FOLDER --into BOOK`: pages in any form that is read, brought into a book.

use std::io::{self, IsTerminal as _};
use std::path::Path;

use anyhow::bail;
use potwright_book::gathering::{self, Gathered, Progress, Taken};
use potwright_press::{Page, Part, text};

use crate::output;

/// Brings the pages in and prints what became of every file.
pub(crate) fn run(folder: &Path, book: &Path) -> anyhow::Result<()> {
    let of_a_book = ["dishes", "book.toml", "kitchen.toml", "larder.tsv"];
    let is_book = of_a_book.iter().any(|name| book.join(name).exists());
    let holds_something = book.read_dir().is_ok_and(|mut entries| entries.next().is_some());
    if holds_something && !is_book {
        bail!(
            "{} is no book: it has neither a folder dishes nor a book.toml; name a book, or a folder that is not there yet",
            book.display()
        );
    }
    let done = gathering::gather(folder, book, &mut tell);
    if io::stderr().is_terminal() {
        output::say_in_place("");
    }
    let done = done?;
    output::print(text::render(&report(&done, book), output::WIDTH, output::style()).as_bytes())?;
    if done.taken.is_empty() && done.there.is_empty() {
        bail!("nothing in {} could be read as a page", folder.display());
    }
    Ok(())
}

/// How far it has got: on a terminal in place; elsewhere a line every hundred files.
fn tell(progress: Progress) {
    let Progress { file, number, of } = progress;
    if io::stderr().is_terminal() {
        output::say_in_place(&format!("{number} of {of}: {file}"));
    } else if number % 100 == 0 {
        output::say("note", &format!("{number} of {of} files"));
    }
}

/// What became of every file, as a page.
fn report(done: &Gathered, book: &Path) -> Page {
    let title = match done.taken.len() {
        1 => "1 page gathered".into(),
        count => format!("{count} pages gathered"),
    };
    let mut under = vec![format!("into {}", book.join("dishes").display())];
    let counted = [
        (done.there.len(), "there already"),
        (done.refused.len(), "not read"),
        (done.passed_over.len(), "of other forms"),
    ];
    under.extend(
        counted
            .iter()
            .filter(|(count, _)| *count > 0)
            .map(|(count, what)| format!("{count} {what}")),
    );
    let refused = done.refused.iter().map(|(file, why)| format!("{file}: {why}"));
    let mut parts = Vec::new();
    for (heading, lines) in [
        ("Gathered", done.taken.iter().map(taken).collect()),
        ("There already, word for word", done.there.clone()),
        ("Not read", refused.collect::<Vec<String>>()),
        ("Passed over", done.passed_over.clone()),
    ] {
        if !lines.is_empty() {
            parts.push(Part::Heading(heading.into()));
            parts.push(Part::List(lines));
        }
    }
    Page {
        title,
        under: under.join(" · "),
        parts,
    }
}

/// Characters of a value that a page has no place for; the file itself keeps them all.
const SHOWN: usize = 400;

/// A page that was brought in: where from, and what was taken for granted or left out.
fn taken(page: &Taken) -> String {
    let mut says = format!("{} from {}", page.file, page.from);
    for note in &page.notes {
        says.push_str(&format!("; {note}"));
    }
    for left in &page.left {
        let value = left.value.split_whitespace().collect::<Vec<_>>().join(" ");
        let more = if value.chars().count() > SHOWN { " …" } else { "" };
        let value: String = value.chars().take(SHOWN).collect();
        says.push_str(&format!("; {}: {value}{more}", left.property));
    }
    says
}
