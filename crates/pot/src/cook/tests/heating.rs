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

/// The same water by gas, radiant and induction: minutes to the boil without losses, m·cp·ΔT/(P·η).
#[test]
fn water_on_other_burners() {
    for (kind, watts, minutes) in [
        (BurnerKind::Gas, 1465.0, 40.48),
        (BurnerKind::Gas, 2784.0, 21.30),
        (BurnerKind::Gas, 5275.0, 11.24),
        (BurnerKind::Radiant, 1250.0, 25.65),
        (BurnerKind::Radiant, 2100.0, 15.27),
        (BurnerKind::Induction, 3500.0, 8.07),
    ] {
        let boil = act(0, until(full(), Cue::Boils));
        let process = process(
            vec![water(4.0, 15.0)],
            vec![vessel(Some(weightless(24.0, 16.0)))],
            vec![add_all(0, &[0]), boil],
        );
        let trace = without_losses(&process, &kitchen_with(Burner::new(kind, watts)));
        let got = trace.acts[1].end_s / 60.0;
        assert!((got / minutes - 1.0).abs() < 0.01, "{kind:?} {watts}: {got}");
    }
}
