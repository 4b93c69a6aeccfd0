//! Ingredients named in running text.
//!
//! A page without a list names its foods in its sentences. Either one sentence counts them up ('Two pounds of chops,
//! eight potatoes, four turnips.'), and then those are the ingredients; or they come one by one where they are used,
//! and then the first mention of each is the ingredient.

use std::collections::BTreeSet;

use crate::lexicon::{Class, class, singular};
use crate::line::name::nounlike;
use crate::line::quantity::measured;
use crate::line::{self, Line};
use crate::token::{Kind, Token};
use crate::{Ingredient, Recipe, Span};

/// Words that name what is being cooked rather than something to buy.
const GENERAL: &str = "meat soup stew sauce gravy broth vegetables vegetable liquid juices juice fat bones bone skin skins \
    shells seasoning seasonings dough batter crust leaves stalks stems seeds peel paste mince fish tops \
    chops steak garnish greens toppings ice mixture pie roll rolls split spring neck";

/// Fills in the ingredients of a page without a list.
pub(crate) fn ingredients(text: &str, recipe: &mut Recipe) {
    let sentences: Vec<Span> = recipe
        .steps
        .iter()
        .flat_map(|step| sentences(text, step.words.span))
        .collect();
    let counted: Vec<&Span> = sentences.iter().filter(|span| counts_up(text, **span)).collect();
    if !counted.is_empty() {
        for span in counted {
            let entries = line::read(text, from_first_amount(text, *span), &[]).entries;
            recipe
                .ingredients
                .extend(entries.into_iter().filter(|i| !i.items.is_empty()));
        }
        return;
    }
    let mut known = Known::default();
    for span in sentences {
        for found in mentions(text, span) {
            for entry in found {
                take(entry, &mut known, recipe);
            }
        }
    }
}

/// The names that have been mentioned, each with every ending of its own: 'red onion' is known as 'onion' too.
#[derive(Default)]
struct Known {
    whole: BTreeSet<String>,
    endings: BTreeSet<String>,
}

impl Known {
    /// Whether a name is new; 'clams' after 'fresh clams' is not, and 'boiled potatoes' after 'potatoes' neither.
    fn is_new(&mut self, name: &str) -> bool {
        let words: Vec<String> = name.split(' ').take(8).map(|w| singular(&w.to_lowercase())).collect();
        let endings = || (0..words.len()).map(|from| words[from..].join(" "));
        let whole = words.join(" ");
        if self.endings.contains(&whole) || endings().any(|ending| self.whole.contains(&ending)) {
            return false;
        }
        self.endings.extend(endings());
        self.whole.insert(whole);
        true
    }
}

/// Adds an ingredient unless it has been named before.
fn take(mut entry: Ingredient, known: &mut Known, recipe: &mut Recipe) {
    entry.items.retain(|item| known.is_new(&item.name));
    if !entry.items.is_empty() {
        recipe.ingredients.push(entry);
    }
}

/// The sentences of a paragraph.
fn sentences(text: &str, span: Span) -> Vec<Span> {
    let line = Line::new(text, span);
    let mut found = Vec::new();
    let mut from = 0;
    for at in 0..line.tokens.len() {
        let ends = matches!(line.tokens[at].sign(), Some('.' | '!' | '?'));
        let next_starts = line.tokens.get(at + 1).is_none_or(|t| {
            t.text.starts_with(|c: char| c.is_uppercase() || c.is_ascii_digit()) && t.gap > crate::token::Gap::None
        });
        if ends && next_starts {
            found.extend(line.span(from, at));
            from = at + 1;
        }
    }
    found.extend(line.span(from, line.tokens.len()));
    found
}

/// Whether a sentence counts up foods and does nothing with them.
fn counts_up(text: &str, span: Span) -> bool {
    if super::rows::reads_as_prose(text, span) || super::judge::has_imperative(text, span) {
        return false;
    }
    let entries = line::read(text, from_first_amount(text, span), &[]).entries;
    let food = |i: &&Ingredient| i.quantity.is_some() && i.items.iter().any(|item| names_food(&item.name));
    entries.iter().filter(food).count() >= 3
}

