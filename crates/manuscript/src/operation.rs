//! What the method tells the cook to do.

use serde::{Deserialize, Serialize};

use crate::{Quantity, Span, Verb, Words};
use potwright_measure::{Exact, WrittenTemperature};

/// One thing to do: an imperative that changes the food, its place or its heat.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Operation {
    /// The words that say it.
    pub span: Span,
    /// Index into [`crate::Recipe::steps`].
    pub step: usize,
    /// What is done.
    pub verb: Verb,
    /// Where the verb stands.
    pub verb_span: Span,
    /// What it is done to or what goes in.
    pub foods: Vec<FoodRef>,
    /// The vessel.
    pub into: Option<VesselRef>,
    /// Heat in words.
    pub heat: Option<HeatWord>,
    /// The setting of the oven or the heat of a fat or a liquid; an ordinary oven, where the page gives that of a fan
    /// oven too.
    pub temperature: Option<WrittenTemperature>,
    /// The setting of a fan oven, where the page gives it: '200 C / 180 C fan'.
    #[serde(default)]
    pub fan: Option<WrittenTemperature>,
    /// How hot the food itself is to be: 'until 75 °C in the middle'. Of a range the low end.
    #[serde(default)]
    pub core: Option<WrittenTemperature>,
    /// How long.
    pub minutes: Option<Minutes>,
    /// 'until soft', 'until it coats a spoon': the sign to stop, without 'until'.
    pub cue: Option<Words>,
    /// Lid.
    pub cover: Option<Cover>,
    /// What is thrown away.
    pub discard: Vec<FoodRef>,
    /// What is kept back.
    pub keep: Vec<FoodRef>,
    /// 'in two batches', 'per side'.
    pub repeat: Option<Repeat>,
    /// Imperative or participle.
    pub form: Form,
    /// Said to happen while the one before goes on ('meanwhile').
    pub meanwhile: bool,
    /// 'if you like', 'if it is too thick'.
    pub optional: bool,
}

impl Operation {
    /// An order of nothing but its verb; `verb_span` is where that stands.
    #[must_use]
    pub const fn new(verb: Verb, step: usize, span: Span, verb_span: Span) -> Operation {
        Operation {
            span,
            step,
            verb,
            verb_span,
            foods: Vec::new(),
            into: None,
            heat: None,
            temperature: None,
            fan: None,
            core: None,
            minutes: None,
            cue: None,
            cover: None,
            discard: Vec::new(),
            keep: Vec::new(),
            repeat: None,
            form: Form::Imperative,
            meanwhile: false,
            optional: false,
        }
    }
}

/// A food as the method names it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct FoodRef {
    /// The words.
    pub words: Words,
    /// What they stand for.
    pub target: Target,
    /// How much of it.
    pub share: Share,
}

/// What a food word of the method stands for.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Target {
    /// An ingredient of the list, and which of the foods that share its amount.
    Ingredient {
        /// Index into [`crate::Recipe::ingredients`].
        index: usize,
        /// Index into its `items`.
        item: usize,
    },
    /// The whole contents of the vessel being worked in ('the soup', 'it', nothing said).
    Pot,
    /// Something made on the way: the dumplings, the soaking liquid, the roux.
    Component(String),
    /// A food that is not on the list.
    Unlisted(String),
}

/// How much of a food an operation takes.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Share {
    /// All that is left of it (all of it, the first time).
    Whole,
    /// 'half', 'a third of'.
    Fraction(Exact),
    /// '1 tablespoon of the oil'.
    Measure(Quantity),
    /// 'the remaining', 'the rest of'.
    Rest,
    /// 'a little', 'some', 'a few': a part that is not named.
    Some,
}

/// A vessel as the method names it.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct VesselRef {
    /// The words, such as 'large heavy pot'.
    pub words: Words,
    /// Not named here but earlier.
    pub inferred: bool,
}

/// Heat in words.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "kebab-case")]
#[expect(missing_docs, reason = "each variant is the word of its name")]
pub enum HeatWord {
    Off,
    Low,
    MediumLow,
    Medium,
    MediumHigh,
    High,
    /// 'reduce the heat' without saying to what.
    Lower,
}

/// How long, in minutes.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Minutes {
    /// Low end, minutes.
    pub low: f64,
    /// High end, minutes; equal to `low` for a single number.
    pub high: f64,
    /// Where it stands.
    pub span: Span,
    /// Counted back from the end: 'for the last hour', 'fifteen minutes before serving'.
    pub from_end: bool,
}

/// The lid.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Cover {
    /// On.
    On,
    /// Off.
    Off,
    /// Partly covered.
    Ajar,
}

/// An operation done more than once.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Repeat {
    /// The words: '2 batches', 'per side'.
    pub words: Words,
    /// How often, when it is said or follows ('per side' is 2).
    pub times: Option<u32>,
}

/// The grammatical form in which an operation stands.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Form {
    /// 'Chop the onion.'
    Imperative,
    /// 'the onion, chopped': work that no other line or step has done.
    Participle,
}
