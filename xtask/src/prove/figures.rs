//! The page a proof writes: what it shows, when and of which commit, tables.

use std::fmt::Write as _;
use std::fs;
use std::path::Path;

use anyhow::{Context, Result};

use super::date;
use crate::run;

/// What a proof found.
#[derive(Debug, Default)]
pub(super) struct Figures {
    /// The title.
    pub title: String,
    /// A few sentences: what was measured, how, and what the figures do not say.
    pub says: String,
    /// Tables, each with its heads and rows.
    pub tables: Vec<Table>,
}

/// A table of figures.
#[derive(Debug, Default)]
pub(super) struct Table {
    /// What stands over it; may be empty.
    pub title: String,
    /// Heads of the columns.
    pub heads: Vec<String>,
    /// Rows.
    pub rows: Vec<Vec<String>>,
}

impl Table {
    /// A table with a title and heads, and no rows yet.
    pub(super) fn new(title: &str, heads: &[&str]) -> Self {
        Table {
            title: title.into(),
            heads: heads.iter().map(|head| (*head).into()).collect(),
            rows: Vec::new(),
        }
    }
}

/// What a figure is meant to be, as it stands in a table: with 'not met' where it is not.
pub(super) fn meant(target: &str, met: bool) -> String {
    if met {
        target.into()
    } else {
        format!("{target}: **not met**")
    }
}

impl Figures {
    /// Writes the page to `docs/figures/NAME.md` and gives its place.
    pub(super) fn write(&self, root: &Path, name: &str) -> Result<String> {
        let place = format!("docs/figures/{name}.md");
        let page = self.page(&date::today(), &commit(root), name);
        fs::create_dir_all(root.join("docs/figures"))?;
        fs::write(root.join(&place), page).with_context(|| format!("cannot write {place}"))?;
        Ok(place)
    }

    fn page(&self, date: &str, commit: &str, name: &str) -> String {
        let mut page = format!("# {}\n\n", self.title);
        let cores = std::thread::available_parallelism().map_or(1, usize::from);
        _ = writeln!(
            page,
            "Worked out by `cargo xtask prove {name}` on {date}, commit {commit}, {cores} cores.\n"
        );
        _ = writeln!(page, "{}", self.says.trim());
        for table in &self.tables {
            if !table.title.is_empty() {
                _ = write!(page, "\n## {}\n", table.title);
            }
            _ = writeln!(page, "\n| {} |", table.heads.join(" | "));
            _ = writeln!(page, "|{}", " --- |".repeat(table.heads.len()));
            for row in &table.rows {
                _ = writeln!(page, "| {} |", row.join(" | "));
            }
        }
        page
    }
}

/// The commit the figures are of, and whether files differ from it.
fn commit(root: &Path) -> String {
    let Some(hash) = run::output(root, "git", &["rev-parse", "--short=10", "HEAD"]) else {
        return "not known".into();
    };
    let changes = run::output(root, "git", &["status", "--porcelain", "--untracked-files=no"]).unwrap_or_default();
    let changed = changes.lines().any(|line| !line.contains("docs/figures/"));
    let note = if changed { " with changes" } else { "" };
    format!("{}{note}", hash.trim())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_target_that_is_missed_is_said_so() {
        assert_eq!(meant("≤ 60 ms", true), "≤ 60 ms");
        assert_eq!(meant("≤ 60 ms", false), "≤ 60 ms: **not met**");
    }

    #[test]
    fn a_page_carries_date_commit_and_rows() {
        let mut table = Table::new("Pots", &["pot", "kg"]);
        table.rows.push(vec!["big".into(), "2.9".into()]);
        let figures = Figures {
            title: "Weights".into(),
            says: "As weighed.".into(),
            tables: vec![table],
        };
        let page = figures.page("2031-05-09", "abc", "weights");
        assert!(page.contains("on 2031-05-09, commit abc,"));
        assert!(page.ends_with("## Pots\n\n| pot | kg |\n| --- | --- |\n| big | 2.9 |\n"));
    }
}
