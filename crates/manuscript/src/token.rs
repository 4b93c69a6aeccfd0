//! Words, numbers and signs of a stretch of text, each with its place.

use std::borrow::Cow;

use potwright_measure::{Exact, fractions};

use crate::Span;
use crate::lexicon::{self, Class};
use crate::speech::{self, Speech};

/// What a token is.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Kind {
    Word,
    Number(Exact),
    Sign(char),
    /// What stands in brackets, folded to one token: index into the asides of its line.
    Aside(usize),
}

/// The white space before a token.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Gap {
    /// It follows the one before directly: '500g'.
    None,
    /// One or two spaces, or the end of a typed line.
    Space,
    /// A tab or three and more spaces: the next column of a table.
    Wide,
}

/// A word in small letters; borrowed where it is typed so.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Small<'t>(Cow<'t, str>);

impl Small<'_> {
    pub(crate) fn as_str(&self) -> &str {
        &self.0
    }
}

impl std::ops::Deref for Small<'_> {
    type Target = str;
    fn deref(&self) -> &str {
        &self.0
    }
}

impl std::fmt::Display for Small<'_> {
    fn fmt(&self, f: &mut std::fmt::Formatter<'_>) -> std::fmt::Result {
        f.write_str(&self.0)
    }
}

/// A word, a number or a sign.
#[derive(Clone, Debug, PartialEq)]
pub(crate) struct Token<'t> {
    pub(crate) kind: Kind,
    pub(crate) gap: Gap,
    pub(crate) span: Span,
    /// As typed.
    pub(crate) text: &'t str,
    /// In small letters, apostrophes plain.
    pub(crate) lower: Small<'t>,
    /// The classes of the word; none for numbers and signs.
    pub(crate) class: Class,
    /// The parts it plays in a sentence.
    pub(crate) speech: Speech,
}

impl Token<'_> {
    pub(crate) fn is(&self, lower: &str) -> bool {
        &*self.lower == lower
    }

    pub(crate) fn is_any(&self, words: &[&str]) -> bool {
        words.contains(&self.lower.as_str())
    }

    /// Whether it is one of the words of a list with single spaces between.
    pub(crate) fn is_one_of(&self, words: &str) -> bool {
        let (list, word) = (words.as_bytes(), self.lower.as_bytes());
        let mut from = 0;
        while let Some(rest) = list.get(from..).filter(|_| !word.is_empty()) {
            let ends = rest.get(word.len()).is_none_or(|next| *next == b' ');
            if rest.starts_with(word) && ends {
                return true;
            }
            match rest.iter().position(|letter| *letter == b' ') {
                Some(space) => from += space + 1,
                None => return false,
            }
        }
        false
    }

    pub(crate) fn is_word(&self) -> bool {
        self.kind == Kind::Word
    }

    pub(crate) fn sign(&self) -> Option<char> {
        match self.kind {
            Kind::Sign(sign) => Some(sign),
            _ => None,
        }
    }

    pub(crate) fn number(&self) -> Option<Exact> {
        match self.kind {
            Kind::Number(number) => Some(number),
            _ => None,
        }
    }

    /// A hyphen or dash of any length.
    pub(crate) fn is_dash(&self) -> bool {
        matches!(self.kind, Kind::Sign('-' | '–' | '—' | '‒' | '−'))
    }
}

