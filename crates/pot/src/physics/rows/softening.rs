//! Softening: ratios of times between temperatures, row by row.

use crate::physics::softening::time_multiple;
use crate::physics::water::{air_pressure_kpa, boiling_c};

/// Food; rate at 100 °C, 1/min; activation energy, kJ/mol; rates at 90 and 95 °C; minutes to a tenth of the firmness at
/// 100 °C (Lee 2017, Food Eng. Prog. 21(4):303, Table 1). For one vegetable the rates of studies differ fourteenfold: only
/// the ratios are used.
const KINETICS: [(&str, f64, f64, f64, f64, f64); 16] = [
    ("asparagus", 0.106, 79.5, 0.05234, 0.07485, 21.72),
    ("bean (green)", 0.144, 171.5, 0.03143, 0.06797, 15.99),
    ("beet", 0.115, 142.3, 0.03252, 0.06168, 20.02),
    ("broccoli", 0.217, 54.4, 0.13390, 0.17102, 10.61),
    ("cabbage", 0.146, 71.4, 0.07747, 0.10681, 15.77),
    ("carrot", 0.126, 159.0, 0.03072, 0.06282, 18.27),
    ("carrot", 0.049, 92.05, 0.02165, 0.03275, 46.99),
    ("carrot", 0.052, 112.97, 0.01908, 0.03171, 44.28),
    ("carrot", 0.069, 117.15, 0.02439, 0.04132, 33.37),
    ("carrot", 0.047, 112.97, 0.01724, 0.02866, 48.99),
    ("carrot", 0.161, 138.0, 0.04730, 0.08800, 14.30),
    ("carrot", 0.66, 156.0, 0.16528, 0.33340, 3.49),
    ("carrot", 0.381, 143.0, 0.10708, 0.20373, 6.04),
    ("carrot", 0.222, 117.56, 0.07820, 0.13270, 10.37),
    ("carrot", 0.296, 152.12, 0.07672, 0.15209, 7.78),
    ("apricot (canned)", 0.269, 146.2, 0.07349, 0.14184, 8.56),
];

#[test]
fn rates_at_other_temperatures() {
    for (food, at_100, activation, at_90, at_95, minutes) in KINETICS {
        for (temp_c, rate) in [(90.0, at_90), (95.0, at_95)] {
            let found = at_100 / time_multiple(temp_c, activation);
            assert!(
                (found / rate - 1.0).abs() < 1e-3,
                "{food} at {temp_c}: {found} for {rate}"
            );
        }
        assert!(
            (std::f64::consts::LN_10 / at_100 / minutes - 1.0).abs() < 1e-3,
            "{food}"
        );
    }
}

/// Activation energy, kJ/mol, °C, and the time as a multiple of that at 100 °C.
const MULTIPLES: [(f64, f64, f64); 45] = [
    (159.0, 85.0, 8.5538),
    (159.0, 90.0, 4.1009),
    (159.0, 93.3, 2.5523),
    (159.0, 95.0, 2.0058),
    (159.0, 97.0, 1.5149),
    (159.0, 100.0, 1.0000),
    (159.0, 105.0, 0.5078),
    (159.0, 110.0, 0.2625),
    (159.0, 120.0, 0.0738),
    (117.56, 85.0, 4.8889),
    (117.56, 90.0, 2.8389),
    (117.56, 93.3, 1.9993),
    (117.56, 95.0, 1.6730),
    (117.56, 97.0, 1.3595),
    (117.56, 100.0, 1.0000),
    (117.56, 105.0, 0.6059),
    (117.56, 110.0, 0.3720),
    (117.56, 120.0, 0.1455),
    (54.4, 85.0, 2.0841),
    (54.4, 90.0, 1.6207),
    (54.4, 93.3, 1.3779),
    (54.4, 95.0, 1.2689),
    (54.4, 97.0, 1.1527),
    (54.4, 100.0, 1.0000),
    (54.4, 105.0, 0.7931),
    (54.4, 110.0, 0.6328),
    (54.4, 120.0, 0.4098),
    (142.3, 85.0, 6.8274),
    (142.3, 90.0, 3.5360),
    (142.3, 93.3, 2.3131),
    (142.3, 95.0, 1.8644),
    (142.3, 97.0, 1.4502),
    (142.3, 100.0, 1.0000),
    (142.3, 105.0, 0.5453),
    (142.3, 110.0, 0.3021),
    (142.3, 120.0, 0.0970),
    (171.5, 85.0, 10.1261),
    (171.5, 90.0, 4.5821),
    (171.5, 93.3, 2.7474),
    (171.5, 95.0, 2.1186),
    (171.5, 97.0, 1.5652),
    (171.5, 100.0, 1.0000),
    (171.5, 105.0, 0.4815),
    (171.5, 110.0, 0.2363),
    (171.5, 120.0, 0.0601),
];

#[test]
fn multiples_of_the_time() {
    for (activation, temp_c, multiple) in MULTIPLES {
        let found = time_multiple(temp_c, activation);
        // Printed with four decimals: as far as these go.
        assert!(
            (found - multiple).abs() < 1e-3 * multiple + 6e-5,
            "{activation} at {temp_c}: {found}"
        );
    }
}

/// A mile up, 1609.344 m, water boils at 94.62 °C: carrots of 20 min at 100 °C, 159 kJ/mol, take 42.3 min, 2.117 times
/// as long. At sea level water boils at 99.97 °C (IAPWS).
#[test]
fn a_mile_up() {
    let boil = boiling_c(air_pressure_kpa(1609.344));
    assert!((boil - 94.62).abs() < 0.05, "{boil}");
    assert!((20.0 * time_multiple(boil, 159.0) / 42.3 - 1.0).abs() < 0.01);
    assert!((boiling_c(101.325) - 99.97).abs() < 0.02);
}

/// Minutes of simmering after a soak, low and high (pulse growers' association page and a magazine's table): the larder's own
/// times are these. Red lentils from the one page's 5 to the other's 25.
#[test]
fn pulses_of_the_growers() {
    let larder = potwright_larder::Larder::built_in();
    for (key, low, high) in [
        ("beans_black", 60.0, 90.0),
        ("chickpea", 90.0, 120.0),
        ("beans_kidney", 60.0, 90.0),
        ("beans_haricot", 60.0, 90.0),
        ("beans_butter", 45.0, 60.0),
        ("lentils_brown", 20.0, 40.0),
        ("lentils_red", 5.0, 25.0),
        ("split_peas", 35.0, 45.0),
    ] {
        let softens = larder.by_key(key).and_then(|food| food.behaviour.softens);
        let minutes = softens.expect(key).minutes_at_simmer;
        assert_eq!((minutes.low, minutes.high), (low, high), "{key}");
    }
}