/// The sentence without 'You need' and the like in front of the first amount.
fn from_first_amount(text: &str, span: Span) -> Span {
    let line = Line::new(text, span);
    let starts = |at: &usize| measured(&line, *at, false).is_some() || part_start(&line.tokens, *at).is_some();
    let first = (0..line.tokens.len().min(7)).find(starts).unwrap_or(0);
    line.tokens
        .get(first)
        .map_or(span, |t| Span::new(t.span.start, span.end))
}

fn names_food(name: &str) -> bool {
    name.split(' ').any(|word| class(&word.to_lowercase()).is(Class::FOOD))
}

/// The foods a sentence names, each stretch as the entries it holds.
fn mentions(text: &str, span: Span) -> Vec<Vec<Ingredient>> {
    let line = Line::new(text, span);
    let tokens = &line.tokens;
    let serves = tokens.iter().take(2).any(|t| t.is_any(&["serve", "eat", "serving"]));
    let mut found = Vec::new();
    let mut at = 0;
    while at < tokens.len() {
        let Some((end, bare)) = stretch(&line, at) else {
            at += 1;
            continue;
        };
        let place = line.span(at, end).unwrap_or(span);
        let denied = at > 0 && tokens[at - 1].is_any(&["no", "without", "not", "less"]);
        if !(denied || bare && serves) {
            let mut entries = line::read(text, place, &[]).entries;
            entries.retain(|entry| entry.items.iter().any(|item| names_food(&item.name)) && !(bare && general(entry)));
            found.push(entries);
        }
        at = end.max(at + 1);
    }
    found
}

fn general(entry: &Ingredient) -> bool {
    entry.items.iter().all(|item| {
        item.name
            .split(' ')
            .next_back()
            .is_some_and(|last| GENERAL.split(' ').any(|word| word == last))
    })
}

/// The stretch that names a food with its amount starting here: the index after it, and whether no amount stands there.
fn stretch(line: &Line, at: usize) -> Option<(usize, bool)> {
    let tokens = &line.tokens;
    let first = &tokens[at];
    if let Some(start) = part_start(tokens, at) {
        let measure = measured(line, start, false)?;
        return Some((told(line, noun_phrase(line, measure.next)?), false));
    }
    if let Some(measure) = measured(line, at, false) {
        let end = noun_phrase(line, measure.next)?;
        let plain = measure.implied && !measure.has_unit;
        let food = tokens[measure.next..end].iter().any(|t| t.class.is(Class::FOOD));
        if !food || plain && general_noun(&tokens[end - 1]) || measure.of_the {
            return None;
        }
        return Some((told(line, joined(line, end)), false));
    }
    let of = first.class;
    let describes = Class::FOOD
        | Class::KIND
        | Class::STATE
        | Class::TEMPERATURE
        | Class::BOUGHT
        | Class::PREPARED
        | Class::MANNER
        | Class::OIL;
    if !first.is_word() || !of.is(describes) || verb_use(tokens, at) || general_noun(first) && !next_is_food(tokens, at)
    {
        return None;
    }
    let end = noun_phrase(line, at)?;
    // 'clams: 48 of them, scrubbed' says the rest after a colon.
    if tokens.get(end).is_some_and(|t| t.sign() == Some(':'))
        && measured(line, end + 1, true).is_some_and(|m| !m.implied)
    {
        return Some((tokens.len(), false));
    }
    Some((told(line, end), true))
}

fn next_is_food(tokens: &[Token], at: usize) -> bool {
    tokens.get(at + 1).is_some_and(|t| t.class.is(Class::FOOD))
}

fn general_noun(token: &Token) -> bool {
    token.is_one_of(GENERAL)
}

/// 'the zest and juice of 1 orange', 'yolks of four eggs': where the amount stands.
fn part_start(tokens: &[Token], at: usize) -> Option<usize> {
    let the = usize::from(tokens[at].is("the"));
    let mut next = at + the;
    while tokens
        .get(next)
        .is_some_and(|t| t.class.is(Class::PART) || t.is("and") && next > at + the)
    {
        next += 1;
    }
    let of = tokens.get(next).is_some_and(|t| t.is("of"));
    let counted = of && crate::number::amount(tokens, next + 1).is_some();
    (next > at + the && counted).then_some(next + 1)
}

