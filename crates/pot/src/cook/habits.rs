//! How pieces behave: what the larder says of a food, read once at the draw.

use potwright_larder::{Hazard, Kind};

use crate::Pieces;
use crate::cook::practice;
use crate::physics::softening::time_multiple;

/// How pieces behave, read once at the draw.
#[derive(Clone, Copy, Debug)]
pub(super) struct Habits {
    pub(super) hazard: Option<Hazard>,
    /// Seconds at 100 °C until tender, and activation energy, kJ/mol.
    pub(super) softens: Option<(f64, f64)>,
    pub(super) uptake: Option<Uptake>,
    /// Share of the water shed.
    pub(super) sheds: f64,
    /// Share of the fat rendered.
    pub(super) renders: f64,
    /// Share that disperses.
    pub(super) falls_apart: f64,
    /// Flesh sheds its juice in liquid too; plants only where they are not under liquid.
    pub(super) flesh: bool,
    /// Beans, peas, lentils: what they are soaked and boiled in decides how soon they soften.
    pub(super) pulse: bool,
}

/// Uptake of water.
#[derive(Clone, Copy, Debug)]
pub(super) struct Uptake {
    /// Kilograms in all.
    pub(super) capacity_kg: f64,
    /// 1/s at 100 °C.
    pub(super) rate_hot: f64,
    /// 1/s in the cold; none if it does not soak.
    pub(super) rate_cold: Option<f64>,
}

/// Factor by which a spread is read for foods, bounded to a share.
fn share(spread: Option<potwright_measure::Spread>, z: f64) -> f64 {
    spread.map_or(0.0, |spread| spread.at(z)).clamp(0.0, 1.0)
}

pub(super) fn positive(value: f64, otherwise: f64) -> f64 {
    if value.is_finite() && value > 0.0 {
        value
    } else {
        otherwise
    }
}

impl Habits {
    pub(super) fn read(pieces: &Pieces, kind: Kind, edible_kg: f64, z: f64) -> Self {
        let softens = pieces.softens.map(|softens| {
            let seconds = positive(softens.minutes_at_simmer.at(z) * 60.0, 600.0).clamp(1.0, 1e6);
            let activation = softens.activation_kj_mol.clamp(0.0, 400.0);
            (
                seconds / time_multiple(practice::COOKS_SIMMER_C, activation),
                activation,
            )
        });
        let uptake = pieces.absorbs.map(|absorbs| Uptake {
            capacity_kg: absorbs.water_per_gram.at(z).clamp(0.0, 10.0) * edible_kg,
            rate_hot: std::f64::consts::LN_10 / positive(absorbs.minutes_at_boil.at(z) * 60.0, 1200.0),
            rate_cold: absorbs
                .soaking_hours
                .map(|hours| std::f64::consts::LN_10 / positive(hours.at(z) * 3600.0, 28_800.0)),
        });
        Habits {
            hazard: pieces.hazard,
            softens,
            uptake,
            sheds: share(pieces.sheds_water, z),
            renders: share(pieces.renders, z),
            falls_apart: share(pieces.falls_apart, z).min(1.0 - practice::STAYS_WHOLE),
            flesh: matches!(
                kind,
                Kind::Meat | Kind::Bacon | Kind::Sausage | Kind::Poultry | Kind::Fish | Kind::Shellfish | Kind::Egg
            ),
            pulse: kind == Kind::Pulse,
        }
    }
}
