//! Water and steam: saturation, densities, latent heat; the air's pressure at a height; the boiling point of broth.

use crate::physics::alcohol;
use crate::{Matter, Stuff};

/// Saturation pressure in kPa at a temperature in °C, 0–370 °C (outside, the nearest end).
///
/// IAPWS-IF97, region 4: with θ = T + n₉/(T − n₁₀), A = θ² + n₁θ + n₂, B = n₃θ² + n₄θ + n₅, C = n₆θ² + n₇θ + n₈,
/// p = [2C/(−B + √(B² − 4AC))]⁴ MPa.
#[must_use]
pub fn saturation_kpa(temp_c: f64) -> f64 {
    let kelvin = temp_c.clamp(0.0, 370.0) + 273.15;
    let theta = kelvin + N[8] / (kelvin - N[9]);
    let a = theta * (theta + N[0]) + N[1];
    let b = theta * (N[2] * theta + N[3]) + N[4];
    let c = theta * (N[5] * theta + N[6]) + N[7];
    let root = 2.0 * c / ((b * b - 4.0 * a * c).sqrt() - b);
    1000.0 * root * root * root * root
}

/// Coefficients n₁ … n₁₀ of IAPWS-IF97, region 4.
const N: [f64; 10] = [
    0.116_705_214_527_67e4,
    -0.724_213_167_032_06e6,
    -0.170_738_469_400_92e2,
    0.120_208_247_024_70e5,
    -0.323_255_503_223_33e7,
    0.149_151_086_135_30e2,
    -0.482_326_573_615_91e4,
    0.405_113_405_420_57e6,
    -0.238_555_575_678_49,
    0.650_175_348_447_98e3,
];

/// Boiling point of pure water in °C at a pressure in kPa, 0.6–20,000 kPa (outside, the nearest end): the backward
/// form of the same equation, T = ½{n₁₀ + D − √[(n₁₀ + D)² − 4(n₉ + n₁₀D)]}, β = p^¼, E = β² + n₃β + n₆,
/// F = n₁β² + n₄β + n₇, G = n₂β² + n₅β + n₈, D = 2G/(−F − √(F² − 4EG)).
#[must_use]
pub fn boiling_c(pressure_kpa: f64) -> f64 {
    let beta = (pressure_kpa.clamp(0.6, 20_000.0) / 1000.0).sqrt().sqrt();
    let e = beta * (beta + N[2]) + N[5];
    let f = beta * (N[0] * beta + N[3]) + N[6];
    let g = beta * (N[1] * beta + N[4]) + N[7];
    let d = 2.0 * g / (-f - (f * f - 4.0 * e * g).sqrt());
    let sum = N[9] + d;
    0.5 * (sum - (sum * sum - 4.0 * (N[8] + N[9] * d)).sqrt()) - 273.15
}

/// Critical temperature (K) and density (kg/m³) of water, IAPWS.
const CRITICAL_K: f64 = 647.096;
const CRITICAL_DENSITY: f64 = 322.0;

/// Density of saturated vapour in kg/m³ at a temperature in °C, 0–370 °C.
///
/// IAPWS supplementary release SR1-86(1992): ln(ρ″/ρc) = Σ cᵢ·τ^(eᵢ), τ = 1 − T/Tc, e = 2, 4, 8, 18, 37, 71 sixths.
#[must_use]
pub fn vapour_density(temp_c: f64) -> f64 {
    let u = libm::cbrt(1.0 - kelvins(temp_c) / CRITICAL_K).sqrt();
    let u2 = u * u;
    let u4 = u2 * u2;
    let u8 = u4 * u4;
    let u16 = u8 * u8;
    let u32 = u16 * u16;
    let (u18, u37, u71) = (u16 * u2, u32 * u4 * u, u32 * u32 * u4 * u2 * u);
    let sum = -2.031_502_40 * u2
        - 2.683_029_40 * u4
        - 5.386_264_92 * u8
        - 17.299_160_5 * u18
        - 44.758_658_1 * u37
        - 63.920_106_3 * u71;
    CRITICAL_DENSITY * libm::exp(sum)
}

/// Density of saturated liquid water in kg/m³ at a temperature in °C, 0–370 °C.
///
/// IAPWS supplementary release SR1-86(1992): ρ′/ρc = 1 + Σ bᵢ·τ^(eᵢ), e = 1, 2, 5, 16, 43, 110 thirds.
#[must_use]
pub fn liquid_density(temp_c: f64) -> f64 {
    let w = libm::cbrt(1.0 - kelvins(temp_c) / CRITICAL_K);
    let w2 = w * w;
    let w5 = w2 * w2 * w;
    let w16 = w5 * w5 * w5 * w;
    let w43 = w16 * w16 * w5 * w5 * w;
    let w110 = w43 * w43 * w16 * w5 * w2 * w;
    let sum = 1.992_740_64 * w + 1.099_653_42 * w2
        - 0.510_839_303 * w5
        - 1.754_934_79 * w16
        - 45.517_035_2 * w43
        - 674_694.450 * w110;
    CRITICAL_DENSITY * (1.0 + sum)
}

