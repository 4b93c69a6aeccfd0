//! Contractions that a machine wrote without their sign: 'its eight thighs', 'dont boil it'.

use crate::Span;
use crate::token::{Token, tokens};

/// Contractions that are no other word without their apostrophe, apart from 'its'; 'were', 'ill' and 'well' stay as heard.
const CONTRACTED: &[&str] = &[
    "aren't",
    "can't",
    "couldn't",
    "didn't",
    "doesn't",
    "don't",
    "hadn't",
    "hasn't",
    "haven't",
    "he's",
    "here's",
    "i'm",
    "i've",
    "isn't",
    "it'll",
    "it's",
    "she's",
    "shouldn't",
    "that'll",
    "that's",
    "there's",
    "they'll",
    "they're",
    "they've",
    "wasn't",
    "we've",
    "weren't",
    "what's",
    "where's",
    "won't",
    "wouldn't",
    "you'll",
    "you're",
    "you've",
];

/// Reads contractions as such in a take that has no apostrophe at all; one that has them spells with care.
pub(super) fn restore(words: &mut [Token<'_>]) {
    if words.iter().any(|token| token.lower.contains('\'')) {
        return;
    }
    for token in words.iter_mut() {
        let spelled = CONTRACTED.iter().find(|word| without_sign(word, &token.lower));
        let whole = spelled.and_then(|word| tokens(word, Span::new(0, word.len())).pop());
        if let Some(whole) = whole {
            (token.lower, token.class, token.speech) = (whole.lower, whole.class, whole.speech);
        }
    }
}

fn without_sign(contracted: &str, word: &str) -> bool {
    contracted.len() == word.len() + 1 && contracted.bytes().filter(|byte| *byte != b'\'').eq(word.bytes())
}

#[cfg(test)]
mod tests {
    use super::*;

    fn restored(text: &str) -> String {
        let mut found = tokens(text, Span::new(0, text.len()));
        restore(&mut found);
        let words: Vec<&str> = found.iter().map(|token| token.lower.as_str()).collect();
        words.join(" ")
    }

    #[test]
    fn contractions_without_their_sign() {
        // Plain English spelling; no outside table is needed.
        assert_eq!(
            restored("thats it dont boil its milk"),
            "that's it don't boil it's milk"
        );
        assert_eq!(restored("they were well and ill"), "they were well and ill");
        assert_eq!(restored("don't lift its lid"), "don't lift its lid");
    }
}
