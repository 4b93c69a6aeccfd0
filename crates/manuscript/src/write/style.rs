//! What a house settles about the look of its pages.

use potwright_measure::{Exact, HeatScale, fractions};

/// How this house spells and orders. What it does not settle stays as the writer put it.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct HouseStyle {
    /// How fractions are set.
    pub fractions: Fractions,
    /// In which order several scales of one temperature stand; one that is not named comes last.
    pub temperatures: Vec<HeatScale>,
    /// Whose names foods and packs have.
    pub names: Names,
}

/// How fractions are set.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Fractions {
    /// With the one-letter signs: `1½`.
    #[default]
    Signs,
    /// In figures, for pages without those letters: `1 1/2`.
    Figures,
}

/// Whose names foods and packs have.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub enum Names {
    /// As the writer has them.
    #[default]
    AsTyped,
    /// British: courgette, tin.
    Uk,
    /// American: zucchini, can.
    Us,
}

impl Default for HouseStyle {
    /// Fractions as signs, degrees Celsius first, names as typed.
    fn default() -> Self {
        HouseStyle {
            fractions: Fractions::default(),
            temperatures: vec![HeatScale::Celsius, HeatScale::Fahrenheit, HeatScale::Gas],
            names: Names::default(),
        }
    }
}

impl HouseStyle {
    /// A number as this house sets it.
    pub(super) fn number(&self, number: Exact) -> String {
        match self.fractions {
            Fractions::Signs => fractions::cook(number),
            Fractions::Figures => fractions::ascii(number),
        }
    }

    /// The place of a scale among those of one temperature.
    pub(super) fn rank(&self, scale: HeatScale) -> usize {
        let found = self.temperatures.iter().position(|named| *named == scale);
        found.unwrap_or(self.temperatures.len())
    }
}
