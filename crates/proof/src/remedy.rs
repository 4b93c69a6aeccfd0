//! Corrected words are read and cooked again before they are offered.
//!
//! Whoever asks for the queries of a dish hands over how a page is cooked ([`Recook`]): the rules own no kitchen and no
//! larder. Where nobody did, no computed words are offered.

use std::fmt;

use potwright_manuscript::{Recipe, Span, read};
use potwright_reckon::Reckoned;

use crate::Manuscript;

/// Corrected words tried for one query: each is one central run.
const MOST_TRIES: usize = 8;

/// How a page is cooked, central figures only: in the kitchen and from the larder the dish itself was cooked in.
#[derive(Clone, Copy)]
pub struct Recook<'a>(pub &'a dyn Fn(&Recipe, &str) -> Reckoned);

impl fmt::Debug for Recook<'_> {
    fn fmt(&self, formatter: &mut fmt::Formatter<'_>) -> fmt::Result {
        formatter.write_str("Recook")
    }
}

/// The first of the words that, in the place of `span`, make a page of which `holds` is true; none where none does or
/// nothing can be cooked. At most eight are tried.
pub(crate) fn first_that_holds(
    manuscript: &Manuscript<'_>,
    span: Span,
    words: impl IntoIterator<Item = String>,
    holds: impl Fn(&Recipe, &Reckoned) -> bool,
) -> Option<String> {
    let cook = manuscript.recook?;
    words.into_iter().take(MOST_TRIES).find(|words| {
        with_words(manuscript.text, span, words).is_some_and(|text| {
            let recipe = read(&text);
            holds(&recipe, &(cook.0)(&recipe, &text))
        })
    })
}

/// A text with other words in one place; none where the place is not in it.
fn with_words(text: &str, span: Span, words: &str) -> Option<String> {
    Some([text.get(..span.start)?, words, text.get(span.end..)?].concat())
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn words_go_in_where_they_belong() {
        let text = "Simmer for 5 minutes.";
        assert_eq!(
            with_words(text, Span::new(11, 20), "half an hour").as_deref(),
            Some("Simmer for half an hour.")
        );
        assert_eq!(with_words(text, Span::new(11, 200), "x"), None);
        assert_eq!(with_words("für", Span::new(2, 3), "x"), None, "inside a character");
    }
}
