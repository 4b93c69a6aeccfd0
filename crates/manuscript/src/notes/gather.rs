//! Which dish every stretch of a take is about, and what went into each: mentions bound to foods, repairs settled.

use std::collections::BTreeMap;

use potwright_measure::Unit;

use crate::token::Token;

use super::clause::Clause;
use super::food::Food;
use super::mention::{Mention, Said};
use super::transcript::Heard;
use super::words::{self, Role};

/// Something that goes into a dish.
#[derive(Clone, Debug)]
pub(super) struct Item {
    pub(super) food: Food,
    pub(super) said: Option<Said>,
    pub(super) vague: Option<String>,
    /// The same amount in another measure.
    pub(super) also: Option<Said>,
    /// More of it, later on.
    pub(super) more: Vec<Said>,
    /// More of it without a number, later on: its words.
    pub(super) more_vague: Option<(usize, usize)>,
    /// 'a neck bone or a ham hock'.
    pub(super) or: Option<Food>,
    /// Index of the word with which it goes in, and of the one after its last mention.
    pub(super) at: usize,
    pub(super) last: usize,
    /// Words from its first mention to the end of its amount, for queries.
    pub(super) words: (usize, usize),
}

/// So often at most more of a food goes in; what is said beyond is no longer an addition but talk.
const MOST_ADDED: usize = 12;

impl Item {
    /// More of it goes in.
    pub(super) fn add(&mut self, said: &Said) {
        if self.more.len() < MOST_ADDED {
            self.more.push(said.clone());
        }
    }
}

/// A dish of the take, or a part of one.
#[derive(Clone, Debug, Default)]
pub(super) struct Topic {
    pub(super) title: String,
    pub(super) words: Vec<String>,
    /// The dish it is a part of.
    pub(super) part_of: Option<usize>,
    pub(super) announced: bool,
    /// It was made before the take, and is only told of.
    pub(super) earlier: bool,
    pub(super) items: Vec<Item>,
    pub(super) vessels: Vec<String>,
    /// Foods that were made here and are not bought: the stock that was strained.
    pub(super) made: Vec<String>,
}

/// A food that is spoken of: which topic and item, or a food of no list.
#[derive(Clone, Debug)]
pub(super) struct Touch {
    pub(super) topic: usize,
    pub(super) item: Option<usize>,
    pub(super) name: String,
    /// It goes in here for the first time, or more of it does.
    pub(super) enters: bool,
}

/// 'some of it', said of a food.
#[derive(Clone, Debug)]
pub(super) struct OpenShare {
    pub(super) topic: usize,
    pub(super) name: String,
    pub(super) from: usize,
    pub(super) next: usize,
}

/// What was gathered.
#[derive(Debug, Default)]
pub(super) struct Gathered {
    pub(super) topics: Vec<Topic>,
    /// For every word the topic it belongs to.
    pub(super) owner: Vec<usize>,
    /// Foods spoken of, by the index of the word.
    pub(super) touches: BTreeMap<usize, Touch>,
    /// Shares whose amount was left open.
    pub(super) open: Vec<OpenShare>,
    /// Mentions that were set aside, as word ranges.
    pub(super) aside: Vec<(usize, usize)>,
    /// Vessels and their sizes: topic, name, size, word index.
    pub(super) vessels: Vec<Pan>,
}

/// A vessel of a dish.
#[derive(Clone, Debug)]
pub(super) struct Pan {
    pub(super) topic: usize,
    pub(super) name: String,
    pub(super) noun: String,
    pub(super) size: Option<String>,
    pub(super) from: usize,
    pub(super) next: usize,
    pub(super) cooks: bool,
    /// Something goes into it, or its size matters to the speaker.
    pub(super) used: bool,
}

/// A food may be repaired, and an amount may find its food, within so many words.
pub(super) const NEAR: usize = 40;

/// Gathers a take.
pub(super) fn gather(heard: &Heard, clauses: &[Clause], asides: &[bool], mentions: &[Mention]) -> Gathered {
    let mut work = Work::new(heard, asides, mentions);
    work.announce();
    let mut at = 0;
    for (index, clause) in clauses.iter().enumerate() {
        if clause.from >= work.announced_to {
            work.turn(clause, clauses.get(index + 1));
        }
        let end = clause.next;
        if let Some(owner) = work.out.owner.get_mut(clause.from..end) {
            owner.fill(work.current);
        }
        work.vessels(clause);
        while let Some(mention) = mentions.get(at).filter(|mention| mention.from < end) {
            work.mention(at, mention);
            at += 1;
        }
    }
    work.out
}

pub(super) struct Work<'a, 't> {
    pub(super) heard: &'a Heard<'t>,
    pub(super) asides: &'a [bool],
    pub(super) mentions: &'a [Mention],
    pub(super) out: Gathered,
    pub(super) current: usize,
    pub(super) announced_to: usize,
    /// The food last spoken of: topic, item if any, the food, index after it.
    pub(super) last: Option<(usize, Option<usize>, Food, usize)>,
    /// How many dishes have been numbered so far.
    pub(super) counted: u32,
    /// The part at hand was made before and is told in one sentence.
    pub(super) told_aside: bool,
    /// Index of the word with which the dish at hand was last called done.
    pub(super) closed: Option<usize>,
    /// The unit of grams or millilitres that was said last.
    pub(super) metric: Option<Unit>,
    /// Words that size a vessel and measure no food.
    pub(super) sized: Vec<(usize, usize)>,
}

impl<'a, 't> Work<'a, 't> {
    fn new(heard: &'a Heard<'t>, asides: &'a [bool], mentions: &'a [Mention]) -> Self {
        let out = Gathered {
            topics: vec![Topic::default()],
            owner: vec![0; heard.tokens.len()],
            ..Gathered::default()
        };
        Work {
            heard,
            asides,
            mentions,
            out,
            current: 0,
            announced_to: 0,
            last: None,
            counted: 0,
            told_aside: false,
            closed: None,
            metric: None,
            sized: Vec::new(),
        }
    }

    pub(super) fn tokens(&self) -> &'a [Token<'t>] {
        &self.heard.tokens
    }

    pub(super) fn root(&self, topic: usize) -> usize {
        self.out
            .topics
            .get(topic)
            .and_then(|topic| topic.part_of)
            .unwrap_or(topic)
    }
}

/// The kind of measure: volume, mass or pieces.
pub(super) fn kind(said: &Said) -> Option<potwright_measure::Dimension> {
    said.unit.map(Unit::dimension)
}

/// Whether something between these words takes back what was said.
pub(super) fn repairs(tokens: &[Token], from: usize, next: usize) -> bool {
    // 'it has no salt in it' takes nothing back.
    let has_no = |at: usize| {
        let before = at.checked_sub(1).and_then(|before| tokens.get(before));
        tokens.get(at).is_some_and(|t| t.is("no"))
            && before.is_some_and(|t| t.is_one_of("has have had with there's is"))
    };
    (from..next.min(from + NEAR)).any(|at| words::at(tokens, at, Role::Repair).is_some() && !has_no(at))
}
