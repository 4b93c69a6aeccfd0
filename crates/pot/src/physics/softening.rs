//! Softening with time and temperature: only the ratio of times between temperatures is a published relation.

/// Gas constant, J/(mol·K) (CODATA 2018, exact).
const GAS_CONSTANT: f64 = 8.314_462_618;

/// How many times as long it takes at a temperature in °C as at 100 °C, for an activation energy in kJ/mol:
/// t(T)/t(100 °C) = exp[Ea/R·(1/T − 1/373.15)] (Arrhenius). Energies are published between 80 and 120 °C for
/// vegetables; outside, extrapolation.
#[must_use]
pub fn time_multiple(temp_c: f64, activation_kj_mol: f64) -> f64 {
    let inverse = 1.0 / (temp_c.max(-50.0) + 273.15) - 1.0 / 373.15;
    libm::exp(activation_kj_mol * 1000.0 / GAS_CONSTANT * inverse)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Ea of carrot (Mansfield 1974), carrot (Vu 2004), broccoli, beet and green bean as collected by Lee (2017), and
    /// the multiples they imply.
    #[test]
    fn multiples() {
        for (ea, t, multiple) in [
            (159.0, 85.0, 8.5538),
            (159.0, 90.0, 4.1009),
            (159.0, 95.0, 2.0058),
            (159.0, 110.0, 0.2625),
            (117.56, 90.0, 2.8389),
            (117.56, 120.0, 0.1455),
            (54.4, 85.0, 2.0841),
            (54.4, 97.0, 1.1527),
            (142.3, 93.3, 2.3131),
            (142.3, 105.0, 0.5453),
            (171.5, 85.0, 10.1261),
            (171.5, 120.0, 0.0601),
        ] {
            assert!((time_multiple(t, ea) / multiple - 1.0).abs() < 1e-3, "{ea} at {t}");
        }
    }

    /// At 1609.344 m water boils at 94.62 °C: carrots of 20 min at 100 °C take 42.3 min with Ea 159 kJ/mol.
    #[test]
    fn carrots_in_the_mountains() {
        let boil = crate::physics::water::boiling_c(crate::physics::water::air_pressure_kpa(1609.344));
        assert!((boil - 94.62).abs() < 0.05);
        assert!((20.0 * time_multiple(boil, 159.0) / 42.3 - 1.0).abs() < 0.01);
    }
}
