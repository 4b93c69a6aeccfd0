//! A variation that the page prints, as a recipe of its own.
//!
//! What is left out is taken off the list and out of the method; what is swapped stands in the old one's place in both;
//! what is added goes where the words say ('with the onions'), else with its like, else in at the end.

use potwright_larder::{Hints, Kind, Larder};
use potwright_manuscript::{Change, FoodRef, Ingredient, Operation, Recipe, Share, Target, Variation, Verb, Words};

use super::verbs::{Class, manner};
use super::words::{has, plain, stem};

/// A recipe with the changes of one of its variations.
#[derive(Clone, Debug, PartialEq)]
pub struct Varied {
    /// The changed recipe; its list keeps its order and numbers.
    pub recipe: Recipe,
    /// Each change that was made, in a few words: 'without double cream', 'olive oil instead of butter'.
    pub changes: Vec<String>,
}

/// A variation of a recipe as a recipe of its own; `text` is the page. None when there is no such variation or none of
/// its changes was understood.
#[must_use]
pub fn varied(recipe: &Recipe, text: &str, larder: &Larder, variation: usize) -> Option<Varied> {
    let variation = recipe.variations.get(variation)?;
    let mut varied = Varied {
        recipe: recipe.clone(),
        changes: Vec::new(),
    };
    // 'Without butter: use oil instead' leaves nothing out.
    let swapped = |index: usize| {
        let swaps = |change: &Change| matches!(change, Change::Swap { ingredient, .. } if *ingredient == index);
        variation.changes.iter().any(swaps)
    };
    let left = |change: &&Change| !matches!(change, Change::LeaveOut(index) if swapped(*index));
    for change in variation.changes.iter().filter(left) {
        varied.make(change, variation, text, larder);
    }
    (!varied.changes.is_empty()).then_some(varied)
}

impl Varied {
    fn make(&mut self, change: &Change, variation: &Variation, text: &str, larder: &Larder) {
        match change {
            Change::LeaveOut(index) => self.leave_out(*index),
            Change::Swap { ingredient, with } => self.swap(*ingredient, with),
            Change::Add(with) => self.add(with, variation, text, larder),
        }
    }

    fn leave_out(&mut self, index: usize) {
        let Some(line) = self.recipe.ingredients.get_mut(index) else {
            return;
        };
        let name = name(line);
        // The line stays in its place, so that all others keep their numbers, but there is no food on it.
        *line = Ingredient {
            line: line.line.clone(),
            span: line.span,
            section: line.section,
            equipment: true,
            ..Ingredient::default()
        };
        let is_it = |food: &FoodRef| names(food, index);
        self.recipe.operations.retain_mut(|operation| {
            let mut named = false;
            for foods in [&mut operation.foods, &mut operation.keep, &mut operation.discard] {
                named |= foods.iter().any(is_it);
                foods.retain(|food| !is_it(food));
            }
            // What was only about this food has nothing left to do.
            let idle = operation.foods.is_empty() && operation.keep.is_empty() && operation.discard.is_empty();
            !(named && idle)
        });
        self.changes.push(format!("without {name}"));
    }

    fn swap(&mut self, index: usize, with: &Ingredient) {
        let Some(line) = self.recipe.ingredients.get_mut(index) else {
            return;
        };
        let words = format!("{} instead of {}", name(with), name(line));
        let mut new = with.clone();
        new.section = line.section;
        new.divided |= line.divided;
        if new.quantity.is_none() && new.open.is_none() {
            new.quantity = line.quantity;
            new.package = line.package;
            new.also.clone_from(&line.also);
        }
        if new.preparation.is_none() {
            new.preparation.clone_from(&line.preparation);
        }
        *line = new;
        self.changes.push(words);
    }

    fn add(&mut self, with: &Ingredient, variation: &Variation, text: &str, larder: &Larder) {
        let like = self.like(with);
        let beside = self
            .named_beside(with, variation, text)
            .or(like)
            .or_else(|| self.of_its_kind(with, larder));
        let mut new = with.clone();
        if let Some(like) = like.and_then(|like| self.recipe.ingredients.get(like)) {
            new.section = like.section;
            if new.preparation.is_none() {
                new.preparation.clone_from(&like.preparation);
            }
        }
        let index = self.recipe.ingredients.len();
        let words = Words {
            text: name(&new),
            span: new.span,
        };
        self.recipe.ingredients.push(new);
        self.changes.push(format!("with {} added", words.text));
        if !beside.is_some_and(|beside| self.goes_with(index, beside, &words)) {
            self.goes_in_last(index, words);
        }
    }

