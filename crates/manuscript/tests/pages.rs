//! Pages of many habits: what each stretch is taken for. The pages are made up; the expectation is what a reader sees.
//!
//! One line a block: its kind and its first words. Gaps are left out.

use potwright_manuscript::{BlockKind, Change, Layout, read};

fn show(page: &str) -> Vec<String> {
    let blocks = read(page).blocks;
    let kept = blocks.iter().filter(|block| block.kind != BlockKind::Gap);
    let words = |text: &str| text.split_whitespace().take(3).collect::<Vec<_>>().join(" ");
    kept.map(|block| format!("{:?} {}", block.kind, words(block.span.of(page))))
        .collect()
}

#[track_caller]
fn check(page: &str, expected: &[&str]) {
    assert_eq!(show(page), expected, "\n{page}");
}

#[test]
fn title_headnote_list_and_paragraphs() {
    check(
        "Eel Pie Soup\n\nGood on a wet day.\nServes 4\n\n2 eels\na bunch of sorrel\nSalt\n\nSkin the eels. Boil them.\n\nKeeps a day.\n",
        &[
            "Title Eel Pie Soup",
            "Headnote Good on a",
            "Yield Serves 4",
            "Ingredient 2 eels",
            "Ingredient a bunch of",
            "Ingredient Salt",
            "Step Skin the eels.",
            "Closing Keeps a day.",
        ],
    );
}

#[test]
fn markdown_signs_are_tolerated() {
    check(
        "# Sorrel Soup\n\n**Serves:** 4\n\n## Ingredients\n\n- 200 g sorrel\n* salt\n\n## Method\n\n1. Wash the sorrel.\n2. Boil it.\n\n## Notes\n- Sorrel is sour.\n",
        &[
            "Title Sorrel Soup",
            "Yield Serves:** 4",
            "PartHeading Ingredients",
            "Ingredient 200 g sorrel",
            "Ingredient salt",
            "PartHeading Method",
            "Step Wash the sorrel.",
            "Step Boil it.",
            "PartHeading Notes",
            "Closing Sorrel is sour.",
        ],
    );
}

#[test]
fn components_and_wrapped_lines() {
    check(
        "STEW\n\n2 lb mutton, cut in pieces and rolled in well seasoned\n   flour\n\nFor the dumplings:\n100 g flour\n50 g suet\n\nPut the mutton in a pot with water enough to cover it and boil it\ngently for an hour. Add the dumplings and boil\ntwenty minutes.\n",
        &[
            "Title STEW",
            "Ingredient 2 lb mutton,",
            "SectionHeading For the dumplings:",
            "Ingredient 100 g flour",
            "Ingredient 50 g suet",
            "Step Put the mutton",
        ],
    );
}

#[test]
fn notes_to_the_desk_stand_apart() {
    let page = "Broth [in test]\n\n2 leeks\n1 l water\n\nBoil the leeks. [28 cm pot, lid ajar] Strain.\n\n[show]\n";
    check(
        page,
        &[
            "Title Broth",
            "DeskNote [in test]",
            "Ingredient 2 leeks",
            "Ingredient 1 l water",
            "Step Boil the leeks.",
            "DeskNote [28 cm pot,",
            "Step Strain.",
            "DeskNote [show]",
        ],
    );
    let recipe = read(page);
    assert_eq!(recipe.steps[0].words.text, "Boil the leeks. Strain.");
    let notes: Vec<(&str, Option<usize>)> = recipe
        .desk_notes
        .iter()
        .map(|n| (n.words.text.as_str(), n.step))
        .collect();
    assert_eq!(
        notes,
        [("in test", None), ("28 cm pot, lid ajar", Some(0)), ("show", None)]
    );
}

#[test]
fn a_table_of_a_restaurant() {
    check(
        "EEL\nBatch: 20 portions\n\nItem | Qty | Unit\n---|---|---\nEel | 4 | kg\nFish stock | 6 | l\nDill | 2 | bunch\n\nMethod\n1) Skin eels.\n2) Poach in stock, 20 min.\n",
        &[
            "Title EEL",
            "Yield Batch: 20 portions",
            "PartHeading Item | Qty",
            "Ingredient Eel | 4",
            "Ingredient Fish stock |",
            "Ingredient Dill | 2",
            "PartHeading Method",
            "Step Skin eels.",
            "Step Poach in stock,",
        ],
    );
}

#[test]
fn two_columns_and_groups_with_their_work() {
    check(
        "Eel soup\t\tserves 4\n\n2 eels\t\t1 l water\n1 leek\t\t30 g butter\n\nBoil everything.\n",
        &[
            "Title Eel soup",
            "Yield serves 4",
            "Ingredient 2 eels",
            "Ingredient 1 l water",
            "Ingredient 1 leek",
            "Ingredient 30 g butter",
            "Step Boil everything.",
        ],
    );
    check(
        "Eel soup\n\n1 leek\n30 g butter\n> Sweat 5 mins.\n\n2 eels\n1 l water\n> Add; simmer 20 mins.\n",
        &[
            "Title Eel soup",
            "Ingredient 1 leek",
            "Ingredient 30 g butter",
            "Step Sweat 5 mins.",
            "Ingredient 2 eels",
            "Ingredient 1 l water",
            "Step Add; simmer 20",
        ],
    );
}

#[test]
fn labelled_paragraphs() {
    check(
        "Eel soup\n\nIngredients: 2 eels, 1 leek, 30 g butter; salt.\n\nMethod: Sweat the leek in the butter. Add the eels.\n",
        &[
            "Title Eel soup",
            "PartHeading Ingredients:",
            "Ingredient 2 eels, 1",
            "PartHeading Method:",
            "Step Sweat the leek",
        ],
    );
}

