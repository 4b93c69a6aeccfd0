//! Rounding of 21 CFR 101.9(c) (as tabulated in FDA's Food Labeling Guide, Appendix H) and percent daily values.

use super::{nearest, plain};
use crate::table::{Table, rows};

static DAILY_VALUES: Table = Table::of(include_str!("../../data/daily_values.tsv"));

/// The rows of a US label that round alike.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum UsRow {
    /// Calories, kcal.
    Calories,
    /// Fat of any kind, g.
    Fat,
    /// Cholesterol, mg.
    Cholesterol,
    /// Sodium, mg.
    Sodium,
    /// Carbohydrate, fibre, sugars, protein, g.
    Carbohydrate,
    /// Vitamins and minerals of a daily value of 250 and more in their unit: calcium, potassium, vitamin A.
    Tens,
    /// Of a daily value from 25 to 250: vitamin C.
    Ones,
    /// Of a daily value below 25: iron, vitamin D.
    Tenths,
}

/// A raw amount as the label prints it: a bare number in the row's unit, or `less than 1 g` in words.
///
/// Half way goes up. What is below nought or no number prints as `0`.
#[must_use]
pub fn us_text(row: UsRow, raw: f64) -> String {
    let raw = if raw.is_finite() { raw.max(0.0) } else { 0.0 };
    let number = match row {
        UsRow::Calories if raw < 5.0 => 0.0,
        UsRow::Calories if raw <= 50.0 => nearest(raw, 5.0),
        UsRow::Calories => nearest(raw, 10.0),
        UsRow::Fat if raw < 0.5 => 0.0,
        UsRow::Fat if raw < 5.0 => nearest(raw, 0.5),
        UsRow::Fat => nearest(raw, 1.0),
        UsRow::Cholesterol if raw < 2.0 => 0.0,
        UsRow::Cholesterol if raw <= 5.0 => return "less than 5 mg".to_owned(),
        UsRow::Cholesterol => nearest(raw, 5.0),
        UsRow::Sodium if raw < 5.0 => 0.0,
        UsRow::Sodium if raw <= 140.0 => nearest(raw, 5.0),
        UsRow::Sodium => nearest(raw, 10.0),
        UsRow::Carbohydrate if raw < 0.5 => 0.0,
        UsRow::Carbohydrate if raw < 1.0 => return "less than 1 g".to_owned(),
        UsRow::Carbohydrate => nearest(raw, 1.0),
        // Steps by the size of the daily value: FDA guidance on label declarations of December 2019 (seen quoted;
        // the tens from memory).
        UsRow::Tens => nearest(raw, 10.0),
        UsRow::Ones => nearest(raw, 1.0),
        UsRow::Tenths => nearest(raw, 0.1),
    };
    plain(number, 1)
}

/// How a percentage of the daily value is rounded.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum DailyValue {
    /// To the nearest percent.
    Macronutrient,
    /// To 2 % up to 10, to 5 % up to 50, to 10 % above: 21 CFR 101.9(c)(8)(iii).
    Micronutrient,
}

