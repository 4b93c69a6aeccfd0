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

/// What is left out of 'everything', and 'the others'.
#[test]
fn all_but_one() {
    let list = "2 onions; 2 carrots; 1 leek; 30 g butter";
    for all in ["everything except", "everything but", "all the ingredients except"] {
        check(
            list,
            &format!("Put {all} the leek in a pot. Simmer for 20 minutes. Add the leek."),
            "add onions+carrots+butter | simmer <pot> | add leek",
        );
    }
    check(list, "Add all the vegetables bar the leek.", "add onions+carrots");
    check(
        list,
        "Melt the butter in a pot and fry the onions. Add the others.",
        "melt butter | fry onions | add carrots+leek",
    );
}

/// The salt of the part whose other foods are named with it.
#[test]
fn a_food_listed_twice_is_that_of_its_companions() {
    let page = |method: &str| {
        let list = "For the stew\n1 kg beef shin\n1 litre stock\n2 tsp salt\n\nFor the dumplings\n200 g flour\n100 g suet\n2 tsp salt";
        read(&format!("Dish\n\n{list}\n\nMethod\n\n{method}\n"))
    };
    let salts = |recipe: &Recipe| -> Vec<usize> {
        let foods = recipe.operations.iter().flat_map(|op| &op.foods);
        let places = foods.filter_map(|food| match food.target {
            Target::Ingredient { index, .. } => Some(index),
            _ => None,
        });
        places
            .filter(|index| recipe.ingredients[*index].items[0].name == "salt")
            .collect()
    };
    let dumplings_first = page("Mix the flour and suet with 1 tsp of the salt. Rub the beef with 1 tsp of the salt.");
    assert_eq!(salts(&dumplings_first), [5, 2]);
    let twice = page("Mix the flour with 1 tsp of the salt. Mix the suet with 1 tsp of the salt.");
    assert_eq!(salts(&twice), [5, 5]);
}

#[test]
fn work_that_stands_behind_its_food() {
    check(
        "1 kg beef shin; 1 litre stock",
        "Simmer the beef in the stock for 2 hours. Lift out the beef and serve with the gravy strained over.",
        "simmer beef shin+stock | remove beef shin | strain <pot> | serve beef shin+<pot>",
    );
    check(
        "500 g peas; 4 slices bread; 2 tbsp dripping; 1 litre stock",
        "Simmer the peas in the stock for 1 hour. Serve with bread fried in dripping.",
        "simmer peas+stock | fry bread+dripping | serve <pot>+bread+dripping",
    );
    check(
        "500 g peas; 1 litre stock",
        "Simmer the peas in half the stock for 1 hour. Any stock left over thins the soup.",
        "simmer peas+stock",
    );
}

/// The setting of the oven, that of a fan oven, and how hot the food is to be inside.
#[test]
fn ovens_fans_and_middles() {
    for (order, oven, fan, core) in [
        ("at 200 C / 180 C fan for 1 hour", "200 °C", "180 °C", ""),
        ("at 200C (180C fan) for 1 hour", "200 °C", "180 °C", ""),
        ("at 160C fan/180C for 1 hour", "180 °C", "160 °C", ""),
        ("at 200 C for 1 hour, until 75 °C in the middle", "200 °C", "", "75 °C"),
        (
            "at 200 C until a thermometer reads 165°F in the thickest part",
            "200 °C",
            "",
            "165 °F",
        ),
        ("at 200 C to a core temperature of 74 °C", "200 °C", "", "74 °C"),
        ("at 200 C in the middle of the oven for 1 hour", "200 °C", "", ""),
    ] {
        let recipe = operations("1 chicken", &format!("Roast the chicken {order}.")).1;
        let roast = &recipe.operations[0];
        let shown = [roast.temperature, roast.fan, roast.core].map(|t| t.map_or(String::new(), |t| t.to_string()));
        assert_eq!(shown, [oven, fan, core], "{order}");
    }
}

/// 'Boil the rice' under 'For the rice' is the food as long as the part is still to be made; then it is what was made.
#[test]
fn a_part_named_like_its_food() {
    let (read, _) = operations(
        "For the beans:; 300 g dried butter beans; 1 onion, chopped; 1 l stock; ; For the rice:; 200 g round-grain rice; 1/2 tsp salt",
        "Put the beans, onion and stock in a large pot and simmer for 30 minutes.\n\nBoil the rice with the salt in a \
         small pan for 40 minutes. Serve the beans over the rice.",
    );
    let made = "simmer <pot> | boil round-grain rice+salt | serve <beans>+<rice>";
    assert_eq!(read, format!("add butter beans+onion+stock | {made}"));
}

