//! Pieces and their size, from the words of a cut.

use potwright_larder::{Food, Kind, Shape};
use potwright_manuscript::Size;
use potwright_measure::Spread;

use super::table;
use super::words::{has, longest, numbers};
use crate::Pieces;

/// Spread of a size that is written: cooks cut within a quarter of it (common practice, no source).
pub(super) const WRITTEN_SIZE: f64 = 1.25;

/// A cut piece is at most this share of a ball of the whole one's mass: half an onion, a length of carrot (common
/// practice, no source; ×/÷1.3).
const OF_THE_WHOLE: f64 = 0.6;

/// Spread of a size that is not said at all.
const UNSAID_SIZE: f64 = 1.5;

/// The shape and the relative spread of its least dimension.
pub(super) fn shape(food: &Food, words: &str, size: Option<&Size>) -> (Shape, Spread) {
    let own = food.behaviour.shape.unwrap_or_else(|| unknown_shape(food.kind));
    let written = written_size_mm(words).or(match size {
        Some(Size::Millimetres(low, high)) => Some(f64::midpoint(*low, *high)),
        _ => None,
    });
    let row = longest(&table::CUTS, words);
    // Cored and not cut: it goes in whole.
    if row.is_none()
        && ["cored", "whole"].iter().any(|said| has(words, said))
        && let Some(diameter_mm) = whole_mm(food)
    {
        return (Shape::Sphere { diameter_mm }, Spread::within_factor(1.0, WRITTEN_SIZE));
    }
    if let Some(mm) = written.filter(|mm| mm.is_finite() && *mm > 0.1 && *mm < 500.0) {
        let cut = match row.map(|row| row.text("shape")) {
            Some("bar") => "bar",
            Some("slab") => "slab",
            _ if has(words, "thick") => "slab",
            _ => "cube",
        };
        // A length is not the least dimension of something thin.
        let long = ["lengths", "length", "long"].iter().any(|word| has(words, word));
        let shape = match own {
            Shape::Cylinder { diameter_mm } if long => Shape::ShortCylinder {
                diameter_mm,
                length_mm: mm,
            },
            _ if long && own.least_mm() < mm => own,
            _ => cut_to(cut, mm),
        };
        return (shape, Spread::within_factor(1.0, WRITTEN_SIZE));
    }
    let Some(row) = row else {
        return (own, Spread::within_factor(1.0, UNSAID_SIZE));
    };
    let mm = row.number("mm").unwrap_or(20.0);
    // A cut does not make a thing larger than it is.
    let most = whole_mm(food).map_or(own.least_mm(), |mm| OF_THE_WHOLE * mm);
    let shape = if mm > most && own.least_mm() >= most {
        own
    } else {
        cut_to(row.text("shape"), mm.min(most))
    };
    (shape, Spread::within_factor(1.0, row.factor("spread")))
}

/// A bar is so many times as long as it is thick: matchsticks and batons (common practice, no source; ×/÷1.5).
const BAR_LENGTHS: f64 = 6.0;

/// What a cut by one of the table's shapes makes, of a least dimension in millimetres.
fn cut_to(shape: &str, mm: f64) -> Shape {
    match shape {
        "slab" => Shape::Slab { thickness_mm: mm },
        "cube" => Shape::cube(mm),
        "bar" => Shape::Brick {
            thickness_mm: mm,
            width_mm: mm,
            length_mm: BAR_LENGTHS * mm,
        },
        _ => Shape::Sphere { diameter_mm: mm },
    }
}

/// The shape of a food of which the larder gives none: seeds and leaves are thin, the rest a mouthful (common practice,
/// no source).
fn unknown_shape(kind: Kind) -> Shape {
    match kind {
        Kind::Spice => Shape::Sphere { diameter_mm: 3.0 },
        Kind::Herb | Kind::Leaf => Shape::Slab { thickness_mm: 1.0 },
        _ => Shape::Sphere { diameter_mm: 20.0 },
    }
}

/// Diameter of a ball of the mass of one whole piece, millimetres; none when no piece is on record.
fn whole_mm(food: &Food) -> Option<f64> {
    let one = food
        .weight_of(None, "", "")
        .or_else(|| food.weight_of(Some(potwright_measure::Unit::Stalk), "", ""))?;
    // A gram of food is about a millilitre: V = m, d = (6 V / π)^(1/3), in centimetres.
    let diameter_cm = libm::cbrt(6.0 * one.mass_g.mid / std::f64::consts::PI);
    (diameter_cm.is_finite() && diameter_cm > 0.0).then_some(diameter_cm * 10.0)
}

/// A size in centimetres, millimetres or inches in the words; of a range the middle.
pub(super) fn written_size_mm(words: &str) -> Option<f64> {
    let found: Vec<(f64, String)> = numbers(words);
    for (place, (number, unit)) in found.iter().enumerate() {
        let factor = match unit.as_str() {
            "cm" | "centimetre" | "centimetres" | "centimeter" | "centimeters" => 10.0,
            "mm" | "millimetre" | "millimetres" | "millimeter" | "millimeters" => 1.0,
            "inch" | "inches" | "in" if *number <= 6.0 => 25.4,
            _ => continue,
        };
        // '2 to 3 cm', '1 1/2 inch'.
        let before = place.checked_sub(1).and_then(|place| found.get(place));
        let low = match before {
            Some((low, word)) if word == "to" && low < number => Some(*low),
            Some((whole, fraction)) if *number < 1.0 && fraction.contains('/') => {
                return Some((whole + number) * factor);
            }
            _ => None,
        };
        return Some(low.map_or(*number, |low| f64::midpoint(low, *number)) * factor);
    }
    None
}

/// Pieces of a food; `None` for what disperses in the liquid.
pub(super) fn pieces(food: &Food, words: &str, size: Option<&Size>) -> Option<Pieces> {
    let ground = food.kind == Kind::Spice && has(words, "ground");
    if food.behaviour.disperses || ground {
        return None;
    }
    let (shape, size_spread) = shape(food, words, size);
    let behaviour = &food.behaviour;
    Some(Pieces {
        shape,
        size_spread,
        hazard: behaviour.hazard,
        softens: behaviour.softens,
        absorbs: behaviour.absorbs,
        sheds_water: behaviour.sheds_water,
        renders: behaviour.renders,
        falls_apart: behaviour.falls_apart,
    })
}
