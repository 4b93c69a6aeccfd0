//! An allergen against the claim of the page.

use potwright_larder::{Allergen, Contains};
use potwright_manuscript::BlockKind;
use potwright_reckon::allergen_name;

use crate::prose::sentences;
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "S09",
    name: "allergen against a claim of the page",
    finds: "'Gluten-free', 'no nuts' and the like on a page whose foods hold the allergen, or may hold it.",
    why: "A reader with an allergy takes the page at its word.",
    fires: "Leek soup\n\nGluten-free and quick.\n\n3 leeks, sliced\n50 g plain flour\n1 litre water\n\nPut the leeks, flour and water in a pot and simmer for 20 minutes until soft.\n",
    silent: "Leek soup\n\nGluten-free and quick.\n\n3 leeks, sliced\n1 litre water\n\nPut the leeks and water in a pot and simmer for 20 minutes until soft.\n",
    instead: "Take the claim out, or change the food; where it hangs on the maker, 'read the packet'.",
    source: "the larder's allergen rows, of US and EU law",
    check,
};

/// Words of a claim, and what it denies.
const CLAIMS: &[(&str, &[Allergen])] = &[
    ("gluten|coeliac*|celiac*", &[Allergen::Wheat, Allergen::OtherGluten]),
    ("wheat", &[Allergen::Wheat]),
    ("dairy|milk|lactose", &[Allergen::Milk]),
    ("nut|nuts", &[Allergen::TreeNuts, Allergen::Peanuts]),
    ("peanut*|groundnut*", &[Allergen::Peanuts]),
    ("egg|eggs", &[Allergen::Eggs]),
    ("fish", &[Allergen::Fish]),
    ("shellfish", &[Allergen::Crustaceans, Allergen::Molluscs]),
    ("crustacean*", &[Allergen::Crustaceans]),
    ("soy|soya", &[Allergen::Soybeans]),
    ("sesame", &[Allergen::Sesame]),
    ("celery", &[Allergen::Celery]),
    ("mustard", &[Allergen::Mustard]),
    ("sulphite*|sulfite*", &[Allergen::Sulphites]),
];
/// How a claim is worded; `@` stands for the allergen.
const WORDED: &[&str] = &[
    "@ free",
    "free from|of … @",
    "no @ in",
    "no @ at all|anywhere|whatever",
    "without … @",
    "contains|has|holds|with|there's no @",
    "not a|any … @",
    "suitable|safe|fine|fit|good … @",
    "@ … can|may|need|eat|safe|fine|welcome",
    "avoid*|intoleran*|allerg* … @",
    "contains neither|no … @",
    "no … nor|or @",
    "off @",
    "@ allerg*|intoleran*|sufferer*",
    "not|never|doesn't|don't … contain|use … @",
];
/// A sentence that tells how to change the dish claims nothing of it as it stands.
const CHANGES: &[&str] = &[
    "make it|this",
    "version",
    "swap|replace|substitute|instead",
    "if you",
    "use … free",
    "choose|buy|look",
    "serve|with|tamari … free bread|crackers|pasta",
    "to make",
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let mut queries = Vec::new();
    for sentence in sentences(manuscript.recipe, manuscript.text) {
        if sentence.part == BlockKind::Variation
            || sentence.part == BlockKind::Step
            || sentence.says(CHANGES)
            || sentence.says(&["not|isn't|never … free", "not suitable|safe"])
        {
            continue;
        }
        for (words, denied) in CLAIMS {
            let phrases: Vec<String> = WORDED.iter().map(|worded| worded.replace('@', words)).collect();
            let phrases: Vec<&str> = phrases.iter().map(String::as_str).collect();
            let rows = manuscript
                .reckoned
                .dossier
                .allergens
                .iter()
                .filter(|row| denied.contains(&row.allergen));
            // Lactose is not all of milk, but butter and cream hold it.
            let worst = rows
                .max_by_key(|row| row.contains)
                .filter(|row| row.contains != Contains::No);
            let (Some(span), Some(row)) = (sentence.find(&phrases), worst) else {
                continue;
            };
            let name = allergen_name(row.allergen);
            let causes = row.causes.join(", ");
            queries.push(if row.contains == Contains::Yes {
                RULE.query(
                    Weight::MustSettle,
                    span,
                    format!("Can this be said? The dish holds {name}."),
                    format!("it comes from {causes}"),
                )
            } else {
                RULE.query(
                    Weight::WorthALook,
                    span,
                    format!("Is this sure? It is not known to be free of {name}."),
                    format!("it hangs on {causes}: read the packet"),
                )
            });
        }
    }
    queries
}
