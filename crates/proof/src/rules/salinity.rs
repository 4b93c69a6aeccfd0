//! Salt outside the writer's own target.

use potwright_manuscript::Span;
use potwright_pot::Stuff;

use crate::placed::{is_dough, line_of};
use crate::prose::sentences;
use crate::remedy::first_that_holds;
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "D01",
    name: "salinity outside the writer's target",
    finds: "A finished dish whose computed salt lies outside the book's target, its whole range, a tenth given either way; with central figures only, a third.",
    why: "Too salty cannot be mended, and too little is the fault guests notice first.",
    fires: "Leek soup\n\n3 leeks, sliced\n1 litre water\n3 tbsp fine salt\n\nPut the leeks, water and salt in a pot and simmer for 20 minutes until soft. Blend.\n",
    silent: "Leek soup\n\n3 leeks, sliced\n1 litre water\nsalt to taste\n\nPut the leeks and water in a pot and simmer for 20 minutes until soft. Blend. Season with salt.\n",
    instead: "The amount that meets the target, or 'salt to taste'.",
    source: "mass balance of the simulation; the target is a setting of the book",
    check,
};

/// What is left open either way: of a range, and of the central run alone (common practice, no source).
const LEEWAY: (f64, f64) = (1.1, 1.35);

/// What is no soup may have this many times the target: bread has 1.5 to 2 % (common practice, no source).
const OTHERS: f64 = 2.5;

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let dossier = &manuscript.reckoned.dossier;
    let (figure, (low, high)) = (&dossier.salinity, dossier.target.salt_percent);
    let leeway = if figure.spread.is_some() { LEEWAY.0 } else { LEEWAY.1 };
    let (least, most) = figure.spread.unwrap_or((figure.value, figure.value));
    let (salty, flat) = (least > high * leeway, most < low / leeway);
    // Bread, salads and pickles have targets of their own.
    let other = dossier.body.word.is_none() || dossier.acid.value >= 1.2 || is_dough(manuscript);
    let other = other && least < OTHERS * high;
    if other || !(salty || flat) || (flat && meant(manuscript)) {
        return Vec::new();
    }
    let Some((lot, span)) = saltiest(manuscript) else {
        return Vec::new();
    };
    let asks = if salty {
        "Is it this salty? The dish comes out above your own target."
    } else {
        "Is this enough salt? The dish comes out below your own target."
    };
    let run = if figure.spread.is_some() {
        ""
    } else {
        ", central run only"
    };
    let because = format!(
        "computed {} of salt in the whole dish{run}; the target is {low} to {high} %",
        figure.display()
    );
    let mut query = RULE.query(Weight::WorthALook, span, asks, because);
    query.try_words = less_or_more(
        manuscript,
        lot,
        f64::midpoint(low, high) / figure.value.max(1e-6),
        (low, high),
    );
    vec![query]
}

/// A stock to cook with, and a page that says that no salt goes in, are flat on purpose; 'to taste' is solved.
fn meant(manuscript: &Manuscript<'_>) -> bool {
    let unsalted = &[
        "no salt",
        "unsalted",
        "salt free",
        "without … salt",
        "low salt|sodium",
        "not|n't … salt",
        "stock|broth|fond to cook with",
        "needs|wants no salt",
    ];
    !manuscript.reckoned.dossier.to_taste.is_empty()
        || manuscript
            .recipe
            .title
            .as_ref()
            .is_some_and(|title| title.text.to_lowercase().contains("stock"))
        || sentences(manuscript.recipe, manuscript.text)
            .iter()
            .any(|sentence| sentence.says(unsalted))
}

/// The lot that brings most salt, and its line.
fn saltiest(manuscript: &Manuscript<'_>) -> Option<(usize, Span)> {
    let reckoned = manuscript.reckoned;
    let lots = reckoned.process.lots.iter().zip(&reckoned.trace.lot_kg).enumerate();
    let brought = lots.filter_map(|(at, (lot, kg))| {
        let whole = lot.matter.total_kg();
        let salt = if whole > 0.0 {
            kg * lot.matter.kg(Stuff::Salt) / whole
        } else {
            0.0
        };
        Some((at, line_of(manuscript, at)?, salt))
    });
    brought
        .max_by(|a, b| a.2.total_cmp(&b.2))
        .map(|(lot, span, _)| (lot, span))
}

/// The line with its amount changed so that the page cooked again meets the target.
fn less_or_more(manuscript: &Manuscript<'_>, lot: usize, factor: f64, target: (f64, f64)) -> Option<String> {
    let ingredient = manuscript.reckoned.process.lots.get(lot)?.ingredient?;
    let line = manuscript.recipe.ingredients.get(ingredient)?;
    let quantity = line.quantity?;
    let unit = quantity.unit?;
    let amount = quantity.amount.midpoint();
    let rest = manuscript.text.get(quantity.span.end..line.span.end)?;
    let words = [1.0, 0.8, 1.25, 0.6, 1.6].map(|nudge| {
        let quarters = (4.0 * amount * factor * nudge).round().max(1.0) / 4.0;
        format!("{quarters} {}{rest}", unit.name())
    });
    let span = Span::new(quantity.span.start, line.span.end);
    first_that_holds(manuscript, span, words, |_, again| {
        let salt = again.dossier.salinity.value;
        salt >= target.0 && salt <= target.1
    })
}