/// Percent of the US daily value as printed, `36 %`; none when the nutrient (`sodium`, `vitamin_c`) has none.
#[must_use]
pub fn us_daily_value(nutrient: &str, raw: f64, how: DailyValue) -> Option<String> {
    let row = rows(&DAILY_VALUES).find(|row| row.text(0) == nutrient)?;
    let percent = (100.0 * raw / row.number(1)?).max(0.0);
    let step = match how {
        DailyValue::Macronutrient => 1.0,
        DailyValue::Micronutrient if percent <= 10.0 => 2.0,
        DailyValue::Micronutrient if percent <= 50.0 => 5.0,
        DailyValue::Micronutrient => 10.0,
    };
    Some(format!("{:.0} %", nearest(percent, step)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Rules of 21 CFR 101.9(c) applied by hand at every edge, half way up (reference rows 08b; the rules were read
    /// in FDA's Food Labeling Guide, Appendix H).
    #[test]
    fn every_edge() {
        let cases: [(UsRow, &[(f64, &str)]); 5] = [
            (
                UsRow::Calories,
                &[
                    (0.0, "0"),
                    (4.9, "0"),
                    (5.0, "5"),
                    (7.4, "5"),
                    (7.5, "10"),
                    (22.4, "20"),
                    (47.0, "45"),
                    (50.0, "50"),
                    (52.4, "50"),
                    (54.9, "50"),
                    (55.0, "60"),
                    (94.0, "90"),
                    (147.0, "150"),
                    (155.0, "160"),
                    (304.9, "300"),
                ],
            ),
            (
                UsRow::Fat,
                &[
                    (0.49, "0"),
                    (0.5, "0.5"),
                    (0.74, "0.5"),
                    (0.75, "1"),
                    (1.2, "1"),
                    (2.26, "2.5"),
                    (4.74, "4.5"),
                    (4.76, "5"),
                    (4.99, "5"),
                    (5.4, "5"),
                    (5.5, "6"),
                    (12.49, "12"),
                ],
            ),
            (
                UsRow::Sodium,
                &[
                    (4.9, "0"),
                    (5.0, "5"),
                    (7.4, "5"),
                    (7.5, "10"),
                    (137.4, "135"),
                    (139.0, "140"),
                    (140.0, "140"),
                    (141.0, "140"),
                    (144.0, "140"),
                    (145.0, "150"),
                    (483.0, "480"),
                    (767.0, "770"),
                ],
            ),
            (
                UsRow::Carbohydrate,
                &[
                    (0.3, "0"),
                    (0.5, "less than 1 g"),
                    (0.9, "less than 1 g"),
                    (1.49, "1"),
                    (1.5, "2"),
                    (12.6, "13"),
                ],
            ),
            (
                UsRow::Cholesterol,
                &[
                    (1.9, "0"),
                    (2.0, "less than 5 mg"),
                    (4.9, "less than 5 mg"),
                    (5.0, "less than 5 mg"),
                    (7.4, "5"),
                    (7.5, "10"),
                    (33.0, "35"),
                ],
            ),
        ];
        let count: usize = cases.iter().map(|(_, rows)| rows.len()).sum();
        assert_eq!(count, 52, "all reference rows");
        for (row, edges) in cases {
            for (raw, printed) in edges {
                assert_eq!(us_text(row, *raw), *printed, "{row:?} {raw}");
            }
        }
    }

    /// The label of a serving of 147 kcal, 4.74 g fat, 143 mg sodium, 0.7 g fibre, 33 mg cholesterol.
    #[test]
    fn a_whole_label() {
        assert_eq!(us_text(UsRow::Calories, 147.0), "150");
        assert_eq!(us_text(UsRow::Fat, 4.74), "4.5");
        assert_eq!(us_text(UsRow::Sodium, 143.0), "140");
        assert_eq!(us_text(UsRow::Carbohydrate, 0.7), "less than 1 g");
        assert_eq!(us_text(UsRow::Cholesterol, 33.0), "35");
    }

    /// 21 CFR 101.9(c)(8)(iii) on iron, 18 mg: 1.3 mg is 7.2 %, 1.9 mg 10.6 %; calcium, 1300 mg: 310 mg is 23.8 %,
    /// 800 mg 61.5 %. Sodium 826 mg of 2300 is 35.9 %.
    #[test]
    fn daily_values() {
        let micro = DailyValue::Micronutrient;
        let printed = |nutrient, raw, how| us_daily_value(nutrient, raw, how).unwrap();
        assert_eq!(printed("iron", 1.3, micro), "8 %");
        assert_eq!(printed("iron", 1.9, micro), "10 %");
        assert_eq!(printed("calcium", 310.0, micro), "25 %");
        assert_eq!(printed("calcium", 800.0, micro), "60 %");
        assert_eq!(printed("sodium", 826.0, DailyValue::Macronutrient), "36 %");
        assert_eq!(us_daily_value("protein", 10.0, micro), None);
    }
}
