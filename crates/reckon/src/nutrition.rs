//! Nutrition of a portion and of 100 g, and what the labels make of it.

use potwright_pot::{Nutrient, Stuff};

use crate::label::{DailyValue, EuEnergy, EuRow, UsRow, eu_energy, eu_text, us_daily_value, us_text};
use crate::reading::{Reading, Runs, share};
use crate::{Known, Measure, NutrientRow};

/// Energy of ethanol, kcal/g: the factor of the composition tables.
const ALCOHOL_KCAL: f64 = 6.93;

/// Sodium in salt, gram per gram: 22.990 ÷ 58.443 (molar masses).
const SODIUM_OF_SALT: f64 = 0.393_37;

/// Salt on an EU label is sodium times this (Regulation (EU) 1169/2011, Annex I).
const EU_SALT_OF_SODIUM: f64 = 2.5;

/// Grams of a constituent in the whole dish.
fn grams(reading: &Reading, stuff: Stuff) -> f64 {
    1000.0 * reading.whole.kg(stuff)
}

/// A nutrient of the whole dish after loss by heat.
const fn of(reading: &Reading, nutrient: Nutrient) -> f64 {
    reading.nutrients[nutrient as usize]
}

/// Energy of the whole dish, kcal: each food's own factors, and alcohol.
pub(crate) fn energy_kcal(reading: &Reading) -> f64 {
    of(reading, Nutrient::ProteinKcal)
        + of(reading, Nutrient::FatKcal)
        + of(reading, Nutrient::CarbohydrateKcal)
        + ALCOHOL_KCAL * grams(reading, Stuff::Alcohol)
}

/// Sodium of the whole dish, mg.
fn sodium_mg(reading: &Reading) -> f64 {
    1000.0 * SODIUM_OF_SALT * grams(reading, Stuff::Salt)
}

/// Salt of the whole dish as an EU label has it, g.
fn eu_salt_g(reading: &Reading) -> f64 {
    EU_SALT_OF_SODIUM * sodium_mg(reading) / 1000.0
}

/// Carbohydrate that gives energy: starch and sugars, g.
fn available_g(reading: &Reading) -> f64 {
    let parts = [Stuff::Starch, Stuff::GelatinisedStarch, Stuff::Sugar];
    parts.iter().map(|stuff| grams(reading, *stuff)).sum()
}

/// One row of the declaration: its name, unit, amount in the whole dish, and what the labels print.
struct Spec {
    name: &'static str,
    measure: Measure,
    amount: fn(&Reading) -> f64,
    us: Option<UsRow>,
    /// The nutrient's name in the table of daily values.
    daily: Option<(&'static str, DailyValue)>,
    eu: Option<EuRow>,
}

impl Spec {
    /// A row that no label prints.
    const fn new(name: &'static str, measure: Measure, amount: fn(&Reading) -> f64) -> Self {
        Spec {
            name,
            measure,
            amount,
            us: None,
            daily: None,
            eu: None,
        }
    }

    const fn us(self, row: UsRow) -> Self {
        Spec { us: Some(row), ..self }
    }

    const fn eu(self, row: EuRow) -> Self {
        Spec { eu: Some(row), ..self }
    }

