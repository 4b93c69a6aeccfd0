//! What the plain factor method does not solve, computed from the page: one sentence or two for each thing that will
//! be wrong, with the figures that the page, the factor and the kitchen give.

mod contents;
mod heat;
mod left;
mod pans;
mod season;

use potwright_manuscript::{Ingredient, Operation, Recipe, Verb};
use potwright_measure::fractions;
use potwright_pot::Kitchen;
use serde::{Deserialize, Serialize};

use super::line::{Outcome, Setting};
use crate::rules;
use crate::splice::Splices;

/// Something that multiplying does not solve, or that needs a look.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Warning {
    /// What it is about.
    pub kind: WarningKind,
    /// Indices into [`Recipe::steps`] it speaks of, in order.
    pub steps: Vec<usize>,
    /// The sentences.
    pub text: String,
    /// Where the rule is from.
    pub source: String,
}

/// What a warning is about.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum WarningKind {
    /// The size asked for could not be reckoned.
    Size,
    /// Open pots lose less for their size.
    Evaporation,
    /// Driving off a part takes as much longer as there is more of it.
    Reduction,
    /// The pot is too small.
    Pot,
    /// Depth in a pan or dish.
    Depth,
    /// Browning goes by area of pan.
    Browning,
    /// Coming to the boil takes longer.
    Heating,
    /// What the oven does with more.
    Oven,
    /// Cooling takes longer.
    Cooling,
    /// Thickener goes with the finished liquid.
    Thickener,
    /// Salt goes with the finished mass.
    Salt,
    /// Times that do not change.
    Times,
    /// The batch is many times the tested one.
    Batch,
    /// What the trade says of herbs and red pepper.
    Trade,
    /// Amounts left to the cook.
    Taste,
    /// Amounts, numbers and words that stay as written.
    Left,
    /// Weights that are guesses or not on record.
    Weights,
    /// Amounts that rounding moved by more than a tenth.
    Rounding,
}

impl WarningKind {
    /// Whether it is about the words of the page, not about what a bigger batch does.
    #[must_use]
    pub const fn is_about_the_page(self) -> bool {
        use WarningKind::{Left, Rounding, Size, Taste, Trade, Weights};
        matches!(self, Size | Trade | Taste | Left | Weights | Rounding)
    }
}

impl Warning {
    pub(in crate::convert) fn plain(kind: WarningKind, text: String, rule: &str) -> Warning {
        Warning {
            kind,
            steps: Vec::new(),
            text,
            source: rules::source(rule).to_owned(),
        }
    }

    fn at(kind: WarningKind, mut steps: Vec<usize>, text: String, rule: &str) -> Warning {
        steps.sort_unstable();
        steps.dedup();
        Warning {
            steps,
            ..Warning::plain(kind, text, rule)
        }
    }
}

/// All that a warning may look at.
#[derive(Clone, Copy)]
pub(in crate::convert) struct About<'a> {
    pub(in crate::convert) recipe: &'a Recipe,
    pub(in crate::convert) setting: &'a Setting<'a>,
    pub(in crate::convert) kitchen: &'a Kitchen,
    pub(in crate::convert) outcomes: &'a [Outcome],
    pub(in crate::convert) splices: &'a Splices,
}

/// All warnings, by kind.
pub(in crate::convert) fn all(about: &About<'_>) -> Vec<Warning> {
    let mut all = Vec::new();
    if about.factor() != 1.0 {
        let contents = contents::Contents::of(about);
        all.extend(heat::evaporation(about));
        all.extend(heat::reduction(about));
        all.extend(pans::pot(about, &contents));
        all.extend(pans::depth(about));
        all.extend(pans::browning(about));
        all.extend(heat::heating(about, &contents));
        all.extend(heat::oven(about));
        all.extend(heat::cooling(about));
        all.extend(season::thickener(about));
        all.extend(season::salt(about));
        all.extend(heat::times(about));
        all.extend(season::batch(about));
        all.extend(season::trade(about));
        all.extend(left::taste(about));
        all.extend(left::numbers(about));
    }
    all.extend(left::amounts(about));
    all.extend(left::weights(about));
    all.extend(left::rounding(about));
    all
}

