//! Dishes and their parts as they are announced, begun and come back to.

use crate::lexicon::{Class, class};
use crate::speech::Speech;
use crate::token::Token;

use super::food;
use super::numbers;
use super::vessel;
use super::words::{self, Role, singular};

/// A phrase that can name a dish: 'the lamb and butter bean pot'.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Name {
    pub(super) from: usize,
    pub(super) next: usize,
    /// As it goes over the page, small.
    pub(super) title: String,
    /// Its words of meaning, in the singular.
    pub(super) words: Vec<String>,
    /// It ends in a noun for a dish.
    pub(super) dish: bool,
    /// It ends in a noun for a part of a dish.
    pub(super) part: bool,
    /// It is a course: 'pudding'.
    pub(super) course: bool,
    /// It names a food.
    pub(super) food: bool,
    /// An article stands before it.
    pub(super) article: bool,
}

/// A word without the 's of 'the barley's going'.
pub(super) fn plain(token: &Token) -> String {
    let word = token.lower.as_str();
    word.strip_suffix("'s").unwrap_or(word).to_owned()
}

/// The name at this word, longest first.
pub(super) fn name(tokens: &[Token], at: usize) -> Option<Name> {
    let mut index = at;
    while tokens
        .get(index)
        .is_some_and(|t| t.is_one_of("the a an my our that this some little big nice quick simple these those"))
    {
        index += 1;
    }
    // 'a pot of black bean soup', 'a batch of shortbread'.
    let holds = tokens
        .get(index)
        .is_some_and(|t| t.is_any(&["pot", "pan", "batch", "bowl", "tray", "tin", "plate", "dish", "skillet"]));
    if holds && tokens.get(index + 1).is_some_and(|t| t.is("of")) && index > at {
        index += 2;
    }
    let article = index > at;
    let mut found = Name {
        from: at,
        next: index,
        title: String::new(),
        words: Vec::new(),
        dish: false,
        part: false,
        course: false,
        food: false,
        article,
    };
    let mut spelled: Vec<String> = Vec::new();
    let mut pending: Vec<String> = Vec::new();
    let start = index;
    while index < start + 8 {
        let Some((word, length, noun)) = word(tokens, index, spelled.is_empty()) else {
            let and = tokens.get(index).is_some_and(|t| t.is("and")) && found.next == index && index > start;
            if and && word_is_noun(tokens, index + 1) && numbers::one(tokens, index + 1).is_none() {
                pending.push("and".into());
                index += 1;
                continue;
            }
            break;
        };
        let possessive = tokens.get(index + length - 1).is_some_and(|t| t.lower.ends_with("'s"));
        pending.push(word);
        index += length;
        if noun {
            spelled.append(&mut pending);
            found.next = index;
        }
        if possessive {
            break;
        }
    }
    let last = spelled.last()?.clone();
    let role = |role: Role| words::is(&last, role) || words::is(&singular(&last), role);
    found.dish = role(Role::Dish);
    found.part = role(Role::Part);
    found.course = role(Role::Course);
    // 'the sauce' alone is a part of what is cooked; 'mint sauce' is a dish.
    if found.dish && found.part {
        (found.dish, found.part) = (spelled.len() > 1, spelled.len() == 1);
    }
    found.food = class(&last).is(Class::FOOD | Class::PART | Class::KIND);
    found.words = spelled
        .iter()
        .filter(|word| word.as_str() != "and")
        .map(|word| singular(word))
        .collect();
    found.title = spelled.join(" ");
    Some(found)
}

/// A word of a name, how many tokens it takes, and whether the name may end with it.
fn word(tokens: &[Token], at: usize, first: bool) -> Option<(String, usize, bool)> {
    let token = tokens.get(at).filter(|t| t.is_word())?;
    let lower = plain(token);
    let joined = tokens.get(at + 1).map(|next| format!("{lower}{}", plain(next)));
    // 'bay leaf' is two words on the page.
    let one_word = |joined: &String| class(joined).is(Class::FOOD) && joined.len() > 6 && !joined.contains("lea");
    if let Some(joined) = joined.filter(one_word) {
        return Some((joined, 2, true));
    }
    let of = class(&lower);
    let next_dish = tokens
        .get(at + 1)
        .is_some_and(|next| words::is(&singular(&plain(next)), Role::Dish));
    let unknown = of == Class::default() && token.speech == Speech::default() && !crate::lexicon::verb(&lower);
    if unknown && next_dish && !words::is(&lower, Role::Dish) && !words::is(&singular(&lower), Role::Dish) {
        return Some((lower, 1, false));
    }
    let named = words::is(&singular(&lower), Role::Dish)
        || words::is(&lower, Role::Dish)
        || words::is(&lower, Role::Part)
        || words::is(&lower, Role::Course);
    let vessel = vessel::at(tokens, at).is_some_and(|vessel| vessel.next == at + 1);
    if named || of.is(Class::FOOD) && !food::is_everyday(&lower) {
        return Some((lower, 1, true));
    }
    if vessel && !first {
        return Some((lower, 1, true));
    }
    if of.is(Class::KIND) && !of.is(Class::SIZE) && !food::is_everyday(&lower) {
        return Some((lower, 1, !first || of == Class::KIND));
    }
    let describes = of.is(Class::STATE | Class::BOUGHT | Class::PREPARED | Class::PART);
    (describes || vessel).then_some((lower, 1, false))
}

