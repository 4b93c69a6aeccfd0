//! Kitchen rounding: published rules, stated errors, and what must hold of any rounding.

use potwright_measure::{Exact, Kit, Ladder, Mass, Measured, Measures, Pieces, Rounder, Scales, Unit, Volume};
use proptest::prelude::*;

const MARKETS: [Measures; 4] = [Measures::Us, Measures::Metric, Measures::Imperial, Measures::Australian];

fn rounder(measures: Measures) -> Rounder {
    Kit::of(measures).rounder().unwrap()
}

fn ml(unit: Unit, measures: Measures) -> f64 {
    unit.volume(measures).unwrap().to_f64()
}

fn grams(unit: Unit) -> f64 {
    unit.mass(Measures::Us).unwrap().to_f64()
}

/// Ladders by name, with what turns a measure of theirs into their size.
type Size = fn(Measured, Measures) -> f64;

fn ladders(rounder: &Rounder) -> [(&Ladder, Size); 4] {
    let count: Size = |said, _| said.amount.to_f64();
    [
        (rounder.volumes(), |said, measures| {
            said.volume(measures).unwrap().to_f64()
        }),
        (rounder.masses(), |said, measures| said.mass(measures).unwrap().to_f64()),
        (rounder.counts(Pieces::Cut), count),
        (rounder.counts(Pieces::Whole), count),
    ]
}

/// From a hundredth to a hundred thousand, evenly by powers of ten; nought at times.
fn sizes() -> impl Strategy<Value = f64> {
    prop_oneof![9 => (1.0_f64..10.0, -2_i32..5).prop_map(|(digits, power)| digits * 10_f64.powi(power)), 1 => Just(0.0)]
}

proptest! {
    #[test]
    fn rounding_twice_is_rounding_once(size in sizes(), market in 0_usize..4) {
        let measures = MARKETS[market];
        let rounder = rounder(measures);
        for (ladder, size_of) in ladders(&rounder) {
            let once = ladder.nearest(size).unwrap();
            prop_assert_eq!(ladder.nearest(size_of(once, measures)).unwrap(), once);
        }
        // And through quantities, whose conversion is off by a last digit now and then.
        let volume = rounder.volume(Volume::from_millilitres(size)).unwrap();
        let again = Volume::from_millilitres(volume.volume(measures).unwrap().to_f64());
        prop_assert_eq!(rounder.volume(again).unwrap(), volume);
        let mass = rounder.mass(Mass::from_grams(size)).unwrap();
        let again = Mass::from_grams(mass.mass(measures).unwrap().to_f64());
        prop_assert_eq!(rounder.mass(again).unwrap(), mass);
    }

    #[test]
    fn more_never_rounds_to_less(a in sizes(), b in sizes(), market in 0_usize..4) {
        let measures = MARKETS[market];
        let rounder = rounder(measures);
        for (ladder, size_of) in ladders(&rounder) {
            let of = |size| size_of(ladder.nearest(size).unwrap(), measures);
            prop_assert!(of(a.min(b)) <= of(a.max(b)));
        }
    }

    #[test]
    fn the_nearest_lies_between_its_neighbours_and_within_the_bound(size in sizes(), market in 0_usize..4) {
        let measures = MARKETS[market];
        let rounder = rounder(measures);
        for (ladder, size_of) in ladders(&rounder) {
            let (below, above) = ladder.around(size).unwrap();
            let nearest = ladder.nearest(size).unwrap();
            prop_assert!(nearest == below || nearest == above);
            prop_assert!(size_of(below, measures) <= size && size <= size_of(above, measures));
            let off = (size_of(nearest, measures) - size).abs();
            prop_assert!(off <= ladder.error_bound(size).unwrap() * (1.0 + 1e-12));
            prop_assert_eq!(nearest.amount.is_zero(), size == 0.0, "something never rounds to nothing");
        }
    }

    /// No drawer, however odd, makes rounding panic or hang.
    #[test]
    fn odd_kits_are_no_trouble(
        spoons in prop::collection::vec((-2_i64..99, 1_i64..99), 0..4),
        cups in prop::collection::vec((-2_i64..99, 1_i64..99), 0..4),
        finest in (-2_i64..99, 1_i64..9_999_999),
        size in any::<f64>(),
    ) {
        let exact = |(above, below)| Exact::ratio(above, below).unwrap();
        let kit = Kit {
            teaspoons: spoons.into_iter().map(exact).collect(),
            cups: cups.into_iter().map(exact).collect(),
            scales: Scales::Grams(exact(finest)),
            ..Kit::default()
        };
        if let Some(rounder) = kit.rounder() {
            for (ladder, _) in ladders(&rounder) {
                prop_assert_eq!(ladder.nearest(size).is_some(), ladder.around(size).is_some());
                prop_assert!(size >= 0.0 || ladder.nearest(size).is_none());
            }
        } else {
            prop_assert!(finest.0 <= 0 || !matches!(kit.scales, Scales::Ounces));
        }
    }
}

