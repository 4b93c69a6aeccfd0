//! Allergens of US and EU law with what causes them, and whether the dish holds anything of an animal.
//!
//! What was strained out still counts, and so does what is only served with the dish. Sulphites are reckoned by mass
//! with no credit for what boils off.

use potwright_larder::{Allergen, Contains};
use potwright_pot::{Lot, Made, Process, Source};

use crate::AllergenRow;
use crate::foods::Foods;
use crate::reading::{Reading, share};
use crate::table::{Row, rows};

const LAW: &str = include_str!("../data/allergen_law.tsv");

/// Sulphites are declared above this in the finished food, mg of sulphur dioxide a kilogram (Regulation (EU)
/// 1169/2011, Annex II 12).
const SULPHITE_MG_KG: f64 = 10.0;

/// The name of an allergen as the page prints it: `milk`, `rye, barley or oats`.
#[must_use]
pub fn allergen_name(allergen: Allergen) -> &'static str {
    law(allergen).map_or("", |row| row.text(1))
}

fn law(allergen: Allergen) -> Option<Row<'static>> {
    rows(LAW).find(|row| row.word(0) == Some(allergen))
}

/// One row for every allergen of the law, in the table's order.
pub(crate) fn allergens(process: &Process, made: &[Made], central: &Reading, foods: &dyn Foods) -> Vec<AllergenRow> {
    rows(LAW)
        .filter_map(|row| {
            let allergen: Allergen = row.word(0)?;
            let (contains, causes) = match allergen {
                Allergen::Sulphites => sulphites(process, made, central, foods),
                _ => known_of(process, made, foods, allergen),
            };
            let declared = |column| contains == Contains::Yes && row.text(column) == "yes";
            Some(AllergenRow {
                allergen,
                contains,
                causes,
                declare_us: declared(2),
                declare_eu: declared(3),
            })
        })
        .collect()
}

/// What the dish holds of an allergen: the worst of its foods, and the names of those that make it so.
fn known_of(process: &Process, made: &[Made], foods: &dyn Foods, allergen: Allergen) -> (Contains, Vec<String>) {
    let of_lots: Vec<(Contains, String)> = process
        .lots
        .iter()
        .map(|lot| of_lot(lot, made, foods, allergen))
        .collect();
    let worst = of_lots.iter().map(|(contains, _)| *contains).max();
    let worst = worst.unwrap_or(Contains::No);
    let mut causes: Vec<String> = Vec::new();
    if worst != Contains::No {
        for (contains, cause) in of_lots {
            if contains == worst && !causes.contains(&cause) {
                causes.push(cause);
            }
        }
    }
    (worst, causes)
}

fn of_lot(lot: &Lot, made: &[Made], foods: &dyn Foods, allergen: Allergen) -> (Contains, String) {
    let unknown = (Contains::NotKnown, lot.name.clone());
    match lot.source {
        Source::Larder(_) => foods
            .of(lot)
            .map_or(unknown, |food| (food.contains(allergen), lot.name.clone())),
        Source::Made(index) => {
            let Some(dish) = made.get(index) else {
                return unknown;
            };
            let listed = dish.allergens.iter().find(|(which, _, _)| *which == allergen);
            listed.map_or(unknown, |(_, contains, cause)| {
                let cause = match cause.as_str() {
                    "" => lot.name.clone(),
                    cause => format!("{} ({cause})", lot.name),
                };
                (*contains, cause)
            })
        }
        Source::Unknown => unknown,
    }
}

/// What one lot brings of sulphites.
enum Sulphite {
    Mg(f64),
    Declared,
    NotKnown,
}

fn sulphite_of(lot: &Lot, kg: f64, made: &[Made], foods: &dyn Foods) -> Sulphite {
    match lot.source {
        Source::Larder(_) => match foods.of(lot) {
            None => Sulphite::NotKnown,
            Some(food) => match (food.behaviour.sulphite_mg_kg, food.contains(Allergen::Sulphites)) {
                (Some(mg_kg), _) => Sulphite::Mg(mg_kg * kg),
                (None, Contains::Yes) => Sulphite::Declared,
                (None, Contains::NotKnown) => Sulphite::NotKnown,
                (None, Contains::No) => Sulphite::Mg(0.0),
            },
        },
        Source::Made(index) => match made.get(index) {
            None => Sulphite::NotKnown,
            Some(dish) => {
                let listed = dish.allergens.iter().find(|(a, _, _)| *a == Allergen::Sulphites);
                match listed.map(|(_, contains, _)| *contains) {
                    Some(Contains::NotKnown) | None => Sulphite::NotKnown,
                    Some(_) => Sulphite::Mg(dish.sulphite_mg * share(kg, dish.matter.total_kg())),
                }
            }
        },
        Source::Unknown => Sulphite::NotKnown,
    }
}

