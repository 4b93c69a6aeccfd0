//! Properties: values of the Choi & Okos quadratics and of foods of ASHRAE's table, row by row.

use crate::physics::components::{Component, component, ice};
use crate::physics::freezing::ice_share;
use crate::physics::properties::{FUSION_J_KG, HeatContent, conductivity, density};
use crate::{Matter, Stuff};

/// Property, component, °C, W/(m·K), kg/m³ or kJ/(kg·K): computed from the coefficients of Choi & Okos (1986) as printed
/// in ASHRAE Refrigeration, Thermal Properties of Foods, tables 1 and 2. Water below 0 °C that is not frozen is not used.
const QUADRATICS: [(&str, &str, f64, f64); 78] = [
    ("k", "protein", 0.0, 0.17881),
    ("k", "protein", 20.0, 0.201639),
    ("k", "protein", 60.0, 0.240774),
    ("k", "protein", 95.0, 0.267883),
    ("k", "fat", 0.0, 0.18071),
    ("k", "fat", 20.0, 0.175118),
    ("k", "fat", 60.0, 0.163509),
    ("k", "fat", 95.0, 0.152884),
    ("k", "carbohydrate", 0.0, 0.20141),
    ("k", "carbohydrate", 20.0, 0.227426),
    ("k", "carbohydrate", 60.0, 0.269062),
    ("k", "carbohydrate", 95.0, 0.294124),
    ("k", "fibre", 0.0, 0.18331),
    ("k", "fibre", 20.0, 0.207037),
    ("k", "fibre", 60.0, 0.246886),
    ("k", "fibre", 95.0, 0.273438),
    ("k", "ash", 0.0, 0.32962),
    ("k", "ash", 20.0, 0.356479),
    ("k", "ash", 60.0, 0.403221),
    ("k", "ash", 95.0, 0.43649),
    ("k", "water", 0.0, 0.57109),
    ("k", "water", 20.0, 0.603659),
    ("k", "water", 60.0, 0.652707),
    ("k", "water", 95.0, 0.678028),
    ("k", "ice", -30.0, 2.49845),
    ("k", "ice", -10.0, 2.29224),
    ("rho", "protein", 0.0, 1329.9),
    ("rho", "protein", 20.0, 1319.53),
    ("rho", "protein", 60.0, 1298.8),
    ("rho", "protein", 95.0, 1280.65),
    ("rho", "fat", 0.0, 925.59),
    ("rho", "fat", 20.0, 917.239),
    ("rho", "fat", 60.0, 900.536),
    ("rho", "fat", 95.0, 885.921),
    ("rho", "carbohydrate", 0.0, 1599.1),
    ("rho", "carbohydrate", 20.0, 1592.89),
    ("rho", "carbohydrate", 60.0, 1580.47),
    ("rho", "carbohydrate", 95.0, 1569.61),
    ("rho", "fibre", 0.0, 1311.5),
    ("rho", "fibre", 20.0, 1304.18),
    ("rho", "fibre", 60.0, 1289.55),
    ("rho", "fibre", 95.0, 1276.74),
    ("rho", "ash", 0.0, 2423.8),
    ("rho", "ash", 20.0, 2418.19),
    ("rho", "ash", 60.0, 2406.96),
    ("rho", "ash", 95.0, 2397.14),
    ("rho", "water", 0.0, 997.18),
    ("rho", "water", 20.0, 995.74),
    ("rho", "water", 60.0, 983.842),
    ("rho", "water", 95.0, 963.568),
    ("rho", "ice", -30.0, 920.811),
    ("rho", "ice", -10.0, 918.197),
    ("cp", "protein", 0.0, 2.0082),
    ("cp", "protein", 20.0, 2.03185),
    ("cp", "protein", 60.0, 2.07601),
    ("cp", "protein", 95.0, 2.1112),
    ("cp", "fat", 0.0, 1.9842),
    ("cp", "fat", 20.0, 2.01175),
    ("cp", "fat", 60.0, 2.05532),
    ("cp", "fat", 95.0, 2.08084),
    ("cp", "carbohydrate", 0.0, 1.5488),
    ("cp", "carbohydrate", 20.0, 1.58567),
    ("cp", "carbohydrate", 60.0, 1.64517),
    ("cp", "carbohydrate", 95.0, 1.68163),
    ("cp", "fibre", 0.0, 1.8459),
    ("cp", "fibre", 20.0, 1.88065),
    ("cp", "fibre", 60.0, 1.93899),
    ("cp", "fibre", 95.0, 1.97783),
    ("cp", "ash", 0.0, 1.0926),
    ("cp", "ash", 20.0, 1.12892),
    ("cp", "ash", 60.0, 1.19272),
    ("cp", "ash", 95.0, 1.23888),
    ("cp", "water", 0.0, 4.1762),
    ("cp", "water", 20.0, 4.17657),
    ("cp", "water", 60.0, 4.19045),
    ("cp", "water", 95.0, 4.21696),
    ("cp", "ice", -30.0, 1.87999),
    ("cp", "ice", -10.0, 2.00153),
];

