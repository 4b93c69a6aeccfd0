//! Where the foods of a list are found by their words, so that a mention is compared with few of them, however long the
//! page is.

use rustc_hash::FxHashMap;

use super::foods::Place;
use super::name::Name;
use super::words::groups_of;
use crate::Span;

/// So many foods of one word before a mention, and after it, are looked at; no list that is cooked from has more.
const BEFORE: usize = 48;
const AFTER: usize = 16;
/// So many foods before and after are in reach of 'the vegetables' and 'everything'.
pub(super) const REACH: usize = 200;

/// The foods of a list, by what they can be found by. The numbers are places in the list, in rising order.
#[derive(Debug, Default)]
pub(super) struct Index {
    by_word: FxHashMap<String, Vec<usize>>,
    by_first: FxHashMap<String, Vec<usize>>,
    by_group: FxHashMap<&'static str, Vec<usize>>,
    /// Names by where they stand, and entries by where they begin.
    spans: Vec<(Span, usize)>,
    lines: Vec<(usize, usize)>,
    sections: FxHashMap<Option<usize>, Vec<usize>>,
}

impl Index {
    pub(super) fn of(list: &[Name]) -> Index {
        let mut index = Index::default();
        for (at, name) in list.iter().enumerate() {
            for word in name.words().iter().chain(name.extra()) {
                push(index.by_word.entry(word.clone()).or_default(), at);
            }
            if let [first, _, ..] = name.words() {
                push(index.by_first.entry(first.clone()).or_default(), at);
            }
            for group in name.words().iter().flat_map(|word| groups_of(word)) {
                push(index.by_group.entry(group).or_default(), at);
            }
            index.spans.push((name.span, at));
            index.lines.push((name.line.start, at));
            push(index.sections.entry(name.section).or_default(), at);
        }
        index.spans.sort_unstable();
        index.lines.sort_unstable();
        index
    }

    /// The name that stands where these words stand.
    pub(super) fn standing_at(&self, span: Span) -> Option<usize> {
        let end = self.spans.partition_point(|(name, _)| name.start < span.end);
        let near = self.spans[..end].iter().rev().take(8);
        near.filter(|(name, _)| span.start < name.end).map(|(_, at)| *at).min()
    }

    /// Names that hold one of these words, the nearest to a place on the page, in the order of the list.
    pub(super) fn holding<'a>(
        &self,
        words: impl Iterator<Item = &'a String>,
        list: &[Name],
        place: usize,
    ) -> Vec<usize> {
        let mut found: Vec<usize> = Vec::new();
        for word in words {
            found.extend(near(self.by_word.get(word), list, place, BEFORE, AFTER));
        }
        found.sort_unstable();
        found.dedup();
        found
    }

    /// Names of two and more words that begin with this one.
    pub(super) fn beginning(&self, word: &str, list: &[Name], place: usize) -> &[usize] {
        near(self.by_first.get(word), list, place, BEFORE, AFTER)
    }

    /// Names that a word for several may mean.
    pub(super) fn grouped(&self, group: &str, list: &[Name], place: usize) -> &[usize] {
        near(self.by_group.get(group), list, place, REACH, REACH)
    }

    /// Names of a section; of the whole list when it has none.
    pub(super) fn in_section(&self, section: Option<usize>, list: &[Name], place: usize) -> Vec<usize> {
        let own = section.and_then(|section| self.sections.get(&Some(section)));
        match own {
            Some(own) => near(Some(own), list, place, REACH, REACH).to_vec(),
            None => {
                let middle = self.lines.partition_point(|(start, _)| *start <= place);
                let window = middle.saturating_sub(REACH)..self.lines.len().min(middle + REACH);
                let mut found: Vec<usize> = self.lines[window].iter().map(|(_, at)| *at).collect();
                found.sort_unstable();
                found
            }
        }
    }

    /// Names whose entries begin from one place of the page up to another.
    pub(super) fn between(&self, from: usize, to: usize) -> impl Iterator<Item = usize> + '_ {
        let first = self.lines.partition_point(|(start, _)| *start < from);
        self.lines[first..]
            .iter()
            .take_while(move |(start, _)| *start < to)
            .map(|(_, at)| *at)
    }

    /// Whether an entry begins behind a place of the page.
    pub(super) fn any_after(&self, place: usize) -> bool {
        self.lines.last().is_some_and(|(start, _)| *start > place)
    }
}

fn push(list: &mut Vec<usize>, at: usize) {
    if list.last() != Some(&at) {
        list.push(at);
    }
}

/// The part of a rising list that is nearest to a place on the page.
fn near<'l>(found: Option<&'l Vec<usize>>, list: &[Name], place: usize, before: usize, after: usize) -> &'l [usize] {
    let Some(found) = found else { return &[] };
    let middle = found.partition_point(|at| list.get(*at).is_some_and(|name| name.line.start <= place));
    &found[middle.saturating_sub(before)..found.len().min(middle + after)]
}

/// The name of a place, in a list that is in the order of places.
pub(super) fn at_place(list: &[Name], place: Place) -> Option<&Name> {
    list.binary_search_by_key(&place, |name| name.place)
        .ok()
        .and_then(|at| list.get(at))
}