/// The word at a place in small letters; empty beyond the end.
pub(crate) fn at<'a>(tokens: &'a [Token<'_>], index: usize) -> &'a str {
    tokens.get(index).map_or("", |token| token.lower.as_str())
}

/// The parts that the word at a place may play; none beyond the end.
pub(crate) fn speech_at(tokens: &[Token], index: usize) -> Speech {
    tokens.get(index).map_or(Speech::default(), |token| token.speech)
}

#[cfg(test)]
thread_local! {
    /// The bytes that have been split into tokens, so that a test can count how often a page is gone through.
    pub(crate) static LOOKED_AT: std::cell::Cell<usize> = const { std::cell::Cell::new(0) };
}

/// The tokens of the text between two places; white space is only kept as [`Gap`].
pub(crate) fn tokens(text: &str, span: Span) -> Vec<Token<'_>> {
    // A word and its space are some five bytes.
    let mut found = Vec::with_capacity(span.end.saturating_sub(span.start).min(text.len()) / 5 + 1);
    #[cfg(test)]
    LOOKED_AT.with(|bytes| bytes.set(bytes.get() + span.end.saturating_sub(span.start)));
    let mut at = span.start;
    let mut gap = Gap::Space;
    let mut spaces = 0;
    while let Some(letter) = text.get(at..span.end).and_then(|rest| rest.chars().next()) {
        if letter.is_whitespace() {
            spaces += 1;
            let wide = letter == '\t' || spaces > 2;
            gap = gap.max(if wide { Gap::Wide } else { Gap::Space });
            if letter == '\n' || letter == '\r' {
                (gap, spaces) = (Gap::Space, i32::MIN / 2);
            }
            at += letter.len_utf8();
            continue;
        }
        let (kind, mut end) = token(text, at, span.end, letter);
        let mut typed = text.get(at..end).unwrap_or("");
        let mut lower = small(typed);
        if kind == Kind::Word {
            let spaced = found.is_empty() || gap > Gap::None;
            if let Some((length, word)) = with(text.get(at..span.end).unwrap_or("")).filter(|_| spaced) {
                (end, lower) = (at + length, Small(Cow::Borrowed(word)));
            } else if gap == Gap::None
                && let Some(length) = unit_before_figures(typed).filter(|_| follows_number(&found))
            {
                (end, lower) = (at + length, small(&typed[..length]));
            }
            typed = text.get(at..end).unwrap_or("");
        }
        let speech = speech::speech(&lower);
        let class = if kind == Kind::Word {
            lexicon::class(&lower)
        } else {
            Class::default()
        };
        found.push(Token {
            kind,
            gap,
            span: Span::new(at, end),
            text: typed,
            lower,
            class,
            speech,
        });
        (gap, spaces, at) = (Gap::None, 0, end);
    }
    if let Some(first) = found.first_mut() {
        first.gap = Gap::Space;
    }
    found
}

/// Small letters, apostrophes plain.
fn small(typed: &str) -> Small<'_> {
    let plain = |c: u8| c.is_ascii_lowercase() || c.is_ascii_digit() || c.is_ascii_punctuation();
    Small(match typed.bytes().all(plain) {
        true => Cow::Borrowed(typed),
        false => Cow::Owned(letters(typed).to_lowercase().replace(['’', '‘'], "'")),
    })
}

/// A word in single letters: a printer's ligatures opened, hyphens and joints that do not show left out.
pub(crate) fn letters(typed: &str) -> Cow<'_, str> {
    let set = |c: char| unseen(c) || ('\u{fb00}'..='\u{fb06}').contains(&c);
    if typed.is_ascii() || !typed.contains(set) {
        return Cow::Borrowed(typed);
    }
    let mut opened = String::with_capacity(typed.len());
    for letter in typed.chars().filter(|c| !unseen(*c)) {
        match letter {
            '\u{fb00}' => opened.push_str("ff"),
            '\u{fb01}' => opened.push_str("fi"),
            '\u{fb02}' => opened.push_str("fl"),
            '\u{fb03}' => opened.push_str("ffi"),
            '\u{fb04}' => opened.push_str("ffl"),
            '\u{fb05}' | '\u{fb06}' => opened.push_str("st"),
            _ => opened.push(letter),
        }
    }
    Cow::Owned(opened)
}

/// The soft hyphen and the joints of no width.
fn unseen(letter: char) -> bool {
    matches!(letter, '\u{ad}' | '\u{200b}'..='\u{200d}' | '\u{2060}' | '\u{feff}')
}

/// 'w/' and 'w/o' at the start, as the word they stand for.
fn with(rest: &str) -> Option<(usize, &'static str)> {
    let bytes = rest.as_bytes();
    let letter = |at: usize| bytes.get(at).is_some_and(|b| b.is_ascii_alphanumeric());
    if !matches!(bytes.first(), Some(b'w' | b'W')) || bytes.get(1) != Some(&b'/') {
        return None;
    }
    if matches!(bytes.get(2), Some(b'o' | b'O')) && !letter(3) {
        return Some((3, "without"));
    }
    Some((2, "with"))
}

