//! Nouns of the method: how much of what is named, and the vessels.

use potwright_measure::{Amount, Exact, Unit};

use super::phrases::{self, span};
use super::words;
use crate::lexicon::{Class, class, singular};
use crate::number::{amount, is_article, number};
use crate::speech::{Speech, speech};
use crate::token::{Token, at, speech_at};
use crate::{Quantity, Share, Span};

/// A thing that the method names, before it is known what it stands for.
#[derive(Clone, Debug, PartialEq)]
pub(super) struct Mention {
    /// Where it stands, with its amount.
    pub(super) span: Span,
    /// Its words in small letters, without articles and amounts.
    pub(super) words: Vec<String>,
    /// Where the words stand.
    pub(super) words_span: Span,
    pub(super) share: Share,
    /// It is a word such as 'it' or 'them'.
    pub(super) pronoun: bool,
    /// 'most of': the share is a guess.
    pub(super) most: bool,
    /// 'all but a tablespoon of': what stays.
    pub(super) but: Option<Quantity>,
    /// It stands with 'a' or 'another', so that it is new.
    pub(super) fresh: bool,
    /// An article or an amount stands before it.
    pub(super) determined: bool,
}

/// 'most of' in a number (common practice, no source).
fn most() -> Exact {
    Exact::ratio(3, 4).unwrap_or(Exact::ONE)
}

/// Whether the word can stand inside a name: neither a small word nor an order.
pub(super) fn names(token: &Token) -> bool {
    const SMALL: Speech = Speech::ARTICLE
        .or(Speech::PREPOSITION)
        .or(Speech::JOINER)
        .or(Speech::CLAUSE)
        .or(Speech::FINITE)
        .or(Speech::PRONOUN)
        .or(Speech::PERSON)
        .or(Speech::NEVER)
        .or(Speech::MANNER)
        .or(Speech::PARTLY)
        .or(Speech::DISCARDING)
        .or(Speech::KEEPING);
    let adverb = token.speech.is(Speech::ADVERB) && !token.class.is(Class::FOOD);
    token.is_word() && !token.speech.is(SMALL) && !adverb
}

/// The share and the amount that stand before a noun, and the index of the token after them.
struct Measured {
    share: Share,
    most: bool,
    but: Option<Quantity>,
    fresh: bool,
    next: usize,
}

/// The thing that is named here, and the index of the token after it.
pub(super) fn mention(tokens: &[Token], from: usize, to: usize) -> Option<(Mention, usize)> {
    let first = tokens.get(from).filter(|_| from < to)?;
    // 'both thinly sliced', 'all finely diced': work on what was named.
    if first.is_any(&["both", "all"])
        && tokens
            .get(from + 1)
            .is_some_and(|t| t.speech.is(Speech::ADVERB) || is_work(t))
    {
        return None;
    }
    // 'warm it all through': everything there is.
    if first.is("it") && at(tokens, from + 1) == "all" && from + 1 < to {
        return mention(tokens, from + 1, to);
    }
    if first.speech.is(Speech::PRONOUN) && !follows_noun(tokens, from, to) {
        return Some((pronoun(tokens, from, Share::Whole), from + 1));
    }
    // 'any that stay shut'.
    if first.is("any") && !words_follow(tokens, from + 1, to) {
        return Some((pronoun(tokens, from, Share::Some), from + 1));
    }
    let measured = measured(tokens, from, to);
    let (share, start) = (measured.share, measured.next);
    if speech_at(tokens, start).is(Speech::PRONOUN) && start < to && !follows_noun(tokens, start, to) {
        let mut found = pronoun(tokens, start, share);
        found.span = span(tokens, from, start + 1);
        return Some((found, start + 1));
    }
    let (mut words, mut next) = noun_words(tokens, start, to);
    // 'juice of 1 orange', 'slices of bread', 'a head of celery': the thing is what stands after 'of'.
    while at(tokens, next) == "of" && next + 1 < to && !words.is_empty() {
        let inner = self::measured(tokens, next + 1, to).next;
        let (rest, after) = noun_words(tokens, inner, to);
        if rest.is_empty() {
            break;
        }
        let last = words.last().cloned().unwrap_or_default();
        let part = class(&singular(&last)).is(Class::PART) || speech(&last).is(Speech::MADE);
        words = if part { [rest, words].concat() } else { rest };
        next = after;
    }
    let by_turns = at(tokens, next) == "at" && at(tokens, next + 1) == "a";
    let rest_alone = words.is_empty() && !by_turns && matches!(share, Share::Rest | Share::Fraction(_));
    if words.is_empty() && !rest_alone {
        return None;
    }
    let found = Mention {
        span: span(tokens, from, next),
        words,
        words_span: span(tokens, start.min(next), next),
        share,
        pronoun: false,
        most: measured.most,
        but: measured.but,
        fresh: measured.fresh,
        determined: start > from || speech_at(tokens, from).is(Speech::ARTICLE),
    };
    (next > from).then_some((found, next))
}

