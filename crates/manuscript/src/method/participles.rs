//! Participles that are work to do, and the foods before them: 'crackers split', 'the leek, chopped', 'it should be skimmed'.

use super::clauses::Going;
use super::words;
use crate::lexicon::{Class, class, singular};
use crate::speech::{Speech, speech};
use crate::token::{Token, at, speech_at};

/// More words than the foods of one participle have.
const WORKED_ON: usize = 60;

/// Whether the word is a form of a verb of cutting: 'the leek, chopped'.
pub(super) fn cuts(word: &str) -> bool {
    let rows = words::verb(word)
        .and_then(|(base, _)| words::entry(base))
        .map(|entry| &entry.rows);
    rows.and_then(|rows| rows.last())
        .is_some_and(|row| row.meaning == words::Meaning::Do(crate::Verb::Cut))
}

pub(super) fn self_past(word: &str) -> bool {
    matches!(word, "cut" | "split" | "spread")
}

/// 'crackers split', 'potatoes cut in dice': a base form that is its own past, right after a food.
pub(super) fn past_like(
    tokens: &[Token],
    sentence: (usize, usize),
    index: usize,
    going: &Going,
) -> Option<(usize, usize)> {
    let word = at(tokens, index);
    let both = self_past(word);
    let apart = index > sentence.0 && at(tokens, index - 1) == ",";
    (both && !apart && !going.cue && !going.side)
        .then(|| worked_on(tokens, sentence, index))
        .flatten()
}

/// The foods right before a participle that it works on: 'turnips and onions cut', 'salt, pepper, and mustard mixed'.
pub(super) fn worked_on(tokens: &[Token], (start, _): (usize, usize), index: usize) -> Option<(usize, usize)> {
    let mut last = index;
    let manner = |word: &str| {
        (speech(word).is(Speech::ADVERB) || speech(word).is(Speech::PARTLY)) && !class(word).is(Class::FOOD)
    };
    while last > start && manner(at(tokens, last - 1)) {
        last -= 1;
    }
    // 'an onion, a carrot and a turnip, all cut fine'.
    let together = last > start && matches!(at(tokens, last - 1), "all" | "both");
    last -= usize::from(together);
    // 'flour, diluted with water'.
    let apart = last > start + 1 && at(tokens, last - 1) == ",";
    let led_on = tokens
        .get(index + 1)
        .is_some_and(|t| t.speech.is(Speech::PREPOSITION) || t.speech.is(Speech::JOINER));
    if apart && (led_on || cuts(at(tokens, index))) {
        last -= 1;
    }
    if last == start || !food_word(at(tokens, last - 1)) {
        return None;
    }
    let follows = tokens.get(index + 1).is_none_or(|t| {
        t.sign().is_some_and(|sign| sign != '-')
            || t.speech.is(Speech::PREPOSITION)
            || t.speech.is(Speech::JOINER)
            || t.speech.is(Speech::ADVERB)
            || t.class.is(Class::SIZE | Class::MANNER)
            || t.is_any(&["until", "till", "til", "fine"])
    });
    if !follows {
        return None;
    }
    let mut from = last - 1;
    let (mut commas, mut joined) = (0, false);
    while from > start && last - from < WORKED_ON {
        let word = at(tokens, from - 1);
        let comma = at(tokens, from - 1) == ",";
        if speech(word).is(Speech::JOINER) {
            if joined {
                break;
            }
            // 'the vinegar and the parsley chopped fine': the second alone; 'turnips and onions cut' are both.
            if !together && speech(at(tokens, from)).is(Speech::ARTICLE) && !apart {
                break;
            }
            // 'fat, and bone sawed': a comma before 'and' keeps a pair apart; a list of three or more goes together.
            joined = true;
        } else if comma {
            commas += 1;
        } else if !(food_word(word)
            || speech(word).is(Speech::ARTICLE)
            || word == "remaining"
            || (together && is_count(tokens, from - 1)))
        {
            break;
        }
        from -= 1;
    }
    let last_alone = apart && joined && !together;
    if last_alone || (joined && commas == 1 && oxford_pair(tokens, from, last)) {
        from = (from..last)
            .rev()
            .find(|i| speech_at(tokens, *i).is(Speech::JOINER))
            .map_or(from, |i| i + 1);
    }
    Some((from, last))
}

/// How many, or how large.
fn is_count(tokens: &[Token], index: usize) -> bool {
    class(at(tokens, index)).is(Class::SIZE) || crate::number::number(tokens, index).is_some()
}

/// One comma, directly before 'and'.
pub(super) fn oxford_pair(tokens: &[Token], from: usize, last: usize) -> bool {
    (from..last).any(|i| at(tokens, i) == "," && speech_at(tokens, i + 1).is(Speech::JOINER))
}

pub(super) fn food_word(word: &str) -> bool {
    class(word).is(Class::FOOD)
        || speech(word).is(Speech::MADE)
        || class(&singular(word)).is(Class::FOOD)
        || speech(&singular(word)).is(Speech::MADE)
}

/// The subject of 'it should be removed', 'soup can be served'.
pub(super) fn passive(tokens: &[Token], (start, _): (usize, usize), index: usize) -> Option<(usize, usize)> {
    let mut be = index.checked_sub(1)?;
    while be > start && speech_at(tokens, be).is(Speech::ADVERB) {
        be -= 1;
    }
    let modal = be.checked_sub(1).filter(|modal| *modal >= start)?;
    let must = matches!(at(tokens, modal), "should" | "must" | "to");
    let served = at(tokens, modal) == "can" && at(tokens, index) == "served";
    let told = at(tokens, be) == "be" && (must || served) && at(tokens, start) != "if";
    let aside = (start..modal).any(|i| matches!(at(tokens, i), "case" | "otherwise" | "if" | "may"));
    if !told || aside {
        return None;
    }
    let from = (start..modal)
        .rev()
        .find(|i| tokens.get(*i).is_some_and(|t| t.sign().is_some()))
        .map_or(start, |i| i + 1);
    Some((from, modal))
}
