//! Lethality of heat: equivalent time at a reference temperature, and log reductions from it.
//!
//! A calculation that stands beside the published tables of time and temperature; it passes no verdict.

/// Equivalent minutes at a reference temperature, F = ∫ 10^((T − Tref)/z) dt, over a temperature history of
/// (seconds, °C) that is linear between its points; nothing is counted below `from_c`. Each stretch is integrated in
/// closed form: z/(r·ln 10)·[10^((T₂−Tref)/z) − 10^((T₁−Tref)/z)] for a rate r.
#[must_use]
pub fn equivalent_minutes(history: &[(f64, f64)], reference_c: f64, z_k: f64, from_c: f64) -> f64 {
    if z_k <= 0.0 {
        return 0.0;
    }
    history
        .windows(2)
        .map(|pair| stretch_minutes(pair[0], pair[1], reference_c, z_k, from_c))
        .sum()
}

fn stretch_minutes(start: (f64, f64), end: (f64, f64), reference_c: f64, z_k: f64, from_c: f64) -> f64 {
    let minutes = (end.0 - start.0) / 60.0;
    let (low, high) = (start.1.min(end.1), start.1.max(end.1));
    if minutes.is_nan() || minutes <= 0.0 || high < from_c {
        return 0.0;
    }
    let rate = |temp_c: f64| libm::exp((temp_c - reference_c) / z_k * std::f64::consts::LN_10);
    if high - low < 1e-9 {
        return minutes * rate(high);
    }
    let counted = low.max(from_c);
    let per_minute = (high - low) / minutes;
    z_k / (per_minute * std::f64::consts::LN_10) * (rate(high) - rate(counted))
}

/// Decimal reductions for so many equivalent minutes: F/D.
#[must_use]
pub fn log_reduction(equivalent_min: f64, d_min: f64) -> f64 {
    if d_min > 0.0 { equivalent_min / d_min } else { 0.0 }
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Analytic integral of a ramp: 50 + 1.5 °C/min for 20 min, reference 70 °C, z 7.5 K gives 46.7783 min.
    #[test]
    fn ramp() {
        let history = [(0.0, 50.0), (1200.0, 80.0)];
        assert!((equivalent_minutes(&history, 70.0, 7.5, 0.0) / 46.7783 - 1.0).abs() < 1e-3);
    }

    /// T = 20 + 80·(1 − e^(−t/8 min)) for 20 min: 3826.023 min by an independent trapezoid of 200,000 steps.
    #[test]
    fn approach() {
        let history: Vec<(f64, f64)> = (0..=2400)
            .map(|i| f64::from(i) * 0.5)
            .map(|s| (s, 20.0 + 80.0 * (1.0 - libm::exp(-s / 480.0))))
            .collect();
        assert!((equivalent_minutes(&history, 70.0, 7.5, 0.0) / 3826.023 - 1.0).abs() < 1e-3);
    }

    /// Centre 50 + 1.0 °C/min, Listeria reference 70 °C, z 7.5: at 18 min F = 1.7557 min and 5.27 logs, at 20 min
    /// 3.2502 min and 9.75 logs (D 0.333 min: 70 °C for 2 min is the six-log benchmark).
    #[test]
    fn listeria_ramp() {
        for (minutes, f, logs) in [(18.0, 1.7557, 5.27), (20.0, 3.2502, 9.75)] {
            let history = [(0.0, 50.0), (minutes * 60.0, 50.0 + minutes)];
            let got = equivalent_minutes(&history, 70.0, 7.5, 0.0);
            assert!((got / f - 1.0).abs() < 1e-3, "{got}");
            assert!((log_reduction(got, 1.0 / 3.0) - logs).abs() < 0.01);
        }
    }

    /// FSIS Appendix A (1999), roast beef, seconds for 6.5 logs of Salmonella: a model with z 5.56 K and
    /// D₆₀ 1.77 min must lie within ten per cent from 54.4 to 69.4 °C. Temperatures are the table's °F.
    #[test]
    fn roast_beef_table() {
        for (fahrenheit, seconds) in [
            (130.0, 6720.0),
            (135.0, 2160.0),
            (140.0, 720.0),
            (145.0, 240.0),
            (150.0, 67.0),
            (155.0, 22.0),
            (157.0, 14.0),
        ] {
            let celsius = (fahrenheit - 32.0) / 1.8;
            let history = [(0.0, celsius), (seconds, celsius)];
            let logs = log_reduction(equivalent_minutes(&history, 60.0, 5.56, 0.0), 1.77);
            assert!((logs / 6.5 - 1.0).abs() < 0.11, "{fahrenheit} F: {logs}");
        }
    }
}
