//! Turns of phrase that give an order otherwise than by a verb at the front: 'let it boil', 'in go the beans', 'make a
//! paste of', 'lid on', 'wine in'.

use super::clauses::{Clause, Lead};
use super::heads::{Edge, edge};
use super::participles::food_word;
use super::words::{self, Inflection};
use crate::lexicon::Class;
use crate::speech::{Speech, speech};
use crate::token::{Token, at, speech_at};

/// 'let it boil', 'leave to soak', 'keep slowly stirring': the verb inside.
pub(super) fn let_inner(tokens: &[Token], sentence: (usize, usize), index: usize, outer: &str) -> Option<Clause> {
    let doing = matches!(outer, "keep" | "continue");
    let reach = if puts_to(outer) { 16 } else { 9 };
    for inner in index + 1..sentence.1.min(index + reach) {
        let token = tokens.get(inner)?;
        if token.sign().is_some() || token.speech.is(Speech::CLAUSE) {
            return None;
        }
        let Some((verb, form)) = words::verb(&token.lower) else {
            continue;
        };
        // 'use a blender to blend': the tool is no food. 'Put the peas to soak'.
        if (outer == "use" || puts_to(outer)) && at(tokens, inner - 1) != "to" {
            continue;
        }
        let wanted = if doing {
            form == Inflection::Ing
        } else {
            form == Inflection::Base
        };
        let before = at(tokens, inner - 1);
        let led = before == "to"
            || speech(before).is(Speech::PRONOUN)
            || speech(before).is(Speech::ADVERB)
            || inner == index + 1
            || food_word(before)
            || speech(before).is(Speech::POT.or(Speech::ALL))
            || words::vessel(before).is_some();
        let article = speech(before).is(Speech::ARTICLE);
        if wanted && led && !article && words::entry(verb).is_some_and(|entry| !entry.marks.lets) {
            let object_end = if before == "to" { inner - 1 } else { inner };
            return Some(Clause {
                lead: Lead::Order,
                verb,
                form: Inflection::Base,
                at: inner,
                before: (index, index),
                object: if outer == "use" {
                    (inner, inner)
                } else {
                    (index + 1, object_end.max(index + 1))
                },
                body: (inner + 1, inner + 1),
                from: index,
                first: false,
            });
        }
    }
    None
}

/// Verbs that put something to another's work: 'set the beans to boil'.
pub(super) fn puts_to(verb: &str) -> bool {
    matches!(verb, "put" | "set" | "place" | "stand" | "hang" | "lay")
}

/// 'Now in go the wine and the tomatoes', 'in with the stock': what goes in is told after it.
pub(super) fn in_goes(tokens: &[Token], sentence: (usize, usize), index: usize) -> Option<Clause> {
    if at(tokens, index) != "in" || !matches!(at(tokens, index + 1), "go" | "goes" | "with") {
        return None;
    }
    let next = index + 2;
    let object = tokens
        .get(next)
        .filter(|_| next < sentence.1)
        .is_some_and(|t| super::nouns::is_determiner(t) || t.class.is(Class::FOOD) || t.speech.is(Speech::ALL));
    edge(tokens, sentence.0, index).filter(|_| object)?;
    let (verb, form) = words::verb("add")?;
    Some(told(Lead::Order, verb, form, index, next))
}

/// 'Salt and pepper to taste', 'taste, then salt and pepper as needed'.
fn seasoning_end(tokens: &[Token], index: usize, end: usize) -> Option<usize> {
    let small = |t: &Token| t.speech.is(Speech::JOINER) || matches!(t.sign(), Some(',' | '&' | '+'));
    let stop = (index..end.min(index + SEASONINGS))
        .find(|at| tokens.get(*at).is_none_or(|t| !(small(t) || food_word(&t.lower))))?;
    let says = |first: &str, second: &str| at(tokens, stop) == first && at(tokens, stop + 1) == second;
    (stop > index && (says("to", "taste") || says("as", "needed") || says("if", "needed"))).then_some(stop)
}

/// More words than the seasonings that are named in one breath.
const SEASONINGS: usize = 8;

/// Seasonings at the beginning, with 'to taste' and no verb.
pub(super) fn seasons(tokens: &[Token], sentence: (usize, usize), index: usize) -> Option<Clause> {
    let begins = index == sentence.0 || at(tokens, index - 1) == "then";
    let food = tokens.get(index).is_some_and(|token| token.class.is(Class::FOOD));
    let stop = seasoning_end(tokens, index, sentence.1).filter(|_| begins && food)?;
    let (verb, form) = words::verb("season")?;
    Some(Clause {
        object: (index, stop),
        ..told(Lead::GoesIn, verb, form, stop - 1, stop)
    })
}

