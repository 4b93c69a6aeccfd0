//! Temperatures in the method, in another scale: '200C (180C fan), gas mark 6', '350°F', 'gas 4'.

use potwright_manuscript::Span;
use potwright_measure::{GasMark, HeatScale, Temperature, WrittenTemperature};

use super::MeasuresWanted;
use super::scan::{Figure, figures, first_of_two, skip, word_at};

/// A temperature in running text.
#[derive(Clone, Debug, PartialEq)]
struct Told {
    /// From its number to its scale, or from 'gas' to the number.
    span: Span,
    number: Span,
    written: WrittenTemperature,
    /// The lower end of a range.
    first: Option<Figure>,
}

/// What to write in the place of what, so that the temperatures of a text are in the measures wanted.
///
/// A statement that gives the wanted scale already is left as it is. Oven temperatures go to what dials say, those of
/// a thermometer below the boil to whole degrees.
pub(super) fn reset(text: &str, span: Span, wanted: MeasuresWanted) -> Vec<(Span, String)> {
    let scales: &[HeatScale] = match wanted {
        MeasuresWanted::AsWritten => return Vec::new(),
        MeasuresWanted::Metric => &[HeatScale::Celsius],
        MeasuresWanted::Us => &[HeatScale::Fahrenheit],
        MeasuresWanted::Both => &[HeatScale::Celsius, HeatScale::Fahrenheit],
    };
    let mut out = Vec::new();
    for statement in statements(text, told(text, span)) {
        let has = |scale: HeatScale| statement.iter().any(|told| told.written.scale() == scale);
        let missing: Vec<HeatScale> = scales.iter().copied().filter(|scale| !has(*scale)).collect();
        let only_gas = statement.iter().all(|told| told.written.scale() == HeatScale::Gas);
        if missing.is_empty() {
            continue;
        }
        let oven = in_oven(text, span, &statement);
        for told in &statement {
            if only_gas {
                let said: Vec<String> = missing
                    .iter()
                    .filter_map(|scale| degrees(told.written, *scale, oven))
                    .collect();
                if !said.is_empty() {
                    out.push((told.span, format!("{} ({})", told.span.of(text), said.join("/"))));
                }
            } else if told.written.scale() != HeatScale::Gas {
                out.extend(
                    missing
                        .first()
                        .and_then(|scale| in_its_style(text, told, *scale, oven, wanted))
                        .into_iter()
                        .flatten(),
                );
            }
        }
    }
    out
}

/// `400 °F`.
fn degrees(written: WrittenTemperature, scale: HeatScale, oven: bool) -> Option<String> {
    let unit = if scale == HeatScale::Celsius { "°C" } else { "°F" };
    Some(format!("{} {unit}", value(written, scale, oven)?))
}

/// The same in the other scale with the page's own signs; in both scales as '200C/400F'.
fn in_its_style(
    text: &str,
    told: &Told,
    scale: HeatScale,
    oven: bool,
    wanted: MeasuresWanted,
) -> Option<Vec<(Span, String)>> {
    let now = value(told.written, scale, oven)?.to_string();
    let signs = Span::new(told.number.end, told.span.end).of(text);
    let signs = other_letters(signs, scale);
    let first = match told.first {
        Some(figure) => Some((
            figure.span,
            value(same_scale(told.written, figure.value.to_f64()), scale, oven)?.to_string(),
        )),
        None => None,
    };
    if wanted == MeasuresWanted::Both {
        let range = first.map_or(String::new(), |(_, first)| format!("{first}–"));
        return Some(vec![(told.span, format!("{}/{range}{now}{signs}", told.span.of(text)))]);
    }
    let mut out = vec![(told.span, format!("{now}{signs}"))];
    out.extend(first);
    Some(out)
}

fn same_scale(like: WrittenTemperature, degrees: f64) -> WrittenTemperature {
    match like {
        WrittenTemperature::Fahrenheit(_) => WrittenTemperature::Fahrenheit(degrees),
        _ => WrittenTemperature::Celsius(degrees),
    }
}

