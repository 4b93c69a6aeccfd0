//! Printing computed quantities with the digits a cook can use.
//!
//! Masses and volumes: two decimals below 1, one below 10, whole numbers below 100, fives below 1000; from 1000 g or
//! ml in kilograms or litres, one decimal below 20 and whole above. So nothing from 1 upwards is off by more than
//! 5 %. These are prints of figures, not measures to be taken; for those see [`crate::rounding`].

use std::fmt;

use crate::{Duration, Length, Mass, Money, Temperature, Volume};

impl fmt::Display for Mass {
    /// `850 g`, `1.2 kg`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&small_and_large(self.grams(), "g", "kg"))
    }
}

impl fmt::Display for Volume {
    /// `240 ml`, `2.6 l`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&small_and_large(self.millilitres(), "ml", "l"))
    }
}

impl fmt::Display for Length {
    /// `3 mm`, `2.5 cm`, `28 cm`: millimetres below one centimetre, centimetres to the half below ten.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let millimetres = to_step(self.millimetres().abs(), 1.0);
        let sign = sign(self.millimetres() < 0.0 && millimetres > 0.0);
        if millimetres < 10.0 {
            return write!(f, "{sign}{millimetres} mm");
        }
        let half = to_step(millimetres / 10.0, 0.5);
        write!(
            f,
            "{sign}{} cm",
            if half < 10.0 {
                half
            } else {
                to_step(millimetres / 10.0, 1.0)
            }
        )
    }
}

impl fmt::Display for Temperature {
    /// Whole degrees Celsius: `62 °C`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let degrees = to_step(self.celsius().abs(), 1.0);
        write!(f, "{}{degrees} °C", sign(self.celsius() < 0.0 && degrees > 0.0))
    }
}

impl fmt::Display for Money {
    /// Two places, no sign of a currency: `4.20`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        let hundredths = to_step(self.units().abs() * 100.0, 1.0);
        write!(
            f,
            "{}{:.2}",
            sign(self.units() < 0.0 && hundredths > 0.0),
            hundredths / 100.0
        )
    }
}

impl fmt::Display for Duration {
    /// `45 s`, `12 min`, `1 h 20 min`, `2 days 3 h`: see [`Duration::words`] for the same in full.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        f.write_str(&clock(*self, &ClockWords::SHORT))
    }
}

impl Duration {
    /// In full: `45 minutes`, `1½ hours`, `1 hour 20 minutes`, `2 days 3 hours`.
    ///
    /// Rounded to what a cook can keep: whole seconds below half a minute, fives of seconds below two minutes, whole
    /// minutes below ten hours, fives of minutes below two days, whole hours above.
    #[must_use]
    pub fn words(self) -> String {
        clock(self, &ClockWords::LONG)
    }
}

