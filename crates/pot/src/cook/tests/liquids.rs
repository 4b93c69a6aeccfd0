//! What is done to a pot's liquid: strained, skimmed, puréed, reduced, folded in, kept, chilled, frozen, kept hot; what
//! curdles. Each with what goes where by hand arithmetic.

use potwright_manuscript::HeatWord;

use super::*;
use crate::physics::properties::HeatContent;

fn broth(kg: f64, temp_c: f64) -> Lot {
    lot(
        "broth",
        Kind::Stock,
        temp_c,
        &[
            (Stuff::Water, 0.97 * kg),
            (Stuff::Salt, 0.01 * kg),
            (Stuff::Fat, 0.02 * kg),
        ],
    )
}

/// Pieces that neither give nor take: fat in a skin that does not render.
fn stones(kg: f64) -> Lot {
    let mut stones = lot("bones", Kind::Meat, 90.0, &[(Stuff::Protein, kg)]);
    stones.pieces = Some(sphere(30.0));
    stones
}

fn milk(kg: f64) -> Lot {
    let parts = [
        (Stuff::Water, 0.877 * kg),
        (Stuff::Fat, 0.04 * kg),
        (Stuff::Protein, 0.033 * kg),
        (Stuff::Sugar, 0.05 * kg),
    ];
    lot("milk", Kind::Milk, 5.0, &parts)
}

fn bowls(count: usize) -> Vec<Vessel> {
    vec![vessel(None); count]
}

fn counter(minutes: f64) -> Doing {
    stretch(Place::Counter, Aim::Off, Some(minutes), None, Cover::On)
}

fn pour(to: usize, what: Part) -> Act {
    act(0, Doing::Transfer { to, what })
}

/// The liquid that came to the last vessel, by its last sample.
fn sample_of(trace: &Trace, vessel: usize) -> VesselSample {
    let last = trace.samples.last().unwrap();
    *last.vessels.iter().find(|sample| sample.vessel == vessel).unwrap()
}

fn books_close(trace: &Trace) {
    let ledger = &trace.ledger;
    let mut out = ledger.vapour;
    for account in [
        &ledger.spattered,
        &ledger.discarded,
        &ledger.left_behind,
        &ledger.in_vessels,
    ] {
        out.add(account);
    }
    assert!((out.total_kg() - ledger.put_in.total_kg()).abs() < 1e-9);
    let energy_in = ledger.enthalpy_in_j + ledger.vessels_in_j + ledger.burner_j + ledger.oven_j;
    let energy_out = ledger.in_vessels_j + ledger.room_j + ledger.vapour_j + ledger.discarded_j;
    assert!((energy_in - energy_out).abs() < 1e-6 * energy_in.abs().max(1.0));
}

/// Two kilograms of broth of 1 % salt off one kilogram of bones: 6 % of the bones' mass clings, 60 g with 0.6 g of salt;
/// 1.94 kg with 19.4 g run through. The trace says so.
#[test]
fn strained() {
    let lots = vec![broth(2.0, 90.0), stones(1.0)];
    let mut process = process(lots, bowls(2), vec![add_all(0, &[0, 1]), pour(1, Part::Liquid)]);
    process.dish_vessel = 1;
    let trace = central(&process, &Kitchen::default());
    assert!((trace.served_liquid.total_kg() - 1.94).abs() < 1e-6);
    assert!((trace.served_liquid.kg(Stuff::Salt) - 0.0194).abs() < 1e-8);
    assert!(trace.served_pieces.is_empty());
    assert!(happened(
        &trace,
        |what| matches!(what, Happening::Clings(kg) if (kg - 0.06).abs() < 1e-6)
    ));
    books_close(&trace);
}