fn word_is_noun(tokens: &[Token], at: usize) -> bool {
    word(tokens, at, false).is_some() && !tokens.get(at).is_some_and(|t| t.is_any(&["then"]))
}

/// The dishes announced at the start: 'I'm making the chowder and then a cornbread'.
pub(super) fn announced(tokens: &[Token], end: usize) -> (Vec<Name>, usize) {
    let end = end.min(tokens.len());
    if let Some(found) = counted_up(tokens, end) {
        return found;
    }
    for at in 0..end {
        let token = tokens.get(at);
        let is = |word: &str| token.is_some_and(|t| t.is(word));
        let next_is = |word: &str| tokens.get(at + 1).is_some_and(|t| t.is(word));
        let have = is("got") || is("have") || is("doing") && next_is("two") || is("things");
        let from = if have {
            at + 1 + usize::from(tokens.get(at + 1).is_some_and(|t| t.sign().is_some()))
        } else if is("putting") && (next_is("up") || next_is("on")) {
            at + 2
        } else if is("making")
            || is("make")
            || is("fixing")
            || is("doing")
            || is("cooking")
            || is("so")
            || is("it's")
            || is("today's")
        {
            at + 1
        } else if (is("this") || is("today")) && (next_is("is") || next_is("it's")) || is("today") && next_is("we're") {
            at + 2
        } else {
            continue;
        };
        let from = from + usize::from(tokens.get(from).is_some_and(|t| t.is("for")));
        let list = list(tokens, from, end);
        // 'it's the butter and the flour' announces nothing.
        let no_dish =
            have && !list.iter().any(|name| name.dish) || is("it's") && !list.first().is_some_and(|name| name.dish);
        let list = if no_dish { Vec::new() } else { list };
        let sure = list.len() > 1 || list.len() == 1 && !is("so") && list.iter().all(|name| name.dish);
        if sure && !list.iter().any(|name| name.part && name.words.len() == 1) {
            let next = list.last().map_or(from, |name| name.next);
            return (list, next);
        }
    }
    (Vec::new(), 0)
}

/// A sentence that is nothing but names of dishes: 'Dal, jeera rice, cabbage sabzi and raita.'
fn counted_up(tokens: &[Token], end: usize) -> Option<(Vec<Name>, usize)> {
    const LONGEST: usize = 24;
    let stop = |at: usize| {
        tokens
            .get(at)
            .is_none_or(|t| matches!(t.sign(), Some('.' | '?' | '!' | ':')))
    };
    let mut from = 0;
    while from < end {
        let length = (from..=tokens.len()).position(stop)?;
        let short = length <= LONGEST;
        if let Some(names) = short
            .then(|| all_names(tokens, from, from + length))
            .flatten()
            .filter(|names| names.len() > 1)
        {
            return Some((names, from + length));
        }
        from += length + 1;
    }
    None
}

/// The names of a stretch that holds nothing else, two of them dishes or foods at least.
fn all_names(tokens: &[Token], from: usize, next: usize) -> Option<Vec<Name>> {
    let mut found = Vec::new();
    let mut at = from;
    while at < next {
        let joins = |t: &Token| t.sign() == Some(',') || t.is_any(&["and", "then", "also", "plus"]);
        let end = (at..next).find(|at| tokens.get(*at).is_some_and(joins)).unwrap_or(next);
        let piece = tokens.get(at..end)?;
        at = end + 1;
        if piece.is_empty() {
            continue;
        }
        let bare = |t: &Token| {
            t.is_word()
                && (t.speech == Speech::default() || t.is_any(&["the", "a", "some"]))
                && (t.class != Class::default() || !crate::lexicon::verb(&t.lower))
        };
        if piece.len() > 5 || !piece.iter().all(bare) || numbers::one(piece, 0).is_some() {
            return None;
        }
        let words: Vec<String> = piece
            .iter()
            .filter(|t| t.speech == Speech::default())
            .map(plain)
            .collect();
        let known = |word: &String| class(word).is(Class::FOOD) || words::is(word, Role::Dish);
        let last = words.last()?;
        found.push(Name {
            from: end - piece.len(),
            next: end,
            title: words.join(" "),
            dish: words::is(last, Role::Dish),
            part: words::is(last, Role::Part),
            course: words::is(last, Role::Course),
            food: words.iter().any(known),
            words: words.iter().map(|word| singular(word)).collect(),
            article: false,
        });
    }
    let known = found.iter().filter(|name| name.food || name.dish).count();
    (known * 3 >= found.len() * 2).then_some(found)
}

