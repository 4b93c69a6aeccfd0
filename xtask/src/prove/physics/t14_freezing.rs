//! Table 14: how long food takes to freeze.

use potwright_pot::physics::conduction::Form;
use potwright_pot::physics::freezing::{Freezing, ice_share, pham_mean_c};

use super::check::{CLOSED_FORM, Check, Judged};
use super::held;
use super::row::Row;

/// The body of a row: shape, size in metres, density, latent heat in kJ/kg, freezing point, air, film, conductivity.
fn body(form: Form, size_m: f64, (density, latent): (f64, f64), temps: (f64, f64), (film, k): (f64, f64)) -> Freezing {
    Freezing {
        form,
        size_m,
        density,
        latent_j_kg: 1000.0 * latent,
        unfrozen_j_kg_k: 3600.0,
        frozen_j_kg_k: 1800.0,
        conductivity: k,
        film,
        air_c: temps.1,
        freezes_c: temps.0,
    }
}

/// Plank's equation, Pham's, and Tchigeov's share of ice.
pub(super) fn freezing(row: &Row) -> Judged {
    let sphere = body(Form::Sphere, 0.07, (1000.0, 250.0), (-1.25, -40.0), (50.0, 1.2));
    let slab = |size_m, made, temps, film| body(Form::Slab, size_m, made, temps, film);
    let seconds = |ours: Option<f64>, printed: &str| {
        Some(Check::stated(row, "s", ours.unwrap_or(f64::NAN), printed, CLOSED_FORM))
    };
    let pham = |food: Freezing, printed: &str| {
        let mean_c = pham_mean_c(-18.0, -40.0);
        held([
            Some(Check::stated(
                row,
                "mean freezing temperature, °C",
                mean_c,
                "-7.134",
                CLOSED_FORM,
            )),
            seconds(food.pham_s(10.0, -18.0), printed),
        ])
    };
    match row.id() {
        "plank-sphere" => held([seconds(sphere.plank_s(), "2603")]),
        "plank-slab" => {
            let food = slab(0.025, (1050.0, 255.0), (-1.7, -30.0), (20.0, 1.5));
            held([seconds(food.plank_s(), "6406")])
        }
        "plank-soup" => {
            let food = slab(0.05, (1000.0, 290.0), (-0.7, -18.0), (8.0, 1.8));
            held([seconds(food.plank_s(), "55295")])
        }
        "pham-sphere" => pham(sphere, "3910"),
        "pham-slab" => pham(slab(0.07, (1000.0, 250.0), (-1.25, -40.0), (50.0, 1.2)), "11730"),
        "freeze-note" => {
            let longer = sphere.plank_s().zip(sphere.pham_s(10.0, -18.0));
            let so = longer.is_some_and(|(plank, pham)| pham > plank);
            held([Some(Check::seen("Plank's time is the shorter", so, "under-predicts"))])
        }
        "ice-fraction" => {
            let share = ice_share(0.8779, -1.4, -18.0);
            held([
                Some(Check::stated(row, "ice of the mass", share, "0.7768", CLOSED_FORM)),
                Some(Check::stated(
                    row,
                    "% of the water",
                    100.0 * share / 0.8779,
                    "88.5",
                    CLOSED_FORM,
                )),
            ])
        }
        _ => Judged::LeftOut("advice on storing and thawing"),
    }
}

/// E18: the sphere of Plank's example, seconds.
pub(super) fn plank_sphere_s() -> f64 {
    let sphere = body(Form::Sphere, 0.07, (1000.0, 250.0), (-1.25, -40.0), (50.0, 1.2));
    sphere.plank_s().unwrap_or(f64::NAN)
}
