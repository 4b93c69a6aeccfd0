//! The foods of a book's own: `larder.tsv`, which its writer keeps, and `larder_table.tsv`, which an import put there.
//! Both have the layout of docs/larder-tsv.md.

use potwright_larder::own::{self, Asked};
use potwright_larder::{Food, Larder};

use crate::error::{Fault, Misread};

/// The writer's own foods.
pub const OWN: &str = "larder.tsv";
/// The foods of an imported composition table.
pub const IMPORTED: &str = "larder_table.tsv";

/// What a book adds to the larder.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct OwnFoods {
    /// The writer's own, in their order; one whose key the larder knows takes that food's place.
    pub own: Vec<Food>,
    /// Those of an imported table.
    pub imported: Vec<Food>,
}

impl OwnFoods {
    /// Reads both files from their texts; an empty one adds nothing. A food of the writer's may be like one of the
    /// imported table.
    ///
    /// # Errors
    ///
    /// Every fault, with its file and line.
    pub fn read(own: &str, imported: &str) -> Result<OwnFoods, Vec<Misread>> {
        let built_in = Larder::built_in();
        let mut foods = OwnFoods {
            own: Vec::new(),
            imported: own::read(IMPORTED, imported, built_in, Asked::OfATable)
                .map_err(|faults| misread(IMPORTED, faults))?,
        };
        let with_table;
        let base = if foods.imported.is_empty() {
            built_in
        } else {
            with_table = built_in.with(&[], &foods.imported);
            &with_table
        };
        foods.own = own::read(OWN, own, base, Asked::OfAWriter).map_err(|faults| misread(OWN, faults))?;
        Ok(foods)
    }

    /// Whether the book adds nothing.
    #[must_use]
    pub fn is_empty(&self) -> bool {
        self.own.is_empty() && self.imported.is_empty()
    }

    /// The larder the book is cooked from.
    #[must_use]
    pub fn larder(&self) -> Larder {
        Larder::built_in().with(&self.own, &self.imported)
    }
}

fn misread(file: &str, faults: Vec<own::Misread>) -> Vec<Misread> {
    let one = |fault: own::Misread| Misread {
        file: file.to_owned(),
        line: fault.line,
        fault: Fault::Food(fault.wrong),
    };
    faults.into_iter().map(one).collect()
}

#[cfg(test)]
mod tests {
    use super::OwnFoods;

    #[test]
    fn a_food_may_be_like_one_of_the_imported_table() {
        let table = "key\tname\tkind\twater_g\tprotein_g\tfat_g\tcarbohydrate_g\tsource\nsr99999\tLockwort, raw\tvegetable\t90\t2\t1\t6\tinvented\n";
        let foods = OwnFoods::read("name\tlike\tpiece_g\nlockwort\tsr99999\t80\n", table).expect("sound");
        let larder = foods.larder();
        let food = larder.by_key("lockwort").expect("the writer's own");
        assert_eq!(food.composition.protein_g, Some(2.0));
        assert!(larder.by_key("sr99999").is_some());
    }

    #[test]
    fn faults_name_the_file() {
        let faults = OwnFoods::read("name\tlike\tcup_g\nrusk\twhite bread\tmuch\n", "").expect_err("a fault");
        let says: Vec<String> = faults.iter().map(ToString::to_string).collect();
        assert_eq!(
            says,
            ["larder.tsv, line 2: 'cup_g' says 'much'; write grams above nought, like 150"]
        );
        let faults = OwnFoods::read("", "key\tsugar\nsr1\t1\n").expect_err("a fault");
        assert!(
            faults[0]
                .to_string()
                .starts_with("larder_table.tsv, line 1: no column is called 'sugar'; 'sugars_g'")
        );
    }
}
