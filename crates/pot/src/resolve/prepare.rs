//! What preparation takes off a food, what of it is never eaten, and how long a pair of hands is at it.

use potwright_larder::{Food, Kind};
use potwright_measure::{Duration, Mass};

use super::foods::Found;
use super::words::has;
use super::{matter, table};
use crate::{Matter, Nutrient, Stuff};

/// The make-up of so much of what is eaten of a food, or passes from it into the liquid.
pub(super) fn edible(found: &Found, kg: f64) -> Matter {
    let mut whole = match (found.made(), found.food()) {
        (Some(made), _) => made.matter,
        (None, Some(food)) => matter::hundred_grams(food),
        (None, None) => Matter::default(),
    };
    if found.food().is_some_and(gives_off) {
        whole.mass_kg[Stuff::Ash as usize] = 0.0;
        // What would go with it stays in the bone.
        whole.nutrients[Nutrient::CalciumMg as usize] = 0.0;
        whole.nutrients[Nutrient::IronMg as usize] = 0.0;
    }
    let all = whole.total_kg();
    if all > 0.0 {
        matter::scaled(&whole, kg / all)
    } else {
        matter::water(kg)
    }
}

/// Words that say the bones are out.
const BONED: [&str; 5] = ["boned", "boneless", "bone out", "off the bone", "filleted"];

/// Share thrown away in preparation: none of what is used unpeeled or whole, or goes along as bone.
pub(super) fn refuse(food: &Food, words: &str) -> f64 {
    let goes_in_whole = ["unpeeled", "skin on", "skins on", "scrubbed"]
        .iter()
        .any(|said| has(words, said));
    let bones_go_along = food.behaviour.inedible.is_some_and(|share| share > 0.0);
    if goes_in_whole || bones_go_along || is_bought_so(food, words) {
        return 0.0;
    }
    food.refuse
        .filter(|share| share.is_finite())
        .map_or(0.0, |share| share.clamp(0.0, 0.95))
}

/// Whether the work has been done in the shop: what the butcher or fishmonger has boned is weighed boned, nuts are sold
/// shelled unless the line says otherwise, and stoned prunes stoned.
fn is_bought_so(food: &Food, words: &str) -> bool {
    let said = |list: &[&str]| list.iter().any(|said| has(words, said));
    match food.kind {
        Kind::Meat | Kind::Poultry | Kind::Fish => said(&BONED),
        Kind::Nut => !said(&["in the shell", "in their shells", "unshelled"]),
        Kind::DriedFruit => said(&["stoned", "pitted"]),
        _ => false,
    }
}

/// Share of bone and shell: none when the line says it is taken out.
pub(super) fn inedible(food: &Food, words: &str) -> f64 {
    let taken_out = BONED.iter().any(|said| has(words, said)) || has(words, "shelled");
    let share = food.behaviour.inedible.filter(|share| share.is_finite()).unwrap_or(0.0);
    if taken_out {
        0.0
    } else if gives_off(food) {
        bone_mineral(food)
    } else {
        share.clamp(0.0, 1.0)
    }
}

/// Whether nothing of a food is eaten, but something of it passes into the liquid: bones for stock.
fn gives_off(food: &Food) -> bool {
    let behaviour = &food.behaviour;
    behaviour.inedible.is_some_and(|share| share >= 1.0) && behaviour.renders.is_some()
}

/// The mineral of a bone: its ash, which stays behind whatever is done.
fn bone_mineral(food: &Food) -> f64 {
    matter::hundred_grams(food).kg(Stuff::Ash) / 0.1
}

/// Time of one pair of hands: each work that is said, by the food's own row or by the common one.
pub(super) fn minutes_of_work(food: &Food, words: &str, purchased: Mass) -> Duration {
    let mut done: Vec<&str> = Vec::new();
    let mut minutes = 0.0;
    // The longest words of a work hold: 'finely chopped' is not 'chopped' as well.
    let mut rows: Vec<_> = table::WORK.rows().filter(|row| has(words, row.text("words"))).collect();
    rows.sort_by_key(|row| std::cmp::Reverse(row.text("words").len()));
    for row in rows {
        let work = row.text("work");
        let cutting = |work: &str| matches!(work, "chop" | "slice" | "grate");
        if !cutting(work) && is_bought_so(food, words) {
            continue;
        }
        if done
            .iter()
            .any(|known| *known == work || (cutting(known) && cutting(work)))
        {
            continue;
        }
        done.push(work);
        let own = food
            .preparation
            .iter()
            .find(|(name, _)| name == work)
            .map(|(_, minutes)| *minutes);
        minutes += own.or_else(|| row.number("minutes_per_kg")).unwrap_or(0.0) * purchased.kilograms();
    }
    let minutes: f64 = if minutes.is_finite() { minutes } else { 0.0 };
    Duration::from_minutes(minutes.clamp(0.0, 600.0))
}