/// Names with an article each, joined by 'and', in one sentence.
fn list(tokens: &[Token], from: usize, end: usize) -> Vec<Name> {
    let mut found: Vec<Name> = Vec::new();
    let Some(first) = name(tokens, from).filter(|name| name.article || name.dish) else {
        return found;
    };
    let mut at = first.next;
    found.push(first);
    while at < end {
        let token = tokens.get(at);
        let measured =
            super::numbers::one(tokens, at).is_some_and(|(_, next)| super::mention::unit(tokens, next).is_some());
        if token.is_none_or(|t| matches!(t.sign(), Some('.' | '?' | '!'))) || measured {
            break;
        }
        if token.is_some_and(|t| t.is("and") || t.sign() == Some(',')) {
            let then = at
                + 1
                + usize::from(
                    tokens
                        .get(at + 1)
                        .is_some_and(|t| t.is_any(&["then", "also", "and", "maybe"])),
                );
            let then = then + usize::from(tokens.get(then).is_some_and(|t| t.is_any(&["then", "also", "maybe"])));
            let after =
                tokens.get(then).is_some_and(|t| t.is("after")) && tokens.get(then + 1).is_some_and(|t| t.is("that"));
            let then = then + 2 * usize::from(after);
            if let Some(name) = name(tokens, then).filter(|name| name.article) {
                at = name.next;
                found.push(name);
                continue;
            }
        }
        at += 1;
    }
    found
}

/// How a clause brings a dish up.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Brought {
    pub(super) name: Name,
    /// The words before it begin work ('do the', 'first is the', 'for the'), so that it may be new.
    pub(super) begins: bool,
    /// It stands alone, as a heading does.
    pub(super) heading: bool,
}

/// Words that begin work on what they stand before.
const BEGIN: &[&[&str]] = &[
    &["first", "is"],
    &["first", "up", "is"],
    &["next", "is"],
    &["next", "up"],
    &["then", "there's"],
    &["time", "for"],
    &["on", "to"],
    &["over", "to"],
    &["now", "for"],
    &["meanwhile", "for"],
    &["as", "for"],
    &["for"],
    &["do"],
    &["doing"],
    &["make"],
    &["making"],
    &["start"],
    &["start", "with"],
    &["going", "on"],
    &["started", "on"],
    &["starting", "with"],
    &["start", "on"],
    &["never", "said"],
    &["never", "did"],
    &["last", "thing"],
    &["last", "is"],
];

/// The dish or part that a clause brings up.
pub(super) fn brought(tokens: &[Token], from: usize, next: usize, opens: bool) -> Option<Brought> {
    let mut at = from;
    let lead = |t: &Token| {
        words::is(&t.lower, Role::Turn)
            || words::is(&t.lower, Role::Filler)
            || t.is_one_of("and oh back to let me i'm just checking check over here's you serve with my it's")
            || t.sign() == Some(',')
    };
    while at < next && tokens.get(at).is_some_and(lead) {
        at += 1;
    }
    let ends = |at: usize| tokens.get(at).is_none_or(|t| t.sign().is_some_and(|sign| sign != '-')) || at >= next;
    if let Some(name) = name(tokens, at).filter(|_| numbers::one(tokens, at).is_none()) {
        let heading = ends(name.next) || tokens.get(name.next).is_some_and(|t| t.is_any(&["first", "next"]));
        let is = tokens.get(name.next).is_some_and(|t| t.is_any(&["is", "are"]))
            || tokens.get(name.next - 1).is_some_and(|t| t.lower.ends_with("'s"));
        let measured = is
            && numbers::amount(
                tokens,
                name.next + usize::from(!tokens.get(name.next - 1).is_some_and(|t| t.lower.ends_with("'s"))),
            )
            .is_some();
        // 'now the flatbreads two and a half cups of flour'.
        let turned = tokens.get(from).is_some_and(|t| words::is(&t.lower, Role::Turn));
        let at_once = numbers::amount(tokens, name.next)
            .is_some_and(|number| super::mention::unit(tokens, number.next).is_some());
        let measured = measured || turned && at_once && name.article && name.dish;
        return Some(Brought {
            begins: measured,
            heading,
            name,
        });
    }
    for at in from..next {
        let begin = BEGIN.iter().filter(|begin| {
            let part = tokens.get(at..at + begin.len());
            part.is_some_and(|part| part.iter().zip(begin.iter()).all(|(t, word)| t.is(word)))
        });
        // 'for the soup' inside a sentence says only what something is for.
        let only_if = tokens
            .get(from..at)
            .is_some_and(|before| before.iter().any(|t| t.is("if")));
        if only_if {
            return None;
        }
        let leads = opens && tokens.get(from..at).is_some_and(|before| before.iter().all(lead));
        let begin = begin.filter(|begin| leads || begin.first() != Some(&"for"));
        let Some(length) = begin.map(|begin| begin.len()).max() else {
            continue;
        };
        let Some(name) = name(tokens, at + length) else {
            continue;
        };
        return Some(Brought {
            begins: name.article,
            heading: false,
            name,
        });
    }
    None
}
