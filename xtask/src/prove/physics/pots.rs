//! Small processes, cooked to be held against a row.

use potwright_larder::Kind;
use potwright_manuscript::Cover;
use potwright_measure::{Duration, Mass, Spread, Temperature};
use potwright_pot::cook::cook_without_losses;
use potwright_pot::{
    Act, Aim, Burner, Cue, Doing, Draw, Kitchen, Lasts, Lot, Material, Matter, Place, Portion, Pot, Process, Source,
    Stretch, Stuff, Trace, Vessel, cook,
};

/// A liquid or a stew of some make-up, kilograms, at a temperature.
pub(super) fn lot(temp_c: f64, parts: &[(Stuff, f64)]) -> Lot {
    let mut matter = Matter::default();
    for &(stuff, kg) in parts {
        matter.mass_kg[stuff as usize] += kg;
    }
    let mass = Mass::from_kilograms(matter.total_kg());
    Lot {
        ingredient: None,
        name: "food".to_owned(),
        source: Source::Unknown,
        doubt: None,
        kind: Kind::Other,
        mass,
        purchased: mass,
        spread: Spread::exact(1.0),
        how: String::new(),
        temperature: Temperature::from_celsius(temp_c),
        matter,
        inedible: Mass::ZERO,
        starch: None,
        pieces: None,
        preparation: Duration::ZERO,
        for_serving: false,
        optional: false,
    }
}

pub(super) fn water(kg: f64, temp_c: f64) -> Lot {
    lot(temp_c, &[(Stuff::Water, kg)])
}

/// A thick stew: 85 % water, 5 % starch that has swollen, 7 % protein, 3 % fat.
pub(super) fn thick(kg: f64, temp_c: f64) -> Lot {
    let parts = [
        (Stuff::Water, 0.85 * kg),
        (Stuff::GelatinisedStarch, 0.05 * kg),
        (Stuff::Protein, 0.07 * kg),
        (Stuff::Fat, 0.03 * kg),
    ];
    lot(temp_c, &parts)
}

/// A pot of bright metal without weight, centimetres.
pub(super) fn weightless(diameter_cm: f64, height_cm: f64) -> Pot {
    Pot::new("pot", diameter_cm, height_cm, Material::Steel, 0.0)
}

/// A stretch in the open vessel: minutes, or until a cue.
pub(super) fn stretch(place: Place, aim: Aim, minutes: Option<f64>, cue: Option<Cue>) -> Doing {
    Doing::Cook(Stretch {
        place,
        aim,
        lasts: Lasts {
            minutes: minutes.map(Spread::exact),
            cue,
        },
        cover: Cover::Off,
        assumed: false,
        batches: 1,
    })
}

/// All lots in one vessel, and what is done with them.
pub(super) fn process(pot: Pot, lots: Vec<Lot>, doings: Vec<Doing>) -> Process {
    let portions = (0..lots.len()).map(|lot| Portion { lot, share: 1.0 });
    let act = |doing| Act {
        vessel: 0,
        doing,
        operation: None,
        span: None,
        hands: Duration::ZERO,
        meanwhile: false,
    };
    let acts = std::iter::once(Doing::Add(portions.collect())).chain(doings);
    Process {
        title: String::new(),
        vessels: vec![Vessel {
            name: "pot".to_owned(),
            pot: Some(pot),
        }],
        acts: acts.map(act).collect(),
        lots,
        dish_vessel: 0,
        servings: None,
        makes: None,
        alternatives: Vec::new(),
        to_taste: Vec::new(),
        assumptions: Vec::new(),
        open: Vec::new(),
    }
}

/// A kitchen at the sea with one burner.
pub(super) fn at_the_sea(burner: Burner) -> Kitchen {
    Kitchen {
        altitude_m: 0.0,
        burners: vec![burner],
        ..Kitchen::default()
    }
}

/// The stated kitchen at the sea, its room at a temperature.
pub(super) fn room(air_c: f64) -> Kitchen {
    Kitchen {
        altitude_m: 0.0,
        room: Temperature::from_celsius(air_c),
        ..Kitchen::default()
    }
}

/// A process cooked with every uncertain figure at its middle.
pub(super) fn central(process: &Process, kitchen: &Kitchen) -> Trace {
    cook(process, kitchen, &Draw::central())
}

/// Minutes until water boils on a burner, nothing lost on the way.
pub(super) fn minutes_to_boil(kg: f64, from_c: f64, burner: &Burner) -> f64 {
    let heat = stretch(Place::Hob, Aim::Boil, None, Some(Cue::Boils));
    let process = process(weightless(24.0, 20.0), vec![water(kg, from_c)], vec![heat]);
    let trace = cook_without_losses(&process, &at_the_sea(burner.clone()));
    trace.elapsed.minutes()
}

/// Kilograms of vapour that water already at the boil gives off in so many minutes on a burner at full, nothing lost.
pub(super) fn boiled_off_kg(kg: f64, minutes: f64, burner: &Burner) -> f64 {
    let full = Aim::Setting(potwright_manuscript::HeatWord::High);
    let boil = |minutes, cue| stretch(Place::Hob, full, minutes, cue);
    let cook = |doings| {
        let process = process(weightless(28.0, 30.0), vec![water(kg, 99.0)], doings);
        let trace = cook_without_losses(&process, &at_the_sea(burner.clone()));
        trace.ledger.vapour.total_kg()
    };
    let up = boil(None, Some(Cue::Boils));
    cook(vec![up.clone(), boil(Some(minutes), None)]) - cook(vec![up])
}

/// Hours after which the first vessel has fallen to a temperature; no number if it never does.
pub(super) fn hours_to(trace: &Trace, temp_c: f64) -> f64 {
    let temp = |sample: &potwright_pot::Sample| sample.vessels.first().map(|vessel| (sample.time_s, vessel.temp_c));
    let fall = trace.samples.windows(2).find_map(|pair| {
        let ((before_s, before_c), (after_s, after_c)) = (temp(&pair[0])?, temp(&pair[1])?);
        let falls = before_c > temp_c && after_c <= temp_c;
        falls.then(|| before_s + (before_c - temp_c) / (before_c - after_c) * (after_s - before_s))
    });
    fall.unwrap_or(f64::NAN) / 3600.0
}
