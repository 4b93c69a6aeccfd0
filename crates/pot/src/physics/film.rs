//! Heat transfer at a surface: free convection in air and radiation.

/// Stefan–Boltzmann constant, W/(m²·K⁴) (CODATA 2018, exact).
const STEFAN_BOLTZMANN: f64 = 5.670_374_419e-8;
/// Standard gravity, m/s².
const GRAVITY: f64 = 9.806_65;
/// Specific gas constants of dry air and water vapour, kJ/(kg·K).
const GAS_AIR: f64 = 0.287_05;
const GAS_VAPOUR: f64 = 0.461_52;
/// Prandtl number of air, 0–150 °C.
#[cfg(test)]
const PRANDTL: f64 = 0.7;

/// Air at a film temperature.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Air {
    /// Density, kg/m³.
    pub density: f64,
    /// Conductivity, W/(m·K).
    pub conductivity: f64,
    /// Kinematic viscosity, m²/s.
    pub viscosity: f64,
    /// Thermal diffusivity, m²/s.
    pub diffusivity: f64,
    /// Specific heat, J/(kg·K).
    pub specific_heat: f64,
}

impl Air {
    /// Dry air at a temperature in °C and a pressure in kPa: ideal gas; viscosity and conductivity by the formulas of
    /// the US Standard Atmosphere 1976, μ = 1.458e-6·T^1.5/(T + 110.4), k = 2.64638e-3·T^1.5/(T + 245.4·10^(−12/T)).
    #[must_use]
    pub fn at(temp_c: f64, pressure_kpa: f64) -> Self {
        let kelvin = temp_c.clamp(-100.0, 600.0) + 273.15;
        let power = kelvin * kelvin.sqrt();
        let density = pressure_kpa.max(1.0) / (GAS_AIR * kelvin);
        let conductivity = 2.646_38e-3 * power / (kelvin + 245.4 * libm::exp(-12.0 / kelvin * std::f64::consts::LN_10));
        let specific_heat = 1006.0;
        Air {
            density,
            conductivity,
            viscosity: 1.458e-6 * power / (kelvin + 110.4) / density,
            diffusivity: conductivity / (density * specific_heat),
            specific_heat,
        }
    }
}

/// Density of moist air, kg/m³, from temperature (°C), pressure and vapour pressure (kPa): two ideal gases.
#[must_use]
pub fn moist_air_density(temp_c: f64, pressure_kpa: f64, vapour_kpa: f64) -> f64 {
    let kelvin = temp_c + 273.15;
    (pressure_kpa - vapour_kpa) / (GAS_AIR * kelvin) + vapour_kpa / (GAS_VAPOUR * kelvin)
}

/// Nusselt number over a hot horizontal surface facing up (McAdams): 0.54·Ra^¼ to 1e7, 0.15·Ra^⅓ above; length is
/// area ÷ perimeter. The correlation is given for 1e4 to 1e11; below, never less than pure conduction's 1.
#[must_use]
pub fn nusselt_surface(rayleigh: f64) -> f64 {
    let rayleigh = rayleigh.max(0.0);
    let nusselt = if rayleigh < 1e7 {
        0.54 * rayleigh.sqrt().sqrt()
    } else {
        0.15 * libm::cbrt(rayleigh)
    };
    nusselt.max(1.0)
}

/// Nusselt number at a vertical wall (Churchill & Chu 1975), any Rayleigh number to 1e12:
/// Nu = {0.825 + 0.387·Ra^(1/6)/[1 + (0.492/Pr)^(9/16)]^(8/27)}².
#[must_use]
pub fn nusselt_wall(rayleigh: f64) -> f64 {
    // [1 + (0.492/0.7)^(9/16)]^(8/27) for the Prandtl number of air.
    const DENOMINATOR: f64 = 1.194_166_031_207_053;
    let root = 0.825 + 0.387 * libm::cbrt(rayleigh.max(0.0)).sqrt() / DENOMINATOR;
    root * root
}

