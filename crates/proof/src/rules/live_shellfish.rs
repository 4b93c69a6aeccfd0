//! Live shellfish without the discard rule.

use potwright_larder::Hazard;
use potwright_reckon::Doneness;

use crate::placed::{cooking_of, line_of};
use crate::prose::sentences;
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "S04",
    name: "live shellfish without the discard rule",
    finds: "Mussels, clams and the like in their shells without both halves of the rule: what is broken or does not close when tapped goes before cooking, what stays shut goes after.",
    why: "A dead one makes ill, and nobody can tell once the pot is on the table.",
    fires: "Mussels\n\n2 kg live mussels\n300 ml cider\n\nPut the mussels and cider in a large pot, cover and cook over a high heat for 6 minutes until they open.\n",
    silent: "Mussels\n\n2 kg live mussels\n300 ml cider\n\nThrow away any mussels that are broken or do not close when tapped. Put the mussels and cider in a large pot, cover and cook over a high heat for 8 minutes until they open. Discard any that stay shut.\n",
    instead: "'Throw away any that are broken or do not close when tapped', and at the end 'throw away any that stay shut'.",
    source: "FDA advice on shellfish, as extension pages print it; FDA Food Code 3-202.19",
    check,
};

const GOES: &[&str] = &[
    "throw*|thrown|chuck*|toss* … away|out|aside",
    "discard*",
    "reject*",
    "bin",
    "get rid",
    "pick out",
    "do not|never eat|use|cook|serve",
    "don't eat|use|cook|serve",
    "leave out",
    "remove|lose|weed|cull*|ditch*|dump*|dispose",
];
const BEFORE: &[&str] = &[
    "broken|cracked|chipped|damaged|smashed|dead|gaping|gape|gapes|agape",
    "tap*",
    "not|n't|don't|doesn't|won't|refuse* … close|shut|closed",
    "are|is|already|stay|stays|remain|any|still open",
];
const AFTER: &[&str] = &[
    "shut|closed|unopened|clamped",
    "not|don't|doesn't|didn't|haven't|hasn't|won't|refuse*|fail*|failed … open|opened",
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let rows = manuscript.reckoned.dossier.doneness.iter();
    let live = rows.filter(|row| row.hazard == Some(Hazard::Bivalve) && in_the_shell(manuscript, row.lot));
    live.take(1).filter_map(|row| of_row(manuscript, row)).collect()
}

/// Shells are what is never eaten of it.
fn in_the_shell(manuscript: &Manuscript<'_>, lot: usize) -> bool {
    let lots = &manuscript.reckoned.process.lots;
    lots.get(lot).is_some_and(|lot| lot.inedible.grams() > 0.0)
}

fn of_row(manuscript: &Manuscript<'_>, row: &Doneness) -> Option<Query> {
    let said = sentences(manuscript.recipe, manuscript.text);
    let goes: Vec<_> = said.iter().filter(|sentence| sentence.says(GOES)).collect();
    let after = goes
        .iter()
        .any(|sentence| sentence.says(AFTER) && !sentence.says(&["tap*"]));
    let before = goes.iter().any(|sentence| sentence.says(BEFORE));
    let lacks = match (before, after) {
        (true, true) => return None,
        (false, true) => "before cooking: what is broken, or open and does not close when tapped",
        (true, false) => "after cooking: what has stayed shut",
        (false, false) => {
            "before cooking what is broken or does not close when tapped, and after it what has stayed shut"
        }
    };
    let line = line_of(manuscript, row.lot);
    let heat = cooking_of(manuscript, row.lot).map(|operation| operation.span);
    let span = if before { heat.or(line)? } else { line.or(heat)? };
    let mut query = RULE.query(
        Weight::MustSettle,
        span,
        format!("Could the page say which of the {} to throw away?", row.name),
        format!("it does not say what goes {lacks} ({})", row.source),
    );
    query.see.extend(
        line.into_iter()
            .chain(heat)
            .filter(|other| *other != span)
            .map(|place| (place, "the shellfish".into())),
    );
    query
        .see
        .extend(goes.iter().map(|sentence| (sentence.span, "what it says".into())));
    Some(query)
}
