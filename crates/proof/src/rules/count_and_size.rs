//! Count and size disagree.

use potwright_larder::Larder;
use potwright_manuscript::{Ingredient, Quantity, Size};
use potwright_measure::{Dimension, Measures, Unit};
use potwright_pot::{Lot, Source};

use crate::cooked::says;
use crate::usage::name;
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "C11",
    name: "count and size disagree",
    finds: "A number of pieces and a weight on one line that give a piece no such food has, and packages whose number and size do not give the total beside them.",
    why: "One of the two is a slip, and the reader who weighs cooks another dish than the one who counts.",
    fires: "Onion soup\n\n2 onions (about 1.5 kg), sliced\n1 litre stock\n\nPut the onions and stock in a pot and simmer for 30 minutes until soft.\n",
    silent: "Onion soup\n\n10 onions (about 1.5 kg), sliced\n1 litre stock\n\nPut the onions and stock in a pot and simmer for 30 minutes until soft.\n",
    instead: "Weigh what was counted, and correct the one that was not.",
    source: "weights of pieces in the larder, each with its source; arithmetic",
    check,
};

/// Pieces vary beyond the table's smallest and largest by this, ×/÷ (common practice, no source).
const LEEWAY: f64 = 1.5;
/// Tins are filled and weights rounded, ×/÷ (common practice, no source).
const ROUNDED: f64 = 1.25;

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let lines = manuscript.recipe.ingredients.iter().enumerate();
    lines
        .filter_map(|(index, line)| {
            let because = packages(line).or_else(|| {
                let lots = &manuscript.reckoned.process.lots;
                let lot = lots.iter().find(|lot| lot.ingredient == Some(index))?;
                pieces(line, lot)
            })?;
            Some(Query {
                code: RULE.code.into(),
                weight: Weight::WorthALook,
                span: line.span,
                asks: format!("Do the number and the weight of the {} agree?", name(line)),
                because,
                try_words: None,
                see: Vec::new(),
            })
        })
        .collect()
}

/// Grams of a quantity by weight, low and high.
fn grams(quantity: &Quantity) -> Option<(f64, f64)> {
    let gram = quantity.unit?.mass(Measures::Metric)?.to_f64();
    let (low, high) = (
        quantity.amount.low.to_f64() * gram,
        quantity.amount.high.to_f64() * gram,
    );
    (low > 0.0 && high.is_finite()).then_some((low, high))
}

/// Low and high end of a count.
fn count(quantity: &Quantity) -> Option<(f64, f64)> {
    let counts = quantity.unit.is_none_or(|unit| unit.dimension() == Dimension::Piece);
    let (low, high) = (quantity.amount.low.to_f64(), quantity.amount.high.to_f64());
    (counts && low > 0.0).then_some((low, high))
}

/// 'Three 400 g tins (800 g)'.
fn packages(line: &Ingredient) -> Option<String> {
    let number = count(line.quantity.as_ref()?)?;
    let each = grams(line.package.as_ref()?)?;
    let all = line.also.iter().find_map(grams)?;
    // The total of drained tins is less than what they hold.
    if says(&line.line.text.to_lowercase(), &["drained", "weight", "net"]) {
        return None;
    }
    let (low, high) = (number.0 * each.0, number.1 * each.1);
    let same_figure = (all.0 / each.0 - 1.0).abs() < 0.02 || (all.0 / each.0 * 28.35 / 28.0 - 1.0).abs() < 0.02;
    let apart = high * ROUNDED < all.0 || low > all.1 * ROUNDED;
    (apart && !same_figure).then(|| {
        format!(
            "{} at {} come to {}, and the line says {}",
            plain(number.0),
            weight(each.0),
            weight(low),
            weight(all.0)
        )
    })
}

/// '2 onions (about 1.5 kg)': grams of a piece against what the larder has of it.
fn pieces(line: &Ingredient, lot: &Lot) -> Option<String> {
    let counted = line.quantity.as_ref().filter(|_| line.items.len() == 1)?;
    let number = count(counted)?;
    let words = line.line.text.to_lowercase();
    let each = says(&words, &["each", "apiece"]);
    let said = line.package.as_ref().and_then(grams);
    let total = line.also.iter().find_map(grams).filter(|_| said.is_none());
    let one = match (said, total) {
        (Some(one), _) => one,
        (None, Some(one)) if each => one,
        (None, Some(all)) => (all.0 / number.1, all.1 / number.0),
        (None, None) => return None,
    };
    let Source::Larder(id) = lot.source else { return None };
    // A tin, a packet, a bunch is as large as its maker makes it.
    if counted.unit.is_some_and(|unit| !grows(unit)) {
        return None;
    }
    let size = match line.size {
        Some(Size::Small) => "small",
        Some(Size::Large) => "large",
        Some(Size::Medium) => "medium",
        _ => "",
    };
    let cut = line.preparation.as_ref().map_or("", |words| words.text.as_str());
    let usual = Larder::built_in().get(id)?.weight_of(counted.unit, cut, size)?.mass_g;
    let (low, high) = (usual.low / LEEWAY, usual.high * LEEWAY);
    let apart = one.1 < low || one.0 > high;
    (apart && usual.low > 0.0).then(|| {
        format!(
            "that is {} a piece, where {} to {} is usual",
            weight((one.0 + one.1) / 2.0),
            weight(usual.low),
            weight(usual.high)
        )
    })
}

/// Units that nature sizes.
const fn grows(unit: Unit) -> bool {
    matches!(
        unit,
        Unit::Clove | Unit::Head | Unit::Bulb | Unit::Leaf | Unit::Rib | Unit::Fillet | Unit::Piece
    )
}

fn plain(number: f64) -> String {
    if number.fract() < 0.01 {
        format!("{number:.0}")
    } else {
        format!("{number:.1}")
    }
}

/// A weight in two figures that a cook reads.
fn weight(grams: f64) -> String {
    match grams {
        g if g >= 1000.0 => format!("{:.1} kg", g / 1000.0),
        g if g >= 100.0 => format!("{:.0} g", (g / 10.0).round() * 10.0),
        g if g >= 10.0 => format!("{g:.0} g"),
        g => format!("{g:.1} g"),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn weights_in_two_figures() {
        assert_eq!(weight(1500.0), "1.5 kg");
        assert_eq!(weight(123.0), "120 g");
        assert_eq!(weight(3.24), "3.2 g");
    }

    /// Three tins of 400 g hold 1,200 g by hand, not 800.
    #[test]
    fn packages_are_multiplied() {
        let because = |line: &str| {
            let text = format!("Soup\n\n{line}\n1 litre stock\n\nPut all in a pot and simmer for 20 minutes.\n");
            let recipe = potwright_manuscript::read(&text);
            recipe.ingredients.first().and_then(packages)
        };
        assert_eq!(because("3 x 400 g tins chopped tomatoes (1.2 kg)"), None);
        if let Some(says) = because("3 x 400 g tins chopped tomatoes (800 g)") {
            assert!(says.contains("1.2 kg"), "{says}");
        }
    }
}