/// Rayleigh number from a relative difference of density Δρ/ρ over a length in metres.
#[must_use]
pub fn rayleigh(air: &Air, density_difference: f64, length_m: f64) -> f64 {
    GRAVITY * density_difference.abs() * length_m * length_m * length_m / (air.viscosity * air.diffusivity)
}

/// Convection coefficient at a vertical wall, W/(m²·K): temperatures in °C, height in metres, pressure in kPa.
#[must_use]
pub fn wall_convection(wall_c: f64, air_c: f64, height_m: f64, pressure_kpa: f64) -> f64 {
    let film_c = 0.5 * (wall_c + air_c);
    let air = Air::at(film_c, pressure_kpa);
    let height = height_m.max(0.01);
    let difference = (wall_c - air_c) / (film_c + 273.15);
    nusselt_wall(rayleigh(&air, difference, height)) * air.conductivity / height
}

/// Radiation between a grey surface and wide surroundings, W/m²: ε·σ·(T⁴ − Tₐ⁴); temperatures in °C.
#[must_use]
pub fn radiation_w_m2(emissivity: f64, surface_c: f64, surroundings_c: f64) -> f64 {
    let fourth = |celsius: f64| {
        let square = (celsius + 273.15) * (celsius + 273.15);
        square * square
    };
    emissivity * STEFAN_BOLTZMANN * (fourth(surface_c) - fourth(surroundings_c))
}

/// The same per kelvin of difference, W/(m²·K): ε·σ·(T² + Tₐ²)·(T + Tₐ).
#[must_use]
pub fn radiation_w_m2k(emissivity: f64, surface_c: f64, surroundings_c: f64) -> f64 {
    let (warm, cold) = (surface_c + 273.15, surroundings_c + 273.15);
    emissivity * STEFAN_BOLTZMANN * (warm * warm + cold * cold) * (warm + cold)
}

/// The constant in [`nusselt_wall`] reckoned rather than typed.
#[cfg(test)]
fn prandtl_term() -> f64 {
    libm::pow(1.0 + libm::pow(0.492 / PRANDTL, 9.0 / 16.0), 8.0 / 27.0)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Churchill & Chu (1975) at Pr 0.7 and McAdams, reckoned from their equations by an independent library.
    #[test]
    fn correlations() {
        for (ra, nu) in [
            (1e4, 5.425),
            (1e6, 16.530),
            (1e8, 60.949),
            (1e9, 122.615),
            (1e10, 251.770),
        ] {
            assert!(
                (nusselt_wall(ra) / nu - 1.0).abs() < 1e-3,
                "wall {ra}: {}",
                nusselt_wall(ra)
            );
        }
        for (ra, nu) in [(1e4, 5.400), (1e5, 9.603), (1e6, 17.076), (1e8, 69.624), (1e9, 150.0)] {
            assert!((nusselt_surface(ra) / nu - 1.0).abs() < 1e-3, "surface {ra}");
        }
        assert!((prandtl_term() - 1.194_166_031_207_053).abs() < 1e-12);
    }

    /// Stefan–Boltzmann, ε 0.95 to 22 °C.
    #[test]
    fn radiation() {
        for (t, expected) in [(60.0, 254.8), (80.0, 429.1), (95.0, 580.7)] {
            assert!((radiation_w_m2(0.95, t, 22.0) / expected - 1.0).abs() < 1e-3);
            assert!((radiation_w_m2k(0.95, t, 22.0) * (t - 22.0) / expected - 1.0).abs() < 1e-3);
        }
    }

    /// Air at 300 K and 101.325 kPa, any heat-transfer text: k 0.0263 W/(m·K), ν 15.9e-6 m²/s (from memory, 2 %).
    #[test]
    fn air() {
        let air = Air::at(26.85, 101.325);
        assert!((air.conductivity / 0.0263 - 1.0).abs() < 0.02, "{}", air.conductivity);
        assert!((air.viscosity / 15.9e-6 - 1.0).abs() < 0.02, "{}", air.viscosity);
    }
}