/// Yolks that were stirred in run through with the liquid; whole eggs stay in the sieve.
#[test]
fn strained_custard() {
    let egg = |mm| {
        let mut egg = lot("egg", Kind::Egg, 20.0, &[(Stuff::Water, 0.04), (Stuff::Protein, 0.01)]);
        egg.pieces = Some(Pieces {
            hazard: Some(Hazard::Egg),
            ..sphere(mm)
        });
        egg
    };
    let strained = |mm| {
        let acts = vec![add_all(0, &[0, 1]), pour(1, Part::Liquid)];
        let mut process = process(vec![milk(0.5), egg(mm)], bowls(2), acts);
        process.dish_vessel = 1;
        let trace = central(&process, &Kitchen::default());
        books_close(&trace);
        trace
            .served_pieces
            .iter()
            .map(|pieces| pieces.matter.total_kg())
            .sum::<f64>()
    };
    assert!((strained(1.0) - 0.05).abs() < 1e-9);
    assert_eq!(strained(44.0), 0.0);
}

/// 40 g of fat on two kilograms of broth: all but a tablespoon (15 ml · 0.90 = 13.5 g) is 26.5 g off; two tablespoons
/// off leave 13 g; a share of 0.85 leaves 6 g; more than there is takes all; salt and water stay.
#[test]
fn skimmed() {
    let left = |off: FatOff| {
        let acts = vec![add_all(0, &[0]), act(0, Doing::Skim(off))];
        let trace = central(&process(vec![broth(2.0, 60.0)], bowls(1), acts), &Kitchen::default());
        assert!((trace.served_liquid.kg(Stuff::Salt) - 0.02).abs() < 1e-9);
        assert!((trace.ledger.discarded.total_kg() + trace.served_liquid.total_kg() - 2.0).abs() < 1e-9);
        books_close(&trace);
        1000.0 * trace.served_liquid.kg(Stuff::Fat)
    };
    let grams = Mass::from_grams;
    for (off, expected) in [
        (FatOff::AllBut(grams(13.5)), 13.5),
        (FatOff::Amount(grams(27.0)), 13.0),
        (FatOff::Share(0.85), 6.0),
        (FatOff::Amount(grams(500.0)), 0.0),
        (FatOff::AllBut(grams(500.0)), 40.0),
        (FatOff::Amount(grams(f64::NAN)), 40.0),
    ] {
        assert!((left(off) - expected).abs() < 1e-6, "{off:?}: {}", left(off));
    }
}

/// Half of 400 g of carrots of 88 % water: 200 g go over, 176 g of them water; what is left in pieces is as tender.
#[test]
fn pureed() {
    let lots = vec![water(1.0, 95.0), carrot(0.4, 20.0)];
    let acts = vec![add_all(0, &[0, 1]), act(0, Doing::Puree(0.5))];
    let trace = central(&process(lots, bowls(1), acts), &Kitchen::default());
    assert!((trace.served_liquid.total_kg() - 1.2).abs() < 1e-9);
    assert!((trace.served_liquid.kg(Stuff::Water) - 1.176).abs() < 1e-9);
    assert!((trace.served_pieces[0].matter.total_kg() - 0.2).abs() < 1e-9);
    books_close(&trace);
}

/// Salinity after reduction, w₂ = w₁·m₁/m₂ (salt is conserved): reduced to half its volume it is twice as salt, within
/// what density makes of volume (the fat and salt of 3 % weigh a little otherwise).
#[test]
fn reduced() {
    let pot = vessel(Some(Kitchen::default().pots[0].clone()));
    let acts = vec![add_all(0, &[0]), act(0, until(Aim::Boil, Cue::ReducedTo(0.5)))];
    let trace = central(&process(vec![broth(1.0, 90.0)], vec![pot], acts), &Kitchen::default());
    let kg = trace.served_liquid.total_kg();
    let salinity = trace.served_liquid.kg(Stuff::Salt) / kg;
    assert!((salinity - 0.01 / kg).abs() < 1e-12);
    assert!((kg - 0.5).abs() < 0.03, "{kg}");
    books_close(&trace);
}

