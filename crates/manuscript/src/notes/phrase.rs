//! Times, heats, lids, oven temperatures, cues and servings as they are said.

use potwright_measure::{Amount, Exact};

use crate::method::phrases;
use crate::token::Token;
use crate::{Cover, HeatWord};

use super::numbers;

/// A time that was said, minutes.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Time {
    pub(super) low: f64,
    pub(super) high: f64,
    pub(super) next: usize,
}

/// 'twenty to twenty two minutes', 'an hour and a quarter', 'three minutes maybe four', 'half an hour'.
pub(super) fn time(tokens: &[Token], at: usize) -> Option<Time> {
    let number = numbers::amount(tokens, at)?;
    let article =
        usize::from(number.amount.high < Exact::ONE && tokens.get(number.next).is_some_and(|t| t.is_any(&["a", "an"])));
    let more = usize::from(
        tokens
            .get(number.next)
            .is_some_and(|t| t.is_any(&["more", "good", "whole", "full", "long"])),
    );
    let unit_at = number.next + article + more;
    let minutes = match tokens.get(unit_at)?.lower.as_str() {
        "second" | "seconds" => 1.0 / 60.0,
        "minute" | "minutes" | "mins" | "min" => 1.0,
        "hour" | "hours" => 60.0,
        "day" | "days" => 1440.0,
        _ => return None,
    };
    let (mut low, mut high, mut next) = (number.amount.low, number.amount.high, unit_at + 1);
    if let Some((more, after)) = number
        .amount
        .is_single()
        .then(|| numbers::and_part(tokens, next, low))
        .flatten()
    {
        (low, high, next) = (more, more, after);
    }
    if let Some((upper, after)) = afterthought(tokens, next).filter(|(upper, _)| *upper > low) {
        (high, next) = (upper, after);
    }
    Some(Time {
        low: low.to_f64() * minutes,
        high: high.to_f64() * minutes,
        next,
    })
}

/// 'maybe four', 'could be fifty', 'five at the outside', 'maybe two hours'.
fn afterthought(tokens: &[Token], at: usize) -> Option<(Exact, usize)> {
    let comma = usize::from(tokens.get(at).is_some_and(|t| t.sign() == Some(',')));
    let is = |at: usize, word: &str| tokens.get(at).is_some_and(|t| t.is(word));
    let from = at + comma;
    let lead = if is(from, "could") && is(from + 1, "be") {
        2
    } else if is(from, "maybe") || is(from, "or") || is(from, "even") {
        1 + usize::from(is(from + 1, "maybe"))
    } else {
        0
    };
    let (number, next) = numbers::one(tokens, from + lead)?;
    let unit = tokens
        .get(next)
        .is_some_and(|t| t.is_any(&["minutes", "hours", "minute", "hour"]));
    if lead > 0
        && (unit
            || tokens
                .get(next)
                .is_none_or(|t| t.is_word() && !t.is_any(&["cups"]) || t.sign().is_some()))
    {
        return Some((number, next + usize::from(unit)));
    }
    (is(next, "at") && is(next + 1, "the") && (is(next + 2, "outside") || is(next + 2, "most")))
        .then_some((number, next + 3))
}

/// An oven temperature: degrees, whether Fahrenheit, whether fan, and the index after it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Degrees {
    pub(super) degrees: f64,
    pub(super) fahrenheit: bool,
    pub(super) fan: bool,
    pub(super) gas: bool,
    pub(super) next: usize,
}

/// Below this an oven's number is Celsius (no domestic oven is marked lower in Fahrenheit or higher in Celsius; common
/// practice, no source).
const FAHRENHEIT_FROM: f64 = 270.0;

