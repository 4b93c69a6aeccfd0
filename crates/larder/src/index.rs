//! The name index: which foods bear a name, and how well each fits the words of a query.

use crate::hash::{QuickMap, QuickSet};
use crate::spelling::one_slip;
use crate::words::{Class, Token, Words, fold};
use crate::{Food, FoodId, Market, State};

// What a word costs that stands on one side only. Rules of thumb of our own (common practice, no source; only their
// order means something, and tests/larder/names.tsv holds it fast), ordered so that a clash of what the food
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
pub(crate) const SHARED: f64 = 0.7;

/// A name some food bears.
#[derive(Clone, Debug)]
struct Name {
    food: u32,
    words: Vec<u32>,
    /// Other foods may bear it too.
    shared: bool,
    /// It holds only in this very form: `peppers`, not `pepper`.
    surface: Option<String>,
    /// It holds in the English of this market only, and makes the name doubtful there.
    market: Option<Market>,
}

/// The name index.
#[derive(Clone, Debug, Default)]
pub(crate) struct Index {
    pub(crate) words: Words,
    /// Word to its number.
    numbers: QuickMap<String, u32>,
    /// Number to the word, its class, and the names it stands in.
    spelled: Vec<(String, Class, Vec<u32>)>,
    names: Vec<Name>,
    /// For every food: its state and kind decide what a word or hint clashes with.
    pub(crate) foods: Vec<(State, crate::Kind)>,
    /// The numbers of words as they stand in names, while the index is made: few words make many names.
    met: QuickMap<String, u32>,
}

/// A word of the query, as the index knows it.
struct Asked {
    numbers: Vec<u32>,
    class: Class,
    misspelt: bool,
}

/// A name that shares words with the query.
#[derive(Clone, Copy)]
pub(crate) struct Candidate {
    pub(crate) food: u32,
    pub(crate) score: f64,
    pub(crate) exact: bool,
    /// Words of praise or of the food's own state that were left over: of two exact names the fuller wins.
    pub(crate) left_over: usize,
    pub(crate) shared: bool,
    /// The name is one of the page's own market.
    pub(crate) local: bool,
    /// Nothing but words of praise, cut, grade or state was left over or missing.
    pub(crate) small_change: bool,
}

impl Candidate {
    /// Takes the cost of a word that stands on one side only.
    fn charge(&mut self, cost: f64) {
        self.score -= cost;
        self.exact &= cost == 0.0;
        self.small_change &= cost < MISSING_NAME;
    }

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
    /// The index over `foods`.
    pub(crate) fn new(foods: &[Food], words: Words) -> Index {
        let mut index = Index {
            words,
            foods: foods.iter().map(|food| (food.state, food.kind)).collect(),
            ..Index::default()
        };
        for (number, food) in (0..).zip(foods) {
            index.bear_all(number, food);
        }
        index.met = QuickMap::default();
        index
    }

    /// The index over `foods`, which are those of this index but for the `first`: where one of these bears a name, no
    /// other food does.
    pub(crate) fn with(&self, foods: &[Food], first: &[FoodId]) -> Index {
        let mut index = Index {
            words: self.words.clone(),
            numbers: self.numbers.clone(),
            spelled: self
                .spelled
                .iter()
                .map(|(word, class, _)| (word.clone(), *class, Vec::new()))
                .collect(),
            foods: foods.iter().map(|food| (food.state, food.kind)).collect(),
            ..Index::default()
        };
        for id in first {
            if let Some(food) = foods.get(id.0 as usize) {
                index.bear_all(id.0, food);
            }
        }
        let plainly = index.names.iter().filter(|name| !name.shared && name.surface.is_none());
        let taken: QuickSet<Vec<u32>> = plainly.map(|name| sorted(&name.words)).collect();
        let stays = |name: &&Name| !first.contains(&FoodId(name.food)) && !taken.contains(&sorted(&name.words));
        for name in self.names.iter().filter(stays) {
            index.enter(name.clone());
        }
        index.met = QuickMap::default();
        index
    }

    /// Enters a name under its words.
    fn enter(&mut self, name: Name) {
        let place = self.names.len() as u32;
        for number in &name.words {
            if let Some((_, _, names)) = self.spelled.get_mut(*number as usize) {
                names.push(place);
            }
        }
        self.names.push(name);
    }

    /// Notes all names of a food.
    fn bear_all(&mut self, number: u32, food: &Food) {
        let own = [food.name.as_str(), food.plural.as_str()];
        for name in own.into_iter().chain(food.synonyms.iter().map(String::as_str)) {
            self.bear(number, name);
        }
    }

