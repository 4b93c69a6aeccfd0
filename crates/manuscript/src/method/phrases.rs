//! Phrases that read the same wherever they stand: times, temperatures, heats, lids, how often.
//!
//! Each finder looks at one token and says what begins there and where the next thing begins.

use super::words;
use crate::number::{amount, number};
use crate::speech::{Speech, speech};
use crate::token::{Token, at, speech_at};
use crate::{Cover, HeatWord, Minutes, Repeat, Span, Words};

/// A phrase and the index of the token after it.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Found<T> {
    pub(crate) value: T,
    pub(crate) next: usize,
}

/// 'a few minutes' and 'several minutes' in numbers (common practice, no source).
const FEW: (f64, f64) = (2.0, 4.0);
const SEVERAL: (f64, f64) = (3.0, 6.0);

/// The span of the tokens from `from` up to, not including, `next`.
pub(super) fn span(tokens: &[Token], from: usize, next: usize) -> Span {
    match (tokens.get(from), next.checked_sub(1).and_then(|last| tokens.get(last))) {
        (Some(first), Some(last)) if last.span.end >= first.span.start => Span::new(first.span.start, last.span.end),
        (Some(first), _) => Span::new(first.span.start, first.span.start),
        _ => Span::default(),
    }
}

/// Minutes in one unit of time.
fn unit_minutes(word: &str) -> Option<f64> {
    Some(match word {
        "second" | "seconds" | "sec" | "secs" | "s" => 1.0 / 60.0,
        "minute" | "minutes" | "min" | "mins" | "m" => 1.0,
        "hour" | "hours" | "hr" | "hrs" | "h" => 60.0,
        "day" | "days" => 1440.0,
        "week" | "weeks" => 10_080.0,
        "month" | "months" => 43_800.0,
        _ => return None,
    })
}

/// 'for 8 to 10 minutes', 'an hour and a half', '2 h 30', 'the last hour', 'fifteen minutes before serving'.
pub(super) fn minutes(tokens: &[Token], from: usize) -> Option<Found<Minutes>> {
    let mut start = from;
    let mut last = false;
    let mut within = false;
    let numeral = loop {
        if let Some(found) = measure_of_time(tokens, start) {
            break found;
        }
        let word = at(tokens, start);
        last |= matches!(word, "last" | "final");
        within |= matches!(word, "within" | "inside");
        // 'for the space of one hour'.
        if matches!(word, "space" | "period") && at(tokens, start + 1) == "of" && start > from {
            start += 2;
            continue;
        }
        if start - from > 4 || !speech(word).is(Speech::LEAD) {
            return None;
        }
        start += 1;
    };
    let (mut low, mut high, mut next) = numeral;
    if last && at(tokens, start).is_empty() {
        return None;
    }
    if let Some((above, after)) = range_end(tokens, next) {
        (high, next) = (above, after);
    }
    if at(tokens, next) == "less" && at(tokens, next + 1) == "than" {
        return None;
    }
    if within {
        low = 0.0;
    }
    let vague = matches!((at(tokens, next), at(tokens, next + 1)), ("or", "so" | "thereabouts"));
    next += if vague {
        2
    } else {
        usize::from(matches!(at(tokens, next), "more" | "longer"))
    };
    let during = (from..start).any(|index| at(tokens, index) == "for");
    let before =
        !during && at(tokens, next) == "before" && !matches!(at(tokens, next + 1), "adding" | "you" | "eating");
    if before {
        next = to_break(tokens, next);
    }
    let value = Minutes {
        low,
        high,
        span: span(tokens, start, next),
        from_end: last || before,
    };
    Some(Found { value, next })
}

