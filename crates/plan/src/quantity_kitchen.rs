//! The arithmetic of quantity kitchens: a card for a fixed number of portions, a factor, and the product written in
//! the largest measures first.
//!
//! Sources: TM 10-412 (Armed Forces Recipe Service), General Information No. 1(2)–(3); Navy training manual 14163,
//! 'Volume Adjustment'. Where they leave something open, the function says what was chosen.

use potwright_measure::{Exact, fractions};

/// The factor as it is written on a worksheet, to two decimals: 348 portions from a card for 100 give `3.48`.
///
/// A card for 100 always has a factor of two decimals; for any other card the third is rounded, halves up (our own
/// choice, no source). `None` for a card of nought or a factor below nought.
///
/// ```
/// use potwright_measure::Exact;
/// use potwright_plan::quantity_kitchen::{factor, factor_text};
/// let factor = factor(Exact::whole(348), Exact::whole(100)).ok_or("a card for nobody")?;
/// assert_eq!(factor_text(factor).as_deref(), Some("3.48"));
/// # Ok::<(), &str>(())
/// ```
#[must_use]
pub fn factor_text(factor: Exact) -> Option<String> {
    let hundredths = times(factor, 100)?.checked_add(Exact::ratio(1, 2)?)?.floor();
    (!factor.is_negative()).then(|| two_decimals(hundredths)).flatten()
}

/// Wanted over listed, exactly: portions, or pounds in hand over pounds on the card.
///
/// `None` unless both are more than nought.
#[must_use]
pub fn factor(wanted: Exact, listed: Exact) -> Option<Exact> {
    (wanted.is_positive() && listed.is_positive())
        .then(|| wanted.checked_div(listed))
        .flatten()
}

/// The factor when the portion changes as well: `portions` of `portion` from a card for `listed` portions of
/// `listed_portion`. The share of the portion is taken first: 348 portions of 3 oz from a card of 4 oz are
/// 0.75 × 348 = 261 portions of the card's, factor 2.61.
///
/// `None` unless all four are more than nought.
#[must_use]
pub fn factor_for_portion(portions: Exact, portion: Exact, listed: Exact, listed_portion: Exact) -> Option<Exact> {
    let share = factor(portion, listed_portion)?;
    factor(portions.checked_mul(share)?, listed)
}

/// A volume of so many gallons as it is measured out: `19 gal 3 qt 1 pt 1 c 10 tbsp 2 3/4 tsp`.
///
/// Whole gallons are taken off, what is left is turned into quarts, and so on through pints, cups, tablespoons and
/// teaspoons (4, 2, 2, 16, 3 to the next); the decimals carried on are cut after two places at each step, and the
/// teaspoons rounded to the nearest quarter. `None` below nought and beyond exact numbers.
///
/// The cutting is the trade's, not ours: it loses up to a hundredth of the measure at each step, which on 19.98
/// gallons is a third of a fluid ounce.
#[must_use]
pub fn volume_text(gallons: Exact) -> Option<String> {
    const STEPS: [(&str, i64); 5] = [("gal", 4), ("qt", 2), ("pt", 2), ("c", 16), ("tbsp", 3)];
    if gallons.is_negative() {
        return None;
    }
    let mut parts = Vec::new();
    let mut left = cut(gallons)?;
    for (name, of_the_next) in STEPS {
        push(&mut parts, left.floor(), name);
        left = cut(times(left.fraction(), of_the_next)?)?;
    }
    let quarters = times(left, 4)?.checked_add(Exact::ratio(1, 2)?)?.floor();
    push(&mut parts, quarters.checked_div(Exact::whole(4))?, "tsp");
    Some(joined(parts, "0 gal"))
}

/// A weight of so many pounds as it is weighed out: `4 lb 5 1/2 oz`.
///
/// The part of a pound is turned into ounces and its decimals cut after two places; the fraction of an ounce goes by
/// bands to quarters: .00–.12 nothing, .13–.37 ¼, .38–.62 ½, .63–.87 ¾, .88–.99 one more ounce. `None` below nought
/// and beyond exact numbers.
#[must_use]
pub fn weight_text(pounds: Exact) -> Option<String> {
    if pounds.is_negative() {
        return None;
    }
    let ounces = cut(times(pounds.fraction(), 16)?)?;
    let ounces = ounces.floor().checked_add(band(ounces.fraction())?)?;
    let (pounds, ounces) = if ounces == Exact::whole(16) {
        (pounds.floor().checked_add(Exact::ONE)?, Exact::ZERO)
    } else {
        (pounds.floor(), ounces)
    };
    let mut parts = Vec::new();
    push(&mut parts, pounds, "lb");
    push(&mut parts, ounces, "oz");
    Some(joined(parts, "0 lb"))
}

/// Whole ounces as the card's decimal of a pound, to two places, halves up: 4 oz are `.25`, 1 oz `.06`, 2 oz `.13`.
///
/// `None` for less than nought or a pound and more.
#[must_use]
pub fn decimal_of_a_pound(ounces: Exact) -> Option<String> {
    if ounces.is_negative() || ounces >= Exact::whole(16) {
        return None;
    }
    let text = factor_text(ounces.checked_div(Exact::whole(16))?)?;
    text.strip_prefix('0').map(str::to_owned)
}

