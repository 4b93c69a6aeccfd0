//! When milk, yolks and cheese curdle or break: rules with a source, no kinetics.

use potwright_measure::Spread;

/// Share of fat from which cream does not curdle visibly, however sour and hot: the fat's surface then holds most of the
/// casein (a published handbook of kitchen science, 2004: 25 % and more).
pub const SAFE_CREAM_FAT: f64 = 0.25;

/// Temperature at which egg stirred into a liquid curdles, °C: a custard sets at 79 to 83 °C (the same handbook) and is
/// overcooked 3 to 6 K above that (a food-production encyclopaedia).
pub const EGG_CURDLES_C: Spread = Spread {
    low: 82.0,
    mid: 86.0,
    high: 89.0,
};

/// Temperature at which yoghurt, soured cream and buttermilk separate, °C (common practice, no source: stirred in off the
/// boil, 72 to 88 °C).
pub const CULTURED_SEPARATES_C: Spread = Spread {
    low: 72.0,
    mid: 80.0,
    high: 88.0,
};

/// Temperature at which grated cheese in a liquid lets go of its fat and strings, °C (common practice, no source: melted
/// gently and never boiled, 77 to 93 °C).
pub const CHEESE_BREAKS_C: Spread = Spread {
    low: 77.0,
    mid: 85.0,
    high: 93.0,
};

/// Gelatinised starch in the liquid from which yolks, yoghurt and cheese stand a boil, kilogram per kilogram (common
/// practice, no source: a tablespoon of flour to a pint and more, ×/÷ 1.5), and how much more acid milk then bears.
pub const STARCH_PROTECTS: f64 = 0.01;
/// See [`STARCH_PROTECTS`]; common practice, no source, ×/÷ 1.5.
pub const STARCH_BEARS_ACID: f64 = 2.0;

/// What is known of the acid that clots milk, within ×/÷ 1.5 (our reading of what dairy texts give).
pub const CLOTTING_ACID: Spread = Spread::within_factor(1.0, 1.5);
/// Acid and milk are looked at from here up, °C: below it a cook finds them curdled before he cooks, or not at all.
pub const HOT_MILK_C: f64 = 60.0;

/// Citric-acid equivalent of a gram of lactic acid: a third of 192.12 over 90.08 g/mol.
const CITRIC_PER_LACTIC: f64 = 64.04 / 90.08;
/// Protein in milk, gram per gram, and its natural titratable acidity as lactic acid (dairy texts: 0.13 to 0.18 %).
const MILK: (f64, f64) = (0.033, 0.0016);
/// Titratable acidity at which milk clots when it is boiled, gram lactic acid per gram (dairy texts, the clot-on-boiling
/// test: above 0.20 to 0.25 %, one says about 0.3 %), and at 20 °C (pH 4.6, from memory: 0.6 to 0.7 %).
const CLOTS_BOILING: f64 = 0.0023;
const CLOTS_COLD: f64 = 0.0065;

/// Added acid that makes milk clot at a temperature in °C: grams citric-acid equivalent for each gram of milk protein.
///
/// The two ends are the clot-on-boiling test at 100 °C and souring at 20 °C; between them the logarithm runs straight
/// (ours). The buffer of milk goes with its protein, so milk thinned with stock bears as much acid a gram of protein.
#[must_use]
pub fn clotting_acid(temp_c: f64) -> f64 {
    let (protein, natural) = MILK;
    let added = |clots: f64| (clots - natural) / protein * CITRIC_PER_LACTIC;
    let (boiling, cold) = (added(CLOTS_BOILING), added(CLOTS_COLD));
    let share = ((temp_c - 20.0) / 80.0).clamp(0.0, 1.0);
    cold * libm::pow(boiling / cold, share)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Added lactic acid in grams for a hundred of milk, as the ratio the rule takes.
    fn ratio(lactic_percent: f64) -> f64 {
        lactic_percent / 3.3 * 64.04 / 90.08
    }

    /// Dairy texts: fresh milk of 0.18 % (0.02 above the natural 0.16) stands a boil; milk of 0.30 % does not, yet is
    /// still liquid at 20 °C; at 0.7 % it is set in the cold.
    #[test]
    fn sour_milk_clots_on_boiling() {
        assert!(ratio(0.02) < clotting_acid(100.0));
        assert!(ratio(0.14) > clotting_acid(100.0));
        assert!(ratio(0.14) < clotting_acid(20.0));
        assert!(ratio(0.54) > clotting_acid(20.0));
    }

    /// The hotter, the less acid.
    #[test]
    fn heat_helps_acid() {
        let rule: Vec<f64> = (0..12).map(|step| clotting_acid(10.0 * f64::from(step))).collect();
        assert!(rule.windows(2).all(|pair| pair[1] <= pair[0]));
        assert!(clotting_acid(f64::INFINITY) > 0.0);
    }

    /// Curds for fresh cheese are made with 0.15 to 0.2 % of citric acid in milk near 85 °C (from memory, so only by
    /// its sign): more than the rule asks for.
    #[test]
    fn fresh_cheese_is_well_past_it() {
        assert!(0.15 / 3.3 > clotting_acid(85.0));
    }
}
