//! How the units are spelled when they are printed. Reading is wider: see `data/units.tsv`.

use crate::Unit;

/// The printed spellings of one unit.
pub(crate) struct Name {
    pub(crate) unit: Unit,
    pub(crate) one: &'static str,
    pub(crate) several: &'static str,
    /// Empty where the trade has no short form.
    pub(crate) short: &'static str,
}

const fn name(unit: Unit, one: &'static str, several: &'static str, short: &'static str) -> Name {
    Name {
        unit,
        one,
        several,
        short,
    }
}

/// One row a unit, in the order of the enumeration: a unit's row is found by its place.
pub(crate) const NAMES: [Name; 61] = [
    name(Unit::Saltspoon, "saltspoon", "saltspoons", ""),
    name(Unit::Teaspoon, "teaspoon", "teaspoons", "tsp"),
    name(Unit::Dessertspoon, "dessertspoon", "dessertspoons", "dsp"),
    name(Unit::Tablespoon, "tablespoon", "tablespoons", "tbsp"),
    name(Unit::FluidOunce, "fluid ounce", "fluid ounces", "fl oz"),
    name(Unit::Gill, "gill", "gills", ""),
    name(Unit::Wineglass, "wineglass", "wineglasses", ""),
    name(Unit::Teacup, "teacup", "teacups", ""),
    name(Unit::Cup, "cup", "cups", ""),
    name(Unit::Pint, "pint", "pints", "pt"),
    name(Unit::Quart, "quart", "quarts", "qt"),
    name(Unit::Gallon, "gallon", "gallons", "gal"),
    name(Unit::Peck, "peck", "pecks", ""),
    name(Unit::Millilitre, "millilitre", "millilitres", "ml"),
    name(Unit::Centilitre, "centilitre", "centilitres", "cl"),
    name(Unit::Decilitre, "decilitre", "decilitres", "dl"),
    name(Unit::Litre, "litre", "litres", "l"),
    name(Unit::Drop, "drop", "drops", ""),
    name(Unit::Dash, "dash", "dashes", ""),
    name(Unit::Pinch, "pinch", "pinches", ""),
    name(Unit::Grain, "grain", "grains", ""),
    name(Unit::Ounce, "ounce", "ounces", "oz"),
    name(Unit::Pound, "pound", "pounds", "lb"),
    name(Unit::Gram, "gram", "grams", "g"),
    name(Unit::Kilogram, "kilogram", "kilograms", "kg"),
    name(Unit::Bag, "bag", "bags", ""),
    name(Unit::Bit, "bit", "bits", ""),
    name(Unit::Blade, "blade", "blades", ""),
    name(Unit::Bottle, "bottle", "bottles", ""),
    name(Unit::Box, "box", "boxes", ""),
    name(Unit::Bulb, "bulb", "bulbs", ""),
    name(Unit::Bunch, "bunch", "bunches", ""),
    name(Unit::Can, "can", "cans", ""),
    name(Unit::Carton, "carton", "cartons", ""),
    name(Unit::Clove, "clove", "cloves", ""),
    name(Unit::Cube, "cube", "cubes", ""),
    name(Unit::Fillet, "fillet", "fillets", ""),
    name(Unit::Glass, "glass", "glasses", ""),
    name(Unit::Glug, "glug", "glugs", ""),
    name(Unit::Handful, "handful", "handfuls", ""),
    name(Unit::Head, "head", "heads", ""),
    name(Unit::Jar, "jar", "jars", ""),
    name(Unit::Knob, "knob", "knobs", ""),
    name(Unit::Ladle, "ladle", "ladles", ""),
    name(Unit::Leaf, "leaf", "leaves", ""),
    name(Unit::Loaf, "loaf", "loaves", ""),
    name(Unit::Packet, "packet", "packets", ""),
    name(Unit::Piece, "piece", "pieces", ""),
    name(Unit::Rasher, "rasher", "rashers", ""),
    name(Unit::Rib, "rib", "ribs", ""),
    name(Unit::Shaving, "shaving", "shavings", ""),
    name(Unit::Sheet, "sheet", "sheets", ""),
    name(Unit::Slice, "slice", "slices", ""),
    name(Unit::Splash, "splash", "splashes", ""),
    name(Unit::Spoonful, "spoonful", "spoonfuls", ""),
    name(Unit::Sprig, "sprig", "sprigs", ""),
    name(Unit::Stalk, "stalk", "stalks", ""),
    name(Unit::Stick, "stick", "sticks", ""),
    name(Unit::Strip, "strip", "strips", ""),
    name(Unit::Thumb, "thumb", "thumbs", ""),
    name(Unit::Tub, "tub", "tubs", ""),
];
