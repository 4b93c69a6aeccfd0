//! Which words of a sentence lead a clause: orders told from nouns and adjectives, participles that are work to do,
//! 'wine in', 'lid on'.

use super::clauses::{Clause, Going, Lead};
use super::words::{self, Inflection};
use crate::lexicon::{Class, class, singular};
use crate::speech::{Speech, speech};
use crate::token::{Token, at, speech_at};

/// What stands before a word that could begin an order.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Edge {
    /// The beginning of the sentence.
    Start,
    /// A sign.
    Sign,
    /// 'and', 'or', 'then'.
    Joined,
}

pub(super) fn head(
    tokens: &[Token],
    sentence: (usize, usize),
    index: usize,
    going: &Going,
    last: Option<&Clause>,
) -> Option<Clause> {
    let token = tokens.get(index)?;
    let special = lid(tokens, sentence, index, last)
        .or_else(|| goes_in(tokens, sentence, index, last))
        .or_else(|| in_goes(tokens, sentence, index))
        .or_else(|| makes(tokens, sentence, index))
        .or_else(|| must(tokens, sentence, index));
    if special.is_some() {
        return special;
    }
    let pair = in_two_words(tokens, index, sentence.1);
    let (verb, form) = pair.or_else(|| words::verb(&token.lower))?;
    let entry = words::entry(verb)?;
    let length = 1 + usize::from(pair.is_some());
    let edge = edge(tokens, sentence.0, index);
    let found = |lead, from: usize, at: usize, object: (usize, usize)| {
        Some(Clause {
            lead,
            verb,
            form,
            at,
            before: (from, from),
            object,
            body: (at + length, at + length),
            from,
            first: false,
        })
    };
    match form {
        Inflection::Base if edge.is_some() => {
            // 'Add the crackers, split and soaked': after what goes in, a word that is its own past tells of work.
            let split = self_past(&token.lower) && edge == Some(Edge::Sign) && last.is_some_and(puts);
            let object = if split {
                worked_on(tokens, sentence, index)
            } else {
                None
            };
            if let Some(object) = object {
                return found(Lead::Done, object.0, index, object);
            }
            let order = pair.is_some() && !going.side && !going.cue;
            if !order && !is_order(tokens, sentence, index, going, edge?, last.is_none()) {
                return past_like(tokens, sentence, index, going)
                    .and_then(|object| found(Lead::Done, object.0, index, object));
            }
            let inner = if entry.marks.lets || puts_to(verb) {
                let_inner(tokens, sentence, index, verb)
            } else {
                None
            };
            if inner.is_some() {
                return inner;
            }
            found(Lead::Order, index, index, (index, index))
        }
        Inflection::Base
            if after_side(tokens, sentence, index, going) || (last.is_none() && after_day(tokens, index)) =>
        {
            found(Lead::Order, index, index, (index, index))
        }
        Inflection::Base => {
            past_like(tokens, sentence, index, going).and_then(|object| found(Lead::Done, object.0, index, object))
        }
        Inflection::Ing => {
            let while_before = index > sentence.0 && at(tokens, index - 1) == "while";
            let placed = edge.is_some() || while_before;
            // 'add sausage & seasoning' names a food.
            let thing = token.class.is(Class::FOOD) && !tokens.get(index + 1).is_some_and(super::nouns::is_determiner);
            let works = (entry.marks.ing && !thing) || (entry.marks.ing_in && at(tokens, index + 1) == "in");
            (placed && works && !going.cue)
                .then(|| found(Lead::Doing, index, index, (index, index)))
                .flatten()
        }
        Inflection::Past => {
            if !entry.marks.past || going.cue {
                return None;
            }
            if let Some(subject) = passive(tokens, sentence, index) {
                return found(Lead::Passive, subject.0, index, subject);
            }
            if going.side && !going.after_done {
                return None;
            }
            let second = going.after_done && edge == Some(Edge::Joined);
            let object = if second {
                Some((index, index))
            } else {
                worked_on(tokens, sentence, index)
            };
            object.and_then(|object| found(Lead::Done, object.0, index, object))
        }
    }
}

/// 'stir fry', 'pressure cook', 'dry roast': the word before says how.
fn in_two_words(tokens: &[Token], index: usize, end: usize) -> Option<(&'static str, Inflection)> {
    const HOW: &str = "stir pressure slow deep shallow dry pan flash blast hard soft spit oven hand par";
    let second = tokens
        .get(index + 1)
        .filter(|_| index + 1 < end && tokens[index].is_one_of(HOW))?;
    let whole = words::verb(&format!("{}-{}", at(tokens, index), second.lower)).filter(|(base, _)| base.contains('-'));
    let base = |found: &(&'static str, Inflection)| {
        let last = words::entry(found.0).and_then(|entry| entry.rows.last());
        let heats = last.is_some_and(|row| {
            matches!(row.meaning, words::Meaning::Do(verb) if super::takes::cooks(verb) || matches!(verb, crate::Verb::Chill | crate::Verb::Freeze | crate::Verb::Puree))
        });
        found.1 == Inflection::Base && heats
    };
    whole.or_else(|| words::verb(&second.lower)).filter(base)
}

