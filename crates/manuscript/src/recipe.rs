//! A recipe as read: what the page says, in page order, with the place of everything.

use serde::{Deserialize, Serialize};

use crate::{Ingredient, Operation, Span, Words};
use potwright_measure::Amount;

/// What a typed page says.
///
/// Lists are flat and in page order; things refer to each other by index into these lists.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Recipe {
    /// The title.
    pub title: Option<Words>,
    /// Paragraphs before the list.
    pub headnote: Vec<Words>,
    /// 'Serves 4 to 6', 'Makes about 2 litres'.
    pub yields: Option<YieldLine>,
    /// 'Total time: 3 hours' and the like.
    pub declared_times: Vec<DeclaredTime>,
    /// Headings over parts of the list or of the method ('For the dumplings').
    pub sections: Vec<Section>,
    /// Ingredient lines, one entry for each amount.
    pub ingredients: Vec<Ingredient>,
    /// The method's steps or paragraphs.
    pub steps: Vec<Step>,
    /// What the method tells the cook to do, in page order.
    pub operations: Vec<Operation>,
    /// Named changes to the recipe.
    pub variations: Vec<Variation>,
    /// Notes to the desk in square brackets; they steer and are never printed.
    pub desk_notes: Vec<DeskNote>,
    /// Paragraphs after the method.
    pub closing: Vec<Words>,
    /// Whether the ingredients stand in a list or in the running text.
    pub layout: Layout,
    /// The whole file, end to end without gaps: concatenated, the spans give the text back.
    pub blocks: Vec<Block>,
    /// Readings the reader is not sure of, and words it did not understand.
    pub unsure: Vec<Unsure>,
    /// Rows that measure out a food and that neither the list nor the method has taken: what they bring is not known.
    #[serde(default)]
    pub strays: Vec<Words>,
}

/// How a page is laid out.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Layout {
    /// An ingredient list, then a method.
    List,
    /// Ingredients named in running text.
    Prose,
}

/// The yield line.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct YieldLine {
    /// The words.
    pub words: Words,
    /// The number or range, when there is one.
    pub amount: Option<Amount>,
    /// What is counted, singular: `serving`, `litre`, `cup`, `dumpling` …
    pub unit: Option<String>,
}

impl YieldLine {
    /// Number of servings when the line counts people or portions: the low and high end.
    #[must_use]
    pub fn servings(&self) -> Option<(f64, f64)> {
        let amount = self.amount?;
        let counts_people = self.unit.as_deref().is_none_or(|unit| unit == "serving");
        counts_people.then(|| (amount.low.to_f64(), amount.high.to_f64()))
    }
}

/// A time the page claims for the whole.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DeclaredTime {
    /// The words.
    pub words: Words,
    /// What it is the time of: `active`, `preparation`, `cooking`, `total`, `soaking` …
    pub what: String,
    /// Low and high end in minutes.
    pub minutes: (f64, f64),
}

/// A heading over part of the list or method.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Section {
    /// The heading as typed.
    pub words: Words,
    /// The thing it names, without 'for the' and colon: `herb dumplings`.
    pub name: String,
}

/// One numbered step or paragraph of the method.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Step {
    /// Its text without number.
    pub words: Words,
    /// Index into [`Recipe::sections`] when it stands under a heading.
    pub section: Option<usize>,
    /// The places of its words in page order, when the lines of another column stand between them (`words.span` then
    /// holds both columns); empty when the words stand together.
    #[serde(default, skip_serializing_if = "Vec::is_empty")]
    pub pieces: Vec<Span>,
}

impl Step {
    /// Where its words stand, in page order.
    #[must_use]
    pub fn places(&self) -> &[Span] {
        if self.pieces.is_empty() {
            std::slice::from_ref(&self.words.span)
        } else {
            &self.pieces
        }
    }
}

/// A named change to the recipe, printed after it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Variation {
    /// What it is called, if anything.
    pub name: Option<Words>,
    /// Its text.
    pub words: Words,
    /// The changes that were understood.
    pub changes: Vec<Change>,
}

/// One change of a variation.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Change {
    /// The ingredient of this index is left out.
    LeaveOut(usize),
    /// The ingredient of this index is replaced.
    Swap {
        /// Index into [`Recipe::ingredients`].
        ingredient: usize,
        /// What takes its place.
        with: Box<Ingredient>,
    },
    /// Something is added; the method takes it where the text says, else at the end.
    Add(Box<Ingredient>),
}

/// A note to the desk in square brackets.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct DeskNote {
    /// The words between the brackets.
    pub words: Words,
    /// The step in which it stands, if in one: a note on the vessel or lid there steers that step.
    pub step: Option<usize>,
}

/// A stretch of the file and what it was taken for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Block {
    /// Where it stands.
    pub span: Span,
    /// What it was taken for.
    pub kind: BlockKind,
}

/// What a stretch of the file was taken for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "each variant is the part of the page of its name")]
pub enum BlockKind {
    Title,
    Headnote,
    Yield,
    DeclaredTime,
    SectionHeading,
    PartHeading,
    Ingredient,
    Step,
    Variation,
    DeskNote,
    Closing,
    /// White space, rules, list marks, step numbers.
    Gap,
}

/// A place where the reader is not sure.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Unsure {
    /// The words it is about.
    pub span: Span,
    /// One sentence to the writer: what is unclear.
    pub what: String,
    /// What it was taken for meanwhile, if anything.
    pub taken_as: Option<String>,
}
