//! Lines and pages, each expectation worked by hand.

use potwright_measure::Measures::{Metric as MetricHome, Us as UsHome};
use potwright_plan::BatchSize::AsWritten as SameSize;
use potwright_plan::MeasuresWanted::{AsWritten, Both, Metric, Us};
use potwright_plan::{BatchSize, MeasuresWanted, WarningKind};

use super::{demo_dishes, for_servings, reset, times};

/// The line of a page of one line, re-set.
fn line(line: &str, size: BatchSize, measures: MeasuresWanted, home: potwright_measure::Measures) -> String {
    let text =
        format!("Soup\n\nServes 4\n\n{line}\n500 ml water\n\nBring all of it to the boil and simmer for 20 minutes.\n");
    let done = reset(&text, size, measures, home).text();
    let lines: Vec<&str> = done.lines().collect();
    let at = lines
        .iter()
        .position(|line| line.starts_with("Serves"))
        .expect("a yield line");
    lines.get(at + 2).copied().unwrap_or("").to_owned()
}

/// TM 10-412, General Information No. 1(2)–(3), and Navy training manual 14163: a card for 100, 333 portions of 6
/// gallons of water; 348 portions of 1 lb 4 oz; factors 3.33 and 3.48.
#[test]
fn the_quantity_kitchens_worked_examples() {
    let card =
        "Soup\n\nServes 100\n\n6 gal water\n1 lb 4 oz butter\n\nBring the water to the boil and stir in the butter.\n";
    let done = reset(card, for_servings(333), AsWritten, UsHome);
    assert_eq!(done.factor, "3.33".parse().expect("a number"));
    assert_eq!(done.worked[0].product, "19.98 gal");
    assert_eq!(done.worked[0].measured, "19 gal 3 qt 1 pt 1 c 10 tbsp 2 3/4 tsp");
    assert!(
        done.text()
            .contains("- 6 gal water: 19.98 gal = 19 gal 3 qt 1 pt 1 c 10 tbsp 2 3/4 tsp"),
        "{}",
        done.text()
    );
    let done = reset(card, for_servings(348), AsWritten, UsHome);
    assert_eq!(done.worked[1].product, "4.35 lb");
    assert_eq!(done.worked[1].measured, "4 lb 5 1/2 oz");
    assert!(reset(card, SameSize, AsWritten, UsHome).worked.is_empty());
}

/// Dish 1 for 40 instead of 6, factor 20/3: 30 g → 200; 100 → 666.7; 25 → 166.7; 700 → 4666.7; 600 ml → 4 l; 300 →
/// 2 kg; 500 → 3333.3; 1 → 6.67; 2 → 13.33; each to the nearest that a metric scale, jug or knife has.
#[test]
fn the_chowder_for_forty() {
    let (_, text) = demo_dishes()
        .into_iter()
        .find(|(name, _)| name.starts_with("01"))
        .expect("the chowder");
    let done = reset(&text, for_servings(40), Metric, MetricHome);
    let page = done.text();
    for line in [
        "Serves 40",
        "200 g butter",
        "670 g smoked streaky bacon, cut into small strips",
        "7 large onions, finely chopped",
        "13 medium leeks, sliced",
        "13 sticks celery, diced",
        "165 g plain flour",
        "4 l water",
        "7 bay leaves",
        "4.65 kg floury potatoes, peeled and cut into 2 cm dice",
        "4 l whole milk",
        "2 kg sweetcorn, fresh or frozen",
        "salt to taste",
        "7 small bunches of chives, snipped",
    ] {
        assert!(page.lines().any(|said| said == line), "{line}\n{page}");
    }
    assert!(!page.contains("5.5 litre pot]"), "notes to the desk are not printed");
    assert!(page.contains("plain factor method"));
}

/// One pound is 453.6 g, one ounce 28.35 g, a US cup 236.6 ml, a US quart 946.4 ml, an inch 2.54 cm (NIST Handbook 44,
/// App. C). A cup of flour 125 g, of butter 227 g, of olive oil 216 g (USDA SR28 WEIGHT, NDB 20081, 01001, 04053).
#[test]
fn from_us_measures_to_metric_ones() {
    for (us, metric) in [
        ("1 cup all-purpose flour", "125 g all-purpose flour"),
        // A quarter of 125 g is 31 g: not spooned in one line and weighed in the next.
        ("1/4 cup all-purpose flour", "31 g all-purpose flour"),
        ("2 tbsp all-purpose flour", "2 tbsp all-purpose flour"),
        ("2 cups water", "475 ml water"),
        // 12 × 29.57 ml = 354.9 ml: a drink's ounces are fluid ounces (its weight would be 340 g), and a
        // jug shows 350.
        ("1 (12-oz) bottle beer", "1 (350 ml) bottle beer"),
        ("12 oz dry white wine", "350 ml dry white wine"),
        ("12 oz cheddar, grated", "340 g cheddar, grated"),
        ("1 quart water", "950 ml water"),
        ("½ cup butter, melted", "115 g butter, melted"),
        (
            "2 pounds beef shin, cut into 2-inch pieces",
            "910 g beef shin, cut into 5 cm pieces",
        ),
        ("1 tbsp olive oil", "1 tbsp olive oil"),
        ("2 (14-ounce) cans chopped tomatoes", "2 (395 g) cans chopped tomatoes"),
        ("3 onions, chopped", "3 onions, chopped"),
        ("1 stick butter", "115 g butter"),
        ("a pinch of salt", "a pinch of salt"),
        ("8 oz / 225 g carrots", "225 g carrots"),
        ("8 oz (225 g) carrots", "225 g carrots"),
        ("2 heaped tablespoons plain flour", "2 heaped tablespoons plain flour"),
    ] {
        assert_eq!(line(us, SameSize, Metric, UsHome), metric, "{us}");
    }
}

