//! Letters as a page needs them: odd spaces made plain, signs that nobody sees left out and counted.

/// Cleans text on its way from a file to a page.
#[derive(Clone, Debug, Default)]
pub struct Letters {
    /// Marks of writing direction and width nought that were left out.
    unseen: usize,
    /// Control characters that were left out.
    controls: usize,
    /// Bytes of text so far.
    length: usize,
}

impl Letters {
    /// Adds text to a page.
    pub(super) fn push(&mut self, text: &str, page: &mut String) {
        let before = page.len();
        page.extend(text.chars().filter_map(|letter| self.letter(letter)));
        self.length += page.len() - before;
    }

    /// The text without what nobody sees, and one sentence on it where anything was left out.
    ///
    /// Plain pages keep their own spaces and line ends; only what has neither width nor meaning goes.
    #[must_use]
    pub fn plain(text: &str) -> (String, Option<String>) {
        let mut letters = Letters::default();
        let keeps = |letter: &char| matches!(letter, '\n' | '\r' | '\t' | '\u{c}' | '\u{b}' | '\u{85}');
        let kept = text.chars().filter_map(|letter| {
            if keeps(&letter) {
                Some(letter)
            } else {
                letters.seen(letter)
            }
        });
        let kept = kept.collect();
        (kept, letters.says())
    }

    /// What was left out, in a sentence.
    pub(super) fn says(&self) -> Option<String> {
        let counted = |count: usize, one: &str, several: &str| match count {
            0 => None,
            1 => Some(format!("1 {one}")),
            more => Some(format!("{more} {several}")),
        };
        let unseen = counted(
            self.unseen,
            "mark without width",
            "marks without width (of writing direction and the like)",
        );
        let controls = counted(self.controls, "control character", "control characters");
        let parts: Vec<String> = unseen.into_iter().chain(controls).collect();
        (!parts.is_empty()).then(|| format!("{} left out", parts.join(" and ")))
    }

    /// Bytes of text that have come through.
    pub(super) fn length(&self) -> usize {
        self.length
    }

    /// A letter of a word processor's text.
    fn letter(&mut self, letter: char) -> Option<char> {
        match letter {
            '\n' | '\t' => Some(letter),
            '\u{b}' | '\u{c}' | '\u{85}' | '\u{2028}' | '\u{2029}' => Some('\n'),
            // No-break, figure, thin and other spaces: to the reader of a page they are all one.
            '\u{a0}' | '\u{2000}'..='\u{200a}' | '\u{202f}' | '\u{205f}' | '\u{3000}' => Some(' '),
            // No-break hyphen.
            '\u{2011}' => Some('-'),
            other => self.seen(other),
        }
    }

    /// A letter that can be seen; others are counted.
    fn seen(&mut self, letter: char) -> Option<char> {
        match letter {
            // Width nought, word joiner, soft hyphen, marks and embeddings of writing direction.
            '\u{200b}'
            | '\u{2060}'
            | '\u{ad}'
            | '\u{feff}'
            | '\u{61c}'
            | '\u{200e}'
            | '\u{200f}'
            | '\u{202a}'..='\u{202e}'
            | '\u{2066}'..='\u{2069}' => {
                self.unseen += 1;
                None
            }
            other if other.is_control() => {
                self.controls += 1;
                None
            }
            other => Some(other),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The characters are those of the Unicode chart 'General Punctuation'.
    #[test]
    fn what_nobody_sees_is_left_out_and_said() {
        let (text, says) = Letters::plain("2\u{200e} leeks\u{202c}\0\r\n\t1\u{a0}l");
        assert_eq!(text, "2 leeks\r\n\t1\u{a0}l");
        let says = says.expect("something was left out");
        assert!(says.starts_with("2 marks without width"), "{says}");
        assert!(says.contains("1 control character"), "{says}");
        assert_eq!(Letters::plain("½ cup purée\n"), ("½ cup purée\n".to_owned(), None));
    }
}