/// 'Make a forcemeat of the crumbs, the bacon and an egg': they are mixed.
pub(super) fn makes(tokens: &[Token], sentence: (usize, usize), index: usize) -> Option<Clause> {
    if at(tokens, index) != "make" || edge(tokens, sentence.0, index).is_none() {
        return None;
    }
    let of = (index + 2..sentence.1.min(index + 6)).find(|i| matches!(at(tokens, *i), "of" | "from" | "with"))?;
    let named = speech_at(tokens, index + 1).is(Speech::ARTICLE)
        && of > index + 2
        && tokens.get(index + 2..of)?.iter().all(Token::is_word);
    let foods = tokens
        .get(of + 1)
        .filter(|_| of + 1 < sentence.1)
        .is_some_and(|t| super::nouns::is_determiner(t) || t.class.is(Class::FOOD));
    let (verb, form) = words::verb("mix").filter(|_| named && foods)?;
    Some(told(Lead::Order, verb, form, index, of + 1))
}

/// 'where it must simmer four hours': what is to happen to it there.
pub(super) fn must(tokens: &[Token], sentence: (usize, usize), index: usize) -> Option<Clause> {
    let modal = index.checked_sub(1).filter(|modal| *modal > sentence.0)?;
    let modal = if speech_at(tokens, modal).is(Speech::ADVERB) {
        modal.checked_sub(1)?
    } else {
        modal
    };
    if !matches!(at(tokens, modal), "must" | "should" | "will") {
        return None;
    }
    let (verb, form) = words::verb(at(tokens, index)).filter(|(_, form)| *form == Inflection::Base)?;
    let subject = modal.checked_sub(1)?;
    let place = subject.checked_sub(1).filter(|place| *place >= sentence.0);
    let it = matches!(at(tokens, subject), "it" | "they" | "this");
    let led = place.is_some_and(|place| {
        at(tokens, place) == "where" || (it && edge(tokens, sentence.0, subject) == Some(Edge::Start))
    });
    let cooks = words::entry(verb)?.rows.last().is_some_and(
        |row| matches!(row.meaning, words::Meaning::Do(verb) if super::takes::cooks(verb) || verb == crate::Verb::Rest),
    );
    let from = place.filter(|_| it && led && cooks)?;
    Some(Clause {
        from,
        ..told(Lead::Order, verb, form, index, index + 1)
    })
}

/// A clause whose words begin after the verb.
pub(super) fn told(lead: Lead, verb: &'static str, form: Inflection, index: usize, body: usize) -> Clause {
    Clause {
        lead,
        verb,
        form,
        at: index,
        before: (index, index),
        object: (index, index),
        body: (body, body),
        from: index,
        first: false,
    }
}

/// 'Lid on, heat down': an order only where no other stands before it.
pub(super) fn lid(tokens: &[Token], sentence: (usize, usize), index: usize, last: Option<&Clause>) -> Option<Clause> {
    let starts = at(tokens, index) == "lid" && last.is_none() && edge(tokens, sentence.0, index) == Some(Edge::Start);
    let state = at(tokens, index + 1);
    let (verb, form) = match state {
        "on" | "back" => words::verb("cover")?,
        "off" => words::verb("uncover")?,
        word if speech(word).is(Speech::PARTLY) => words::verb("half-cover")?,
        _ => return None,
    };
    let next = index + 2;
    starts.then_some(Clause {
        lead: Lead::Lid,
        verb,
        form,
        at: index,
        before: (index, index),
        object: (index, index),
        body: (next, next),
        from: index,
        first: false,
    })
}

/// 'Wine in', 'then the flour in': a food, then 'in' and nothing more.
pub(super) fn goes_in(
    tokens: &[Token],
    sentence: (usize, usize),
    index: usize,
    last: Option<&Clause>,
) -> Option<Clause> {
    let ends = tokens
        .get(index + 1)
        .filter(|_| index + 1 < sentence.1)
        .is_none_or(|t| t.sign().is_some());
    if at(tokens, index) != "in" || !ends {
        return None;
    }
    let floor = last.map_or(sentence.0, |clause| clause.body.0);
    let mut from = index;
    while from > floor && tokens.get(from - 1).is_some_and(|t| t.is_word() && !t.is("then")) {
        from -= 1;
    }
    let led = from > sentence.0 && from == floor && last.is_some();
    if led || from == index || !food_word(at(tokens, index - 1)) || index - from > 5 {
        return None;
    }
    // 'Stock, milk, bay in': all that stands before it, when it is foods from the start.
    let listed = tokens.get(sentence.0..from).is_some_and(|ahead| {
        ahead.iter().all(|t| {
            matches!(t.sign(), Some(',' | '+' | '&'))
                || food_word(&t.lower)
                || t.speech.is(Speech::JOINER)
                || t.speech.is(Speech::ARTICLE)
        })
    });
    if last.is_none() && listed {
        from = sentence.0;
    }
    let (verb, form) = words::verb("add")?;
    Some(Clause {
        lead: Lead::GoesIn,
        verb,
        form,
        at: index,
        before: (from, from),
        object: (from, index),
        body: (index + 1, index + 1),
        from,
        first: false,
    })
}
