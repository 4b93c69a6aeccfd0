//! What else a line tells of its food: unit, state words, preparation, a plain count.

use potwright_measure::Unit;

use crate::{Kind, Market, State};

/// The words and the unit that stand around a food's name on the line.
#[derive(Clone, Copy, Debug, Default)]
pub struct Hints<'a> {
    /// Words of state or grade: `dried`, `ground`, `fresh`.
    pub state: &'a [String],
    /// The preparation the line gives: `finely chopped`, `boned and skinned`.
    pub preparation: &'a str,
    /// The unit of the amount.
    pub unit: Option<Unit>,
    /// The amount is a plain count: '2 peppers'.
    pub counted: bool,
    /// Whose English the page is in, where that is known: American purée is thin, British purée is paste.
    pub market: Option<Market>,
}

/// +1 when the line speaks for a food of this state and kind, −1 when it speaks against, 0 when it says nothing.
///
/// A sprig is fresh and a teaspoon of a herb nobody chopped is dried; what comes by the can is canned; what is
/// counted is a vegetable and not a spice. Common practice, no source.
pub(crate) fn for_or_against(hints: &Hints<'_>, state: State, kind: Kind) -> i8 {
    match hints.unit {
        Some(Unit::Can) => return if state == State::Canned { 1 } else { -1 },
        None if hints.counted => return counted(kind),
        _ => {}
    }
    if !matches!(kind, Kind::Herb | Kind::Spice) {
        return 0;
    }
    let fresh = says_fresh(hints);
    let dry = !fresh && matches!(hints.unit, Some(Unit::Teaspoon | Unit::Pinch | Unit::Dash));
    match (state == State::Raw, fresh, dry) {
        (true, true, _) | (false, _, true) => 1,
        (false, true, _) | (true, _, true) => -1,
        _ => 0,
    }
}

fn counted(kind: Kind) -> i8 {
    match kind {
        Kind::Vegetable | Kind::Root | Kind::Leaf | Kind::Onion | Kind::Fruit | Kind::Meat | Kind::Poultry => 1,
        Kind::Herb | Kind::Spice | Kind::Salt | Kind::Condiment | Kind::Stock => -1,
        _ => 0,
    }
}

/// Words that only fit a fresh herb.
const FRESH: [&str; 9] = [
    "fresh", "chopped", "torn", "picked", "snipped", "shredded", "leaves", "stalks", "sprig",
];

fn says_fresh(hints: &Hints<'_>) -> bool {
    let unit = matches!(
        hints.unit,
        Some(Unit::Sprig | Unit::Bunch | Unit::Handful | Unit::Leaf | Unit::Stalk | Unit::Stick)
    );
    let said = |word: &str| {
        hints.preparation.to_lowercase().contains(word)
            || hints.state.iter().any(|state| state.eq_ignore_ascii_case(word))
    };
    unit || FRESH.iter().any(|word| said(word))
}
