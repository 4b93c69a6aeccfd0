//! Amounts 'to taste': salt is solved for by mass balance to the writer's target, the rest are small stated amounts.

use potwright_larder::{Food, Kind};
use potwright_measure::{Exact, Mass, Spread, Unit, fractions};
use potwright_pot::{Lot, Process, Stuff, Trace};

use crate::foods::Foods;
use crate::reading::{served, share};
use crate::table::{Table, rows};
use crate::{Target, ToTaste};

static TABLE: Table = Table::of(include_str!("../data/to_taste.tsv"));

/// Cookings allowed to bring the dish to its target.
const ROUNDS: usize = 4;

/// How near the middle of the target is near enough, relative: a tenth of what a tongue can tell apart (10 to 15 %,
/// textbook value, from memory).
const NEAR: f64 = 0.01;

/// Grams of fine salt in a teaspoon where the larder has none (USDA SR, table salt; common practice within ×/÷ 1.5).
const SALT_PER_TEASPOON_G: f64 = 6.0;

/// A process with its amounts solved, and the central run of it.
#[derive(Clone, Debug)]
pub(crate) struct Tasted {
    pub(crate) process: Process,
    pub(crate) trace: Trace,
    pub(crate) to_taste: Vec<ToTaste>,
    /// Lots that were solved for but do not change the dish: the method never puts them in.
    pub(crate) idle: Vec<usize>,
}

/// Salt to add to `mass_kg` of a dish of salinity `from` to reach `to`, both kilogram per kilogram, with a salt of
/// which a share `purity` is salt: dm = m·(wt − w0) ÷ (p − wt), from the balance w0·m + p·dm = wt·(m + dm).
///
/// Nought when the dish is there already, and when the salt is too weak to get it there.
#[must_use]
pub fn salt_to_reach_kg(mass_kg: f64, from: f64, to: f64, purity: f64) -> f64 {
    if to <= from || to >= purity {
        return 0.0;
    }
    mass_kg * (to - from) / (purity - to)
}

/// Solves the lots 'to taste' of a process; `cook` is the central run.
pub(crate) fn solve(
    mut process: Process,
    target: &Target,
    cook: &dyn Fn(&Process) -> Trace,
    foods: &dyn Foods,
) -> Tasted {
    let lots: Vec<usize> = process
        .to_taste
        .iter()
        .copied()
        .filter(|lot| *lot < process.lots.len())
        .collect();
    for lot in &lots {
        process.lots[*lot].mass = Mass::ZERO;
    }
    let mut trace = cook(&process);
    if lots.is_empty() {
        return Tasted {
            process,
            trace,
            to_taste: Vec::new(),
            idle: Vec::new(),
        };
    }
    let unsalted = Dish::of(&trace);
    let (salts, others): (Vec<usize>, Vec<usize>) = lots.into_iter().partition(|lot| is_salt(&process.lots[*lot]));
    let mut to_taste: Vec<ToTaste> = others
        .iter()
        .map(|lot| stated(&mut process.lots[*lot], *lot, unsalted.mass_kg, foods))
        .collect();
    let wanted = Wanted::of(target, salts, unsalted);
    let mut idle = Vec::new();
    if wanted.needs_some() {
        idle = wanted.reach(&mut process, &mut trace, cook);
    } else if !others.is_empty() {
        trace = cook(&process);
    }
    to_taste.extend(wanted.salts.iter().map(|lot| salted(&process.lots[*lot], *lot, foods)));
    to_taste.sort_by_key(|row| row.lot);
    Tasted {
        process,
        trace,
        to_taste,
        idle,
    }
}

fn is_salt(lot: &Lot) -> bool {
    lot.kind == Kind::Salt || share(lot.matter.kg(Stuff::Salt), lot.matter.total_kg()) > 0.5
}

/// What salt is reckoned against: what is eaten of a finished dish.
#[derive(Clone, Copy)]
struct Dish {
    mass_kg: f64,
    /// Kilogram per kilogram.
    salinity: f64,
}

impl Dish {
    fn of(trace: &Trace) -> Self {
        let dish = served(trace);
        Dish {
            mass_kg: dish.total_kg(),
            salinity: share(dish.kg(Stuff::Salt), dish.total_kg()),
        }
    }
}

