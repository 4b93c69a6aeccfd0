//! Food bottled, canned, vacuum-packed or kept warm without a tested process.

use crate::prose::sentences;
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "S06",
    name: "bottled, canned, vacuum-packed or kept at room temperature without a tested process",
    finds: "Advice to seal the dish in jars, tins or bags, or to keep it unrefrigerated for days.",
    why: "Without air and cold the spores of Clostridium botulinum grow and make a toxin nobody tastes.",
    fires: "Leek soup\n\n3 leeks, sliced\n1 litre water\n1 tsp salt\n\nPut the leeks, water and salt in a pot and simmer for 20 minutes until soft. Blend.\n\nLadle it into sterilised jars and seal them: it keeps for months in the cupboard.\n",
    silent: "Leek soup\n\n3 leeks, sliced\n1 litre water\n1 tsp salt\n\nPut the leeks, water and salt in a pot and simmer for 20 minutes until soft. Blend.\n\nKeep it in the fridge.\n",
    instead: "Take it out, or print a tested process. This program gives none: national food authorities and extension services publish them.",
    source: "USDA Complete Guide to Home Canning (tested processes only); common advice of food authorities",
    check,
};

const PACKED: &[&str] = &[
    "vacuum|vac pack*|seal*|bag*",
    "vacuum",
    "sous vide",
    "cryovac*",
    "water bath can*|process*",
    "pressure can*",
    "canning|canner|home canned",
    "steril* … jar*|bottle*|kilner|tin*",
    "jar*|bottle* … seal*|steril*|cupboard|shelf|pantry|larder|months|cellar|process*|boiling water",
    "seal* … jar*|bottle*|lids|tins",
    "can it|them|this|the|any",
    "bottle it|them|this|any",
    "bottled … keep*|months|shelf",
    "hermetic*",
    "screw … lids|tops … hot|boiling|keep*",
    "shelf stable",
];
const WARM: &[&str] = &[
    "keep*|kept|store*|stored|last*|stay*|stand*|good|leave|live* … cupboard|pantry|larder|shelf|cellar|room temperature|unrefrigerated|without refrigerat*|out of the fridge|refrigerator",
    "room temperature|ambient … days|week*|month*",
    "no need|not need|doesn't need … fridge|refrigerat*|chill*",
    "days|week*|month* … cupboard|pantry|larder|shelf|cellar|counter|room temperature",
    "unrefrigerated",
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let said = sentences(manuscript.recipe, manuscript.text);
    let asked = said
        .iter()
        .filter(|sentence| sentence.claims(PACKED).is_some() || sentence.claims(WARM).is_some())
        .map(|sentence| sentence.span);
    asked
        .map(|span| {
            RULE.query(
                Weight::MustSettle,
                span,
                "Is there a tested process behind this? Without one food must not be sealed up or kept out of the cold.",
                "sealed or unrefrigerated, low-acid food can grow botulinum toxin; no process is computed here: food authorities and extension services publish tested ones",
            )
        })
        .collect()
}
