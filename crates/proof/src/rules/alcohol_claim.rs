//! 'The alcohol cooks off' against the computed remainder.

use crate::prose::sentences;
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "D10",
    name: "'the alcohol cooks off' against the computed remainder",
    finds: "A claim that the alcohol is gone, over a dish in which some is left.",
    why: "Children, and those who must not have any, are told that there is none.",
    fires: "Wine broth\n\nThe alcohol cooks off, so children may have it.\n\n500 ml red wine\n1 litre stock\n\nPut the wine and stock in a pot and simmer for 10 minutes.\n",
    silent: "Wine broth\n\n500 ml red wine\n1 litre stock\n\nPut the wine and stock in a pot and simmer for 10 minutes.\n",
    instead: "'Most of the alcohol boils away', with the share that stays.",
    source: "alcohol balance of the simulation; USDA Table of Nutrient Retention Factors, Release 6 (2007), codes 5002 to 5009: 5 % is left after 2½ hours",
    check,
};

const GONE: &[&str] = &[
    "alcohol|booze|spirit … cook*|burn*|boil*|evaporat*|bubble*|simmer*|steam*|vanish*|disappear*|gone|goes|leave|leaves|left|off|flame*|drive*|driven",
    "cook*|burn*|boil*|simmer*|drive*|bubble*|flame* … alcohol|booze",
    "alcohol|spirit|booze … flown|fled|lost|away|out",
    "no|free|without … alcohol|booze",
    "alcohol free",
    "teetotal*",
    "not|none|nothing … alcohol|booze",
    "non alcoholic",
];
const WINE_GONE: &[&str] = &[
    "children|kids|little ones|toddlers … wine|beer|cider|brandy|stout|ale|sherry|alcohol",
    "wine|beer|cider|brandy|stout|ale|sherry|alcohol … children|kids|toddlers|pregnan*",
];
/// Percent of what went in that is worth a word.
const SOME_PERCENT: f64 = 1.0;

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let Some(kept) = &manuscript.reckoned.dossier.alcohol_kept else {
        return Vec::new();
    };
    let low = kept.spread.map_or(kept.value, |(low, _)| low);
    if low < SOME_PERCENT {
        return Vec::new();
    }
    let part = |sentence: &crate::prose::Sentence| sentence.find(GONE).or_else(|| sentence.find(WINE_GONE));
    let said = sentences(manuscript.recipe, manuscript.text);
    let claims = said
        .iter()
        .filter(|sentence| !sentence.says(&["most|some|much|half|part|harsh*|raw|sharp*|smell|taste"]));
    claims
        .filter_map(part)
        .map(|span| {
            let published = kept.because.as_deref().unwrap_or("");
            let grams = manuscript.reckoned.dossier.alcohol.display();
            RULE.query(
                Weight::WorthALook,
                span,
                "Is the alcohol really gone? Some of it stays.",
                format!(
                    "computed: {} of it is left, {grams} in a portion; {published}",
                    kept.display()
                ),
            )
        })
        .collect()
}
