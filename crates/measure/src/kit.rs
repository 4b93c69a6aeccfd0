//! The cups, spoons and scale a kitchen has, and the ladders of sizes that can be measured with them.
//!
//! What rounding may cost, by what is measured (`tests/rounding.rs` holds the kits to it):
//!
//! | measured | range | error at most |
//! | --- | --- | --- |
//! | spoons | below a pinch | up to the pinch |
//! | | a pinch to ¼ tsp | ⅓ |
//! | | ¼ tsp to 1 tbsp | ⅛ tsp |
//! | spoons and cups | 1 tbsp to ½ cup, or to where a jug begins | 1/7 |
//! | cups | ½ cup up, quarts, gallons | 7.5 % |
//! | jug, metric | 60 ml up | 8 % |
//! | jug, imperial | 2 fl oz to ½ pint; up | 12 %; 7 % |
//! | scale, metric | 1 to 100 g; to 1 kg; up | ½ g; 2.5 %; 2.5 % |
//! | scale, ounces | ¼ to 4 oz; up | ⅛ oz; 6.5 % |
//! | things cut | up to 2; up | ⅛ of one; 12.5 % |
//! | things left whole | 1 up | half of one |

use serde::{Deserialize, Serialize};

use crate::rounding::{Ladder, Measured};
use crate::{Exact, Mass, Measures, Volume, rungs};

/// How a kitchen weighs.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Scales {
    /// A scale in grams and the finest step it shows, in grams, more than nought.
    Grams(Exact),
    /// A scale in pounds and ounces, to the quarter ounce.
    Ounces,
}

/// What a kitchen measures with.
#[derive(Clone, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub struct Kit {
    /// Whose cups and spoons they are.
    pub measures: Measures,
    /// The teaspoon sizes in the drawer, in teaspoons.
    pub teaspoons: Vec<Exact>,
    /// The cups in the drawer, in cups; empty where a jug does their work.
    pub cups: Vec<Exact>,
    /// The scale.
    pub scales: Scales,
}

/// Whether a thing counted may be cut.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Pieces {
    /// It can be cut: an onion, a lemon.
    Cut,
    /// It stays whole: an egg, a can.
    Whole,
}

impl Default for Kit {
    fn default() -> Self {
        Kit::of(Measures::Us)
    }
}

impl Kit {
    /// The usual kit of a market (common practice, no source): teaspoons of 1, ½ and ¼ and a tablespoon everywhere;
    /// cups of 1, ½, ⅓ and ¼ in the US and Australia, a jug elsewhere; a scale in ounces in the US and on imperial
    /// pages, in whole grams elsewhere. Labelling measures are no kit: they get the US one.
    #[must_use]
    pub fn of(measures: Measures) -> Self {
        let parts = |below: &[i64]| below.iter().filter_map(|n| Exact::ratio(1, *n)).collect::<Vec<_>>();
        let (measures, cups, scales) = match measures {
            Measures::Us | Measures::UsLabel => (Measures::Us, parts(&[1, 2, 3, 4]), Scales::Ounces),
            Measures::Australian => (measures, parts(&[1, 2, 3, 4]), Scales::Grams(Exact::ONE)),
            Measures::Metric => (measures, Vec::new(), Scales::Grams(Exact::ONE)),
            Measures::Imperial => (measures, Vec::new(), Scales::Ounces),
        };
        Kit {
            measures,
            teaspoons: parts(&[1, 2, 4]),
            cups,
            scales,
        }
    }

    /// The ladders of this kit; `None` when its scale has a finest step of nought or less, or one too fine to count.
    #[must_use]
    pub fn rounder(&self) -> Option<Rounder> {
        Some(Rounder {
            volumes: rungs::volumes(self)?,
            masses: rungs::masses(self)?,
            cut: rungs::pieces("cut_pieces")?,
            whole: rungs::pieces("whole_pieces")?,
        })
    }
}

/// Rounds to what one kit can measure. Built once for a kit; then each rounding is a search in a short list.
///
/// ```
/// use potwright_measure::{Kit, Volume};
/// let rounder = Kit::default().rounder().ok_or("a kit without a scale")?;
/// let stock = rounder.volume(Volume::from_millilitres(262.0)).ok_or("no volume")?;
/// assert_eq!(stock.to_string(), "1 cup + 2 tbsp");
/// # Ok::<(), &str>(())
/// ```
#[derive(Clone, Debug, PartialEq)]
pub struct Rounder {
    volumes: Ladder,
    masses: Ladder,
    cut: Ladder,
    whole: Ladder,
}

impl Rounder {
    /// The nearest volume that can be measured; `None` for what is not one (below nought, not finite, beyond
    /// counting).
    #[must_use]
    pub fn volume(&self, volume: Volume) -> Option<Measured> {
        self.volumes.nearest(volume.millilitres())
    }

    /// The nearest mass that can be weighed; `None` as for [`Rounder::volume`].
    #[must_use]
    pub fn mass(&self, mass: Mass) -> Option<Measured> {
        self.masses.nearest(mass.grams())
    }

    /// The nearest number of pieces; `None` as for [`Rounder::volume`].
    #[must_use]
    pub fn pieces(&self, number: f64, pieces: Pieces) -> Option<Measured> {
        self.counts(pieces).nearest(number)
    }

    /// The ladder of volumes, sizes in millilitres.
    #[must_use]
    pub fn volumes(&self) -> &Ladder {
        &self.volumes
    }

    /// The ladder of masses, sizes in grams.
    #[must_use]
    pub fn masses(&self) -> &Ladder {
        &self.masses
    }

    /// The ladder of counts, sizes in pieces.
    #[must_use]
    pub fn counts(&self, pieces: Pieces) -> &Ladder {
        match pieces {
            Pieces::Cut => &self.cut,
            Pieces::Whole => &self.whole,
        }
    }
}
