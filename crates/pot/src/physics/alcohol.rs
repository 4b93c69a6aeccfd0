//! Ethanol in water: its volatility relative to water, and how much it lowers the boiling point.
//!
//! Nothing here is fitted to what cooks find left of wine in a stew; [`crate::checks::alcohol`] compares.

/// Van Laar constants of ethanol (1) and water (2) at 101.3 kPa: A₁₂ and A₂₁ (a chemical engineers' handbook, quoted in
/// a published exercise).
const VAN_LAAR: (f64, f64) = (1.6798, 0.9227);
/// Ratio of the vapour pressures of pure ethanol and water near the boil, 2.2–2.3 between 80 and 100 °C (Antoine
/// constants of ethanol from memory).
const PRESSURE_RATIO: f64 = 2.25;
/// Latent heat of ethanol near the boil, J/kg (from memory; 838 kJ/kg at 78 °C).
pub const LATENT_J_KG: f64 = 840_000.0;
/// Slope of ln p of water near the boil, 1/K: L·M/(R·T²) at 100 °C with 2256.5 kJ/kg (IAPWS).
const SLOPE_PER_K: f64 = 0.0351;
/// Ratio of the mass-transfer coefficients of ethanol and water in still air: (D₁/D₂)^(2/3) with diffusivities 1.2
/// and 2.5e-5 m²/s (from memory).
pub const TRANSFER_RATIO: f64 = 0.61;
/// Dry air takes up at most so many times more of the alcohol for each gram of water than air that is saturated.
const DRIEST: f64 = 10.0;

/// How vapour leaves a liquid.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Leaving {
    /// Share of it that rises as bubbles of steam, 0–1; the rest evaporates from the surface.
    pub boiled: f64,
    /// Share of the open vessel's vapour that gets past the lid, 0–1: 1 without a lid.
    pub past_lid: f64,
    /// Vapour pressure of water in the air around, as a share of that at the surface, 0–1.
    pub humidity: f64,
}

/// Volatility of ethanol over water of all that leaves, from that of equilibrium, α.
///
/// Bubbles of steam are in equilibrium with the liquid: α. From an open surface each passes the same still film of air
/// by its own diffusion, ethanol into air that holds none, water into air that holds some: α·0.61/(1 − φ) with the share
/// φ of the surface's vapour pressure that is in the air. Under a lid the air is nearly saturated with both, and what
/// leaves is that air: α. A lid ajar lies between by the share of vapour it lets past. Drops that fall back from a lid
/// are taken to be like the liquid; in truth they are a little weaker, and what leaves a little stronger.
#[must_use]
pub fn volatility(equilibrium: f64, leaving: Leaving) -> f64 {
    let share = |value: f64| if value.is_nan() { 0.0 } else { value.clamp(0.0, 1.0) };
    let (boiled, open) = (share(leaving.boiled), share(leaving.past_lid));
    let film = TRANSFER_RATIO * (1.0 / (1.0 - share(leaving.humidity)).max(1e-9)).min(DRIEST);
    let surface = open * film + (1.0 - open);
    equilibrium * (boiled + (1.0 - boiled) * surface)
}

/// Relative volatility α of ethanol over water at a mole fraction of ethanol in the liquid:
/// α = (γ₁/γ₂)·(p₁/p₂), ln γ₁ = A₁₂/(1 + A₁₂x₁/(A₂₁x₂))², ln γ₂ = A₂₁/(1 + A₂₁x₂/(A₁₂x₁))².
///
/// About 12 in a weak broth, 1 near the azeotrope. The ratio of masses in vapour and liquid obeys the same α.
#[must_use]
pub fn relative_volatility(mole_fraction: f64) -> f64 {
    let x1 = mole_fraction.clamp(1e-9, 1.0 - 1e-9);
    let x2 = 1.0 - x1;
    let (a12, a21) = VAN_LAAR;
    let (r1, r2) = (1.0 + a12 * x1 / (a21 * x2), 1.0 + a21 * x2 / (a12 * x1));
    libm::exp(a12 / (r1 * r1) - a21 / (r2 * r2)) * PRESSURE_RATIO
}

