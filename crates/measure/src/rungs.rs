//! What a kit can measure, size by size: the rungs of its ladders.

use crate::kit::{Kit, Scales};
use crate::rounding::{Ladder, Measured};
use crate::{Exact, Measures, Unit};

/// The even steps of jug, scale and knife: ladder, from, to, step, unit, source.
const TABLE: &str = include_str!("../data/rungs.tsv");

/// Two spoons are not worth it where one cup comes within this share (common practice, no source).
const NOT_WORTH_A_SECOND_MEASURE: f64 = 0.05;

/// No run of even steps is longer; a bound on what an odd kit can ask for.
const LONGEST_RUN: i64 = 1000;

/// The smallest cup that is counted among the cups, not the spoons: a quarter.
const SMALLEST_CUP: (i64, i64) = (1, 4);

/// Spoons, then cups or a jug, then the large measures of the market.
pub(crate) fn volumes(kit: &Kit) -> Option<Ladder> {
    let size = |said: &Measured| said.volume(kit.measures);
    let large = match kit.measures {
        Measures::Us | Measures::UsLabel if !kit.cups.is_empty() => "large_us",
        Measures::Imperial => "jug_fl_oz",
        _ => "jug_ml",
    };
    let (mut said, step) = runs(large)?;
    let cups = cupfuls(kit);
    if !cups.is_empty() {
        // Cups go up to eight; the large measures take over there.
        let eight = size(&Measured::of(Exact::whole(8), Unit::Cup))?;
        said.retain(|large| size(large).is_some_and(|s| s >= eight));
        said.extend(cups);
    }
    let spoons_end = said.iter().filter_map(size).min()?;
    said.extend(spoonfuls(kit, spoons_end));
    Ladder::new(said, step, kit.measures)
}

/// The grams or the pounds and ounces of the kit's scale.
pub(crate) fn masses(kit: &Kit) -> Option<Ladder> {
    match kit.scales {
        Scales::Ounces => {
            let (mut said, step) = runs("ounces")?;
            let ounces = (1..5).flat_map(|lb| (1..16).map(move |oz| (lb, oz)));
            said.extend(
                ounces.map(|(lb, oz)| Measured::of(Exact::whole(lb), Unit::Pound).and(Exact::whole(oz), Unit::Ounce)),
            );
            Ladder::new(said, step, kit.measures)
        }
        Scales::Grams(finest) if finest.is_positive() => {
            let (mut said, step) = runs("grams")?;
            said.extend(run(finest, Some(Exact::whole(10)), finest, Some(Unit::Gram)));
            let shown = |grams: Exact| grams.checked_div(finest).is_some_and(Exact::is_whole);
            said.retain(|m| m.mass(kit.measures).is_some_and(shown));
            Ladder::new(said, step, kit.measures)
        }
        Scales::Grams(_) => None,
    }
}

/// The counts of one ladder of the table.
pub(crate) fn pieces(ladder: &str) -> Option<Ladder> {
    let (said, step) = runs(ladder)?;
    Ladder::new(said, step, Measures::Metric)
}

/// A pinch, half the smallest teaspoon, teaspoons; from a tablespoon to two the steps of FDA's label guide (NLEA
/// inspection guide, Attachment 6: 1, 1⅓, 1½, 1⅔, 2, thirds being teaspoons); then half tablespoons, up to `end`
/// millilitres.
fn spoonfuls(kit: &Kit, end: Exact) -> Vec<Measured> {
    let (tablespoon, half) = (Measured::of(Exact::ONE, Unit::Tablespoon), Exact::ratio(1, 2));
    let mut said = vec![Measured::of(Exact::ONE, Unit::Pinch)];
    if let Some(smallest) = kit.teaspoons.iter().filter(|spoon| spoon.is_positive()).min() {
        let halved = half.and_then(|half| smallest.checked_mul(half));
        said.extend(halved.map(|amount| Measured::of(amount, Unit::Teaspoon)));
    }
    let spoons_in_one = Unit::Tablespoon
        .volume(kit.measures)
        .zip(Unit::Teaspoon.volume(kit.measures))
        .and_then(|(tablespoon, teaspoon)| tablespoon.checked_div(teaspoon));
    for spoon in kit.teaspoons.iter().filter(|spoon| spoon.is_positive()) {
        said.extend(run(*spoon, spoons_in_one, *spoon, Some(Unit::Teaspoon)));
    }
    if kit.teaspoons.contains(&Exact::ONE) {
        said.extend((1..4).map(|n| tablespoon.and(Exact::whole(n), Unit::Teaspoon)));
    }
    if let Some(half) = half {
        said.extend(run(Exact::ONE, Some(Exact::whole(16)), half, Some(Unit::Tablespoon)));
    }
    let below_end = |said: &Measured| said.volume(kit.measures).is_some_and(|size| size < end);
    said.retain(below_end);
    said
}

