//! Allergens of US and EU law with what causes them, and whether the dish holds anything of an animal.
//!
//! What was strained out still counts, and so do what is only served with the dish, what may be left out and what the
//! page lets stand in the place of another food. Sulphites are reckoned by mass (`sulphites`).

use potwright_larder::{Allergen, Contains, FoodId};
use potwright_pot::{Made, Process};

use crate::AllergenRow;
use crate::brought::{Brought, Of, brought, of};
use crate::foods::Foods;
use crate::reading::Reading;
use crate::sulphites::sulphites;
use crate::table::{Row, Table, rows};

static LAW: Table = Table::of(include_str!("../data/allergen_law.tsv"));

/// Allergens that come from animals.
const OF_ANIMALS: [Allergen; 5] = [
    Allergen::Milk,
    Allergen::Eggs,
    Allergen::Fish,
    Allergen::Crustaceans,
    Allergen::Molluscs,
];

/// The name of an allergen as the page prints it: `milk`, `rye, barley or oats`.
#[must_use]
pub fn allergen_name(allergen: Allergen) -> &'static str {
    law(allergen).map_or("", |row| row.text(1))
}

fn law(allergen: Allergen) -> Option<Row<'static>> {
    rows(&LAW).find(|row| row.word(0) == Some(allergen))
}

/// One row for every allergen of the law, in the table's order.
pub(crate) fn allergens(process: &Process, made: &[Made], central: &Reading, foods: &dyn Foods) -> Vec<AllergenRow> {
    rows(&LAW)
        .filter_map(|row| {
            let allergen: Allergen = row.word(0)?;
            let (contains, causes) = match allergen {
                Allergen::Sulphites => sulphites(process, made, central, foods),
                _ => known_of(process, made, foods, allergen),
            };
            Some(row_of(allergen, contains, causes))
        })
        .collect()
}

/// A row with what the law makes of it.
pub(crate) fn row_of(allergen: Allergen, contains: Contains, causes: Vec<String>) -> AllergenRow {
    let law = law(allergen);
    let declared = |column| {
        let wants = law.as_ref().is_some_and(|row| row.text(column) == "yes");
        contains == Contains::Yes && wants
    };
    AllergenRow {
        allergen,
        contains,
        causes,
        declare_us: declared(2),
        declare_eu: declared(3),
    }
}

/// What the dish holds of an allergen: the worst of its foods, and the names of those that make it so.
fn known_of(process: &Process, made: &[Made], foods: &dyn Foods, allergen: Allergen) -> (Contains, Vec<String>) {
    let each = brought(process);
    let of_each = each.iter().map(|one| in_one(one, made, foods, allergen));
    worst(of_each.collect())
}

/// The worst that is known, and every cause of it once.
fn worst(all: Vec<(Contains, String)>) -> (Contains, Vec<String>) {
    let worst = all.iter().map(|(contains, _)| *contains).max();
    let worst = worst.unwrap_or(Contains::No);
    let mut causes: Vec<String> = Vec::new();
    if worst != Contains::No {
        for (contains, cause) in all {
            if contains == worst && !causes.contains(&cause) {
                causes.push(cause);
            }
        }
    }
    (worst, causes)
}

/// What one food holds of an allergen. A name that may be several foods holds what any of them does, and is known to be
/// free of nothing.
fn in_one(one: &Brought, made: &[Made], foods: &dyn Foods, allergen: Allergen) -> (Contains, String) {
    let (contains, told) = in_what_it_is_taken_for(one, made, foods, allergen);
    let Some(doubt) = one.doubt.as_ref().filter(|_| contains != Contains::Yes) else {
        return (contains, told);
    };
    let holds = |food: FoodId| {
        foods
            .food(food)
            .is_some_and(|food| food.contains(allergen) == Contains::Yes)
    };
    match doubt.rivals.iter().find(|rival| holds(rival.food)) {
        Some(rival) => (Contains::Yes, one.told_with(Some(&format!("may be {}", rival.name)))),
        None => (Contains::NotKnown, one.told()),
    }
}

