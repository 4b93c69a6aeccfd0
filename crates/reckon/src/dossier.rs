//! The dossier: the answers about one dish.

use potwright_larder::{Allergen, Contains, Hazard};
use potwright_manuscript::Span;
use potwright_pot::{Assumption, Made, Process, Trace};
use serde::{Deserialize, Serialize};

use crate::{Figure, ServedAgain, VariationRow};

/// Everything that came of reckoning one dish.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Reckoned {
    /// The process with its 'to taste' lots solved.
    pub process: Process,
    /// The central run.
    pub trace: Trace,
    /// The answers.
    pub dossier: Dossier,
    /// The dish as another dish may use it.
    pub made: Made,
}

/// The writer's own targets; [`Target::default`] is the book's default.
#[derive(Clone, Copy, Debug, PartialEq, Serialize, Deserialize)]
pub struct Target {
    /// Salt in the finished dish, percent by mass, low and high end.
    pub salt_percent: (f64, f64),
}

impl Default for Target {
    /// 0.6–1.0 % salt: ordinary seasoning of a finished soup or stew (common practice, no source).
    fn default() -> Self {
        Target {
            salt_percent: (0.6, 1.0),
        }
    }
}

/// The answers about one dish.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Dossier {
    /// Layout of this data; raised when a field changes its meaning.
    pub version: u32,
    /// The dish's title.
    pub title: String,
    /// Mass of the finished dish.
    pub yield_mass: Figure,
    /// Volume of the finished dish.
    pub yield_volume: Figure,
    /// What the page says it serves, low and high; none if it does not say.
    pub serves: Option<(f64, f64)>,
    /// The words in which the page says what it makes when that is not a number of people: 'Makes 1 loaf, 12 slices'.
    pub makes: Option<String>,
    /// Number of portions the figures per portion are reckoned with, and why that many.
    pub portions: f64,
    /// Why that many: 'the page says 6', 'not said: portions of 350 g'.
    pub portions_because: String,
    /// Mass of a portion.
    pub portion_mass: Figure,
    /// Volume of a portion.
    pub portion_volume: Figure,
    /// Share of pieces in the finished dish, percent.
    pub solids: Figure,
    /// From start to finish.
    pub elapsed: Figure,
    /// With hands busy.
    pub hands_on: Figure,
    /// Salt in the liquid, percent.
    pub liquid_salinity: Figure,
    /// Salt in the whole dish, percent.
    pub salinity: Figure,
    /// The writer's own targets that it was reckoned with.
    #[serde(default)]
    pub target: Target,
    /// Salt in the liquid once liquid and pieces are even, next day, percent.
    pub salinity_next_day: Figure,
    /// Sugar, percent.
    pub sugar: Figure,
    /// Fat, percent.
    pub fat: Figure,
    /// Organic acid as citric, percent.
    pub acid: Figure,
    /// Ethanol in a portion, grams.
    pub alcohol: Figure,
    /// Share of the alcohol put in that is left, percent; none when none went in.
    pub alcohol_kept: Option<Figure>,
    /// Highest temperature the liquid boils at in this pot and kitchen.
    pub boiling_point: Figure,
    /// Water that left as vapour.
    pub evaporated: Figure,
    /// Body.
    pub body: Body,
    /// Doneness and safety of each food that must be made safe or tender.
    pub doneness: Vec<Doneness>,
    /// Cooling of hot food.
    pub cooling: Vec<CoolingRow>,
    /// The dish reheated and kept hot; none for what is not reheated in a pot.
    pub served_again: Option<ServedAgain>,
    /// Nutrition.
    pub nutrition: Vec<NutrientRow>,
    /// Allergens of US and EU law: every one of them, *not known* and *no* included.
    pub allergens: Vec<AllergenRow>,
    /// Whether any animal product is or may be in it; none when something is not known.
    pub animal: Option<bool>,
    /// The foods that cause that answer.
    pub animal_causes: Vec<String>,
    /// Cost of the whole dish, with what has no price left out and named.
    pub cost: Option<Figure>,
    /// Cost of a portion.
    pub cost_per_portion: Option<Figure>,
    /// Name of the currency.
    pub currency: String,
    /// Foods that have no price in the book's table.
    pub unpriced: Vec<String>,
    /// Amounts 'to taste', solved.
    pub to_taste: Vec<ToTaste>,
    /// The method as a timetable: one row for each operation that takes time or hands.
    pub steps: Vec<StepRow>,
    /// Variations that the page prints, each cooked, once they were added ([`crate::add_variations`]).
    pub variations: Vec<VariationRow>,
    /// What happened in the pot that a cook wants to know.
    pub happenings: Vec<Assumption>,
    /// What was assumed.
    pub assumptions: Vec<Assumption>,
    /// What stays open: unsure names, unsure readings.
    pub open: Vec<Assumption>,
    /// Cautions that go with every safety figure.
    pub cautions: Vec<String>,
}

