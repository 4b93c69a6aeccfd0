//! What a page says in its sentences, outside the list: words looked for as they stand, with their places.

use potwright_manuscript::{BlockKind, Recipe, Span};

/// A sentence of the page.
#[derive(Clone, Debug)]
pub(crate) struct Sentence {
    /// Where it stands.
    pub(crate) span: Span,
    /// What part of the page it is in.
    pub(crate) part: BlockKind,
    /// Its words in small letters.
    words: Vec<Word>,
}

#[derive(Clone, Debug)]
struct Word {
    text: String,
    span: Span,
    /// A comma, a colon, a bracket or a dash stands before it.
    breaks: bool,
}

/// Words between two parts of a phrase that are parted by `…`.
const GAP: usize = 8;

/// Words that turn a clause into its opposite.
const NEGATIONS: &[&str] = &[
    "not",
    "never",
    "no",
    "don't",
    "dont",
    "cannot",
    "can't",
    "without",
    "avoid",
    "nor",
    "neither",
    "isn't",
    "won't",
    "shouldn't",
    "mustn't",
    "unsafe",
    "rather",
    "instead",
    "refuse",
    "stop",
];

/// The sentences outside the list of ingredients, in page order.
pub(crate) fn sentences(recipe: &Recipe, text: &str) -> Vec<Sentence> {
    use BlockKind::{Closing, Headnote, PartHeading, SectionHeading, Step, Title, Variation, Yield};
    let spoken = |kind: BlockKind| {
        matches!(
            kind,
            Title | Headnote | Yield | Step | Variation | Closing | SectionHeading | PartHeading
        )
    };
    let blocks = recipe.blocks.iter().filter(|block| spoken(block.kind));
    blocks
        .flat_map(|block| of_block(text, block.span, block.kind))
        .collect()
}

fn of_block(text: &str, span: Span, part: BlockKind) -> Vec<Sentence> {
    let mut found = Vec::new();
    let mut start = span.start;
    let block = span.of(text);
    let mut previous = ' ';
    let mut signs = block.char_indices().peekable();
    while let Some((at, sign)) = signs.next() {
        let next = signs.peek().map(|(_, next)| *next);
        let stops = match sign {
            '!' | '?' => true,
            // '2.5' and 'approx. 3' go on.
            '.' => next.is_none_or(char::is_whitespace) && !(previous.is_ascii_digit() && next.is_none()),
            ';' => true,
            '\n' => next == Some('\n'),
            _ => false,
        };
        previous = sign;
        if stops {
            let end = span.start + at + sign.len_utf8();
            found.extend(Sentence::at(text, Span::new(start, end), part));
            start = end;
        }
    }
    found.extend(Sentence::at(text, Span::new(start, span.end), part));
    found
}

impl Sentence {
    /// Of a place in the text; none without words.
    fn at(text: &str, span: Span, part: BlockKind) -> Option<Sentence> {
        let words = words(span.of(text), span.start);
        let (first, last) = (words.first()?, words.last()?);
        Some(Sentence {
            span: Span::new(first.span.start, last.span.end),
            part,
            words,
        })
    }

    /// The first of the phrases that stands in it, and where. A phrase is words in small letters; a word that ends in `*`
    /// stands for all that begin so, `a|b` for either, `…` for up to eight words.
    pub(crate) fn find(&self, phrases: &[&str]) -> Option<Span> {
        phrases
            .iter()
            .find_map(|phrase| self.phrase(phrase).map(|(from, to)| self.span_of(from, to)))
    }

    /// Whether one of the phrases stands in it.
    pub(crate) fn says(&self, phrases: &[&str]) -> bool {
        self.find(phrases).is_some()
    }

    /// The first of the phrases that stands in it and is not turned into its opposite by a word of the same clause
    /// before it: 'do not keep' keeps nothing.
    pub(crate) fn claims(&self, phrases: &[&str]) -> Option<Span> {
        phrases.iter().find_map(|phrase| {
            let (from, to) = self.phrase(phrase)?;
            (!self.negated(from)).then(|| self.span_of(from, to))
        })
    }

