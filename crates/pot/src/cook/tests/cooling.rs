//! Cooling, against an independent integration and against published observations.

use super::*;

/// Hours from 57 °C to a temperature, read off a trace.
fn hours_between(trace: &Trace, from_c: f64, to_c: f64) -> f64 {
    let at = |limit: f64| {
        trace.samples.windows(2).find_map(|pair| {
            let (a, b) = (&pair[0], &pair[1]);
            let (ta, tb) = (a.vessels.first()?.temp_c, b.vessels.first()?.temp_c);
            (ta > limit && tb <= limit).then(|| a.time_s + (ta - limit) / (ta - tb) * (b.time_s - a.time_s))
        })
    };
    (at(to_c).unwrap_or(f64::NAN) - at(from_c).unwrap_or(f64::NAN)) / 3600.0
}

/// Well-stirred water-like pots from 95 °C in still air, emissivity 0.3: minutes to 57 °C and hours to the target by an
/// independent integration (scipy) of surface, wall and the *linear* evaporation law. The engine's default is the mean
/// of three laws, 8 % under the linear one at 60 °C and 15 % above it at 95 °C, so ten per cent.
#[test]
fn stirred_pots() {
    for (cm, kg, air_c, minutes, target_c, hours) in [
        (24.0, 4.0, 22.0, 40.2, 24.0, 5.82),
        (24.0, 4.0, 4.0, 34.6, 21.0, 3.34),
        (30.0, 10.0, 22.0, 65.5, 24.0, 9.40),
        (30.0, 10.0, 4.0, 56.0, 21.0, 5.25),
    ] {
        let kitchen = Kitchen {
            room: Temperature::from_celsius(air_c),
            altitude_m: 0.0,
            ..Kitchen::default()
        };
        let off = act(0, stretch(Place::Counter, Aim::Off, Some(720.0), None, Cover::Off));
        let process = process(
            vec![water(kg, 95.0)],
            vec![vessel(Some(weightless(cm, 16.0)))],
            vec![add_all(0, &[0]), off],
        );
        let trace = central(&process, &kitchen);
        let to_57 = hours_between(&trace, 94.9, 57.0) * 60.0;
        let to_target = hours_between(&trace, 94.9, target_c);
        println!("{cm} cm {kg} kg at {air_c}: {to_57:.1} min, {to_target:.2} h");
        assert!(
            (to_57 / minutes - 1.0).abs() < 0.12,
            "{cm} cm, {air_c}: {to_57} min for {minutes}"
        );
        assert!(
            (to_target / hours - 1.0).abs() < 0.12,
            "{cm} cm, {air_c}: {to_target} h for {hours}"
        );
    }
}

/// A thick stew of some litres at 90 °C, put to cool in a pot or pan.
fn thick(kg: f64, pot: Pot, place: Place, hours: f64) -> Trace {
    let parts = [
        (Stuff::Water, 0.85 * kg),
        (Stuff::GelatinisedStarch, 0.05 * kg),
        (Stuff::Protein, 0.07 * kg),
        (Stuff::Fat, 0.03 * kg),
    ];
    let chili = lot("chili", Kind::Other, 90.0, &parts);
    let cool = act(0, stretch(place, Aim::Off, Some(60.0 * hours), None, Cover::Off));
    central(
        &process(vec![chili], vec![vessel(Some(pot))], vec![add_all(0, &[0]), cool]),
        &Kitchen::default(),
    )
}

/// Published observations of restaurants (Food Protection Trends 2013, abstract): chili in a two-inch pan met both
/// limits in a walk-in freezer only, in a refrigerator it failed; a deep stockpot in a refrigerator took longest of all.
/// The freezer here is a domestic one of still air: it meets the six hours, the two it misses by minutes, where the
/// moving air of the walk-in met them.
#[test]
fn published_observations_by_sign() {
    let pan = || Pot::new("pan", 40.0, 6.0, Material::Steel, 1.0);
    let shallow_kg = std::f64::consts::PI / 4.0 * 0.4 * 0.4 * 0.051 * 1030.0;
    let cold = |trace: &Trace| trace.coolings.last().copied().unwrap();
    let freezer = cold(&thick(shallow_kg, pan(), Place::Freezer, 24.0));
    let refrigerator = cold(&thick(shallow_kg, pan(), Place::Refrigerator, 24.0));
    let deep = Pot::new("stockpot", 26.0, 26.0, Material::Steel, 2.0);
    let stockpot = cold(&thick(11.0, deep, Place::Refrigerator, 48.0));
    println!("{freezer:?}\n{refrigerator:?}\n{stockpot:?}");
    assert!(freezer.total_h.unwrap() < 6.0 && freezer.stage_one_h.unwrap() < 2.5);
    assert!(refrigerator.stage_one_h.is_none_or(|h| h > 2.0) && refrigerator.total_h.is_none_or(|h| h > 6.0));
    let longest = |cooling: &Cooling| cooling.stage_one_h.unwrap_or(f64::INFINITY);
    assert!(longest(&stockpot) > 2.5 * longest(&refrigerator));
    assert!(longest(&refrigerator) > longest(&freezer));
}

/// A rest at the table is no cooling to be told of; a pot left out for hours and then chilled is one.
#[test]
fn a_rest_is_not_a_cooling() {
    let rest = act(0, stretch(Place::Counter, Aim::Off, Some(15.0), None, Cover::On));
    let pot = vessel(Some(Kitchen::default().pots[0].clone()));
    let trace = central(
        &process(vec![water(1.0, 80.0)], vec![pot.clone()], vec![add_all(0, &[0]), rest]),
        &Kitchen::default(),
    );
    assert!(trace.coolings.is_empty());
    let out = act(0, stretch(Place::Counter, Aim::Off, Some(180.0), None, Cover::On));
    let chill = act(0, stretch(Place::Refrigerator, Aim::Off, Some(900.0), None, Cover::On));
    let trace = central(
        &process(vec![water(1.0, 80.0)], vec![pot], vec![add_all(0, &[0]), out, chill]),
        &Kitchen::default(),
    );
    assert_eq!(trace.coolings.len(), 1);
    assert!(trace.coolings[0].stage_one_h.unwrap() > 2.0);
}

/// Ice water cools faster than the sink, the sink faster than the table.
#[test]
fn colder_places_are_faster() {
    let hours = |place: Place| {
        let cool = act(0, stretch(place, Aim::Off, Some(900.0), None, Cover::On));
        let pot = vessel(Some(Kitchen::default().pots[1].clone()));
        let trace = central(
            &process(vec![water(4.0, 90.0)], vec![pot], vec![add_all(0, &[0]), cool]),
            &Kitchen::default(),
        );
        hours_between(&trace, 57.0, 30.0)
    };
    assert!(hours(Place::IceBath) < hours(Place::Sink) && hours(Place::Sink) < hours(Place::Refrigerator));
    assert!(hours(Place::Refrigerator) < hours(Place::Counter));
}
