//! Sentences and clauses of a take, and which of them are asides: other times, other cooks, what might be done.

use rustc_hash::FxHashSet;

use crate::lexicon::Class;
use crate::speech::Speech;
use crate::token::Token;

use super::transcript::Heard;
use super::words::{self, Role};

/// A stretch of words that is judged as one.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Clause {
    pub(super) from: usize,
    pub(super) next: usize,
    /// It opens a sentence.
    pub(super) opens: bool,
    /// It opens a paragraph or stands at a stamp.
    pub(super) fresh: bool,
    /// It tells of something else than the work at hand.
    pub(super) aside: bool,
    /// Index of the word with which the aside begins.
    pub(super) aside_from: usize,
}

/// The clauses of a take, end to end.
pub(super) fn clauses(heard: &Heard) -> Vec<Clause> {
    let names = people(heard);
    let mut found = cut(heard);
    let mut aside = false;
    for clause in &mut found {
        let words = heard.tokens.get(clause.from..clause.next).unwrap_or_default();
        let turns = words.first().is_some_and(|t| words::is(&t.lower, Role::Turn));
        let goes_on = clause.opens && aside && !clause.fresh && continues(words);
        if turns || clause.opens && !goes_on {
            aside = false;
        }
        if let Some(at) = opens_aside(words, &names).filter(|_| !aside) {
            // What might be used instead, or a greeting, says nothing of what was said before it.
            let might = words
                .get(at)
                .is_some_and(|t| t.is_any(&["you", "could", "can", "hello", "hiya"]));
            clause.aside_from = clause.from + if might { at } else { 0 };
            clause.aside = true;
            // A reason is over with its clause.
            aside = !words.first().is_some_and(|t| t.is("because"));
            continue;
        }
        clause.aside = aside;
    }
    found
}

/// Cuts at stops, commas and joiners.
fn cut(heard: &Heard) -> Vec<Clause> {
    let tokens = &heard.tokens;
    let mut found: Vec<Clause> = Vec::new();
    for (at, token) in tokens.iter().enumerate() {
        let before = at.checked_sub(1).and_then(|before| tokens.get(before));
        let fresh = heard.fresh.get(at).copied().unwrap_or(false);
        let stopped = before.is_some_and(|t| matches!(t.sign(), Some('.' | '?' | '!' | '…' | ';')));
        let turn = !heard.punctuated
            && words::is(&token.lower, Role::Turn)
            && !before.is_some_and(|t| t.is_any(&["and", "but", "so", "oh"]));
        let opens = at == 0 || fresh || stopped || turn;
        let paused = before.is_some_and(|t| matches!(t.sign(), Some(',' | ':' | '-' | '–' | '—')));
        let joins = token.is_any(&["and", "but", "because", "so", "then", "which", "or"])
            && !before.is_some_and(|t| t.is_any(&["and", "but", "so", "only", "not", "ever"]));
        let much = token.is("so")
            && tokens
                .get(at + 1)
                .is_some_and(|t| t.is_any(&["much", "many", "far", "good", "that"]));
        let joins = joins && !much;
        if !(opens || paused || joins) {
            continue;
        }
        if let Some(last) = found.last_mut() {
            last.next = at;
        }
        found.push(Clause {
            from: at,
            next: tokens.len(),
            opens,
            fresh,
            aside: false,
            aside_from: at,
        });
    }
    found
}

/// 'And jalapeños.', 'They eat differently.': more of what was told before.
fn continues(words: &[Token]) -> bool {
    let first = words.iter().find(|t| t.is_word() && !words::is(&t.lower, Role::Filler));
    let told = |t: &Token| t.is_one_of("she he they her his their she'd he'd they'd she's he's");
    first.is_some_and(|t| told(t) || t.is("and") && words.len() < 6 && super::numbers::amount(words, 1).is_none())
}

/// The word at which a clause begins to tell of others, of other times or of what might be.
fn opens_aside(words: &[Token], names: &FxHashSet<String>) -> Option<usize> {
    // 'and mint if you have it' puts it in.
    let wished = |at: usize| {
        let before = at.checked_sub(1).and_then(|before| words.get(before));
        let season = before.is_some_and(|t| words::is(&t.lower, Role::Season));
        season && words.get(at).is_some_and(|t| t.is("if"))
    };
    (0..words.len()).find(|at| words::at(words, *at, Role::Aside).is_some() && !wished(*at) || acts(words, *at, names))
}

/// Somebody else does something: a person, then a verb that is no order.
fn acts(words: &[Token], at: usize, names: &FxHashSet<String>) -> bool {
    let Some(token) = words.get(at) else {
        return false;
    };
    let word = super::topic::plain(token);
    let person = words::is(&word, Role::Person) || names.contains(word.as_str());
    let before = at.checked_sub(1).and_then(|before| words.get(before));
    let only_for = before.is_some_and(|t| t.is_any(&["for", "feeds", "feed", "four", "six"]));
    person && !only_for
}

/// Names of people: words with a capital inside a sentence that are no kitchen words.
fn people(heard: &Heard) -> FxHashSet<String> {
    let mut found = FxHashSet::default();
    if !heard.punctuated {
        return found;
    }
    for (at, pair) in heard.tokens.windows(2).enumerate() {
        let [before, token] = pair else { continue };
        // 'Dijon mustard' is nobody.
        let vessel =
            super::vessel::at(&heard.tokens, at + 1).is_some() || super::vessel::at(&heard.tokens, at + 2).is_some();
        if vessel || heard.tokens.get(at + 2).is_some_and(super::food::is_food) {
            continue;
        }
        let capital =
            token.is_word() && token.text.chars().next().is_some_and(char::is_uppercase) && token.text.len() > 2;
        let inside = before.is_word() && before.text.chars().any(char::is_lowercase);
        let known =
            token.class != Class::default() || token.speech != Speech::default() || token.lower.starts_with("i'");
        if capital && inside && !known {
            found.insert(token.lower.to_string());
        }
    }
    found
}

/// For every word, whether it is an aside.
pub(super) fn asides(clauses: &[Clause], words: usize) -> Vec<bool> {
    let mut found = vec![false; words];
    for clause in clauses.iter().filter(|clause| clause.aside) {
        if let Some(part) = found.get_mut(clause.aside_from..clause.next) {
            part.fill(true);
        }
    }
    found
}
