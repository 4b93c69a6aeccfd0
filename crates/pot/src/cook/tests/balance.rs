//! Accounts: what went in is what is there and what left, constituent by constituent, for any process.

use potwright_manuscript::HeatWord;
use proptest::prelude::*;

use super::*;
use crate::cook::Fault;

/// Relative gaps of every account, summed here independently of the engine: matter by constituent (starch and
/// gelatinised starch as one), bone and shell, energy.
fn gaps(trace: &Trace) -> Vec<(String, f64)> {
    let books = &trace.ledger;
    let mut gaps = Vec::new();
    let whole = books.put_in.total_kg().max(1e-12);
    let out = [
        &books.in_vessels,
        &books.vapour,
        &books.spattered,
        &books.discarded,
        &books.left_behind,
    ];
    let of = |matter: &Matter, stuff: Stuff| match stuff {
        Stuff::Starch => matter.kg(Stuff::Starch) + matter.kg(Stuff::GelatinisedStarch),
        Stuff::GelatinisedStarch => 0.0,
        other => matter.kg(other),
    };
    for stuff in Stuff::ALL {
        let left: f64 = out.iter().map(|account| of(account, stuff)).sum();
        gaps.push((format!("{stuff:?}"), (of(&books.put_in, stuff) - left).abs() / whole));
    }
    for nutrient in Nutrient::ALL {
        let left: f64 = out.iter().map(|account| account.nutrient(nutrient)).sum();
        let there = books.put_in.nutrient(nutrient);
        gaps.push((format!("{nutrient:?}"), (there - left).abs() / there.abs().max(1e-12)));
    }
    let bones = books.inedible_in_kg - books.inedible_discarded_kg - books.inedible_in_vessels_kg;
    gaps.push(("bones".to_owned(), bones.abs() / whole));
    let joules_in = books.enthalpy_in_j + books.vessels_in_j + books.burner_j + books.oven_j;
    let joules_out = books.in_vessels_j + books.room_j + books.vapour_j + books.discarded_j;
    let flow = joules_in.abs() + joules_out.abs() + books.burner_j.abs() + books.oven_j.abs() + 1.0;
    gaps.push(("energy".to_owned(), (joules_in - joules_out).abs() / flow));
    gaps
}

pub(super) fn assert_balanced(trace: &Trace) {
    for (account, gap) in gaps(trace) {
        assert!(gap < 1e-9, "{account} is off by {gap:e}");
    }
}

