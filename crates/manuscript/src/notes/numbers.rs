//! Numbers as they are said: 'a hundred and fifty', 'one point eight', 'four twenty five', 'three and three quarter'.

use potwright_measure::{Amount, Exact, Unit, in_words};

use crate::token::Token;

/// A number that was said, and the index of the word after it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(super) struct Number {
    pub(super) amount: Amount,
    pub(super) next: usize,
    /// It is only an article: 'a bay leaf'.
    pub(super) article: bool,
}

/// Words before a number that make it one not to be leaned on.
const ABOUT: &str = "about around roughly nearly almost maybe approximately scant generous good heaped heaping rounded";
/// Words that join the ends of a range.
const TO: &str = "to or maybe";

/// A number or a range at this word, with 'about' before it.
pub(super) fn amount(tokens: &[Token], at: usize) -> Option<Number> {
    let (mut from, mut about) = (at, false);
    while tokens.get(from).is_some_and(|t| t.is_one_of(ABOUT)) {
        (from, about) = (from + 1, true);
    }
    let between = tokens.get(from).is_some_and(|t| t.is("between"));
    from += usize::from(between);
    let article = tokens.get(from).is_some_and(|t| t.is_any(&["a", "an"]));
    let (low, next) = match one(tokens, from) {
        Some(found) => found,
        None if article => {
            let about_next = tokens.get(from + 1).is_some_and(|t| t.is_one_of(ABOUT));
            let next = from + 1 + usize::from(about_next);
            if let Some((low, next)) = about_next.then(|| one(tokens, next)).flatten() {
                return Some(Number {
                    amount: Amount::single(low).about(),
                    next,
                    article: false,
                });
            }
            let mut amount = Amount::single(Exact::ONE);
            amount.about = about || about_next;
            return Some(Number {
                amount,
                next,
                article: true,
            });
        }
        None => return None,
    };
    let next = twice(tokens, next, low);
    let (high, next) = upper(tokens, next, between).unwrap_or((low, next));
    let (low, high) = if low <= high { (low, high) } else { (high, low) };
    let or_so = tokens.get(next).is_some_and(|t| t.is("or"))
        && tokens.get(next + 1).is_some_and(|t| t.is_any(&["so", "thereabouts"]));
    let next = next + 2 * usize::from(or_so);
    let amount = Amount {
        low,
        high,
        about: about || or_so,
    };
    Some(Number {
        amount,
        next,
        article: false,
    })
}

/// 'seven hundred seven hundred grams': the index after a number that is said again at once; 'two two pound hens' says
/// how many and what each weighs.
fn twice(tokens: &[Token], at: usize, number: Exact) -> usize {
    let Some((_, next)) = one(tokens, at).filter(|(again, _)| *again == number) else {
        return at;
    };
    let measure = super::mention::unit(tokens, next).filter(|_| number < Exact::whole(20));
    let of_each = measure.is_some_and(|(_, after)| !tokens.get(after).is_some_and(|t| t.is("of")));
    if of_each { at } else { next }
}

/// The upper end of a range: it is joined by a word and is the larger one.
fn upper(tokens: &[Token], at: usize, between: bool) -> Option<(Exact, usize)> {
    let join = tokens.get(at)?;
    let joins = join.is_one_of(TO) || join.is_dash() || between && join.is("and");
    let from = at + 1 + usize::from(join.is("or") && tokens.get(at + 1).is_some_and(|t| t.is("maybe")));
    joins.then(|| one(tokens, from)).flatten()
}

/// One number in words or figures; no article alone.
pub(super) fn one(tokens: &[Token], at: usize) -> Option<(Exact, usize)> {
    if let Some(found) = part(tokens, at) {
        return dozen(tokens, found);
    }
    let (whole, next) = whole(tokens, at)?;
    if tokens.get(next).is_some_and(|t| t.is("point")) {
        return decimals(tokens, whole, next + 1).or(Some((whole, next)));
    }
    // 'three quarters', 'two thirds'.
    if let Some(below) = tokens
        .get(next)
        .and_then(denominator)
        .filter(|_| whole < Exact::whole(12))
    {
        return Some((whole.checked_mul(Exact::ratio(1, below)?)?, next + 1));
    }
    let (whole, next) = and_part(tokens, next, whole).unwrap_or((whole, next));
    dozen(tokens, (whole, next))
}