/// The five words for body, thin to stiff; ordinal.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum BodyWord {
    /// Runs like water.
    Thin,
    /// Leaves a light coat.
    LightCoat,
    /// Coats the spoon.
    CoatsTheSpoon,
    /// A finger's line through it stays.
    HoldsALine,
    /// Stands by itself.
    Stands,
}

/// Body of the finished liquid.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Body {
    /// The word; none when the dish has no liquid.
    pub word: Option<BodyWord>,
    /// The words its spread reaches over.
    pub range: Option<(BodyWord, BodyWord)>,
    /// Apparent thickener: gelatinised starch in the liquid, wheat-flour equivalent, percent of the liquid.
    pub thickener: Figure,
}

/// Doneness and safety of one food.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Doneness {
    /// Index into the process's lots.
    pub lot: usize,
    /// Its name.
    pub name: String,
    /// What must be made safe.
    pub hazard: Option<Hazard>,
    /// Hottest temperature that the centre of the coldest piece had.
    pub centre: Figure,
    /// The verdict.
    pub verdict: Verdict,
    /// The verdict in words that say what to do: 'near: boil 30 minutes; the page has 10'; empty where no rule applies.
    pub finding: String,
    /// The rule in words: '74 °C at the centre'.
    pub rule: String,
    /// Where the rule is from.
    pub source: String,
    /// What a calculation makes of the same; none where no confirmed table gives its figures. Not a verdict.
    pub calculation: Option<Calculation>,
    /// Tenderness: percent of the way to tender.
    pub tender: Option<Figure>,
    /// The same in a word.
    pub tenderness: Option<Tenderness>,
    /// The words its spread reaches over.
    pub tenderness_range: Option<(Tenderness, Tenderness)>,
}

/// What heat did to the growing cells of an organism, by calculation: decimal reductions, log₁₀. The tables decide; where
/// this is less than they stand for, it keeps a verdict from being 'meets'.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Calculation {
    /// At the coldest point of the coldest piece; its low end is the cautious one.
    pub coldest: Figure,
    /// Of the whole piece, in the central run.
    pub whole_log10: f64,
    /// The figures it was done with: 'D 1.77 min at 60 °C, z 5.56 K, counted from 54.4 °C up'.
    pub constants: String,
    /// In words: '9.3 log₁₀ of Salmonella at the coldest point; in the whole piece more than 12 log₁₀'.
    pub says: String,
}

/// How tender, in a cook's words; ordinal.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Tenderness {
    /// Not there yet.
    Firm,
    /// A little longer.
    NearlyTender,
    /// A knife goes in.
    Tender,
    /// Gives under a spoon.
    VerySoft,
    /// Hardly holds together.
    FallingApart,
}

impl Tenderness {
    /// The word for so many percent of the way to tender: each is as far from the next as a rule of thumb leaves open, a
    /// factor of 1.5 (common practice, no source).
    #[must_use]
    pub fn of(percent: f64) -> Self {
        match percent {
            percent if percent >= 225.0 => Tenderness::FallingApart,
            percent if percent >= 150.0 => Tenderness::VerySoft,
            percent if percent >= 100.0 => Tenderness::Tender,
            percent if percent >= 66.5 => Tenderness::NearlyTender,
            _ => Tenderness::Firm,
        }
    }

