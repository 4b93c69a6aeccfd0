//! The body of the manuscript: typed lines as paragraphs, remarks at their words.

use super::Remark;
use super::parts::escaped;
use crate::{BlockKind, Recipe, Span};

/// A paragraph of the manuscript: pieces of the page that stand on it, parted by a space each.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub(super) struct Paragraph {
    pieces: Vec<Span>,
    style: &'static str,
}

const OPEN: &str = r#"<?xml version="1.0" encoding="UTF-8" standalone="yes"?>
<w:document xmlns:w="http://schemas.openxmlformats.org/wordprocessingml/2006/main" xmlns:r="http://schemas.openxmlformats.org/officeDocument/2006/relationships"><w:body>"#;
/// A4 (210 by 297 mm in twentieths of a point) with margins of an inch.
const CLOSE: &str = r#"<w:sectPr><w:footerReference w:type="default" r:id="rId2"/><w:pgSz w:w="11906" w:h="16838"/><w:pgMar w:top="1440" w:right="1440" w:bottom="1440" w:left="1440" w:header="720" w:footer="720" w:gutter="0"/></w:sectPr></w:body></w:document>"#;

/// The paragraphs of a page; a run of blank lines is one empty paragraph.
pub(super) fn paragraphs(text: &str, recipe: &Recipe) -> Vec<Paragraph> {
    let mut found: Vec<Paragraph> = Vec::new();
    let mut blank = false;
    let mut start = 0;
    let mut blocks = recipe
        .blocks
        .iter()
        .filter(|block| block.kind != BlockKind::Gap)
        .peekable();
    for line in text.split_inclusive(['\n', '\r']) {
        let whole = Span::new(start, start + line.len());
        start = whole.end;
        let body = trimmed(text, whole);
        if body.start == body.end {
            // The second half of CR LF is no line of its own.
            blank |= line != "\n" || !text[..whole.start].ends_with('\r');
            continue;
        }
        while blocks.next_if(|block| block.span.end <= body.start).is_some() {}
        let goes_on = blocks
            .peek()
            .is_some_and(|block| block.span.start < whole.start && block.span.end > body.start);
        match found.last_mut() {
            Some(paragraph) if goes_on && !blank => paragraph.pieces.push(body),
            _ => {
                if std::mem::take(&mut blank) && !found.is_empty() {
                    found.push(Paragraph::default());
                }
                found.push(paragraph(text, recipe, body));
            }
        }
        blank = false;
    }
    found
}

fn trimmed(text: &str, span: Span) -> Span {
    let words = span.of(text);
    let start = span.start + (words.len() - words.trim_start().len());
    Span::new(start, start + words.trim().len())
}

/// A paragraph that begins with a typed line: a title or heading where the whole line is one.
fn paragraph(text: &str, recipe: &Recipe, line: Span) -> Paragraph {
    let at = recipe.blocks.partition_point(|block| block.span.end <= line.start);
    let on_line = recipe.blocks[at..]
        .iter()
        .take_while(|block| block.span.start < line.end);
    let mut kinds = on_line.filter(|block| block.kind != BlockKind::Gap);
    let style = match (kinds.next(), kinds.next()) {
        (Some(block), None) if block.span.end <= line.end => match block.kind {
            BlockKind::Title => "Title",
            BlockKind::SectionHeading | BlockKind::PartHeading => "Heading2",
            _ => "",
        },
        _ => "",
    };
    // The mark of a typed heading is what the style says.
    let words = line.of(text);
    let marks = words.len() - words.trim_start_matches('#').trim_start().len();
    let marked = !style.is_empty() && words.starts_with('#') && marks < words.len();
    let line = if marked {
        Span::new(line.start + marks, line.end)
    } else {
        line
    };
    Paragraph {
        pieces: vec![line],
        style,
    }
}

/// Where a comment begins or ends.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord)]
enum Mark {
    /// Ends come before beginnings at the same place.
    End(usize),
    Start(usize),
}

