//! schema.org/Recipe in and out: the forms that the vocabulary allows, read as typed pages, and back.

use std::fs;
use std::path::Path;

use potwright_manuscript::structured::{
    Computed, Nutrition, StructuredError, TypedPage, is_structured, pages, recipe_json,
};
use potwright_manuscript::{Recipe, read};
use proptest::prelude::*;
use serde_json::{Value, json};

fn one(data: &Value) -> TypedPage {
    pages(&data.to_string()).expect("is read").swap_remove(0)
}

/// A recipe with all that the vocabulary lets a recipe say, invented.
fn chowder() -> Value {
    json!({
        "@context": "https://schema.org",
        "@type": ["Recipe", "NewsArticle"],
        "name": "Lock chowder &amp; dumplings",
        "description": "<p>For cold evenings.</p><p>Keeps well.</p>",
        "recipeYield": ["6", "6 servings"],
        "prepTime": "PT20M",
        "cookTime": "PT1H5M",
        "totalTime": "PT1H25M",
        "recipeIngredient": ["&frac12; cup flour", "500 g haddock,\nskinned", {"@type": "HowToSupply", "name": "butter", "requiredQuantity": {"value": 30, "unitText": "g"}}],
        "tool": [{"@type": "HowToTool", "name": "a 5 litre pot"}],
        "recipeInstructions": [
            {"@type": "HowToSection", "name": "Chowder", "itemListElement": [
                {"@type": "HowToStep", "name": "Melt the butter", "text": "Melt the butter in a large pot.", "image": "x.jpg"},
                {"@type": "HowToStep", "name": "Fish last", "itemListElement": [
                    {"@type": "HowToDirection", "text": "Add the haddock."},
                    {"@type": "HowToDirection", "text": "Simmer for 5 minutes."},
                    {"@type": "HowToTip", "text": "It flakes when it is done."}]}]},
            {"@type": "HowToSection", "name": "Dumplings", "itemListElement": ["Mix the flour with water."]},
            {"@type": "HowToTip", "name": "Variation", "text": "Leave out the butter."}
        ],
        "author": {"@type": "Person", "name": "Lock-keeper"},
        "nutrition": {"@type": "NutritionInformation", "calories": "300 kcal"},
        "keywords": "soup, winter"
    })
}

/// Read from the data above by hand.
#[test]
fn all_that_a_recipe_says_stands_on_the_page() {
    let page = one(&chowder());
    assert_eq!(
        page.text,
        "Lock chowder & dumplings\n\nFor cold evenings.\n\nKeeps well.\n\n6 servings\nPreparation time: 20 minutes\n\
            Cooking time: 1 hour 5 minutes\nTotal time: 1 hour 25 minutes\n\nIngredients\n\n½ cup flour\n\
            500 g haddock,\nskinned\n30 g butter\n\nMethod\n\nChowder:\n\n1. Melt the butter in a large pot.\n\n\
            2. [Fish last] Add the haddock. Simmer for 5 minutes.\n\nDumplings:\n\n3. Mix the flour with water.\n\n\
            Variations\n\nLeave out the butter.\n\nNotes\n\nIt flakes when it is done.\n\nEquipment\n\na 5 litre pot\n"
    );
    let left: Vec<&str> = page.left.iter().map(|left| left.property.as_str()).collect();
    assert_eq!(left, ["author", "nutrition", "keywords", "recipeInstructions: image"]);
    assert_eq!(page.left[2].value, "soup, winter");
    let recipe = read(&page.text);
    assert_eq!(
        recipe.title.as_ref().map(|title| title.text.as_str()),
        Some("Lock chowder & dumplings")
    );
    assert_eq!(recipe.steps.len(), 3);
    assert_eq!(
        recipe.yields.as_ref().and_then(|yields| yields.servings()),
        Some((6.0, 6.0))
    );
    let times: Vec<(&str, f64)> = recipe
        .declared_times
        .iter()
        .map(|t| (t.what.as_str(), t.minutes.1))
        .collect();
    assert_eq!(times, [("preparation", 20.0), ("cooking", 65.0), ("total", 85.0)]);
    assert_eq!(recipe.variations.len(), 1);
}