/// A number with its unit of time, and what follows it that is part of it.
fn measure_of_time(tokens: &[Token], from: usize) -> Option<(f64, f64, usize)> {
    if at(tokens, from) == "half-hour" {
        return Some((30.0, 30.0, from + 1));
    }
    // 'the last hour': one of it.
    let last = from > 0 && matches!(at(tokens, from - 1), "last" | "final");
    if let Some(unit) = unit_minutes(at(tokens, from)).filter(|_| last) {
        return Some((unit, unit, from + 1));
    }
    // 'for the last 15': minutes.
    let lasts = last && from > 2 && at(tokens, from - 2) == "the" && at(tokens, from - 3) == "for";
    if let Some((count, next)) = number(tokens, from).filter(|(_, next)| lasts && ends(tokens, *next)) {
        return Some((count.to_f64(), count.to_f64(), next));
    }
    let (low, high, mut unit_at) = loose_number(tokens, from).or_else(|| {
        let counted = amount(tokens, from)?;
        Some((counted.amount.low.to_f64(), counted.amount.high.to_f64(), counted.next))
    })?;
    while speech_at(tokens, unit_at).is(Speech::MORE) || (tokens.get(unit_at)?.is_dash() && unit_at > from) {
        unit_at += 1;
    }
    let unit = unit_minutes(at(tokens, unit_at))?;
    let next = unit_at + 1;
    // 'a minute or two'.
    if at(tokens, next) == "or" && at(tokens, next + 1) == "two" && low <= 1.0 {
        return Some((unit, 2.0 * unit, next + 2));
    }
    let (more, next) = added_time(tokens, next, unit);
    Some((low * unit + more, high * unit + more, next))
}

fn loose_number(tokens: &[Token], from: usize) -> Option<(f64, f64, usize)> {
    let start = from + usize::from(at(tokens, from) == "a");
    let (low, high) = match at(tokens, start) {
        "few" => FEW,
        "several" => SEVERAL,
        _ => return None,
    };
    Some((low, high, start + 1))
}

/// What is added to a time already read: 'and a half', 'and ten minutes', '20 mins', '30' after hours.
fn added_time(tokens: &[Token], from: usize, unit: f64) -> (f64, usize) {
    let joined = at(tokens, from) == "and";
    let start = from + usize::from(joined);
    let article = start + usize::from(at(tokens, start) == "a");
    let part = match at(tokens, article) {
        "half" => 0.5,
        "quarter" => 0.25,
        _ => 0.0,
    };
    if joined && part > 0.0 {
        return (part * unit, article + 1);
    }
    if let Some((count, next)) = number(tokens, start) {
        let count = count.to_f64();
        match unit_minutes(at(tokens, next)) {
            Some(smaller) if smaller < unit => return (count * smaller, next + 1),
            None if !joined && unit == 60.0 && (1.0..60.0).contains(&count) && ends(tokens, next) => {
                return (count, next);
            }
            _ => {}
        }
    }
    (0.0, from)
}

/// Whether nothing that a number could count follows.
fn ends(tokens: &[Token], index: usize) -> bool {
    tokens.get(index).is_none_or(|token| {
        token.sign().is_some() || token.speech.is(Speech::JOINER) || token.speech.is(Speech::CLAUSE)
    })
}

/// '… to 1¼ hours' after a time.
fn range_end(tokens: &[Token], from: usize) -> Option<(f64, usize)> {
    let token = tokens.get(from)?;
    if !(token.is_dash() || token.is_any(&["to", "or"])) {
        return None;
    }
    let (_, high, next) = measure_of_time(tokens, from + 1)?;
    Some((high, next))
}

/// The index of the next sign or joiner.
fn to_break(tokens: &[Token], from: usize) -> usize {
    let stop = tokens.get(from..).and_then(|rest| {
        rest.iter()
            .position(|t| t.sign().is_some() || t.speech.is(Speech::JOINER))
    });
    stop.map_or(tokens.len(), |offset| from + offset)
}

/// Whether a way to say how often begins here.
pub(super) fn repeats_here(tokens: &[Token], from: usize) -> bool {
    ways(tokens, from).any(|(words, _)| fits(tokens, from, words).is_some())
}

/// A heat in words: 'over a fairly high heat', 'medium/high heat', 'on low', 'in a slow oven'.
pub(crate) fn heat(tokens: &[Token], from: usize) -> Option<Found<HeatWord>> {
    match (at(tokens, from), at(tokens, from + 1)) {
        ("heat", "down") => {
            return Some(Found {
                value: HeatWord::Lower,
                next: from + 2,
            });
        }
        ("heat", "up") => {
            return Some(Found {
                value: HeatWord::High,
                next: from + 2,
            });
        }
        _ => {}
    }
    let mut index = from;
    let led = matches!(at(tokens, index), "over" | "on" | "at" | "to" | "under" | "in");
    index += usize::from(led);
    while matches!(at(tokens, index), "a" | "an" | "the" | "very" | "fairly" | "quite") {
        index += 1;
    }
    if at(tokens, index) == "back"
        && at(tokens, index + 1) == "of"
        && matches!(at(tokens, index + 2), "range" | "stove")
    {
        return Some(Found {
            value: HeatWord::Low,
            next: index + 3,
        });
    }
    let (value, next) = level(tokens, index)?;
    let noun = at(tokens, next);
    if matches!(
        noun,
        "heat" | "flame" | "fire" | "oven" | "temperature" | "setting" | "pressure"
    ) {
        // The oven is the place of the work and is read again.
        return Some(Found {
            value,
            next: if noun == "oven" { next } else { next + 1 },
        });
    }
    let glued = at(tokens, index).ends_with("-heat");
    let alone = led && matches!(at(tokens, from), "over" | "on" | "at" | "to") && ends(tokens, next);
    let shouted = tokens
        .get(index)
        .is_some_and(|t| matches!(t.text, "LOW" | "HIGH" | "MEDIUM"));
    (glued || alone || shouted || (led && compound(at(tokens, index)))).then_some(Found { value, next })
}