fn of(name: &str) -> &'static Component {
    match name {
        "protein" => component(Stuff::Protein),
        "fat" => component(Stuff::Fat),
        "carbohydrate" => component(Stuff::Sugar),
        "fibre" => component(Stuff::Fibre),
        "ash" => component(Stuff::Ash),
        "water" => component(Stuff::Water),
        _ => ice(),
    }
}

#[test]
fn quadratics() {
    for (property, name, t, value) in QUADRATICS {
        let found = match property {
            "k" => of(name).conductivity.at(t),
            "rho" => of(name).density.at(t),
            _ => of(name).specific_heat.at(t) / 1000.0,
        };
        assert!(
            (found / value - 1.0).abs() < 1e-3,
            "{property} of {name} at {t}: {found} for {value}"
        );
    }
}

/// °C; kJ/(kg·K), kg/m³, W/(m·K), m²/s; ASHRAE's kJ/(kg·K).
type Printed = (f64, f64, f64, f64, f64, f64);

/// Water, protein, fat, carbohydrate, fibre, ash in percent; °C; kJ/(kg·K), kg/m³, W/(m·K) parallel, m²/s computed from the
/// coefficients; ASHRAE's printed specific heat above freezing (compositions: ASHRAE Refrigeration, Table 3).
const FOODS: [([f64; 6], Printed); 20] = [
    (
        [87.79, 1.03, 0.19, 10.14, 3.0, 0.87],
        (4.0, 3.8661, 1040.34, 0.5466, 1.3589e-07, 3.92),
    ),
    (
        [87.79, 1.03, 0.19, 10.14, 3.0, 0.87],
        (60.0, 3.8893, 1026.46, 0.6199, 1.5527e-07, 3.92),
    ),
    (
        [94.64, 0.75, 0.14, 3.65, 1.7, 0.82],
        (4.0, 4.0409, 1015.38, 0.5646, 1.376e-07, 4.07),
    ),
    (
        [94.64, 0.75, 0.14, 3.65, 1.7, 0.82],
        (60.0, 4.0591, 1001.8, 0.6386, 1.5704e-07, 4.07),
    ),
    (
        [83.0, 1.5, 0.3, 14.15, 1.8, 1.05],
        (4.0, 3.7393, 1061.24, 0.5347, 1.3474e-07, 3.77),
    ),
    (
        [83.0, 1.5, 0.3, 14.15, 1.8, 1.05],
        (60.0, 3.7660, 1047.15, 0.6076, 1.5406e-07, 3.77),
    ),
    (
        [91.81, 2.09, 0.42, 4.65, 1.2, 0.89],
        (4.0, 3.9756, 1023.73, 0.5570, 1.3686e-07, 3.99),
    ),
    (
        [91.81, 2.09, 0.42, 4.65, 1.2, 0.89],
        (60.0, 3.9955, 1009.95, 0.6305, 1.5624e-07, 3.99),
    ),
    (
        [92.15, 1.44, 0.27, 5.43, 2.3, 0.71],
        (4.0, 3.9816, 1022.5, 0.5573, 1.3689e-07, 4.02),
    ),
    (
        [92.15, 1.44, 0.27, 5.43, 2.3, 0.71],
        (60.0, 4.0015, 1008.77, 0.6309, 1.563e-07, 4.02),
    ),
    (
        [58.58, 6.36, 0.5, 33.07, 2.1, 1.5],
        (4.0, 3.1214, 1167.2, 0.4605, 1.2639e-07, 3.17),
    ),
    (
        [58.58, 6.36, 0.5, 33.07, 2.1, 1.5],
        (60.0, 3.1649, 1151.64, 0.5304, 1.4552e-07, 3.17),
    ),
    (
        [88.0, 1.5, 0.3, 9.2, 1.8, 1.0],
        (4.0, 3.8705, 1040.31, 0.5476, 1.3599e-07, 3.9),
    ),
    (
        [88.0, 1.5, 0.3, 9.2, 1.8, 1.0],
        (60.0, 3.8935, 1026.41, 0.6208, 1.5535e-07, 3.9),
    ),
    (
        [70.24, 6.84, 0.86, 20.16, 4.9, 1.89],
        (4.0, 3.4374, 1103.71, 0.4942, 1.3026e-07, 3.52),
    ),
    (
        [70.24, 6.84, 0.86, 20.16, 4.9, 1.89],
        (60.0, 3.4720, 1088.56, 0.5648, 1.4943e-07, 3.52),
    ),
    (
        [75.96, 3.22, 1.18, 19.02, 2.7, 0.62],
        (4.0, 3.5712, 1082.12, 0.5118, 1.3243e-07, 3.62),
    ),
    (
        [75.96, 3.22, 1.18, 19.02, 2.7, 0.62],
        (60.0, 3.6024, 1067.53, 0.5829, 1.5158e-07, 3.62),
    ),
    (
        [84.46, 3.3, 0.7, 10.01, 2.0, 1.53],
        (4.0, 3.7859, 1051.34, 0.5371, 1.3495e-07, 3.82),
    ),
    (
        [84.46, 3.3, 0.7, 10.01, 2.0, 1.53],
        (60.0, 3.8110, 1037.13, 0.6096, 1.5423e-07, 3.82),
    ),
];

