//! From a cook's name to a food.
//!
//! A name that one food bears is *exact* and sure; words of praise, size and cut do not count against it. Otherwise
//! each word that is left over or missing costs, by what kind of word it is; the best food is sure only when nothing
//! but small change was left over and no other food comes near. A name that several foods may bear (`stock`,
//! `cream`: marked `?` in the name table) is sure only when unit or preparation tells which.

use std::collections::HashMap;

use potwright_measure::Unit;
use serde::{Deserialize, Serialize};

use crate::error::TableError;
use crate::hints::{self, Hints};
use crate::larder::Larder;
use crate::spelling::one_slip;
use crate::words::{Class, Token, Words, fold};
use crate::{Food, FoodId, State};

/// What a name was taken for.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Match {
    /// The likeliest food; none when no word of the name is known.
    pub best: Option<FoodId>,
    /// How well it fits, 0–1; 1 is a name the food bears. A rule of thumb: only its order means something.
    pub score: f64,
    /// Other foods it may be, likeliest first, with their scores; at most five.
    pub rivals: Vec<(FoodId, f64)>,
    /// Whether the best may be taken without asking the writer.
    pub sure: bool,
}

// What a word costs that stands on one side only. Rules of thumb of our own, ordered so that a clash of what the food
// is outweighs one of state, that one of grade, that one of cut.
const EXTRA_HEAD: f64 = 0.5;
const EXTRA_NAME: f64 = 0.35;
const MISSING_NAME: f64 = 0.35;
const STATE: f64 = 0.3;
const FROZEN: f64 = 0.15;
const GRADE: f64 = 0.15;
const CUT: f64 = 0.02;
const MISSING_GRADE: f64 = 0.2;
const MISSING_CUT: f64 = 0.2;
const MISSPELT: f64 = 0.1;
/// The score of a name that several foods may bear, before hints.
const SHARED: f64 = 0.7;
/// What a hint for or against moves a shared name.
const HINT: f64 = 0.2;
/// A food below this is no rival.
const FLOOR: f64 = 0.4;
/// A best below this is not sure.
const SURE: f64 = 0.8;
/// A best nearer than this to the next is not sure.
const MARGIN: f64 = 0.1;

/// A name some food bears.
#[derive(Debug)]
struct Name {
    food: u32,
    words: Vec<u32>,
    /// Other foods may bear it too.
    shared: bool,
    /// It holds only in this very form: `peppers`, not `pepper`.
    surface: Option<String>,
}

/// The name index.
#[derive(Debug, Default)]
pub(crate) struct Index {
    words: Words,
    /// Word to its number.
    numbers: HashMap<String, u32>,
    /// Number to the word, its class, and the names it stands in.
    spelled: Vec<(String, Class, Vec<u32>)>,
    names: Vec<Name>,
    /// For every food: its state and kind decide what a word or hint clashes with.
    foods: Vec<(State, crate::Kind)>,
}

/// A word of the query, as the index knows it.
struct Asked {
    numbers: Vec<u32>,
    class: Class,
    misspelt: bool,
}

/// A name that shares words with the query.
#[derive(Clone, Copy)]
struct Candidate {
    food: u32,
    score: f64,
    exact: bool,
    /// Words of praise or of the food's own state that were left over: of two exact names the fuller wins.
    left_over: usize,
    shared: bool,
    small_change: bool,
}

impl Candidate {
    /// The order of candidates: exact before inexact, borne alone before shared, fuller before barer, then the score.
    fn rank(&self) -> (bool, bool, usize, f64) {
        (
            self.exact,
            self.exact && !self.shared,
            usize::MAX - self.left_over,
            self.score,
        )
    }
}

impl Index {
    pub(crate) fn new(foods: &[Food], words: &str) -> Result<Index, TableError> {
        let mut index = Index {
            words: Words::read(words)?,
            ..Index::default()
        };
        for (number, food) in foods.iter().enumerate() {
            index.foods.push((food.state, food.kind));
            let own = [food.name.as_str(), food.plural.as_str()];
            for name in own.into_iter().chain(food.synonyms.iter().map(String::as_str)) {
                index.bear(number as u32, name);
            }
        }
        Ok(index)
    }

