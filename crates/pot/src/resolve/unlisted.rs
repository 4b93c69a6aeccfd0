//! Foods that only the method names: water above all, and what the list forgot.

use potwright_larder::{Hints, Kind};
use potwright_manuscript::{FoodRef, Ingredient, Share, Target, Verb, Words};
use potwright_measure::{Mass, Spread};

use super::amount::{self, Asked, Weighed};
use super::bench::{Bench, NOTHING};
use super::lots::Wording;
use super::table;
use super::words::{has, plain, share_a_word};
use crate::Lot;

/// Water to cover food in a pot: as much as the food weighs (common practice, no source; ×/÷1.5).
const WATER_TO_COVER: f64 = 1.0;

/// Water to soak or boil dried pulses, grains and pasta in: three times their weight, as packets say (common
/// practice, no source; ×/÷1.5).
const WATER_FOR_DRY: f64 = 3.0;

/// 'A little water': grams (common practice, no source; ×/÷2).
const A_LITTLE_G: f64 = 60.0;

impl Bench<'_> {
    /// Whether the larder is sure of a name.
    pub(super) fn is_food(&self, name: &str) -> bool {
        self.shelf.find(name, &Hints::default()).is_sure()
    }

    /// 'Plenty of cold water' to soak in is not the water of the list.
    pub(super) fn is_for_soaking(&self, lot: usize) -> bool {
        let water = self.stocked.lots.get(lot).is_some_and(|lot| lot.kind == Kind::Water);
        let at = self.said.operation.unwrap_or(0);
        let near = self.shelf.recipe.operations.iter().skip(at).take(2);
        water && near.into_iter().any(|operation| operation.verb == Verb::Soak)
    }

    /// Whether a later order puts in all of a food: 'cover with cold water and soak', then 'add the beans and the water'.
    pub(super) fn goes_in_later(&self, target: &Target) -> bool {
        let at = self.said.operation.unwrap_or(0);
        let later = self.shelf.recipe.operations.iter().skip(at + 1);
        later
            .filter(|operation| operation.verb == Verb::Add)
            .flat_map(|operation| &operation.foods)
            .any(|food| food.target == *target && food.share == Share::Whole)
    }

    /// A food that is not on the list: a new lot of it, or the lot that the method named before. None when nothing
    /// is known of it.
    pub(super) fn unlisted(&mut self, name: &str, food: &FoodRef, vessel: usize) -> Option<usize> {
        let counted = matches!(&food.share, Share::Measure(quantity) if quantity.unit.is_none());
        let found = self.shelf.find(
            name,
            &Hints {
                counted,
                ..Hints::default()
            },
        );
        let words = plain(&format!("{} {}", food.words.text, name));
        if found.food().is_none() && found.made().is_none() {
            self.leave_open(format!(
                "‘{name}’ is not on the list and not in the larder: it is left out."
            ));
            return None;
        }
        if matches!(food.share, Share::Whole)
            && let Some(known) = self.named_before(name, found.kind(), vessel)
        {
            return Some(known);
        }
        if found.kind() == Kind::Salt && !matches!(food.share, Share::Measure(_)) {
            return Some(self.salt_to_taste(name, &words));
        }
        let weighed = self.weigh_unlisted(&found, food, &words, vessel);
        let mut lot = self.shelf.make_up(&found, &weighed, &Wording::plain(&words));
        name.clone_into(&mut lot.name);
        lot.doubt = found.doubt(Some(food.words.span));
        if !matches!(food.share, Share::Measure(_)) {
            let mass = amount::grams(lot.mass.grams());
            self.assume(format!(
                "How much {name} is not said, nor is it on the list: {mass} are reckoned."
            ));
        } else if found.kind() != Kind::Water {
            self.assume(format!(
                "‘{}’ is not on the list; the method's amount is taken.",
                food.words.text
            ));
        }
        Some(self.stock_lot(lot))
    }

    /// The lot that the method named before by this name. Water is the same only while it stands in another vessel:
    /// 'the saffron with its water'; what is covered with water is so with fresh water.
    pub(super) fn named_before(&self, name: &str, kind: Kind, vessel: usize) -> Option<usize> {
        let covers = has(&self.words(), "cover");
        let elsewhere = |lot: usize| !covers && self.where_is(lot).iter().any(|other| *other != vessel);
        let same = |(index, lot): &(usize, &Lot)| {
            let named = lot.ingredient.is_none() && share_a_word(&lot.name, name);
            named && (kind != Kind::Water || elsewhere(*index))
        };
        self.stocked.lots.iter().enumerate().find(same).map(|(index, _)| index)
    }

    /// Puts a lot on the shelf.
    pub(super) fn stock_lot(&mut self, lot: Lot) -> usize {
        self.stocked.lots.push(lot);
        self.left.push(1.0);
        self.stocked.lots.len() - 1
    }

    /// Salt that only the method names is solved for; there is one such lot, or the list's own.
    pub(super) fn salt_to_taste(&mut self, name: &str, words: &str) -> usize {
        let solved = self.stocked.to_taste.first().copied();
        solved.unwrap_or_else(|| {
            let found = self.shelf.find(name, &Hints::default());
            let weighed = Weighed {
                mass: Mass::ZERO,
                spread: Spread::exact(1.0),
                how: "to taste: solved for".to_owned(),
                prepared: true,
                guess: false,
            };
            let mut lot = self.shelf.make_up(&found, &weighed, &Wording::plain(words));
            name.clone_into(&mut lot.name);
            let lot = self.stock_lot(lot);
            self.stocked.to_taste.push(lot);
            lot
        })
    }

    /// The amount of a food that only the method names.
    pub(super) fn weigh_unlisted(
        &self,
        found: &super::foods::Found,
        food: &FoodRef,
        words: &str,
        vessel: usize,
    ) -> Weighed {
        if let Share::Measure(quantity) = &food.share {
            let line = Ingredient {
                line: Words {
                    text: food.words.text.clone(),
                    span: food.words.span,
                },
                quantity: Some(*quantity),
                ..Ingredient::default()
            };
            let made_g_ml = found.made().map(|made| made.density_g_ml);
            let asked = Asked {
                line: &line,
                food: found.food(),
                made_g_ml,
                words,
                cut: "",
                measures: self.shelf.measures,
            };
            if let Some(weighed) = amount::weigh(&asked) {
                return weighed;
            }
        }
        let (g, factor, how) = if found.kind() == Kind::Water {
            let g = self.water_g(food, vessel);
            (g, 1.5, "not said: enough to cover")
        } else {
            let row = amount::by_kind(&table::UNSAID_AMOUNTS, found.kind());
            let g = row.and_then(|row| row.number("grams")).unwrap_or(0.0);
            (
                g,
                row.map_or(2.0, |row| row.factor("spread")),
                "not said: common practice",
            )
        };
        let (mass, spread) = (Mass::from_grams(g), amount::around_one(factor));
        Weighed {
            mass,
            spread,
            how: how.to_owned(),
            prepared: true,
            guess: true,
        }
    }

    /// Water that is not measured: a little, or enough to cover what is in the vessel and what goes in with it.
    pub(super) fn water_g(&self, food: &FoodRef, vessel: usize) -> f64 {
        let plenty = ["plenty", "cover"]
            .iter()
            .any(|word| has(&plain(&food.words.text), word));
        if food.share == Share::Some && !plenty {
            return A_LITTLE_G;
        }
        let mut named: Vec<(usize, f64)> = self.held.get(vessel).map_or_else(Vec::new, |held| held.lots.clone());
        let operation = self.said.operation.and_then(|at| self.shelf.recipe.operations.get(at));
        for other in operation.map_or(&[][..], |operation| &operation.foods) {
            if let Target::Ingredient { index, item } = other.target
                && let Some(lot) = self.stocked.lot(index, item).filter(|lot| self.left[*lot] > NOTHING)
            {
                named.push((lot, self.left[lot]));
            }
        }
        let needs = |(lot, share): &(usize, f64)| {
            let lot = &self.stocked.lots[*lot];
            let factor = match lot.kind {
                Kind::Pulse | Kind::Grain | Kind::Pasta => WATER_FOR_DRY,
                _ if lot.pieces.is_some() => WATER_TO_COVER,
                _ => 0.0,
            };
            lot.mass.grams() * share * factor
        };
        let needed: f64 = named.iter().map(needs).sum();
        if needed > 0.0 { needed } else { A_LITTLE_G }
    }
}

#[cfg(test)]
mod tests {
    use potwright_larder::{Kind, Larder};
    use potwright_measure::Measures;

    use crate::{Kitchen, resolve};

    /// The water a pan is rinsed with does not cover two kilograms of meat: that is fresh water, as much as the meat.
    #[test]
    fn what_is_covered_is_so_with_fresh_water() {
        let text = "Stew\n\n2 kg beef shin, cubed\n30 g lard\n\nBrown the beef in the lard in a frying pan and put it in a pot. \
            Rinse the frying pan with boiling water and pour it into the pot. Cover with boiling water and simmer for 2 hours.\n";
        let recipe = potwright_manuscript::read(text);
        let process = resolve(
            &recipe,
            text,
            Larder::built_in(),
            &[],
            &Kitchen::default(),
            Measures::Metric,
        );
        let water = process.lots.iter().filter(|lot| lot.kind == Kind::Water);
        let most_g = water.map(|lot| lot.mass.grams()).fold(0.0, f64::max);
        assert!(
            (1500.0..2500.0).contains(&most_g),
            "{most_g}: {:?}",
            process.assumptions
        );
    }
}
