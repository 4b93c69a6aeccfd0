//! Official layouts: small invented tables in both, rows of the release carried over as facts, and what becomes of them
//! in a larder.

use potwright_larder::official::{Layout, Official, OfficialError, Reading, table, value};
use potwright_larder::own::{Asked, read};
use potwright_larder::{Allergen, Contains, Hazard, Hints, Kind, Larder, State};
use potwright_measure::Unit;

fn take(layout: Layout, files: &[(&str, &str)]) -> Result<Official, OfficialError> {
    let mut reading = Reading::new(layout);
    for (file, text) in files {
        for (line, number) in text.lines().zip(1..) {
            reading.line(file, number, line)?;
        }
    }
    reading.done()
}

/// Three rows of USDA SR28 as figures (NDB 11124, 01077, 16032; a few of their nutrients), read from the official files.
const RELEASE: [(&str, &str); 3] = [
    (
        "FOOD_DES.txt",
        "~11124~^~1100~^~Carrots, raw~^~CARROTS,RAW~^~~^~~^~Y~^~Crown, tops and scrapings~^11^~Daucus carota~^6.25^2.78^8.37^3.84\r\n\
         ~01077~^~0100~^~Milk, whole, 3.25% milkfat, with added vitamin D~^~MILK,WHL~^~~^~~^~Y~^~~^0^~~^6.38^4.27^8.79^3.87\r\n\
         ~16032~^~1600~^~Beans, kidney, red, mature seeds, raw~^~BEANS,KDNY,RED,MATURE SEEDS,RAW~^~~^~~^~Y~^~~^0^~~^6.25^3.47^8.37^4.07\r\n",
    ),
    (
        "NUT_DATA.txt",
        "~11124~^~255~^88.29^10^0.3^~1~^~~\r\n~11124~^~208~^41^0^^~4~\r\n~11124~^~203~^0.93^10^0.1^~1~\r\n\
         ~11124~^~204~^0.24^10^0.1^~1~\r\n~11124~^~205~^9.58^0^^~4~\r\n~11124~^~207~^0.97^10^0.1^~1~\r\n\
         ~11124~^~307~^69^10^0.1^~1~\r\n~11124~^~601~^0^0^^~4~\r\n~11124~^~999~^1^0^^~4~\r\n\
         ~01077~^~255~^88.13^1^^~1~\r\n~01077~^~203~^3.15^1^^~1~\r\n~01077~^~204~^3.25^1^^~1~\r\n\
         ~01077~^~205~^4.8^1^^~1~\r\n~01077~^~207~^0.67^1^^~1~\r\n~01077~^~601~^10^1^^~1~\r\n\
         ~16032~^~255~^11.75^1^^~1~\r\n~16032~^~203~^22.53^1^^~1~\r\n~16032~^~204~^1.06^1^^~1~\r\n\
         ~16032~^~205~^61.29^1^^~1~\r\n~16032~^~207~^3.37^1^^~1~\r\n~16032~^~601~^0^1^^~1~\r\n",
    ),
    (
        "WEIGHT.txt",
        "~11124~^1^1^~cup chopped~^128^^\r\n~11124~^6^1^~medium~^61^^\r\n~11124~^11^1^~NLEA serving~^85^^\r\n~01077~^1^1^~cup~^244^^\r\n",
    ),
];

#[test]
fn the_release_gives_its_own_figures() {
    let official = take(Layout::Release, &RELEASE).expect("sound");
    assert_eq!(official.foods.len(), 3);
    let carrot = &official.foods["sr11124"];
    assert_eq!(
        (carrot.description.as_str(), carrot.refuse_percent),
        ("Carrots, raw", Some(11.0))
    );
    let figures = ["water_g", "energy_kcal", "sodium_mg", "fibre_g", "fat_factor"].map(|of| value(&carrot.figures, of));
    assert_eq!(figures, [Some(88.29), Some(41.0), Some(69.0), None, Some(8.37)]);
    assert_eq!(carrot.source, "USDA SR, NDB 11124");
}

/// The larder that an official table makes when it is written out and read again.
fn imported(official: &Official) -> Larder {
    let text = table(official, "an invented table");
    let foods =
        read("larder_table.tsv", &text, Larder::built_in(), Asked::OfATable).unwrap_or_else(|f| panic!("{f:?}"));
    Larder::built_in().with(&[], &foods)
}