/// The table at the head of the kit module: from, to, and the error as a share of the size.
#[test]
fn relative_errors_are_as_stated() {
    let cup = ml(Unit::Cup, Measures::Us);
    let spoon = ml(Unit::Tablespoon, Measures::Us);
    let teaspoon = ml(Unit::Teaspoon, Measures::Us);
    let fluid_ounce = ml(Unit::FluidOunce, Measures::Imperial);
    let volumes = [
        (Measures::Us, teaspoon / 16.0, teaspoon / 4.0, 1.0 / 3.0),
        (Measures::Us, spoon, cup / 2.0, 1.0 / 7.0),
        (Measures::Us, cup / 2.0, 400.0 * cup, 0.075),
        (Measures::Australian, 20.0, 125.0, 1.0 / 7.0),
        (Measures::Australian, 125.0, 50_000.0, 0.075),
        (Measures::Metric, 15.0, 60.0, 1.0 / 7.0),
        (Measures::Metric, 60.0, 50_000.0, 0.08),
        (Measures::Imperial, 2.0 * fluid_ounce, 10.0 * fluid_ounce, 0.12),
        (Measures::Imperial, 10.0 * fluid_ounce, 4000.0 * fluid_ounce, 0.07),
    ];
    for (measures, from, to, bound) in volumes {
        let rounder = rounder(measures);
        check_relative(from, to, bound, |size| {
            rounder
                .volumes()
                .nearest(size)
                .unwrap()
                .volume(measures)
                .unwrap()
                .to_f64()
        });
    }
    let (metric, us) = (rounder(Measures::Metric), rounder(Measures::Us));
    let weighed = |said: Option<Measured>| said.unwrap().mass(Measures::Us).unwrap().to_f64();
    check_relative(100.0, 100_000.0, 0.025, |size| weighed(metric.masses().nearest(size)));
    let (four_ounces, many_pounds) = (4.0 * grams(Unit::Ounce), 100.0 * grams(Unit::Pound));
    check_relative(four_ounces, many_pounds, 0.065, |size| {
        weighed(us.masses().nearest(size))
    });
    check_relative(2.0, 1000.0, 0.125, |size| {
        us.pieces(size, Pieces::Cut).unwrap().amount.to_f64()
    });
}

/// Rounds many sizes from one end to the other, each a thousandth above the last.
#[track_caller]
fn check_relative(from: f64, to: f64, bound: f64, round: impl Fn(f64) -> f64) {
    let mut size = from;
    while size <= to {
        let off = (round(size) - size).abs() / size;
        assert!(off <= bound * (1.0 + 1e-9), "{size}: {off}");
        size *= 1.001;
    }
}

#[test]
fn absolute_errors_are_as_stated() {
    let teaspoon = ml(Unit::Teaspoon, Measures::Us);
    check_absolute(
        rounder(Measures::Us).volumes(),
        teaspoon / 4.0,
        3.0 * teaspoon,
        teaspoon / 8.0,
    );
    check_absolute(rounder(Measures::Metric).masses(), 1.0, 100.0, 0.5);
    check_absolute(
        rounder(Measures::Us).masses(),
        grams(Unit::Ounce) / 4.0,
        4.0 * grams(Unit::Ounce),
        3.55,
    );
    check_absolute(rounder(Measures::Us).counts(Pieces::Cut), 0.25, 2.0, 0.125);
    check_absolute(rounder(Measures::Us).counts(Pieces::Whole), 1.0, 500.0, 0.5);
}

#[track_caller]
fn check_absolute(ladder: &Ladder, from: f64, to: f64, bound: f64) {
    // Up to the far end, not on it: there the next stretch begins.
    for step in 0..5000 {
        let size = from + (to - from) * f64::from(step) / 5000.0;
        let off = ladder.error_bound(size).unwrap();
        assert!(off <= bound * (1.0 + 1e-9), "{size}: {off}");
    }
}

