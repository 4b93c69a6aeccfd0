//! How well the reader does on pages that were read by hand.

use std::path::Path;
use std::process::Command;

use anyhow::{Context, Result, bail};

use super::figures::{Figures, Table};
use crate::run;

/// Names the folder of pages and readings.
const FOLDER: &str = "POTWRIGHT_CORPUS";

pub(super) fn work(root: &Path) -> Result<Figures> {
    let folder = std::env::var_os(FOLDER).with_context(|| format!("{FOLDER} does not name a folder"))?;
    let mut command = Command::new(std::env::current_exe()?);
    command.arg("score").arg(folder).arg("--json").current_dir(root);
    let (passed, lines) = run::lines(command)?;
    if !passed {
        bail!("the scorer did not end well");
    }
    let rows = rows(&lines);
    if rows.is_empty() {
        bail!("the scorer printed no figures");
    }
    let mut table = Table::new("", &["what", "figure"]);
    table.rows = rows;
    Ok(Figures {
        title: "Reading, held to readings by hand".into(),
        says: "Pages that no one here wrote, read by hand and by the reader. 'truth' and 'read' count lines or \
               operations; the others are shares from 0 to 1 (F1: what is missing and what is invented both cost)."
            .into(),
        tables: vec![table],
    })
}

/// The numbers of indented JSON, each under the names it stands in.
fn rows(lines: &[String]) -> Vec<Vec<String>> {
    let mut group = String::new();
    let mut rows = Vec::new();
    for line in lines {
        let Some((name, value)) = line.split_once("\": ") else {
            continue;
        };
        let (name, value) = (name.trim().trim_start_matches('"'), value.trim_end_matches(','));
        if value == "{" {
            name.clone_into(&mut group);
        } else if value.parse::<f64>().is_ok() {
            let name = if line.starts_with("  ") {
                format!("{group}: {name}")
            } else {
                name.to_owned()
            };
            rows.push(vec![name.replace('_', " "), value.to_owned()]);
        }
    }
    rows
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn numbers_come_under_their_group() {
        let text =
            "{\n \"texts\": 2,\n \"unread\": [],\n \"ingredient_lines\": {\n  \"exact\": 0.95,\n  \"read\": 7\n }\n}";
        let lines: Vec<String> = text.lines().map(str::to_owned).collect();
        let found = rows(&lines);
        assert_eq!(found[0], ["texts", "2"]);
        assert_eq!(found[1], ["ingredient lines: exact", "0.95"]);
        assert_eq!(found.len(), 3);
    }
}
