//! The engine's own steps against the same cooking in steps of half a second: the error of the numbers alone. What is
//! allowed is what a kitchen could not measure: a kelvin (two in a dry pan or oven), a hundredth of the dish.

use potwright_manuscript::HeatWord;

use super::*;

/// The cooking with no step longer than half a second.
fn finely(process: &Process, kitchen: &Kitchen) -> Trace {
    let mut run = Run::new(process, kitchen, &Draw::central());
    run.cond.finest_s = 0.5;
    run.all();
    run.into_trace()
}

/// Water of the dish and vapour within a share of the dish, the centre of every kind of pieces at its hottest within
/// kelvins, softening within a share.
fn assert_near(process: &Process, share: f64, kelvins: f64) {
    let kitchen = Kitchen::default();
    let (got, fine) = (central(process, &kitchen), finely(process, &kitchen));
    let dish_kg = fine.ledger.put_in.total_kg();
    let off = (vapour_kg(&got) - vapour_kg(&fine)).abs() / dish_kg;
    assert!(off < share, "vapour is off by {off} of the dish");
    assert!(
        (got.served_c - fine.served_c).abs() < kelvins,
        "{} for {}",
        got.served_c,
        fine.served_c
    );
    for (piece, sure) in got.pieces.iter().zip(&fine.pieces) {
        let off = (piece.hottest_centre_c - sure.hottest_centre_c).abs();
        assert!(off < kelvins, "centre is off by {off} K");
        if let (Some(tender), Some(sure)) = (piece.tender, sure.tender) {
            assert!((tender / sure - 1.0).abs() < 0.03, "{tender} for {sure}");
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
    assert_near(
        &process(
            vec![water(1.5, 15.0), beef(1.0, 35.0), carrot(0.4, 20.0)],
            big_pot(),
            acts,
        ),
        0.005,
        1.0,
    );
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
    assert_near(&process(vec![oil(0.03), carrot(0.8, 25.0)], big_pot(), acts), 0.01, 2.0);
}

#[test]
fn a_pan_of_vegetables_that_sweat() {
    let acts = vec![
        add_all(0, &[0]),
        act(0, hob(Aim::Fry(HeatWord::Medium), 2.0, Cover::Off)),
        add_all(0, &[1]),
        act(0, hob(Aim::Fry(HeatWord::Medium), 12.0, Cover::Off)),
    ];
    assert_near(&process(vec![oil(0.03), carrot(0.5, 12.0)], big_pot(), acts), 0.01, 2.0);
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
    assert_near(&process(lots, vessels, acts), 0.01, 1.0);
}

#[test]
fn a_pot_that_freezes() {
    let stands = |place, hours: f64| act(0, stretch(place, Aim::Off, Some(60.0 * hours), None, Cover::On));
    let acts = vec![
        add_all(0, &[0]),
        stands(Place::Refrigerator, 10.0),
        stands(Place::Freezer, 16.0),
    ];
    assert_near(&process(vec![water(1.5, 90.0)], big_pot(), acts), 0.005, 0.7);
}