    /// Notes that a food bears a name: `?` before it when others may too, `=` when it holds in this form only, `us:` or
    /// `uk:` when it does so in the English of one market.
    fn bear(&mut self, food: u32, name: &str) {
        let (market, name) = match name.split_once(':') {
            Some(("us", rest)) => (Some(Market::Us), rest),
            Some(("uk", rest)) => (Some(Market::Uk), rest),
            _ => (None, name),
        };
        let shared = name.starts_with('?') || market.is_some();
        let bare = name.trim_start_matches(['?', '=']);
        let surface = name.starts_with('=').then(|| fold(bare));
        let mut numbers: Vec<u32> = Vec::new();
        let (words, met) = (std::mem::take(&mut self.words), &mut std::mem::take(&mut self.met));
        words.surfaces(bare, |surface| {
            let number = match met.get(surface) {
                Some(number) => *number,
                None => {
                    let number = self.number(words.token(surface));
                    met.insert(surface.to_owned(), number);
                    number
                }
            };
            if !numbers.contains(&number) {
                numbers.push(number);
            }
        });
        (self.words, self.met) = (words, std::mem::take(met));
        let own = self.names.iter().rev().take_while(|other| other.food == food);
        let same = |other: &Name| {
            other.words == numbers && other.surface == surface && other.shared == shared && other.market == market
        };
        if numbers.is_empty() || own.into_iter().any(same) {
            return;
        }
        self.enter(Name {
            food,
            words: numbers,
            shared,
            surface,
            market,
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

    /// The number of a word that stands in some name.
    fn known(&self, stem: &str) -> Option<u32> {
        let number = *self.numbers.get(stem)?;
        let (_, _, names) = self.spelled.get(number as usize)?;
        (!names.is_empty()).then_some(number)
    }

    /// The query's words; an unknown one is looked for at distance one.
    fn asked(&self, tokens: &[Token]) -> Vec<Asked> {
        let ask = |token: &Token| {
            if let Some(number) = self.known(&token.stem) {
                return Asked {
                    numbers: vec![number],
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
            .filter(|(_, (word, _, names))| !names.is_empty() && near(word))
            .map(|(number, _)| number)
            .collect()
    }

    /// Every food with a name that shares a word with the query, best first, one entry a food.
    pub(crate) fn rank(&self, tokens: &[Token], market: Option<Market>) -> Vec<Candidate> {
        let asked = self.asked(tokens);
        let surface = tokens
            .iter()
            .map(|token| token.surface.as_str())
            .collect::<Vec<_>>()
            .join(" ");
        let mut best: Vec<Candidate> = Vec::new();
        for (name, mask) in self.sharing(&asked) {
            let elsewhere = self
                .names
                .get(name as usize)
                .is_some_and(|its| its.market.is_some() && its.market != market);
            let Some(candidate) = self.weigh(name, mask, &asked, &surface).filter(|_| !elsewhere) else {
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
        // What a name means on the page's own market makes it doubtful for every other food that bears it.
        if best.iter().any(|candidate| candidate.local && candidate.exact) {
            for candidate in best.iter_mut().filter(|candidate| candidate.exact && !candidate.local) {
                candidate.shared = true;
                candidate.score = candidate.score.min(SHARED);
            }
        }
        best.sort_by(|a, b| b.score.total_cmp(&a.score).then(a.food.cmp(&b.food)));
        best
    }

    /// The names that share a telling word with the query, each with the places of all words it shares, in order.
    ///
    /// Words of praise, cut and state tell nothing by themselves, unless the query holds no others: an unknown food that
    /// is raw is not the first raw food there is.
    fn sharing(&self, asked: &[Asked]) -> Vec<(u32, u32)> {
        let telling = |word: &Asked| !matches!(word.class, Class::Idle | Class::Cut | Class::State(_));
        let all = !asked.iter().any(telling);
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

    /// 'corn meal' as `cornmeal`: two neighbours that make a known word when written as one.
    pub(crate) fn joined(&self, tokens: &[Token]) -> Option<Vec<Token>> {
        for (place, pair) in tokens.windows(2).enumerate() {
            let [left, right] = pair else { continue };
            let stem = format!("{}{}", left.stem, right.stem);
            let known = self.known(&stem).and_then(|number| self.spelled.get(number as usize));
            if let Some((_, class, _)) = known {
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

    /// How well one name fits; `mask` has a bit for every word of the query that stands in it.
    fn weigh(&self, name: u32, mask: u32, asked: &[Asked], surface: &str) -> Option<Candidate> {
        let name = self.names.get(name as usize)?;
        if name.surface.as_ref().is_some_and(|its| its != surface) {
            return None;
        }
        let (state, _) = *self.foods.get(name.food as usize)?;
        let score = if name.shared { SHARED } else { 1.0 };
        let (food, shared) = (name.food, name.shared);
        let mut candidate = Candidate {
            food,
            score,
            exact: true,
            left_over: 0,
            shared,
            local: name.market.is_some(),
            small_change: true,
        };
        let head = asked.iter().rposition(|word| word.class == Class::Name);
        for (place, word) in asked.iter().enumerate().take(32) {
            if mask & (1 << place) == 0 {
                let extra = extra_cost(word.class, state, head == Some(place));
                candidate.left_over += usize::from(extra == 0.0);
                candidate.charge(extra);
            } else if word.misspelt {
                candidate.charge(MISSPELT);
            }
        }
        for number in &name.words {
            let mut matched = asked
                .iter()
                .enumerate()
                .take(32)
                .filter(|(place, _)| mask & (1 << place) != 0);
            if !matched.any(|(_, word)| word.numbers.contains(number)) {
                let class = self
                    .spelled
                    .get(*number as usize)
                    .map_or(Class::Name, |(_, class, _)| *class);
                candidate.charge(missing_cost(class));
            }
        }
        candidate.score = candidate.score.max(0.0);
        Some(candidate)
    }
}

fn sorted(numbers: &[u32]) -> Vec<u32> {
    let mut numbers = numbers.to_vec();
    numbers.sort_unstable();
    numbers
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
