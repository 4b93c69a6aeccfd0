//! 'Serves' against a portion nobody would eat.

use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "S11",
    name: "'serves' against a portion nobody would eat",
    finds: "A number of people among whom the computed dish makes portions outside what anyone eats.",
    why: "Guests go hungry, or half of it is thrown away; figures per portion mean nothing.",
    fires: "Leek soup\n\nServes 20\n\n3 leeks, sliced\n1 litre water\n1 tsp salt\n\nPut the leeks, water and salt in a pot and simmer for 20 minutes until soft. Blend.\n",
    silent: "Leek soup\n\nServes 4\n\n3 leeks, sliced\n1 litre water\n1 tsp salt\n\nPut the leeks, water and salt in a pot and simmer for 20 minutes until soft. Blend.\n",
    instead: "Another number, or 'as a starter', 'as a side dish'.",
    source: "bounds of a portion: common practice, no source (160 g to 900 g of soup or stew, ×/÷ 1.5)",
    check,
};

/// Grams without bones and shells that somebody eats of a dish with liquid, and kilocalories (common practice, no source;
/// ×/÷ 1.5).
const EATEN_G: (f64, f64) = (160.0, 900.0);
const EATEN_KCAL: f64 = 1600.0;
/// An ordinary portion, grams (common practice, no source; 250 to 450).
const USUAL_G: f64 = 350.0;

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let (dossier, trace) = (&manuscript.reckoned.dossier, &manuscript.reckoned.trace);
    let Some(line) = manuscript
        .recipe
        .yields
        .as_ref()
        .filter(|line| line.servings().is_some())
    else {
        return Vec::new();
    };
    let yield_g = 1000.0 * dossier.yield_mass.value;
    if dossier.portions <= 0.0 || yield_g <= 0.0 {
        return Vec::new();
    }
    let bones_g: f64 = trace
        .served_pieces
        .iter()
        .map(|pieces| 1000.0 * pieces.inedible_kg)
        .sum();
    let eaten = 1.0 - (bones_g / yield_g).clamp(0.0, 1.0);
    let (low, high) = dossier
        .portion_mass
        .spread
        .unwrap_or((dossier.portion_mass.value, dossier.portion_mass.value));
    let energy = dossier
        .nutrition
        .iter()
        .find(|row| row.name == "Energy")
        .map_or(0.0, |row| row.per_portion.value);
    let soup = dossier.body.word.is_some() && dossier.acid.value < 1.2;
    let small = soup && high * eaten < EATEN_G.0;
    let large = low * eaten > EATEN_G.1 || energy > EATEN_KCAL;
    if !small && !large {
        return Vec::new();
    }
    let because = format!(
        "a portion comes to {}, {energy:.0} kcal; bones and shells are {:.0} % of it",
        dossier.portion_mass.display(),
        100.0 * (1.0 - eaten)
    );
    let asks = if small {
        "Does it feed so many? The portions are very small."
    } else {
        "Does it feed so few? The portions are very large."
    };
    let mut query = RULE.query(Weight::WorthALook, line.words.span, asks, because);
    query.try_words = Some(format!("Serves {:.0}", (yield_g * eaten / USUAL_G).round().max(1.0)));
    vec![query]
}
