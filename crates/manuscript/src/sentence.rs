//! Where a sentence ends: at a stop before a capital, and on pages typed in small letters at any stop that does not
//! belong to an abbreviation.

use potwright_measure::Unit;

use crate::lexicon::{Class, verb};
use crate::token::{Gap, Token};

/// Abbreviated times: a stop behind them ends the sentence only when what follows can begin one.
const TIMES: &str = "min mins hr hrs sec secs h";

/// Words that begin a sentence of a method when they stand behind a stop.
const OPENERS: &str = "then now next once when while if in on into to with after meanwhile lid the it this it's you \
    they let first leave same both all keep don't dont put if for";

/// Whether the sign at `at` ends a sentence.
pub(crate) fn ends(tokens: &[Token], at: usize) -> bool {
    let Some(sign) = tokens
        .get(at)
        .and_then(Token::sign)
        .filter(|sign| matches!(sign, '.' | '!' | '?'))
    else {
        return false;
    };
    let Some(next) = tokens.get(at + 1) else { return true };
    let capital = next.text.starts_with(char::is_uppercase);
    let before = at.checked_sub(1).and_then(|before| tokens.get(before));
    if sign != '.' {
        return true;
    }
    if next.gap == Gap::None {
        // 'until soft.Add': the space was forgotten.
        let words = before.is_some_and(|t| t.is_word() && t.text.len() > 2) && next.text.len() > 2;
        return (words && capital) || next.sign().is_some_and(|sign| matches!(sign, ')' | ']'));
    }
    let Some(before) = before else { return true };
    if before.is_one_of(TIMES) {
        return capital || next.sign().is_some() || opens(next);
    }
    if abbreviated(before) {
        // 'chop the veg. fry it' against '1 c. brown sugar'.
        return opens(next) && (next.class == Class::default() || capital && !next.class.is(Class::FOOD));
    }
    true
}

/// 'tbsp', 'approx', 'lg': a stop behind it belongs to it.
fn abbreviated(token: &Token) -> bool {
    let unit = Unit::from_spelling(token.text);
    let short = unit.is_some_and(|unit| !token.is(unit.name()) && !token.is(unit.plural()) && token.text.len() < 6);
    let whole = token.is_any(&[
        "tin", "tins", "pack", "packs", "stem", "stems", "pouch", "spoon", "shake", "curl",
    ]);
    (short && !whole) || token.class.is(Class::ABBREVIATED) || (token.is_word() && token.text.len() == 1)
}

fn opens(token: &Token) -> bool {
    verb(&token.lower) || token.is_one_of(OPENERS)
}

/// The sentences of these tokens as (first, one after the last), the sign at the end left out.
pub(crate) fn sentences(tokens: &[Token]) -> Vec<(usize, usize)> {
    let mut found = Vec::new();
    let mut from = 0;
    for at in 0..tokens.len() {
        if ends(tokens, at) {
            found.push((from, at));
            from = at + 1;
        }
    }
    found.push((from, tokens.len()));
    found.retain(|(from, to)| from < to);
    found
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Span;
    use crate::token::tokens;

    #[test]
    fn stops_end_sentences_in_capitals_and_in_small_letters() {
        for (text, expected) in [
            ("Boil the rice. Drain it.", 2),
            ("boil the rice. drain it. cool", 3),
            ("fry 5 mins. take it out. add stock", 3),
            ("simmer 2 hrs. more if tough", 1),
            ("Add 10 oz. peas and 1 tbsp. oil", 1),
            ("add 1 lg. onion, 2 c. water, approx. a pint", 1),
            ("Add 2 oz. Parmesan. Serve!", 2),
            ("Weigh out 3 lb. Boil them.", 2),
            ("Cook at 1.5 bar until soft.Add the beans", 2),
            ("is it done? poke it!! eat", 3),
            ("chop the veg. fry it in 1 tbsp. brown butter", 2),
        ] {
            let found = tokens(text, Span::new(0, text.len()));
            assert_eq!(sentences(&found).len(), expected, "{text}");
        }
    }
}
