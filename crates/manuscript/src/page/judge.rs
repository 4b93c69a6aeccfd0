//! What a row is taken for by itself, before its place on the page has a say.

use super::head::{Head, head};
use super::heading;
use super::rows::{Mark, Row, begins_with_verb, reads_as_prose};
use crate::lexicon::{Class, Part, class};
use crate::line::{self, LineReading};
use crate::token::tokens;
use crate::{Ingredient, Span};

/// A row and what its words alone say.
#[derive(Clone, Debug)]
pub(crate) struct Seen {
    pub(crate) row: Row,
    /// It reads as a line of an ingredient list, with an amount of its own.
    pub(crate) strong: bool,
    /// It is made of sentences.
    pub(crate) prose: bool,
    /// It states a yield or times.
    pub(crate) head: Option<Head>,
    /// The line grammar's reading, when it was asked.
    pub(crate) reading: Option<LineReading>,
}

impl Seen {
    /// Running text that stands beside the list.
    pub(crate) fn running(row: Row) -> Self {
        Seen {
            row,
            strong: false,
            prose: true,
            head: None,
            reading: None,
        }
    }
}

/// Looks at a row by itself.
pub(crate) fn see(text: &str, row: Row) -> Seen {
    let prose = reads_as_prose(text, row.span);
    let head = head(text, row.span);
    let length = row.span.end - row.span.start;
    let other = length > 240 || matches!(row.mark, Mark::Heading | Mark::Action) || prose || head.is_some();
    let reading = (!other).then(|| line::read(text, row.span, &[]));
    let strong = reading
        .as_ref()
        .is_some_and(|reading| is_ingredient(text, &row, reading));
    Seen {
        row,
        strong,
        prose,
        head,
        reading,
    }
}

/// Whether the page has a list: a heading says so, two rows can only be ingredients, or one can and sentences follow it.
pub(crate) fn list_stands(text: &str, seen: &[Seen]) -> bool {
    let opened = |row: &Row| heading::opened_part(text, row.span).is_some_and(|(part, _)| part == Part::List);
    let headed = |one: &Seen| heading::part(text, &one.row) == Some(Part::List) || opened(&one.row);
    seen.iter().any(headed)
        || seen.iter().filter(|one| one.strong).count() >= 2
        || seen.windows(2).any(|pair| list_of_one(text, pair))
}

/// '100 g peanuts' before a sentence that says what is done with it: a list need not be longer. A count of several
/// foods in one row, or a row that ends like a sentence, is running text.
fn list_of_one(text: &str, pair: &[Seen]) -> bool {
    let [line, next] = pair else { return false };
    let plain = matches!(line.row.mark, Mark::None | Mark::Bullet);
    let one = line.reading.as_ref().is_some_and(|reading| reading.entries.len() == 1);
    let method = heading::part(text, &next.row) == Some(Part::Method);
    line.strong && one && plain && (next.prose || method) && !line.row.span.of(text).ends_with(['.', '!', ':'])
}

/// Words of time and of people: a number before them counts no food.
const NO_FOOD: &str = "minutes minute hours hour mins hrs days of people weeks calories kcal min";

fn is_ingredient(text: &str, row: &Row, reading: &LineReading) -> bool {
    let length = row.span.end - row.span.start;
    let timed = || tokens(text, row.span).iter().take(4).any(|t| t.is_one_of(NO_FOOD));
    let numbered = row.mark == Mark::Number && timed();
    let measured = |i: &Ingredient| {
        let mut words = i.items.iter().flat_map(|item| item.name.split(' '));
        let food = words.any(|word| class(&word.to_lowercase()).is(Class::FOOD));
        let unit = i.open.is_some() || i.quantity.is_some_and(|q| q.unit.is_some()) || i.package.is_some();
        let counted = i
            .quantity
            .is_some_and(|q| !matches!(q.span.of(text), "a" | "A" | "an" | "An"));
        let short = food && i.quantity.is_some() && length < 40;
        !i.items.is_empty() && (unit || counted && (food || row.mark == Mark::Bullet) || short)
    };
    let mut items = reading.entries.iter().flat_map(|i| &i.items);
    let long = items.any(|item| item.name.split(' ').count() > 6);
    let sentence = row.span.of(text).contains(". ") && row.mark != Mark::Bullet && length > 100;
    reading.entries.iter().any(measured) && !long && !numbered && !sentence && reading.label.is_none()
}