/// The words for one and for several of each unit of time.
struct ClockWords {
    day: [&'static str; 2],
    hour: [&'static str; 2],
    minute: [&'static str; 2],
    second: [&'static str; 2],
    /// Whether a half hour is written `½`.
    halves: bool,
}

impl ClockWords {
    const SHORT: ClockWords = ClockWords {
        day: ["day", "days"],
        hour: ["h", "h"],
        minute: ["min", "min"],
        second: ["s", "s"],
        halves: false,
    };
    const LONG: ClockWords = ClockWords {
        day: ["day", "days"],
        hour: ["hour", "hours"],
        minute: ["minute", "minutes"],
        second: ["second", "seconds"],
        halves: true,
    };
}

fn clock(duration: Duration, words: &ClockWords) -> String {
    const MINUTE: f64 = 60.0;
    const HOUR: f64 = 60.0 * MINUTE;
    const DAY: f64 = 24.0 * HOUR;
    let seconds = duration.seconds().abs();
    let step = match seconds {
        s if s < 30.0 => 1.0,
        s if s < 2.0 * MINUTE => 5.0,
        s if s < 10.0 * HOUR => MINUTE,
        s if s < 2.0 * DAY => 5.0 * MINUTE,
        _ => HOUR,
    };
    let rounded = to_step(seconds, step);
    let sign = sign(duration.seconds() < 0.0 && rounded > 0.0);
    if !(rounded >= 2.0 * MINUTE || rounded == MINUTE) {
        return format!("{sign}{}", counted(rounded, words.second));
    }
    let (large, small) = if rounded < HOUR {
        (None, (rounded / MINUTE, words.minute))
    } else if rounded < 2.0 * DAY {
        let hours = (rounded / HOUR).floor();
        (
            Some((hours, words.hour)),
            ((rounded - hours * HOUR) / MINUTE, words.minute),
        )
    } else {
        let days = (rounded / DAY).floor();
        (Some((days, words.day)), ((rounded - days * DAY) / HOUR, words.hour))
    };
    let Some((count, unit)) = large else {
        return format!("{sign}{}", counted(small.0, small.1));
    };
    if words.halves && small == (30.0, words.minute) {
        return format!("{sign}{count}½ {}", unit[1]);
    }
    if small.0 == 0.0 {
        return format!("{sign}{}", counted(count, unit));
    }
    format!("{sign}{} {}", counted(count, unit), counted(small.0, small.1))
}

fn counted(count: f64, [one, several]: [&str; 2]) -> String {
    format!("{count} {}", if count == 1.0 { one } else { several })
}

/// A size in its small unit, or from a thousand of them in the large one.
fn small_and_large(size: f64, small: &str, large: &str) -> String {
    let magnitude = size.abs();
    let step = match magnitude {
        m if m < 1.0 => 0.01,
        m if m < 10.0 => 0.1,
        m if m < 100.0 => 1.0,
        _ => 5.0,
    };
    let rounded = to_step(magnitude, step);
    if rounded == 0.0 && magnitude > 0.0 {
        return format!("under 0.01 {small}");
    }
    let sign = sign(size < 0.0);
    if rounded < 1000.0 {
        return format!("{sign}{} {small}", trimmed(rounded));
    }
    let thousands = magnitude / 1000.0;
    let step = if thousands < 20.0 { 0.1 } else { 1.0 };
    format!("{sign}{} {large}", trimmed(to_step(thousands, step)))
}

/// At most two decimals, noughts at the end left off.
fn trimmed(value: f64) -> String {
    let text = format!("{value:.2}");
    text.trim_end_matches('0').trim_end_matches('.').to_owned()
}

/// To the nearest multiple of a step, halves up.
fn to_step(value: f64, step: f64) -> f64 {
    (value / step).round() * step
}

/// A true minus sign, or nothing.
const fn sign(negative: bool) -> &'static str {
    if negative { "−" } else { "" }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[track_caller]
    fn check(printed: impl fmt::Display, expected: &str) {
        assert_eq!(printed.to_string(), expected);
    }

    #[test]
    fn masses_and_volumes_keep_the_digits_of_the_rule() {
        check(Mass::from_grams(0.0), "0 g");
        check(Mass::from_grams(0.004), "under 0.01 g");
        check(Mass::from_grams(0.25), "0.25 g");
        check(Mass::from_grams(2.54), "2.5 g");
        check(Mass::from_grams(9.96), "10 g");
        check(Mass::from_grams(56.7), "57 g");
        check(Mass::from_grams(852.0), "850 g");
        check(Mass::from_grams(998.0), "1 kg");
        check(Mass::from_grams(1234.0), "1.2 kg");
        check(Mass::from_kilograms(12.44), "12.4 kg");
        check(Mass::from_kilograms(31.6), "32 kg");
        check(Volume::from_millilitres(2618.0), "2.6 l");
        check(Volume::from_millilitres(236.6), "235 ml");
        check(Volume::from_millilitres(-30.0), "−30 ml");
        check(Mass::from_grams(f64::NAN), "NaN kg");
    }

    #[test]
    fn times_as_a_cook_says_them() {
        let both = |seconds: f64, short: &str, long: &str| {
            check(Duration::from_seconds(seconds), short);
            assert_eq!(Duration::from_seconds(seconds).words(), long);
        };
        both(0.0, "0 s", "0 seconds");
        both(1.2, "1 s", "1 second");
        both(44.0, "45 s", "45 seconds");
        both(60.0, "1 min", "1 minute");
        both(90.0, "90 s", "90 seconds");
        both(119.0, "2 min", "2 minutes");
        both(45.0 * 60.0, "45 min", "45 minutes");
        both(59.6 * 60.0, "1 h", "1 hour");
        both(80.0 * 60.0, "1 h 20 min", "1 hour 20 minutes");
        both(90.0 * 60.0, "1 h 30 min", "1½ hours");
        both(12.0 * 3600.0 + 62.0, "12 h", "12 hours");
        both(51.0 * 3600.0, "2 days 3 h", "2 days 3 hours");
        both(-300.0, "−5 min", "−5 minutes");
    }

    #[test]
    fn lengths_temperatures_money() {
        check(Length::from_millimetres(3.2), "3 mm");
        check(Length::from_millimetres(25.4), "2.5 cm");
        check(Length::from_centimetres(28.2), "28 cm");
        check(Temperature::from_celsius(62.4), "62 °C");
        check(Temperature::from_celsius(-18.0), "−18 °C");
        check(Temperature::from_celsius(-0.2), "0 °C");
        check(Money::from_units(4.2), "4.20");
        check(Money::from_units(-0.5), "−0.50");
    }
}