/// A hot pan that is deglazed: 4.4 kg of cast iron at 150 °C and 20 g of fat meet 300 g of water at 15 °C; what is mixed
/// has the heat of both, and nothing of the fat is lost.
#[test]
fn deglazed() {
    let pot = Kitchen::default().pots[1].clone();
    let metal_j_k = pot.tare.kilograms() * pot.material.specific_heat();
    let mut acts = vec![add_all(0, &[0])];
    acts.push(act(
        0,
        until(Aim::Fry(HeatWord::High), Cue::Reaches(Temperature::from_celsius(150.0))),
    ));
    acts.push(add_all(0, &[1]));
    let lots = vec![oil(0.02), water(0.3, 15.0)];
    let trace = central(
        &process(lots.clone(), vec![vessel(Some(pot))], acts),
        &Kitchen::default(),
    );
    let hot = trace
        .samples
        .iter()
        .rev()
        .find(|sample| sample.act == 1)
        .unwrap()
        .vessels[0]
        .temp_c;
    let fat = HeatContent::of(&lots[0].matter).with_capacity(metal_j_k);
    let joules = fat.enthalpy(hot) + HeatContent::of(&lots[1].matter).enthalpy(15.0);
    let mut both = lots[0].matter;
    both.add(&lots[1].matter);
    let expected = HeatContent::of(&both)
        .with_capacity(metal_j_k)
        .temperature(joules, 80.0);
    let found = sample_of(&trace, 0).temp_c;
    // The base of a pot keeps a little more heat than its mean temperature tells.
    assert!((found - expected).abs() < 6.0, "{found} {expected}");
    assert!((trace.served_liquid.kg(Stuff::Fat) / 0.02 - 1.0).abs() < 0.01);
    books_close(&trace);
}

/// 200 g of milk at 5 °C folded into a kilogram of water at 80 °C: (4.19 · 80 + 0.2 · 3.9 · 5) ÷ (4.19 + 0.2 · 3.9) =
/// 68.2 °C with the specific heat of milk, 3.9 kJ/(kg·K) (handbooks: 3.85 to 3.95); the bowl of 600 J/K at 21 °C, taken
/// in before, is at 74.0 °C then.
#[test]
fn folded_in() {
    let acts = vec![add_all(0, &[0]), add_all(0, &[1])];
    let trace = central(
        &process(vec![water(1.0, 80.0), milk(0.2)], bowls(1), acts),
        &Kitchen::default(),
    );
    let (water_j_k, milk_j_k, bowl_j_k) = (4190.0, 780.0, 600.0);
    let expected = (water_j_k * 80.0 + milk_j_k * 5.0 + bowl_j_k * 21.0) / (water_j_k + milk_j_k + bowl_j_k);
    let found = sample_of(&trace, 0).temp_c;
    assert!((found - expected).abs() < 0.5, "{found} {expected}");
    books_close(&trace);
}

/// Off the heat under a lid: only vapour leaves; the pieces go on softening while they are hot.
#[test]
fn rested() {
    let lots = vec![water(1.0, 95.0), carrot(0.4, 20.0)];
    let pot = vec![vessel(Some(Kitchen::default().pots[0].clone()))];
    let soft = |minutes| {
        let acts = vec![add_all(0, &[0, 1]), act(0, counter(minutes))];
        let trace = central(&process(lots.clone(), pot.clone(), acts), &Kitchen::default());
        let served = trace.served_liquid.total_kg() + trace.served_pieces[0].matter.total_kg();
        assert!((served + vapour_kg(&trace) - 1.4).abs() < 1e-9);
        books_close(&trace);
        trace.pieces[0].tender.unwrap()
    };
    assert!(soft(20.0) > soft(5.0));
}

