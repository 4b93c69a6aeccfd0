//! Pulses that do not come out soft.

use potwright_larder::Kind;
use potwright_pot::{Doing, Stuff};

use crate::placed::{cooking_of, line_of, longer, vessels_of};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "D04",
    name: "pulses not soft (acid or salt early)",
    finds: "Dried beans, peas or lentils not tender by computation, and such as meet tomatoes, wine, vinegar or lemon before they are soft.",
    why: "Acid holds their cell walls together: no further boiling makes them soft.",
    fires: "Bean pot\n\n400 g dried white beans\n2 litres water\n400 g tinned tomatoes\n\nPut the beans, tomatoes and water in a pot and simmer for 1 hour.\n",
    silent: "Lentil soup\n\n300 g red lentils\n1.5 litres water\n\nPut the lentils and water in a pot, bring to the boil and simmer for 40 minutes until soft.\n",
    instead: "Soak first, cook until soft, and add what is sour at the end.",
    source: "McGee, On Food and Cooking (2004), legumes, as the simulation has it",
    check,
};

/// Share of the way to tender from which a pulse is done enough, for a word is a factor of 1.5 wide.
const NOT_SOFT: f64 = 0.8;
/// Acid in what goes in, kilogram per kilogram of the pulses' vessel, that is worth a word (1 g/kg of water: pot/data/pulses.tsv).
const SOUR: f64 = 0.001;

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let reckoned = manuscript.reckoned;
    let pieces = reckoned.trace.pieces.iter();
    pieces
        .filter_map(|piece| {
            let lot = reckoned.process.lots.get(piece.lot)?;
            let dried = lot.kind == Kind::Pulse && lot.pieces.is_some_and(|pieces| pieces.absorbs.is_some());
            let tender = piece.tender.filter(|_| dried)?;
            let sour = sour_before(manuscript, piece.lot);
            let spread = reckoned
                .dossier
                .doneness
                .iter()
                .find(|row| row.lot == piece.lot)
                .and_then(|row| row.tender.as_ref()?.spread);
            let firm = spread.map_or(tender < NOT_SOFT, |(_, high)| high < 100.0);
            if !firm && (sour.is_none() || tender > 2.0) {
                return None;
            }
            let line = line_of(manuscript, piece.lot);
            let heat = cooking_of(manuscript, piece.lot);
            let (asks, because) = match sour.and_then(|sour| reckoned.process.lots.get(sour)) {
                Some(acid) => (
                    format!("Will the {} get soft with the {} in so early?", lot.name, acid.name),
                    "acid keeps their skins firm; ",
                ),
                None => (format!("Are the {} soft by then?", lot.name), ""),
            };
            let because = format!(
                "{because}{:.0} % of the way to tender by computation (rule of thumb)",
                100.0 * tender
            );
            let mut query = RULE.query(Weight::WorthALook, heat.map(|heat| heat.span).or(line)?, asks, because);
            if let (None, Some(minutes)) = (sour, heat.and_then(|heat| heat.minutes.as_ref())) {
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
            if let Some(sour) = sour {
                query
                    .see
                    .extend(line_of(manuscript, sour).map(|line| (line, "sour".into())));
                query
                    .see
                    .extend(adding(manuscript, sour).map(|span| (span, "goes in here".into())));
            }
            Some(query)
        })
        .collect()
}

/// The sourest lot that is with a pulse from before its longest cooking.
fn sour_before(manuscript: &Manuscript<'_>, pulse: usize) -> Option<usize> {
    let process = &manuscript.reckoned.process;
    let cooking = cooking_of(manuscript, pulse)?;
    let act = process.acts.iter().position(|act| {
        act.operation
            .and_then(|index| manuscript.recipe.operations.get(index))
            .is_some_and(|one| one.span == cooking.span)
            && matches!(act.doing, Doing::Cook(_))
    })?;
    let vessel = (*vessels_of(manuscript, pulse).get(act)?)?;
    let whole: f64 = manuscript
        .reckoned
        .trace
        .samples
        .iter()
        .find(|sample| sample.act >= act)?
        .vessels
        .iter()
        .find(|one| one.vessel == vessel)?
        .mass_kg;
    let acid = |lot: usize| {
        let entry = process.lots.get(lot)?;
        let share = entry.matter.kg(Stuff::Acid) / entry.matter.total_kg().max(1e-9);
        Some(share * manuscript.reckoned.trace.lot_kg.get(lot)?)
    };
    let with: Vec<(usize, f64)> = (0..process.lots.len())
        .filter(|lot| vessels_of(manuscript, *lot).get(act) == Some(&Some(vessel)))
        .filter_map(|lot| Some((lot, acid(lot)?)))
        .collect();
    let all: f64 = with.iter().map(|(_, kg)| kg).sum();
    let sourest = with.iter().max_by(|a, b| a.1.total_cmp(&b.1))?;
    (all > SOUR * whole && sourest.1 > 0.4 * all).then_some(sourest.0)
}

fn adding(manuscript: &Manuscript<'_>, lot: usize) -> Option<potwright_manuscript::Span> {
    let acts = &manuscript.reckoned.process.acts;
    acts.iter()
        .find(|act| matches!(&act.doing, Doing::Add(portions) if portions.iter().any(|portion| portion.lot == lot)))?
        .span
}
