//! A draft in house style: title, servings, lines in order of use, parts under their own headings, numbered steps.

use potwright_measure::{Amount, Unit, fractions};

use crate::token::Token;
use crate::{Cover, HeatWord};

use super::beat::{Beat, LASTING, SHORT, is_one_of};
use super::gather::{Gathered, Item};
use super::mention::{Said, text};
use super::phrase::Degrees;

/// The lines of an item: one, or two when more of it goes in by another measure.
pub(super) fn lines(item: &Item, preparation: &str) -> Vec<String> {
    let mut name = item.food.name.clone();
    if let Some(or) = &item.or {
        name = format!("{name} or {}", or.name);
    }
    let Some(said) = &item.said else {
        let vague = item
            .vague
            .as_deref()
            .map(|vague| vague.trim_end_matches(" of").trim().to_owned());
        let vague = vague.filter(|vague| !matches!(vague.as_str(), "" | "some" | "any" | "enough"));
        let tail = vague.map_or(String::new(), |vague| format!(", {vague}"));
        return vec![format!("{name}{tail}{preparation}")];
    };
    let juice = item.vague.as_deref().filter(|vague| vague.ends_with(" of"));
    if let Some(part) = juice.filter(|_| said.unit.is_none()) {
        return vec![format!("{part} {} {name}", number(said.amount))];
    }
    let also = item
        .also
        .as_ref()
        .map_or(String::new(), |also| format!(" ({})", measure(also)));
    let mut sum = said.clone();
    let mut apart = Vec::new();
    let mut divided = false;
    for more in &item.more {
        let both = sum
            .amount
            .low
            .checked_add(more.amount.low)
            .zip(sum.amount.high.checked_add(more.amount.high));
        match both.filter(|_| more.unit == sum.unit && sum.package == more.package) {
            Some((low, high)) => {
                (sum.amount.low, sum.amount.high) = (low, high);
                divided = true;
            }
            None => apart.push(format!("{} {name}, more", measure(more))),
        }
    }
    let divided = if divided { ", divided" } else { "" };
    let mut lines = vec![format!("{} {name}{also}{preparation}{divided}", measure(&sum))];
    lines.extend(apart);
    lines
}

/// '1½ lb', 'about 300 g', '2 400 g tins', '1 heaped tbsp'.
pub(super) fn measure(said: &Said) -> String {
    let mut out = number(said.amount);
    if let Some((inner, unit)) = said.package {
        out.push_str(&format!(" {} {}", number(inner), unit.abbreviation()));
    }
    if let Some(manner) = &said.manner {
        out.push_str(&format!(" {manner}"));
    }
    if let Some(unit) = said.unit {
        out.push_str(&format!(" {}", unit_name(unit, said.amount)));
    }
    out
}

fn unit_name(unit: Unit, amount: Amount) -> &'static str {
    match unit {
        Unit::Teaspoon
        | Unit::Tablespoon
        | Unit::FluidOunce
        | Unit::Millilitre
        | Unit::Litre
        | Unit::Ounce
        | Unit::Pound
        | Unit::Gram
        | Unit::Kilogram => unit.abbreviation(),
        _ => unit.written(amount.high),
    }
}

fn number(amount: Amount) -> String {
    let about = if amount.about { "about " } else { "" };
    let low = shown(amount.low);
    if amount.is_single() {
        return format!("{about}{low}");
    }
    format!("{about}{low} to {}", shown(amount.high))
}

/// Fractions of the kitchen as such, others as decimals.
fn shown(number: potwright_measure::Exact) -> String {
    let kitchen = [2, 3, 8].iter().any(|parts| {
        number
            .checked_mul(potwright_measure::Exact::whole(*parts))
            .is_some_and(|n| n.is_whole())
    });
    if kitchen {
        fractions::cook(number)
    } else {
        fractions::decimal(number, 2)
    }
}

/// The first letter large.
pub(super) fn sentence(words: &str) -> String {
    let mut letters = words.chars();
    letters
        .next()
        .map_or(String::new(), |first| first.to_uppercase().chain(letters).collect())
}

