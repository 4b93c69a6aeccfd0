//! Printing and reading exact amounts in the fractions a cook uses: `1½`, `⅔`, `2¼`.

use crate::{Exact, NumberError};

/// The fractions that have a letter of their own in Unicode (blocks Latin-1 Supplement and Number Forms).
const GLYPHS: [(char, i128, i128); 18] = [
    ('½', 1, 2),
    ('⅓', 1, 3),
    ('⅔', 2, 3),
    ('¼', 1, 4),
    ('¾', 3, 4),
    ('⅕', 1, 5),
    ('⅖', 2, 5),
    ('⅗', 3, 5),
    ('⅘', 4, 5),
    ('⅙', 1, 6),
    ('⅚', 5, 6),
    ('⅐', 1, 7),
    ('⅛', 1, 8),
    ('⅜', 3, 8),
    ('⅝', 5, 8),
    ('⅞', 7, 8),
    ('⅑', 1, 9),
    ('⅒', 1, 10),
];

/// Prints with the one-letter fractions: `1½`, `⅔`, `3`, `-2¼`; loses nothing.
///
/// A fraction without a letter is printed as a decimal if it has at most three places (`0.35`), else as `1 5/7`.
///
/// ```
/// use potwright_measure::{Exact, fractions};
/// assert_eq!(fractions::cook("3/2".parse()?), "1½");
/// assert_eq!(fractions::cook("0.35".parse()?), "0.35");
/// # Ok::<(), potwright_measure::NumberError>(())
/// ```
#[must_use]
pub fn cook(number: Exact) -> String {
    print(number, |fraction| {
        GLYPHS
            .iter()
            .find(|(_, above, below)| (fraction.numerator(), fraction.denominator()) == (*above, *below))
            .map(|(glyph, _, _)| glyph.to_string())
    })
}

/// Prints for a page without those letters: `1 1/2`, `2/3`, `3`; loses nothing.
#[must_use]
pub fn ascii(number: Exact) -> String {
    let has_glyph = |f: Exact| GLYPHS.iter().any(|g| (f.numerator(), f.denominator()) == (g.1, g.2));
    print(number, |fraction| has_glyph(fraction).then(|| format!(" {fraction}")))
}

/// Sign, whole part, then the fraction as `kitchen` writes it; where it does not, a decimal or a plain fraction.
fn print(number: Exact, kitchen: impl Fn(Exact) -> Option<String>) -> String {
    let (sign, size) = match Exact::ZERO.checked_sub(number) {
        Some(size) if number.is_negative() => ("-", size),
        _ => ("", number),
    };
    let (whole, fraction) = (size.floor(), size.fraction());
    if fraction.is_zero() {
        return format!("{sign}{whole}");
    }
    if let Some(written) = kitchen(fraction) {
        return if whole.is_zero() {
            format!("{sign}{}", written.trim_start())
        } else {
            format!("{sign}{whole}{written}")
        };
    }
    if 1000 % fraction.denominator() == 0 {
        let thousandths = fraction.numerator() * (1000 / fraction.denominator());
        let places = format!("{thousandths:03}");
        return format!("{sign}{whole}.{}", places.trim_end_matches('0'));
    }
    if whole.is_zero() {
        format!("{sign}{fraction}")
    } else {
        format!("{sign}{whole} {fraction}")
    }
}

/// Prints as a decimal of at most `places` places (nine at most), halves away from nought, noughts at the end left
/// off: for metric amounts.
#[must_use]
pub fn decimal(number: Exact, places: u8) -> String {
    let places = places.min(9);
    let scale = 10_i64.pow(u32::from(places));
    let Some(rounded) = scaled_and_rounded(number, scale) else {
        // Beyond the range of exact scaling the number is whole for any cook's purpose.
        return number.floor().to_string();
    };
    let (sign, size) = if rounded < 0 { ("-", -rounded) } else { ("", rounded) };
    let scale = i128::from(scale);
    let part = format!("{:0width$}", size % scale, width = usize::from(places));
    let part = if places == 0 { "" } else { part.trim_end_matches('0') };
    let whole = size / scale;
    if part.is_empty() {
        format!("{sign}{whole}")
    } else {
        format!("{sign}{whole}.{part}")
    }
}

/// `number · scale` to the nearest whole number, halves away from nought; never `i128::MIN`.
fn scaled_and_rounded(number: Exact, scale: i64) -> Option<i128> {
    let scaled = number.checked_mul(Exact::whole(scale))?;
    let half = Exact::wide(1, 2)?;
    if scaled.is_negative() {
        let up = Exact::ZERO.checked_sub(scaled)?.checked_add(half)?.floor();
        Some(-up.numerator())
    } else {
        Some(scaled.checked_add(half)?.floor().numerator())
    }
}

