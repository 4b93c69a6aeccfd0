//! The numbers of lists: figures, letters, Roman numerals.

/// How a list counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Numerals {
    Figures,
    /// 01, 02 …
    TwoFigures,
    SmallLetters,
    Capitals,
    SmallRoman,
    Roman,
    /// 1st, 2nd …
    Ordinal,
    /// A dot or dash, whatever it looks like.
    Mark,
    /// Nothing is shown.
    None,
}

impl Numerals {
    /// By its name in Office Open XML (ECMA-376 part 1, 17.18.59).
    pub(super) fn of_word(name: &str) -> Numerals {
        match name {
            "bullet" => Numerals::Mark,
            "none" => Numerals::None,
            "decimalZero" => Numerals::TwoFigures,
            "lowerLetter" => Numerals::SmallLetters,
            "upperLetter" => Numerals::Capitals,
            "lowerRoman" => Numerals::SmallRoman,
            "upperRoman" => Numerals::Roman,
            "ordinal" => Numerals::Ordinal,
            _ => Numerals::Figures,
        }
    }

    /// By its sign in OpenDocument (1.3 part 3, 19.500).
    pub(super) fn of_open_document(sign: &str) -> Numerals {
        match sign {
            "" => Numerals::None,
            "a" => Numerals::SmallLetters,
            "A" => Numerals::Capitals,
            "i" => Numerals::SmallRoman,
            "I" => Numerals::Roman,
            _ => Numerals::Figures,
        }
    }

    /// A number so written.
    pub(super) fn write(self, number: usize) -> String {
        match self {
            Numerals::Figures => number.to_string(),
            Numerals::TwoFigures => format!("{number:02}"),
            Numerals::SmallLetters => letters(number, 'a'),
            Numerals::Capitals => letters(number, 'A'),
            Numerals::SmallRoman => roman(number).to_lowercase(),
            Numerals::Roman => roman(number),
            Numerals::Ordinal => format!("{number}{}", ending(number)),
            Numerals::Mark | Numerals::None => String::new(),
        }
    }
}

/// a … z, aa, bb …: a letter is repeated once the alphabet is through.
fn letters(number: usize, first: char) -> String {
    let Some(from_nought) = number.checked_sub(1) else {
        return "0".into();
    };
    let letter = (first as u8 + (from_nought % 26) as u8) as char;
    letter.to_string().repeat((from_nought / 26 + 1).min(8))
}

fn roman(number: usize) -> String {
    const SIGNS: [(usize, &str); 13] = [
        (1000, "M"),
        (900, "CM"),
        (500, "D"),
        (400, "CD"),
        (100, "C"),
        (90, "XC"),
        (50, "L"),
        (40, "XL"),
        (10, "X"),
        (9, "IX"),
        (5, "V"),
        (4, "IV"),
        (1, "I"),
    ];
    if number == 0 || number > 3999 {
        return number.to_string();
    }
    let mut left = number;
    let mut written = String::new();
    for (value, sign) in SIGNS {
        while left >= value {
            written.push_str(sign);
            left -= value;
        }
    }
    written
}

fn ending(number: usize) -> &'static str {
    match (number % 10, number % 100) {
        (_, 11..=13) => "th",
        (1, _) => "st",
        (2, _) => "nd",
        (3, _) => "rd",
        _ => "th",
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Worked by hand: 1994 = M CM XC IV; after z comes aa.
    #[test]
    fn numbers_as_lists_write_them() {
        for (numerals, number, written) in [
            (Numerals::Figures, 12, "12"),
            (Numerals::TwoFigures, 3, "03"),
            (Numerals::SmallLetters, 3, "c"),
            (Numerals::Capitals, 27, "AA"),
            (Numerals::SmallRoman, 4, "iv"),
            (Numerals::Roman, 1994, "MCMXCIV"),
            (Numerals::Ordinal, 22, "22nd"),
            (Numerals::Ordinal, 13, "13th"),
            (Numerals::Mark, 3, ""),
        ] {
            assert_eq!(numerals.write(number), written);
        }
    }
}
