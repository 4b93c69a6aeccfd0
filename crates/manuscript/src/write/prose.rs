//! The house's spelling inside the writer's own sentences: fractions and temperatures; every other word stays.

use potwright_measure::{Exact, HeatScale};

use crate::Span;
use crate::token::{Gap, Token, tokens};

use super::style::HouseStyle;

/// The words with fractions and temperatures as the house sets them.
pub(super) fn spelt(words: &str, style: &HouseStyle) -> String {
    let found = tokens(words, Span::new(0, words.len()));
    let mut out = String::with_capacity(words.len());
    let mut from = 0;
    let mut at = 0;
    while at < found.len() {
        let edit = statement(words, &found, at, style).or_else(|| fraction(&found, at, style));
        let Some((next, says)) = edit else {
            at += 1;
            continue;
        };
        let (first, last) = (found[at].span.start, found[next - 1].span.end);
        out.push_str(words.get(from..first).unwrap_or(""));
        out.push_str(&says);
        (from, at) = (last, next);
    }
    out.push_str(words.get(from..).unwrap_or(""));
    out
}

/// '1 1/2', '1-1/2', '1½', '3/4': the number with its fraction, and where it ends.
fn fraction(found: &[Token], at: usize, style: &HouseStyle) -> Option<(usize, String)> {
    let first = found.get(at)?;
    let number = first.number()?;
    if !number.is_whole() {
        return kitchen(first).then(|| (at + 1, style.number(number)));
    }
    let hyphen = usize::from(
        found
            .get(at + 1)
            .is_some_and(|t| t.sign() == Some('-') && t.gap == Gap::None),
    );
    let part = found.get(at + 1 + hyphen)?;
    let close = if hyphen == 1 { Gap::None } else { Gap::Space };
    let proper = part.number().filter(|n| kitchen(part) && *n < Exact::ONE)?;
    let plain = first.text.bytes().all(|b| b.is_ascii_digit()) && part.gap == close;
    let sum = number.checked_add(proper).filter(|_| plain)?;
    Some((at + 2 + hyphen, style.number(sum)))
}

/// A fraction with a stroke or a sign of its own; decimals are let be.
fn kitchen(token: &Token) -> bool {
    token.number().is_some_and(|n| !n.is_whole()) && !token.text.contains(['.', ','])
}

/// One temperature in one scale: '150C', '150 °C', '300 degrees F', 'gas mark 6'.
struct Degrees {
    scale: HeatScale,
    says: String,
    next: usize,
}

fn degrees(found: &[Token], at: usize) -> Option<Degrees> {
    if found.get(at)?.is("gas") {
        let mark = at + 1 + usize::from(found.get(at + 1).is_some_and(|t| t.is("mark")));
        let number = found.get(mark)?;
        number.number()?;
        let says = format!("gas mark {}", number.text);
        return Some(Degrees {
            scale: HeatScale::Gas,
            says,
            next: mark + 1,
        });
    }
    let number = found.get(at)?;
    number.number().filter(|n| n.is_whole())?;
    let mut next = at + 1;
    let sign = found
        .get(next)
        .is_some_and(|t| matches!(t.sign(), Some('°' | 'º' | '˚')) || t.is_any(&["degrees", "deg"]));
    next += usize::from(sign);
    let scale = found.get(next)?;
    let (scale, letter) = match scale.text {
        "C" | "Celsius" | "ºC" | "°C" => (HeatScale::Celsius, 'C'),
        "F" | "Fahrenheit" | "ºF" | "°F" => (HeatScale::Fahrenheit, 'F'),
        _ => return None,
    };
    Some(Degrees {
        scale,
        says: format!("{} °{letter}", number.text),
        next: next + 1,
    })
}

/// One temperature, in all the scales in which the writer gives it, in the order of the house.
///
/// '300°F/150°C' and '300 F (150 C)' are put in order; two of one scale (a range, a fan) keep theirs.
fn statement(words: &str, found: &[Token], at: usize, style: &HouseStyle) -> Option<(usize, String)> {
    let first = degrees(found, at)?;
    let mut all = vec![first];
    let mut next = all[0].next;
    let mut opened = false;
    while let Some(joint) = found
        .get(next)
        .and_then(Token::sign)
        .filter(|sign| matches!(sign, '/' | '('))
    {
        let Some(other) = degrees(found, next + 1).filter(|d| all.iter().all(|had| had.scale != d.scale)) else {
            break;
        };
        let closes = found.get(other.next).is_some_and(|t| t.sign() == Some(')'));
        if joint == '(' && (opened || !closes && found.get(other.next).is_none_or(|t| t.sign() != Some('/'))) {
            break;
        }
        opened |= joint == '(';
        next = other.next + usize::from(closes && opened);
        all.push(other);
        if closes {
            break;
        }
    }
    // What hangs on to it ('/180 C fan') would come to stand behind another scale.
    let hangs = found
        .get(next)
        .is_some_and(|t| t.is_any(&["fan", "fan-forced"]) || t.sign() == Some('/'));
    let whole = words.get(found[at].span.start..found.get(next.checked_sub(1)?)?.span.end)?;
    if hangs || whole.matches('(').count() != whole.matches(')').count() {
        let first = degrees(found, at)?;
        return Some((first.next, first.says));
    }
    all.sort_by_key(|told| style.rank(told.scale));
    let (first, others) = all.split_first()?;
    let others: Vec<&str> = others.iter().map(|told| told.says.as_str()).collect();
    let says = if others.is_empty() {
        first.says.clone()
    } else {
        format!("{} ({})", first.says, others.join("/"))
    };
    Some((next, says))
}
