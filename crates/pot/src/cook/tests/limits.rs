//! Absurd processes and the ends of the range: never a panic, always an event.

use potwright_manuscript::HeatWord;

use super::*;

fn boil_then(minutes: f64) -> Vec<Act> {
    vec![
        add_all(0, &[0]),
        act(0, until(Aim::Boil, Cue::Boils)),
        act(0, hob(Aim::Setting(HeatWord::High), minutes, Cover::Off)),
    ]
}

#[test]
fn a_dry_pot_is_told_and_taken_off() {
    let process = process(
        vec![water(0.4, 15.0)],
        vec![vessel(Some(Kitchen::default().pots[0].clone()))],
        boil_then(120.0),
    );
    let trace = central(&process, &Kitchen::default());
    assert!(happened(&trace, |what| *what == Happening::BoiledDry));
    assert!((vapour_kg(&trace) - 0.4).abs() < 1e-9);
    assert!(trace.samples.iter().flat_map(|s| &s.vessels).all(|v| v.temp_c < 400.0));
}

#[test]
fn without_heat_nothing_boils() {
    for kitchen in [
        Kitchen {
            burners: Vec::new(),
            ..Kitchen::default()
        },
        kitchen_with(Burner::gas(0.0)),
    ] {
        let process = process(
            vec![water(2.0, 15.0)],
            vec![vessel(Some(Kitchen::default().pots[0].clone()))],
            boil_then(10.0),
        );
        let trace = central(&process, &kitchen);
        assert!(happened(&trace, |what| *what == Happening::CueNotReached));
        assert!(!happened(&trace, |what| *what == Happening::Boiled));
        // It is not waited for long.
        assert!(trace.elapsed.minutes() < 60.0, "{}", trace.elapsed.minutes());
    }
}

/// At 3,000 m water boils at 89.97 °C (US Standard Atmosphere 1976, IAPWS-IF97).
#[test]
fn three_thousand_metres() {
    let kitchen = Kitchen {
        altitude_m: 3000.0,
        ..Kitchen::default()
    };
    let process = process(
        vec![water(2.0, 15.0)],
        vec![vessel(Some(Kitchen::default().pots[0].clone()))],
        boil_then(5.0),
    );
    let trace = central(&process, &kitchen);
    let last = trace.samples.last().unwrap().vessels[0].temp_c;
    assert!((last - 89.97).abs() < 0.05, "{last}");
    assert!((trace.boiling_c - 89.97).abs() < 0.02);
}

#[test]
fn a_full_pot_runs_over() {
    let level = |kg: f64| {
        let process = process(
            vec![water(kg, 15.0)],
            vec![vessel(Some(Kitchen::default().pots[0].clone()))],
            boil_then(1.0),
        );
        happened(&central(&process, &Kitchen::default()), |what| {
            matches!(what, Happening::TooFull(_))
        })
    };
    assert!(!level(1.5) && level(2.3));
}

#[test]
fn hot_milk_is_told_once() {
    let milk = lot(
        "milk",
        Kind::Milk,
        5.0,
        &[
            (Stuff::Water, 0.877),
            (Stuff::Fat, 0.04),
            (Stuff::Protein, 0.033),
            (Stuff::Sugar, 0.05),
        ],
    );
    let pot = vessel(Some(Kitchen::default().pots[1].clone()));
    let run = |aim| {
        let acts = vec![add_all(0, &[0]), act(0, hob(aim, 10.0, Cover::Off))];
        let trace = central(
            &process(vec![milk.clone()], vec![pot.clone()], acts),
            &Kitchen::default(),
        );
        trace
            .events
            .iter()
            .filter(|event| matches!(event.what, Happening::DairyHot(t) if t > 85.0))
            .count()
    };
    assert_eq!(run(Aim::Boil), 1);
    assert_eq!(run(Aim::BelowBoil), 0);
}

