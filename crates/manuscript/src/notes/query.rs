//! What a draft has to ask: amounts, times, heats and vessels that were not said, and words that were not sure.

use crate::lexicon::Class;
use crate::token::Token;
use crate::{Span, Unsure};

use super::beat::{Beat, LASTING, is_one_of};
use super::gather::{Gathered, Item};
use super::misheard;
use super::write::{minutes, sentence};

/// So many words of the take are quoted in a query.
const QUOTED: usize = 14;

/// The queries of one dish, in the order of the take. `topics` are the dish and its parts.
pub(super) fn queries(tokens: &[Token], gathered: &Gathered, beats: &[Beat], topics: &[usize]) -> Vec<Unsure> {
    let mut found: Vec<Unsure> = Vec::new();
    for topic in topics.iter().filter_map(|topic| gathered.topics.get(*topic)) {
        found.extend(topic.items.iter().filter_map(|item| amount(tokens, item)));
        found.extend(topic.items.iter().filter_map(|item| more(tokens, item)));
    }
    found.extend(
        gathered
            .open
            .iter()
            .filter(|share| topics.contains(&share.topic))
            .map(|share| Unsure {
                span: span(tokens, share.from, share.next),
                what: format!(
                    "{}: how much of it? The amount was not said (‘{}’).",
                    sentence(&share.name),
                    quote(tokens, share.from, share.next)
                ),
                taken_as: None,
            }),
    );
    found.extend(
        topics
            .iter()
            .filter_map(|topic| gathered.topics.get(*topic))
            .flat_map(|topic| &topic.items)
            .filter_map(|item| worked(tokens, item)),
    );
    found.extend(vessels(tokens, gathered, topics));
    found.extend(no_vessel(tokens, gathered, beats, topics));
    let own: Vec<&Beat> = beats.iter().filter(|beat| topics.contains(&beat.topic)).collect();
    found.extend(kinds(tokens, gathered, topics));
    let mut before: Option<String> = None;
    for beat in &own {
        let foods = foods(gathered, beat);
        found.extend(time(tokens, gathered, beat, before.as_deref()));
        if !foods.is_empty() {
            before = Some(foods.iter().take(3).copied().collect::<Vec<_>>().join(", "));
        }
    }
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
    let bare = |c: char| c.is_whitespace() || matches!(c, '.' | ',' | ';' | ':' | '?' | '!');
    out.replace(['[', ']', '(', ')'], "")
        .trim_start_matches(bare)
        .trim()
        .to_owned()
}

/// An amount that was not said, or a food whose word was not sure.
fn amount(tokens: &[Token], item: &Item) -> Option<Unsure> {
    let (from, next) = item.words;
    let words = quote(tokens, from, next);
    if let Some(heard) = &item.food.heard {
        let (what, taken) = if *heard == item.food.name {
            (
                format!("‘{words}’: ‘{heard}’ is no food that is known. What was said?"),
                None,
            )
        } else {
            (
                format!("Did you say ‘{}’? The notes have ‘{words}’.", item.food.name),
                Some(item.food.name.clone()),
            )
        };
        let and = if item.said.is_none() {
            " And how much is it: the amount was not said."
        } else {
            ""
        };
        return Some(Unsure {
            span: span(tokens, from, next),
            what: format!("{what}{and}"),
            taken_as: taken,
        });
    }
    if item.said.is_some() && !unmeasured(tokens, item) {
        return None;
    }
    let name = sentence(&item.food.name);
    Some(Unsure {
        span: span(tokens, from, next),
        what: format!("{name}: how much? The amount was not said (‘{words}’)."),
        taken_as: None,
    })
}

