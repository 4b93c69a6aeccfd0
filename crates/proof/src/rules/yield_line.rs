//! The yield line against the computed yield.

use potwright_measure::{Measures, Unit};

use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "L08",
    name: "yield line against computed yield",
    finds: "A volume or weight on the yield line that the computed yield does not reach or passes, its whole spread outside what the page says, give or take a tenth.",
    why: "The reader has chosen the pot, the tubs and the number of guests by this line.",
    fires: "Stock\n\nMakes 4 litres\n\n1 kg beef bones\n2 litres water\n\nPut the bones and water in a pot, bring to the boil and simmer for 3 hours. Strain.\n",
    silent: "Broth\n\nMakes about 2 litres\n\n2 litres water\n1 tsp salt\n\nPut the water and salt in a pot, cover and bring to the boil.\n",
    instead: "Print the computed range, or weigh the pot and print that.",
    source: "mass balance of the simulation",
    check,
};

/// What a line that names one number is taken to leave open, either way (common practice, no source).
const LEEWAY: f64 = 0.10;

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let Some(line) = &manuscript.recipe.yields else {
        return Vec::new();
    };
    let (Some(amount), Some(unit)) = (line.amount, line.unit.as_deref().and_then(Unit::from_spelling)) else {
        return Vec::new();
    };
    let dossier = &manuscript.reckoned.dossier;
    let (figure, factor, word) = match (unit.volume(Measures::Us), unit.mass(Measures::Us)) {
        (Some(millilitres), _) => (&dossier.yield_volume, millilitres.to_f64() / 1000.0, "l"),
        (None, Some(grams)) => (&dossier.yield_mass, grams.to_f64() / 1000.0, "kg"),
        (None, None) => return Vec::new(),
    };
    let (low, high) = figure.spread.unwrap_or((figure.value, figure.value));
    let said_low = amount.low.to_f64() * factor * (1.0 - LEEWAY);
    let said_high = amount.high.to_f64() * factor * (1.0 + LEEWAY);
    if low <= said_high && high >= said_low {
        return Vec::new();
    }
    vec![Query {
        code: RULE.code.into(),
        weight: Weight::WorthALook,
        span: line.words.span,
        asks: "Does the dish come to this much? It was computed otherwise.".into(),
        because: format!("computed {:.1} {word} ({low:.1} to {high:.1})", figure.value),
        try_words: Some(format!("about {:.1} {word}", figure.value)),
        see: Vec::new(),
    }]
}