/// Overnight salt evens out: w = mₛ/(water of the meat + water of the liquid + mₛ). 20 g in 1 kg of water and 0.5 kg of
/// beef with 0.35 kg of water: 20 ÷ 1370 = 1.46 % of water and salt in both.
#[test]
fn stood_overnight() {
    let lots = vec![
        lot("brine", Kind::Stock, 4.0, &[(Stuff::Water, 1.0), (Stuff::Salt, 0.02)]),
        beef(0.5, 25.0),
    ];
    let kept = stretch(Place::Refrigerator, Aim::Off, Some(48.0 * 60.0), None, Cover::On);
    let trace = central(
        &process(lots, bowls(1), vec![add_all(0, &[0, 1]), act(0, kept)]),
        &Kitchen::default(),
    );
    let share = |matter: &Matter| matter.kg(Stuff::Salt) / (matter.kg(Stuff::Water) + matter.kg(Stuff::Salt));
    let expected = 0.02 / (1.0 + 0.35 + 0.02);
    for matter in [&trace.served_liquid, &trace.served_pieces[0].matter] {
        assert!(
            (share(matter) / expected - 1.0).abs() < 0.05,
            "{} {expected}",
            share(matter)
        );
    }
    books_close(&trace);
}

/// Chilled, frozen, thawed and heated again: the water is all there but for the vapour, at each place's temperature.
#[test]
fn chilled_frozen_thawed_reheated() {
    let cold = |place, hours: f64| stretch(place, Aim::Off, Some(60.0 * hours), None, Cover::On);
    let pot = vec![vessel(Some(Kitchen::default().pots[0].clone()))];
    let mut acts = vec![add_all(0, &[0])];
    let steps = [
        (cold(Place::Refrigerator, 24.0), 4.0, 1.5),
        (cold(Place::Freezer, 60.0), -18.0, 2.0),
        (cold(Place::Refrigerator, 120.0), 4.0, 5.0),
        (
            until(Aim::BelowBoil, Cue::Reaches(Temperature::from_celsius(75.0))),
            75.0,
            1.0,
        ),
    ];
    for (doing, expected, within) in steps {
        acts.push(act(0, doing));
        let trace = central(
            &process(vec![broth(1.0, 60.0)], pot.clone(), acts.clone()),
            &Kitchen::default(),
        );
        let found = sample_of(&trace, 0).temp_c;
        assert!((found - expected).abs() < within, "{found} {expected}");
        assert!((trace.served_liquid.kg(Stuff::Salt) - 0.01).abs() < 1e-9);
        assert!((trace.served_liquid.total_kg() + vapour_kg(&trace) - 1.0).abs() < 1e-9);
        books_close(&trace);
    }
}

/// Kept hot at 65 °C for two hours: vapour leaves, salt stays (w₂ = w₁·m₁/m₂), pieces are softer than after one.
#[test]
fn kept_hot() {
    let pot = vec![vessel(Some(Kitchen::default().pots[0].clone()))];
    let hold = |hours: f64| {
        let lots = vec![broth(1.0, 65.0), carrot(0.3, 20.0)];
        let at = Aim::Hold(Temperature::from_celsius(65.0));
        let acts = vec![add_all(0, &[0, 1]), act(0, hob(at, 60.0 * hours, Cover::Ajar))];
        let trace = central(&process(lots, pot.clone(), acts), &Kitchen::default());
        assert!((sample_of(&trace, 0).temp_c - 65.0).abs() < 1.0);
        books_close(&trace);
        (vapour_kg(&trace), trace.pieces[0].tender.unwrap())
    };
    let (one, two) = (hold(1.0), hold(2.0));
    assert!(two.0 > 1.8 * one.0 && two.1 > one.1);
}

fn curdled(trace: &Trace, of: Curdling) -> Option<f64> {
    trace.events.iter().find_map(|event| match event.what {
        Happening::Curdles { what, temp_c } if what == of => Some(temp_c),
        _ => None,
    })
}

/// Heats lots together to a temperature.
fn heated(lots: Vec<Lot>, to_c: f64) -> Trace {
    let all: Vec<usize> = (0..lots.len()).collect();
    let pot = vec![vessel(Some(Kitchen::default().pots[0].clone()))];
    let acts = vec![
        add_all(0, &all),
        act(
            0,
            until(
                Aim::Setting(HeatWord::High),
                Cue::Reaches(Temperature::from_celsius(to_c)),
            ),
        ),
    ];
    central(&process(lots, pot, acts), &Kitchen::default())
}

