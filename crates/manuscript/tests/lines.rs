//! Ingredient lines, one a case. The expectations are a cook's own reading of lines made up for this table.
//!
//! `amount unit names [state] | work | flags`; `-` stands for nothing. '~' makes an amount loose, `alt=` names what may
//! take the food's place, `pkg=` what one holds, `also=` the amount said again.

#![expect(clippy::unwrap_used, reason = "a test stops where it cannot go on")]

use std::fmt::Write as _;

use potwright_manuscript::{Ingredient, Quantity, Size, read};
use potwright_measure::{Amount, fractions};

fn amount(amount: Amount) -> String {
    let (low, high) = (fractions::ascii(amount.low), fractions::ascii(amount.high));
    let about = if amount.about { "~" } else { "" };
    if low == high {
        format!("{about}{low}")
    } else {
        format!("{about}{low}-{high}")
    }
}

fn quantity(quantity: Quantity) -> String {
    let unit = quantity
        .unit
        .map_or(String::new(), |unit| format!(" {}", unit.abbreviation()));
    format!("{}{unit}", amount(quantity.amount))
}

fn show(entry: &Ingredient) -> String {
    let open = || {
        entry
            .open
            .as_ref()
            .map(|open| format!("some {}", open.unit.map_or("-", |unit| unit.abbreviation())))
    };
    let measure = entry.quantity.map(|q| {
        if q.unit.is_some() {
            quantity(q)
        } else {
            format!("{} -", amount(q.amount))
        }
    });
    let items = entry.items.iter().map(|item| {
        if item.state.is_empty() {
            item.name.clone()
        } else {
            format!("{} [{}]", item.name, item.state.join(" "))
        }
    });
    let mut line = measure.or_else(open).unwrap_or_else(|| "- -".to_owned());
    let items = items.collect::<Vec<_>>().join(", ");
    write!(line, " {}", if items.is_empty() { "nothing" } else { &items }).unwrap();
    write!(
        line,
        " | {} |",
        entry.preparation.as_ref().map_or("-", |words| &words.text)
    )
    .unwrap();
    match entry.size {
        Some(Size::Small) => line.push_str(" small"),
        Some(Size::Medium) => line.push_str(" medium"),
        Some(Size::Large) => line.push_str(" large"),
        Some(Size::Millimetres(low, _)) => write!(line, " {low:.0}mm").unwrap(),
        None => {}
    }
    if let Some(package) = entry.package {
        write!(line, " pkg={}", quantity(package)).unwrap();
    }
    for also in &entry.also {
        write!(line, " also={}", quantity(*also)).unwrap();
    }
    for other in &entry.alternatives {
        let amount = other.quantity.map_or(String::new(), |q| format!("{} ", quantity(q)));
        write!(line, " alt={amount}{}", other.item.name).unwrap();
    }
    for (flag, word) in [
        (entry.optional, " optional"),
        (entry.divided, " divided"),
        (entry.to_taste, " to-taste"),
        (entry.for_serving, " serving"),
        (entry.equipment, " equipment"),
        (entry.plus_more.is_some(), " more"),
    ] {
        line.push_str(if flag { word } else { "" });
    }
    line
}

/// Reads the line as one of a list and compares its entries, ' // ' between them.
#[track_caller]
fn check(cases: &[(&str, &str)]) {
    let mut wrong = String::new();
    for (line, expected) in cases {
        let page = format!("A dish\n\n## Ingredients\n\n- {line}\n");
        let found: Vec<String> = read(&page).ingredients.iter().map(show).collect();
        let found = found.join(" // ");
        if found != *expected {
            writeln!(wrong, "{line}\n  expected {expected}\n  read     {found}").unwrap();
        }
    }
    assert!(wrong.is_empty(), "\n{wrong}");
}

