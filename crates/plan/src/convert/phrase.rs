//! Where the number and the unit stand within an amount as written: '**2** heaped **tablespoons**', '**a** small
//! **bunch**', 'about **900g**'.
//!
//! The reader of pages has found the amount and says what it is; here only its words are taken apart, so that the
//! number and the unit can be changed and every other word stays.

use potwright_manuscript::{Quantity, Span};
use potwright_measure::{Amount, Exact, Unit, fractions, in_words};

use super::method::is_clear;

/// The parts of an amount as written.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Phrase {
    /// The number or range, with the words that belong to it ('half an', 'a couple of'); none where it is implied.
    pub(super) number: Option<Span>,
    /// The unit's word; when the amount is a sum, the last one.
    pub(super) unit: Option<Span>,
    /// Numbers follow the unit ('1 lb 4 oz', '1 cup plus 2 tablespoons'): it can only be changed as a whole.
    pub(super) sum: bool,
    /// The number is an article: 'a bunch'.
    pub(super) article: bool,
}

/// A measured amount in running text.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(super) struct Measure {
    pub(super) quantity: Quantity,
    /// A hyphen joins number and unit: '2-litre'.
    pub(super) hyphened: bool,
}

/// All amounts with a number, in figures or words, and a unit of mass or volume: '6 cups', 'two and a half pounds',
/// '3 more tablespoons'.
pub(super) fn measures(text: &str, span: Span) -> Vec<Measure> {
    let tokens = tokens(text, span);
    let mut found = Vec::new();
    let mut at = 0;
    while let Some(token) = tokens.get(at) {
        if !token.is_number() {
            at += 1;
            continue;
        }
        let end = end_of_number(&tokens, at);
        let more = end + usize::from(tokens.get(end).is_some_and(|token| token.is(&["more", "extra"])));
        let hyphened = tokens.get(end).is_some_and(|token| token.is(&["-", "‑"]));
        let word = more + usize::from(hyphened);
        if let Some((place, unit)) = unit_at(text, &tokens, word)
            && is_clear(place.of(text), unit)
            && let Some(amount) = amount(tokens.get(at..end).unwrap_or(&[]))
        {
            let span = Span::new(token.span.start, place.end);
            found.push(Measure {
                quantity: Quantity {
                    amount,
                    unit: Some(unit),
                    span,
                },
                hyphened,
            });
        }
        at = end.max(at + 1);
    }
    found
}