fn pronoun(tokens: &[Token], from: usize, share: Share) -> Mention {
    Mention {
        span: span(tokens, from, from + 1),
        words: vec![at(tokens, from).to_owned()],
        words_span: span(tokens, from, from + 1),
        share,
        pronoun: true,
        most: false,
        but: None,
        fresh: false,
        determined: true,
    }
}

/// 'those onions', 'both onions': the pronoun only points at the noun.
fn follows_noun(tokens: &[Token], from: usize, to: usize) -> bool {
    let next = from + 1;
    matches!(at(tokens, from), "this" | "these" | "those" | "both") && next < to && tokens.get(next).is_some_and(names)
}

fn noun_words(tokens: &[Token], from: usize, to: usize) -> (Vec<String>, usize) {
    let mut words: Vec<String> = Vec::new();
    let mut index = from;
    while index < to && speech_at(tokens, index).is(Speech::ARTICLE) {
        index += 1;
    }
    while let Some(token) = tokens.get(index).filter(|_| index < to) {
        let work = token.speech.is(Speech::ADVERB) && tokens.get(index + 1).is_some_and(is_work) && index + 1 < to;
        if !(names(token) || is_adjectival(tokens, index) || work) || (index > from && is_new_start(tokens, index)) {
            break;
        }
        if !work {
            words.push(token.lower.to_string());
        }
        index += 1;
        // 'everything else', 'all else' are one name.
        if token.speech.is(Speech::ALL) && !matches!(at(tokens, index), "ingredients" | "else") {
            break;
        }
    }
    // 'all the vegetables bar the leek'.
    if words.len() > 1 && words.last().is_some_and(|word| word == "bar") && speech_at(tokens, index).is(Speech::ARTICLE)
    {
        words.pop();
        index -= 1;
    }
    // 'until the cheeks are dry', 'pat the cheeks dry': how the food comes to be is no part of its name.
    while words.len() > 1 && words.last().is_some_and(|word| describes(word) || lies(word)) {
        words.pop();
    }
    (words, if index > from { index } else { from })
}

/// 'chop the onions small', 'the meat left on': how it is cut and what became of it.
fn lies(word: &str) -> bool {
    let class = class(word);
    let size = class.is(Class::SIZE) || matches!(word, "fine" | "coarse" | "separate" | "long" | "short" | "loose");
    let left = class.is(Class::PREPARED) && !class.is(Class::BOUGHT | Class::STATE);
    (size || left) && !class.is(Class::FOOD)
}

/// A participle of work: 'chopped'.
fn is_work(token: &Token) -> bool {
    token.class.is(Class::PREPARED)
        || words::verb(&token.lower).is_some_and(|(_, form)| form == words::Inflection::Past)
}

/// 'boiling water', 'soaking liquid': an -ing word that belongs to the noun after it.
pub(super) fn is_adjectival(tokens: &[Token], index: usize) -> bool {
    let next = at(tokens, index + 1);
    matches!(
        at(tokens, index),
        "boiling" | "simmering" | "soaking" | "cooking" | "frying" | "poaching" | "braising" | "pickling"
    ) && (matches!(
        next,
        "liquid" | "water" | "juices" | "salted" | "stock" | "milk" | "fat"
    ))
}

/// An amount, a share, a time or a way to say how often begins here: the name before it has ended.
pub(super) fn is_new_start(tokens: &[Token], index: usize) -> bool {
    matches!(
        at(tokens, index),
        "remaining" | "rest" | "half" | "same" | "some" | "more" | "another" | "overnight" | "until" | "till"
    ) || number(tokens, index).is_some()
        || phrases::repeats_here(tokens, index)
        || phrases::heat(tokens, index).is_some()
}

/// A word that only describes: 'warm', 'dry', 'smooth'.
pub(super) fn describes(word: &str) -> bool {
    let class = class(word);
    !class.is(Class::FOOD)
        && (class.is(Class::TEMPERATURE)
            || matches!(
                word,
                "dry"
                    | "warm"
                    | "smooth"
                    | "well"
                    | "thin"
                    | "tender"
                    | "thick"
                    | "crosswise"
                    | "lengthways"
                    | "lengthwise"
                    | "flat"
                    | "open"
                    | "whole"
                    | "apart"
                    | "alone"
                    | "clean"
            ))
}