#[test]
fn amounts_and_units() {
    check(&[
        ("2 leeks", "2 - leeks | - |"),
        ("½ swede", "1/2 - swede | - |"),
        ("1-1/2 cups pearl barley", "1 1/2 cup pearl barley | - |"),
        ("2 ½ lb mutton neck", "2 1/2 lb mutton neck | - |"),
        ("3-4 parsnips", "3-4 - parsnips | - |"),
        ("3 to 4 parsnips", "3-4 - parsnips | - |"),
        ("1 or 2 turnips", "1-2 - turnips | - |"),
        ("half a swede", "1/2 - swede | - |"),
        ("half a dozen oysters", "6 - oysters | - |"),
        ("a couple of bay leaves", "2 - bay leaves | - |"),
        ("three-quarters of a pint of cider", "3/4 pt cider | - |"),
        ("about 2 kg marrow bones", "~2 kg marrow bones | - |"),
        ("2 scant cups red lentils", "~2 cup red lentils | - |"),
        ("1 heaped tsp cornflour", "~1 tsp cornflour | - |"),
        ("2 T plain flour", "2 tbsp plain flour | - |"),
        ("2 t mustard", "2 tsp mustard | - |"),
        ("750ml stout", "750 ml stout | - |"),
        ("40g+ lard", "~40 g lard | - |"),
        ("2 gills sherry", "2 gill sherry | - |"),
        ("one teacupful of sago", "1 teacup sago | - |"),
        ("a pinch of saffron", "1 pinch saffron | - |"),
        ("good handful of sorrel", "~1 handful sorrel | - |"),
        ("a few sprigs of savory", "some sprig savory | - |"),
        ("a little nutmeg", "some - nutmeg | - |"),
        ("a grating of nutmeg", "some - nutmeg | - |"),
        ("Sprig of lovage", "1 sprig lovage | - |"),
        ("1 kg to 1.5 kg oxtail", "1-1 1/2 kg oxtail | - |"),
        ("½ cup plus 2 tablespoons oatmeal", "5/8 cup oatmeal | - |"),
        ("1 lb 8 oz scrag end of lamb", "1 1/2 lb lamb scrag end | - |"),
    ]);
}

#[test]
fn both_systems_and_packages() {
    check(&[
        ("225 g / 8 oz suet", "225 g suet | - | also=8 oz"),
        ("1 lb (450 g) sprats", "1 lb sprats | - | also=450 g"),
        ("1 cup (240 ml) buttermilk", "1 cup buttermilk | - | also=240 ml"),
        ("two 400 g tins of haricot beans", "2 can haricot beans | - | pkg=400 g"),
        ("2 x 400g tins borlotti beans", "2 can borlotti beans | - | pkg=400 g"),
        ("3 (15-ounce) cans pinto beans", "3 can pinto beans | - | pkg=15 oz"),
        ("400g tin chopped tomatoes", "1 can chopped tomatoes | - | pkg=400 g"),
        ("1 tin (400 g) coconut milk", "1 can coconut milk | - | pkg=400 g"),
        ("1 x 400g/14oz tin chickpeas", "1 can chickpeas | - | pkg=400 g"),
        ("1 3-lb rabbit, jointed", "1 - rabbit | jointed | pkg=3 lb"),
        ("6 pork chops (about 200 g each)", "6 - pork chops | - | pkg=~200 g"),
        ("1 cod, about 2 kg", "1 - cod | - | also=~2 kg"),
        (
            "6 duck legs, skin on (about 1.5 kg)",
            "6 - duck legs | skin on | also=~1 1/2 kg",
        ),
        ("200 g block of feta", "200 g feta | - |"),
    ]);
}

#[test]
fn names_state_work_and_size() {
    check(&[
        ("1 large onion, finely chopped", "1 - onion | finely chopped | large"),
        ("100 g finely diced smoked ham", "100 g smoked ham | finely diced |"),
        ("1 cup hot stock", "1 cup stock | hot |"),
        ("1 tsp hot paprika", "1 tsp hot paprika | - |"),
        ("2 tbsp melted butter", "2 tbsp butter | melted |"),
        ("1 tsp ground mace", "1 tsp mace [ground] | - |"),
        ("400 g ground beef", "400 g ground beef | - |"),
        ("6 dried figs", "6 - figs [dried] | - |"),
        ("300 g peas, fresh or frozen", "300 g peas [fresh or frozen] | - |"),
        ("500 g undyed smoked haddock", "500 g undyed smoked haddock | - |"),
        ("2 large, ripe tomatoes, skinned", "2 - ripe tomatoes | skinned | large"),
        ("600 ml whole milk", "600 ml whole milk | - |"),
        ("250 g split peas", "250 g split peas | - |"),
        ("4 garlic cloves, crushed", "4 clove garlic | crushed |"),
        ("2 celery sticks, sliced", "2 stick celery | sliced |"),
        ("4 cloves", "4 - cloves | - |"),
        ("3 bay leaves", "3 - bay leaves | - |"),
        ("2 knuckles of veal", "2 - veal knuckles | - |"),
        (
            "2 lb turnips cut in half-inch dice",
            "2 lb turnips | cut in half-inch dice |",
        ),
        ("1 kg potatoes in large chunks", "1 kg potatoes | in large chunks |"),
        ("50 g anchovies in oil, drained", "50 g anchovies in oil | drained |"),
        ("a 5 cm piece of ginger, grated", "1 piece ginger | grated | 50mm"),
        ("2-inch cube salt pork", "1 cube salt pork | - | 51mm"),
        (
            "1 swede (about 500 g), in 2 cm dice",
            "1 - swede | in 2 cm dice | also=~500 g",
        ),
        ("1 tsp cream of tartar", "1 tsp cream of tartar | - |"),
        ("250 g tumeric root", "250 g turmeric root | - |"),
    ]);
}

