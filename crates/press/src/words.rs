//! Small phrases that several pages share.

use potwright_larder::Allergen;
use potwright_reckon::{BodyWord, Figure};

/// An allergen as a label names it.
pub(crate) const fn allergen(allergen: Allergen) -> &'static str {
    match allergen {
        Allergen::Wheat => "wheat",
        Allergen::OtherGluten => "barley, rye or oats",
        Allergen::Crustaceans => "crustaceans",
        Allergen::Eggs => "eggs",
        Allergen::Fish => "fish",
        Allergen::Peanuts => "peanuts",
        Allergen::Soybeans => "soybeans",
        Allergen::Milk => "milk",
        Allergen::TreeNuts => "tree nuts",
        Allergen::Sesame => "sesame",
        Allergen::Celery => "celery",
        Allergen::Mustard => "mustard",
        Allergen::Lupin => "lupin",
        Allergen::Molluscs => "molluscs",
        Allergen::Sulphites => "sulphites",
    }
}

/// A body word.
pub(crate) const fn body(word: BodyWord) -> &'static str {
    match word {
        BodyWord::Thin => "thin",
        BodyWord::LightCoat => "light coat",
        BodyWord::CoatsTheSpoon => "coats the spoon",
        BodyWord::HoldsALine => "holds a line",
        BodyWord::Stands => "stands",
    }
}

/// '45 min', '3 h 20 min' from minutes, rounded to five above half an hour.
pub(crate) fn minutes(minutes: f64) -> String {
    if !minutes.is_finite() || minutes < 0.0 {
        return "not computed".into();
    }
    let step = if minutes > 30.0 { 5.0 } else { 1.0 };
    let whole = ((minutes / step).round() * step) as u64;
    let (hours, rest) = (whole / 60, whole % 60);
    match (hours, rest) {
        (0, rest) => format!("{rest} min"),
        (hours, _) if hours >= 10 => format!("{} h", (minutes / 60.0).round() as u64),
        (hours, 0) => format!("{hours} h"),
        (hours, rest) => format!("{hours} h {rest:02} min"),
    }
}

/// The number of a line, counted from one, and its words.
pub(crate) fn line_of(text: &str, start: usize) -> usize {
    text.as_bytes()
        .iter()
        .take(start)
        .filter(|byte| **byte == b'\n')
        .count()
        + 1
}

/// The range behind a figure, '(2.3 to 3.0)', in the digits of the figure; empty when there is none to speak of.
pub(crate) fn spread(figure: &Figure) -> String {
    let whole = figure.display();
    whole
        .strip_prefix(&figure.display_value())
        .unwrap_or("")
        .trim_start()
        .to_owned()
}

/// A title as it is set: one typed in capitals throughout is set in small letters with a capital first.
pub(crate) fn title(typed: &str) -> String {
    let shouted = typed.chars().any(char::is_alphabetic) && !typed.chars().any(char::is_lowercase);
    if !shouted {
        return typed.to_owned();
    }
    let mut letters = typed.chars();
    let first = letters.next().map(String::from).unwrap_or_default();
    first + &letters.as_str().to_lowercase()
}

/// '0:45', '26:30': hours and minutes from the start.
pub(crate) fn clock(minutes: f64) -> String {
    if !minutes.is_finite() || minutes < 0.0 {
        return String::new();
    }
    let whole = minutes.round() as u64;
    format!("{}:{:02}", whole / 60, whole % 60)
}