#[test]
fn a_table_written_out_and_read_again_is_the_same() {
    let official = take(Layout::Release, &RELEASE).expect("sound");
    let larder = imported(&official);
    assert_eq!(larder.len(), Larder::built_in().len() + 3);
    for (key, theirs) in &official.foods {
        let ours = larder.by_key(key).expect("imported");
        assert_eq!(ours.name, theirs.description);
        // These rows make 100 g within a gram (100.01, 100.00, 100.00), so nothing is balanced.
        assert_eq!(ours.composition.figures()[..20], theirs.figures[..20], "{key}");
        assert_eq!(ours.source, theirs.source);
        assert_eq!(ours.contains(Allergen::Peanuts), Contains::NotKnown);
    }
    let carrot = larder.by_key("sr11124").expect("imported");
    assert_eq!(
        (carrot.kind, carrot.state, carrot.animal),
        (Kind::Vegetable, State::Raw, false)
    );
    assert_eq!(carrot.refuse, Some(0.11));
    assert_eq!(
        carrot.weight_of(Some(Unit::Cup), "chopped", "").map(|w| w.mass_g.mid),
        Some(128.0)
    );
    assert_eq!(carrot.weights.len(), 2, "a serving is no measure");
    let milk = larder.by_key("sr01077").expect("imported");
    assert_eq!(
        (milk.kind, milk.animal, milk.contains(Allergen::Milk)),
        (Kind::Milk, true, Contains::Yes)
    );
    let beans = larder.by_key("sr16032").expect("imported");
    assert_eq!(
        (beans.state, beans.behaviour.hazard),
        (State::Dried, Some(Hazard::KidneyBean))
    );
    assert!(
        beans.behaviour.absorbs.is_some(),
        "what holds for dried pulses holds for it"
    );
}

#[test]
fn a_food_of_the_table_is_named_by_key_or_whole_description_and_disturbs_no_other() {
    let larder = imported(&take(Layout::Release, &RELEASE).expect("sound"));
    let find = |name: &str, state: &[String], preparation: &str| {
        let hints = Hints {
            state,
            preparation,
            ..Hints::default()
        };
        let found = larder.find(name, &hints);
        let key = found
            .best
            .and_then(|id| larder.get(id))
            .map_or("-", |food| food.key.as_str());
        (key.to_owned(), found.sure)
    };
    assert_eq!(find("sr16032", &[], ""), ("sr16032".into(), true));
    assert_eq!(
        find("Beans, kidney, red, mature seeds, raw", &[], ""),
        ("sr16032".into(), true)
    );
    // As a line is parted: the name before the first comma.
    assert_eq!(
        find("Beans", &["raw".into()], "kidney, red, mature seeds"),
        ("sr16032".into(), true)
    );
    assert_eq!(
        find("milk", &[], "whole, 3.25% milkfat, with added vitamin D"),
        ("sr01077".into(), true)
    );
    // What our own food is called as well stays ours.
    assert_eq!(find("carrots", &["raw".into()], ""), ("carrot".into(), true));
    assert_eq!(find("carrots", &[], ""), ("carrot".into(), true));
    let ours = Larder::built_in().find("beans", &Hints::default());
    assert_eq!(larder.find("beans", &Hints::default()), ours);
    let near = larder.in_the_table("kidney beans");
    assert_eq!(
        near.first()
            .and_then(|id| larder.get(*id))
            .map(|food| food.key.as_str()),
        Some("sr16032")
    );
}

