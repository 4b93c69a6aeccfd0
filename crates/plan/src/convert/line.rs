//! The amounts of an ingredient line, set anew in the line's own words.

use potwright_larder::Larder;
use potwright_manuscript::{Ingredient, Item, Quantity, Span};
use potwright_measure::{Dimension, Exact, Measures, Unit};

use super::MeasuresWanted;
use super::double::Double;
use super::food::Known;
use super::measure::{Kitchens, Said, System, Written};
use super::phrase::Phrase;
use super::scan::word_at;
use super::style::{Fractions, Style, noun, unit_word};
use crate::splice::Splices;

/// What holds for the whole page.
#[derive(Clone, Copy, Debug)]
pub(super) struct Setting<'a> {
    pub(super) text: &'a str,
    pub(super) larder: &'a Larder,
    pub(super) kitchens: &'a Kitchens,
    pub(super) fractions: Fractions,
    pub(super) factor: Exact,
    pub(super) wanted: MeasuresWanted,
}

/// What came of setting an amount.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(super) struct Outcome {
    /// Rounded over exact, minus one.
    pub(super) off: f64,
    pub(super) guessed: bool,
    pub(super) unweighed: bool,
    /// It could not be set and stays as written.
    pub(super) left: bool,
}

/// How an amount is to be set.
#[derive(Clone, Copy, Debug)]
pub(super) struct Task<'a> {
    pub(super) quantity: &'a Quantity,
    pub(super) factor: Exact,
    pub(super) known: &'a Known<'a>,
    pub(super) wanted: MeasuresWanted,
    /// Places within the amount that belong to another.
    pub(super) others: &'a [Span],
    /// It stands in brackets: a second measure is set off by a stroke.
    pub(super) in_brackets: bool,
}

/// Words that make a spoon more or less than itself: such a spoon stays a spoon.
const HEAPS: [&str; 6] = ["heaped", "heaping", "rounded", "level", "scant", "mounded"];

/// Sets all amounts of a line; the outcome is that of its own amount.
pub(super) fn set(setting: &Setting<'_>, line: &Ingredient, splices: &mut Splices) -> Outcome {
    let known = Known::of(setting.larder, line, line.items.first());
    let mut outcome = Outcome::default();
    let others: Vec<Span> = line
        .package
        .iter()
        .chain(&line.also)
        .map(|quantity| quantity.span)
        .collect();
    if let Some(quantity) = &line.quantity {
        outcome = set_all(setting, line, &known, &others, splices);
        inflect(setting, line, quantity, &known, splices);
    }
    if let Some(package) = &line.package {
        let in_brackets = in_brackets(setting.text, package.span);
        Task {
            factor: Exact::ONE,
            in_brackets,
            ..Task::whole(setting, package, &known, &[])
        }
        .set(setting, splices);
    }
    for other in &line.alternatives {
        if let Some(quantity) = &other.quantity {
            let known = Known::of(setting.larder, line, Some(&other.item));
            Task::whole(setting, quantity, &known, &[]).set(setting, splices);
        }
    }
    outcome
}

/// The amount and what is said beside it, in page order; two that say the same in two systems are set as one.
fn set_all(
    setting: &Setting<'_>,
    line: &Ingredient,
    known: &Known<'_>,
    others: &[Span],
    splices: &mut Splices,
) -> Outcome {
    let mut quantities: Vec<&Quantity> = line.quantity.iter().chain(&line.also).collect();
    quantities.sort_by_key(|quantity| quantity.span);
    let mut outcome = Outcome::default();
    let mut rest = quantities.as_slice();
    while let [quantity, more @ ..] = rest {
        let double = more.first().and_then(|second| Double::of(setting, quantity, second));
        let own = |span: Span| line.quantity.as_ref().is_some_and(|own| own.span == span);
        let is_own = own(quantity.span) || double.as_ref().is_some_and(|double| own(double.second.span));
        rest = if double.is_some() {
            more.get(1..).unwrap_or(&[])
        } else {
            more
        };
        let found = match double {
            Some(double) => double.set(setting, known, splices),
            None => {
                let others = if is_own { others } else { &[] };
                let in_brackets = in_brackets(setting.text, quantity.span);
                Task {
                    in_brackets,
                    ..Task::whole(setting, quantity, known, others)
                }
                .set(setting, splices)
            }
        };
        if is_own {
            outcome = found;
        }
    }
    outcome
}