fn dozen(tokens: &[Token], (number, next): (Exact, usize)) -> Option<(Exact, usize)> {
    let article = usize::from(tokens.get(next).is_some_and(|t| t.is("a")));
    if tokens.get(next + article).is_some_and(|t| t.is("dozen")) {
        return Some((number.checked_mul(Exact::whole(12))?, next + article + 1));
    }
    Some((number, next))
}

/// 'and a half', 'and three quarter', 'and one third' after a whole number or after its unit.
pub(super) fn and_part(tokens: &[Token], at: usize, whole: Exact) -> Option<(Exact, usize)> {
    if !tokens.get(at)?.is("and") {
        return None;
    }
    let from = at + 1;
    let (part, next) = match part(tokens, from) {
        Some(found) => found,
        None => {
            let (above, next) = self::ones(tokens, from)?;
            let below = denominator(tokens.get(next)?)?;
            (Exact::ratio(above, below)?, next + 1)
        }
    };
    // 'two and half an onion' says two things.
    if tokens.get(next).is_some_and(|t| t.is_any(&["a", "an"])) {
        return None;
    }
    Some((whole.checked_add(part)?, next))
}

/// 'half', 'a half', 'a quarter', 'a third', 'a couple', 'a dozen'.
fn part(tokens: &[Token], at: usize) -> Option<(Exact, usize)> {
    let article = usize::from(tokens.get(at)?.is_any(&["a", "an"]));
    let word = tokens.get(at + article)?;
    // 'cut in half' is no number.
    if at
        .checked_sub(1)
        .and_then(|before| tokens.get(before))
        .is_some_and(|t| t.is("in"))
        && article == 0
    {
        return None;
    }
    let number = match word.lower.as_str() {
        "half" => Exact::ratio(1, 2)?,
        "quarter" => Exact::ratio(1, 4)?,
        "third" => Exact::ratio(1, 3)?,
        "eighth" => Exact::ratio(1, 8)?,
        "dozen" => Exact::whole(12),
        "couple" | "pair" if article > 0 => Exact::whole(2),
        _ => return None,
    };
    // 'half and half' is a food.
    let food = word.is("half")
        && tokens.get(at + article + 1).is_some_and(|t| t.is("and"))
        && tokens.get(at + article + 2).is_some_and(|t| t.is("half"));
    let next = at + article + 1;
    let of = word.is_any(&["couple", "pair"]) && tokens.get(next).is_some_and(|t| t.is("of"));
    (!food).then_some((number, next + usize::from(of)))
}

fn denominator(token: &Token) -> Option<i64> {
    Some(match token.lower.as_str() {
        "half" | "halves" => 2,
        "third" | "thirds" => 3,
        "quarter" | "quarters" => 4,
        "eighth" | "eighths" => 8,
        _ => return None,
    })
}

/// A whole number, or one in figures.
fn whole(tokens: &[Token], at: usize) -> Option<(Exact, usize)> {
    if let Some(number) = tokens.get(at)?.number() {
        return Some((number, at + 1));
    }
    let article = tokens.get(at).is_some_and(|t| t.is("a"));
    if article || tokens.get(at).is_some_and(|t| t.is("hundred")) {
        return hundreds(tokens, at + usize::from(article), 1);
    }
    let (first, next) = ones(tokens, at)?;
    if let Some(found) = hundreds(tokens, next, first) {
        return Some(found);
    }
    // 'four twenty five', 'seven fifty': hundreds left unsaid; 'two twenty eight ounce cans' are two.
    if (1..10).contains(&first)
        && next == at + 1
        && let Some((tens, after)) = ones(tokens, next).filter(|(tens, _)| (20..100).contains(tens))
        && !holds(tokens, after)
    {
        return Some((Exact::whole(first * 100 + tens), after));
    }
    Some((Exact::whole(first), next))
}