/// A unit right here.
fn unit_at(text: &str, tokens: &[Token<'_>], at: usize) -> Option<(Span, Unit)> {
    let few = tokens.get(at..tokens.len().min(at + 3))?;
    let (place, _) = unit_word(few, 0, |_| true)?;
    let unit = Unit::from_spelling(place.of(text))?;
    (place.start == few.first()?.span.start).then_some((place, unit))
}

/// The number or range that some tokens say; none when they are no plain number.
fn amount(tokens: &[Token<'_>]) -> Option<Amount> {
    let parts: Vec<&[Token<'_>]> = tokens.split(|token| token.is(&["to", "or", "–", "—"])).collect();
    match parts.as_slice() {
        [one] => Some(Amount::single(value(one)?)),
        [low, high] => Amount::range(value(low)?, value(high)?),
        _ => None,
    }
}

/// '1 1/2', '2½', 'one and a half', 'three-quarters', 'twenty-five', 'two dozen'.
fn value(tokens: &[Token<'_>]) -> Option<Exact> {
    if tokens.iter().all(|token| !token.text.starts_with(char::is_alphabetic)) {
        let text: Vec<&str> = tokens.iter().map(|token| token.text).collect();
        return fractions::parse(&text.join(" ").replace(" / ", "/")).ok();
    }
    let (mut total, mut pending): (Exact, Option<Exact>) = (Exact::ZERO, None);
    for token in tokens {
        let word = token.text.to_lowercase();
        if let Some(part) = part_of_one(&word) {
            let number = pending.take().unwrap_or(Exact::ONE);
            total = total.checked_add(number.checked_mul(part)?)?;
        } else if let Some(times) = [("dozen", 12), ("hundred", 100), ("couple", 2), ("pair", 2)]
            .iter()
            .find(|(w, _)| *w == word)
        {
            pending = Some(pending.unwrap_or(Exact::ONE).checked_mul(Exact::whole(times.1))?);
        } else if let Some(number) = fractions::parse(&word).ok().or_else(|| whole_in_words(&word)) {
            let tens = pending.filter(|tens| *tens >= Exact::whole(20) && number < Exact::whole(10));
            match (tens, pending) {
                (Some(tens), _) => pending = Some(tens.checked_add(number)?),
                (None, None) => pending = Some(number),
                (None, Some(_)) => return None,
            }
        } else if word == "and" {
            total = total.checked_add(pending.take().unwrap_or(Exact::ZERO))?;
        } else if !token.is(ARTICLES) && !token.is(&["-", "of"]) {
            return None;
        }
    }
    total
        .checked_add(pending.unwrap_or(Exact::ZERO))
        .filter(|total| total.is_positive())
}

fn part_of_one(word: &str) -> Option<Exact> {
    let below = match word.trim_end_matches('s') {
        "half" | "halve" => 2,
        "third" => 3,
        "quarter" | "fourth" => 4,
        "fifth" => 5,
        "eighth" => 8,
        _ => return None,
    };
    Exact::ratio(1, below)
}

fn whole_in_words(word: &str) -> Option<Exact> {
    in_words::whole(word)
        .filter(|number| *number > 0)
        .map(|number| Exact::whole(i64::from(number)))
}

/// A word, a number or a mark.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
struct Token<'a> {
    text: &'a str,
    span: Span,
}

/// Numbers in words that [`whole_in_words`] does not know.
const LOOSE_NUMBERS: &[&str] = &["hundred", "dozen", "couple", "pair"];
const PARTS: &[&str] = &[
    "half", "halves", "third", "thirds", "quarter", "quarters", "fourth", "fourths", "fifth", "fifths", "eighth",
    "eighths",
];
const ARTICLES: &[&str] = &["a", "an", "another"];
const JOINERS: &[&str] = &["-", "–", "—", "/", "⁄", "to", "or", "and", "a", "an"];

impl Token<'_> {
    fn is(self, words: &[&str]) -> bool {
        words.iter().any(|word| self.text.eq_ignore_ascii_case(word))
    }

    fn is_number(self) -> bool {
        self.text.starts_with(|c: char| c.is_numeric())
            || whole_in_words(&self.text.to_lowercase()).is_some()
            || self.is(LOOSE_NUMBERS)
            || self.is(PARTS)
    }
}

impl Phrase {
    /// Takes an amount apart. `others` are places within it that belong to another amount (the size of a package).
    pub(super) fn find(text: &str, span: Span, unit: Option<Unit>, others: &[Span]) -> Phrase {
        let mut tokens = tokens(text, span);
        tokens.retain(|token| !others.iter().any(|other| other.contains(token.span)));
        drop_lengths(&mut tokens);
        let plain = tokens.iter().position(|token| token.is_number());
        let start = plain.or_else(|| tokens.iter().position(|token| token.is(ARTICLES)));
        let mut next = 0;
        let number = start.and_then(|start| {
            let article = start
                .checked_sub(1)
                .filter(|at| tokens.get(*at).is_some_and(|t| t.is(ARTICLES)));
            next = end_of_number(&tokens, start);
            Some(
                tokens
                    .get(article.unwrap_or(start))?
                    .span
                    .join(tokens.get(next.checked_sub(1)?)?.span),
            )
        });
        let mut phrase = Phrase {
            number,
            unit: None,
            sum: false,
            article: number.is_some() && plain.is_none(),
        };
        let Some(unit) = unit else { return phrase };
        let Some((place, after)) = unit_word(&tokens, next, |found| found == unit) else {
            return phrase;
        };
        phrase.unit = Some(place);
        let more = tokens.get(after..).unwrap_or(&[]);
        if let Some(second) = more.iter().position(|token| token.is_number()) {
            phrase.sum = true;
            if let Some((last, _)) = unit_word(more, second, |_| true) {
                phrase.unit = Some(last);
            }
        }
        phrase
    }

    /// From the number to the unit, or the one that is there.
    pub(super) fn whole(&self) -> Option<Span> {
        match (self.number, self.unit) {
            (Some(number), Some(unit)) => Some(number.join(unit)),
            (one, other) => one.or(other),
        }
    }
}

/// Index of the token after a number that starts here.
fn end_of_number(tokens: &[Token<'_>], start: usize) -> usize {
    let at = |index: usize| tokens.get(index).copied();
    let is_number = |index: usize| at(index).is_some_and(Token::is_number);
    let joins = |index: usize| at(index).is_some_and(|token| token.is(JOINERS));
    let mut next = start + 1;
    loop {
        if is_number(next) {
            next += 1;
        } else if joins(next) && is_number(next + 1) {
            next += 2;
        } else if joins(next) && joins(next + 1) && is_number(next + 2) {
            next += 3;
        } else {
            break;
        }
    }
    // 'half an onion', 'two thirds of a cup', 'a couple of leaves', 'a dozen': the small words go with the number.
    let last = at(next - 1);
    let of = usize::from(at(next).is_some_and(|token| token.is(&["of"])));
    if last.is_some_and(|token| token.is(PARTS)) && at(next + of).is_some_and(|token| token.is(ARTICLES)) {
        next + of + 1
    } else if last.is_some_and(|token| token.is(&["couple", "pair"])) {
        next + of
    } else {
        next
    }
}

/// Takes out the size of one: '1½-inch cube', '2 cm piece'.
fn drop_lengths(tokens: &mut Vec<Token<'_>>) {
    const LENGTHS: [&str; 6] = ["inch", "inches", "cm", "mm", "centimetre", "centimetres"];
    while let Some(length) = tokens.iter().position(|token| token.is(&LENGTHS)) {
        let joined = |at: usize| {
            tokens
                .get(at)
                .is_some_and(|token| token.is_number() || token.is(&["-", "–", "‑", "/", "."]))
        };
        let mut start = length;
        while start > 0 && joined(start - 1) {
            start -= 1;
        }
        tokens.drain(start..=length);
    }
}

/// The first unit from here on that is meant: its place and the token after it.
fn unit_word(tokens: &[Token<'_>], from: usize, meant: impl Fn(Unit) -> bool) -> Option<(Span, usize)> {
    for at in from..tokens.len() {
        let one = tokens
            .get(at)
            .filter(|token| token.text.starts_with(char::is_alphabetic));
        let Some(one) = one else { continue };
        // 'fl. oz': the full stop of an abbreviation stands between.
        let second = at + 1 + usize::from(tokens.get(at + 1).is_some_and(|token| token.text == "."));
        if let Some(last) = tokens
            .get(second)
            .filter(|token| token.text.starts_with(char::is_alphabetic))
        {
            let two = format!("{} {}", one.text, last.text);
            if Unit::from_spelling(&two).is_some_and(&meant) {
                return Some((one.span.join(last.span), second + 1));
            }
        }
        if Unit::from_spelling(one.text).is_some_and(&meant) {
            return Some((one.span, at + 1));
        }
    }
    None
}

/// Digits with their point or fraction letters, words, and single marks.
fn tokens(text: &str, span: Span) -> Vec<Token<'_>> {
    let mut found: Vec<Token<'_>> = Vec::new();
    let mut kind_before = Kind::Space;
    for (at, c) in span.of(text).char_indices().map(|(at, c)| (span.start + at, c)) {
        let end = at + c.len_utf8();
        let digit_follows = text
            .get(end..)
            .and_then(|rest| rest.chars().next())
            .is_some_and(|c| c.is_ascii_digit());
        let kind = match c {
            c if c.is_numeric() => Kind::Number,
            '.' if kind_before == Kind::Number && digit_follows => Kind::Number,
            c if c.is_alphabetic() || matches!(c, '\'' | '’') => Kind::Word,
            c if c.is_whitespace() => Kind::Space,
            _ => Kind::Mark,
        };
        match found.last_mut() {
            Some(last) if kind == kind_before && matches!(kind, Kind::Number | Kind::Word) => {
                last.span.end = end;
                last.text = last.span.of(text);
            }
            _ if kind == Kind::Space => {}
            _ => found.push(Token {
                text: Span::new(at, end).of(text),
                span: Span::new(at, end),
            }),
        }
        kind_before = kind;
    }
    found
}

#[derive(Clone, Copy, PartialEq, Eq)]
enum Kind {
    Number,
    Word,
    Mark,
    Space,
}

#[cfg(test)]
mod tests {
    use super::*;

    fn parts(text: &str, unit: Option<Unit>) -> (&str, &str, bool) {
        let phrase = Phrase::find(text, Span::new(0, text.len()), unit, &[]);
        let of = |span: Option<Span>| span.map_or("", |span| span.of(text));
        (of(phrase.number), of(phrase.unit), phrase.sum)
    }

    #[test]
    fn number_and_unit_in_many_spellings() {
        for (text, unit, number, word, sum) in [
            ("30 g", Some(Unit::Gram), "30", "g", false),
            ("about 900g", Some(Unit::Gram), "900", "g", false),
            ("1.2 litres", Some(Unit::Litre), "1.2", "litres", false),
            ("1 1/2 tsp", Some(Unit::Teaspoon), "1 1/2", "tsp", false),
            ("2½ cups", Some(Unit::Cup), "2½", "cups", false),
            ("2 to 3 tbsp", Some(Unit::Tablespoon), "2 to 3", "tbsp", false),
            ("1½–2 fl. oz", Some(Unit::FluidOunce), "1½–2", "fl. oz", false),
            ("a small bunch", Some(Unit::Bunch), "a", "bunch", false),
            ("a good 80 ml", Some(Unit::Millilitre), "80", "ml", false),
            ("half an", None, "half an", "", false),
            ("two thirds of a cup", Some(Unit::Cup), "two thirds of a", "cup", false),
            ("a couple of", None, "a couple of", "", false),
            (
                "one and a half pounds",
                Some(Unit::Pound),
                "one and a half",
                "pounds",
                false,
            ),
            ("twenty-five", None, "twenty-five", "", false),
            ("1 large", None, "1", "", false),
            ("1 lb 4 oz", Some(Unit::Pound), "1", "oz", true),
            ("1 cup plus 2 tablespoons", Some(Unit::Cup), "1", "tablespoons", true),
            ("sprig", Some(Unit::Sprig), "", "sprig", false),
            (
                "2 heaped tablespoons",
                Some(Unit::Tablespoon),
                "2",
                "tablespoons",
                false,
            ),
            ("25-ounce", Some(Unit::Ounce), "25", "ounce", false),
            ("1½-inch cube", Some(Unit::Cube), "", "cube", false),
            ("another small", None, "another", "", false),
        ] {
            let (found, unit_word, is_sum) = parts(text, unit);
            assert_eq!(
                (found, unit_word.trim_end_matches('.'), is_sum),
                (number, word, sum),
                "{text}"
            );
        }
    }

    #[test]
    fn measures_of_running_text() {
        let text = "Add 2 tablespoons of it, one and one-half cups milk, two to three pounds, 3 more tbsp, twenty-five ml, \
                    three-quarters of a pint, then 180 C for 20 minutes in a 2-litre dish with 1 lb 4 oz, 1½ fl oz.";
        let found: Vec<String> = measures(text, Span::new(0, text.len()))
            .iter()
            .map(|m| {
                format!(
                    "{} {}{}",
                    m.quantity.amount,
                    m.quantity.unit.unwrap().name(),
                    if m.hyphened { "!" } else { "" }
                )
            })
            .collect();
        let expected = [
            "2 tablespoon",
            "1½ cup",
            "2–3 pound",
            "3 tablespoon",
            "25 millilitre",
            "¾ pint",
            "2 litre!",
            "1 pound",
            "4 ounce",
            "1½ fluid ounce",
        ];
        assert_eq!(found, expected);
    }

    #[test]
    fn the_size_of_a_package_is_another_amount() {
        let text = "2 (14-ounce) cans";
        let phrase = Phrase::find(text, Span::new(0, text.len()), Some(Unit::Can), &[Span::new(3, 11)]);
        assert_eq!(phrase.number, Some(Span::new(0, 1)));
        assert_eq!(phrase.unit, Some(Span::new(13, 17)));
        assert!(!phrase.sum);
    }
}
