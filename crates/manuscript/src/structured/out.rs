//! A page that was read as schema.org/Recipe.
//!
//! What the vocabulary has no place for stays on the typed page: headings over parts of the list, notes to the desk,
//! which step a variation changes. Closing paragraphs and variations go along as tips (HowToTip).

use serde_json::{Map, Value, json};

use super::duration;
use crate::{BlockKind, Layout, Recipe, Span, Step};

/// What was computed from a page, as far as the caller has it.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Computed {
    /// What the page makes, in words, for a page that does not say: '2.4 kg, 6 portions'.
    pub yields: Option<String>,
    /// From start to table, minutes, for a page that does not say.
    pub total_minutes: Option<f64>,
    /// What is in a portion.
    pub nutrition: Option<Nutrition>,
}

/// What is in a portion; what is not known stays out.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Nutrition {
    /// Mass of a portion, grams.
    pub portion_g: Option<f64>,
    /// Energy, kilocalories.
    pub energy_kcal: Option<f64>,
    /// Fat, grams.
    pub fat_g: Option<f64>,
    /// Saturated fat, grams.
    pub saturated_fat_g: Option<f64>,
    /// Carbohydrate, grams.
    pub carbohydrate_g: Option<f64>,
    /// Sugars, grams.
    pub sugar_g: Option<f64>,
    /// Fibre, grams.
    pub fibre_g: Option<f64>,
    /// Protein, grams.
    pub protein_g: Option<f64>,
    /// Sodium, milligrams.
    pub sodium_mg: Option<f64>,
    /// Cholesterol, milligrams.
    pub cholesterol_mg: Option<f64>,
}

/// A page as schema.org/Recipe; `text` is the page that `recipe` was read from.
#[must_use]
pub fn recipe_json(text: &str, recipe: &Recipe, computed: &Computed) -> Value {
    let page = Page { text, recipe };
    let mut out = Map::new();
    out.insert("@context".into(), json!("https://schema.org"));
    out.insert("@type".into(), json!("Recipe"));
    let mut put = |key: &str, value: Option<Value>| _ = value.map(|value| out.insert(key.into(), value));
    put("name", recipe.title.as_ref().map(|title| json!(page.words(title.span))));
    let headnote = page.all(recipe.headnote.iter().map(|words| words.span));
    put(
        "description",
        (!headnote.is_empty()).then(|| json!(headnote.join("\n"))),
    );
    let yields = recipe.yields.as_ref().map(|yields| page.words(yields.words.span));
    put("recipeYield", yields.or(computed.yields.clone()).map(Value::from));
    let declared = |what: &[&str]| {
        recipe
            .declared_times
            .iter()
            .find(|time| what.contains(&time.what.as_str()))
    };
    let minutes = |what: &[&str]| declared(what).map(|time| time.minutes.1);
    let time = |minutes: Option<f64>| minutes.map(|minutes| json!(duration::iso(minutes)));
    put("prepTime", time(minutes(&["preparation", "active"])));
    put("cookTime", time(minutes(&["cooking"])));
    put("totalTime", time(minutes(&["total"]).or(computed.total_minutes)));
    let (list, tools) = page.list();
    put("recipeIngredient", (!list.is_empty()).then(|| json!(list)));
    put("tool", (!tools.is_empty()).then(|| json!(tools)));
    let method = page.method();
    put(
        "recipeInstructions",
        (!method.is_empty()).then_some(Value::Array(method)),
    );
    put(
        "nutrition",
        computed.nutrition.and_then(|nutrition| nutrition_json(&nutrition)),
    );
    Value::Object(out)
}

struct Page<'p> {
    text: &'p str,
    recipe: &'p Recipe,
}

