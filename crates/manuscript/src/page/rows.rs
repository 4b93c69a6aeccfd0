//! Typed lines to rows: list marks taken off, wrapped lines joined.

use super::beside;
use crate::Span;
use crate::lexicon::{Class, class, verb};
use crate::token::{Token, tokens};
use potwright_measure::Unit;

/// What stands before a row.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub(crate) enum Mark {
    None,
    /// '-', '*', '•', a check box.
    Bullet,
    /// '1.', '2)', 'Step 3'.
    Number,
    /// '>': what is done with the lines above.
    Action,
    /// '##' of Markdown.
    Heading,
}

/// One or more typed lines that belong together.
#[derive(Clone, Debug)]
pub(crate) struct Row {
    /// Without mark, blank ends and the signs of bold type.
    pub(crate) span: Span,
    pub(crate) mark: Mark,
    /// A blank line or the start of the page stands before it.
    pub(crate) apart: bool,
    /// A blank line or the end of the page stands after it.
    pub(crate) last: bool,
    /// The places of its words, when the lines of another column stand between them; else none.
    pub(crate) pieces: Vec<Span>,
}

/// A typed line.
#[derive(Clone, Copy, Debug)]
struct Typed {
    content: Span,
    mark: Mark,
    indent: usize,
    /// Characters, mark and indent included.
    width: usize,
    first_word: usize,
    /// Columns stand in it.
    table: bool,
}

/// The rows of a page; blank lines and rules give none.
pub(crate) fn rows(text: &str) -> Vec<Row> {
    let mut found = Vec::new();
    let mut run: Vec<Typed> = Vec::new();
    let mut start = 0;
    for line in text.split_inclusive(['\n', '\r']) {
        let span = Span::new(start, start + line.len());
        start = span.end;
        match typed(text, span) {
            Some(line) => run.push(line),
            None if line == "\n" && text[..span.start].ends_with('\r') => {}
            None => close(text, &mut run, &mut found),
        }
    }
    close(text, &mut run, &mut found);
    found
}

/// Takes the rows of a run of lines; what stands beside them in a column of its own comes after them.
fn close(text: &str, run: &mut Vec<Typed>, found: &mut Vec<Row>) {
    let contents: Vec<Span> = match run.iter().any(|line| line.table) {
        true => run.iter().map(|line| line.content).collect(),
        false => Vec::new(),
    };
    let Some((heads, groups)) = beside::groups(text, &contents) else {
        return join(text, run, found);
    };
    let mut heads: Vec<Typed> = run.drain(..heads).collect();
    join(text, &mut heads, found);
    run.clear();
    for group in groups {
        let mut left: Vec<Typed> = group.left.iter().filter_map(|side| typed(text, *side)).collect();
        join(text, &mut left, found);
        found.push(Row {
            span: group.whole,
            mark: group.mark,
            apart: false,
            last: true,
            pieces: group.right,
        });
    }
}

/// The line without its mark; `None` for blank lines and rules ('---', '***').
fn typed(text: &str, span: Span) -> Option<Typed> {
    let line = span.of(text);
    let body = line.trim();
    let words = |c: char| c.is_alphanumeric();
    if !body.contains(words) && !body.contains('[') {
        return None;
    }
    let indent = line
        .chars()
        .take_while(|c| c.is_whitespace())
        .map(|c| if c == '\t' { 4 } else { 1 })
        .sum();
    let (mark, skip) = mark(body);
    let rest = &body[skip..];
    let from = span.start + (line.len() - line.trim_start().len()) + skip;
    let rest_start = from + (rest.len() - rest.trim_start_matches(bare).len());
    let rest_end = from
        + rest
            .trim_end_matches(|c| bare(c) || c == '#' && mark == Mark::Heading)
            .len();
    let content = Span::new(rest_start.min(rest_end), rest_end);
    if content.of(text).is_empty() {
        return None;
    }
    let first_word = content
        .of(text)
        .split_whitespace()
        .next()
        .map_or(0, |w| w.chars().count());
    Some(Typed {
        content,
        mark,
        indent,
        width: line.trim_end().chars().count(),
        first_word,
        table: content.of(text).contains("   ") || content.of(text).contains('\t'),
    })
}

/// Blank space and the signs of bold and slanted type at the ends of a row.
fn bare(c: char) -> bool {
    c.is_whitespace() || matches!(c, '*' | '_' | '\0' | '\u{feff}')
}

