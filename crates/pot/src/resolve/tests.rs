//! The whole of resolve on recipes built by hand: what goes where, when, and how much of it.

use potwright_larder::Larder;
use potwright_manuscript::{
    Cover, FoodRef, HeatWord, Ingredient, Item, Layout, Minutes, Operation, Quantity, Recipe, Repeat, Share, Span,
    Step, Target, Verb, VesselRef, Words,
};
use potwright_measure::{Amount, Exact, Measures, Unit};

use super::resolve;
use crate::{Aim, Cue, Doing, Kitchen, Made, Part, Place, Process, Stretch};

/// A recipe in the making.
struct Page {
    text: String,
    recipe: Recipe,
}

impl Page {
    fn new() -> Self {
        let recipe = Recipe {
            title: None,
            headnote: Vec::new(),
            yields: None,
            declared_times: Vec::new(),
            sections: Vec::new(),
            ingredients: Vec::new(),
            steps: Vec::new(),
            operations: Vec::new(),
            variations: Vec::new(),
            desk_notes: Vec::new(),
            closing: Vec::new(),
            layout: Layout::List,
            blocks: Vec::new(),
            unsure: Vec::new(),
            strays: Vec::new(),
        };
        Page {
            text: String::new(),
            recipe,
        }
    }

    fn write(&mut self, line: &str) -> Words {
        let start = self.text.len();
        self.text.push_str(line);
        let span = Span::new(start, self.text.len());
        self.text.push('\n');
        Words {
            text: line.to_owned(),
            span,
        }
    }

    /// A line of the list; `number` is a cook's number or nothing.
    fn line(&mut self, line: &str, number: &str, unit: Option<Unit>, name: &str) -> &mut Ingredient {
        let words = self.write(line);
        let span = words.span;
        let quantity = number.parse::<Exact>().ok().map(|n| Quantity {
            amount: Amount::single(n),
            unit,
            span,
        });
        let item = Item {
            name: name.to_owned(),
            state: Vec::new(),
            span,
        };
        self.recipe.ingredients.push(Ingredient {
            line: words,
            span,
            quantity,
            items: vec![item],
            ..Ingredient::default()
        });
        self.recipe.ingredients.last_mut().expect("just pushed")
    }

    /// An operation on ingredients of these indices.
    fn op(&mut self, words: &str, verb: Verb, foods: &[usize]) -> &mut Operation {
        let words = self.write(words);
        let foods = foods
            .iter()
            .map(|index| food(Target::Ingredient { index: *index, item: 0 }))
            .collect();
        if self.recipe.steps.is_empty() {
            self.recipe.steps.push(Step {
                words: words.clone(),
                section: None,
                pieces: Vec::new(),
            });
        }
        let verb_span = Span::new(words.span.start, words.span.start);
        self.recipe.operations.push(Operation {
            foods,
            ..Operation::new(verb, self.recipe.steps.len() - 1, words.span, verb_span)
        });
        self.recipe.operations.last_mut().expect("just pushed")
    }

    fn step(&mut self) {
        let words = Words::default();
        self.recipe.steps.push(Step {
            words,
            section: None,
            pieces: Vec::new(),
        });
    }

    fn process(&self) -> Process {
        self.process_with(&[])
    }

    fn process_with(&self, made: &[Made]) -> Process {
        resolve(
            &self.recipe,
            &self.text,
            Larder::built_in(),
            made,
            &Kitchen::default(),
            Measures::Metric,
        )
    }
}

fn food(target: Target) -> FoodRef {
    FoodRef {
        words: Words::default(),
        target,
        share: Share::Whole,
    }
}

fn vessel(words: &str) -> Option<VesselRef> {
    Some(VesselRef {
        words: Words {
            text: words.to_owned(),
            span: Span::default(),
        },
        inferred: false,
    })
}

fn words(text: &str) -> Words {
    Words {
        text: text.to_owned(),
        span: Span::default(),
    }
}

fn minutes(low: f64, high: f64) -> Option<Minutes> {
    Some(Minutes {
        low,
        high,
        span: Span::default(),
        from_end: false,
    })
}

