//! Foods named in running text, in pages made up for this table; the expectation is a cook's own reading.
//!
//! One line a food: `amount unit name | work`, '-' for what is not said, '~' for an amount without a number.

use potwright_manuscript::{Ingredient, read};
use potwright_measure::fractions;

fn show(entry: &Ingredient) -> String {
    let names: Vec<&str> = entry.items.iter().map(|item| item.name.as_str()).collect();
    let amount = entry.quantity.map(|q| {
        let (low, high) = (fractions::ascii(q.amount.low), fractions::ascii(q.amount.high));
        let unit = q.unit.map_or("-", |unit| unit.name());
        if low == high {
            format!("{low} {unit}")
        } else {
            format!("{low}-{high} {unit}")
        }
    });
    let amount = amount.unwrap_or_else(|| if entry.open.is_some() { "~ -" } else { "- -" }.to_owned());
    let work = entry
        .preparation
        .as_ref()
        .map_or(String::new(), |words| format!(" | {}", words.text));
    let wish = if entry.optional { " (optional)" } else { "" };
    format!("{amount} {}{work}{wish}", names.join("+"))
}

/// Reads a page of running text; '; ' stands between the foods expected.
#[track_caller]
fn check(text: &str, expected: &str) {
    let recipe = read(&format!("A Dish\n\n{text}\n"));
    let shown: Vec<String> = recipe.ingredients.iter().map(show).collect();
    assert_eq!(shown.join("; "), expected, "{text}");
}

/// A sentence that names three foods and more is not the list when the cooking has begun.
#[test]
fn a_sentence_in_the_middle_is_no_list() {
    check(
        "Melt 30g butter and soften two leeks. Now in go 500ml chicken stock, 200g orzo, a strip of lemon zest and a bay leaf. Stir in 50g parmesan.",
        "30 gram butter; 2 - leeks; 500 millilitre chicken stock; 200 gram orzo; 1 strip lemon zest; 1 - bay leaf; 50 gram parmesan",
    );
    check(
        "Warm a spoonful of ghee. Next, 300g spinach, two tomatoes and a pinch of cumin. Cook gently.",
        "1 spoonful ghee; 300 gram spinach; 2 - tomatoes; 1 pinch cumin",
    );
    check(
        "You need two kilos of mussels, a glass of cider and three shallots. Steam them. Stir in 100ml of cream.",
        "2 kilogram mussels; 1 glass cider; 3 - shallots; 100 millilitre cream",
    );
}

/// 'A unit and a part of X', 'a unit and a smaller unit of X'.
#[test]
fn a_measure_and_a_half() {
    check(
        "Boil a quart and a half of milk. Add a pound and a quarter of rice and a cup and three-quarters of sugar.",
        "1 1/2 quart milk; 1 1/4 pound rice; 1 3/4 cup sugar",
    );
    check(
        "Put a teacupful and a half of pearl barley into a quart and a pint of broth.",
        "1 1/2 teacup pearl barley; 1 1/2 quart broth",
    );
    check(
        "Whisk a gill and a half of cream into half a pint of stock.",
        "1 1/2 gill cream; 1/2 pint stock",
    );
}

/// What fills a thing is a measure, known or not, and never part of the name.
#[test]
fn what_a_thing_holds() {
    check(
        "Add a saltspoonful of mace, a wineglassful of madeira and two dessertspoonfuls of flour.",
        "1 saltspoon mace; 1 wineglass madeira; 2 dessertspoon flour",
    );
    check(
        "Stir in a big handfull of sorrel, 3 ladlefulls of stock and a thimbleful of brandy.",
        "1 handful sorrel; 3 ladle stock; ~ - brandy",
    );
    check(
        "Take 350gr lentils and 2 breakfastcupfuls of water.",
        "350 gram lentils; 2 cup water",
    );
}

