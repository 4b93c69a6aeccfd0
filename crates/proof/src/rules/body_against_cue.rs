//! The body of the liquid against what the page says of it.

use potwright_larder::Kind;
use potwright_manuscript::BlockKind;
use potwright_reckon::BodyWord;

use crate::prose::sentences;
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "D02",
    name: "body against the cue",
    finds: "'Until it coats the spoon', 'thick', 'velvety' over a liquid that stays thin by its whole range; 'a clear, thin broth' over one that does not.",
    why: "The reader boils on and on for a sign that does not come.",
    fires: "Leek soup\n\n3 leeks, sliced\n1.5 litres water\n1 tsp salt\n\nPut the leeks, water and salt in a pot and simmer for 20 minutes, until the broth is thick and coats the back of a spoon.\n",
    silent: "Leek soup\n\n3 leeks, sliced\n1.5 litres water\n1 tsp salt\n\nPut the leeks, water and salt in a pot and simmer for 20 minutes until the leeks are soft.\n",
    instead: "The sign that comes, or more of what thickens.",
    source: "starch and purée of the simulation; the words are a rule of thumb of ours",
    check,
};

const THICK: &[&str] = &[
    "coat*|nap* … spoon|back",
    "coats|coating",
    "thick|thickened|thickens|thickly",
    "velvety|silky|creamy|unctuous",
    "consistency|body of … cream|gravy|custard",
    "like … cream|gravy|custard|porridge",
];
const STANDS: &[&str] = &[
    "stand* up",
    "holds its shape",
    "spoon … stand*",
    "like … porridge",
    "very thick",
    "so thick",
];
const THIN: &[&str] = &[
    "clear|thin|light|watery … broth|soup|liquid|consomme",
    "broth|soup|liquid … clear|thin|watery",
];
const NOT_THE_LIQUID: &[&str] = &[
    "thick|thickly sliced|cut|slice*|chunks|pieces|bottomed|based",
    "cm|mm|inch* thick",
    "thickest",
    "thickened|thicken with|later",
    "coat* … oil|butter|flour|fat",
    "syrup*|jam|glaze|caramel",
    "dough|batter|egg|eggs|yolk|yolks",
    "thick slices|pot|pan|base|bottom|yoghurt|yogurt|cream|paste|pieces|chunks",
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let reckoned = manuscript.reckoned;
    let body = &reckoned.dossier.body;
    let Some(word) = body.word else { return Vec::new() };
    // What egg, gelatine and sugar do to a liquid is not counted.
    if reckoned.process.lots.iter().any(|lot| lot.kind == Kind::Egg) {
        return Vec::new();
    }
    let (low, high) = body.range.unwrap_or((word, word));
    let said = sentences(manuscript.recipe, manuscript.text);
    let steps = said.iter().filter(|sentence| {
        matches!(sentence.part, BlockKind::Step | BlockKind::Headnote) && !sentence.says(NOT_THE_LIQUID)
    });
    let mut queries = Vec::new();
    for sentence in steps {
        let (span, wrong) = match (sentence.claims(STANDS), sentence.claims(THICK), sentence.claims(THIN)) {
            (Some(span), _, _) => (span, high < BodyWord::HoldsALine),
            (_, Some(span), _) => (
                span,
                high < BodyWord::LightCoat
                    || (coats(sentence.span.of(manuscript.text))
                        && high < BodyWord::CoatsTheSpoon
                        && body.range.is_some()),
            ),
            (_, _, Some(span)) => (span, low > BodyWord::LightCoat),
            _ => continue,
        };
        if wrong {
            let range = body.range.map_or_else(
                || "central run only".to_owned(),
                |(low, high)| format!("{} to {}", words(low), words(high)),
            );
            queries.push(RULE.query(
                Weight::WorthALook,
                span,
                "Does the liquid come to this? Its body was computed otherwise.",
                format!(
                    "computed: {} ({range}); thickener {} of flour's worth",
                    words(word),
                    body.thickener.display()
                ),
            ));
        }
    }
    queries.truncate(1);
    queries
}

fn coats(sentence: &str) -> bool {
    sentence.to_lowercase().contains("coat")
}

const fn words(body: BodyWord) -> &'static str {
    match body {
        BodyWord::Thin => "thin",
        BodyWord::LightCoat => "a light coat",
        BodyWord::CoatsTheSpoon => "coats the spoon",
        BodyWord::HoldsALine => "holds a line",
        BodyWord::Stands => "stands",
    }
}
