//! The sign to stop: 'until soft', 'to a smooth paste', 'to the boil', 'by half', 'overnight', 'to taste'.

use super::phrases::{self, Found};
use super::said::Reader;
use crate::speech::{Speech, speech};
use crate::token::Token;
use crate::{Span, Words};

impl Reader<'_> {
    /// The sign to stop: 'until soft', 'to a smooth paste', 'to the boil', 'by half', 'overnight', 'to taste'.
    pub(super) fn cue(&self, tokens: &[Token], from: usize) -> Option<Found<Words>> {
        let word = self.word(from);
        let start = match word {
            "until" | "till" | "til" => from + 1,
            "just" | "or" if matches!(self.word(from + 1), "until" | "till" | "til") => from + 2,
            "overnight" => return self.cue_at(from, from + 1),
            "over" if self.word(from + 1) == "night" => return self.cue_at(from, from + 2),
            "for" => {
                let (_, next) = crate::number::number(tokens, from + 1)?;
                return self
                    .cue_at(from + 1, next + 1)
                    .filter(|_| self.word(next).starts_with("whistle"));
            }
            "to" => return self.cue_to(tokens, from + 1),
            "by" => {
                let (_, next) = crate::number::number(tokens, from + 1)?;
                return self.cue_at(from, next);
            }
            _ => return None,
        };
        let mut end = start;
        while let Some(token) = tokens.get(end) {
            let stops = token
                .sign()
                .is_some_and(|sign| matches!(sign, ',' | '(' | ')' | ';' | '–'));
            let again = token.is("or") && matches!(self.word(end + 1), "until" | "till");
            if stops
                || again
                || (end > start && phrases::minutes(tokens, end).is_some())
                || (token.is("over") && phrases::heat(tokens, end).is_some())
            {
                break;
            }
            end += 1;
        }
        while end > start && speech(self.word(end - 1)).is(Speech::JOINER) {
            end -= 1;
        }
        self.cue_at(start, end)
    }

    /// 'to the boil', 'to a smooth paste', 'to taste'.
    fn cue_to(&self, tokens: &[Token], from: usize) -> Option<Found<Words>> {
        const ENDS: &[&str] = &[
            "boil",
            "boiling",
            "boiling-point",
            "simmering",
            "simmer",
            "paste",
            "syrup",
            "dough",
            "purée",
            "puree",
            "cream",
            "glaze",
            "froth",
            "foam",
            "brown",
            "crumbs",
            "sauce",
            "jelly",
            "taste",
            "finish",
            "colour",
            "color",
        ];
        if self.word(from) == "taste" {
            return self.cue_at(from - 1, from + 1);
        }
        for index in from..from + 5 {
            let token = tokens.get(index)?;
            let point = self.word(index + 1) == "point";
            if token.is_any(ENDS) && !token.is("taste") {
                let next = index + 1 + usize::from(point);
                // 'to the sauce' is a place, not a sign to stop; 'to a sauce' is one.
                let place = matches!(
                    self.word(index),
                    "sauce" | "cream" | "dough" | "paste" | "purée" | "puree"
                ) && !matches!(self.word(from), "a" | "an" | "smooth" | "make" | "form");
                return if place { None } else { self.cue_at(from, next) };
            }
            if token.sign().is_some() || token.speech.is(Speech::PREPOSITION) || token.speech.is(Speech::JOINER) {
                return None;
            }
        }
        None
    }

    fn cue_at(&self, from: usize, next: usize) -> Option<Found<Words>> {
        let span: Span = phrases::span(self.tokens, from, next);
        let words = Words::at(self.text, span);
        (!words.text.is_empty()).then_some(Found { value: words, next })
    }
}