fn kelvins(temp_c: f64) -> f64 {
    temp_c.clamp(0.0, 370.0) + 273.15
}

/// Latent heat of evaporation in J/kg at a temperature in °C, 0–360 °C: Clapeyron's equation
/// L = T·(1/ρ″ − 1/ρ′)·dp/dT over the saturation line.
#[must_use]
pub fn latent_heat(temp_c: f64) -> f64 {
    let temp_c = temp_c.clamp(0.05, 360.0);
    let step = 0.05;
    let slope_pa_k = 1000.0 * (saturation_kpa(temp_c + step) - saturation_kpa(temp_c - step)) / (2.0 * step);
    (temp_c + 273.15) * (1.0 / vapour_density(temp_c) - 1.0 / liquid_density(temp_c)) * slope_pa_k
}

/// Pressure of the air in kPa at a height in metres, −500 to 11,000 m: US Standard Atmosphere 1976,
/// p = 101.325·(1 − 2.25577e-5·h)^5.25588.
#[must_use]
pub fn air_pressure_kpa(altitude_m: f64) -> f64 {
    let height = if altitude_m.is_finite() {
        altitude_m.clamp(-500.0, 11_000.0)
    } else {
        0.0
    };
    101.325 * libm::pow(1.0 - 2.255_77e-5 * height, 5.255_88)
}

/// Molal elevation of the boiling point of water, K·kg/mol (any physical chemistry text).
const EBULLIOSCOPIC: f64 = 0.513;
/// Osmotic coefficient of NaCl at 25 °C against molality (Robinson & Stokes, from memory).
const OSMOTIC: [(f64, f64); 12] = [
    (0.0, 1.0),
    (0.1, 0.9324),
    (0.2, 0.9245),
    (0.3, 0.9215),
    (0.5, 0.9209),
    (0.7, 0.9257),
    (1.0, 0.9355),
    (2.0, 0.9833),
    (3.0, 1.0453),
    (4.0, 1.1158),
    (5.0, 1.1916),
    (6.0, 1.2706),
];

/// Elevation of the boiling point in kelvins by salt and sugar, kilograms of each in so many kilograms of water:
/// ΔT = Kb·(2·φ·m(NaCl) + m(sucrose)); salt to saturation, sugar ideal.
#[must_use]
pub fn elevation_k(water_kg: f64, salt_kg: f64, sugar_kg: f64) -> f64 {
    if water_kg <= 0.0 {
        return 0.0;
    }
    let salt = (salt_kg / 0.058_443 / water_kg).clamp(0.0, 6.15);
    let sugar = (sugar_kg / 0.342_3 / water_kg).clamp(0.0, 12.0);
    EBULLIOSCOPIC * (2.0 * salt * osmotic_coefficient(salt) + sugar)
}

fn osmotic_coefficient(molality: f64) -> f64 {
    let above = OSMOTIC
        .iter()
        .position(|(m, _)| *m >= molality)
        .unwrap_or(OSMOTIC.len() - 1)
        .max(1);
    let ((m0, f0), (m1, f1)) = (OSMOTIC[above - 1], OSMOTIC[above]);
    f0 + (f1 - f0) * (molality - m0) / (m1 - m0)
}

/// Boiling point of a broth in °C under a pressure of the air in kPa: water's, raised by salt and sugar and lowered
/// by alcohol.
#[must_use]
pub fn broth_boiling_c(broth: &Matter, pressure_kpa: f64) -> f64 {
    boiling_c(pressure_kpa) + broth_elevation_k(broth)
}

/// How far above pure water a broth boils, kelvins; negative for wine.
#[must_use]
pub fn broth_elevation_k(broth: &Matter) -> f64 {
    let water = broth.kg(Stuff::Water);
    let raised = elevation_k(water, broth.kg(Stuff::Salt), broth.kg(Stuff::Sugar));
    raised - alcohol::boiling_depression_k(water, broth.kg(Stuff::Alcohol))
}

#[cfg(test)]
mod tests {
    use super::*;

