//! Short invented sentences and the operations they give.

use crate::{FoodRef, Operation, Recipe, Share, Target, read};

/// A page with this list and this method, read.
fn page(list: &str, method: &str) -> (String, Recipe) {
    let lines: Vec<&str> = list.split(';').map(str::trim).collect();
    let text = format!("A Dish\n\n{}\n\nMethod\n\n{method}\n", lines.join("\n"));
    let recipe = read(&text);
    (text, recipe)
}

fn food(recipe: &Recipe, food: &FoodRef) -> String {
    let name = match &food.target {
        Target::Ingredient { index, item } => recipe.ingredients[*index].items[*item].name.clone(),
        Target::Pot => "<pot>".to_owned(),
        Target::Component(name) => format!("<{name}>"),
        Target::Unlisted(name) => format!("?{name}"),
    };
    let share = match food.share {
        Share::Whole => String::new(),
        Share::Rest => " (rest)".to_owned(),
        Share::Some => " (some)".to_owned(),
        Share::Fraction(part) => format!(" ({part})"),
        Share::Measure(q) => format!(" ({} {})", q.amount, q.unit.map_or("-", |unit| unit.name())),
    };
    format!("{name}{share}")
}

/// 'add onions+leeks' and what else an operation says, in a fixed order.
fn show(recipe: &Recipe, op: &Operation) -> String {
    let foods = |list: &[FoodRef]| list.iter().map(|f| food(recipe, f)).collect::<Vec<_>>().join("+");
    let mut shown = op.verb.name().to_owned();
    let mut put = |text: String| {
        shown.push(' ');
        shown.push_str(&text);
    };
    if !op.foods.is_empty() {
        put(foods(&op.foods));
    }
    if let Some(vessel) = op.into.as_ref().filter(|vessel| !vessel.inferred) {
        put(format!("in:{}", vessel.words.text));
    }
    if let Some(heat) = op.heat {
        put(format!("{heat:?}").to_lowercase());
    }
    if let Some(temperature) = op.temperature {
        put(temperature.to_string());
    }
    if let Some(m) = &op.minutes {
        put(format!(
            "{}-{} min{}",
            m.low,
            m.high,
            if m.from_end { " from the end" } else { "" }
        ));
    }
    if let Some(cue) = &op.cue {
        put(format!("until:{}", cue.text));
    }
    if let Some(cover) = op.cover {
        put(format!("lid:{cover:?}").to_lowercase());
    }
    if !op.discard.is_empty() {
        put(format!("discard:{}", foods(&op.discard)));
    }
    if !op.keep.is_empty() {
        put(format!("keep:{}", foods(&op.keep)));
    }
    if let Some(repeat) = &op.repeat {
        put(format!("x:{}", repeat.words.text));
    }
    if op.meanwhile {
        put("meanwhile".to_owned());
    }
    if op.optional {
        put("optional".to_owned());
    }
    shown
}

/// Checks the operations of a method, '|' between them.
#[track_caller]
fn check(list: &str, method: &str, expected: &str) {
    let (_, recipe) = page(list, method);
    let shown: Vec<String> = recipe.operations.iter().map(|op| show(&recipe, op)).collect();
    assert_eq!(shown.join(" | "), expected, "{method}");
}

#[test]
fn dbg() {
    for (l, m) in [
        (
            "1 oxtail",
            "Trim any large lumps of fat off the oxtail and pat the pieces dry.",
        ),
        ("1 oxtail", "Trim the fat off the oxtail."),
        (
            "1 cabbage; 1 onion",
            "1 Heat the oven to 150C/130C fan/gas 2.\n2 Slice the cabbage.",
        ),
    ] {
        let (_, recipe) = page(l, m);
        let shown: Vec<String> = recipe.operations.iter().map(|op| show(&recipe, op)).collect();
        println!("{m}\n   {}", shown.join(" | "));
    }
}
