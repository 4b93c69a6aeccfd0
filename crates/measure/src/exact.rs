//! Exact rational numbers with checked arithmetic: a third of a cup stays a third of a cup.

use std::fmt;
use std::str::FromStr;

use num_rational::Ratio;
use num_traits::{CheckedAdd, CheckedMul, CheckedSub};
use serde::{Deserialize, Serialize};

use crate::NumberError;

/// An exact rational number.
///
/// Every operation that can leave the range of 128-bit numerators returns `None` instead of wrapping: quantities
/// come from a writer's page, and a page can hold any number of digits.
///
/// The numerator is never `i128::MIN`, so that every number has its negative and its reciprocal.
///
/// ```
/// use potwright_measure::Exact;
/// let third: Exact = "1/3".parse()?;
/// assert_eq!(third.checked_mul(Exact::whole(3)), Some(Exact::ONE));
/// # Ok::<(), potwright_measure::NumberError>(())
/// ```
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(try_from = "String", into = "String")]
pub struct Exact(Ratio<i128>);

impl Exact {
    /// Nought.
    pub const ZERO: Exact = Exact(Ratio::new_raw(0, 1));
    /// One.
    pub const ONE: Exact = Exact(Ratio::new_raw(1, 1));

    /// A whole number.
    #[must_use]
    pub const fn whole(n: i64) -> Self {
        Exact(Ratio::new_raw(n as i128, 1))
    }

    /// `numerator / denominator`, reduced; `None` when the denominator is nought.
    #[must_use]
    pub fn ratio(numerator: i64, denominator: i64) -> Option<Self> {
        Self::wide(i128::from(numerator), i128::from(denominator))
    }

    /// As [`Exact::ratio`], from wide integers; `None` for nought below the line and for `i128::MIN` on either side.
    #[must_use]
    pub(crate) fn wide(numerator: i128, denominator: i128) -> Option<Self> {
        let held = denominator != 0 && numerator != i128::MIN && denominator != i128::MIN;
        held.then(|| Exact(Ratio::new(numerator, denominator)))
    }

    /// A decimal as written, exactly: `0.75`, `.5`, `12`. No exponent, no digit grouping.
    ///
    /// # Errors
    /// When the text is empty, is not a decimal, or has more digits than can be held.
    pub fn from_decimal(text: &str) -> Result<Self, NumberError> {
        let text = text.trim();
        let (negative, digits) = match text.strip_prefix(['-', '−']) {
            Some(rest) => (true, rest),
            None => (false, text),
        };
        let (whole, part) = digits.split_once('.').unwrap_or((digits, ""));
        if text.is_empty() {
            return Err(NumberError::Empty);
        }
        let figures = || whole.bytes().chain(part.bytes());
        if figures().next().is_none() || !figures().all(|b| b.is_ascii_digit()) {
            return Err(NumberError::NotANumber(text.to_owned()));
        }
        // Noughts at the end of a decimal say nothing and would only use up room.
        let part = part.trim_end_matches('0');
        let too_long = || NumberError::TooLong(text.to_owned());
        let mut numerator: i128 = 0;
        for byte in whole.bytes().chain(part.bytes()) {
            let next = numerator
                .checked_mul(10)
                .and_then(|n| n.checked_add(i128::from(byte - b'0')));
            numerator = next.ok_or_else(too_long)?;
        }
        let places = u32::try_from(part.len()).map_err(|_| too_long())?;
        let denominator = 10_i128.checked_pow(places).ok_or_else(too_long)?;
        Self::wide(if negative { -numerator } else { numerator }, denominator).ok_or_else(too_long)
    }

    /// The multiple of `1 / denominator` nearest to a computed number, halves away from nought.
    ///
    /// `None` when the number is not finite, the result does not fit, or the denominator is not positive.
    #[must_use]
    pub fn nearest(value: f64, denominator: i64) -> Option<Self> {
        // 2^63 itself: the first f64 beyond the range of i64.
        const LIMIT: f64 = 9_223_372_036_854_775_808.0;
        if denominator <= 0 {
            return None;
        }
        let parts = (value * denominator as f64).round();
        // A number that is not one fails this comparison as well.
        if parts.abs() < LIMIT {
            Self::ratio(parts as i64, denominator)
        } else {
            None
        }
    }