/// The names of the foods with their amounts.
fn foods(page: &str) -> Vec<String> {
    let recipe = read(page);
    assert_eq!(recipe.layout, Layout::Prose);
    let amount = |i: &potwright_manuscript::Ingredient| i.quantity.map_or("-".to_owned(), |q| q.amount.low.to_string());
    recipe
        .ingredients
        .iter()
        .flat_map(|i| i.items.iter().map(move |item| format!("{} {}", amount(i), item.name)))
        .collect()
}

#[test]
fn prose_that_counts_its_foods_up() {
    let page = "EEL SOUP.\n\nTwo pounds of eels, four leeks, yolks of two eggs, three spoonfuls of butter, one of flour, salt. Boil the eels in water. Thicken with the flour.\n";
    assert_eq!(
        foods(page),
        ["2 eels", "4 leeks", "2 egg yolks", "3 butter", "1 flour", "- salt"]
    );
}

#[test]
fn prose_that_names_its_foods_on_the_way() {
    let page = "Eels\n\nSoften 2 onions and 1 leek, both sliced, in a knob of butter. Add 600g of eel, skinned, a bay leaf and the juice of 1 lemon. Pour over boiling water and cook the eel for 20 minutes. Butter a dish. No salt. Eat with bread.\n";
    assert_eq!(
        foods(page),
        [
            "2 onions",
            "1 leek",
            "1 butter",
            "600 eel",
            "1 bay leaf",
            "1 lemon juice",
            "- water"
        ]
    );
    let sliced: Vec<bool> = read(page)
        .ingredients
        .iter()
        .take(2)
        .map(|i| i.preparation.is_some())
        .collect();
    assert_eq!(sliced, [true, true]);
}

#[test]
fn variations_change_the_list() {
    let page = "Eel soup\n\n2 eels\n30 g butter\n100 ml cream\n\nBoil the eels.\n\nVariation: without cream. Leave out the cream and use 2 tbsp oil instead of the butter; add 1 small potato.\n";
    let recipe = read(page);
    let variation = &recipe.variations[0];
    assert_eq!(variation.name.as_ref().map(|w| w.text.as_str()), Some("without cream"));
    let shown: Vec<String> = variation
        .changes
        .iter()
        .map(|change| match change {
            Change::LeaveOut(index) => format!("- {}", recipe.ingredients[*index].items[0].name),
            Change::Swap { ingredient, with } => format!(
                "{} -> {}",
                recipe.ingredients[*ingredient].items[0].name, with.items[0].name
            ),
            Change::Add(with) => format!("+ {}", with.items[0].name),
        })
        .collect();
    assert_eq!(shown, ["- cream", "butter -> oil", "+ potato"]);
}

#[test]
fn lines_that_lean_on_others() {
    let recipe = read(
        "Eel soup\n\n2 l fish stock in all\n2 eels, or\n1 kg haddock\n500 ml of the stock, hot\nras el hanout\ttbc\n\nBoil.\n",
    );
    assert_eq!(recipe.ingredients[2].instead_of, Some(1));
    assert_eq!(recipe.ingredients[3].part_of, Some(0));
    assert_eq!(recipe.unsure.len(), 1, "{:?}", recipe.unsure);
}

/// One line with an amount before a sentence is a list, with or without a title's blank line, a bullet or a yield.
#[test]
fn a_list_of_one_line_is_a_list() {
    for (page, food) in [
        (
            "Satay\n\nServes 2\n\n100 g peanuts\n\nSimmer for 5 minutes.\n",
            "peanuts",
        ),
        (
            "White Sauce\n\n500 ml double cream\nSimmer it until thick.\n",
            "double cream",
        ),
        ("Onions\n\n150 g onion\n\nFry the onion until soft.\n", "onion"),
        ("Boiled Eggs\n\n- 4 eggs\n\nBoil the eggs for 7 minutes.\n", "eggs"),
        (
            "Lupins\n\nA snack.\n\n1 tin lupin beans\n\nDrain the beans. Warm them through.\n",
            "lupin beans",
        ),
    ] {
        let recipe = read(page);
        assert_eq!(recipe.layout, Layout::List, "{page}");
        let names: Vec<&str> = recipe.ingredients.iter().map(|i| i.items[0].name.as_str()).collect();
        assert_eq!(names, [food], "{page}");
        assert!(recipe.ingredients[0].quantity.is_some(), "{page}");
    }
}

/// A line of food in the middle of the method is never lost in silence.
#[test]
fn a_stray_line_of_food_is_told() {
    let page = "Satay\n\nIngredients\n200 g rice\n1 onion\n\nMethod\nBoil the rice for 12 minutes.\n100 g peanuts\nFry the \
        onion.\n";
    let recipe = read(page);
    let listed = |food: &str| {
        recipe
            .ingredients
            .iter()
            .any(|i| i.items.iter().any(|item| item.name == food))
    };
    let used = recipe.operations.iter().any(|op| op.span.of(page).contains("peanuts"));
    let told = recipe.strays.iter().any(|row| row.text == "100 g peanuts");
    let asked = recipe
        .unsure
        .iter()
        .any(|unsure| unsure.span.of(page).contains("peanuts"));
    assert!(listed("peanuts") || used || told && asked);
    assert!(
        read("Rice\n\n200 g rice\n1 onion\n\nBoil the rice. Fry the onion.\n")
            .strays
            .is_empty()
    );
}
