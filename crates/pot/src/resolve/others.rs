//! What the page prints beside what is cooked: second choices, and what it says the dish makes.

use potwright_larder::Hints;
use potwright_manuscript::{BlockKind, Ingredient, Item, YieldLine};

use super::Notes;
use super::foods::Found;
use super::lots::{Shelf, Stocked};
use super::words::{numbers, plain};
use crate::{Alternative, Makes};

/// What is eaten piece by piece, singular and plural: the 'slices' of '1 loaf, 12 slices'.
const HELPINGS: [(&str, &str); 9] = [
    ("slice", "slices"),
    ("piece", "pieces"),
    ("wedge", "wedges"),
    ("roll", "rolls"),
    ("bun", "buns"),
    ("scone", "scones"),
    ("dumpling", "dumplings"),
    ("square", "squares"),
    ("biscuit", "biscuits"),
];

impl Shelf<'_> {
    /// The foods that may take the place of those that are cooked: 'or olive oil', and lines that stand for another.
    pub(super) fn alternatives(&self, stocked: &Stocked, notes: &mut Notes) -> Vec<Alternative> {
        let mut found = Vec::new();
        for (index, line) in self.recipe.ingredients.iter().enumerate() {
            if line.equipment {
                continue;
            }
            let first = line.instead_of.unwrap_or(index);
            let Some(lot) = stocked.lot(first, 0) else { continue };
            let second = line.items.iter().filter(|_| line.instead_of.is_some());
            let named = line.alternatives.iter().map(|other| &other.item);
            for item in second.chain(named) {
                let of = self.find_other(line, item);
                of.note(&item.name, item.span, notes);
                let other = Alternative {
                    lot,
                    name: item.name.clone(),
                    source: of.source(),
                    doubt: of.doubt(Some(item.span)),
                };
                let same = stocked.lots.get(lot).is_some_and(|lot| lot.source == other.source);
                if !same && !found.contains(&other) {
                    found.push(other);
                }
            }
        }
        found
    }

    fn find_other(&self, line: &Ingredient, item: &Item) -> Found<'_> {
        let hints = Hints {
            state: &item.state,
            preparation: line.preparation.as_ref().map_or("", |words| &words.text),
            ..Hints::default()
        };
        self.find(&item.name, &hints)
    }

    /// What the yield line counts when it does not count people; of '1 loaf, 12 slices' the slices.
    pub(super) fn makes(&self) -> Option<Makes> {
        let line = self.recipe.yields.as_ref()?;
        if line.servings().is_some() {
            return None;
        }
        let whole = self.yield_words(line);
        let counted = numbers(&plain(&whole)).into_iter().find_map(|(number, word)| {
            let (one, _) = HELPINGS
                .iter()
                .find(|(one, several)| word == *one || word == *several)?;
            Some(((number, number), (*one).to_owned()))
        });
        let said = || {
            let amount = line.amount?;
            Some(((amount.low.to_f64(), amount.high.to_f64()), line.unit.clone()?))
        };
        let (amount, unit) = counted.or_else(said)?;
        Some(Makes {
            words: whole,
            amount,
            unit,
        })
    }

    /// The words of the whole yield line, on one line.
    fn yield_words(&self, line: &YieldLine) -> String {
        let holds = |block: &&potwright_manuscript::Block| {
            block.kind == BlockKind::Yield && block.span.contains(line.words.span)
        };
        let block = self.recipe.blocks.iter().find(holds);
        let words = block.map_or(line.words.text.as_str(), |block| block.span.of(self.text));
        words.split_whitespace().collect::<Vec<_>>().join(" ")
    }
}

#[cfg(test)]
mod tests {
    use potwright_larder::Larder;
    use potwright_measure::Measures;

    use crate::{Kitchen, Process, Source, resolve};

    fn process(text: &str) -> Process {
        let recipe = potwright_manuscript::read(text);
        resolve(
            &recipe,
            text,
            Larder::built_in(),
            &[],
            &Kitchen::default(),
            Measures::Metric,
        )
    }

    #[test]
    fn second_choices_are_kept_beside_the_first() {
        let text = "Soup\n\nServes 4\n\n30 g butter or olive oil\n2 onions, sliced\n1 litre chicken or vegetable stock\n\n\
            Melt the butter in a pot and fry the onions for 8 minutes. Add the stock and simmer for 20 minutes.\n";
        let process = process(text);
        let larder = Larder::built_in();
        let key = |source| match source {
            Source::Larder(id) => larder.get(id).map_or("", |food| food.key.as_str()),
            _ => "",
        };
        let found: Vec<(&str, &str)> = process
            .alternatives
            .iter()
            .map(|other| (key(process.lots[other.lot].source), key(other.source)))
            .collect();
        assert_eq!(found, [("butter", "olive_oil"), ("chicken_stock", "vegetable_stock")]);
    }

    #[test]
    fn what_is_counted_in_a_yield_line() {
        let makes = |line: &str| {
            let text = format!("Loaf\n\n{line}\n\n500 g flour\n\nMix the flour in a bowl.\n");
            process(&text).makes.map(|makes| (makes.amount, makes.unit))
        };
        let one = |number: f64, unit: &str| Some(((number, number), unit.to_owned()));
        assert_eq!(makes("Makes 1 loaf, 12 slices"), one(12.0, "slice"));
        assert_eq!(makes("Makes about 3 litres"), one(3.0, "litre"));
        assert_eq!(makes("Makes 24 rolls"), one(24.0, "roll"));
        assert_eq!(makes("Serves 4"), None);
    }
}