/// The mark at the start of a line and its length in bytes.
pub(super) fn mark(body: &str) -> (Mark, usize) {
    let after_space = |length: usize| body[length..].starts_with(char::is_whitespace);
    let Some(first) = body.chars().next() else {
        return (Mark::None, 0);
    };
    if first == '#' {
        let length = body.len() - body.trim_start_matches('#').len();
        return if after_space(length) {
            (Mark::Heading, length)
        } else {
            (Mark::None, 0)
        };
    }
    if first == '>' {
        return (Mark::Action, 1);
    }
    for boxed in ["[ ]", "[x]", "[X]", "[]"] {
        if body.starts_with(boxed) {
            return (Mark::Bullet, boxed.len());
        }
    }
    let bullet = matches!(first, '-' | '*' | '+' | '–' | '—') && after_space(first.len_utf8())
        || matches!(
            first,
            '•' | '◦' | '▪' | '▢' | '☐' | '☑' | '□' | '■' | '●' | '○' | '‣' | '·' | '✓' | '✔' | '→'
        );
    if bullet {
        let rest = body[first.len_utf8()..].trim_start();
        let inner = if rest.starts_with("[ ]") || rest.starts_with("[x]") {
            3
        } else {
            0
        };
        return (Mark::Bullet, body.len() - rest.len() + inner);
    }
    numbered(body).map_or((Mark::None, 0), |length| (Mark::Number, length))
}

/// The length of '1.', '12)', '(3)', 'Step 4:', 'a)' at the start.
fn numbered(body: &str) -> Option<usize> {
    let lower = body.get(..4).map(str::to_lowercase);
    let (skip, worded) = if lower.as_deref() == Some("step") {
        (4, true)
    } else {
        (0, false)
    };
    let rest = body.get(skip..)?;
    let trimmed = rest.trim_start_matches([' ', '(']);
    let skip = body.len() - trimmed.len();
    let figures = trimmed.bytes().take_while(u8::is_ascii_digit).count();
    if figures == 0 || figures > 2 {
        return None;
    }
    let after = &trimmed[figures..];
    let sign = after.chars().next();
    if worded && (sign.is_none() || matches!(sign, Some(' ' | '.' | ':' | ')' | '-' | '–'))) {
        let signs = after.len() - after.trim_start_matches(['.', ':', ')', ' ', '-', '–']).len();
        return Some(skip + figures + signs);
    }
    // '1 Heat the oil', '12 Remove from the heat': a number before an order.
    let after_word = after.trim_start();
    let bare = sign == Some(' ') && after_word.starts_with(char::is_uppercase) && orders(after_word);
    if bare && !worded {
        return Some(skip + figures);
    }
    let closed = matches!(sign, Some('.' | ')' | ':')) && after[1..].starts_with(char::is_whitespace) && !worded;
    closed.then_some(skip + figures + 1)
}

/// Whether a row behind a bare number tells what to do: it opens with a verb that names no food and goes on.
fn orders(body: &str) -> bool {
    let start = body.get(..floor(body, 120)).unwrap_or(body);
    let words = tokens(start, Span::new(0, start.len()));
    let Some(first) = words.first().filter(|t| verb(&t.lower)) else {
        return false;
    };
    let plain =
        !first
            .class
            .is(Class::FOOD | Class::STATE | Class::SHAPE | Class::KIND | Class::TEMPERATURE | Class::PREPARED);
    let sentence = body.trim_end().ends_with('.') && words.len() > 4;
    let timed = words
        .iter()
        .any(|t| t.is_one_of("min mins minutes hour hours hr hrs sec secs"));
    begins_with_verb(&words) && (plain && words.len() > 3 || sentence || timed)
}

/// Joins the wrapped lines of a run and empties it.
fn join(text: &str, run: &mut Vec<Typed>, found: &mut Vec<Row>) {
    let width = run.iter().map(|line| line.width).max().unwrap_or(0);
    // A paragraph broken by hand is full on every line, as a short list of long lines may be by chance: but there the
    // lines begin with their amounts.
    let full = |pair: &[Typed]| pair[1].mark == Mark::None && fills(&pair[0], &pair[1], width);
    let counts = |line: &&Typed| line.content.of(text).starts_with(char::is_numeric);
    let listed = 2 * run.iter().filter(counts).count() > run.len();
    let paragraph = run.len() > 2 && !listed && run.windows(2).all(full);
    let mut row: Option<(Row, Typed, usize)> = None;
    for (index, line) in run.iter().enumerate() {
        match &mut row {
            Some((open, before, indent)) if paragraph || continues(text, open, before, *indent, line, width) => {
                open.span = open.span.join(line.content);
                *before = *line;
            }
            _ => {
                let opened = Row {
                    span: line.content,
                    mark: line.mark,
                    apart: index == 0,
                    last: false,
                    pieces: Vec::new(),
                };
                found.extend(row.replace((opened, *line, line.indent)).map(|(row, _, _)| row));
            }
        }
    }
    found.extend(row.map(|(row, _, _)| Row { last: true, ..row }));
    run.clear();
}

