//! Words that stand where a food must, are none, and sound like one.
//!
//! Sounds are compared by a spelling that writes like sounds alike, and by how much of it has to be changed to turn one
//! into the other, as a share of its length. What is found is asked, never believed.

use std::sync::OnceLock;

use potwright_measure::Unit;

use crate::lexicon::{Class, class};
use crate::speech::Speech;
use crate::token::Token;

use super::food::Food;
use super::words::singular;

/// Two words sound alike when no larger share of their sounds differs (common practice, no source; two thirds to one and
/// a half times as much would ask of fewer or of more words).
const ALIKE: f64 = 0.22;
/// The same where nothing but a number stands before the word: most such words are things that are counted.
const VERY_ALIKE: f64 = 0.13;

/// The same for the word before a noun.
const KIND_ALIKE: f64 = 0.17;

/// What stands where a food must, taken for the food it sounds like, or kept as it was heard.
pub(super) fn food(tokens: &[Token], at: usize, definite: bool) -> Option<Food> {
    let first = tokens.get(at).filter(|t| may_be_a_name(t))?;
    let second = tokens
        .get(at + 1)
        .filter(|t| may_be_a_name(t) && t.speech == Speech::default());
    let pair = second.map(|second| format!("{}{}", first.lower.as_str(), second.lower.as_str()));
    // 'dried' before the words that were misheard is no part of them.
    if first.class.is(Class::STATE | Class::KIND | Class::BOUGHT) {
        let mut inner = food(tokens, at + 1, definite)?;
        inner.name = format!("{} {}", first.lower.as_str(), inner.name);
        inner.words.insert(0, first.lower.to_string());
        inner.from = at;
        return Some(inner);
    }
    let of_pair = pair
        .and_then(|pair| sounding(&pair, ALIKE))
        .map(|meant| (meant, at + 2));
    let of_one = || sounding(&first.lower, ALIKE).map(|meant| (meant, at + 1));
    let found = of_pair.or_else(of_one);
    let next = found.map_or(at + 1, |(_, next)| next);
    let heard: Vec<&str> = tokens.get(at..next)?.iter().map(|t| t.lower.as_str()).collect();
    let heard = heard.join(" ");
    let name = found.map_or_else(|| heard.clone(), |(meant, _)| meant.to_owned());
    Some(Food {
        words: vec![singular(&name)],
        name,
        from: at,
        next,
        definite,
        heard: Some(heard),
    })
}

/// A counted word that is no food and sounds very much like one: 'two lakes', 'one red chilly'.
pub(super) fn counted(tokens: &[Token], at: usize) -> Option<Food> {
    let kind = usize::from(
        tokens
            .get(at)
            .is_some_and(|t| t.class.is(Class::KIND | Class::STATE | Class::SIZE)),
    );
    let word = tokens.get(at + kind).filter(|t| {
        t.speech == Speech::default() && (t.class == Class::default() || t.class == Class::MANNER) && may_be_a_name(t)
    })?;
    let several = word.lower.ends_with('s');
    if word.is_any(&["past", "til", "till"]) {
        return None;
    }
    let meant = sounding(&word.lower, if several { VERY_ALIKE } else { 0.0 })
        .filter(|meant| meant.ends_with('s') == several)?;
    let heard = super::mention::text(tokens, at, at + kind + 1);
    let before = tokens.get(at).filter(|_| kind > 0).map(|t| t.lower.to_string());
    let mut words: Vec<String> = before.into_iter().collect();
    words.push(singular(meant));
    Some(Food {
        name: if kind > 0 {
            format!("{} {meant}", words.first().map_or("", String::as_str))
        } else {
            meant.to_owned()
        },
        words,
        from: at,
        next: at + kind + 1,
        definite: false,
        heard: Some(heard),
    })
}

/// A word right after a measure that is known for nothing else and sounds like a food: 'half teaspoon termeric'.
pub(super) fn sure(tokens: &[Token], at: usize) -> Option<Food> {
    let word = tokens
        .get(at)
        .filter(|t| t.speech == Speech::default() && t.class == Class::default() && may_be_a_name(t))?;
    let verb = crate::lexicon::verb(&word.lower) || Unit::from_spelling(&word.lower).is_some();
    let meant = sounding(&word.lower, VERY_ALIKE).filter(|_| !verb)?;
    Some(Food {
        name: meant.to_owned(),
        words: vec![singular(meant)],
        from: at,
        next: at + 1,
        definite: false,
        heard: Some(word.lower.to_string()),
    })
}

/// The kind of a food that a word before its noun was meant to be: 'tour dal'.
pub(super) fn kind(word: &str) -> Option<&'static str> {
    sounding(word, KIND_ALIKE)
}

/// Whether the two words sound alike.
pub(super) fn alike(heard: &str, meant: &str) -> bool {
    let (heard, meant) = (sound(heard), sound(meant));
    difference(&heard, &meant) <= ALIKE * meant.len() as f64
}

fn may_be_a_name(token: &Token) -> bool {
    let small = Speech::ARTICLE
        .or(Speech::PREPOSITION)
        .or(Speech::PRONOUN)
        .or(Speech::FINITE)
        .or(Speech::CLAUSE)
        .or(Speech::JOINER)
        .or(Speech::PERSON)
        .or(Speech::NEVER);
    token.is_word() && token.lower.len() > 2 && !token.speech.is(small)
}