/// Nonsense of every kind is left out and told.
#[test]
fn nonsense() {
    let mut nan = water(1.0, 15.0);
    nan.mass = Mass::from_kilograms(f64::NAN);
    let mut sour = water(1.0, f64::NAN);
    sour.matter.mass_kg[0] = f64::INFINITY;
    let mut odd = beef(1.0, f64::NAN);
    odd.spread = Spread {
        low: f64::NAN,
        mid: f64::NAN,
        high: f64::NAN,
    };
    let mut huge = water(1.0, 20.0);
    huge.mass = Mass::from_kilograms(1e6);
    let lots = vec![nan, sour, odd, huge, water(0.0, 20.0)];
    let oven = stretch(
        Place::Oven,
        Aim::Oven(Temperature::from_celsius(f64::NAN)),
        Some(f64::NAN),
        None,
        Cover::Off,
    );
    let acts = vec![
        add_all(0, &[0, 1, 2, 3, 4, 99]),
        add_all(7, &[0]),
        act(0, oven),
        act(0, Doing::Transfer { to: 9, what: Part::All }),
        act(0, Doing::Transfer { to: 0, what: Part::All }),
        act(0, Doing::Puree(f64::NAN)),
        act(0, Doing::Skim(FatOff::Share(-3.0))),
        act(
            0,
            Doing::Transfer {
                to: 1,
                what: Part::Share(f64::NAN),
            },
        ),
        act(
            0,
            hob(Aim::Hold(Temperature::from_celsius(f64::INFINITY)), 1.0, Cover::Off),
        ),
        act(0, until(Aim::Boil, Cue::Reaches(Temperature::from_celsius(f64::NAN)))),
        act(1, until(Aim::Boil, Cue::ReducedTo(f64::NAN))),
        act(1, Doing::Serve),
    ];
    let draw = Draw {
        lots: vec![f64::NAN; 3],
        evaporation: f64::INFINITY,
        burner: f64::NAN,
        oven: 99.0,
        reading: f64::NAN,
        food: -1e9,
    };
    let mut kitchen = Kitchen {
        altitude_m: f64::NAN,
        room: Temperature::from_celsius(f64::NAN),
        ..Kitchen::default()
    };
    kitchen.evaporation = Spread {
        low: f64::NAN,
        mid: -1.0,
        high: 3.0,
    };
    let bare = Pot::new("", 0.0, f64::NAN, Material::Steel, -1.0);
    let trace = cook(
        &Process {
            dish_vessel: 5,
            ..process(lots, vec![vessel(Some(bare)), vessel(None)], acts)
        },
        &kitchen,
        &draw,
    );
    assert!(
        trace
            .events
            .iter()
            .filter(|event| matches!(event.what, Happening::LeftOut(_)))
            .count()
            >= 4
    );
    assert!(trace.elapsed.is_finite() && trace.ledger.in_vessels.is_sound());
    assert!(
        trace
            .samples
            .iter()
            .flat_map(|s| &s.vessels)
            .all(|v| v.temp_c.is_finite() && v.mass_kg.is_finite())
    );
    let empty = cook(
        &process(Vec::new(), Vec::new(), Vec::new()),
        &Kitchen::default(),
        &Draw::central(),
    );
    assert!(empty.samples.is_empty() && empty.elapsed.seconds() == 0.0);
    let only_serve = process(Vec::new(), Vec::new(), vec![act(0, Doing::Serve)]);
    assert_eq!(central(&only_serve, &Kitchen::default()).events.len(), 1);
}

/// Acts said to happen meanwhile run beside the one before, not after it.
#[test]
fn meanwhile() {
    let mut beside = act(1, hob(Aim::Setting(HeatWord::High), 10.0, Cover::Off));
    beside.meanwhile = true;
    let mut second = add_all(1, &[1]);
    second.meanwhile = true;
    let acts = vec![
        add_all(0, &[0]),
        act(0, hob(full(), 30.0, Cover::Off)),
        second,
        beside,
        act(0, Doing::Serve),
    ];
    let pots = vec![
        vessel(Some(Kitchen::default().pots[2].clone())),
        vessel(Some(Kitchen::default().pots[0].clone())),
    ];
    let trace = central(
        &process(vec![water(3.0, 15.0), water(1.0, 15.0)], pots, acts),
        &Kitchen::default(),
    );
    assert_eq!(trace.acts[3].start_s, trace.acts[1].start_s);
    assert!((trace.acts[3].end_s - 600.0).abs() < 1.0 && (trace.elapsed.minutes() - 30.0).abs() < 0.1);
    // Two burners: the second pot has the second one.
    let at_five = trace.samples.iter().find(|s| s.time_s >= 300.0).unwrap();
    assert!((at_five.vessels[0].heat_w - 1400.0).abs() < 1.0 && (at_five.vessels[1].heat_w - 1120.0).abs() < 1.0);
}

fn full() -> Aim {
    Aim::Setting(HeatWord::High)
}

/// The same run twice gives the same trace, and draws move it the way they should.
#[test]
fn draws() {
    let process = process(
        vec![water(3.0, 15.0)],
        vec![vessel(Some(Kitchen::default().pots[1].clone()))],
        vec![add_all(0, &[0]), act(0, hob(Aim::Simmer, 60.0, Cover::Off))],
    );
    let run = |draw: Draw| cook(&process, &Kitchen::default(), &draw);
    let central = run(Draw::central());
    assert_eq!(central, run(Draw::central()));
    let (dry, moist) = (
        run(Draw {
            evaporation: 1.645,
            ..Draw::default()
        }),
        run(Draw {
            evaporation: -1.645,
            ..Draw::default()
        }),
    );
    assert!(vapour_kg(&dry) > 1.4 * vapour_kg(&central) && vapour_kg(&moist) < 0.75 * vapour_kg(&central));
    let fast = run(Draw {
        burner: 1.645,
        ..Draw::default()
    });
    assert!(fast.elapsed < central.elapsed);
}
