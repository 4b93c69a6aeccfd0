//! One amount in other measures: multiplied, turned from volume to weight or back where the larder can, and rounded
//! to what a kitchen measures.

use potwright_larder::Kind;
use potwright_measure::{Amount, Dimension, Exact, Kit, Mass, Measured, Measures, Pieces, Rounder, Unit, Volume};

use super::food::{Known, is_cut, spooned_in_the_us};

/// From eight cups on a solid is weighed in a US kitchen too, where a liquid goes to quarts (common practice, no source).
const CUPPED_ML: f64 = 8.0 * 236.588_236_5;

/// The measures an amount is to be said in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum System {
    Metric,
    Us,
    /// The system of the unit it is written in.
    Own,
    /// The very unit it is written in: a heaped spoon is counted in heaped spoons.
    Kept,
}

/// An amount in its new measures.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Said {
    pub(super) low: Measured,
    pub(super) high: Measured,
    /// The larder had to guess the weight of a cup: the amount is 'about' so much.
    pub(super) guessed: bool,
    /// A volume of a solid that stays a volume in metric measures because no weight is on record.
    pub(super) unweighed: bool,
    /// Rounded over exact, minus one: the worse of the two ends.
    pub(super) off: f64,
}

/// The rounders of the kitchens an amount may be measured in.
#[derive(Debug)]
pub(super) struct Kitchens {
    home: Measures,
    metric: Kitchen,
    us: Kitchen,
    own: Kitchen,
    /// The home kitchen with a set of cups in the drawer, for a page that asks for cups.
    cups: Kitchen,
    ounces: Kitchen,
}

/// What one kitchen can measure, and whose cups and spoons it has.
#[derive(Debug)]
struct Kitchen {
    rounder: Rounder,
    measures: Measures,
}

impl Kitchen {
    fn of(kit: &Kit) -> Option<Kitchen> {
        Some(Kitchen {
            rounder: kit.rounder()?,
            measures: kit.measures,
        })
    }
}

impl Kitchens {
    /// `None` only if a usual kit could measure nothing.
    pub(super) fn new(home: Measures) -> Option<Kitchens> {
        let own = Kit::of(home);
        let cups = if own.cups.is_empty() {
            Kit::of(Measures::Us).cups
        } else {
            own.cups.clone()
        };
        let imperial = if home == Measures::Us {
            Kit::of(home)
        } else {
            Kit::of(Measures::Imperial)
        };
        Some(Kitchens {
            home: own.measures,
            metric: Kitchen::of(&Kit::of(Measures::Metric))?,
            us: Kitchen::of(&Kit::of(Measures::Us))?,
            own: Kitchen::of(&own)?,
            cups: Kitchen::of(&Kit { cups, ..own })?,
            ounces: Kitchen::of(&imperial)?,
        })
    }

    /// Whose cups and spoons the page means.
    pub(super) fn home(&self) -> Measures {
        self.home
    }

    /// The amount times `factor`. `None` beyond exact numbers, or for a size that is none.
    pub(super) fn set(&self, written: Written<'_>, factor: Exact, system: System) -> Option<Said> {
        let amount = written.amount.checked_scale(factor)?;
        let Some(unit) = written.unit else {
            let pieces = if is_cut(written.known.kind()) {
                Pieces::Cut
            } else {
                Pieces::Whole
            };
            return self.counted(amount, None, pieces);
        };
        if system == System::Kept {
            return self.counted(amount, Some(unit), Pieces::Cut);
        }
        if system == System::Metric && unit == Unit::Ounce && written.known.drink {
            let ml = Unit::FluidOunce.volume(self.ounces_of_drinks())?;
            return self.metric.volume(ends(amount, ml)?);
        }
        match unit.dimension() {
            Dimension::Piece => self.pieces(amount, unit, written.known, system),
            Dimension::Mass => {
                let grams = unit.mass(self.home)?;
                self.weighed(ends(amount, grams)?, unit, written.known, system)
            }
            // A glass is a glass, whatever it holds.
            Dimension::Volume if matches!(unit, Unit::Glass | Unit::Ladle) => {
                self.counted(amount, Some(unit), Pieces::Cut)
            }
            Dimension::Volume => {
                let ml = unit.volume(self.home)?;
                self.poured(ends(amount, ml)?, unit, written.known, system)
            }
        }
    }