/// Whether a short row names a food and says no more: 'Salt', 'Black pepper'.
pub(crate) fn is_bare_food(text: &str, row: &Row) -> bool {
    let body = row.span.of(text);
    let short = body.split_whitespace().count() <= 5 && !body.ends_with(['.', '!', '?', ':']);
    if !short || reads_as_prose(text, row.span) {
        return false;
    }
    let food = |name: &str| {
        name.split(' ')
            .next_back()
            .is_some_and(|last| class(&last.to_lowercase()).is(Class::FOOD))
    };
    line::read(text, row.span, &[])
        .entries
        .iter()
        .all(|i| i.items.iter().any(|item| food(&item.name)))
}

/// A place without the blank space at its ends.
pub(crate) fn trimmed(text: &str, span: Span) -> Span {
    let body = span.of(text);
    let start = span.start + (body.len() - body.trim_start().len());
    Span::new(start, start + body.trim().len())
}

/// Whether a clause of the row tells the cook to do something.
pub(crate) fn has_imperative(text: &str, span: Span) -> bool {
    let words = tokens(text, span);
    (0..words.len()).any(|at| {
        let opens = at == 0
            || matches!(words[at - 1].sign(), Some('.' | ',' | ';' | ':' | '!' | ')' | '–'))
            || words[at - 1].is_any(&["and", "then"]);
        opens && begins_with_verb(&words[at..words.len().min(at + 12)])
    })
}

/// Whether a row enumerates foods with their amounts: 'Two pounds of chops, eight potatoes, four turnips'.
pub(crate) fn lists_foods(text: &str, span: Span) -> bool {
    let reading = line::read(text, span, &[]);
    reading
        .entries
        .iter()
        .filter(|i| i.quantity.is_some() && !i.items.is_empty())
        .count()
        > 1
}

/// A food and nothing else, such as a bare line of a list.
pub(crate) fn food_alone(text: &str, row: &Row) -> bool {
    let body = row.span.of(text).to_lowercase();
    body.split_whitespace()
        .last()
        .is_some_and(|word| class(word.trim_matches(|c: char| !c.is_alphanumeric())).is(Class::FOOD))
}

/// Whether the whole row stands in brackets.
pub(crate) fn bracketed(text: &str, span: Span) -> bool {
    let body = span.of(text);
    body.starts_with('(') && body.trim_end_matches('.').ends_with(')')
}

/// What follows where something is tipped.
const TIPPED: &[&str] = &[
    "in",
    "into",
    "the",
    "a",
    "out",
    "over",
    "on",
    "onto",
    "off",
    "away",
    "it",
    "them",
    "everything",
    "all",
    "half",
];

/// Words that open what is said after the method: keeping, leftovers, serving remarks.
pub(crate) fn closes(text: &str, span: Span) -> bool {
    let body = span.of(text);
    let start: String = body.chars().take(60).collect::<String>().to_lowercase();
    let words: Vec<&str> = start
        .split(|c: char| !c.is_alphanumeric() && c != '\'')
        .filter(|w| !w.is_empty())
        .take(4)
        .collect();
    let Some(first) = words.first() else { return false };
    match *first {
        "keeps" | "freezes" | "doubles" | "halves" | "leftover" | "leftovers" | "note" | "notes" | "nb" | "tips"
        | "nutrition" | "suitable" | "comments" | "storage" | "source" | "copyright" | "adapted" | "ps" => true,
        // 'Tip: …' is a remark, 'Tip in the tomatoes' an order.
        "tip" => !words.get(1).is_some_and(|next| TIPPED.contains(next)),
        "any" | "if" => words.contains(&"leftovers") || words.contains(&"holding") && *first == "any",
        "cool" | "chill" | "refrigerate" | "freeze" | "store" | "keep" | "reheat" => {
            words.iter().any(|word| matches!(*word, "leftovers" | "leftover"))
        }
        "can" | "may" => words.get(1).is_some_and(|w| *w == "be"),
        _ => false,
    }
}
