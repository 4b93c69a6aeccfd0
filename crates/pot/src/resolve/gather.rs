//! What a food word of the method brings in: from the shelf, from another vessel, or from nowhere on the list.

use potwright_manuscript::{FoodRef, Ingredient, Operation, Share, Target};
use potwright_measure::Mass;

use super::amount::{self, Asked};
use super::bench::{Bench, NOTHING};
use super::verbs::{self, Class};
use super::vessels::{self, Style};
use super::words::{has, plain, share_a_word};
use crate::{Part, Portion, Source};

/// 'A little of', 'some of', when nothing later takes the rest (common practice, no source; ×/÷2).
const SOME_OF: f64 = 0.25;

/// Where something that goes in comes from.
enum From {
    Shelf(Portion),
    Vessel(usize, Part),
}

impl Bench<'_> {
    /// Brings foods into a vessel, wherever they are. Returns the lots that are named.
    pub(super) fn bring(&mut self, operation: &Operation, vessel: usize) -> Vec<usize> {
        let mut named = Vec::new();
        let mut portions: Vec<Portion> = Vec::new();
        let mut moves: Vec<(usize, Part)> = Vec::new();
        for food in &operation.foods {
            for from in self.find_food(food, vessel, &mut named) {
                match from {
                    From::Shelf(portion) => portions.push(portion),
                    From::Vessel(other, part) => merge(&mut moves, other, part),
                }
            }
        }
        for (other, part) in self.joined(moves) {
            let part = if self.all_of_it(other, &part) { Part::All } else { part };
            self.transfer(other, vessel, part);
        }
        self.add(vessel, portions);
        named
    }

    /// The liquid of a vessel and all its pieces are all of it.
    fn joined(&self, mut moves: Vec<(usize, Part)>) -> Vec<(usize, Part)> {
        let liquids: Vec<usize> = moves
            .iter()
            .filter(|(_, part)| *part == Part::Liquid)
            .map(|(vessel, _)| *vessel)
            .collect();
        for vessel in liquids {
            let solid = |lot: &usize| self.is_solid(*lot);
            let solids: Vec<usize> = self.inside(vessel).into_iter().filter(|lot| solid(lot)).collect();
            let named = |part: &Part| matches!(part, Part::Lots(lots) if solids.iter().all(|lot| lots.contains(lot)));
            if moves.iter().any(|(other, part)| *other == vessel && named(part)) {
                moves.retain(|(other, _)| *other != vessel);
                moves.push((vessel, Part::All));
            }
        }
        moves
    }

    /// Whether a part is all that a vessel holds, or its contents go as one.
    fn all_of_it(&self, vessel: usize, part: &Part) -> bool {
        let held = &self.held[vessel];
        let Part::Lots(lots) = part else { return false };
        let as_one = held.mixed && self.uses[vessel].style == Style::Hold;
        as_one || held.lots.iter().all(|(lot, _)| lots.contains(lot))
    }

    fn find_food(&mut self, food: &FoodRef, vessel: usize, named: &mut Vec<usize>) -> Vec<From> {
        match &food.target {
            Target::Ingredient { index, item } => {
                let Some(lot) = self.stocked.lot(*index, *item) else {
                    return Vec::new();
                };
                let other_water = food.share == Share::Some || self.goes_in_later(&food.target);
                if other_water && self.is_for_soaking(lot) {
                    return self.find_unlisted("water", food, vessel, named);
                }
                named.push(lot);
                self.find_lot(lot, Some(*index), &food.share, vessel)
            }
            Target::Pot => self.find_pot(food, vessel),
            Target::Component(name) => {
                let found = self.find_component(name, &food.share, vessel);
                let plain_food = found.is_empty() && self.component(name).is_none() && self.is_food(name);
                if plain_food {
                    self.find_unlisted(name, food, vessel, named)
                } else {
                    found
                }
            }
            Target::Unlisted(name) => self.find_unlisted(name, food, vessel, named),
        }
    }

    /// A food that only the method names.
    fn find_unlisted(&mut self, name: &str, food: &FoodRef, vessel: usize, named: &mut Vec<usize>) -> Vec<From> {
        let Some(lot) = self.unlisted(name, food, vessel) else {
            return Vec::new();
        };
        named.push(lot);
        self.find_lot(lot, None, &Share::Whole, vessel)
    }

    /// 'It', 'everything': the contents of the vessel being worked in, when that is not this one.
    fn find_pot(&self, food: &FoodRef, vessel: usize) -> Vec<From> {
        let Some(from) = self.here.filter(|here| *here != vessel && !self.is_empty(*here)) else {
            return Vec::new();
        };
        let part = match food.share {
            Share::Fraction(part) => Part::Share(part.to_f64().clamp(0.0, 1.0)),
            _ if has(&plain(&food.words.text), "solids") => Part::Solids,
            _ => Part::All,
        };
        vec![From::Vessel(from, part)]
    }

    /// A lot from the shelf, or from the other vessels that hold it.
    fn find_lot(&mut self, lot: usize, ingredient: Option<usize>, share: &Share, vessel: usize) -> Vec<From> {
        let mut found = Vec::new();
        let left = self.left.get(lot).copied().unwrap_or(0.0);
        if left > NOTHING {
            let share_word = share;
            let share = self.share_of(lot, ingredient, share_word, left);
            found.push(From::Shelf(Portion { lot, share }));
            // 'The thighs' are those on the board as well; of what pours, only what is named is meant.
            let all = matches!(share_word, Share::Whole | Share::Rest);
            let solid = self.is_solid(lot);
            if !(all && solid) {
                return found;
            }
        }
        let places = self.where_is(lot);
        let here_already = places.contains(&vessel);
        // What is in this vessel already is only named; what lies on a plate as well is fetched.
        for other in places.into_iter().filter(|other| *other != vessel) {
            let on_a_plate = self.uses[other].style == Style::Hold;
            if !self.can_be_fetched(lot, share, other) {
                self.leave_open(format!(
                    "{} has all gone in before these words.",
                    self.stocked.lots[lot].name
                ));
            } else if on_a_plate || !(here_already || left > NOTHING) {
                found.push(From::Vessel(other, self.part_with(other, lot)));
            }
        }
        found
    }

    /// What has dispersed in a pot does not come out of it again, unless all of it is poured elsewhere.
    fn can_be_fetched(&self, lot: usize, share: &Share, vessel: usize) -> bool {
        let solid = self.is_solid(lot);
        let operation = self.said.operation.and_then(|at| self.shelf.recipe.operations.get(at));
        let poured = operation.is_some_and(|operation| verbs::manner(operation.verb).class == Class::Put);
        let all = matches!(share, Share::Whole | Share::Rest);
        solid || self.uses[vessel].style == Style::Hold || (poured && all)
    }

    /// What goes when a lot is fetched out of a vessel: its pieces; of what has dispersed the whole liquid, and the
    /// little that floats in it.
    fn part_with(&self, vessel: usize, lot: usize) -> Part {
        let solid = |lot: usize| self.is_solid(lot);
        if solid(lot) {
            return Part::Lots(vec![self.shaped_with(lot).map_or(lot, |shaped| shaped.main)]);
        }
        let mass = |(lot, share): &(usize, f64)| self.stocked.lots[*lot].mass.kilograms() * share;
        let solids: f64 = self.held[vessel]
            .lots
            .iter()
            .filter(|(lot, _)| solid(*lot))
            .map(mass)
            .sum();
        if solids > 0.2 * self.mass_kg(vessel) {
            Part::Liquid
        } else {
            Part::All
        }
    }

    /// How much of a lot: what is said, or what is left shared out among the places that take it unmeasured.
    fn share_of(&self, lot: usize, ingredient: Option<usize>, share: &Share, left: f64) -> f64 {
        let later = ingredient.map_or(0, |index| self.later_uses(index));
        let line = ingredient.and_then(|index| self.shelf.recipe.ingredients.get(index));
        let in_parts = line.is_some_and(|line| line.divided) || self.stocked.to_taste.contains(&lot);
        let even = left / (later as f64 + 1.0);
        let share = match share {
            Share::Fraction(part) => part.to_f64(),
            Share::Measure(quantity) => {
                let measured = line.and_then(|line| self.weigh_as(line, lot, quantity));
                let whole = self.stocked.lots.get(lot).map_or(0.0, |lot| lot.mass.grams());
                measured
                    .filter(|_| whole > 0.0)
                    .map_or(even, |mass| mass.grams() / whole)
            }
            Share::Whole if in_parts => even,
            Share::Some if later > 0 => even,
            // Some of what was never measured is what was reckoned for it.
            Share::Some if line.is_some_and(|line| line.quantity.is_none() && line.also.is_empty()) => left,
            Share::Some => left * SOME_OF,
            Share::Whole | Share::Rest => left,
        };
        if share.is_finite() {
            share.clamp(0.0, left)
        } else {
            left
        }
    }

    /// How many later operations take some of an ingredient.
    pub(super) fn later_uses(&self, index: usize) -> usize {
        let from = self.said.operation.map_or(0, |at| at + 1);
        let takes = |operation: &&Operation| {
            let class = verbs::manner(operation.verb).class;
            let goes_in = matches!(
                class,
                Class::Put | Class::Loosen | Class::Mix | Class::Dress | Class::Cook
            );
            goes_in
                && !operation.optional
                && operation
                    .foods
                    .iter()
                    .any(|food| matches!(food.target, Target::Ingredient { index: i, .. } if i == index))
        };
        self.shelf.recipe.operations.iter().skip(from).filter(takes).count()
    }

    /// The mass of a measure of a lot.
    fn weigh_as(&self, line: &Ingredient, lot: usize, quantity: &potwright_manuscript::Quantity) -> Option<Mass> {
        let lot = self.stocked.lots.get(lot)?;
        // '1 of the onions': by the count of the line itself.
        if quantity.unit.is_none() && line.quantity.is_some_and(|whole| whole.unit.is_none()) {
            let whole = line.quantity?.amount.midpoint();
            return (whole > 0.0).then(|| lot.mass * (quantity.amount.midpoint() / whole));
        }
        let measured = Ingredient {
            quantity: Some(*quantity),
            also: Vec::new(),
            package: None,
            ..line.clone()
        };
        let (food, made_g_ml) = match lot.source {
            Source::Larder(id) => (self.shelf.larder.get(id), None),
            Source::Made(index) => (None, self.shelf.made.get(index).map(|made| made.density_g_ml)),
            Source::Unknown => (None, None),
        };
        let words = plain(&line.line.text);
        let asked = Asked {
            line: &measured,
            food,
            made_g_ml,
            words: &words,
            cut: line.preparation.as_ref().map_or("", |said| &said.text),
            measures: self.shelf.measures,
        };
        amount::weigh(&asked).map(|weighed| weighed.mass)
    }

    /// Something made on the way: by its name, by the part of the page it stands under, by what it is made of, or the
    /// newest bowl that has not been used.
    fn find_component(&mut self, name: &str, share: &Share, vessel: usize) -> Vec<From> {
        if let Some(other) = self.component(name).filter(|other| *other != vessel) {
            let part = match share {
                Share::Fraction(part) => Part::Share(part.to_f64().clamp(0.0, 1.0)),
                _ => Part::All,
            };
            return vec![From::Vessel(other, part)];
        }
        let sections = &self.shelf.recipe.sections;
        let section = sections.iter().position(|section| share_a_word(&section.name, name));
        let lots = |bench: &Self| -> Vec<usize> {
            let of = bench.shelf.recipe.ingredients.iter().enumerate();
            let here = of.filter(|(_, line)| line.section.is_some() && line.section == section);
            here.flat_map(|(index, _)| bench.stocked.of.get(index).cloned().unwrap_or_default())
                .flatten()
                .collect()
        };
        if section.is_some() {
            let lots = lots(self);
            let left = lots.into_iter().filter(|lot| self.left[*lot] > NOTHING);
            return left
                .map(|lot| {
                    From::Shelf(Portion {
                        lot,
                        share: self.left[lot],
                    })
                })
                .collect();
        }
        Vec::new()
    }

    /// The heading over all the lines that went into a vessel.
    fn heading_of(&self, vessel: usize) -> Option<&str> {
        let recipe = self.shelf.recipe;
        let mut sections = self.held[vessel].lots.iter().filter_map(|(lot, _)| {
            let line = recipe.ingredients.get(self.stocked.lots[*lot].ingredient?)?;
            Some(line.section)
        });
        let first = sections.next()??;
        let same = sections.all(|section| section == Some(first));
        recipe
            .sections
            .get(first)
            .filter(|_| same)
            .map(|section| section.name.as_str())
    }

    /// The vessel that holds a component.
    pub(super) fn component(&self, name: &str) -> Option<usize> {
        let full = |vessel: &usize| !self.is_empty(*vessel);
        let newest = || (0..self.held.len()).rev().filter(full);
        let by_name = |vessel: &usize| self.held[*vessel].names.iter().any(|known| share_a_word(known, name));
        let sections = &self.shelf.recipe.sections;
        let by_section = |vessel: &usize| {
            let section = self.held[*vessel].section.and_then(|section| sections.get(section));
            section.is_some_and(|section| share_a_word(&section.name, name))
        };
        let by_vessel = |vessel: &usize| vessels::same_vessel(&self.uses[*vessel].name, name);
        let by_food = |vessel: &usize| {
            let lots = &self.held[*vessel].lots;
            self.uses[*vessel].style == Style::Hold
                && lots
                    .iter()
                    .any(|(lot, _)| share_a_word(&self.stocked.lots[*lot].name, name))
        };
        let side = |vessel: &usize| self.uses[*vessel].style == Style::Hold && Some(*vessel) != self.fire;
        let by_heading = |vessel: &usize| {
            self.heading_of(*vessel)
                .is_some_and(|heading| share_a_word(heading, name))
        };
        newest()
            .find(by_name)
            .or_else(|| newest().find(by_section))
            .or_else(|| newest().find(by_heading))
            .or_else(|| newest().find(by_food))
            .or_else(|| newest().find(by_vessel))
            .or_else(|| newest().find(|vessel| side(vessel) && self.held[*vessel].mixed && !self.is_food(name)))
    }
}

/// Lots that lie in the same vessel are moved together.
fn merge(moves: &mut Vec<(usize, Part)>, vessel: usize, part: Part) {
    if let Part::Lots(more) = &part
        && let Some((_, Part::Lots(lots))) = moves
            .iter_mut()
            .find(|(other, held)| *other == vessel && matches!(held, Part::Lots(_)))
    {
        lots.extend(
            more.iter()
                .filter(|lot| !lots.contains(lot))
                .copied()
                .collect::<Vec<_>>(),
        );
        return;
    }
    if !moves.contains(&(vessel, part.clone())) {
        moves.push((vessel, part));
    }
}
