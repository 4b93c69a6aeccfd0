//! Queries at their words, for a terminal.

use std::ops::Range;

use annotate_snippets::renderer::DecorStyle;
use annotate_snippets::{AnnotationKind, Level, Origin, Renderer, Snippet};
use potwright_manuscript::Span;
use potwright_proof::{Query, Weight};
use textwrap::wrap;
use unicode_width::UnicodeWidthChar;

use crate::Style;
use crate::text::{printable, set_words};
use crate::words::line_of;

/// Columns left of the words of a page: the number of the line, the rule and the spaces round them.
const GUTTER: usize = 7;
/// Words of a page are never broken narrower than this.
const NARROWEST: usize = 24;
/// Of a span that runs over more lines only so many are marked.
const MOST_LINES: usize = 12;

/// Shows each query under the line it is about, in lines of at most `width` columns as long as no single word is wider.
/// `place` names the manuscript: a file name or a title.
#[must_use]
pub fn render(queries: &[Query], text: &str, place: &str, width: usize, style: Style) -> String {
    let renderer = match style {
        Style::Plain => Renderer::plain(),
        Style::Colour => Renderer::styled(),
    };
    let renderer = renderer.term_width(width).decor_style(DecorStyle::Unicode);
    let place = printable(place);
    let blocks: Vec<String> = queries
        .iter()
        .map(|query| block(query, text, &place, width, &renderer))
        .collect();
    blocks.join("\n\n")
}

fn block(query: &Query, text: &str, place: &str, width: usize, renderer: &Renderer) -> String {
    let level = match query.weight {
        Weight::MustSettle => Level::ERROR,
        Weight::WorthALook => Level::WARNING,
        Weight::HouseStyle => Level::NOTE,
    };
    let longest = query.see.iter().map(|(_, label)| label.chars().count()).max();
    let room = width
        .saturating_sub(GUTTER + longest.map_or(0, |label| label + 1))
        .max(NARROWEST);
    let shown: Vec<Span> = std::iter::once(query.span)
        .chain(query.see.iter().map(|(span, _)| *span))
        .collect();
    let broken = broken(text, &shown, room);
    let source = broken.as_deref().unwrap_or(text);

    let mut snippet = Snippet::source(source);
    for (span, label) in &query.see {
        snippet = snippet.annotations(marks(AnnotationKind::Context, *span, source, Some(label.as_str())));
    }
    snippet = snippet.annotations(marks(AnnotationKind::Primary, query.span, source, None));

    let head = query.weight.words().len() + query.code.len() + "[]: ".len();
    let asks = hung(&query.asks, width.saturating_sub(head));
    let titled = level
        .with_name(query.weight.words())
        .primary_title(asks)
        .id(query.code.as_str());
    let mut group = if broken.is_some() {
        // A line of the page that is broken into several here has one number, which stands at its place.
        let origin = Origin::path(place).line(line_of(text, query.span.start));
        titled.element(origin).element(snippet.line_numbering(false))
    } else {
        titled.element(snippet.path(place))
    };
    let note = |name: &str, words: &str| hung(words, width.saturating_sub(GUTTER + name.len() + 2));
    group = group.element(
        Level::NOTE
            .with_name("because")
            .message(note("because", &query.because)),
    );
    if let Some(words) = &query.try_words {
        group = group.element(Level::HELP.with_name("try").message(note("try", words)));
    }
    let set = renderer.render(&[group]);
    // A row of its own that says no more than that words of the page follow.
    let bare = |line: &&str| !line.contains('⸬') || line.contains('│');
    set.lines().filter(bare).collect::<Vec<&str>>().join("\n")
}

/// Printable words, broken at a width.
fn hung(words: &str, width: usize) -> String {
    wrap(&set_words(words), width.max(NARROWEST)).join("\n")
}

/// The page with the shown lines broken where they are wider than `room`: a space becomes a line's end, so that every
/// place stays what it was. None when they all fit.
fn broken(text: &str, shown: &[Span], room: usize) -> Option<String> {
    let mut out = String::with_capacity(text.len());
    let mut any = false;
    for line in text.split_inclusive('\n') {
        let range = out.len()..out.len() + line.len();
        let is_shown = |span: &Span| span.start < range.end && span.end.max(span.start + 1) > range.start;
        if shown.iter().any(is_shown) {
            any |= break_line(&mut out, line, room);
        } else {
            out.push_str(line);
        }
    }
    any.then_some(out)
}

/// Adds a line, broken at its spaces; true when it had to be.
fn break_line(out: &mut String, line: &str, room: usize) -> bool {
    let (mut column, mut any) = (0, false);
    for word in line.split_inclusive(' ') {
        let wide: usize = word.trim_end().chars().filter_map(UnicodeWidthChar::width).sum();
        if column > 0 && column + wide > room && out.ends_with(' ') {
            out.pop();
            out.push('\n');
            (column, any) = (0, true);
        }
        out.push_str(word);
        column += word.chars().filter_map(UnicodeWidthChar::width).sum::<usize>();
    }
    any
}

/// A mark under every line of a span, the label beside the last.
fn marks<'a>(
    kind: AnnotationKind,
    span: Span,
    source: &str,
    label: Option<&'a str>,
) -> Vec<annotate_snippets::Annotation<'a>> {
    let whole = range(span, source);
    let mut pieces: Vec<Range<usize>> = Vec::new();
    let mut start = whole.start;
    for line in source.get(whole.clone()).unwrap_or("").split_inclusive('\n') {
        if pieces.len() == MOST_LINES {
            break;
        }
        let words = line.trim_end();
        if !words.is_empty() {
            pieces.push(start..start + words.len());
        }
        start += line.len();
    }
    if pieces.is_empty() {
        pieces.push(whole);
    }
    let last = pieces.len() - 1;
    let mark = |(at, piece): (usize, Range<usize>)| {
        let mark = kind.span(piece);
        match label {
            Some(label) if at == last => mark.label(label),
            _ => mark,
        }
    };
    pieces.into_iter().enumerate().map(mark).collect()
}

/// The span as a range that surely fits the text.
fn range(span: Span, text: &str) -> Range<usize> {
    if span.start <= span.end && text.get(span.start..span.end).is_some() {
        span.start..span.end
    } else {
        0..0
    }
}
