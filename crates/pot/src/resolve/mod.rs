//! Recipe to process: what the page says, as masses, vessels and acts.
//!
//! The list becomes lots (`lots`, `amount`, `matter`, `cuts`, `storage`), the method becomes acts: a [`bench::Bench`]
//! follows the operations one by one and knows what each vessel holds (`gather`, `unlisted`, `place`, `heat`, `moves`, `worked`). At the end
//! the vessels get the kitchen's pots (`vessels`). Whatever the page does not say is assumed from the tables of
//! `data/` and noted in a cook's sentence; nothing is assumed in silence.

mod aim;
mod amount;
mod bench;

mod cues;
mod cuts;
mod fat;
mod finish;
mod foods;
mod gather;
mod heat;
mod implied;
mod lasts;
mod lots;
mod matter;
mod moves;
mod others;
mod place;
mod prepare;
mod shaped;
mod special;
mod storage;
mod table;
mod unlisted;
mod varied;
mod verbs;
mod vessels;
mod words;
mod worked;

#[cfg(test)]
mod properties;
#[cfg(test)]
mod tests;

use potwright_larder::Larder;
use potwright_manuscript::{Form, Operation, Recipe, Span, Verb};
use potwright_measure::Measures;

use crate::{Assumption, Kitchen, Made, Process};
pub use amount::grams_per_ml;
use bench::Bench;
pub use foods::names_dish;
use lots::Shelf;
pub use matter::make_up_100_g;
pub use varied::{Varied, varied};
use verbs::Class;
use words::{has, plain};

/// Words that forbid boiling.
const NOT_BOIL: [&str; 8] = [
    "not let it boil",
    "don t let it boil",
    "without boiling",
    "without letting it boil",
    "must not boil",
    "do not boil",
    "never boil",
    "never let it boil",
];

/// What had to be assumed and what stays open.
#[derive(Debug, Default)]
struct Notes {
    assumptions: Vec<Assumption>,
    open: Vec<Assumption>,
}

impl Notes {
    /// Notes an assumption, once for the same words.
    fn assume(&mut self, text: impl Into<String>, span: Option<Span>) {
        push_once(&mut self.assumptions, text.into(), span);
    }

    /// Notes something for the author to settle, once for the same words.
    fn open(&mut self, text: impl Into<String>, span: Option<Span>) {
        push_once(&mut self.open, text.into(), span);
    }
}

fn push_once(list: &mut Vec<Assumption>, text: String, span: Option<Span>) {
    let note = Assumption { text, span };
    if !list.contains(&note) {
        list.push(note);
    }
}

/// The process that a recipe describes.
///
/// `text` is the page the recipe was read from; `made` are the dishes that other dishes may name. Never fails: what
/// cannot be placed is left out and named in [`Process::open`].
#[must_use]
pub fn resolve(
    recipe: &Recipe,
    text: &str,
    larder: &Larder,
    made: &[Made],
    kitchen: &Kitchen,
    measures: Measures,
) -> Process {
    let shelf = Shelf {
        recipe,
        text,
        larder,
        made,
        kitchen,
        measures,
    };
    let mut notes = Notes::default();
    let stocked = shelf.stock(&mut notes);
    let mut bench = Bench::new(&shelf, stocked, notes);
    bench.soak_what_the_list_soaks();
    for (index, operation) in recipe.operations.iter().enumerate() {
        bench.follow(index, operation);
    }
    bench.finish()
}

impl Bench<'_> {
    /// One operation.
    fn follow(&mut self, index: usize, operation: &Operation) {
        let manner = verbs::manner(operation.verb);
        self.turn_to(index, operation, manner.hands);
        if operation.optional {
            self.assume(format!(
                "‘{}’ is left out: the page leaves it to the cook.",
                self.quoted()
            ));
            return;
        }
        if self.served.is_some() && manner.class != Class::Put && manner.class != Class::Serve {
            // What follows the serving is about what is left over.
            return;
        }
        self.turn_to_section(operation.step);
        match manner.class {
            Class::Prepare if operation.verb == Verb::Shape => self.shape(operation),
            Class::Prepare if operation.verb == Verb::Wash => self.rinse(operation),
            Class::Prepare | Class::Nothing => {}
            Class::Put | Class::Loosen => self.put(operation, &manner),
            Class::Mix => self.mix(operation, &manner),
            Class::Dress => self.dress(operation, &manner),
            Class::Cook if operation.form == Form::Participle && self.is_done_on_the_list(operation) => {}
            Class::Cook => self.cook(operation, &manner),
            Class::Wait => self.wait(operation, &manner),
            Class::Lift => self.lift(operation, &manner),
            Class::Throw => self.throw(operation, &manner),
            Class::Drain => self.drain(operation, &manner),
            Class::Strain => self.strain(operation, &manner),
            Class::Blend => self.blend(operation, &manner),
            Class::Skim => self.skim(operation, &manner),
            Class::Guard => self.guard(),
            Class::Lid => self.lid(operation),
            Class::Serve => self.serve(operation),
        }
        if manner.class != Class::Guard && self.must_not_boil(index, operation) {
            self.guard();
        }
    }

    /// Whether the words of an operation, or those between it and the next, forbid boiling.
    fn must_not_boil(&self, index: usize, operation: &Operation) -> bool {
        let recipe = self.shelf.recipe;
        let next = recipe
            .operations
            .get(index + 1)
            .filter(|next| next.step == operation.step);
        let step_end = recipe
            .steps
            .get(operation.step)
            .map_or(operation.span.end, |step| step.words.span.end);
        let end = next.map_or(step_end, |next| next.span.start).max(operation.span.end);
        let words = plain(self.shelf.text.get(operation.span.start..end).unwrap_or(""));
        NOT_BOIL.iter().any(|said| has(&words, said))
    }

    /// The words of the operation being followed, as they stand, on one line.
    fn quoted(&self) -> String {
        let words = self.said.span.map_or("", |span| span.of(self.shelf.text));
        words.split_whitespace().collect::<Vec<_>>().join(" ")
    }

    /// A participle of heat on the list ('hazelnuts, toasted') is work done before.
    fn is_done_on_the_list(&self, operation: &Operation) -> bool {
        let lines = &self.shelf.recipe.ingredients;
        lines.iter().any(|line| line.line.span.contains(operation.span))
    }
}
