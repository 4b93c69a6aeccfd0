//! Which foods of the list a word of the method stands for.

use std::borrow::Cow;

use rustc_hash::FxHashMap;

use super::index::{Index, at_place};
use super::name::Name;
use super::nouns::Mention;
use super::words::{in_group, other_name, same};
use crate::lexicon::{Class, class, singular};
use crate::speech::{Speech, speech};
use crate::token::Token;
use crate::{Recipe, Share};
use potwright_measure::Unit;

/// Verbs of knife and peeler.
const CUTS: &[&str] = &[
    "chop", "cut", "slice", "dice", "peel", "grate", "shred", "trim", "mince", "pare", "halve",
];

/// A food of the list: index into the ingredients and into the items of that one.
pub(super) type Place = (usize, usize);

/// The foods of the list.
#[derive(Debug, Default)]
pub(super) struct Names {
    pub(super) list: Vec<Name>,
    index: Index,
    /// The words of the name of each section, and the sections by the last of them.
    sections: Vec<Vec<String>>,
    section_ends: FxHashMap<String, Vec<usize>>,
}

/// What helps to choose between foods of the same name.
pub(super) struct Sought<'a> {
    pub(super) section: Option<usize>,
    /// Whether it has gone in already.
    pub(super) placed: &'a dyn Fn(Place) -> bool,
    /// What is sought is moved from one vessel to another, so that it has gone in before.
    pub(super) moved: bool,
    /// The verb of the clause: 'dust' asks for the flour that is listed 'plus more for dusting'.
    pub(super) verb: &'a str,
    pub(super) recipe: &'a Recipe,
}

/// The words of a text in the singular, hyphens as spaces, under the names that lists use.
pub(super) fn plain(text: &str) -> Vec<String> {
    let lower = text.to_lowercase();
    let words = lower
        .split(|c: char| !c.is_alphanumeric() && c != '\'')
        .filter(|word| !word.is_empty());
    words
        .map(|word| same(&singular(crate::lexicon::meant(word, false).unwrap_or(word))).to_lowercase())
        .collect()
}

impl Names {
    pub(super) fn of(text: &str, recipe: &Recipe) -> Names {
        let mut list = Vec::new();
        for (index, ingredient) in recipe.ingredients.iter().enumerate() {
            for (item_at, item) in ingredient.items.iter().enumerate() {
                let named = item.name.split([',', '(']).next().unwrap_or("");
                let mut words = plain(named);
                let numbered = |word: &String| word.chars().all(|c| matches!(c, 'i' | 'v' | 'x') || c.is_ascii_digit());
                while words.len() > 1 && words.last().is_some_and(numbered) {
                    words.pop();
                }
                let Some(head) = words.last().cloned() else { continue };
                let last = named.split_whitespace().last().unwrap_or("").to_lowercase();
                list.push(Name {
                    place: (index, item_at),
                    plural: singular(&last) != last,
                    own: singular(&last).into_owned(),
                    head,
                    extra: if ingredient.items.len() > 1 {
                        plain(&item.name)
                    } else {
                        plain(ingredient.span.of(text))
                    },
                    words,
                    section: ingredient.section,
                    span: item.span,
                    line: ingredient.span,
                    done: ingredient
                        .preparation
                        .as_ref()
                        .map_or(String::new(), |words| words.text.to_lowercase()),
                    optional: ingredient.optional,
                    for_serving: ingredient.for_serving,
                });
            }
        }
        let sections: Vec<Vec<String>> = recipe.sections.iter().map(|section| plain(&section.name)).collect();
        let mut section_ends: FxHashMap<String, Vec<usize>> = FxHashMap::default();
        for (at, words) in sections.iter().enumerate() {
            if let Some(last) = words.last() {
                section_ends.entry(last.clone()).or_default().push(at);
            }
        }
        Names {
            index: Index::of(&list),
            list,
            sections,
            section_ends,
        }
    }

    /// The sections whose names end in this word, each with all its words.
    pub(super) fn sections_ending(&self, word: &str) -> impl Iterator<Item = (usize, &[String])> {
        let found = self.section_ends.get(word).map_or(&[][..], Vec::as_slice);
        found
            .iter()
            .take(64)
            .filter_map(|at| Some((*at, self.sections.get(*at)?.as_slice())))
    }

    /// The foods in reach of a place on the page: those of its section, or all.
    pub(super) fn in_reach(&self, section: Option<usize>, place: usize) -> Vec<Place> {
        let found = self.index.in_section(section, &self.list, place);
        found.into_iter().map(|at| self.list[at].place).collect()
    }