/// Reads a number in any of a typist's or typographer's spellings: `3`, `0.75`, `3/4`, `1 3/4`, `1-3/4`, `1¾`,
/// `1 ¾`, `1⁄2`, `¹⁄₂`, `.5`, with a minus sign if need be.
///
/// A hyphen joins a whole number only to a proper fraction; ranges are not numbers and are refused.
///
/// # Errors
/// When the text is empty, is none of these, divides by nought or has more digits than can be held.
///
/// ```
/// use potwright_measure::{Exact, fractions};
/// assert_eq!(fractions::parse("1-1/2")?, fractions::parse("1½")?);
/// # Ok::<(), potwright_measure::NumberError>(())
/// ```
pub fn parse(text: &str) -> Result<Exact, NumberError> {
    let plain = respell(text);
    let plain = plain.trim();
    if plain.is_empty() {
        return Err(NumberError::Empty);
    }
    let (negative, body) = match plain.strip_prefix('-') {
        Some(rest) => (true, rest.trim_start()),
        None => (false, plain),
    };
    let size = parse_unsigned(body).map_err(|kind| kind.about(text))?;
    let size = if negative {
        Exact::ZERO.checked_sub(size)
    } else {
        Some(size)
    };
    size.ok_or_else(|| NumberError::TooLong(text.to_owned()))
}

/// What went wrong, before the text is put beside it.
enum Fault {
    NotANumber,
    NoughtBelow,
    TooLong,
}

impl Fault {
    fn about(self, text: &str) -> NumberError {
        let text = text.to_owned();
        match self {
            Fault::NotANumber => NumberError::NotANumber(text),
            Fault::NoughtBelow => NumberError::NoughtBelow(text),
            Fault::TooLong => NumberError::TooLong(text),
        }
    }
}

fn parse_unsigned(body: &str) -> Result<Exact, Fault> {
    if !body.contains('/') {
        return unsigned_decimal(body);
    }
    // '1 3/4' and '1-3/4' are mixed numbers; '3 / 4' is one fraction with air around its stroke.
    let (before, below) = body.split_once('/').ok_or(Fault::NotANumber)?;
    let before = before.trim_end();
    let (whole, above) = match before.rfind(['-', ' ']) {
        Some(at) => (before[..at].trim_end(), &before[at + 1..]),
        None => ("", before),
    };
    let (above, below) = (digits(above)?, digits(below.trim_start())?);
    let fraction = Exact::wide(above, below).ok_or(Fault::NoughtBelow)?;
    if whole.is_empty() {
        return if before.starts_with('-') {
            Err(Fault::NotANumber)
        } else {
            Ok(fraction)
        };
    }
    if fraction >= Exact::ONE {
        return Err(Fault::NotANumber);
    }
    let whole = Exact::wide(digits(whole)?, 1).ok_or(Fault::TooLong)?;
    whole.checked_add(fraction).ok_or(Fault::TooLong)
}

fn unsigned_decimal(text: &str) -> Result<Exact, Fault> {
    if text.starts_with(['-', '−']) {
        return Err(Fault::NotANumber);
    }
    Exact::from_decimal(text).map_err(|error| match error {
        NumberError::TooLong(_) => Fault::TooLong,
        _ => Fault::NotANumber,
    })
}

fn digits(text: &str) -> Result<i128, Fault> {
    if text.is_empty() || !text.bytes().all(|b| b.is_ascii_digit()) {
        return Err(Fault::NotANumber);
    }
    // Only digits are left, so the one way to fail is their number.
    text.parse().map_err(|_| Fault::TooLong)
}

/// Writes typographer's spellings as a typist would: `1¾` as `1 3/4`, `¹⁄₂` as `1/2`, odd spaces as plain ones.
fn respell(text: &str) -> String {
    let mut plain = String::with_capacity(text.len() + 4);
    let mut raised_before = false;
    for letter in text.chars() {
        let raised = "⁰¹²³⁴⁵⁶⁷⁸⁹".chars().zip('0'..='9').find(|(r, _)| *r == letter);
        let lowered = ('₀'..='₉').zip('0'..='9').find(|(l, _)| *l == letter);
        let glyph = GLYPHS.iter().find(|(g, _, _)| *g == letter);
        if raised.is_some() && !raised_before && plain.ends_with(|c: char| c.is_ascii_digit()) {
            plain.push(' ');
        }
        raised_before = raised.is_some();
        if let Some((_, digit)) = raised.or(lowered) {
            plain.push(digit);
        } else if let Some((_, above, below)) = glyph {
            let joins = plain.is_empty() || plain.ends_with(['-', ' ']);
            plain.push_str(&format!("{}{above}/{below}", if joins { "" } else { " " }));
        } else {
            plain.push(match letter {
                '⁄' | '∕' => '/',
                '−' | '\u{2010}' | '\u{2011}' => '-',
                space if space.is_whitespace() => ' ',
                other => other,
            });
        }
    }
    plain
}