fn compound(word: &str) -> bool {
    word.contains('-') && crate::speech::level(word).is_some()
}

/// One or two words of level: 'medium', 'medium high', 'medium/high', 'low to medium'.
fn level(tokens: &[Token], from: usize) -> Option<(HeatWord, usize)> {
    let first = crate::speech::level(at(tokens, from))?;
    let sign = tokens
        .get(from + 1)
        .is_some_and(|t| t.sign() == Some('/') || t.is_dash() || t.is("to"));
    let second_at = from + 1 + usize::from(sign);
    let Some(second) = crate::speech::level(at(tokens, second_at)) else {
        return Some((first, from + 1));
    };
    let both = match (first, second) {
        (HeatWord::Medium, HeatWord::High) | (HeatWord::High, HeatWord::Medium) => HeatWord::MediumHigh,
        (HeatWord::Medium, HeatWord::Low) | (HeatWord::Low, HeatWord::Medium) => HeatWord::MediumLow,
        _ => first,
    };
    Some((both, second_at + 1))
}

/// What is said of the lid without an order of its own: 'covered', 'with the lid on', 'lid ajar', 'uncovered'.
pub(crate) fn cover(tokens: &[Token], from: usize) -> Option<Found<Cover>> {
    let mut index = from;
    let partly = speech_at(tokens, index).is(Speech::PARTLY) || (at(tokens, index) == "half-covered");
    if partly && at(tokens, index + 1) == "covered" {
        return Some(Found {
            value: Cover::Ajar,
            next: index + 2,
        });
    }
    match at(tokens, index) {
        "half-covered" => {
            return Some(Found {
                value: Cover::Ajar,
                next: index + 1,
            });
        }
        "covered" if !matches!(at(tokens, index + 1), "in" | "with" | "by") => {
            return Some(Found {
                value: Cover::On,
                next: index + 1,
            });
        }
        "uncovered" => {
            return Some(Found {
                value: Cover::Off,
                next: index + 1,
            });
        }
        _ => {}
    }
    index += usize::from(at(tokens, index) == "with");
    index += usize::from(at(tokens, index) == "the");
    let lid = at(tokens, index) == "lid";
    let value = match at(tokens, index + 1) {
        "on" => Cover::On,
        "off" => Cover::Off,
        word if speech(word).is(Speech::PARTLY) => Cover::Ajar,
        _ => return None,
    };
    lid.then_some(Found { value, next: index + 2 })
}

/// How often, in words: 'in 2 batches', 'per side', 'a little at a time'. The longest way that fits.
pub(super) fn repeat(text: &str, tokens: &[Token], from: usize) -> Option<Found<Repeat>> {
    let mut best: Option<Found<Repeat>> = None;
    for (words, times) in ways(tokens, from) {
        let Some((next, counted)) = fits(tokens, from, words) else {
            continue;
        };
        if best.as_ref().is_none_or(|held| next > held.next) {
            let times = if *times == "#" { counted } else { times.parse().ok() };
            let value = Repeat {
                words: Words::at(text, span(tokens, from, next)),
                times,
            };
            best = Some(Found { value, next });
        }
    }
    best
}

/// The ways to say how often that could begin here.
fn ways(tokens: &[Token], from: usize) -> impl Iterator<Item = &'static words::Way> {
    words::repeats(at(tokens, from)).iter().chain(words::repeats("#"))
}

