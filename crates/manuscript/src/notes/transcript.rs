//! What was heard: the words of a take with their places and, when the machine wrote them down, their times.
//!
//! In goes the text of a transcript, plain, with stamps (`[12:05]`), as SubRip or as WebVTT; out come its words. Marks,
//! cue numbers and noises (`(laughs)`) are no words; noises are kept apart so that nothing is lost.

use crate::Span;
use crate::token::{Token, tokens};

/// The words of a take.
#[derive(Debug, Default)]
pub(super) struct Heard<'t> {
    pub(super) text: &'t str,
    pub(super) tokens: Vec<Token<'t>>,
    /// Seconds from the start of the take at which the stretch of each word began.
    pub(super) times: Vec<Option<f64>>,
    /// Whether the speaker starts afresh at this word: a paragraph or a stamp.
    pub(super) fresh: Vec<bool>,
    /// Noises the machine wrote down in brackets.
    pub(super) noises: Vec<Span>,
    /// Whether full stops part the sentences.
    pub(super) punctuated: bool,
}

/// So few words a stop, on the average, still make a punctuated text.
const WORDS_A_STOP: usize = 40;
/// No mark in brackets is longer, in bytes.
const LONGEST_MARK: usize = 80;

/// The words of a transcript.
pub(super) fn heard(text: &str) -> Heard<'_> {
    let mut found = Heard {
        text,
        ..Heard::default()
    };
    let lines: Vec<Span> = lines(text).collect();
    let cues = lines.iter().any(|line| is_cue(line.of(text)));
    let mut state = State::default();
    let mut skipping = cues && lines.first().is_some_and(|line| header(line.of(text)));
    for (index, line) in lines.iter().enumerate() {
        let typed = line.of(text).trim();
        if typed.is_empty() {
            skipping = false;
            state.fresh |= !cues;
            continue;
        }
        let next_is_cue = lines.get(index + 1).is_some_and(|next| is_cue(next.of(text)));
        if cues && is_cue(typed) {
            state.time = typed
                .split("-->")
                .next()
                .and_then(|start| seconds(start.trim()))
                .or(state.time);
            skipping = false;
            continue;
        }
        if cues && (block(typed) || skipping || next_is_cue) {
            skipping |= block(typed);
            continue;
        }
        found.line(*line, &mut state);
    }
    super::apostrophes::restore(&mut found.tokens);
    let stops = found
        .tokens
        .iter()
        .filter(|t| matches!(t.sign(), Some('.' | '?' | '!')));
    found.punctuated = stops.count() * WORDS_A_STOP >= found.tokens.len().max(1);
    found
}

#[derive(Debug, Default)]
struct State {
    time: Option<f64>,
    fresh: bool,
}

impl Heard<'_> {
    /// Takes in a line: its words, the stamps and noises between them.
    fn line(&mut self, line: Span, state: &mut State) {
        let text = self.text;
        let mut from = line.start;
        while let Some((at, open)) = next_mark(text, from, line.end) {
            let Some(end) = closing(text, at, open, line.end) else {
                from = self.words(from, at + open.len_utf8(), state);
                continue;
            };
            self.words(from, at, state);
            let inner = text.get(at + open.len_utf8()..end - 1).unwrap_or("").trim();
            if open == '<' {
                from = end;
                continue;
            }
            match seconds(inner) {
                Some(time) => {
                    state.fresh |= state.time != Some(time);
                    state.time = Some(time);
                }
                None => self.noises.push(Span::new(at, end)),
            }
            from = end;
        }
        let rest = text.get(from..line.end).unwrap_or("").trim_start();
        let stamp = rest.split_whitespace().next().filter(|_| self.starts(from, line));
        if let Some((stamp, time)) = stamp.and_then(|stamp| Some((stamp, seconds(stamp.trim_end_matches(':'))?))) {
            state.fresh |= state.time != Some(time);
            state.time = Some(time);
            from = line.end - rest.len() + stamp.len();
        }
        self.words(from, line.end, state);
    }

    /// Whether nothing but white space stands before this place of the line.
    fn starts(&self, from: usize, line: Span) -> bool {
        Span::new(line.start, from).of(self.text).trim().is_empty()
    }

    fn words(&mut self, from: usize, to: usize, state: &mut State) -> usize {
        for token in tokens(self.text, Span::new(from, to)) {
            let word = token.is_word();
            if !word && token.number().is_none() && !is_stop(&token) {
                continue;
            }
            self.tokens.push(token);
            self.times.push(state.time);
            self.fresh.push(std::mem::take(&mut state.fresh));
        }
        to
    }
}

