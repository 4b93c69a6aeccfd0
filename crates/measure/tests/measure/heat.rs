//! Gas marks, scales side by side, words for ovens.

use potwright_measure::oven::oven_words;
use potwright_measure::{GasMark, HeatScale, Oven, OvenWord, Temperature, WrittenTemperature};

/// UK gas-mark convention (gas 1 is 275 °F, 25 °F a mark; common practice, no source): mark in quarters, °F, °C to
/// two places, °C set, °C set on a fan oven.
const MARKS: [(u8, f64, f64, f64, f64); 11] = [
    (1, 225.0, 107.22, 110.0, 90.0),
    (2, 250.0, 121.11, 120.0, 100.0),
    (4, 275.0, 135.00, 140.0, 120.0),
    (8, 300.0, 148.89, 150.0, 130.0),
    (12, 325.0, 162.78, 160.0, 140.0),
    (16, 350.0, 176.67, 180.0, 160.0),
    (20, 375.0, 190.56, 190.0, 170.0),
    (24, 400.0, 204.44, 200.0, 180.0),
    (28, 425.0, 218.33, 220.0, 200.0),
    (32, 450.0, 232.22, 230.0, 210.0),
    (36, 475.0, 246.11, 240.0, 220.0),
];

#[test]
fn gas_marks_are_the_convention() {
    for (quarters, fahrenheit, celsius, set, fan) in MARKS {
        let mark = GasMark { quarters };
        let gas = WrittenTemperature::Gas(mark);
        assert!((mark.temperature().celsius() - celsius).abs() <= 0.005, "{mark}");
        assert!((mark.temperature().fahrenheit() - fahrenheit).abs() < 1e-9, "{mark}");
        assert_eq!(gas.on_dial(HeatScale::Celsius), Some(WrittenTemperature::Celsius(set)));
        assert_eq!(
            gas.on_dial(HeatScale::Fahrenheit),
            Some(WrittenTemperature::Fahrenheit(fahrenheit))
        );
        let in_fahrenheit = WrittenTemperature::Fahrenheit(fahrenheit);
        assert_eq!(
            in_fahrenheit.on_dial(HeatScale::Celsius),
            Some(WrittenTemperature::Celsius(set))
        );
        assert_eq!(in_fahrenheit.on_dial(HeatScale::Gas), Some(gas));
        let in_celsius = WrittenTemperature::Celsius(set);
        assert_eq!(in_celsius.on_dial(HeatScale::Gas), Some(gas));
        assert_eq!(in_celsius.on_dial(HeatScale::Fahrenheit), Some(in_fahrenheit), "{set}");
        assert_eq!(Oven::Fan.setting(Temperature::from_celsius(set)).celsius(), fan);
        assert_eq!(Oven::Fan.conventional(Temperature::from_celsius(fan)).celsius(), set);
    }
}

#[test]
fn an_oven_has_no_mark_for_a_proving_drawer_or_a_pizza_oven() {
    assert_eq!(GasMark::nearest(Temperature::from_celsius(60.0)), None);
    assert_eq!(GasMark::nearest(Temperature::from_celsius(300.0)), None);
    assert_eq!(GasMark::nearest(Temperature::from_celsius(f64::NAN)), None);
}

/// F = 9/5 C + 32, exact.
#[test]
fn scales_meet_where_they_are_defined_to() {
    for (celsius, fahrenheit) in [(0.0, 32.0), (100.0, 212.0), (180.0, 356.0), (-40.0, -40.0)] {
        assert_eq!(Temperature::from_celsius(celsius).fahrenheit(), fahrenheit);
        assert_eq!(Temperature::from_fahrenheit(fahrenheit).celsius(), celsius);
    }
}

#[test]
fn scales_side_by_side_in_either_order() {
    use HeatScale::{Celsius, Fahrenheit, Gas};
    let written = WrittenTemperature::Celsius(180.0);
    assert_eq!(written.oven_text(&[Celsius, Fahrenheit, Gas]), "180 °C (350 °F, gas 4)");
    assert_eq!(written.oven_text(&[Fahrenheit, Celsius]), "350 °F (180 °C)");
    assert_eq!(
        WrittenTemperature::Celsius(65.0).oven_text(&[Celsius, Fahrenheit, Gas]),
        "65 °C (150 °F)"
    );
    assert_eq!(
        WrittenTemperature::Fahrenheit(165.0).food_text(&[Celsius, Fahrenheit, Gas]),
        "74 °C (165 °F)"
    );
    assert_eq!(WrittenTemperature::Fahrenheit(31.0).food_text(&[Celsius]), "-1 °C");
    assert_eq!(written.oven_text(&[]), "");
    assert_eq!(WrittenTemperature::Gas(GasMark { quarters: 2 }).to_string(), "gas ½");
}

/// The words of the marks as in the convention above: very cool ¼–½, cool 1–2, warm 3, moderate 4, moderately hot 5,
/// hot 6–7, very hot 8–9.
#[test]
fn words_for_ovens() {
    let rows = [
        ("very cool", 1, 2),
        ("cool", 4, 8),
        ("warm", 12, 12),
        ("moderate", 16, 16),
        ("moderately hot", 20, 20),
        ("hot", 24, 28),
        ("very hot", 32, 36),
        ("slow", 4, 8),
    ];
    for (words, low, high) in rows {
        let found = OvenWord::find(&format!("{words} oven")).unwrap();
        assert_eq!((found.low.quarters, found.high.quarters), (low, high), "{words}");
    }
    assert_eq!(OvenWord::find("Moderately-Hot").unwrap().low.quarters, 20);
    assert_eq!(OvenWord::find("lukewarm"), None);
    assert!(
        oven_words()
            .iter()
            .all(|word| GasMark::nearest(word.temperature()).is_some())
    );
}
