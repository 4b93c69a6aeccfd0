//! Lists: the number or mark that stands before a paragraph (OpenDocument 1.3 part 3, 5.3).

use std::collections::BTreeMap;

use super::super::numerals::Numerals;
use super::super::xml::Element;
use super::styles::Styles;

/// The lists around the place that is read, the innermost last.
#[derive(Debug, Default)]
pub(super) struct Lists {
    open: Vec<List>,
    /// How far lists with a key have counted.
    by_key: BTreeMap<String, usize>,
    /// How far the last list of a style and level has counted.
    by_style: BTreeMap<(String, usize), usize>,
}

#[derive(Debug)]
struct List {
    style: String,
    key: Option<String>,
    /// The number of the item that is read.
    number: Option<usize>,
    /// From where it goes on counting.
    goes_on: Option<usize>,
    /// The item's first paragraph has not come yet.
    fresh: bool,
}

impl Lists {
    pub(super) fn open(&mut self, element: &Element) {
        let outer = self.open.last().map(|list| list.style.clone());
        let style = element
            .get("style-name")
            .map(str::to_owned)
            .or(outer)
            .unwrap_or_default();
        let level = self.open.len() + 1;
        let same = || self.by_style.get(&(style.clone(), level)).copied();
        let goes_on = match element.get("continue-list") {
            Some(key) => self.by_key.get(key).copied(),
            None if element.get("continue-numbering") == Some("true") => same(),
            None => None,
        };
        let key = element.get("id").map(str::to_owned);
        self.open.push(List {
            style,
            key,
            number: None,
            goes_on,
            fresh: false,
        });
    }

    pub(super) fn close(&mut self) {
        let level = self.open.len();
        let Some(list) = self.open.pop() else { return };
        if let Some(number) = list.number {
            self.by_style.insert((list.style, level), number);
            if let Some(key) = list.key {
                self.by_key.insert(key, number);
            }
        }
    }

    /// An item begins.
    pub(super) fn item(&mut self, element: &Element, styles: &Styles) {
        let level = self.open.len();
        let Some(list) = self.open.last_mut() else { return };
        let start = styles.level(&list.style, level).map_or(1, |level| level.start);
        let next = match (list.number, list.goes_on) {
            (Some(number), _) | (None, Some(number)) => number.saturating_add(1),
            (None, None) => start,
        };
        list.number = Some(element.number("start-value").unwrap_or(next));
        list.fresh = true;
    }

    /// What stands before the paragraph that begins now; only the first of an item has it.
    pub(super) fn label(&mut self, styles: &Styles) -> Option<String> {
        let depth = self.open.len();
        let list = self.open.last_mut()?;
        if !std::mem::take(&mut list.fresh) {
            return None;
        }
        let Some(level) = styles.level(&list.style, depth) else {
            return Some("-".into());
        };
        match level.numerals {
            Numerals::Mark => return Some("-".into()),
            Numerals::None => return None,
            _ => {}
        }
        let first = depth.saturating_sub(level.shown.clamp(1, depth));
        let numbers: Vec<String> = (first..depth)
            .map(|at| {
                let outer = styles.level(&self.open[at].style, at + 1);
                let numerals = outer.map_or(Numerals::Figures, |level| level.numerals);
                numerals.write(self.open[at].number.unwrap_or(1))
            })
            .filter(|number| !number.is_empty())
            .collect();
        Some(
            format!("{}{}{}", level.before, numbers.join("."), level.after)
                .trim()
                .to_owned(),
        )
    }
}
