//! Writing an amount the way the page writes its own: fractions, spaces, long or short units, singular and plural.

use potwright_larder::Food;
use potwright_measure::{Dimension, Exact, Measured, Unit, fractions};

/// How the page writes fractions.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) enum Fractions {
    /// `1½`.
    Letters,
    /// `1 1/2`.
    Plain,
}

/// How an amount is to be written.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Style {
    pub(super) fractions: Fractions,
    /// `tablespoons`, not `tbsp`.
    pub(super) long_units: bool,
    /// `litres`, not `l`: only where the page writes metric units out.
    pub(super) long_metric: bool,
    /// `50 g`, not `50g`.
    pub(super) spaced: bool,
}

impl Fractions {
    /// Plain where the page has a plain fraction and none with a letter of its own.
    pub(super) fn of_page(text: &str) -> Fractions {
        let letters = text.contains(['½', '⅓', '⅔', '¼', '¾', '⅛', '⅜', '⅝', '⅞']);
        let bytes = text.as_bytes();
        let plain = bytes
            .windows(3)
            .any(|w| matches!(w, [a, b'/', b] if a.is_ascii_digit() && b.is_ascii_digit()));
        if plain && !letters {
            Fractions::Plain
        } else {
            Fractions::Letters
        }
    }

    pub(super) fn number(self, number: Exact) -> String {
        match self {
            Fractions::Letters => fractions::cook(number),
            Fractions::Plain => fractions::ascii(number),
        }
    }
}

impl Style {
    /// A measured amount: `450 g`, `1 lb 4 oz`, `1 cup + 2 tbsp`, `2½`.
    pub(super) fn measured(self, said: Measured) -> String {
        let Some(unit) = said.unit else {
            return self.fractions.number(said.amount);
        };
        let first = self.one(said.amount, unit);
        match said.plus {
            None => first,
            Some((amount, second)) => {
                let joint = if unit.dimension() == Dimension::Mass {
                    " "
                } else {
                    " + "
                };
                format!("{first}{joint}{}", self.one(amount, second))
            }
        }
    }

    /// The lower and the upper end in one: `450–600 g`, `450 g–1 kg`.
    pub(super) fn range(self, low: Measured, high: Measured, joint: &str) -> String {
        if low == high {
            return self.measured(low);
        }
        match (low.unit, high.unit) {
            (Some(a), Some(b)) if a == b && low.plus.is_none() && high.plus.is_none() => {
                format!("{}{joint}{}", self.number(low.amount, a), self.one(high.amount, b))
            }
            _ => format!("{}{joint}{}", self.measured(low), self.measured(high)),
        }
    }

    fn one(self, amount: Exact, unit: Unit) -> String {
        let short = unit.abbreviation();
        let long = if unit.is_metric() {
            self.long_metric
        } else {
            self.long_units
        };
        let name = if long || short == unit.name() {
            unit.written(amount)
        } else {
            short
        };
        let gap = if self.spaced || !unit.is_metric() || long {
            " "
        } else {
            ""
        };
        format!("{}{gap}{name}", self.number(amount, unit))
    }

    /// Metric amounts in decimals, all others in fractions.
    pub(super) fn number(self, amount: Exact, unit: Unit) -> String {
        if unit.is_metric() {
            fractions::decimal(amount, 3)
        } else {
            self.fractions.number(amount)
        }
    }
}

/// The page's own word for a unit, put into singular or plural; a short form stays.
pub(super) fn unit_word(word: &str, unit: Unit, several: bool) -> String {
    let lower = word.to_lowercase();
    if lower == unit.name() || lower == unit.plural() {
        return keep_capital(word, if several { unit.plural() } else { unit.name() });
    }
    if unit.dimension() == Dimension::Piece {
        noun(word, None, several)
    } else {
        word.to_owned()
    }
}

/// A noun in singular or plural: as the larder has the food's own name, else by the rules of English spelling.
pub(super) fn noun(word: &str, food: Option<&Food>, several: bool) -> String {
    let lower = word.to_lowercase();
    let last = |name: &str| name.rsplit(' ').next().unwrap_or(name).to_lowercase();
    let own = food
        .map(|food| (last(&food.name), last(&food.plural)))
        .filter(|(one, many)| one != many);
    let now = match own {
        Some((one, many)) if lower == one || lower == many => {
            if several {
                many
            } else {
                one
            }
        }
        _ => {
            if several {
                plural(&lower)
            } else {
                singular(&lower)
            }
        }
    };
    keep_capital(word, &now)
}