/// A word after one that says which kind is bought, that is no food and sounds like one of the dish: 'pearl barely'.
fn kinds(tokens: &[Token], gathered: &Gathered, topics: &[usize]) -> Vec<Unsure> {
    let items = topics
        .iter()
        .filter_map(|topic| gathered.topics.get(*topic))
        .flat_map(|topic| &topic.items);
    let nouns: Vec<&str> = items.map(|item| item.food.noun()).collect();
    let heard = |pair: &[Token], at: usize| {
        let [kind, word] = pair else { return None };
        let unlike = kind.class.is(Class::KIND)
            && !kind.class.is(Class::SIZE | Class::FOOD)
            && word.is_word()
            && !word.class.is(Class::FOOD);
        let meant = nouns.iter().find(|noun| {
            unlike && **noun != word.lower.as_str() && word.lower.len() > 3 && misheard::alike(&word.lower, noun)
        })?;
        let heard = format!("{} {}", kind.lower.as_str(), word.lower.as_str());
        let meant = format!("{} {meant}", kind.lower.as_str());
        Some(Unsure {
            span: span(tokens, at, at + 2),
            what: format!("Did you say ‘{meant}’? The notes have ‘{heard}’."),
            taken_as: Some(meant),
        })
    };
    tokens
        .windows(2)
        .enumerate()
        .filter_map(|(at, pair)| heard(pair, at))
        .collect()
}

/// 'I didn't measure it' said of an amount.
fn unmeasured(tokens: &[Token], item: &Item) -> bool {
    let near = tokens
        .get(item.words.1..tokens.len().min(item.words.1 + 10))
        .unwrap_or_default();
    near.windows(2)
        .any(|pair| pair[0].is_any(&["didn't", "don't", "never"]) && pair[1].is_any(&["measure", "weigh", "count"]))
}

/// 'a drop more stock': more of it without a number.
fn more(tokens: &[Token], item: &Item) -> Option<Unsure> {
    let (from, next) = item.more_vague?;
    Some(Unsure {
        span: span(tokens, from, next),
        what: format!(
            "{}: how much more? The amount was not said (‘{}’).",
            sentence(&item.food.name),
            quote(tokens, from, next)
        ),
        taken_as: None,
    })
}

/// 'cumin seeds toasted': work over heat whose time was not said.
fn worked(tokens: &[Token], item: &Item) -> Option<Unsure> {
    let at = item.words.1 + usize::from(tokens.get(item.words.1).is_some_and(|t| t.sign() == Some(',')));
    let work = tokens
        .get(at)
        .filter(|t| t.is_any(&["toasted", "roasted", "fried", "grilled"]))?;
    Some(Unsure {
        span: span(tokens, item.words.0, at + 1),
        what: format!(
            "{}: {} for how long? The time was not said.",
            sentence(&item.food.name),
            work.lower.as_str()
        ),
        taken_as: None,
    })
}

/// A dish that is cooked in something nobody named.
fn no_vessel(tokens: &[Token], gathered: &Gathered, beats: &[Beat], topics: &[usize]) -> Option<Unsure> {
    let named = gathered
        .vessels
        .iter()
        .any(|pan| pan.cooks && pan.used && topics.contains(&pan.topic));
    let cooked = beats.iter().find(|beat| {
        let cooks = beat.verbs.iter().any(|verb| {
            is_one_of(
                verb,
                "simmer boil fry brown sweat soften braise poach stew steam saute sauté bubble",
            )
        });
        topics.contains(&beat.topic) && (cooks || beat.heat.is_some() || beat.cover.is_some())
    })?;
    let title = topics
        .first()
        .and_then(|topic| gathered.topics.get(*topic))
        .map_or("", |topic| topic.title.as_str());
    (!named).then(|| Unsure {
        span: span(tokens, cooked.from, cooked.next),
        what: format!(
            "{}: in what pot, and how big is it? No pot was named, and no size was said.",
            sentence(title)
        ),
        taken_as: None,
    })
}

