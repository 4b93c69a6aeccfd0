//! Numbers and ranges in every spelling: `1-1/2`, `two and a half`, `3-4`, `half a dozen`, `about ten`.

use potwright_measure::{Amount, Exact};

use crate::lexicon::Class;
use crate::token::{Gap, Token};

/// An amount and the index of the token after it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct Counted {
    pub(crate) amount: Amount,
    pub(crate) next: usize,
    /// It is only an article: 'a bay leaf'.
    pub(crate) article: bool,
}

/// An amount at this token: qualifiers, a number or a range, and what may follow it ('or so', '+').
pub(crate) fn amount(tokens: &[Token], at: usize) -> Option<Counted> {
    let (mut next, mut about) = qualifiers(tokens, at);
    let between = tokens.get(next).is_some_and(|t| t.is("between"));
    if between || tokens.get(next).is_some_and(|t| t.is("from")) {
        next += 1;
    }
    let (low, after, article) = match number(tokens, next) {
        Some((low, after)) => (low, after, false),
        None if is_article(tokens.get(next)?) => (Exact::ONE, next + 1, true),
        None => return None,
    };
    let (high, mut next) = if article {
        (low, after)
    } else {
        upper(tokens, after, between).unwrap_or((low, after))
    };
    if let Some(after) = vaguely(tokens, next) {
        (about, next) = (true, after);
    }
    let (low, high) = if low <= high { (low, high) } else { (high, low) };
    Some(Counted {
        amount: Amount { low, high, about },
        next,
        article,
    })
}

/// 'a', 'an'.
pub(crate) fn is_article(token: &Token) -> bool {
    token.is_any(&["a", "an"])
}

/// Words before a number that change how far it is to be leaned on, or nothing.
fn qualifiers(tokens: &[Token], at: usize) -> (usize, bool) {
    let (mut next, mut about) = (at, false);
    loop {
        let Some(token) = tokens.get(next) else {
            return (next, about);
        };
        let words = token.class;
        let follows = |word: &str| tokens.get(next + 1).is_some_and(|t| t.is(word));
        if token.sign() == Some('~') || words.is(Class::ABOUT) {
            about = true;
            next += 1 + usize::from(tokens.get(next + 1).is_some_and(|t| t.sign() == Some('.')));
        } else if (token.is("up") && follows("to"))
            || (token.is("at") && (follows("least") || follows("most")))
            || (token.is_any(&["just", "a"]) && (follows("over") || follows("under")))
            || (token.is("not") && follows("quite"))
        {
            (about, next) = (true, next + 2);
        } else if token.is_any(&["over", "under"]) && number(tokens, next + 1).is_some() {
            (about, next) = (true, next + 1);
        } else if is_article(token)
            && tokens.get(next + 1).is_some_and(|t| t.class.is(Class::ABOUT))
            && (number(tokens, next + 2).is_some() && !tokens[next + 1].is("short"))
        {
            // 'a good 80 ml', 'a scant 2 cups'.
            (about, next) = (true, next + 2);
        } else {
            return (next, about);
        }
    }
}

/// 'or so', 'or thereabouts', 'or more', a plus sign directly after: the number is not to be leaned on.
pub(crate) fn vaguely(tokens: &[Token], at: usize) -> Option<usize> {
    let token = tokens.get(at)?;
    if token.sign() == Some('+') && token.gap == Gap::None {
        return Some(at + 1);
    }
    let second = tokens.get(at + 1)?;
    let said =
        (token.is("or") && second.is_any(&["so", "thereabouts", "more"])) || (token.is("more") && second.is("or"));
    let length = if token.is("more") { 3 } else { 2 };
    said.then_some(at + length)
}

/// The upper end after '-', 'to', 'or' ('and' after 'between').
fn upper(tokens: &[Token], at: usize, between: bool) -> Option<(Exact, usize)> {
    let sign = tokens.get(at)?;
    let joins = sign.is_dash() || sign.is_any(&["to", "or"]) || (between && sign.is("and"));
    if !joins || (sign.is_dash() && sign.gap == Gap::Wide) {
        return None;
    }
    number(tokens, at + 1)
}

/// One number, in figures or words.
pub(crate) fn number(tokens: &[Token], at: usize) -> Option<(Exact, usize)> {
    let token = tokens.get(at)?;
    if let Some(whole) = token.number() {
        return Some(in_figures(tokens, at, whole));
    }
    in_words(tokens, at)
}

