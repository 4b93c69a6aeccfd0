//! A book's own foods and an imported table, on the way through a dish.

use potwright_book::{Book, SourceFile};
use potwright_house::House;
use potwright_pot::Source;

const PAGE: &str = "Lockwort soup\n\nServes 4\n\n1 litre water\n400 g lockwort, chopped\n300 g Quay beans, mature seeds, canned\n\
    100 g sr99998\n\nPut everything in a large pot, bring to the boil and simmer, covered, for 20 minutes.\n";
const OWN: &str = "name\tkind\tstate\tanimal\tprotein_g\tfat_g\tcarbohydrate_g\tsalt_g\tother_allergens\n\
    lockwort\tvegetable\traw\tno\t2\t1\t7\t5\tno\n";
const TABLE: &str = "key\tname\tkind\tstate\tanimal\twater_g\tprotein_g\tfat_g\tcarbohydrate_g\tash_g\tsource\n\
    sr99998\tRoot of the quay, raw\tvegetable\traw\tno\t90\t2\t1\t6\t1\tinvented\n\
    sr99999\tQuay beans, mature seeds, canned\tpulse\tcanned\tno\t70\t8\t1\t20\t1\tinvented\n";

fn house(own: &str) -> House {
    let file = |(name, text): (&str, &str)| SourceFile {
        name: name.into(),
        bytes: text.as_bytes().to_vec(),
    };
    let files = [("larder.tsv", own), ("larder_table.tsv", TABLE), ("dishes/a.txt", PAGE)];
    let book = Book::of(files.map(file).to_vec()).unwrap_or_else(|error| panic!("{error}"));
    House::open(book).with_draws(0)
}

#[test]
fn own_and_imported_foods_are_cooked() {
    let house = house(OWN);
    let cooked = house.reckon(0).expect("cooks");
    let keys: Vec<&str> = cooked
        .reckoned
        .process
        .lots
        .iter()
        .filter_map(|lot| match lot.source {
            Source::Larder(id) => house.larder().get(id).map(|food| food.key.as_str()),
            _ => None,
        })
        .collect();
    for key in ["lockwort", "sr99999", "sr99998"] {
        assert!(keys.contains(&key), "{key} is not among {keys:?}");
    }
}

/// 400 g with 5 g salt in 100 g bring 20 g; without, the pot has no salt but a few milligrams.
#[test]
fn what_the_writer_says_of_a_food_reaches_the_figures() {
    let salt = |own: &str| house(own).reckon(0).expect("cooks").reckoned.dossier.salinity.value;
    let (salted, plain) = (salt(OWN), salt(&OWN.replace("\t5\tno", "\t0\tno")));
    assert!(salted > 0.8 && plain < 0.1, "{salted} {plain}");
}
