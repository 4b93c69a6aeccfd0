//! Lethality of heat: equivalent time at a reference temperature, and log reductions from it, over time and over the
//! inside of a piece.
//!
//! A calculation that stands beside the published tables of time and temperature; by itself it passes no verdict. It is
//! about the growing cells of Salmonella and Listeria: spores and toxins stand heat that these do not, and nothing here
//! says anything of them.

use potwright_larder::Hazard;

use crate::physics::conduction::{CELLS, Form, Profile};

/// How growing cells of an organism die off in a food: D = d·10^((T_ref − T)/z) minutes for a decimal reduction.
#[derive(Clone, Copy, Debug, PartialEq, serde::Serialize, serde::Deserialize)]
pub struct Decline {
    /// Reference temperature, °C.
    pub reference_c: f64,
    /// Minutes for one decimal reduction there.
    pub d_min: f64,
    /// Kelvins that change it tenfold.
    pub z_k: f64,
    /// Nothing is counted below: the lowest temperature of the table that the figures come from, °C.
    pub from_c: f64,
}

/// Salmonella in red meat: least squares through the 6.5-log₁₀ column of FSIS Appendix A (1999), cooked and roast beef,
/// 54.4 to 69.4 °C; every row within ten per cent.
pub const SALMONELLA_BEEF: Decline = Decline {
    reference_c: 60.0,
    d_min: 1.77,
    z_k: 5.56,
    from_c: 54.4,
};

/// Salmonella in chicken of 12 % fat: through the two rows of the FSIS time-temperature tables for ready-to-eat poultry
/// that were confirmed, 4884 s at 57.8 °C and 2100 s at 60 °C for 7 log₁₀: D₆₀ = 35 min ÷ 7, z = 4 °F ÷ log₁₀(4884/2100).
/// Above 60 °C extrapolated, on the cautious side: the lean column falls off faster (z 5.4 K from 60 to 71 °C).
pub const SALMONELLA_CHICKEN: Decline = Decline {
    reference_c: 60.0,
    d_min: 5.0,
    z_k: 6.062,
    from_c: 57.8,
};

/// Listeria's reference process, 6 log₁₀ in 2 min at 70 °C (1989 data; MPI Technical Paper 2016/05); z from memory: it
/// carries no verdict.
pub const LISTERIA: Decline = Decline {
    reference_c: 70.0,
    d_min: 1.0 / 3.0,
    z_k: 7.5,
    from_c: 60.0,
};

impl Decline {
    /// What is counted of a hazard's organism, where a confirmed table gives figures: Salmonella in red meat and poultry.
    #[must_use]
    pub fn of(hazard: Hazard) -> Option<Self> {
        match hazard {
            Hazard::WholeMeat | Hazard::MincedMeat => Some(SALMONELLA_BEEF),
            Hazard::Poultry => Some(SALMONELLA_CHICKEN),
            Hazard::Fish
            | Hazard::Crustacean
            | Hazard::Bivalve
            | Hazard::Egg
            | Hazard::KidneyBean
            | Hazard::ReadyToEat => None,
        }
    }

    /// Decimal reductions in so many seconds in which the temperature goes straight from one to the other; nothing below
    /// [`Decline::from_c`].
    #[must_use]
    pub fn reductions(&self, seconds: f64, from_c: f64, to_c: f64) -> f64 {
        let minutes = stretch_minutes((0.0, from_c), (seconds, to_c), self.reference_c, self.z_k, self.from_c);
        log_reduction(minutes, self.d_min)
    }

    /// Decimal reductions over a history of (seconds, °C), straight between its points.
    #[must_use]
    pub fn over(&self, history: &[(f64, f64)]) -> f64 {
        log_reduction(
            equivalent_minutes(history, self.reference_c, self.z_k, self.from_c),
            self.d_min,
        )
    }
}

/// More is not told: twelve decimal reductions leave one in a million million.
pub const MOST_LOG10: f64 = 12.0;

/// Decimal reductions in every cell of a piece.
#[derive(Clone, Debug, PartialEq)]
pub struct Tally {
    /// The organism.
    pub decline: Decline,
    before_c: [f64; CELLS],
    log10: [f64; CELLS],
}

impl Tally {
    /// Nothing counted yet in a piece of one temperature, °C.
    #[must_use]
    pub fn new(decline: Decline, temp_c: f64) -> Self {
        Tally {
            decline,
            before_c: [temp_c; CELLS],
            log10: [0.0; CELLS],
        }
    }

    /// Counts so many seconds in which the cells came to be as warm as they are.
    pub fn count(&mut self, profile: &Profile, seconds: f64) {
        for ((log10, before), &now) in self.log10.iter_mut().zip(&mut self.before_c).zip(&profile.cells_c) {
            if *log10 < MOST_LOG10 && now.max(*before) > self.decline.from_c {
                *log10 = (*log10 + self.decline.reductions(seconds, *before, now)).min(MOST_LOG10);
            }
            *before = now;
        }
    }

    /// At the point that had least of it.
    #[must_use]
    pub fn coldest(&self) -> f64 {
        self.log10.iter().copied().fold(MOST_LOG10, f64::min)
    }