/// Dairy texts: milk alone stands a boil; soured by 0.14 % of lactic acid (0.30 in all; 0.10 % as citric) it clots on the
/// way to it; the same with a tablespoon of flour to the half litre boiled in it bears that.
#[test]
fn milk_and_acid() {
    let sour = |grams: f64| {
        lot(
            "juice",
            Kind::Fruit,
            15.0,
            &[(Stuff::Acid, grams / 1000.0), (Stuff::Water, 0.01)],
        )
    };
    let of = Curdling::MilkWithAcid;
    assert_eq!(curdled(&heated(vec![milk(0.5), sour(0.0)], 99.0), of), None);
    let clots = curdled(&heated(vec![milk(0.5), sour(0.5)], 99.0), of).unwrap();
    assert!(clots > 60.0 && clots < 99.0, "{clots}");
    let flour = lot("flour", Kind::Flour, 20.0, &[(Stuff::GelatinisedStarch, 0.006)]);
    assert_eq!(curdled(&heated(vec![milk(0.5), sour(0.5), flour], 90.0), of), None);
    // Cream of 36 % fat bears what milk does not.
    let cream = lot(
        "cream",
        Kind::Milk,
        5.0,
        &[
            (Stuff::Water, 0.29),
            (Stuff::Fat, 0.18),
            (Stuff::Protein, 0.015),
            (Stuff::Sugar, 0.015),
        ],
    );
    assert_eq!(curdled(&heated(vec![cream, sour(1.0)], 99.0), of), None);
}

/// Yolks stirred in curdle past 82 to 89 °C, not below; bound with starch they do not. An egg poached whole does not
/// curdle.
#[test]
fn stirred_egg() {
    let egg = |mm: f64| {
        let mut egg = lot(
            "yolk",
            Kind::Egg,
            20.0,
            &[(Stuff::Water, 0.026), (Stuff::Protein, 0.008), (Stuff::Fat, 0.016)],
        );
        egg.pieces = Some(Pieces {
            hazard: Some(Hazard::Egg),
            ..sphere(mm)
        });
        egg
    };
    let of = Curdling::Egg;
    let found = curdled(&heated(vec![water(0.5, 40.0), egg(1.0)], 95.0), of).unwrap();
    assert!((82.0..90.0).contains(&found), "{found}");
    assert_eq!(curdled(&heated(vec![water(0.5, 40.0), egg(1.0)], 80.0), of), None);
    assert_eq!(curdled(&heated(vec![water(0.5, 40.0), egg(44.0)], 95.0), of), None);
    let flour = lot("flour", Kind::Flour, 20.0, &[(Stuff::GelatinisedStarch, 0.01)]);
    assert_eq!(
        curdled(&heated(vec![water(0.5, 40.0), egg(1.0), flour], 95.0), of),
        None
    );
}

/// Yoghurt (0.9 % acid, 3.5 % protein) and melting cheese have rules of their own and are told once.
#[test]
fn yoghurt_and_cheese() {
    let yoghurt = lot(
        "yoghurt",
        Kind::Milk,
        5.0,
        &[(Stuff::Water, 0.178), (Stuff::Protein, 0.007), (Stuff::Acid, 0.0018)],
    );
    let cheese = lot(
        "cheddar",
        Kind::Cheese,
        5.0,
        &[(Stuff::Water, 0.037), (Stuff::Protein, 0.023), (Stuff::Fat, 0.033)],
    );
    let trace = heated(vec![water(0.5, 40.0), yoghurt, cheese], 97.0);
    for of in [Curdling::Cultured, Curdling::Cheese] {
        assert!(curdled(&trace, of).is_some_and(|at| (72.0..93.0).contains(&at)));
        let told = |event: &&Event| matches!(event.what, Happening::Curdles { what, .. } if what == of);
        assert_eq!(trace.events.iter().filter(told).count(), 1);
    }
}
