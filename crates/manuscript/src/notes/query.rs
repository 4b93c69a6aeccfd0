//! What a draft has to ask: amounts, times, heats and vessels that were not said, and words that were not sure.

use crate::token::Token;
use crate::{HeatWord, Span, Unsure};

use super::beat::{Beat, LASTING, is_one_of};
use super::gather::{Gathered, Item};
use super::mention::text;
use super::write::{minutes, sentence};

/// So many words of the take are quoted in a query.
const QUOTED: usize = 14;

/// The queries of one dish, in the order of the take. `topics` are the dish and its parts.
pub(super) fn queries(tokens: &[Token], gathered: &Gathered, beats: &[Beat], topics: &[usize]) -> Vec<Unsure> {
    let mut found: Vec<Unsure> = Vec::new();
    for topic in topics.iter().filter_map(|topic| gathered.topics.get(*topic)) {
        found.extend(topic.items.iter().filter_map(|item| amount(tokens, item)));
    }
    found.extend(vessels(tokens, gathered, topics));
    let own: Vec<&Beat> = beats.iter().filter(|beat| topics.contains(&beat.topic)).collect();
    found.extend(own.iter().filter_map(|beat| time(tokens, gathered, beat)));
    found.extend(heat(tokens, gathered, &own));
    found.sort_by_key(|query| query.span.start);
    found
}

/// The place of these words in the take.
pub(super) fn span(tokens: &[Token], from: usize, next: usize) -> Span {
    let last = next.saturating_sub(1).max(from).min(tokens.len().saturating_sub(1));
    match (tokens.get(from), tokens.get(last)) {
        (Some(first), Some(last)) => first.span.join(last.span),
        _ => Span::default(),
    }
}

/// The words of the take, as many as are quoted.
fn quote(tokens: &[Token], from: usize, next: usize) -> String {
    let mut out = String::new();
    for token in tokens.get(from..next.min(from + QUOTED)).unwrap_or_default() {
        if token.is_word() && !out.is_empty() || token.number().is_some() {
            out.push(' ');
        }
        out.push_str(token.text);
    }
    out.replace(['[', ']', '(', ')'], "").trim().to_owned()
}

/// An amount that was not said, or a food whose word was not sure.
fn amount(tokens: &[Token], item: &Item) -> Option<Unsure> {
    let (from, next) = item.words;
    let words = quote(tokens, from, next);
    if let Some(heard) = &item.food.heard {
        let (what, taken) = if *heard == item.food.name {
            (format!("‘{words}’: ‘{heard}’ is no food that is known. What was said?"), None)
        } else {
            (format!("Did you say ‘{}’? The notes have ‘{words}’.", item.food.name), Some(item.food.name.clone()))
        };
        let and = if item.said.is_none() { " And how much is it: the amount was not said." } else { "" };
        return Some(Unsure { span: span(tokens, from, next), what: format!("{what}{and}"), taken_as: taken });
    }
    if item.said.is_some() {
        return None;
    }
    let name = sentence(&item.food.name);
    Some(Unsure {
        span: span(tokens, from, next),
        what: format!("{name}: how much? The amount was not said (‘{words}’)."),
        taken_as: None,
    })
}

/// Pots whose size was not said.
fn vessels(tokens: &[Token], gathered: &Gathered, topics: &[usize]) -> Vec<Unsure> {
    let mut asked: Vec<&str> = Vec::new();
    let mut found = Vec::new();
    for pan in gathered.vessels.iter().filter(|pan| pan.cooks && topics.contains(&pan.topic)) {
        let sized = gathered.vessels.iter().any(|other| other.size.is_some() && other.noun == pan.noun && topics.contains(&other.topic));
        if pan.size.is_some() || sized && pan.name == pan.noun || asked.contains(&pan.name.as_str()) {
            continue;
        }
        asked.push(&pan.name);
        found.push(Unsure {
            span: span(tokens, pan.from, pan.next),
            what: format!("The {}: how big is it? The size was not said.", pan.name),
            taken_as: None,
        });
    }
    found
}

/// A wait whose time was not said.
fn time(tokens: &[Token], gathered: &Gathered, beat: &Beat) -> Option<Unsure> {
    let lasts = beat.verbs.iter().any(|verb| is_one_of(verb, LASTING));
    if beat.time.is_some() || !(beat.waits() || lasts) {
        return None;
    }
    let foods: Vec<&str> = gathered.topics.get(beat.topic).map_or(Vec::new(), |topic| {
        beat.puts.iter().filter_map(|item| topic.items.get(*item)).map(|item| item.food.name.as_str()).collect()
    });
    let about = foods.first().copied().or(beat.names.first().map(String::as_str));
    let title = gathered.topics.get(beat.topic).map_or("", |topic| topic.title.as_str());
    let about = about.unwrap_or(title);
    let (from, next) = match (beat.cue, beat.vague_time) {
        (Some((from, next)), _) => (from.saturating_sub(8).max(beat.from), next),
        (_, Some((from, next))) => (from.saturating_sub(8).max(beat.from), next),
        _ => (beat.from, beat.next),
    };
    let observed = beat.observed.map_or(String::new(), |seen| format!(" By the clock of the notes it was about {}.", minutes(seen.round(), seen.round())));
    Some(Unsure {
        span: span(tokens, from, next),
        what: format!("{}: how long? The time was not said (‘{}’).{observed}", sentence(about), quote(tokens, from, next)),
        taken_as: beat.observed.map(|seen| minutes(seen.round(), seen.round())),
    })
}

/// Work on the stove for which no heat was said up to then.
fn heat(tokens: &[Token], gathered: &Gathered, beats: &[&Beat]) -> Option<Unsure> {
    let mut known = false;
    for beat in beats {
        known |= beat.heat.is_some() || beat.in_oven || beat.oven.is_some();
        let boils = beat.verbs.iter().any(|verb| matches!(*verb, "simmer" | "boil" | "bake" | "roast" | "toast" | "grill" | "soak" | "sit" | "leave" | "stand" | "rest" | "cool"));
        let stove = beat.waits() && !boils && (beat.cover.is_some() || beat.verbs.iter().any(|verb| is_one_of(verb, "fry brown cook sweat soften saute sauté melt go")));
        if stove && !known {
            let topic = gathered.topics.get(beat.topic)?;
            let place = beat.time.map_or(beat.from, |time| time.next.saturating_sub(6).max(beat.from));
            return Some(Unsure {
                span: span(tokens, place, beat.next),
                what: format!("{}: on what heat? It was not said (‘{}’).", sentence(&topic.title), quote(tokens, place, beat.next)),
                taken_as: None,
            });
        }
    }
    let _ = HeatWord::Low;
    None
}

/// Words of the take as one query's words.
pub(super) fn said(tokens: &[Token], from: usize, next: usize) -> String {
    text(tokens, from, next)
}