    /// Notes that a food bears a name: `?` before it when others may too, `=` when it holds in this form only.
    fn bear(&mut self, food: u32, name: &str) {
        let shared = name.starts_with('?');
        let bare = name.trim_start_matches(['?', '=']);
        let surface = name.starts_with('=').then(|| fold(bare));
        let mut numbers: Vec<u32> = Vec::new();
        for token in self.words.tokens(bare) {
            let number = self.number(token);
            if !numbers.contains(&number) {
                numbers.push(number);
            }
        }
        let own = self.names.iter().rev().take_while(|other| other.food == food);
        let same = |other: &Name| other.words == numbers && other.surface == surface && other.shared == shared;
        if numbers.is_empty() || own.into_iter().any(same) {
            return;
        }
        let name = self.names.len() as u32;
        for number in &numbers {
            if let Some((_, _, names)) = self.spelled.get_mut(*number as usize) {
                names.push(name);
            }
        }
        self.names.push(Name {
            food,
            words: numbers,
            shared,
            surface,
        });
    }

    fn number(&mut self, token: Token) -> u32 {
        if let Some(number) = self.numbers.get(&token.stem) {
            return *number;
        }
        let number = self.spelled.len() as u32;
        self.spelled.push((token.stem.clone(), token.class, Vec::new()));
        self.numbers.insert(token.stem, number);
        number
    }

    /// The query's words; an unknown one is looked for at distance one.
    fn asked(&self, tokens: &[Token]) -> Vec<Asked> {
        let ask = |token: &Token| {
            if let Some(number) = self.numbers.get(&token.stem) {
                return Asked {
                    numbers: vec![*number],
                    class: token.class,
                    misspelt: false,
                };
            }
            let numbers = if token.class == Class::Name {
                self.nearby(&token.stem)
            } else {
                Vec::new()
            };
            Asked {
                misspelt: !numbers.is_empty(),
                numbers,
                class: token.class,
            }
        };
        tokens.iter().map(ask).collect()
    }

    /// Words one slip away; short words and those with digits are not guessed at.
    fn nearby(&self, stem: &str) -> Vec<u32> {
        if stem.len() < 4 || stem.bytes().any(|byte| byte.is_ascii_digit()) {
            return Vec::new();
        }
        let near = |word: &str| word.len().abs_diff(stem.len()) <= 1 && word.len() > 3 && one_slip(word, stem);
        (0u32..)
            .zip(&self.spelled)
            .filter(|(_, (word, _, _))| near(word))
            .map(|(number, _)| number)
            .collect()
    }

    /// Every food with a name that shares a word with the query, best first, one entry a food.
    fn rank(&self, tokens: &[Token]) -> Vec<Candidate> {
        let asked = self.asked(tokens);
        let surface = tokens
            .iter()
            .map(|token| token.surface.as_str())
            .collect::<Vec<_>>()
            .join(" ");
        let mut best: Vec<Candidate> = Vec::new();
        for (name, mask) in self.sharing(&asked) {
            let Some(candidate) = self.weigh(name, mask, &asked, &surface) else {
                continue;
            };
            // The names of one food stand side by side.
            match best.last_mut() {
                Some(other) if other.food == candidate.food => {
                    if candidate.rank() > other.rank() {
                        *other = candidate;
                    }
                }
                _ => best.push(candidate),
            }
        }
        best.sort_by(|a, b| b.score.total_cmp(&a.score).then(a.food.cmp(&b.food)));
        best
    }

    /// The names that share a telling word with the query, each with the places of all words it shares, in order.
    ///
    /// Words of praise, cut and state tell nothing by themselves, unless the query holds no others.
    fn sharing(&self, asked: &[Asked]) -> Vec<(u32, u32)> {
        let telling = |word: &Asked| !matches!(word.class, Class::Idle | Class::Cut | Class::State(_));
        let all = !asked.iter().any(|word| telling(word) && !word.numbers.is_empty());
        let mut masks = vec![0u32; self.names.len()];
        let mut touched = Vec::new();
        for pass in [true, false] {
            for (word, place) in asked
                .iter()
                .zip(0..32u32)
                .filter(|(word, _)| (all || telling(word)) == pass)
            {
                for name in self.names_of(word) {
                    let Some(mask) = masks.get_mut(name as usize) else {
                        continue;
                    };
                    match (*mask, pass) {
                        (0, true) => touched.push(name),
                        (0, false) => continue,
                        _ => {}
                    }
                    *mask |= 1 << place;
                }
            }
        }
        touched.sort_unstable();
        touched
            .into_iter()
            .map(|name| (name, masks.get(name as usize).copied().unwrap_or(0)))
            .collect()
    }