    /// The number above the line, in lowest terms; carries the sign.
    #[must_use]
    pub const fn numerator(self) -> i128 {
        *self.0.numer()
    }

    /// The number below the line, in lowest terms; always 1 or more.
    #[must_use]
    pub const fn denominator(self) -> i128 {
        *self.0.denom()
    }

    /// As a floating-point number; relative error at most 2^-51.
    #[must_use]
    pub fn to_f64(self) -> f64 {
        self.numerator() as f64 / self.denominator() as f64
    }

    /// Whether it is nought.
    #[must_use]
    pub fn is_zero(self) -> bool {
        self.numerator() == 0
    }

    /// Whether it is more than nought.
    #[must_use]
    pub fn is_positive(self) -> bool {
        self.numerator() > 0
    }

    /// Whether it is less than nought.
    #[must_use]
    pub fn is_negative(self) -> bool {
        self.numerator() < 0
    }

    /// Whether it is a whole number.
    #[must_use]
    pub fn is_whole(self) -> bool {
        self.denominator() == 1
    }

    /// The largest whole number not above it.
    #[must_use]
    pub fn floor(self) -> Self {
        Exact(Ratio::from_integer(self.numerator().div_euclid(self.denominator())))
    }

    /// What stands above the whole number below it: 0 up to, not including, 1.
    #[must_use]
    pub fn fraction(self) -> Self {
        // A remainder of the denominator is smaller than it, so no new width is needed.
        Exact(Ratio::new(
            self.numerator().rem_euclid(self.denominator()),
            self.denominator(),
        ))
    }

    /// The sum, or `None` beyond the range.
    #[must_use]
    pub fn checked_add(self, other: Self) -> Option<Self> {
        Self::held(self.0.checked_add(&other.0))
    }

    /// The difference, or `None` beyond the range.
    #[must_use]
    pub fn checked_sub(self, other: Self) -> Option<Self> {
        Self::held(self.0.checked_sub(&other.0))
    }

    /// The product, or `None` beyond the range.
    #[must_use]
    pub fn checked_mul(self, other: Self) -> Option<Self> {
        Self::held(self.0.checked_mul(&other.0))
    }

    /// The quotient, or `None` beyond the range or when dividing by nought.
    #[must_use]
    pub fn checked_div(self, other: Self) -> Option<Self> {
        self.checked_mul(Self::wide(other.denominator(), other.numerator())?)
    }

    /// Keeps `i128::MIN` out, which has no negative.
    fn held(result: Option<Ratio<i128>>) -> Option<Self> {
        result.filter(|r| *r.numer() != i128::MIN).map(Exact)
    }
}

impl From<i32> for Exact {
    fn from(n: i32) -> Self {
        Exact::whole(i64::from(n))
    }
}

impl fmt::Display for Exact {
    /// `3`, `3/4`, `-7/2`: plain and lossless; cook's fractions are printed by [`crate::fractions`].
    fn fmt(&self, f: &mut fmt::Formatter<'_>) -> fmt::Result {
        self.0.fmt(f)
    }
}

impl FromStr for Exact {
    type Err = NumberError;

    /// Any spelling that [`crate::fractions::parse`] reads: `3`, `0.75`, `3/4`, `1 3/4`, `1¾`, `-7/2`.
    fn from_str(text: &str) -> Result<Self, NumberError> {
        crate::fractions::parse(text)
    }
}

impl TryFrom<String> for Exact {
    type Error = NumberError;

    fn try_from(text: String) -> Result<Self, NumberError> {
        text.parse()
    }
}

impl From<Exact> for String {
    fn from(number: Exact) -> String {
        number.to_string()
    }
}
