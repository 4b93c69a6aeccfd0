//! Styles: which are titles, which letters are hidden or raised, how lists count; and what runs over every page.

use std::collections::BTreeMap;

use super::super::numerals::Numerals;
use super::super::xml::{Element, Space, Visit};

/// The styles of a file by name.
#[derive(Debug, Default)]
pub(super) struct Styles {
    styles: BTreeMap<String, Style>,
    lists: BTreeMap<String, BTreeMap<usize, Level>>,
    running: Vec<String>,
    open: Option<String>,
    list: Option<String>,
    in_running: bool,
}

#[derive(Debug, Default)]
struct Style {
    parent: Option<String>,
    hidden: bool,
    raised: bool,
}

/// How a level of a list counts.
#[derive(Clone, Debug)]
pub(super) struct Level {
    pub numerals: Numerals,
    pub before: String,
    pub after: String,
    pub start: usize,
    /// How many levels are shown: '2.1' are two.
    pub shown: usize,
}

/// No chain of styles is followed further.
const CHAIN: usize = 16;

impl Styles {
    /// Whether paragraphs of this style are the title of the whole.
    pub(super) fn is_title(&self, name: &str) -> bool {
        let mut name = name;
        for _ in 0..CHAIN {
            if name == "Title" {
                return true;
            }
            match self.styles.get(name).and_then(|style| style.parent.as_deref()) {
                Some(parent) => name = parent,
                None => return false,
            }
        }
        false
    }

    pub(super) fn is_hidden(&self, name: &str) -> bool {
        self.styles.get(name).is_some_and(|style| style.hidden)
    }

    pub(super) fn is_raised(&self, name: &str) -> bool {
        self.styles.get(name).is_some_and(|style| style.raised)
    }

    /// A level of a list, the first is 1.
    pub(super) fn level(&self, list: &str, level: usize) -> Option<&Level> {
        self.lists.get(list)?.get(&level)
    }

    /// What runs over or under every page.
    pub(super) fn running(&self) -> impl Iterator<Item = &str> {
        self.running.iter().map(String::as_str)
    }
}

impl Visit for Styles {
    fn open(&mut self, element: &Element) {
        match (element.space, element.name.as_str()) {
            (Space::Style, "style") => {
                self.open = element.get("name").map(str::to_owned);
                if let Some(name) = &self.open {
                    let parent = element.get("parent-style-name").map(str::to_owned);
                    self.styles.insert(
                        name.clone(),
                        Style {
                            parent,
                            ..Style::default()
                        },
                    );
                }
            }
            (Space::Style, "text-properties") => {
                if let Some(style) = self.open.as_ref().and_then(|name| self.styles.get_mut(name)) {
                    style.hidden = element.get("display") == Some("none");
                    style.raised = element
                        .get("text-position")
                        .is_some_and(|position| position.starts_with("super"));
                }
            }
            (Space::Text, "list-style") => {
                self.list = element.get("name").map(str::to_owned);
                if let Some(name) = &self.list {
                    self.lists.insert(name.clone(), BTreeMap::new());
                }
            }
            (Space::Text, "list-level-style-number" | "list-level-style-bullet" | "list-level-style-image") => {
                self.list_level(element);
            }
            (Space::Style, "header" | "footer" | "header-left" | "footer-left" | "header-first" | "footer-first") => {
                self.in_running = true;
                self.running.push(String::new());
            }
            _ => {}
        }
    }

    fn close(&mut self, space: Space, name: &str) {
        match (space, name) {
            (Space::Style, "style") => self.open = None,
            (Space::Text, "list-style") => self.list = None,
            (Space::Style, name) if name.starts_with("header") || name.starts_with("footer") => self.in_running = false,
            _ => {}
        }
    }

    fn text(&mut self, text: &str) {
        if let Some(words) = self.running.last_mut().filter(|_| self.in_running) {
            words.push_str(text);
        }
    }
}

impl Styles {
    fn list_level(&mut self, element: &Element) {
        let Some(levels) = self.list.as_ref().and_then(|name| self.lists.get_mut(name)) else {
            return;
        };
        let numerals = match element.name.as_str() {
            "list-level-style-number" => Numerals::of_open_document(element.get("num-format").unwrap_or("")),
            _ => Numerals::Mark,
        };
        let word = |name: &str| element.get(name).unwrap_or("").to_owned();
        let level = Level {
            numerals,
            before: word("num-prefix"),
            after: word("num-suffix"),
            start: element.number("start-value").unwrap_or(1),
            shown: element.number("display-levels").unwrap_or(1),
        };
        levels.insert(element.number("level").unwrap_or(1), level);
    }
}