fn in_figures(tokens: &[Token], at: usize, whole: Exact) -> (Exact, usize) {
    let proper = |index: usize| {
        let part = tokens.get(index)?.number()?;
        // '2 ½-inch slices' are two slices of half an inch.
        let length = tokens.get(index + 1).is_some_and(|t| t.is_dash() && t.gap == Gap::None)
            && tokens.get(index + 2).is_some_and(Token::is_word);
        (part < Exact::ONE && !part.is_zero() && !part.is_whole() && !length).then_some(part)
    };
    let written_as_fraction = |index: usize| tokens.get(index).is_some_and(|t| !t.text.contains(['.', ',']));
    let mixed = |index: usize| {
        let part = proper(index).filter(|_| written_as_fraction(index))?;
        Some((whole.checked_add(part)?, index + 1))
    };
    if !whole.is_whole() {
        return (whole, at + 1);
    }
    let Some(second) = tokens.get(at + 1) else {
        return (whole, at + 1);
    };
    if second.number().is_some() && second.gap == Gap::Space {
        return mixed(at + 1).unwrap_or((whole, at + 1));
    }
    let tight = tokens.get(at + 2).is_some_and(|t| t.gap == Gap::None);
    if second.is_dash() && second.gap == Gap::None && tight || second.is("and") || second.sign() == Some('&') {
        if let Some(found) = mixed(at + 2) {
            return found;
        }
        if second.is("and") {
            return and_part(tokens, at + 1, whole).unwrap_or((whole, at + 1));
        }
    }
    if second.is_any(&["dozen", "doz"]) {
        return dozens(tokens, at + 2, whole).unwrap_or((whole, at + 2));
    }
    (whole, at + 1)
}

fn in_words(tokens: &[Token], at: usize) -> Option<(Exact, usize)> {
    let token = tokens.get(at)?;
    let follows = |index: usize, word: &str| tokens.get(index).is_some_and(|t| t.is(word));
    if is_article(token) {
        return article_number(tokens, at);
    }
    if token.is("another") {
        return number(tokens, at + 1).or(Some((Exact::ONE, at + 1)));
    }
    if let Some((part, next)) = part_in_words(tokens, at) {
        // 'half a dozen', 'half an onion', 'a quarter of a cabbage'.
        let article = next + usize::from(follows(next, "of"));
        let (part, next) = match tokens.get(article) {
            Some(t) if is_article(t) => (part, article + 1),
            _ => (part, next),
        };
        return if follows(next, "dozen") {
            Some((part.checked_mul(Exact::whole(12))?, next + 1))
        } else {
            Some((part, next))
        };
    }
    if token.is("couple") && follows(at + 1, "of") {
        return Some((Exact::whole(2), at + 2));
    }
    let whole = Exact::whole(whole_in_words(&token.lower)?);
    if follows(at + 1, "dozen") {
        return dozens(tokens, at + 2, whole);
    }
    if follows(at + 1, "hundred") {
        return Some((whole.checked_mul(Exact::whole(100))?, at + 2));
    }
    // 'two thirds', 'three quarters'.
    if let Some(below) = tokens.get(at + 1).and_then(|t| denominator(&t.lower)) {
        let part = whole.checked_mul(Exact::ratio(1, below)?)?;
        let of = at + 2 + usize::from(follows(at + 2, "of"));
        let article = tokens.get(of).is_some_and(is_article);
        return Some((part, if article { of + 1 } else { at + 2 }));
    }
    and_part(tokens, at + 1, whole).or(Some((whole, at + 1)))
}

/// 'a dozen', 'a half', 'a couple of', 'a quarter of a'.
fn article_number(tokens: &[Token], at: usize) -> Option<(Exact, usize)> {
    let second = tokens.get(at + 1)?;
    let of = at + 2 + usize::from(tokens.get(at + 2).is_some_and(|t| t.is("of")));
    match second.lower.as_str() {
        "dozen" => dozens(tokens, at + 2, Exact::ONE),
        "couple" | "pair" => Some((Exact::whole(2), of)),
        "half" | "quarter" | "third" => {
            let part = part_of_one(&second.lower)?;
            let article = tokens.get(of).is_some_and(is_article);
            Some((part, if article { of + 1 } else { at + 2 }))
        }
        "half-dozen" => Some((Exact::whole(6), at + 2)),
        _ => None,
    }
}

/// So many dozens, and the part of one that may follow: 'a dozen and a half'.
fn dozens(tokens: &[Token], at: usize, whole: Exact) -> Option<(Exact, usize)> {
    let (number, next) = and_part(tokens, at, whole).unwrap_or((whole, at));
    Some((number.checked_mul(Exact::whole(12))?, next))
}

/// 'and a half', 'and one-half', 'and three quarters' after a whole number.
fn and_part(tokens: &[Token], at: usize, whole: Exact) -> Option<(Exact, usize)> {
    if !tokens.get(at)?.is("and") {
        return None;
    }
    let second = tokens.get(at + 1)?;
    let article = is_article(second);
    let start = at + 1 + usize::from(article);
    if let Some(part) = second.number().filter(|part| *part < Exact::ONE) {
        return Some((whole.checked_add(part)?, at + 2));
    }
    let (part, next) = match part_in_words(tokens, start) {
        Some(found) => found,
        None => {
            let above = whole_in_words(&tokens.get(start)?.lower)?;
            let below = denominator(&tokens.get(start + 1)?.lower)?;
            (Exact::ratio(above, below)?, start + 2)
        }
    };
    Some((whole.checked_add(part)?, next))
}