fn fits(tokens: &[Token], from: usize, ways: &[&str]) -> Option<(usize, Option<u32>)> {
    let (mut index, mut counted) = (from, None);
    for word in ways {
        if *word == "#" {
            let found = amount(tokens, index).filter(|found| !found.article)?;
            let whole = found.amount.low.is_whole().then(|| found.amount.low.numerator());
            counted = whole.and_then(|n| u32::try_from(n).ok());
            index = found.next;
        } else if at(tokens, index) == *word {
            index += 1;
        } else {
            return None;
        }
    }
    Some((index, counted))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::token::tokens;

    fn read<T>(text: &str, find: impl Fn(&[Token], usize) -> Option<Found<T>>) -> Option<(T, String)> {
        let found = tokens(text, Span::new(0, text.len()));
        let phrase = find(&found, 0)?;
        let rest = found.get(phrase.next).map_or("", |t| &text[t.span.start..]);
        Some((phrase.value, rest.to_owned()))
    }

    #[test]
    fn times_in_every_spelling() {
        for (text, expected) in [
            ("for 8 to 10 minutes until", "8..10|until"),
            ("1¾ to 2 hours", "105..120|"),
            ("an hour and a half", "90..90|"),
            ("an hour and ten minutes", "70..70|"),
            ("for the space of one hour, add", "60..60|, add"),
            ("for a period of two hours", "120..120|"),
            ("the space of the pan", "none"),
            ("half an hour", "30..30|"),
            ("three-quarters of an hour", "45..45|"),
            ("one and one-half hours", "90..90|"),
            ("three or four hours", "180..240|"),
            ("a minute or two", "1..2|"),
            ("a couple of minutes", "2..2|"),
            ("a few minutes", "2..4|"),
            ("5 more mins in", "5..5|in"),
            ("2 h 30 (core", "150..150|(core"),
            ("1 hr 20 mins", "80..80|"),
            ("45 minutes to 1 hour", "45..60|"),
            ("30 seconds", "0.5..0.5|"),
            ("for the last hour of", "60..60 end|of"),
            ("fifteen minutes before serving.", "15..15 end|."),
            ("within 90 min", "0..90|"),
            ("inside two hours", "0..120|"),
            ("another 20-25 mins or so, then", "20..25|, then"),
            ("2 1/2 hours", "150..150|"),
            ("1 minute less than the packet says", "none"),
            ("25m, turn", "25..25|, turn"),
            ("for the last 15.", "15..15 end|."),
            ("the last 2 eggs", "none"),
            ("2 onions", "none"),
        ] {
            let shown = read(text, minutes).map_or("none".to_owned(), |(m, rest)| {
                format!("{}..{}{}|{rest}", m.low, m.high, if m.from_end { " end" } else { "" })
            });
            assert_eq!(shown, expected, "{text}");
        }
    }

    #[test]
    fn heats_in_words() {
        for (text, expected) in [
            ("over a medium heat", Some(HeatWord::Medium)),
            ("over medium/high heat", Some(HeatWord::MediumHigh)),
            ("over medium-high.", Some(HeatWord::MediumHigh)),
            ("over a fairly high heat", Some(HeatWord::High)),
            ("on low, covered", Some(HeatWord::Low)),
            ("over low-heat", Some(HeatWord::Low)),
            ("in a slow oven", Some(HeatWord::Low)),
            ("over the hot toast", None),
            ("on the tray", None),
        ] {
            assert_eq!(read(text, heat).map(|(value, _)| value), expected, "{text}");
        }
    }

    #[test]
    fn lids() {
        for (text, expected) in [
            ("covered, for", Some(Cover::On)),
            ("covered in cheese", None),
            ("uncovered", Some(Cover::Off)),
            ("with the lid on", Some(Cover::On)),
            ("lid ajar", Some(Cover::Ajar)),
            ("partially covered", Some(Cover::Ajar)),
            ("lidded pan", None),
        ] {
            assert_eq!(read(text, cover).map(|(value, _)| value), expected, "{text}");
        }
    }

    #[test]
    fn how_often() {
        for (text, expected) in [
            ("in 3 batches", "in 3 batches 3"),
            ("in two batches", "in two batches 2"),
            ("per side", "per side 2"),
            ("a little at a time", "a little at a time"),
            ("in butter", "none"),
        ] {
            let find = |tokens: &[Token], from: usize| repeat(text, tokens, from);
            let shown = read(text, find).map_or("none".to_owned(), |(repeat, _)| {
                let times = repeat.times.map_or(String::new(), |n| format!(" {n}"));
                format!("{}{times}", repeat.words.text)
            });
            assert_eq!(shown, expected, "{text}");
        }
    }
}
