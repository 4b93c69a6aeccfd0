//! `cargo xtask screen`: what the program prints, put afresh into README.md.
//!
//! A screen stands between a line `<!-- screen: ARGUMENTS | LINES -->` and the end of the block of text after it: what
//! the program prints on these arguments, the first so many lines. `cargo xtask check` sees to it that none is stale.

use std::fs;

use anyhow::{Context, Result, bail};

use crate::{run, tree};

const PAGE: &str = "README.md";
const FENCE: &str = "```";

/// Runs the program for every screen of the page and puts in what it prints.
///
/// # Errors
///
/// The program cannot be built or run, or a screen is not laid out so.
pub(crate) fn run() -> Result<()> {
    let path = tree::root()?.join(PAGE);
    let (_, fresh) = before_and_after()?;
    fs::write(path, fresh).with_context(|| format!("cannot write {PAGE}"))
}

/// The first line that the program would print otherwise than it stands on the page, as the page has it; none when all
/// screens are fresh.
///
/// # Errors
///
/// As [`run()`].
pub(crate) fn stale() -> Result<Option<String>> {
    let (page, fresh) = before_and_after()?;
    Ok(first_difference(&page, &fresh))
}

fn before_and_after() -> Result<(String, String)> {
    let root = tree::root()?;
    let page = fs::read_to_string(root.join(PAGE)).with_context(|| format!("cannot read {PAGE}"))?;
    // The profile of the tests: it is built anyway, and the same bytes come out of every profile.
    let print = |arguments: &str| -> Result<String> {
        let mut words = vec!["run", "--quiet", "--package", "potwright", "--"];
        words.extend(arguments.split_whitespace());
        let cargo = std::env::var("CARGO").unwrap_or_else(|_| "cargo".into());
        run::output(&root, &cargo, &words).with_context(|| format!("'potwright {arguments}' failed"))
    };
    let fresh = refreshed(&page, print)?;
    Ok((page, fresh))
}

fn first_difference(page: &str, fresh: &str) -> Option<String> {
    if page == fresh {
        return None;
    }
    let mut pairs = page.lines().zip(fresh.lines()).enumerate();
    let (at, line) = match pairs.find(|(_, (old, new))| old != new) {
        Some((at, (old, _))) => (at + 1, old),
        None => (page.lines().count().min(fresh.lines().count()), "its end"),
    };
    Some(format!("{PAGE}:{at}: the program prints something else now: {line}"))
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
    fn a_stale_screen_is_named_by_its_line() {
        assert_eq!(first_difference("a\nb\n", "a\nb\n"), None);
        let says = first_difference("a\nb\nc\n", "a\nx\nc\n").expect("differs");
        assert!(says.starts_with("README.md:2: ") && says.ends_with(": b"), "{says}");
        assert!(first_difference("a\n", "a\nb\n").is_some());
    }

    #[test]
    fn a_screen_without_its_block_is_an_error() {
        assert!(refreshed("<!-- screen: | 2 -->\nend\n", |_| Ok(String::new())).is_err());
        assert!(refreshed("<!-- screen: reckon -->\n", |_| Ok(String::new())).is_err());
    }
}
