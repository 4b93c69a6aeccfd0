//! How much fat is taken off: what the words name.

use potwright_manuscript::{FoodRef, Operation, Share};
use potwright_measure::{Mass, Unit};

use super::bench::Bench;
use super::words::{has, numbers, share_a_word};
use crate::FatOff;

/// Density of warm fat, g/ml (Choi and Okos, 925.6 − 0.418·t kg/m³, at 60 °C).
const FAT_G_ML: f64 = 0.90;

impl Bench<'_> {
    /// The amount of fat that the words name: what is left after 'all but', else what is taken off.
    pub(super) fn fat_named(&self, operation: &Operation) -> Option<FatOff> {
        let words = self.words();
        let of_fat = |food: &&FoodRef| share_a_word(&food.words.text, "fat");
        let all = || operation.foods.iter().chain(&operation.keep).chain(&operation.discard);
        let measured = all().filter(of_fat).find_map(|food| match &food.share {
            Share::Measure(quantity) => self.fat_g(quantity.amount.midpoint(), quantity.unit?),
            _ => None,
        });
        let grams = measured.or_else(|| self.fat_in_words(&words))?;
        let kept = ["all but", "except", "leave", "leaving", "keep", "keeping", "reserve"]
            .iter()
            .any(|word| has(&words, word));
        let mass = Mass::from_grams(grams);
        Some(if kept {
            FatOff::AllBut(mass)
        } else {
            FatOff::Amount(mass)
        })
    }

    /// Grams of fat in 'a tablespoon of the fat', '2 tbsp fat'.
    fn fat_in_words(&self, words: &str) -> Option<f64> {
        let counted = numbers(words);
        let one = words
            .split_whitespace()
            .zip(words.split_whitespace().skip(1))
            .filter(|(article, _)| matches!(*article, "a" | "an" | "one" | "the"))
            .map(|(_, unit)| (1.0, unit.to_owned()));
        counted
            .into_iter()
            .chain(one)
            .find_map(|(number, unit)| self.fat_g(number, Unit::from_spelling(&unit)?))
    }

    /// Grams of fat in a number of units.
    fn fat_g(&self, number: f64, unit: Unit) -> Option<f64> {
        let measures = self.shelf.measures;
        let by_mass = unit.mass(measures).map(|grams| grams.to_f64());
        let each = by_mass.or_else(|| unit.volume(measures).map(|ml| FAT_G_ML * ml.to_f64()))?;
        Some(number * each)
    }
}

#[cfg(test)]
mod tests {
    use potwright_larder::Larder;
    use potwright_measure::Measures;

    use crate::{Doing, FatOff, Kitchen};

    /// What the pages' words skim, in order.
    fn skimmed(method: &str) -> Vec<FatOff> {
        let text =
            format!("Belly\n\nServes 4\n\n500 g pork belly, diced\n2 onions, sliced\n1 litre water\n\n{method}\n");
        let recipe = potwright_manuscript::read(&text);
        let kitchen = Kitchen::default();
        let process = crate::resolve(&recipe, &text, Larder::built_in(), &[], &kitchen, Measures::Metric);
        let skims = |act: &crate::Act| match act.doing {
            Doing::Skim(off) => Some(off),
            _ => None,
        };
        process.acts.iter().filter_map(skims).collect()
    }

    /// A metric tablespoon is 15 ml: 13.5 g of fat at 0.90 g/ml; two US tablespoons would be another matter.
    #[test]
    fn named_amounts() {
        let brown = "1. Brown the pork belly in a casserole for 10 minutes.";
        let rest = "3. Add the onions and the water and simmer for 30 minutes.";
        let of = |words: &str| skimmed(&format!("{brown}\n2. {words}\n{rest}"));
        let grams = |off: &FatOff| match off {
            FatOff::AllBut(mass) => ("all but", mass.grams()),
            FatOff::Amount(mass) => ("off", mass.grams()),
            FatOff::Share(share) => ("share", *share),
        };
        for (words, how, expected) in [
            ("Pour off all but a tablespoon of the fat.", "all but", 13.5),
            ("Pour off all but 2 tablespoons of the fat.", "all but", 27.0),
            ("Pour off the fat.", "share", 0.85),
        ] {
            let found = of(words);
            assert_eq!(found.len(), 1, "{words} {found:?}");
            let (kind, amount) = grams(&found[0]);
            assert!(kind == how && (amount - expected).abs() < 0.01, "{words} {found:?}");
        }
    }
}