/// 'When the broth boils tip in the rice': an order right after a side clause, without a comma.
fn after_side(tokens: &[Token], sentence: (usize, usize), index: usize, going: &Going) -> bool {
    let before = index
        .checked_sub(1)
        .filter(|before| *before > sentence.0)
        .map_or("", |before| at(tokens, before));
    let free = !before.is_empty()
        && before != "to"
        && !speech(before).is(Speech::ARTICLE
            .or(Speech::FINITE)
            .or(Speech::PERSON)
            .or(Speech::NEVER)
            .or(Speech::JOINER)
            .or(Speech::ADVERB));
    let next = |ahead: usize| tokens.get(index + ahead).filter(|_| index + ahead < sentence.1);
    let object = |ahead: usize| {
        next(ahead).is_some_and(|t| super::nouns::is_determiner(t) || matches!(t.lower.as_str(), "it" | "them"))
    };
    let particle = next(1).is_some_and(|t| t.is_any(&["in", "on", "over", "off", "out", "up", "into"]));
    let marks = words::entry(at(tokens, index))
        .map(|entry| entry.marks)
        .unwrap_or_default();
    let food = going.led && next(1).is_some_and(|t| t.class.is(Class::FOOD)) && food_word(before);
    (going.when || going.led)
        && !going.cue
        && free
        && !marks.food
        && !marks.describes
        && (object(1) || food || (particle && object(2)) || next(1).is_some_and(|t| t.is_any(&["from", "off", "into"])))
}

/// 'In the morning drain'.
fn after_day(tokens: &[Token], index: usize) -> bool {
    let before = index.checked_sub(1).map_or("", |before| at(tokens, before));
    matches!(before, "morning" | "day" | "night" | "evening" | "meanwhile")
}

/// More adverbs than a sentence has in a row: the look back is bounded, so that reading stays linear.
const ADVERBS: usize = 12;

/// More words than the foods of one participle have.
const WORKED_ON: usize = 60;

/// The edge before a token, over adverbs; `None` when it stands inside a phrase.
fn edge(tokens: &[Token], start: usize, index: usize) -> Option<Edge> {
    let mut joined = false;
    let mut before = index;
    while index - before <= ADVERBS {
        if before <= start {
            return Some(if joined { Edge::Joined } else { Edge::Start });
        }
        let token = tokens.get(before - 1)?;
        // The number of a step.
        if before - 1 == start && token.number().is_some() {
            return Some(Edge::Start);
        }
        if token.speech.is(Speech::JOINER) || matches!(token.sign(), Some('&' | '/' | '+')) {
            return Some(Edge::Joined);
        }
        // 'and in it soften the onions', 'add to it'.
        let there = token.speech.is(Speech::PRONOUN)
            && before > start + 1
            && tokens
                .get(before - 2)
                .is_some_and(|t| t.is_any(&["in", "into", "to", "on", "over", "with"]));
        if there {
            before -= 2;
            continue;
        }
        if token.is("then") || (token.is("half") && at(tokens, before) == "cover") {
            joined |= token.is("then");
        } else if !token.speech.is(Speech::ADVERB) {
            let sign = token
                .sign()
                .is_some_and(|sign| !matches!(sign, '-' | '°' | '.' | '%' | '\''));
            let dash = token.is_dash() && token.gap != crate::token::Gap::None;
            return (sign || dash).then_some(if joined { Edge::Joined } else { Edge::Sign });
        }
        before -= 1;
    }
    None
}