fn in_what_it_is_taken_for(one: &Brought, made: &[Made], foods: &dyn Foods, allergen: Allergen) -> (Contains, String) {
    match of(one.source, made, foods) {
        Of::Food(food) => (food.contains(allergen), one.told()),
        Of::Made(dish) => {
            let listed = dish.allergens.iter().find(|(which, _, _)| *which == allergen);
            listed.map_or((Contains::NotKnown, one.told()), |(_, contains, cause)| {
                let remark = Some(cause.as_str()).filter(|cause| !cause.is_empty());
                (*contains, one.told_with(remark))
            })
        }
        Of::Unknown => (Contains::NotKnown, one.told()),
    }
}

/// Whether any animal product is or may be in the dish, and what makes it so: yes when one is, none when one is not
/// known to be free of it.
pub(crate) fn animal(process: &Process, made: &[Made], foods: &dyn Foods) -> (Option<bool>, Vec<String>) {
    let of_one = |one: &Brought| match &one.doubt {
        // Whatever it was taken for, it may be something else.
        Some(_) => Contains::NotKnown,
        None => of_an_animal(of(one.source, made, foods)),
    };
    let each = brought(process);
    let (contains, causes) = worst(each.iter().map(|one| (of_one(one), one.told())).collect());
    let animal = match contains {
        Contains::Yes => Some(true),
        Contains::NotKnown => None,
        Contains::No => Some(false),
    };
    (animal, causes)
}