/// Bare, in a list, in a graph with references, as the thing a page is about, inside a saved page.
#[test]
fn wherever_the_recipe_stands() {
    let recipe = json!({"@type": "https://schema.org/Recipe", "@id": "#r", "name": "Soup", "recipeIngredient": ["2 leeks"],
        "recipeInstructions": {"@id": "#m"}});
    let method = json!({"@id": "#m", "@type": "ItemList", "itemListElement": [{"@type": "HowToStep", "text": "Boil the leeks."}]});
    let expected = "Soup\n\nIngredients\n\n2 leeks\n\nMethod\n\n1. Boil the leeks.\n";
    let graph = json!({"@context": "https://schema.org", "@graph": [{"@type": "WebSite"}, recipe, method]});
    let listed = json!([{"@type": "Thing"}, [recipe.clone(), method.clone()]]);
    let about = json!({"@type": "WebPage", "mainEntity": recipe, "hasPart": [method]});
    for data in [&graph, &listed, &about] {
        assert_eq!(one(data).text, expected);
        for page in [
            format!(
                "<!DOCTYPE html><html><body><script>no()</script><script type='application/ld+json'>{data}</script>"
            ),
            format!(
                "\u{feff}<html><SCRIPT TYPE=\"application/ld+json\">{{broken</SCRIPT><script type=\"application/ld+json\">\n//<![CDATA[\n{data}\n//]]></script></html>"
            ),
        ] {
            assert!(is_structured(&page));
            let found = pages(&page).expect("is read");
            assert_eq!((found.len(), found[0].text.as_str()), (1, expected), "{page}");
        }
    }
}

#[test]
fn texts_that_hold_no_recipe_say_so() {
    for (text, expected) in [
        ("{\"@type\": \"Thing\"}", StructuredError::NoRecipe),
        ("<html><body>2 leeks</body></html>", StructuredError::NoData),
    ] {
        assert_eq!(pages(text), Err(expected), "{text}");
    }
    let Err(StructuredError::NotJson(line, column, _)) = pages("{\n  \"a\": }") else {
        panic!("is no JSON")
    };
    assert_eq!((line, column), (2, 8));
    assert!(pages(&"[".repeat(100_000)).is_err());
    for typed in ["[in test]\nSoup", "Soup\n\n2 leeks", "[[28 cm pot]]", "", "<3 soup"] {
        assert!(!is_structured(typed), "{typed}");
    }
}

/// Parts that refer to each other in a circle come to an end.
#[test]
fn circles_end() {
    let refer = json!({"@id": "#a"});
    let all = vec![refer.clone(); 40];
    let data = json!({"@graph": [{"@type": "Recipe", "name": "x", "recipeInstructions": all},
        {"@id": "#a", "@type": "HowToSection", "itemListElement": all}]});
    _ = pages(&data.to_string());
}

/// A step's line ends and tabs stand raw in many files, though JSON forbids them.
#[test]
fn raw_line_ends_are_taken_as_meant() {
    let text = "{\"@type\": \"Recipe\", \"name\": \"Soup\", \"recipeInstructions\": \"Boil\tit.\nServe it.\"}";
    assert!(pages(text).expect("is read")[0].text.contains("1. Boil it. Serve it."));
}

/// What the vocabulary can hold of a page.
fn held(text: &str, recipe: &Recipe) -> Value {
    let mut value = recipe_json(text, recipe, &Computed::default());
    // Sections that only the list has are not held, and a step's section is held by its heading.
    if let Some(object) = value.as_object_mut() {
        object.remove("@context");
    }
    value
}

fn round_trip(text: &str) -> Result<(), String> {
    let recipe = read(text);
    let data = held(text, &recipe);
    let page = one(&data);
    if !page.left.is_empty() {
        return Err(format!("left: {:?}", page.left));
    }
    let back = held(&page.text, &read(&page.text));
    if back == data {
        Ok(())
    } else {
        Err(format!("{data:#}\n=====\n{}\n=====\n{back:#}", page.text))
    }
}

