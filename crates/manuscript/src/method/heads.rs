//! Which words of a sentence lead a clause: orders told from nouns and adjectives, participles that are work to do,
//! 'wine in', 'lid on'.

use super::clauses::{Clause, Going, Lead};
use super::participles::{food_word, passive, past_like, self_past, worked_on};
use super::turns::{goes_in, in_goes, let_inner, lid, makes, must, puts_to, seasons};
use super::words::{self, Inflection};
use crate::lexicon::{Class, class};
use crate::speech::{Speech, speech};
use crate::token::{Token, at, speech_at};

/// What stands before a word that could begin an order.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Edge {
    /// The beginning of the sentence.
    Start,
    /// A sign.
    Sign,
    /// 'and', 'or', 'then'.
    Joined,
}

pub(super) fn head(
    tokens: &[Token],
    sentence: (usize, usize),
    index: usize,
    going: &Going,
    last: Option<&Clause>,
) -> Option<Clause> {
    let token = tokens.get(index)?;
    let special = lid(tokens, sentence, index, last)
        .or_else(|| goes_in(tokens, sentence, index, last))
        .or_else(|| in_goes(tokens, sentence, index))
        .or_else(|| seasons(tokens, sentence, index))
        .or_else(|| makes(tokens, sentence, index))
        .or_else(|| must(tokens, sentence, index));
    if special.is_some() {
        return special;
    }
    let pair = in_two_words(tokens, index, sentence.1);
    let (verb, form) = pair.or_else(|| words::verb(&token.lower))?;
    let entry = words::entry(verb)?;
    let length = 1 + usize::from(pair.is_some());
    let edge = edge(tokens, sentence.0, index);
    let found = |lead, from: usize, at: usize, object: (usize, usize)| {
        Some(Clause {
            lead,
            verb,
            form,
            at,
            before: (from, from),
            object,
            body: (at + length, at + length),
            from,
            first: false,
        })
    };
    match form {
        Inflection::Base if edge.is_some() => {
            // 'Add the crackers, split and soaked': after what goes in, a word that is its own past tells of work.
            let split = self_past(&token.lower) && edge == Some(Edge::Sign) && last.is_some_and(puts);
            let object = if split {
                worked_on(tokens, sentence, index)
            } else {
                None
            };
            if let Some(object) = object {
                return found(Lead::Done, object.0, index, object);
            }
            let order = pair.is_some() && !going.side && !going.cue;
            if !order && !is_order(tokens, sentence, index, going, edge?, last.is_none()) {
                return past_like(tokens, sentence, index, going)
                    .and_then(|object| found(Lead::Done, object.0, index, object));
            }
            let inner = if entry.marks.lets || puts_to(verb) {
                let_inner(tokens, sentence, index, verb)
            } else {
                None
            };
            if inner.is_some() {
                return inner;
            }
            found(Lead::Order, index, index, (index, index))
        }
        Inflection::Base
            if after_side(tokens, sentence, index, going) || (last.is_none() && after_day(tokens, index)) =>
        {
            found(Lead::Order, index, index, (index, index))
        }
        Inflection::Base => {
            past_like(tokens, sentence, index, going).and_then(|object| found(Lead::Done, object.0, index, object))
        }
        Inflection::Ing => {
            let while_before = index > sentence.0 && at(tokens, index - 1) == "while";
            let placed = edge.is_some() || while_before;
            // 'add sausage & seasoning' names a food.
            let thing = token.class.is(Class::FOOD) && !tokens.get(index + 1).is_some_and(super::nouns::is_determiner);
            let works = (entry.marks.ing && !thing) || (entry.marks.ing_in && at(tokens, index + 1) == "in");
            (placed && works && !going.cue)
                .then(|| found(Lead::Doing, index, index, (index, index)))
                .flatten()
        }
        Inflection::Past => {
            if !entry.marks.past || going.cue {
                return None;
            }
            if let Some(subject) = passive(tokens, sentence, index) {
                return found(Lead::Passive, subject.0, index, subject);
            }
            if going.side && !going.after_done {
                return None;
            }
            let second = going.after_done && edge == Some(Edge::Joined);
            let object = if second {
                Some((index, index))
            } else {
                worked_on(tokens, sentence, index)
            };
            object.and_then(|object| found(Lead::Done, object.0, index, object))
        }
    }
}

