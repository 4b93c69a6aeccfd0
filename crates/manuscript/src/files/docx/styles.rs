//! Styles: which are headings, which number their paragraphs, which letters are hidden or raised.

use std::collections::BTreeMap;

use super::super::xml::{Element, Space, Visit};

/// The styles of a file by their key.
#[derive(Debug, Default)]
pub(super) struct Styles {
    styles: BTreeMap<String, Style>,
    open: Option<String>,
}

#[derive(Debug, Default)]
struct Style {
    name: String,
    based_on: Option<String>,
    outline: Option<usize>,
    list: Option<String>,
    level: Option<usize>,
    hidden: Option<bool>,
    raised: Option<bool>,
}

/// No chain of styles is followed further.
const CHAIN: usize = 16;

impl Styles {
    /// The level of a heading in this style; 0 for the title of the whole.
    pub(super) fn heading(&self, key: &str) -> Option<usize> {
        self.chain(key).find_map(|style| {
            let name = style.name.to_lowercase();
            let by_name = name
                .strip_prefix("heading ")
                .and_then(|level| level.trim().parse().ok());
            let title = (name == "title").then_some(0);
            by_name
                .or(title)
                .or(style.outline.filter(|level| *level < 9).map(|level| level + 1))
        })
    }

    /// The list that numbers paragraphs of this style, and the level in it.
    pub(super) fn list(&self, key: &str) -> Option<(String, usize)> {
        let list = self.chain(key).find_map(|style| style.list.clone())?;
        let level = self.chain(key).find_map(|style| style.level).unwrap_or(0);
        Some((list, level))
    }

    /// Whether letters in this style are hidden.
    pub(super) fn is_hidden(&self, key: &str) -> bool {
        self.chain(key).find_map(|style| style.hidden).unwrap_or(false)
    }

    /// Whether letters in this style are raised.
    pub(super) fn is_raised(&self, key: &str) -> bool {
        self.chain(key).find_map(|style| style.raised).unwrap_or(false)
    }

    /// A style and those it is based on.
    fn chain<'s>(&'s self, key: &str) -> impl Iterator<Item = &'s Style> {
        let based_on = |style: &&'s Style| style.based_on.as_ref().and_then(|key| self.styles.get(key));
        std::iter::successors(self.styles.get(key), based_on).take(CHAIN)
    }
}

impl Visit for Styles {
    fn open(&mut self, element: &Element) {
        if element.space != Space::Word {
            return;
        }
        if element.name == "style" {
            self.open = element.get("styleId").map(str::to_owned);
            if let Some(key) = &self.open {
                self.styles.insert(key.clone(), Style::default());
            }
        }
        let Some(style) = self.open.as_ref().and_then(|key| self.styles.get_mut(key)) else {
            return;
        };
        let value = || element.get("val").map(str::to_owned);
        match element.name.as_str() {
            "name" => style.name = value().unwrap_or_default(),
            "basedOn" => style.based_on = value(),
            "outlineLvl" => style.outline = element.number("val"),
            "numId" => style.list = value(),
            "ilvl" => style.level = element.number("val"),
            "vanish" => style.hidden = Some(element.is_on()),
            "vertAlign" => style.raised = Some(element.get("val") == Some("superscript")),
            _ => {}
        }
    }

    fn close(&mut self, space: Space, name: &str) {
        if space == Space::Word && name == "style" {
            self.open = None;
        }
    }

    fn text(&mut self, _: &str) {}
}
