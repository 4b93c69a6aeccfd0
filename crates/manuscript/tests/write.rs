//! Writing back: a page in house style is the same recipe, and every word of it is there.

#![expect(clippy::unwrap_used, reason = "a test stops where it cannot go on")]

use std::fs;
use std::path::{Path, PathBuf};

use potwright_manuscript::write::{Fractions, HouseStyle, Names, in_house_style, write};
use potwright_manuscript::{Ingredient, Item, Layout, Quantity, Recipe, Span, Step, Words, YieldLine, read, reading};
use potwright_measure::{Amount, Exact, HeatScale, Unit};
use proptest::prelude::*;
use serde_json::Value;

/// The pages of a folder, in order of name.
fn pages(folder: &Path) -> Vec<(PathBuf, String)> {
    let found = fs::read_dir(folder).unwrap().map(|entry| entry.unwrap().path());
    let mut found: Vec<PathBuf> = found
        .filter(|path| path.extension().is_some_and(|end| end == "txt"))
        .collect();
    found.sort();
    found
        .into_iter()
        .map(|path| (path.clone(), fs::read_to_string(path).unwrap()))
        .collect()
}

/// What the list says, without its spelling: amounts in numbers, units, foods, preparation, flags.
fn list(text: &str) -> Value {
    let recipe = read(text);
    let mut value = reading(&recipe, text, "");
    for line in value["ingredients"].as_array_mut().unwrap() {
        let line = line.as_object_mut().unwrap();
        line.retain(|key, _| matches!(key.as_str(), "items" | "unit" | "amount" | "optional" | "alternatives"));
        if let Some(amount) = line.get_mut("amount").and_then(Value::as_object_mut) {
            amount.remove("text");
        }
    }
    value["ingredients"].take()
}

/// The verbs and times of the method.
fn method(text: &str) -> Vec<(String, Option<[f64; 2]>)> {
    let recipe = read(text);
    let times = recipe
        .operations
        .iter()
        .map(|o| o.minutes.as_ref().map(|m| [m.low, m.high]));
    let verbs = recipe.operations.iter().map(|o| o.verb.name().to_owned());
    verbs.zip(times).collect()
}

/// The same recipe, and house style twice is house style once.
fn holds(name: &Path, text: &str) -> bool {
    let style = HouseStyle::default();
    let written = in_house_style(text, &style);
    assert_eq!(list(text), list(&written.text), "{}", name.display());
    assert_eq!(method(text), method(&written.text), "{}", name.display());
    assert_eq!(
        in_house_style(&written.text, &style).text,
        written.text,
        "{}",
        name.display()
    );
    for part in &written.as_typed {
        assert!(!part.words.is_empty() && !part.why.is_empty());
    }
    !written
        .as_typed
        .iter()
        .any(|part| part.span == Span::new(0, text.len()))
}

#[test]
fn pages_are_the_same_recipe_in_house_style() {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).join("../..");
    let mut folders = vec![
        root.join("demo/lock-house/dishes"),
        root.join("crates/manuscript/tests/unseen/pages"),
    ];
    match std::env::var("POTWRIGHT_CORPUS") {
        Ok(folder) => folders.push(PathBuf::from(folder).join("texts")),
        Err(_) => println!("not run: the pages read by hand; POTWRIGHT_CORPUS names their folder"),
    }
    for folder in folders {
        let pages = pages(&folder);
        let set = pages.iter().filter(|(name, text)| holds(name, text)).count();
        println!(
            "{}: {set} of {} in the order of the house",
            folder.display(),
            pages.len()
        );
    }
}

/// Every line by hand: what a copy-editor makes of it under the default style.
#[test]
fn lines_in_house_style() {
    for (typed, set) in [
        ("50g butter", "50 g butter"),
        ("1.2 litres vegetable stock", "1.2 litres vegetable stock"),
        ("1 1/2 tablespoons olive oil", "1½ tbsp olive oil"),
        ("2 to 3 carrots, diced", "2–3 carrots, diced"),
        ("3 lbs. leeks, sliced", "3 lb leeks, sliced"),
    ] {
        let page = format!("Pot\n\n{typed}\n1 onion\n\nSimmer for 20 minutes.\n");
        let written = in_house_style(&page, &HouseStyle::default());
        assert_eq!(written.text.lines().nth(2), Some(set), "{typed}");
    }
}

#[test]
fn a_house_settles_fractions_temperatures_and_names() {
    let page = "Pot\n\n1½ lb zucchini, sliced\n1 onion\n\nBake the zucchini at 300F/150C for 1½ hours.\n";
    let uk = HouseStyle {
        fractions: Fractions::Figures,
        temperatures: vec![HeatScale::Celsius, HeatScale::Fahrenheit],
        names: Names::Uk,
    };
    let written = in_house_style(page, &uk);
    assert_eq!(
        written.text,
        "Pot\n\n1 1/2 lb courgette, sliced\n1 onion\n\nBake the courgette at 150 °C (300 °F) for 1 1/2 hours.\n"
    );
    assert!(written.as_typed.is_empty());
}

/// The page that the property found: a list of three lines that begins with a range is taken for one line.
#[test]
fn three_lines_stay_three() {
    let page = "Winter pot\n\nServes 1\n\n1 to 2 potatoes, finely chopped\n1 tsp butter, peeled and diced, optional\n\
                1 onions\n\nMelt the butter in a large pot over a medium heat.\n";
    assert_eq!(read(page).ingredients.len(), 3);
}

