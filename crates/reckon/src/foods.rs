//! Where the foods of a process come from: the larder, or a short list in a test.

use potwright_larder::{Food, FoodId, Larder};
use potwright_pot::{Lot, Source};

/// Foods by their index.
pub(crate) trait Foods: Sync {
    /// The food; none for an index that was not given out here.
    fn food(&self, id: FoodId) -> Option<&Food>;

    /// The food of a lot; none for what another dish made and for what nobody knows.
    fn of(&self, lot: &Lot) -> Option<&Food> {
        match lot.source {
            Source::Larder(id) => self.food(id),
            Source::Made(_) | Source::Unknown => None,
        }
    }
}

/// Whether nothing of a food is eaten, but something of it passes into the liquid: bones for stock.
pub(crate) fn is_bone(food: &Food) -> bool {
    let behaviour = &food.behaviour;
    behaviour.inedible.is_some_and(|share| share >= 1.0) && behaviour.renders.is_some()
}

impl Foods for Larder {
    fn food(&self, id: FoodId) -> Option<&Food> {
        self.get(id)
    }
}