/// A fraction said in one word: 'half', 'one-fourth', 'three-quarters'.
fn part_in_words(tokens: &[Token], at: usize) -> Option<(Exact, usize)> {
    let word = tokens.get(at)?.lower.as_str();
    if word == "half-a-dozen" {
        return Some((Exact::whole(6), at + 1));
    }
    if let Some(part) = part_of_one(word) {
        return Some((part, at + 1));
    }
    let (above, below) = word.split_once('-')?;
    if let Some((_, part)) = word.split_once("-and-") {
        let whole = whole_in_words(above)?;
        let part = part_of_one(part.trim_start_matches("a-"))?;
        return Some((Exact::whole(whole).checked_add(part)?, at + 1));
    }
    Some((Exact::ratio(whole_in_words(above)?, denominator(below)?)?, at + 1))
}

fn part_of_one(word: &str) -> Option<Exact> {
    match word {
        "half" => Exact::ratio(1, 2),
        "quarter" => Exact::ratio(1, 4),
        "third" => Exact::ratio(1, 3),
        _ => None,
    }
}

fn denominator(word: &str) -> Option<i64> {
    Some(match word {
        "half" | "halves" => 2,
        "third" | "thirds" => 3,
        "quarter" | "quarters" | "fourth" | "fourths" => 4,
        "fifth" | "fifths" => 5,
        "sixth" | "sixths" => 6,
        "eighth" | "eighths" => 8,
        _ => return None,
    })
}

/// Whether a word in small letters can open a number: 'two', 'half', 'about'.
pub(crate) fn is_number_word(word: &str) -> bool {
    whole_in_words(word).is_some()
        || part_of_one(word).is_some()
        || word.contains('-')
        || matches!(word, "a" | "an" | "about")
}

fn whole_in_words(word: &str) -> Option<i64> {
    if word == "dozen" {
        return Some(12);
    }
    potwright_measure::in_words::whole(word).map(i64::from)
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Span;
    use crate::token::tokens;

    /// `low..high`, with '~' when not to be leaned on, and what is left of the text.
    fn show(text: &str) -> String {
        let found = tokens(text, Span::new(0, text.len()));
        let Some(counted) = amount(&found, 0) else {
            return "none".to_owned();
        };
        let Amount { low, high, about } = counted.amount;
        let rest = found.get(counted.next).map_or("", |t| &text[t.span.start..]);
        format!("{}{low}..{high}|{rest}", if about { "~" } else { "" })
    }

    #[test]
    fn amounts_in_every_spelling() {
        for (text, expected) in [
            ("2 leeks", "2..2|leeks"),
            ("1 1/2 cups", "3/2..3/2|cups"),
            ("1-1/2 cups", "3/2..3/2|cups"),
            ("1 ½ cups", "3/2..3/2|cups"),
            ("2½ l", "5/2..5/2|l"),
            ("3-5 leeks", "3..5|leeks"),
            ("3 – 5 leeks", "3..5|leeks"),
            ("½-1 tsp", "1/2..1|tsp"),
            ("1-1½ tsp", "1..3/2|tsp"),
            ("5-4 leeks", "4..5|leeks"),
            ("two and a half pounds", "5/2..5/2|pounds"),
            ("two and one-half pounds", "5/2..5/2|pounds"),
            ("one and three-quarters cups", "7/4..7/4|cups"),
            ("three-quarters of an hour", "3/4..3/4|hour"),
            ("two thirds of a cup", "2/3..2/3|cup"),
            ("one-fourth cup", "1/4..1/4|cup"),
            ("half a swede", "1/2..1/2|swede"),
            ("half an onion", "1/2..1/2|onion"),
            ("half a dozen eggs", "6..6|eggs"),
            ("a dozen eggs", "12..12|eggs"),
            ("2 dozen eggs", "24..24|eggs"),
            ("a couple of bay leaves", "2..2|bay leaves"),
            ("a bay leaf", "1..1|bay leaf"),
            ("twenty-five prunes", "25..25|prunes"),
            ("one or two carrots", "1..2|carrots"),
            ("3 to 4 lemons", "3..4|lemons"),
            ("between 2 and 3 cups", "2..3|cups"),
            ("about 2 cups", "~2..2|cups"),
            ("a good 80 ml", "~80..80|ml"),
            ("10 or so peppercorns", "~10..10|peppercorns"),
            ("30+ g", "~30..30|g"),
            ("up to 3 eggs", "~3..3|eggs"),
            ("2 ½-inch slices", "2..2|½-inch slices"),
            ("leeks", "none"),
            ("", "none"),
        ] {
            assert_eq!(show(text), expected, "{text}");
        }
    }
}
