//! What holds for every recipe: no panic, finite masses, shares that add up, acts that point at what there is.

use potwright_larder::Larder;
use potwright_manuscript::{
    Cover, FoodRef, HeatWord, Minutes, Operation, Recipe, Repeat, Share, Span, Target, Verb, VesselRef, Words,
};
use potwright_measure::{Exact, Measures, WrittenTemperature};
use proptest::prelude::*;

use super::resolve;
use crate::{Doing, Kitchen, Part, Process};

/// Lines that a list may hold, plain and odd.
const LINES: &[&str] = &[
    "2 onions, chopped",
    "1.8 kg beef shin, boned and cut into 5 cm pieces",
    "a handful of parsley",
    "salt to taste",
    "black pepper",
    "400 g dried white beans, soaked overnight",
    "1 tin (400 g) chopped tomatoes",
    "0 g butter",
    "99999999999 cups flour",
    "juice of 2 lemons",
    "½ cup each carrot, turnip and celery",
    "3 unheard-of things",
    "2 kg live mussels",
    "1.2 litres hot vegetable stock",
    "1 egg, beaten",
    "",
    "12 cm cinnamon stick / 4 oz",
];

/// Words of vessels and places.
const VESSELS: &[&str] = &[
    "pot",
    "large frying pan",
    "oven",
    "plate",
    "bowl",
    "clean pan",
    "28 cm pot",
    "sieve",
    "",
    "refrigerator",
];

/// Words of cues.
const CUES: &[&str] = &[
    "it boils",
    "soft",
    "tender",
    "reduced by half",
    "reduced to 1 litre",
    "75C in the middle",
    "it sings",
    "",
];

fn target() -> impl Strategy<Value = Target> {
    prop_oneof![
        6 => (0usize..20, 0usize..3).prop_map(|(index, item)| Target::Ingredient { index, item }),
        2 => Just(Target::Pot),
        1 => Just(Target::Component("paste".to_owned())),
        1 => Just(Target::Component("soaking liquid".to_owned())),
        1 => Just(Target::Unlisted("water".to_owned())),
        1 => Just(Target::Unlisted("salt".to_owned())),
        1 => Just(Target::Unlisted("moonlight".to_owned())),
    ]
}

fn share() -> impl Strategy<Value = Share> {
    prop_oneof![
        4 => Just(Share::Whole),
        1 => Just(Share::Rest),
        1 => Just(Share::Some),
        2 => (-3i64..9, 1i64..5).prop_map(|(n, d)| Share::Fraction(Exact::ratio(n, d).expect("not nought below"))),
    ]
}

fn food() -> impl Strategy<Value = FoodRef> {
    (target(), share()).prop_map(|(target, share)| FoodRef {
        words: Words::default(),
        target,
        share,
    })
}

fn operation(steps: usize) -> impl Strategy<Value = Operation> {
    let what = (
        0..Verb::ALL.len(),
        prop::collection::vec(food(), 0..4),
        prop::collection::vec(food(), 0..2),
    );
    let how = (
        prop::option::of(0..VESSELS.len()),
        prop::option::of(0..CUES.len()),
        prop::option::of((-5.0f64..500.0, -5.0f64..500.0, any::<bool>())),
        prop::option::of(-50.0f64..400.0),
        0..12u32,
        any::<(bool, bool)>(),
    );
    (what, how, 0..steps.max(1)).prop_map(
        |((verb, foods, discard), (into, cue, minutes, heat, odd, flags), step)| Operation {
            span: Span::default(),
            step,
            verb: Verb::ALL[verb],
            verb_span: Span::default(),
            keep: discard.clone(),
            foods,
            into: into.map(|at| VesselRef {
                words: Words {
                    text: VESSELS[at].to_owned(),
                    span: Span::default(),
                },
                inferred: odd % 2 == 0,
            }),
            heat: [None, Some(HeatWord::Lower), Some(HeatWord::Off), Some(HeatWord::High)][odd as usize % 4],
            temperature: heat.map(WrittenTemperature::Celsius),
            fan: None,
            core: None,
            minutes: minutes.map(|(low, high, from_end)| Minutes {
                low,
                high,
                span: Span::default(),
                from_end,
            }),
            cue: cue.map(|at| Words {
                text: CUES[at].to_owned(),
                span: Span::default(),
            }),
            cover: [None, Some(Cover::On), Some(Cover::Ajar)][odd as usize % 3],
            discard,
            repeat: (odd == 5).then(|| Repeat {
                words: Words {
                    text: "2 batches".to_owned(),
                    span: Span::default(),
                },
                times: None,
            }),
            form: potwright_manuscript::Form::Imperative,
            meanwhile: flags.0,
            optional: flags.1 && odd == 3,
        },
    )
}