    const fn daily(self, nutrient: &'static str, how: DailyValue) -> Self {
        Spec {
            daily: Some((nutrient, how)),
            ..self
        }
    }
}

/// What is declared, in the order of the EU declaration and then of the US label's vitamins and minerals. The EU
/// counts carbohydrate without fibre, the US with it; the EU prints salt, the US sodium: each has its own row.
const fn declaration() -> [Spec; 18] {
    use DailyValue::{Macronutrient, Micronutrient};
    use EuRow::{Gross, Salt, Saturates};
    use Measure::{Grams, Kilocalories, Micrograms, Milligrams};
    use UsRow::{Calories, Carbohydrate, Cholesterol, Fat, Ones, Sodium, Tens, Tenths};
    [
        Spec::new("Energy", Kilocalories, energy_kcal).us(Calories),
        Spec::new("Fat", Grams, |r| grams(r, Stuff::Fat))
            .us(Fat)
            .daily("fat", Macronutrient)
            .eu(Gross),
        Spec::new("of which saturates", Grams, |r| of(r, Nutrient::SaturatedG))
            .us(Fat)
            .daily("saturates", Macronutrient)
            .eu(Saturates),
        Spec::new("Cholesterol", Milligrams, |r| of(r, Nutrient::CholesterolMg))
            .us(Cholesterol)
            .daily("cholesterol", Macronutrient),
        Spec::new("Carbohydrate", Grams, available_g).eu(Gross),
        Spec::new("Carbohydrate with fibre", Grams, |r| {
            available_g(r) + grams(r, Stuff::Fibre)
        })
        .us(Carbohydrate)
        .daily("carbohydrate", Macronutrient),
        Spec::new("of which sugars", Grams, |r| grams(r, Stuff::Sugar))
            .us(Carbohydrate)
            .eu(Gross),
        Spec::new("Fibre", Grams, |r| grams(r, Stuff::Fibre))
            .us(Carbohydrate)
            .daily("fibre", Macronutrient)
            .eu(Gross),
        Spec::new("Protein", Grams, |r| grams(r, Stuff::Protein))
            .us(Carbohydrate)
            .eu(Gross),
        Spec::new("Salt", Grams, eu_salt_g).eu(Salt),
        Spec::new("Sodium", Milligrams, sodium_mg)
            .us(Sodium)
            .daily("sodium", Macronutrient),
        Spec::new("Alcohol", Grams, |r| grams(r, Stuff::Alcohol)),
        Spec::new("Vitamin D", Micrograms, |r| of(r, Nutrient::VitaminDUg))
            .us(Tenths)
            .daily("vitamin_d", Micronutrient),
        Spec::new("Calcium", Milligrams, |r| of(r, Nutrient::CalciumMg))
            .us(Tens)
            .daily("calcium", Micronutrient),
        Spec::new("Iron", Milligrams, |r| of(r, Nutrient::IronMg))
            .us(Tenths)
            .daily("iron", Micronutrient),
        Spec::new("Potassium", Milligrams, |r| of(r, Nutrient::PotassiumMg))
            .us(Tens)
            .daily("potassium", Micronutrient),
        Spec::new("Vitamin A", Micrograms, |r| of(r, Nutrient::VitaminAUg))
            .us(Tens)
            .daily("vitamin_a", Micronutrient),
        Spec::new("Vitamin C", Milligrams, |r| of(r, Nutrient::VitaminCMg))
            .us(Ones)
            .daily("vitamin_c", Micronutrient),
    ]
}

/// The rows of the declaration, alcohol only where some went in; `portions` says how many portions a run's dish makes.
pub(crate) fn rows(runs: &Runs, portions: &dyn Fn(&Reading) -> f64) -> Vec<NutrientRow> {
    let sober = runs.central.alcohol_in_kg <= 0.0 && grams(&runs.central, Stuff::Alcohol) <= 0.0;
    let declared = declaration();
    let shown = declared.iter().filter(|spec| !(sober && spec.name == "Alcohol"));
    let mut rows: Vec<NutrientRow> = shown.map(|spec| row(spec, runs, portions)).collect();
    if let Some(energy) = rows.first_mut() {
        energy.eu_label = Some(eu_energy(energy_of_100_g(&runs.central)));
    }
    rows
}

fn row(spec: &Spec, runs: &Runs, portions: &dyn Fn(&Reading) -> f64) -> NutrientRow {
    // What heat takes hangs on a published table, what boils off on the kitchen; all else is a balance.
    let known = match spec.name {
        "Vitamin A" | "Vitamin C" => Known::ByHandbook,
        "Alcohol" if (spec.amount)(&runs.central) > 0.0 => Known::NeedsYourKitchen,
        _ => Known::ByBalance,
    };
    let per_portion = runs.figure(spec.measure, known, |r| share((spec.amount)(r), portions(r)));
    let per_100_g = runs.figure(spec.measure, known, |r| share((spec.amount)(r), 10.0 * r.edible_kg()));
    let us = |row| {
        let text = us_text(row, per_portion.value);
        let unit = us_unit(spec.measure);
        if unit.is_empty() || text.starts_with("less") {
            text
        } else {
            format!("{text} {unit}")
        }
    };
    NutrientRow {
        name: spec.name.to_owned(),
        us_label: spec.us.map(us),
        us_daily_value: spec
            .daily
            .and_then(|(nutrient, how)| us_daily_value(nutrient, per_portion.value, how)),
        eu_label: spec.eu.map(|row| eu_text(row, per_100_g.value)),
        per_portion,
        per_100_g,
    }
}

/// What gives energy in 100 g.
fn energy_of_100_g(reading: &Reading) -> EuEnergy {
    let per_100_g = |grams: f64| share(grams, 10.0 * reading.edible_kg());
    let stuff = |stuff| per_100_g(grams(reading, stuff));
    EuEnergy {
        fat_g: stuff(Stuff::Fat),
        carbohydrate_g: per_100_g(available_g(reading)),
        fibre_g: stuff(Stuff::Fibre),
        protein_g: stuff(Stuff::Protein),
        acid_g: stuff(Stuff::Acid),
        alcohol_g: stuff(Stuff::Alcohol),
    }
}

/// The unit a US label prints; none after calories.
const fn us_unit(measure: Measure) -> &'static str {
    match measure {
        Measure::Grams => "g",
        Measure::Milligrams => "mg",
        Measure::Micrograms => "mcg",
        _ => "",
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::reading::scaled;
    use crate::testing;

    fn label(reading: Reading, portions: f64) -> Vec<NutrientRow> {
        let runs = Runs {
            central: reading,
            others: Vec::new(),
        };
        rows(&runs, &move |_| portions)
    }

    fn find<'a>(rows: &'a [NutrientRow], name: &str) -> &'a NutrientRow {
        rows.iter().find(|row| row.name == name).unwrap()
    }

    /// 4.0 kg of soup with 24 g of salt, 1.2 kg boiled away; a serving of 245 g: 24 ÷ 2800 = 0.857 % salt, 826 mg of
    /// sodium: label 830 mg, 36 % of 2300 mg.
    #[test]
    fn sodium_of_a_reduced_soup() {
        let mut reading = testing::reading();
        reading.whole = testing::matter(&[(Stuff::Water, 2.776), (Stuff::Salt, 0.024)]);
        reading.yield_kg = 2.8;
        assert!((reading.percent(Stuff::Salt) - 0.857).abs() < 0.005 * 0.857);
        let rows = label(reading, 2800.0 / 245.0);
        let sodium = find(&rows, "Sodium");
        assert!((sodium.per_portion.value / 826.0 - 1.0).abs() < 0.005);
        assert_eq!(sodium.us_label.as_deref(), Some("830 mg"));
        assert_eq!(sodium.us_daily_value.as_deref(), Some("36 %"));
        // 0.857 g of salt is 0.3372 g of sodium, times 2.5: 0.843 g.
        assert_eq!(find(&rows, "Salt").eu_label.as_deref(), Some("0.84 g"));
    }

    /// A US cup of wine of 12.5 % by volume holds 23.34 g of ethanol; after 1.5 h the USDA table leaves 20 %: 4.67 g,
    /// in six servings 0.78 g and 5.4 kcal each.
    #[test]
    fn alcohol_counts_as_energy() {
        let mut reading = testing::reading();
        reading.whole = testing::matter(&[(Stuff::Water, 2.0), (Stuff::Alcohol, 0.2 * 0.023_34)]);
        let rows = label(reading, 6.0);
        assert!((find(&rows, "Alcohol").per_portion.value / 0.778 - 1.0).abs() < 0.005);
        assert!((find(&rows, "Energy").per_portion.value / 5.39 - 1.0).abs() < 0.005);
    }

    /// 100 g of raw carrot (USDA SR28, NDB 11124): protein 0.93 at 2.78, fat 0.24 at 8.37, carbohydrate 9.58 at 3.84
    /// kcal/g: 2.59 + 2.01 + 36.79 = 41.4 kcal, as the table's 41.
    #[test]
    fn energy_by_the_foods_own_factors() {
        let mut reading = testing::reading();
        let mut carrot = testing::matter(&[
            (Stuff::Water, 0.0883),
            (Stuff::Sugar, 0.00474),
            (Stuff::Starch, 0.00204),
            (Stuff::Fibre, 0.0028),
            (Stuff::Protein, 0.00093),
            (Stuff::Fat, 0.00024),
            (Stuff::Ash, 0.00095),
        ]);
        for (nutrient, kcal) in [
            (Nutrient::ProteinKcal, 0.93 * 2.78),
            (Nutrient::FatKcal, 0.24 * 8.37),
            (Nutrient::CarbohydrateKcal, 9.58 * 3.84),
        ] {
            carrot.nutrients[nutrient as usize] = kcal;
        }
        let four = scaled(&carrot, 4.0);
        reading.whole = four;
        reading.nutrients = four.nutrients;
        let rows = label(reading, 1.0);
        let energy = find(&rows, "Energy");
        assert!((energy.per_100_g.value - 41.0).abs() < 0.5);
        assert!((energy.per_portion.value - 164.0).abs() < 2.0);
        // By Annex XIV without the fibre's part of the carbohydrate: 4·(6.78 + 0.93) + 9·0.24 + 2·2.8 = 38.6 kcal;
        // 17·7.71 + 37·0.24 + 8·2.8 = 162.4 kJ.
        assert_eq!(energy.eu_label.as_deref(), Some("162 kJ / 39 kcal"));
        assert_eq!(find(&rows, "Fibre").eu_label.as_deref(), Some("2.8 g"));
    }

    #[test]
    fn no_alcohol_no_row() {
        assert!(label(testing::reading(), 1.0).iter().all(|row| row.name != "Alcohol"));
    }

    /// The order of the EU declaration: energy, fat, saturates, carbohydrate, sugars, (fibre,) protein, salt.
    #[test]
    fn order_of_the_eu_declaration() {
        let rows = label(testing::reading(), 1.0);
        let names: Vec<&str> = rows
            .iter()
            .filter(|row| row.eu_label.is_some())
            .map(|row| row.name.as_str())
            .collect();
        assert_eq!(
            names,
            [
                "Energy",
                "Fat",
                "of which saturates",
                "Carbohydrate",
                "of which sugars",
                "Fibre",
                "Protein",
                "Salt"
            ]
        );
    }
}
