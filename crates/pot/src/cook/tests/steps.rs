//! The engine's own steps against the same cooking in steps of half a second: the error of the numbers alone. What is
//! allowed is what the instruments of a kitchen cannot tell apart, the same for every cooking.

use potwright_manuscript::HeatWord;

use super::*;

/// A thermometer for food may be off by 1 °C (California Health and Safety Code § 114159 (c)).
const KELVINS: f64 = 1.0;

/// A kitchen scale that takes a full pot shows steps of 5 g (common practice, no source).
const SCALE_KG: f64 = 0.005;

/// What that one kelvin does to the time until something is tender: E/(R·T²) = 54 400 / (8.314 · 373.15²) = 4.7 %, with
/// the least activation energy of the published table of vegetables (broccoli; Lee, Food Engineering Progress 21 (2017)
/// 303, table 1) at the boil. More of it would let more pass.
const TENDER: f64 = 0.047;

/// The cooking with no step longer than half a second.
fn finely(process: &Process, kitchen: &Kitchen) -> Trace {
    let mut run = Run::new(process, kitchen, &Draw::central());
    run.cond.finest_s = 0.5;
    run.all();
    run.into_trace()
}

/// Vapour, the finished dish, the centre of every kind of pieces at its hottest, softening.
fn assert_near(process: &Process) {
    let kitchen = Kitchen::default();
    let (got, fine) = (central(process, &kitchen), finely(process, &kitchen));
    let off_kg = (vapour_kg(&got) - vapour_kg(&fine)).abs();
    assert!(off_kg < SCALE_KG, "vapour is off by {off_kg} kg");
    assert!(
        (got.served_c - fine.served_c).abs() < KELVINS,
        "{} for {}",
        got.served_c,
        fine.served_c
    );
    for (piece, sure) in got.pieces.iter().zip(&fine.pieces) {
        let off = (piece.hottest_centre_c - sure.hottest_centre_c).abs();
        assert!(off < KELVINS, "centre is off by {off} K");
        if let (Some(tender), Some(sure)) = (piece.tender, sure.tender) {
            assert!((tender / sure - 1.0).abs() < TENDER, "{tender} for {sure}");
        }
    }
}

fn big_pot() -> Vec<Vessel> {
    vec![vessel(Some(Pot::new("pot", 26.0, 15.0, Material::Steel, 4.0)))]
}

#[test]
fn a_braise_of_three_hours() {
    let acts = vec![
        add_all(0, &[0, 1, 2]),
        act(0, until(Aim::Boil, Cue::Boils)),
        act(0, hob(Aim::Simmer, 180.0, Cover::On)),
    ];
    assert_near(&process(
        vec![water(1.5, 15.0), beef(1.0, 35.0), carrot(0.4, 20.0)],
        big_pot(),
        acts,
    ));
}

#[test]
fn a_roast_in_an_open_dish() {
    let oven = stretch(
        Place::Oven,
        Aim::Oven(Temperature::from_celsius(200.0)),
        Some(45.0),
        None,
        Cover::Off,
    );
    let acts = vec![add_all(0, &[0, 1]), act(0, oven)];
    assert_near(&process(vec![oil(0.03), carrot(0.8, 25.0)], big_pot(), acts));
}

#[test]
fn a_pan_of_vegetables_that_sweat() {
    let acts = vec![
        add_all(0, &[0]),
        act(0, hob(Aim::Fry(HeatWord::Medium), 2.0, Cover::Off)),
        add_all(0, &[1]),
        act(0, hob(Aim::Fry(HeatWord::Medium), 12.0, Cover::Off)),
    ];
    assert_near(&process(vec![oil(0.03), carrot(0.5, 12.0)], big_pot(), acts));
}

/// Two pots: the one that simmers falls behind the clock while the other is fried in.
#[test]
fn a_pot_that_simmers_beside_a_pan() {
    let mut vessels = big_pot();
    vessels.push(vessel(Some(Pot::new("pan", 28.0, 6.0, Material::Steel, 1.5))));
    let mut beside = act(1, hob(Aim::Fry(HeatWord::Medium), 10.0, Cover::Off));
    let mut put_in = add_all(1, &[2, 3]);
    (beside.meanwhile, put_in.meanwhile) = (true, true);
    let acts = vec![
        add_all(0, &[0, 1]),
        act(0, until(Aim::Boil, Cue::Boils)),
        act(0, hob(Aim::Simmer, 60.0, Cover::Off)),
        put_in,
        beside,
        act(1, Doing::Transfer { to: 0, what: Part::All }),
    ];
    let lots = vec![water(2.0, 15.0), beans(0.3), oil(0.02), carrot(0.3, 15.0)];
    assert_near(&process(lots, vessels, acts));
}

#[test]
fn a_pot_that_freezes() {
    let stands = |place, hours: f64| act(0, stretch(place, Aim::Off, Some(60.0 * hours), None, Cover::On));
    let acts = vec![
        add_all(0, &[0]),
        stands(Place::Refrigerator, 10.0),
        stands(Place::Freezer, 16.0),
    ];
    assert_near(&process(vec![water(1.5, 90.0)], big_pot(), acts));
}
