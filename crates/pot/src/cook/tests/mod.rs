//! Tests of the cooking, by theme; this file builds the small processes they cook.

mod balance;
mod cooling;
mod food;
mod heating;
mod limits;
mod liquids;
mod pieces;
mod steps;
mod vessels;
mod whole_pots;

use potwright_larder::{Absorbs, Hazard, Kind, Shape, Softens, StarchKind};
use potwright_manuscript::Cover;
use potwright_measure::{Duration, Mass, Spread, Temperature};

use crate::cook::{Run, cook, cook_without_losses as without_losses};
use crate::physics::softening::time_multiple;
use crate::*;

/// A lot of one kind of matter, kilograms and °C.
fn lot(name: &str, kind: Kind, temp_c: f64, parts: &[(Stuff, f64)]) -> Lot {
    let mut matter = Matter::default();
    for &(stuff, kg) in parts {
        matter.mass_kg[stuff as usize] += kg;
    }
    Lot {
        ingredient: None,
        name: name.to_owned(),
        source: Source::Unknown,
        doubt: None,
        kind,
        mass: Mass::from_kilograms(matter.total_kg()),
        purchased: Mass::from_kilograms(matter.total_kg()),
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

fn water(kg: f64, temp_c: f64) -> Lot {
    lot("water", Kind::Water, temp_c, &[(Stuff::Water, kg)])
}

fn oil(kg: f64) -> Lot {
    lot("oil", Kind::Oil, 20.0, &[(Stuff::Fat, kg)])
}

/// Pieces that do nothing but take up heat.
fn inert(shape: Shape) -> Pieces {
    Pieces {
        shape,
        size_spread: Spread::exact(1.0),
        hazard: None,
        softens: None,
        absorbs: None,
        sheds_water: None,
        renders: None,
        falls_apart: None,
    }
}

fn sphere(diameter_mm: f64) -> Pieces {
    inert(Shape::Sphere { diameter_mm })
}

/// Beef in cubes: 70 % water, 21 % protein, 8 % fat, 1 % ash.
fn beef(kg: f64, cube_mm: f64) -> Lot {
    let parts = [
        (Stuff::Water, 0.7 * kg),
        (Stuff::Protein, 0.21 * kg),
        (Stuff::Fat, 0.08 * kg),
        (Stuff::Ash, 0.01 * kg),
    ];
    let mut beef = lot("beef", Kind::Meat, 8.0, &parts);
    beef.pieces = Some(Pieces {
        hazard: Some(Hazard::WholeMeat),
        softens: Some(Softens {
            minutes_at_simmer: Spread::exact(120.0),
            activation_kj_mol: 120.0,
        }),
        sheds_water: Some(Spread::exact(0.35)),
        renders: Some(Spread::exact(0.4)),
        ..sphere(cube_mm)
    });
    beef
}

/// Carrots: 20 minutes at 100 °C, Ea 159 kJ/mol (Mansfield 1974, as collected by Lee 2017).
fn carrot(kg: f64, mm: f64) -> Lot {
    let parts = [
        (Stuff::Water, 0.88 * kg),
        (Stuff::Sugar, 0.07 * kg),
        (Stuff::Fibre, 0.03 * kg),
        (Stuff::Ash, 0.02 * kg),
    ];
    let mut carrot = lot("carrot", Kind::Root, 15.0, &parts);
    carrot.pieces = Some(Pieces {
        softens: Some(Softens {
            // What takes 20 minutes at 100 °C takes so many at a cook's simmer of 96 °C.
            minutes_at_simmer: Spread::exact(20.0 * time_multiple(96.0, 159.0)),
            activation_kj_mol: 159.0,
        }),
        ..inert(Shape::Cylinder { diameter_mm: mm })
    });
    carrot
}

/// Dried beans: 11 % water, 60 % starch and fibre, the rest protein and ash; drink 1.5 times their mass.
fn beans(kg: f64) -> Lot {
    let parts = [
        (Stuff::Water, 0.11 * kg),
        (Stuff::Starch, 0.42 * kg),
        (Stuff::Fibre, 0.2 * kg),
        (Stuff::Protein, 0.23 * kg),
        (Stuff::Ash, 0.04 * kg),
    ];
    let mut beans = lot("beans", Kind::Pulse, 20.0, &parts);
    beans.starch = Some(StarchKind::Pulse);
    beans.pieces = Some(Pieces {
        softens: Some(Softens {
            minutes_at_simmer: Spread::exact(75.0),
            activation_kj_mol: 100.0,
        }),
        absorbs: Some(Absorbs {
            water_per_gram: Spread::exact(1.5),
            minutes_at_boil: Spread::exact(60.0),
            soaking_hours: Some(Spread::exact(8.0)),
        }),
        falls_apart: Some(Spread::exact(0.1)),
        ..sphere(8.0)
    });
    beans
}

fn vessel(pot: Option<Pot>) -> Vessel {
    Vessel {
        name: "pot".to_owned(),
        pot,
    }
}

/// A pot without weight.
fn weightless(diameter_cm: f64, height_cm: f64) -> Pot {
    Pot::new("pot", diameter_cm, height_cm, Material::Steel, 0.0)
}

fn act(vessel: usize, doing: Doing) -> Act {
    Act {
        vessel,
        doing,
        operation: None,
        span: None,
        hands: Duration::ZERO,
        meanwhile: false,
    }
}

fn add_all(vessel: usize, lots: &[usize]) -> Act {
    act(
        vessel,
        Doing::Add(lots.iter().map(|&lot| Portion { lot, share: 1.0 }).collect()),
    )
}

/// A stretch at a place: minutes, cue, lid.
fn stretch(place: Place, aim: Aim, minutes: Option<f64>, cue: Option<Cue>, cover: Cover) -> Doing {
    Doing::Cook(Stretch {
        place,
        aim,
        lasts: Lasts {
            minutes: minutes.map(Spread::exact),
            cue,
        },
        cover,
        assumed: false,
        batches: 1,
    })
}

fn hob(aim: Aim, minutes: f64, cover: Cover) -> Doing {
    stretch(Place::Hob, aim, Some(minutes), None, cover)
}

fn until(aim: Aim, cue: Cue) -> Doing {
    stretch(Place::Hob, aim, None, Some(cue), Cover::Off)
}

fn process(lots: Vec<Lot>, vessels: Vec<Vessel>, acts: Vec<Act>) -> Process {
    Process {
        title: "test".to_owned(),
        lots,
        vessels,
        acts,
        dish_vessel: 0,
        servings: None,
        makes: None,
        alternatives: Vec::new(),
        to_taste: Vec::new(),
        assumptions: Vec::new(),
        open: Vec::new(),
    }
}

fn kitchen_with(burner: Burner) -> Kitchen {
    Kitchen {
        altitude_m: 0.0,
        burners: vec![burner],
        ..Kitchen::default()
    }
}

fn central(process: &Process, kitchen: &Kitchen) -> Trace {
    cook(process, kitchen, &Draw::central())
}

fn vapour_kg(trace: &Trace) -> f64 {
    trace.ledger.vapour.total_kg()
}

fn happened(trace: &Trace, what: impl Fn(&Happening) -> bool) -> bool {
    trace.events.iter().any(|event| what(&event.what))
}