    /// Of the whole piece: what is left of cells spread evenly through it, −log₁₀ Σ vᵢ·10^(−Lᵢ).
    #[must_use]
    pub fn whole(&self, form: Form) -> f64 {
        let shares = Profile::uniform(form, 0.0);
        let left = |(cell, log10): (usize, &f64)| shares.share(cell) * libm::exp(-log10 * std::f64::consts::LN_10);
        let left: f64 = self.log10.iter().enumerate().map(left).sum();
        (-libm::log10(left.max(1e-300))).clamp(0.0, MOST_LOG10)
    }
}

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

    /// The least-squares figures of FSIS Appendix A (1999), 6.5 log₁₀ column, °F and seconds: every row from 54.4 to
    /// 69.4 °C within ten per cent, as stated of the fit; from 57.2 °C on seconds are of the 7-log₁₀ column too.
    const ROAST: [(f64, f64); 28] = [
        (130.0, 6720.0),
        (131.0, 5340.0),
        (132.0, 4260.0),
        (133.0, 3360.0),
        (134.0, 2700.0),
        (135.0, 2160.0),
        (136.0, 1680.0),
        (137.0, 1380.0),
        (138.0, 1080.0),
        (139.0, 900.0),
        (140.0, 720.0),
        (141.0, 540.0),
        (142.0, 480.0),
        (143.0, 360.0),
        (144.0, 300.0),
        (145.0, 240.0),
        (146.0, 169.0),
        (147.0, 134.0),
        (148.0, 107.0),
        (149.0, 85.0),
        (150.0, 67.0),
        (151.0, 54.0),
        (152.0, 43.0),
        (153.0, 34.0),
        (154.0, 27.0),
        (155.0, 22.0),
        (156.0, 17.0),
        (157.0, 14.0),
    ];

    #[test]
    fn every_row_of_the_roast_table() {
        for (fahrenheit, seconds) in ROAST {
            let celsius: f64 = (fahrenheit - 32.0) / 1.8;
            // The table's lowest row is 130 °F, 54.44 °C.
            let minutes = 6.5 / SALMONELLA_BEEF.reductions(60.0, celsius, celsius);
            assert!(
                (minutes * 60.0 / seconds - 1.0).abs() < 0.11,
                "{fahrenheit} F: {minutes} min"
            );
        }
    }

    /// FSIS time-temperature tables for ready-to-eat poultry, chicken of 12 % fat, 7 log₁₀: the rows the figures come
    /// from. And at 136 to 165 °F the leanest bird, whose confirmed times are the shortest: never counted faster than
    /// they say.
    #[test]
    fn rows_of_the_chicken_table() {
        let seconds = |fahrenheit: f64| {
            let celsius = (fahrenheit - 32.0) / 1.8;
            7.0 / SALMONELLA_CHICKEN.reductions(1.0, celsius, celsius)
        };
        // 136 °F is printed as 57.8 °C; its exact 57.78 lies just under what is counted.
        assert!((seconds(136.1) / 4884.0 - 1.0).abs() < 0.03, "{}", seconds(136.1));
        assert!((seconds(140.0) / 2100.0 - 1.0).abs() < 1e-3);
        for (fahrenheit, lean) in [
            (137.0, 3006.0),
            (140.0, 1512.0),
            (145.0, 504.0),
            (150.0, 162.0),
            (155.0, 44.2),
            (160.0, 13.7),
        ] {
            assert!(seconds(fahrenheit) > lean, "{fahrenheit} F: {}", seconds(fahrenheit));
        }
    }

    /// Listeria, six decimal reductions, minutes = 2·10^((70 − T)/7.5), computed from the reference process.
    #[test]
    fn listeria_equivalents() {
        for (celsius, minutes) in [
            (60.0, 43.0887),
            (62.5, 20.0),
            (65.0, 9.2832),
            (67.5, 4.3089),
            (70.0, 2.0),
            (72.5, 0.9283),
            (75.0, 0.4309),
            (80.0, 0.0928),
        ] {
            let found = 6.0 / LISTERIA.reductions(60.0, celsius, celsius);
            assert!((found / minutes - 1.0).abs() < 1e-3, "{celsius}: {found}");
        }
    }

    /// A piece with one cell in two at 60 °C for 12 min, the other colder than is counted: the coldest point has none,
    /// and of the whole what the colder half holds is left. By hand for a slab: half the volume has 12/1.77 = 6.78 log₁₀,
    /// half none: −log₁₀(0.5 + 0.5·10^−6.78) = 0.301.
    #[test]
    fn over_space_and_time() {
        let mut profile = Profile::uniform(Form::Slab, 20.0);
        for cell in CELLS / 2..CELLS {
            profile.cells_c[cell] = 60.0;
        }
        let mut tally = Tally::new(SALMONELLA_BEEF, 20.0);
        tally.count(&profile, 0.0);
        tally.count(&profile, 720.0);
        assert_eq!(tally.coldest(), 0.0);
        assert!(
            (tally.whole(Form::Slab) - libm::log10(2.0)).abs() < 1e-4,
            "{}",
            tally.whole(Form::Slab)
        );
        let outer = SALMONELLA_BEEF.over(&[(0.0, 60.0), (720.0, 60.0)]);
        assert!((outer - 12.0 / 1.77).abs() < 1e-9);
    }
}
