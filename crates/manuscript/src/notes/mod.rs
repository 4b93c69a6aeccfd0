//! Stove notes: what somebody said while cooking, as a machine wrote it down, to one draft manuscript a dish.
//!
//! | step | takes → gives | file |
//! | --- | --- | --- |
//! | hear | transcript → words with places and times | [`transcript`], [`apostrophes`] |
//! | part | words → sentences and clauses, asides marked | [`clause`] |
//! | find | words → foods and amounts | [`mention`], [`food`], [`numbers`], [`misheard`], [`vessel`] |
//! | gather | mentions → dishes, their parts, what goes into each; repairs | [`gather`], [`turn`], [`topic`], [`bind`], [`repair`], [`pans`] |
//! | follow | words → what is done, with time, heat, lid, cue | [`beat`], [`phrase`] |
//! | ask | what was not said → queries | [`query`] |
//! | write | all of these → pages | [`mod@write`], [`preparation`] |
//!
//! The words of speech are in `data/notes.tsv`; foods, units, vessels and verbs are those of the page grammar. Nothing can
//! fail: what was not understood or set aside is listed with its place.

mod apostrophes;
mod beat;
mod bind;
mod clause;
mod food;
mod gather;
mod mention;
mod misheard;
mod numbers;
mod pans;
mod phrase;
mod preparation;
mod query;
mod repair;
#[cfg(test)]
mod tests;
mod topic;
mod transcript;
mod turn;
mod vessel;
mod words;
mod write;

use serde::{Deserialize, Serialize};

use crate::{Unsure, Words};

use gather::{Gathered, Item};
use transcript::Heard;

/// What a take of stove notes gives.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Notes {
    /// One draft a dish, in the order the dishes were begun.
    pub drafts: Vec<Draft>,
    /// What was said and went into no draft, in the order it was said.
    pub set_aside: Vec<SetAside>,
}

/// A draft manuscript.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Draft {
    /// The dish, as it was called.
    pub title: String,
    /// The whole page in house style; its queries stand at the end in square brackets.
    pub page: String,
    /// Ingredient lines with the part they belong to, in order of use.
    pub lines: Vec<DraftLine>,
    /// What was not said or not sure; spans are places in the notes.
    pub queries: Vec<Unsure>,
    /// Times said or, where none was said, seen from the stamps.
    pub times: Vec<DraftTime>,
    /// Titles of other drafts of the take whose making this one uses.
    pub uses: Vec<String>,
}

/// An ingredient line of a draft.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct DraftLine {
    /// The line as it stands on the page.
    pub line: String,
    /// The part of the dish it is for, when it is not the dish itself.
    pub part: Option<String>,
    /// The words it was made from.
    pub said: Words,
}

/// A time of a draft.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct DraftTime {
    /// Low and high end in minutes.
    pub minutes: (f64, f64),
    /// Seen from the stamps, not said.
    pub observed: bool,
    /// The words around it.
    pub said: Words,
}

/// Words that went into no draft.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct SetAside {
    /// The words.
    pub words: Words,
    /// Seconds from the start of the take, when the notes have stamps.
    pub second: Option<f64>,
}

/// Drafts manuscripts from stove notes: plain text, stamps (`[12:05]`), SubRip or WebVTT.
///
/// It cannot fail: notes without a dish give no draft, and all their words are set aside.
///
/// ```
/// let notes = potwright_manuscript::draft("leek soup. two leeks sliced, fifty grams of butter, no, sixty grams of butter");
/// assert_eq!(notes.drafts[0].lines[1].line, "60 g butter");
/// ```
#[must_use]
pub fn draft(text: &str) -> Notes {
    let heard = transcript::heard(text);
    let clauses = clause::clauses(&heard);
    let asides = clause::asides(&clauses, heard.tokens.len());
    let mentions = mention::mentions(&heard);
    let gathered = gather::gather(&heard, &clauses, &asides, &mentions);
    let beats = beat::beats(&heard, &gathered, &asides);
    let set_aside = set_aside(&heard, &clauses, &beats, &gathered);
    let work = Work {
        heard: &heard,
        gathered: &gathered,
        beats: &beats,
        set_aside: set_aside.len(),
    };
    let dishes = (0..gathered.topics.len()).filter(|index| work.is_dish(*index));
    Notes {
        drafts: dishes.map(|index| work.draft(index)).collect(),
        set_aside,
    }
}

