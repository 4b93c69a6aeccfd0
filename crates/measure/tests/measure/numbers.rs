//! Exact numbers: no panic whatever the operands, the laws of arithmetic where a result is held, reading back what
//! was printed.

use potwright_measure::{Amount, Exact, NumberError, OvenWord, Unit, fractions};
use proptest::prelude::*;

/// Numbers over the whole range, with its ends and nought thrown in often.
fn anywhere() -> impl Strategy<Value = Exact> {
    let end = || {
        prop_oneof![
            Just(i128::MAX),
            Just(i128::MAX - 1),
            Just(1),
            any::<i128>(),
            -9_i128..=9
        ]
    };
    let numbers = (prop_oneof![Just(0), Just(i128::MIN + 1), end()], end());
    numbers.prop_filter_map("nought below, or no negative", |(above, below)| {
        let below = below.checked_abs().filter(|b| *b > 0)?;
        format!("{above}/{below}").parse().ok()
    })
}

/// Numbers as a page has them.
fn of_a_page() -> impl Strategy<Value = Exact> {
    (-9999_i64..=9999, 1_i64..=96).prop_filter_map("below is not nought", |(above, below)| Exact::ratio(above, below))
}

proptest! {
    #[test]
    fn no_operation_panics(a in anywhere(), b in anywhere(), places in any::<u8>()) {
        let results = [a.checked_add(b), a.checked_sub(b), a.checked_mul(b), a.checked_div(b)];
        for result in results.into_iter().flatten() {
            prop_assert!(result.numerator() != i128::MIN && result.denominator() > 0);
        }
        let _ = (a.floor(), a.fraction(), a.to_f64(), a.cmp(&b));
        let _ = (fractions::cook(a), fractions::ascii(a), fractions::decimal(a, places));
        let _ = Amount::range(a, b).map(|amount| (amount.checked_scale(a), amount.midpoint()));
    }

    #[test]
    fn arithmetic_is_that_of_fractions(a in -999_i64..=999, b in 1_i64..=99, c in -999_i64..=999, d in 1_i64..=99) {
        let (x, y) = (Exact::ratio(a, b).unwrap(), Exact::ratio(c, d).unwrap());
        prop_assert_eq!(x.checked_add(y), Exact::ratio(a * d + c * b, b * d));
        prop_assert_eq!(x.checked_sub(y), Exact::ratio(a * d - c * b, b * d));
        prop_assert_eq!(x.checked_mul(y), Exact::ratio(a * c, b * d));
        prop_assert_eq!(x.checked_div(y), Exact::ratio(a * d, b * c));
        prop_assert_eq!(x.cmp(&y), (a * d).cmp(&(c * b)));
        prop_assert_eq!(x.floor(), Exact::whole(a.div_euclid(b)));
        prop_assert_eq!(x.floor().checked_add(x.fraction()), Some(x));
        prop_assert_eq!(x.to_f64(), a as f64 / b as f64);
    }

    #[test]
    fn what_is_printed_reads_back(a in anywhere(), b in of_a_page()) {
        for number in [a, b] {
            prop_assert_eq!(number.to_string().parse::<Exact>(), Ok(number));
            for text in [fractions::cook(number), fractions::ascii(number)] {
                prop_assert_eq!(fractions::parse(&text), Ok(number), "{}", text);
            }
        }
        let json = serde_json::to_string(&b).unwrap();
        prop_assert_eq!(serde_json::from_str::<Exact>(&json).unwrap(), b);
    }

    /// Any text gives a number or says why not, and quotes the text as it was.
    #[test]
    fn no_text_panics(text in "[0-9 ./½¾⅓⁄¹²₂\u{2010}−-]{0,12}|\\PC{0,24}") {
        match fractions::parse(&text) {
            Ok(number) => prop_assert!(number.denominator() > 0),
            Err(NumberError::Empty) => prop_assert!(text.trim().is_empty()),
            Err(NumberError::NotANumber(t) | NumberError::NoughtBelow(t) | NumberError::TooLong(t)) => {
                prop_assert_eq!(t, text.clone());
            }
        }
        let _ = (Exact::from_decimal(&text), Unit::from_spelling(&text), OvenWord::find(&text));
    }

    #[test]
    fn nearest_is_within_half_a_part(value in -1e6_f64..1e6, parts in 1_i64..1000) {
        let found = Exact::nearest(value, parts).unwrap();
        prop_assert!((found.to_f64() - value).abs() * parts as f64 <= 0.5 + 1e-6);
        prop_assert!(found.checked_mul(Exact::whole(parts)).unwrap().is_whole());
    }

    /// Rounded decimals are within half a unit of their last place, and exact when the places suffice.
    #[test]
    fn decimals_round_to_the_nearest(number in of_a_page(), places in 0_u8..=6) {
        let printed: Exact = fractions::decimal(number, places).parse().unwrap();
        let off = printed.checked_sub(number).unwrap().checked_mul(Exact::whole(2 * 10_i64.pow(u32::from(places))));
        let off = off.unwrap();
        prop_assert!(off <= Exact::ONE && off >= Exact::whole(-1), "{} as {}", number, printed);
    }
}

