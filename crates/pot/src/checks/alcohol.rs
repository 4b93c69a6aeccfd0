//! What is left of alcohol: the ten rows of USDA's Table of Nutrient Retention Factors, Release 6 (2007), nutrient 221.
//!
//! The table names no pot, no lid and no amount. The six rows that are stirred in and simmered are cooked in one stated
//! stew; only the minutes differ. The other four have each a stated condition of their own. Nothing here is looked up by
//! the engine: the published figures stand beside what it computes.

use potwright_larder::{Kind, Shape};
use potwright_manuscript::{Cover, HeatWord};
use potwright_measure::{Duration, Mass, Spread, Temperature};

use crate::{
    Act, Aim, Cue, Doing, Draw, Kitchen, Lasts, Lot, Material, Matter, Pieces, Place, Portion, Pot, Process, Source,
    Stretch, Stuff, Vessel, cook,
};

/// One row of the table and what became of it here.
#[derive(Clone, Debug, PartialEq)]
pub struct AlcoholCase {
    /// The table's code.
    pub usda_code: u16,
    /// The table's words, shortened.
    pub treatment: &'static str,
    /// What the table has left, percent.
    pub published_percent: f64,
    /// The pot, the food and the time it was cooked in here.
    pub condition: String,
    /// What is left here, percent.
    pub computed_percent: f64,
    /// Water that left as vapour meanwhile, kilograms.
    pub water_lost_kg: f64,
    /// The same as a share of all water, percent.
    pub water_lost_percent: f64,
    /// Whether it is one of the six rows that the stated stew is held to.
    pub stirred: bool,
}

impl AlcoholCase {
    /// Computed less published, percentage points.
    #[must_use]
    pub fn deviation_points(&self) -> f64 {
        self.computed_percent - self.published_percent
    }
}

/// A US cup of wine of 12.5 % by volume: 236.588 ml · 0.125 · 0.7893 g/ml = 23.34 g of ethanol, in 233 g.
const WINE: (f64, f64) = (0.233, 0.023_34);

/// A US quarter cup of a spirit of 40 % by volume: 59.147 ml · 0.40 · 0.7893 g/ml = 18.67 g of ethanol, in 56 g.
const SPIRIT: (f64, f64) = (0.056, 0.018_67);

/// Minutes that the stew bubbles without its lid after the wine went in. The one figure here that is fitted, and to the
/// six stirred rows: the table does not tell it. Cooks who let wine 'cook off' say a few minutes; a lid that does not sit
/// tight would do as much.
pub const OPEN_MIN: f64 = 12.0;

/// The ten rows: the six stirred ones, then the other four.
#[must_use]
pub fn cases() -> Vec<AlcoholCase> {
    let stirred = [
        (5004, 15.0, 40.0),
        (5005, 30.0, 35.0),
        (5006, 60.0, 25.0),
        (5007, 90.0, 20.0),
        (5008, 120.0, 10.0),
        (5009, 150.0, 5.0),
    ];
    let mut all: Vec<AlcoholCase> = stirred.into_iter().map(stew).collect();
    all.extend([off_the_heat(), flamed(), overnight(), baked()]);
    all
}

/// The stated stew: 1 kg of meat in pieces of 25 mm and 0.75 kg of stock in the 24 cm pot on the gas hob of the default
/// kitchen, brought to the boil; wine is stirred in; brought back to the boil; the lid is put on after [`OPEN_MIN`].
fn stew((usda_code, minutes, published_percent): (u16, f64, f64)) -> AlcoholCase {
    let acts = vec![
        add(0),
        add(1),
        to_the_boil(),
        add(2),
        to_the_boil(),
        cook_for(Place::Hob, Aim::Simmer, OPEN_MIN, Cover::Off),
        cook_for(Place::Hob, Aim::Simmer, minutes - OPEN_MIN, Cover::On),
    ];
    let lots = vec![meat(1.0), stock(0.75, 15.0), drink("wine", Kind::Wine, WINE)];
    AlcoholCase {
        stirred: true,
        ..case(
            (usda_code, "stirred in, baked or simmered", published_percent),
            format!(
                "a cup of wine in a stew of 1 kg meat and 0.75 kg stock, 24 cm pot, back to the boil, {OPEN_MIN:.0} min open, {:.0} min covered at a simmer",
                minutes - OPEN_MIN
            ),
            process(lots, POT_24, acts),
        )
    }
}

/// Into half a litre of boiling sauce, which is then off the heat until it is on the table.
fn off_the_heat() -> AlcoholCase {
    let acts = vec![
        add(0),
        to_the_boil(),
        add(1),
        cook_for(Place::Counter, Aim::Off, 5.0, Cover::Off),
    ];
    let lots = vec![stock(0.5, 15.0), drink("spirit", Kind::Spirit, SPIRIT)];
    case(
        (5002, "added to boiling liquid, removed from heat", 85.0),
        "a quarter cup of spirit in 0.5 kg of boiling sauce, 18 cm pot, 5 min open off the heat".to_owned(),
        process(lots, POT_18, acts),
    )
}