/// 'stir fry', 'pressure cook', 'dry roast': the word before says how.
fn in_two_words(tokens: &[Token], index: usize, end: usize) -> Option<(&'static str, Inflection)> {
    const HOW: &str = "stir pressure slow deep shallow dry pan flash blast hard soft spit oven hand par";
    let second = tokens
        .get(index + 1)
        .filter(|_| index + 1 < end && tokens[index].is_one_of(HOW))?;
    let whole = words::verb(&format!("{}-{}", at(tokens, index), second.lower)).filter(|(base, _)| base.contains('-'));
    let base = |found: &(&'static str, Inflection)| {
        let last = words::entry(found.0).and_then(|entry| entry.rows.last());
        let heats = last.is_some_and(|row| {
            matches!(row.meaning, words::Meaning::Do(verb) if super::takes::cooks(verb) || matches!(verb, crate::Verb::Chill | crate::Verb::Freeze | crate::Verb::Puree))
        });
        found.1 == Inflection::Base && heats
    };
    whole.or_else(|| words::verb(&second.lower)).filter(base)
}

/// 'When the broth boils tip in the rice': an order right after a side clause, without a comma.
fn after_side(tokens: &[Token], sentence: (usize, usize), index: usize, going: &Going) -> bool {
    let before = index
        .checked_sub(1)
        .filter(|before| *before > sentence.0)
        .map_or("", |before| at(tokens, before));
    let free = !before.is_empty()
        && before != "to"
        && !speech(before).is(Speech::ARTICLE
            .or(Speech::FINITE)
            .or(Speech::PERSON)
            .or(Speech::NEVER)
            .or(Speech::JOINER)
            .or(Speech::ADVERB));
    let next = |ahead: usize| tokens.get(index + ahead).filter(|_| index + ahead < sentence.1);
    let object = |ahead: usize| {
        next(ahead).is_some_and(|t| super::nouns::is_determiner(t) || matches!(t.lower.as_str(), "it" | "them"))
    };
    let particle = next(1).is_some_and(|t| t.is_any(&["in", "on", "over", "off", "out", "up", "into"]));
    let marks = words::entry(at(tokens, index))
        .map(|entry| entry.marks)
        .unwrap_or_default();
    let food = going.led
        && next(1).is_some_and(|t| t.class.is(Class::FOOD))
        && (food_word(before) || words::vessel(before).is_some());
    (going.when || going.led)
        && !going.cue
        && free
        && !marks.food
        && !marks.describes
        && (object(1) || food || (particle && object(2)) || next(1).is_some_and(|t| t.is_any(&["from", "off", "into"])))
}

/// 'In the morning drain'.
fn after_day(tokens: &[Token], index: usize) -> bool {
    let before = index.checked_sub(1).map_or("", |before| at(tokens, before));
    matches!(before, "morning" | "day" | "night" | "evening" | "meanwhile")
}

/// More adverbs than a sentence has in a row: the look back is bounded, so that reading stays linear.
const ADVERBS: usize = 12;

/// The edge before a token, over adverbs; `None` when it stands inside a phrase.
pub(super) fn edge(tokens: &[Token], start: usize, index: usize) -> Option<Edge> {
    let mut joined = false;
    let mut before = index;
    while index - before <= ADVERBS {
        if before <= start {
            return Some(if joined { Edge::Joined } else { Edge::Start });
        }
        let token = tokens.get(before - 1)?;
        // The number of a step.
        if before - 1 == start && token.number().is_some() {
            return Some(Edge::Start);
        }
        if token.speech.is(Speech::JOINER) || matches!(token.sign(), Some('&' | '/' | '+')) {
            return Some(Edge::Joined);
        }
        // 'and in it soften the onions', 'add to it'.
        let there = token.speech.is(Speech::PRONOUN)
            && before > start + 1
            && tokens
                .get(before - 2)
                .is_some_and(|t| t.is_any(&["in", "into", "to", "on", "over", "with"]));
        if there {
            before -= 2;
            continue;
        }
        if token.is("then") || (token.is("half") && at(tokens, before) == "cover") {
            joined |= token.is("then");
        } else if !token.speech.is(Speech::ADVERB) {
            let sign = token
                .sign()
                .is_some_and(|sign| !matches!(sign, '-' | '°' | '.' | '%' | '\''));
            let dash = token.is_dash() && token.gap != crate::token::Gap::None;
            return (sign || dash).then_some(if joined { Edge::Joined } else { Edge::Sign });
        }
        before -= 1;
    }
    None
}

