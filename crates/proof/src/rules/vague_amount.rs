//! Vague amounts.

use potwright_larder::Kind;
use potwright_manuscript::{Ingredient, Share, Span, Target};
use potwright_measure::Unit;
use potwright_pot::Lot;

use crate::cooked::says;
use crate::usage::{expected, name};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "C09",
    name: "vague amounts",
    finds: "A food that the dish hangs on with no amount, or one like 'some' and 'a little'; and 'some of the stock' in the method. Of herbs, spices, salt and fat for the pan it is a matter of house style, of water and what is put on the table none.",
    why: "The reader cannot shop for 'some flour', and the dish cannot come out the same twice.",
    fires: "Leek soup\n\n2 leeks, sliced\nsome flour\n1 litre stock\n\nPut the leeks in a pot, stir in the flour, pour in the stock and simmer for 20 minutes until tender.\n",
    silent: "Leek soup\n\n2 leeks, sliced\n30 g flour\n1 litre stock\n\nPut the leeks in a pot, stir in the flour, pour in the stock and simmer for 20 minutes until tender.\n",
    instead: "Weigh what the tested dish took, and print that, if need be as a range.",
    source: "common practice of test kitchens, no source",
    check,
};

/// Measures that hold what one hand or one eye makes of them.
const LOOSE: [Unit; 8] = [
    Unit::Bit,
    Unit::Glass,
    Unit::Glug,
    Unit::Handful,
    Unit::Knob,
    Unit::Splash,
    Unit::Spoonful,
    Unit::Thumb,
];

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let mut queries = on_the_list(manuscript);
    queries.extend(in_the_method(manuscript));
    queries
}

fn on_the_list(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let mut queries: Vec<Query> = Vec::new();
    for (index, line) in manuscript.recipe.ingredients.iter().enumerate() {
        if !expected(line) || line.to_taste || line.instead_of.is_some() || line.part_of.is_some() {
            continue;
        }
        let Some(because) = vague(line) else { continue };
        let lots = &manuscript.reckoned.process.lots;
        let lot = lots.iter().find(|lot| lot.ingredient == Some(index));
        let Some(weight) = weight(line, lot) else { continue };
        if queries.iter().any(|query| query.span == line.span) {
            continue;
        }
        queries.push(Query {
            code: RULE.code.into(),
            weight,
            span: line.span,
            asks: format!("How much {} does it take?", name(line)),
            because,
            try_words: None,
            see: Vec::new(),
        });
    }
    queries
}

/// What is vague about the amount of a line; none when it has one.
fn vague(line: &Ingredient) -> Option<String> {
    if let Some(open) = &line.open {
        return Some(format!("‘{}’ is no amount", open.words.text));
    }
    match line.quantity {
        None if line.also.is_empty() => Some("the line has no amount".to_owned()),
        Some(quantity) if quantity.unit.is_some_and(|unit| LOOSE.contains(&unit)) && line.also.is_empty() => {
            Some("this measure holds what each hand makes of it".to_owned())
        }
        Some(quantity) if quantity.unit == Some(Unit::Piece) && line.also.is_empty() && line.package.is_none() => {
            let sized = line.size.is_some();
            (!sized).then(|| "a piece may weigh anything".to_owned())
        }
        _ => None,
    }
}

/// How much hangs on it; none for water and what a cook takes as it comes.
fn weight(line: &Ingredient, lot: Option<&Lot>) -> Option<Weight> {
    let words = line.line.text.to_lowercase();
    let for_the_tin = says(
        &words,
        &[
            "greas*", "dust*", "tin", "frying", "brushing", "drizzl*", "finish*", "sprinkl*", "garnish*",
        ],
    );
    match lot.map(|lot| lot.kind) {
        _ if for_the_tin || line.optional => None,
        Some(Kind::Water) => line.open.is_some().then_some(Weight::HouseStyle),
        // Pepper, bay and parsley without an amount are the custom; 'a handful' of them is one.
        Some(Kind::Herb | Kind::Spice | Kind::Salt) if line.open.is_none() => None,
        Some(Kind::Herb | Kind::Spice | Kind::Salt | Kind::Oil) => Some(Weight::HouseStyle),
        _ if says(
            &words,
            &[
                "squeeze*", "grating*", "sprig*", "stalk*", "twist*", "drop*", "dash*", "strip*",
            ],
        ) =>
        {
            Some(Weight::HouseStyle)
        }
        Some(Kind::Leaf | Kind::Fat) if line.quantity.is_some() => Some(Weight::HouseStyle),
        _ => Some(Weight::WorthALook),
    }
}

/// 'Some of the stock' of a food whose part is never said.
fn in_the_method(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let recipe = manuscript.recipe;
    let mut queries = Vec::new();
    for operation in &recipe.operations {
        for food in &operation.foods {
            let (Target::Ingredient { index, .. }, Share::Some) = (&food.target, food.share) else {
                continue;
            };
            let Some(line) = recipe.ingredients.get(*index) else {
                continue;
            };
            let lots = &manuscript.reckoned.process.lots;
            let kind = lots
                .iter()
                .find(|lot| lot.ingredient == Some(*index))
                .map(|lot| lot.kind);
            if matches!(kind, Some(Kind::Herb | Kind::Spice | Kind::Salt | Kind::Water))
                || line.to_taste
                || !says(
                    &food.words.text.to_lowercase(),
                    &["some", "little", "bit", "splash", "part", "most"],
                )
            {
                continue;
            }
            queries.push(part(food.words.span, &name(line), line.span));
        }
    }
    queries
}

fn part(span: Span, name: &str, listed: Span) -> Query {
    Query {
        code: RULE.code.into(),
        weight: Weight::HouseStyle,
        span,
        asks: format!("How much of the {name} goes in here?"),
        because: "the part is not named".into(),
        try_words: None,
        see: vec![(listed, "the whole amount".into())],
    }
}