/// Whether it is of an animal, of what is known for sure.
fn of_an_animal(of: Of<'_>) -> Contains {
    match of {
        Of::Food(food) if food.animal => Contains::Yes,
        // A bought stock that may hold milk may hold an animal product.
        Of::Food(food) => OF_ANIMALS
            .map(|which| food.contains(which))
            .into_iter()
            .max()
            .unwrap_or(Contains::No),
        Of::Made(dish) if dish.animal => Contains::Yes,
        Of::Made(_) => Contains::No,
        Of::Unknown => Contains::NotKnown,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{self, Shelf};
    use potwright_larder::Kind;
    use potwright_pot::{Alternative, Doubt, Lot, Rival, Source, Stuff};

    use Allergen::{Celery, Fish, Milk, Molluscs, Sulphites, Wheat};
    use Contains::{No, NotKnown, Yes};

    /// A process of larder foods, one lot each, in this order.
    fn dish(shelf: &Shelf, kg: &[f64]) -> (Process, Reading) {
        let lots: Vec<Lot> = shelf
            .0
            .iter()
            .zip(kg)
            .enumerate()
            .map(|(index, (food, kg))| Lot {
                source: Source::Larder(FoodId(index as u32)),
                ..testing::lot(&food.name, food.kind, *kg)
            })
            .collect();
        let mut reading = testing::reading();
        reading.lot_kg = kg.to_vec();
        (testing::process(&lots), reading)
    }

    fn chowder() -> (Shelf, Process, Reading) {
        let mut bacon = testing::food("bacon", Kind::Bacon, &[]);
        bacon.allergens_complete = false;
        let mut stock = testing::food("fish stock", Kind::Stock, &[(Fish, Yes), (Celery, NotKnown)]);
        stock.allergens_complete = false;
        let mut wine = testing::food("white wine", Kind::Wine, &[(Sulphites, Yes)]);
        wine.behaviour.sulphite_mg_kg = Some(150.0);
        let shelf = Shelf(vec![
            testing::food("clams", Kind::Shellfish, &[(Molluscs, Yes)]),
            bacon,
            testing::food("butter", Kind::Fat, &[(Milk, Yes)]),
            testing::food("flour", Kind::Flour, &[(Wheat, Yes)]),
            testing::food("celery", Kind::Vegetable, &[(Celery, Yes)]),
            stock,
            testing::food("milk", Kind::Milk, &[(Milk, Yes)]),
            wine,
        ]);
        let (process, mut reading) = dish(&shelf, &[0.5, 0.1, 0.05, 0.05, 0.1, 0.6, 0.4, 0.3]);
        reading.whole = testing::matter(&[(Stuff::Water, 2.0)]);
        (shelf, process, reading)
    }

    /// Clam chowder: 300 ml of wine of 150 mg/l in 2.0 kg are 45 ÷ 2.0 = 22.5 mg/kg. US: milk, wheat, fish – clams
    /// are no US major allergen. EU: milk, gluten (wheat), fish, molluscs, celery, sulphites. Bacon and stock from a
    /// packet leave others open but do not change what is declared.
    #[test]
    fn clam_chowder() {
        let (shelf, process, reading) = chowder();
        let found = allergens(&process, &[], &reading, &shelf);
        let set = |declared: fn(&AllergenRow) -> bool| -> Vec<Allergen> {
            let rows = found.iter().filter(|row| declared(row));
            rows.map(|row| row.allergen).collect()
        };
        assert_eq!(set(|row| row.declare_us), [Wheat, Fish, Milk]);
        assert_eq!(
            set(|row| row.declare_eu),
            [Wheat, Fish, Milk, Celery, Molluscs, Sulphites]
        );
        let row = |which| found.iter().find(|row| row.allergen == which).unwrap();
        assert_eq!(
            row(Sulphites).causes,
            ["white wine (22.5 mg in a kilogram of the dish)"]
        );
        assert_eq!(row(Milk).causes, ["butter", "milk"]);
        assert_eq!(row(Celery).causes, ["celery"]);
        let soya = row(Allergen::Soybeans);
        assert_eq!(
            (soya.contains, soya.causes.clone()),
            (NotKnown, vec!["bacon".into(), "fish stock".into()])
        );
        assert_eq!(found.len(), 15, "every allergen of the law has a row");
    }

    #[test]
    fn what_another_dish_brought_is_named() {
        let stock = Made {
            names: vec!["stock".into()],
            matter: testing::matter(&[(Stuff::Water, 2.0)]),
            density_g_ml: 1.0,
            allergens: rows(&LAW)
                .filter_map(|row| row.word(0))
                .map(|a| (a, if a == Celery { Yes } else { No }, "celery".to_owned()))
                .collect(),
            animal: true,
            sulphite_mg: 40.0,
            cost: None,
        };
        let lot = Lot {
            source: Source::Made(0),
            ..testing::lot("brown stock", Kind::Stock, 1.0)
        };
        let process = testing::process(&[lot]);
        let mut reading = testing::reading();
        reading.lot_kg = vec![1.0];
        reading.whole = testing::matter(&[(Stuff::Water, 1.0)]);
        let shelf = Shelf(Vec::new());
        let made = [stock];
        let found = known_of(&process, &made, &shelf, Celery);
        assert_eq!(found, (Yes, vec!["brown stock (celery)".to_owned()]));
        assert_eq!(known_of(&process, &made, &shelf, Fish).0, No);
        // Half of the stock carries half of its 40 mg.
        assert_eq!(crate::sulphites::sulphite_mg(&process, &made, &reading, &shelf), 20.0);
        assert_eq!(
            animal(&process, &made, &shelf),
            (Some(true), vec!["brown stock".to_owned()])
        );
    }

    /// Butter or olive oil, walnuts if you like: the butter is cooked, and whoever has the oil has it without milk,
    /// but the page lets both be in the dish. Oil first and butter second is no different.
    #[test]
    fn second_choices_and_what_may_be_left_out_count() {
        let shelf = Shelf(vec![
            testing::food("butter", Kind::Fat, &[(Milk, Yes)]),
            testing::food("olive oil", Kind::Oil, &[]),
            testing::food("walnuts", Kind::Nut, &[(Allergen::TreeNuts, Yes)]),
        ]);
        let (mut process, _) = dish(&shelf, &[0.03, 0.03, 0.05]);
        process.lots.swap(0, 1);
        process.lots.remove(1);
        process.lots[1].optional = true;
        process.alternatives = vec![Alternative {
            lot: 0,
            name: "butter".to_owned(),
            source: Source::Larder(FoodId(0)),
            doubt: None,
        }];
        assert_eq!(process.lots[0].name, "olive oil");
        let milk = known_of(&process, &[], &shelf, Milk);
        assert_eq!(milk, (Yes, vec!["butter (if used instead of olive oil)".to_owned()]));
        let nuts = known_of(&process, &[], &shelf, Allergen::TreeNuts);
        assert_eq!(nuts, (Yes, vec!["walnuts (optional)".to_owned()]));
        process.alternatives[0].source = Source::Unknown;
        assert_eq!(
            known_of(&process, &[], &shelf, Milk).0,
            NotKnown,
            "nobody knows what it is"
        );
        assert_eq!(animal(&process, &[], &shelf).0, None);
    }

    /// Strict about animals too: butter in the second place is butter on the page.
    #[test]
    fn an_animal_product_in_the_second_place_counts() {
        let mut butter = testing::food("butter", Kind::Fat, &[(Milk, Yes)]);
        butter.animal = true;
        let shelf = Shelf(vec![testing::food("olive oil", Kind::Oil, &[]), butter]);
        let (mut process, _) = dish(&shelf, &[0.03]);
        assert_eq!(animal(&process, &[], &shelf), (Some(false), Vec::new()));
        process.alternatives = vec![Alternative {
            lot: 0,
            name: "butter".to_owned(),
            source: Source::Larder(FoodId(1)),
            doubt: None,
        }];
        let causes = vec!["butter (if used instead of olive oil)".to_owned()];
        assert_eq!(animal(&process, &[], &shelf), (Some(true), causes));
    }

    #[test]
    fn what_nobody_knows_is_said() {
        let process = testing::process(&[testing::lot("a secret", Kind::Other, 0.1)]);
        let shelf = Shelf(Vec::new());
        assert_eq!(
            known_of(&process, &[], &shelf, Milk),
            (NotKnown, vec!["a secret".to_owned()])
        );
        assert_eq!(animal(&process, &[], &shelf), (None, vec!["a secret".to_owned()]));
        assert_eq!(animal(&testing::process(&[]), &[], &shelf), (Some(false), Vec::new()));
    }

    /// 'Satay paste' taken for tomato purée, which holds nothing: nothing is denied. 'Nut butter' taken for butter that
    /// may be mixed nuts holds the milk of the one and the nuts of the other.
    #[test]
    fn a_name_that_is_not_sure_denies_nothing() {
        let mut butter = testing::food("butter", Kind::Fat, &[(Milk, Yes)]);
        butter.animal = true;
        let shelf = Shelf(vec![
            testing::food("tomato purée", Kind::Vegetable, &[]),
            butter,
            testing::food("mixed nuts", Kind::Nut, &[(Allergen::TreeNuts, Yes)]),
        ]);
        let (mut process, reading) = dish(&shelf, &[0.1, 0.1]);
        process.lots[0].name = "satay paste".to_owned();
        process.lots[1].name = "nut butter".to_owned();
        let doubt = |rivals: Vec<Rival>| {
            Some(Doubt {
                taken_for: None,
                rivals,
                allergens_hang: true,
                span: None,
            })
        };
        process.lots[0].doubt = doubt(Vec::new());
        process.lots[1].doubt = doubt(vec![Rival {
            food: FoodId(2),
            name: "mixed nuts".to_owned(),
        }]);
        let rows = allergens(&process, &[], &reading, &shelf);
        let of = |which| {
            let row = rows.iter().find(|row| row.allergen == which).unwrap();
            (row.contains, row.causes.clone())
        };
        assert_eq!(of(Milk), (Yes, vec!["nut butter".to_owned()]));
        assert_eq!(
            of(Allergen::TreeNuts),
            (Yes, vec!["nut butter (may be mixed nuts)".to_owned()])
        );
        let both = vec!["satay paste".to_owned(), "nut butter".to_owned()];
        assert_eq!(of(Allergen::Peanuts), (NotKnown, both.clone()));
        assert_eq!(of(Sulphites), (NotKnown, both.clone()));
        assert!(rows.iter().all(|row| row.contains != No));
        assert_eq!(animal(&process, &[], &shelf), (None, both));
    }

    #[test]
    fn every_allergen_has_a_name() {
        assert_eq!(allergen_name(Milk), "milk");
        assert_eq!(allergen_name(Allergen::OtherGluten), "rye, barley or oats");
    }
}