/// A stew: browned, simmered, strained into another pot, reduced, puréed, skimmed, served.
fn stew(cover: Cover, minutes: f64) -> Process {
    let mut meat = beef(1.2, 35.0);
    meat.inedible = Mass::from_grams(150.0);
    meat.mass = Mass::from_kilograms(1.35);
    meat.matter.nutrients = [800.0, 900.0, 0.0, 35.0, 800.0, 3600.0, 120.0, 26.0, 0.0, 1.0, 2.0];
    let wine = lot(
        "wine",
        Kind::Wine,
        18.0,
        &[(Stuff::Water, 0.26), (Stuff::Alcohol, 0.03), (Stuff::Acid, 0.002)],
    );
    let salt = lot("salt", Kind::Salt, 20.0, &[(Stuff::Salt, 0.02)]);
    let mut flour = lot(
        "flour",
        Kind::Flour,
        20.0,
        &[(Stuff::Starch, 0.04), (Stuff::Protein, 0.006), (Stuff::Water, 0.006)],
    );
    flour.starch = Some(StarchKind::Wheat);
    let lots = vec![
        oil(0.03),
        meat,
        wine,
        water(2.5, 12.0),
        salt,
        flour,
        carrot(0.4, 20.0),
        beans(0.3),
    ];
    let kitchen = Kitchen::default();
    let vessels = vec![
        vessel(Some(kitchen.pots[1].clone())),
        vessel(Some(kitchen.pots[2].clone())),
        vessel(None),
    ];
    let mut fry = stretch(
        Place::Hob,
        Aim::Fry(HeatWord::MediumHigh),
        Some(6.0),
        Some(Cue::Browned),
        Cover::Off,
    );
    if let Doing::Cook(stretch) = &mut fry {
        stretch.batches = 2;
    }
    let mut acts = vec![
        add_all(0, &[0, 1]),
        act(0, fry),
        act(
            0,
            Doing::Transfer {
                to: 2,
                what: Part::Lots(vec![1]),
            },
        ),
        add_all(0, &[5, 2, 3, 4]),
        act(0, until(Aim::Boil, Cue::Boils)),
        act(2, Doing::Transfer { to: 0, what: Part::All }),
        add_all(0, &[6, 7]),
        act(0, hob(Aim::Simmer, minutes, cover)),
        act(
            0,
            stretch(
                Place::Oven,
                Aim::Oven(Temperature::from_celsius(150.0)),
                Some(minutes),
                None,
                Cover::On,
            ),
        ),
        act(
            0,
            Doing::Transfer {
                to: 1,
                what: Part::Liquid,
            },
        ),
        act(
            0,
            Doing::Transfer {
                to: 1,
                what: Part::Share(0.5),
            },
        ),
        act(0, Doing::Discard(Part::Solids)),
        act(1, until(Aim::Boil, Cue::ReducedTo(0.8))),
        act(1, Doing::Skim(FatOff::Share(0.8))),
        act(1, Doing::Puree(0.7)),
        act(1, stretch(Place::IceBath, Aim::Off, Some(30.0), None, Cover::Off)),
        act(1, stretch(Place::Freezer, Aim::Off, Some(600.0), None, Cover::On)),
        act(1, Doing::Serve),
    ];
    for act in &mut acts {
        act.hands = Duration::from_minutes(1.0);
    }
    Process {
        dish_vessel: 1,
        ..process(lots, vessels, acts)
    }
}

#[test]
fn a_stew_balances() {
    for cover in [Cover::Off, Cover::Ajar, Cover::On] {
        let trace = central(&stew(cover, 60.0), &Kitchen::default());
        assert_balanced(&trace);
        assert!(trace.ledger.vapour.kg(Stuff::Water) > 0.05 && trace.served_liquid.total_kg() > 0.3);
    }
}

/// The same check must catch an engine that forgets to book its vapour.
#[test]
fn a_forgotten_account_is_caught() {
    let process = stew(Cover::Off, 30.0);
    let mut run = Run::new(&process, &Kitchen::default(), &Draw::central());
    run.cond.fault = Some(Fault::VapourForgotten);
    run.all();
    let trace = run.into_trace();
    let (account, worst) = gaps(&trace)
        .into_iter()
        .fold((String::new(), 0.0), |a, b| if b.1 > a.1 { b } else { a });
    assert_eq!(account, "Water");
    assert!(worst > 1e-3);
}

fn any_place() -> impl Strategy<Value = Place> {
    prop_oneof![
        4 => Just(Place::Hob),
        2 => Just(Place::Oven),
        1 => Just(Place::Counter),
        1 => Just(Place::Sink),
        1 => Just(Place::IceBath),
        1 => Just(Place::Refrigerator),
        1 => Just(Place::Freezer),
    ]
}

fn any_word() -> impl Strategy<Value = HeatWord> {
    prop_oneof![
        Just(HeatWord::Low),
        Just(HeatWord::Medium),
        Just(HeatWord::High),
        Just(HeatWord::Lower)
    ]
}

fn any_aim() -> impl Strategy<Value = Aim> {
    prop_oneof![
        any_word().prop_map(Aim::Setting),
        any_word().prop_map(Aim::Fry),
        Just(Aim::Boil),
        Just(Aim::Simmer),
        Just(Aim::BelowBoil),
        any_word().prop_map(Aim::Pressure),
        (30.0..90.0).prop_map(|t| Aim::Hold(Temperature::from_celsius(t))),
        (100.0..240.0).prop_map(|t| Aim::Oven(Temperature::from_celsius(t))),
        Just(Aim::Off),
    ]
}

