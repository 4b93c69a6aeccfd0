//! The field against series, equations and observations that others published.

use super::*;
use crate::physics::conduction::Form;
use crate::physics::freezing::{Freezing, frozen_conductivity};
use crate::physics::properties::{self, FREEZABLE, FUSION_J_KG};
use crate::{Matter, Stuff};

const HELD: Face = Face {
    film: 1e7,
    outside_c: 4.0,
};
/// A face that lets nothing through.
const SEALED: Face = Face {
    film: 1e-9,
    outside_c: 4.0,
};

/// A body of water whose conductivity gives it a diffusivity in m²/s at 30 °C.
fn stew(radius_m: f64, height_m: f64, diffusivity: f64) -> Filling {
    let litres = 1000.0 * PI * radius_m * radius_m * height_m;
    let content = HeatContent::of(&Matter::of(Stuff::Water, litres));
    let conductivity = diffusivity * content.capacity(30.0) / (litres / 1000.0);
    Filling::new(radius_m, height_m, content, conductivity, conductivity)
}

/// Seconds until no cell is warmer than a temperature.
fn until(filling: &Filling, faces: &Faces, from_c: f64, to_c: f64, dt_s: f64) -> f64 {
    let mut field = Field::uniform(filling.content.enthalpy(from_c), from_c);
    let mut before = from_c;
    for i in 1..200_000 {
        field.step(dt_s, filling, faces);
        let now = field.warmest_c();
        if now <= to_c {
            return dt_s * (f64::from(i) - (to_c - now) / (before - now));
        }
        before = now;
    }
    f64::NAN
}

/// Reference check E07: unstirred stew, α 1.4e-7 m²/s, all faces held at 4 °C, 57 to 21 °C at the centre: 8.82 h in a
/// pot of 30 × 25 cm, 0.69 h in a pan of 20 × 5 cm (product of the series of a cylinder and a slab, by an independent
/// library: 31 735 and 2 492 s). One per cent, as the
/// rows ask.
#[test]
fn pot_and_pan_of_stew() {
    let held = Faces {
        top: HELD,
        wall: HELD,
        base: HELD,
    };
    for (radius, height, seconds) in [(0.15, 0.25, 31_735.0), (0.10, 0.05, 2_492.0)] {
        let got = until(&stew(radius, height, 1.4e-7), &held, 57.0, 21.0, seconds / 1000.0);
        println!("{radius} × {height}: {got:.0} s for {seconds}");
        assert!((got / seconds - 1.0).abs() < 0.01, "{got} for {seconds}");
    }
}

/// Reference table 05d, viscous foods: the time grows with the square of the least dimension (J. Milk Food Technol.,
/// abstract).
#[test]
fn twice_as_deep_takes_four_times_as_long() {
    let held = Faces {
        top: HELD,
        wall: SEALED,
        base: HELD,
    };
    let hours = |height| until(&stew(0.2, height, 1.4e-7), &held, 57.0, 21.0, 10.0);
    let ratio = hours(0.10) / hours(0.05);
    assert!((ratio / 4.0 - 1.0).abs() < 0.01, "{ratio}");
}

/// Reference table 05d: white sauce in an 8-gallon container 40.6 to 13.9 °C in 25 h, beef stew in one of 14 gallons
/// 46.1 to 10 °C in 84 h (J. Milk Food Technol., abstract). Neither the containers nor the refrigerators are described:
/// as wide as high, 8 W/(m²·K), 4 °C (common practice, no source), so a factor of two.
#[test]
fn deep_containers_take_days() {
    let air = Face {
        film: 8.0,
        outside_c: 4.0,
    };
    let faces = Faces {
        top: air,
        wall: air,
        base: air,
    };
    for (litres, from_c, to_c, hours) in [(30.3, 40.6, 13.9, 25.0), (53.0, 46.1, 10.0, 84.0)] {
        let height = libm::cbrt(4.0 * litres / 1000.0 / PI);
        let got = until(&stew(0.5 * height, height, 1.4e-7), &faces, from_c, to_c, 300.0) / 3600.0;
        println!("{litres} l: {got:.1} h for {hours}");
        assert!((0.5..2.0).contains(&(got / hours)), "{got} h for {hours}");
    }
}

