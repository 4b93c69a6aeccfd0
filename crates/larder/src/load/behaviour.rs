//! Behaviour in the pot: the rows of `kinds.tsv`, then those of `behaviour.tsv`.

use potwright_measure::Spread;

use super::Shelf;
use super::kinds::{Kinds, What};
use crate::error::{Fault, TableError};
use crate::table::{Row, read as rows};
use crate::tables::BEHAVIOUR;
use crate::{Absorbs, Behaviour, Food, Shape, Softens};

/// One property of behaviour as a row states it: `property, low, mid, high, word` in five cells.
#[derive(Clone, Copy)]
pub(super) struct Entry<'a> {
    property: Property,
    spread: Option<Spread>,
    word: &'a str,
}

/// What can be said of a food's behaviour; each is a field, or a part of one, of [`Behaviour`].
#[derive(Clone, Copy, PartialEq, serde::Deserialize)]
#[serde(rename_all = "snake_case")]
enum Property {
    Starch,
    AbsorbsWater,
    AbsorbsMinutes,
    SoakingHours,
    SoftensMinutes,
    SoftensActivation,
    Shape,
    Renders,
    ShedsWater,
    Inedible,
    FallsApart,
    Hazard,
    Acid,
    Sulphite,
    Disperses,
}

impl<'a> Entry<'a> {
    /// The entry whose property stands in the cell `first`.
    pub(super) fn new<const N: usize>(row: &Row<'a, N>, first: usize) -> Result<Self, TableError> {
        let spread = if row.text(first + 2).is_empty() {
            None
        } else {
            Some(row.spread(first + 1)?)
        };
        let entry = Entry {
            property: row.word(first)?,
            spread,
            word: row.text(first + 4),
        };
        entry.check(row, first)?;
        Ok(entry)
    }

    /// Makes sure that what the property needs is there, so that applying it cannot fail.
    fn check<const N: usize>(&self, row: &Row<'a, N>, first: usize) -> Result<(), TableError> {
        if self.word == "none" {
            return Ok(());
        }
        match self.property {
            Property::Starch => row.word::<crate::StarchKind>(first + 4).map(|_| ()),
            Property::Hazard => row.word::<crate::Hazard>(first + 4).map(|_| ()),
            Property::Disperses => row.yes(first + 4).map(|_| ()),
            Property::Shape => {
                row.needed(first + 2)?;
                match self.word {
                    "slab" | "cylinder" | "sphere" => Ok(()),
                    other => Err(row.fault(Fault::UnknownWord("word", other.to_owned()))),
                }
            }
            Property::Renders | Property::ShedsWater | Property::FallsApart | Property::Inedible => {
                row.share(first + 2).map(|_| ())
            }
            _ => row.needed(first + 2).map(|_| ()),
        }
    }
}

/// Behaviour while rows are laid over each other: parts that make one field only together.
#[derive(Default)]
struct Draft {
    done: Behaviour,
    water: Option<Spread>,
    minutes: Option<Spread>,
    soaking: Option<Spread>,
    soft_minutes: Option<Spread>,
    activation: Option<Spread>,
}

impl Draft {
    fn lay(&mut self, entry: &Entry<'_>) {
        let spread = if entry.word == "none" { None } else { entry.spread };
        let mid = spread.map(|spread| spread.mid);
        let done = &mut self.done;
        match entry.property {
            Property::Starch => done.starch = word(entry.word),
            Property::Hazard => done.hazard = word(entry.word),
            Property::Disperses => done.disperses = entry.word == "yes",
            Property::Shape => done.shape = mid.and_then(|mm| shape(entry.word, mm)),
            Property::Renders => done.renders = spread,
            Property::ShedsWater => done.sheds_water = spread,
            Property::FallsApart => done.falls_apart = spread,
            Property::Inedible => done.inedible = mid,
            Property::Acid => done.acid_g = mid,
            Property::Sulphite => done.sulphite_mg_kg = mid,
            Property::AbsorbsWater => self.water = spread,
            Property::AbsorbsMinutes => self.minutes = spread,
            Property::SoakingHours => self.soaking = spread,
            Property::SoftensMinutes => self.soft_minutes = spread,
            Property::SoftensActivation => self.activation = spread,
        }
    }

    fn finish(self) -> Behaviour {
        let mut done = self.done;
        done.absorbs = self
            .water
            .zip(self.minutes)
            .map(|(water_per_gram, minutes_at_boil)| Absorbs {
                water_per_gram,
                minutes_at_boil,
                soaking_hours: self.soaking,
            });
        done.softens = self
            .soft_minutes
            .zip(self.activation)
            .map(|(minutes_at_simmer, activation)| Softens {
                minutes_at_simmer,
                activation_kj_mol: activation.mid,
            });
        done
    }
}

/// What holds for a food's kind and state.
fn draft(kinds: &Kinds<'_>, food: &Food) -> Draft {
    let mut draft = Draft::default();
    for what in kinds.of(food.kind, food.state) {
        if let What::Behaviour(entry) = what {
            draft.lay(entry);
        }
    }
    draft
}

/// Lays the behaviour of its kind and state under a food that has no rows of its own.
pub(super) fn lay(kinds: &Kinds<'_>, food: &mut Food) {
    food.behaviour = draft(kinds, food).finish();
}

/// Reads `behaviour.tsv` over the kinds.
pub(super) fn read(text: &str, kinds: &Kinds<'_>, shelf: &Shelf, foods: &mut [Food]) -> Result<(), TableError> {
    let mut drafts: Vec<Draft> = Vec::with_capacity(foods.len());
    for food in foods.iter() {
        drafts.push(draft(kinds, food));
    }
    for row in rows("behaviour.tsv", text, &BEHAVIOUR)? {
        let entry = Entry::new(&row, 1)?;
        if let Some(draft) = drafts.get_mut(shelf.place(&row)?) {
            draft.lay(&entry);
        }
    }
    for (food, draft) in foods.iter_mut().zip(drafts) {
        food.behaviour = draft.finish();
    }
    Ok(())
}

/// A word of an enumeration; `none` is nothing. The word was checked when its row was read.
fn word<'a, T: serde::Deserialize<'a>>(word: &'a str) -> Option<T> {
    use serde::de::IntoDeserializer;
    T::deserialize(IntoDeserializer::<serde::de::value::Error>::into_deserializer(word)).ok()
}

fn shape(word: &str, mm: f64) -> Option<Shape> {
    match word {
        "slab" => Some(Shape::Slab { thickness_mm: mm }),
        "cylinder" => Some(Shape::Cylinder { diameter_mm: mm }),
        "sphere" => Some(Shape::Sphere { diameter_mm: mm }),
        _ => None,
    }
}
