//! Temperatures: settings of an oven, ordinary and with a fan, and how hot a food is to be inside.

use potwright_measure::{GasMark, WrittenTemperature};

use super::phrases::Found;
use crate::number::number;
use crate::token::{Token, at};

/// An oven as it is set; both are known where the page gives both, as in '200 C / 180 C fan'.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Setting {
    pub(super) ordinary: Option<WrittenTemperature>,
    pub(super) fan: Option<WrittenTemperature>,
}

impl Setting {
    pub(super) const fn is_said(&self) -> bool {
        self.ordinary.is_some() || self.fan.is_some()
    }

    /// Adds a temperature; of two of a kind (two scales, a range) the first stays.
    pub(super) fn add(&mut self, (value, fan): (WrittenTemperature, bool)) {
        let kind = if fan { &mut self.fan } else { &mut self.ordinary };
        kind.get_or_insert(value);
    }

    /// This setting, or the other one where this says nothing.
    pub(super) const fn or(self, other: Setting) -> Setting {
        if self.is_said() { self } else { other }
    }
}

/// How hot the food is to be that stands in these words of a sign to stop: the first temperature in them.
pub(super) fn core_in(tokens: &[Token], from: usize, to: usize) -> Option<WrittenTemperature> {
    (from..to.min(from + IN_A_CUE)).find_map(|index| temperature(tokens, index).map(|found| found.value.0))
}

/// More words than a sign to stop has before its temperature.
const IN_A_CUE: usize = 24;

/// Words between a temperature and the place in the food where it is read.
const NEAR: usize = 4;

/// Whether the temperature that ends before `next` is that of the inside of a food: 'a core of 75 °C', '75 °C in the
/// middle'.
pub(super) fn is_inside(tokens: &[Token], from: usize, next: usize) -> bool {
    let inner = |index: usize| {
        tokens.get(index).is_some_and(|token| {
            token.is_any(&["core", "internal", "inside", "thermometer", "probe"])
                || (token.is_any(&["middle", "centre", "center", "thickest"]) && index >= next)
        })
    };
    let ends = |index: &usize| {
        tokens
            .get(*index)
            .is_some_and(|t| matches!(t.sign(), Some(',' | ';' | '.')))
    };
    let before = (from.saturating_sub(NEAR)..from).rev().take_while(|index| !ends(index));
    // 'at 160 °C to a core of 74 °C': the core is that of the second.
    let on = |index: &usize| matches!(at(tokens, *index), "to" | "until" | "till");
    let after = (next..next + NEAR).take_while(|index| !ends(index) && !on(index));
    let oven = (next..next + 2 * NEAR)
        .take_while(|index| !ends(index))
        .any(|index| at(tokens, index) == "oven");
    !oven && before.chain(after).any(inner)
}

/// A temperature as written, and whether it is that of a fan oven.
pub(super) fn temperature(tokens: &[Token], from: usize) -> Option<Found<(WrittenTemperature, bool)>> {
    if at(tokens, from) == "fan" {
        let (value, next) = degrees(tokens, from + 1)?;
        return Some(Found {
            value: (value, true),
            next,
        });
    }
    if at(tokens, from) == "gas" {
        let start = from + 1 + usize::from(at(tokens, from + 1) == "mark");
        let (mark, next) = number(tokens, start)?;
        let value = WrittenTemperature::Gas(GasMark::from_number(mark)?);
        return Some(Found {
            value: (value, false),
            next,
        });
    }
    let (value, mut next) = degrees(tokens, from)?;
    let fan = matches!(at(tokens, next), "fan" | "fan-forced");
    next += usize::from(fan);
    Some(Found {
        value: (value, fan),
        next,
    })
}

fn degrees(tokens: &[Token], from: usize) -> Option<(WrittenTemperature, usize)> {
    let token = tokens.get(from)?;
    let value = token.number()?.to_f64();
    let mut next = from + 1;
    let sign = tokens
        .get(next)
        .is_some_and(|t| matches!(t.sign(), Some('°' | 'º' | '˚')) || t.is_any(&["degrees", "deg"]));
    next += usize::from(sign);
    let scale = tokens.get(next)?;
    let capital = scale.text.starts_with(char::is_uppercase);
    if !sign && !capital {
        return None;
    }
    let written = match scale.lower.as_str() {
        "c" | "celsius" | "ºc" | "°c" => WrittenTemperature::Celsius(value),
        "f" | "fahrenheit" | "ºf" | "°f" => WrittenTemperature::Fahrenheit(value),
        _ => return None,
    };
    Some((written, next + 1))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Span;
    use crate::token::tokens;

    #[test]
    fn temperatures_with_and_without_a_fan() {
        for (text, expected) in [
            ("180C", "180 °C"),
            ("180 °C", "180 °C"),
            ("350°F", "350 °F"),
            ("160°C fan", "160 °C fan"),
            ("150°C fan-forced", "150 °C fan"),
            ("gas mark 6", "gas 6"),
            ("200 degrees C", "200 °C"),
            ("5 c sugar", "none"),
            ("180 g", "none"),
        ] {
            let found = temperature(&tokens(text, Span::new(0, text.len())), 0);
            let shown = found.map_or("none".to_owned(), |found| {
                let (value, fan) = found.value;
                format!("{value}{}", if fan { " fan" } else { "" })
            });
            assert_eq!(shown, expected, "{text}");
        }
    }

    #[test]
    fn insides_are_told_from_ovens() {
        for (text, inside) in [
            ("to 75 °C in the middle", true),
            ("to an internal temperature of 165°F", true),
            ("at 180 °C in the middle of the oven", false),
            ("at 180 °C for an hour, until soft inside", false),
            ("at 160 °C to a core of 74 °C", false),
        ] {
            let found = tokens(text, Span::new(0, text.len()));
            let place = (0..found.len()).find_map(|at| temperature(&found, at).map(|one| (at, one.next)));
            let shown = place.map(|(from, next)| is_inside(&found, from, next));
            assert_eq!(shown, Some(inside), "{text}");
        }
    }
}