#[test]
fn parts_of_what_is_counted() {
    check(&[
        ("juice of 2 lemons", "2 - lemon juice | - |"),
        ("juice of half an orange", "1/2 - orange juice | - |"),
        ("grated rind 1 lemon", "1 - lemon rind | grated |"),
        ("zest and juice of 1 lime", "1 - lime zest and juice | - |"),
        ("yolks of 3 eggs", "3 - egg yolks | - |"),
        ("Whites 2 eggs", "2 - egg whites | - |"),
    ]);
}

#[test]
fn the_amount_after_the_noun() {
    check(&[
        ("barley – 150 g, rinsed", "150 g barley | rinsed |"),
        ("Parsley - 1 bunch", "1 bunch parsley | - |"),
        ("Lamb shoulder, boned\t1.200 kg", "1 1/5 kg lamb shoulder | boned |"),
        ("Carrot | 800 | g | brunoise", "800 g carrot | brunoise |"),
        ("stock ........ 2 litres", "2 l stock | - |"),
        ("Beef shin, weighing 4 lbs.", "4 lb beef shin | - |"),
        ("eggs, 3", "3 - eggs | - |"),
        ("chives – pinch, optional", "1 pinch chives | - | optional"),
    ]);
}

#[test]
fn several_foods_on_a_line() {
    check(&[
        ("6 cups stock + 2 cups cider", "6 cup stock | - | // 2 cup cider | - |"),
        (
            "3 sprigs thyme and 2 bay leaves",
            "3 sprig thyme | - | // 2 - bay leaves | - |",
        ),
        (
            "1 leek, 1 carrot, 1 celery stalk, all finely sliced",
            "1 - leek | finely sliced | // 1 - carrot | finely sliced | // 1 stalk celery | finely sliced |",
        ),
        (
            "½ cup each leek, swede, cut in strips",
            "1/2 cup leek, swede | cut in strips |",
        ),
        (
            "1 tsp each of mace, allspice and cumin",
            "1 tsp mace, allspice, cumin | - |",
        ),
        ("salt, pepper, nutmeg", "- - salt, pepper, nutmeg | - |"),
        (
            "salt and freshly ground white pepper",
            "- - salt, white pepper | freshly ground |",
        ),
        ("2 leeks, about 300 g, washed", "2 - leeks | washed | also=~300 g"),
    ]);
}

#[test]
fn the_three_meanings_of_or() {
    check(&[
        ("50 g dripping or lard", "50 g dripping | - | alt=lard"),
        ("2 tbsp cream, or 1 tbsp butter", "2 tbsp cream | - | alt=1 tbsp butter"),
        ("200 ml red or white wine", "200 ml red wine | - | alt=white wine"),
        (
            "1 l beef or vegetable stock",
            "1 l beef stock | - | alt=vegetable stock",
        ),
        (
            "stock, veal or chicken – 300 ml",
            "300 ml veal stock | - | alt=chicken stock",
        ),
        ("4 sprigs thyme (or 1 tsp dried)", "4 sprig thyme | - | alt=1 tsp thyme"),
        ("1 large or 2 small leeks", "1 - leeks | - | large alt=2 leeks"),
        ("1 chilli, sliced (or 2, or none)", "1 - chilli | sliced | optional"),
        ("10 or so prunes", "~10 - prunes | - |"),
        (
            "5 cloves garlic, crushed or grated",
            "5 clove garlic | crushed or grated |",
        ),
        ("½ tsp salt, or to taste", "1/2 tsp salt | - | to-taste"),
    ]);
}

#[test]
fn flags_wherever_they_stand() {
    check(&[
        ("1 bay leaf (optional)", "1 - bay leaf | - | optional"),
        ("optional: 1 star anise", "1 - star anise | - | optional"),
        ("1 ham bone, if you have one", "1 - ham bone | - | optional"),
        ("60 g butter, divided", "60 g butter | - | divided"),
        ("2 onions, sliced, divided", "2 - onions | sliced | divided"),
        ("1 tbsp oil, plus more for the dish", "1 tbsp oil | - | more"),
        ("salt to taste", "- - salt | - | to-taste"),
        ("300 ml single cream, to serve", "300 ml single cream | - | serving"),
        ("chopped dill, for garnish", "- - dill | chopped | serving"),
        ("as much bacon as you like to garnish", "- - bacon | - | serving"),
        ("30 cm casserole", "- - nothing | - | equipment"),
        ("ovenproof dish", "- - nothing | - | equipment"),
    ]);
}
