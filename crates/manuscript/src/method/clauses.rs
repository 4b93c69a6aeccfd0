//! Steps into sentences, sentences into clauses: each clause is led by a verb that gives an order, by a participle
//! that says that work is to be done, or by nothing at all ('wine in', '25 minutes').

use super::heads::head;
use super::words::Inflection;
use crate::speech::{Speech, speech};
use crate::token::{Token, at, speech_at};

/// How a clause gives its order.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Lead {
    /// 'add the onions'.
    Order,
    /// 'adding the onions'.
    Doing,
    /// 'onions cut into pieces': what stands before it is worked on, and then goes where the clause before says.
    Done,
    /// 'it should be removed'.
    Passive,
    /// 'wine in'.
    GoesIn,
    /// 'lid on' at the beginning.
    Lid,
    /// No verb at all.
    Bare,
}

/// A clause of a step, as indices into its tokens.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(super) struct Clause {
    pub(super) lead: Lead,
    /// The verb in its base form; empty when there is none.
    pub(super) verb: &'static str,
    pub(super) form: Inflection,
    /// The word that is the verb.
    pub(super) at: usize,
    /// The words before the order: 'in a large pot', 'when it boils'. Only the first clause of a sentence has them.
    pub(super) before: (usize, usize),
    /// What stands between 'let' and its verb, or before a participle.
    pub(super) object: (usize, usize),
    /// What follows the verb.
    pub(super) body: (usize, usize),
    /// The first word that belongs to the order.
    pub(super) from: usize,
    /// It is the first clause of its sentence.
    pub(super) first: bool,
}

/// The tokens of a sentence, and whether it goes on from the one before ('; then …').
pub(super) fn sentences(tokens: &[Token]) -> Vec<(usize, usize)> {
    let mut found = Vec::new();
    let mut from = 0;
    let mut note = false;
    for (index, token) in tokens.iter().enumerate() {
        match token.sign() {
            Some('[') => {
                push(&mut found, from, index);
                note = true;
            }
            Some(']') => {
                note = false;
                from = index + 1;
            }
            Some('.' | '!' | '?') if !note && crate::sentence::ends(tokens, index) => {
                push(&mut found, from, index);
                from = index + 1;
            }
            Some(';' | '•' | '▢') if !note => {
                push(&mut found, from, index);
                from = index + 1;
            }
            _ => {}
        }
    }
    if !note {
        push(&mut found, from, tokens.len());
    }
    found
}

fn push(found: &mut Vec<(usize, usize)>, from: usize, to: usize) {
    if from < to {
        found.push((from, to));
    }
}

/// What is known while a sentence is gone through.
#[derive(Default)]
pub(super) struct Going {
    /// Inside 'until …'.
    pub(super) cue: bool,
    /// Inside 'when …', 'so that …'.
    pub(super) side: bool,
    /// Inside 'when …', 'before …', after which an order may follow without a comma.
    pub(super) when: bool,
    /// The sentence opened with a preposition: 'with wet hands roll …'.
    pub(super) led: bool,
    /// The last verb was a participle.
    pub(super) after_done: bool,
}

/// The clauses of a sentence. `kept` says which tokens are part of a name of the list, so that 'brown' of brown sugar is
/// no order.
pub(super) fn clauses(tokens: &[Token], sentence: (usize, usize), kept: &[bool]) -> Vec<Clause> {
    let (start, end) = sentence;
    let mut heads: Vec<Clause> = Vec::new();
    let first = tokens.get(start).map_or("", |token| token.lower.as_str());
    let mut going = Going {
        led: speech(first).is(Speech::PREPOSITION) || first == "using",
        ..Going::default()
    };
    let mut index = start;
    while index < end {
        let head = (!kept.get(index).copied().unwrap_or(false))
            .then(|| head(tokens, sentence, index, &going, heads.last()))
            .flatten();
        if let Some(head) = head {
            going = Going {
                after_done: head.lead == Lead::Done,
                ..Going::default()
            };
            index = head.body.0.max(index + 1);
            let floor = heads.last().map_or(start, |last| last.body.0);
            heads.push(with_adverbs(tokens, head, floor));
            continue;
        }
        step(tokens, index, &mut going);
        index += 1;
    }
    if heads.is_empty() {
        return bare_parts(tokens, sentence);
    }
    bounded(heads, sentence)
}