    fn span_of(&self, from: usize, to: usize) -> Span {
        self.words[from].span.join(self.words[to].span)
    }

    fn phrase(&self, phrase: &str) -> Option<(usize, usize)> {
        let sought: Vec<&str> = phrase.split(' ').collect();
        (0..self.words.len()).find_map(|from| self.stands_at(&sought, from).map(|to| (from, to)))
    }

    /// The last word of the phrase where it begins at a word.
    fn stands_at(&self, sought: &[&str], from: usize) -> Option<usize> {
        let (first, rest) = sought.split_first()?;
        if *first == "…" {
            let last = (from + GAP).min(self.words.len().saturating_sub(1));
            return (from..=last).find_map(|at| self.stands_at(rest, at));
        }
        if !self.words.get(from)?.is(first) {
            return None;
        }
        if rest.is_empty() {
            return Some(from);
        }
        self.stands_at(rest, from + 1)
    }

    /// Whether a negation stands up to six words before in the same clause.
    fn negated(&self, at: usize) -> bool {
        let mut here = at;
        while here > 0 && at - here < 6 && !self.words[here].breaks {
            here -= 1;
            if NEGATIONS.contains(&&*self.words[here].text) {
                return true;
            }
        }
        false
    }

    /// Its words with their places.
    pub(crate) fn words(&self) -> impl Iterator<Item = (&str, Span)> {
        self.words.iter().map(|word| (word.text.as_str(), word.span))
    }
}

impl Word {
    fn is(&self, sought: &str) -> bool {
        sought.split('|').any(|sought| match sought.strip_suffix('*') {
            Some(stem) => self.text.starts_with(stem),
            None => self.text == sought,
        })
    }
}

/// The words of a stretch; hyphens part words, apostrophes do not.
fn words(stretch: &str, offset: usize) -> Vec<Word> {
    let mut found: Vec<Word> = Vec::new();
    let mut start: Option<usize> = None;
    let mut breaks = true;
    let inside = |sign: char| sign.is_alphanumeric() || matches!(sign, '\'' | '’' | '½' | '¼' | '¾' | '°');
    for (at, sign) in stretch.char_indices().chain([(stretch.len(), ' ')]) {
        match (start, inside(sign)) {
            (None, true) => start = Some(at),
            (Some(from), false) => {
                let text = stretch.get(from..at).unwrap_or("").to_lowercase().replace('’', "'");
                let span = Span::new(offset + from, offset + at);
                found.push(Word { text, span, breaks });
                (start, breaks) = (None, false);
            }
            _ => {}
        }
        breaks |= matches!(sign, ',' | ':' | '(' | ')' | '–' | '—');
    }
    found
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sentence(text: &str) -> Sentence {
        Sentence::at(text, Span::new(0, text.len()), BlockKind::Closing).unwrap()
    }

    #[test]
    fn phrases_stand_as_words_with_gaps_and_beginnings() {
        let found = sentence("Keeps on the counter, well covered, for up to a week.");
        let place = found.find(&["keep* … counter|worktop"]).unwrap();
        assert_eq!((place.start, place.end), (0, 20));
        assert!(found.says(&["a week"]));
        assert!(!found.says(&["count"]) && !found.says(&["keeps … week"]));
    }

    #[test]
    fn a_negation_of_the_same_clause_turns_a_claim() {
        assert!(sentence("Do not keep it on the counter.").claims(&["keep"]).is_none());
        assert!(
            sentence("If not eaten at once, keep it cold.")
                .claims(&["keep"])
                .is_some()
        );
    }

    #[test]
    fn a_page_falls_into_sentences() {
        let text = "Add 2.5 kg of bones. Simmer!\n\nKeeps; freezes";
        let found = of_block(text, Span::new(0, text.len()), BlockKind::Step);
        let all: Vec<&str> = found.iter().map(|one| one.span.of(text)).collect();
        assert_eq!(all, ["Add 2.5 kg of bones", "Simmer", "Keeps", "freezes"]);
    }
}
