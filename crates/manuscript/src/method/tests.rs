//! Short invented sentences and the operations they give.

use proptest::prelude::*;

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
fn an_order_with_vessel_heat_time_and_cue() {
    check(
        "60 g butter; 2 leeks, sliced",
        "1. Melt the butter in a wide, heavy pan over a medium heat. Add the leeks and cook gently for 8 to 10 minutes, until soft.",
        "melt butter in:wide, heavy pan medium | add leeks | saute <pot> low 8-10 min until:soft",
    );
    check(
        "1 kg pork shoulder, diced; 2 tbsp oil",
        "1. Heat the oil in a casserole over high heat and brown the pork in three batches, about 5 minutes a batch, lifting each batch on to a plate.",
        "heat oil in:casserole high | brown pork shoulder 5-5 min x:in three batches | set_aside pork shoulder in:plate keep:pork shoulder x:each batch",
    );
}

#[test]
fn shares_of_a_food() {
    check(
        "90 g butter; 1 litre stock",
        "1. Melt half the butter in a pot. Add 250 ml of the stock. Stir in the remaining butter and the rest of the stock.",
        "melt butter (1/2) in:pot | add stock (250 millilitre) | stir butter (rest)+stock (rest)",
    );
    check(
        "400 g mushrooms; 50 g seeds",
        "1. Add most of the seeds and a few of the mushrooms to a bowl.",
        "add seeds (3/4)+mushrooms (some) in:bowl",
    );
}

#[test]
fn groups_and_pronouns() {
    check(
        "2 carrots; 1 parsnip; 1 litre water; 1 tsp salt",
        "1. Peel and dice the vegetables. Put them in a pot with the water. Bring to the boil and simmer for half an hour. Stir in the salt.",
        "peel carrots+parsnip | cut carrots+parsnip | add carrots+parsnip+water in:pot | heat <pot> until:the boil | simmer <pot> 30-30 min | stir salt",
    );
    check(
        "2 sausages; 1 tbsp oil",
        "1. Prick the sausages. Heat the oil in a skillet, brown the sausages, then lift them out on to a plate and cut into slices.",
        "heat oil in:skillet | brown sausages | set_aside sausages in:plate keep:sausages | cut sausages",
    );
}

#[test]
fn cook_is_frying_in_fat_and_simmering_in_liquid() {
    check(
        "1 onion; 1 tbsp oil; 500 ml stock",
        "1. Heat the oil in a pan, add the onion and cook for 5 minutes. Pour in the stock and cook for 20 minutes.",
        "heat oil in:pan | add onion | saute <pot> 5-5 min | pour stock | simmer <pot> 20-20 min",
    );
    check(
        "1 onion; 20 g butter; 2 litres water",
        "1. Boil the water in a kettle. Cook the onion in the butter for 5 minutes.",
        "boil water in:kettle | saute onion+butter 5-5 min",
    );
}

#[test]
fn the_oven_keeps_its_setting() {
    check(
        "1 kg shin; 1 litre stock",
        "1. Heat the oven to 160C (fan 140C), gas mark 3. Put the shin and the stock in a casserole, cover and cook in the oven for 3 hours. Uncover and cook in the oven for another 30 minutes.",
        "heat in:oven 160 °C | add shin+stock in:casserole | cover <pot> lid:on | braise <pot> in:oven 160 °C 180-180 min lid:on | uncover <pot> lid:off | braise <pot> in:oven 160 °C 30-30 min lid:off",
    );
    check(
        "12 potatoes",
        "1. Bake the potatoes at 200C for 30 minutes covered, then 20 minutes uncovered.",
        "bake potatoes 200 °C 30-30 min lid:on | bake potatoes 200 °C 20-20 min lid:off",
    );
}

#[test]
fn a_fan_setting_alone_is_taken_as_an_ordinary_one_and_said_so() {
    let (_, recipe) = page(
        "12 potatoes",
        "1. Heat the oven to 160C fan. Bake the potatoes for an hour.",
    );
    let bake = recipe.operations.last().expect("the baking");
    // Fan ovens are set 20 K lower (potwright_measure::Oven::FAN_DROP).
    assert_eq!(bake.temperature.map(|t| t.temperature().celsius()), Some(180.0));
    assert!(
        recipe
            .unsure
            .iter()
            .any(|unsure| unsure.taken_as.as_deref() == Some("180 °C"))
    );
}

#[test]
fn lids_and_the_heat_that_was_set_before() {
    check(
        "500 g lentils; 2 litres water",
        "1. Put the lentils and the water in a large pot. Bring to the boil, turn the heat down to low, half cover and simmer for 40 minutes.",
        "add lentils+water in:large pot | heat <pot> until:the boil | cover <pot> low lid:ajar | simmer <pot> 40-40 min lid:ajar",
    );
    check(
        "1 cabbage; 50 g butter",
        "1. Sweat the cabbage in the butter, lid on, 15 minutes, then take the pan off the heat.",
        "sweat cabbage+butter 15-15 min lid:on | remove <pot> off",
    );
}

