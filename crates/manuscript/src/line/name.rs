//! The name of a food among the words around it.

use potwright_measure::Unit;

use super::unit::size_word;
use crate::lexicon::{self, Class};
use crate::token::{Kind, Token, letters};
use crate::{Item, Size, Span, Words};

/// A named food and what its own words say beside the name.
#[derive(Clone, Debug, Default)]
pub(crate) struct Named {
    pub(crate) item: Item,
    /// Work or temperature told before the noun.
    pub(crate) prepared: Vec<Words>,
    pub(crate) size: Option<Size>,
    /// A unit told after the noun: 'garlic **cloves**'.
    pub(crate) unit: Option<Unit>,
    /// How many of the words were used; the rest follows the name.
    pub(crate) used: usize,
}

/// Words that end a name when they follow it.
const AFTER: &str = "for to with without from about plus until till if as which that such like at on per into weighing \
    preferably ideally each cut through enough when where is are can may off left including i.e e.g eg \
    roughly approximately divided optional not only but in-all depending according";

/// No name is looked for beyond this many words: a page may be one line.
const LONGEST: usize = 60;

/// Context that changes how words are taken.
#[derive(Clone, Copy, Debug, Default)]
pub(crate) struct Context {
    /// It comes out of a can or packet: 'diced tomatoes' are bought so.
    pub(crate) packed: bool,
    /// A number stands before and no unit: a unit may follow the noun.
    pub(crate) counted: bool,
}

/// The name in these words (no commas, brackets left out). `None` when no word can be a name.
pub(crate) fn named(text: &str, words: &[&Token], context: Context) -> Option<Named> {
    let words = &words[..words.len().min(LONGEST)];
    let kept = kept(words);
    let used = end_of_name(words, &kept);
    let mut found = Named {
        used,
        ..Named::default()
    };
    let mut name = sort(text, &words[..used], &kept, context, &mut found);
    take_unit(&mut name, context, &mut found);
    let name = turned(name, &kept);
    let span = name.iter().map(|t| t.span).reduce(Span::join)?;
    found.item.span = span;
    found.item.name = spelled(&name);
    (!found.item.name.is_empty()).then_some(found)
}

/// For every word, whether it belongs to a name that is kept whole.
pub(crate) fn kept(words: &[&Token]) -> Vec<bool> {
    let mut mask = vec![false; words.len()];
    for (at, first) in words.iter().enumerate() {
        for phrase in lexicon::kept(&first.lower) {
            let part = words.get(at..at + phrase.len());
            if part.is_some_and(|part| part.iter().zip(phrase).all(|(t, w)| t.is(w))) {
                mask[at..at + phrase.len()].fill(true);
            }
        }
    }
    mask
}

/// Whether a word can be the noun itself: it is not one of those that only describe.
pub(crate) fn nounlike(token: &Token) -> bool {
    let words = token.class;
    let describes = Class::STATE
        | Class::SIZE
        | Class::ABOUT
        | Class::EXACTLY
        | Class::PREPARED
        | Class::TEMPERATURE
        | Class::KIND
        | Class::MANNER
        | Class::BOUGHT
        | Class::OIL;
    token.is_word()
        && (words.is(Class::FOOD) || !words.is(describes))
        && !token.is_any(&[
            "and", "or", "of", "the", "a", "an", "your", "some", "any", "in", "no", "other",
        ])
}

/// The index at which the name is over.
fn end_of_name(words: &[&Token], kept: &[bool]) -> usize {
    let mut noun = false;
    // Whether a food still follows each word before the sentence turns to something else.
    let last_food = words.iter().rposition(|t| t.class.is(Class::FOOD));
    for (at, token) in words.iter().enumerate() {
        if kept[at] {
            noun = true;
            continue;
        }
        let words_of = token.class;
        if noun {
            let sized = token.is("of") && words.get(at + 1).is_some_and(|t| t.class.is(Class::SIZE));
            let likened =
                sized || token.is("size") || token.is("the") && words.get(at + 1).is_some_and(|t| t.is("size"));
            let ends = likened
                || token.is_one_of(AFTER)
                || matches!(token.kind, Kind::Number(_))
                || matches!(token.sign(), Some('/' | '+' | ':' | '*' | '–' | '—'));
            let described = (words_of.is(Class::PREPARED | Class::MANNER) && !token.is_any(&["each"]))
                && !words_of.is(Class::FOOD)
                && (last_food.is_none_or(|food| food < at) || joined_later(words, at));
            if ends || described || (token.is("in") && shaped(&words[at + 1..])) {
                return at;
            }
        }
        noun |= nounlike(token);
    }
    words.len()
}