/// 'hundred and fifty', 'thousand two hundred' after how many of them.
fn hundreds(tokens: &[Token], at: usize, many: i64) -> Option<(Exact, usize)> {
    let word = tokens.get(at)?;
    let scale = if word.is("hundred") {
        100
    } else if word.is("thousand") {
        1000
    } else {
        return None;
    };
    let whole = many * scale;
    let and = usize::from(tokens.get(at + 1).is_some_and(|t| t.is("and")));
    let small = ones(tokens, at + 1 + and)
        .filter(|(small, next)| *small < 100 && tokens.get(*next).is_none_or(|t| denominator(t).is_none()));
    // 'seven hundred seven hundred' says it twice.
    let small = small.filter(|(_, next)| scale != 100 || !tokens.get(*next).is_some_and(|t| t.is("hundred")));
    match small {
        Some((small, next)) if scale == 100 => Some((Exact::whole(whole + small), next)),
        Some((small, next)) if tokens.get(next).is_some_and(|t| t.is("hundred")) => {
            Some((Exact::whole(whole + small * 100), next + 1))
        }
        _ => Some((Exact::whole(whole), at + 1)),
    }
}

/// Whether a measure and a package follow: 'ounce can', 'gram tins'.
fn holds(tokens: &[Token], at: usize) -> bool {
    let unit = |at: usize| tokens.get(at).and_then(|t| Unit::from_spelling(&t.lower));
    unit(at).is_some()
        && unit(at + 1).is_some_and(|unit| matches!(unit, Unit::Can | Unit::Jar | Unit::Packet | Unit::Bag | Unit::Box))
}

/// Nought to ninety-nine, tens and ones said apart.
fn ones(tokens: &[Token], at: usize) -> Option<(i64, usize)> {
    let first = in_words::whole(&tokens.get(at)?.lower)?;
    let tens = (20..100).contains(&first) && first.is_multiple_of(10);
    let second = tokens.get(at + 1).and_then(|t| in_words::whole(&t.lower));
    match second {
        Some(second) if tens && (1..10).contains(&second) => Some((i64::from(first + second), at + 2)),
        _ => Some((i64::from(first), at + 1)),
    }
}

/// What follows 'point': single figures, said or typed.
fn decimals(tokens: &[Token], whole: Exact, at: usize) -> Option<(Exact, usize)> {
    let (mut number, mut scale, mut next) = (whole, 1_i64, at);
    while next < at + 3 {
        let said = tokens.get(next).and_then(|t| in_words::whole(&t.lower)).map(i64::from);
        let Some(figure) = said.filter(|figure| (0..10).contains(figure)) else {
            break;
        };
        scale *= 10;
        number = number.checked_add(Exact::ratio(figure, scale)?)?;
        next += 1;
    }
    (next > at).then_some((number, next))
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Span;
    use crate::token::tokens;

    /// Low, high and the words left over.
    fn said(text: &str) -> String {
        let found = tokens(text, Span::new(0, text.len()));
        let Some(number) = amount(&found, 0) else {
            return "none".into();
        };
        let rest: Vec<&str> = found[number.next..].iter().map(|t| t.text).collect();
        let about = if number.amount.about { "~" } else { "" };
        format!(
            "{about}{}..{} {}",
            number.amount.low.to_f64(),
            number.amount.high.to_f64(),
            rest.join(" ")
        )
    }

    #[test]
    fn numbers_as_they_are_said() {
        // What each phrase says is plain English; no outside table is needed.
        for (text, expected) in [
            ("three and three quarter cups", "3.75..3.75 cups"),
            ("half a stick", "0.5..0.5 a stick"),
            ("a hundred and fifty mils", "150..150 mils"),
            ("seven hundred and fifty", "750..750 "),
            ("seven fifty of", "750..750 of"),
            ("four twenty five and", "425..425 and"),
            ("one point eight kilos", "1.8..1.8 kilos"),
            ("two four hundred gram tins", "2..2 four hundred gram tins"),
            ("two twenty eight ounce cans", "2..2 twenty eight ounce cans"),
            ("forty to forty five minutes", "40..45 minutes"),
            ("about a cup", "~1..1 cup"),
            ("a good tablespoon", "~1..1 tablespoon"),
            ("half a dozen eggs", "6..6 eggs"),
            ("a couple of tablespoons", "2..2 tablespoons"),
            ("three quarters of", "0.75..0.75 of"),
            ("one and a quarter cups", "1.25..1.25 cups"),
            ("a thousand two hundred grams", "1200..1200 grams"),
            ("seven hundred seven hundred grams", "700..700 grams"),
            ("ten ten minutes", "10..10 minutes"),
            ("two two pound hens", "2..2 two pound hens"),
            ("half and half", "none"),
            ("the leeks", "none"),
        ] {
            assert_eq!(said(text), expected, "{text}");
        }
    }
}