/// The flame itself is not computed: it burns what has left the food, and is out in less than a minute.
fn flamed() -> AlcoholCase {
    let acts = vec![
        add(0),
        to_the_boil(),
        add(1),
        cook_for(Place::Hob, Aim::Setting(HeatWord::Medium), 0.75, Cover::Off),
    ];
    let lots = vec![stock(0.4, 15.0), drink("spirit", Kind::Spirit, SPIRIT)];
    case(
        (5003, "flamed", 75.0),
        "a quarter cup of spirit in 0.4 kg of boiling sauce, 30 cm pan, 45 s on medium heat; the flame is not computed, only what leaves to feed it".to_owned(),
        process(lots, PAN_30, acts),
    )
}

fn overnight() -> AlcoholCase {
    let acts = vec![
        add(0),
        add(1),
        cook_for(Place::Refrigerator, Aim::Off, 12.0 * 60.0, Cover::Off),
    ];
    let lots = vec![stock(0.8, 20.0), drink("spirit", Kind::Spirit, SPIRIT)];
    case(
        (5001, "no heat, stored overnight", 70.0),
        "a quarter cup of spirit in 0.8 kg of filling, 24 cm dish, 12 h open in the refrigerator".to_owned(),
        process(lots, POT_24, acts),
    )
}

/// What lies on top is warmer and weaker than the whole: layers are not computed, so it is cooked as if stirred.
fn baked() -> AlcoholCase {
    let oven = Aim::Oven(Temperature::from_celsius(190.0));
    let acts = vec![add(0), add(1), cook_for(Place::Oven, oven, 25.0, Cover::Off)];
    let lots = vec![
        stock(0.8, 20.0),
        drink("wine", Kind::Wine, (WINE.0 / 2.0, WINE.1 / 2.0)),
    ];
    case(
        (5010, "not stirred in, baked 25 minutes", 45.0),
        "half a cup of wine in 0.8 kg, 24 cm dish, 25 min open in an oven of 190 °C; not stirred is not computed"
            .to_owned(),
        process(lots, POT_24, acts),
    )
}