/// Whether a line goes on with the row above it.
fn continues(text: &str, row: &Row, before: &Typed, indent: usize, line: &Typed, width: usize) -> bool {
    if line.mark != Mark::None || row.mark == Mark::Heading {
        return false;
    }
    let wraps = fills(before, line, width);
    let above = before.content.of(text);
    let small = line.content.of(text).starts_with(char::is_lowercase);
    if row.mark != Mark::None && line.indent > indent && (small || wraps || row.mark == Mark::Number) {
        return true;
    }
    if small && line.indent > indent + 1 && !above.ends_with('.') && !begins_alone(text, line) {
        return true;
    }
    // A sentence goes on in small letters, however short the line above is.
    let sentence = small && width <= 100 && !above.ends_with(['.', '!', '?', ':']);
    if (wraps || sentence) && reads_as_prose(text, row.span) {
        return true;
    }
    let open = above.ends_with([',', '-', '(', '–']) || above.ends_with(" and") || above.ends_with(" or");
    small && before.width > 30 && (open || wraps && !above.ends_with([')', '.']) && !counts(text, line))
}

/// Whether a deeper line is work of its own rather than the end of the line above.
fn begins_alone(text: &str, line: &Typed) -> bool {
    let entries = || crate::line::read(text, line.content, &[]).entries;
    reads_as_prose(text, line.content) || !goes_on(text, line) && entries().iter().any(|i| i.quantity.is_some())
}

/// Whether the next line's first word had no room on the line above. Longer lines than 100 were not broken by hand,
/// and a hand leaves some room at the end.
fn fills(before: &Typed, line: &Typed, width: usize) -> bool {
    (40..=100).contains(&width) && !(before.table || line.table) && before.width + 1 + line.first_word + 8 > width
}

/// Whether a line names a food of its own rather than going on about the one above.
fn counts(text: &str, line: &Typed) -> bool {
    let entries = crate::line::read(text, line.content, &[]).entries;
    let food = |name: &str| name.split(' ').any(|word| class(&word.to_lowercase()).is(Class::FOOD));
    let counted = entries.iter().any(|i| i.quantity.is_some() && !i.items.is_empty());
    !goes_on(text, line)
        && (counted
            || entries
                .first()
                .is_some_and(|i| i.items.iter().any(|item| food(&item.name))))
}

/// Whether a line opens with a word of work: 'cut into strips', 'thinly sliced'.
fn goes_on(text: &str, line: &Typed) -> bool {
    let first = line
        .content
        .of(text)
        .split_whitespace()
        .next()
        .unwrap_or("")
        .to_lowercase();
    let of = class(first.trim_matches(|c: char| !c.is_alphanumeric()));
    of.is(Class::PREPARED | Class::MANNER | Class::SHAPE) && !of.is(Class::FOOD | Class::BOUGHT)
}

/// Whether a row is made of sentences rather than a line of a list.
pub(crate) fn reads_as_prose(text: &str, span: Span) -> bool {
    let body = span.of(text);
    let start: &str = body.get(..floor(body, 400)).unwrap_or(body);
    // Most rows have neither a stop before a space nor a verb in front.
    let mut words = start
        .split(|c: char| !c.is_alphanumeric() && c != '-')
        .filter(|word| !word.is_empty());
    let opens =
        |word: &str| verb(&word.to_lowercase()) || FIRST.split(' ').any(|first| first.eq_ignore_ascii_case(word));
    let stops = start.contains(['.', '!', '?'])
        && start.contains(". ") | start.contains("! ") | start.contains("? ") | start.contains(".\n");
    if !stops && !words.next().is_some_and(opens) {
        return false;
    }
    let words = tokens(start, Span::new(0, start.len()));
    begins_with_verb(&words) || sentences(&words) > 1 && words.len() > 7
}