    /// Whose fluid ounces a drink comes in: those of the US unless the page is an imperial one.
    fn ounces_of_drinks(&self) -> Measures {
        match self.home {
            Measures::Imperial => Measures::Imperial,
            _ => Measures::Us,
        }
    }

    /// Whether an amount of this unit stands in the system already and need not be touched.
    pub(super) fn holds(&self, unit: Option<Unit>, known: &Known<'_>, system: System) -> bool {
        let Some(unit) = unit else { return true };
        if unit.dimension() == Dimension::Piece {
            return !(system == System::Metric && is_stick_of_fat(unit, known));
        }
        // Fingers, shakes and ladles are the same everywhere.
        if unit.spread() > 1.0 || matches!(system, System::Own | System::Kept) {
            return true;
        }
        let target = if system == System::Us {
            Measures::Us
        } else {
            Measures::Metric
        };
        let native = match system {
            System::Metric => unit.is_metric(),
            _ => !unit.is_metric(),
        };
        let spoon = matches!(unit, Unit::Teaspoon | Unit::Dessertspoon | Unit::Tablespoon);
        let same_size = match (unit.volume(self.home), unit.volume(target)) {
            (Some(here), Some(there)) => same(here, there),
            (None, None) => unit.mass(self.home) == unit.mass(target),
            _ => false,
        };
        same_size && (native || spoon)
    }

    fn counted(&self, amount: Amount, unit: Option<Unit>, pieces: Pieces) -> Option<Said> {
        let one = |number: Exact| {
            let said = self.own.rounder.pieces(number.to_f64(), pieces)?;
            Some(Measured { unit, ..said })
        };
        let (low, high) = (one(amount.low)?, one(amount.high)?);
        let off = worse(off(low.amount, amount.low), off(high.amount, amount.high));
        Some(Said {
            low,
            high,
            guessed: false,
            unweighed: false,
            off,
        })
    }

    /// Bunches, tins, cloves: whole ones, or parts where that would be far off and one can be parted.
    fn pieces(&self, amount: Amount, unit: Unit, known: &Known<'_>, system: System) -> Option<Said> {
        /// Further off than this, a part is called for (common practice, no source).
        const FAR_OFF: f64 = 0.125;
        if system == System::Metric
            && is_stick_of_fat(unit, known)
            && let Some(grams) = known.grams_of_one(Some(unit))
        {
            let ends = (amount.low.to_f64() * grams, amount.high.to_f64() * grams);
            return self.metric.mass(ends);
        }
        let whole = self.counted(amount, Some(unit), Pieces::Whole)?;
        if whole.off.abs() <= FAR_OFF || !is_parted(unit) {
            Some(whole)
        } else {
            self.counted(amount, Some(unit), Pieces::Cut)
        }
    }

    fn weighed(&self, grams: (f64, f64), unit: Unit, known: &Known<'_>, system: System) -> Option<Said> {
        match system {
            System::Metric => self.metric.mass(grams),
            System::Own | System::Kept if unit.is_metric() => self.metric.mass(grams),
            System::Own | System::Kept => self.ounces.mass(grams),
            System::Us => {
                let spooned = known.liquid == Some(true) || known.kind().is_some_and(spooned_in_the_us);
                match known.density().filter(|(_, guess)| spooned && !guess) {
                    Some((density, _)) if known.liquid == Some(true) || grams.1 / density < CUPPED_ML => {
                        self.us.volume((grams.0 / density, grams.1 / density))
                    }
                    _ => self.us.mass(grams),
                }
            }
        }
    }

    fn poured(&self, ml: (f64, f64), unit: Unit, known: &Known<'_>, system: System) -> Option<Said> {
        /// Up to here what is written in spoons is spooned in a metric kitchen too: four tablespoons (common practice,
        /// no source). What is written in cups is weighed, however little, so that a food is not poured in one line
        /// and weighed in the next.
        const SPOONED_ML: f64 = 60.0;
        match system {
            System::Us => match known.density() {
                Some((density, false)) if known.liquid == Some(false) && ml.1 >= CUPPED_ML => {
                    self.us.mass((ml.0 * density, ml.1 * density))
                }
                _ => self.us.volume(ml),
            },
            System::Own if unit.is_metric() => self.metric.volume(ml),
            System::Own if unit == Unit::Cup => self.cups.volume(ml),
            System::Own if is_spoon(unit) || self.home == Measures::Us => self.own.volume(ml),
            System::Own | System::Kept => self.ounces.volume(ml),
            System::Metric if known.liquid == Some(true) || (is_spoon(unit) && ml.1 <= SPOONED_ML) => {
                self.metric.volume(ml)
            }
            System::Metric => match known.density() {
                Some((density, guessed)) => {
                    let said = self.metric.mass((ml.0 * density, ml.1 * density))?;
                    Some(Said { guessed, ..said })
                }
                None => Some(Said {
                    unweighed: known.liquid != Some(true),
                    ..self.metric.volume(ml)?
                }),
            },
        }
    }
}

