//! The larder itself: foods by index and by key, and the name index over them.

use std::collections::HashMap;
use std::sync::OnceLock;

use crate::error::TableError;
use crate::imported::Table;
use crate::index::Index;
use crate::load;
use crate::packs::{Pack, Season};
use crate::tables::Tables;
use crate::{Food, FoodId};

/// All foods and everything the tables say of them.
#[derive(Clone, Debug)]
pub struct Larder {
    pub(crate) foods: Vec<Food>,
    pub(crate) keys: HashMap<String, FoodId>,
    pub(crate) packs: Vec<Vec<Pack>>,
    pub(crate) seasons: Vec<Vec<Season>>,
    pub(crate) index: Index,
    /// Foods of an imported table, which are named by key or whole description only.
    pub(crate) table: Table,
}

impl Larder {
    /// The project's own larder, read once.
    ///
    /// A fault in the built-in tables is caught by the tests of this crate; should one slip through, the larder is
    /// empty, every name is then an unsure one, and [`Larder::built_in_fault`] says what it is.
    #[must_use]
    pub fn built_in() -> &'static Larder {
        &Self::built().0
    }

    /// What is wrong with the built-in tables, so that [`Larder::built_in`] is empty; none when they are sound. A
    /// program is to say it and end before it cooks with nothing.
    #[must_use]
    pub fn built_in_fault() -> Option<&'static TableError> {
        Self::built().1.as_ref()
    }

    fn built() -> &'static (Larder, Option<TableError>) {
        static BUILT_IN: OnceLock<(Larder, Option<TableError>)> = OnceLock::new();
        BUILT_IN.get_or_init(|| match Larder::from_tables(&Tables::BUILT_IN) {
            Ok(larder) => (larder, None),
            Err(fault) => (Larder::empty(), Some(fault)),
        })
    }

    /// A larder made of the tables given.
    ///
    /// # Errors
    ///
    /// The first fault met, with its file and line: a header, a cell that is no number or no word of its column, a
    /// key that no food has, an empty source.
    pub fn from_tables(tables: &Tables<'_>) -> Result<Larder, TableError> {
        load::larder(tables)
    }

    fn empty() -> Larder {
        Larder {
            foods: Vec::new(),
            keys: HashMap::new(),
            packs: Vec::new(),
            seasons: Vec::new(),
            index: Index::default(),
            table: Table::default(),
        }
    }

    /// The larder with foods of a book's own and those of an imported table.
    ///
    /// A food of `own` whose key is known takes that food's place, any other is added; its names are its own, whoever
    /// bore them before. A food of `imported` is added when its key is new, and is found by its key or its whole
    /// description only, so that a table of thousands makes no cook's name doubtful.
    #[must_use]
    pub fn with(&self, own: &[Food], imported: &[Food]) -> Larder {
        let mut larder = Larder {
            foods: self.foods.clone(),
            keys: self.keys.clone(),
            packs: self.packs.clone(),
            seasons: self.seasons.clone(),
            index: Index::default(),
            table: Table::default(),
        };
        let first: Vec<FoodId> = own.iter().map(|food| larder.put(food)).collect();
        let named = larder.foods.len();
        for food in imported {
            if larder.id(&food.key).is_none() {
                larder.put(food);
            }
        }
        let (named, imported) = larder.foods.split_at(named);
        larder.table = Table::new(named.len() as u32, imported);
        larder.index = self.index.with(named, &first);
        larder
    }

    /// Puts a food in the place of the one of its key, or at the end.
    fn put(&mut self, food: &Food) -> FoodId {
        if let Some(id) = self.id(&food.key)
            && let Some(place) = self.foods.get_mut(id.0 as usize)
        {
            place.clone_from(food);
            return id;
        }
        let id = FoodId(self.foods.len() as u32);
        self.keys.insert(food.key.clone(), id);
        self.foods.push(food.clone());
        self.packs.push(Vec::new());
        self.seasons.push(Vec::new());
        id
    }

    /// The food of an index this larder gave; `None` for one of another larder that is out of its range.
    #[must_use]
    pub fn get(&self, id: FoodId) -> Option<&Food> {
        self.foods.get(id.0 as usize)
    }

    /// The index of a key.
    #[must_use]
    pub fn id(&self, key: &str) -> Option<FoodId> {
        self.keys.get(key).copied()
    }

    /// The food of a key: `carrot`, `haddock_smoked`.
    #[must_use]
    pub fn by_key(&self, key: &str) -> Option<&Food> {
        self.id(key).and_then(|id| self.get(id))
    }

    /// All foods, in the order of the name table.
    pub fn foods(&self) -> impl ExactSizeIterator<Item = (FoodId, &Food)> {
        self.foods
            .iter()
            .enumerate()
            .map(|(index, food)| (FoodId(index as u32), food))
    }

    /// How many foods it holds.
    #[must_use]
    pub fn len(&self) -> usize {
        self.foods.len()
    }

    /// Whether it holds none.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.foods.is_empty()
    }

    /// The packs a food is sold in, smallest first; empty when it is sold loose or nothing is known.
    #[must_use]
    pub fn packs(&self, id: FoodId) -> &[Pack] {
        self.packs.get(id.0 as usize).map_or(&[], Vec::as_slice)
    }

    /// The months a food is in season, by market; empty when it is there all year or nothing is known.
    #[must_use]
    pub fn seasons(&self, id: FoodId) -> &[Season] {
        self.seasons.get(id.0 as usize).map_or(&[], Vec::as_slice)
    }
}
