//! Two oven temperatures at once.

use potwright_manuscript::{Operation, Span, Verb};
use potwright_pot::{Aim, Place};

use crate::cooked::{Cooked, lower, on_the_heat, says};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "C08",
    name: "two oven temperatures at once",
    finds: "An oven heated to one temperature and used at another with no word of changing it, and two things in it at the same time at different temperatures.",
    why: "One oven has one temperature: the reader has to guess which of the two was tested.",
    fires: "Braised beef\n\n800 g beef, diced\n500 ml stock\n\nHeat the oven to 160°C. Put the beef and stock in a casserole, bring to the boil, cover and cook in the oven at 200°C for 2 hours until tender.\n",
    silent: "Braised beef\n\n800 g beef, diced\n500 ml stock\n\nHeat the oven to 200°C. Put the beef and stock in a casserole and bring to the boil. Turn the oven down to 160°C, cover and cook in the oven for 2 hours until tender.\n",
    instead: "Print the tested temperature in both places, or say when the oven is turned up or down.",
    source: "common practice of copy editing, no source",
    check,
};

/// Marks of a dial are 10 K apart; a fan's setting stands beside the ordinary one and is read apart.
const SAME_K: f64 = 8.0;

/// Words that change a setting, in the clause that names the oven or its temperature.
const CHANGES: &[&str] = &[
    "reduc*", "lower*", "down", "turn*", "up", "rais*", "increas*", "drop*", "chang*", "decreas*", "cool*", "fall*",
    "adjust*", "reset*", "another", "crank*", "slacken", "ease", "dial", "switch*", "knock*", "bring",
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let in_oven: Vec<Cooked<'_>> = on_the_heat(manuscript)
        .into_iter()
        .filter(|cooked| cooked.stretch.place == Place::Oven)
        .collect();
    let mut queries: Vec<Query> = heated_otherwise(manuscript, &in_oven).into_iter().collect();
    queries.extend(side_by_side(&in_oven));
    if queries.is_empty() {
        queries.extend(told_together(manuscript));
    }
    queries
}

/// The operation that heats the oven and does nothing else.
fn lighting<'a>(manuscript: &Manuscript<'a>) -> Option<(usize, &'a Operation)> {
    let mut operations = manuscript.recipe.operations.iter().enumerate();
    operations.find(|(_, operation)| {
        let words = operation.span.of(manuscript.text).to_lowercase();
        words.contains("oven")
            && !words.contains("dutch oven")
            && matches!(operation.verb, Verb::Heat | Verb::Bake)
            && operation.minutes.is_none()
            && operation.cue.is_none()
            && operation.foods.is_empty()
    })
}

/// A temperature as it stands in the text.
struct Degrees {
    celsius: f64,
    span: Span,
}

/// Words that put a second thing into the same oven, and those that tell of an oven.
const TOGETHER: &[&str] = &[
    "meanwhile",
    "same",
    "below",
    "underneath",
    "beneath",
    "beside",
    "alongside",
    "while",
    "together",
    "meantime",
    "above",
];
const IN_OVEN: &[&str] = &["oven", "shelf", "rack", "roast*", "bake", "tray", "sheet"];
/// What ovens are set to, °C.
const OVEN_C: std::ops::RangeInclusive<f64> = 90.0..=290.0;

/// A sentence that has a second thing in the oven at another heat: 'meanwhile roast the carrots at 220 °C'.
fn told_together(manuscript: &Manuscript<'_>) -> Option<Query> {
    let mut before: Option<Degrees> = None;
    let steps = manuscript.recipe.steps.iter().map(|step| step.words.span);
    for sentence in steps.flat_map(|span| sentences(manuscript.text, span)) {
        let words = sentence.of(manuscript.text).to_lowercase();
        if !says(&words, IN_OVEN) {
            continue;
        }
        let Some(here) = degrees(manuscript.text, sentence) else {
            continue;
        };
        let clash = before
            .as_ref()
            .filter(|before| says(&words, TOGETHER) && (before.celsius - here.celsius).abs() >= SAME_K);
        if let Some(before) = clash.filter(|_| !changed(&words)) {
            return Some(Query {
                code: RULE.code.into(),
                weight: Weight::WorthALook,
                span: here.span,
                asks: "At which temperature do both stand in the oven?".into(),
                because: format!(
                    "{:.0} °C is said before, {:.0} °C here, and nothing changes it",
                    before.celsius, here.celsius
                ),
                try_words: None,
                see: vec![(before.span, "the other one".into())],
            });
        }
        before = Some(here);
    }
    None
}

/// The sentences of a stretch, parted at stops, semicolons and line ends.
fn sentences(text: &str, span: Span) -> Vec<Span> {
    let mut found = Vec::new();
    let mut start = span.start;
    for (at, _) in span.of(text).match_indices(['.', ';', '\n']) {
        found.push(Span::new(start, span.start + at));
        start = span.start + at + 1;
    }
    found.push(Span::new(start, span.end));
    found
}

