//! Foods of an imported table: named by key, or by their whole description, word for word in any order.

use std::collections::HashMap;
use std::sync::{Arc, OnceLock};

use crate::Food;
use crate::words::{fold, singular};

/// The foods at the end of a larder that came with an imported table.
#[derive(Clone, Debug, Default)]
pub(crate) struct Table {
    /// The first of them.
    from: u32,
    /// Their descriptions' words; made when a name is first looked for.
    words: Vec<String>,
    whole: Arc<OnceLock<HashMap<Vec<String>, u32>>>,
}

impl Table {
    /// Of foods whose first has the index `from`.
    pub(crate) fn new(from: u32, foods: &[Food]) -> Table {
        Table {
            from,
            words: foods.iter().map(|food| food.name.clone()).collect(),
            whole: Arc::default(),
        }
    }

    pub(crate) fn is_empty(&self) -> bool {
        self.words.is_empty()
    }

    /// The food whose description is made of exactly these words.
    pub(crate) fn whole(&self, text: &str) -> Option<u32> {
        let whole = self.whole.get_or_init(|| {
            let mut whole = HashMap::with_capacity(self.words.len());
            for (number, description) in (self.from..).zip(&self.words) {
                whole.entry(sorted(description)).or_insert(number);
            }
            whole
        });
        whole.get(&sorted(text)).copied()
    }

    /// Foods whose description holds all words of a name, the shortest description first.
    pub(crate) fn holding(&self, name: &str) -> Vec<u32> {
        let asked = sorted(name);
        if asked.is_empty() {
            return Vec::new();
        }
        let mut found: Vec<(usize, u32)> = Vec::new();
        for (number, description) in (self.from..).zip(&self.words) {
            let its = sorted(description);
            if asked.iter().all(|word| its.binary_search(word).is_ok()) {
                found.push((its.len(), number));
            }
        }
        found.sort_unstable();
        found.into_iter().map(|(_, number)| number).collect()
    }
}

/// The words of a text, folded and in the singular, in order of the alphabet, each once.
fn sorted(text: &str) -> Vec<String> {
    let mut words: Vec<String> = fold(text).split_whitespace().map(singular).collect();
    words.sort_unstable();
    words.dedup();
    words
}
