//! A process cooked by the engine and reckoned: the public way, with the project's own larder and default kitchen.

use potwright_larder::Larder;
use potwright_manuscript::{Cover, HeatWord, read};
use potwright_measure::{Duration, Measures, Spread};
use potwright_pot::{Act, Aim, Doing, Kitchen, Lasts, Part, Place, Portion, Pot, Process, Stretch, Vessel, resolve};
use potwright_reckon::{Known, Prices, Reckoned, Target, Verdict, reckon};

/// The foods of a page, as the larder has them, in one pot of the default kitchen.
fn foods(list: &str) -> Process {
    let text = format!("Test soup\n\nServes 4\n\n{list}\n");
    let kitchen = Kitchen::default();
    let mut process = resolve(&read(&text), &text, Larder::built_in(), &[], &kitchen, Measures::Metric);
    process.acts.clear();
    process.dish_vessel = 0;
    let pot = |pot: Option<Pot>| Vessel {
        name: "pot".to_owned(),
        pot,
    };
    process.vessels = vec![pot(kitchen.pots.get(1).cloned()), pot(None)];
    process
}

fn lot(process: &Process, name: &str) -> usize {
    process
        .lots
        .iter()
        .position(|lot| lot.name.contains(name))
        .expect("the food is on the list")
}

fn act(doing: Doing) -> Act {
    Act {
        vessel: 0,
        doing,
        operation: None,
        span: None,
        hands: Duration::ZERO,
        meanwhile: false,
    }
}

fn add(process: &Process, names: &[&str]) -> Act {
    let portion = |name: &&str| Portion {
        lot: lot(process, name),
        share: 1.0,
    };
    act(Doing::Add(names.iter().map(portion).collect()))
}

fn cook(aim: Aim, minutes: f64) -> Act {
    act(Doing::Cook(Stretch {
        place: Place::Hob,
        aim,
        lasts: Lasts {
            minutes: Some(Spread::exact(minutes)),
            cue: None,
        },
        cover: Cover::Off,
        assumed: false,
        batches: 1,
    }))
}

/// Chicken and carrots simmered in salted water.
fn broth(minutes: f64) -> Process {
    let mut process = foods("1 kg chicken thighs\n300 g carrots, sliced\n1.5 litres water\nfine salt, to taste");
    let salt = lot(&process, "salt");
    process.to_taste = vec![salt];
    process.acts = vec![
        add(&process, &["chicken", "carrots", "water", "salt"]),
        cook(Aim::Setting(HeatWord::High), 12.0),
        cook(Aim::Simmer, minutes),
        act(Doing::Serve),
    ];
    process
}

fn run(process: Process, draws: usize) -> Reckoned {
    let kitchen = Kitchen::default();
    reckon(
        process,
        &kitchen,
        Larder::built_in(),
        &[],
        &Prices::default(),
        &Target::default(),
        draws,
        1,
    )
}

/// The default target is 0.6 to 1.0 %: the salt is set to the middle, and the next day's evening out does not change
/// what is in the pot.
#[test]
fn salted_to_taste() {
    let found = run(broth(40.0), 16);
    let dossier = &found.dossier;
    assert!(
        (dossier.salinity.value - 0.8).abs() < 0.01,
        "{}",
        dossier.salinity.display()
    );
    let (low, high) = dossier.salinity.spread.unwrap();
    assert!(low < 0.8 && high > 0.8, "a cook's hand varies: {low} to {high}");
    assert!(dossier.to_taste[0].grams.0 > 0.0);
    assert!(
        dossier.to_taste[0].says.contains("of fine salt"),
        "{}",
        dossier.to_taste[0].says
    );
    assert!(
        dossier.liquid_salinity.value > dossier.salinity.value,
        "salt enters the pieces from outside"
    );
    assert!(dossier.salinity_next_day.value <= dossier.liquid_salinity.value);
}

/// The bounds within which any soup lies: mass out no more than mass in; 0 < salt < 1.5 %; 20 to 250 kcal/100 g; a
/// portion of 150 to 800 g; boiling point from 95 to 101 °C at 110 m.
#[test]
fn plausible() {
    let found = run(broth(40.0), 0);
    let dossier = &found.dossier;
    let put_in: f64 = found.trace.lot_kg.iter().sum();
    assert!(dossier.yield_mass.value > 0.5 * put_in && dossier.yield_mass.value <= put_in);
    let energy = &dossier.nutrition[0].per_100_g;
    assert!((20.0..250.0).contains(&energy.value), "{}", energy.display());
    assert!(
        (150.0..800.0).contains(&dossier.portion_mass.value),
        "{}",
        dossier.portion_mass.display()
    );
    assert!((95.0..101.0).contains(&dossier.boiling_point.value));
    assert!(dossier.yield_mass.spread.is_none(), "no draws, no range");
    let mass = found.made.matter.total_kg();
    assert!(mass <= dossier.yield_mass.value, "bones are not eaten");
    assert!(dossier.elapsed.value >= 52.0);
    assert!(dossier.steps.iter().any(|row| row.what.starts_with("simmer")));
}