/// A food and how it sounds.
type Sounding = (&'static str, Vec<u8>);

/// The foods of the reader's own table and how they sound, by the number of their sounds.
fn sounds() -> &'static Vec<Vec<Sounding>> {
    static READ: OnceLock<Vec<Vec<Sounding>>> = OnceLock::new();
    READ.get_or_init(|| {
        let mut by_length: Vec<Vec<Sounding>> = vec![Vec::new(); MOST + 1];
        let rows = include_str!("../../data/foods.tsv")
            .lines()
            .filter(|line| !line.starts_with('#'));
        for word in rows.skip(1).filter_map(|line| line.split('\t').next()) {
            let sound = sound(word);
            if class(word).is(Class::FOOD)
                && let Some(length) = by_length.get_mut(sound.len()).filter(|_| sound.len() > 2)
            {
                length.push((word, sound));
            }
        }
        by_length
    })
}

/// Longer words are not compared.
const MOST: usize = 16;

/// The food that sounds most like a word, when no larger share of it differs.
fn sounding(heard: &str, most: f64) -> Option<&'static str> {
    let heard = sound(heard);
    if heard.len() < 3 || heard.len() > MOST {
        return None;
    }
    let near = sounds().get(heard.len().saturating_sub(2)..(heard.len() + 3).min(MOST + 1))?;
    let candidates = near
        .iter()
        .flatten()
        .filter(|(_, sound)| sound.len().abs_diff(heard.len()) < 3);
    let measured = candidates.map(|(word, sound)| (*word, difference(&heard, sound) / sound.len() as f64));
    let best = measured.min_by(|a, b| a.1.total_cmp(&b.1))?;
    (best.1 <= most).then_some(best.0)
}

/// A word by its sounds: letters that sound alike are one, silent ones are left out.
fn sound(word: &str) -> Vec<u8> {
    let letters: Vec<u8> = word
        .bytes()
        .map(|b| b.to_ascii_lowercase())
        .filter(u8::is_ascii_alphabetic)
        .collect();
    let mut heard: Vec<u8> = Vec::with_capacity(letters.len());
    let mut at = 0;
    while let Some(letter) = letters.get(at) {
        let next = letters.get(at + 1).copied().unwrap_or(0);
        let (written, length) = match (letter, next) {
            (b'p', b'h') => (b'f', 2),
            (b'c', b'h') | (b's', b'h') => (b'S', 2),
            (b't', b'h') => (b't', 2),
            (b'c', b'k') => (b'k', 2),
            (b'g', b'h') => (0, 2),
            (b'k', b'n') if at == 0 => (b'n', 2),
            (b'w', b'r') if at == 0 => (b'r', 2),
            (b'c', b'e' | b'i' | b'y') | (b'z', _) => (b's', 1),
            (b'c' | b'q', _) => (b'k', 1),
            (b'y', _) => (b'i', 1),
            (b'e', 0) if at > 2 => (0, 1),
            (b'e', b's') if at > 2 && at + 2 == letters.len() => (0, 1),
            (letter, _) => (*letter, 1),
        };
        if written != 0 && heard.last() != Some(&written) {
            heard.push(written);
        }
        at += length;
    }
    heard
}

/// How much has to be changed: one for a consonant, half for a vowel or for one hiss in place of another.
fn difference(from: &[u8], to: &[u8]) -> f64 {
    let vowel = |b: u8| matches!(b, b'a' | b'e' | b'i' | b'o' | b'u');
    let hiss = |b: u8| matches!(b, b's' | b'S' | b'j');
    let alone = |b: u8| if vowel(b) || b == b'h' { 0.5 } else { 1.0 };
    let mut row: Vec<f64> = std::iter::once(0.0)
        .chain(to.iter().scan(0.0, |sum, b| {
            *sum += alone(*b);
            Some(*sum)
        }))
        .collect();
    for a in from {
        let mut corner = row.first().copied().unwrap_or(0.0);
        if let Some(first) = row.first_mut() {
            *first += alone(*a);
        }
        for (column, b) in to.iter().enumerate() {
            let change = match (a, b) {
                _ if a == b => 0.0,
                _ if vowel(*a) && vowel(*b) || hiss(*a) && hiss(*b) => 0.5,
                _ => 1.0,
            };
            let above = row.get(column + 1).copied().unwrap_or(0.0);
            let left = row.get(column).copied().unwrap_or(0.0);
            let best = (corner + change).min(above + alone(*a)).min(left + alone(*b));
            corner = above;
            if let Some(cell) = row.get_mut(column + 1) {
                *cell = best;
            }
        }
    }
    row.last().copied().unwrap_or(0.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn like_sounds_are_found_and_others_are_not() {
        // Homophones and near ones of English; what each is taken for is what a listener would say.
        for (heard, meant) in [
            ("time", "thyme"),
            ("nutmag", "nutmeg"),
            ("poorcheney", "porcini"),
            ("lakes", "leeks"),
        ] {
            assert_eq!(sounding(heard, ALIKE), Some(meant), "{heard}");
        }
        assert!(alike("barely", "barley"));
        for heard in ["people", "dollars", "windowsill"] {
            assert_eq!(sounding(heard, VERY_ALIKE), None, "{heard}");
        }
    }
}
