//! The author queries: what a copy editor and a test-kitchen manager would pencil in the margin.
//!
//! One rule, one file in `rules/`: what it finds, why it matters, an example that fires, one that does not, what to
//! write instead, source. [`rules::ALL`] registers them; [`queries`] runs them over a dish as read and as cooked.
//! A query never stops anything: it has a place in the writer's words, one courteous sentence, the figures behind
//! it, and where possible corrected words.

mod cooked;
mod placed;
mod prose;
pub mod query;
mod remedy;
pub mod rule;
pub mod rules;
mod usage;

pub use query::{Query, Weight};
pub use remedy::Recook;
pub use rule::{Manuscript, Rule};

use potwright_manuscript::Recipe;
use potwright_reckon::Reckoned;

/// All queries on a dish, heaviest first, then in page order; no words are offered that would have to be cooked first.
#[must_use]
pub fn queries(recipe: &Recipe, text: &str, reckoned: &Reckoned) -> Vec<Query> {
    asked(Manuscript {
        recipe,
        text,
        reckoned,
        recook: None,
    })
}

/// The same, with corrected words that `recook` has cooked before they are offered.
#[must_use]
pub fn queries_with(recipe: &Recipe, text: &str, reckoned: &Reckoned, recook: Recook<'_>) -> Vec<Query> {
    asked(Manuscript {
        recipe,
        text,
        reckoned,
        recook: Some(recook),
    })
}

fn asked(manuscript: Manuscript<'_>) -> Vec<Query> {
    let mut found: Vec<Query> = rules::ALL.iter().flat_map(|rule| (rule.check)(&manuscript)).collect();
    found.sort_by_key(|query| (query.weight, query.span.start));
    found
}
