//! Headings: of the parts of a page ('Method'), of components ('For the dumplings').

use super::rows::{Mark, Row};
use crate::lexicon::{self, Part};
use crate::line::Line;
use crate::line::quantity::measured;
use crate::{Section, Span, Words};

/// More bytes than a heading of a part has, its signs included.
const LONGEST: usize = 120;

/// The part a row heads, when it is nothing but such a heading.
pub(crate) fn part(text: &str, row: &Row) -> Option<Part> {
    let body = row.span.of(text);
    if body.len() > LONGEST {
        return None;
    }
    let words = bare(body);
    // '38 comments' heads what readers wrote; '2 tips' is asparagus.
    let uncounted = words.trim_start_matches(|c: char| c.is_ascii_digit() || c.is_whitespace());
    let counted = uncounted.len() < words.len();
    lexicon::heading(uncounted).filter(|_| !counted || matches!(uncounted, "comments" | "reviews" | "ratings"))
}

/// The part that the words before a colon name: 'Note: keeps well', 'Variation: without cream'.
pub(crate) fn opened_part(text: &str, span: Span) -> Option<(Part, usize)> {
    let body = span.of(text);
    let end = body
        .char_indices()
        .take(24)
        .find(|(_, c)| matches!(c, ':' | '–' | '—' | '.'))?;
    let words = bare(&body[..end.0]);
    let part = lexicon::heading(&words).or(other_diet(&words).filter(|_| end.1 == ':'))?;
    Some((part, span.start + end.0 + end.1.len_utf8()))
}

/// 'Make it vegan:', 'For a vegetarian version:', 'Gluten-free:'.
fn other_diet(words: &str) -> Option<Part> {
    let made = words.starts_with("make it ") || words.starts_with("to make it ");
    let version = words.starts_with("for a ") && words.ends_with(" version");
    let diet = matches!(
        words,
        "vegan" | "vegetarian" | "gluten-free" | "gluten free" | "dairy-free" | "dairy free" | "veggie"
    );
    (made || version || diet).then_some(Part::Variation)
}

/// Small letters, no signs at the ends, no number in front.
fn bare(heading: &str) -> String {
    let lower = heading.to_lowercase().replace('’', "'");
    let bare = lower.trim_matches(|c: char| !c.is_alphanumeric());
    bare.split_whitespace().collect::<Vec<_>>().join(" ")
}

/// How surely a row is a heading by its form alone.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
pub(crate) enum Form {
    /// It is none.
    No,
    /// A short line in title case, or standing alone: what follows decides.
    Perhaps,
    /// Capitals, a colon at the end, 'For the …', a Markdown heading.
    Yes,
}

/// The form of a row.
pub(crate) fn form(text: &str, row: &Row) -> Form {
    let body = row.span.of(text);
    if row.mark == Mark::Heading {
        return Form::Yes;
    }
    let words: Vec<&str> = body.split_whitespace().collect();
    if matches!(row.mark, Mark::Bullet | Mark::Action)
        || words.len() > 9
        || words.is_empty()
        || body.contains(['\t', '|'])
    {
        return Form::No;
    }
    let colon = body.ends_with(':');
    if body.ends_with(['.', ',', ';', '!', '?']) {
        return Form::No;
    }
    let form = by_form(row, body, &words, colon);
    // '2 LEEKS' is a line of a list, whatever its letters.
    let counted = || measured(&Line::new(text, row.span), 0, false).is_some();
    if form != Form::No && !colon && counted() {
        Form::No
    } else {
        form
    }
}

fn by_form(row: &Row, body: &str, words: &[&str], colon: bool) -> Form {
    let outside = outside_brackets(body);
    let capitals =
        outside.chars().filter(|c| c.is_alphabetic()).count() > 2 && !outside.chars().any(char::is_lowercase);
    let first = words[0].to_lowercase();
    let for_the = first == "for" && words.len() > 1 && !words[1].starts_with(|c: char| c.is_ascii_digit())
        || first == "to"
            && words.len() == 2
            && matches!(
                words[1].to_lowercase().trim_end_matches(':'),
                "serve" | "finish" | "garnish"
            );
    if colon || capitals && row.mark != Mark::Number || for_the && row.mark == Mark::None && !body.contains(',') {
        return Form::Yes;
    }
    let title = words
        .iter()
        .all(|w| w.starts_with(|c: char| c.is_uppercase() || !c.is_alphabetic()) || w.len() < 4);
    let capital = body.starts_with(char::is_uppercase);
    // 'STEP 2: BROTH' heads a list, if one follows.
    if row.mark == Mark::Number && (capitals || title) && words.len() <= 4 && !body.contains(',') {
        return Form::Perhaps;
    }
    let listed = body.contains(',') || row.mark == Mark::Number;
    if (title || row.apart && row.last) && capital && !listed && words.len() <= 6 {
        return Form::Perhaps;
    }
    Form::No
}

fn outside_brackets(body: &str) -> String {
    let mut depth = 0;
    let mut kept = String::new();
    for letter in body.chars() {
        match letter {
            '(' | '[' => depth += 1,
            ')' | ']' => depth -= 1,
            _ if depth <= 0 => kept.push(letter),
            _ => {}
        }
    }
    kept
}

/// The section a heading opens: its name without 'for the', number and colon.
pub(crate) fn section(text: &str, span: Span) -> Section {
    let outside = outside_brackets(span.of(text));
    let mut words: Vec<String> = outside.split_whitespace().map(str::to_lowercase).collect();
    let numbered = |word: &str| matches!(word, "sub" | "part" | "step" | "section" | "stage");
    if words.len() > 2 && numbered(&words[0]) && words[1].chars().all(|c| c.is_ascii_digit() || c == '.' || c == ':') {
        words.drain(..2);
    }
    let lettered = |word: &str| word.len() == 2 && word.ends_with(['.', ')']) && word.starts_with(char::is_alphabetic);
    if words.len() > 1 && lettered(&words[0]) {
        words.remove(0);
    }
    if words.len() > 1 && matches!(words[0].as_str(), "for" | "to" | "make") {
        words.remove(0);
    }
    if words.len() > 1 && matches!(words[0].as_str(), "the" | "a" | "an") {
        words.remove(0);
    }
    let name = words.join(" ");
    let name = name.trim_matches(|c: char| !c.is_alphanumeric()).to_owned();
    Section {
        words: Words::at(text, span),
        name,
    }
}
