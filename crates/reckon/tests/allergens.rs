//! What a page must declare, case by case, from the words of the page to the row of the dossier.
//!
//! The expectations are those of the law and of what the foods are: US law names nine allergens (FALCPA 2004, FASTER Act
//! 2021), Regulation (EU) 1169/2011 Annex II fourteen; sulphites count above 10 mg of sulphur dioxide in a kilogram.

use potwright_larder::Allergen::{
    Celery, Crustaceans, Eggs, Fish, Milk, Molluscs, Mustard, OtherGluten, Sesame, Soybeans, Sulphites, TreeNuts, Wheat,
};
use potwright_larder::{Allergen, Contains, Larder};
use potwright_measure::Measures;
use potwright_pot::{Kitchen, Made, resolve};
use potwright_reckon::{AllergenRow, Dossier, Prices, Reckoned, Target, reckon};

fn cook(text: &str, made: &[Made]) -> Reckoned {
    let recipe = potwright_manuscript::read(text);
    let (kitchen, larder) = (Kitchen::default(), Larder::built_in());
    let process = resolve(&recipe, text, larder, made, &kitchen, Measures::Metric);
    let prices = Prices::default();
    reckon(process, &kitchen, larder, made, &prices, &Target::default(), 0, 1)
}

/// A pot of these lines, boiled in water.
fn pot(lines: &str) -> String {
    format!(
        "Pot\n\nServes 4\n\n1 litre water\n{lines}\n\n1. Put everything in a large pot, bring to the boil and simmer for 30 minutes.\n"
    )
}

fn row(dossier: &Dossier, which: Allergen) -> &AllergenRow {
    let rows = &dossier.allergens;
    rows.iter().find(|row| row.allergen == which).expect("a row for each")
}

fn all(dossier: &Dossier, contains: Contains) -> Vec<Allergen> {
    let rows = dossier.allergens.iter().filter(|row| row.contains == contains);
    rows.map(|row| row.allergen).collect()
}

/// What is in a pot of these lines for sure, and what nobody knows; all others are known not to be.
fn check(lines: &str, yes: &[Allergen], not_known: &[Allergen]) {
    let found = cook(&pot(lines), &[]).dossier;
    let mut expected = (yes.to_vec(), not_known.to_vec());
    expected.0.sort_unstable();
    expected.1.sort_unstable();
    let mut got = (all(&found, Contains::Yes), all(&found, Contains::NotKnown));
    got.0.sort_unstable();
    got.1.sort_unstable();
    assert_eq!(got, expected, "{lines}: contains, not known");
}

#[test]
fn single_foods_are_what_they_are() {
    check("2 kg beef bones\n2 onions\n1 tsp salt", &[], &[]);
    check("30 g butter", &[Milk], &[]);
    check("100 ml double cream", &[Milk], &[]);
    check("100 g cheddar cheese", &[Milk], &[]);
    check("25 g plain flour\n25 g lard", &[Wheat], &[]);
    check("150 g pearl barley", &[OtherGluten], &[]);
    check("2 sticks celery", &[Celery], &[]);
    check("1 celeriac", &[Celery], &[]);
    check("2 eggs", &[Eggs], &[]);
    check("50 g hazelnuts", &[TreeNuts], &[]);
    check("1 tbsp sesame seeds", &[Sesame], &[]);
    check("500 g cod fillet", &[Fish], &[]);
}

/// Oats are a cereal of EU law and no wheat, but they are milled beside it.
#[test]
fn oats_are_often_milled_beside_wheat() {
    check("150 g rolled oats", &[OtherGluten], &[Wheat]);
}

/// Molluscs are no major allergen of US law, crustaceans are; neither is the other.
#[test]
fn molluscs_and_crustaceans_are_apart() {
    let found = cook(&pot("1 kg mussels"), &[]).dossier;
    let molluscs = row(&found, Molluscs);
    assert_eq!(
        (molluscs.contains, molluscs.declare_us, molluscs.declare_eu),
        (Contains::Yes, false, true)
    );
    assert_eq!(row(&found, Crustaceans).contains, Contains::No);
    let found = cook(&pot("500 g raw prawns"), &[]).dossier;
    let crustaceans = row(&found, Crustaceans);
    assert_eq!(
        (crustaceans.contains, crustaceans.declare_us, crustaceans.declare_eu),
        (Contains::Yes, true, true)
    );
    assert_eq!(row(&found, Molluscs).contains, Contains::No);
}

/// Anchovies are what makes the sauce; what else is in it only the label knows.
#[test]
fn seasoning_sauces_hold_what_they_are_made_of() {
    let found = cook(&pot("1 tbsp worcestershire sauce"), &[]).dossier;
    assert_eq!(row(&found, Fish).contains, Contains::Yes);
    assert_eq!(
        row(&found, OtherGluten).contains,
        Contains::NotKnown,
        "malt vinegar in some"
    );
    let found = cook(&pot("2 tbsp soy sauce"), &[]).dossier;
    assert_eq!(all(&found, Contains::Yes), [Wheat, Soybeans]);
    let found = cook(&pot("1 tsp Dijon mustard"), &[]).dossier;
    assert_eq!(row(&found, Mustard).contains, Contains::Yes);
}

