//! Vegetables, grain and pasta that come out firm or mushy.

use potwright_larder::Kind;
use potwright_pot::{Doing, PieceTrace};

use crate::placed::{cooking_of, line_of, longer};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "D03",
    name: "vegetable firm or mushy",
    finds: "Vegetables, grain or pasta cooked in liquid that are far from tender at the end, or several times past it though the dish shows them as pieces.",
    why: "Half-raw potatoes and grey mush are both the recipe's fault.",
    fires: "Potato soup\n\n600 g potatoes, cut into 3 cm chunks\n1 litre water\n\nBring the water to the boil in a pot. Add the potatoes and simmer for 4 minutes. Serve.\n",
    silent: "Potato soup\n\n600 g potatoes, cut into 2 cm chunks\n1 litre water\n\nBring the water to the boil in a pot. Add the potatoes and simmer for 18 minutes until tender. Serve.\n",
    instead: "A time that fits the size, or another size.",
    source: "softening of the simulation: times of cookery books at a simmer (rule of thumb)",
    check,
};

/// Shares of the way to tender: below is firm, above is mush (a word is a factor of 1.5 wide; common practice, no source).
const FIRM: f64 = 0.5;
const MUSHY: f64 = 6.0;

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let reckoned = manuscript.reckoned;
    let crushed = reckoned
        .process
        .acts
        .iter()
        .any(|act| matches!(act.doing, Doing::Puree(_)));
    let pieces = reckoned.trace.pieces.iter().filter(|piece| served(manuscript, piece));
    pieces
        .filter_map(|piece| {
            let lot = reckoned.process.lots.get(piece.lot)?;
            let tender = piece.tender?;
            let grown = matches!(lot.kind, Kind::Vegetable | Kind::Root | Kind::Grain | Kind::Pasta);
            let long = matches!(lot.kind, Kind::Pasta | Kind::Grain | Kind::Vegetable);
            (grown && lot.doubt.is_none() && (tender < FIRM || (tender > MUSHY && long && !crushed)))
                .then_some((piece, tender))
        })
        .filter_map(|(piece, tender)| of_piece(manuscript, piece, tender))
        .collect()
}

/// Whether it is in the dish, and was meant to be cooked: what never came near the boil is eaten raw.
fn served(manuscript: &Manuscript<'_>, piece: &PieceTrace) -> bool {
    let trace = &manuscript.reckoned.trace;
    piece.hottest_centre_c > 60.0 && trace.served_pieces.iter().any(|served| served.lot == piece.lot)
}

fn of_piece(manuscript: &Manuscript<'_>, piece: &PieceTrace, tender: f64) -> Option<Query> {
    let lot = manuscript.reckoned.process.lots.get(piece.lot)?;
    let line = line_of(manuscript, piece.lot);
    let heat = cooking_of(manuscript, piece.lot);
    let span = heat.map(|operation| operation.span).or(line)?;
    let state = if tender < FIRM { "still firm" } else { "mush" };
    let because = format!(
        "{:.0} % of the way to tender by computation (rule of thumb, central run)",
        100.0 * tender
    );
    let mut query = RULE.query(
        Weight::WorthALook,
        span,
        format!("Are the {} done right here? They come out {state}.", lot.name),
        because,
    );
    if let (true, Some(minutes)) = (tender < FIRM, heat.and_then(|operation| operation.minutes.as_ref())) {
        let lot = piece.lot;
        query.try_words = longer(manuscript, minutes, |again| {
            again
                .trace
                .pieces
                .iter()
                .any(|piece| piece.lot == lot && piece.tender.is_some_and(|tender| tender >= 1.0))
        });
    }
    query.see.extend(line.map(|line| (line, "on the list".into())));
    Some(query)
}