/// Whether a base form at an edge is an order and not a noun, an adjective or part of a cue.
fn is_order(tokens: &[Token], sentence: (usize, usize), index: usize, going: &Going, edge: Edge, first: bool) -> bool {
    let word = at(tokens, index);
    let base = words::verb(word).map_or(word, |(base, _)| base);
    let Some(marks) = words::entry(base).map(|entry| entry.marks) else {
        return false;
    };
    let next = tokens.get(index + 1).filter(|_| index + 1 < sentence.1);
    const NO_ORDER: Speech = Speech::NEVER.or(Speech::FINITE).or(Speech::PERSON);
    if (index > sentence.0 && speech_at(tokens, index - 1).is(NO_ORDER)) || going.side {
        return false;
    }
    let object = next.is_some_and(|t| super::nouns::is_determiner(t) || t.speech.is(Speech::PRONOUN));
    let food_next = next.is_some_and(|t| t.class.is(Class::FOOD));
    if going.cue && (marks.in_cue || marks.describes || marks.noun) {
        return object || (food_next && !marks.describes);
    }
    // 'heat down' is a state, 'heat up the pan' an order.
    let last_word = tokens
        .get(index + 2)
        .filter(|_| index + 2 < sentence.1)
        .is_none_or(|t| t.sign().is_some());
    if word == "heat" && next.is_some_and(|t| t.is("down") || (t.is("up") && last_word)) {
        return false;
    }
    // 'skin side down', 'slices of bread', 'salt is'.
    let thing = |t: &Token| t.speech.is(Speech::FINITE) || t.is("of") || (marks.noun && t.is_any(&["side", "sides"]));
    if next.is_some_and(thing) {
        return false;
    }
    if marks.food {
        let surface = |ahead: usize| {
            tokens
                .get(index + ahead)
                .is_some_and(|t| t.speech.is(Speech::PLAIN) || t.is("surface"))
        };
        let vessel = super::vessels::vessel(tokens, index + 1, sentence.1.min(index + 6)).is_some()
            || surface(1)
            || (next.is_some_and(Token::is_word) && surface(2));
        let time = super::phrases::minutes(tokens, index + 1).is_some();
        return (object || vessel) && !time;
    }
    if class(word).is(Class::FOOD) && marks.noun && edge == Edge::Joined && !first {
        // 'drain, reserve the liquor, and chop'.
        let ends = |at: usize| {
            tokens
                .get(at)
                .filter(|_| at < sentence.1)
                .is_none_or(|t| t.sign().is_some())
        };
        let fine = next.is_some_and(|t| t.class.is(Class::MANNER | Class::SIZE) || t.is_any(&["fine", "small"]));
        let last = ends(index + 1) || (fine && ends(index + 2));
        let listed = index >= sentence.0 + 2
            && speech_at(tokens, index - 1).is(Speech::JOINER)
            && (at(tokens, index - 2) == "," || in_place(tokens, sentence.0, index - 1));
        return object
            || (last && listed)
            || next.is_some_and(|t| {
                t.is_any(&[
                    "out", "off", "up", "into", "in", "on", "onto", "over", "for", "with", "until", "till",
                ]) || t.number().is_some()
            });
    }
    if marks.describes && edge == Edge::Joined && !object {
        // 'butter and brown sugar', 'cool and dry'.
        let ends = next.is_none_or(|t| t.sign().is_some());
        return !food_next
            && (ends || next.is_some_and(|t| t.speech.is(Speech::PREPOSITION.or(Speech::ADVERB).or(Speech::CLAUSE))));
    }
    true
}

/// 'plunge into cold water and …': what stands before 'and' is the place, so that a verb follows and no second food.
fn in_place(tokens: &[Token], start: usize, joiner: usize) -> bool {
    let near = (start..joiner).rev().take(4);
    near.take_while(|i| tokens[*i].is_word())
        .any(|i| matches!(at(tokens, i), "into" | "in" | "under" | "through" | "onto"))
}

/// Whether the word is a form of a verb of cutting: 'the leek, chopped'.
fn cuts(word: &str) -> bool {
    let rows = words::verb(word)
        .and_then(|(base, _)| words::entry(base))
        .map(|entry| &entry.rows);
    rows.and_then(|rows| rows.last())
        .is_some_and(|row| row.meaning == words::Meaning::Do(crate::Verb::Cut))
}

fn self_past(word: &str) -> bool {
    matches!(word, "cut" | "split" | "spread")
}

/// Whether the clause puts something somewhere.
fn puts(clause: &Clause) -> bool {
    let last = words::entry(clause.verb).and_then(|entry| entry.rows.last());
    let placing = last.is_some_and(|row| matches!(row.meaning, words::Meaning::Do(verb) if super::takes::puts(verb)));
    clause.lead == Lead::Order && placing
}

/// 'crackers split', 'potatoes cut in dice': a base form that is its own past, right after a food.
fn past_like(tokens: &[Token], sentence: (usize, usize), index: usize, going: &Going) -> Option<(usize, usize)> {
    let word = at(tokens, index);
    let both = self_past(word);
    let apart = index > sentence.0 && at(tokens, index - 1) == ",";
    (both && !apart && !going.cue && !going.side)
        .then(|| worked_on(tokens, sentence, index))
        .flatten()
}