/// 'potatoes cut into slices with butter': the food that follows belongs to something else.
fn joined_later(words: &[&Token], at: usize) -> bool {
    let next_food = words
        .iter()
        .skip(at)
        .position(|t| t.class.is(Class::FOOD))
        .map(|i| i + at);
    next_food.is_some_and(|food| {
        words[at..food]
            .iter()
            .any(|t| t.is_any(&["with", "for", "in", "into", "to", "of"]))
    })
}

/// 'in chunks', 'in their skins', 'in all': no part of the name, as 'in oil' would be.
fn shaped(rest: &[&Token]) -> bool {
    rest.iter().take(6).any(|t| {
        t.class.is(Class::SHAPE)
            || t.is_any(&[
                "its", "their", "skins", "shell", "shells", "all", "total", "half", "two", "season",
            ])
    })
}

/// Sorts the words before the head into size, state, work and name.
fn sort<'a, 't>(
    text: &str,
    words: &[&'a Token<'t>],
    kept: &[bool],
    context: Context,
    found: &mut Named,
) -> Vec<&'a Token<'t>> {
    let canned = words
        .iter()
        .any(|t| t.is_any(&["tinned", "canned", "jarred", "bottled"]));
    let context = Context {
        packed: context.packed || canned,
        ..context
    };
    let mut name: Vec<&Token> = Vec::new();
    let mut run: Option<(usize, usize)> = None;
    for (at, token) in words.iter().enumerate() {
        if kept[at] {
            name.push(token);
            continue;
        }
        let words_of = token.class;
        let rest = &words[at + 1..];
        let works = work(words, at, context, run.is_some_and(|(_, end)| end == at));
        if works {
            match &mut run {
                Some((_, end)) if *end == at => *end += 1,
                _ => {
                    found
                        .prepared
                        .extend(run.take().and_then(|(from, end)| words_at(text, &words[from..end])));
                    run = Some((at, at + 1));
                }
            }
        } else if token.sign().is_some() || rest.is_empty() && name.is_empty() {
            if token.is_word() {
                name.push(token);
            }
        } else if words_of.is(Class::SIZE) && !words_of.is(Class::FOOD) && !rest.is_empty() {
            found.size = found.size.take().or(size_word(words_of));
        } else if words_of.is(Class::STATE) && !rest.is_empty() && !bought_so(rest, token) {
            found.item.state.push(token.lower.to_string());
        } else if skipped(token, words_of, name.is_empty()) && !rest.is_empty() {
        } else {
            name.push(token);
        }
    }
    found
        .prepared
        .extend(run.and_then(|(from, end)| words_at(text, &words[from..end])));
    name
}

/// Words before a name that say nothing of it.
fn skipped(token: &Token, words: Class, first: bool) -> bool {
    words.is(Class::ABOUT | Class::EXACTLY)
        || first
            && token
                .is_one_of("the a an some your any more extra additional other and or of each bits another further as")
}

/// 'ground beef', 'minced pork': the meat is bought so.
fn bought_so(rest: &[&Token], token: &Token) -> bool {
    token.is_any(&["ground", "minced"]) && rest.iter().any(|t| t.class.is(Class::MEAT))
}

/// Whether the word before the noun tells of work or temperature.
fn work(words: &[&Token], at: usize, context: Context, running: bool) -> bool {
    let token = words[at];
    let of = token.class;
    let rest = &words[at + 1..];
    let noun_follows = rest.iter().any(|t| nounlike(t));
    if !noun_follows {
        return false;
    }
    let next = rest.first().map_or(Class::default(), |t| t.class);
    let work_next = next.is(Class::PREPARED) && !next.is(Class::BOUGHT)
        || rest.first().is_some_and(|t| t.is_any(&["ground", "dried", "minced"]));
    if of.is(Class::MANNER) && !of.is(Class::FOOD) {
        return work_next || next.is(Class::MANNER);
    }
    if running && (token.is_any(&["and", "or"]) || matches!(token.sign(), Some('&' | '+' | '/'))) {
        return next.is(Class::PREPARED) || next.is(Class::MANNER);
    }
    // 'stewed and strained tomatoes': what is joined to work is work.
    let joined =
        rest.first().is_some_and(|t| t.is_any(&["and", "or"])) && rest.get(1).is_some_and(|t| only_work(t.class));
    if of.is(Class::BOUGHT) && joined && !of.is(Class::KIND) {
        return true;
    }
    let manner_before = at > 0 && words[at - 1].class.is(Class::MANNER);
    if manner_before && running && (of.is(Class::PREPARED | Class::STATE | Class::BOUGHT)) {
        return true;
    }
    if of.is(Class::TEMPERATURE) {
        return heats(token, rest);
    }
    of.is(Class::PREPARED)
        && !of.is(Class::BOUGHT)
        && !of.is(Class::FOOD)
        && !of.is(Class::STATE)
        && !context.packed
        && !bought_so(rest, token)
        || token.is_any(&["salted"]) && rest.last().is_some_and(|t| t.is("water"))
}

