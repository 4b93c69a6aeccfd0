//! Table 03: properties of food components and foods, water and steam, boiling points.

use potwright_pot::physics::components::{Component, Quadratic, component, ice};
use potwright_pot::physics::{freezing, properties, water};
use potwright_pot::{Matter, Stuff};

use super::check::{CLOSED_FORM, Check, Judged, RECALLED};
use super::held;
use super::row::Row;

/// A component by the table's name.
fn named(component_name: &str) -> Option<&'static Component> {
    Some(match component_name {
        "protein" => component(Stuff::Protein),
        "fat" => component(Stuff::Fat),
        "carbohydrate" => component(Stuff::Starch),
        "fibre" => component(Stuff::Fibre),
        "ash" => component(Stuff::Ash),
        "water" => component(Stuff::Water),
        "ice" => ice(),
        _ => return None,
    })
}

/// A property of a component by the table's names, in the table's unit: specific heats there are in kJ.
fn property(row: &Row) -> Option<Quadratic> {
    let component = named(row.text("component"))?;
    Some(match row.text("property") {
        "k" => component.conductivity,
        "rho" => component.density,
        "cp" => {
            let Quadratic { c0, c1, c2 } = component.specific_heat;
            Quadratic {
                c0: c0 / 1000.0,
                c1: c1 / 1000.0,
                c2: c2 / 1000.0,
            }
        }
        _ => return None,
    })
}

/// 03a: the coefficients of Choi and Okos.
pub(super) fn coefficients(row: &Row) -> Judged {
    let Some(ours) = property(row) else {
        return Judged::LeftOut("a component that the engine does not have");
    };
    held([
        Check::column(row, "a0", ours.c0, CLOSED_FORM),
        Check::column(row, "a1", ours.c1, CLOSED_FORM),
        Check::column(row, "a2", ours.c2, CLOSED_FORM),
    ])
}

/// 03b: the quadratics at a temperature.
pub(super) fn at_a_temperature(row: &Row) -> Judged {
    if row.text("component") == "water_below0" {
        return Judged::LeftOut("water that stays liquid below 0 °C: in the engine it freezes");
    }
    let ours = property(row)
        .zip(row.number("t_C"))
        .map(|(ours, temp_c)| ours.at(temp_c));
    held([ours.and_then(|ours| Check::column(row, "value", ours, CLOSED_FORM))])
}

/// A kilogram of a food from shares of mass; carbohydrate without fibre is told as starch.
fn food(parts: [(Stuff, f64); 6]) -> Matter {
    let mut matter = Matter::default();
    for (stuff, share) in parts {
        matter.mass_kg[stuff as usize] = share;
    }
    matter
}

/// Composition of a row of 03c, percent to shares.
fn composition(row: &Row) -> Matter {
    let share = |column| row.number(column).unwrap_or(0.0) / 100.0;
    food([
        (Stuff::Water, share("water_pct")),
        (Stuff::Protein, share("protein_pct")),
        (Stuff::Fat, share("fat_pct")),
        (Stuff::Starch, share("carb_total_pct") - share("fibre_pct")),
        (Stuff::Fibre, share("fibre_pct")),
        (Stuff::Ash, share("ash_pct")),
    ])
}

/// Of a food at a temperature: specific heat in kJ/(kg·K), density in kg/m³, conductivity in W/(m·K), and the latent heat
/// of all its water in kJ/kg.
pub(super) fn of(matter: &Matter, temp_c: f64) -> [f64; 4] {
    let kg = matter.total_kg();
    [
        properties::HeatContent::of(matter).capacity(temp_c) / 1000.0 / kg,
        properties::density(matter, temp_c),
        properties::conductivity(matter, temp_c),
        properties::FUSION_J_KG / 1000.0 * matter.kg(Stuff::Water) / kg,
    ]
}

