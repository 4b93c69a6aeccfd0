//! Divided amounts that do not add up.

use potwright_manuscript::{Quantity, Share};
use potwright_measure::Measures;

use crate::usage::{Use, name, uses};
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "L04",
    name: "divided amounts that do not add up",
    finds: "A food taken in named parts whose sum is not what the list says.",
    why: "Either something is left over or the cook runs short in the middle.",
    fires: "Onion gravy\n\n4 tbsp oil\n2 onions, sliced\n\nHeat 1 tbsp of the oil in a pan and fry the onions for 10 minutes. Stir in 2 tbsp of the oil.\n",
    silent: "Onion gravy\n\n3 tbsp oil\n2 onions, sliced\n\nHeat 1 tbsp of the oil in a pan and fry the onions for 10 minutes. Stir in 2 tbsp of the oil.\n",
    instead: "Make the parts add up, or say 'the remaining' for the last.",
    source: "arithmetic",
    check,
};

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let recipe = manuscript.recipe;
    let mut queries = Vec::new();
    for (index, line) in recipe.ingredients.iter().enumerate() {
        let Some(listed) = line.quantity else {
            continue;
        };
        let uses = uses(recipe, index);
        let Some(taken) = taken_share(&uses, listed) else {
            continue;
        };
        // 'The remaining' is as much as is left: only more than all there is cannot be.
        let adds_up = if taken.rest {
            taken.low <= 1.0
        } else {
            (taken.low..=taken.high).contains(&1.0)
        };
        if adds_up || line.plus_more.is_some() {
            continue;
        }
        let (low, high) = (taken.low * 100.0, taken.high * 100.0);
        let percent = if high - low < 1.0 {
            format!("{low:.0} %")
        } else {
            format!("{low:.0} to {high:.0} %")
        };
        queries.push(Query {
            code: RULE.code.into(),
            weight: Weight::WorthALook,
            span: line.span,
            asks: format!(
                "Do the parts of the {} add up? The method does not take what the list says.",
                name(line)
            ),
            because: format!("the parts named come to {percent} of the amount on the list"),
            try_words: None,
            see: uses.iter().map(|one| (one.span, "taken here".into())).collect(),
        });
    }
    queries
}

/// Low and high end of the share of the listed amount that the named parts come to.
struct Taken {
    low: f64,
    high: f64,
    /// What is left over is taken too.
    rest: bool,
}

/// `None` unless every use names its part.
fn taken_share(uses: &[Use], listed: Quantity) -> Option<Taken> {
    if uses.len() < 2 {
        return None;
    }
    // Half a per cent forgives ⅓ printed as 0.33.
    let mut taken = Taken {
        low: -0.005,
        high: 0.005,
        rest: false,
    };
    for one in uses {
        match one.share {
            Share::Fraction(part) => {
                taken.low += part.to_f64();
                taken.high += part.to_f64();
            }
            Share::Measure(part) => {
                let (low, high) = ratio(part, listed)?;
                taken.low += low;
                taken.high += high;
            }
            Share::Rest => taken.rest = true,
            Share::Whole | Share::Some => return None,
        }
    }
    Some(taken)
}

/// The share that `part` is of `whole`, low and high end; `None` when they are not measured alike.
pub(super) fn ratio(part: Quantity, whole: Quantity) -> Option<(f64, f64)> {
    let factor = if part.unit == whole.unit {
        1.0
    } else {
        let (part, whole) = (part.unit?, whole.unit?);
        let volumes = part.volume(Measures::Us).zip(whole.volume(Measures::Us));
        let masses = part.mass(Measures::Us).zip(whole.mass(Measures::Us));
        let (part, whole) = volumes.or(masses)?;
        part.to_f64() / whole.to_f64()
    };
    let low = part.amount.low.to_f64() * factor / whole.amount.high.to_f64();
    let high = part.amount.high.to_f64() * factor / whole.amount.low.to_f64();
    (low.is_finite() && high.is_finite()).then_some((low, high))
}