/// One step of the method in words.
pub(super) fn step(tokens: &[Token], gathered: &Gathered, beat: &Beat, first: bool) -> Option<String> {
    let mut parts: Vec<String> = Vec::new();
    let mut sentences: Vec<String> = Vec::new();
    if let Some(oven) = beat.oven {
        sentences.push(format!("Heat the oven to {}.", oven_words(oven)));
    }
    let topic = gathered.topics.get(beat.topic)?;
    let foods: Vec<String> = beat
        .puts
        .iter()
        .filter_map(|item| topic.items.get(*item))
        .map(|item| format!("the {}", item.food.name))
        .collect();
    let vessel = beat
        .vessel
        .and_then(|pan| gathered.vessels.get(pan))
        .filter(|pan| pan.used)
        .map(|pan| match &pan.size {
            Some(size) if !pan.name.contains(size.as_str()) => format!("the {size} {}", pan.noun),
            _ => format!("the {}", pan.name),
        });
    let lasting = beat.verbs.iter().rev().find(|verb| is_one_of(verb, LASTING));
    let short: Vec<&&str> = beat.verbs.iter().filter(|verb| is_one_of(verb, SHORT)).collect();
    if !foods.is_empty() {
        let into = vessel.as_ref().map_or(String::new(), |vessel| {
            format!(" {} {vessel}", if first { "in" } else { "to" })
        });
        parts.push(format!(
            "{} {}{into}",
            if first { "put" } else { "add" },
            joined(&foods)
        ));
    }
    let object = match beat.names.as_slice() {
        [] => String::new(),
        [name, ..] => format!(" the {name}"),
    };
    // Tins are drained before they go in.
    let tins = beat
        .puts
        .iter()
        .filter_map(|item| topic.items.get(*item))
        .any(|item| item.said.as_ref().is_some_and(|said| said.unit == Some(Unit::Can)));
    let dish = topic.words.last().map_or("", String::as_str);
    for (index, verb) in short
        .iter()
        .filter(|verb| !(tins && matches!(***verb, "drain" | "rinse")))
        .take(3)
        .enumerate()
    {
        if **verb == "strain" {
            let liquid = |name: &&String| matches!(name.as_str(), "stock" | "broth" | "soup" | "sauce");
            let named = beat.names.iter().find(liquid).map(String::as_str);
            let named =
                named.or_else(|| Some(dish).filter(|dish| matches!(*dish, "stock" | "broth" | "soup" | "sauce")));
            parts.push(named.map_or_else(|| "strain".to_owned(), |name| format!("strain the {name}")));
            continue;
        }
        let object = if index == 0 && foods.is_empty() {
            object.as_str()
        } else {
            ""
        };
        parts.push(format!("{verb}{object}"));
    }
    if beat.waits() || lasting.is_some() {
        let verb = verb_of(beat, lasting.copied());
        let object = if foods.is_empty() && short.is_empty() {
            object.as_str()
        } else {
            ""
        };
        parts.push(format!("{verb}{object}{}", manner(tokens, beat)));
    }
    if !parts.is_empty() {
        sentences.push(format!("{}.", sentence(&and(&parts))));
    }
    (!sentences.is_empty()).then(|| sentences.join(" "))
}

/// The verb of a beat that lasts; what goes on in the oven is baked.
fn verb_of<'a>(beat: &Beat, said: Option<&'a str>) -> &'a str {
    match said {
        Some("sit" | "leave" | "stand" | "rest") if beat.heat.is_some() => "cook",
        Some("sit" | "leave" | "stand" | "rest") => "leave",
        Some("bubble") => "simmer",
        Some("go" | "wait" | "let") if !beat.in_oven => "cook",
        Some("go" | "wait" | "let") => "bake",
        Some("soften") => "sweat",
        Some(verb) => verb,
        None if beat.in_oven => "bake",
        None => "cook",
    }
}

/// How and how long: ', covered, over a low heat for 10 minutes until soft'.
fn manner(tokens: &[Token], beat: &Beat) -> String {
    let mut out = String::new();
    if beat.in_oven {
        out.push_str(" in the oven");
    }
    match beat.cover {
        Some(Cover::On) => out.push_str(", covered,"),
        Some(Cover::Off) => out.push_str(", uncovered,"),
        Some(Cover::Ajar) => out.push_str(", partly covered,"),
        None => {}
    }
    let heat = match beat.heat {
        Some(HeatWord::Low | HeatWord::Lower) => " over a low heat",
        Some(HeatWord::MediumLow) => " over a medium-low heat",
        Some(HeatWord::Medium) => " over a medium heat",
        Some(HeatWord::MediumHigh) => " over a medium-high heat",
        Some(HeatWord::High) => " over a high heat",
        Some(HeatWord::Off) | None => "",
    };
    out.push_str(heat);
    if let Some(time) = beat.time {
        out.push_str(&format!(" for {}", minutes(time.low, time.high)));
    }
    if let Some((from, next)) = beat.cue {
        let let_it = from
            .checked_sub(2)
            .and_then(|at| tokens.get(at))
            .is_some_and(|t| t.is("let"));
        let word = if let_it { "and let it" } else { "until" };
        out.push_str(&format!(" {word} {}", text(tokens, from, next)));
    }
    out.trim_end_matches(',').to_owned()
}

/// '12 to 15 minutes', '1 hour 15 minutes'.
pub(super) fn minutes(low: f64, high: f64) -> String {
    let words = |minutes: f64| potwright_measure::Duration::from_minutes(minutes).words();
    if low == high {
        return words(low);
    }
    let (from, to) = (words(low), words(high));
    match (from.strip_suffix(" minutes"), to.ends_with(" minutes")) {
        (Some(from), true) => format!("{from} to {to}"),
        _ => format!("{from} to {to}"),
    }
}

fn oven_words(oven: Degrees) -> String {
    let degrees = oven.degrees.round();
    if oven.gas {
        return format!("gas mark {degrees}");
    }
    let scale = if oven.fahrenheit { "F" } else { "C" };
    format!("{degrees}{scale}{}", if oven.fan { " fan" } else { "" })
}

/// 'a, b and c'.
fn joined(list: &[String]) -> String {
    match list {
        [] => String::new(),
        [one] => one.clone(),
        [front @ .., last] => format!("{} and {last}", front.join(", ")),
    }
}

/// 'put …, stir and simmer …'.
fn and(parts: &[String]) -> String {
    joined(parts)
}
