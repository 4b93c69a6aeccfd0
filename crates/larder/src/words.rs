//! Words of a name: folding, singulars, and the classes of the words that stand around a food's name.
//!
//! A page says 'Red Onions', 'red-onion', 'onion (red)': case, hyphens, accents, commas and plurals do not count.
//! Which words are spelling variants of each other, which are mere praise, cut, grade or state stands in
//! `words.tsv`.

use crate::State;
use crate::error::{Fault, TableError};
use crate::hash::{QuickMap, QuickSet};
use crate::table::read as rows;
use crate::tables::WORDS;

/// What a word does to a name.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Class {
    /// Part of what the food is.
    Name,
    /// Praise, size, temperature: says nothing of which food it is.
    Idle,
    /// How it is cut: says at most which tin.
    Cut,
    /// Which sort is bought: boneless, unsalted, lean.
    Grade,
    /// Raw, cooked, dried, canned, frozen, smoked.
    State(State),
}

/// A word of a name.
#[derive(Clone, Debug, PartialEq, Eq)]
pub(crate) struct Token {
    /// Folded, variants replaced, singular.
    pub(crate) stem: String,
    /// Folded only: `peppers`.
    pub(crate) surface: String,
    /// What it does.
    pub(crate) class: Class,
}

/// The word table.
#[derive(Clone, Debug, Default)]
pub(crate) struct Words {
    /// Words that are read as one, by the first: `bone` → `in`, `bonein`.
    phrases: QuickMap<String, Vec<(Vec<String>, String)>>,
    /// Spelling variants: `tinned` is `canned`.
    same: QuickMap<String, String>,
    classes: QuickMap<String, Class>,
    /// Words that are passed over wherever they stand.
    stops: QuickSet<String>,
}

impl Words {
    /// Reads `words.tsv`.
    pub(crate) fn read(text: &str) -> Result<Words, TableError> {
        let mut words = Words::default();
        for row in rows("words.tsv", text, &WORDS)? {
            let stands_for = row.text(2).to_owned();
            for word in row.filled(0)?.split(';').map(str::trim) {
                let class = match row.filled(1)? {
                    "stop" => {
                        words.stops.insert(word.to_owned());
                        continue;
                    }
                    "same" if word.contains(' ') => {
                        let mut parts = word.split(' ').map(str::to_owned);
                        let first = parts.next().unwrap_or_default();
                        words
                            .phrases
                            .entry(first)
                            .or_default()
                            .push((parts.collect(), stands_for.clone()));
                        continue;
                    }
                    "same" => {
                        words.same.insert(word.to_owned(), stands_for.clone());
                        continue;
                    }
                    "idle" => Class::Idle,
                    "cut" => Class::Cut,
                    "grade" => Class::Grade,
                    "state" => Class::State(row.word(2)?),
                    other => return Err(row.fault(Fault::UnknownWord("class", other.to_owned()))),
                };
                words.classes.insert(singular(word), class);
            }
        }
        Ok(words)
    }

    /// The words of a name, in order, stop words left out.
    pub(crate) fn tokens(&self, name: &str) -> Vec<Token> {
        let mut tokens = Vec::new();
        self.surfaces(name, |surface| tokens.push(self.token(surface)));
        tokens
    }

    /// The words of a name as they stand there, folded, phrases as one word, stop words left out.
    pub(crate) fn surfaces(&self, name: &str, mut take: impl FnMut(&str)) {
        let folded = fold(name);
        let parts: Vec<&str> = folded.split(' ').filter(|part| !part.is_empty()).collect();
        let mut at = 0;
        while let Some(part) = parts.get(at) {
            if let Some((joined, length)) = self.phrase(&parts, at) {
                take(joined);
                at += length;
                continue;
            }
            at += 1;
            if !self.stops.contains(*part) {
                take(part);
            }
        }
    }

    /// The longest phrase that begins at a word, and how many words it has.
    fn phrase(&self, parts: &[&str], at: usize) -> Option<(&str, usize)> {
        let rest = parts.get(at + 1..)?;
        let phrases = self.phrases.get(*parts.get(at)?)?;
        let begins = |words: &[String]| words.len() <= rest.len() && words.iter().zip(rest).all(|(a, b)| a == b);
        let found = phrases
            .iter()
            .filter(|(words, _)| begins(words))
            .max_by_key(|(words, _)| words.len());
        found.map(|(words, joined)| (joined.as_str(), words.len() + 1))
    }