fn any_cue() -> impl Strategy<Value = Option<Cue>> {
    prop_oneof![
        Just(None),
        Just(Some(Cue::Boils)),
        Just(Some(Cue::Browned)),
        Just(Some(Cue::Softened)),
        Just(Some(Cue::Tender(vec![]))),
        Just(Some(Cue::CookedThrough(vec![1]))),
        (0.3..1.0).prop_map(|share| Some(Cue::ReducedTo(share))),
        (0.0..120.0).prop_map(|t| Some(Cue::Reaches(Temperature::from_celsius(t)))),
    ]
}

fn any_part() -> impl Strategy<Value = Part> {
    prop_oneof![
        Just(Part::All),
        Just(Part::Liquid),
        Just(Part::Solids),
        Just(Part::Lots(vec![0, 1])),
        (0.0..1.0).prop_map(Part::Share),
    ]
}

fn any_doing() -> impl Strategy<Value = Doing> {
    let cover = prop_oneof![Just(Cover::On), Just(Cover::Off), Just(Cover::Ajar)];
    let minutes = prop_oneof![Just(None), (0.0..90.0).prop_map(Some)];
    let cook = (any_place(), any_aim(), minutes, any_cue(), cover, 0_u32..4).prop_map(
        |(place, aim, minutes, cue, cover, batches)| {
            let lasts = Lasts {
                minutes: minutes.map(Spread::exact),
                cue,
            };
            Doing::Cook(Stretch {
                place,
                aim,
                lasts,
                cover,
                assumed: false,
                batches,
            })
        },
    );
    prop_oneof![
        6 => cook,
        4 => (0_usize..8, 0.0..1.0).prop_map(|(lot, share)| Doing::Add(vec![Portion { lot, share }])),
        2 => (0_usize..3, any_part()).prop_map(|(to, what)| Doing::Transfer { to, what }),
        1 => any_part().prop_map(Doing::Discard),
        1 => (0.0..1.0).prop_map(Doing::Puree),
        1 => (0.0..1.0).prop_map(|share| Doing::Skim(FatOff::Share(share))),
        1 => (0_usize..9, any::<bool>(), 0_u32..3).prop_map(|(lot, risen, count)| Doing::Shape {
            lot,
            pieces: inert(Shape::Slab { thickness_mm: 40.0 }),
            risen,
            count: (count > 0).then_some(count),
        }),
        1 => Just(Doing::Serve),
    ]
}

prop_compose! {
    fn any_acts()(acts in prop::collection::vec((0_usize..3, any_doing(), 0.0..3.0, any::<bool>()), 1..14)) -> Vec<Act> {
        acts.into_iter().map(|(vessel, doing, hands, meanwhile)| Act {
            hands: Duration::from_minutes(hands), meanwhile, ..act(vessel, doing)
        }).collect()
    }
}

proptest! {
    #![proptest_config(ProptestConfig {
        cases: 192,
        failure_persistence: None,
        rng_seed: proptest::test_runner::RngSeed::Fixed(20_251),
        ..ProptestConfig::default()
    })]

    /// Random processes of the stew's foods and vessels, under random draws.
    #[test]
    fn random_processes_balance(acts in any_acts(), z in prop::array::uniform5(-2.5..2.5), bare in any::<bool>()) {
        let mut process = stew(Cover::Off, 1.0);
        let lots: Vec<Act> = vec![add_all(0, &[0, 1, 3]), add_all(1, &[2, 6])];
        process.acts = if bare { acts } else { lots.into_iter().chain(acts).collect() };
        let [evaporation, burner, oven, reading, food] = z;
        let draw = Draw { lots: vec![0.3, -1.0], evaporation, burner, oven, reading, food };
        let trace = cook(&process, &Kitchen::default(), &draw);
        for (account, gap) in gaps(&trace) {
            prop_assert!(gap < 1e-9, "{} is off by {:e}", account, gap);
        }
        for matter in [&trace.served_liquid, &trace.ledger.in_vessels, &trace.ledger.vapour, &trace.ledger.discarded] {
            prop_assert!(matter.is_sound());
        }
        prop_assert!(trace.samples.windows(2).all(|pair| pair[0].time_s <= pair[1].time_s));
        prop_assert!(trace.samples.iter().flat_map(|s| &s.vessels).all(|v| v.temp_c.is_finite() && v.temp_c < 601.0));
    }
}