#[test]
fn what_is_thrown_away_and_what_is_kept() {
    check(
        "2 bay leaves; 1 chicken; 3 litres water",
        "1. Simmer the chicken and the bay leaves in the water for 1 hour. Take out the bay leaves. Lift out the chicken and leave until cool enough to handle. Strip the meat from the bones and return it to the pot.",
        "simmer chicken+bay leaves+water 60-60 min | remove bay leaves discard:bay leaves | remove chicken keep:chicken | cool chicken until:cool enough to handle | cut chicken | return chicken",
    );
    check(
        "500 g beans; 3 litres water",
        "1. Soak the beans overnight, drain and rinse. Simmer with the water for 1 hour, skimming off the foam as it rises. Drain, reserving a cup of the liquid.",
        "soak beans until:overnight | drain beans | wash beans | simmer beans+water 60-60 min | skim <pot> discard:<foam> | drain beans keep:<liquid> (1 cup)",
    );
    check(
        "8 thighs; 1 onion",
        "1. Brown the thighs in a casserole. Pour off all but 1 tablespoon of the fat.",
        "brown thighs in:casserole | drain <fat> discard:<fat> keep:<fat> (1 tablespoon)",
    );
}

#[test]
fn straining_blending_cooling_freezing() {
    check(
        "2 kg bones; 5 litres water",
        "1. Simmer the bones in the water, uncovered, for 8 hours. Strain through a fine sieve into a clean pan and discard the bones. Boil until reduced by half. Stand the pan in a sink of iced water until cold, then chill overnight and freeze.",
        "simmer bones+water 480-480 min lid:off | strain <pot> in:clean pan | discard bones discard:bones | reduce <pot> until:reduced by half | cool in:sink of iced water until:cold | chill <pot> until:overnight | freeze <pot>",
    );
    check(
        "1 cauliflower; 1 litre milk; 100 ml cream",
        "1. Simmer the cauliflower in the milk until tender. Blend until smooth, return to the pan, stir in the cream and reheat without boiling.",
        "simmer cauliflower+milk until:tender | puree <pot> until:smooth | return <pot> | stir cream | reheat <pot>",
    );
}

#[test]
fn participles_are_work_that_no_line_has_done() {
    check(
        "50 g flour; 2 litres broth; 3 crackers",
        "1. Thicken the broth with the flour mixed with cold water. Add the crackers, split and toasted.",
        "mix flour+?cold water | thicken broth+flour+?cold water | cut crackers | toast crackers | add crackers",
    );
    check(
        "2 turnips, diced; 1 litre stock",
        "1. Add the diced turnips to the stock.",
        "add turnips+stock",
    );
    check(
        "2 turnips; 1 leek",
        "1. Add the sliced turnips and the leek, chopped.",
        "cut turnips | cut leek | add turnips+leek",
    );
}

#[test]
fn other_vessels_without_a_name() {
    check(
        "1 litre milk; 40 g butter; 40 g flour",
        "1. Heat the milk in a saucepan. Melt the butter, stir in the flour and cook for 2 minutes.",
        "heat milk in:saucepan | melt butter | stir flour | saute <pot> 2-2 min",
    );
    let (_, recipe) = page(
        "1 litre milk; 40 g butter; 40 g flour",
        "1. Heat the milk in a saucepan. Melt the butter, stir in the flour and cook for 2 minutes.",
    );
    assert!(
        recipe.operations[1].into.is_none(),
        "the butter is not melted in the milk"
    );
    check(
        "2 yolks; 100 ml cream; 1 litre stock",
        "1. Bring the stock to a simmer in a pot. Beat the yolks with the cream and stir into the soup.",
        "heat stock in:pot until:a simmer | beat yolks+cream | stir yolks+cream",
    );
}

#[test]
fn sections_of_the_list_are_components() {
    let text = "Stew\n\n1 kg beef\n1 litre stock\n\nFor the dumplings\n150 g flour\n75 g suet\n100 ml water\n\nMethod\n\n1. Simmer the beef in the stock in a large pot for 2 hours.\n2. For the dumplings, mix the flour and suet in a bowl and stir in the water. Shape into 8 balls.\n3. Sit the dumplings on top of the stew, cover and simmer for 20 minutes.\n";
    let recipe = read(text);
    let shown: Vec<String> = recipe.operations.iter().map(|op| show(&recipe, op)).collect();
    assert_eq!(
        shown.join(" | "),
        "simmer beef+stock in:large pot 120-120 min | mix flour+suet in:bowl | stir water | shape <pot> | add <dumplings> | cover <pot> lid:on | simmer <pot> 20-20 min lid:on"
    );
    let sat = &recipe.operations[4].into;
    assert_eq!(sat.as_ref().map(|v| v.words.text.as_str()), Some("large pot"));
}

#[test]
fn meanwhile_optional_and_what_is_no_order() {
    check(
        "300 g rice; 2 onions",
        "1. Boil the rice in a pot of water for 10 minutes. Meanwhile, slice the onions. Do not stir. Add more water if it looks dry. Enjoy!",
        "boil rice+?water in:pot 10-10 min | cut onions meanwhile | add ?water (some) optional",
    );
    check(
        "1 swede",
        "1. The swede must be young. If you have no swede, use a turnip. Never let it boil dry. Chop the swede.",
        "cut swede",
    );
}

