//! What beans, peas and lentils are soaked and boiled in, and how soon they soften in it: rules of `data/pulses.tsv`.

use std::sync::LazyLock;

use potwright_measure::Spread;

use crate::cook::group::Group;
use crate::cook::solutes::strength;
use crate::cook::vessel::VesselState;
use crate::{Matter, Nutrient, Stuff};

/// A rule: from and to in kilogram per kilogram of water, and the factor of the time at the full.
struct Rule {
    from: f64,
    to: f64,
    factor: Spread,
}

impl Rule {
    /// The factor at a strength, read at a deviate.
    fn at(&self, strength: f64, z: f64) -> f64 {
        let share = ((strength - self.from) / (self.to - self.from)).clamp(0.0, 1.0);
        1.0 + (self.factor.at(z).max(0.1) - 1.0) * share
    }
}

struct Rules {
    acid: Rule,
    calcium: Rule,
    brine: Rule,
}

static RULES: LazyLock<Rules> = LazyLock::new(|| Rules {
    acid: rule("acid"),
    calcium: rule("calcium"),
    brine: rule("brine"),
});

/// A row of the table; one that is not there changes nothing.
fn rule(what: &str) -> Rule {
    let row = include_str!("../../data/pulses.tsv")
        .lines()
        .map(|line| line.split('\t').collect::<Vec<_>>())
        .find(|cells| cells.first() == Some(&what));
    let number = |place: usize, otherwise: f64| {
        let cell = row.as_ref().and_then(|cells| cells.get(place));
        cell.and_then(|cell| cell.parse().ok()).unwrap_or(otherwise)
    };
    Rule {
        from: number(1, 0.0) / 1000.0,
        to: number(2, 1.0) / 1000.0,
        factor: Spread {
            low: number(3, 1.0),
            mid: number(4, 1.0),
            high: number(5, 1.0),
        },
    }
}

impl VesselState {
    /// By how much longer pulses take in this liquid, read at a deviate; 1 for all else.
    pub(super) fn lingering(&self, group: &Group, z: f64) -> f64 {
        if !group.habits.pulse {
            return 1.0;
        }
        let rules = &*RULES;
        let acid = rules.acid.at(strength(&self.liquid, Stuff::Acid), z);
        let calcium = rules.calcium.at(calcium(&self.liquid), z);
        // Low is fast here: the deviate that lengthens the others lengthens this too.
        let brine = rules.brine.at(group.solutes.brined, z);
        acid * calcium * brine
    }
}

/// Calcium in the water of a liquid, kilogram per kilogram.
fn calcium(liquid: &Matter) -> f64 {
    let water = liquid.kg(Stuff::Water);
    if water > 0.0 {
        liquid.nutrient(Nutrient::CalciumMg) * 1e-6 / water
    } else {
        0.0
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Each rule is in the table, with a spread of at least the house's ×/÷1.5 or an end at 'no effect'.
    #[test]
    fn rules_are_read() {
        for (what, grows) in [("acid", true), ("calcium", true), ("brine", false)] {
            let rule = rule(what);
            let Spread { low, mid, high } = rule.factor;
            assert!(rule.from > 0.0 && rule.to > rule.from, "{what}");
            assert!(low < mid && mid < high && high / low >= 1.5, "{what}");
            assert_eq!(rule.at(1.0, 0.0) > 1.0, grows, "{what}");
            assert_eq!(rule.at(0.0, 0.0), 1.0, "{what}");
            // Gradual: half-way between the ends half of it.
            let half = rule.at(0.5 * (rule.from + rule.to), 0.0);
            assert!((half - 1.0 - 0.5 * (mid - 1.0)).abs() < 1e-9, "{what}");
        }
    }
}
