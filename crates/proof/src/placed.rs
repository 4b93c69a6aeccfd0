//! Where a lot of the simulation stands in the writer's words.

use potwright_larder::Kind;
use potwright_manuscript::{Minutes, Operation, Span};
use potwright_pot::{Aim, Doing, Part};
use potwright_reckon::Reckoned;

use crate::Manuscript;
use crate::cooked::printed;
use crate::remedy::first_that_holds;

/// The line of the list a lot comes from.
pub(crate) fn line_of(manuscript: &Manuscript<'_>, lot: usize) -> Option<Span> {
    let ingredient = manuscript.reckoned.process.lots.get(lot)?.ingredient?;
    Some(manuscript.recipe.ingredients.get(ingredient)?.span)
}

/// The vessel a lot is in while each act goes on; none before it goes in and once it was thrown away.
pub(crate) fn vessels_of(manuscript: &Manuscript<'_>, lot: usize) -> Vec<Option<usize>> {
    let process = &manuscript.reckoned.process;
    let pieces = process.lots.get(lot).is_some_and(|lot| lot.pieces.is_some());
    let goes = |what: &Part| match what {
        Part::All => true,
        Part::Liquid => !pieces,
        Part::Solids => pieces,
        Part::Lots(lots) => lots.contains(&lot),
        Part::Share(share) => *share > 0.5,
    };
    let mut now = None;
    let mut all = Vec::with_capacity(process.acts.len());
    for act in &process.acts {
        match &act.doing {
            Doing::Add(portions) if portions.iter().any(|portion| portion.lot == lot) => now = Some(act.vessel),
            Doing::Transfer { to, what } if now == Some(act.vessel) && goes(what) => now = Some(*to),
            Doing::Discard(what) if now == Some(act.vessel) && goes(what) => now = None,
            _ => {}
        }
        all.push(now);
    }
    all
}

/// The words of the heating that does most for a lot: the longest of those that say how long or until when, else the
/// longest of all. Warming up is no cooking.
pub(crate) fn cooking_of<'a>(manuscript: &Manuscript<'a>, lot: usize) -> Option<&'a Operation> {
    let reckoned = manuscript.reckoned;
    let places = vessels_of(manuscript, lot);
    let acts = reckoned.process.acts.iter().zip(&reckoned.trace.acts).zip(&places);
    let heated = acts.filter_map(|((act, times), place)| match &act.doing {
        Doing::Cook(stretch) if *place == Some(act.vessel) && stretch.aim != Aim::Off => {
            let operation = manuscript.recipe.operations.get(act.operation?)?;
            Some((operation, times.end_s - times.start_s))
        }
        _ => None,
    });
    let said = |operation: &Operation| operation.minutes.is_some() || operation.core.is_some();
    let rank = |(operation, seconds): &(&Operation, f64)| (said(operation), *seconds);
    let longest = heated.max_by(|a, b| {
        let (a, b) = (rank(a), rank(b));
        a.0.cmp(&b.0).then(a.1.total_cmp(&b.1))
    })?;
    Some(longest.0)
}

/// Whether it is a bread or a cake, with a salt and a body of its own: a fifth and more of what goes in is flour (common
/// practice, no source).
pub(crate) fn is_dough(manuscript: &Manuscript<'_>) -> bool {
    let reckoned = manuscript.reckoned;
    let lots = reckoned.process.lots.iter().zip(&reckoned.trace.lot_kg);
    let flour: f64 = lots.filter(|(lot, _)| lot.kind == Kind::Flour).map(|(_, kg)| kg).sum();
    flour > 0.2 * reckoned.trace.lot_kg.iter().sum::<f64>()
}

/// Longer times in the place of the page's, the first with which the page cooked again does what it should.
pub(crate) fn longer(
    manuscript: &Manuscript<'_>,
    minutes: &Minutes,
    holds: impl Fn(&Reckoned) -> bool,
) -> Option<String> {
    let words = [1.25, 1.5, 2.0, 3.0, 4.0, 6.0, 8.0, 12.0].map(|factor| printed(minutes.high * factor));
    first_that_holds(manuscript, minutes.span, words, |_, reckoned| holds(reckoned))
}