fn only_work(words: Class) -> bool {
    words.is(Class::PREPARED) && !words.is(Class::BOUGHT | Class::FOOD | Class::STATE)
}

/// 'hot milk' is a temperature, 'hot paprika' is not; 'boiling water', not 'boiling potatoes'.
fn heats(token: &Token, rest: &[&Token]) -> bool {
    let liquid = rest.iter().any(|t| t.class.is(Class::LIQUID));
    let sharp = rest
        .last()
        .is_some_and(|t| t.is_any(&["sauce", "pepper", "peppers", "paprika"]));
    match token.lower.as_str() {
        "hot" | "boiling" | "simmering" | "cool" => {
            liquid && !sharp || rest.first().is_some_and(|t| only_work(t.class))
        }
        "cold" | "chilled" => !rest.first().is_some_and(|t| t.is_any(&["cuts", "meats"])),
        _ => true,
    }
}

fn words_at(text: &str, words: &[&Token]) -> Option<Words> {
    Some(Words::at(text, words.iter().map(|t| t.span).reduce(Span::join)?))
}

/// 'garlic cloves', 'celery ribs', 'fennel bulbs': the unit stands after the noun.
fn take_unit(name: &mut Vec<&Token>, context: Context, found: &mut Named) {
    if !context.counted || name.len() < 2 {
        return;
    }
    let (Some(last), Some(before)) = (name.last(), name.get(name.len() - 2)) else {
        return;
    };
    let Some(unit) = Unit::from_spelling(last.text) else {
        return;
    };
    let of = before.class;
    let takes = match unit {
        Unit::Clove | Unit::Bulb | Unit::Sprig | Unit::Stalk | Unit::Bunch | Unit::Rasher => of.is(Class::FOOD),
        Unit::Slice => of.is(Class::FOOD) && !before.is_any(&["apple"]),
        Unit::Rib | Unit::Stick => before.is("celery"),
        Unit::Head => of.is(Class::FOOD) && !of.is(Class::MEAT) && !before.is_any(&["fish", "sheep's", "calf's"]),
        _ => false,
    };
    if takes && !last.is_any(&["chunk", "chunks"]) {
        found.unit = Some(unit);
        name.pop();
    }
}

/// 'shin of beef' as 'beef shin'; names that are kept whole stay.
fn turned<'a, 't>(name: Vec<&'a Token<'t>>, kept: &[bool]) -> Vec<&'a Token<'t>> {
    let of = name.iter().position(|t| t.is("of"));
    match of {
        // 'cream of celery soup' is called so.
        Some(of) if of > 0 && name[of - 1].is("cream") && name.last().is_some_and(|t| t.is_any(&["soup", "soups"])) => {
            name
        }
        Some(of) if of > 0 && of + 1 < name.len() && !kept.iter().any(|k| *k) => {
            let after = turned(
                name[of + 1..]
                    .iter()
                    .copied()
                    .filter(|t| !t.is_any(&["the", "a", "an"]))
                    .collect(),
                &[],
            );
            // 'boneless shoulder of pork': what only describes the part stays in front of it all.
            let describes =
                |t: &&&Token| t.class.is(Class::KIND | Class::BOUGHT) && !t.class.is(Class::FOOD | Class::PART);
            let front = name[..of - 1].iter().take_while(describes).count();
            let mut turned: Vec<&Token> = name[..front].to_vec();
            turned.extend(after);
            turned.extend(name[front..of].iter().copied());
            turned
        }
        _ => name,
    }
}

/// The words of a name, misprints mended, in small letters where the word is a common one.
pub(crate) fn spelled(name: &[&Token]) -> String {
    let whole = name.len() == 1;
    let words = name.iter().filter(|t| t.sign().is_none()).map(|token| {
        if let Some(meant) = lexicon::meant(&token.lower, whole) {
            return meant.to_owned();
        }
        let typed = letters(token.text);
        let shouted = typed.chars().filter(|c| c.is_alphabetic()).count() > 1 && !typed.chars().any(char::is_lowercase);
        if shouted || token.class != Class::default() {
            typed.to_lowercase()
        } else {
            typed.into_owned()
        }
    });
    words.collect::<Vec<_>>().join(" ")
}