/// What a draft is written from.
struct Work<'a, 't> {
    heard: &'a Heard<'t>,
    gathered: &'a Gathered,
    beats: &'a [beat::Beat],
    set_aside: usize,
}

impl Work<'_, '_> {
    /// A dish has foods of its own or in its parts.
    fn is_dish(&self, index: usize) -> bool {
        let topics = &self.gathered.topics;
        let own = topics.get(index).is_some_and(|topic| topic.part_of.is_none());
        own && topics
            .iter()
            .enumerate()
            .any(|(other, topic)| (other == index || topic.part_of == Some(index)) && !topic.items.is_empty())
    }

    fn draft(&self, index: usize) -> Draft {
        let tokens = &self.heard.tokens;
        let topics = &self.gathered.topics;
        let parts: Vec<usize> = std::iter::once(index)
            .chain(
                (0..topics.len()).filter(|other| topics.get(*other).is_some_and(|topic| topic.part_of == Some(index))),
            )
            .collect();
        let title = topics.get(index).map_or("", |topic| topic.title.as_str());
        let title = if title.is_empty() {
            "Untitled dish".to_owned()
        } else {
            write::sentence(title)
        };
        let (mut lines, mut uses) = (Vec::new(), Vec::new());
        for part in &parts {
            self.lines(index, *part, &mut lines, &mut uses);
        }
        let own: Vec<&beat::Beat> = self.beats.iter().filter(|beat| parts.contains(&beat.topic)).collect();
        let mut queries = query::queries(tokens, self.gathered, self.beats, &parts);
        if topics.get(index).is_some_and(|topic| topic.title.is_empty()) {
            queries.insert(
                0,
                Unsure {
                    span: query::span(tokens, 0, 1),
                    what: "What is this dish called? No name was said.".into(),
                    taken_as: None,
                },
            );
        }
        let mut draft = Draft {
            page: String::new(),
            times: own.iter().filter_map(|beat| self.time(beat)).collect(),
            title,
            lines,
            queries,
            uses,
        };
        draft.page = self.page(&draft, index, &own);
        draft
    }

    fn lines(&self, dish: usize, part: usize, lines: &mut Vec<DraftLine>, uses: &mut Vec<String>) {
        let tokens = &self.heard.tokens;
        let Some(topic) = self.gathered.topics.get(part) else {
            return;
        };
        let mut items: Vec<&Item> = topic.items.iter().collect();
        items.sort_by_key(|item| item.at);
        for item in items {
            let mut item = item.clone();
            if let Some(other) = self.source(dish, &item) {
                let called = write::sentence(&other);
                item.food.name = if other.split(' ').next_back() == Some(item.food.noun()) {
                    other
                } else {
                    format!("{} from {called}", item.food.name)
                };
                if !uses.contains(&called) {
                    uses.push(called);
                }
            }
            // 'eight thighs, skin on, about a kilo': before its second measure, or after it.
            let ends = [item.food.next, item.words.1];
            let said_at = |end: &usize| Some(preparation::said(tokens, *end)).filter(|said| !said.is_empty());
            let preparation = ends.iter().find_map(said_at).unwrap_or_default();
            let said = Words::at(self.heard.text, query::span(tokens, item.words.0, item.words.1));
            for line in write::lines(&item, &preparation) {
                lines.push(DraftLine {
                    line,
                    part: (part != dish).then(|| topic.title.clone()),
                    said: said.clone(),
                });
            }
        }
    }

    /// The earlier dish of the take that made this stock or broth.
    fn source(&self, dish: usize, item: &Item) -> Option<String> {
        if !matches!(item.food.noun(), "stock" | "broth") {
            return None;
        }
        let topics = self.gathered.topics.iter().enumerate();
        let mut makers = topics.filter(|(index, topic)| {
            let water = topic.items.iter().any(|item| item.food.noun() == "water");
            let called = topic
                .words
                .iter()
                .any(|word| matches!(word.as_str(), "stock" | "broth"));
            *index != dish
                && topic.part_of.is_none()
                && !topic.items.is_empty()
                && (called || water && topic.items.iter().all(|item| item.food.noun() != "stock"))
                && (called || topic.words.iter().any(|word| item.food.words.contains(word)))
        });
        makers.next().map(|(_, topic)| topic.title.clone())
    }

