//! Orders in the habits of many kitchens. Lists and sentences are made up; the expectation is what a cook would do.
//!
//! One order: `verb food+food minutes`; `<pot>` is all that is in the vessel, `<name>` a thing made on the way, `?name` a
//! food that is not listed. Minutes counted back from the end carry a '-'.

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
    let minutes = op.minutes.as_ref().map_or(String::new(), |m| {
        let back = if m.from_end { "-" } else { "" };
        if (m.low - m.high).abs() < 1e-9 {
            format!("{back}{}", m.low)
        } else {
            format!("{back}{}..{}", m.low, m.high)
        }
    });
    let parts = [op.verb.name().to_owned(), foods.join("+"), minutes];
    parts
        .into_iter()
        .filter(|part| !part.is_empty())
        .collect::<Vec<_>>()
        .join(" ")
}

#[track_caller]
fn check(list: &str, method: &str, expected: &str) {
    let recipe = read(&format!("Dish\n\n{}\n\nMethod\n\n{method}\n", list.replace("; ", "\n")));
    let shown: Vec<String> = recipe.operations.iter().map(|op| show(&recipe, op)).collect();
    assert_eq!(shown.join(" | "), expected, "{method}");
}

/// An order may stand behind 'in it', 'to this', and what goes in may stand behind 'in go'.
#[test]
fn orders_behind_small_words() {
    check(
        "30 g lard; 2 leeks; 1 litre cider",
        "Melt the lard in a pot and in it soften the leeks for 8 minutes. Now in goes the cider.",
        "melt lard | sweat leeks 8 | add cider",
    );
    check(
        "2 onions; 1 tin tomatoes; 2 bay leaves",
        "Fry the onions in a pan. Then in with the tomatoes and the bay leaves.",
        "fry onions | add tomatoes+bay leaves",
    );
    check(
        "50 g flour; 50 g butter; 500 ml milk",
        "Melt the butter, and into it stir the flour. To this add the milk.",
        "melt butter | stir flour | add milk",
    );
}

/// 'Put to soak', 'set to boil', 'where it must simmer'.
#[test]
fn orders_inside_orders() {
    check(
        "1 pint lentils; 1 quart water",
        "Put the lentils to soak overnight.",
        "soak lentils",
    );
    check(
        "4 beetroots",
        "Set the beetroots to boil for an hour.",
        "boil beetroots 60",
    );
    check(
        "1 knuckle of veal; 2 quarts water",
        "Put the veal into the water and draw it to the side of the fire, where it must simmer three hours.",
        "add veal knuckle+water | simmer <pot> 180",
    );
    check(
        "1 ham; 1 litre ale",
        "Pour the ale over the ham and set it on the back of the range, where it should stew for two hours.",
        "pour ale+ham | simmer <pot> 120",
    );
}

/// The last verb of a chain is an order, though the word names a food too.
#[test]
fn the_last_of_a_chain() {
    check(
        "300 g mussels",
        "Steam the mussels, cool, and chop.",
        "steam mussels | cool <pot> | cut mussels",
    );
    check(
        "4 eggs",
        "Boil the eggs for 8 minutes, then plunge into iced water and peel.",
        "boil eggs 8 | cool <pot> | peel eggs",
    );
    check(
        "1 bunch kale; 1 litre stock",
        "Boil the kale in the stock, lift it out, and chop fine.",
        "boil kale+stock | remove kale | cut kale",
    );
}

/// Verbs in two words or with a hyphen.
#[test]
fn verbs_in_two_words() {
    check(
        "1 cup chana; 3 cups water",
        "Pressure cook the chana with the water for 20 minutes.",
        "simmer chana+water 20",
    );
    check("1 tsp cumin", "Dry roast the cumin for 2 minutes.", "toast cumin 2");
    check(
        "1 litre soup",
        "Stick-blend the soup. Re-boil it for 3 minutes.",
        "puree soup | boil <pot> 3",
    );
    check(
        "200 g paneer; 1 tbsp oil",
        "Shallow fry the paneer in the oil for 4 minutes.",
        "fry paneer+oil 4",
    );
}

/// 'Make a paste of': what it is made of is mixed.
#[test]
fn made_of() {
    check(
        "50 g flour; 50 g butter",
        "Make a smooth paste of the flour and the butter.",
        "mix flour+butter",
    );
    check(
        "100 g crumbs; 1 egg; 1 tsp sage; 2 pigeons",
        "Make a stuffing with the crumbs, the egg and the sage. Truss the pigeons.",
        "mix crumbs+egg+sage | shape pigeons",
    );
    check("1 litre stock", "Make a well in the middle.", "");
}

