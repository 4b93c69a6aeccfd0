//! Heating, boiling and evaporating of water, against textbook arithmetic and against what must be.

use potwright_manuscript::HeatWord;

use super::*;

fn full() -> Aim {
    Aim::Setting(HeatWord::High)
}

/// Four kilograms of water from 15 °C on 1800 W of induction at 84 %: 15.69 min to the boil (m·cp·ΔT/P with cp 4.187);
/// a rolling boil of 30 min then drives off 1.206 kg (P·t/2256.47 kJ/kg). No losses.
#[test]
fn water_on_induction() {
    let boil = act(0, until(full(), Cue::Boils));
    let roll = act(0, hob(full(), 30.0, Cover::Off));
    let process = process(
        vec![water(4.0, 15.0)],
        vec![vessel(Some(weightless(24.0, 16.0)))],
        vec![add_all(0, &[0]), boil, roll],
    );
    let kitchen = kitchen_with(Burner::new(BurnerKind::Induction, 1800.0));
    let trace = without_losses(&process, &kitchen);
    let minutes = (trace.acts[1].end_s - trace.acts[1].start_s) / 60.0;
    assert!((minutes / 15.69 - 1.0).abs() < 0.01, "{minutes}");
    assert!((vapour_kg(&trace) / 1.206 - 1.0).abs() < 0.01, "{}", vapour_kg(&trace));
    // A lid or losses only lower it.
    let lossy = central(&process, &kitchen);
    assert!(lossy.acts[1].end_s > trace.acts[1].end_s);
    assert!(vapour_kg(&lossy) < vapour_kg(&trace) + 0.2);
}

/// The same water on every burner of the table: minutes to the boil without losses, m·cp·ΔT/(P·η), and kilograms an hour of a
/// rolling boil, P·η/2256.47 kJ/kg; efficiencies 0.40, 0.74 and 0.84.
#[test]
fn water_on_other_burners() {
    for (kind, watts, minutes, kg_h) in [
        (BurnerKind::Gas, 1465.0, 40.48, 0.935),
        (BurnerKind::Gas, 2784.0, 21.30, 1.777),
        (BurnerKind::Gas, 3517.0, 16.87, 2.244),
        (BurnerKind::Gas, 5275.0, 11.24, 3.366),
        (BurnerKind::Radiant, 1250.0, 25.65, 1.476),
        (BurnerKind::Radiant, 2100.0, 15.27, 2.479),
        (BurnerKind::Induction, 1800.0, 15.69, 2.412),
        (BurnerKind::Induction, 3500.0, 8.07, 4.691),
    ] {
        let process = process(
            vec![water(4.0, 15.0)],
            vec![vessel(Some(weightless(24.0, 16.0)))],
            vec![
                add_all(0, &[0]),
                act(0, until(full(), Cue::Boils)),
                act(0, hob(full(), 30.0, Cover::Off)),
            ],
        );
        let trace = without_losses(&process, &kitchen_with(Burner::new(kind, watts)));
        let got = trace.acts[1].end_s / 60.0;
        assert!((got / minutes - 1.0).abs() < 0.01, "{kind:?} {watts}: {got}");
        let got = 2.0 * vapour_kg(&trace);
        assert!((got / kg_h - 1.0).abs() < 0.01, "{kind:?} {watts}: {got} kg/h");
    }
}

fn kettle(lots: Vec<Lot>, pot: Pot, acts: Vec<Act>) -> Process {
    process(lots, vec![vessel(Some(pot))], [vec![add_all(0, &[0])], acts].concat())
}

/// A lid never lets more vapour out and never slows the boil, at any heat.
#[test]
fn a_lid_never_lets_more_out() {
    for aim in [
        full(),
        Aim::Setting(HeatWord::Low),
        Aim::Boil,
        Aim::Simmer,
        Aim::BelowBoil,
    ] {
        let run = |cover| {
            let pot = Kitchen::default().pots[1].clone();
            central(
                &kettle(vec![water(3.0, 15.0)], pot, vec![act(0, hob(aim, 90.0, cover))]),
                &Kitchen::default(),
            )
        };
        let [open, ajar, closed] = [Cover::Off, Cover::Ajar, Cover::On].map(run);
        let minutes = |trace: &Trace| trace.elapsed.minutes();
        // Minutes count from the simmer, so compare rates.
        let rate = |trace: &Trace| vapour_kg(trace) / minutes(trace);
        assert!(
            rate(&closed) <= rate(&ajar) * 1.001 && rate(&ajar) <= rate(&open) * 1.001,
            "{aim:?}"
        );
        assert!(
            minutes(&closed) <= minutes(&ajar) + 0.05 && minutes(&ajar) <= minutes(&open) + 0.05,
            "{aim:?}"
        );
    }
}