/// 'C' as 'F', 'degrees Celsius' as 'degrees Fahrenheit'.
fn other_letters(signs: &str, scale: HeatScale) -> String {
    let start = signs.len()
        - signs
            .chars()
            .rev()
            .take_while(|c| c.is_alphabetic())
            .map(char::len_utf8)
            .sum::<usize>();
    let (before, word) = signs.split_at(start);
    let (letter, name) = if scale == HeatScale::Celsius {
        ("C", "Celsius")
    } else {
        ("F", "Fahrenheit")
    };
    let now = if word.len() > 1 { name } else { letter };
    let small = word.starts_with(char::is_lowercase);
    format!("{before}{}", if small { now.to_lowercase() } else { now.to_owned() })
}

/// Whole degrees in a scale.
fn value(written: WrittenTemperature, scale: HeatScale, oven: bool) -> Option<f64> {
    let temperature = written.temperature();
    let on_dial = oven || temperature >= Temperature::from_celsius(100.0);
    let said = if on_dial { written.on_dial(scale)? } else { written };
    let degrees = match scale {
        HeatScale::Celsius => said.temperature().celsius(),
        HeatScale::Fahrenheit => said.temperature().fahrenheit(),
        HeatScale::Gas => return None,
    };
    // The sum turns a negative nought into a plain one.
    Some(degrees.round() + 0.0)
}

/// Whether the sentence speaks of an oven.
fn in_oven(text: &str, span: Span, statement: &[Told]) -> bool {
    let at = statement.first().map_or(span.start, |told| told.span.start);
    let before = Span::new(span.start, at).of(text);
    let sentence = before.rsplit(['.', ';']).next().unwrap_or(before).to_lowercase();
    ["oven", "bake", "roast"].iter().any(|word| sentence.contains(word))
}

/// Temperatures that say the same thing one after another, in groups.
fn statements(text: &str, told: Vec<Told>) -> Vec<Vec<Told>> {
    let mut groups: Vec<Vec<Told>> = Vec::new();
    for one in told {
        let near = groups.last().and_then(|group| group.last()).is_some_and(|last| {
            let between = Span::new(last.span.end, one.span.start).of(text).to_lowercase();
            let mut words = between
                .split(|c: char| !c.is_alphabetic())
                .filter(|word| !word.is_empty());
            !between.contains('.')
                && words.all(|word| matches!(word, "fan" | "oven" | "or" | "convection" | "assisted"))
        });
        match groups.last_mut().filter(|_| near) {
            Some(group) => group.push(one),
            None => groups.push(vec![one]),
        }
    }
    groups
}

/// All temperatures of a text.
fn told(text: &str, span: Span) -> Vec<Told> {
    let figures = figures(text, span);
    let mut found: Vec<Told> = Vec::new();
    for (index, figure) in figures.iter().enumerate() {
        if let Some(gas) = gas_mark(text, span, *figure) {
            found.push(gas);
        } else if let Some((end, written)) = scale_after(text, *figure) {
            found.push(Told {
                span: Span::new(figure.span.start, end),
                number: figure.span,
                written,
                first: first_of_two(text, &figures, index),
            });
        }
    }
    found
}

/// 'gas 4', 'gas mark 4', 'Gas Mark ½'.
fn gas_mark(text: &str, span: Span, figure: Figure) -> Option<Told> {
    let before = Span::new(span.start, figure.span.start).of(text).trim_end();
    let lower = before.to_lowercase();
    let words = ["gas mark", "gas"].into_iter().find(|words| lower.ends_with(words))?;
    let start = span.start + before.len().checked_sub(words.len())?;
    let mark = GasMark::from_number(figure.value)?;
    let written = WrittenTemperature::Gas(mark);
    Some(Told {
        span: Span::new(start, figure.span.end),
        number: figure.span,
        written,
        first: None,
    })
}