/// The foods right before a participle that it works on: 'turnips and onions cut', 'salt, pepper, and mustard mixed'.
fn worked_on(tokens: &[Token], (start, _): (usize, usize), index: usize) -> Option<(usize, usize)> {
    let mut last = index;
    let manner = |word: &str| {
        (speech(word).is(Speech::ADVERB) || speech(word).is(Speech::PARTLY)) && !class(word).is(Class::FOOD)
    };
    while last > start && manner(at(tokens, last - 1)) {
        last -= 1;
    }
    // 'flour, diluted with water'.
    let apart = last > start + 1 && at(tokens, last - 1) == ",";
    let led_on = tokens
        .get(index + 1)
        .is_some_and(|t| t.speech.is(Speech::PREPOSITION) || t.speech.is(Speech::JOINER));
    if apart && (led_on || cuts(at(tokens, index))) {
        last -= 1;
    }
    if last == start || !food_word(at(tokens, last - 1)) {
        return None;
    }
    let follows = tokens.get(index + 1).is_none_or(|t| {
        t.sign().is_some_and(|sign| sign != '-')
            || t.speech.is(Speech::PREPOSITION)
            || t.speech.is(Speech::JOINER)
            || t.speech.is(Speech::ADVERB)
            || t.is_any(&["until", "till", "til"])
    });
    if !follows {
        return None;
    }
    let mut from = last - 1;
    let (mut commas, mut joined) = (0, false);
    while from > start && last - from < WORKED_ON {
        let word = at(tokens, from - 1);
        let comma = at(tokens, from - 1) == ",";
        if speech(word).is(Speech::JOINER) {
            if joined {
                break;
            }
            // 'fat, and bone sawed': a comma before 'and' keeps a pair apart; a list of three or more goes together.
            joined = true;
        } else if comma {
            commas += 1;
        } else if !(food_word(word) || speech(word).is(Speech::ARTICLE) || word == "remaining") {
            break;
        }
        from -= 1;
    }
    let last_alone = apart && joined;
    if last_alone || (joined && commas == 1 && oxford_pair(tokens, from, last)) {
        from = (from..last)
            .rev()
            .find(|i| speech_at(tokens, *i).is(Speech::JOINER))
            .map_or(from, |i| i + 1);
    }
    Some((from, last))
}

/// One comma, directly before 'and'.
fn oxford_pair(tokens: &[Token], from: usize, last: usize) -> bool {
    (from..last).any(|i| at(tokens, i) == "," && speech_at(tokens, i + 1).is(Speech::JOINER))
}

fn food_word(word: &str) -> bool {
    class(word).is(Class::FOOD)
        || speech(word).is(Speech::MADE)
        || class(&singular(word)).is(Class::FOOD)
        || speech(&singular(word)).is(Speech::MADE)
}

/// The subject of 'it should be removed', 'soup can be served'.
fn passive(tokens: &[Token], (start, _): (usize, usize), index: usize) -> Option<(usize, usize)> {
    let mut be = index.checked_sub(1)?;
    while be > start && speech_at(tokens, be).is(Speech::ADVERB) {
        be -= 1;
    }
    let modal = be.checked_sub(1).filter(|modal| *modal >= start)?;
    let must = matches!(at(tokens, modal), "should" | "must" | "to");
    let served = at(tokens, modal) == "can" && at(tokens, index) == "served";
    let told = at(tokens, be) == "be" && (must || served) && at(tokens, start) != "if";
    let aside = (start..modal).any(|i| matches!(at(tokens, i), "case" | "otherwise" | "if" | "may"));
    if !told || aside {
        return None;
    }
    let from = (start..modal)
        .rev()
        .find(|i| tokens.get(*i).is_some_and(|t| t.sign().is_some()))
        .map_or(start, |i| i + 1);
    Some((from, modal))
}

/// 'let it boil', 'leave to soak', 'keep slowly stirring': the verb inside.
fn let_inner(tokens: &[Token], sentence: (usize, usize), index: usize, outer: &str) -> Option<Clause> {
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
            || speech(before).is(Speech::POT)
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
fn puts_to(verb: &str) -> bool {
    matches!(verb, "put" | "set" | "place" | "stand" | "hang" | "lay")
}

/// 'Now in go the wine and the tomatoes', 'in with the stock': what goes in is told after it.
fn in_goes(tokens: &[Token], sentence: (usize, usize), index: usize) -> Option<Clause> {
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

/// 'Make a forcemeat of the crumbs, the bacon and an egg': they are mixed.
fn makes(tokens: &[Token], sentence: (usize, usize), index: usize) -> Option<Clause> {
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
fn must(tokens: &[Token], sentence: (usize, usize), index: usize) -> Option<Clause> {
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
fn told(lead: Lead, verb: &'static str, form: Inflection, index: usize, body: usize) -> Clause {
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
fn lid(tokens: &[Token], sentence: (usize, usize), index: usize, last: Option<&Clause>) -> Option<Clause> {
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
fn goes_in(tokens: &[Token], sentence: (usize, usize), index: usize, last: Option<&Clause>) -> Option<Clause> {
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