/// What the body loses is what its faces let through: lumped, ln(53/17) = 1.137 time constants from 57 to 21 °C at
/// 4 °C outside. A body of high conductivity behind one film: h·A/C = 10·1/(4178·1000·0.05) 1/s.
#[test]
fn a_body_that_conducts_well_is_lumped() {
    let mut filling = stew(libm::sqrt(1.0 / PI), 0.05, 1.4e-7);
    filling.conductivity = 1e4;
    let film = Face {
        film: 10.0,
        outside_c: 4.0,
    };
    let top = Faces {
        top: film,
        wall: SEALED,
        base: SEALED,
    };
    let capacity = filling.content.capacity(35.0);
    let got = until(&filling, &top, 57.0, 21.0, 5.0);
    let seconds = libm::log(53.0 / 17.0) * capacity / 10.0;
    assert!((got / seconds - 1.0).abs() < 0.003, "{got} for {seconds}");
}

/// Freezing by enthalpy against Plank's and Pham's equations (reference table 14: their rows are held by
/// `freezing`): soup in a bag 5 cm thick that lies flat in a freezer of −18 °C, 8 W/(m²·K) at both faces. Plank
/// counts the change of state alone: from the water's enthalpy at −1 °C to all frozen that freezes the engine must
/// agree within the ten per cent that is said of such equations (ASHRAE Refrigeration, Freezing Times, from
/// memory). Pham counts the way from 10 to −10 °C.
#[test]
fn freezing_agrees_with_plank_and_pham() {
    let mut soup = Matter::of(Stuff::Water, 0.9);
    soup.mass_kg[Stuff::Protein as usize] = 0.05;
    soup.mass_kg[Stuff::Starch as usize] = 0.05;
    let volume = properties::volume_m3(&soup, 0.0);
    let height_m = 0.05;
    let filling = Filling::new(
        libm::sqrt(volume / height_m / PI),
        height_m,
        HeatContent::of(&soup),
        properties::conductivity(&soup, 0.0),
        frozen_conductivity(&soup, -1.0, FREEZABLE),
    );
    let freezer = Face {
        film: 8.0,
        outside_c: -18.0,
    };
    let flat = Faces {
        top: freezer,
        wall: SEALED,
        base: freezer,
    };
    let equation = Freezing {
        form: Form::Slab,
        size_m: height_m,
        density: 1.0 / volume,
        latent_j_kg: FREEZABLE * 0.9 * FUSION_J_KG,
        unfrozen_j_kg_k: filling.content.capacity(1.0),
        frozen_j_kg_k: filling.content.capacity(-5.0),
        conductivity: filling.frozen_conductivity,
        film: 8.0,
        air_c: -18.0,
        freezes_c: FREEZING_C,
    };
    let change = until(&filling, &flat, FREEZING_C + 0.01, FREEZING_C - 0.01, 60.0);
    let plank = equation.plank_s().unwrap();
    let whole = until(&filling, &flat, 10.0, -10.0, 60.0);
    let pham = equation.pham_s(10.0, -10.0).unwrap();
    println!("Plank {plank:.0} s, engine {change:.0}; Pham {pham:.0} s, engine {whole:.0}");
    assert!((change / plank - 1.0).abs() < 0.10, "{change} for {plank}");
    assert!((whole / pham - 1.0).abs() < 0.15, "{whole} for {pham}");
}

/// Thawing takes what freezing gave: the heat of the field is what its faces let through, to rounding.
#[test]
fn heat_is_conserved_through_freezing_and_thawing() {
    let filling = stew(0.1, 0.05, 1.4e-7);
    let sealed = Faces {
        top: SEALED,
        wall: SEALED,
        base: SEALED,
    };
    let mut field = Field::uniform(filling.content.enthalpy(20.0), 20.0);
    let cold = Face {
        film: 50.0,
        outside_c: -18.0,
    };
    for _ in 0..200 {
        field.step(60.0, &filling, &Faces { top: cold, ..sealed });
    }
    assert!(field.coldest_c() < FREEZING_C && field.warmest_c() > FREEZING_C);
    let before = field.heat_j();
    for _ in 0..500 {
        field.step(60.0, &filling, &sealed);
    }
    assert!((field.heat_j() / before - 1.0).abs() < 1e-6);
    // What is frozen beside what is not evens out at the freezing point or above it.
    assert!(field.warmest_c() - field.coldest_c() < 2.0);
}