/// The scale after a number, and where it ends.
fn scale_after(text: &str, figure: Figure) -> Option<(usize, WrittenTemperature)> {
    /// Below this a bare letter may be a cup or a figure's own.
    const BARE: f64 = 30.0;
    let mut at = skip(text, figure.span.end, &[' ']);
    let signed = skip(text, at, &['°', 'º', '˚']);
    let mut marked = signed > at;
    at = skip(text, signed, &[' ']);
    let mut word = word_at(text, at);
    if matches!(word.to_lowercase().as_str(), "degrees" | "degree" | "deg") {
        marked = true;
        at = skip(text, at + word.len(), &[' ', '.']);
        word = word_at(text, at);
    }
    let degrees = figure.value.to_f64();
    let written = match word.to_lowercase().as_str() {
        "celsius" | "centigrade" => WrittenTemperature::Celsius(degrees),
        "fahrenheit" => WrittenTemperature::Fahrenheit(degrees),
        "c" if marked || degrees >= BARE => WrittenTemperature::Celsius(degrees),
        "f" if marked || degrees >= BARE => WrittenTemperature::Fahrenheit(degrees),
        _ => return None,
    };
    Some((at + word.len(), written))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::splice::Splices;

    fn check(text: &str, wanted: MeasuresWanted, expected: &str) {
        let span = Span::new(0, text.len());
        let mut splices = Splices::default();
        for (place, now) in reset(text, span, wanted) {
            assert!(splices.add(text, place, now), "{text}");
        }
        assert_eq!(splices.render(text, span), expected, "{text}");
    }

    /// Pairs of gas mark, °F and °C as British ovens and books have them (gas 6 is 400 °F, 200 °C; gas 2 is 300 °F,
    /// 150 °C; gas 4 is 350 °F, 180 °C): common practice, no source.
    #[test]
    fn ovens_are_set_by_the_other_dial() {
        use MeasuresWanted::{AsWritten, Both, Metric, Us};
        for (text, wanted, expected) in [
            ("Heat the oven to 150C.", Us, "Heat the oven to 300F."),
            ("Heat the oven to 180°C.", Us, "Heat the oven to 350°F."),
            (
                "Heat the oven to 350 degrees F.",
                Metric,
                "Heat the oven to 180 degrees C.",
            ),
            (
                "Heat the oven to 200C (180C fan), gas mark 6.",
                Us,
                "Heat the oven to 400F (350F fan), gas mark 6.",
            ),
            (
                "Heat the oven to 200C (180C fan), gas mark 6.",
                Metric,
                "Heat the oven to 200C (180C fan), gas mark 6.",
            ),
            (
                "Heat the oven to 200C (180C fan).",
                Both,
                "Heat the oven to 200C/400F (180C/350F fan).",
            ),
            ("Bake at 180°C/350°F.", Us, "Bake at 180°C/350°F."),
            ("Bake at gas 4 for 2 hours.", Us, "Bake at gas 4 (350 °F) for 2 hours."),
            ("Bake at gas 4.", Both, "Bake at gas 4 (180 °C/350 °F)."),
            ("Bake at 180–200 °C.", Us, "Bake at 350–400 °F."),
            ("Bake at 180°C.", AsWritten, "Bake at 180°C."),
            ("Add 2 C flour and 4 C milk.", Us, "Add 2 C flour and 4 C milk."),
        ] {
            check(text, wanted, expected);
        }
    }

    /// By the definition °F = 1.8 °C + 32: 74 → 165.2; 165 → 73.9; 4 → 39.2.
    #[test]
    fn thermometers_are_read_to_the_degree() {
        check(
            "Cook until it reads 74 °C inside.",
            MeasuresWanted::Us,
            "Cook until it reads 165 °F inside.",
        );
        check(
            "until 165°F in the middle",
            MeasuresWanted::Metric,
            "until 74°C in the middle",
        );
        check("chill below 4°C", MeasuresWanted::Us, "chill below 39°F");
    }
}
