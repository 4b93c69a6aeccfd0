//! Rounding to what can be measured: a ladder of sizes, and the rung nearest to a computed number.
//!
//! Rounding to the nearest rung of one fixed ladder is idempotent and never turns more into less, whatever the
//! rungs are. Half way goes up, as FDA's label guide has it (NLEA inspection guide, Attachment 6). Something never
//! rounds to nothing.

use std::fmt;

use serde::{Deserialize, Serialize};

use crate::{Exact, Measures, Unit, fractions};

/// A quantity as it is measured out: `2 tbsp`, `1 cup + 2 tbsp`, `1.2 l`, or `2½` of a thing counted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Measured {
    /// How many of the unit, 0 or more.
    pub amount: Exact,
    /// The unit; `None` for a plain count.
    pub unit: Option<Unit>,
    /// A second, smaller measure added to the first.
    pub plus: Option<(Exact, Unit)>,
}

impl Measured {
    /// One measure.
    #[must_use]
    pub const fn of(amount: Exact, unit: Unit) -> Self {
        Measured {
            amount,
            unit: Some(unit),
            plus: None,
        }
    }

    /// A plain count.
    #[must_use]
    pub const fn count(amount: Exact) -> Self {
        Measured {
            amount,
            unit: None,
            plus: None,
        }
    }

    /// The same with a second measure added.
    #[must_use]
    pub const fn and(self, amount: Exact, unit: Unit) -> Self {
        Measured {
            plus: Some((amount, unit)),
            ..self
        }
    }

    /// What it holds, in millilitres; `None` unless all of it is volume.
    #[must_use]
    pub fn volume(self, measures: Measures) -> Option<Exact> {
        self.total(|unit| unit.volume(measures))
    }

    /// What it weighs, in grams; `None` unless all of it is mass.
    #[must_use]
    pub fn mass(self, measures: Measures) -> Option<Exact> {
        self.total(|unit| unit.mass(measures))
    }

    fn total(self, factor: impl Fn(Unit) -> Option<Exact>) -> Option<Exact> {
        let first = self.amount.checked_mul(factor(self.unit?)?)?;
        match self.plus {
            None => Some(first),
            Some((amount, unit)) => first.checked_add(amount.checked_mul(factor(unit)?)?),
        }
    }

    /// Its size on a ladder: millilitres, grams or pieces.
    fn size(self, measures: Measures) -> Option<Exact> {
        match self.unit {
            None => Some(self.amount),
            Some(_) => self.volume(measures).or_else(|| self.mass(measures)),
        }
    }
}

impl fmt::Display for Measured {
    /// With short units, metric ones in decimals: `1½ tsp`, `1 cup + 2 tbsp`, `850 g`, `1.2 l`, `2½`.
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        // Nothing has no unit: '0', not '0 pinches'.
        let unit = self.unit.filter(|_| !self.amount.is_zero());
        let Some(unit) = unit else {
            return f.write_str(&fractions::cook(self.amount));
        };
        write_measure(f, self.amount, unit)?;
        if let Some((amount, unit)) = self.plus {
            f.write_str(" + ")?;
            write_measure(f, amount, unit)?;
        }
        Ok(())
    }
}

fn write_measure(f: &mut fmt::Formatter<'_>, amount: Exact, unit: Unit) -> fmt::Result {
    let number = if unit.is_metric() {
        fractions::decimal(amount, 3)
    } else {
        fractions::cook(amount)
    };
    let short = unit.abbreviation();
    write!(
        f,
        "{number} {}",
        if short == unit.name() {
            unit.written(amount)
        } else {
            short
        }
    )
}

/// One size that can be measured.
#[derive(Clone, Copy, Debug, PartialEq)]
struct Rung {
    /// Millilitres, grams or pieces.
    size: Exact,
    /// The same as a floating-point number, for comparing.
    at: f64,
    said: Measured,
}

/// All the sizes that can be measured, smallest first, then even steps without end.
///
/// A size is in millilitres, grams or pieces, according to what the ladder is of.
#[derive(Clone, Debug, PartialEq)]
pub struct Ladder {
    /// Rising strictly; the first is nothing at all. Never empty.
    rungs: Vec<Rung>,
    /// The step above the last rung.
    step: Rung,
}