/// The target in kilograms per kilogram, the lots of salt that are to reach it, and the dish without them.
struct Wanted {
    low: f64,
    high: f64,
    salts: Vec<usize>,
    unsalted: Dish,
}

impl Wanted {
    fn of(target: &Target, salts: Vec<usize>, unsalted: Dish) -> Self {
        // A target that is no sensible one is brought into sensible bounds, low end first.
        let sane = |percent: f64| {
            if percent.is_finite() {
                percent.clamp(0.0, 10.0) / 100.0
            } else {
                0.0
            }
        };
        let (a, b) = (sane(target.salt_percent.0), sane(target.salt_percent.1));
        Wanted {
            low: a.min(b),
            high: a.max(b),
            salts,
            unsalted,
        }
    }

    fn middle(&self) -> f64 {
        f64::midpoint(self.low, self.high)
    }

    /// Whether there is salt to taste and the dish is not there without it.
    fn needs_some(&self) -> bool {
        !self.salts.is_empty() && self.unsalted.salinity < self.low
    }

    /// Sets the salts' masses and the range of each from what a dish of `mass_kg` without them lacks, times
    /// `yielded`, the salt that must go in for each gram that arrives in the dish.
    fn set(&self, process: &mut Process, mass_kg: f64, yielded: f64) {
        for lot in &self.salts {
            let Some(entry) = process.lots.get_mut(*lot) else {
                continue;
            };
            let made_up = entry.matter.total_kg();
            let purity = if made_up > 0.0 {
                entry.matter.kg(Stuff::Salt) / made_up
            } else {
                1.0
            };
            let kg = |to: f64| {
                let all = salt_to_reach_kg(mass_kg, self.unsalted.salinity, to, purity);
                all * yielded / self.salts.len() as f64
            };
            let mid = kg(self.middle());
            entry.mass = Mass::from_kilograms(mid);
            entry.purchased = entry.mass;
            entry.spread = Spread {
                low: share(kg(self.low), mid),
                mid: 1.0,
                high: share(kg(self.high), mid),
            };
        }
    }

    /// Cooks until the dish is at the middle of the target; gives the lots that turn out not to reach it.
    fn reach(&self, process: &mut Process, trace: &mut Trace, cook: &dyn Fn(&Process) -> Trace) -> Vec<usize> {
        let lacks = self.middle() - self.unsalted.salinity;
        let (mut mass_kg, mut yielded) = (self.unsalted.mass_kg, 1.0);
        for _ in 0..ROUNDS {
            self.set(process, mass_kg, yielded);
            *trace = cook(process);
            let now = Dish::of(trace);
            if (now.salinity - self.middle()).abs() <= NEAR * self.middle() {
                return Vec::new();
            }
            let gained = share(now.salinity - self.unsalted.salinity, lacks);
            if gained < 0.05 {
                return self.salts.clone();
            }
            // Part of the salt may be strained off or stay with what is thrown away: what arrives is in proportion.
            yielded /= gained;
            mass_kg = now.mass_kg * share(1.0 - now.salinity, 1.0 - self.unsalted.salinity);
        }
        let gained = Dish::of(trace).salinity - self.unsalted.salinity;
        if gained < 0.5 * lacks {
            self.salts.clone()
        } else {
            Vec::new()
        }
    }
}

/// Sets a lot that is no salt to its stated amount.
fn stated(lot: &mut Lot, index: usize, dish_kg: f64, foods: &dyn Foods) -> ToTaste {
    let row = |kind: Kind| rows(&TABLE).find(|row| row.word(0) == Some(kind));
    let per_kg = row(lot.kind)
        .or_else(|| row(Kind::Other))
        .and_then(|row| Some((row.number(1)?, row.number(2)?, row.number(3)?)));
    let (low, mid, high) = per_kg.unwrap_or((0.0, 0.0, 0.0));
    lot.mass = Mass::from_grams(mid * dish_kg);
    lot.purchased = lot.mass;
    lot.spread = Spread {
        low: share(low, mid),
        mid: 1.0,
        high: share(high, mid),
    };
    let grams = (low * dish_kg, high * dish_kg);
    ToTaste {
        lot: index,
        name: lot.name.clone(),
        grams,
        says: says(grams, &lot.name, per_teaspoon_g(foods.of(lot))),
    }
}