    /// t °C, p kPa, liquid and vapour density, latent heat kJ/kg: IAPWS-IF97 by an independent library.
    const SATURATION: [(f64, f64, f64, f64, f64); 16] = [
        (0.01, 0.61166, 999.794, 0.004854, 2500.91),
        (5.0, 0.87257, 999.918, 0.006802, 2489.05),
        (10.0, 1.22818, 999.654, 0.009407, 2477.21),
        (20.0, 2.33921, 998.161, 0.017313, 2453.55),
        (30.0, 4.24669, 995.609, 0.030412, 2429.84),
        (40.0, 7.38443, 992.183, 0.051237, 2406.00),
        (50.0, 12.35127, 988.009, 0.083140, 2381.97),
        (60.0, 19.94580, 983.175, 0.130418, 2357.69),
        (70.0, 31.20064, 977.748, 0.198423, 2333.08),
        (80.0, 47.41472, 971.779, 0.293663, 2308.07),
        (90.0, 70.18236, 965.304, 0.423882, 2282.56),
        (95.0, 84.60894, 961.887, 0.504885, 2269.60),
        (100.0, 101.41798, 958.354, 0.598136, 2256.47),
        (105.0, 120.90206, 954.708, 0.704982, 2243.18),
        (110.0, 143.37597, 950.950, 0.826863, 2229.70),
        (120.0, 198.66540, 943.106, 1.121952, 2202.15),
    ];

    #[test]
    fn saturation_rows() {
        for (t, p, liquid, vapour, latent) in SATURATION {
            assert!((saturation_kpa(t) / p - 1.0).abs() < 1e-4, "p at {t}");
            assert!((liquid_density(t) / liquid - 1.0).abs() < 1e-4, "liquid at {t}");
            assert!(
                (vapour_density(t) / vapour - 1.0).abs() < 1e-3,
                "vapour at {t}: {}",
                vapour_density(t)
            );
            let got = latent_heat(t) / 1000.0;
            assert!((got / latent - 1.0).abs() < 1e-3, "latent at {t}: {got}");
            assert!((boiling_c(p) - t).abs() < 0.01, "boiling at {p}: {}", boiling_c(p));
        }
    }

    /// Height m, pressure kPa, boiling point °C, latent heat there kJ/kg: US Standard Atmosphere 1976 with IAPWS-IF97, by an
    /// independent library.
    const HEIGHTS: [(f64, f64, f64, f64); 15] = [
        (0.0, 101.325, 99.97, 2256.5),
        (150.0, 99.536, 99.48, 2257.9),
        (300.0, 97.773, 98.98, 2259.2),
        (500.0, 95.461, 98.31, 2260.9),
        (750.0, 92.634, 97.48, 2263.1),
        (1000.0, 89.875, 96.65, 2265.3),
        (1250.0, 87.182, 95.82, 2267.5),
        (1500.0, 84.556, 94.98, 2269.6),
        (1609.34, 83.428, 94.62, 2270.6),
        (1750.0, 81.994, 94.15, 2271.8),
        (2000.0, 79.495, 93.32, 2274.0),
        (2250.0, 77.058, 92.48, 2276.1),
        (2500.0, 74.683, 91.64, 2278.3),
        (3000.0, 70.109, 89.97, 2282.6),
        (3500.0, 65.764, 88.3, 2286.9),
    ];

    #[test]
    fn boiling_points_by_height() {
        for (height, pressure, boil, latent) in HEIGHTS {
            assert!((air_pressure_kpa(height) / pressure - 1.0).abs() < 1e-3);
            assert!((boiling_c(air_pressure_kpa(height)) - boil).abs() < 0.02, "{height}");
            assert!((latent_heat(boil) / 1000.0 / latent - 1.0).abs() < 1e-3, "{height}");
        }
        assert!(air_pressure_kpa(f64::NAN).is_finite());
    }

    /// Salt % w/w and the elevation with the osmotic coefficient (Robinson & Stokes, recalled): hence 3 %.
    #[test]
    fn salt_raises_the_boiling_point() {
        for (percent, expected) in [
            (0.25, 0.043),
            (0.5, 0.083),
            (0.9, 0.148),
            (1.0, 0.164),
            (2.0, 0.33),
            (3.0, 0.5),
            (3.5, 0.588),
            (5.0, 0.861),
            (6.0, 1.052),
            (8.0, 1.459),
            (10.0, 1.907),
            (15.0, 3.242),
            (20.0, 4.989),
            (26.0, 7.836),
        ] {
            let got = elevation_k(100.0 - percent, percent, 0.0);
            assert!((got / expected - 1.0).abs() < 0.03, "{percent} %: {got}");
        }
        assert_eq!(elevation_k(0.0, 1.0, 1.0), 0.0);
    }
}