/// Signs that say something to the ear; quotation marks and the like do not.
fn is_stop(token: &Token) -> bool {
    matches!(
        token.sign(),
        Some('.' | ',' | '?' | '!' | ';' | ':' | '-' | '–' | '—' | '…' | '%')
    )
}

/// Each line without its end.
fn lines(text: &str) -> impl Iterator<Item = Span> {
    let mut from = 0;
    text.split_inclusive(['\n', '\r']).map(move |line| {
        let start = from;
        from += line.len();
        Span::new(start, start + line.trim_end_matches(['\n', '\r']).len())
    })
}

/// The header of a WebVTT file.
fn header(line: &str) -> bool {
    line.trim_start_matches('\u{feff}').starts_with("WEBVTT")
}

/// The first line of a block of a WebVTT file that holds no speech.
fn block(line: &str) -> bool {
    ["NOTE", "STYLE", "REGION"].contains(&line) || line.starts_with("NOTE ") || header(line)
}

/// The line of a cue that says from when to when.
fn is_cue(line: &str) -> bool {
    let (Some((from, to)), true) = (line.split_once("-->"), line.len() < 200) else {
        return false;
    };
    let to = to.split_whitespace().next().unwrap_or("");
    seconds(from.trim()).is_some() && seconds(to).is_some()
}

/// The next bracket that may open a mark or a noise.
fn next_mark(text: &str, from: usize, end: usize) -> Option<(usize, char)> {
    let rest = text.get(from..end)?;
    let at = rest.find(['[', '(', '<'])?;
    Some((from + at, rest[at..].chars().next()?))
}

/// One past the bracket that closes the one at this place, when it is near.
fn closing(text: &str, at: usize, open: char, end: usize) -> Option<usize> {
    let close = match open {
        '[' => b']',
        '(' => b')',
        _ => b'>',
    };
    let near = text.as_bytes().get(at..end.min(at + LONGEST_MARK))?;
    near.iter().position(|b| *b == close).map(|length| at + length + 1)
}

/// Seconds of a stamp: `12:05`, `1:41:10`, `00:01:02,500`, `00:01.000`.
fn seconds(stamp: &str) -> Option<f64> {
    let parts: Vec<&str> = stamp.split(':').collect();
    if !(2..=3).contains(&parts.len()) {
        return None;
    }
    let mut total = 0.0;
    for (index, part) in parts.iter().enumerate() {
        let last = index + 1 == parts.len();
        let part = part.replace(',', ".");
        let figures = |c: char| c.is_ascii_digit() || last && c == '.';
        if part.is_empty()
            || part.len() > 8
            || !part.chars().all(figures)
            || !part.starts_with(|c: char| c.is_ascii_digit())
        {
            return None;
        }
        total = total * 60.0 + part.parse::<f64>().ok()?;
    }
    Some(total)
}

#[cfg(test)]
mod tests {
    use super::*;

    fn words(text: &str) -> String {
        let found = heard(text);
        let shown = found.tokens.iter().zip(&found.times).map(|(t, time)| match time {
            Some(time) => format!("{}@{time}", t.text),
            None => t.text.to_owned(),
        });
        shown.collect::<Vec<_>>().join(" ")
    }

    #[test]
    fn stamps_and_cues_give_times() {
        // Each text says the same two words; SubRip has a comma before the milliseconds, WebVTT (W3C, 'WebVTT: The
        // Web Video Text Tracks Format', section 4.1) a full stop and hours that may be left out.
        assert_eq!(words("two eggs"), "two eggs");
        assert_eq!(words("[12:05] two eggs (laughs)"), "two@725 eggs@725");
        assert_eq!(words("1:00:05 two eggs"), "two@3605 eggs@3605");
        assert_eq!(
            words("1\n00:00:02,000 --> 00:00:04,000\ntwo\n\n2\n00:00:04,500 --> 00:00:05,000\neggs"),
            "two@2 eggs@4.5"
        );
        assert_eq!(
            words(
                "WEBVTT - a title\n\nNOTE nothing\n\nid\n00:02.000 --> 00:04.000 align:start\n<v One>two <c>eggs</c>"
            ),
            "two@2 eggs@2"
        );
    }

    #[test]
    fn noises_are_kept_apart() {
        assert_eq!(heard("one (laughs) two [music]").noises.len(), 2);
    }
}