impl<'a> About<'a> {
    fn factor(&self) -> f64 {
        self.setting.factor.to_f64()
    }

    fn bigger(&self) -> bool {
        self.factor() > 1.0
    }

    /// `6⅔ times`.
    fn times(&self) -> String {
        format!("{} times", super::size::times(self.setting.factor))
    }

    fn operations(&self, wanted: impl Fn(&Operation) -> bool) -> Vec<&'a Operation> {
        self.recipe
            .operations
            .iter()
            .filter(|operation| wanted(operation))
            .collect()
    }

    /// Whether something is cooked in liquid on the hob or in a pot.
    fn has_a_pot(&self) -> bool {
        let wet = [
            Verb::Simmer,
            Verb::Boil,
            Verb::Parboil,
            Verb::Poach,
            Verb::Reduce,
            Verb::Steam,
            Verb::Braise,
        ];
        self.recipe
            .operations
            .iter()
            .any(|operation| wet.contains(&operation.verb) && !in_dish(operation))
    }

    fn ingredient(&self, index: usize) -> Option<&'a Ingredient> {
        self.recipe.ingredients.get(index)
    }
}

/// The words of an operation's vessel, in small letters.
fn vessel(operation: &Operation) -> String {
    operation
        .into
        .as_ref()
        .map_or(String::new(), |vessel| vessel.words.text.to_lowercase())
}

/// Whether it stands in a dish, tin or on a tray, or right in the oven, not in a pot.
fn in_dish(operation: &Operation) -> bool {
    let vessel = vessel(operation);
    in_oven(operation)
        || ["dish", "tin", "tray", "sheet"]
            .iter()
            .any(|word| vessel.split(' ').any(|said| said.starts_with(word)))
}

/// Whether the oven itself is the vessel; a Dutch oven is a pot.
fn in_oven(operation: &Operation) -> bool {
    let vessel = vessel(operation);
    vessel.ends_with("oven") && !vessel.contains("dutch")
}

/// 'step 3', 'steps 3 and 5'.
fn steps(indices: &[usize]) -> String {
    let mut numbers: Vec<usize> = indices.iter().map(|index| index + 1).collect();
    numbers.dedup();
    let words: Vec<String> = numbers.iter().map(usize::to_string).collect();
    match words.as_slice() {
        [one] => format!("step {one}"),
        list => format!("steps {}", listed(list)),
    }
}

/// 'a, b and c'.
fn listed(words: &[String]) -> String {
    match words {
        [] => String::new(),
        [one] => one.clone(),
        [head @ .., last] => format!("{} and {last}", head.join(", ")),
    }
}

/// '12 minutes', '1½ to 2 hours'.
fn minutes(low: f64, high: f64) -> String {
    let words = |minutes: f64| potwright_measure::Duration::from_seconds(minutes * 60.0).words();
    let (first, last) = (words(low), words(high));
    let unit = last.rsplit(' ').next().unwrap_or("");
    match first.strip_suffix(unit).map(str::trim_end) {
        _ if first == last => last,
        Some(number) if !number.contains(' ') && !unit.is_empty() => format!("{number} to {last}"),
        _ => format!("{first} to {last}"),
    }
}

/// A share in percent: '53 %'.
fn percent(share: f64) -> String {
    format!("{} %", (share * 100.0).round())
}

/// A number with the digits a cook can use: one decimal below 10.
fn short(number: f64) -> String {
    let places = if number < 10.0 { 1 } else { 0 };
    let text = format!("{number:.places$}");
    if places == 1 {
        text.trim_end_matches('0').trim_end_matches('.').to_owned()
    } else {
        text
    }
}

/// The number a count of batches comes to.
fn whole_up(number: f64) -> f64 {
    // A sum of thirds may come out a hair above a whole number.
    (number - 1e-9).ceil().max(1.0)
}

/// A number as the page writes it.
fn number(value: f64) -> String {
    potwright_measure::Exact::nearest(value, 4).map_or_else(|| value.to_string(), fractions::cook)
}
