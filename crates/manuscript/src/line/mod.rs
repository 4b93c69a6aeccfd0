//! The grammar of ingredient lines: one typed line to the entries it holds.
//!
//! A line is read in this order: brackets are folded away ([`Line`]), an amount that stands after its noun is put
//! before it ([`arrange`]), the line is cut into entries of one amount each ([`entries`]), and of every entry the
//! measure ([`quantity`]), the name ([`name`]) and what follows after commas and in brackets ([`tail`]) are read.

mod again;
mod alternative;
mod arrange;
mod entry;
mod foods;
pub(crate) mod name;
mod open;
mod package;
pub(crate) mod quantity;
mod tail;
mod unit;

use crate::lexicon::Class;
use crate::token::{Gap, Kind, Token, tokens};
use crate::{Ingredient, Span};

pub(crate) use again::{and_part, aside_quantities};
pub(crate) use entry::entries;

/// Tokens of a stretch of text; what stands in brackets is folded into one token each.
#[derive(Clone, Debug)]
pub(crate) struct Line<'t> {
    pub(crate) text: &'t str,
    pub(crate) tokens: Vec<Token<'t>>,
    pub(crate) asides: Vec<Line<'t>>,
}

/// What a line was read as.
#[derive(Clone, Debug, Default)]
pub(crate) struct LineReading {
    pub(crate) entries: Vec<Ingredient>,
    /// 'TOPPINGS: avocado, lime': the words before the colon head what follows.
    pub(crate) label: Option<Span>,
    /// The line ends with 'or': the next line stands in its place.
    pub(crate) or_next: bool,
}

/// Reads one line of an ingredient list; places in `holes` (notes to the desk) are passed over.
pub(crate) fn read(text: &str, span: Span, holes: &[Span]) -> LineReading {
    let mut found = plain(text, span);
    found.retain(|token| !holes.iter().any(|hole| hole.contains(token.span)));
    trim(&mut found);
    let or_next = found.last().is_some_and(|token| token.is("or"));
    if or_next {
        found.pop();
        trim(&mut found);
    }
    let mut line = Line::fold(text, found, 0);
    // '(optional) a handful of peas': a remark in front says what one behind would.
    let remark = |token: &Token| match token.kind {
        Kind::Aside(index) => line
            .asides
            .get(index)
            .is_some_and(|a| a.tokens.iter().all(|t| t.number().is_none())),
        _ => false,
    };
    let remarks = line.tokens.iter().take_while(|t| remark(t)).count();
    line.tokens.rotate_left(remarks);
    let label = arrange::label(&mut line);
    arrange::amount_first(&mut line);
    LineReading {
        entries: entries(&line, span),
        label,
        or_next,
    }
}

/// The tokens of a line: a bar between the cells of a table is a wide gap, signs of bold type are nothing.
fn plain(text: &str, span: Span) -> Vec<Token<'_>> {
    let mut found: Vec<Token> = Vec::new();
    let mut wide = false;
    for mut token in tokens(text, span) {
        if token.sign() == Some('|') {
            wide = true;
            continue;
        }
        if token.sign() == Some('*') {
            continue;
        }
        if std::mem::take(&mut wide) && !found.is_empty() {
            token.gap = Gap::Wide;
        }
        found.push(token);
    }
    found
}

/// Takes list marks from the front and stops from the end.
fn trim(found: &mut Vec<Token>) {
    while found
        .last()
        .is_some_and(|t| matches!(t.sign(), Some('.' | ',' | ';' | ':' | '*' | '_' | '|' | '\\' | '!')))
    {
        found.pop();
    }
    let marks = found.iter().take_while(|t| {
        t.sign()
            .is_some_and(|sign| !matches!(sign, '(' | '~' | '#' | '“' | '"'))
    });
    let marks = marks.count();
    found.drain(..marks);
}

impl<'t> Line<'t> {
    /// How deep brackets are folded; deeper ones stay single signs.
    const DEEPEST: usize = 3;

    /// Of the text between two places.
    pub(crate) fn new(text: &'t str, span: Span) -> Self {
        Self::fold(text, tokens(text, span), 0)
    }

    fn fold(text: &'t str, found: Vec<Token<'t>>, depth: usize) -> Self {
        let closing = if depth < Self::DEEPEST {
            closings(&found)
        } else {
            vec![0; found.len()]
        };
        let mut line = Line {
            text,
            tokens: Vec::with_capacity(found.len()),
            asides: Vec::new(),
        };
        let mut found = found.into_iter().enumerate();
        while let Some((at, mut token)) = found.next() {
            let end = closing[at];
            if end > 0 {
                let inner: Vec<Token> = found.by_ref().take(end - at - 1).map(|(_, token)| token).collect();
                let close = found.next().map_or(token.span, |(_, close)| close.span);
                token.span = token.span.join(close);
                token.kind = Kind::Aside(line.asides.len());
                token.text = token.span.of(text);
                token.class = Class::default();
                line.asides.push(Self::fold(text, inner, depth + 1));
            }
            line.tokens.push(token);
        }
        line
    }

    /// The place of the tokens from `at` up to, not including, `next`.
    pub(crate) fn span(&self, at: usize, next: usize) -> Option<Span> {
        let spans = self.tokens.get(at..next)?.iter().map(|token| token.span);
        spans.reduce(Span::join)
    }
}

/// For every bracket that opens a pair, the index of the one that closes it; nought elsewhere.
fn closings(found: &[Token]) -> Vec<usize> {
    let mut closing = vec![0; found.len()];
    let mut open: Vec<(usize, char)> = Vec::new();
    for (at, token) in found.iter().enumerate() {
        match token.sign() {
            Some('(') => open.push((at, ')')),
            Some('[') => open.push((at, ']')),
            Some(sign @ (')' | ']')) => {
                let near = open.iter().rev().take(8).position(|(_, close)| *close == sign);
                if let Some(depth) = near.map(|back| open.len() - 1 - back) {
                    closing[open[depth].0] = at;
                    open.truncate(depth);
                }
            }
            _ => {}
        }
    }
    closing
}
