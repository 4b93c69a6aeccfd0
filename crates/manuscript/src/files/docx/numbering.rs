//! Lists: the number or mark that stands before a paragraph (ECMA-376 part 1, 17.9).

use std::collections::BTreeMap;

use super::super::numerals::Numerals;
use super::super::xml::{Element, Space, Visit};

/// The lists of a file, and how far each has counted.
#[derive(Debug, Default)]
pub(super) struct Numbering {
    /// Kinds of list by key.
    kinds: BTreeMap<String, Kind>,
    /// Lists by key: the kind, and levels that start elsewhere.
    lists: BTreeMap<String, (String, BTreeMap<usize, usize>)>,
    /// How far each list has counted; lists of one kind go on counting together.
    counted: BTreeMap<String, Vec<usize>>,
    /// Lists that have begun.
    begun: BTreeMap<String, ()>,
    open: Open,
}

/// The levels of a kind of list.
type Kind = BTreeMap<usize, Level>;

#[derive(Clone, Debug)]
struct Level {
    numerals: Numerals,
    /// '%1.%2': numbers of levels stand in the place of the signs.
    shown: String,
    start: usize,
}

impl Default for Level {
    fn default() -> Self {
        Level {
            numerals: Numerals::Figures,
            shown: String::new(),
            start: 1,
        }
    }
}

/// What is being read.
#[derive(Debug, Default)]
struct Open {
    kind: Option<String>,
    list: Option<String>,
    level: usize,
    /// A level that a list has for itself.
    replaced: bool,
}

/// Levels of a list.
const LEVELS: usize = 9;

impl Numbering {
    /// What stands before the next paragraph of a list; `None` where there is no such list.
    pub(super) fn label(&mut self, list: &str, level: usize) -> Option<String> {
        let level = level.min(LEVELS - 1);
        let (kind, starts) = self.lists.get(list)?;
        let levels = self.kinds.get(kind)?;
        let start = |at: usize| levels.get(&at).map_or(1, |level| level.start);
        let counted = self.counted.entry(kind.clone()).or_default();
        // A list that starts elsewhere begins there the first time it is met.
        if self.begun.insert(list.to_owned(), ()).is_none() {
            for (at, from) in starts {
                if counted.len() > *at {
                    counted.truncate(*at);
                }
                while counted.len() < *at {
                    counted.push(start(counted.len()));
                }
                counted.push(from.saturating_sub(1));
            }
        }
        counted.truncate(level + 1);
        while counted.len() < level {
            counted.push(start(counted.len()));
        }
        match counted.get_mut(level) {
            Some(number) => *number = number.saturating_add(1),
            None => counted.push(start(level)),
        }
        let shown = levels.get(&level)?;
        Some(match shown.numerals {
            Numerals::Mark => "-".to_owned(),
            Numerals::None => String::new(),
            _ => written(&shown.shown, levels, counted),
        })
    }
}

/// '%1.%2' with the numbers of the levels.
fn written(shown: &str, levels: &Kind, counted: &[usize]) -> String {
    let mut out = String::new();
    let mut letters = shown.chars().take(64);
    while let Some(letter) = letters.next() {
        let level = (letter == '%').then(|| letters.next().and_then(|digit| digit.to_digit(10)));
        match level {
            None => out.push(letter),
            Some(Some(level)) if level > 0 => {
                let at = level as usize - 1;
                let numerals = levels.get(&at).map_or(Numerals::Figures, |level| level.numerals);
                out.push_str(&numerals.write(counted.get(at).copied().unwrap_or(1)));
            }
            Some(_) => {}
        }
    }
    out.trim().to_owned()
}

impl Visit for Numbering {
    fn open(&mut self, element: &Element) {
        if element.space != Space::Word {
            return;
        }
        let value = || element.get("val").map(str::to_owned);
        match element.name.as_str() {
            "abstractNum" => {
                self.open = Open {
                    kind: element.get("abstractNumId").map(str::to_owned),
                    ..Open::default()
                };
            }
            "num" => {
                self.open = Open {
                    list: element.get("numId").map(str::to_owned),
                    ..Open::default()
                };
            }
            "abstractNumId" => {
                if let (Some(list), Some(kind)) = (&self.open.list, value()) {
                    self.lists.insert(list.clone(), (kind, BTreeMap::new()));
                }
            }
            "lvl" | "lvlOverride" => {
                self.open.level = element.number("ilvl").unwrap_or(0).min(LEVELS - 1);
                self.open.replaced = self.open.list.is_some() && element.name == "lvl";
            }
            "startOverride" => {
                let list = self.open.list.as_ref().and_then(|list| self.lists.get_mut(list));
                if let (Some((_, starts)), Some(start)) = (list, element.number("val")) {
                    starts.insert(self.open.level, start);
                }
            }
            "numFmt" | "lvlText" | "start" => self.level(element),
            _ => {}
        }
    }

    fn close(&mut self, space: Space, name: &str) {
        if space == Space::Word && (name == "abstractNum" || name == "num") {
            self.open = Open::default();
        }
    }

    fn text(&mut self, _: &str) {}
}

impl Numbering {
    /// A property of a level: of a kind of list, or of a list for itself, which then is a kind of its own.
    fn level(&mut self, element: &Element) {
        let kind = match (&self.open.kind, &self.open.list) {
            (Some(kind), _) => kind.clone(),
            (None, Some(list)) if self.open.replaced => {
                let own = format!("of list {list}");
                if let Some((kind, _)) = self.lists.get_mut(list) {
                    let before = self.kinds.get(kind).cloned().unwrap_or_default();
                    self.kinds.entry(own.clone()).or_insert(before);
                    kind.clone_from(&own);
                }
                own
            }
            _ => return,
        };
        let level = self.kinds.entry(kind).or_default().entry(self.open.level).or_default();
        match (element.name.as_str(), element.get("val")) {
            ("numFmt", Some(name)) => level.numerals = Numerals::of_word(name),
            ("lvlText", shown) => level.shown = shown.unwrap_or("").to_owned(),
            ("start", Some(start)) => level.start = start.parse().unwrap_or(1),
            _ => {}
        }
    }
}
