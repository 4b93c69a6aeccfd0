//! `cargo xtask screen`: what the program prints, put afresh into README.md.
//!
//! A screen stands between a line `<!-- screen: ARGUMENTS | LINES -->` and the end of the block of text after it: what
//! the program prints on these arguments, the first so many lines.

use std::fs;

use anyhow::{Context, Result, bail};

use crate::{run, tree};

const PAGE: &str = "README.md";
const FENCE: &str = "```";

/// Runs the program for every screen of the page.
///
/// # Errors
///
/// The program cannot be built or run, or a screen is not laid out so.
pub(crate) fn run() -> Result<()> {
    let root = tree::root()?;
    let path = root.join(PAGE);
    let page = fs::read_to_string(&path).with_context(|| format!("cannot read {PAGE}"))?;
    let print = |arguments: &str| -> Result<String> {
        let mut words = vec!["run", "--quiet", "--release", "--package", "potwright", "--"];
        words.extend(arguments.split_whitespace());
        let cargo = std::env::var("CARGO").unwrap_or_else(|_| "cargo".into());
        run::output(&root, &cargo, &words).with_context(|| format!("'potwright {arguments}' failed"))
    };
    fs::write(&path, refreshed(&page, print)?).with_context(|| format!("cannot write {PAGE}"))
}

fn refreshed(page: &str, print: impl Fn(&str) -> Result<String>) -> Result<String> {
    let mut out = String::new();
    let mut lines = page.lines();
    while let Some(line) = lines.next() {
        out.push_str(line);
        out.push('\n');
        let Some(asked) = line
            .strip_prefix("<!-- screen:")
            .and_then(|rest| rest.strip_suffix("-->"))
        else {
            continue;
        };
        let (arguments, most) = asked.split_once('|').context("a screen says 'ARGUMENTS | LINES'")?;
        let most: usize = most.trim().parse().context("a screen says 'ARGUMENTS | LINES'")?;
        let closed = lines
            .by_ref()
            .skip_while(|line| !line.starts_with(FENCE))
            .skip(1)
            .any(|line| line == FENCE);
        if !closed {
            bail!("no block of text follows: {line}");
        }
        out.push_str(&format!("{FENCE}text\n"));
        for line in print(arguments.trim())?.lines().take(most) {
            out.push_str(line);
            out.push('\n');
        }
        out.push_str(&format!("{FENCE}\n"));
    }
    Ok(out)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn a_screen_is_put_in_and_the_rest_stays() {
        let page = "# A\n<!-- screen: reckon 1 | 2 -->\n```text\nold\n```\nend\n";
        let print = |arguments: &str| Ok(format!("of {arguments}\ntwo\nthree\n"));
        let fresh = "# A\n<!-- screen: reckon 1 | 2 -->\n```text\nof reckon 1\ntwo\n```\nend\n";
        assert_eq!(refreshed(page, print).expect("sound"), fresh);
        assert_eq!(refreshed(fresh, print).expect("sound"), fresh);
    }

    #[test]
    fn a_screen_without_its_block_is_an_error() {
        assert!(refreshed("<!-- screen: | 2 -->\nend\n", |_| Ok(String::new())).is_err());
        assert!(refreshed("<!-- screen: reckon -->\n", |_| Ok(String::new())).is_err());
    }
}
