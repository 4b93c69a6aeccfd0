//! Ovens as they are set and spoken of: gas marks and their words, one scale beside another, rounded as dials are.

use std::sync::OnceLock;

use crate::{Exact, GasMark, HeatScale, Temperature, WrittenTemperature};

/// mark, °F, °C an electric oven is set to, word, source.
const MARKS: &str = include_str!("../data/gas_marks.tsv");

/// words, lowest mark, highest mark, source.
const WORDS: &str = include_str!("../data/oven_words.tsv");

/// Below this an oven keeps warm or dries, and is set in fives of degrees Celsius, tens of Fahrenheit.
const COOL_CELSIUS: f64 = 100.0;

/// One gas mark of the table.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Mark {
    mark: GasMark,
    fahrenheit: f64,
    celsius_set: f64,
    word: &'static str,
}

/// An oven told in words: 'a slow oven'.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct OvenWord {
    /// The words, in small letters, without 'oven'.
    pub words: &'static str,
    /// The coolest mark that is meant.
    pub low: GasMark,
    /// The hottest mark that is meant.
    pub high: GasMark,
}

impl OvenWord {
    /// Half way between the two marks.
    #[must_use]
    pub fn temperature(self) -> Temperature {
        Temperature::from_celsius(f64::midpoint(
            self.low.temperature().celsius(),
            self.high.temperature().celsius(),
        ))
    }

    /// The oven meant by some words, any case, with or without 'oven' after them: `slow`, `Moderate oven`.
    #[must_use]
    pub fn find(text: &str) -> Option<OvenWord> {
        let text = text.to_lowercase();
        let words: Vec<&str> = text
            .split([' ', '-'])
            .filter(|w| !w.is_empty() && *w != "oven")
            .collect();
        let words = words.join(" ");
        oven_words().iter().find(|known| known.words == words).copied()
    }
}

/// All words for ovens.
#[must_use]
pub fn oven_words() -> &'static [OvenWord] {
    static READ: OnceLock<Vec<OvenWord>> = OnceLock::new();
    READ.get_or_init(|| {
        let mut words: Vec<OvenWord> = Vec::new();
        for Mark { mark, word, .. } in marks() {
            match words.last_mut().filter(|last| last.words == *word) {
                Some(last) => last.high = *mark,
                None => words.push(OvenWord {
                    words: word,
                    low: *mark,
                    high: *mark,
                }),
            }
        }
        words.extend(rows(WORDS).filter_map(|cells| {
            let [words, low, high, ..] = cells[..] else {
                return None;
            };
            Some(OvenWord {
                words,
                low: mark(low)?,
                high: mark(high)?,
            })
        }));
        words
    })
}

fn marks() -> &'static [Mark] {
    static READ: OnceLock<Vec<Mark>> = OnceLock::new();
    READ.get_or_init(|| {
        let read = |cells: Vec<&'static str>| {
            let [number, fahrenheit, celsius_set, word, ..] = cells[..] else {
                return None;
            };
            Some(Mark {
                mark: mark(number)?,
                fahrenheit: fahrenheit.parse().ok()?,
                celsius_set: celsius_set.parse().ok()?,
                word,
            })
        };
        rows(MARKS).filter_map(read).collect()
    })
}

