//! From a name on the page to a dish made before or a food of the larder.

use potwright_larder::{Contains, Food, FoodId, Hints, Kind, Larder};
use potwright_manuscript::Span;

use super::Notes;
use super::words::{plain, stem};
use crate::{Doubt, Made, Rival, Source};

/// What a name was found to be.
pub(super) struct Found<'a> {
    what: What<'a>,
    /// Whether it may be taken without asking.
    sure: bool,
    /// How well it fits, 0–1.
    score: f64,
    /// What else it may be.
    rivals: Vec<(FoodId, &'a Food)>,
}

/// Below this less than half of a name's words speak for the food (common practice, no source; ×/÷1.5).
const LITTLE: f64 = 0.6;

/// How many rivals a sentence names.
const NAMED: usize = 3;

enum What<'a> {
    Made(usize, &'a Made),
    Food(FoodId, &'a Food),
    Nothing,
}

/// A dish made before wins when the name names it; else the larder is asked.
pub(super) fn find<'a>(larder: &'a Larder, made: &'a [Made], name: &str, hints: &Hints) -> Found<'a> {
    if let Some((index, dish)) = made.iter().enumerate().find(|(_, dish)| names(dish, name)) {
        return Found {
            what: What::Made(index, dish),
            sure: true,
            score: 1.0,
            rivals: Vec::new(),
        };
    }
    let found = larder.find(name, hints);
    let what = found
        .best
        .and_then(|id| larder.get(id).map(|food| What::Food(id, food)))
        .unwrap_or(What::Nothing);
    let rivals = found.rivals.iter().filter_map(|(id, _)| Some((*id, larder.get(*id)?)));
    Found {
        what,
        sure: found.sure,
        score: found.score,
        rivals: rivals.collect(),
    }
}

/// Whether a name names a dish by one of its titles.
fn names(dish: &Made, name: &str) -> bool {
    dish.names.iter().any(|title| names_dish(title, name))
}

/// Whether a name on a page names the dish of a title: every word of the title stands in it, plural or not.
///
/// ```
/// use potwright_pot::names_dish;
/// assert!(names_dish("Brown beef stock", "good brown beef stock"));
/// assert!(!names_dish("Brown beef stock", "beef stock"));
/// ```
#[must_use]
pub fn names_dish(title: &str, name: &str) -> bool {
    let (title, asked) = (plain(title), plain(name));
    let asked: Vec<&str> = asked.split_whitespace().map(stem).collect();
    let mut words = title.split_whitespace().map(stem).peekable();
    words.peek().is_some() && words.all(|word| asked.contains(&word))
}

impl<'a> Found<'a> {
    /// Whether it may be taken without asking.
    pub(super) fn is_sure(&self) -> bool {
        self.sure && !matches!(self.what, What::Nothing)
    }

    /// Why it is not sure; none when it is.
    pub(super) fn doubt(&self, span: Option<Span>) -> Option<Doubt> {
        let rival = |(food, its): &(FoodId, &Food)| Rival {
            food: *food,
            name: its.name.clone(),
        };
        (!self.is_sure()).then(|| Doubt {
            taken_for: self.food().map(|food| food.name.clone()),
            rivals: self.rivals.iter().map(rival).collect(),
            allergens_hang: self.allergens_hang(),
            span,
        })
    }

    /// Whether a food that it may be holds or may hold an allergen, or so little of the name is known that anything may.
    fn allergens_hang(&self) -> bool {
        let free = |food: &Food| {
            let listed = food.allergens.iter().all(|(_, contains)| *contains == Contains::No);
            listed && food.allergens_complete
        };
        let rivals = self.rivals.iter().map(|(_, food)| *food);
        self.score < LITTLE || !self.food().into_iter().chain(rivals).all(free)
    }

    /// The food of the larder.
    pub(super) fn food(&self) -> Option<&'a Food> {
        match self.what {
            What::Food(_, food) => Some(food),
            _ => None,
        }
    }

    /// The dish made before.
    pub(super) fn made(&self) -> Option<&'a Made> {
        match self.what {
            What::Made(_, made) => Some(made),
            _ => None,
        }
    }

    /// Its source.
    pub(super) fn source(&self) -> Source {
        match self.what {
            What::Made(index, _) => Source::Made(index),
            What::Food(id, _) => Source::Larder(id),
            What::Nothing => Source::Unknown,
        }
    }

    /// Its kind: a dish made before counts as stock when it pours, which is what dishes are made for.
    pub(super) fn kind(&self) -> Kind {
        match self.what {
            What::Made(..) => Kind::Stock,
            What::Food(_, food) => food.kind,
            What::Nothing => Kind::Other,
        }
    }

    /// Tells the author of a name that is not sure.
    pub(super) fn note(&self, name: &str, span: Span, notes: &mut Notes) {
        match (&self.what, self.sure) {
            (What::Nothing, _) => {
                notes.open(
                    format!("‘{name}’ is not in the larder: its weight is reckoned as water."),
                    Some(span),
                );
            }
            (What::Food(_, food), false) => {
                let or = if self.rivals.is_empty() {
                    String::new()
                } else {
                    let names: Vec<&str> = self
                        .rivals
                        .iter()
                        .take(NAMED)
                        .map(|(_, food)| food.name.as_str())
                        .collect();
                    format!(" It may be {}.", names.join(", "))
                };
                notes.open(format!("‘{name}’ is taken for {}.{or}", food.name), Some(span));
            }
            _ => {}
        }
    }
}
