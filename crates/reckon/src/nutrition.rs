//! Nutrition of a portion and of 100 g, and what the labels make of it.

use potwright_pot::{Nutrient, Stuff};

use crate::label::{DailyValue, EuEnergy, EuRow, UsRow, eu_energy, eu_text, us_daily_value, us_text};
use crate::reading::{Reading, Runs, share};
use crate::{Figure, Known, Measure, NutrientRow};

/// Energy of ethanol, kcal/g: the factor of the composition tables.
const ALCOHOL_KCAL: f64 = 6.93;

/// Sodium in salt, gram per gram: 22.990 ÷ 58.443 (molar masses).
const SODIUM_OF_SALT: f64 = 0.393_37;

/// Salt on an EU label is sodium times this (Regulation (EU) 1169/2011, Annex I).
const EU_SALT_OF_SODIUM: f64 = 2.5;

/// Grams of a constituent in the whole dish.
const fn grams(stuff: Stuff) -> impl Fn(&Reading) -> f64 {
    move |reading| 1000.0 * reading.whole.mass_kg[stuff as usize]
}

/// A nutrient of the whole dish after loss by heat.
const fn of(nutrient: Nutrient) -> impl Fn(&Reading) -> f64 {
    move |reading| reading.nutrients[nutrient as usize]
}

/// Energy of the whole dish, kcal: each food's own factors, and alcohol.
pub(crate) fn energy_kcal(reading: &Reading) -> f64 {
    let foods = [Nutrient::ProteinKcal, Nutrient::FatKcal, Nutrient::CarbohydrateKcal];
    let food: f64 = foods.iter().map(|n| reading.nutrients[*n as usize]).sum();
    food + ALCOHOL_KCAL * grams(Stuff::Alcohol)(reading)
}

/// Sodium of the whole dish, mg.
pub(crate) fn sodium_mg(reading: &Reading) -> f64 {
    1000.0 * SODIUM_OF_SALT * grams(Stuff::Salt)(reading)
}

/// Carbohydrate that gives energy: starch and sugars, g.
fn available_g(reading: &Reading) -> f64 {
    let parts = [Stuff::Starch, Stuff::GelatinisedStarch, Stuff::Sugar];
    parts.iter().map(|stuff| 1000.0 * reading.whole.kg(*stuff)).sum()
}

/// The rows of the declaration; `portions` says how many portions a run's dish makes.
pub(crate) fn rows(runs: &Runs, portions: &dyn Fn(&Reading) -> f64) -> Vec<NutrientRow> {
    let label = Label { runs, portions };
    let mut rows = label.big_rows();
    rows.extend(label.small_rows());
    rows
}

/// How a row is printed on the labels.
#[derive(Clone, Copy, Default)]
struct Printed {
    us: Option<UsRow>,
    daily: Option<(&'static str, DailyValue)>,
    eu: Option<EuRow>,
}

struct Label<'a> {
    runs: &'a Runs,
    portions: &'a dyn Fn(&Reading) -> f64,
}