/// Invented foods in the layout of FoodData Central.
const CENTRAL: [(&str, &str); 9] = [
    (
        "food.csv",
        "\u{feff}\"fdc_id\",\"data_type\",\"description\",\"food_category_id\",\"publication_date\"\n\
         \"9001\",\"sr_legacy_food\",\"Quayroot, \"\"lock\"\" type, raw\",\"11\",\"2019-04-01\"\n\
         \"9002\",\"foundation_food\",\"Quay beans, mature seeds, canned\",\"16\",\"2020-01-01\"\n\
         \"9003\",\"survey_fndds_food\",\"Lock stew\",\"3002\",\"2020-01-01\"\n\
         \"9004\",\"branded_food\",\"Something in a bag\",\"\",\"2020-01-01\"\n\
         \"9005\",\"sub_sample_food\",\"Quay beans, lot 4\",\"\",\"2020-01-01\"\n\
         \"9006\",\"foundation_food\",\"Nothing measured\",\"11\",\"2020-01-01\"\n",
    ),
    (
        "nutrient.csv",
        "\"id\",\"name\",\"unit_name\",\"nutrient_nbr\",\"rank\"\n\"1051\",\"Water\",\"G\",\"255\",\"100.0\"\n\
         \"1003\",\"Protein\",\"G\",\"203\",\"600.0\"\n\"1008\",\"Energy\",\"KCAL\",\"208\",\"300.0\"\n\
         \"2047\",\"Energy (Atwater General Factors)\",\"KCAL\",\"957\",\"280.0\"\n\
         \"2048\",\"Energy (Atwater Specific Factors)\",\"KCAL\",\"958\",\"290.0\"\n\
         \"1093\",\"Sodium, Na\",\"MG\",\"307\",\"5800.0\"\n",
    ),
    (
        "food_category.csv",
        "\"id\",\"code\",\"description\"\n\"11\",\"1100\",\"Vegetables\"\n\"16\",\"1600\",\"Legumes\"\n",
    ),
    (
        "measure_unit.csv",
        "\"id\",\"name\"\n\"1000\",\"cup\"\n\"9999\",\"undetermined\"\n",
    ),
    ("sr_legacy_food.csv", "\"fdc_id\",\"NDB_number\"\n\"9001\",\"1999\"\n"),
    (
        "food_nutrient_conversion_factor.csv",
        "\"id\",\"fdc_id\"\n\"70\",\"9001\"\n",
    ),
    (
        "food_calorie_conversion_factor.csv",
        "\"food_nutrient_conversion_factor_id\",\"protein_value\",\"fat_value\",\"carbohydrate_value\"\n\"70\",\"2.78\",\"8.37\",\"3.84\"\n",
    ),
    (
        "food_nutrient.csv",
        "\"id\",\"fdc_id\",\"nutrient_id\",\"amount\",\"data_points\",\"derivation_id\"\n\
         \"1\",\"9001\",\"1051\",\"87.5\",\"\",\"\"\n\"2\",\"9001\",\"1003\",\"1.25\",\"\",\"\"\n\
         \"3\",\"9002\",\"2047\",\"99\",\"\",\"\"\n\"4\",\"9002\",\"2048\",\"91\",\"\",\"\"\n\"5\",\"9002\",\"2047\",\"99\",\"\",\"\"\n\
         \"6\",\"9003\",\"307\",\"250\",\"\",\"\"\n\"7\",\"9001\",\"9999\",\"3\",\"\",\"\"\n\"8\",\"9004\",\"1051\",\"3\",\"\",\"\"\n",
    ),
    (
        "food_portion.csv",
        "\"id\",\"fdc_id\",\"seq_num\",\"amount\",\"measure_unit_id\",\"portion_description\",\"modifier\",\"gram_weight\",\"data_points\"\n\
         \"1\",\"9001\",\"2\",\"1.0\",\"9999\",\"\",\"cup, chopped\",\"140.0\",\"\"\n\
         \"2\",\"9001\",\"1\",\"2.0\",\"1000\",\"\",\"grated\",\"220.0\",\"\"\n\
         \"3\",\"9003\",\"1\",\"\",\"9999\",\"1 cup\",\"10205\",\"240\",\"\"\n\
         \"4\",\"9004\",\"1\",\"1\",\"1000\",\"\",\"\",\"30\",\"\"\n",
    ),
];

