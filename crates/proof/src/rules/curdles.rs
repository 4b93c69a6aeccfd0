//! Milk, yoghurt, cheese or egg heated past curdling.

use potwright_larder::Kind;
use potwright_manuscript::{HeatWord, Span, Target};
use potwright_pot::{Aim, Curdling, Doing, Happening};

use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "D07",
    name: "milk or yolk past curdling",
    finds: "Milk that boils or meets acid, yoghurt, egg and cheese above the temperature at which they separate, and a pot that boils against the page's own word.",
    why: "Curdled is curdled: nothing brings it back.",
    fires: "Tomato soup\n\n400 g tinned tomatoes\n500 ml whole milk\n\nPut the tomatoes and milk in a pot, bring to the boil and boil for 5 minutes.\n",
    silent: "Leek soup\n\n3 leeks, sliced\n1 litre water\n\nPut the leeks and water in a pot and simmer for 20 minutes until soft.\n",
    instead: "Off the heat, below the temperature named, or bound with starch.",
    source: "emulsions of the simulation",
    check,
};

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let reckoned = manuscript.reckoned;
    let mut queries: Vec<Query> = Vec::new();
    for event in &reckoned.trace.events {
        let Some(act) = reckoned.process.acts.get(event.act) else {
            continue;
        };
        let boils = matches!(&act.doing, Doing::Cook(stretch) if matches!(stretch.aim, Aim::Boil));
        let because = match event.what {
            Happening::Curdles { what, temp_c } => format!("{} at {temp_c:.0} °C", words(what)),
            Happening::BoiledThoughForbidden => "it boils, and the page says that it must not".to_owned(),
            Happening::DairyHot(temp_c) if boils => {
                format!("milk is at {temp_c:.0} °C: it rises, catches and may curdle")
            }
            _ => continue,
        };
        let stirred = matches!(
            event.what,
            Happening::Curdles {
                what: Curdling::Egg,
                ..
            }
        );
        let hot = boils_later(manuscript, event.act, event.vessel);
        // Warm egg that was stirred in off the heat sets in the first minute or not at all: only boiling it on is asked about.
        let Some(span) = (if stirred { hot.last().copied() } else { act.span }) else {
            continue;
        };
        if queries.iter().any(|query| query.span == span) {
            continue;
        }
        let mut query = RULE.query(
            Weight::WorthALook,
            span,
            "Does it stay smooth at this heat? By computation it may curdle.",
            format!("{because}; central run"),
        );
        query.see = fragile(manuscript);
        query
            .see
            .extend(hot.into_iter().map(|place| (place, "it boils here".into())));
        queries.push(query);
    }
    queries.truncate(2);
    queries
}

/// Where a vessel is boiled, simmered or heated hard from an act on.
fn boils_later(manuscript: &Manuscript<'_>, from: usize, vessel: usize) -> Vec<Span> {
    let acts = manuscript.reckoned.process.acts.iter().skip(from);
    let hot = acts.filter(|act| match &act.doing {
        Doing::Cook(stretch) => {
            let gentle = matches!(
                stretch.aim,
                Aim::Off
                    | Aim::BelowBoil
                    | Aim::Hold(_)
                    | Aim::Setting(HeatWord::Off | HeatWord::Low | HeatWord::MediumLow | HeatWord::Lower)
            );
            act.vessel == vessel && !gentle
        }
        _ => false,
    });
    hot.filter_map(|act| act.span).collect()
}

const fn words(what: Curdling) -> &'static str {
    match what {
        Curdling::MilkWithAcid => "milk or thin cream meets enough acid to curdle",
        Curdling::Cultured => "yoghurt or soured cream separates",
        Curdling::Egg => "egg that was stirred in curdles",
        Curdling::Cheese => "cheese may string and let go of its fat",
    }
}

/// Where the method puts in what may curdle.
fn fragile(manuscript: &Manuscript<'_>) -> Vec<(Span, String)> {
    let lots = &manuscript.reckoned.process.lots;
    let soft = |ingredient: usize| {
        lots.iter()
            .any(|lot| lot.ingredient == Some(ingredient) && matches!(lot.kind, Kind::Milk | Kind::Egg | Kind::Cheese))
    };
    let foods = manuscript
        .recipe
        .operations
        .iter()
        .flat_map(|operation| &operation.foods);
    foods
        .filter(|food| matches!(food.target, Target::Ingredient { index, .. } if soft(index)))
        .map(|food| (food.words.span, "goes in here".to_owned()))
        .collect()
}
