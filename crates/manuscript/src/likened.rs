//! Sizes told by likeness: 'the size of a walnut'. What a food is likened to is no food of the dish.

use crate::lexicon::Class;
use crate::token::Token;

/// 'the size of a walnut', 'as big as an egg': the index after what it is likened to.
pub(crate) fn likened(tokens: &[Token], at: usize) -> Option<usize> {
    let is = |at: usize, words: &[&str]| tokens.get(at).is_some_and(|t| t.is_any(words));
    let at = at + usize::from(is(at, &["about"]));
    let the = at + usize::from(is(at, &["the"]));
    let size = is(the, &["size", "bigness", "bulk"]) && is(the + 1, &["of"]);
    let big = is(at, &["as"]) && is(at + 1, &["big", "large", "thick"]) && is(at + 2, &["as"]);
    let noun = if size { the + 2 } else { at + 3 };
    let noun = noun + usize::from(is(noun, &["a", "an", "your", "the", "one"]));
    let noun = noun + usize::from(tokens.get(noun).is_some_and(|t| t.class.is(Class::SIZE)));
    ((size || big) && tokens.get(noun).is_some_and(Token::is_word)).then_some(noun + 1)
}
