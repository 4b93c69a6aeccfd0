//! Queries at their words, for a terminal.

use annotate_snippets::renderer::DecorStyle;
use annotate_snippets::{AnnotationKind, Group, Level, Renderer, Snippet};
use potwright_manuscript::Span;
use potwright_proof::{Query, Weight};

use crate::Style;

/// Shows each query under the line it is about. `place` names the manuscript: a file name or a title.
#[must_use]
pub fn render(queries: &[Query], text: &str, place: &str, width: usize, style: Style) -> String {
    let renderer = match style {
        Style::Plain => Renderer::plain(),
        Style::Colour => Renderer::styled(),
    };
    let renderer = renderer.term_width(width).decor_style(DecorStyle::Unicode);
    let blocks: Vec<String> = queries
        .iter()
        .map(|query| renderer.render(&[block(query, text, place)]))
        .collect();
    blocks.join("\n\n")
}

fn block<'a>(query: &'a Query, text: &'a str, place: &'a str) -> Group<'a> {
    let level = match query.weight {
        Weight::MustSettle => Level::ERROR,
        Weight::WorthALook => Level::WARNING,
        Weight::HouseStyle => Level::NOTE,
    };
    let seen = query
        .see
        .iter()
        .map(|(span, label)| AnnotationKind::Context.span(range(*span, text)).label(label.as_str()));
    let snippet = Snippet::source(text)
        .path(place)
        .annotation(AnnotationKind::Primary.span(range(query.span, text)))
        .annotations(seen);
    let mut group = level
        .with_name(query.weight.words())
        .primary_title(query.asks.as_str())
        .id(query.code.as_str())
        .element(snippet)
        .element(Level::NOTE.with_name("because").message(query.because.as_str()));
    if let Some(words) = &query.try_words {
        group = group.element(Level::HELP.with_name("try").message(words.as_str()));
    }
    group
}

/// The span as a range that surely fits the text.
fn range(span: Span, text: &str) -> std::ops::Range<usize> {
    if span.start <= span.end && text.get(span.start..span.end).is_some() {
        span.start..span.end
    } else {
        0..0
    }
}
