//! Writing back: a page in the style of the house.
//!
//! [`write()`] sets a [`Recipe`] as a manuscript: title, yield, times, list by parts, numbered steps, variations, remarks.
//! [`in_house_style`] does so with a typed page and reads the outcome again: only what is read as before stays in the
//! style of the house; everything else is put as it was typed, and listed.
//!
//! | to change … | edit |
//! | --- | --- |
//! | what a house settles | `style.rs` |
//! | the order of the page | `page.rs` |
//! | an ingredient line | `line.rs` |
//! | fractions and temperatures in sentences | `prose.rs` |
//! | names of the other market | `names.rs`, `data/market_names.tsv` |
//! | when two readings are the same | `same.rs` |

mod line;
mod names;
mod page;
mod prose;
mod same;
mod style;

use crate::{BlockKind, Ingredient, Recipe, Span, read};

pub use style::{Fractions, HouseStyle, Names};

/// Bytes of a line; setting a longer one and reading it again would take minutes.
const LONGEST_LINE: usize = 20_000;

/// A page in house style, and what could not be put so.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Written {
    /// The page.
    pub text: String,
    /// What stands in it as it was typed, in page order.
    pub as_typed: Vec<AsTyped>,
}

/// Words that could not be put in house style.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct AsTyped {
    /// Where they stand in the writer's text.
    pub span: Span,
    /// The words.
    pub words: String,
    /// Why they were let be: one sentence.
    pub why: &'static str,
}

/// A recipe as a manuscript in house style, from what was read alone.
///
/// Ingredient lines are set from their amounts and names where there are any, whatever was typed; use
/// [`in_house_style`] for a page whose every word is to be kept.
///
/// ```
/// use potwright_manuscript::{read, write::{HouseStyle, write}};
/// let page = "Leek pot\nServes 4\n\n1 1/2 lbs leeks, sliced\n\nSoften the leeks. Bake at 150C.";
/// let set = "Leek pot\n\nServes 4\n\n1½ lb leeks, sliced\n\nSoften the leeks. Bake at 150 °C.\n";
/// assert_eq!(write(&read(page), &HouseStyle::default()), set);
/// ```
#[must_use]
pub fn write(recipe: &Recipe, style: &HouseStyle) -> String {
    let set = |mark: &str| {
        let line = |entries: &[Ingredient]| format!("{mark}{}", page::from_entries(entries, style));
        let lines = page::lines(recipe, |_, entries| line(entries));
        page::page(recipe, &lines, &|words| prose::spelt(words, style), style)
    };
    let plain = set("");
    // Lines of one length look like a paragraph broken by hand; a mark says that they are a list.
    if read(&plain).ingredients.len() == recipe.ingredients.len() {
        plain
    } else {
        set("- ")
    }
}

/// A typed page in house style: the same recipe, every word of it.
///
/// An ingredient line is set afresh where that loses no word and is read as before, else its fractions and
/// temperatures are set, else it stays as it was typed. A page that would be read otherwise in the order of the house
/// keeps its own order; one that would be read otherwise even so stays as it is.
///
/// A page with a line of more than 20,000 bytes, which nobody types by hand, stays as it is.
#[must_use]
pub fn in_house_style(text: &str, style: &HouseStyle) -> Written {
    if text.lines().any(|line| line.len() > LONGEST_LINE) {
        return Written {
            text: text.to_owned(),
            as_typed: vec![whole(text, "a line of it is too long to be set again")],
        };
    }
    let recipe = read(text);
    let mut as_typed = Vec::new();
    let lines = page::lines(&recipe, |typed, _| {
        let set = same::line_in_style(&typed.text, style);
        if set.is_none() {
            as_typed.push(AsTyped {
                span: typed.span,
                words: typed.text.clone(),
                why: "in house style the line would be read otherwise",
            });
        }
        set.unwrap_or_else(|| typed.text.clone())
    });
    let spelt = |words: &str| prose::spelt(words, style);
    let set = page::page(&recipe, &lines, &spelt, style);
    if same::page(&recipe, text, &set, style) {
        return Written { text: set, as_typed };
    }
    let here = page::in_place(&recipe, text, |kind, words| match kind {
        BlockKind::Ingredient => names::renamed(
            &same::line_in_style(words, style).unwrap_or_else(|| words.to_owned()),
            style.names,
        ),
        _ => names::renamed(&prose::spelt(words, style), style.names),
    });
    if same::page(&recipe, text, &here, style) {
        as_typed.push(whole(
            text,
            "in the order of the house the page would be read otherwise, or lose a word",
        ));
        return Written { text: here, as_typed };
    }
    Written {
        text: text.to_owned(),
        as_typed: vec![whole(text, "in house style the page would be read otherwise")],
    }
}

/// The page as a whole, named by its first words.
fn whole(text: &str, why: &'static str) -> AsTyped {
    let first = text.lines().find(|line| !line.trim().is_empty()).unwrap_or("");
    AsTyped {
        span: Span::new(0, text.len()),
        words: format!("{} …", first.trim()),
        why,
    }
}
