//! Lengths in another measure: '2 cm dice', '1-inch pieces', 'a 28 cm pot'.

use potwright_manuscript::Span;
use potwright_measure::{Exact, fractions};

use super::MeasuresWanted;
use super::scan::{Figure, figures, first_of_two, skip, word_at};
use super::style::Fractions;

/// Centimetres in an inch: exact by definition (NIST Handbook 44, Appendix C).
const CM_PER_INCH: f64 = 2.54;

/// What to write in the place of what, so that the lengths of a text are in the measures wanted.
pub(super) fn reset(text: &str, span: Span, wanted: MeasuresWanted, fractions: Fractions) -> Vec<(Span, String)> {
    let figures = figures(text, span);
    let mut out = Vec::new();
    for (index, figure) in figures.iter().enumerate() {
        let Some((end, unit)) = unit_after(text, *figure) else {
            continue;
        };
        if !turns(unit, wanted) {
            continue;
        }
        let noun = before_a_noun(text, end);
        let Some(now) = said(*figure, unit, fractions, noun) else {
            continue;
        };
        let first = first_of_two(text, &figures, index);
        let first_now = first.and_then(|first| said(first, unit, fractions, noun));
        if wanted == MeasuresWanted::Both {
            let range = first_now.map_or(String::new(), |first| format!("{}–", first.number));
            let place = Span::new(figure.span.start, end);
            out.push((
                place,
                format!(
                    "{} ({range}{}{})",
                    place.of(text),
                    now.number,
                    now.unit.replace('-', " ")
                ),
            ));
            continue;
        }
        let (start, spoken) = match (first, &first_now) {
            (Some(first), Some(now)) => (first.span.start, now.number.clone()),
            _ => (figure.span.start, now.number.clone()),
        };
        out.extend(article(text, span, start, &spoken));
        out.push((Span::new(figure.span.start, end), format!("{}{}", now.number, now.unit)));
        out.extend(first.zip(first_now).map(|(first, now)| (first.span, now.number)));
    }
    out
}

/// Whether a length in this unit is to be said in the other.
fn turns(unit: Unit, wanted: MeasuresWanted) -> bool {
    match wanted {
        MeasuresWanted::AsWritten => false,
        MeasuresWanted::Metric => unit == Unit::Inch,
        MeasuresWanted::Us => unit != Unit::Inch,
        MeasuresWanted::Both => true,
    }
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Unit {
    Millimetre,
    Centimetre,
    Inch,
}

struct Said {
    number: String,
    unit: &'static str,
}

/// The length in the other measure, as a ruler has it: inches in sixteenths below a quarter, eighths below a half,
/// quarters below three, halves below six; millimetres below one centimetre, half centimetres below five (common
/// practice, no source).
fn said(figure: Figure, unit: Unit, style: Fractions, before_a_noun: bool) -> Option<Said> {
    let value = figure.value.to_f64();
    if unit == Unit::Inch {
        let cm = value * CM_PER_INCH;
        let (number, unit) = match cm {
            cm if cm < 0.95 => (Exact::nearest(cm * 10.0, 1)?, " mm"),
            cm if cm < 5.0 => (Exact::nearest(cm, 2)?, " cm"),
            cm => (Exact::nearest(cm, 1)?, " cm"),
        };
        return Some(Said {
            number: fractions::decimal(number, 1),
            unit,
        });
    }
    let cm = if unit == Unit::Millimetre { value / 10.0 } else { value };
    let inches = cm / CM_PER_INCH;
    let parts = match inches {
        inches if inches < 0.25 => 16,
        inches if inches < 0.5 => 8,
        inches if inches < 3.0 => 4,
        inches if inches < 6.0 => 2,
        _ => 1,
    };
    let number = Exact::nearest(inches, parts).filter(|number| number.is_positive())?;
    let unit = if before_a_noun {
        "-inch"
    } else if number <= Exact::ONE {
        " inch"
    } else {
        " inches"
    };
    Some(Said {
        number: style.number(number),
        unit,
    })
}

/// The article before a number that has changed, where it must change too: 'a 28 cm pot', 'an 11-inch pot'.
fn article(text: &str, span: Span, start: usize, number: &str) -> Option<(Span, String)> {
    let before = Span::new(span.start, start).of(text);
    let word = before.strip_suffix(' ')?.rsplit(|c: char| !c.is_alphabetic()).next()?;
    let vowel = number.starts_with('8') || matches!(number, "11" | "18");
    let now = match (word, vowel) {
        ("a", true) => "an",
        ("an", false) => "a",
        _ => return None,
    };
    Some((Span::new(start - 1 - word.len(), start - 1), now.to_owned()))
}

/// The unit after a number and where it ends.
fn unit_after(text: &str, figure: Figure) -> Option<(usize, Unit)> {
    let rest = text.get(figure.span.end..)?;
    if rest.starts_with(['"', '″']) {
        return Some((figure.span.end + rest.chars().next()?.len_utf8(), Unit::Inch));
    }
    let at = skip(text, figure.span.end, &[' ', '-', '‑', '–']);
    let word = word_at(text, at);
    let unit = match word.to_lowercase().as_str() {
        "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => Unit::Millimetre,
        "cm" | "cms" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => Unit::Centimetre,
        "inch" | "inches" => Unit::Inch,
        _ => return None,
    };
    Some((at + word.len(), unit))
}

/// 'dice', 'pieces', 'pot' follow: the length tells what kind, and takes a hyphen.
fn before_a_noun(text: &str, end: usize) -> bool {
    const NOT_NOUNS: [&str; 16] = [
        "deep", "thick", "wide", "long", "across", "apart", "high", "in", "of", "from", "above", "below", "by", "or",
        "on", "and",
    ];
    let word = word_at(text, skip(text, end, &[' '])).to_lowercase();
    !word.is_empty() && !NOT_NOUNS.contains(&word.as_str())
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::splice::Splices;

    /// 2 cm = 0.787 in, 3 cm = 1.181, 5 cm = 1.969, 28 cm = 11.02, 3 mm = 0.118; ¼ in = 6.35 mm, 1 in = 2.54 cm,
    /// 1½ in = 3.81 cm, 2 in = 5.08 cm.
    #[test]
    fn lengths_both_ways() {
        use MeasuresWanted::{AsWritten, Both, Metric, Us};
        for (text, wanted, expected) in [
            ("cut into 2 cm dice", Us, "cut into ¾-inch dice"),
            ("cut into 2cm cubes", Us, "cut into ¾-inch cubes"),
            ("a round about 5 cm deep", Us, "a round about 2 inches deep"),
            ("a 28 cm pot", Us, "an 11-inch pot"),
            ("slices 3 mm thick", Us, "slices ⅛ inch thick"),
            ("2-3 cm pieces", Us, "¾-1¼-inch pieces"),
            ("¼-inch slices", Metric, "6 mm slices"),
            ("1½-inch chunks", Metric, "4 cm chunks"),
            ("a 2\" piece", Metric, "a 5 cm piece"),
            ("cut into 2 cm dice", Both, "cut into 2 cm (¾ inch) dice"),
            ("cut into 2 cm dice", Metric, "cut into 2 cm dice"),
            ("cut into 2 cm dice", AsWritten, "cut into 2 cm dice"),
            ("cut 4 in half", Metric, "cut 4 in half"),
        ] {
            let span = Span::new(0, text.len());
            let mut splices = Splices::default();
            for (place, now) in reset(text, span, wanted, Fractions::Letters) {
                assert!(splices.add(text, place, now), "{text}");
            }
            assert_eq!(splices.render(text, span), expected, "{text}");
        }
    }
}