/// Suet from the butcher is fat; from the packet it is rolled in flour, and the page does not say which.
#[test]
fn suet_may_be_coated_with_flour() {
    let found = cook(&pot("75 g suet"), &[]).dossier;
    assert_ne!(row(&found, Wheat).contains, Contains::No);
    assert_eq!(row(&found, Milk).contains, Contains::No);
}

#[test]
fn nobody_knows_what_is_in_a_bought_sausage() {
    let found = cook(&pot("6 pork sausages"), &[]).dossier;
    for which in [Wheat, Sulphites, Milk, Soybeans, Mustard] {
        assert_eq!(row(&found, which).contains, Contains::NotKnown, "{which:?}");
    }
    assert_eq!(found.animal, Some(true));
}

/// A bought stock may hold celery and more; one's own holds what went in, and what was strained out counts.
#[test]
fn a_stock_of_ones_own_is_known_and_a_bought_one_is_not() {
    let bought = cook(&pot("1 litre chicken stock"), &[]).dossier;
    for which in [Celery, Wheat, Milk, Eggs, Soybeans] {
        assert_eq!(row(&bought, which).contains, Contains::NotKnown, "{which:?}");
    }
    let stock = "Plain chicken stock\n\n1 kg chicken bones\n2 sticks celery\n2 litres water\n\n\
        Put the bones, celery and water in a large pot and simmer for 2 hours. Strain and throw away the bones and celery.\n";
    let stock = cook(stock, &[]);
    assert!(
        !stock
            .trace
            .served_pieces
            .iter()
            .any(|pieces| pieces.matter.total_kg() > 0.0),
        "nothing is left of the celery"
    );
    assert_eq!(all(&stock.dossier, Contains::Yes), [Celery]);
    assert_eq!(all(&stock.dossier, Contains::NotKnown), []);
    let soup = cook(&pot("1 litre plain chicken stock\n100 g leeks"), &[stock.made]).dossier;
    assert_eq!(all(&soup, Contains::Yes), [Celery]);
    assert_eq!(row(&soup, Celery).causes, ["plain chicken stock (celery)"]);
    assert_eq!(all(&soup, Contains::NotKnown), []);
    assert_eq!(soup.animal, Some(true));
}

/// The flour of a roux is wheat, however little of it there is.
#[test]
fn flour_in_a_roux_counts() {
    let text = "White sauce\n\nServes 4\n\n40 g butter\n40 g plain flour\n600 ml milk\n\n\
        Melt the butter in a pan, stir in the flour and cook for 2 minutes. Pour in the milk and simmer for 5 minutes.\n";
    let found = cook(text, &[]).dossier;
    assert_eq!(all(&found, Contains::Yes), [Wheat, Milk]);
    assert_eq!(row(&found, Wheat).causes, ["plain flour"]);
}

/// Wine as the larder has it, by hand: what it brings is its volume times its sulphite, over the mass of the dish.
/// Half a litre in a dish of one to two kilograms is far above 10 mg/kg, a spoonful in it below.
#[test]
fn wine_counts_above_ten_milligrams_in_a_kilogram() {
    let much = cook(&pot("500 ml dry white wine"), &[]);
    assert_eq!(row(&much.dossier, Sulphites).contains, Contains::Yes);
    let little = cook(&pot("1 tbsp dry white wine"), &[]);
    assert_eq!(row(&little.dossier, Sulphites).contains, Contains::No);
    for (reckoned, above) in [(&much, true), (&little, false)] {
        let wine = &reckoned.process.lots[1];
        let potwright_pot::Source::Larder(id) = wine.source else {
            panic!("{wine:?}")
        };
        let mg_kg = Larder::built_in()
            .get(id)
            .and_then(|food| food.behaviour.sulphite_mg_kg);
        let brought_mg = mg_kg.expect("wine has a figure") * wine.mass.kilograms();
        let dish_kg = reckoned.made.matter.total_kg();
        assert_eq!(brought_mg / dish_kg > 10.0, above, "{brought_mg} mg in {dish_kg} kg");
    }
}

/// 'Butter or olive oil', 'chicken or vegetable stock', walnuts if you like: whatever the page prints counts.
#[test]
fn second_choices_and_options_count() {
    let found = cook(&pot("2 tbsp olive oil or butter\n500 g carrots"), &[]).dossier;
    assert_eq!(row(&found, Milk).causes, ["butter (if used instead of olive oil)"]);
    assert_eq!(found.animal, Some(true));
    assert_eq!(found.animal_causes, ["butter (if used instead of olive oil)"]);
    let found = cook(&pot("30 g butter or olive oil"), &[]).dossier;
    assert_eq!(row(&found, Milk).causes, ["butter"]);
    let found = cook(&pot("500 g carrots\n50 g walnuts (optional)"), &[]).dossier;
    assert_eq!(row(&found, TreeNuts).causes, ["walnuts (optional)"]);
    assert!(row(&found, TreeNuts).declare_us);
}

/// What is only put on the table with it counts.
#[test]
fn what_is_served_with_it_counts() {
    let text = "Soup\n\nServes 4\n\n500 g carrots\n1 litre water\n\nTo serve:\n40 g hazelnuts, toasted\n\n\
        Simmer the carrots in the water for 30 minutes. Scatter with the hazelnuts.\n";
    assert_eq!(row(&cook(text, &[]).dossier, TreeNuts).contains, Contains::Yes);
}