/// A kilogram of food by percentages.
fn food([water, protein, fat, carbohydrate, fibre, ash]: [f64; 6]) -> Matter {
    let mut matter = Matter::default();
    for (stuff, percent) in [
        (Stuff::Water, water),
        (Stuff::Protein, protein),
        (Stuff::Fat, fat),
        (Stuff::Sugar, carbohydrate - fibre),
        (Stuff::Fibre, fibre),
        (Stuff::Ash, ash),
    ] {
        matter.mass_kg[stuff as usize] = percent / 100.0;
    }
    matter
}

/// Own coefficients 0.1 %, ASHRAE's printed specific heat 3 %.
#[test]
fn foods_of_the_handbook() {
    for (parts, (t, cp, rho, k, alpha, printed)) in FOODS {
        let matter = food(parts);
        let found = HeatContent::of(&matter).capacity(t) / 1000.0 / matter.total_kg();
        assert!((found / cp - 1.0).abs() < 1e-3, "cp {found} for {cp}");
        assert!((found / printed - 1.0).abs() < 0.03, "cp {found} for printed {printed}");
        assert!((density(&matter, t) / rho - 1.0).abs() < 1e-3);
        assert!((conductivity(&matter, t) / k - 1.0).abs() < 1e-3);
        let diffusivity = k / (rho * cp * 1000.0);
        assert!((diffusivity / alpha - 1.0).abs() < 1e-3, "{diffusivity} for {alpha}");
    }
}

/// Carrot at 4 °C: 3.866 kJ/(kg·K), within 3 % of ASHRAE's 3.92; latent heat 333.55 · 0.8779 = 292.8, printed 293 kJ/kg.
#[test]
fn carrot() {
    let carrot = food([87.79, 1.03, 0.19, 10.14, 3.0, 0.87]);
    assert!((FUSION_J_KG / 1000.0 * carrot.kg(Stuff::Water) - 293.0).abs() < 0.5);
}

/// ASHRAE, examples 1, 2 and 4: ice in beef of 58 % water at −20 °C 0.5164 of the mass, in pork of 72.63 % at −40 °C
/// 0.6715 (inputs and printed answers from memory, recomputed); 150 kg of lamb from 10 to 0 °C 5386 kJ, printed 5390.
#[test]
fn worked_examples() {
    assert!((ice_share(0.58, -1.7, -20.0) - 0.5164).abs() < 1e-4);
    assert!((ice_share(0.7263, -2.2, -40.0) - 0.6715).abs() < 1e-4);
    let mut lamb = food([73.42, 20.29, 5.25, 0.0, 0.0, 1.06]);
    lamb.mass_kg.iter_mut().for_each(|kg| *kg *= 150.0);
    let content = HeatContent::of(&lamb);
    let kilojoules = (content.enthalpy(10.0) - content.enthalpy(0.0)) / 1000.0;
    assert!((kilojoules / 5386.0 - 1.0).abs() < 2e-3, "{kilojoules}");
    let cp = content.capacity(5.0) / 1000.0 / lamb.total_kg();
    assert!((cp / 3.591 - 1.0).abs() < 1e-3, "{cp}");
}
