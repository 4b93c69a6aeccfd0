//! Evaporation from an open surface below the boil: three published laws, and the bracket they make.
//!
//! Near the boil the laws differ four-fold and no weighing of a domestic pot was found published, so no one of them is
//! right: the rate used is their geometric mean, its spread the bracket, and a kitchen's own weighings move it.

use crate::physics::film::{Air, moist_air_density, nusselt_surface, rayleigh};
use crate::physics::water::saturation_kpa;

/// An open surface of liquid and the air above it.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Surface {
    /// Temperature of the surface, °C.
    pub temp_c: f64,
    /// Diameter, metres.
    pub diameter_m: f64,
    /// Temperature of the air, °C.
    pub air_c: f64,
    /// Pressure of water vapour in the air, kPa.
    pub vapour_kpa: f64,
    /// Pressure of the air, kPa.
    pub pressure_kpa: f64,
}

/// Rates of evaporation by the three laws, kg/(h·m²), and the convection coefficient they share.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Bracket {
    /// Carrier's pool formula for still air, 0.089·(pw − pa)/L (from memory).
    pub carrier: f64,
    /// Linear in the difference of vapour densities, Lewis' analogy.
    pub linear: f64,
    /// Stefan's diffusion through stagnant air, log-mean: the upper bound.
    pub stefan: f64,
    /// Convection coefficient over the surface, W/(m²·K).
    pub convection_w_m2k: f64,
}

/// Diffusivity of water vapour in air at 101.325 kPa, m²/s: 2.26e-5·(T/273.15)^1.81 (boundary-layer texts, from
/// memory); inversely as the pressure.
fn vapour_diffusivity(film_c: f64, pressure_kpa: f64) -> f64 {
    2.26e-5 * libm::pow((film_c + 273.15) / 273.15, 1.81) * 101.325 / pressure_kpa
}

impl Surface {
    fn surface_kpa(&self) -> f64 {
        saturation_kpa(self.temp_c).min(0.93 * self.pressure_kpa.max(10.0))
    }

    fn convection(&self, air: &Air) -> f64 {
        let pressure = self.pressure_kpa.max(10.0);
        let length = (self.diameter_m / 4.0).max(1e-3);
        let buoyancy = moist_air_density(self.air_c, pressure, self.vapour_kpa)
            - moist_air_density(self.temp_c, pressure, self.surface_kpa());
        let nusselt = nusselt_surface(rayleigh(air, buoyancy / air.density, length));
        nusselt * air.conductivity / length
    }

    /// The convection coefficient of [`Surface::bracket`] alone, W/(m²·K).
    #[must_use]
    pub fn convection_w_m2k(&self) -> f64 {
        let air = Air::at(0.5 * (self.temp_c + self.air_c), self.pressure_kpa.max(10.0));
        self.convection(&air)
    }

    /// The three laws at this surface; `latent_j_kg` is the latent heat at its temperature. Nothing condenses: a
    /// surface colder than the dew point evaporates nothing.
    ///
    /// Convection by McAdams with the length area ÷ perimeter and the Rayleigh number of the moist air's densities;
    /// mass transfer h/(ρ·cp·Le^⅔). The vapour pressure at the surface is held below 0.93 of the air's, where
    /// Stefan's law runs to infinity: at the boil the energy balance rules, not these laws.
    #[must_use]
    pub fn bracket(&self, latent_j_kg: f64) -> Bracket {
        let pressure = self.pressure_kpa.max(10.0);
        let surface_kpa = self.surface_kpa();
        let film_c = 0.5 * (self.temp_c + self.air_c);
        let air = Air::at(film_c, pressure);
        let convection = self.convection(&air);
        let drive_kpa = surface_kpa - self.vapour_kpa;
        if drive_kpa <= 0.0 {
            return Bracket {
                convection_w_m2k: convection,
                ..Bracket::default()
            };
        }
        let lewis = air.diffusivity / vapour_diffusivity(film_c, pressure);
        let transfer_m_s = convection / (air.density * air.specific_heat * libm::cbrt(lewis * lewis));
        let gas = |kpa: f64, celsius: f64| kpa / (0.461_52 * (celsius + 273.15));
        let density_drive = gas(surface_kpa, self.temp_c) - gas(self.vapour_kpa, self.air_c);
        let log_drive = libm::log((pressure - self.vapour_kpa) / (pressure - surface_kpa));
        Bracket {
            carrier: 3600.0 * 0.089 * 1000.0 * drive_kpa / latent_j_kg,
            linear: 3600.0 * transfer_m_s * density_drive.max(0.0),
            stefan: 3600.0 * transfer_m_s * gas(pressure, film_c) * log_drive,
            convection_w_m2k: convection,
        }
    }
}

