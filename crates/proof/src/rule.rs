//! What a rule is: its page in the manual, and its check.

use potwright_manuscript::{Recipe, Span};
use potwright_reckon::Reckoned;

use crate::{Query, Recook, Weight};

/// A dish as read and as cooked: everything a rule may look at.
#[derive(Clone, Copy, Debug)]
pub struct Manuscript<'a> {
    /// The recipe as read.
    pub recipe: &'a Recipe,
    /// The text it was read from.
    pub text: &'a str,
    /// What cooking it gave.
    pub reckoned: &'a Reckoned,
    /// How changed words would be cooked; none where nothing is to be cooked again.
    pub recook: Option<Recook<'a>>,
}

/// A rule and its page in the manual.
#[derive(Clone, Copy, Debug)]
pub struct Rule {
    /// Stable code, never reused.
    pub code: &'static str,
    /// The fault in a few words: `listed, never used`.
    pub name: &'static str,
    /// What it finds.
    pub finds: &'static str,
    /// Why it matters to a reader at the stove.
    pub why: &'static str,
    /// A short manuscript on which it fires.
    pub fires: &'static str,
    /// A short manuscript on which it keeps silent.
    pub silent: &'static str,
    /// What to write instead.
    pub instead: &'static str,
    /// Where the rule is from.
    pub source: &'static str,
    /// The check.
    pub check: fn(&Manuscript<'_>) -> Vec<Query>,
}

impl Rule {
    /// The rule's page in the manual, as plain text.
    #[must_use]
    pub fn page(&self) -> String {
        format!(
            "{} · {}\n\nWhat it finds\n{}\n\nWhy it matters\n{}\n\nAsked about\n{}\n\nNot asked about\n{}\n\n\
             Write instead\n{}\n\nSource\n{}\n",
            self.code, self.name, self.finds, self.why, self.fires, self.silent, self.instead, self.source,
        )
    }
}

impl Rule {
    /// A query of this rule, without corrected words or other places.
    pub(crate) fn query(
        &self,
        weight: Weight,
        span: Span,
        asks: impl Into<String>,
        because: impl Into<String>,
    ) -> Query {
        Query {
            code: self.code.into(),
            weight,
            span,
            asks: asks.into(),
            because: because.into(),
            try_words: None,
            see: Vec::new(),
        }
    }
}
