//! What each unit holds or weighs: exact factors, each derived from the definition it follows from.
//!
//! | defined | as | source |
//! | --- | --- | --- |
//! | inch | 25.4 mm | international yard and pound agreement of 1959; NIST Handbook 44, App. C |
//! | pound | 453.59237 g | the same |
//! | US liquid gallon | 231 in³ | NIST Handbook 44, App. C |
//! | US bushel | 2150.42 in³ | NIST Handbook 44, App. C |
//! | imperial gallon | 4.54609 l | UK weights and measures definition |
//! | label cup, tablespoon, teaspoon, fluid ounce | 240, 15, 5, 30 ml | 21 CFR 101.9(b)(5)(viii) |
//! | label ounce | 28 g | 21 CFR 101.9(b)(5)(viii) |
//! | metric cup, tablespoon, teaspoon, dessertspoon | 250, 15, 5, 10 ml | metric kitchen practice |
//! | Australian tablespoon | 20 ml | metric kitchen practice |
//!
//! The rest are whole parts and multiples of these (4 quarts, 8 pints, 16 cups, 128 US or 160 imperial fluid ounces
//! to the gallon; 256 tablespoons, 768 teaspoons to the US gallon; 4 pecks to the bushel; 2 imperial gallons to the
//! imperial peck; 16 ounces, 7000 grains to the pound). On a metric or Australian page pint, quart, gallon, gill
//! and fluid ounce are the imperial ones; on a label, what the regulation does not name is US customary (both
//! common practice, no source).

use crate::{Dimension, Exact, Measures, Unit};

/// `above / below` US liquid gallons in millilitres: 231 cubic inches of 2.54³ ml.
fn us_gallons(above: i128, below: i128) -> Option<Exact> {
    us_cubic_inches(231 * above, below)
}

/// `above / below` cubic inches in millilitres, the inch being 2.54 cm.
fn us_cubic_inches(above: i128, below: i128) -> Option<Exact> {
    Exact::wide(above * 254 * 254 * 254, below * 100 * 100 * 100)
}

/// `above / below` imperial gallons of 4546.09 ml in millilitres.
fn imperial_gallons(above: i128, below: i128) -> Option<Exact> {
    Exact::wide(454_609 * above, 100 * below)
}

/// `above / below` pounds of 453.59237 g in grams.
fn pounds(above: i128, below: i128) -> Option<Exact> {
    Exact::wide(45_359_237 * above, 100_000 * below)
}

/// `above / below` gallons of the market.
fn gallons(measures: Measures, above: i128, below: i128) -> Option<Exact> {
    match measures {
        Measures::Us | Measures::UsLabel => us_gallons(above, below),
        Measures::Metric | Measures::Imperial | Measures::Australian => imperial_gallons(above, below),
    }
}

fn teaspoon(measures: Measures) -> Option<Exact> {
    match measures {
        Measures::Us => us_gallons(1, 768),
        _ => Some(Exact::whole(5)),
    }
}

fn tablespoon(measures: Measures) -> Option<Exact> {
    match measures {
        Measures::Us => us_gallons(1, 256),
        Measures::Australian => Some(Exact::whole(20)),
        _ => Some(Exact::whole(15)),
    }
}

fn fluid_ounce(measures: Measures) -> Option<Exact> {
    match measures {
        Measures::Us => us_gallons(1, 128),
        Measures::UsLabel => Some(Exact::whole(30)),
        _ => imperial_gallons(1, 160),
    }
}

fn cup(measures: Measures) -> Option<Exact> {
    match measures {
        Measures::Us => us_gallons(1, 16),
        Measures::UsLabel => Some(Exact::whole(240)),
        Measures::Imperial => imperial_gallons(1, 16),
        Measures::Metric | Measures::Australian => Some(Exact::whole(250)),
    }
}

fn peck(measures: Measures) -> Option<Exact> {
    match measures {
        // A quarter of the bushel of 2150.42 cubic inches.
        Measures::Us | Measures::UsLabel => us_cubic_inches(215_042, 4 * 100),
        _ => imperial_gallons(2, 1),
    }
}

