//! Foods worked among themselves: mixed, dressed, rinsed, shaped into balls.

use potwright_larder::{Kind, Shape};
use potwright_manuscript::{FoodRef, Operation, Target, Verb};

use super::bench::{Bench, NOTHING};
use super::verbs::Manner;
use super::vessels::Style;
use super::words::has;
use crate::Part;

/// Water to rinse salted food with, parts by weight (common practice, no source; 1 to 5).
const RINSING_WATER: f64 = 2.0;

/// Diameter of a dumpling or meatball of which no size is said, millimetres (common practice, no source).
const BALL_MM: f64 = 40.0;

impl Bench<'_> {
    /// Mixing, whisking, kneading: into what is in hand or in a bowl of their own.
    pub(super) fn mix(&mut self, operation: &Operation, manner: &Manner) {
        let site = self.site(operation, manner.class, manner.way);
        let vessel = site.vessel;
        self.note_knob(vessel, operation);
        let named = self.bring(operation, vessel);
        self.here = Some(vessel);
        if self.uses[vessel].style == Style::Hold {
            self.held[vessel].mixed = true;
        } else {
            self.fire = Some(vessel);
        }
        if operation.minutes.is_some() && self.uses[vessel].style != Style::Hold {
            self.go_on(vessel, operation, &named);
        }
    }

    /// Salt, pepper, flour on a food or in the pot.
    pub(super) fn dress(&mut self, operation: &Operation, manner: &Manner) {
        let before = self.here;
        let site = self.site(operation, manner.class, manner.way);
        let vessel = site.vessel;
        if self.is_for_dusting(operation, vessel) {
            return;
        }
        self.bring(operation, vessel);
        if operation.foods.iter().all(|food| food.target == Target::Pot) {
            self.season_to_taste(vessel);
        }
        let on_a_plate = self.uses[vessel].style == Style::Hold && Some(vessel) != before;
        if on_a_plate {
            self.held[vessel].mixed = true;
        } else {
            self.here = Some(vessel);
        }
    }

    /// 'Dust a baking sheet with flour': nothing lies on it yet, and the flour has its own use elsewhere. What sticks to
    /// the sheet is next to nothing.
    pub(super) fn is_for_dusting(&self, operation: &Operation, vessel: usize) -> bool {
        let powder = |food: &FoodRef| match food.target {
            Target::Ingredient { index, item } => {
                let lot = self.stocked.lot(index, item).and_then(|lot| self.stocked.lots.get(lot));
                let more = self
                    .shelf
                    .recipe
                    .ingredients
                    .get(index)
                    .is_some_and(|line| line.plus_more.is_some());
                lot.is_some_and(|lot| lot.pieces.is_none()) && (more || self.later_uses(index) > 0)
            }
            _ => false,
        };
        let tin = self.uses[vessel].style != Style::Hold || operation.into.is_some();
        operation.verb == Verb::Dredge && tin && self.is_empty(vessel) && operation.foods.iter().all(powder)
    }

    /// Washing what salt or sugar lies on takes it off: water on, water away. Raw food is only wetted.
    pub(super) fn rinse(&mut self, operation: &Operation) {
        let lots = self.lots_named(&operation.foods);
        let all = operation.foods.is_empty() || operation.foods.iter().any(|food| food.target == Target::Pot);
        let vessel = self.holder(&lots).or(self.here.filter(|_| all));
        let Some(vessel) = vessel.filter(|vessel| self.uses[*vessel].style == Style::Hold) else {
            return;
        };
        let salted = self.inside(vessel).into_iter().any(|lot| {
            let lot = &self.stocked.lots[lot];
            lot.pieces.is_none() && matches!(lot.kind, Kind::Salt | Kind::Sugar)
        });
        if salted {
            self.add_water(vessel, RINSING_WATER * self.mass_kg(vessel), "not said: to rinse with");
            self.discard(vessel, Part::Liquid);
        }
    }

    /// 'Season to taste' without a word of what with: the salt that is solved for.
    pub(super) fn season_to_taste(&mut self, vessel: usize) {
        let lots: Vec<usize> = self.stocked.to_taste.clone();
        let portions = lots.into_iter().filter(|lot| self.left[*lot] > NOTHING);
        let portions = portions
            .map(|lot| crate::Portion {
                lot,
                share: self.left[lot],
            })
            .collect();
        self.add(vessel, portions);
    }

    /// Balls and loaves: what is worked together no longer disperses, it is pieces of that size.
    pub(super) fn shape(&mut self, operation: &Operation) {
        let named = operation.foods.iter().find_map(|food| match &food.target {
            Target::Component(name) => self.component(name),
            _ => None,
        });
        let Some(vessel) = named.or(self.here).filter(|vessel| !self.is_empty(*vessel)) else {
            return;
        };
        let words = self.words();
        let mm = super::cuts::written_size_mm(&words)
            .or_else(|| self.ball_mm(vessel, &words))
            .unwrap_or(BALL_MM)
            .clamp(3.0, 200.0);
        let flat = ["thick", "deep", "flat", "patties", "round"]
            .iter()
            .any(|word| has(&words, word));
        let shape = if flat {
            Shape::Slab { thickness_mm: mm }
        } else {
            Shape::Sphere { diameter_mm: mm }
        };
        for (lot, share) in self.held[vessel].lots.clone() {
            if share < 1.0 - 1e-6 {
                continue;
            }
            super::cuts::as_one_piece(&mut self.stocked.lots[lot], shape);
        }
        self.held[vessel].mixed = true;
        self.here = Some(vessel);
    }

    /// The diameter of one of so many balls: 'shape into 12 balls'. A gram of dough is about a millilitre.
    pub(super) fn ball_mm(&self, vessel: usize, words: &str) -> Option<f64> {
        let counted = super::words::numbers(words).into_iter().find(|(_, what)| {
            [
                "balls",
                "dumplings",
                "meatballs",
                "patties",
                "pieces",
                "rolls",
                "rounds",
                "portions",
            ]
            .contains(&what.as_str())
        });
        let (count, _) = counted.filter(|(count, _)| *count >= 1.0)?;
        let one_g = self.mass_kg(vessel) * 1000.0 / count;
        Some(10.0 * libm::cbrt(6.0 * one_g / std::f64::consts::PI))
    }
}