/// TM 10-412, General Information No. 1(2): fractions of an ounce of .00–.12, .13–.37, .38–.62, .63–.87, .88–.99
/// become 0, ¼, ½, ¾ and 1.
#[test]
fn ounces_round_to_quarters() {
    let rounder = rounder(Measures::Us);
    let bands = [
        (0..=12, "1 oz"),
        (13..=37, "1¼ oz"),
        (38..=62, "1½ oz"),
        (63..=87, "1¾ oz"),
        (88..=99, "2 oz"),
    ];
    for (hundredths, expected) in bands {
        for n in hundredths {
            let mass = Mass::from_grams(grams(Unit::Ounce) * (1.0 + f64::from(n) / 100.0));
            assert_eq!(rounder.mass(mass).unwrap().to_string(), expected, "1.{n:02} oz");
        }
    }
}

/// TM 10-412 and Navy 14163, Volume Adjustment: the smallest step of spoons is a quarter teaspoon.
#[test]
fn teaspoons_round_to_quarters() {
    let rounder = rounder(Measures::Us);
    for (teaspoons, expected) in [(0.3, "¼ tsp"), (0.9, "1 tsp"), (1.6, "1½ tsp"), (2.2, "2¼ tsp")] {
        let volume = Volume::from_millilitres(teaspoons * ml(Unit::Teaspoon, Measures::Us));
        assert_eq!(rounder.volume(volume).unwrap().to_string(), expected);
    }
}

/// FDA NLEA inspection guide, Attachment 6: between 1 and 2 tablespoons 1, 1⅓, 1½, 1⅔, 2; exactly half way goes up.
#[test]
fn from_one_tablespoon_to_two() {
    let rounder = rounder(Measures::Us);
    let spoon = ml(Unit::Tablespoon, Measures::Us);
    let mut seen: Vec<f64> = (0..=1000)
        .map(|n| {
            rounder
                .volumes()
                .nearest(spoon * (1.0 + f64::from(n) / 1000.0))
                .unwrap()
        })
        .map(|said| said.volume(Measures::Us).unwrap().to_f64() / spoon)
        .collect();
    seen.dedup();
    let expected = [1.0, 4.0 / 3.0, 1.5, 5.0 / 3.0, 2.0];
    assert_eq!(seen.len(), expected.len(), "{seen:?}");
    assert!(
        seen.iter().zip(expected).all(|(a, b)| (a - b).abs() < 1e-12),
        "{seen:?}"
    );
    // Half way between 2 and 3 g.
    let half_way = Kit::of(Measures::Metric)
        .rounder()
        .unwrap()
        .mass(Mass::from_grams(2.5))
        .unwrap();
    assert_eq!(half_way.to_string(), "3 g");
}

#[test]
fn prints_as_a_cook_measures() {
    let us = |ml| {
        rounder(Measures::Us)
            .volume(Volume::from_millilitres(ml))
            .unwrap()
            .to_string()
    };
    // 1 cup 236.6 ml + 2 tbsp 29.6 ml = 266.2 ml.
    assert_eq!(us(265.0), "1 cup + 2 tbsp");
    assert_eq!(us(78.9), "⅓ cup");
    // 2½ quarts of 946.35 ml = 2365.9 ml.
    assert_eq!(us(2400.0), "2½ qt");
    assert_eq!(us(0.2), "1 pinch");
    assert_eq!(us(0.0), "0");
    let metric = |ml| {
        rounder(Measures::Metric)
            .volume(Volume::from_millilitres(ml))
            .unwrap()
            .to_string()
    };
    assert_eq!(metric(1234.0), "1.2 l");
    assert_eq!(metric(317.0), "325 ml");
    assert_eq!(metric(7.4), "1½ tsp");
    let mass = |g| rounder(Measures::Metric).mass(Mass::from_grams(g)).unwrap().to_string();
    assert_eq!(mass(847.0), "850 g");
    assert_eq!(mass(1262.0), "1.25 kg");
    let pounds = rounder(Measures::Us).mass(Mass::from_grams(540.0)).unwrap();
    // 1 lb 453.6 g + 3 oz 85.0 g = 538.6 g.
    assert_eq!(pounds.to_string(), "1 lb + 3 oz");
    assert_eq!(
        rounder(Measures::Us).pieces(2.4, Pieces::Cut).unwrap().to_string(),
        "2½"
    );
    assert_eq!(
        rounder(Measures::Us).pieces(0.2, Pieces::Whole).unwrap().to_string(),
        "1"
    );
}

#[test]
fn what_is_no_size_has_no_rung() {
    let rounder = rounder(Measures::Us);
    for size in [-1.0, f64::NAN, f64::INFINITY, f64::NEG_INFINITY, 1e300] {
        for (ladder, _) in ladders(&rounder) {
            assert_eq!(ladder.nearest(size), None, "{size}");
        }
    }
}
