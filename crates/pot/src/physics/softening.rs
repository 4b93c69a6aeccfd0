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