/// The row of a salt that was solved for.
fn salted(lot: &Lot, index: usize, foods: &dyn Foods) -> ToTaste {
    let mid_g = lot.mass.grams();
    let grams = (mid_g * lot.spread.low, mid_g * lot.spread.high);
    let name = lot.name.clone();
    if mid_g <= 0.0 {
        return ToTaste {
            lot: index,
            name,
            grams: (0.0, 0.0),
            says: "needs none".to_owned(),
        };
    }
    let spoon_g = per_teaspoon_g(foods.of(lot)).unwrap_or(SALT_PER_TEASPOON_G);
    let says = says(grams, &name, Some(spoon_g));
    ToTaste {
        lot: index,
        name,
        grams,
        says,
    }
}

fn per_teaspoon_g(food: Option<&Food>) -> Option<f64> {
    let weights = &food?.weights;
    let spoon = weights.iter().find(|weight| weight.unit == Some(Unit::Teaspoon));
    spoon.map(|weight| weight.mass.grams()).filter(|grams| *grams > 0.0)
}

/// `¾ to 1½ teaspoons of fine salt (5 to 9 g)`; in grams alone when a spoon's weight is not known.
fn says((low_g, high_g): (f64, f64), name: &str, per_teaspoon_g: Option<f64>) -> String {
    let grams = match (gram_text(low_g), gram_text(high_g)) {
        (low, high) if low == high => format!("{high} g"),
        (low, high) => format!("{low} to {high} g"),
    };
    let Some(spoon_g) = per_teaspoon_g else {
        return format!("{grams} of {name}");
    };
    let spoons = match (spoon_text(low_g / spoon_g), spoon_text(high_g / spoon_g)) {
        ((low, low_unit), (high, high_unit)) if (&low, low_unit) == (&high, high_unit) => join(&high, high_unit),
        // '1 to 1½ teaspoons', but '½ teaspoon to 1 tablespoon': the unit once when it is the same.
        ((low, low_unit), (high, high_unit)) if singular(low_unit) == singular(high_unit) => {
            format!("{low} to {}", join(&high, high_unit))
        }
        ((low, low_unit), (high, high_unit)) => format!("{} to {}", join(&low, low_unit), join(&high, high_unit)),
    };
    // A teaspoon of salt holds 3 to 6 g by its kind: where the page does not say which, the fine one is meant.
    let name = if name == "salt" { "fine salt" } else { name };
    format!("{spoons} of {name} ({grams})")
}

fn gram_text(grams: f64) -> String {
    if grams < 3.0 {
        format!("{grams:.1}")
    } else {
        format!("{grams:.0}")
    }
}

fn join(number: &str, unit: &str) -> String {
    if unit.is_empty() {
        number.to_owned()
    } else {
        format!("{number} {unit}")
    }
}

fn singular(unit: &str) -> &str {
    unit.strip_suffix('s').unwrap_or(unit)
}