/// The document part.
pub(super) fn document(text: &str, paragraphs: &[Paragraph], remarks: &[Remark]) -> String {
    let pieces: Vec<Span> = paragraphs
        .iter()
        .flat_map(|paragraph| paragraph.pieces.iter().copied())
        .collect();
    let mut marks: Vec<(usize, Mark)> = Vec::new();
    for (number, remark) in remarks.iter().enumerate() {
        let span = on_pieces(text, &pieces, remark.span);
        marks.push((span.start, Mark::Start(number)));
        marks.push((span.end, Mark::End(number)));
    }
    // A comment on no words ends where it begins, not before.
    marks.sort_by_key(|(at, mark)| match mark {
        Mark::End(number) if marks_nothing(text, &pieces, remarks, *number) => (*at, 2, *number),
        Mark::End(number) => (*at, 0, *number),
        Mark::Start(number) => (*at, 1, *number),
    });
    let mut marks = marks.into_iter().peekable();
    let mut xml = String::from(OPEN);
    for paragraph in paragraphs {
        xml.push_str("<w:p>");
        if !paragraph.style.is_empty() {
            xml.push_str(&format!(r#"<w:pPr><w:pStyle w:val="{}"/></w:pPr>"#, paragraph.style));
        }
        for (index, piece) in paragraph.pieces.iter().enumerate() {
            if index > 0 {
                run(&mut xml, " ");
            }
            let mut at = piece.start;
            while let Some((place, mark)) = marks.next_if(|(place, mark)| {
                *place < piece.end || *place == piece.end && (matches!(mark, Mark::End(_)) || text.len() == piece.end)
            }) {
                let place = place.max(at);
                run(&mut xml, Span::new(at, place).of(text));
                at = place;
                put(&mut xml, mark);
            }
            run(&mut xml, Span::new(at, piece.end).of(text));
        }
        xml.push_str("</w:p>");
    }
    let mut rest = marks.peekable();
    if rest.peek().is_some() {
        xml.push_str("<w:p>");
        rest.for_each(|(_, mark)| put(&mut xml, mark));
        xml.push_str("</w:p>");
    }
    xml.push_str(CLOSE);
    xml
}

fn marks_nothing(text: &str, pieces: &[Span], remarks: &[Remark], number: usize) -> bool {
    remarks.get(number).is_some_and(|remark| {
        let span = on_pieces(text, pieces, remark.span);
        span.start == span.end
    })
}

/// The place of a remark on words that stand in the manuscript.
fn on_pieces(text: &str, pieces: &[Span], span: Span) -> Span {
    let floor = |at: usize| {
        (0..=at.min(text.len()))
            .rev()
            .find(|at| text.is_char_boundary(*at))
            .unwrap_or(0)
    };
    let (start, end) = (floor(span.start), floor(span.end.max(span.start)));
    let at = pieces.partition_point(|piece| piece.end <= start);
    let start = match pieces.get(at) {
        Some(piece) => start.max(piece.start),
        None => pieces.last().map_or(0, |piece| piece.end),
    };
    let behind = pieces.partition_point(|piece| piece.start < end);
    let end = match behind.checked_sub(1).and_then(|at| pieces.get(at)) {
        Some(piece) => end.min(piece.end),
        None => start,
    };
    Span::new(start, end.max(start))
}

fn put(xml: &mut String, mark: Mark) {
    match mark {
        Mark::Start(number) => xml.push_str(&format!(r#"<w:commentRangeStart w:id="{number}"/>"#)),
        Mark::End(number) => xml.push_str(&format!(
            r#"<w:commentRangeEnd w:id="{number}"/><w:r><w:rPr><w:rStyle w:val="CommentReference"/></w:rPr><w:commentReference w:id="{number}"/></w:r>"#
        )),
    }
}

/// Words, tabs as tabs.
fn run(xml: &mut String, words: &str) {
    if words.is_empty() {
        return;
    }
    xml.push_str("<w:r>");
    for (index, part) in words.split('\t').enumerate() {
        if index > 0 {
            xml.push_str("<w:tab/>");
        }
        if !part.is_empty() {
            xml.push_str(&format!(r#"<w:t xml:space="preserve">{}</w:t>"#, escaped(part)));
        }
    }
    xml.push_str("</w:r>");
}