/// Cups up to eight: below one the kit's own and, between the quarters, tablespoons; below two eighths as two
/// tablespoons; below four the kit's own; then halves.
fn cupfuls(kit: &Kit) -> Vec<Measured> {
    let parts = cup_parts(kit);
    let Some(smallest) = parts.first() else {
        return Vec::new();
    };
    let cups = |whole: i64, part: Exact| {
        Exact::whole(whole)
            .checked_add(part)
            .map(|n| Measured::of(n, Unit::Cup))
    };
    let mut plain: Vec<Measured> = (1..=8).map(|n| Measured::of(Exact::whole(n), Unit::Cup)).collect();
    plain.extend((0..4).flat_map(|whole| parts.iter().filter_map(move |part| cups(whole, *part))));
    let halves = parts.iter().filter(|part| part.denominator() == 2);
    plain.extend(halves.flat_map(|half| (4..8).filter_map(move |whole| cups(whole, *half))));

    let quarters = || {
        let nought = std::iter::once(Exact::ZERO);
        nought.chain(
            parts
                .iter()
                .copied()
                .filter(|part| part.denominator() <= 4 && part.denominator() != 3),
        )
    };
    let below_one = quarters()
        .filter(|q| q >= smallest)
        .flat_map(|q| (1..4).map(move |spoons| (0, q, spoons)));
    let below_two = quarters().map(|q| (1, q, 2));
    let mut said: Vec<Measured> = below_one
        .chain(below_two)
        .filter_map(|(whole, q, spoons)| Some(cups(whole, q)?.and(Exact::whole(spoons), Unit::Tablespoon)))
        .filter(|sum| worth_a_second_measure(*sum, &plain, kit.measures))
        .collect();
    said.extend(plain);
    said
}

/// The parts of a cup the kit's cups make, a quarter to just under one, rising: cups of ⅓ and ¼ make ¼, ⅓, ½, ⅔, ¾.
fn cup_parts(kit: &Kit) -> Vec<Exact> {
    let Some(least) = Exact::ratio(SMALLEST_CUP.0, SMALLEST_CUP.1) else {
        return Vec::new();
    };
    let held = kit.cups.iter().filter(|cup| cup.is_positive());
    let mut parts: Vec<Exact> = held
        .flat_map(|cup| run(*cup, Some(Exact::ONE), *cup, Some(Unit::Cup)))
        .map(|said| said.amount)
        .filter(|part| *part >= least)
        .collect();
    parts.sort();
    parts.dedup();
    parts
}

/// Whether a sum of two measures is further than the set share from every plain one.
fn worth_a_second_measure(sum: Measured, plain: &[Measured], measures: Measures) -> bool {
    let size = |said: Measured| said.volume(measures).map(Exact::to_f64);
    let Some(sum) = size(sum) else { return false };
    plain
        .iter()
        .filter_map(|one| size(*one))
        .all(|one| (sum - one).abs() > NOT_WORTH_A_SECOND_MEASURE * one)
}

/// `from`, `from + step`, … below `to`; without a `to`, `from` alone.
fn run(from: Exact, to: Option<Exact>, step: Exact, unit: Option<Unit>) -> Vec<Measured> {
    let amount = |n: i64| from.checked_add(step.checked_mul(Exact::whole(n))?);
    let amounts = (0..LONGEST_RUN).map_while(amount);
    let within = amounts.take_while(|a| to.map_or(*a == from, |to| *a < to));
    within
        .map(|amount| Measured {
            amount,
            unit,
            plus: None,
        })
        .collect()
}

/// All rungs of a ladder of the table, and the step of its endless row.
fn runs(ladder: &str) -> Option<(Vec<Measured>, Measured)> {
    let mut said = Vec::new();
    let mut endless = None;
    for line in TABLE.lines().filter(|line| !line.starts_with('#')).skip(1) {
        let cells: Vec<&str> = line.split('\t').collect();
        let [name, from, to, step, unit, _source] = cells[..] else {
            continue;
        };
        if name != ladder {
            continue;
        }
        let (from, step, unit) = (from.parse().ok()?, step.parse().ok()?, Unit::from_spelling(unit));
        said.extend(run(from, to.parse().ok(), step, unit));
        if to == "-" {
            endless = Some(Measured {
                amount: step,
                unit,
                plus: None,
            });
        }
    }
    Some((said, endless?))
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn every_row_of_the_table_is_whole() {
        for line in TABLE.lines().filter(|line| !line.starts_with('#')).skip(1) {
            let cells: Vec<&str> = line.split('\t').collect();
            assert_eq!(cells.len(), 6, "{line}");
            let [ladder, from, to, step, unit, source] = cells[..] else {
                unreachable!()
            };
            let (from, step): (Exact, Exact) = (from.parse().unwrap(), step.parse().unwrap());
            assert!(from.is_positive() && step.is_positive() && !source.is_empty(), "{line}");
            assert_eq!(
                Unit::from_spelling(unit).is_none(),
                ladder.ends_with("pieces"),
                "{line}"
            );
            match to.parse::<Exact>() {
                Ok(to) => assert!(to > from, "{line}"),
                Err(_) => assert!(to == "-" && from.checked_div(step).unwrap().is_whole(), "{line}"),
            }
        }
    }

    #[test]
    fn cups_make_the_parts_a_cook_knows() {
        let parts: Vec<String> = cup_parts(&Kit::default()).iter().map(Exact::to_string).collect();
        assert_eq!(parts, ["1/4", "1/3", "1/2", "2/3", "3/4"]);
    }

    #[test]
    fn a_drawer_without_a_third_measures_no_thirds() {
        let mut kit = Kit::default();
        kit.cups.retain(|cup| cup.denominator() != 3);
        let third = Unit::Cup.volume(Measures::Us).unwrap().to_f64() / 3.0;
        let ladder = volumes(&kit).unwrap();
        assert_eq!(ladder.nearest(third).unwrap().to_string(), "¼ cup + 1 tbsp");
        assert_eq!(
            volumes(&Kit::default()).unwrap().nearest(third).unwrap().to_string(),
            "⅓ cup"
        );
    }
}