impl<'a> Task<'a> {
    pub(super) fn whole(
        setting: &Setting<'_>,
        quantity: &'a Quantity,
        known: &'a Known<'a>,
        others: &'a [Span],
    ) -> Task<'a> {
        Task {
            quantity,
            factor: setting.factor,
            known,
            wanted: setting.wanted,
            others,
            in_brackets: false,
        }
    }

    pub(super) fn set(self, setting: &Setting<'_>, splices: &mut Splices) -> Outcome {
        let Quantity { unit, span, .. } = *self.quantity;
        let words = span.of(setting.text).to_lowercase();
        let heaped = words.split_whitespace().any(|word| HEAPS.contains(&word));
        let systems = if heaped {
            &[System::Kept]
        } else {
            systems(self.wanted, unit, setting.kitchens.home())
        };
        if self.factor == Exact::ONE
            && systems
                .iter()
                .all(|system| setting.kitchens.holds(unit, self.known, *system))
        {
            return Outcome::default();
        }
        let left = Outcome {
            left: true,
            ..Outcome::default()
        };
        let written = Written {
            amount: self.quantity.amount,
            unit,
            known: self.known,
        };
        let said: Option<Vec<Said>> = systems
            .iter()
            .map(|system| self.in_system(setting, written, *system))
            .collect();
        let Some(first) = said.as_ref().and_then(|said| said.first()).copied() else {
            return left;
        };
        let second = said
            .and_then(|said| said.get(1).copied())
            .filter(|second| !same(*second, first));
        let phrase = Phrase::find(setting.text, span, unit, self.others);
        if !self.write(setting, &phrase, first, second, splices) {
            return left;
        }
        Outcome {
            off: first.off,
            guessed: first.guessed,
            unweighed: first.unweighed,
            left: false,
        }
    }

    /// An amount that stays as it is in one of the systems is not rounded there.
    fn in_system(&self, setting: &Setting<'_>, written: Written<'_>, system: System) -> Option<Said> {
        if self.factor == Exact::ONE && setting.kitchens.holds(written.unit, self.known, system) {
            return Some(Said::as_it_is(written));
        }
        setting.kitchens.set(written, self.factor, system)
    }

    fn write(
        &self,
        setting: &Setting<'_>,
        phrase: &Phrase,
        first: Said,
        second: Option<Said>,
        splices: &mut Splices,
    ) -> bool {
        let text = setting.text;
        let style = self.style(setting, phrase);
        let joint = joint(text, phrase.number);
        let about = if first.guessed && !self.quantity.amount.about {
            "about "
        } else {
            ""
        };
        let unit = self.quantity.unit;
        let plain = |said: Said| {
            said.low.unit == unit && said.high.unit == unit && said.low.plus.is_none() && said.high.plus.is_none()
        };
        if second.is_none() && plain(first) && !phrase.sum {
            return self.write_number(setting, phrase, style, first, joint, splices);
        }
        let mut now = format!("{about}{}", style.range(first.low, first.high, joint));
        if let Some(second) = second {
            let again = style.range(second.low, second.high, joint);
            now = if self.in_brackets {
                format!("{now} / {again}")
            } else {
                format!("{now} ({again})")
            };
        }
        let (Some(number), Some(word)) = (phrase.number, phrase.unit) else {
            return phrase.whole().is_some_and(|whole| splices.add(text, whole, now));
        };
        let between = Span::new(number.end, word.start.max(number.end)).of(text);
        let qualified = between.contains(char::is_alphabetic) && !phrase.sum;
        let word = with_full_stop(text, word);
        if !qualified {
            return splices.add(text, number.join(word), now);
        }
        if phrase.article {
            return splices.add(text, word, now);
        }
        // '2 good pinches' → '½ tsp good': the words between stay.
        let gap = Span::new(number.end + between.trim_end().len(), word.end);
        splices.add(text, number, now) && splices.add(text, gap, String::new())
    }

    /// The unit stays: only the number changes, and the unit's word between singular and plural.
    fn write_number(
        &self,
        setting: &Setting<'_>,
        phrase: &Phrase,
        style: Style,
        said: Said,
        joint: &str,
        splices: &mut Splices,
    ) -> bool {
        let text = setting.text;
        let number = |amount: Exact| match said.low.unit {
            Some(unit) => style.number(amount, unit),
            None => style.fractions.number(amount),
        };
        let now = if said.low == said.high {
            number(said.low.amount)
        } else {
            format!("{}{joint}{}", number(said.low.amount), number(said.high.amount))
        };
        let several = said.high.amount > Exact::ONE;
        if let (Some(word), Some(unit)) = (phrase.unit, said.low.unit) {
            let old = word.of(text);
            let new = unit_word(old, unit, several);
            if new != old {
                splices.add(text, word, new);
            }
        }
        match phrase.number {
            Some(place) => {
                let glued = text
                    .get(place.end..)
                    .is_some_and(|rest| rest.starts_with(char::is_alphabetic));
                let worded = place.of(text).contains(char::is_alphabetic) && glued;
                let now = if place.of(text).eq_ignore_ascii_case("another") {
                    format!("{now} more")
                } else {
                    now
                };
                splices.add(text, place, if worded { format!("{now} ") } else { now })
            }
            // The number is implied: 'sprig of rosemary', '400 g can'.
            None if said.high.amount == Exact::ONE => true,
            None => {
                let start = self.quantity.span.start;
                let figure_follows = text.get(start..).is_some_and(|rest| rest.starts_with(char::is_numeric));
                let gap = if figure_follows { " × " } else { " " };
                splices.add(text, Span::new(start, start), format!("{now}{gap}"))
            }
        }
    }

    fn style(&self, setting: &Setting<'_>, phrase: &Phrase) -> Style {
        let text = setting.text;
        let word = phrase.unit.map_or("", |span| span.of(text));
        let hyphen = phrase
            .number
            .zip(phrase.unit)
            .is_some_and(|(number, unit)| Span::new(number.end, unit.start).of(text).contains(['-', '‑', '–']));
        let long_units = !hyphen
            && self.quantity.unit.is_some_and(|unit| {
                let lower = word.to_lowercase();
                unit.abbreviation() != unit.name() && (lower == unit.name() || lower == unit.plural())
            });
        let spaced = match (phrase.number, phrase.unit) {
            (Some(number), Some(unit)) => number.end != unit.start,
            _ => true,
        };
        Style {
            fractions: setting.fractions,
            long_units,
            long_metric: long_units && self.quantity.unit.is_some_and(Unit::is_metric),
            spaced,
        }
    }
}

