//! The units a recipe is written in, and what each holds.

use serde::{Deserialize, Serialize};

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
    Teaspoon,
    Dessertspoon,
    Tablespoon,
    FluidOunce,
    Gill,
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