/// Leaves a word that is plural already.
fn plural(word: &str) -> String {
    const SAME: [&str; 8] = [
        "fish",
        "celery",
        "garlic",
        "celeriac",
        "squash",
        "asparagus",
        "spinach",
        "fennel",
    ];
    if SAME.contains(&word) || singular(word) != word {
        return word.to_owned();
    }
    if let Some(stem) = word.strip_suffix("leaf").or_else(|| word.strip_suffix("loaf")) {
        return format!("{stem}{}ves", &word[stem.len()..word.len() - 1]);
    }
    if word.ends_with("half") || word.ends_with("calf") {
        return format!("{}ves", &word[..word.len() - 1]);
    }
    let vowel_before_y = ["ay", "ey", "oy", "uy"].iter().any(|end| word.ends_with(end));
    match word.strip_suffix('y') {
        Some(stem) if !vowel_before_y => format!("{stem}ies"),
        _ if ["s", "x", "z", "ch", "sh", "tomato", "potato"]
            .iter()
            .any(|end| word.ends_with(end)) =>
        {
            format!("{word}es")
        }
        _ => format!("{word}s"),
    }
}

/// Leaves a word that is singular already.
fn singular(word: &str) -> String {
    const SAME: [&str; 6] = ["asparagus", "couscous", "molasses", "swiss", "watercress", "cress"];
    if SAME.contains(&word) || word.ends_with("ss") || word.ends_with("us") || !word.ends_with('s') {
        return word.to_owned();
    }
    if let Some(stem) = word
        .strip_suffix("ves")
        .filter(|stem| ["lea", "loa", "hal", "cal"].iter().any(|end| stem.ends_with(end)))
    {
        return format!("{stem}f");
    }
    if let Some(stem) = word.strip_suffix("ies").filter(|stem| stem.len() > 2) {
        return format!("{stem}y");
    }
    let stem = word.strip_suffix("es").filter(|stem| {
        ["x", "z", "ch", "sh", "ss", "tomato", "potato", "bus"]
            .iter()
            .any(|end| stem.ends_with(end))
    });
    stem.or_else(|| word.strip_suffix('s')).unwrap_or(word).to_owned()
}

fn keep_capital(like: &str, word: &str) -> String {
    let mut letters = word.chars();
    match letters.next() {
        Some(first) if like.starts_with(char::is_uppercase) => first.to_uppercase().chain(letters).collect(),
        _ => word.to_owned(),
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn nouns_go_both_ways() {
        for (one, many) in [
            ("onion", "onions"),
            ("leaf", "leaves"),
            ("Loaf", "Loaves"),
            ("half", "halves"),
            ("potato", "potatoes"),
            ("anchovy", "anchovies"),
            ("bunch", "bunches"),
            ("clove", "cloves"),
            ("chive", "chives"),
            ("box", "boxes"),
            ("turkey", "turkeys"),
            ("radish", "radishes"),
            ("avocado", "avocados"),
            ("tin", "tins"),
        ] {
            assert_eq!(noun(one, None, true), many);
            assert_eq!(noun(many, None, false), one);
            assert_eq!(noun(many, None, true), many);
            assert_eq!(noun(one, None, false), one);
        }
        assert_eq!(noun("squash", None, true), "squash");
    }

    #[test]
    fn amounts_as_the_page_writes_them() {
        let style = Style {
            fractions: Fractions::Letters,
            long_units: false,
            long_metric: false,
            spaced: true,
        };
        let half: Exact = "1/2".parse().unwrap();
        let said = Measured::of(Exact::ONE, Unit::Cup).and(half, Unit::Tablespoon);
        assert_eq!(style.measured(said), "1 cup + ½ tbsp");
        let weight = Measured::of(Exact::whole(2), Unit::Pound).and(Exact::whole(4), Unit::Ounce);
        assert_eq!(style.measured(weight), "2 lb 4 oz");
        let close = Style {
            spaced: false,
            fractions: Fractions::Plain,
            long_units: false,
            long_metric: false,
        };
        assert_eq!(
            close.measured(Measured::of("1.2".parse().unwrap(), Unit::Litre)),
            "1.2l"
        );
        let low = Measured::of(Exact::whole(200), Unit::Gram);
        let high = Measured::of(Exact::whole(250), Unit::Gram);
        assert_eq!(style.range(low, high, "–"), "200–250 g");
        let kilo = Measured::of("1.2".parse().unwrap(), Unit::Kilogram);
        assert_eq!(style.range(low, kilo, " to "), "200 g to 1.2 kg");
        assert_eq!(style.range(low, low, "–"), "200 g");
        assert_eq!(Fractions::of_page("add 1/2 tsp"), Fractions::Plain);
        assert_eq!(Fractions::of_page("add ½ tsp"), Fractions::Letters);
    }
}