/// The measures to say an amount in, the page's own first.
fn systems(wanted: MeasuresWanted, unit: Option<Unit>, home: Measures) -> &'static [System] {
    match wanted {
        MeasuresWanted::Metric => &[System::Metric],
        MeasuresWanted::Us => &[System::Us],
        MeasuresWanted::AsWritten => &[System::Own],
        MeasuresWanted::Both if home == Measures::Us && !unit.is_some_and(Unit::is_metric) => {
            &[System::Us, System::Metric]
        }
        MeasuresWanted::Both => &[System::Metric, System::Us],
    }
}

/// The same words come of both.
fn same(a: Said, b: Said) -> bool {
    a.low == b.low && a.high == b.high
}

/// What the page puts between the two ends of a range.
fn joint(text: &str, number: Option<Span>) -> &'static str {
    let words = number.map_or("", |span| span.of(text));
    let has = |word: &str| words.split_whitespace().any(|w| w.eq_ignore_ascii_case(word));
    if has("to") {
        " to "
    } else if has("or") {
        " or "
    } else {
        "–"
    }
}

/// A short form of a unit with the full stop that belongs to it: '6 lbs. shin', not '5 lbs.' at the end of a line.
fn with_full_stop(text: &str, word: Span) -> Span {
    let rest = text.get(word.end..).unwrap_or("");
    let own = rest
        .strip_prefix(". ")
        .is_some_and(|rest| rest.starts_with(char::is_lowercase));
    Span::new(word.start, word.end + usize::from(own))
}

/// Puts the noun after a plain count, or a unit that stands behind the food ('garlic cloves'), into singular or
/// plural when the count has crossed one.
fn inflect(setting: &Setting<'_>, line: &Ingredient, quantity: &Quantity, known: &Known<'_>, splices: &mut Splices) {
    let several = |high: Exact| high > Exact::ONE;
    let written = Written {
        amount: quantity.amount,
        unit: quantity.unit,
        known,
    };
    let Some(said) = setting.kitchens.set(written, setting.factor, System::Own) else {
        return;
    };
    let now = several(said.high.amount);
    if setting.factor == Exact::ONE || now == several(quantity.amount.high) {
        return;
    }
    match quantity.unit {
        None => {
            for item in &line.items {
                inflect_item(setting, item, known, now, splices);
            }
        }
        Some(unit) if unit.dimension() == Dimension::Piece => {
            let rest = Span::new(quantity.span.end, line.span.end);
            if Phrase::find(setting.text, quantity.span, Some(unit), &[])
                .unit
                .is_none()
                && let Some(place) = Phrase::find(setting.text, rest, Some(unit), &[]).unit
            {
                splices.add(setting.text, place, unit_word(place.of(setting.text), unit, now));
            }
        }
        Some(_) => {}
    }
}

/// The last word of a food's name, or the word after a closing adjective, in singular or plural.
fn inflect_item(setting: &Setting<'_>, item: &Item, known: &Known<'_>, several: bool, splices: &mut Splices) {
    let words = item.span.of(setting.text);
    // 'chipotle in adobo', 'chicken with giblets': the noun stands before.
    let words = [" in ", " with "]
        .iter()
        .find_map(|joint| words.split_once(joint))
        .map_or(words, |(noun, _)| noun);
    let Some(at) = words
        .char_indices()
        .rev()
        .take_while(|(_, c)| c.is_alphabetic())
        .last()
        .map(|(at, _)| at)
    else {
        return;
    };
    let start = item.span.start + at;
    let word = word_at(setting.text, start);
    let now = noun(word, known.food, several);
    if now != word {
        splices.add(setting.text, Span::new(start, start + word.len()), now);
    }
}

/// Whether a bracket is open before this place on its line.
fn in_brackets(text: &str, span: Span) -> bool {
    let before = text.get(..span.start).unwrap_or("");
    let line = before.rsplit('\n').next().unwrap_or(before);
    line.matches(['(', '[']).count() > line.matches([')', ']']).count()
}