/// The loose measures: common practice, no source; see [`spread`].
fn loose(unit: Unit, measures: Measures) -> Option<Exact> {
    let (of, above, below) = match unit {
        Unit::Drop => (Some(Exact::ONE), 1, 20),
        Unit::Pinch => (teaspoon(measures), 1, 16),
        Unit::Dash => (teaspoon(measures), 1, 8),
        Unit::Splash | Unit::Spoonful => (tablespoon(measures), 1, 1),
        Unit::Glug => (tablespoon(measures), 2, 1),
        // Four saltspoonfuls to a teaspoonful, half a gill to a wineglass: the tables of measures in household books of the
        // 1880s and 1890s, from memory.
        Unit::Saltspoon => (teaspoon(measures), 1, 4),
        Unit::Wineglass => (gallons(measures, 1, 1), 1, 64),
        // A quarter of a pint, which is half a US cup.
        Unit::Teacup => (gallons(measures, 1, 1), 1, 32),
        Unit::Ladle => (Some(Exact::ONE), 120, 1),
        Unit::Glass => (Some(Exact::ONE), 150, 1),
        _ => return None,
    };
    of?.checked_mul(Exact::ratio(above, below)?)
}

/// What one `unit` holds, in millilitres; `None` unless it is a volume.
pub(crate) fn millilitres(unit: Unit, measures: Measures) -> Option<Exact> {
    match unit {
        Unit::Teaspoon => teaspoon(measures),
        Unit::Dessertspoon => teaspoon(measures)?.checked_mul(Exact::whole(2)),
        Unit::Tablespoon => tablespoon(measures),
        Unit::FluidOunce => fluid_ounce(measures),
        Unit::Gill => gallons(measures, 1, 32),
        Unit::Cup => cup(measures),
        Unit::Pint => gallons(measures, 1, 8),
        Unit::Quart => gallons(measures, 1, 4),
        Unit::Gallon => gallons(measures, 1, 1),
        Unit::Peck => peck(measures),
        Unit::Millilitre => Some(Exact::ONE),
        Unit::Centilitre => Some(Exact::whole(10)),
        Unit::Decilitre => Some(Exact::whole(100)),
        Unit::Litre => Some(Exact::whole(1000)),
        other => loose(other, measures),
    }
}

/// What one `unit` weighs, in grams; `None` unless it is a mass.
pub(crate) fn grams(unit: Unit, measures: Measures) -> Option<Exact> {
    match unit {
        Unit::Grain => pounds(1, 7000),
        Unit::Ounce if measures == Measures::UsLabel => Some(Exact::whole(28)),
        Unit::Ounce => pounds(1, 16),
        Unit::Pound => pounds(1, 1),
        Unit::Gram => Some(Exact::ONE),
        Unit::Kilogram => Some(Exact::whole(1000)),
        _ => None,
    }
}

/// How far a loose measure may be off, as a factor either way (common practice, no source): fingers, shakes and
/// pours ×/÷2; vessels and drops, whose sizes differ from house to house, ×/÷1.5.
pub(crate) const fn spread(unit: Unit) -> f64 {
    match unit {
        Unit::Pinch | Unit::Dash | Unit::Splash | Unit::Glug | Unit::Spoonful => 2.0,
        Unit::Drop | Unit::Saltspoon | Unit::Wineglass | Unit::Teacup | Unit::Ladle | Unit::Glass => 1.5,
        _ => 1.0,
    }
}

/// What a unit measures.
pub(crate) const fn dimension(unit: Unit) -> Dimension {
    match unit {
        Unit::Saltspoon
        | Unit::Teaspoon
        | Unit::Dessertspoon
        | Unit::Tablespoon
        | Unit::FluidOunce
        | Unit::Gill
        | Unit::Wineglass
        | Unit::Teacup
        | Unit::Cup
        | Unit::Pint
        | Unit::Quart
        | Unit::Gallon
        | Unit::Peck
        | Unit::Millilitre
        | Unit::Centilitre
        | Unit::Decilitre
        | Unit::Litre
        | Unit::Drop
        | Unit::Dash
        | Unit::Pinch
        | Unit::Glass
        | Unit::Glug
        | Unit::Ladle
        | Unit::Splash
        | Unit::Spoonful => Dimension::Volume,
        Unit::Grain | Unit::Ounce | Unit::Pound | Unit::Gram | Unit::Kilogram => Dimension::Mass,
        _ => Dimension::Piece,
    }
}
