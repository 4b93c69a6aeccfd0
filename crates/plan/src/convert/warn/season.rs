//! Thickener, salt, herbs and red pepper, and batches far from the tested one.

use potwright_larder::Kind;
use potwright_manuscript::{Ingredient, Target, Verb};
use potwright_measure::{Exact, fractions};

use super::{About, Warning, WarningKind, in_dish, listed};
use crate::convert::food::Known;
use crate::convert::line::{Setting, set};
use crate::splice::Splices;
use crate::trade::{Seasoning, amount_factor};

/// Flour and starch that go into a pot of liquid.
pub(super) fn thickener(about: &About<'_>) -> Option<Warning> {
    let lines = about.recipe.ingredients.iter().enumerate();
    let names: Vec<String> = lines
        .filter(|(index, line)| thickens(about, *index, line))
        .flat_map(|(_, line)| names(line))
        .collect();
    if names.is_empty() {
        return None;
    }
    let change = if about.bigger() {
        "less boils away in the bigger pot, so there is more to thicken than the factor says and it will come out thinner"
    } else {
        "more boils away in the smaller pot, so it will come out thicker"
    };
    let text = format!(
        "Thickening ({}): it goes with the finished liquid; {change}.",
        listed(&names)
    );
    Some(Warning::plain(WarningKind::Thickener, text, "thickener"))
}

fn thickens(about: &About<'_>, index: usize, line: &Ingredient) -> bool {
    let known = Known::of(about.setting.larder, line, line.items.first());
    let starchy = known
        .food
        .is_some_and(|food| food.behaviour.starch.is_some() && food.behaviour.disperses);
    if !(known.kind() == Some(Kind::Flour) || starchy) {
        return false;
    }
    let names = |target: &Target| matches!(target, Target::Ingredient { index: named, .. } if *named == index);
    let uses = about.operations(|operation| operation.foods.iter().any(|food| names(&food.target)));
    // What is shaped or baked where it goes in is a dough.
    let dough = |step: usize| {
        let made = [Verb::Shape, Verb::Knead, Verb::Bake];
        about
            .recipe
            .operations
            .iter()
            .any(|operation| operation.step == step && made.contains(&operation.verb))
    };
    about.has_a_pot()
        && uses
            .iter()
            .any(|operation| !in_dish(operation) && !dough(operation.step))
}

/// Salt that is measured.
pub(super) fn salt(about: &About<'_>) -> Option<Warning> {
    let salted: Vec<&Ingredient> = about
        .recipe
        .ingredients
        .iter()
        .filter(|line| {
            line.quantity.is_some() && line.items.iter().any(|item| item.name.split(' ').any(|w| w == "salt"))
        })
        .collect();
    if salted.is_empty() || !about.has_a_pot() {
        return None;
    }
    let doubt = if about.bigger() {
        "where less boils away the factor gives too little for the mass; a rule of thumb gives only one and a half \
         times on doubling and twice on tripling. They disagree: begin low and taste"
    } else {
        "where more boils away the factor gives too much for the mass: begin low and taste"
    };
    let text = format!("Salt goes with the finished mass, not with what goes in: {doubt}.");
    Some(Warning::plain(WarningKind::Salt, text, "salt"))
}

/// Far from what was tested.
pub(super) fn batch(about: &About<'_>) -> Option<Warning> {
    /// Above four times (common practice, no source).
    const FAR: f64 = 4.0;
    let factor = about.factor();
    (factor > FAR).then(|| {
        let text = format!(
            "The batch is {} the tested one: try a smaller step first, or cook it as {} of up to four times.",
            about.times(),
            match super::whole_up(factor / FAR) {
                2.0 => "two batches".to_owned(),
                many => format!("{many} batches"),
            }
        );
        Warning::plain(WarningKind::Batch, text, "batch")
    })
}

/// Herbs and red pepper by the trade's rules, for comparison.
pub(super) fn trade(about: &About<'_>) -> Vec<Warning> {
    let mut all = Vec::new();
    for (seasoning, rule) in [(Seasoning::Herb, "herbs"), (Seasoning::RedPepper, "red_pepper")] {
        let Some(other) = amount_factor(seasoning, about.setting.factor).filter(|other| *other != about.setting.factor)
        else {
            continue;
        };
        let lines = about.recipe.ingredients.iter();
        let said: Vec<String> = lines
            .filter(|line| line.quantity.is_some() && is(about, line, seasoning))
            .map(|line| format!("‘{}’", by(about, line, other)))
            .collect();
        if said.is_empty() {
            continue;
        }
        let (what, each) = match seasoning {
            Seasoning::Herb => ("Herbs", "half"),
            Seasoning::RedPepper => ("Ground red pepper", "a quarter"),
        };
        let text = format!(
            "{what}: twice for twice, then {each} of the original for each further multiple, {} times here: {}.",
            fractions::decimal(other, 2),
            said.join(", ")
        );
        all.push(Warning::plain(WarningKind::Trade, text, rule));
    }
    all
}

fn is(about: &About<'_>, line: &Ingredient, seasoning: Seasoning) -> bool {
    let known = Known::of(about.setting.larder, line, line.items.first());
    let Some(food) = known.food else { return false };
    match seasoning {
        Seasoning::Herb => food.kind == Kind::Herb,
        Seasoning::RedPepper => ["cayenne", "chilli_flakes", "chilli_powder"].contains(&food.key.as_str()),
    }
}

/// The line at another factor.
fn by(about: &About<'_>, line: &Ingredient, factor: Exact) -> String {
    let setting = Setting {
        factor,
        ..*about.setting
    };
    let mut splices = Splices::default();
    set(&setting, line, &mut splices);
    let now = splices.render(setting.text, line.line.span);
    now.split_whitespace().collect::<Vec<_>>().join(" ")
}

fn names(line: &Ingredient) -> impl Iterator<Item = String> + '_ {
    line.items.iter().map(|item| item.name.clone())
}