    /// The word on the page.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Tenderness::Firm => "firm",
            Tenderness::NearlyTender => "nearly tender",
            Tenderness::Tender => "tender",
            Tenderness::VerySoft => "very soft",
            Tenderness::FallingApart => "falling apart",
        }
    }
}

/// A safety verdict, at the cautious end.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Verdict {
    /// Meets the rule at the cautious end.
    Meets,
    /// Meets it in the central run but not at the cautious end: measure.
    Near,
    /// Does not meet it.
    Fails,
    /// There is a rule of looks, not of temperature: 'until the shells open'.
    Look,
    /// No rule applies.
    NoRule,
}

/// A cooling against the two-stage rule.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct CoolingRow {
    /// The words of the act.
    pub span: Option<Span>,
    /// Hours from 57 to 21 °C; none if not reached in the time followed.
    pub stage_one_h: Option<f64>,
    /// Its 5–95 % range; none without draws, or when an end of it was not reached.
    pub stage_one_range_h: Option<(f64, f64)>,
    /// Hours from 57 to 5 °C; none if not reached in the time followed.
    pub total_h: Option<f64>,
    /// Its 5–95 % range; none without draws, or when an end of it was not reached.
    pub total_range_h: Option<(f64, f64)>,
    /// Part of the cooling was assumed: the page does not say how long, or where.
    pub assumed: bool,
    /// The verdict.
    pub verdict: Verdict,
    /// One sentence: what was found and what would do.
    pub says: String,
}

/// One nutrient.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct NutrientRow {
    /// Name as on a label: `Energy`, `Fat`, `of which saturates`.
    pub name: String,
    /// In a portion.
    pub per_portion: Figure,
    /// In 100 g.
    pub per_100_g: Figure,
    /// As a US label prints it (21 CFR 101.9(c)), per portion.
    pub us_label: Option<String>,
    /// Percent of the US daily value, as printed.
    pub us_daily_value: Option<String>,
    /// As an EU label prints it (Regulation 1169/2011 and its rounding guidance), per 100 g.
    pub eu_label: Option<String>,
}

/// One allergen.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct AllergenRow {
    /// Which.
    pub allergen: Allergen,
    /// What is known.
    pub contains: Contains,
    /// The foods that cause the answer.
    pub causes: Vec<String>,
    /// Declared under US law.
    pub declare_us: bool,
    /// Declared under EU law.
    pub declare_eu: bool,
}

/// An amount 'to taste', solved.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct ToTaste {
    /// Index into the process's lots.
    pub lot: usize,
    /// Its name.
    pub name: String,
    /// Grams that bring the dish to the low and the high end of the target; both nought when it needs none.
    pub grams: (f64, f64),
    /// The same in a cook's measures: '¾ to 1½ teaspoons of fine salt', or 'needs none'.
    pub says: String,
}

/// One row of the method as a timetable.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct StepRow {
    /// The words of the operation.
    pub span: Option<Span>,
    /// What is done, in a word or two.
    pub what: String,
    /// Minutes from the start.
    pub start_min: f64,
    /// Minutes from the start.
    pub end_min: f64,
    /// Temperature of the contents at the end, °C.
    pub temp_c: Option<f64>,
    /// Mass in the vessel at the end, kilograms.
    pub mass_kg: Option<f64>,
}

#[cfg(test)]
mod tests {
    use super::Tenderness;

    /// A cue within a factor of 1.5 of tender counts as nearly reached: 100 ÷ 1.5 = 66.7, 100 · 1.5 = 150, · 1.5² = 225.
    #[test]
    fn words_for_tenderness() {
        for (percent, word) in [
            (0.0, "firm"),
            (66.0, "firm"),
            (67.0, "nearly tender"),
            (100.0, "tender"),
            (149.0, "tender"),
            (206.0, "very soft"),
            (300.0, "falling apart"),
        ] {
            assert_eq!(Tenderness::of(percent).words(), word, "{percent} %");
        }
    }
}