/// A number of teaspoons as a cook measures it: to the quarter teaspoon, from three on to the half tablespoon.
fn spoon_text(teaspoons: f64) -> (String, &'static str) {
    let (number, unit) = if teaspoons < 2.875 {
        (Exact::ratio((teaspoons * 4.0).round() as i64, 4), Unit::Teaspoon)
    } else {
        (
            Exact::ratio((teaspoons / 3.0 * 2.0).round() as i64, 2),
            Unit::Tablespoon,
        )
    };
    match number {
        Some(number) if number.is_positive() => (fractions::cook(number), unit.written(number)),
        _ => ("a pinch".to_owned(), ""),
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing::{self, Shelf};
    use std::cell::Cell;

    /// The balance read backwards: 2.976 kg of water and 12 g of salt in 3 kg are 0.4 %; adding 3 kg · (0.008 −
    /// 0.004) ÷ (1 − 0.008) = 12.097 g makes 24.097 of 3012.097 g: 0.8 %.
    #[test]
    fn the_mass_balance() {
        let added = salt_to_reach_kg(3.0, 0.004, 0.008, 1.0);
        assert!((added - 0.012_097).abs() < 1e-6);
        assert!(((0.012 + added) / (3.0 + added) - 0.008).abs() < 1e-12);
        // Table salt of 98.5 % takes more: 3 · 0.004 ÷ (0.985 − 0.008).
        assert!((salt_to_reach_kg(3.0, 0.004, 0.008, 0.985) - 0.012_282).abs() < 1e-6);
        assert_eq!(salt_to_reach_kg(3.0, 0.008, 0.008, 1.0), 0.0);
        assert_eq!(salt_to_reach_kg(3.0, 0.0, 0.5, 0.1), 0.0);
    }

    /// Two kilograms of soup with `salted_g` of salt in it, and salt to taste of which `arrives` gets into the dish.
    fn soup(salted_g: f64, arrives: f64) -> Tasted {
        let mut salt = testing::lot("fine salt", Kind::Salt, 0.0);
        salt.matter = testing::matter(&[(Stuff::Salt, 1.0)]);
        let mut process = testing::process(&[salt, testing::lot("pepper", Kind::Spice, 0.0)]);
        process.to_taste = vec![0, 1];
        let runs = Cell::new(0);
        let cook = |process: &Process| {
            runs.set(runs.get() + 1);
            let mut trace = testing::trace(process);
            let salt = salted_g / 1000.0 + arrives * process.lots[0].mass.kilograms();
            trace.served_liquid = testing::matter(&[(Stuff::Water, 2.0), (Stuff::Salt, salt)]);
            trace
        };
        let found = solve(process, &Target::default(), &cook, &Shelf(Vec::new()));
        assert!(runs.get() <= 1 + ROUNDS, "{}", runs.get());
        found
    }

    fn salinity(found: &Tasted) -> f64 {
        let dish = served(&found.trace);
        100.0 * dish.kg(Stuff::Salt) / dish.total_kg()
    }

    /// Default target 0.6 to 1.0 %: from nothing 2000 · 0.006 ÷ 0.994 = 12.07 to 2000 · 0.01 ÷ 0.99 = 20.20 g; set to
    /// 0.8 %.
    #[test]
    fn salt_is_solved_to_the_middle_of_the_target() {
        let found = soup(0.0, 1.0);
        assert!((salinity(&found) - 0.8).abs() < 0.008, "{}", salinity(&found));
        let row = &found.to_taste[0];
        assert!((row.grams.0 - 12.07).abs() < 0.01, "{:?}", row.grams);
        assert!((row.grams.1 - 20.20).abs() < 0.01, "{:?}", row.grams);
        assert_eq!(row.says, "2 teaspoons to 1 tablespoon of fine salt (12 to 20 g)");
        assert_eq!(found.to_taste[1].name, "pepper");
        assert!(found.process.lots[1].mass.grams() > 0.0);
    }

    #[test]
    fn salt_that_is_strained_off_is_made_up_for() {
        let found = soup(2.0, 0.6);
        assert!((salinity(&found) - 0.8).abs() < 0.008, "{}", salinity(&found));
        assert!(found.idle.is_empty());
    }

    /// 13 g in two kilograms are 0.65 %: inside the target, so it needs none.
    #[test]
    fn a_dish_that_is_there_needs_none() {
        let found = soup(13.0, 1.0);
        assert_eq!(found.to_taste[0].says, "needs none");
        assert_eq!(found.to_taste[0].grams, (0.0, 0.0));
        assert_eq!(found.process.lots[0].mass, Mass::ZERO);
    }

    #[test]
    fn salt_that_never_goes_in_is_told() {
        let found = soup(0.0, 0.0);
        assert_eq!(found.idle, [0]);
    }

    #[test]
    fn spoons_as_a_cook_says_them() {
        let salt = |low, high| says((low, high), "fine salt", Some(6.0));
        assert_eq!(salt(4.5, 9.0), "¾ to 1½ teaspoons of fine salt (4 to 9 g)");
        assert_eq!(salt(0.3, 3.1), "a pinch to ½ teaspoon of fine salt (0.3 to 3 g)");
        assert_eq!(salt(6.0, 6.1), "1 teaspoon of fine salt (6 g)");
        assert_eq!(says((6.0, 6.0), "salt", Some(6.0)), "1 teaspoon of fine salt (6 g)");
        assert_eq!(says((1.0, 2.0), "harissa", None), "1.0 to 2.0 g of harissa");
    }
}