/// FDA Food Code 3-401.11(A)(3): poultry 74 °C. An hour's simmer meets it at the cautious end; two minutes of warming
/// do not, and the cautions stand with both.
#[test]
fn chicken_by_its_rule() {
    let cooked = run(broth(60.0), 32).dossier;
    let row = cooked.doneness.iter().find(|row| row.name.contains("chicken")).unwrap();
    assert_eq!(row.verdict, Verdict::Meets, "{}", row.centre.display());
    assert_eq!(cooked.cautions.len(), 3);
    let mut raw = broth(60.0);
    raw.acts = vec![
        add(&raw, &["chicken", "carrots", "water", "salt"]),
        cook(Aim::Setting(HeatWord::Low), 2.0),
        act(Doing::Serve),
    ];
    let raw = run(raw, 8).dossier;
    let row = raw.doneness.iter().find(|row| row.name.contains("chicken")).unwrap();
    assert_eq!(row.verdict, Verdict::Fails, "{}", row.centre.display());
    assert_eq!(raw.cautions.len(), 3);
}

/// The carrots are strained off and thrown away: an allergen of theirs would still count, and celery is one in the EU.
#[test]
fn what_is_strained_out_still_counts() {
    let mut process = foods("1 kg chicken thighs\n3 sticks celery\n1.5 litres water");
    process.acts = vec![
        add(&process, &["chicken", "celery", "water"]),
        cook(Aim::Simmer, 60.0),
        act(Doing::Transfer {
            to: 1,
            what: Part::Liquid,
        }),
        act(Doing::Discard(Part::All)),
    ];
    process.dish_vessel = 1;
    let dossier = run(process, 0).dossier;
    let declared: Vec<_> = dossier.allergens.iter().filter(|row| row.declare_eu).collect();
    assert_eq!(declared.len(), 1);
    assert_eq!(declared[0].causes, ["celery"]);
    assert_eq!(dossier.animal, Some(true));
    assert!(dossier.solids.value < 1.0, "{}", dossier.solids.display());
}

/// The same input gives the same bytes, and another seed other draws about the same central run.
#[test]
fn the_same_bytes_twice() {
    let once = run(broth(30.0), 8);
    assert_eq!(once, run(broth(30.0), 8));
    let kitchen = Kitchen::default();
    let other = reckon(
        broth(30.0),
        &kitchen,
        Larder::built_in(),
        &[],
        &Prices::default(),
        &Target::default(),
        8,
        2,
    );
    assert_eq!(once.dossier.yield_mass.value, other.dossier.yield_mass.value);
    assert_ne!(once.dossier.yield_mass.spread, other.dossier.yield_mass.spread);
    assert_eq!(once.dossier.yield_mass.known, Known::NeedsYourKitchen);
}

/// Nothing at all is no reason to stop.
#[test]
fn an_empty_process_has_a_dossier() {
    let mut process = foods("");
    process.vessels.clear();
    let dossier = run(process, 4).dossier;
    assert_eq!(dossier.yield_mass.value, 0.0);
    assert_eq!(dossier.allergens.len(), 15);
    assert!(dossier.cautions.is_empty());
}

/// A stock boiled from bones sets in the cold; how much gelatine they give is not computed, and no nought stands for it.
#[test]
fn what_bones_give_is_not_computed() {
    let text = "Beef stock\n\n1 kg beef bones\n4 litres water\n\nPut the bones and water in a large pot, bring to the boil and simmer for 2 \
        hours. Strain.\n";
    let kitchen = Kitchen::default();
    let process = resolve(&read(text), text, Larder::built_in(), &[], &kitchen, Measures::Metric);
    let stock = run(process, 0).dossier;
    let protein = stock.nutrition.iter().find(|row| row.name == "Protein").unwrap();
    assert_eq!(protein.per_portion.display_value(), "not computed");
    assert_eq!((&protein.us_label, &protein.eu_label), (&None, &None));
    assert_eq!(
        (stock.body.word, stock.body.thickener.known),
        (None, Known::NotComputed)
    );
    assert!(
        stock.doneness.iter().all(|row| row.tender.is_none()),
        "nobody asks it of bones"
    );
    let soup = run(broth(20.0), 0).dossier;
    assert!(soup.body.word.is_some(), "chicken thighs are no bones");
}