/// More useful power is never slower to the boil.
#[test]
fn more_power_is_never_slower() {
    let mut last = f64::INFINITY;
    for watts in [3000.0, 3500.0, 5000.0, 8000.0, 20_000.0] {
        let boil = act(0, until(Aim::Boil, Cue::Boils));
        let trace = central(
            &kettle(vec![water(4.0, 15.0)], Kitchen::default().pots[2].clone(), vec![boil]),
            &kitchen_with(Burner::gas(watts)),
        );
        let minutes = trace.acts[1].end_s / 60.0;
        assert!(minutes < last, "{watts}: {minutes} after {last}");
        last = minutes;
    }
}

/// At a held temperature below the boil a wider pot never evaporates less; at a fixed burner on the boil the width
/// matters only through losses.
#[test]
fn width() {
    let held = |cm: f64| {
        let aim = Aim::Hold(Temperature::from_celsius(85.0));
        let process = kettle(
            vec![water(4.0, 85.0)],
            weightless(cm, 20.0),
            vec![act(0, hob(aim, 60.0, Cover::Off))],
        );
        vapour_kg(&central(&process, &kitchen_with(Burner::gas(10_000.0))))
    };
    assert!(held(20.0) < held(24.0) && held(24.0) < held(32.0));
    let boiled = |cm: f64| {
        let process = kettle(
            vec![water(4.0, 99.0)],
            weightless(cm, 20.0),
            vec![act(0, hob(full(), 30.0, Cover::Off))],
        );
        vapour_kg(&without_losses(&process, &kitchen_with(Burner::gas(5000.0))))
    };
    assert!((boiled(20.0) / boiled(32.0) - 1.0).abs() < 1e-3);
}

/// Cold water into hot lowers it by the rule of mixtures: 2 kg at 90 and 1 kg at 15 °C give 65 °C.
#[test]
fn cold_things_lower_the_temperature() {
    let process = process(
        vec![water(2.0, 90.0), water(1.0, 15.0)],
        vec![vessel(Some(weightless(24.0, 16.0)))],
        vec![add_all(0, &[0]), add_all(0, &[1]), act(0, Doing::Serve)],
    );
    let trace = central(&process, &Kitchen::default());
    assert!((trace.served_c - 65.0).abs() < 0.2, "{}", trace.served_c);
}

/// The simmer, the boil and the gentle heat stay where a cook wants them, and minutes count from there.
#[test]
fn aims_are_kept() {
    for (aim, low, high) in [
        (Aim::Simmer, 88.0, 96.0),
        (Aim::BelowBoil, 78.0, 85.0),
        (Aim::Boil, 99.0, 100.0),
    ] {
        let process = kettle(
            vec![water(3.0, 15.0)],
            Kitchen::default().pots[1].clone(),
            vec![act(0, hob(aim, 20.0, Cover::Off))],
        );
        let trace = central(&process, &Kitchen::default());
        let last = trace.samples.last().unwrap().vessels[0].temp_c;
        assert!(last > low && last < high, "{aim:?}: {last}");
        let reached = trace
            .samples
            .iter()
            .find(|s| s.vessels[0].temp_c > last - 3.0)
            .unwrap()
            .time_s;
        assert!((trace.elapsed.seconds() - reached) / 60.0 > 19.0 && trace.elapsed.minutes() > 30.0);
    }
}

/// 4.0 kg of soup with 24 g of salt in all, from which 1.2 kg evaporates, holds 0.857 % salt; 245 g of it 826 mg of
/// sodium (58.44 g of salt hold 22.99 g).
#[test]
fn salt_stays_when_water_goes() {
    let mut soup = water(3.976, 99.0);
    soup.matter.mass_kg[Stuff::Salt as usize] = 0.024;
    soup.mass = Mass::from_kilograms(4.0);
    let reduce = act(
        0,
        stretch(Place::Hob, full(), None, Some(Cue::ReducedTo(0.7)), Cover::Off),
    );
    let process = kettle(vec![soup], weightless(28.0, 20.0), vec![reduce, act(0, Doing::Serve)]);
    let trace = central(&process, &kitchen_with(Burner::gas(5000.0)));
    let left = trace.served_liquid.total_kg();
    assert!((left - 2.8).abs() < 0.03, "{left}");
    let salinity = trace.served_liquid.kg(Stuff::Salt) / left;
    assert!((salinity * left / 2.8 / 0.00857 - 1.0).abs() < 0.005);
    let sodium_mg = salinity * 245.0 * 22.99 / 58.44 * 1000.0;
    assert!((sodium_mg / 826.0 - 1.0).abs() < 0.015, "{sodium_mg}");
}
