//! Starch that stays under its gelatinisation temperature.

use potwright_larder::Kind;
use potwright_pot::{Doing, Stuff};

use crate::placed::{is_dough, line_of};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "D08",
    name: "starch under its gelatinisation temperature",
    finds: "Flour or another starch stirred into a liquid that does not get hot enough, or not for long enough, to swell it.",
    why: "It tastes of raw flour and does not thicken.",
    fires: "Leek soup\n\n3 leeks, sliced\n1 litre water\n40 g cornflour\n\nPut the leeks and water in a pot and simmer for 20 minutes until soft. Take the pot off the heat and let it stand for 60 minutes. Stir in the cornflour. Serve.\n",
    silent: "Leek soup\n\n3 leeks, sliced\n1 litre water\n40 g cornflour\n\nPut the leeks, water and cornflour in a pot and simmer for 20 minutes until soft.\n",
    instead: "Bring it to a simmer after the starch went in.",
    source: "gelatinisation ranges of the simulation (pot/data/gelatinisation.tsv)",
    check,
};

/// Native starch in the finished liquid, share of it and share of all its starch, that is worth a word (common practice, no
/// source).
const SOME: f64 = 0.003;
const MOST: f64 = 0.4;

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let (process, trace) = (&manuscript.reckoned.process, &manuscript.reckoned.trace);
    let liquid = &trace.served_liquid;
    let (raw, done) = (liquid.kg(Stuff::Starch), liquid.kg(Stuff::GelatinisedStarch));
    if raw < SOME * liquid.total_kg()
        || raw < MOST * (raw + done)
        || manuscript.reckoned.dossier.body.word.is_none()
        || is_dough(manuscript)
    {
        return Vec::new();
    }
    let thickens = |lot: usize| {
        process
            .lots
            .get(lot)
            .is_some_and(|lot| lot.kind == Kind::Flour || (lot.starch.is_some() && lot.pieces.is_none()))
    };
    let found = process.acts.iter().rev().find_map(|act| match &act.doing {
        Doing::Add(portions) => portions
            .iter()
            .map(|portion| portion.lot)
            .find(|lot| thickens(*lot))
            .map(|lot| (lot, act.span)),
        _ => None,
    });
    let Some((lot, span)) = found else { return Vec::new() };
    let line = line_of(manuscript, lot);
    let Some(place) = span.or(line) else { return Vec::new() };
    let name = process.lots.get(lot).map_or("", |lot| lot.name.as_str());
    let mut query = RULE.query(
        Weight::WorthALook,
        place,
        format!("Does the {name} get hot enough to thicken?"),
        format!(
            "{:.0} % of the starch in the liquid has not swollen; central run",
            100.0 * raw / (raw + done)
        ),
    );
    query.see.extend(line.map(|line| (line, "on the list".into())));
    vec![query]
}