impl Bracket {
    /// Geometric mean of the three laws, kg/(h·m²).
    #[must_use]
    pub fn mean(&self) -> f64 {
        libm::cbrt(self.carrier * self.linear * self.stefan)
    }

    /// What a kitchen's factor comes to at this surface. It is understood at a bare simmer: where the laws agree better, a
    /// kitchen is further from none of them. f' = f^(w/w₉₅) with w the half width of the bracket, ln(high/low)/2, and
    /// w₉₅ = 0.68 that at 95 °C.
    #[must_use]
    pub fn moved_by(&self, factor: f64) -> f64 {
        let (low, high) = (self.low(), self.high());
        if factor == 1.0 || low <= 0.0 {
            return 1.0;
        }
        let width = 0.5 * libm::log(high / low) / HALF_WIDTH_AT_SIMMER;
        libm::pow(factor.max(0.0), width.clamp(0.0, 1.0))
    }

    /// The least of the three.
    #[must_use]
    pub fn low(&self) -> f64 {
        self.carrier.min(self.linear).min(self.stefan)
    }

    /// The greatest of the three.
    #[must_use]
    pub fn high(&self) -> f64 {
        self.carrier.max(self.linear).max(self.stefan)
    }
}

/// Half the logarithm of 2.074/0.532, the published bracket of a 24 cm pot at 95 °C.
const HALF_WIDTH_AT_SIMMER: f64 = 0.68;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::physics::water::latent_heat;

    /// Diameter m, water °C, then kg/h by Carrier, linear and Stefan laws and the convection coefficient; air 22 °C,
    /// half saturated, 101.325 kPa. Reckoned by an independent program from the same three published laws; four per cent
    /// between them, for that program has the properties of air by another formula.
    const ROWS: [(f64, f64, [f64; 3], f64); 15] = [
        (0.2, 40.0, [0.025, 0.030, 0.033], 6.575),
        (0.2, 60.0, [0.080, 0.110, 0.133], 8.132),
        (0.2, 80.0, [0.201, 0.312, 0.465], 9.528),
        (0.2, 90.0, [0.304, 0.497, 0.946], 10.280),
        (0.2, 95.0, [0.369, 0.622, 1.508], 10.682),
        (0.24, 40.0, [0.037, 0.041, 0.045], 6.282),
        (0.24, 60.0, [0.114, 0.152, 0.182], 7.770),
        (0.24, 80.0, [0.289, 0.430, 0.640], 9.104),
        (0.24, 90.0, [0.437, 0.684, 1.302], 9.822),
        (0.24, 95.0, [0.532, 0.855, 2.074], 10.206),
        (0.3, 40.0, [0.057, 0.061, 0.066], 5.941),
        (0.3, 60.0, [0.179, 0.225, 0.269], 7.348),
        (0.3, 80.0, [0.452, 0.635, 0.945], 8.610),
        (0.3, 90.0, [0.683, 1.011, 1.924], 9.289),
        (0.3, 95.0, [0.831, 1.264, 3.065], 9.653),
    ];

    fn surface(diameter_m: f64, temp_c: f64) -> Surface {
        let vapour_kpa = 0.5 * saturation_kpa(22.0);
        Surface {
            temp_c,
            diameter_m,
            air_c: 22.0,
            vapour_kpa,
            pressure_kpa: 101.325,
        }
    }

    #[test]
    fn inside_the_published_bracket() {
        for (diameter, t, laws, convection) in ROWS {
            let bracket = surface(diameter, t).bracket(latent_heat(t));
            let area = std::f64::consts::PI * diameter * diameter / 4.0;
            assert!(
                (bracket.convection_w_m2k / convection - 1.0).abs() < 0.04,
                "{}",
                bracket.convection_w_m2k
            );
            for (got, expected) in [bracket.carrier, bracket.linear, bracket.stefan].into_iter().zip(laws) {
                // Three printed digits at most: half a unit of the last beside four per cent.
                let off = (got * area - expected).abs();
                assert!(
                    off < 0.04 * expected + 0.0005,
                    "{diameter} m, {t}: {} for {expected}",
                    got * area
                );
            }
            let mean = bracket.mean() * area;
            assert!(laws[0] < mean && mean < laws[2], "{diameter} m, {t}: {mean}");
        }
    }

    #[test]
    fn a_factor_moves_little_where_the_laws_agree() {
        let (warm, simmer) = (surface(0.24, 50.0), surface(0.24, 95.0));
        let moved = |s: Surface| s.bracket(latent_heat(s.temp_c)).moved_by(2.0);
        assert!(moved(warm) < 1.4 && moved(simmer) > 1.9);
    }

    #[test]
    fn nothing_condenses() {
        let cold = surface(0.24, 4.0).bracket(latent_heat(4.0));
        assert_eq!(cold.mean(), 0.0);
    }
}
