//! The trade's plain factor method: every amount times wanted over listed, in the measures wanted, rounded to what a
//! kitchen has, in the words of the page.
//!
//! Goes in: a page as read and its text, a [`Request`], a larder. Comes out: [`Converted`], which prints as a page.
//! It multiplies and rounds, no more: what a bigger batch does to steam, pots, pans and times is not solved, but said,
//! as [`Warning`]s computed from the page itself.

mod double;
mod food;
mod heat;
mod length;
mod line;
mod measure;
mod method;
mod page;
mod phrase;
mod scan;
mod size;
mod style;
mod warn;
mod worked;

use potwright_larder::Larder;
use potwright_manuscript::{Change as Variance, Recipe, Span};
use potwright_measure::{Exact, Measures};
use potwright_pot::Kitchen;
use serde::{Deserialize, Serialize};

use crate::splice::Splices;
use line::{Outcome, Setting};
use measure::Kitchens;
use style::Fractions;

pub use warn::{Warning, WarningKind};
pub use worked::Worked;

/// What is wanted of a page.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Request {
    /// How much of it.
    pub size: BatchSize,
    /// In which measures.
    pub measures: MeasuresWanted,
    /// Whose cups and spoons the page means.
    pub home: Measures,
    /// The pots and burners the warnings reckon with.
    pub kitchen: Kitchen,
}

impl Default for Request {
    /// The size and the measures of the page, read as a metric one, in the stated kitchen.
    fn default() -> Self {
        Request {
            size: BatchSize::AsWritten,
            measures: MeasuresWanted::AsWritten,
            home: Measures::Metric,
            kitchen: Kitchen::default(),
        }
    }
}

/// How much is wanted.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BatchSize {
    /// What the page makes.
    AsWritten,
    /// For so many people, more than nought; the page must say for how many it is.
    ForServings(Exact),
    /// So many times the page, more than nought.
    Times(Exact),
}

/// The measures an amount is to be given in.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum MeasuresWanted {
    /// Grams and millilitres; spoons for what is spooned everywhere; degrees Celsius.
    Metric,
    /// Cups, spoons, pounds and ounces of the US; degrees Fahrenheit.
    Us,
    /// The page's own first, the other in brackets.
    Both,
    /// Those of the page.
    AsWritten,
}

/// A page re-set.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Converted {
    /// What every amount was multiplied with.
    pub factor: Exact,
    /// One or two sentences that name the method and its limits, to stand under the title.
    pub label: String,
    /// What changed, in page order.
    pub changes: Vec<Change>,
    /// What the method does not solve, and what to look at; computed from the page.
    pub warnings: Vec<Warning>,
    /// Amounts worked step by step as quantity kitchens do; for US weights and measures of a hundred portions and more.
    pub worked: Vec<Worked>,
    /// The whole page re-set, notes to the desk left out.
    page: String,
}

/// Some words of the page that changed.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Change {
    /// What they are about.
    pub subject: Subject,
    /// Where they stand on the page.
    pub span: Span,
    /// What stood there.
    pub was: String,
    /// What stands there now.
    pub now: String,
    /// By how much rounding moved the amount, as a share of it: 0.05 is 5 % more than exact. Nought but for lines.
    pub off: f64,
}

/// What a change is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Subject {
    /// The yield line.
    Yield,
    /// The ingredient of this index, and others on the same line.
    Ingredient(usize),
    /// The step of this index.
    Step(usize),
    /// A headnote, variation or closing note.
    Note,
}

