//! Foods worked among themselves: mixed, dressed, rinsed.

use potwright_larder::{Hazard, Kind, Shape};
use potwright_manuscript::{FoodRef, Operation, Target, Verb};
use potwright_measure::Spread;

use super::bench::{Bench, NOTHING};
use super::verbs::Manner;
use super::vessels::Style;
use crate::Part;

/// Water to rinse salted food with, parts by weight (common practice, no source; 1 to 5).
const RINSING_WATER: f64 = 2.0;

/// Size of the drops of beaten egg, millimetres: small enough to be as warm as the liquid at once (a convention).
const EGG_DROPS_MM: f64 = 1.0;

impl Bench<'_> {
    /// Mixing, whisking, kneading: into what is in hand or in a bowl of their own.
    pub(super) fn mix(&mut self, operation: &Operation, manner: &Manner) {
        let site = self.site(operation, manner.class, manner.way);
        let vessel = site.vessel;
        self.note_knob(vessel, operation);
        let named = self.bring(operation, vessel);
        self.beat_eggs(operation, vessel);
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

    /// Eggs that are whisked or beaten are drops from then on: as warm as what they are stirred into, and they curdle.
    fn beat_eggs(&mut self, operation: &Operation, vessel: usize) {
        if !matches!(operation.verb, Verb::Whisk | Verb::Beat | Verb::Mix | Verb::Knead) {
            return;
        }
        for lot in self.inside(vessel) {
            let pieces = self.stocked.lots.get_mut(lot).and_then(|lot| lot.pieces.as_mut());
            if let Some(pieces) = pieces.filter(|pieces| pieces.hazard == Some(Hazard::Egg)) {
                pieces.shape = Shape::Sphere {
                    diameter_mm: EGG_DROPS_MM,
                };
                pieces.size_spread = Spread::exact(1.0);
            }
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
}

#[cfg(test)]
mod tests {
    use potwright_larder::{Larder, Shape};
    use potwright_measure::Measures;

    use crate::{Curdling, Draw, Happening, Kitchen, cook};

    /// Yolks whisked with cream and stirred into a soup that then boils: they are drops, and they curdle. Poached whole
    /// they stay eggs.
    #[test]
    fn beaten_eggs_are_drops() {
        let found = |method: &str| {
            let text = format!("Soup\n\nServes 4\n\n3 eggs\n200 ml double cream\n1 litre chicken stock\n\n{method}\n");
            let recipe = potwright_manuscript::read(&text);
            let kitchen = Kitchen::default();
            let process = crate::resolve(&recipe, &text, Larder::built_in(), &[], &kitchen, Measures::Metric);
            let drops = process.lots.iter().any(|lot| {
                let shape = lot.pieces.map(|pieces| pieces.shape);
                matches!(shape, Some(Shape::Sphere { diameter_mm }) if diameter_mm < 2.0)
            });
            let trace = cook(&process, &kitchen, &Draw::central());
            let curdles = |happening: &Happening| {
                matches!(
                    happening,
                    Happening::Curdles {
                        what: Curdling::Egg,
                        ..
                    }
                )
            };
            (drops, trace.events.iter().any(|event| curdles(&event.what)))
        };
        let liaison = "1. Bring the stock to the boil in a pan.\n2. Whisk the eggs with the cream in a bowl.\n3. Stir the egg mixture into the pan and boil for 5 minutes.";
        assert_eq!(found(liaison), (true, true));
        let poached = "1. Bring the stock to the boil in a pan.\n2. Add the eggs and simmer for 4 minutes.\n3. Stir in the cream.";
        assert_eq!(found(poached), (false, false));
    }
}