    fn time(&self, beat: &beat::Beat) -> Option<DraftTime> {
        let said = Words::at(self.heard.text, query::span(&self.heard.tokens, beat.from, beat.next));
        let said_time = beat.time.map(|time| ((time.low, time.high), false));
        let (minutes, observed) = said_time.or(beat.observed.map(|seen| ((seen, seen), true)))?;
        Some(DraftTime {
            minutes,
            observed,
            said,
        })
    }

    fn page(&self, draft: &Draft, index: usize, beats: &[&beat::Beat]) -> String {
        let tokens = &self.heard.tokens;
        let mut page = format!("{}\n\n", draft.title);
        if let Some(servings) = self.servings(index) {
            page.push_str(&format!("Serves {servings}\n\n"));
        }
        let mut part: Option<&str> = None;
        for line in &draft.lines {
            if line.part.as_deref() != part {
                part = line.part.as_deref();
                page.push_str(&format!("\nFor the {}:\n", part.unwrap_or("dish")));
            }
            page.push_str(&format!("{}\n", line.line));
        }
        page.push('\n');
        let mut number = 0;
        let idle = |beat: &&&beat::Beat| beat.puts.is_empty() && beat.oven.is_none() && beat.verbs.is_empty();
        for beat in beats.iter().skip_while(idle) {
            if let Some(step) = write::step(tokens, self.gathered, beat, number == 0) {
                number += 1;
                page.push_str(&format!("{number}. {step}\n"));
            }
        }
        page.push('\n');
        for query in &draft.queries {
            page.push_str(&format!("[{}]\n", query.what));
        }
        let count = if draft.queries.len() == 1 {
            "1 query".to_owned()
        } else {
            format!("{} queries", draft.queries.len())
        };
        page.push_str(&format!(
            "[{count}. Set aside from the notes as talk: {}.]\n",
            self.set_aside
        ));
        page
    }

    /// How many the dish is said to feed.
    fn servings(&self, index: usize) -> Option<String> {
        let tokens = &self.heard.tokens;
        let topics = &self.gathered.topics;
        (0..tokens.len()).find_map(|at| {
            let owner = self.gathered.owner.get(at).copied()?;
            let root = topics.get(owner)?.part_of.unwrap_or(owner);
            let (amount, _) = phrase::servings(tokens, at).filter(|_| root == index)?;
            let low = amount.low.to_f64();
            Some(if amount.is_single() {
                format!("{low}")
            } else {
                format!("{low} to {}", amount.high.to_f64())
            })
        })
    }
}

/// Sentences that are in no draft, noises, and mentions that were not taken.
fn set_aside(heard: &Heard, clauses: &[clause::Clause], beats: &[beat::Beat], gathered: &Gathered) -> Vec<SetAside> {
    let tokens = &heard.tokens;
    let told = |from: usize, next: usize| {
        let items = gathered
            .touches
            .range(from..next)
            .any(|(_, touch)| touch.item.is_some());
        let serves = (from..next).any(|at| phrase::servings(tokens, at).is_some());
        items
            || serves
            || beats
                .iter()
                .skip(beats.partition_point(|beat| beat.next <= from))
                .take_while(|beat| beat.from < next)
                .any(|beat| beat.waits())
    };
    let mut found: Vec<SetAside> = Vec::new();
    let mut open: Option<(usize, usize)> = None;
    let mut close = |open: &mut Option<(usize, usize)>| {
        if let Some((from, next)) = open.take() {
            let words = Words::at(heard.text, query::span(tokens, from, next));
            found.push(SetAside {
                words,
                second: heard.times.get(from).copied().flatten(),
            });
        }
    };
    for clause in clauses {
        if !clause.aside && told(clause.from, clause.next) {
            close(&mut open);
            continue;
        }
        if clause.opens {
            close(&mut open);
        }
        open = Some(open.map_or((clause.from, clause.next), |(from, _)| (from, clause.next)));
    }
    close(&mut open);
    found.extend(heard.noises.iter().map(|noise| SetAside {
        words: Words::at(heard.text, *noise),
        second: None,
    }));
    found.sort_by_key(|aside| aside.words.span.start);
    found
}