/// Mole fraction of ethanol in so many kilograms of water and ethanol.
#[must_use]
pub fn mole_fraction(water_kg: f64, alcohol_kg: f64) -> f64 {
    let (water, alcohol) = (water_kg.max(0.0) / 18.015, alcohol_kg.max(0.0) / 46.068);
    if water + alcohol > 0.0 {
        alcohol / (water + alcohol)
    } else {
        0.0
    }
}

/// How much ethanol lowers the boiling point, kelvins: at the bubble point p₂(T) = p/γ-weighted sum, so
/// ΔT = ln(1 + (α − 1)·x)/(d ln p/dT); at most 22 K (ethanol itself boils at 78 °C).
#[must_use]
pub fn boiling_depression_k(water_kg: f64, alcohol_kg: f64) -> f64 {
    let x = mole_fraction(water_kg, alcohol_kg);
    if x <= 0.0 {
        return 0.0;
    }
    (libm::log(1.0 + (relative_volatility(x) - 1.0).max(0.0) * x) / SLOPE_PER_K).clamp(0.0, 22.0)
}

/// Ethanol left, kilograms, when water goes from one mass to another and the vapour is in equilibrium with the
/// liquid (Rayleigh): m₁ = m₀·(w₁/w₀)^α.
#[must_use]
pub fn left_after(alcohol_kg: f64, water_before_kg: f64, water_after_kg: f64, volatility: f64) -> f64 {
    if alcohol_kg <= 0.0 || water_before_kg <= 0.0 || water_after_kg >= water_before_kg {
        return alcohol_kg.max(0.0);
    }
    alcohol_kg * libm::pow((water_after_kg / water_before_kg).max(0.0), volatility)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Vapour–liquid equilibrium of ethanol and water at 101.3 kPa (handbook table, from memory: liquid mole fraction,
    /// vapour mole fraction, boiling point); recalled inputs, so ten per cent on the vapour and 1 K.
    #[test]
    fn equilibrium_at_atmospheric_pressure() {
        for (x, y, boil) in [
            (0.019, 0.17, 95.5),
            (0.0721, 0.389, 89.0),
            (0.0966, 0.4375, 86.7),
            (0.1661, 0.5089, 84.1),
        ] {
            let alpha = relative_volatility(x);
            let got = alpha * x / (1.0 + (alpha - 1.0) * x);
            assert!((got / y - 1.0).abs() < 0.1, "{x}: {got}");
            let (water, alcohol) = ((1.0 - x) * 18.015, x * 46.068);
            let lowered = 100.0 - boiling_depression_k(water, alcohol);
            assert!((lowered - boil).abs() < 1.0, "{x}: {lowered}");
        }
    }

    /// Hand arithmetic at α = 12 and D ratio 0.61: 12 · 0.61 = 7.32 in dry air; 12 under a lid and as steam; half steam,
    /// half into air of half the surface's vapour: 12 · (½ + ½ · 0.61/0.5) = 13.32.
    #[test]
    fn volatility_of_what_leaves() {
        let leaves = |boiled, past_lid, humidity| {
            volatility(
                12.0,
                Leaving {
                    boiled,
                    past_lid,
                    humidity,
                },
            )
        };
        assert!((leaves(0.0, 1.0, 0.0) - 7.32).abs() < 1e-9);
        assert!((leaves(1.0, 1.0, 0.0) - 12.0).abs() < 1e-9);
        assert!((leaves(0.0, 0.0, 0.0) - 12.0).abs() < 1e-9);
        assert!((leaves(0.5, 1.0, 0.5) - 13.32).abs() < 1e-9);
        // Air as damp as the surface, and nonsense, stay finite.
        assert!((leaves(0.0, 1.0, 1.0) - 73.2).abs() < 1e-9);
        assert!(leaves(f64::NAN, f64::NAN, f64::NAN).is_finite());
    }

    #[test]
    fn ends() {
        assert_eq!(boiling_depression_k(1.0, 0.0), 0.0);
        assert_eq!(left_after(0.1, 1.0, 1.0, 12.0), 0.1);
        assert_eq!(left_after(0.1, 1.0, 0.0, 12.0), 0.0);
        assert_eq!(mole_fraction(0.0, 0.0), 0.0);
    }
}
