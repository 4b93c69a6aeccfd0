//! Ingredients named in running text.
//!
//! A page without a list names its foods in its sentences. Where the page opens with a sentence that counts them up ('Two
//! pounds of chops, eight potatoes, four turnips.'), that sentence is read as a list, and what is measured out later comes
//! to it. Else the foods come one by one where they are used, and the first mention of each is the ingredient.

use std::collections::BTreeMap;

use potwright_measure::Dimension;

use super::stretch::{mentions, names_food, part_start};
use crate::lexicon::{Class, class, singular};
use crate::line::quantity::measured;
use crate::line::{self, Line};
use crate::sentence;
use crate::token::{Token, tokens};
use crate::{Ingredient, Recipe, Span};

/// Fills in the ingredients of a page without a list.
pub(crate) fn ingredients(text: &str, recipe: &mut Recipe) {
    let running: Vec<Span> = recipe
        .steps
        .iter()
        .flat_map(|step| sentences(text, step.words.span))
        .collect();
    let mut known = Known::default();
    let mut begun = false;
    let mut listed = false;
    for span in running {
        if !begun && counts_up(text, span) {
            listed = true;
            let entries = line::read(text, from_first_amount(text, span), &[]).entries;
            for entry in entries.into_iter().filter(|i| !i.items.is_empty()) {
                known.learn(&entry);
                known.ingredients.push(Some(entry));
            }
            continue;
        }
        begun |= super::judge::has_imperative(text, span);
        if another_dish(text, span) {
            continue;
        }
        let as_liked = as_liked(text, span);
        for mention in mentions(text, span) {
            for mut entry in mention.entries {
                entry.optional |= as_liked;
                let taken = mention.of_the && entry.items.iter().all(|item| known.before(&item.name).is_some());
                if (entry.quantity.is_some() || !listed) && !taken {
                    known.take(entry, listed);
                }
            }
        }
    }
    let closing = recipe.closing.iter().flat_map(|words| sentences(text, words.span));
    for span in closing.filter(|span| as_liked(text, *span)) {
        for mut entry in mentions(text, span).into_iter().flat_map(|mention| mention.entries) {
            entry.optional = true;
            if entry.quantity.is_some() {
                known.take(entry, listed);
            }
        }
    }
    recipe.ingredients.extend(known.ingredients.into_iter().flatten());
}

/// The foods that have been named so far. Each is known by every ending of its name: 'red onion' is known as 'onion' too.
#[derive(Default)]
struct Known {
    /// In the order of the page; `None` where a mention without an amount gave way to one with it.
    ingredients: Vec<Option<Ingredient>>,
    whole: BTreeMap<String, usize>,
    endings: BTreeMap<String, usize>,
}

impl Known {
    /// The ingredient that was named so before; 'clams' after 'fresh clams', 'boiled potatoes' after 'potatoes'.
    fn before(&self, name: &str) -> Option<usize> {
        let words = words(name);
        let whole = self.endings.get(&words.join(" "));
        let ending = || (0..words.len()).find_map(|from| self.whole.get(&words[from..].join(" ")));
        whole.or_else(ending).copied()
    }

    /// Keeps the names of the ingredient that is about to be pushed.
    fn learn(&mut self, entry: &Ingredient) {
        let index = self.ingredients.len();
        for item in &entry.items {
            let words = words(&item.name);
            // 'the chicken' after 'chicken thighs'.
            let part =
                |word: &&String| class(word).is(Class::PART) && !matches!(word.as_str(), "juice" | "zest" | "rind");
            let whole = words.len() - words.iter().rev().take_while(part).count();
            for to in [words.len(), whole] {
                for from in 0..to {
                    self.endings.entry(words[from..to].join(" ")).or_insert(index);
                }
            }
            self.whole.insert(words.join(" "), index);
        }
    }