/// Sulphur dioxide brought by all lots that go into the dish, mg.
pub(crate) fn sulphite_mg(process: &Process, made: &[Made], central: &Reading, foods: &dyn Foods) -> f64 {
    let lots = process.lots.iter().enumerate().filter(|(_, lot)| !lot.for_serving);
    lots.map(|(index, lot)| {
        let kg = central.lot_kg.get(index).copied().unwrap_or(0.0);
        match sulphite_of(lot, kg, made, foods) {
            Sulphite::Mg(mg) => mg,
            Sulphite::Declared | Sulphite::NotKnown => 0.0,
        }
    })
    .sum()
}

fn sulphites(process: &Process, made: &[Made], central: &Reading, foods: &dyn Foods) -> (Contains, Vec<String>) {
    let dish_kg = central.edible_kg();
    let (mut brought, mut declared, mut not_known) = (Vec::new(), Vec::new(), Vec::new());
    for (index, lot) in process.lots.iter().enumerate() {
        let kg = central.lot_kg.get(index).copied().unwrap_or(0.0);
        match sulphite_of(lot, kg, made, foods) {
            // What is only served with the dish counts by itself.
            Sulphite::Mg(mg) if lot.for_serving && share(mg, kg) > SULPHITE_MG_KG => {
                declared.push(lot.name.clone());
            }
            Sulphite::Mg(mg) if mg > 0.0 && !lot.for_serving => brought.push((mg, lot.name.clone())),
            Sulphite::Mg(_) => {}
            Sulphite::Declared => declared.push(lot.name.clone()),
            Sulphite::NotKnown => not_known.push(lot.name.clone()),
        }
    }
    let total_mg: f64 = brought.iter().map(|(mg, _)| mg).sum();
    if share(total_mg, dish_kg) > SULPHITE_MG_KG {
        let caused =
            |(mg, name): (f64, String)| format!("{name} ({:.1} mg in a kilogram of the dish)", share(mg, dish_kg));
        declared.extend(brought.into_iter().map(caused));
    }
    if !declared.is_empty() {
        (Contains::Yes, declared)
    } else if !not_known.is_empty() {
        (Contains::NotKnown, not_known)
    } else {
        (Contains::No, Vec::new())
    }
}

/// Whether any animal product went in: yes when one did, none when one is not known to be free of it.
pub(crate) fn animal(process: &Process, made: &[Made], foods: &dyn Foods) -> Option<bool> {
    let of_lot = |lot: &Lot| match lot.source {
        Source::Larder(_) => foods.of(lot).map(|food| food.animal),
        Source::Made(index) => made.get(index).map(|dish| dish.animal),
        Source::Unknown => None,
    };
    let all: Vec<Option<bool>> = process.lots.iter().map(of_lot).collect();
    if all.contains(&Some(true)) {
        Some(true)
    } else if all.contains(&None) {
        None
    } else {
        Some(false)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{self, Shelf};
    use potwright_larder::{FoodId, Kind};
    use potwright_pot::Stuff;

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

    /// 150 ml of wine of 100 mg/l in 2.0 kg: 7.5 mg/kg is not above 10.
    #[test]
    fn little_wine_is_below_the_threshold() {
        let mut wine = testing::food("wine", Kind::Wine, &[(Sulphites, Yes)]);
        wine.behaviour.sulphite_mg_kg = Some(100.0);
        let shelf = Shelf(vec![wine]);
        let (process, mut reading) = dish(&shelf, &[0.15]);
        reading.whole = testing::matter(&[(Stuff::Water, 2.0)]);
        assert_eq!(sulphites(&process, &[], &reading, &shelf), (No, Vec::new()));
        assert_eq!(sulphite_mg(&process, &[], &reading, &shelf), 15.0);
    }

    #[test]
    fn what_another_dish_brought_is_named() {
        let stock = Made {
            names: vec!["stock".into()],
            matter: testing::matter(&[(Stuff::Water, 2.0)]),
            density_g_ml: 1.0,
            allergens: rows(LAW)
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
        assert_eq!(sulphite_mg(&process, &made, &reading, &shelf), 20.0);
        assert_eq!(animal(&process, &made, &shelf), Some(true));
    }

    #[test]
    fn what_nobody_knows_is_said() {
        let process = testing::process(&[testing::lot("a secret", Kind::Other, 0.1)]);
        let shelf = Shelf(Vec::new());
        assert_eq!(
            known_of(&process, &[], &shelf, Milk),
            (NotKnown, vec!["a secret".to_owned()])
        );
        assert_eq!(animal(&process, &[], &shelf), None);
        assert_eq!(animal(&testing::process(&[]), &[], &shelf), Some(false));
    }

    #[test]
    fn every_allergen_has_a_name() {
        assert_eq!(allergen_name(Milk), "milk");
        assert_eq!(allergen_name(Allergen::OtherGluten), "rye, barley or oats");
    }
}