/// A number of degrees where the oven has just been spoken of, or where degrees are said.
pub(super) fn degrees(tokens: &[Token], at: usize, oven_near: bool) -> Option<Degrees> {
    let is = |at: usize, word: &str| tokens.get(at).is_some_and(|t| t.is(word));
    if is(at, "gas") {
        let from = at + 1 + usize::from(is(at + 1, "mark"));
        let (mark, next) = numbers::one(tokens, from)?;
        return Some(Degrees {
            degrees: mark.to_f64(),
            fahrenheit: false,
            fan: false,
            gas: true,
            next,
        });
    }
    let (number, next) = numbers::one(tokens, at)?;
    let degrees = number.to_f64();
    let said = tokens
        .get(next)
        .is_some_and(|t| t.is_any(&["degrees", "degree", "celsius", "fahrenheit"]));
    let after = next + usize::from(said);
    let comma = usize::from(tokens.get(after).is_some_and(|t| t.sign() == Some(',')));
    let that = usize::from(is(after + comma, "that's"));
    let fan = is(after + comma + that, "fan");
    let unit = super::mention::unit(tokens, next).is_some() || is(next, "minutes");
    let fits = (100.0..=550.0).contains(&degrees) && !unit && (said || fan || oven_near);
    fits.then_some(Degrees {
        degrees,
        fahrenheit: degrees >= FAHRENHEIT_FROM || is(next + 1, "fahrenheit"),
        fan,
        gas: false,
        next: if fan { after + comma + that + 1 } else { after },
    })
}

/// A lid, as it is said: 'lid half on', 'the lid on but crooked', 'lid off'.
pub(super) fn cover(tokens: &[Token], at: usize) -> Option<(Cover, usize)> {
    if !tokens.get(at)?.is("lid") {
        return phrases::cover(tokens, at)
            .filter(|found| found.next > at + 1 || tokens.get(at).is_some_and(|t| t.is_any(&["covered", "uncovered"])))
            .map(|found| (found.value, found.next));
    }
    let near = tokens.get(at + 1..tokens.len().min(at + 5))?;
    let before = at
        .checked_sub(3)
        .and_then(|from| tokens.get(from..at))
        .unwrap_or_default();
    if before.iter().any(|t| t.is_any(&["lift", "lifted", "lifting"])) {
        return None;
    }
    let until = near
        .iter()
        .position(|t| matches!(t.sign(), Some('.' | '?' | '!' | ',')))
        .unwrap_or(near.len());
    let near = near.get(..until)?;
    let has = |words: &[&str]| near.iter().any(|t| t.is_any(words));
    if has(&["ajar", "crooked", "half", "askew", "halfway", "cracked"]) {
        return Some((Cover::Ajar, at + 2));
    }
    if near.first().is_some_and(|t| t.is("off")) {
        return Some((Cover::Off, at + 2));
    }
    let on =
        near.first().is_some_and(|t| t.is_any(&["on", "back"])) || before.iter().any(|t| t.is_any(&["put", "clap"]));
    on.then_some((Cover::On, at + 1))
}

/// A heat, as it is said: 'medium heat', 'turn it down', 'on high'.
pub(super) fn heat(tokens: &[Token], at: usize) -> Option<(HeatWord, usize)> {
    if let Some(found) = phrases::heat(tokens, at) {
        return Some((found.value, found.next));
    }
    let is = |at: usize, words: &[&str]| tokens.get(at).is_some_and(|t| t.is_any(words));
    if is(at, &["turn", "turned", "turning"]) && is(at + 1, &["it", "that", "her", "them"]) {
        return match tokens.get(at + 2)?.lower.as_str() {
            "down" => Some((HeatWord::Lower, at + 3)),
            "low" => Some((HeatWord::Low, at + 3)),
            "up" => Some((HeatWord::High, at + 3)),
            _ => None,
        };
    }
    if is(at, &["heat"]) && is(at + 1, &["right", "all", "way"]) && is(at + 2, &["up", "down"]) {
        let up = is(at + 2, &["up"]);
        return Some((if up { HeatWord::High } else { HeatWord::Lower }, at + 3));
    }
    let level = crate::speech::level(&tokens.get(at)?.lower)?;
    let on = at.checked_sub(1).is_some_and(|before| is(before, &["on", "to"]));
    let noun = is(at + 1, &["heat", "flame"]);
    (noun || on && matches!(tokens.get(at)?.lower.as_str(), "low" | "medium" | "high"))
        .then_some((level, at + 1 + usize::from(noun)))
}