/// The quarter of an ounce that two decimals of an ounce stand for.
fn band(fraction: Exact) -> Option<Exact> {
    let hundredths = times(fraction, 100)?.floor();
    let quarters = match hundredths.numerator() {
        0..=12 => 0,
        13..=37 => 1,
        38..=62 => 2,
        63..=87 => 3,
        _ => 4,
    };
    Exact::ratio(quarters, 4)
}

/// The number with all decimals after the second cut off.
fn cut(number: Exact) -> Option<Exact> {
    times(number, 100)?.floor().checked_div(Exact::whole(100))
}

fn times(number: Exact, by: i64) -> Option<Exact> {
    number.checked_mul(Exact::whole(by))
}

/// So many hundredths, a whole number, with two decimals.
fn two_decimals(hundredths: Exact) -> Option<String> {
    let part = hundredths.numerator().rem_euclid(100);
    let whole = hundredths.checked_div(Exact::whole(100))?.floor();
    Some(format!("{whole}.{part:02}"))
}

/// Adds a measure unless there is none of it.
fn push(parts: &mut Vec<String>, number: Exact, name: &str) {
    if number.is_positive() {
        parts.push(format!("{} {name}", fractions::ascii(number)));
    }
}

fn joined(parts: Vec<String>, nothing: &str) -> String {
    if parts.is_empty() {
        nothing.to_owned()
    } else {
        parts.join(" ")
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn exact(text: &str) -> Exact {
        text.parse().unwrap()
    }

    /// TM 10-412, General Information No. 1(2)–(3); the starch row from Navy training manual 14163.
    #[test]
    fn factors_of_the_published_examples() {
        let written = |wanted, listed| factor(exact(wanted), exact(listed)).and_then(factor_text);
        assert_eq!(written("348", "100").as_deref(), Some("3.48"));
        assert_eq!(written("333", "100").as_deref(), Some("3.33"));
        // By the ingredient in hand: 102 lb, the card asks for 30.
        assert_eq!(written("102", "30").as_deref(), Some("3.40"));
        let smaller = factor_for_portion(exact("348"), exact("3"), exact("100"), exact("4")).unwrap();
        assert_eq!(factor_text(smaller).as_deref(), Some("2.61"));
        assert_eq!(factor(exact("5"), Exact::ZERO), None);
    }

    #[test]
    fn a_volume_is_cut_at_each_step() {
        // 6 gal of water a hundred, 333 portions: .98 .92 .84 .68 .88 .64 in TM 10-412 and Navy 14163.
        let gallons = exact("6").checked_mul(exact("3.33")).unwrap();
        assert_eq!(fractions::decimal(gallons, 2), "19.98");
        assert_eq!(
            volume_text(gallons).as_deref(),
            Some("19 gal 3 qt 1 pt 1 c 10 tbsp 2 3/4 tsp")
        );
        assert_eq!(volume_text(exact("1/4")).as_deref(), Some("1 qt"));
        assert_eq!(volume_text(Exact::ZERO).as_deref(), Some("0 gal"));
        assert_eq!(volume_text(exact("-1")), None);
    }

    #[test]
    fn a_weight_goes_by_bands() {
        // 1 lb 4 oz × 3.48 = 4.35 lb; .35 × 16 = 5.60 oz (TM 10-412).
        let pounds = exact("1.25").checked_mul(exact("3.48")).unwrap();
        assert_eq!(fractions::decimal(pounds, 2), "4.35");
        assert_eq!(weight_text(pounds).as_deref(), Some("4 lb 5 1/2 oz"));
        // 2 lb of cornstarch × 2.61 = 5.22 lb; .22 × 16 = 3.52 oz (Navy 14163).
        assert_eq!(weight_text(exact("5.22")).as_deref(), Some("5 lb 3 1/2 oz"));
        // The bands at both ends, in ounces: TM 10-412, General Information No. 1(2).
        for (ounces, text) in [
            ("3.12", "3 oz"),
            ("3.13", "3 1/4 oz"),
            ("3.37", "3 1/4 oz"),
            ("3.38", "3 1/2 oz"),
            ("3.62", "3 1/2 oz"),
            ("3.63", "3 3/4 oz"),
            ("3.87", "3 3/4 oz"),
            ("3.88", "4 oz"),
            ("15.88", "1 lb"),
        ] {
            let pounds = exact(ounces).checked_div(Exact::whole(16)).unwrap();
            assert_eq!(weight_text(pounds).as_deref(), Some(text), "{ounces}");
        }
    }

    /// The table of 1 to 15 ounces in TM 10-412, General Information No. 1(2).
    #[test]
    fn ounces_as_decimals_of_a_pound() {
        let table = ".06 .13 .19 .25 .31 .38 .44 .50 .56 .63 .69 .75 .81 .88 .94";
        let ours: Vec<String> = (1..16).filter_map(|oz| decimal_of_a_pound(Exact::whole(oz))).collect();
        assert_eq!(ours.join(" "), table);
        assert_eq!(decimal_of_a_pound(Exact::whole(16)), None);
    }
}