/// Whether a base form at an edge is an order and not a noun, an adjective or part of a cue.
fn is_order(tokens: &[Token], sentence: (usize, usize), index: usize, going: &Going, edge: Edge, first: bool) -> bool {
    let word = at(tokens, index);
    let base = words::verb(word).map_or(word, |(base, _)| base);
    let Some(marks) = words::entry(base).map(|entry| entry.marks) else {
        return false;
    };
    let next = tokens.get(index + 1).filter(|_| index + 1 < sentence.1);
    const NO_ORDER: Speech = Speech::NEVER.or(Speech::FINITE).or(Speech::PERSON);
    if (index > sentence.0 && speech_at(tokens, index - 1).is(NO_ORDER)) || going.side {
        return false;
    }
    let object = next.is_some_and(|t| super::nouns::is_determiner(t) || t.speech.is(Speech::PRONOUN));
    let food_next = next.is_some_and(|t| t.class.is(Class::FOOD));
    if going.cue && (marks.in_cue || marks.describes || marks.noun) {
        return object || (food_next && !marks.describes);
    }
    // 'heat down' is a state, 'heat up the pan' an order.
    let last_word = tokens
        .get(index + 2)
        .filter(|_| index + 2 < sentence.1)
        .is_none_or(|t| t.sign().is_some());
    if word == "heat" && next.is_some_and(|t| t.is("down") || (t.is("up") && last_word)) {
        return false;
    }
    // 'skin side down', 'slices of bread', 'salt is'.
    let thing = |t: &Token| t.speech.is(Speech::FINITE) || t.is("of") || (marks.noun && t.is_any(&["side", "sides"]));
    if next.is_some_and(thing) {
        return false;
    }
    // 'Fish in, colour 10 minutes': the food, not the angler.
    let ends_after = tokens
        .get(index + 2)
        .filter(|_| index + 2 < sentence.1)
        .is_none_or(|t| t.sign().is_some());
    if class(word).is(Class::FOOD) && next.is_some_and(|t| t.is("in")) && ends_after {
        return false;
    }
    if marks.food {
        let surface = |ahead: usize| {
            tokens
                .get(index + ahead)
                .is_some_and(|t| t.speech.is(Speech::PLAIN) || t.is("surface"))
        };
        let vessel = super::vessels::vessel(tokens, index + 1, sentence.1.min(index + 6)).is_some()
            || surface(1)
            || (next.is_some_and(|t| t.is_word() && !t.speech.is(Speech::JOINER)) && surface(2));
        let time = super::phrases::minutes(tokens, index + 1).is_some();
        return (object || vessel) && !time;
    }
    if class(word).is(Class::FOOD) && marks.noun && edge == Edge::Joined && !first {
        // 'drain, reserve the liquor, and chop'.
        let ends = |at: usize| {
            tokens
                .get(at)
                .filter(|_| at < sentence.1)
                .is_none_or(|t| t.sign().is_some())
        };
        let fine = next.is_some_and(|t| t.class.is(Class::MANNER | Class::SIZE) || t.is_any(&["fine", "small"]));
        let last = ends(index + 1) || (fine && ends(index + 2));
        let listed = index >= sentence.0 + 2
            && speech_at(tokens, index - 1).is(Speech::JOINER)
            && (at(tokens, index - 2) == "," || in_place(tokens, sentence.0, index - 1));
        return object
            || (last && listed)
            || next.is_some_and(|t| {
                t.is_any(&[
                    "out", "off", "up", "into", "in", "on", "onto", "over", "for", "with", "until", "till",
                ]) || t.number().is_some()
            });
    }
    if marks.describes && edge == Edge::Joined && !object {
        // 'butter and brown sugar', 'cool and dry'.
        let ends = next.is_none_or(|t| t.sign().is_some());
        return !food_next
            && (ends || next.is_some_and(|t| t.speech.is(Speech::PREPOSITION.or(Speech::ADVERB).or(Speech::CLAUSE))));
    }
    true
}

/// 'plunge into cold water and …': what stands before 'and' is the place, so that a verb follows and no second food.
fn in_place(tokens: &[Token], start: usize, joiner: usize) -> bool {
    let near = (start..joiner).rev().take(4);
    near.take_while(|i| tokens[*i].is_word())
        .any(|i| matches!(at(tokens, i), "into" | "in" | "under" | "through" | "onto"))
}

/// Whether the clause puts something somewhere.
fn puts(clause: &Clause) -> bool {
    let last = words::entry(clause.verb).and_then(|entry| entry.rows.last());
    let placing = last.is_some_and(|row| matches!(row.meaning, words::Meaning::Do(verb) if super::takes::puts(verb)));
    clause.lead == Lead::Order && placing
}
