//! Pots, pans and dishes: what they hold, and their area.

use potwright_larder::Kind;
use potwright_manuscript::{Operation, Span, Target, Verb};

use super::contents::Contents;
use super::{About, Warning, WarningKind, in_dish, in_oven, minutes, number, percent, short, steps, whole_up};
use crate::convert::food::Known;
use crate::convert::scan::{figures, skip, word_at};

/// How full a pot is made: two thirds to four fifths (common practice, no source).
const FILLED: (f64, f64) = (2.0 / 3.0, 0.8);

/// Whether the pot holds it; the one the page names, else the largest of the kitchen.
pub(super) fn pot(about: &About<'_>, contents: &Contents) -> Option<Warning> {
    let litres = contents.litres;
    if !about.has_a_pot() || litres <= 0.0 {
        return None;
    }
    let (holds, called) = pot_at_hand(about)?;
    let unweighed = if contents.unweighed.is_empty() {
        String::new()
    } else {
        format!(
            " Not counted, for no weight is on record: {}.",
            contents.unweighed.join(", ")
        )
    };
    if litres <= holds * FILLED.0 {
        return None;
    }
    let (least, most) = (
        whole_up(litres / (holds * FILLED.1)),
        whole_up(litres / (holds * FILLED.0)),
    );
    let fillings = if least == most {
        format!("{least}")
    } else {
        format!("{least} to {most}")
    };
    let cure = if most > 1.0 {
        format!(
            "that is {fillings} fillings, or one pot of {} to {} litres",
            short((litres / FILLED.1).ceil()),
            short((litres / FILLED.0).ceil())
        )
    } else {
        "it will be full".to_owned()
    };
    let text = format!(
        "The pot: about {} litres go in at most. Filled to two thirds or four fifths, {called} takes {} to {}: {cure}.{unweighed}",
        short(litres),
        short(holds * FILLED.0),
        short(holds * FILLED.1)
    );
    Some(Warning::plain(WarningKind::Pot, text, "pot"))
}

/// Litres to the rim and what it is called.
fn pot_at_hand(about: &About<'_>) -> Option<(f64, String)> {
    if let Some(named) = named_litres(about) {
        return Some((named, format!("the {}-litre pot named", short(named))));
    }
    let pots = about.kitchen.pots.iter().map(|pot| (pot.litres(), &pot.name));
    let (litres, name) = pots.max_by(|a, b| a.0.total_cmp(&b.0))?;
    Some((litres, format!("the largest pot here ({name})")))
}

/// The largest pot that the method or a note to the desk gives in litres or quarts.
fn named_litres(about: &About<'_>) -> Option<f64> {
    /// Litres of a US quart: 231/4 cubic inches of 2.54³ cm³.
    const QUART: f64 = 0.946_352_946;
    let text = about.setting.text;
    let notes = about.recipe.desk_notes.iter().map(|note| note.words.span);
    let vessels = about
        .recipe
        .operations
        .iter()
        .filter_map(|operation| operation.into.as_ref().map(|into| into.words.span));
    let in_words = |span: Span| {
        let found = figures(text, span).into_iter().filter_map(move |figure| {
            let word = word_at(text, skip(text, figure.span.end, &[' ', '-', '‑'])).to_lowercase();
            let litres = match word.as_str() {
                "l" | "litre" | "litres" | "liter" | "liters" => 1.0,
                "qt" | "quart" | "quarts" => QUART,
                _ => return None,
            };
            Some(figure.value.to_f64() * litres)
        });
        found.collect::<Vec<_>>()
    };
    notes.chain(vessels).flat_map(in_words).max_by(f64::total_cmp)
}

/// Baking dishes keep their depth when their area goes with the batch.
pub(super) fn depth(about: &About<'_>) -> Option<Warning> {
    let baked = about.operations(|operation| in_dish(operation) && !in_oven(operation));
    if baked.is_empty() {
        return None;
    }
    let at: Vec<usize> = baked.iter().map(|operation| operation.step).collect();
    let side = libm::sqrt(about.factor());
    let side = if about.bigger() {
        format!("{} times", short(side))
    } else {
        percent(side)
    };
    let text = format!(
        "Dish and tray ({}): {} the area keeps the depth, {side} as wide and as long; deeper, it takes longer and browns less.",
        steps(&at),
        about.times()
    );
    Some(Warning::at(WarningKind::Depth, at, text, "depth"))
}

/// Browning goes by area: batches in the same pan.
pub(super) fn browning(about: &About<'_>) -> Vec<Warning> {
    if !about.bigger() {
        return Vec::new();
    }
    let mut all: Vec<Warning> = Vec::new();
    for operation in about.operations(|operation| browns(about, operation)) {
        let before = operation.repeat.as_ref().and_then(|repeat| repeat.times).unwrap_or(1);
        let batches = whole_up(f64::from(before) * about.factor());
        let was = if before == 1 {
            "one batch becomes".to_owned()
        } else {
            format!("{before} batches become")
        };
        let time = operation.minutes.as_ref().map_or(String::new(), |m| {
            let (low, high) = (m.low * batches, m.high * batches);
            format!(", {} in all at {} each", minutes(low, high), minutes(m.low, m.high))
        });
        let text = format!(
            "Browning ({}): {was} {} in the same pan{time}. A pan of twice the area halves it; fuller, it stews.",
            steps(&[operation.step]),
            number(batches)
        );
        all.push(Warning::at(
            WarningKind::Browning,
            vec![operation.step],
            text,
            "browning",
        ));
    }
    let soft = about.operations(|operation| {
        matches!(operation.verb, Verb::Sweat | Verb::Saute | Verb::Fry)
            && !browns(about, operation)
            && operation.minutes.as_ref().is_some_and(|minutes| minutes.high >= 4.0)
    });
    if !soft.is_empty() {
        let at: Vec<usize> = soft.iter().map(|operation| operation.step).collect();
        let text = format!(
            "Sweating and frying ({}): a layer {} as deep in the same pan gives off its water more slowly and takes \
             longer. Use the widest pan, or two.",
            steps(&at),
            about.times()
        );
        all.push(Warning::at(WarningKind::Browning, at, text, "browning"));
    }
    all
}

/// 'Brown', done in batches, or fried flesh.
fn browns(about: &About<'_>, operation: &Operation) -> bool {
    let batches = operation
        .repeat
        .as_ref()
        .is_some_and(|repeat| repeat.words.text.contains("batch"));
    let flesh = || {
        operation.foods.iter().any(|food| match &food.target {
            Target::Ingredient { index, item } => about.ingredient(*index).is_some_and(|line| {
                let known = Known::of(about.setting.larder, line, line.items.get(*item));
                matches!(
                    known.kind(),
                    Some(Kind::Meat | Kind::Bacon | Kind::Sausage | Kind::Poultry | Kind::Fish)
                )
            }),
            _ => false,
        })
    };
    match operation.verb {
        Verb::Brown => true,
        Verb::Fry | Verb::Saute => batches || flesh(),
        _ => false,
    }
}