/// Words without a verb, apart where 'then' parts them.
fn bare_parts(tokens: &[Token], (start, end): (usize, usize)) -> Vec<Clause> {
    let mut parts = Vec::new();
    let mut from = start;
    for index in start..end {
        if at(tokens, index) == "then" && index > from {
            parts.push(bare((from, index)));
            from = index + 1;
        }
    }
    if from < end {
        parts.push(bare((from, end)));
    }
    parts
}

/// 'gently fry': the adverb belongs to the verb after it.
fn with_adverbs(tokens: &[Token], mut head: Clause, floor: usize) -> Clause {
    if matches!(head.lead, Lead::Order | Lead::Doing) {
        while head.from > floor
            && speech_at(tokens, head.from - 1).is(Speech::ADVERB)
            && at(tokens, head.from - 1) != "then"
        {
            head.from -= 1;
        }
    }
    head
}

/// Follows 'until' and side clauses.
fn step(tokens: &[Token], index: usize, going: &mut Going) {
    let Some(token) = tokens.get(index) else { return };
    match token.lower.as_str() {
        "until" | "till" | "til" => going.cue = true,
        "then" => *going = Going::default(),
        // 'the night before and leave in the fridge': nothing follows that is said to come later.
        "before" if ends_here(tokens, index + 1) => {}
        // 'the moment they colour tip in the rest'.
        "moment" | "minute" if at(tokens, index.wrapping_sub(1)) == "the" => (going.side, going.when) = (true, true),
        "when" | "while" | "once" | "as" | "if" | "after" | "before" => (going.side, going.when) = (true, true),
        word if speech(word).is(Speech::CLAUSE) => going.side = true,
        _ if token
            .sign()
            .is_some_and(|sign| matches!(sign, ',' | '(' | ')' | ':' | ';')) =>
        {
            *going = Going::default()
        }
        _ => {}
    }
}

/// A sign, 'and' or nothing stands here.
fn ends_here(tokens: &[Token], index: usize) -> bool {
    tokens
        .get(index)
        .is_none_or(|token| token.sign().is_some() || token.speech.is(Speech::JOINER))
}

/// A clause without a verb.
pub(super) fn bare((start, end): (usize, usize)) -> Clause {
    Clause {
        lead: Lead::Bare,
        verb: "",
        form: Inflection::Base,
        at: start,
        before: (start, start),
        object: (start, start),
        body: (start, end),
        from: start,
        first: true,
    }
}

/// Gives each clause its end: where the next one begins.
fn bounded(mut heads: Vec<Clause>, (start, end): (usize, usize)) -> Vec<Clause> {
    for index in 0..heads.len() {
        let stop = heads.get(index + 1).map_or(end, |next| next.from);
        heads[index].body.1 = stop.max(heads[index].body.0);
        heads[index].first = index == 0;
    }
    heads[0].before = (start, heads[0].from);
    heads
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Span;
    use crate::token::tokens;

    /// The verbs of a text, '/' between sentences.
    fn verbs(text: &str) -> String {
        let found = tokens(text, Span::new(0, text.len()));
        let kept = vec![false; found.len()];
        let told = sentences(&found).into_iter().map(|sentence| {
            let clauses = clauses(&found, sentence, &kept);
            clauses
                .iter()
                .map(|c| if c.verb.is_empty() { "-" } else { c.verb })
                .collect::<Vec<_>>()
                .join(" ")
        });
        told.collect::<Vec<_>>().join(" / ")
    }

    #[test]
    fn orders_are_told_from_nouns_and_cues() {
        for (text, expected) in [
            ("Chop the leeks and add them to the pan.", "chop add"),
            ("Cover, and cook slowly until soft and brown.", "cover cook"),
            ("Season with salt and pepper.", "season"),
            ("Salt the water, then boil the beans.", "salt boil"),
            ("Fry until the onions soften and brown, then drain.", "fry drain"),
            ("Do not stir.", "do"),
            ("When it boils, add the rice", "add"),
            ("In a wide pan, heat the oil", "heat"),
            ("Let it bubble for a minute", "bubble"),
            ("Leave to soak overnight", "soak"),
            ("Add the flour, stirring, and whisk in the milk", "add whisk"),
            ("Pare and slice the turnips; drain", "pare slice / drain"),
            ("Add 1 tbsp. oil", "add"),
            ("Mix the flour diluted with water", "mix dilute"),
            ("Wine in, then scrape the tin", "add scrape"),
            ("Lid on, 20 minutes", "cover"),
            ("It should be skimmed", "skim"),
            ("A slice of bread and butter", "-"),
        ] {
            assert_eq!(verbs(text), expected, "{text}");
        }
    }
}