/// 'Salt' before 'and' and another order is what goes in, unless it salts something.
#[test]
fn salt_that_goes_in_before_another_order() {
    let list = "2 carrots; 1 swede; 1 tsp salt; 1 l water";
    check(
        list,
        "Boil the carrots in the water. Add the swede and salt and boil for 20 minutes.",
        "boil carrots+water | add swede+salt | boil <pot>",
    );
}

/// Several vessels are no food.
#[test]
fn vessels_in_the_plural() {
    let (_, recipe) = operations(
        "1 kg bones; 3 l water",
        "Simmer the bones in the water. Stand the pans in iced water.",
    );
    let last = recipe.operations.last().expect("an order");
    assert!(
        last.foods
            .iter()
            .all(|food| !matches!(food.target, Target::Unlisted(_))),
        "{last:?}"
    );
}

/// A time that the page declares is no cooking, wherever it stands.
#[test]
fn declared_times_in_the_method() {
    let (shown, recipe) = operations(
        "1 kg shin; 2 litres water",
        "Put the shin and the water in a pot. Simmer for 2 hours. Time, about two hours and a half.",
    );
    assert_eq!(shown, "add shin+water | simmer <pot>");
    let times: Vec<_> = recipe.declared_times.iter().map(|time| time.minutes).collect();
    assert_eq!(times, [(150.0, 150.0)]);
    check(
        "1 kg shin; 2 litres water",
        "Put the shin and the water in a pot. Simmer. Cooking time: two hours.",
        "add shin+water | simmer <pot>",
    );
}

/// Minutes of each operation, in order.
#[track_caller]
fn check_minutes(method: &str, expected: &[(&str, Option<f64>)]) {
    let (_, recipe) = operations("1 kg shin; 2 litres water; 100 g barley", method);
    let read: Vec<_> = recipe
        .operations
        .iter()
        .map(|op| (op.verb.name(), op.minutes.as_ref().map(|minutes| minutes.high)))
        .collect();
    assert_eq!(read, expected, "{method}");
}

/// Old prose tells of cooking that has gone by, and lets all of it go on.
#[test]
fn cooking_that_has_gone_by() {
    let start = "Put the shin and the water in a pot. ";
    check_minutes(
        &format!("{start}Bring to the boil. When it has boiled gently for the space of one hour, add the barley."),
        &[("add", None), ("heat", None), ("boil", Some(60.0)), ("add", None)],
    );
    check_minutes(
        &format!("{start}Simmer. Once it has simmered for 40 minutes, add the barley."),
        &[("add", None), ("simmer", Some(40.0)), ("add", None)],
    );
    // Half an hour of the hour that was ordered.
    check_minutes(
        &format!("{start}Simmer for 1 hour. When it has simmered for half an hour, add the barley."),
        &[("add", None), ("simmer", Some(60.0)), ("add", None)],
    );
    for all in ["all", "everything", "the whole", "it"] {
        check_minutes(
            &format!("{start}Let {all} simmer together for an hour and a half longer."),
            &[("add", None), ("simmer", Some(90.0))],
        );
    }
}

/// 'Boil' alone is up to the boil; with a time it is boiling.
#[test]
fn boil_alone() {
    let (_, recipe) = operations(
        "1 kg shin; 2 litres water",
        "Put the shin and the water in a pot. Boil, then simmer 25 min.",
    );
    let read: Vec<_> = recipe.operations[1..]
        .iter()
        .map(|op| (op.verb.name(), op.cue.as_ref().map(|cue| cue.text.as_str())))
        .collect();
    assert_eq!(read, [("heat", Some("Boil")), ("simmer", None)]);
}

/// The rest is of what the same work was done to before.
#[test]
fn the_rest_of_what_was_halved() {
    check(
        "3 tbsp oil; 900 g pork, diced; 2 litres stock",
        "Heat 1 tbsp of the oil in a pot and fry half the pork. Lift out, add another tbsp oil and fry the rest. \
            Add the stock.",
        "heat oil | fry pork | remove pork | add oil | fry pork | add stock",
    );
}

/// What was stirred together on the side is what is chilled.
#[test]
fn what_was_made_on_the_side_is_chilled() {
    check(
        "800 g beef; 1 litre water; 200 g cream; 15 g dill",
        "Simmer the beef in the water in a large pot. Meanwhile stir the dill into the cream. Chill. Serve the beef.",
        "simmer beef+water | stir dill+cream | chill dill+cream | serve beef",
    );
}

/// A measure that is a verb too opens a line of the list, in any letters.
#[test]
fn measures_that_are_verbs_too() {
    for last in ["pinch of salt", "Pinch of salt", "drizzle of oil"] {
        let recipe = read(&format!(
            "Soup\n\n1 l water\n500 g carrots\n{last}\n\n1. Boil the carrots in the water.\n"
        ));
        assert_eq!((recipe.ingredients.len(), recipe.steps.len()), (3, 1), "{last}");
    }
}
