//! Sulphites: reckoned by mass in the finished dish, with no credit for what boils off.

use potwright_larder::{Allergen, Contains};
use potwright_pot::{Made, Process};

use crate::brought::{Brought, Of, brought, of};
use crate::foods::Foods;
use crate::reading::{Reading, share};

/// Sulphites are declared above this in the finished food, mg of sulphur dioxide a kilogram (Regulation (EU)
/// 1169/2011, Annex II 12).
const SULPHITE_MG_KG: f64 = 10.0;

/// What a food brings of sulphites.
enum Sulphite {
    Mg(f64),
    Declared,
    NotKnown,
}

fn sulphite_of(one: &Brought, kg: f64, made: &[Made], foods: &dyn Foods) -> Sulphite {
    match of(one.source, made, foods) {
        Of::Food(food) => match (food.behaviour.sulphite_mg_kg, food.contains(Allergen::Sulphites)) {
            (Some(mg_kg), _) => Sulphite::Mg(mg_kg * kg),
            (None, Contains::Yes) => Sulphite::Declared,
            (None, Contains::NotKnown) => Sulphite::NotKnown,
            (None, Contains::No) => Sulphite::Mg(0.0),
        },
        Of::Made(dish) => {
            let listed = dish.allergens.iter().find(|(a, _, _)| *a == Allergen::Sulphites);
            match listed.map(|(_, contains, _)| *contains) {
                Some(Contains::NotKnown) | None => Sulphite::NotKnown,
                Some(_) => Sulphite::Mg(dish.sulphite_mg * share(kg, dish.matter.total_kg())),
            }
        }
        Of::Unknown => Sulphite::NotKnown,
    }
}

fn kg_of(one: &Brought, central: &Reading) -> f64 {
    central.lot_kg.get(one.lot).copied().unwrap_or(0.0)
}

fn is_served(one: &Brought, process: &Process) -> bool {
    process.lots.get(one.lot).is_some_and(|lot| lot.for_serving)
}

/// Sulphur dioxide brought by all lots that go into the dish, mg; of foods that may stand for each other the one with
/// the most.
pub(crate) fn sulphite_mg(process: &Process, made: &[Made], central: &Reading, foods: &dyn Foods) -> f64 {
    let mut most = vec![0.0_f64; process.lots.len()];
    for one in brought(process).iter().filter(|one| !is_served(one, process)) {
        if let (Sulphite::Mg(mg), Some(most)) = (
            sulphite_of(one, kg_of(one, central), made, foods),
            most.get_mut(one.lot),
        ) {
            *most = most.max(mg);
        }
    }
    most.iter().sum()
}

/// What is known of sulphites in the dish, and what makes it so.
pub(crate) fn sulphites(
    process: &Process,
    made: &[Made],
    central: &Reading,
    foods: &dyn Foods,
) -> (Contains, Vec<String>) {
    let dish_kg = central.edible_kg();
    let (mut brings, mut declared, mut not_known) = (Vec::new(), Vec::new(), Vec::new());
    for one in brought(process) {
        let kg = kg_of(&one, central);
        if one.doubt.is_some() {
            not_known.push(one.told());
        }
        match sulphite_of(&one, kg, made, foods) {
            // What is only served with the dish counts by itself.
            Sulphite::Mg(mg) if is_served(&one, process) && share(mg, kg) > SULPHITE_MG_KG => declared.push(one.told()),
            Sulphite::Mg(mg) if mg > 0.0 && !is_served(&one, process) => brings.push((mg, one)),
            Sulphite::Mg(_) => {}
            Sulphite::Declared => declared.push(one.told()),
            Sulphite::NotKnown if one.doubt.is_none() => not_known.push(one.told()),
            Sulphite::NotKnown => {}
        }
    }
    if share(sulphite_mg(process, made, central, foods), dish_kg) > SULPHITE_MG_KG {
        let caused = |(mg, one): (f64, Brought)| {
            let remark = format!("{:.1} mg in a kilogram of the dish", share(mg, dish_kg));
            one.told_with(Some(&remark))
        };
        declared.extend(brings.into_iter().map(caused));
    }
    if !declared.is_empty() {
        (Contains::Yes, declared)
    } else if !not_known.is_empty() {
        (Contains::NotKnown, not_known)
    } else {
        (Contains::No, Vec::new())
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{self, Shelf};
    use potwright_larder::{FoodId, Kind};
    use potwright_pot::{Alternative, Lot, Source, Stuff};

    use Allergen::Sulphites;
    use Contains::Yes;

    /// A kilogram and a half of stock and half a kilogram of the first food of the shelf, 2.0 kg in all.
    fn dish(shelf: &Shelf, kg: f64) -> (Process, Reading) {
        let lot = Lot {
            source: Source::Larder(FoodId(0)),
            ..testing::lot(&shelf.0[0].name, shelf.0[0].kind, kg)
        };
        let mut reading = testing::reading();
        reading.lot_kg = vec![kg];
        reading.whole = testing::matter(&[(Stuff::Water, 2.0)]);
        (testing::process(&[lot]), reading)
    }

    /// 150 ml of wine of 100 mg/l in 2.0 kg: 7.5 mg/kg is not above 10.
    #[test]
    fn little_wine_is_below_the_threshold() {
        let mut wine = testing::food("wine", Kind::Wine, &[(Sulphites, Yes)]);
        wine.behaviour.sulphite_mg_kg = Some(100.0);
        let shelf = Shelf(vec![wine]);
        let (process, reading) = dish(&shelf, 0.15);
        assert_eq!(sulphites(&process, &[], &reading, &shelf), (Contains::No, Vec::new()));
        assert_eq!(sulphite_mg(&process, &[], &reading, &shelf), 15.0);
    }

    /// 150 ml of stock or of a wine of 200 mg/l in 2.0 kg: with the wine 15 mg/kg, above 10.
    #[test]
    fn wine_in_the_second_place_counts() {
        let mut wine = testing::food("wine", Kind::Wine, &[(Sulphites, Yes)]);
        wine.behaviour.sulphite_mg_kg = Some(200.0);
        let shelf = Shelf(vec![testing::food("stock", Kind::Stock, &[]), wine]);
        let (mut process, reading) = dish(&shelf, 0.15);
        assert_eq!(sulphites(&process, &[], &reading, &shelf).0, Contains::No);
        process.alternatives = vec![Alternative {
            lot: 0,
            name: "wine".to_owned(),
            source: Source::Larder(FoodId(1)),
            doubt: None,
        }];
        let cause = "wine (if used instead of stock; 15.0 mg in a kilogram of the dish)".to_owned();
        assert_eq!(sulphites(&process, &[], &reading, &shelf), (Yes, vec![cause]));
    }
}
