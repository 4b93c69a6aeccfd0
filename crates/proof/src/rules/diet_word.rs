//! A diet word that the list contradicts.

use potwright_larder::Kind;
use potwright_manuscript::{BlockKind, Span};
use potwright_pot::Lot;

use crate::placed::line_of;
use crate::prose::{Sentence, sentences};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "S10",
    name: "diet word contradicted",
    finds: "'Vegetarian', 'vegan', 'meat-free', 'pescatarian', 'pork-free', 'halal' on a page whose foods are not.",
    why: "The reader serves it to somebody who trusts the word.",
    fires: "Vegan leek soup\n\n3 leeks, sliced\n50 g butter\n1 litre water\n\nPut the leeks, butter and water in a pot and simmer for 20 minutes until soft.\n",
    silent: "Vegan leek soup\n\n3 leeks, sliced\n1 litre water\n\nPut the leeks and water in a pot and simmer for 20 minutes until soft.\n",
    instead: "Change the food, or take the word out.",
    source: "the larder's kinds of food; common meaning of the words",
    check,
};

const VEGAN: &[&str] = &[
    "vegan*",
    "plant based",
    "no animal products|produce",
    "nothing … from an animal|animals",
    "free of|from animal",
    "animal free",
    "entirely plants|vegetable",
];
const VEGETARIAN: &[&str] = &[
    "vegetarian*",
    "veggie",
    "meat free|less",
    "meatless",
    "no meat",
    "without … meat",
    "lent|lenten|meatfree",
    "not a scrap|shred … meat",
];
const PORK: &[&str] = &["pork free", "no pork", "halal", "kosher", "without … pork"];
const CHANGES: &[&str] = &[
    "make it|this",
    "version",
    "swap|replace|substitute|instead",
    "if you",
    "leave out",
    "for vegetarians|vegans … use|leave",
    "isn't|not … vegetarian|vegan|veggie",
];
/// Animal foods whose kind does not say so.
const FLESH: &[&str] = &[
    "chicken",
    "beef",
    "veal",
    "lamb",
    "pork",
    "ham",
    "bacon",
    "fish",
    "anchov",
    "worcester",
    "gelatin",
    "lard",
    "suet",
    "dripping",
    "bone",
    "meat",
    "turkey",
    "duck",
    "goose",
    "prawn",
    "shrimp",
    "oyster",
    "chorizo",
    "pancetta",
];
const PIG: &[&str] = &[
    "pork",
    "ham",
    "bacon",
    "lard",
    "chorizo",
    "pancetta",
    "gammon",
    "prosciutto",
    "trotter",
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let said = sentences(manuscript.recipe, manuscript.text);
    let plain = said
        .iter()
        .filter(|sentence| !matches!(sentence.part, BlockKind::Variation | BlockKind::Step) && !sentence.says(CHANGES));
    plain.filter_map(|sentence| of_sentence(manuscript, sentence)).collect()
}

fn of_sentence(manuscript: &Manuscript<'_>, sentence: &Sentence) -> Option<Query> {
    let dossier = &manuscript.reckoned.dossier;
    if let Some(span) = sentence.find(VEGAN) {
        let causes = dossier.animal_causes.join(", ");
        return match dossier.animal {
            Some(true) => Some(contradicted(manuscript, span, &causes, &|lot: &Lot| {
                dossier.animal_causes.contains(&lot.name)
            })),
            None => Some(RULE.query(
                Weight::WorthALook,
                span,
                "Is this sure? Not all of it is known to be free of animal products.",
                format!("it hangs on {causes}"),
            )),
            Some(false) => None,
        };
    }
    let (span, holds): (Span, &dyn Fn(&Lot) -> bool) = match (sentence.find(VEGETARIAN), sentence.find(PORK)) {
        (Some(span), _) => (span, &|lot| is_flesh(lot)),
        (None, Some(span)) => (span, &|lot| {
            named(lot, PIG) && !named(lot, &["hammered", "champ", "graham"])
        }),
        (None, None) => return None,
    };
    let causes: Vec<&str> = manuscript
        .reckoned
        .process
        .lots
        .iter()
        .filter(|lot| holds(lot))
        .map(|lot| lot.name.as_str())
        .collect();
    (!causes.is_empty()).then(|| contradicted(manuscript, span, &causes.join(", "), holds))
}

fn contradicted(manuscript: &Manuscript<'_>, span: Span, causes: &str, holds: &dyn Fn(&Lot) -> bool) -> Query {
    let mut query = RULE.query(
        Weight::MustSettle,
        span,
        format!("Does this word hold? The list has {causes}."),
        format!("{causes}: of an animal, or forbidden by the word"),
    );
    let lots = manuscript.reckoned.process.lots.iter().enumerate();
    query.see = lots
        .filter(|(_, lot)| holds(lot))
        .filter_map(|(lot, _)| Some((line_of(manuscript, lot)?, "the food".into())))
        .collect();
    query
}

fn is_flesh(lot: &Lot) -> bool {
    let by_kind = matches!(
        lot.kind,
        Kind::Meat | Kind::Bacon | Kind::Sausage | Kind::Poultry | Kind::Fish | Kind::Shellfish
    );
    by_kind
        || (named(lot, FLESH)
            && !named(
                lot,
                &[
                    "mushroom",
                    "vegetarian",
                    "vegan",
                    "vegetable suet",
                    "champ",
                    "bonemeal",
                    "oyster plant",
                ],
            ))
}

fn named(lot: &Lot, stems: &[&str]) -> bool {
    let name = lot.name.to_lowercase();
    stems.iter().any(|stem| name.contains(stem))
}
