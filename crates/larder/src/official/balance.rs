//! Bringing a food's parts to 100 g.

use super::{Figures, value};

/// What must make 100 g together.
const PROXIMATES: [&str; 6] = ["water_g", "protein_g", "fat_g", "carbohydrate_g", "ash_g", "alcohol_g"];
/// Off by more than this, a row is balanced.
const OFF_BY_G: f64 = 1.0;

/// Brings the proximates of a food to 100 g by its water; gives the grams of water added when that was more than one.
///
/// The tables of origin analyse each part by itself and footnote such rows. Nothing is changed when water is not
/// determined or would fall below nought.
pub fn balance(figures: &mut Figures) -> Option<f64> {
    let sum: f64 = PROXIMATES.iter().filter_map(|column| value(figures, column)).sum();
    let off = 100.0 - sum;
    let water = figures.first_mut()?.as_mut()?;
    if off.abs() <= OFF_BY_G || *water + off < 0.0 {
        return None;
    }
    *water += off;
    Some(off)
}