/// Names that the larder has, in the plural where they are counted.
const COUNTED: &[&str] = &["onions", "carrots", "leeks", "potatoes", "parsnips", "bay leaves"];
const MEASURED: &[&str] = &[
    "butter",
    "olive oil",
    "plain flour",
    "red lentils",
    "pearl barley",
    "double cream",
    "water",
];
const WORK: &[&str] = &["sliced", "finely chopped", "peeled and diced", "rinsed"];
const STEPS: &[&str] = &[
    "Melt the butter in a large pot over a medium heat.",
    "Bring to the boil, then simmer for 20 minutes until soft.",
    "Bake at 150 °C for 1½ hours.",
    "Season with salt and leave to stand for 5 minutes.",
];

fn amount() -> impl Strategy<Value = Amount> {
    let single = (1_i64..24, proptest::sample::select(vec![1_i64, 2, 4]));
    let single = single.prop_map(|(above, below)| Amount::single(Exact::ratio(above, below).unwrap()));
    let range = (1_i64..9, 1_i64..4).prop_map(|(low, more)| Amount {
        low: Exact::whole(low),
        high: Exact::whole(low + more),
        about: false,
    });
    prop_oneof![3 => single, 1 => range]
}

fn ingredient() -> impl Strategy<Value = Ingredient> {
    let units = vec![
        Unit::Gram,
        Unit::Kilogram,
        Unit::Millilitre,
        Unit::Cup,
        Unit::Tablespoon,
        Unit::Teaspoon,
        Unit::Pound,
    ];
    let food = prop_oneof![
        proptest::sample::select(COUNTED).prop_map(|name| (name, None)),
        (proptest::sample::select(MEASURED), proptest::sample::select(units))
            .prop_map(|(name, unit)| (name, Some(unit))),
    ];
    (
        food,
        amount(),
        proptest::option::of(proptest::sample::select(WORK)),
        any::<bool>(),
    )
        .prop_map(|((name, unit), amount, work, optional)| Ingredient {
            quantity: Some(Quantity {
                amount,
                unit,
                span: Span::default(),
            }),
            items: vec![Item {
                name: name.into(),
                ..Item::default()
            }],
            preparation: work.map(words),
            optional,
            ..Ingredient::default()
        })
}

fn words(text: &str) -> Words {
    Words {
        text: text.into(),
        span: Span::default(),
    }
}

fn recipe() -> impl Strategy<Value = Recipe> {
    let list = proptest::collection::vec(ingredient(), 4..12);
    let steps = proptest::collection::vec(proptest::sample::select(STEPS), 1..6);
    (list, steps, 1_i64..40).prop_map(|(ingredients, steps, people)| Recipe {
        title: Some(words("Winter pot")),
        headnote: Vec::new(),
        yields: Some(YieldLine {
            words: words(&format!("Serves {people}")),
            amount: Some(Amount::single(Exact::whole(people))),
            unit: Some("serving".into()),
        }),
        declared_times: Vec::new(),
        sections: Vec::new(),
        ingredients,
        steps: steps
            .into_iter()
            .map(|step| Step {
                words: words(step),
                pieces: Vec::new(),
                section: None,
            })
            .collect(),
        operations: Vec::new(),
        variations: Vec::new(),
        desk_notes: Vec::new(),
        closing: Vec::new(),
        layout: Layout::List,
        blocks: Vec::new(),
        unsure: Vec::new(),
        strays: Vec::new(),
    })
}

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    /// What was written from a recipe alone is read as that recipe.
    #[test]
    fn what_is_written_is_read(recipe in recipe(), figures in any::<bool>()) {
        let fractions = if figures { Fractions::Figures } else { Fractions::Signs };
        let style = HouseStyle { fractions, ..HouseStyle::default() };
        let text = write(&recipe, &style);
        let again = read(&text);
        prop_assert_eq!(again.title.map(|title| title.text), recipe.title.map(|title| title.text));
        prop_assert_eq!(again.yields.and_then(|y| y.amount), recipe.yields.and_then(|y| y.amount));
        prop_assert_eq!(again.ingredients.len(), recipe.ingredients.len(), "{}", text);
        for (read, meant) in again.ingredients.iter().zip(&recipe.ingredients) {
            let said = |i: &Ingredient| i.quantity.map(|q| (q.amount, q.unit));
            prop_assert_eq!(said(read), said(meant), "{}", text);
            prop_assert_eq!(&read.items[0].name, &meant.items[0].name, "{}", text);
            let work = |i: &Ingredient| i.preparation.as_ref().map(|words| words.text.clone());
            prop_assert_eq!(work(read), work(meant), "{}", text);
            prop_assert_eq!(read.optional, meant.optional);
        }
        let steps = |steps: &[Step]| steps.iter().map(|s| s.words.text.replace("1 1/2", "1½")).collect::<Vec<_>>();
        prop_assert_eq!(steps(&again.steps), steps(&recipe.steps));
        let twice = in_house_style(&text, &style);
        prop_assert_eq!(list(&twice.text), list(&text));
        prop_assert_eq!(method(&twice.text), method(&text));
    }

    /// Any text at all: no panic, and the words are there.
    #[test]
    fn any_text(text in "\\PC*|(?s:.{0,200})") {
        let written = in_house_style(&text, &HouseStyle::default());
        prop_assert_eq!(list(&written.text), list(&text));
    }
}
