//! Blocks with running text in their last column: on the left what is needed, on the right what is done with it.
//!
//! Cards for many portions are typed so: the right-hand text is broken by hand, and its lines stand beside lines that
//! name foods, or beside nothing. It is one paragraph in several places.

use super::cells::heads_table;
use super::rows::{Mark, mark, reads_as_prose};
use crate::Span;

/// Lines of one group, and the text beside them.
pub(super) struct Group {
    /// The left-hand side of each line that has one.
    pub(super) left: Vec<Span>,
    /// The right-hand text, line by line, without its number.
    pub(super) right: Vec<Span>,
    /// The mark before the right-hand text.
    pub(super) mark: Mark,
    /// Everything, left and right.
    pub(super) whole: Span,
}

/// Lines longer than this, in bytes, are not looked at: nobody types columns so wide.
const WIDEST: usize = 240;
/// The right-hand text stands at least so many characters in.
const FARTHEST_IN: usize = 20;

/// A line cut at the gutter.
struct Cut {
    left: Option<Span>,
    right: Option<Span>,
}

/// The groups of a block of lines (their contents), and how many lines before them head the columns; `None` when the
/// last column is no running text.
pub(super) fn groups(text: &str, lines: &[Span]) -> Option<(usize, Vec<Group>)> {
    let wide = |line: &Span| line.end - line.start > WIDEST;
    if lines.len() < 2 || lines.iter().any(wide) || lines.iter().any(|line| line.of(text).contains('\t')) {
        return None;
    }
    let heads = lines.iter().take_while(|line| heads_table(text, **line)).count();
    let first = cells(text, *lines.get(heads)?);
    let (gutter, _) = first.last().filter(|_| first.len() > 1).copied()?;
    let gutter = gutter.checked_sub(2).filter(|gutter| *gutter >= FARTHEST_IN)?;
    let cuts: Option<Vec<Cut>> = lines[heads..].iter().map(|line| cut(text, *line, gutter)).collect();
    let groups = gathered(text, &cuts?);
    let runs = |group: &Group| {
        let joined: Vec<&str> = group.right.iter().map(|piece| piece.of(text)).collect();
        let joined = joined.join(" ");
        let sentences = joined.starts_with(char::is_uppercase)
            && joined.contains('.')
            && reads_as_prose(&joined, Span::new(0, joined.len()));
        group.mark == Mark::Number || sentences
    };
    let wrapped = groups.iter().any(|group| group.right.len() > 1);
    (wrapped && groups.iter().all(runs)).then_some((heads, groups))
}

/// Lines go together until a right-hand text begins with the next number.
fn gathered(text: &str, cuts: &[Cut]) -> Vec<Group> {
    let mut groups: Vec<Group> = Vec::new();
    for cut in cuts {
        let (mark, skip) = cut.right.map_or((Mark::None, 0), |right| mark(right.of(text)));
        let whole = match (cut.left, cut.right) {
            (Some(left), Some(right)) => left.join(right),
            (Some(side), None) | (None, Some(side)) => side,
            (None, None) => continue,
        };
        let opens = groups
            .last()
            .is_none_or(|last| mark == Mark::Number && !last.right.is_empty());
        if opens {
            groups.push(Group {
                left: Vec::new(),
                right: Vec::new(),
                mark,
                whole,
            });
        }
        let Some(group) = groups.last_mut() else { continue };
        let skip = if opens && mark == Mark::Number { skip } else { 0 };
        group.left.extend(cut.left);
        group.right.extend(cut.right.map(|right| {
            let inside = Span::new(right.start + skip, right.end);
            super::judge::trimmed(text, inside)
        }));
        group.whole = group.whole.join(whole);
    }
    groups
}

/// A line at the gutter; `None` when words run across it.
fn cut(text: &str, line: Span, gutter: usize) -> Option<Cut> {
    let mut cut = Cut {
        left: None,
        right: None,
    };
    for (column, cell) in cells(text, line) {
        let right = column >= gutter;
        if !right && column + cell.of(text).chars().count() > gutter {
            return None;
        }
        let side = if right { &mut cut.right } else { &mut cut.left };
        *side = Some(side.map_or(cell, |before| before.join(cell)));
    }
    Some(cut)
}

/// The cells of a line, three spaces and more between them, each with the column of characters it begins in.
fn cells(text: &str, line: Span) -> Vec<(usize, Span)> {
    let from = text[..line.start].rfind(['\n', '\r']).map_or(0, |at| at + 1);
    let mut found: Vec<(usize, Span)> = Vec::new();
    let mut spaces = 3;
    for (column, (at, letter)) in text[from..line.end].char_indices().enumerate() {
        let at = from + at;
        if letter.is_whitespace() || at < line.start {
            spaces += 1;
            continue;
        }
        let end = at + letter.len_utf8();
        match found.last_mut().filter(|_| spaces < 3) {
            Some((_, cell)) => cell.end = end,
            None => found.push((column, Span::new(at, end))),
        }
        spaces = 0;
    }
    found
}
