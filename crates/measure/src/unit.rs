//! The units a recipe is written in, and what each holds.

use serde::{Deserialize, Serialize};

use crate::names::NAMES;
use crate::{Exact, factors};

/// Whose cups and spoons are meant: the market a page is written for.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
#[serde(rename_all = "lowercase")]
pub enum Measures {
    /// US customary: cup of 236.5882365 ml.
    Us,
    /// Metric kitchen measures: cup 250, tablespoon 15, teaspoon 5 ml.
    Metric,
    /// Imperial: pint of 568.26125 ml; cup of half a pint; spoons 15 and 5 ml as sold today.
    Imperial,
    /// Australian: cup 250, tablespoon 20, teaspoon 5 ml.
    Australian,
    /// The US labelling measures of 21 CFR 101.9(b)(5)(viii): cup 240, tablespoon 15, teaspoon 5, fluid ounce
    /// 30 ml, ounce 28 g. For labels only.
    UsLabel,
}

/// What a unit measures.
///
/// The small and loose measures of volume (pinch, splash, glass …) have a factor too, with the spread of
/// [`Unit::spread`].
#[derive(Clone, Copy, Debug, PartialEq, Eq, Hash, Serialize, Deserialize)]
pub enum Dimension {
    /// Volume: a factor to millilitres exists once the [`Measures`] are known.
    Volume,
    /// Mass: a factor to grams.
    Mass,
    /// A piece whose weight only the larder knows: a clove, a stick, a can.
    Piece,
}

/// A unit as written on a page. A plain count ('2 onions') has no unit.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
#[expect(missing_docs, reason = "each variant is the unit of its name")]
pub enum Unit {
    Saltspoon,
    Teaspoon,
    Dessertspoon,
    Tablespoon,
    FluidOunce,
    Gill,
    Wineglass,
    Teacup,
    Cup,
    Pint,
    Quart,
    Gallon,
    Peck,
    Millilitre,
    Centilitre,
    Decilitre,
    Litre,
    Drop,
    Dash,
    Pinch,
    Grain,
    Ounce,
    Pound,
    Gram,
    Kilogram,
    Bag,
    Bit,
    Blade,
    Bottle,
    Box,
    Bulb,
    Bunch,
    Can,
    Carton,
    Clove,
    Cube,
    Fillet,
    Glass,
    Glug,
    Handful,
    Head,
    Jar,
    Knob,
    Ladle,
    Leaf,
    Loaf,
    Packet,
    Piece,
    Rasher,
    Rib,
    Shaving,
    Sheet,
    Slice,
    Splash,
    Spoonful,
    Sprig,
    Stalk,
    Stick,
    Strip,
    Thumb,
    Tub,
}

impl Unit {
    /// Every unit, in the order of the enumeration.
    pub const ALL: [Unit; NAMES.len()] = {
        let mut all = [Unit::Teaspoon; NAMES.len()];
        let mut i = 0;
        while i < all.len() {
            all[i] = NAMES[i].unit;
            i += 1;
        }
        all
    };

    /// What the unit measures; the same under all [`Measures`].
    #[must_use]
    pub const fn dimension(self) -> Dimension {
        factors::dimension(self)
    }

    /// What one holds, in millilitres; `None` unless the unit is a volume.
    #[must_use]
    pub fn volume(self, measures: Measures) -> Option<Exact> {
        factors::millilitres(self, measures)
    }

    /// What one weighs, in grams; `None` unless the unit is a mass.
    #[must_use]
    pub fn mass(self, measures: Measures) -> Option<Exact> {
        factors::grams(self, measures)
    }

    /// How far a loose measure may be off, as a factor: the true size lies between `size / spread` and
    /// `size · spread`. 1 for measures that are made to a standard, and for pieces, whose spread the larder knows.
    #[must_use]
    pub const fn spread(self) -> f64 {
        factors::spread(self)
    }

    /// Whether it is a metric unit, whose amounts are written in decimals.
    #[must_use]
    pub const fn is_metric(self) -> bool {
        matches!(
            self,
            Unit::Millilitre | Unit::Centilitre | Unit::Decilitre | Unit::Litre | Unit::Gram | Unit::Kilogram
        )
    }

    /// The name of one: `teaspoon`.
    #[must_use]
    pub const fn name(self) -> &'static str {
        NAMES[self as usize].one
    }

    /// The name of several: `teaspoons`, `leaves`.
    #[must_use]
    pub const fn plural(self) -> &'static str {
        NAMES[self as usize].several
    }

    /// The short form, the same for one and several: `tsp`, `kg`; the name where the trade has none.
    #[must_use]
    pub const fn abbreviation(self) -> &'static str {
        let entry = &NAMES[self as usize];
        if entry.short.is_empty() { entry.one } else { entry.short }
    }

    /// The name as it stands after a number: one or less of it takes the singular (`½ cup`, `1½ cups`).
    #[must_use]
    pub fn written(self, number: Exact) -> &'static str {
        if number > Exact::ONE {
            self.plural()
        } else {
            self.name()
        }
    }
}
