//! Orders of ordinary kitchen English. Pages and sentences are made up; the expectation is what a cook would do.

use potwright_manuscript::{FoodRef, Operation, Recipe, Target, read};

fn food(recipe: &Recipe, food: &FoodRef) -> String {
    match &food.target {
        Target::Ingredient { index, item } => recipe.ingredients[*index].items[*item].name.clone(),
        Target::Pot => "<pot>".into(),
        Target::Component(name) => format!("<{name}>"),
        Target::Unlisted(name) => format!("?{name}"),
    }
}

fn show(recipe: &Recipe, op: &Operation) -> String {
    let foods: Vec<String> = op.foods.iter().map(|one| food(recipe, one)).collect();
    let mut shown = op.verb.name().to_owned();
    for part in [
        foods.join("+"),
        op.temperature.map_or(String::new(), |set| set.to_string()),
    ] {
        if !part.is_empty() {
            shown.push(' ');
            shown.push_str(&part);
        }
    }
    shown
}

fn operations(list: &str, method: &str) -> (String, Recipe) {
    let list = list.replace("; ", "\n");
    let recipe = read(&format!("Dish\n\n{list}\n\nMethod\n\n{method}\n"));
    let shown: Vec<String> = recipe.operations.iter().map(|op| show(&recipe, op)).collect();
    (shown.join(" | "), recipe)
}

#[track_caller]
fn check(list: &str, method: &str, expected: &str) {
    assert_eq!(operations(list, method).0, expected, "{method}");
}

/// What is left of the list when some of it is in the pot.
#[test]
fn everything_else() {
    let list = "2 onions; 2 carrots; 1 leek; 30 g butter";
    for order in [
        "Add everything else.",
        "Tip in everything else.",
        "Add all the other ingredients.",
        "Put everything else in the pot.",
        "Add the remaining ingredients.",
        "Add everything.",
        "Add everything to the pot.",
        "Add the rest.",
    ] {
        check(
            list,
            &format!("Melt the butter in a pot and fry the onions. {order}"),
            "melt butter | fry onions | add carrots+leek",
        );
    }
    check(
        list,
        "Melt the butter in a pot. Fry the onions, carrots and leek in it. Stir everything together.",
        "melt butter | fry onions+carrots+leek | stir <pot>",
    );
    check(
        "200 g flour; 100 ml milk; 1 litre stock",
        "Mix the flour and milk in a bowl. Heat the stock in a pot. Add half the stock to the bowl. Pour in the rest.",
        "mix flour+milk | heat stock | add stock | pour stock",
    );
}

#[test]
fn a_lid_goes_back_and_foods_are_crumbled_in() {
    let list = "500 g beans; 1 litre water; 1 pinch saffron; 50 g feta; 2 sprigs dill";
    let start = "Put the beans and the water in a pot and simmer for 1 hour.";
    for lid in [
        "Put the lid back on.",
        "Replace the lid.",
        "Return the lid to the pot.",
        "Put the lid on again.",
        "Set the lid back on the pot.",
    ] {
        check(
            list,
            &format!("{start} {lid}"),
            "add beans+water | simmer <pot> | cover <pot>",
        );
    }
    for (order, expected) in [
        ("Crumble in the saffron.", "add saffron"),
        ("Crumble the feta.", "cut feta"),
        ("Crumble over the feta.", "add feta"),
        ("Snip in the dill.", "add dill"),
        ("Tear in the dill.", "add dill"),
    ] {
        check(
            list,
            &format!("{start} {order}"),
            &format!("add beans+water | simmer <pot> | {expected}"),
        );
    }
}

#[test]
fn how_it_is_poured_is_no_food() {
    for how in [
        "drop by drop",
        "a few drops at a time",
        "in a thin stream",
        "in a slow steady stream",
        "in a thin, steady stream",
    ] {
        check(
            "2 yolks; 250 ml olive oil",
            &format!("Whisk the yolks in a bowl. Add the oil {how}, whisking."),
            "whisk yolks | add olive oil",
        );
    }
}

#[test]
fn an_oven_that_is_turned_up() {
    for order in [
        "Raise the temperature to 375°F",
        "Increase the heat to 375°F",
        "Turn the oven up to 375°F",
        "Raise the oven to 375°F",
    ] {
        check(
            "1 kg shin; 1 litre stock",
            &format!(
                "Heat the oven to 325°F. Put the shin and the stock in a casserole. Bake for 2 hours. {order} and bake for 20 minutes."
            ),
            "heat 325 °F | add shin+stock | bake <pot> 325 °F | heat 375 °F | bake <pot> 375 °F",
        );
    }
}

#[test]
fn how_it_is_kept_is_no_cooking() {
    let list = "1 kg bones; 2 litres water";
    for advice in [
        "Keep in the fridge for up to 5 days, or freeze for 3 months.",
        "Store in the fridge for 3 days or freeze.",
        "Freeze for up to 3 months.",
        "Keep it in a jar for a week, or freeze it.",
    ] {
        check(
            list,
            &format!("Simmer the bones in the water for 4 hours. {advice}"),
            "simmer bones+water",
        );
    }
    check(
        list,
        "Simmer the bones in the water for 4 hours. Freeze for 6 hours.",
        "simmer bones+water | freeze <pot>",
    );
    check(
        "2 onions; 20 g butter",
        "Fry the onions in the butter. Let it catch slightly.",
        "fry onions+butter",
    );
}

/// 'Onions' are the onions of the list, not its scallions, wherever either stands and whatever went in before.
#[test]
fn a_food_of_that_very_name_comes_first() {
    let list = "2 yellow onions, chopped; 1 tbsp oil; 3 scallions, sliced; 100 ml milk; 200 g flour";
    check(
        list,
        "Heat the oil in a pot. Add the onions and fry for 8 minutes. Mix the flour, scallions and milk.",
        "heat oil | add yellow onions | fry <pot> | mix flour+scallions+milk",
    );
    check(
        list,
        "Mix the scallions and milk. Fry the onions.",
        "mix scallions+milk | fry yellow onions",
    );
    check(
        list,
        "Fry the onions. Stir in the onions.",
        "fry yellow onions | stir yellow onions",
    );
    check(
        "3 scallions; 100 ml milk",
        "Add the onions to the milk.",
        "add scallions+milk",
    );
}