impl Kitchen {
    fn mass(&self, (low, high): (f64, f64)) -> Option<Said> {
        let one = |grams: f64| self.rounder.mass(Mass::from_grams(grams));
        said(one(low)?, one(high)?, (low, high), |said| {
            said.mass(self.measures).map(Exact::to_f64)
        })
    }

    fn volume(&self, (low, high): (f64, f64)) -> Option<Said> {
        let one = |ml: f64| self.rounder.volume(Volume::from_millilitres(ml));
        said(one(low)?, one(high)?, (low, high), |said| {
            said.volume(self.measures).map(Exact::to_f64)
        })
    }
}

/// An amount on the page and what is known of its food.
#[derive(Clone, Copy, Debug)]
pub(super) struct Written<'a> {
    pub(super) amount: Amount,
    pub(super) unit: Option<Unit>,
    pub(super) known: &'a Known<'a>,
}

fn said(low: Measured, high: Measured, exact: (f64, f64), size: impl Fn(Measured) -> Option<f64>) -> Option<Said> {
    let share = |said: Measured, exact: f64| {
        if exact > 0.0 {
            size(said).map_or(0.0, |size| size / exact - 1.0)
        } else {
            0.0
        }
    };
    Some(Said {
        low,
        high,
        guessed: false,
        unweighed: false,
        off: worse(share(low, exact.0), share(high, exact.1)),
    })
}

/// Both ends in grams or millilitres.
fn ends(amount: Amount, one: Exact) -> Option<(f64, f64)> {
    Some((
        amount.low.checked_mul(one)?.to_f64(),
        amount.high.checked_mul(one)?.to_f64(),
    ))
}

fn off(rounded: Exact, exact: Exact) -> f64 {
    if exact.is_positive() {
        rounded.to_f64() / exact.to_f64() - 1.0
    } else {
        0.0
    }
}

fn worse(a: f64, b: f64) -> f64 {
    if a.abs() >= b.abs() { a } else { b }
}

/// Within two parts in a hundred: a US spoon and a metric one.
fn same(a: Exact, b: Exact) -> bool {
    (a.to_f64() / b.to_f64() - 1.0).abs() < 0.02
}

fn is_spoon(unit: Unit) -> bool {
    matches!(unit, Unit::Teaspoon | Unit::Dessertspoon | Unit::Tablespoon) || unit.spread() > 1.0
}

/// Butter is sold by the stick where it is measured by the stick; a metric kitchen weighs it.
fn is_stick_of_fat(unit: Unit, known: &Known<'_>) -> bool {
    unit == Unit::Stick && known.kind() == Some(Kind::Fat)
}

/// What can be used in part.
fn is_parted(unit: Unit) -> bool {
    matches!(
        unit,
        Unit::Bag
            | Unit::Bottle
            | Unit::Box
            | Unit::Bulb
            | Unit::Bunch
            | Unit::Can
            | Unit::Carton
            | Unit::Cube
            | Unit::Fillet
            | Unit::Handful
            | Unit::Head
            | Unit::Jar
            | Unit::Loaf
            | Unit::Packet
            | Unit::Piece
            | Unit::Slice
            | Unit::Stalk
            | Unit::Stick
            | Unit::Rib
            | Unit::Thumb
            | Unit::Tub
    )
}

impl Said {
    /// An amount that is not touched.
    pub(super) fn as_it_is(written: Written<'_>) -> Said {
        let one = |amount: Exact| Measured {
            amount,
            unit: written.unit,
            plus: None,
        };
        let (low, high) = (one(written.amount.low), one(written.amount.high));
        Said {
            low,
            high,
            guessed: false,
            unweighed: false,
            off: 0.0,
        }
    }
}