/// '1lb15oz': the length of the unit before the figures.
fn unit_before_figures(typed: &str) -> Option<usize> {
    let length = typed.bytes().position(|b| b.is_ascii_digit()).filter(|at| *at > 0)?;
    potwright_measure::Unit::from_spelling(typed.get(..length)?).map(|_| length)
}

fn follows_number(found: &[Token]) -> bool {
    found.last().is_some_and(|t| t.number().is_some())
}

fn token(text: &str, at: usize, end: usize, first: char) -> (Kind, usize) {
    let rest = text.get(at..end).unwrap_or("");
    // '.5 cup', where no figure or word stands before the stop.
    let opens = at == 0 || !text[..at].ends_with(|c: char| c.is_alphanumeric() || c == '.');
    let point = first == '.' && opens && rest.as_bytes().get(1).is_some_and(u8::is_ascii_digit);
    let counts = first.is_ascii_digit() || is_vulgar(first) || point;
    if let Some((number, length)) = counts.then(|| number(rest)).flatten() {
        return (Kind::Number(number), at + length);
    }
    if first.is_alphanumeric() {
        return (Kind::Word, at + word_length(rest));
    }
    (Kind::Sign(first), at + first.len_utf8())
}

/// The length of the word at the start; hyphens and apostrophes between letters belong to it.
fn word_length(rest: &str) -> usize {
    if let Some(length) = plain_word_length(rest.as_bytes()) {
        return length;
    }
    let mut letters = rest.char_indices().peekable();
    let mut length = 0;
    while let Some((at, letter)) = letters.next() {
        let joins = matches!(letter, '-' | '\'' | '’' | '\u{2010}' | '\u{2011}')
            && length > 0
            && letters.peek().is_some_and(|(_, next)| next.is_alphabetic());
        let joins = joins || unseen(letter) && letters.peek().is_some_and(|(_, next)| next.is_alphabetic());
        if !letter.is_alphanumeric() && !joins && !is_mark(letter) || is_vulgar(letter) {
            break;
        }
        length = at + letter.len_utf8();
    }
    length.max(rest.chars().next().map_or(0, char::len_utf8))
}

/// The same for a word of plain letters with a plain sign behind it, as most are; `None` when it has to be looked at
/// closely.
fn plain_word_length(rest: &[u8]) -> Option<usize> {
    let mut length = 0;
    while let Some(letter) = rest.get(length) {
        let joins = matches!(letter, b'-' | b'\'') && length > 0;
        if joins {
            match rest.get(length + 1) {
                Some(next) if !next.is_ascii() => return None,
                Some(next) if next.is_ascii_alphabetic() => {}
                _ => break,
            }
        } else if !letter.is_ascii() {
            return None;
        } else if !letter.is_ascii_alphanumeric() {
            break;
        }
        length += 1;
    }
    Some(length.max(1))
}

/// Accents that stand as characters of their own.
fn is_mark(letter: char) -> bool {
    ('\u{300}'..='\u{36f}').contains(&letter)
}

fn is_vulgar(letter: char) -> bool {
    matches!(letter, '¼' | '½' | '¾' | '⅐'..='⅞' | '↉')
}

