//! Cards for a hundred portions in two layouts: weights and measures in columns, and what is done beside what is needed.
//!
//! Foods, weights and measures are those of card P 013 01 of the US Armed Forces Recipe Service, TM 10-412 (2003); the
//! words of the method and the layouts are made up.

use potwright_manuscript::{Recipe, read};

const COLUMNS: &str = "\
CLAM CHOWDER

Yield: 100 portions of 1 cup

INGREDIENTS                       WEIGHT         MEASURE             METHOD
Bacon, raw                        8 oz                               see 1
Onions, fresh, chopped            2 lb           1 qt 1-5/8 cup      see 1
Celery, fresh, chopped            1 lb           3-3/4 cup           see 1
Clams, canned, chopped            12 lb          1 gal 1-2/3 qt      see 2
Potatoes, fresh, peeled, cubed    7 lb           1 gal 1-1/8 qt      see 2
Flour, wheat, general purpose     1-3/8 lb       1 qt 1 cup          see 3
Pepper, white, ground             1/4 oz         1 tbsp              see 3
Salt                              1 oz           1 tbsp              see 3

METHOD
1. Cook the bacon in a steam kettle and add the onions and celery.
2. Add the clams and potatoes and cook 10 minutes.
3. Stir in the flour, pepper and salt. Simmer 10 minutes.
";

const BESIDE: &str = "\
CLAM CHOWDER                                     Card 13

AMOUNT                  INGREDIENT                  PROCEDURE

8 oz                    Bacon, raw                  1. Cook the bacon until
2 lb (1 qt 1-5/8 cup)   Onions, fresh, chopped         crisp. Add onions and
1 lb                    Celery, fresh, chopped         celery. Cook 7 minutes.

12 lb                   Clams, canned, chopped      2. Add clams and potatoes
7 lb                    Potatoes, cubed                to the kettle. Simmer
                                                       10 minutes.
1 oz                    Salt                        3. Add salt. Serve.
";

/// Amount in the unit it is stated in, the unit, the food.
fn lines(recipe: &Recipe) -> Vec<(f64, String, String)> {
    let line = |i: &potwright_manuscript::Ingredient| {
        let quantity = i.quantity?;
        let unit = quantity.unit.map_or(String::new(), |unit| unit.name().to_owned());
        let name = i.items.first()?.name.clone();
        Some((quantity.amount.low.to_f64(), unit, name))
    };
    recipe.ingredients.iter().filter_map(line).collect()
}

fn expected(rows: &[(f64, &str, &str)]) -> Vec<(f64, String, String)> {
    rows.iter()
        .map(|(n, unit, name)| (*n, (*unit).to_owned(), (*name).to_owned()))
        .collect()
}

#[test]
fn weights_and_measures_in_columns() {
    let recipe = read(COLUMNS);
    assert_eq!(
        lines(&recipe),
        expected(&[
            (8.0, "ounce", "bacon"),
            (2.0, "pound", "onions"),
            (1.0, "pound", "celery"),
            (12.0, "pound", "clams"),
            (7.0, "pound", "potatoes"),
            // 1-3/8
            (1.375, "pound", "flour"),
            (0.25, "ounce", "white pepper"),
            (1.0, "ounce", "salt"),
        ])
    );
    // The measure is the weight said again: 1 qt 1-5/8 cup = 4 + 1 5/8 cups of 1/4 quart = 1.40625 qt.
    let onions = &recipe.ingredients[1].also;
    assert_eq!(onions.len(), 1);
    assert!((onions[0].amount.low.to_f64() - 1.40625).abs() < 1e-12, "{onions:?}");
    assert_eq!(recipe.steps.len(), 3);
    assert!(
        recipe
            .ingredients
            .iter()
            .all(|i| i.preparation.as_ref().is_none_or(|p| !p.text.contains("see")))
    );
}

#[test]
fn what_is_done_stands_beside_what_is_needed() {
    let recipe = read(BESIDE);
    assert_eq!(
        lines(&recipe),
        expected(&[
            (8.0, "ounce", "bacon"),
            (2.0, "pound", "onions"),
            (1.0, "pound", "celery"),
            (12.0, "pound", "clams"),
            (7.0, "pound", "potatoes"),
            (1.0, "ounce", "salt"),
        ])
    );
    let steps: Vec<&str> = recipe.steps.iter().map(|step| step.words.text.as_str()).collect();
    assert_eq!(
        steps,
        [
            "Cook the bacon until crisp. Add onions and celery. Cook 7 minutes.",
            "Add clams and potatoes to the kettle. Simmer 10 minutes.",
            "Add salt. Serve.",
        ]
    );
    let minutes: Vec<f64> = recipe
        .operations
        .iter()
        .filter_map(|op| op.minutes.as_ref().map(|m| m.low))
        .collect();
    assert_eq!(minutes, [7.0, 10.0]);
    // Every step holds the places of its own words and of no food of the list.
    for step in &recipe.steps {
        let words: Vec<&str> = step.places().iter().map(|place| place.of(BESIDE)).collect();
        assert!(!words.join(" ").contains("chopped"), "{words:?}");
    }
    // Nothing of the page is lost.
    let whole: String = recipe.blocks.iter().map(|block| block.span.of(BESIDE)).collect();
    assert_eq!(whole, BESIDE);
}

#[test]
fn what_a_web_page_has_around_a_recipe_is_no_food() {
    let page = "Leek soup\n\n38 comments\n\nWhat you need\n\n3 leeks\n— Advertisement —\n30 g butter\n\nWhat you do\n\n\
        Sweat the leeks in the butter.\n\nYou may also like\n10-Minute Noodles\n\n38 comments\n\nAda, March 3\nI used 2 cups kale.\n";
    let recipe = read(page);
    let names: Vec<&str> = recipe.ingredients.iter().map(|i| i.items[0].name.as_str()).collect();
    assert_eq!(names, ["leeks", "butter"]);
    assert_eq!(recipe.steps.len(), 1);
}

#[test]
fn a_table_headed_by_its_component() {
    let page = "Fish soup\n\nA. BASE\tQTY\tUNIT\tPREP\nOnion\t400\tg\tsliced\nSaffron\t1\tg\t\n\nSweat the onion. Add the saffron.\n\n\
        B. ROUILLE\tQTY\tUNIT\tPREP\nGarlic\t15\tg\tgrated\nSalt\t4\tg\t\n\nPound the garlic with the salt.\n";
    let recipe = read(page);
    let sections: Vec<&str> = recipe.sections.iter().map(|section| section.name.as_str()).collect();
    assert_eq!(sections, ["base", "rouille"]);
    assert_eq!(
        lines(&recipe),
        expected(&[
            (400.0, "gram", "onion"),
            (1.0, "gram", "saffron"),
            (15.0, "gram", "garlic"),
            (4.0, "gram", "salt")
        ])
    );
}

#[test]
fn what_brackets_behind_tins_tell_is_what_one_holds() {
    for (line, one) in [
        ("6 cans corn (15 oz)", Some(15.0)),
        ("2 tins tomatoes (800 g in all)", None),
    ] {
        let recipe = read(&format!("Soup\n\n{line}\n2 leeks\n\nHeat the corn and tomatoes.\n"));
        let package = recipe.ingredients[0].package.map(|q| q.amount.low.to_f64());
        assert_eq!(package, one, "{line}");
        assert_eq!(recipe.ingredients[0].also.len(), usize::from(one.is_none()), "{line}");
    }
}