fn floor(body: &str, at: usize) -> usize {
    (0..=at.min(body.len()))
        .rev()
        .find(|i| body.is_char_boundary(*i))
        .unwrap_or(0)
}

/// How many sentences start in these words: at the front and after a full stop before a capital or an order.
fn sentences(words: &[Token]) -> usize {
    let starts = (1..words.len().saturating_sub(1)).filter(|at| {
        let next = &words[at + 1];
        let begins = next.text.starts_with(char::is_uppercase) || next.class == Class::default() && verb(&next.lower);
        begins && crate::sentence::ends(words, *at)
    });
    1 + starts.count()
}

/// Words that stand before the verb of a step.
const FIRST: &str = "then now next meanwhile first finally gently slowly carefully";

/// Whether the first word tells the cook to do something: 'Melt the butter', not 'Butter'.
pub(crate) fn begins_with_verb(words: &[Token]) -> bool {
    let mut words = words.iter().skip_while(|t| t.is_one_of(FIRST) || t.sign() == Some(','));
    let Some(first) = words.next().filter(|t| t.is_word()) else {
        return false;
    };
    let rest: Vec<&Token> = words.take(8).collect();
    if !verb(&first.lower) || rest.is_empty() {
        return false;
    }
    // 'Pinch of salt', 'drizzle of oil' measure.
    let measures = || Unit::from_spelling(first.text).is_some() || first.class.is(Class::LOOSE);
    if rest[0].is("of") && measures() {
        return false;
    }
    let of = first.class;
    let object = rest[0].is_one_of(
        "the a an it them your all in to with into over on out up off well and together until for each both \
            everything",
    );
    let ambiguous = of.is(Class::FOOD | Class::STATE | Class::SHAPE | Class::TEMPERATURE | Class::KIND | Class::PART);
    if ambiguous {
        let named = rest.iter().any(|t| t.is_any(&["the", "it", "them", "your"]));
        let likened = rest[0].is("the") && rest.get(1).is_some_and(|t| t.is("size"));
        // 'Stew four pigeons', but 'Salt two spoonfuls'.
        let spoken = !rest[0].text.starts_with(|c: char| c.is_ascii_digit())
            && crate::number::number(std::slice::from_ref(rest[0]), 0).is_some()
            && rest.get(1).is_some_and(|t| Unit::from_spelling(t.text).is_none());
        return (object || spoken)
            && rest.len() > 1
            && !likened
            && (named || !rest[0].is_any(&["and", "to", "for", "with", "in", "on"]));
    }
    rest.len() > 1 || words_end(&rest)
}

fn words_end(rest: &[&Token]) -> bool {
    rest.first()
        .is_some_and(|t| t.is_any(&["all", "it", "."]) || t.sign() == Some('.') || t.class.is(Class::FOOD))
}

#[cfg(test)]
mod tests {
    use super::*;

    fn show(text: &str) -> Vec<String> {
        rows(text)
            .iter()
            .map(|row| {
                format!(
                    "{:?} {}",
                    row.mark,
                    row.span.of(text).split_whitespace().collect::<Vec<_>>().join(" ")
                )
            })
            .collect()
    }

    #[test]
    fn marks_come_off_and_wrapped_lines_join() {
        assert_eq!(
            show("# A dish\n\n- 2 leeks\n* salt\n▢ oil\n"),
            ["Heading A dish", "Bullet 2 leeks", "Bullet salt", "Bullet oil"]
        );
        assert_eq!(
            show("1. Melt the butter in a wide pan over a low heat and add the\n   leeks.\n2) Stir."),
            [
                "Number Melt the butter in a wide pan over a low heat and add the leeks.",
                "Number Stir."
            ]
        );
        assert_eq!(
            show(
                "Melt the butter in a wide pan over a low heat and add the leeks\none by one. Cover them and let them sweat until they are quite soft.\nSeason."
            ),
            [
                "None Melt the butter in a wide pan over a low heat and add the leeks one by one. Cover them and let \
                    them sweat until they are quite soft. Season."
            ]
        );
        assert_eq!(show("2 leeks\r\nsalt\r\n"), ["None 2 leeks", "None salt"]);
        assert_eq!(
            show("Step 1. Boil it.\nStep 2 Eat it."),
            ["Number Boil it.", "Number Eat it."]
        );
        assert_eq!(
            show("1 1/2 cups milk\n2. Stir"),
            ["None 1 1/2 cups milk", "Number Stir"]
        );
    }
}