/// Reads 'half the', 'the remaining 6 cups', '1 tablespoon of the', 'a handful of', 'most of the', 'some'.
fn measured(tokens: &[Token], from: usize, to: usize) -> Measured {
    let mut found = Measured {
        share: Share::Whole,
        most: false,
        but: None,
        fresh: false,
        next: from,
    };
    let mut rest = false;
    while found.next < to {
        let index = found.next;
        let word = at(tokens, index);
        let of = at(tokens, index + 1) == "of";
        let all_but = word == "all" && at(tokens, index + 1) == "but";
        if let Some((left, next)) = quantity(tokens, index + 2, to).filter(|_| all_but) {
            found.but = Some(left);
            found.next = next + usize::from(at(tokens, next) == "of");
            continue;
        }
        match word {
            "remaining" | "rest" | "remainder" | "other" | "others" => {
                rest = true;
                found.next += 1 + usize::from(of);
            }
            "half" | "quarter" | "third" => {
                if let Some((part, next)) = number(tokens, index) {
                    found.share = Share::Fraction(part);
                    found.next = next + usize::from(at(tokens, next) == "of");
                } else {
                    found.next += 1;
                }
            }
            "most" if of => {
                (found.share, found.most) = (Share::Fraction(most()), true);
                found.next += 1 + usize::from(of);
            }
            "some" | "few" | "little" | "enough" | "plenty" | "lots" => {
                found.share = Share::Some;
                found.next += 1 + usize::from(of);
            }
            // 'nearly all the milk', 'excess fat'.
            "nearly" | "almost" if matches!(at(tokens, index + 1), "all" | "half" | "the") => found.next += 1,
            "excess" | "surplus" if words_follow(tokens, index + 1, to) => found.next += 1,
            "all" | "any" | "more" | "extra" | "another" | "both" | "whole"
                if of || words_follow(tokens, index + 1, to) =>
            {
                let counted = number(tokens, index).filter(|_| word == "another");
                if matches!(word, "more" | "extra") && found.share == Share::Whole {
                    found.share = Share::Some;
                }
                if counted.is_some() && quantity(tokens, index, to).is_some_and(|(q, _)| q.unit.is_some()) {
                    take_quantity(tokens, &mut found, to);
                } else {
                    found.next += 1 + usize::from(of);
                }
            }
            _ if quantity(tokens, index, to).is_some() => {
                if !take_quantity(tokens, &mut found, to) {
                    break;
                }
            }
            _ if speech(word).is(Speech::ARTICLE) => {
                found.fresh |= matches!(word, "a" | "an");
                found.next += 1;
            }
            _ => break,
        }
    }
    if rest {
        found.share = Share::Rest;
    }
    found
}

fn words_follow(tokens: &[Token], index: usize, to: usize) -> bool {
    index < to
        && tokens
            .get(index)
            .is_some_and(|t| names(t) || t.speech.is(Speech::ARTICLE) || t.number().is_some())
}

/// Takes the amount that begins at `found.next`; whether there was one.
fn take_quantity(tokens: &[Token], found: &mut Measured, to: usize) -> bool {
    let Some((quantity, next)) = quantity(tokens, found.next, to) else {
        return false;
    };
    let share = fraction_of(tokens, quantity, next).unwrap_or(Share::Measure(quantity));
    found.share = share;
    found.next = next + usize::from(at(tokens, next) == "of" && next < to);
    true
}

/// 'two-thirds of the stock' is a share, not a measure.
fn fraction_of(tokens: &[Token], quantity: Quantity, next: usize) -> Option<Share> {
    let part = quantity.amount.low;
    let plain = quantity.unit.is_none() && quantity.amount.is_single() && part < Exact::ONE;
    let of = at(tokens, next) == "of"
        || speech_at(tokens, next).is(Speech::ARTICLE)
        || tokens.get(next).is_none_or(|t| t.sign().is_some())
        || speech_at(tokens, next).is(Speech::PREPOSITION);
    (plain && of && part.is_positive()).then_some(Share::Fraction(part))
}