/// Cooks a case and reads it.
fn case(
    (usda_code, treatment, published_percent): (u16, &'static str, f64),
    condition: String,
    process: Process,
) -> AlcoholCase {
    let kitchen = Kitchen {
        altitude_m: 0.0,
        ..Kitchen::default()
    };
    let trace = cook(&process, &kitchen, &Draw::central());
    let ledger = &trace.ledger;
    let percent = |part: f64, whole: f64| if whole > 0.0 { 100.0 * part / whole } else { 0.0 };
    AlcoholCase {
        usda_code,
        treatment,
        published_percent,
        condition,
        computed_percent: percent(ledger.in_vessels.kg(Stuff::Alcohol), ledger.put_in.kg(Stuff::Alcohol)),
        water_lost_kg: ledger.vapour.kg(Stuff::Water),
        water_lost_percent: percent(ledger.vapour.kg(Stuff::Water), ledger.put_in.kg(Stuff::Water)),
        stirred: false,
    }
}

/// Inner diameter and height, centimetres, and weight, kilograms, of pots of the default kitchen.
const POT_18: (f64, f64, Material, f64) = (18.0, 11.0, Material::Steel, 1.1);
const POT_24: (f64, f64, Material, f64) = (24.0, 12.2, Material::CastIron, 4.4);
const PAN_30: (f64, f64, Material, f64) = (30.0, 6.5, Material::Steel, 2.2);

fn stock(kg: f64, temp_c: f64) -> Lot {
    lot("stock", Kind::Stock, temp_c, &[(Stuff::Water, kg)])
}

/// Kilograms of a drink and of the ethanol in it.
fn drink(name: &str, kind: Kind, (kg, alcohol_kg): (f64, f64)) -> Lot {
    lot(
        name,
        kind,
        18.0,
        &[(Stuff::Water, kg - alcohol_kg), (Stuff::Alcohol, alcohol_kg)],
    )
}

fn meat(kg: f64) -> Lot {
    let mut meat = lot(
        "meat",
        Kind::Meat,
        15.0,
        &[
            (Stuff::Water, 0.68 * kg),
            (Stuff::Protein, 0.24 * kg),
            (Stuff::Fat, 0.08 * kg),
        ],
    );
    meat.pieces = Some(Pieces {
        shape: Shape::Sphere { diameter_mm: 25.0 },
        size_spread: Spread::exact(1.0),
        hazard: None,
        softens: None,
        absorbs: None,
        sheds_water: None,
        renders: None,
        falls_apart: None,
    });
    meat
}

fn lot(name: &str, kind: Kind, temp_c: f64, parts: &[(Stuff, f64)]) -> Lot {
    let mut matter = Matter::default();
    for &(stuff, kg) in parts {
        matter.mass_kg[stuff as usize] += kg;
    }
    Lot {
        ingredient: None,
        name: name.to_owned(),
        source: Source::Unknown,
        doubt: None,
        kind,
        mass: Mass::from_kilograms(matter.total_kg()),
        purchased: Mass::from_kilograms(matter.total_kg()),
        spread: Spread::exact(1.0),
        how: String::new(),
        temperature: Temperature::from_celsius(temp_c),
        matter,
        inedible: Mass::ZERO,
        starch: None,
        pieces: None,
        preparation: Duration::ZERO,
        for_serving: false,
        optional: false,
    }
}

fn act(doing: Doing) -> Act {
    Act {
        vessel: 0,
        doing,
        operation: None,
        span: None,
        hands: Duration::ZERO,
        meanwhile: false,
    }
}

fn add(lot: usize) -> Act {
    act(Doing::Add(vec![Portion { lot, share: 1.0 }]))
}

fn to_the_boil() -> Act {
    stretch(Place::Hob, Aim::Boil, None, Some(Cue::Boils), Cover::Off)
}

fn cook_for(place: Place, aim: Aim, minutes: f64, cover: Cover) -> Act {
    stretch(place, aim, Some(Spread::exact(minutes)), None, cover)
}

fn stretch(place: Place, aim: Aim, minutes: Option<Spread>, cue: Option<Cue>, cover: Cover) -> Act {
    act(Doing::Cook(Stretch {
        place,
        aim,
        lasts: Lasts { minutes, cue },
        cover,
        assumed: false,
        batches: 1,
    }))
}

fn process(lots: Vec<Lot>, (diameter, height, material, kg): (f64, f64, Material, f64), acts: Vec<Act>) -> Process {
    Process {
        title: String::new(),
        lots,
        vessels: vec![Vessel {
            name: "pot".to_owned(),
            pot: Some(Pot::new("pot", diameter, height, material, kg)),
        }],
        acts,
        dish_vessel: 0,
        servings: None,
        makes: None,
        alternatives: Vec::new(),
        to_taste: Vec::new(),
        assumptions: Vec::new(),
        open: Vec::new(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// USDA Table of Nutrient Retention Factors, Release 6 (2007), nutrient 221, codes 5004 to 5009.
    #[test]
    fn the_six_stirred_rows() {
        let cases = cases();
        assert_eq!(cases.iter().filter(|case| case.stirred).count(), 6);
        for case in cases.iter().filter(|case| case.stirred) {
            println!(
                "{}: {:.1} for {:.0}",
                case.usda_code, case.computed_percent, case.published_percent
            );
            assert!(case.deviation_points().abs() <= 8.0, "{case:?}");
        }
    }

    /// A cup of wine in a stew simmered for an hour and a half: 236.588 ml · 0.125 · 0.7893 g/ml = 23.34 g of ethanol;
    /// the table leaves 20 % of it, 4.67 g, and 0.78 g to each of six (hand arithmetic).
    #[test]
    fn a_cup_of_wine_in_six_portions() {
        assert!((236.588 * 0.125 * 0.7893 / (1000.0 * WINE.1) - 1.0).abs() < 0.005);
        assert!((59.147 * 0.40 * 0.7893 / (1000.0 * SPIRIT.1) - 1.0).abs() < 0.005);
        let stew = cases().into_iter().find(|case| case.usda_code == 5007).unwrap();
        let grams = |percent: f64| 10.0 * WINE.1 * percent;
        assert!((grams(stew.published_percent) / 4.67 - 1.0).abs() < 0.005);
        assert!((grams(stew.published_percent) / 6.0 / 0.78 - 1.0).abs() < 0.005);
        // Eight points of 23.34 g are 1.87 g.
        assert!((grams(stew.computed_percent) - 4.67).abs() < 1.87);
    }

    /// All ten have a condition and a loss of water to print; each treatment is told from the others.
    #[test]
    fn ten_rows() {
        let cases = cases();
        assert_eq!(cases.len(), 10);
        for case in &cases {
            assert!(!case.condition.is_empty() && case.water_lost_kg > 0.0 && case.water_lost_percent < 50.0);
            assert!(case.computed_percent > 0.0 && case.computed_percent < 100.0, "{case:?}");
            assert_eq!(
                cases.iter().filter(|other| other.usda_code == case.usda_code).count(),
                1
            );
        }
        // The longer, the less, whatever the pot.
        let stirred: Vec<f64> = cases
            .iter()
            .filter(|case| case.stirred)
            .map(|case| case.computed_percent)
            .collect();
        assert!(stirred.windows(2).all(|pair| pair[1] < pair[0]));
    }
}
