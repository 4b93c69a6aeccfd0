//! Table 04: conduction in slab, cylinder and sphere.

use potwright_pot::physics::conduction::Form;

use super::body::{Body, biot, falls_to, first_term, form, left_at};
use super::check::{CLOSED_FORM, Check, FIRST_TERM, Judged, Wanted};
use super::held;
use super::row::Row;

/// 04a: first eigenvalue and its coefficient by Biot number.
pub(super) fn first_terms(row: &Row) -> Judged {
    let Some((form, biot)) = form(row.text("geometry")).zip(biot(row.text("Bi"))) else {
        return held([]);
    };
    let (eigenvalue, coefficient) = first_term(form, biot);
    held([
        Check::column(row, "zeta1", eigenvalue, FIRST_TERM),
        Check::column(row, "C1", coefficient, FIRST_TERM),
    ])
}

/// 04b: what is left of a step at centre, surface and on the mean: within 0.5 % of itself where the Fourier number is
/// above 0.2; before, when the heat has hardly begun to move, within 0.5 % of the step.
pub(super) fn series(row: &Row) -> Judged {
    let (form, biot) = (form(row.text("geometry")), biot(row.text("Bi")));
    let Some(((form, biot), fourier)) = form.zip(biot).zip(row.number("Fo")) else {
        return held([]);
    };
    let profile = left_at(form, biot, fourier, 1000);
    let check = |column, ours| {
        let mut check = Check::column(row, column, ours, FIRST_TERM)?;
        if let Wanted::Near { value, within } = check.wanted
            && fourier <= 0.2
        {
            check.wanted = Wanted::Near {
                value,
                within: within.max(FIRST_TERM),
            };
        }
        Some(check)
    };
    held([
        check("theta_centre", profile.centre_c()),
        check("theta_surface", profile.surface_c(biot, 0.0)),
        check("theta_average", profile.mean_c()),
    ])
}

/// 04c: worked examples of textbooks.
pub(super) fn worked_examples(row: &Row) -> Judged {
    let egg = |diameter_m: f64, film_w_m2k, conductivity_w_mk, diffusivity_m2_s| Body {
        form: Form::Sphere,
        radius_m: diameter_m / 2.0,
        film_w_m2k,
        conductivity_w_mk,
        diffusivity_m2_s,
    };
    let seconds =
        |ours: f64, printed: &str| Check::stated(row, "s to the temperature at the centre", ours, printed, FIRST_TERM);
    let left = |start_c: f64, bath_c: f64, centre_c: f64| (centre_c - bath_c) / (start_c - bath_c);
    let check = match row.id() {
        "egg-5cm" => {
            let ours = egg(0.05, 1200.0, 0.627, 0.151e-6).seconds_until(left(5.0, 95.0, 70.0));
            seconds(ours, "861")
        }
        "egg-5.5cm" => {
            let ours = egg(0.055, 800.0, 0.607, 0.146e-6).seconds_until(left(4.3, 100.0, 74.0));
            seconds(ours, "1106")
        }
        "egg-5.5cm-b" => {
            let ours = egg(0.055, 1400.0, 0.6, 0.14e-6).seconds_until(left(8.0, 97.0, 70.0));
            seconds(ours, "1064")
        }
        "brass-plate" => {
            let plate = metal(Form::Slab, 0.02, 120.0, 110.0, 33.9e-6);
            let left = plate.left(420.0).surface_c(plate.biot(), 0.0);
            Check::stated(row, "surface, °C", 500.0 - 480.0 * left, "279.6", CLOSED_FORM)
        }
        "steel-shaft" => {
            let left = metal(Form::Cylinder, 0.1, 80.0, 14.9, 3.95e-6).left(2700.0).centre_c();
            Check::stated(row, "centre, °C", 200.0 + 400.0 * left, "364.3", CLOSED_FORM)
        }
        "short-cylinder" => return short_cylinder(row),
        "unstirred-stew-30x25" => stew(row, 0.30, 0.25, "31735"),
        "unstirred-stew-20x5" => stew(row, 0.20, 0.05, "2492"),
        _ => return Judged::LeftOut("a body without conduction in it: closed form, nothing of ours in it"),
    };
    held([Some(check)])
}

fn metal(form: Form, radius_m: f64, film_w_m2k: f64, conductivity_w_mk: f64, diffusivity_m2_s: f64) -> Body {
    Body {
        form,
        radius_m,
        film_w_m2k,
        conductivity_w_mk,
        diffusivity_m2_s,
    }
}

/// A short cylinder as the product of a long one and a slab: centre and centre of the top.
fn short_cylinder(row: &Row) -> Judged {
    let (round, flat) = (
        metal(Form::Cylinder, 0.05, 60.0, 110.0, 33.9e-6),
        metal(Form::Slab, 0.06, 60.0, 110.0, 33.9e-6),
    );
    let (across, through) = (round.left(900.0).centre_c(), flat.left(900.0));
    let temp_c = |left: f64| 25.0 + 95.0 * across * left;
    let top = through.surface_c(flat.biot(), 0.0);
    held([
        Some(Check::stated(
            row,
            "centre, °C",
            temp_c(through.centre_c()),
            "62.7",
            CLOSED_FORM,
        )),
        Some(Check::stated(
            row,
            "centre of the top, °C",
            temp_c(top),
            "62.1",
            CLOSED_FORM,
        )),
    ])
}

/// Seconds until the centre of an unstirred stew at 57 °C falls to 21 °C, all faces held at 4 °C.
pub(super) fn unstirred_s(diameter_m: f64, height_m: f64) -> f64 {
    let face = |form, radius_m| metal(form, radius_m, 1e9, 1.0, 1.4e-7);
    let (round, flat) = (face(Form::Cylinder, diameter_m / 2.0), face(Form::Slab, height_m / 2.0));
    let left = |seconds| round.left(seconds).centre_c() * flat.left(seconds).centre_c();
    falls_to((21.0 - 4.0) / (57.0 - 4.0), left)
}

fn stew(row: &Row, diameter_m: f64, height_m: f64, printed: &str) -> Check {
    Check::stated(
        row,
        "s to 21 °C",
        unstirred_s(diameter_m, height_m),
        printed,
        FIRST_TERM,
    )
}
