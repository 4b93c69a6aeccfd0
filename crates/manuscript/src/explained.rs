//! Why a line was read as it was: what each of its words was taken for, and what else it could have been.

use crate::lexicon::Class;
use crate::token::tokens;
use crate::{Ingredient, Span, Words};

/// What a stretch of a line was taken for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
#[non_exhaustive]
pub enum Taken {
    /// How much.
    Amount,
    /// The same amount said again.
    AmountAgain,
    /// What one of the count holds or weighs.
    Package,
    /// The food.
    Food,
    /// A food that may stand in its place, with its amount.
    Instead,
    /// Work or temperature that the line gives the food.
    Work,
    /// More of it for another purpose.
    More,
    /// How small or large.
    Size,
    /// Of state or grade: dried, fresh.
    State,
    /// Optional, divided, to taste, for serving.
    Flag,
    /// Words that change nothing in the reading.
    PassedOver,
}

impl Taken {
    /// In words.
    #[must_use]
    pub fn name(self) -> &'static str {
        match self {
            Taken::Amount => "amount",
            Taken::AmountAgain => "the amount again",
            Taken::Package => "size of one",
            Taken::Food => "food",
            Taken::Instead => "in its place",
            Taken::Work => "preparation",
            Taken::More => "more of it",
            Taken::Size => "size",
            Taken::State => "state",
            Taken::Flag => "flag",
            Taken::PassedOver => "passed over",
        }
    }
}

/// A stretch of a line, what it was taken for, and what its words can be.
#[derive(Clone, Debug, PartialEq)]
pub struct Explained {
    /// The words.
    pub words: Words,
    /// What they were taken for.
    pub taken: Taken,
    /// What the tables know the words as, in the order of the words, each once.
    pub known_as: Vec<&'static str>,
}

/// The stretches of the part of a line that an entry is about, in page order.
#[must_use]
pub fn explained(text: &str, entry: &Ingredient) -> Vec<Explained> {
    let mut found: Vec<Explained> = Vec::new();
    for token in tokens(text, entry.span) {
        if token.is_word() || token.number().is_some() {
            let taken = taken(entry, token.span, token.class, &token.lower);
            let known = token.class.names();
            match found.last_mut().filter(|last| last.taken == taken) {
                Some(last) => {
                    last.words = Words::at(text, last.words.span.join(token.span));
                    last.known_as.extend(known);
                }
                None => found.push(Explained {
                    words: Words::at(text, token.span),
                    taken,
                    known_as: known.collect(),
                }),
            }
        }
    }
    for stretch in &mut found {
        let mut seen = Vec::new();
        stretch.known_as.retain(|name| {
            let new = !seen.contains(name);
            seen.push(*name);
            new
        });
    }
    found
}

fn taken(entry: &Ingredient, at: Span, class: Class, word: &str) -> Taken {
    let holds = |span: Span| span.contains(at);
    let others = || entry.alternatives.iter();
    if others().any(|other| holds(other.item.span) || other.quantity.is_some_and(|q| holds(q.span))) {
        return Taken::Instead;
    }
    if entry.package.is_some_and(|q| holds(q.span)) {
        return Taken::Package;
    }
    if entry.also.iter().any(|q| holds(q.span)) {
        return Taken::AmountAgain;
    }
    if entry.quantity.is_some_and(|q| holds(q.span)) || entry.open.as_ref().is_some_and(|o| holds(o.words.span)) {
        return Taken::Amount;
    }
    if class.is(Class::STATE)
        && entry
            .items
            .iter()
            .any(|item| item.state.iter().any(|state| state == word))
    {
        return Taken::State;
    }
    // The work may stand inside the span of a name that it divides.
    if entry.preparation.as_ref().is_some_and(|words| holds(words.span)) && !class.is(Class::FOOD) {
        return Taken::Work;
    }
    if entry.items.iter().any(|item| holds(item.span)) {
        return Taken::Food;
    }
    if entry.preparation.as_ref().is_some_and(|words| holds(words.span)) {
        return Taken::Work;
    }
    if entry.plus_more.as_ref().is_some_and(|words| holds(words.span)) {
        return Taken::More;
    }
    if class.is(Class::SIZE) {
        return Taken::Size;
    }
    let flag = matches!(
        word,
        "optional" | "opt" | "divided" | "taste" | "serve" | "serving" | "garnish"
    );
    if flag { Taken::Flag } else { Taken::PassedOver }
}
