//! What is held against a row: our figure, the published one, and how near they are meant to be.

use super::row::Row;

/// What an evaluator makes of a row.
#[derive(Debug)]
pub(super) enum Judged {
    /// Figures of the row held against ours; at least one.
    Held(Vec<Check>),
    /// No figure of it is the engine's: why.
    LeftOut(&'static str),
}

/// One figure of a row and ours.
#[derive(Clone, Debug)]
pub(super) struct Check {
    /// What the figure is: the column, or what was cooked and read.
    pub quantity: String,
    pub ours: f64,
    /// As printed in the row.
    pub published: String,
    pub wanted: Wanted,
}

/// How near our figure is meant to be.
#[derive(Clone, Copy, Debug)]
pub(super) enum Wanted {
    /// To a value, within so much either way.
    Near { value: f64, within: f64 },
    /// Between two values, both included.
    Between(f64, f64),
    /// A value that our own spread, from `low` to `high`, must take in.
    Covered { value: f64, low: f64, high: f64 },
    /// Shown beside the published one, which was observed under conditions that nobody stated.
    Shown { value: f64 },
}

/// Tolerances where a row states none (relative).
pub(super) const CLOSED_FORM: f64 = 0.001;
pub(super) const FIRST_TERM: f64 = 0.005;
/// Where the inputs of a row, or the formula's constants, were recalled.
pub(super) const RECALLED: f64 = 0.03;

impl Check {
    /// A column's figure within a share of itself and half a unit of its last digit; none where the cell is empty.
    pub(super) fn column(row: &Row, column: &str, ours: f64, relative: f64) -> Option<Check> {
        let relative = if row.recalled() {
            relative.max(RECALLED)
        } else {
            relative
        };
        let value = row.number(column)?;
        Some(Check {
            quantity: column.into(),
            ours,
            published: row.text(column).into(),
            wanted: Wanted::Near {
                value,
                within: relative * value.abs() + row.half_unit(column),
            },
        })
    }

    /// A figure that stands in the words of a cell, within a share of itself and half a unit of its last digit.
    pub(super) fn stated(row: &Row, quantity: &str, ours: f64, printed: &str, relative: f64) -> Check {
        let relative = if row.recalled() {
            relative.max(RECALLED)
        } else {
            relative
        };
        let value: f64 = printed.parse().unwrap_or(f64::NAN);
        Check {
            quantity: quantity.into(),
            ours,
            published: printed.into(),
            wanted: Wanted::Near {
                value,
                within: relative * value.abs() + super::row::half_unit(printed),
            },
        }
    }

    /// A figure that must lie in a range.
    pub(super) fn between(quantity: &str, ours: f64, published: &str, low: f64, high: f64) -> Check {
        Check {
            quantity: quantity.into(),
            ours,
            published: published.into(),
            wanted: Wanted::Between(low, high),
        }
    }

    /// A column's figure beside ours, without a tolerance: it was seen under conditions that nobody stated.
    pub(super) fn shown(quantity: &str, ours: f64, published: &str, value: f64) -> Check {
        Check {
            quantity: quantity.into(),
            ours,
            published: published.into(),
            wanted: Wanted::Shown { value },
        }
    }

    /// Something that was seen to happen: it must be so with us (1) as well.
    pub(super) fn seen(quantity: &str, so: bool, published: &str) -> Check {
        Check::between(quantity, f64::from(u8::from(so)), published, 1.0, 1.0)
    }

    /// Whether our figure is where it is meant to be.
    pub(super) fn met(&self) -> bool {
        match self.wanted {
            // A hair for the last bit of sums.
            Wanted::Near { value, within } => (self.ours - value).abs() <= within * (1.0 + 1e-9),
            Wanted::Between(low, high) => (low..=high).contains(&self.ours),
            Wanted::Covered { value, low, high } => (low..=high).contains(&value),
            Wanted::Shown { .. } => self.ours.is_finite(),
        }
    }