/// A noun may name the kind of what is listed.
#[test]
fn kinds_of_foods() {
    check(
        "2 partridges; 30 g butter",
        "Brown the birds in the butter.",
        "brown partridges+butter",
    );
    check(
        "200 g udon; 1 litre dashi",
        "Drop the noodles into the dashi.",
        "add udon+dashi",
    );
    check("150 g merguez", "Slice the sausage.", "cut merguez");
    check(
        "50 g pistachios; 300 g orzo",
        "Toast the nuts. Boil the pasta for 9 minutes.",
        "toast pistachios | boil orzo 9",
    );
    check(
        "1 glass marsala; 200 g chanterelles",
        "Fry the mushrooms and pour in the wine.",
        "fry chanterelles | pour marsala",
    );
    check("80 g gruyère, grated", "Scatter over the cheese.", "garnish gruyère");
}

/// A word that is no food does not become one.
#[test]
fn words_that_are_no_food() {
    check(
        "1 head celery",
        "Cut up fine the white part of the celery.",
        "cut celery",
    );
    check("300 g dough", "Leave somewhere warm for an hour.", "rest <pot> 60");
    check(
        "200 g prawns; 1 tbsp oil",
        "Fry the prawns in the oil until they curl, stack and serve.",
        "fry prawns+oil | serve <pot>",
    );
    check(
        "1 tin beans; 1 litre stock",
        "Mash the beans agianst the pot.",
        "puree beans",
    );
    check(
        "1 chicken",
        "Roast the chicken, breast down, for an hour.",
        "roast chicken 60",
    );
}

/// What a part of the list or a heading calls by its name is that part.
#[test]
fn parts_of_the_list() {
    let recipe = read(
        "Pie\n\n1 tbsp plain flour\n500 g beef\n\nFor the crust\n200 g self-raising flour\n100 g suet\n\nMethod\n\nDust the beef with the flour. Brown it. Now make the crust. Mix the flour and suet.\n",
    );
    let shown: Vec<String> = recipe.operations.iter().map(|op| show(&recipe, op)).collect();
    assert_eq!(
        shown,
        ["dredge beef+plain flour", "brown beef", "mix self-raising flour+suet"]
    );
    let recipe = read(
        "Curry\n\nSTEP 1: PASTE\n- 2 chillies\n- 1 tsp shrimp paste\nBlitz everything.\n\nSTEP 2: SAUCE\n- 1 tin coconut milk\n- 1 tbsp oil\n- 2 tsp fish sauce\nHeat the oil in a wok, fry the paste 2 minutes, then add everything else.\n",
    );
    let shown: Vec<String> = recipe.operations.iter().map(|op| show(&recipe, op)).collect();
    assert_eq!(
        shown,
        [
            "puree chillies+shrimp paste",
            "heat oil",
            "fry <paste> 2",
            "add coconut milk+fish sauce"
        ]
    );
}

/// 'The first three ingredients', '& seasoning' after another food.
#[test]
fn counted_and_joined() {
    check(
        "1 tbsp soy; 1 tsp sugar; 1 tsp vinegar; 400 g aubergine",
        "Mix the first three ingredients. Fry the aubergine.",
        "mix soy+sugar+vinegar | fry aubergine",
    );
    check(
        "200 g bacon; 1 tsp cajun seasoning; 1 onion",
        "Add the bacon & seasoning, then the onion.",
        "add bacon+cajun seasoning+onion",
    );
}

/// Work said behind a food: 'cream beaten until stiff', 'yolk slightly beaten', 'fat tried out'.
#[test]
fn work_behind_a_food() {
    check(
        "200 ml cream; 1 jelly",
        "Fold in the cream beaten until stiff.",
        "beat cream | mix cream",
    );
    check(
        "2 egg yolks; 1 litre soup",
        "Add the egg yolks slightly beaten.",
        "beat egg yolks | add egg yolks",
    );
    check(
        "100 g pork fat; 1 kg venison",
        "Brown the venison in the pork fat tried out slowly.",
        "render pork fat | brown venison+pork fat",
    );
}

/// What is ladled over something dry is the pot.
#[test]
fn over_something_dry() {
    check(
        "1 litre stock; 200 g rice",
        "Simmer the stock. Ladle over the rice.",
        "simmer stock | pour <pot>+rice",
    );
    check(
        "1 litre stock; 4 slices toast",
        "Heat the stock. Pour over the toast.",
        "heat stock | pour <pot>+toast",
    );
    check(
        "50 g butter; 4 crumpets",
        "Melt the butter. Pour over the butter.",
        "melt butter | pour butter",
    );
}

