//! Quantities as a cook writes them down in a settings file: '28 cm', '9.5 litres', '2.6 kg', '110 m', '9 minutes'.

use potwright_measure::{Dimension, Measures, Unit, fractions};

/// What a quantity is of, with the unit that a bare number has.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Of {
    /// A length in a kitchen; in centimetres.
    Length,
    /// A height above the sea; in metres.
    Height,
    /// A weight; in grams.
    Weight,
    /// What a pot holds; in litres.
    Contents,
    /// A temperature; in degrees Celsius.
    Temperature,
    /// A difference of temperature; in degrees Celsius.
    Degrees,
    /// A stretch of time; in minutes.
    Time,
    /// A share; in percent.
    Share,
    /// A power; in watts.
    Power,
}

impl Of {
    /// What to write.
    pub(crate) const fn wanted(self) -> &'static str {
        match self {
            Of::Length => "a length, like \"28 cm\" or \"11 inches\"",
            Of::Height => "a height above the sea, like \"110 m\" or \"360 ft\"",
            Of::Weight => "a weight, like \"2.6 kg\" or \"5 lb\"",
            Of::Contents => "what it holds, like \"9.5 litres\" or \"10 quarts\"",
            Of::Temperature => "a temperature, like \"4 °C\" or \"39 °F\"",
            Of::Degrees => "a number of degrees, like \"10 °C\" or \"-20 °F\"",
            Of::Time => "a time, like \"9 minutes\"",
            Of::Share => "a share, like \"50 %\"",
            Of::Power => "a power, like \"2.8 kW\" or \"9500 BTU/h\"",
        }
    }

    /// The number in the unit of the kind (see the variants). None when it cannot be understood.
    pub(crate) fn read(self, text: &str, measures: Measures) -> Option<f64> {
        let (number, unit) = split(text)?;
        let plain = unit.trim_end_matches('.').to_lowercase();
        match self {
            Of::Length => Some(number * length_cm(&plain)?),
            Of::Height => Some(number * height_m(&plain)?),
            Of::Weight => Some(
                number
                    * if unit.is_empty() {
                        1.0
                    } else {
                        weight_g(unit, measures)?
                    },
            ),
            Of::Contents => Some(
                number
                    * if unit.is_empty() {
                        1.0
                    } else {
                        contents_l(unit, measures)?
                    },
            ),
            Of::Temperature => celsius(number, &plain),
            Of::Degrees => Some(number * degrees(&plain)?),
            Of::Time => Some(number * minutes(&plain)?),
            Of::Share => matches!(plain.as_str(), "" | "%" | "percent" | "per cent").then_some(number),
            Of::Power => Some(number * watts(&plain)?),
        }
    }
}

/// The number at the head of the text, and the unit after it.
fn split(text: &str) -> Option<(f64, &str)> {
    let text = text.trim();
    let number = |c: char| c.is_ascii_digit() || c.is_numeric() || matches!(c, '.' | '/' | '-' | '−' | ' ' | '⁄');
    let end = text.find(|c: char| !number(c)).unwrap_or(text.len());
    let (head, unit) = text.split_at(end);
    let head = head.trim().replace('−', "-");
    Some((fractions::parse(&head).ok()?.to_f64(), unit.trim()))
}

/// An inch is 2.54 cm exactly (NIST Handbook 44, Appendix C).
fn length_cm(unit: &str) -> Option<f64> {
    match unit {
        "" | "cm" | "centimetre" | "centimetres" | "centimeters" => Some(1.0),
        "mm" | "millimetres" | "millimeters" => Some(0.1),
        "in" | "inch" | "inches" | "\"" | "″" => Some(2.54),
        _ => None,
    }
}

/// A foot is 0.3048 m exactly (NIST Handbook 44, Appendix C).
fn height_m(unit: &str) -> Option<f64> {
    match unit {
        "" | "m" | "metre" | "metres" | "meters" => Some(1.0),
        "ft" | "foot" | "feet" => Some(0.3048),
        _ => None,
    }
}