/// 'Butter a dish', 'Salt the water', 'and butter it': the word tells the cook to do something.
fn verb_use(tokens: &[Token], at: usize) -> bool {
    let opens = at == 0
        || matches!(tokens[at - 1].sign(), Some(',' | ';' | ':' | '–'))
        || tokens[at - 1].is_any(&["and", "then", "to"]);
    opens
        && tokens
            .get(at + 1)
            .is_some_and(|t| t.is_any(&["a", "an", "the", "it", "them", "your", "over", "well"]))
}

/// The index after a noun phrase that holds a food; `None` when it holds none.
fn noun_phrase(line: &Line, from: usize) -> Option<usize> {
    let tokens = &line.tokens;
    let mut end = None;
    let mut at = from;
    while let Some(token) = tokens.get(at) {
        let of = token.class;
        if matches!(token.kind, Kind::Aside(_)) {
            at += 1;
            continue;
        }
        if !token.is_word() {
            break;
        }
        if crate::number::number(tokens, at).is_some() {
            break;
        }
        if of.is(Class::FOOD) {
            end = Some(at + 1);
        } else if end.is_some() {
            break;
        } else {
            let describes = Class::KIND
                | Class::STATE
                | Class::SIZE
                | Class::PREPARED
                | Class::TEMPERATURE
                | Class::BOUGHT
                | Class::MANNER
                | Class::OIL
                | Class::PART;
            let soon = tokens.get(at + 1).is_some_and(|t| t.class.is(Class::FOOD));
            let small = token.is_any(&[
                "and", "or", "with", "in", "into", "to", "for", "on", "at", "the", "of", "from", "by", "over", "until",
                "till", "is", "are", "it", "them", "that", "which", "as", "minutes", "minute", "hours", "hour",
            ]);
            let verb = crate::lexicon::verb(&token.lower) && !of.is(describes);
            if !(of.is(describes) || soon && nounlike(token)) || small || verb {
                return None;
            }
        }
        at += 1;
    }
    end
}

/// Over 'and' to a second counted food: '2 onions and 2 peppers, both sliced'.
fn joined(line: &Line, end: usize) -> usize {
    if !line.tokens.get(end).is_some_and(|t| t.is("and")) {
        return end;
    }
    let second = measured(line, end + 1, false).filter(|m| !m.implied);
    second.and_then(|m| noun_phrase(line, m.next)).unwrap_or(end)
}

/// Over brackets and the work that is told after the noun: ', cut into matchsticks', 'chopped fine, if liked'.
fn told(line: &Line, end: usize) -> usize {
    let tokens = &line.tokens;
    let mut end = end;
    loop {
        if tokens.get(end).is_some_and(|t| matches!(t.kind, Kind::Aside(_))) {
            end += 1;
            continue;
        }
        let comma = usize::from(tokens.get(end).is_some_and(|t| t.sign() == Some(',')));
        let Some(first) = tokens.get(end + comma) else {
            return end;
        };
        let of = first.class;
        let work = of.is(Class::PREPARED) && !of.is(Class::FOOD)
            || of.is(Class::MANNER) && tokens.get(end + comma + 1).is_some_and(|t| t.class.is(Class::PREPARED));
        let both = first.is_any(&["both", "all"])
            && tokens
                .get(end + comma + 1)
                .is_some_and(|t| t.class.is(Class::PREPARED | Class::MANNER));
        let liked = first.is("if")
            && tokens
                .get(end + comma + 1)
                .is_some_and(|t| t.is_any(&["liked", "desired", "you", "available"]))
            || first.is("optional");
        if !(work || both && comma == 1 || liked) {
            return end;
        }
        // A bare base form such as 'cut' after a comma is the next thing to do.
        if work && comma == 1 && crate::lexicon::verb(&first.lower) && !first.is("cut") {
            return end;
        }
        let stop = (end + comma..tokens.len()).find(|i| {
            let t = &tokens[*i];
            matches!(t.sign(), Some(',' | ';' | '.' | ':' | '–' | '—' | '!'))
                || t.is_any(&["and", "with"]) && *i > end + comma
                || t.is_any(&["into", "in"]) && tokens.get(i + 1).is_some_and(|t| t.is_any(&["the", "a"]))
        });
        let next = stop.unwrap_or(tokens.len());
        if next <= end {
            return end;
        }
        end = next;
    }
}