#[test]
fn the_folder_of_csv_files_gives_its_figures() {
    let official = take(Layout::FoodDataCentral, &CENTRAL).expect("sound");
    let keys: Vec<&str> = official.foods.keys().map(String::as_str).collect();
    assert_eq!(keys, ["fdc9002", "fdc9003", "sr01999"]);
    let passed: Vec<(&str, usize)> = official
        .passed_over
        .iter()
        .map(|(what, n)| (what.as_str(), *n))
        .collect();
    assert_eq!(
        passed,
        [("branded_food", 1), ("sub_sample_food", 1), ("without any figure", 1)]
    );
    let root = &official.foods["sr01999"];
    assert_eq!(
        (root.description.as_str(), root.group.as_str()),
        ("Quayroot, \"lock\" type, raw", "1100")
    );
    let figures = ["water_g", "protein_g", "protein_factor", "fat_g"].map(|of| value(&root.figures, of));
    assert_eq!(figures, [Some(87.5), Some(1.25), Some(2.78), None]);
    assert_eq!(root.source, "USDA FoodData Central, SR Legacy, FDC 9001, NDB 01999");
    // The specific factors are preferred to the general ones, whichever comes first.
    assert_eq!(value(&official.foods["fdc9002"].figures, "energy_kcal"), Some(91.0));
    // A nutrient named by its number instead of its id.
    assert_eq!(value(&official.foods["fdc9003"].figures, "sodium_mg"), Some(250.0));
    let larder = imported(&official);
    let cup = |key: &str, cut: &str| {
        let food = larder.by_key(key)?;
        food.weight_of(Some(Unit::Cup), cut, "")
            .map(|weighed| weighed.mass_g.mid)
    };
    // Two cups grated weigh 220 g, one cup chopped 140 g.
    assert_eq!(
        (cup("sr01999", "chopped"), cup("sr01999", "grated")),
        (Some(140.0), Some(110.0))
    );
    let beans = larder.by_key("fdc9002").expect("imported");
    assert_eq!((beans.kind, beans.state), (Kind::Pulse, State::Canned));
}

#[test]
fn faults_name_file_and_line() {
    let check = |layout: Layout, files: &[(&str, &str)], expected: &str| {
        let error = take(layout, files).expect_err(expected);
        assert_eq!(error.to_string(), expected);
    };
    let (release, central) = (Layout::Release, Layout::FoodDataCentral);
    check(
        release,
        &[("FOOD_DES.txt", "~1~^~2~\n")],
        "FOOD_DES.txt, line 1: 2 cells, where a line of this file has 14 at least",
    );
    check(
        release,
        &[RELEASE[0], ("NUT_DATA.txt", "~11124~^~255~^88^\n~11124~^~203~^much^\n")],
        "NUT_DATA.txt, line 2: 'Nutr_Val' is 'much', which is no number",
    );
    check(
        release,
        &RELEASE[..1],
        "NUT_DATA.txt, line 1: no food of the table has any figure",
    );
    check(
        central,
        &[("food.csv", "id,data_type,description\n")],
        "food.csv, line 1: the heading lacks the column 'fdc_id'",
    );
    check(
        central,
        &[(
            "food.csv",
            "fdc_id,data_type,description,food_category_id\n1,foundation_food,\"open,2\n",
        )],
        "food.csv, line 2: a quotation mark is opened and not closed",
    );
    check(
        central,
        &[(
            "food.csv",
            "fdc_id,data_type,description,food_category_id\nx,foundation_food,a,2\n",
        )],
        "food.csv, line 2: 'fdc_id' is 'x', which is no number",
    );
}

/// Off by 12.5 g: 75 water, 5 protein, 2.5 fat, 4 carbohydrate, 1 ash make 87.5 g; water becomes 87.5 g.
#[test]
fn a_row_off_a_hundred_grams_is_balanced_by_its_water() {
    let files = [
        (
            "FOOD_DES.txt",
            "~99999~^~1100~^~Lockwort, raw~^^^^^^^^^^\n".replace("^^^^^^^^^^", "^~L~^~~^~~^~~^~~^^~~^6.25^4^9^4"),
        ),
        (
            "NUT_DATA.txt",
            "~99999~^~255~^75^\n~99999~^~203~^5^\n~99999~^~204~^2.5^\n~99999~^~205~^4^\n~99999~^~207~^1^\n".to_owned(),
        ),
    ];
    let files: Vec<(&str, &str)> = files.iter().map(|(file, text)| (*file, text.as_str())).collect();
    let larder = imported(&take(Layout::Release, &files).expect("sound"));
    let food = larder.by_key("sr99999").expect("imported");
    assert_eq!(food.composition.water_g, Some(87.5));
    assert_eq!(food.source, "USDA SR, NDB 99999; water +12.50 g to make 100 g");
}