#[test]
fn the_demo_book_out_and_back() {
    let folder = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../demo/lock-house/dishes");
    let mut count = 0;
    for entry in fs::read_dir(folder).expect("the demo book is there") {
        let path = entry.expect("is there").path();
        let text = fs::read_to_string(&path).expect("is text");
        round_trip(&text).unwrap_or_else(|says| panic!("{}: {says}", path.display()));
        let (before, data) = (read(&text), held(&text, &read(&text)));
        let after = one(&data).text;
        let amounts = |recipe: &Recipe| {
            recipe
                .ingredients
                .iter()
                .map(|i| i.quantity.map(|q| (q.amount, q.unit)))
                .collect::<Vec<_>>()
        };
        assert_eq!(amounts(&before), amounts(&read(&after)), "{}", path.display());
        assert_eq!(before.steps.len(), read(&after).steps.len(), "{}", path.display());
        count += 1;
    }
    assert_eq!(count, 12);
}

/// Parts of pages that stand together well; a page is made of some of each.
const LINES: [&str; 8] = [
    "30 g butter",
    "2 large onions, chopped",
    "1 litre stock",
    "salt to taste",
    "1/2 tsp black pepper",
    "400 g tin chopped tomatoes",
    "a bunch of parsley",
    "2 to 3 carrots, sliced",
];
const STEPS: [&str; 6] = [
    "Melt the butter in a large pot over a low heat.",
    "Add the onions & carrots and cook for 10 minutes.",
    "Pour in the stock and bring to the boil.",
    "Simmer, covered, for 20 to 25 minutes until tender.",
    "Season with salt and \"plenty\" of pepper.",
    "Scatter with parsley <and serve>.",
];
const YIELDS: [&str; 4] = ["Serves 6", "Serves 4 to 6", "Makes about 2 litres", ""];

proptest! {
    #![proptest_config(ProptestConfig::with_cases(200))]

    #[test]
    fn generated_pages_out_and_back(
        lines in proptest::sample::subsequence(&LINES[..], 3..8),
        steps in proptest::sample::subsequence(&STEPS[..], 1..6),
        yields in proptest::sample::select(&YIELDS[..]),
        minutes in 1_u32..3000,
    ) {
        let steps: Vec<String> = steps.iter().enumerate().map(|(at, step)| format!("{}. {step}\n\n", at + 1)).collect();
        let text = format!(
            "Winter soup\n\nIt warms everyone who comes in from the tow-path.\n\n{yields}\nTotal time: {} hours {} minutes\n\n{}\n\n{}",
            minutes / 60, minutes % 60, lines.join("\n"), steps.concat()
        );
        if let Err(says) = round_trip(&text) {
            return Err(TestCaseError::fail(says));
        }
    }
}

/// Figures are printed with the digits that a computation bears; the units are those of the vocabulary's examples.
#[test]
fn what_was_computed_goes_along() {
    let text = "Soup\n\n2 leeks\n\nBoil the leeks for 10 minutes.\n";
    let nutrition = Nutrition {
        portion_g: Some(412.3),
        energy_kcal: Some(243.0),
        fat_g: Some(3.84),
        sodium_mg: Some(1312.0),
        ..Nutrition::default()
    };
    let computed = Computed {
        yields: Some("6 portions".into()),
        total_minutes: Some(84.6),
        nutrition: Some(nutrition),
    };
    let data = recipe_json(text, &read(text), &computed);
    assert_eq!(data["totalTime"], "PT1H25M");
    assert_eq!(data["recipeYield"], "6 portions");
    let expected = json!({"@type": "NutritionInformation", "servingSize": "410 g", "calories": "240 kcal", "fatContent": "3.8 g", "sodiumContent": "1300 mg"});
    assert_eq!(data["nutrition"], expected);
}

/// Notes to the desk are never printed, so they do not go along.
#[test]
fn notes_to_the_desk_stay_at_home() {
    let text = "Soup\n\n2 leeks\n\nBoil the leeks. [28 cm pot] Serve.\n";
    let data = recipe_json(text, &read(text), &Computed::default());
    assert_eq!(data["recipeInstructions"][0]["text"], "Boil the leeks. Serve.");
}