    /// Adds an ingredient unless it has been named before. One that is measured out takes the place of a bare name.
    /// `listed` says that a sentence has counted up all foods with their amounts.
    fn take(&mut self, mut entry: Ingredient, listed: bool) {
        if let ([item], true) = (entry.items.as_slice(), entry.quantity.is_some())
            && let Some(index) = self.before(&item.name)
            && let Some(earlier) = self.ingredients[index]
                .as_ref()
                .filter(|e| e.quantity.is_none() && e.open.is_none())
            && earlier.items.len() == 1
        {
            self.ingredients[index] = None;
        } else if listed || !further(&entry) {
            entry.items.retain(|item| self.before(&item.name).is_none());
        }
        if !entry.items.is_empty() {
            self.learn(&entry);
            self.ingredients.push(Some(entry));
        }
    }
}

/// Whether it comes to what has been named before: weighed or measured out again, or put in to taste.
fn further(entry: &Ingredient) -> bool {
    let unit = entry.quantity.and_then(|q| q.unit);
    entry.to_taste || unit.is_some_and(|unit| unit.dimension() != Dimension::Piece)
}

/// The words of a name in the singular.
fn words(name: &str) -> Vec<String> {
    name.split(' ')
        .take(8)
        .map(|word| singular(&word.to_lowercase()).into_owned())
        .collect()
}

/// The sentences of a paragraph.
fn sentences(text: &str, span: Span) -> Vec<Span> {
    let tokens = tokens(text, span);
    let place = |(from, to): (usize, usize)| tokens[from..to].iter().map(|t| t.span).reduce(Span::join);
    sentence::sentences(&tokens).into_iter().filter_map(place).collect()
}

/// 'Rabbits may be done in the same way': what else could be cooked so.
fn another_dish(text: &str, span: Span) -> bool {
    let tokens = tokens(text, span);
    let may = tokens.iter().any(|t| t.is_any(&["may", "can", "could", "might"]));
    may && tokens
        .windows(2)
        .any(|pair| pair[0].is_any(&["same", "this"]) && pair[1].is_any(&["way", "manner", "fashion"]))
}

/// 'A sprig of mint is liked by some', 'a glass of sherry may be added', 'a spoonful of rum is an improvement'.
fn as_liked(text: &str, span: Span) -> bool {
    let tokens = tokens(text, span);
    let has = |words: &[&str]| tokens.iter().any(|t| t.is_any(words));
    has(&["is", "are"]) && has(&["liked", "improvement", "addition"])
        || has(&["may", "can", "could", "might"]) && has(&["added"])
}

/// Whether a sentence counts up foods and does nothing with them.
fn counts_up(text: &str, span: Span) -> bool {
    if super::rows::reads_as_prose(text, span) || super::judge::has_imperative(text, span) {
        return false;
    }
    let entries = line::read(text, from_first_amount(text, span), &[]).entries;
    let food = |i: &&Ingredient| i.quantity.is_some() && i.items.iter().any(|item| names_food(&item.name));
    entries.iter().filter(food).count() >= 3
}

/// The sentence without 'You need' and the like in front of the first amount.
fn from_first_amount(text: &str, span: Span) -> Span {
    let line = Line::new(text, span);
    let starts = |at: &usize| measured(&line, *at, false).is_some() || part_start(&line.tokens, *at).is_some();
    let first = (0..line.tokens.len().min(7)).find(starts).unwrap_or(0);
    line.tokens
        .get(first)
        .map_or(span, |t: &Token| Span::new(t.span.start, span.end))
}

#[cfg(test)]
mod tests {
    use crate::token::LOOKED_AT;

    /// How many bytes are split into tokens while a line of so many orders is read.
    fn looked_at(orders: usize) -> usize {
        let before = LOOKED_AT.get();
        let _ = crate::read(&"add the salt and 2 onions, ".repeat(orders));
        LOOKED_AT.get() - before
    }

    /// Sixteen times the line are sixteen times the work; gone through once for each food they would be 256 times.
    #[test]
    fn a_long_line_is_gone_through_a_bounded_number_of_times() {
        let (short, long) = (looked_at(100), looked_at(1600));
        assert!(short > 0 && long < 20 * short, "{short} bytes, then {long}");
    }
}
