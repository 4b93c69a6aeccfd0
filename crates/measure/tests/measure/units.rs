//! Factors against published values.

use potwright_measure::{Amount, Dimension, Exact, Measures, Unit, fractions};

#[track_caller]
fn exact(text: &str) -> Exact {
    text.parse().unwrap()
}

/// NIST Handbook 44, App. C (US; the tablespoon and the teaspoon are the printed gallon, 3785.411784, over 256 and
/// 768); UK weights and measures definition (imperial); 21 CFR 101.9(b)(5)(viii) (label); metric kitchen practice.
#[test]
fn volumes_are_the_published_ones() {
    let rows = [
        (Measures::Us, Unit::Gallon, "3785.411784"),
        (Measures::Us, Unit::Quart, "946.352946"),
        (Measures::Us, Unit::Pint, "473.176473"),
        (Measures::Us, Unit::Cup, "236.5882365"),
        (Measures::Us, Unit::Gill, "118.29411825"),
        (Measures::Us, Unit::FluidOunce, "29.5735295625"),
        (Measures::Us, Unit::Tablespoon, "14.78676478125"),
        (Measures::Us, Unit::Teaspoon, "4.92892159375"),
        (Measures::Us, Unit::Peck, "8809.76754172"),
        (Measures::Imperial, Unit::Gallon, "4546.09"),
        (Measures::Imperial, Unit::Quart, "1136.5225"),
        (Measures::Imperial, Unit::Pint, "568.26125"),
        (Measures::Imperial, Unit::Cup, "284.130625"),
        (Measures::Imperial, Unit::FluidOunce, "28.4130625"),
        (Measures::UsLabel, Unit::Cup, "240"),
        (Measures::UsLabel, Unit::Tablespoon, "15"),
        (Measures::UsLabel, Unit::Teaspoon, "5"),
        (Measures::UsLabel, Unit::FluidOunce, "30"),
        (Measures::Metric, Unit::Cup, "250"),
        (Measures::Metric, Unit::Tablespoon, "15"),
        (Measures::Metric, Unit::Teaspoon, "5"),
        (Measures::Metric, Unit::Dessertspoon, "10"),
        (Measures::Australian, Unit::Tablespoon, "20"),
        (Measures::Australian, Unit::Cup, "250"),
    ];
    for (measures, unit, millilitres) in rows {
        assert_eq!(unit.volume(measures), Some(exact(millilitres)), "{measures:?} {unit:?}");
    }
}

/// International yard and pound agreement of 1959, as in NIST Handbook 44, App. C; the label ounce by 21 CFR
/// 101.9(b)(5)(viii).
#[test]
fn masses_are_the_published_ones() {
    let rows = [
        (Measures::Us, Unit::Ounce, "28.349523125"),
        (Measures::Us, Unit::Pound, "453.59237"),
        (Measures::Imperial, Unit::Pound, "453.59237"),
        (Measures::Us, Unit::Grain, "0.06479891"),
        (Measures::UsLabel, Unit::Ounce, "28"),
    ];
    for (measures, unit, grams) in rows {
        assert_eq!(unit.mass(measures), Some(exact(grams)), "{measures:?} {unit:?}");
    }
    // A stick of butter is a quarter of a pound: 113.398 g to three places.
    let stick = Unit::Pound
        .mass(Measures::Us)
        .unwrap()
        .checked_div(Exact::whole(4))
        .unwrap();
    assert_eq!(fractions::decimal(stick, 3), "113.398");
}

/// Dash ⅛ and pinch 1/16 teaspoon: common practice, no source (spoon sets).
#[test]
fn small_measures_are_parts_of_a_teaspoon() {
    for measures in [
        Measures::Us,
        Measures::Metric,
        Measures::Imperial,
        Measures::Australian,
        Measures::UsLabel,
    ] {
        let teaspoon = Unit::Teaspoon.volume(measures).unwrap();
        let times = |unit: Unit, n| unit.volume(measures).unwrap().checked_mul(Exact::whole(n)).unwrap();
        assert_eq!(times(Unit::Dash, 8), teaspoon);
        assert_eq!(times(Unit::Pinch, 16), teaspoon);
    }
}

#[test]
fn every_unit_has_the_factor_of_its_dimension_and_no_other() {
    for unit in Unit::ALL {
        for measures in [
            Measures::Us,
            Measures::Metric,
            Measures::Imperial,
            Measures::Australian,
            Measures::UsLabel,
        ] {
            let (volume, mass) = (unit.volume(measures), unit.mass(measures));
            assert_eq!(volume.is_some(), unit.dimension() == Dimension::Volume, "{unit:?}");
            assert_eq!(mass.is_some(), unit.dimension() == Dimension::Mass, "{unit:?}");
            assert!(volume.or(mass).is_none_or(Exact::is_positive), "{unit:?}");
        }
        assert!(unit.spread() == 1.0 || unit.spread() >= 1.5, "{unit:?}");
    }
}

#[test]
fn all_units_stand_at_their_own_place() {
    for (place, unit) in Unit::ALL.into_iter().enumerate() {
        assert_eq!(unit as usize, place, "{unit:?}");
        // The stored form of a unit is its name, so the table of names cannot slip against the enumeration.
        let stored = serde_json::to_value(unit).unwrap();
        assert_eq!(stored.as_str().unwrap().replace('_', " "), unit.name());
    }
}

#[test]
fn spellings_of_a_working_cook() {
    let rows = [
        ("tbs.", Unit::Tablespoon),
        ("Tbsp", Unit::Tablespoon),
        ("tablespoonful", Unit::Tablespoon),
        ("T.", Unit::Tablespoon),
        ("t.", Unit::Teaspoon),
        ("c.", Unit::Cup),
        ("C", Unit::Cup),
        ("pt", Unit::Pint),
        ("lbs.", Unit::Pound),
        ("tins", Unit::Can),
        ("kilo", Unit::Kilogram),
        ("liters", Unit::Litre),
        ("gramme", Unit::Gram),
        ("sticks", Unit::Stick),
        ("splash", Unit::Splash),
        ("heads", Unit::Head),
        ("leaves", Unit::Leaf),
        ("pkg.", Unit::Packet),
    ];
    for (text, unit) in rows {
        assert_eq!(Unit::from_spelling(text), Some(unit), "{text}");
    }
}

#[test]
fn units_after_a_number() {
    assert_eq!(Unit::Cup.written(exact("1/2")), "cup");
    assert_eq!(Unit::Cup.written(exact("1")), "cup");
    assert_eq!(Unit::Cup.written(exact("1 1/2")), "cups");
    assert_eq!(Unit::Leaf.plural(), "leaves");
    assert_eq!(Unit::Kilogram.abbreviation(), "kg");
    assert_eq!(Unit::Clove.abbreviation(), "clove");
}

#[test]
fn amounts_scale_exactly_and_print_in_fractions() {
    let amount = Amount::range(exact("2/3"), exact("1")).unwrap();
    let twice = amount.checked_scale(Exact::whole(2)).unwrap();
    assert_eq!(twice.to_string(), "1⅓–2");
    assert_eq!(Amount::single(exact("1.5")).about().to_string(), "about 1½");
    assert_eq!(Amount::range(exact("3"), exact("2")), None);
    assert_eq!(Amount::range(exact("-1"), exact("2")), None);
    assert_eq!(amount.checked_scale(exact("-1")), None);
    assert_eq!(Amount::range(exact("2"), exact("3")).unwrap().midpoint(), 2.5);
}