    /// Whether it stands beside ours without a tolerance.
    pub(super) fn only_shown(&self) -> bool {
        matches!(self.wanted, Wanted::Shown { .. })
    }

    /// Our figure less the published one as a share of it; for a range, how far outside of its nearer end. A difference
    /// where the published one is nought.
    pub(super) fn deviation(&self) -> f64 {
        let value = match self.wanted {
            Wanted::Near { value, .. } | Wanted::Covered { value, .. } | Wanted::Shown { value } => value,
            Wanted::Between(low, high) => self.ours.clamp(low, high),
        };
        if value == 0.0 {
            self.ours
        } else {
            (self.ours - value) / value.abs()
        }
    }

    /// The deviation as it is printed: `+0.03 %`, `inside`, `outside by 4.1 %`.
    pub(super) fn deviation_text(&self) -> String {
        let percent = 100.0 * self.deviation();
        match self.wanted {
            Wanted::Between(..) if self.met() => "inside".into(),
            Wanted::Between(..) => format!("outside by {:.2} %", percent.abs()),
            _ => format!("{percent:+.3} %"),
        }
    }

    /// How near it is meant to be, in words.
    pub(super) fn wanted_text(&self) -> String {
        match self.wanted {
            Wanted::Near { within, .. } => format!("± {}", digits(within)),
            Wanted::Between(low, high) if low == high && low != 1.0 => digits(low),
            Wanted::Between(low, high) if low == high => "so".into(),
            Wanted::Between(low, high) if high.is_infinite() => format!("≥ {}", digits(low)),
            Wanted::Between(low, high) if low.is_infinite() => format!("≤ {}", digits(high)),
            Wanted::Between(low, high) => format!("{} to {}", digits(low), digits(high)),
            Wanted::Covered { low, high, .. } => format!("in our {} to {}", digits(low), digits(high)),
            Wanted::Shown { .. } => "shown".into(),
        }
    }
}

/// A number with five digits that count.
pub(in crate::prove) fn digits(value: f64) -> String {
    let size = value.abs();
    if size == 0.0 || !value.is_finite() {
        return format!("{value}");
    }
    if !(1e-4..1e7).contains(&size) {
        return format!("{value:.3e}");
    }
    let decimals = (4.0 - libm::log10(size).floor()).clamp(0.0, 8.0) as usize;
    let printed = format!("{value:.decimals$}");
    if printed.contains('.') {
        printed.trim_end_matches('0').trim_end_matches('.').into()
    } else {
        printed
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn row(status: &str) -> Row {
        let cells = [("id", "a"), ("p", "2.50"), ("status", status)];
        Row {
            table: "t".into(),
            cells: cells.map(|(name, cell)| (name.into(), cell.into())).into(),
        }
    }

    /// 0.1 % of 2.50 and half a unit of its second decimal: 0.0025 + 0.005.
    #[test]
    fn tolerance_takes_in_the_rounding_of_the_row() {
        let check = |ours| Check::column(&row("computed"), "p", ours, CLOSED_FORM).expect("a figure");
        assert!(check(2.5074).met() && check(2.4926).met());
        assert!(!check(2.5076).met() && !check(f64::NAN).met());
        let recalled = Check::column(&row("computed+memory"), "p", 2.57, CLOSED_FORM).expect("a figure");
        assert!(recalled.met(), "3 % where inputs are recalled");
        assert!(Check::column(&row("exact"), "q", 1.0, 0.1).is_none());
    }

    #[test]
    fn ranges() {
        let check = |ours| Check::between("x", ours, "1 to 2", 1.0, 2.0);
        assert!(check(1.0).met() && !check(2.2).met());
        assert!((check(2.2).deviation() - 0.1).abs() < 1e-12);
        assert_eq!(check(2.2).deviation_text(), "outside by 10.00 %");
    }

    #[test]
    fn numbers() {
        assert_eq!(
            (digits(1.0), digits(0.123_456), digits(1e-9)),
            ("1".into(), "0.12346".into(), "1.000e-9".into())
        );
        assert_eq!(digits(2603.0), "2603");
    }
}