/// The first oven temperature of a sentence: two or three figures, then °C, °F, C, F or 'degrees'.
fn degrees(text: &str, sentence: Span) -> Option<Degrees> {
    let words = sentence.of(text);
    words
        .char_indices()
        .filter(|(_, c)| c.is_ascii_digit())
        .find_map(|(at, _)| {
            let inside = words.get(..at)?.ends_with(|c: char| c.is_ascii_digit() || c == '.');
            let rest = words.get(at..)?;
            let figures = rest.find(|c: char| !c.is_ascii_digit()).unwrap_or(rest.len());
            let number: f64 = rest.get(..figures)?.parse().ok()?;
            let unit = rest.get(figures..)?.trim_start();
            let marked = unit.starts_with(['°', 'º']) || unit.starts_with("degrees");
            let letter = unit
                .trim_start_matches(['°', 'º', ' '])
                .trim_start_matches("degrees")
                .trim_start();
            let ends = |c: char| letter.starts_with(c) && !letter.chars().nth(1).is_some_and(char::is_alphanumeric);
            let celsius = match (ends('F'), ends('C') || marked) {
                (true, _) => (number - 32.0) / 1.8,
                (false, true) => number,
                (false, false) => return None,
            };
            let span = Span::new(sentence.start + at, sentence.start + at + figures);
            (!inside && OVEN_C.contains(&celsius)).then_some(Degrees { celsius, span })
        })
}

/// The first dish in is baked at another temperature than the oven was heated to.
fn heated_otherwise(manuscript: &Manuscript<'_>, in_oven: &[Cooked<'_>]) -> Option<Query> {
    let first = in_oven.first()?;
    let (at, lit) = lighting(manuscript)?;
    let heated_c = lit.temperature?.temperature().celsius();
    let stated = first.operation.temperature.filter(|_| at < first.index)?;
    let baked_c = stated.temperature().celsius();
    let between = lower(manuscript.text, lit.span.end, first.operation.span.end);
    let fan = lit.fan.or(first.operation.fan).map(|fan| fan.temperature().celsius());
    let is_fan = fan.is_some_and(|fan| (fan - baked_c).abs() < SAME_K || (fan - heated_c).abs() < SAME_K);
    if (heated_c - baked_c).abs() < SAME_K || is_fan || changed(&between) {
        return None;
    }
    Some(Query {
        code: RULE.code.into(),
        weight: Weight::WorthALook,
        span: first.operation.span,
        asks: "Which of the two temperatures was the oven at?".into(),
        because: format!("heated to {heated_c:.0} °C, used at {baked_c:.0} °C, and nothing between changes it"),
        try_words: None,
        see: vec![(lit.span, "heated here".into())],
    })
}

/// Whether a clause turns the oven up or down.
fn changed(between: &str) -> bool {
    between.split(['.', ';', ',', '\n']).any(|clause| {
        let of_the_oven = says(clause, &["oven", "temperature", "thermostat", "gas"]) || clause.contains('°');
        of_the_oven && says(clause, CHANGES)
    })
}

/// Two things in the oven during the same minutes.
fn side_by_side(in_oven: &[Cooked<'_>]) -> Vec<Query> {
    let mut queries = Vec::new();
    for (at, later) in in_oven.iter().enumerate() {
        let clash = in_oven.iter().take(at).find(|earlier| {
            let together = later.start_min < earlier.end_min - 1.0 && earlier.start_min < later.end_min - 1.0;
            together && earlier.vessel != later.vessel && apart(earlier.stretch.aim, later.stretch.aim).is_some()
        });
        let Some((earlier, (one_c, other_c))) =
            clash.and_then(|earlier| Some((earlier, apart(earlier.stretch.aim, later.stretch.aim)?)))
        else {
            continue;
        };
        queries.push(Query {
            code: RULE.code.into(),
            weight: Weight::WorthALook,
            span: later.operation.span,
            asks: "At which temperature do both stand in the oven?".into(),
            because: format!(
                "at minute {:.0} one thing bakes at {one_c:.0} °C and another at {other_c:.0} °C",
                later.start_min.max(earlier.start_min)
            ),
            try_words: None,
            see: vec![(earlier.operation.span, "the other one".into())],
        });
    }
    queries
}

/// The two settings, when they are not the same.
fn apart(one: Aim, other: Aim) -> Option<(f64, f64)> {
    match (one, other) {
        (Aim::Oven(one), Aim::Oven(other)) => {
            let (one, other) = (one.celsius(), other.celsius());
            ((one - other).abs() >= SAME_K).then_some((one, other))
        }
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// 425 °F are (425 − 32) ÷ 1.8 = 218 °C.
    #[test]
    fn degrees_in_a_sentence() {
        let of = |words: &str| degrees(words, Span::new(0, words.len())).map(|found| found.celsius.round());
        assert_eq!(of("heat the oven to 425°F"), Some(218.0));
        assert_eq!(of("for 40 minutes at 120 C on the shelf below"), Some(120.0));
        assert_eq!(of("until 74°C in the middle"), None);
        assert_eq!(of("for 200 minutes"), None);
    }
}
