//! Hand-made foods, processes and traces for the tests of this crate.

use potwright_larder::{Allergen, Contains, Food, FoodId, Kind, State};
use potwright_manuscript::Cover;
use potwright_measure::{Duration, Mass, Spread, Temperature};
use potwright_pot::{
    Act, ActTrace, Aim, Doing, Lasts, Ledger, Lot, Matter, Nutrient, Pieces, Place, Portion, Process, Source, Stretch,
    Stuff, Trace, Vessel,
};

use crate::foods::Foods;
use crate::reading::Reading;

/// A larder of a few foods.
pub(crate) struct Shelf(pub(crate) Vec<Food>);

impl Foods for Shelf {
    fn food(&self, id: FoodId) -> Option<&Food> {
        self.0.get(id.0 as usize)
    }
}

/// A food free of all allergens but those listed.
pub(crate) fn food(key: &str, kind: Kind, allergens: &[(Allergen, Contains)]) -> Food {
    Food {
        key: key.to_owned(),
        name: key.to_owned(),
        plural: key.to_owned(),
        synonyms: Vec::new(),
        kind,
        state: State::Raw,
        animal: false,
        shop: String::new(),
        composition: Default::default(),
        source: "test".to_owned(),
        weights: Vec::new(),
        refuse: None,
        allergens: allergens.to_vec(),
        allergens_complete: true,
        behaviour: Default::default(),
        preparation: Vec::new(),
        keeping_days: None,
    }
}

pub(crate) fn matter(masses_kg: &[(Stuff, f64)]) -> Matter {
    let mut matter = Matter::default();
    for (stuff, kg) in masses_kg {
        matter.mass_kg[*stuff as usize] += kg;
    }
    matter
}

/// A lot of water that disperses, of unknown source.
pub(crate) fn lot(name: &str, kind: Kind, kg: f64) -> Lot {
    Lot {
        ingredient: None,
        name: name.to_owned(),
        source: Source::Unknown,
        doubt: None,
        kind,
        mass: Mass::from_kilograms(kg),
        purchased: Mass::from_kilograms(kg),
        spread: Spread::exact(1.0),
        how: String::new(),
        temperature: Temperature::from_celsius(20.0),
        matter: matter(&[(Stuff::Water, kg)]),
        inedible: Mass::ZERO,
        starch: None,
        pieces: None,
        preparation: Duration::ZERO,
        for_serving: false,
        optional: false,
    }
}

pub(crate) fn piece_lot(name: &str, kind: Kind, kg: f64) -> Lot {
    Lot {
        pieces: Some(Pieces {
            shape: potwright_larder::Shape::Sphere { diameter_mm: 30.0 },
            size_spread: Spread::exact(1.0),
            hazard: None,
            softens: None,
            absorbs: None,
            sheds_water: None,
            renders: None,
            falls_apart: None,
        }),
        ..lot(name, kind, kg)
    }
}

/// A process with two pots and no acts.
pub(crate) fn process(lots: &[Lot]) -> Process {
    let vessel = |name: &str| Vessel {
        name: name.to_owned(),
        pot: None,
    };
    Process {
        title: "Test soup".to_owned(),
        lots: lots.to_vec(),
        vessels: vec![vessel("pot"), vessel("other pot")],
        acts: Vec::new(),
        dish_vessel: 0,
        servings: None,
        makes: None,
        alternatives: Vec::new(),
        to_taste: Vec::new(),
        assumptions: Vec::new(),
        open: Vec::new(),
    }
}

pub(crate) fn act(vessel: usize, doing: Doing) -> Act {
    Act {
        vessel,
        doing,
        operation: None,
        span: None,
        hands: Duration::ZERO,
        meanwhile: false,
    }
}

pub(crate) fn add(vessel: usize, lots: &[usize]) -> Act {
    let all = |lot: &usize| Portion { lot: *lot, share: 1.0 };
    act(vessel, Doing::Add(lots.iter().map(all).collect()))
}

pub(crate) fn cook(vessel: usize, aim: Aim, minutes: f64) -> Act {
    act(
        vessel,
        Doing::Cook(Stretch {
            place: Place::Hob,
            aim,
            lasts: Lasts {
                minutes: Some(Spread::exact(minutes)),
                cue: None,
            },
            cover: Cover::Off,
            assumed: false,
            batches: 1,
        }),
    )
}

/// A trace in which every stretch lasts as long as it says and nothing else is filled in.
pub(crate) fn trace(process: &Process) -> Trace {
    let mut clock_s = 0.0;
    let acts = process
        .acts
        .iter()
        .map(|act| {
            let start_s = clock_s;
            if let Doing::Cook(stretch) = &act.doing {
                clock_s += 60.0 * stretch.lasts.minutes.map_or(0.0, |minutes| minutes.mid);
            }
            ActTrace {
                start_s,
                end_s: clock_s,
                hands_s: act.hands.seconds(),
            }
        })
        .collect();
    Trace {
        lot_kg: process.lots.iter().map(|lot| lot.mass.kilograms()).collect(),
        samples: Vec::new(),
        acts,
        events: Vec::new(),
        pieces: Vec::new(),
        coolings: Vec::new(),
        ovens: Vec::new(),
        served_liquid: Matter::default(),
        served_pieces: Vec::new(),
        served_c: 80.0,
        served_volume_l: 0.0,
        ledger: Ledger::default(),
        elapsed: Duration::from_seconds(clock_s),
        hands_on: Duration::ZERO,
        boiling_c: 100.0,
    }
}

pub(crate) fn reading() -> Reading {
    Reading {
        lot_kg: Vec::new(),
        yield_kg: 0.0,
        inedible_kg: 0.0,
        volume_l: 0.0,
        liquid: Matter::default(),
        whole: Matter::default(),
        pieces_kg: 0.0,
        elapsed_min: 0.0,
        hands_on_min: 0.0,
        alcohol_in_kg: 0.0,
        boiling_c: 100.0,
        evaporated_kg: 0.0,
        put_in_kg: 0.0,
        nutrients: [0.0; Nutrient::ALL.len()],
        cost: 0.0,
    }
}
