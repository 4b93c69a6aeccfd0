//! 'Peel and slice the turnips': orders that share the words after the last of them.

use super::clauses::{Clause, Lead};
use super::takes;
use super::words::{Meaning, entry};
use crate::Verb;
use crate::speech::Speech;
use crate::token::Token;

/// The clause whose object this one shares, over clauses that share it too.
pub(super) fn sharing<'c>(tokens: &[Token], clauses: &'c [Clause], at: usize) -> Option<&'c Clause> {
    let mut index = at;
    while shares_object(tokens, clauses.get(index)?, clauses.get(index + 1)?) {
        index += 1;
        let (from, to) = clauses.get(index)?.body;
        if tokens
            .get(from..to)?
            .iter()
            .any(|token| token.is_word() && !token.speech.is(Speech::JOINER))
        {
            return clauses.get(index);
        }
    }
    None
}

pub(super) fn same_work(one: &Clause, other: &Clause) -> bool {
    let last = |clause: &Clause| {
        entry(clause.verb)
            .and_then(|entry| entry.rows.last())
            .map(|row| row.meaning)
    };
    last(one).is_some() && last(one) == last(other)
}

/// 'Peel and slice the turnips': the first order has no words of its own and is done to what the second names.
fn shares_object(tokens: &[Token], clause: &Clause, next: &Clause) -> bool {
    let (from, to) = clause.body;
    let empty = tokens.get(from..to).unwrap_or_default().iter().all(|token| {
        token.speech.is(Speech::JOINER) || token.speech.is(Speech::ADVERB) || matches!(token.sign(), Some(',' | '/'))
    });
    let does = |verb: &str, test: fn(Verb) -> bool| {
        let last = entry(verb).and_then(|entry| entry.rows.last());
        last.is_some_and(|row| matches!(row.meaning, Meaning::Do(verb) if test(verb)))
    };
    let works = does(clause.verb, |verb| {
        takes::by_hand(verb) || matches!(verb, Verb::Mix | Verb::Sift | Verb::Toast | Verb::Whisk)
    });
    let goes_on = does(next.verb, |verb| {
        let apart = matches!(verb, Verb::Serve | Verb::Season | Verb::SetAside | Verb::Discard);
        // 'lift out, chop, and strain the liquid': not the liquid is chopped.
        let liquid = matches!(
            verb,
            Verb::Strain | Verb::Skim | Verb::Reduce | Verb::Thicken | Verb::Deglaze
        );
        !takes::puts(verb) && !apart && !liquid
    });
    clause.lead == Lead::Order && next.lead == Lead::Order && empty && works && goes_on
}