/// The stretches of a process in order, with their vessel.
fn stretches(process: &Process) -> Vec<(usize, &Stretch)> {
    let stretch = |act: &'_ crate::Act| match &act.doing {
        Doing::Cook(_) => Some(act.vessel),
        _ => None,
    };
    process
        .acts
        .iter()
        .filter_map(|act| {
            let vessel = stretch(act)?;
            match &act.doing {
                Doing::Cook(stretch) => Some((vessel, stretch)),
                _ => None,
            }
        })
        .collect()
}

/// What goes into a vessel, by name and grams, in order.
fn added(process: &Process) -> Vec<(String, f64)> {
    let mut all = Vec::new();
    for act in &process.acts {
        if let Doing::Add(portions) = &act.doing {
            for portion in portions {
                let lot = &process.lots[portion.lot];
                all.push((lot.name.clone(), lot.mass.grams() * portion.share));
            }
        }
    }
    all
}

#[test]
fn a_braise_goes_from_plate_to_pot_to_oven() {
    let mut page = Page::new();
    page.line(
        "1.8 kg beef shin, boned and cut into 5 cm pieces",
        "1.8",
        Some(Unit::Kilogram),
        "beef shin",
    );
    page.line("2 tbsp vegetable oil", "2", Some(Unit::Tablespoon), "vegetable oil");
    page.line("500 ml stout", "500", Some(Unit::Millilitre), "stout");
    page.line("2 tsp fine salt", "2", Some(Unit::Teaspoon), "fine salt");
    page.op("Season the beef with the salt.", Verb::Season, &[0, 3]);
    let heat = page.op("Heat the oil in a casserole over a high heat", Verb::Heat, &[1]);
    heat.into = vessel("casserole");
    heat.heat = Some(HeatWord::High);
    let brown = page.op(
        "and brown the beef in three batches, about 6 minutes a batch",
        Verb::Brown,
        &[0],
    );
    brown.minutes = minutes(6.0, 6.0);
    brown.repeat = Some(Repeat {
        words: words("three batches"),
        times: Some(3),
    });
    page.op("lifting each batch on to a plate", Verb::SetAside, &[0]).into = vessel("plate");
    page.op("Pour in the stout", Verb::Pour, &[2]);
    page.op("return the beef to the pot", Verb::Return, &[0]).into = vessel("pot");
    let braise = page.op("Cover and cook in the oven for 2 1/2 hours.", Verb::Braise, &[]);
    braise.into = vessel("oven");
    braise.cover = Some(Cover::On);
    braise.minutes = minutes(150.0, 150.0);
    braise.temperature = Some(potwright_measure::WrittenTemperature::Celsius(150.0));

    let process = page.process();
    let masses = added(&process);
    // Boned: all 1800 g go in. Two metric tablespoons are 30 ml, oil about 0.92 g/ml: 27.6 g.
    assert!(
        masses
            .iter()
            .any(|(name, g)| name == "beef shin" && (g - 1800.0).abs() < 1.0),
        "{masses:?}"
    );
    assert!(
        masses
            .iter()
            .any(|(name, g)| name == "vegetable oil" && (g - 27.6).abs() < 1.5),
        "{masses:?}"
    );
    let all = stretches(&process);
    let (pot, fry) = all[1];
    assert_eq!((fry.aim, fry.batches), (Aim::Fry(HeatWord::High), 3));
    let (oven_pot, oven) = *all.last().expect("a stretch");
    assert_eq!(oven_pot, pot, "the same vessel goes into the oven");
    assert_eq!((oven.place, oven.cover), (Place::Oven, Cover::On));
    assert_eq!(oven.aim, Aim::Oven(potwright_measure::Temperature::from_celsius(150.0)));
    assert_eq!(process.dish_vessel, pot);
    let transfers = process
        .acts
        .iter()
        .filter(|act| matches!(act.doing, Doing::Transfer { .. }))
        .count();
    assert_eq!(
        transfers, 3,
        "plate to pan, pan to plate, plate to pot: {:#?}",
        process.acts
    );
    assert!(process.open.is_empty(), "{:?}", process.open);
}