impl Page<'_> {
    /// Words of the page without the notes to the desk that stand in them.
    fn words(&self, span: Span) -> String {
        let mut out = String::new();
        let mut at = span.start;
        for note in &self.recipe.desk_notes {
            let outer = Span::new(note.words.span.start.saturating_sub(1), note.words.span.end + 1);
            if span.contains(outer) && outer.start >= at {
                out.push_str(Span::new(at, outer.start).of(self.text));
                at = outer.end;
            }
        }
        out.push_str(Span::new(at, span.end).of(self.text));
        out.split_whitespace().collect::<Vec<_>>().join(" ")
    }

    fn all(&self, spans: impl Iterator<Item = Span>) -> Vec<String> {
        spans
            .map(|span| self.words(span))
            .filter(|words| !words.is_empty())
            .collect()
    }

    /// The lines of the list, and those of them that name a pan or a dish.
    fn list(&self) -> (Vec<String>, Vec<String>) {
        let (mut list, mut tools) = (Vec::new(), Vec::new());
        let mut last = None;
        for ingredient in &self.recipe.ingredients {
            let span = match self.recipe.layout {
                Layout::List => ingredient.line.span,
                Layout::Prose => ingredient.span,
            };
            if last == Some(span) {
                continue;
            }
            last = Some(span);
            let words = self.words(span);
            let named = if ingredient.equipment { &mut tools } else { &mut list };
            named.extend((!words.is_empty()).then_some(words));
        }
        (list, tools)
    }

    /// Sections and steps, then variations and closing paragraphs as tips.
    fn method(&self) -> Vec<Value> {
        let mut found = Vec::new();
        for group in self.recipe.steps.chunk_by(|one, next| one.section == next.section) {
            let steps: Vec<Value> = group.iter().filter_map(|step| self.step(step)).collect();
            let section = group
                .first()
                .and_then(|step| step.section)
                .and_then(|at| self.recipe.sections.get(at));
            match section {
                Some(section) => found.push(json!({
                    "@type": "HowToSection",
                    "name": section.words.text.trim_end_matches(':'),
                    "itemListElement": steps,
                })),
                None => found.extend(steps),
            }
        }
        let variations = self.all(self.recipe.variations.iter().map(|variation| variation.words.span));
        found.extend(
            variations
                .into_iter()
                .map(|said| json!({"@type": "HowToTip", "name": "Variation", "text": said})),
        );
        let heading = |span: &Span| {
            let headings = self
                .recipe
                .blocks
                .iter()
                .filter(|block| block.kind == BlockKind::PartHeading);
            headings.into_iter().any(|block| block.span == *span)
        };
        let closing = self
            .recipe
            .closing
            .iter()
            .map(|words| words.span)
            .filter(|span| !heading(span));
        found.extend(
            self.all(closing)
                .into_iter()
                .map(|said| json!({"@type": "HowToTip", "text": said})),
        );
        found
    }

    fn step(&self, step: &Step) -> Option<Value> {
        let words = self.words(step.words.span);
        (!words.is_empty()).then(|| json!({"@type": "HowToStep", "text": words}))
    }
}

/// NutritionInformation; `None` when nothing is known.
fn nutrition_json(nutrition: &Nutrition) -> Option<Value> {
    let rows = [
        ("servingSize", nutrition.portion_g, "g"),
        ("calories", nutrition.energy_kcal, "kcal"),
        ("fatContent", nutrition.fat_g, "g"),
        ("saturatedFatContent", nutrition.saturated_fat_g, "g"),
        ("carbohydrateContent", nutrition.carbohydrate_g, "g"),
        ("sugarContent", nutrition.sugar_g, "g"),
        ("fiberContent", nutrition.fibre_g, "g"),
        ("proteinContent", nutrition.protein_g, "g"),
        ("sodiumContent", nutrition.sodium_mg, "mg"),
        ("cholesterolContent", nutrition.cholesterol_mg, "mg"),
    ];
    let mut out = Map::new();
    out.insert("@type".into(), json!("NutritionInformation"));
    for (key, amount, unit) in rows {
        if let Some(amount) = amount.filter(|amount| amount.is_finite()) {
            out.insert(key.into(), json!(format!("{} {unit}", two_digits(amount))));
        }
    }
    (out.len() > 1).then_some(Value::Object(out))
}

/// A number with the digits that a computation of this kind bears: two, and no fractions above ten.
fn two_digits(amount: f64) -> f64 {
    let step = match amount.abs() {
        large if large >= 1000.0 => 100.0,
        large if large >= 100.0 => 10.0,
        large if large >= 10.0 => 1.0,
        large if large >= 1.0 => 0.1,
        _ => 0.01,
    };
    // Dividing by the whole number of steps keeps 0.3 from coming out as 0.30000000000000004.
    if step < 1.0 {
        (amount / step).round() / (1.0 / step).round()
    } else {
        (amount / step).round() * step
    }
}