    /// The ingredient of the same food: the potatoes that 'another potato' joins.
    fn like(&self, with: &Ingredient) -> Option<usize> {
        let noun = |line: &Ingredient| {
            let name = line.items.first().map_or(String::new(), |item| plain(&item.name));
            name.split_whitespace().last().map(|word| stem(word).to_owned())
        };
        let wanted = noun(with)?;
        let mut lines = self.recipe.ingredients.iter();
        lines.position(|line| noun(line).as_ref() == Some(&wanted))
    }

    /// The ingredient that the words after the addition name: 'add the mushrooms with the onions'.
    fn named_beside(&self, with: &Ingredient, variation: &Variation, text: &str) -> Option<usize> {
        let rest = text.get(with.span.end..variation.words.span.end)?;
        let sentence = plain(rest.split(['.', ';']).next().unwrap_or(""));
        let beside = ["with", "to", "at the same time as", "along with"];
        if !beside.iter().any(|word| has(&sentence, word)) {
            return None;
        }
        let mut lines = self.recipe.ingredients.iter();
        lines.position(|line| {
            let nouns = line.items.iter().filter_map(|item| item.name.rsplit(' ').next());
            let mut nouns = nouns.map(|noun| plain(noun).trim().to_owned());
            nouns.any(|noun| sentence.split_whitespace().any(|word| stem(word) == stem(&noun)))
        })
    }

    /// The first ingredient of the same kind of food.
    fn of_its_kind(&self, with: &Ingredient, larder: &Larder) -> Option<usize> {
        let kind = |line: &Ingredient| -> Option<Kind> {
            let found = larder.find(&line.items.first()?.name, &Hints::default());
            larder.get(found.best?).map(|food| food.kind)
        };
        let wanted = kind(with)?;
        let mut lines = self.recipe.ingredients.iter();
        lines.position(|line| kind(line) == Some(wanted))
    }

    /// Goes wherever another ingredient goes; whether that goes anywhere.
    fn goes_with(&mut self, index: usize, beside: usize, words: &Words) -> bool {
        let mut goes = false;
        for operation in &mut self.recipe.operations {
            goes |= operation.foods.iter().any(|food| names(food, beside));
            for foods in [&mut operation.foods, &mut operation.keep, &mut operation.discard] {
                let Some(at) = foods.iter().position(|food| names(food, beside)) else {
                    continue;
                };
                let share = match foods[at].share {
                    Share::Measure(_) => Share::Whole,
                    share => share,
                };
                let new = FoodRef {
                    words: words.clone(),
                    target: Target::Ingredient { index, item: 0 },
                    share,
                };
                foods.insert(at + 1, new);
            }
        }
        goes
    }

    /// Goes in before the dish is served.
    fn goes_in_last(&mut self, index: usize, words: Words) {
        let operations = &mut self.recipe.operations;
        let serves = |operation: &Operation| manner(operation.verb).class == Class::Serve;
        let at = operations.iter().position(serves).unwrap_or(operations.len());
        let step = at
            .checked_sub(1)
            .and_then(|before| operations.get(before))
            .map_or(0, |before| before.step);
        let span = words.span;
        let foods = vec![FoodRef {
            words,
            target: Target::Ingredient { index, item: 0 },
            share: Share::Whole,
        }];
        let add = Operation {
            foods,
            ..Operation::new(Verb::Add, step, span, span)
        };
        operations.insert(at, add);
    }
}

fn names(food: &FoodRef, ingredient: usize) -> bool {
    matches!(food.target, Target::Ingredient { index, .. } if index == ingredient)
}

fn name(line: &Ingredient) -> String {
    let names: Vec<&str> = line.items.iter().map(|item| item.name.as_str()).collect();
    names.join(" and ")
}

#[cfg(test)]
mod tests {
    use potwright_measure::Measures;

    use super::*;
    use crate::{Kitchen, Process, resolve};