#[test]
fn soaked_beans_lose_their_soaking_water() {
    let mut page = Page::new();
    page.line("400 g dried white beans", "400", Some(Unit::Gram), "dried white beans");
    page.line("1.5 litres water", "1.5", Some(Unit::Litre), "water");
    let soak = page.op(
        "cover the beans with plenty of cold water and leave to soak for 12 hours",
        Verb::Soak,
        &[0],
    );
    soak.minutes = minutes(720.0, 720.0);
    page.op("Drain and rinse.", Verb::Drain, &[]);
    page.step();
    page.op("Put the beans in a large pot with the water", Verb::Add, &[0, 1])
        .into = vessel("large pot");
    let boil = page.op("boil hard for 10 minutes", Verb::Boil, &[]);
    boil.minutes = minutes(10.0, 10.0);

    let process = page.process();
    let soaking = process
        .lots
        .iter()
        .find(|lot| lot.ingredient.is_none())
        .expect("soaking water");
    // Three parts of water to one of beans: 3 × 400 g.
    assert!((soaking.mass.grams() - 1200.0).abs() < 1.0, "{}", soaking.mass.grams());
    assert!(process.acts.iter().any(|act| act.doing == Doing::Discard(Part::Liquid)));
    let all = stretches(&process);
    assert_eq!(all[0].1.place, Place::Counter);
    assert_eq!(all[1].1.aim, Aim::Boil);
    assert_ne!(all[0].0, all[1].0);
    assert!(process.open.is_empty(), "{:?}", process.open);
}

#[test]
fn a_lot_in_parts_adds_up() {
    let mut page = Page::new();
    page.line("100 g butter, divided", "100", Some(Unit::Gram), "butter")
        .divided = true;
    page.line("2 onions, chopped", "2", None, "onion");
    let melt = page.op("Melt half of the butter in a pan", Verb::Melt, &[0]);
    melt.into = vessel("pan");
    melt.foods[0].share = Share::Fraction(Exact::ratio(1, 2).expect("sound"));
    page.op("Add the onions", Verb::Add, &[1]);
    page.op("Stir in 1 tablespoon of the butter", Verb::Stir, &[0]).foods[0].share = Share::Measure(Quantity {
        amount: Amount::single(Exact::ONE),
        unit: Some(Unit::Tablespoon),
        span: Span::default(),
    });
    page.op("and the rest of the butter", Verb::Add, &[0]).foods[0].share = Share::Rest;

    let masses: Vec<f64> = added(&page.process())
        .into_iter()
        .filter(|(name, _)| name == "butter")
        .map(|(_, g)| g)
        .collect();
    // Half of 100 g; a metric tablespoon of 15 ml at 227 g a US cup (USDA SR28, NDB 01001: 0.959 g/ml) is 14.4 g;
    // the rest is 35.6 g.
    assert_eq!(masses.len(), 3);
    assert!((masses[0] - 50.0).abs() < 1e-9, "{masses:?}");
    assert!((masses[1] - 14.4).abs() < 0.3, "{masses:?}");
    assert!((masses.iter().sum::<f64>() - 100.0).abs() < 1e-9, "{masses:?}");
}

#[test]
fn medium_onions_by_the_piece() {
    let mut page = Page::new();
    page.line("2 medium onions, finely chopped", "2", None, "onion").size = Some(potwright_manuscript::Size::Medium);
    page.op("Put the onions in a pot", Verb::Add, &[0]).into = vessel("pot");
    let process = page.process();
    // USDA SR28, NDB 11282: 1 medium (2-1/2" dia) 110 g, edible part; 2 × 110 = 220 g. Produce trim-yield
    // charts: 89 % of an onion is left, 220 / 0.89 = 247 g bought.
    let onion = &process.lots[0];
    assert!((onion.mass.grams() - 220.0).abs() < 0.5, "{}", onion.mass.grams());
    assert!(
        (onion.purchased.grams() - 220.0 / 0.89).abs() < 1.0,
        "{}",
        onion.purchased.grams()
    );
    assert!(onion.spread.low < 0.9 && onion.spread.high > 1.1);
    assert!((onion.matter.total_kg() - 0.220).abs() < 1e-6);
}