/// An amount, with its unit if it has one; an article counts only before a unit or a loose measure.
fn quantity(tokens: &[Token], from: usize, to: usize) -> Option<(Quantity, usize)> {
    let counted = amount(tokens, from)?;
    if counted.next >= to {
        return (!counted.article).then(|| (plain(tokens, from, counted.amount, counted.next), counted.next));
    }
    let mut unit_at = counted.next;
    // 'a heaped teaspoon', 'a small glass', 'a good grind'.
    while unit_at + 1 < to && class(at(tokens, unit_at)).is(Class::SIZE | Class::ABOUT)
        || matches!(at(tokens, unit_at), "good" | "big" | "heaped" | "level" | "generous")
    {
        unit_at += 1;
    }
    for length in [2, 1] {
        let words: Vec<&str> = (unit_at..unit_at + length).map(|index| at(tokens, index)).collect();
        let typed: Vec<&str> = tokens
            .get(unit_at..unit_at + length)
            .unwrap_or_default()
            .iter()
            .map(|t| t.text)
            .collect();
        let unit = Unit::from_spelling(&typed.join(" "));
        let next = unit_at + length;
        if next > to || unit.is_none() {
            continue;
        }
        // A unit that is itself a food word ('cloves', 'leaves') needs 'of' or a noun after it.
        if next == to && words.len() == 1 && class(words[0]).is(Class::FOOD) {
            continue;
        }
        // 'a pint and a half'.
        let (mut amount, mut last) = (counted.amount, next);
        if let Some((part, after)) = crate::line::and_part(tokens, next).filter(|(_, after)| *after <= to)
            && let (Some(low), Some(high)) = (amount.low.checked_add(part), amount.high.checked_add(part))
        {
            (amount, last) = (Amount { low, high, ..amount }, after);
        }
        let next = after_brackets(tokens, last, to);
        let value = Quantity {
            amount,
            unit,
            span: span(tokens, from, last),
        };
        return Some((value, skip_stop(tokens, next, to)));
    }
    if speech_at(tokens, unit_at).is(Speech::MEASURE) && at(tokens, unit_at + 1) == "of" {
        return Some((plain(tokens, from, counted.amount, unit_at + 1), unit_at + 1));
    }
    (!counted.article).then(|| (plain(tokens, from, counted.amount, counted.next), counted.next))
}

fn plain(tokens: &[Token], from: usize, amount: Amount, next: usize) -> Quantity {
    Quantity {
        amount,
        unit: None,
        span: span(tokens, from, next),
    }
}

/// '(125ml)' after a measure says it again.
fn after_brackets(tokens: &[Token], from: usize, to: usize) -> usize {
    if tokens.get(from).and_then(Token::sign) != Some('(') {
        return from;
    }
    let close = (from..to.min(from + 6)).find(|index| tokens.get(*index).and_then(Token::sign) == Some(')'));
    close.map_or(from, |close| close + 1)
}

/// The stop of an abbreviation: '1 tbsp. fat'.
fn skip_stop(tokens: &[Token], from: usize, to: usize) -> usize {
    let stop = tokens.get(from).is_some_and(|t| t.sign() == Some('.') && from + 1 < to);
    from + usize::from(stop)
}

/// Whether an article or a number begins here.
pub(super) fn is_determiner(token: &Token) -> bool {
    is_article(token)
        || token.speech.is(Speech::ARTICLE)
        || number(std::slice::from_ref(token), 0).is_some()
        || token.is_any(&["remaining", "half", "some", "another", "all", "both", "plenty"])
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::token::tokens;

    fn share(share: Share) -> String {
        match share {
            Share::Whole => "whole".to_owned(),
            Share::Rest => "rest".to_owned(),
            Share::Some => "some".to_owned(),
            Share::Fraction(part) => format!("part {part}"),
            Share::Measure(q) => format!("{} {}", q.amount, q.unit.map_or("-", Unit::name)),
        }
    }

    #[test]
    fn how_much_of_what() {
        for (text, expected) in [
            ("the onions", "whole: onions"),
            ("half the butter", "part 1/2: butter"),
            ("half of the butter", "part 1/2: butter"),
            ("the remaining oil", "rest: oil"),
            ("remaining 6 cups broth", "rest: broth"),
            ("the rest of the olives", "rest: olives"),
            ("1 tablespoon of the oil", "1 tablespoon: oil"),
            ("2 bay leaves", "2 -: bay leaves"),
            ("4 of the garlic cloves", "4 -: garlic cloves"),
            ("2 cloves of garlic", "2 clove: garlic"),
            ("a third of the stock", "part 1/3: stock"),
            ("one-third of meat", "part 1/3: meat"),
            ("most of the seeds", "part 3/4: seeds"),
            ("some of the beans", "some: beans"),
            ("a few of the potatoes", "some: potatoes"),
            ("plenty of pepper", "some: pepper"),
            ("a dollop of soured cream", "1 -: soured cream"),
            ("juice of 1 orange", "whole: orange juice"),
            ("slices of rye bread", "whole: rye bread"),
            ("a good pinch of saffron threads", "1 pinch: saffron threads"),
            ("them", "whole: them"),
            ("all of it", "whole: it"),
            ("nearly all the milk", "whole: milk"),
            ("excess fat", "whole: fat"),
        ] {
            let found = tokens(text, Span::new(0, text.len()));
            let shown =
                mention(&found, 0, found.len()).map(|(m, _)| format!("{}: {}", share(m.share), m.words.join(" ")));
            assert_eq!(shown.as_deref(), Some(expected), "{text}");
        }
    }
}