impl Ladder {
    /// From what can be measured, in any order, and the even step above the largest of it; `None` when nothing can
    /// be measured, or the step is not more than nought.
    ///
    /// Of two ways to say one size, the one with fewer measures is kept, then the one with the smaller number.
    pub(crate) fn new(said: Vec<Measured>, step: Measured, measures: Measures) -> Option<Self> {
        let rung = |said: Measured| {
            said.size(measures).map(|size| Rung {
                size,
                at: size.to_f64(),
                said,
            })
        };
        let mut rungs: Vec<Rung> = said
            .into_iter()
            .filter_map(rung)
            .filter(|r| r.size.is_positive())
            .collect();
        rungs.sort_by(|a, b| {
            let parts = |r: &Rung| r.said.plus.is_some();
            (a.size, parts(a), a.said.amount).cmp(&(b.size, parts(b), b.said.amount))
        });
        rungs.dedup_by(|later, kept| later.size == kept.size);
        let smallest = rungs.first()?.said;
        rungs.insert(
            0,
            rung(Measured {
                amount: Exact::ZERO,
                plus: None,
                ..smallest
            })?,
        );
        let step = rung(step).filter(|step| step.size.is_positive())?;
        Some(Ladder { rungs, step })
    }

    /// The rungs at or below and at or above a size: equal when the size is a rung. `None` for what is not a size:
    /// below nought, not a number, or beyond exact numbers.
    #[must_use]
    pub fn around(&self, size: f64) -> Option<(Measured, Measured)> {
        let (below, above) = self.rungs_around(size)?;
        Some((below.said, above.said))
    }

    /// The rung nearest to a size, the upper one from half way; nothing only for nothing. `None` as for
    /// [`Ladder::around`].
    #[must_use]
    pub fn nearest(&self, size: f64) -> Option<Measured> {
        let (below, above) = self.rungs_around(size)?;
        let up = below.size.is_zero() || above.at - size <= size - below.at;
        Some(if size > 0.0 && up { above.said } else { below.said })
    }

    /// The most by which rounding a size can be off here: half the distance between the rungs about it, and the
    /// whole of it below the smallest rung. Nought on a rung. `None` as for [`Ladder::around`].
    #[must_use]
    pub fn error_bound(&self, size: f64) -> Option<f64> {
        let (below, above) = self.rungs_around(size)?;
        let gap = above.at - below.at;
        Some(if below.size.is_zero() { gap } else { gap / 2.0 })
    }

    fn rungs_around(&self, size: f64) -> Option<(Rung, Rung)> {
        if !size.is_finite() || size < 0.0 {
            return None;
        }
        let above = self.rungs.partition_point(|rung| rung.at < size);
        let Some(upper) = self.rungs.get(above) else {
            return self.steps_around(size);
        };
        let lower = if upper.at <= size {
            upper
        } else {
            self.rungs.get(above.checked_sub(1)?)?
        };
        Some((*lower, *upper))
    }

    /// Above the last rung: whole steps counted from nought.
    fn steps_around(&self, size: f64) -> Option<(Rung, Rung)> {
        // 2^53: above it floating-point numbers no longer tell neighbouring steps apart.
        const MOST_STEPS: f64 = 9_007_199_254_740_992.0;
        let count = (size / self.step.at).floor();
        if count >= MOST_STEPS {
            return None;
        }
        let count = count as i64;
        // The quotient is rounded, so the step below may be the one before or after.
        let near = || (count - 1..=count + 2).filter_map(|n| self.steps(n));
        let lower = near().rfind(|rung| rung.at <= size)?;
        let upper = near().find(|rung| rung.at >= size)?;
        let last = *self.rungs.last()?;
        Some((if lower.at < last.at { last } else { lower }, upper))
    }

    fn steps(&self, count: i64) -> Option<Rung> {
        let count = Exact::whole(count);
        let size = self.step.size.checked_mul(count)?;
        let said = Measured {
            amount: self.step.said.amount.checked_mul(count)?,
            ..self.step.said
        };
        Some(Rung {
            size,
            at: size.to_f64(),
            said,
        })
    }
}