/// What stands before the name has been done when it is weighed, what stands after it has not: 800 g are 800 g of peeled
/// celeriac, or 75 % of them (produce trim-yield charts).
#[test]
fn peeled_before_the_name_is_weighed_peeled() {
    for (text, grams) in [("800 g peeled celeriac", 800.0), ("800 g celeriac, peeled", 600.0)] {
        let mut page = Page::new();
        page.line(text, "800", Some(Unit::Gram), "celeriac");
        page.op("Put the celeriac in a pot", Verb::Add, &[0]).into = vessel("pot");
        let celeriac = &page.process().lots[0];
        assert!(
            (celeriac.mass.grams() - grams).abs() < 1.0,
            "{text}: {}",
            celeriac.mass.grams()
        );
    }
}

#[test]
fn weighed_on_the_page_beats_the_count() {
    let mut page = Page::new();
    let line = page.line(
        "1 large celeriac (about 900g), peeled and cut into 2cm cubes",
        "1",
        None,
        "celeriac",
    );
    let about = Amount::single(Exact::whole(900)).about();
    line.also.push(Quantity {
        amount: about,
        unit: Some(Unit::Gram),
        span: Span::new(0, 1),
    });
    page.op("Put the celeriac in a pot", Verb::Add, &[0]).into = vessel("pot");
    let process = page.process();
    let celeriac = &process.lots[0];
    assert!((celeriac.purchased.grams() - 900.0).abs() < 1e-6);
    // Produce trim-yield charts: 75 % of a celeriac is left; 900 × 0.75 = 675 g.
    assert!((celeriac.mass.grams() - 675.0).abs() < 1.0, "{}", celeriac.mass.grams());
    let pieces = celeriac.pieces.expect("pieces");
    assert_eq!(pieces.shape, potwright_larder::Shape::cube(20.0));
}

#[test]
fn tins_by_what_they_hold() {
    let mut page = Page::new();
    let gram = |n: i64| Quantity {
        amount: Amount::single(Exact::whole(n)),
        unit: Some(Unit::Gram),
        span: Span::default(),
    };
    page.line(
        "2 tins (400 g) chopped tomatoes",
        "2",
        Some(Unit::Can),
        "chopped tomatoes",
    )
    .package = Some(gram(400));
    page.op("Tip the tomatoes into a pot", Verb::Add, &[0]).into = vessel("pot");
    let process = page.process();
    assert!(
        (process.lots[0].mass.grams() - 800.0).abs() < 1e-6,
        "{}",
        process.lots[0].mass.grams()
    );
}

#[test]
fn salt_to_taste_is_solved_for_and_goes_in_where_it_is_named() {
    let mut page = Page::new();
    page.line("1 litre water", "1", Some(Unit::Litre), "water");
    page.line("salt to taste", "", None, "salt").to_taste = true;
    page.op("Bring the water to the boil in a pot", Verb::Boil, &[0]).into = vessel("pot");
    page.op("Season with salt", Verb::Season, &[1]);
    let process = page.process();
    assert_eq!(process.to_taste, vec![1]);
    assert_eq!(process.lots[1].mass.grams(), 0.0);
    assert!(
        process.lots[1].matter.total_kg() > 0.0,
        "the make-up of a convenient amount"
    );
    let last_add = process.acts.iter().rev().find_map(|act| match &act.doing {
        Doing::Add(portions) => Some(portions.clone()),
        _ => None,
    });
    assert_eq!(last_add.expect("an add")[0].lot, 1);
    assert_eq!(stretches(&process)[0].1.lasts.cue, Some(Cue::Boils));
}

#[test]
fn what_is_never_used_is_left_open() {
    let mut page = Page::new();
    page.line("1 litre water", "1", Some(Unit::Litre), "water");
    page.line("2 carrots", "2", None, "carrot");
    page.op("Boil the water in a pot for 5 minutes", Verb::Boil, &[0]).into = vessel("pot");
    let process = page.process();
    assert!(
        process
            .open
            .iter()
            .any(|open| open.text.contains("carrot") && open.text.contains("never uses"))
    );
}

