//! `potwright draft NOTES`: stove notes to draft manuscripts, one a dish.

use std::fs::{self, OpenOptions};
use std::io::{self, Read, Write};
use std::path::Path;

use anyhow::{Context, bail};
use potwright_book::decode::decode;
use potwright_manuscript::{Draft, draft};

use crate::output;

/// Between two drafts on the terminal.
const RULE: &str = "\n----------\n\n";

/// Prints the drafts of some notes, or writes a page a dish into a folder.
pub(crate) fn run(notes: &str, folder: Option<&Path>, json: bool) -> anyhow::Result<()> {
    let decoded = decode(&read(notes)?);
    if let Some(note) = decoded.note {
        output::say("note", &format!("{notes}: {note}"));
    }
    if decoded.text.trim().is_empty() {
        bail!("{notes}: there are no words; give what a speech-to-text program wrote down, with or without stamps");
    }
    let found = draft(&decoded.text);
    if let Some(folder) = folder {
        save(folder, &found.drafts)?;
    }
    if json {
        return output::print_json(&found);
    }
    if found.drafts.is_empty() {
        bail!("{notes}: no dish was found in these notes: no food was said with an amount, or as going in");
    }
    if folder.is_some() {
        return Ok(());
    }
    let pages: Vec<&str> = found.drafts.iter().map(|draft| draft.page.as_str()).collect();
    output::print(pages.join(RULE).as_bytes())
}

/// The bytes of a file, or of the standard input for `-`.
fn read(notes: &str) -> anyhow::Result<Vec<u8>> {
    if notes == "-" {
        let mut bytes = Vec::new();
        io::stdin()
            .lock()
            .read_to_end(&mut bytes)
            .context("cannot read the standard input")?;
        return Ok(bytes);
    }
    fs::read(notes).with_context(|| format!("cannot read {notes}"))
}

/// Writes one page a dish; a file that is there already stays as it is and ends the work.
fn save(folder: &Path, drafts: &[Draft]) -> anyhow::Result<()> {
    fs::create_dir_all(folder).with_context(|| format!("cannot make the folder {}", folder.display()))?;
    let names: Vec<String> = drafts
        .iter()
        .enumerate()
        .map(|(at, draft)| name(at, &draft.title))
        .collect();
    if let Some(there) = names.iter().map(|name| folder.join(name)).find(|path| path.exists()) {
        bail!(
            "{} is there already and is not overwritten; name another folder",
            there.display()
        );
    }
    for (name, draft) in names.iter().zip(drafts) {
        let path = folder.join(name);
        let mut file = OpenOptions::new()
            .write(true)
            .create_new(true)
            .open(&path)
            .with_context(|| format!("cannot write {}", path.display()))?;
        file.write_all(draft.page.as_bytes())
            .with_context(|| format!("cannot write {}", path.display()))?;
        output::say("note", &format!("written: {}", path.display()));
    }
    Ok(())
}

/// '02-peach-cobbler.txt': letters and figures of the title, hyphens between.
fn name(at: usize, title: &str) -> String {
    let words: Vec<String> = title
        .split(|c: char| !c.is_alphanumeric())
        .filter(|word| !word.is_empty())
        .take(8)
        .map(str::to_lowercase)
        .collect();
    format!("{:02}-{}.txt", at + 1, words.join("-"))
}