    /// The foods whose entries stand between two places of the page.
    pub(super) fn between(&self, from: usize, to: usize) -> Vec<Place> {
        let names = self.index.between(from, to).map(|at| &self.list[at]);
        names
            .filter(|name| name.line.end <= to)
            .map(|name| name.place)
            .collect()
    }

    /// The section of the one food that a mention can stand for.
    pub(super) fn only_section(&self, mention: &Mention) -> Option<usize> {
        let words: Vec<String> = mention.words.iter().flat_map(|word| plain(word)).collect();
        let head = words.last()?;
        let near = self
            .index
            .holding(std::iter::once(head), &self.list, mention.span.start);
        let mut fitting = near.iter().map(|at| &self.list[*at]).filter(|name| name.head == *head);
        let section = fitting.next()?.section?;
        fitting.next().is_none().then_some(section)
    }

    /// Whether foods are listed behind a place of the page.
    pub(super) fn any_after(&self, place: usize) -> bool {
        self.index.any_after(place)
    }

    /// Which tokens are part of a name of two or more words of the list.
    pub(super) fn kept(&self, tokens: &[Token]) -> Vec<bool> {
        let mut kept = vec![false; tokens.len()];
        let words: Vec<Cow<str>> = tokens
            .iter()
            .map(|token| singular(&token.lower))
            .map(|one| match other_name(&one) {
                Some(same) => Cow::Borrowed(same),
                None => one,
            })
            .collect();
        for (start, first) in words.iter().enumerate() {
            let names = self.index.beginning(first, &self.list, tokens[start].span.start);
            for name in names.iter().map(|at| &self.list[*at]) {
                let length = name.words.len();
                if words
                    .get(start..start + length)
                    .is_some_and(|here| here.iter().eq(name.words.iter()))
                {
                    kept[start..start + length].fill(true);
                }
            }
        }
        kept
    }

    pub(super) fn get(&self, place: Place) -> Option<&Name> {
        at_place(&self.list, place)
    }

    /// The foods that a mention stands for; empty when the list has none.
    pub(super) fn find(&self, mention: &Mention, sought: &Sought) -> Vec<Place> {
        if let Some(at) = self.index.standing_at(mention.words_span) {
            return vec![self.list[at].place];
        }
        let words: Vec<String> = mention.words.iter().flat_map(|word| plain(word)).collect();
        let Some(head) = words.last() else { return Vec::new() };
        if let Some(group) = group(&words) {
            let members = self.members(group, mention, sought);
            if !members.is_empty() {
                return members;
            }
        }
        let own = mention.words.last().map_or(Cow::default(), |word| singular(word));
        let near = self.index.holding(words.iter(), &self.list, mention.span.start);
        let scored: Vec<(f64, &Name)> = near
            .iter()
            .map(|at| &self.list[*at])
            .filter_map(|name| {
                let fit = name.fit(&words)?;
                // A listed food of that very name comes before one of a kindred name.
                let own = if name.own == own { 3.0 } else { 0.0 };
                Some((fit + own + self.favour(name, mention, sought), name))
            })
            .collect();
        if scored.is_empty() && words.len() == 1 && matches!(head.as_str(), "juice" | "zest" | "rind") {
            let citrus = self.index.grouped("citrus", &self.list, mention.span.start);
            let names = citrus.iter().map(|at| &self.list[*at]);
            return names
                .filter(|name| name.in_group("citrus"))
                .map(|name| name.place)
                .take(1)
                .collect();
        }
        let best = scored.iter().map(|(score, _)| *score).fold(0.0, f64::max);
        if best <= 0.0 {
            return self.of_kind(&words, mention, sought);
        }
        let typed = mention.words.last().map_or("", String::as_str);
        let several = singular(typed) != typed && words.len() == 1 && !matches!(mention.share, Share::Measure(_));
        let top = scored
            .iter()
            .filter(|(score, name)| (best - score).abs() < 0.05 && (!several || name.head == *head));
        let places: Vec<Place> = top.map(|(_, name)| name.place).collect();
        let twins = places
            .windows(2)
            .all(|pair| self.get(pair[0]).map(|n| &n.words) != self.get(pair[1]).map(|n| &n.words));
        if several && twins {
            places
        } else {
            places.into_iter().take(1).collect()
        }
    }

