//! The end of the method: what is served, what was never used, which pots stand for which words.

use potwright_larder::{Hints, Kind};
use potwright_manuscript::{Operation, Target};
use potwright_measure::{Duration, Mass, Spread};

use super::amount::Weighed;
use super::bench::{Bench, NOTHING, Said};
use super::lots::Wording;
use super::vessels::{self, Style};
use crate::{Doing, Part, Portion, Process};

/// A left-over share that is worth a word.
const LEFT_OVER: f64 = 0.02;

impl Bench<'_> {
    /// To the table: foods named first here are eaten with the dish and never go into the pot.
    pub(super) fn serve(&mut self, operation: &Operation) {
        for food in &operation.foods {
            if let Target::Ingredient { index, item } = food.target
                && let Some(lot) = self.stocked.lot(index, item)
                && self.left[lot] > 1.0 - NOTHING
            {
                self.stocked.lots[lot].for_serving = true;
            }
        }
        self.serve_together(operation);
        if self.served.is_none() {
            self.served = Some(self.said);
        }
    }

    /// 'Serve the beans over the rice': parts that were cooked apart and are served in one breath are one dish.
    fn serve_together(&mut self, operation: &Operation) {
        let mut parts: Vec<usize> = Vec::new();
        for food in &operation.foods {
            let Target::Component(name) = &food.target else {
                continue;
            };
            if let Some(vessel) = self.component(name).filter(|vessel| !parts.contains(vessel)) {
                parts.push(vessel);
            }
        }
        let fullest = parts
            .iter()
            .copied()
            .max_by(|one, other| self.mass_kg(*one).total_cmp(&self.mass_kg(*other)));
        let Some(dish) = fullest.filter(|_| parts.len() > 1) else {
            return;
        };
        for part in parts.into_iter().filter(|part| *part != dish) {
            self.transfer(part, dish, Part::All);
        }
        self.here = Some(dish);
    }

    /// The process.
    pub(super) fn finish(mut self) -> Process {
        let dish_vessel = self.dish();
        self.said = Said {
            operation: None,
            span: None,
            step: self.said.step,
        };
        self.salt_at_last(dish_vessel);
        self.gather_what_stands_about(dish_vessel);
        self.name_what_is_left();
        self.stock_strays();
        self.said = self.served.unwrap_or(self.said);
        self.act(dish_vessel, Doing::Serve);
        let recipe = self.shelf.recipe;
        let alternatives = self.shelf.alternatives(&self.stocked, &mut self.notes);
        let vessels = vessels::assign(&self.uses, self.shelf.kitchen, &mut self.notes);
        Process {
            title: recipe
                .title
                .as_ref()
                .map_or_else(String::new, |title| title.text.clone()),
            lots: self.stocked.lots,
            vessels,
            acts: self.acts,
            dish_vessel,
            servings: recipe
                .yields
                .as_ref()
                .and_then(potwright_manuscript::YieldLine::servings),
            makes: self.shelf.makes(),
            alternatives,
            to_taste: self.stocked.to_taste,
            assumptions: self.notes.assumptions,
            open: self.notes.open,
        }
    }

    /// Foods that stand on the page outside list and method: nothing of them is cooked, and what they bring is not known.
    fn stock_strays(&mut self) {
        let nothing = self.shelf.find("", &Hints::default());
        for row in &self.shelf.recipe.strays {
            let weighed = Weighed {
                mass: Mass::ZERO,
                spread: Spread::exact(1.0),
                how: "stands outside the list: not cooked".to_owned(),
                prepared: true,
                guess: false,
            };
            let mut lot = self.shelf.make_up(&nothing, &weighed, &Wording::plain(""));
            lot.name.clone_from(&row.text);
            self.stock_lot(lot);
        }
    }

    /// The vessel of the finished dish: the one in hand, or the fullest when that holds next to nothing.
    fn dish(&mut self) -> usize {
        let mut fullest: Option<usize> = None;
        for vessel in 0..self.held.len() {
            if fullest.is_none_or(|held| self.mass_kg(vessel) > self.mass_kg(held)) {
                fullest = Some(vessel);
            }
        }
        let Some(fullest) = fullest else {
            return self.take_out("bowl", Style::Hold);
        };
        let candidates = [self.here, self.fire];
        let found = candidates
            .into_iter()
            .flatten()
            .find(|vessel| self.mass_kg(*vessel) > 0.2 * self.mass_kg(fullest));
        found.unwrap_or(fullest)
    }

    /// Salt that is solved for and that the method never names goes in at the end.
    fn salt_at_last(&mut self, dish: usize) {
        let lots = self.stocked.to_taste.clone();
        let portions: Vec<Portion> = lots
            .into_iter()
            .filter(|lot| self.left[*lot] > NOTHING)
            .map(|lot| Portion {
                lot,
                share: self.left[lot],
            })
            .collect();
        if !portions.is_empty() && !self.is_empty(dish) {
            self.assume("The method does not say when the salt goes in: at the end.");
            self.add(dish, portions);
        }
    }

    /// What was made or set aside and never named again.
    fn gather_what_stands_about(&mut self, dish: usize) {
        for vessel in 0..self.held.len() {
            let lots: Vec<String> = self
                .inside(vessel)
                .into_iter()
                .map(|lot| self.stocked.lots[lot].name.clone())
                .collect();
            let small = self.mass_kg(vessel) < 1e-6;
            if vessel == dish || lots.is_empty() || small {
                continue;
            }
            let solid = self.inside(vessel).into_iter().any(|lot| self.is_solid(lot));
            if self.held[vessel].names.iter().any(|name| name == "solids")
                || !solid && self.uses[vessel].style != Style::Hold
            {
                continue;
            }
            let what = lots.join(", ");
            if self.uses[vessel].style == Style::Hold {
                self.notes.open(
                    format!(
                        "The method never says when what is in the {} goes in ({what}): it is added at the end.",
                        self.uses[vessel].name
                    ),
                    None,
                );
                self.transfer(vessel, dish, Part::All);
            } else {
                self.notes.open(
                    format!(
                        "What is in the {} ({what}) never joins the dish.",
                        self.uses[vessel].name
                    ),
                    None,
                );
            }
        }
    }

    /// Foods of the list that were never used, or not wholly.
    fn name_what_is_left(&mut self) {
        for (index, lot) in self.stocked.lots.iter().enumerate() {
            let left = self.left[index];
            if lot.for_serving || left < LEFT_OVER || lot.mass <= Mass::ZERO {
                continue;
            }
            // Of pepper and salt a cook takes what it wants: what is left of them once they were used is no question.
            let seasoning = matches!(lot.kind, Kind::Spice | Kind::Salt);
            if seasoning && left < 1.0 - LEFT_OVER {
                continue;
            }
            let span = lot
                .ingredient
                .and_then(|i| self.shelf.recipe.ingredients.get(i))
                .map(|line| line.span);
            let in_parts = self
                .shelf
                .recipe
                .ingredients
                .iter()
                .any(|line| line.part_of == lot.ingredient && line.part_of.is_some());
            let text = if left > 1.0 - LEFT_OVER && !in_parts {
                format!("‘{}’ is on the list, but the method never uses it.", lot.name)
            } else {
                let g = super::amount::grams(lot.mass.grams() * left);
                format!("Of ‘{}’ the method leaves {g} unused.", lot.name)
            };
            self.notes.open(text, span);
        }
        // Work on food that never goes in is no part of this cooking.
        for (index, lot) in self.stocked.lots.iter_mut().enumerate() {
            if self.left[index] > 1.0 - LEFT_OVER && !lot.for_serving && lot.mass > Mass::ZERO {
                lot.preparation = Duration::ZERO;
            }
        }
    }
}