/// Rest and simmer: the heat that was set, and the heat that is off.
#[test]
fn heat_that_goes_on() {
    check(
        "1 litre stock; 500 g shin",
        "Boil the stock in a pot and add the shin. Turn the heat down low and leave it for 3 hours.",
        "boil stock | add shin | simmer <pot> 180",
    );
    check(
        "1 litre milk; 200 g haddock",
        "Heat the milk in a pan. Take it off the heat, add the haddock and cover for 6 minutes.",
        "heat milk | remove <pot> | add haddock | cover <pot> | rest <pot> 6",
    );
    check(
        "1 litre stock; 200 g turnips",
        "Bring the stock to the boil. Add the turnips, then drop to a simmer for 15 minutes.",
        "heat stock | add turnips | simmer <pot> 15",
    );
    check(
        "300 ml milk",
        "Heat the milk. Let it come to the boil.",
        "heat milk | heat <pot>",
    );
}

/// Times counted back, limits, and minutes without their word.
#[test]
fn times_in_other_words() {
    check(
        "1 hare; 1 glass port",
        "Stew the hare for two hours. Ten minutes before it is done stir in the port.",
        "simmer hare 120 | stir port -10",
    );
    check("1 litre soup", "Chill the soup inside 90 min.", "chill soup 0..90");
    check(
        "1 litre stock; 200 g peas",
        "Boil the stock. Add the peas, simmer 5. Rest 10.",
        "boil stock | add peas | simmer <pot> 5 | rest <pot> 10",
    );
    check(
        "2 celeriacs; 1 litre stock",
        "Put the celeriacs in the stock. Bring to the boil. 30 min til they offer no resistance.",
        "add celeriacs+stock | heat <pot> | simmer <pot> 30",
    );
}

/// Herbs that come out leave the pot; what is told of it at the table is served.
#[test]
fn out_of_the_pot_and_on_the_side() {
    check(
        "1 litre stock; 2 bay leaves",
        "Simmer the stock with the bay leaves. Pull the bay. Blitz 2 minutes.",
        "simmer stock+bay leaves | remove bay leaves | puree <pot> 2",
    );
    check(
        "1 litre dal; 1 lemon; 1 bunch mint",
        "Warm the dal. Lemon on the side. Mint on top.",
        "heat dal | serve lemon | garnish mint",
    );
    check(
        "2 aubergines; 1 tin tomatoes",
        "Chop the veg and fry.",
        "cut aubergines | fry aubergines",
    );
}

/// Pages in small letters, numbers without a stop, columns.
#[test]
fn typed_in_a_hurry() {
    check(
        "1 onion; 1 tbsp oil; 1 litre stock",
        "chop the onion. fry it in the oil 5 mins. dont brown it. add the stock. simmer v gently 20 mins",
        "cut onion | fry onion+oil 5 | add stock | simmer <pot> 20",
    );
    let recipe = read(
        "PEA VELOUTE\n\nPeas         2 kg\nVeg stock    3 l\n\n1 Boil the peas in the stock 4 min.\n2 Blend the soup until smooth.\n3 Pass it through a chinois.\n",
    );
    assert_eq!(recipe.steps.len(), 3, "{:?}", recipe.steps);
    assert_eq!(recipe.ingredients.len(), 2);
    let recipe = read(
        "Braise\n\nShin, 2 kg          Shallots, 500 g\nRed wine, 1 litre   Thyme\n\nBrown the shin. Add the rest.\n",
    );
    let names: Vec<&str> = recipe.ingredients.iter().map(|i| i.items[0].name.as_str()).collect();
    assert_eq!(names, ["shin", "shallots", "red wine", "thyme"]);
}

/// For how many, in other words than 'serves'.
#[test]
fn for_how_many() {
    for (text, expected) in [
        ("Boil two pounds of peas. Enough for six.", 6.0),
        ("This is a lunch for three. Boil two pounds of peas.", 3.0),
        ("boil 2 lb peas. does 8", 8.0),
        ("For five people. Boil two pounds of peas.", 5.0),
        ("Boil two pounds of peas.\n\nSufficient for nine persons.", 9.0),
    ] {
        let recipe = read(&format!("Peas\n\n{text}\n"));
        let amount = recipe.yields.and_then(|y| y.amount).map(|amount| amount.low.to_f64());
        assert_eq!(amount, Some(expected), "{text}");
    }
}