    /// The names a word of the query stands in.
    fn names_of(&self, word: &Asked) -> impl Iterator<Item = u32> {
        let spelled = word
            .numbers
            .iter()
            .filter_map(|number| self.spelled.get(*number as usize));
        spelled.flat_map(|(_, _, names)| names.iter().copied())
    }

    /// How well one name fits.
    fn weigh(&self, name: u32, mask: u32, asked: &[Asked], surface: &str) -> Option<Candidate> {
        let name = self.names.get(name as usize)?;
        if name.surface.as_ref().is_some_and(|its| its != surface) {
            return None;
        }
        let (state, _) = *self.foods.get(name.food as usize)?;
        let mut cost = 0.0;
        let mut exact = true;
        let mut small_change = true;
        let mut left_over = 0;
        let head = asked.iter().rposition(|word| matches!(word.class, Class::Name));
        for (place, word) in asked.iter().enumerate().take(32) {
            if mask & (1 << place) != 0 {
                if word.misspelt {
                    cost += MISSPELT;
                    exact = false;
                }
                continue;
            }
            let extra = extra_cost(word.class, state, head == Some(place));
            cost += extra;
            left_over += usize::from(extra == 0.0);
            exact &= extra == 0.0;
            small_change &= extra < EXTRA_NAME;
        }
        let matched = |number: &u32| {
            asked
                .iter()
                .enumerate()
                .take(32)
                .any(|(place, word)| mask & (1 << place) != 0 && word.numbers.contains(number))
        };
        for number in name.words.iter().filter(|number| !matched(number)) {
            let class = self
                .spelled
                .get(*number as usize)
                .map_or(Class::Name, |(_, class, _)| *class);
            let missing = missing_cost(class);
            cost += missing;
            exact = false;
            small_change &= missing < MISSING_NAME;
        }
        let score = (if name.shared { SHARED } else { 1.0 } - cost).max(0.0);
        Some(Candidate {
            food: name.food,
            score,
            exact,
            left_over,
            shared: name.shared,
            small_change,
        })
    }
}

fn extra_cost(class: Class, state: State, head: bool) -> f64 {
    match class {
        Class::Idle => 0.0,
        Class::Cut => CUT,
        Class::Grade => GRADE,
        Class::State(asked) if asked == state => 0.0,
        Class::State(State::Frozen) => FROZEN,
        Class::State(_) => STATE,
        Class::Name if head => EXTRA_HEAD,
        Class::Name => EXTRA_NAME,
    }
}

fn missing_cost(class: Class) -> f64 {
    match class {
        Class::Idle | Class::Grade => MISSING_GRADE,
        Class::Cut => MISSING_CUT,
        Class::State(_) => STATE,
        Class::Name => MISSING_NAME,
    }
}

impl Larder {
    /// What a cook's name means, with a score and its rivals.
    ///
    /// `name` is the food in the line's own words (`red onions`); state words, preparation and unit come as hints.
    /// Never silent: when [`Match::sure`] is false the writer is to be asked.
    #[must_use]
    pub fn find(&self, name: &str, hints: &Hints<'_>) -> Match {
        let words = &self.index.words;
        let plain = words.tokens(name);
        let mut stated = plain.clone();
        for state in hints.state {
            add(&mut stated, words.tokens(state), |_| true);
        }
        let mut full = stated.clone();
        add(&mut full, words.tokens(hints.preparation), |class| {
            matches!(class, Class::Grade | Class::State(_))
        });
        if hints.unit == Some(Unit::Can) {
            add(&mut full, words.tokens("canned"), |_| true);
            add(&mut full, words.tokens(hints.preparation), |class| class == Class::Cut);
        }
        let variants = [
            Some(full),
            Some(stated.clone()),
            joined(&stated, &self.index),
            Some(plain),
        ];
        for tokens in variants.iter().flatten() {
            let ranked = self.index.rank(tokens);
            if ranked.iter().any(|candidate| candidate.exact) && self.state_agrees(&ranked, &stated) {
                return self.settle_exact(ranked, hints);
            }
        }
        let ranked = self.index.rank(&stated);
        settle_near(ranked)
    }