/// 03c: foods of the handbook's table by their composition.
pub(super) fn foods(row: &Row) -> Judged {
    let [specific_heat, density, conductivity, latent] = of(&composition(row), row.number("t_C").unwrap_or(f64::NAN));
    let diffusivity = conductivity / (density * specific_heat * 1000.0);
    held([
        Check::column(row, "cp_kJ_kgK", specific_heat, CLOSED_FORM),
        Check::column(row, "rho_kg_m3", density, CLOSED_FORM),
        Check::column(row, "k_parallel", conductivity, CLOSED_FORM),
        Check::column(row, "alpha_m2_s", diffusivity, CLOSED_FORM),
        // The handbook's own figure above freezing: its composition and its measured heat do not agree better.
        Check::column(row, "ashrae_cp_above_freezing", specific_heat, RECALLED),
        Check::column(row, "ashrae_latent_kJ_kg", latent, CLOSED_FORM),
        Check::column(row, "latent_from_333.55kJ_kg_x_water", latent, CLOSED_FORM),
    ])
}

/// 03d: the handbook's worked examples.
pub(super) fn worked_examples(row: &Row) -> Judged {
    match row.id() {
        "ashrae-ex2" => lamb(row),
        "ashrae-ex1" => {
            let share = freezing::ice_share(0.58, -1.7, -20.0);
            held([
                Some(Check::stated(row, "x_ice", share, "0.5164", CLOSED_FORM)),
                Some(Check::stated(
                    row,
                    "kg of ice in 150 kg",
                    150.0 * share,
                    "77.5",
                    CLOSED_FORM,
                )),
            ])
        }
        "ashrae-ex4" => {
            let share = freezing::ice_share(0.7263, -2.2, -40.0);
            held([Some(Check::stated(row, "x_ice", share, "0.6715", CLOSED_FORM))])
        }
        _ => Judged::LeftOut("not one of the handbook's examples"),
    }
}

/// 150 kg of lamb cooled from 10 to 0 °C.
fn lamb(row: &Row) -> Judged {
    let shares = [
        (Stuff::Water, 0.7342),
        (Stuff::Protein, 0.2029),
        (Stuff::Fat, 0.0525),
        (Stuff::Starch, 0.0),
        (Stuff::Fibre, 0.0),
        (Stuff::Ash, 0.0106),
    ];
    let content = properties::HeatContent::of(&food(shares));
    let heat_kj = 150.0 * (content.enthalpy(10.0) - content.enthalpy(0.0)) / 1000.0;
    let specific_heat = content.capacity(5.0) / 1000.0;
    held([
        Some(Check::stated(row, "c, kJ/(kg K)", specific_heat, "3.591", CLOSED_FORM)),
        Some(Check::stated(row, "Q, kJ", heat_kj, "5386", CLOSED_FORM)),
    ])
}

/// 03e: saturated water and steam.
pub(super) fn saturation(row: &Row) -> Judged {
    let Some(temp_c) = row.number("t_C") else {
        return held([]);
    };
    let liquid = component(Stuff::Water);
    held([
        Check::column(row, "p_sat_kPa", water::saturation_kpa(temp_c), CLOSED_FORM),
        Check::column(row, "rho_liq", water::liquid_density(temp_c), CLOSED_FORM),
        Check::column(row, "rho_vap", water::vapour_density(temp_c), CLOSED_FORM),
        Check::column(
            row,
            "cp_liq_kJ_kgK",
            liquid.specific_heat.at(temp_c) / 1000.0,
            CLOSED_FORM,
        ),
        Check::column(row, "k_liq_W_mK", liquid.conductivity.at(temp_c), CLOSED_FORM),
        Check::column(row, "h_fg_kJ_kg", water::latent_heat(temp_c) / 1000.0, CLOSED_FORM),
    ])
}

/// 03f: pressure and boiling point by height.
pub(super) fn height(row: &Row) -> Judged {
    let pressure_kpa = water::air_pressure_kpa(row.number("altitude_m").unwrap_or(f64::NAN));
    let boiling_c = water::boiling_c(pressure_kpa);
    held([
        Check::column(row, "p_kPa", pressure_kpa, CLOSED_FORM),
        Check::column(row, "t_boil_C", boiling_c, CLOSED_FORM),
        Check::column(row, "h_fg_kJ_kg", water::latent_heat(boiling_c) / 1000.0, CLOSED_FORM),
    ])
}

/// 03g: how far salt raises the boiling point.
pub(super) fn brine(row: &Row) -> Judged {
    let percent = row.number("nacl_pct_w_w").unwrap_or(f64::NAN);
    let raised = water::elevation_k(100.0 - percent, percent, 0.0);
    held([Check::column(row, "dT_boil_real_K", raised, CLOSED_FORM)])
}