    /// The token of a word as it stands in a name.
    pub(crate) fn token(&self, surface: &str) -> Token {
        let known = self.same.get(surface).map_or(surface, String::as_str);
        let mut stem = singular(known);
        if let Some(same) = self.same.get(&stem) {
            stem = singular(same);
        }
        let class = self.classes.get(&stem).copied().unwrap_or(Class::Name);
        Token {
            stem,
            surface: surface.to_owned(),
            class,
        }
    }
}

/// Lower case, accents off, apostrophes out, everything that is neither letter, digit nor `%` a space.
pub(crate) fn fold(name: &str) -> String {
    let mut out = String::with_capacity(name.len());
    for character in name.chars() {
        match character {
            'a'..='z' | '0'..='9' | '%' => out.push(character),
            'A'..='Z' => out.push(character.to_ascii_lowercase()),
            '\'' | '’' => {}
            'à' | 'á' | 'â' | 'ã' | 'ä' | 'å' | 'À' | 'Á' | 'Â' | 'Ä' => out.push('a'),
            'ç' | 'Ç' => out.push('c'),
            'è' | 'é' | 'ê' | 'ë' | 'È' | 'É' | 'Ê' => out.push('e'),
            'ì' | 'í' | 'î' | 'ï' => out.push('i'),
            'ñ' | 'Ñ' => out.push('n'),
            'ò' | 'ó' | 'ô' | 'õ' | 'ö' | 'Ö' => out.push('o'),
            'ù' | 'ú' | 'û' | 'ü' | 'Ü' => out.push('u'),
            'œ' => out.push_str("oe"),
            'æ' => out.push_str("ae"),
            other if other.is_alphanumeric() => out.extend(other.to_lowercase()),
            _ => out.push(' '),
        }
    }
    out
}

/// The singular of a kitchen noun; a word that is none comes back the same for singular and plural alike, which is
/// all that comparing needs.
pub(crate) fn singular(word: &str) -> String {
    let cut = |by: usize, put: &str| format!("{}{put}", word.get(..word.len() - by).unwrap_or(word));
    let long = word.len() > 3;
    if word.ends_with("leaves") || word.ends_with("loaves") || word == "halves" || word == "calves" {
        return cut(3, "f");
    }
    if long && word.ends_with("ies") {
        return if word.len() > 4 { cut(3, "y") } else { cut(1, "") };
    }
    if word.len() > 4 && word.ends_with("ie") {
        return cut(2, "y");
    }
    if long && word.ends_with("oes") || word.ends_with("sses") || word.ends_with("xes") {
        return cut(2, "");
    }
    if word.ends_with("ches") || word.ends_with("shes") {
        return cut(2, "");
    }
    if long && word.ends_with('s') && !["ss", "us", "is"].iter().any(|end| word.ends_with(end)) {
        return cut(1, "");
    }
    word.to_owned()
}

#[cfg(test)]
mod tests {
    use super::{fold, singular};

    #[test]
    fn singulars_of_kitchen_nouns() {
        let pairs = [
            ("onions", "onion"),
            ("leaves", "leaf"),
            ("loaves", "loaf"),
            ("tomatoes", "tomato"),
            ("berries", "berry"),
            ("radishes", "radish"),
            ("peaches", "peach"),
            ("cheeses", "cheese"),
            ("cookies", "cooky"),
            ("cookie", "cooky"),
            ("pies", "pie"),
            ("peas", "pea"),
            ("asparagus", "asparagus"),
            ("watercress", "watercress"),
            ("swiss", "swiss"),
            ("molasses", "molass"),
            ("couscous", "couscous"),
            ("", ""),
        ];
        for (word, expected) in pairs {
            assert_eq!(singular(word), expected, "{word}");
        }
    }

    #[test]
    fn case_hyphens_accents_and_apostrophes_do_not_count() {
        assert_eq!(fold("Crème-Fraîche"), "creme fraiche");
        assert_eq!(fold("hen’s eggs, 2%"), "hens eggs  2%");
        assert_eq!(fold("日本"), "日本");
    }
}