#[test]
fn from_metric_measures_to_us_ones() {
    for (metric, us) in [
        ("125 g plain flour", "1 cup plain flour"),
        ("475 ml water", "2 cups water"),
        (
            "900 g beef shin, cut into 5 cm pieces",
            "2 lb beef shin, cut into 2-inch pieces",
        ),
        ("30 g butter", "2 tbsp butter"),
        ("225 g carrots", "8 oz carrots"),
        ("2 tsp fine salt", "2 tsp fine salt"),
        ("225 g / 8 oz carrots", "8 oz carrots"),
        ("1 tin (400 g) chopped tomatoes", "1 tin (14 oz) chopped tomatoes"),
    ] {
        assert_eq!(line(metric, SameSize, Us, MetricHome), us, "{metric}");
    }
    assert_eq!(
        line("900 g beef shin", SameSize, Both, MetricHome),
        "900 g (2 lb) beef shin"
    );
    assert_eq!(line("1 quart water", SameSize, Both, UsHome), "1 quart (950 ml) water");
    assert_eq!(line("2 tsp fine salt", SameSize, Both, MetricHome), "2 tsp fine salt");
}

#[test]
fn the_writers_words_stay() {
    for (written, factor, now) in [
        ("1 large onion, finely chopped", "2", "2 large onions, finely chopped"),
        ("4 onions, halved", "1/4", "1 onion, halved"),
        ("a small bunch of parsley", "3", "3 small bunches of parsley"),
        ("a sprig of thyme", "2", "2 sprigs of thyme"),
        ("2 garlic cloves, crushed", "1/2", "1 garlic clove, crushed"),
        (
            "1 celeriac (about 900g), peeled",
            "3",
            "3 celeriacs (about 2.7kg), peeled",
        ),
        ("2 to 3 carrots", "2", "4 to 6 carrots"),
        ("2–3 tbsp oil", "2", "¼ cup–¼ cup + 2 tbsp oil"),
        ("two 400 g tins chopped tomatoes", "3", "6 400 g tins chopped tomatoes"),
        ("juice of 1 lemon", "4", "juice of 4 lemons"),
        ("2 carrots", "3", "6 carrots"),
        ("a heaped teaspoon of paprika", "3", "3 heaped teaspoons of paprika"),
        (
            "2 lemons (you want a good 80 ml)",
            "3",
            "6 lemons (you want a good 250 ml)",
        ),
        (
            "4 lamb shanks (about 350 g each)",
            "3",
            "12 lamb shanks (about 350 g each)",
        ),
        ("1 chicken, about 3 lb (1.4 kg)", "3", "3 chickens, about 9 lb (4.2 kg)"),
        (
            "a small glass (125 ml) of sherry",
            "2",
            "2 small glasses (250 ml) of sherry",
        ),
        ("half a cabbage", "3", "1½ cabbages"),
        ("1 egg, beaten", "3/4", "1 egg, beaten"),
        ("about 2 cups water", "2", "about 4 cups water"),
        ("½ teaspoon black pepper", "2", "1 teaspoon black pepper"),
        ("1 tablespoon mustard", "3", "3 tablespoons mustard"),
        ("salt to taste", "3", "salt to taste"),
    ] {
        assert_eq!(line(written, times(factor), AsWritten, UsHome), now, "{written}");
    }
}

#[test]
fn amounts_of_the_method_go_with_the_list() {
    let text = "Soup\n\nServes 4\n\n3 tbsp olive oil\n2 litres chicken stock\n1 leek\n\n\
                1. Heat 1 tbsp of the oil in a 5 litre pot, add the leek and fry for 5 minutes.\n\
                2. Add the remaining 2 tbsp oil and the stock a ladle at a time. Simmer for 20 minutes until reduced to 1 litre. \
                Serve in 2 warm bowls, with 1 tbsp per person of oil.\n";
    let page = reset(text, times("3"), Metric, MetricHome).text();
    let page = page.split_whitespace().collect::<Vec<_>>().join(" ");
    for words in [
        "Heat 3 tbsp of the oil in a 5 litre pot",
        "the remaining 90 ml oil",
        "reduced to 3 litres",
        "a ladle at a time",
        "with 1 tbsp per person",
        "‘2 warm bowls’ (step 2)",
    ] {
        assert!(page.contains(words), "{words}\n{page}");
    }
}

#[test]
fn a_size_without_ground_is_said_and_nothing_is_changed() {
    let text =
        "Stock\n\nMakes about 2 litres\n\n2 kg bones\n4 litres water\n\nSimmer the bones in the water for 4 hours.\n";
    let done = reset(text, for_servings(40), AsWritten, MetricHome);
    assert!(done.changes.is_empty());
    assert_eq!(done.warnings[0].kind, WarningKind::Size);
    let doubled = reset(text, times("2"), AsWritten, MetricHome).text();
    assert!(doubled.contains("Makes about 4 litres\n"), "{doubled}");
}

#[test]
fn a_page_in_running_text() {
    let text = "Leek soup\n\nServes four\n\nMelt 30 g of butter in a pot, add 3 leeks, sliced, and 600 ml of water, and simmer for 20 minutes.\n";
    let done = reset(text, times("2"), AsWritten, MetricHome).text();
    let page = done.split_whitespace().collect::<Vec<_>>().join(" ");
    assert!(
        page.contains("Melt 60 g of butter in a pot, add 6 leeks, sliced, and 1.2 l of water"),
        "{page}"
    );
}
