//! Fish or shellfish overcooked by the time the rest is done.

use potwright_larder::{Hazard, Kind};
use potwright_pot::PieceTrace;

use crate::placed::{cooking_of, line_of};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "D09",
    name: "fish or shellfish overcooked",
    finds: "Fish, prawns or mussels that are kept hot long after they are done: minutes above 60 °C at the centre of the pieces.",
    why: "It is dry and falls apart while the potatoes get tender.",
    fires: "Fish soup\n\n500 g cod fillet, cut into 3 cm chunks\n500 g potatoes, cut into 2 cm dice\n1 litre water\n\nPut the cod, potatoes and water in a pot, bring to the boil and simmer for 30 minutes until the potatoes are tender.\n",
    silent: "Fish soup\n\n500 g cod fillet, cut into 3 cm chunks\n1 litre water\n\nBring the water to a simmer in a pot. Add the cod and simmer gently for 5 minutes until it flakes.\n",
    instead: "Let it go in for the last minutes.",
    source: "minutes past done: common practice, no source (×/÷ 1.5)",
    check,
};

/// Centre from which fish is done and dries, °C, and the minutes there that are too many: fish, prawns, shells (common
/// practice, no source; ×/÷ 1.5). Shells get the 9 minutes that the safety rule may ask for.
const DONE_C: f64 = 60.0;
const FISH_MIN: f64 = 12.0;
const PRAWNS_MIN: f64 = 9.0;
const SHELLS_MIN: f64 = 15.0;
/// What is cooked long on purpose.
const LONG: &[&str] = &[
    "squid",
    "octopus",
    "cuttlefish",
    "whelk",
    "conch",
    "abalone",
    "eel",
    "bone",
    "head",
    "frame",
    "stock",
    "anchov",
    "shell",
    "trimming",
    "dried",
    "sauce",
    "paste",
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let reckoned = manuscript.reckoned;
    let served = |lot: usize| reckoned.trace.served_pieces.iter().any(|pieces| pieces.lot == lot);
    let pieces = reckoned.trace.pieces.iter().filter(|piece| served(piece.lot));
    pieces.filter_map(|piece| of_piece(manuscript, piece)).collect()
}

fn of_piece(manuscript: &Manuscript<'_>, piece: &PieceTrace) -> Option<Query> {
    let lot = manuscript.reckoned.process.lots.get(piece.lot)?;
    let name = lot.name.to_lowercase();
    if !matches!(lot.kind, Kind::Fish | Kind::Shellfish) || LONG.iter().any(|long| name.contains(long)) {
        return None;
    }
    let limit = match piece.hazard {
        Some(Hazard::Bivalve) => SHELLS_MIN,
        Some(Hazard::Crustacean) => PRAWNS_MIN,
        _ => FISH_MIN,
    };
    let hot_s: f64 = piece
        .centre
        .windows(2)
        .filter(|pair| pair[0].1 >= DONE_C && pair[1].1 >= DONE_C)
        .map(|pair| pair[1].0 - pair[0].0)
        .sum();
    let minutes = hot_s / 60.0;
    if minutes <= limit {
        return None;
    }
    let line = line_of(manuscript, piece.lot);
    let heat = cooking_of(manuscript, piece.lot).map(|operation| operation.span);
    let mut query = RULE.query(
        Weight::WorthALook,
        heat.or(line)?,
        format!("Is the {} not overcooked by then?", lot.name),
        format!(
            "its middle is above {DONE_C:.0} °C for {minutes:.0} minutes in the central run; {limit:.0} are plenty"
        ),
    );
    query.see.extend(line.map(|line| (line, "on the list".into())));
    let goes_in = manuscript.recipe.operations.iter().flat_map(|operation| &operation.foods).find(|food| matches!(food.target, potwright_manuscript::Target::Ingredient { index, .. } if lot.ingredient == Some(index)));
    query
        .see
        .extend(goes_in.map(|food| (food.words.span, "goes in here".into())));
    Some(query)
}