    /// 'the noodles' for rice vermicelli, 'the nuts' for hazelnuts: the foods of the list that are of the kind.
    fn of_kind(&self, words: &[String], mention: &Mention, sought: &Sought) -> Vec<Place> {
        let Some((head, before)) = words.split_last().filter(|(head, _)| {
            super::words::is_kind(head) && !speech(head).is(Speech::MADE) && !speech(head).is(Speech::POT)
        }) else {
            return Vec::new();
        };
        let members = self.members(head, mention, sought);
        let known = |place: &Place| {
            let name = self.get(*place);
            let fits = |word: &String| name.is_some_and(|n| n.has(word)) || !class(word).is(Class::FOOD | Class::KIND);
            before.iter().all(fits)
        };
        members.into_iter().filter(known).collect()
    }

    fn favour(&self, name: &Name, mention: &Mention, sought: &Sought) -> f64 {
        let section = if sought.section.is_some() && name.section == sought.section {
            1.5
        } else {
            0.0
        };
        let fresh = if (sought.placed)(name.place) { 0.0 } else { 0.6 };
        let amount = sought
            .recipe
            .ingredients
            .get(name.place.0)
            .and_then(|ingredient| ingredient.quantity);
        let equal = match (mention.share, amount) {
            (Share::Measure(said), Some(listed))
                if said.amount.low == listed.amount.low && said.unit == listed.unit =>
            {
                0.5
            }
            _ => 0.0,
        };
        let more = sought
            .recipe
            .ingredients
            .get(name.place.0)
            .and_then(|ingredient| ingredient.plus_more.as_ref());
        let meant = !sought.verb.is_empty() && more.is_some_and(|more| more.text.to_lowercase().contains(sought.verb));
        let worked = mention
            .words
            .iter()
            .any(|word| class(word).is(Class::PREPARED) && name.done.contains(word.as_str()));
        section + fresh + equal + if meant || worked { 1.0 } else { 0.0 }
    }

    fn members(&self, group: &str, mention: &Mention, sought: &Sought) -> Vec<Place> {
        // Tinned vegetables need no knife.
        let tinned = |name: &&Name| {
            let unit = sought
                .recipe
                .ingredients
                .get(name.place.0)
                .and_then(|i| i.quantity)
                .and_then(|q| q.unit);
            matches!(unit, Some(Unit::Can | Unit::Jar)) && CUTS.contains(&sought.verb)
        };
        let near = self.index.grouped(group, &self.list, mention.span.start);
        let all: Vec<&Name> = near
            .iter()
            .map(|at| &self.list[*at])
            .filter(|name| name.in_group(group) && !tinned(name))
            .collect();
        let section: Vec<&Name> = all
            .iter()
            .copied()
            .filter(|name| name.section == sought.section)
            .collect();
        let here = if section.is_empty() { all } else { section };
        if matches!(group, "meat" | "bird" | "fish" | "shellfish" | "sausage" | "wine") {
            let first = here.iter().find(|name| !in_group(&name.head, "fat")).or(here.first());
            return first.map(|name| name.place).into_iter().collect();
        }
        let fresh: Vec<Place> = here
            .iter()
            .map(|name| name.place)
            .filter(|place| !(sought.placed)(*place))
            .collect();
        let settled = here.iter().any(|name| (sought.placed)(name.place));
        if sought.moved && settled {
            return here
                .iter()
                .map(|name| name.place)
                .filter(|place| (sought.placed)(*place))
                .collect();
        }
        if fresh.is_empty() {
            here.iter().map(|name| name.place).collect()
        } else {
            fresh
        }
    }
}

/// The group that the words name: 'the vegetables', 'dry ingredients', 'seasonings'.
fn group(words: &[String]) -> Option<&'static str> {
    let head = words.last()?.as_str();
    // 'fish meat' is fish; 'crab meat' is crab.
    if words.len() > 1 && head == "meat" {
        let kind = &words[words.len() - 2];
        return match class(kind).is(Class::FOOD) {
            _ if kind == "fish" => Some("fish"),
            true => None,
            false => Some("meat"),
        };
    }
    let before = words
        .len()
        .checked_sub(2)
        .and_then(|at| words.get(at))
        .map_or("", String::as_str);
    Some(match head {
        "vegetable" => "vegetable",
        "meat" => "meat",
        "bird" | "fowl" => "bird",
        "fish" => "fish",
        "shellfish" => "shellfish",
        "herb" => "herb",
        "spice" => "spice",
        "seasoning" => "seasoning",
        "green" => "green",
        "root" => "root",
        "topping" => "topping",
        "ingredient" if before == "dry" => "dry",
        _ => return None,
    })
}