/// Pots whose size was not said.
fn vessels(tokens: &[Token], gathered: &Gathered, topics: &[usize]) -> Vec<Unsure> {
    let mut asked: Vec<&str> = Vec::new();
    let mut found = Vec::new();
    for pan in gathered
        .vessels
        .iter()
        .filter(|pan| pan.cooks && pan.used && topics.contains(&pan.topic))
    {
        let sized = gathered
            .vessels
            .iter()
            .any(|other| other.size.is_some() && other.noun == pan.noun && topics.contains(&other.topic));
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
fn time(tokens: &[Token], gathered: &Gathered, beat: &Beat, before: Option<&str>) -> Option<Unsure> {
    let lasts = beat.verbs.iter().any(|verb| is_one_of(verb, LASTING));
    if beat.time.is_some() || !(beat.waits() || lasts) {
        return None;
    }
    let foods = foods(gathered, beat);
    let pan = beat
        .vessel
        .and_then(|pan| gathered.vessels.get(pan))
        .map(|pan| pan.name.as_str());
    let about = foods
        .first()
        .copied()
        .or(beat.names.first().map(String::as_str))
        .or(pan)
        .or(before);
    let topic = gathered.topics.get(beat.topic);
    let title = topic.map_or("", |topic| topic.title.as_str());
    let about = match about {
        Some(food) if food != title => format!("{title}, {food}"),
        _ => title.to_owned(),
    };
    let lid = if beat.cover == Some(crate::Cover::Off) {
        " with the lid off"
    } else {
        ""
    };
    let (from, next) = match (beat.cue, beat.vague_time) {
        (Some((from, next)), _) => (from.saturating_sub(8).max(beat.from), next),
        (_, Some((from, next))) => (from.saturating_sub(8).max(beat.from), next),
        _ => (beat.from, beat.next),
    };
    let observed = beat.observed.map_or(String::new(), |seen| {
        format!(
            " By the clock of the notes it was about {}.",
            minutes(seen.round(), seen.round())
        )
    });
    Some(Unsure {
        span: span(tokens, from, next),
        what: format!(
            "{}: how long{lid}? The time was not said (‘{}’).{observed}",
            sentence(&about),
            quote(tokens, from, next)
        ),
        taken_as: beat.observed.map(|seen| minutes(seen.round(), seen.round())),
    })
}

/// A dish as a query names it.
fn called(title: &str) -> String {
    sentence(if title.is_empty() { "this dish" } else { title })
}

/// The foods that go in with a beat.
fn foods<'a>(gathered: &'a Gathered, beat: &Beat) -> Vec<&'a str> {
    let topic = gathered.topics.get(beat.topic);
    let item = |item: &usize| {
        topic
            .and_then(|topic| topic.items.get(*item))
            .map(|item| item.food.name.as_str())
    };
    beat.puts.iter().filter_map(item).collect()
}

/// Work on the stove for which no heat was said up to then.
fn heat(tokens: &[Token], gathered: &Gathered, beats: &[&Beat]) -> Option<Unsure> {
    let mut known = false;
    for beat in beats {
        known |= beat.heat.is_some() || beat.in_oven || beat.oven.is_some();
        let boils = beat.verbs.iter().any(|verb| {
            matches!(
                *verb,
                "simmer"
                    | "boil"
                    | "bake"
                    | "roast"
                    | "toast"
                    | "grill"
                    | "soak"
                    | "sit"
                    | "leave"
                    | "stand"
                    | "rest"
                    | "cool"
            )
        });
        let stove = beat.waits()
            && !boils
            && (beat.cover.is_some()
                || beat
                    .verbs
                    .iter()
                    .any(|verb| is_one_of(verb, "fry brown cook sweat soften saute sauté melt go")));
        if stove && !known {
            let topic = gathered.topics.get(beat.topic)?;
            let place = beat
                .time
                .map_or(beat.from, |time| time.next.saturating_sub(6).max(beat.from));
            return Some(Unsure {
                span: span(tokens, place, beat.next),
                what: format!(
                    "{}: on what heat? It was not said (‘{}’).",
                    called(&topic.title),
                    quote(tokens, place, beat.next)
                ),
                taken_as: None,
            });
        }
    }
    None
}