#[test]
fn words_without_a_verb() {
    check(
        "200 ml wine; 4 carrots; 30 g flour; 1 tbsp oil",
        "1. Heat the oil in a pan. Carrots, high heat, 6 mins. Flour in, 1 min. Wine in; let it bubble down to almost nothing. Lid on, 10 mins.",
        "heat oil in:pan | saute carrots high 6-6 min | add flour | saute <pot> 1-1 min | add wine | reduce <pot> | cover <pot> lid:on | sweat <pot> 10-10 min lid:on",
    );
}

#[test]
fn times_counted_back_from_the_end() {
    check(
        "1 kg mutton; 200 g barley; 2 litres water",
        "1. Simmer the mutton in the water for three hours. Add the barley for the last hour.",
        "simmer mutton+water 180-180 min | add barley 60-60 min from the end",
    );
}

#[test]
fn vegetables_from_another_pan_bring_what_is_in_it() {
    check(
        "400 g beans; 2 litres water; 2 onions; 2 carrots; 2 tbsp oil; 1 tin tomatoes",
        "1. Simmer the beans in the water in a large pot for 1 hour.\n2. Heat the oil in a frying pan, add the onions and carrots and cook for 10 minutes. Tip in the tomatoes.\n3. Add the vegetables to the beans and simmer for 20 minutes.",
        "simmer beans+water in:large pot 60-60 min | heat oil in:frying pan | add onions+carrots | saute <pot> 10-10 min | add tomatoes | add oil+onions+carrots+tomatoes | simmer <pot> 20-20 min",
    );
}

#[test]
fn an_unknown_order_is_asked_about() {
    let (text, recipe) = page("2 onions; 1 swede", "1. Slice the onions. Frumple the swede.");
    assert_eq!(recipe.operations.len(), 1);
    let asked: Vec<&str> = recipe.unsure.iter().map(|unsure| unsure.span.of(&text)).collect();
    assert_eq!(asked, ["Frumple the swede"]);
}

#[test]
fn spans_hold_the_words() {
    let (text, recipe) = page(
        "2 onions; 20 g butter",
        "1. Slice the onions finely, then melt the butter in a small pan.",
    );
    let words: Vec<&str> = recipe.operations.iter().map(|op| op.span.of(&text)).collect();
    assert_eq!(words, ["Slice the onions finely", "melt the butter in a small pan"]);
    assert_eq!(recipe.operations[1].verb_span.of(&text), "melt");
}

/// Words that the grammar turns on, to be thrown together.
const WORDS: &[&str] = &[
    "add",
    "the",
    "onions",
    "and",
    "until",
    "half",
    "of",
    "remaining",
    "in",
    "a",
    "pan",
    "for",
    "10",
    "minutes",
    ",",
    ".",
    ";",
    "(",
    ")",
    "–",
    "cook",
    "lid",
    "on",
    "heat",
    "down",
    "it",
    "them",
    "when",
    "then",
    "cut",
    "split",
    "to",
    "boil",
    "oven",
    "180C",
    "into",
    "over",
    "with",
    "let",
    "all",
    "but",
    "1/2",
    "½",
    "tbsp",
    "most",
    "é",
    "…",
    "’",
    "\n",
    "[",
    "]",
    "should",
    "be",
    "removed",
    "if",
    "every",
    "thing",
    "everything",
    "last",
    "hour",
    "gas",
    "mark",
    "9",
    "stock",
];

proptest! {
    #[test]
    fn no_text_makes_it_panic(text in "\\PC{0,200}") {
        let page = format!("Dish\n\n2 onions\n1 tbsp oil\n\nMethod\n\n1. {text}\n");
        let recipe = read(&page);
        for op in &recipe.operations {
            prop_assert!(page.get(op.span.start..op.span.end).is_some());
        }
    }

    #[test]
    fn no_order_of_words_makes_it_panic(picks in prop::collection::vec(0..WORDS.len(), 0..60)) {
        let words: Vec<&str> = picks.iter().map(|at| WORDS[*at]).collect();
        let page = format!("Dish\n\n2 onions\n1 litre stock\n\nMethod\n\n1. {}\n", words.join(" "));
        let recipe = read(&page);
        for op in &recipe.operations {
            prop_assert!(op.step < recipe.steps.len());
            let step = recipe.steps[op.step].words.span;
            prop_assert!(step.contains(op.verb_span), "{:?} outside {:?}", op.verb_span, step);
            let listed = op.foods.iter().all(|food| match food.target {
                Target::Ingredient { index, item } => recipe.ingredients.get(index).is_some_and(|i| item < i.items.len()),
                _ => true,
            });
            prop_assert!(listed);
            let finite = op.minutes.as_ref().is_none_or(|m| m.low.is_finite() && m.high.is_finite());
            prop_assert!(finite);
        }
    }
}
