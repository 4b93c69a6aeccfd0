//! From a cook's name to a food.
//!
//! A name that one food bears is *exact* and sure; words of praise, size and cut do not count against it. Otherwise
//! each word that is left over or missing costs, by what kind of word it is; the best food is sure only when nothing
//! but small change was left over and no other food comes near. A name that several foods may bear (`stock`,
//! `cream`: marked `?` in the name table) is sure only when unit or preparation tells which.

use potwright_measure::Unit;
use serde::{Deserialize, Serialize};

use crate::hints::{self, Hints};
use crate::index::{Candidate, SHARED};
use crate::larder::Larder;
use crate::words::{Class, Token};
use crate::{FoodId, State};

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

// Scores are rules of thumb of our own (common practice, no source): only their order means something, and the names
// of tests/larder/names.tsv hold it fast.

/// What a hint for or against moves a shared name.
const HINT: f64 = 0.2;
/// What a name of the page's own market is set before the same name of another; behind it when the food comes by the
/// spoon, as the stronger thing does. Never enough to be sure.
const LOCAL: f64 = 0.05;
/// A food below this is no rival.
const FLOOR: f64 = 0.4;
/// A best below this is not sure.
const SURE: f64 = 0.8;
/// A best nearer than this to the next is not sure.
const MARGIN: f64 = 0.1;

impl Larder {
    /// What a cook's name means, with a score and its rivals.
    ///
    /// `name` is the food in the line's own words (`red onions`); state words, preparation and unit come as hints.
    /// Never silent: when [`Match::sure`] is false the writer is to be asked.
    #[must_use]
    pub fn find(&self, name: &str, hints: &Hints<'_>) -> Match {
        if let Some(id) = self.by_its_key(name) {
            return certain(id);
        }
        match self.whole_description(name, hints) {
            Some(id) => certain(id),
            None => self.find_named(name, hints),
        }
    }

    /// Foods of an imported table whose description holds all words of a name, the shortest description first.
    #[must_use]
    pub fn in_the_table(&self, name: &str) -> Vec<FoodId> {
        self.table.holding(name).into_iter().map(FoodId).collect()
    }

    /// The food of a key. A key with a figure in it is no one's name; one of words is taken, low lines or spaces between
    /// them, where no food bears these words as a name.
    fn by_its_key(&self, name: &str) -> Option<FoodId> {
        let name = name.trim();
        let id = self.id(&name.replace(' ', "_"))?;
        let bare = name.bytes().any(|byte| byte == b'_' || byte.is_ascii_digit());
        let borne = || {
            let ranked = self.index.rank(&self.index.words.tokens(name), None);
            ranked.iter().any(|candidate| candidate.exact)
        };
        (bare || !borne()).then_some(id)
    }

    /// The food of an imported table whose description is all that the line says of its food, unless that is just as
    /// well a name of a food of our own.
    fn whole_description(&self, name: &str, hints: &Hints<'_>) -> Option<FoodId> {
        if self.table.is_empty() {
            return None;
        }
        let said = format!("{} {name} {}", hints.state.join(" "), hints.preparation);
        let found = [said.as_str(), name].into_iter().find_map(|words| {
            let found = self.table.whole(words)?;
            let ours = self.index.rank(&self.index.words.tokens(words), hints.market);
            (!ours.iter().any(|candidate| candidate.exact)).then_some(found)
        });
        found.map(FoodId)
    }

    fn find_named(&self, name: &str, hints: &Hints<'_>) -> Match {
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
        let mut variants = vec![full];
        if hints.unit == Some(Unit::Can) {
            // '2 tins pinto beans, drained': what is done to it makes no other food of what comes in a tin.
            let mut canned = stated.clone();
            add(&mut canned, words.tokens("canned"), |_| true);
            variants.push(canned);
        }
        variants.push(stated.clone());
        variants.extend(self.index.joined(&stated));
        variants.push(plain);
        variants.extend(self.beginnings(name));
        variants.dedup();
        for tokens in &variants {
            let ranked = self.index.rank(tokens, hints.market);
            if ranked.iter().any(|candidate| candidate.exact) && self.state_agrees(&ranked, &stated) {
                return self.settle_exact(ranked, hints);
            }
        }
        let ranked = self.index.rank(&stated, hints.market);
        settle_near(ranked)
    }

    /// What stands before a comma or a bracket, the longest first, as long as no word of state or grade stands behind it.
    fn beginnings(&self, name: &str) -> Vec<Vec<Token>> {
        let words = &self.index.words;
        let mut out = Vec::new();
        for (at, _) in name.match_indices([',', '(']).rev() {
            let (begin, rest) = name.split_at(at);
            let telling = |token: &Token| matches!(token.class, Class::State(_) | Class::Grade);
            if words.tokens(rest).iter().any(telling) {
                break;
            }
            out.push(words.tokens(begin));
        }
        out
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
        let by_the_spoon = matches!(hints.unit, Some(Unit::Tablespoon | Unit::Teaspoon));
        for candidate in ranked.iter_mut().filter(|candidate| candidate.exact) {
            let hint = f64::from(hint(candidate.food));
            if candidate.local {
                candidate.score += if by_the_spoon { -LOCAL } else { LOCAL };
            } else if candidate.shared {
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

/// A food that is named without doubt.
fn certain(id: FoodId) -> Match {
    Match {
        best: Some(id),
        score: 1.0,
        rivals: Vec::new(),
        sure: true,
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