#[test]
fn spellings_of_one_and_three_quarters() {
    let expected = Exact::ratio(7, 4).unwrap();
    for text in [
        "1¾",
        "1 ¾",
        "1-¾",
        "1 3/4",
        "1-3/4",
        "1\u{2011}3/4",
        "1 3⁄4",
        "1³⁄₄",
        "1 ³⁄₄",
        "1.75",
        "7/4",
        "1\u{a0}¾",
        " 1 3 / 4 ",
        "01.750",
    ] {
        assert_eq!(fractions::parse(text), Ok(expected), "{text}");
    }
}

#[test]
fn what_is_not_one_number_is_refused() {
    for text in [
        "1-2", "1–½", "1 3/2", "1/2/3", "½½", "1,5", "1e3", "/2", "1/", "--1", "-/2", "1.2.3", "one", ".",
    ] {
        assert_eq!(fractions::parse(text), Err(NumberError::NotANumber(text.to_owned())));
    }
    assert_eq!(fractions::parse("3/0"), Err(NumberError::NoughtBelow("3/0".to_owned())));
    assert_eq!(fractions::parse(" "), Err(NumberError::Empty));
    let long = "9".repeat(60);
    assert_eq!(fractions::parse(&long), Err(NumberError::TooLong(long)));
}

#[test]
fn cooks_fractions() {
    let rows = [
        ("1/2", "½", "1/2"),
        ("3/2", "1½", "1 1/2"),
        ("2/3", "⅔", "2/3"),
        ("17/8", "2⅛", "2 1/8"),
        ("5/6", "⅚", "5/6"),
        ("0.35", "0.35", "0.35"),
        ("3/16", "3/16", "3/16"),
        ("12/7", "1 5/7", "1 5/7"),
        ("-5/2", "-2½", "-2 1/2"),
        ("0", "0", "0"),
    ];
    for (number, cook, ascii) in rows {
        let number: Exact = number.parse().unwrap();
        assert_eq!(
            (fractions::cook(number).as_str(), fractions::ascii(number).as_str()),
            (cook, ascii)
        );
    }
}

/// TM 10-412, General Information No. 1(2): ounces as decimals of a pound, to two places.
#[test]
fn ounces_as_decimals_of_a_pound() {
    let published = [
        "0.06", "0.13", "0.19", "0.25", "0.31", "0.38", "0.44", "0.5", "0.56", "0.63", "0.69", "0.75", "0.81", "0.88",
        "0.94",
    ];
    for (ounces, decimal) in (1..).zip(published) {
        assert_eq!(fractions::decimal(Exact::ratio(ounces, 16).unwrap(), 2), decimal);
    }
}