fn weight_g(unit: &str, measures: Measures) -> Option<f64> {
    let unit = Unit::from_spelling(unit).filter(|unit| unit.dimension() == Dimension::Mass)?;
    unit.mass(measures).map(|mass_g| mass_g.to_f64())
}

fn contents_l(unit: &str, measures: Measures) -> Option<f64> {
    let unit = Unit::from_spelling(unit).filter(|unit| unit.dimension() == Dimension::Volume)?;
    unit.volume(measures).map(|volume_ml| volume_ml.to_f64() / 1000.0)
}

fn celsius(number: f64, unit: &str) -> Option<f64> {
    match unit {
        "f" | "°f" | "° f" | "fahrenheit" => Some((number - 32.0) * 5.0 / 9.0),
        _ => degrees(unit).map(|_| number),
    }
}

fn degrees(unit: &str) -> Option<f64> {
    match unit {
        "" | "c" | "°c" | "° c" | "°" | "celsius" | "degrees" => Some(1.0),
        "f" | "°f" | "° f" | "fahrenheit" => Some(5.0 / 9.0),
        _ => None,
    }
}

fn minutes(unit: &str) -> Option<f64> {
    match unit {
        "" | "min" | "mins" | "minute" | "minutes" => Some(1.0),
        "s" | "sec" | "second" | "seconds" => Some(1.0 / 60.0),
        "h" | "hour" | "hours" => Some(60.0),
        _ => None,
    }
}

/// A British thermal unit (International Table) is 1055.05585262 J exactly (ISO 80000-5).
fn watts(unit: &str) -> Option<f64> {
    match unit {
        "" | "w" | "watt" | "watts" => Some(1.0),
        "kw" | "kilowatt" | "kilowatts" => Some(1000.0),
        "btu/h" | "btu" | "btus" | "btuh" => Some(1_055.055_852_62 / 3600.0),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn read(of: Of, text: &str) -> Option<f64> {
        of.read(text, Measures::Metric)
    }

    #[test]
    fn quantities_as_cooks_write_them() {
        // A litre of 1000 ml, a US quart of 946.352946 ml (NIST Handbook 44, Appendix C).
        assert_eq!(Of::Contents.read("1 quart", Measures::Us), Some(0.946352946));
        for (of, text, value) in [
            (Of::Length, "28 cm", 28.0),
            (Of::Length, "11 inches", 27.94),
            (Of::Length, "12 1/2", 12.5),
            (Of::Height, "110 m", 110.0),
            (Of::Height, "1000ft", 304.8),
            (Of::Weight, "2.6 kg", 2600.0),
            (Of::Contents, "9½ litres", 9.5),
            (Of::Temperature, "-18 °C", -18.0),
            (Of::Temperature, "−18", -18.0),
            (Of::Temperature, "39.2 °F", 4.0),
            (Of::Degrees, "18 °F", 10.0),
            (Of::Time, "90 seconds", 1.5),
            (Of::Share, "55 %", 55.0),
            (Of::Power, "2.8 kW", 2800.0),
        ] {
            let found = read(of, text).unwrap_or(f64::NAN);
            assert!((found - value).abs() < 1e-9, "{text}: {found}");
        }
        // 9,500 BTU/h is 2.784 kW: 9500 × 0.29307107.
        let gas = read(Of::Power, "9500 BTU/h").unwrap_or(f64::NAN);
        assert!((gas - 2784.175).abs() < 0.01, "{gas}");
    }

    #[test]
    fn what_is_no_quantity_is_none() {
        for (of, text) in [
            (Of::Length, "wide"),
            (Of::Length, ""),
            (Of::Length, "28 kg"),
            (Of::Weight, "2 cm"),
            (Of::Weight, "2 cups"),
            (Of::Contents, "2 kg"),
            (Of::Time, "a while"),
            (Of::Power, "big"),
            (Of::Length, "1/0 cm"),
        ] {
            assert_eq!(read(of, text), None, "{text}");
        }
    }
}