/// What a food is likened to is not bought.
#[test]
fn sizes_by_likeness() {
    check(
        "Brown the flour in a lump of lard the size of an egg, then add a piece of ginger as big as your thumb.",
        "- - flour; 1 piece lard; 1 piece ginger",
    );
    check(
        "Finish with a bit of butter about the size of a hazelnut.",
        "~ - butter",
    );
    check(
        "Grate a turnip the size of a fist and an onion.",
        "1 - turnip; 1 - onion",
    );
}

/// Work told of several is done to each of them.
#[test]
fn work_that_is_shared() {
    check(
        "Fry two parsnips, a swede and a leek, all diced, in oil.",
        "2 - parsnips | diced; 1 - swede | diced; 1 - leek | diced; - - oil",
    );
    check(
        "Put in 300g salmon and 200g cod, both skinned and cut into cubes.",
        "300 gram salmon | skinned and cut into cubes; 200 gram cod | skinned and cut into cubes",
    );
    check(
        "Add three carrots, washed and thinly sliced, and cover the pan.",
        "3 - carrots | washed and thinly sliced",
    );
}

/// A food measured out after it was only named takes the amount; what is said again does not come twice.
#[test]
fn a_measure_after_a_bare_name() {
    check(
        "Soak the beans in water. Next day boil them in three pints of fresh water.",
        "- - beans; 3 pint water",
    );
    check(
        "Brown six chicken thighs in oil; pour over the stock and return the chicken to the pan.",
        "6 - chicken thighs; - - oil; - - stock",
    );
    check(
        "Slice a pound of onions. Fry the onions in two ounces of dripping.",
        "1 pound onions; 2 ounce dripping",
    );
}

/// Parts are named with what they are cut from; what only describes stays in front.
#[test]
fn parts_of_animals() {
    check(
        "Brown a kilo of boneless shoulder of lamb.",
        "1 kilogram boneless lamb shoulder",
    );
    check(
        "Take two pounds of scrag end of neck of mutton and a ham bone.",
        "2 pound mutton neck scrag end; 1 - ham bone",
    );
    check("Lay in the trout, skin side up, with their tails crossed.", "- - trout");
}

/// Another food in its place, other dishes, what some people like.
#[test]
fn foods_that_are_not_bought_for_sure() {
    check("Moisten with a pint of good gravy or stock.", "1 pint gravy");
    check(
        "Stew four pigeons in a pint of ale. Hares may be done in the same way.",
        "4 - pigeons; 1 pint ale",
    );
    check(
        "Boil a cauliflower. A grate of nutmeg is an improvement. A glass of sherry may be added.",
        "1 - cauliflower; - - nutmeg (optional); 1 glass sherry (optional)",
    );
    check(
        "Cut the loaf; it should slice like cheese. Spread it with 20g butter.",
        "- - loaf; 20 gram butter",
    );
}

/// A page typed in small letters has sentences too, and an amount in brackets belongs to the food before it.
#[test]
fn pages_in_small_letters() {
    check(
        "you need 2 onions, 1 tin of chickpeas, 500ml stock, cumin, spuds if you want (3 or so)\n\nfry the onions 5 mins. tip in the rest. add 2 tbsp. oil at the end",
        "2 - onions; 1 can chickpeas; 500 millilitre stock; - - cumin; 3 - potatoes (optional); 2 tablespoon oil",
    );
    check(
        "melt 50g butter. add 2 sliced apples. cook 10 mins. serve",
        "50 gram butter; 2 - apples | sliced",
    );
    check(
        "boil 1 lb. split peas in 3 qts. water. skim. add 1 lg. onion",
        "1 pound split peas; 3 quart water; 1 - onion",
    );
}

/// A noun that no table knows is a food when a unit measures it.
#[test]
fn foods_without_a_row() {
    check(
        "Stir in 200ml kvass and two tablespoons of ajvar.",
        "200 millilitre kvass; 2 tablespoon ajvar",
    );
    check("Put it into a litre jug; add 100g skyr.", "100 gram skyr");
}