#[test]
fn kneaded_butter_is_worked_in_a_bowl_and_added() {
    let mut page = Page::new();
    page.line("1 litre water", "1", Some(Unit::Litre), "water");
    page.line("30 g butter, softened", "30", Some(Unit::Gram), "butter");
    page.line("30 g plain flour", "30", Some(Unit::Gram), "plain flour");
    page.op("Boil the water in a pot for 5 minutes", Verb::Boil, &[0]).into = vessel("pot");
    page.step();
    page.op("Mash the butter and flour together to a paste.", Verb::Mix, &[1, 2]);
    let drop = page.op("drop in the paste a bit at a time", Verb::Add, &[]);
    drop.foods.push(food(Target::Component("paste".to_owned())));
    drop.into = vessel("pot");
    page.op("and simmer for 5 minutes", Verb::Simmer, &[]).minutes = minutes(5.0, 5.0);
    let process = page.process();
    assert!(process.open.is_empty(), "{:?}", process.open);
    let moved = process
        .acts
        .iter()
        .position(|act| matches!(act.doing, Doing::Transfer { what: Part::All, .. }));
    let last = process.acts.iter().rposition(|act| matches!(act.doing, Doing::Cook(_)));
    assert!(moved.is_some() && moved < last);
    assert!(
        (process.lots[1].temperature.celsius() - 20.0).abs() < 3.0,
        "softened: at room temperature"
    );
}

#[test]
fn a_late_addition_divides_the_simmer() {
    let mut page = Page::new();
    page.line("1 litre water", "1", Some(Unit::Litre), "water");
    page.line("150 g courgette, diced", "150", Some(Unit::Gram), "courgette");
    let simmer = page.op("Simmer the water in a pot for 15 minutes", Verb::Simmer, &[0]);
    simmer.into = vessel("pot");
    simmer.minutes = minutes(15.0, 15.0);
    let late = page.op("Add the courgette for the last 4 minutes", Verb::Add, &[1]);
    late.minutes = Some(Minutes {
        low: 4.0,
        high: 4.0,
        span: Span::default(),
        from_end: true,
    });
    let process = page.process();
    let lasts: Vec<f64> = stretches(&process)
        .iter()
        .filter_map(|(_, s)| s.lasts.minutes.map(|m| m.mid))
        .collect();
    assert_eq!(lasts, vec![11.0, 4.0]);
}

#[test]
fn stock_is_strained_and_its_bones_thrown_away() {
    let mut page = Page::new();
    page.line("2.5 kg beef bones", "2.5", Some(Unit::Kilogram), "beef bones");
    page.line("5 litres cold water", "5", Some(Unit::Litre), "cold water");
    page.op(
        "Put the bones in the big pot and cover with the water",
        Verb::Add,
        &[0, 1],
    )
    .into = vessel("big pot");
    page.op("Simmer very gently, uncovered, for 8 hours.", Verb::Simmer, &[])
        .minutes = minutes(480.0, 480.0);
    let strain = page.op("Strain through a fine sieve into a clean pot", Verb::Strain, &[]);
    strain.into = vessel("clean pot");
    let boil = page.op("Boil until reduced to about 3 litres.", Verb::Reduce, &[]);
    boil.cue = Some(words("reduced to about 3 litres"));
    let process = page.process();
    let (last, boil) = *stretches(&process).last().expect("a stretch");
    assert_eq!(process.vessels[last].name, "clean pot");
    let litres = match boil.lasts.cue {
        Some(Cue::ReducedToVolume(volume)) => volume.litres(),
        _ => panic!("{:?}", boil.lasts),
    };
    assert!((litres - 3.0).abs() < 1e-9, "{litres}");
    assert!(process.acts.iter().any(|act| act.doing == Doing::Discard(Part::All)));
    let big = &process.vessels[0].pot.as_ref().expect("a pot");
    assert!(big.litres() > 9.0, "7.5 litres need the largest pot: {}", big.name);
}

#[test]
fn shares_never_exceed_the_lot() {
    let mut page = Page::new();
    page.line("100 g butter", "100", Some(Unit::Gram), "butter");
    for _ in 0..4 {
        let add = page.op("Add two thirds of the butter", Verb::Add, &[0]);
        add.into = vessel("pot");
        add.foods[0].share = Share::Fraction(Exact::ratio(2, 3).expect("sound"));
    }
    let total: f64 = added(&page.process()).iter().map(|(_, g)| g).sum();
    assert!(total <= 100.0 + 1e-9, "{total}");
}

