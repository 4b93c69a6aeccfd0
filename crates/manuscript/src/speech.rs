//! What part a small word plays in a sentence of the method, from `data/method.tsv`: article, joiner, adverb and so on.

use std::sync::OnceLock;

use rustc_hash::FxHashMap;

use crate::HeatWord;

/// A set of parts of speech, each a bit.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub(crate) struct Speech(u32);

/// The parts by their names in the table, in the order of their bits.
const NAMES: [&str; 20] = [
    "article",
    "adverb",
    "preposition",
    "joiner",
    "clause",
    "finite",
    "pronoun",
    "person",
    "never",
    "manner",
    "partly",
    "discarding",
    "keeping",
    "plain",
    "made",
    "measure",
    "lead",
    "pot",
    "more",
    "all",
];

impl Speech {
    pub(crate) const ARTICLE: Speech = Speech(1);
    pub(crate) const ADVERB: Speech = Speech(1 << 1);
    pub(crate) const PREPOSITION: Speech = Speech(1 << 2);
    pub(crate) const JOINER: Speech = Speech(1 << 3);
    /// It opens a side clause.
    pub(crate) const CLAUSE: Speech = Speech(1 << 4);
    /// Its clause gives no order.
    pub(crate) const FINITE: Speech = Speech(1 << 5);
    pub(crate) const PRONOUN: Speech = Speech(1 << 6);
    pub(crate) const PERSON: Speech = Speech(1 << 7);
    /// 'not': what follows is not to be done.
    pub(crate) const NEVER: Speech = Speech(1 << 8);
    pub(crate) const MANNER: Speech = Speech(1 << 9);
    /// A lid not quite on.
    pub(crate) const PARTLY: Speech = Speech(1 << 10);
    pub(crate) const DISCARDING: Speech = Speech(1 << 11);
    pub(crate) const KEEPING: Speech = Speech(1 << 12);
    /// A noun that is neither food nor vessel.
    pub(crate) const PLAIN: Speech = Speech(1 << 13);
    /// A thing that comes off or out of a food.
    pub(crate) const MADE: Speech = Speech(1 << 14);
    /// A loose measure that may stand before 'of'.
    pub(crate) const MEASURE: Speech = Speech(1 << 15);
    /// It may stand before a time.
    pub(crate) const LEAD: Speech = Speech(1 << 16);
    /// The whole contents of the vessel.
    pub(crate) const POT: Speech = Speech(1 << 17);
    /// It may stand between a number and its unit.
    pub(crate) const MORE: Speech = Speech(1 << 18);
    /// Everything on the list or in the vessel.
    pub(crate) const ALL: Speech = Speech(1 << 19);

    /// Whether the two sets share a part.
    pub(crate) const fn is(self, other: Speech) -> bool {
        self.0 & other.0 != 0
    }

    /// Both sets together.
    pub(crate) const fn or(self, other: Speech) -> Speech {
        Speech(self.0 | other.0)
    }

    fn of_name(name: &str) -> Speech {
        let place = NAMES.iter().position(|known| *known == name);
        place.map_or(Speech::default(), |place| Speech(1 << place))
    }
}

struct Tables {
    parts: FxHashMap<&'static str, Speech>,
    levels: FxHashMap<&'static str, HeatWord>,
}

fn tables() -> &'static Tables {
    static READ: OnceLock<Tables> = OnceLock::new();
    READ.get_or_init(|| {
        let mut parts: FxHashMap<&str, Speech> = FxHashMap::default();
        let mut levels = FxHashMap::default();
        for row in rows() {
            let (word, class) = row;
            let held = parts.entry(word).or_default();
            *held = held.or(Speech::of_name(class));
            if let Some(level) = class.strip_prefix("level ").and_then(heat) {
                levels.entry(word).or_insert(level);
            }
        }
        Tables { parts, levels }
    })
}

/// Word and class of each row of the table.
fn rows() -> impl Iterator<Item = (&'static str, &'static str)> {
    let table = include_str!("../data/method.tsv");
    let lines = table.lines().filter(|line| !line.starts_with('#') && !line.is_empty());
    lines.skip(1).map(|line| {
        let mut cells = line.split('\t');
        (cells.next().unwrap_or(""), cells.next().unwrap_or(""))
    })
}

fn heat(name: &str) -> Option<HeatWord> {
    Some(match name {
        "low" => HeatWord::Low,
        "medium-low" => HeatWord::MediumLow,
        "medium" => HeatWord::Medium,
        "medium-high" => HeatWord::MediumHigh,
        "high" => HeatWord::High,
        "lower" => HeatWord::Lower,
        _ => return None,
    })
}

/// The parts that a word in small letters may play; none for a word that the table does not have.
pub(crate) fn speech(word: &str) -> Speech {
    tables().parts.get(word).copied().unwrap_or_default()
}

/// A heat in one word.
pub(crate) fn level(word: &str) -> Option<HeatWord> {
    tables().levels.get(word).copied()
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_class_of_the_table_is_known() {
        for (word, class) in rows() {
            let level = class.strip_prefix("level ").and_then(heat).is_some();
            assert!(
                level || class == "class" || Speech::of_name(class) != Speech::default(),
                "{word}: {class}"
            );
        }
    }

    #[test]
    fn words_play_their_parts() {
        assert!(speech("the").is(Speech::ARTICLE));
        assert!(speech("and").is(Speech::JOINER));
        assert!(!speech("and").is(Speech::ARTICLE));
        assert_eq!(speech("leeks"), Speech::default());
    }
}
