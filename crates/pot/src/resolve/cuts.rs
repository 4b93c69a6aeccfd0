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
        let flat = row.is_some_and(|row| row.text("shape") == "slab") || has(words, "thick");
        let shape = if flat {
            Shape::Slab { thickness_mm: mm }
        } else {
            Shape::Sphere { diameter_mm: mm }
        };
        // A length is not the least dimension of something thin.
        let long = has(words, "lengths") || has(words, "length") || has(words, "long");
        let kept = if long && least_mm(own) < mm { own } else { shape };
        return (kept, Spread::within_factor(1.0, WRITTEN_SIZE));
    }
    let Some(row) = row else {
        return (own, Spread::within_factor(1.0, UNSAID_SIZE));
    };
    let mm = row.number("mm").unwrap_or(20.0);
    let cut = match row.text("shape") {
        "slab" => Shape::Slab { thickness_mm: mm },
        _ => Shape::Sphere { diameter_mm: mm },
    };
    // A cut does not make a thing larger than it is.
    let most = whole_mm(food).map_or(least_mm(own), |mm| OF_THE_WHOLE * mm);
    let shape = match cut {
        _ if mm <= most => cut,
        _ if least_mm(own) >= most => own,
        Shape::Slab { .. } => Shape::Slab { thickness_mm: most },
        _ => Shape::Sphere { diameter_mm: most },
    };
    (shape, Spread::within_factor(1.0, row.factor("spread")))
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

/// The least dimension in millimetres.
fn least_mm(shape: Shape) -> f64 {
    match shape {
        Shape::Slab { thickness_mm } => thickness_mm,
        Shape::Cylinder { diameter_mm } | Shape::Sphere { diameter_mm } => diameter_mm,
    }
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