#[test]
fn what_is_done_meanwhile_goes_on_until_the_pot_is_touched() {
    let mut page = Page::new();
    page.line("1 litre water", "1", Some(Unit::Litre), "water");
    page.line("6 pork sausages", "6", None, "pork sausages");
    let simmer = page.op("Simmer the water in a pot for 1 hour", Verb::Simmer, &[0]);
    simmer.into = vessel("pot");
    simmer.minutes = minutes(60.0, 60.0);
    let brown = page.op(
        "Meanwhile brown the sausages in a frying pan for 10 minutes",
        Verb::Brown,
        &[1],
    );
    brown.into = vessel("frying pan");
    brown.minutes = minutes(10.0, 10.0);
    brown.meanwhile = true;
    page.op("Add the sausages to the pot", Verb::Add, &[1]).into = vessel("pot");
    let process = page.process();
    let flags: Vec<bool> = process.acts.iter().map(|act| act.meanwhile).collect();
    // Water in, simmer; sausages in, brown; over to the pot; serve.
    assert_eq!(
        flags,
        vec![false, false, true, true, false, false],
        "{:#?}",
        process.acts
    );
}

/// Pepper that is on the list by the pinch and goes in in two places leaves no question about what is over; flour does.
#[test]
fn what_is_left_of_the_pepper_is_no_question() {
    let mut page = Page::new();
    page.line("2 tsp black pepper", "2", Some(Unit::Teaspoon), "black pepper");
    page.line("100 g plain flour", "100", Some(Unit::Gram), "plain flour");
    page.line("1 litre water", "1", Some(Unit::Litre), "water");
    let half = Share::Fraction(Exact::ratio(1, 2).expect("a half"));
    for index in [0, 1] {
        let put = page.op("Put some into a pot", Verb::Add, &[index]);
        put.foods[0].share = half;
        put.into = vessel("pot");
    }
    page.op("Add the water", Verb::Add, &[2]).into = vessel("pot");
    let open = page.process().open;
    assert_eq!(open.len(), 1, "{open:?}");
    assert!(open[0].text.contains("plain flour"), "{open:?}");
}

/// Chopped onions cooked gently in butter are soft in eight to twelve minutes and not in three (common practice, no
/// source).
#[test]
fn ten_minutes_make_onions_soft_and_three_do_not() {
    for (minutes, short) in [(12, false), (10, false), (3, true)] {
        let text = format!(
            "Soup\n\n3 onions, finely chopped\n2 tbsp butter\n1 litre water\n\nMelt the butter in a large pan. Add the onions \
             and cook gently for {minutes} minutes until soft. Add the water and simmer for 20 minutes.\n"
        );
        let recipe = potwright_manuscript::read(&text);
        let kitchen = Kitchen::default();
        let process = resolve(&recipe, &text, Larder::built_in(), &[], &kitchen, Measures::Metric);
        let trace = crate::cook(&process, &kitchen, &crate::Draw::central());
        let noted = trace
            .events
            .iter()
            .any(|event| event.what == crate::Happening::CueNotReached);
        assert_eq!(noted, short, "{minutes} minutes: {:?}", trace.events);
    }
}

/// Leaves wilt as soon as they are hot (common practice, no source): five minutes in the pot are not called too short.
#[test]
fn leaves_wilt_before_they_are_tender() {
    let text = "Soup\n\n200 g kale, shredded\n1 litre chicken stock\n\nBring the stock to the boil in a large pan. Stir in the kale and \
        cook for 5 minutes until it has wilted.\n";
    let recipe = potwright_manuscript::read(text);
    let kitchen = Kitchen::default();
    let process = resolve(&recipe, text, Larder::built_in(), &[], &kitchen, Measures::Metric);
    let trace = crate::cook(&process, &kitchen, &crate::Draw::central());
    let noted = trace
        .events
        .iter()
        .any(|event| event.what == crate::Happening::CueNotReached);
    assert!(!noted, "{:?}", trace.events);
}