    const SOUP: &str = "Soup\n\nServes 4\n\n30 g butter\n2 onions, sliced\n1 potato, peeled and diced\n\
        1 litre chicken stock\n100 ml double cream\n\nMelt the butter in a pot and fry the onions for 8 minutes. \
        Add the potato and the stock and simmer for 20 minutes. Stir in the cream and serve.\n\n";

    fn read(variation: &str) -> (Option<Varied>, String) {
        let text = format!("{SOUP}{variation}\n");
        let recipe = potwright_manuscript::read(&text);
        assert_eq!(recipe.variations.len(), 1, "{variation}");
        (varied(&recipe, &text, Larder::built_in(), 0), text)
    }

    /// The process of a variation, and its changes.
    fn cooked(variation: &str) -> (Process, Vec<String>) {
        let (varied, text) = read(variation);
        let varied = varied.expect("understood");
        let kitchen = Kitchen::default();
        let process = resolve(
            &varied.recipe,
            &text,
            Larder::built_in(),
            &[],
            &kitchen,
            Measures::Metric,
        );
        (process, varied.changes)
    }

    /// Names of the lots, and grams of one of them.
    fn lots(process: &Process) -> Vec<&str> {
        process.lots.iter().map(|lot| lot.name.as_str()).collect()
    }

    #[test]
    fn what_is_left_out_is_nowhere() {
        let (process, changes) = cooked("Variation: without cream. Leave out the cream.");
        assert_eq!(changes, ["without double cream"]);
        assert_eq!(lots(&process), ["butter", "onions", "potato", "chicken stock"]);
        assert!(process.open.is_empty(), "{:?}", process.open);
    }

    #[test]
    fn what_is_swapped_is_not_left_out() {
        let (process, changes) = cooked("Variation: without butter. Use 2 tbsp olive oil instead of the butter.");
        assert_eq!(changes, ["olive oil instead of butter"]);
        assert_eq!(process.lots[0].name, "olive oil");
        assert!(process.open.is_empty(), "{:?}", process.open);
    }

    #[test]
    fn what_is_swapped_takes_place_and_amount() {
        let (process, changes) = cooked("Variation: vegetarian. Use vegetable stock instead of the chicken stock.");
        assert_eq!(changes, ["vegetable stock instead of chicken stock"]);
        assert_eq!(process.lots[3].name, "vegetable stock");
        // A litre of stock, as of the first: 1 kg within a few percent.
        assert!(
            (process.lots[3].mass.grams() - 1000.0).abs() < 50.0,
            "{:?}",
            process.lots[3].mass
        );
        assert!(process.open.is_empty(), "{:?}", process.open);
    }

    /// The operation that takes a lot in, by the lots that go in with it.
    fn goes_in_with(process: &Process, name: &str) -> Vec<String> {
        let lot = process.lots.iter().position(|lot| lot.name == name).expect("is a lot");
        let added = process.acts.iter().find_map(|act| match &act.doing {
            crate::Doing::Add(portions) if portions.iter().any(|p| p.lot == lot) => Some(portions),
            _ => None,
        });
        let with = added.expect("goes in").iter();
        with.map(|portion| process.lots[portion.lot].name.clone()).collect()
    }

    #[test]
    fn what_is_added_goes_where_it_is_said_or_with_its_like_or_in_last() {
        let (process, _) = cooked("Variation: with mushrooms. Add 200 g mushrooms, sliced, with the onions.");
        assert_eq!(goes_in_with(&process, "mushrooms"), ["onions", "mushrooms"]);
        let (process, changes) = cooked("Variation: thicker. Blend in another small potato for body.");
        assert_eq!(changes, ["with potato added"]);
        assert_eq!(process.lots.iter().filter(|lot| lot.name == "potato").count(), 2);
        assert_eq!(goes_in_with(&process, "potato"), ["potato", "potato", "chicken stock"]);
        let (process, _) = cooked("Variation: hotter. Add 1 tsp curry powder.");
        assert_eq!(goes_in_with(&process, "curry powder"), ["curry powder"]);
    }

    #[test]
    fn what_is_not_understood_is_no_recipe() {
        let (varied, _) = read("Variation: for a crowd. Ask your neighbours what they would like.");
        assert_eq!(varied, None);
    }
}
