//! How thick a liquid is to the spoon: power law, drops of fat, warmth.
//!
//! A dish's starch is not turned into a viscosity: no published relation covers what cooks thicken with. These relations
//! serve where one liquid is compared with another.

/// Shear rate at which a spoon and a tongue judge, 1/s (10 to 50, from memory).
pub const SPOON_PER_S: f64 = 50.0;
/// Viscosity of water at serving warmth, 65 °C, Pa·s (IAPWS, 0.43 mPa·s).
pub const WATER_PA_S: f64 = 0.000_43;
/// Apparent viscosity of what coats a spoon at [`SPOON_PER_S`], Pa·s: the middle of 0.3 to 1 (common practice, no source).
pub const COATS_PA_S: f64 = 0.55;
/// Closest random packing of drops, volume per volume (0.58 to 0.68 in published fits; from memory).
const PACKED: f64 = 0.64;
/// Activation energy of the flow of sauces, J/mol (5 to 30 kJ/mol, from memory).
const ACTIVATION_J_MOL: f64 = 15_000.0;
const GAS_J_MOL_K: f64 = 8.314;

/// Apparent viscosity of a power-law liquid, Pa·s: η = K·γ̇ⁿ⁻¹ with consistency K in Pa·sⁿ, flow index n and shear rate γ̇
/// in 1/s. Nought where an argument is no positive number.
#[must_use]
pub fn apparent_pa_s(consistency: f64, index: f64, shear_per_s: f64) -> f64 {
    let found = consistency * libm::pow(shear_per_s, index - 1.0);
    if found.is_finite() && consistency > 0.0 && shear_per_s > 0.0 {
        found
    } else {
        0.0
    }
}

/// How many times thicker a liquid is for the drops in it (Krieger and Dougherty): (1 − φ/φₘ)^(−2.5·φₘ), the volume share
/// φ of the drops, φₘ 0.64; for φ up to 0.5. It begins as Einstein's 1 + 2.5·φ.
#[must_use]
pub fn thicker_by_drops(volume_share: f64) -> f64 {
    let share = if volume_share.is_finite() {
        volume_share.clamp(0.0, 0.5)
    } else {
        0.0
    };
    libm::pow(1.0 - share / PACKED, -2.5 * PACKED)
}

/// How many times thicker a sauce is at one temperature than at another, °C: exp(E/R·(1/T − 1/T₀)), E 15 kJ/mol.
/// Gelling in the cold comes on top and is not computed.
#[must_use]
pub fn thicker_by_cold(temp_c: f64, than_at_c: f64) -> f64 {
    let inverse = |celsius: f64| 1.0 / (celsius.clamp(-20.0, 120.0) + 273.15);
    let factor = libm::exp(ACTIVATION_J_MOL / GAS_J_MOL_K * (inverse(temp_c) - inverse(than_at_c)));
    if factor.is_finite() { factor } else { 1.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// K, n, shear rate and η = K·γ̇ⁿ⁻¹ as computed with an independent library.
    #[test]
    fn power_law() {
        for (consistency, index, shear, expected) in [
            (5.0, 0.4, 50.0, 0.478_176),
            (1.0, 0.5, 50.0, 0.141_421),
            (0.2, 0.8, 50.0, 0.091_461),
            (13.0, 0.4, 10.0, 3.265_452),
        ] {
            let found = apparent_pa_s(consistency, index, shear);
            assert!((found / expected - 1.0).abs() < 1e-3, "{found} {expected}");
        }
        // Water: K 1 mPa·s and n 1 at any rate.
        assert!((apparent_pa_s(0.001, 1.0, 37.0) - 0.001).abs() < 1e-12);
        assert_eq!(apparent_pa_s(f64::NAN, 0.5, 50.0), 0.0);
    }

    /// Einstein's law for few drops: 1 + 2.5·φ at φ = 1 %, within 0.1 %; more drops, thicker.
    #[test]
    fn drops() {
        assert!((thicker_by_drops(0.01) / 1.025 - 1.0).abs() < 1e-3);
        assert!(thicker_by_drops(0.4) > thicker_by_drops(0.2));
        assert!(thicker_by_drops(f64::INFINITY).is_finite() && thicker_by_drops(5.0).is_finite());
    }

    #[test]
    fn cold_stands_more() {
        assert!(thicker_by_cold(5.0, 65.0) > 1.0 && thicker_by_cold(90.0, 65.0) < 1.0);
        assert!((thicker_by_cold(65.0, 65.0) - 1.0).abs() < 1e-12);
    }
}