/// Re-sets a page for another size or in other measures, by the plain factor method.
///
/// It cannot fail: an amount that cannot be set stays as written and is named in a warning, as is a size that the
/// page gives no ground for.
#[must_use]
pub fn convert(recipe: &Recipe, text: &str, request: &Request, larder: &Larder) -> Converted {
    let size = size::Size::of(recipe, request.size);
    let Some(kitchens) = Kitchens::new(request.home) else {
        return Converted::untouched(text, size.label(request.measures));
    };
    let setting = Setting {
        text,
        larder,
        kitchens: &kitchens,
        fractions: Fractions::of_page(text),
        factor: size.factor,
        wanted: request.measures,
    };
    let mut splices = Splices::default();
    size.set_yield(&setting, recipe, &mut splices);
    let outcomes: Vec<Outcome> = recipe
        .ingredients
        .iter()
        .map(|line| line::set(&setting, line, &mut splices))
        .collect();
    set_variations(&setting, recipe, &mut splices);
    method::set(&setting, recipe, &mut splices);
    set_heat_and_length(&setting, recipe, &mut splices);
    let about = warn::About {
        recipe,
        setting: &setting,
        kitchen: &request.kitchen,
        outcomes: &outcomes,
        splices: &splices,
    };
    let mut warnings = size.warning().into_iter().collect::<Vec<_>>();
    warnings.extend(warn::all(&about));
    Converted {
        factor: size.factor,
        label: size.label(request.measures),
        changes: changes(recipe, text, &splices, &outcomes),
        warnings,
        worked: worked::all(recipe, text, &size, request.home),
        page: page::page(recipe, text, &splices, &size.label(request.measures)),
    }
}

impl Converted {
    /// The page as plain text of up to 80 columns: title, what was done, list and method re-set, then what the method
    /// does not solve.
    #[must_use]
    pub fn text(&self) -> String {
        page::text(&self.page, &self.warnings, &self.worked)
    }

    fn untouched(text: &str, label: String) -> Converted {
        Converted {
            factor: Exact::ONE,
            label,
            changes: Vec::new(),
            warnings: Vec::new(),
            worked: Vec::new(),
            page: text.to_owned(),
        }
    }
}

/// Amounts that only a variation names.
fn set_variations(setting: &Setting<'_>, recipe: &Recipe, splices: &mut Splices) {
    for change in recipe.variations.iter().flat_map(|variation| &variation.changes) {
        match change {
            Variance::LeaveOut(_) => {}
            Variance::Swap { with, .. } => {
                line::set(setting, with, splices);
            }
            Variance::Add(line) => {
                line::set(setting, line, splices);
            }
        }
    }
}

/// Temperatures of the prose; lengths of prose and list.
fn set_heat_and_length(setting: &Setting<'_>, recipe: &Recipe, splices: &mut Splices) {
    let mut add = |list: Vec<(Span, String)>| {
        for (span, now) in list {
            splices.add(setting.text, span, now);
        }
    };
    for span in prose(recipe).map(|(_, span)| span) {
        add(heat::reset(setting.text, span, setting.wanted));
        add(length::reset(setting.text, span, setting.wanted, setting.fractions));
    }
    for line in &recipe.ingredients {
        add(length::reset(
            setting.text,
            line.line.span,
            setting.wanted,
            setting.fractions,
        ));
    }
}

/// Steps and notes and where they stand.
fn prose(recipe: &Recipe) -> impl Iterator<Item = (Subject, Span)> {
    let notes = recipe
        .headnote
        .iter()
        .chain(&recipe.closing)
        .map(|words| (Subject::Note, words.span));
    let variations = recipe
        .variations
        .iter()
        .map(|variation| (Subject::Note, variation.words.span));
    let steps = recipe
        .steps
        .iter()
        .enumerate()
        .map(|(index, step)| (Subject::Step(index), step.words.span));
    notes.chain(steps).chain(variations)
}

/// Every line, step and note that reads otherwise than before, in page order.
fn changes(recipe: &Recipe, text: &str, splices: &Splices, outcomes: &[Outcome]) -> Vec<Change> {
    let yields = recipe.yields.iter().map(|yields| (Subject::Yield, yields.words.span));
    let lines = recipe
        .ingredients
        .iter()
        .enumerate()
        .map(|(index, line)| (Subject::Ingredient(index), line.line.span));
    let mut all: Vec<(Subject, Span)> = yields.chain(lines).chain(prose(recipe)).collect();
    all.sort_by_key(|(_, span)| *span);
    all.dedup_by_key(|(_, span)| *span);
    let changed = all.into_iter().filter_map(|(subject, span)| {
        let (was, now) = (span.of(text).to_owned(), splices.render(text, span));
        let off = match subject {
            Subject::Ingredient(index) => outcomes.get(index).map_or(0.0, |outcome| outcome.off),
            _ => 0.0,
        };
        (was != now).then_some(Change {
            subject,
            span,
            was,
            now,
            off,
        })
    });
    changed.collect()
}