fn rows(table: &'static str) -> impl Iterator<Item = Vec<&'static str>> {
    let lines = table.lines().filter(|line| !line.starts_with('#')).skip(1);
    lines.map(|line| line.split('\t').collect())
}

fn mark(number: &str) -> Option<GasMark> {
    GasMark::from_number(number.parse::<Exact>().ok()?)
}

impl GasMark {
    /// The whole mark (or ½, ¼) nearest to a temperature; `None` more than half a mark below ¼ or above 9.
    #[must_use]
    pub fn nearest(temperature: Temperature) -> Option<GasMark> {
        let distance = |mark: &Mark| (mark.fahrenheit - temperature.fahrenheit()).abs();
        let nearest = marks().iter().min_by(|a, b| distance(a).total_cmp(&distance(b)))?;
        // Half of the 25 °F between two marks; not so for what is not a number.
        (distance(nearest) <= 12.5).then_some(nearest.mark)
    }
}

impl WrittenTemperature {
    /// As an oven's dial says it in another scale: °C in tens (fives below 100), °F in twenty-fives (tens below
    /// 212), gas in whole marks; between °F and gas marks on one side and °C on the other by the table of marks
    /// where it has the figure. Its own scale leaves it as written. `None` when the oven has no such gas mark.
    ///
    /// Rounding to the dial moves a temperature by 5 °C or 12.5 °F at most, the table's own figures by 7 °C.
    #[must_use]
    pub fn on_dial(self, scale: HeatScale) -> Option<WrittenTemperature> {
        if scale == self.scale() {
            return Some(self);
        }
        let temperature = self.temperature();
        let cool = temperature.celsius() < COOL_CELSIUS;
        match scale {
            HeatScale::Celsius => {
                let tabled = marks().iter().find(|mark| mark.mark.temperature() == temperature);
                let set = tabled.map(|mark| mark.celsius_set);
                let rounded = to_nearest(temperature.celsius(), if cool { 5.0 } else { 10.0 });
                Some(WrittenTemperature::Celsius(set.unwrap_or(rounded)))
            }
            HeatScale::Fahrenheit => {
                let step = if cool { 10.0 } else { 25.0 };
                Some(WrittenTemperature::Fahrenheit(to_nearest(
                    temperature.fahrenheit(),
                    step,
                )))
            }
            HeatScale::Gas => GasMark::nearest(temperature).map(WrittenTemperature::Gas),
        }
    }

    /// As a thermometer says it in another scale, in whole degrees; `None` for gas marks, which no thermometer has.
    #[must_use]
    pub fn on_thermometer(self, scale: HeatScale) -> Option<WrittenTemperature> {
        if scale == self.scale() {
            return Some(self);
        }
        match scale {
            HeatScale::Celsius => Some(WrittenTemperature::Celsius(to_nearest(
                self.temperature().celsius(),
                1.0,
            ))),
            HeatScale::Fahrenheit => Some(WrittenTemperature::Fahrenheit(to_nearest(
                self.temperature().fahrenheit(),
                1.0,
            ))),
            HeatScale::Gas => None,
        }
    }

    /// An oven's temperature in several scales, the first outside, the others in brackets: `180 °C (350 °F, gas 4)`.
    /// Scales the oven does not have are left out.
    ///
    /// ```
    /// use potwright_measure::{HeatScale, WrittenTemperature};
    /// let written = WrittenTemperature::Fahrenheit(350.0);
    /// let order = [HeatScale::Celsius, HeatScale::Fahrenheit, HeatScale::Gas];
    /// assert_eq!(written.oven_text(&order), "180 °C (350 °F, gas 4)");
    /// ```
    #[must_use]
    pub fn oven_text(self, order: &[HeatScale]) -> String {
        in_order(order.iter().filter_map(|scale| self.on_dial(*scale)))
    }

    /// As [`WrittenTemperature::oven_text`], for the temperature of food or a pot: `74 °C (165 °F)`.
    #[must_use]
    pub fn food_text(self, order: &[HeatScale]) -> String {
        in_order(order.iter().filter_map(|scale| self.on_thermometer(*scale)))
    }
}

fn in_order(mut written: impl Iterator<Item = WrittenTemperature>) -> String {
    let Some(first) = written.next() else {
        return String::new();
    };
    let others: Vec<String> = written.map(|other| other.to_string()).collect();
    if others.is_empty() {
        first.to_string()
    } else {
        format!("{first} ({})", others.join(", "))
    }
}

/// To the nearest multiple of a step, halves away from nought.
fn to_nearest(value: f64, step: f64) -> f64 {
    // Adding nought turns a negative nought into a plain one, which would print as '-0'.
    (value / step).round() * step + 0.0
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn tables_are_read_whole() {
        assert_eq!(marks().len(), rows(MARKS).count());
        let own_words = marks().chunk_by(|a, b| a.word == b.word).count();
        assert_eq!(oven_words().len(), own_words + rows(WORDS).count());
        for cells in rows(MARKS).chain(rows(WORDS)) {
            assert!(cells.iter().all(|cell| !cell.trim().is_empty()), "{cells:?}");
        }
        for (i, word) in oven_words().iter().enumerate() {
            assert!(
                word.low <= word.high && OvenWord::find(word.words) == Some(*word),
                "{word:?}"
            );
            assert!(
                oven_words()[..i].iter().all(|other| other.words != word.words),
                "{word:?}"
            );
        }
    }

    #[test]
    fn the_table_and_the_rule_for_gas_marks_agree() {
        for Mark { mark, fahrenheit, .. } in marks() {
            assert_eq!(mark.temperature(), Temperature::from_fahrenheit(*fahrenheit));
        }
    }
}