/// A number in figures at the start, with its length: `2`, `2.5`, `1,200`, `3/4`, `½`, `1½`, `1.25/4`.
fn number(rest: &str) -> Option<(Exact, usize)> {
    let bytes = rest.as_bytes();
    let figures = |from: usize| bytes[from..].iter().take_while(|b| b.is_ascii_digit()).count();
    let mut length = figures(0);
    let mut plain = rest[..length].to_owned();
    while length > 0 && bytes.get(length) == Some(&b',') && figures(length + 1) == 3 {
        plain.push_str(&rest[length + 1..length + 4]);
        length += 4;
    }
    if matches!(bytes.get(length), Some(b'.' | b',')) && figures(length + 1) > 0 {
        if length == 0 {
            plain.push('0');
        }
        let places = figures(length + 1);
        plain.push('.');
        plain.push_str(&rest[length + 1..length + 1 + places]);
        length += 1 + places;
    }
    let vulgar = rest[length..].chars().next().filter(|letter| is_vulgar(*letter));
    if let Some(letter) = vulgar {
        let part = fractions::parse(letter.encode_utf8(&mut [0; 4])).ok()?;
        let whole = if plain.is_empty() {
            Exact::ZERO
        } else {
            Exact::from_decimal(&plain).ok()?
        };
        return Some((whole.checked_add(part)?, length + letter.len_utf8()));
    }
    if plain.is_empty() {
        return None;
    }
    let above = Exact::from_decimal(&plain).ok()?;
    let stroke = rest[length..].chars().next().filter(|c| matches!(c, '/' | '⁄' | '∕'));
    let Some(stroke) = stroke else {
        return Some((above, length));
    };
    let from = length + stroke.len_utf8();
    let below = figures(from);
    // '4/' and '225g/8oz' are no fractions, and neither is '4/115g'; '1/2tsp' is one.
    let unit_follows = rest[from + below..].chars().next().is_some_and(char::is_alphabetic);
    let proper = || plain.len() == 1 && matches!(&rest[from..from + below], "2" | "3" | "4" | "8" | "16");
    if !(1..=3).contains(&below) || unit_follows && !(proper() && rest[from..from + below].len() >= plain.len()) {
        return Some((above, length));
    }
    let divided = Exact::from_decimal(&rest[from..from + below])
        .ok()
        .and_then(|below| above.checked_div(below));
    Some(divided.map_or((above, length), |fraction| (fraction, from + below)))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Each token as it stands, '|' between, '_' for a wide gap.
    fn show(text: &str) -> String {
        let found = tokens(text, Span::new(0, text.len()));
        let shown = found
            .iter()
            .map(|t| format!("{}{}", if t.gap == Gap::Wide { "_" } else { "" }, t.text));
        shown.collect::<Vec<_>>().join("|")
    }

    #[test]
    fn words_numbers_and_signs() {
        for (text, expected) in [
            ("500g beef", "500|g|beef"),
            ("1½-inch cubes", "1½|-|inch|cubes"),
            ("half-inch, cook’s", "half-inch|,|cook’s"),
            ("1.25/4 tsp", "1.25/4|tsp"),
            ("4 oz/115g", "4|oz|/|115|g"),
            ("1,200 g", "1,200|g"),
            ("0/0 x", "0|/|0|x"),
            ("Salt\t8 g", "Salt|_8|g"),
            ("1lb15oz can", "1|lb|15|oz|can"),
            ("1/2tsp, 4/115g", "1/2|tsp|,|4|/|115|g"),
            ("flour w/ ¼ c. milk, w/o salt", "flour|w/|¼|c|.|milk|,|w/o|salt"),
            (".5 cup, end.5", ".5|cup|,|end|.|5"),
            ("", ""),
        ] {
            assert_eq!(show(text), expected);
        }
    }

    #[test]
    fn numbers_are_exact() {
        let value = |text: &str| tokens(text, Span::new(0, text.len()))[0].number();
        assert_eq!(value("1½"), Exact::ratio(3, 2));
        assert_eq!(value("1.25/4"), Exact::ratio(5, 16));
        assert_eq!(value("2.400"), Exact::ratio(12, 5));
        assert_eq!(value("1,5 l"), Exact::ratio(3, 2));
        assert_eq!(value(".5 cup"), Exact::ratio(1, 2));
        assert_eq!(value("1/2tsp"), Exact::ratio(1, 2));
    }
    #[test]
    fn ligatures_and_hyphens_that_do_not_show_are_letters() {
        for (text, word) in [("ﬂour", "flour"), ("mush\u{ad}rooms", "mushrooms"), ("coﬀee", "coffee")] {
            let found = tokens(text, Span::new(0, text.len()));
            assert_eq!(found.len(), 1, "{text}");
            assert_eq!(found[0].lower.as_str(), word);
        }
    }
}