/// A page of odd lines with odd operations.
fn recipe() -> impl Strategy<Value = (Recipe, String)> {
    let lines = prop::collection::vec(0..LINES.len(), 0..8);
    (lines, prop::collection::vec(operation(3), 0..12)).prop_map(|(lines, operations)| {
        let mut text = "A Dish\n\nServes 4\n\n".to_owned();
        for line in lines {
            text.push_str(LINES[line]);
            text.push('\n');
        }
        text.push_str("\n1. Stir.\n\n2. Stir.\n\n3. Stir.\n");
        let mut recipe = potwright_manuscript::read(&text);
        recipe.operations = operations;
        (recipe, text)
    })
}

/// Everything that must hold of a process.
fn check(process: &Process) {
    let lots = process.lots.len();
    let vessels = process.vessels.len();
    let mut used = vec![0.0; lots];
    for lot in &process.lots {
        assert!(lot.mass.is_finite() && lot.mass.grams() >= 0.0, "{lot:?}");
        assert!(
            lot.purchased.is_finite() && lot.purchased.grams() >= lot.mass.grams() - 1e-9,
            "{lot:?}"
        );
        assert!(
            lot.matter
                .mass_kg
                .iter()
                .chain(&lot.matter.nutrients)
                .all(|x| x.is_finite() && *x >= 0.0),
            "{lot:?}"
        );
        assert!(
            lot.spread.low > 0.0 && lot.spread.low <= 1.0 && lot.spread.high >= 1.0,
            "{lot:?}"
        );
        assert!(lot.preparation.minutes().is_finite());
        if lot.mass.grams() > 0.0 {
            let parts = lot.matter.total_kg() + lot.inedible.kilograms();
            assert!(
                (parts / lot.mass.kilograms() - 1.0).abs() < 1e-9,
                "the parts make up the mass: {lot:?}"
            );
        }
    }
    for act in &process.acts {
        assert!(act.vessel < vessels);
        match &act.doing {
            Doing::Add(portions) => {
                for portion in portions {
                    assert!(portion.share > 0.0, "{act:?}");
                    used[portion.lot] += portion.share;
                }
            }
            Doing::Transfer { to, what } => {
                assert!(*to < vessels && *to != act.vessel);
                if let Part::Lots(named) = what {
                    assert!(named.iter().all(|lot| *lot < lots));
                }
            }
            Doing::Cook(stretch) => {
                assert!(stretch.batches >= 1);
                if let Some(minutes) = stretch.lasts.minutes {
                    assert!(
                        0.0 <= minutes.low && minutes.low <= minutes.mid && minutes.mid <= minutes.high,
                        "{act:?}"
                    );
                    assert!(minutes.high.is_finite());
                }
                assert!(
                    stretch.lasts.minutes.is_some() || stretch.lasts.cue.is_some(),
                    "{act:?}"
                );
            }
            Doing::Shape { lot, .. } => assert!(*lot < lots),
            Doing::Puree(share) | Doing::Skim(crate::FatOff::Share(share)) => assert!((0.0..=1.0).contains(share)),
            Doing::Skim(crate::FatOff::Amount(mass) | crate::FatOff::AllBut(mass)) => assert!(mass.is_finite()),
            Doing::Discard(_) | Doing::Serve => {}
        }
    }
    assert!(used.iter().all(|share| *share <= 1.0 + 1e-9), "{used:?}");
    assert!(process.dish_vessel < vessels);
    assert!(matches!(process.acts.last().map(|act| &act.doing), Some(Doing::Serve)));
}

proptest! {
    #[test]
    fn any_operations_resolve((recipe, text) in recipe()) {
        check(&resolve(&recipe, &text, Larder::built_in(), &[], &Kitchen::default(), Measures::Us));
    }

    #[test]
    fn any_text_resolves(text in ".{0,400}") {
        let recipe = potwright_manuscript::read(&text);
        check(&resolve(&recipe, &text, Larder::built_in(), &[], &Kitchen::default(), Measures::Metric));
    }

    #[test]
    fn any_page_of_kitchen_words_resolves(words in prop::collection::vec(prop::sample::select(vec![
        "2", "onions", "boil", "the", "butter", "for", "10 minutes", "\n", "\n\n", "stir in", "until", "soft", "pan", "1/2",
        "cup", "remaining", "half of", "strain", "salt", "1.", "oven", "180C", "discard", "drain", "into", "meanwhile", ",", "serve", "simmer",
    ]), 0..60)) {
        let text = words.join(" ");
        let recipe = potwright_manuscript::read(&text);
        check(&resolve(&recipe, &text, Larder::built_in(), &[], &Kitchen::default(), Measures::Imperial));
    }
}