    /// Whether the exact food's state clashes with no state word of the line.
    fn state_agrees(&self, ranked: &[Candidate], stated: &[Token]) -> bool {
        let bearers = ranked.iter().filter(|candidate| candidate.exact);
        let mut states = bearers.filter_map(|candidate| self.index.foods.get(candidate.food as usize));
        states.any(|(state, _)| {
            stated.iter().all(|token| match token.class {
                Class::State(asked) => asked == *state || asked == State::Frozen,
                _ => true,
            })
        })
    }

    /// One food bears the name, or several share it and the hints tell.
    fn settle_exact(&self, mut ranked: Vec<Candidate>, hints: &Hints<'_>) -> Match {
        let hint = |food: u32| match self.index.foods.get(food as usize) {
            Some((state, kind)) => hints::for_or_against(hints, *state, *kind),
            None => 0,
        };
        let bearers = || ranked.iter().filter(|candidate| candidate.exact && !candidate.shared);
        let fullest = bearers().map(|candidate| candidate.left_over).min();
        let alone = bearers()
            .filter(|candidate| Some(candidate.left_over) == fullest)
            .count();
        let told = ranked
            .iter()
            .any(|candidate| candidate.exact && candidate.shared && hint(candidate.food) > 0);
        for candidate in ranked.iter_mut().filter(|candidate| candidate.exact) {
            let hint = f64::from(hint(candidate.food));
            if candidate.shared {
                candidate.score += HINT * hint;
            } else if told && hint < 0.0 {
                candidate.score = SHARED;
            }
        }
        ranked.sort_by(|a, b| {
            let fuller = |c: &Candidate| (c.exact, usize::MAX - c.left_over);
            let by_score = |a: &Candidate, b: &Candidate| b.score.total_cmp(&a.score).then(a.food.cmp(&b.food));
            if told {
                by_score(a, b)
            } else {
                fuller(b).cmp(&fuller(a)).then(by_score(a, b))
            }
        });
        let next = ranked
            .iter()
            .skip(1)
            .filter(|candidate| candidate.exact)
            .map(|c| c.score)
            .fold(0.0, f64::max);
        let sure = match ranked.first() {
            Some(best) if best.shared => best.score > SURE && best.score - next > MARGIN,
            Some(best) => alone == 1 && best.score >= SURE,
            None => false,
        };
        finish(&ranked, sure)
    }
}

/// No food bears the name: the nearest, sure only when it is near and alone.
fn settle_near(ranked: Vec<Candidate>) -> Match {
    let next = ranked.get(1).map_or(0.0, |candidate| candidate.score);
    let sure = ranked
        .first()
        .is_some_and(|best| best.small_change && !best.shared && best.score >= SURE && best.score - next >= MARGIN);
    finish(&ranked, sure)
}

fn finish(ranked: &[Candidate], sure: bool) -> Match {
    let best = ranked.first();
    let rivals = ranked
        .iter()
        .skip(1)
        .filter(|candidate| candidate.score >= FLOOR)
        .take(5);
    Match {
        best: best.map(|candidate| FoodId(candidate.food)),
        score: best.map_or(0.0, |candidate| candidate.score.clamp(0.0, 1.0)),
        rivals: rivals
            .map(|candidate| (FoodId(candidate.food), candidate.score.clamp(0.0, 1.0)))
            .collect(),
        sure,
    }
}

/// Adds the words of a class that are not there yet.
fn add(tokens: &mut Vec<Token>, more: Vec<Token>, wanted: impl Fn(Class) -> bool) {
    for token in more {
        if wanted(token.class) && !tokens.iter().any(|other| other.stem == token.stem) {
            tokens.push(token);
        }
    }
}

/// 'corn meal' as `cornmeal`: two neighbours that make a known word when written as one.
fn joined(tokens: &[Token], index: &Index) -> Option<Vec<Token>> {
    for (place, pair) in tokens.windows(2).enumerate() {
        let [left, right] = pair else { continue };
        let stem = format!("{}{}", left.stem, right.stem);
        if let Some((_, class, _)) = index
            .numbers
            .get(&stem)
            .and_then(|number| index.spelled.get(*number as usize))
        {
            let surface = format!("{}{}", left.surface, right.surface);
            let mut out = tokens.to_vec();
            out.splice(
                place..place + 2,
                [Token {
                    stem,
                    surface,
                    class: *class,
                }],
            );
            return Some(out);
        }
    }
    None
}