/// 'till they're soft': the words after it, up to the end of the clause.
pub(super) fn cue(tokens: &[Token], at: usize) -> Option<(usize, usize)> {
    const LONGEST: usize = 11;
    if !tokens.get(at)?.is_any(&["till", "until", "til"]) {
        return None;
    }
    let from = at + 1;
    let mut next = from;
    while let Some(token) = tokens.get(next).filter(|_| next < from + LONGEST) {
        let joins = token.is_any(&[
            "and", "but", "so", "then", "because", "or", "that's", "in", "maybe", "right", "now",
        ]) && next > from + 1;
        let described = token.is("and")
            && tokens.get(next + 1).is_some_and(|t| {
                crate::lexicon::class(&t.lower)
                    .is(crate::lexicon::Class::PREPARED | crate::lexicon::Class::KIND | crate::lexicon::Class::STATE)
            });
        if token.sign().is_some() || joins && !described || numbers::one(tokens, next).is_some() && next > from {
            break;
        }
        next += 1;
    }
    (next > from).then_some((from, next))
}

/// 'let it get pink': what it is let to do, when no time is said with it.
pub(super) fn let_it(tokens: &[Token], at: usize) -> Option<(usize, usize)> {
    let pronoun = tokens
        .get(at + 1)
        .is_some_and(|t| t.is_any(&["it", "them", "that", "those"]));
    if !tokens.get(at)?.is("let") || !pronoun {
        return None;
    }
    let from = at + 2;
    let ends = |t: &Token| {
        t.sign().is_some() || t.is_any(&["and", "but", "so", "then", "till", "until", "til", "for", "because"])
    };
    let length = tokens.get(from..tokens.len().min(from + 6))?.iter().position(ends)?;
    let next = from + length;
    let timed = (from..next + 2).any(|at| time(tokens, at).is_some());
    (length > 0 && !timed).then_some((from, next))
}

/// 'that feeds six', 'that'll do four of you', 'it serves four to six'.
pub(super) fn servings(tokens: &[Token], at: usize) -> Option<(Amount, usize)> {
    let verb = tokens.get(at)?;
    let sure = verb.is_any(&["feeds", "feed", "serves", "serve"]);
    let does = verb.is_any(&["do", "does"]);
    let before = at.checked_sub(1).and_then(|before| tokens.get(before));
    let is_for = verb.is("for")
        && before.is_some_and(|t| t.is_any(&["is", "are", "enough", "that's", "dinner", "supper", "lunch", "meal"]));
    if !(sure || does || is_for) {
        return None;
    }
    let number = numbers::amount(tokens, at + 1).filter(|number| !number.article)?;
    let small = number.amount.high < Exact::whole(200) && number.amount.low.is_whole();
    let after = tokens.get(number.next);
    let alone = after.is_none_or(|t| {
        t.sign().is_some()
            || t.is_any(&[
                "of", "with", "as", "people", "or", "and", "if", "for", "at", "easy", "easily", "hungry", "because",
                "but", "so",
            ])
    });
    (small && (alone || sure)).then_some((number.amount, number.next))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Span;
    use crate::token::tokens;

    #[test]
    fn times_as_they_are_said() {
        // Plain English; the figures are the words.
        for (text, expected) in [
            ("twenty to twenty two minutes", (20.0, 22.0)),
            ("an hour and a quarter to", (75.0, 75.0)),
            ("three minutes maybe four till", (3.0, 4.0)),
            ("half an hour", (30.0, 30.0)),
            ("forty minutes, could be fifty, it", (40.0, 50.0)),
            ("four minutes five at the outside", (4.0, 5.0)),
            ("an hour and a half, maybe two hours", (90.0, 120.0)),
        ] {
            let found = tokens(text, Span::new(0, text.len()));
            let time = time(&found, 0).map(|time| (time.low, time.high));
            // Two hours after 'an hour and a half' are said in hours.
            assert_eq!(time, Some(expected), "{text}");
        }
    }
}