impl Label<'_> {
    /// What both laws print first, in the order of the EU declaration.
    fn big_rows(&self) -> Vec<NutrientRow> {
        use Measure::{Grams, Kilocalories, Milligrams};
        let macronutrient = |name| Some((name, DailyValue::Macronutrient));
        let gross = Printed {
            us: Some(UsRow::Carbohydrate),
            daily: None,
            eu: Some(EuRow::Gross),
        };
        let mut energy = self.row(
            "Energy",
            Kilocalories,
            Known::ByBalance,
            energy_kcal,
            Printed {
                us: Some(UsRow::Calories),
                ..Printed::default()
            },
        );
        energy.eu_label = Some(eu_energy(self.eu_energy()));
        let fat = Printed {
            us: Some(UsRow::Fat),
            daily: macronutrient("fat"),
            eu: Some(EuRow::Gross),
        };
        let saturates = Printed {
            us: Some(UsRow::Fat),
            daily: macronutrient("saturates"),
            eu: Some(EuRow::Saturates),
        };
        let total = |r: &Reading| available_g(r) + grams(Stuff::Fibre)(r);
        let salt = |r: &Reading| EU_SALT_OF_SODIUM * sodium_mg(r) / 1000.0;
        let only_eu = |eu| Printed {
            eu: Some(eu),
            ..Printed::default()
        };
        let only_us = |us, name| Printed {
            us: Some(us),
            daily: macronutrient(name),
            eu: None,
        };
        let by = Known::ByBalance;
        vec![
            energy,
            self.row("Fat", Grams, by, grams(Stuff::Fat), fat),
            self.row("of which saturates", Grams, by, of(Nutrient::SaturatedG), saturates),
            self.row(
                "Cholesterol",
                Milligrams,
                by,
                of(Nutrient::CholesterolMg),
                only_us(UsRow::Cholesterol, "cholesterol"),
            ),
            self.row("Carbohydrate", Grams, by, available_g, only_eu(EuRow::Gross)),
            self.row(
                "Carbohydrate with fibre",
                Grams,
                by,
                total,
                only_us(UsRow::Carbohydrate, "carbohydrate"),
            ),
            self.row("of which sugars", Grams, by, grams(Stuff::Sugar), gross),
            self.row(
                "Fibre",
                Grams,
                by,
                grams(Stuff::Fibre),
                Printed {
                    daily: macronutrient("fibre"),
                    ..gross
                },
            ),
            self.row("Protein", Grams, by, grams(Stuff::Protein), gross),
            self.row("Salt", Grams, by, salt, only_eu(EuRow::Salt)),
            self.row("Sodium", Milligrams, by, sodium_mg, only_us(UsRow::Sodium, "sodium")),
            self.row(
                "Alcohol",
                Grams,
                Known::ByHandbook,
                grams(Stuff::Alcohol),
                Printed::default(),
            ),
        ]
    }

    /// Vitamins and minerals, in the order of the US label.
    fn small_rows(&self) -> Vec<NutrientRow> {
        use Known::{ByBalance, ByHandbook};
        use Measure::{Micrograms, Milligrams};
        let printed = |us, name| Printed {
            us: Some(us),
            daily: Some((name, DailyValue::Micronutrient)),
            eu: None,
        };
        vec![
            self.row(
                "Vitamin D",
                Micrograms,
                ByBalance,
                of(Nutrient::VitaminDUg),
                printed(UsRow::Tenths, "vitamin_d"),
            ),
            self.row(
                "Calcium",
                Milligrams,
                ByBalance,
                of(Nutrient::CalciumMg),
                printed(UsRow::Tens, "calcium"),
            ),
            self.row(
                "Iron",
                Milligrams,
                ByBalance,
                of(Nutrient::IronMg),
                printed(UsRow::Tenths, "iron"),
            ),
            self.row(
                "Potassium",
                Milligrams,
                ByBalance,
                of(Nutrient::PotassiumMg),
                printed(UsRow::Tens, "potassium"),
            ),
            self.row(
                "Vitamin A",
                Micrograms,
                ByHandbook,
                of(Nutrient::VitaminAUg),
                printed(UsRow::Tens, "vitamin_a"),
            ),
            self.row(
                "Vitamin C",
                Milligrams,
                ByHandbook,
                of(Nutrient::VitaminCMg),
                printed(UsRow::Ones, "vitamin_c"),
            ),
        ]
    }

    fn row(
        &self,
        name: &str,
        measure: Measure,
        known: Known,
        amount: impl Fn(&Reading) -> f64,
        printed: Printed,
    ) -> NutrientRow {
        let per_portion = self.figure(measure, known, |r| share(amount(r), (self.portions)(r)));
        let per_100_g = self.figure(measure, known, |r| share(amount(r), 10.0 * r.edible_kg()));
        let us = |row| {
            let text = us_text(row, per_portion.value);
            let unit = us_unit(measure);
            if unit.is_empty() || text.starts_with("less") {
                text
            } else {
                format!("{text} {unit}")
            }
        };
        NutrientRow {
            name: name.to_owned(),
            us_label: printed.us.map(us),
            us_daily_value: printed
                .daily
                .and_then(|(nutrient, how)| us_daily_value(nutrient, per_portion.value, how)),
            eu_label: printed.eu.map(|row| eu_text(row, per_100_g.value)),
            per_portion,
            per_100_g,
        }
    }

    fn figure(&self, measure: Measure, known: Known, pick: impl Fn(&Reading) -> f64) -> Figure {
        self.runs.figure(measure, known, pick)
    }

    /// What 100 g of the central run hold.
    fn eu_energy(&self) -> EuEnergy {
        let central = &self.runs.central;
        let per_100_g = |grams: f64| share(grams, 10.0 * central.edible_kg());
        let stuff = |stuff| per_100_g(grams(stuff)(central));
        EuEnergy {
            fat_g: stuff(Stuff::Fat),
            carbohydrate_g: per_100_g(available_g(central)),
            fibre_g: stuff(Stuff::Fibre),
            protein_g: stuff(Stuff::Protein),
            acid_g: stuff(Stuff::Acid),
            alcohol_g: stuff(Stuff::Alcohol),
        }
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
