//! The parts of a clause: foods and vessels by the role they play, times, heats, lids, cues.

use potwright_measure::WrittenTemperature;

use super::degrees::Setting;
use super::nouns::Mention;
use super::vessels::VesselMention;
use crate::{Cover, HeatWord, Minutes, Repeat, Words};

/// The part that a thing plays in its clause.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Role {
    /// What the verb is done to.
    Object,
    /// After 'with'.
    With,
    /// After 'in': the food or the vessel it is done in.
    In,
    /// After 'to', 'into', 'on': where it goes.
    To,
    /// After 'over'.
    Over,
    /// After 'from', 'off', 'out of'.
    From,
    /// After 'discarding'.
    Discard,
    /// After 'keeping'.
    Keep,
    /// After 'except': left out of what was named.
    Except,
    /// Said by the way.
    Aside,
    /// After a comma behind a participle: it belongs to the order before.
    Rest,
}

/// A time with what stands around it.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Timed {
    pub(super) minutes: Minutes,
    /// It stands apart, after a comma or in brackets.
    pub(super) apart: bool,
    /// 'then 20 minutes': a second stretch of the same work.
    pub(super) then: bool,
}

/// What a clause says.
#[derive(Clone, Debug, Default)]
pub(super) struct Said {
    pub(super) foods: Vec<(Role, Mention)>,
    pub(super) vessels: Vec<(Role, VesselMention)>,
    pub(super) times: Vec<Timed>,
    pub(super) heat: Option<HeatWord>,
    pub(super) temperature: Setting,
    /// How hot the food itself is to be.
    pub(super) core: Option<WrittenTemperature>,
    /// What is said of the lid, once for each stretch of time.
    pub(super) covers: Vec<Cover>,
    pub(super) cue: Option<Words>,
    pub(super) repeat: Option<Repeat>,
    /// Every word, in small letters.
    pub(super) words: Vec<String>,
    /// It is the heat that the verb is done to.
    pub(super) heat_object: bool,
    /// 'gently', 'slowly'.
    pub(super) gentle: bool,
    /// 'if it looks dry', 'if you like'.
    pub(super) optional: bool,
    /// The last token that says something.
    pub(super) end: usize,
}

impl Said {
    /// What is said of the lid first.
    pub(super) fn cover(&self) -> Option<Cover> {
        self.covers.first().copied()
    }

    pub(super) fn says(&self, word: &str) -> bool {
        self.words.iter().any(|said| said == word)
    }

    /// 'back in', 'back to the pan'.
    pub(super) fn goes_back(&self) -> bool {
        let leads = |word: &str| matches!(word, "in" | "into" | "to" | "on" | "onto");
        self.words.windows(2).any(|two| two[0] == "back" && leads(&two[1]))
    }

    /// The first vessel that plays one of these parts.
    pub(super) fn vessel(&self, roles: &[Role]) -> Option<&VesselMention> {
        self.vessels
            .iter()
            .find(|(role, _)| roles.contains(role))
            .map(|(_, vessel)| vessel)
    }
}
