//! A food of the list as the method can name it.

use super::foods::Place;
use super::words::in_group;
use crate::Span;
use crate::lexicon::{Class, class};
use crate::speech::{Speech, speech};

/// A food of the list as it can be named.
#[derive(Debug)]
pub(super) struct Name {
    pub(super) place: Place,
    /// The words of the name, in the singular.
    pub(super) words: Vec<String>,
    pub(super) head: String,
    /// The head as the list spells it, where `head` may be the word of a kindred food: 'scallion', not 'onion'.
    pub(super) own: String,
    /// The other words of the line.
    pub(super) extra: Vec<String>,
    pub(super) section: Option<usize>,
    pub(super) span: Span,
    /// The stretch of the page this entry is about.
    pub(super) line: Span,
    /// Work that the line itself gives it, in small letters.
    pub(super) done: String,
    pub(super) optional: bool,
    pub(super) for_serving: bool,
    pub(super) plural: bool,
}

impl Name {
    /// How well the words fit, from 1 up; `None` when they mean something else.
    pub(super) fn fit(&self, words: &[String]) -> Option<f64> {
        let head = words.last()?;
        let holds = |word: &String| self.words.contains(word);
        let derived = in_group(&self.head, "derived");
        // 'the fat' is not that of 'fat salt pork'.
        let describes = class(head).is(Class::SIZE) && *head != self.head && words.len() == 1;
        let base = if *head == self.head {
            10.0
        } else if describes {
            return None;
        } else if holds(head) && !derived {
            5.0
        } else if self.called_by_a_piece(words) {
            6.0
        } else if self.extra.contains(head)
            && (!derived || class(head).is(Class::PART))
            && words.iter().any(|word| word != head && holds(word))
        {
            4.0
        } else if self.extra.contains(head)
            && words.len() == 1
            && (class(head).is(Class::PART) || is_piece(head) || class(head).is(Class::FOOD))
        {
            3.0
        } else if holds(head) {
            1.0
        } else {
            return None;
        };
        let others = words.iter().filter(|word| *word != head);
        let known = others.clone().filter(|word| holds(word)).count();
        let strange = others
            .filter(|word| !holds(word) && !self.extra.contains(word) && class(word).is(Class::KIND))
            .count();
        let missing = self.words.iter().filter(|word| !words.contains(word)).count();
        let score = base + 2.0 * count(known) - 4.0 * count(strange) - 0.1 * count(missing);
        (score > 0.0).then_some(score)
    }

    pub(super) fn in_group(&self, group: &str) -> bool {
        let derived = in_group(&self.head, "derived");
        let word = self.words.iter().find(|word| in_group(word, group));
        let Some(word) = word else { return false };
        // A pepper is a vegetable when it has a colour or when there are several.
        let spice = word == "pepper"
            && !(self.plural
                || self
                    .words
                    .iter()
                    .any(|w| matches!(w.as_str(), "red" | "green" | "yellow" | "bell")));
        match group {
            "vegetable" => !derived && !spice,
            "spice" | "seasoning" if word == "pepper" => spice,
            "spice" | "seasoning" | "herb" => {
                let part = matches!(
                    self.head.as_str(),
                    "leaf" | "seed" | "flake" | "powder" | "salt" | "stick"
                );
                in_group(&self.head, group) || part
            }
            "dry" => in_group(&self.head, group) || self.head == "salt",
            _ => !derived,
        }
    }

    /// 'celery stalks' of celery, 'lemon juice' of a lemon.
    fn called_by_a_piece(&self, words: &[String]) -> bool {
        let Some((head, before)) = words.split_last() else {
            return false;
        };
        let piece = before.contains(&self.head) && (is_piece(head) || self.extra.contains(head));
        let pressed = in_group(&self.head, "citrus") && before.first().is_some_and(|word| self.has(word));
        piece || (pressed && matches!(head.as_str(), "juice" | "zest" | "rind"))
    }

    /// Whether the words are those of the name, but for words that only describe.
    pub(super) fn is_called(&self, said: &[String]) -> bool {
        let describes =
            |word: &&String| !class(word).is(Class::KIND | Class::STATE | Class::TEMPERATURE | Class::PREPARED);
        said.iter().filter(describes).eq(self.words.iter().filter(describes))
    }

    pub(super) fn words(&self) -> &[String] {
        &self.words
    }

    pub(super) fn extra(&self) -> &[String] {
        &self.extra
    }

    /// Whether the word is in the name.
    pub(super) fn has(&self, word: &str) -> bool {
        self.words.iter().any(|own| own == word)
    }

    /// Whether it does this in the pot: `liquid` or `fat`.
    pub(super) fn acts_as(&self, group: &str) -> bool {
        in_group(&self.head, group)
            || (group == "fat"
                && self.words.iter().any(|word| in_group(word, "fat"))
                && !in_group(&self.head, "derived"))
    }
}

/// A piece or part by which a food is called: 'celery stalks', 'garlic cloves'.
fn is_piece(word: &str) -> bool {
    class(word).is(Class::SHAPE)
        || speech(word).is(Speech::PLAIN)
        || matches!(
            word,
            "bone" | "skin" | "rind" | "seed" | "stone" | "shell" | "bulb" | "strand" | "thread"
        )
        || matches!(
            word,
            "clove"
                | "stalk"
                | "stem"
                | "leaf"
                | "sprig"
                | "piece"
                | "slice"
                | "breast"
                | "thigh"
                | "half"
                | "head"
                | "stick"
                | "kernel"
                | "floret"
                | "fillet"
                | "ring"
        )
}

fn count(n: usize) -> f64 {
    u16::try_from(n).map_or(f64::from(u16::MAX), f64::from)
}
