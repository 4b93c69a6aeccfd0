//! A query: a marginal question to the author.

use potwright_manuscript::Span;
use serde::{Deserialize, Serialize};

/// How much hangs on the answer; ordered heaviest first.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Weight {
    /// The dish cannot be cooked from the page, or not safely, before this is answered.
    MustSettle,
    /// Probably a slip.
    WorthALook,
    /// A matter of house style.
    HouseStyle,
}

impl Weight {
    /// The words on the page.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Weight::MustSettle => "must settle",
            Weight::WorthALook => "worth a look",
            Weight::HouseStyle => "house style",
        }
    }
}

/// A question to the author about some words.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Query {
    /// Stable code of the rule, never reused.
    pub code: String,
    /// How much hangs on it.
    pub weight: Weight,
    /// The words it is about.
    pub span: Span,
    /// One courteous sentence.
    pub asks: String,
    /// The figures or facts behind it.
    pub because: String,
    /// What might be written instead, when that can be said.
    pub try_words: Option<String>,
    /// Other places that belong to it, each with a word or two.
    pub see: Vec<(Span, String)>,
}
