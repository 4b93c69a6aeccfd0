//! Rounding of the EU nutrition declaration: the Commission's guidance on tolerances, December 2012, for Regulation
//! (EU) 1169/2011 (rounding table read in a trade copy), and energy by the factors of its Annex XIV.

use super::{nearest, plain};

/// The rows of an EU label that round alike; all in grams.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash)]
pub enum EuRow {
    /// Fat, carbohydrate, sugars, fibre, protein.
    Gross,
    /// Saturates.
    Saturates,
    /// Salt: sodium times 2.5.
    Salt,
}

/// A raw amount in grams as the label prints it: `5.3 g`, `12 g`, `<0.5 g`, `0 g`.
///
/// What is below a twentieth of the smallest amount that is printed counts as not there.
#[must_use]
pub fn eu_text(row: EuRow, raw_g: f64) -> String {
    let raw_g = if raw_g.is_finite() { raw_g.max(0.0) } else { 0.0 };
    let (negligible_g, words) = match row {
        EuRow::Gross => (0.5, "<0.5 g"),
        EuRow::Saturates => (0.1, "<0.1 g"),
        EuRow::Salt => (0.0125, "<0.01 g"),
    };
    if raw_g <= negligible_g {
        let nothing = raw_g < negligible_g / 20.0;
        return if nothing { "0 g" } else { words }.to_owned();
    }
    // Coarse steps from ten grams (salt: from one), finer ones below.
    let (coarse_from_g, coarse, fine, decimals) = match row {
        EuRow::Gross | EuRow::Saturates => (10.0, 1.0, 0.1, 1),
        EuRow::Salt => (1.0, 0.1, 0.01, 2),
    };
    let step = if raw_g >= coarse_from_g { coarse } else { fine };
    format!("{} g", plain(nearest(raw_g, step), decimals))
}

/// Grams of what gives energy under Annex XIV; carbohydrate without fibre.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
#[expect(missing_docs, reason = "each field is the grams of its name")]
pub struct EuEnergy {
    pub fat_g: f64,
    pub carbohydrate_g: f64,
    pub fibre_g: f64,
    pub protein_g: f64,
    pub acid_g: f64,
    pub alcohol_g: f64,
}

/// Energy as the label prints it, `389 kJ / 93 kcal`: Annex XIV, kJ and kcal per gram: carbohydrate and protein 17
/// and 4, fat 37 and 9, fibre 8 and 2, organic acid 13 and 3, alcohol 29 and 7; to the nearest whole number.
#[must_use]
pub fn eu_energy(of: EuEnergy) -> String {
    let sum = |[starchy, fat, fibre, acid, alcohol]: [f64; 5]| {
        let total = starchy * (of.carbohydrate_g + of.protein_g)
            + fat * of.fat_g
            + fibre * of.fibre_g
            + acid * of.acid_g
            + alcohol * of.alcohol_g;
        nearest(total.max(0.0), 1.0)
    };
    format!(
        "{:.0} kJ / {:.0} kcal",
        sum([17.0, 37.0, 8.0, 13.0, 29.0]),
        sum([4.0, 9.0, 2.0, 3.0, 7.0])
    )
}

#[cfg(test)]
mod tests {
    use super::*;

    /// The guidance's own bands: 10 g and more to 1 g, down to 0.5 g to 0.1 g, then 0 or <0.5; saturates down to
    /// 0.1; salt from 1 g to 0.1, down to 0.0125 to 0.01.
    #[test]
    fn bands() {
        for (row, raw, printed) in [
            (EuRow::Gross, 12.4, "12 g"),
            (EuRow::Gross, 10.5, "11 g"),
            (EuRow::Gross, 9.96, "10 g"),
            (EuRow::Gross, 5.25, "5.3 g"),
            (EuRow::Gross, 0.51, "0.5 g"),
            (EuRow::Gross, 0.5, "<0.5 g"),
            (EuRow::Gross, 0.0, "0 g"),
            (EuRow::Saturates, 0.14, "0.1 g"),
            (EuRow::Saturates, 0.1, "<0.1 g"),
            (EuRow::Salt, 1.25, "1.3 g"),
            (EuRow::Salt, 0.857, "0.86 g"),
            (EuRow::Salt, 0.0126, "0.01 g"),
            (EuRow::Salt, 0.0125, "<0.01 g"),
            (EuRow::Salt, f64::NAN, "0 g"),
        ] {
            assert_eq!(eu_text(row, raw), printed, "{row:?} {raw}");
        }
    }

    /// By hand: 4 g fat, 9 g carbohydrate, 2 g fibre, 5 g protein: 148 + 238 + 16 = 402 kJ, 36 + 56 + 4 = 96 kcal.
    #[test]
    fn energy_by_annex_xiv() {
        let of = EuEnergy {
            fat_g: 4.0,
            carbohydrate_g: 9.0,
            fibre_g: 2.0,
            protein_g: 5.0,
            ..EuEnergy::default()
        };
        assert_eq!(eu_energy(of), "402 kJ / 96 kcal");
    }
}
