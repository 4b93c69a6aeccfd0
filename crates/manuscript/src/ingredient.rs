//! An ingredient line as read.

use serde::{Deserialize, Serialize};

use crate::{Span, Words};
use potwright_measure::{Amount, Unit};

/// One amount of one food (or of several that share the amount: '½ cup each carrot, turnip').
///
/// A line that names two amounts gives two entries with the same `line`.
#[derive(Clone, Debug, Default, PartialEq, Serialize, Deserialize)]
pub struct Ingredient {
    /// The whole line on the page; several entries may share it.
    pub line: Words,
    /// The part of the line that this entry is about.
    pub span: Span,
    /// Index into [`crate::Recipe::sections`] when the line stands under a heading.
    pub section: Option<usize>,
    /// How much.
    pub quantity: Option<Quantity>,
    /// An amount without a number: 'a few sprigs', 'a little', 'some'; never together with `quantity`.
    pub open: Option<Open>,
    /// The same amount said again in another measure: '225 g / 8 oz', '48 of them (about 1.2 kg)'.
    pub also: Vec<Quantity>,
    /// What one of the count holds or weighs: 'two **400 g** tins', 'a **25-ounce** can', '4 shanks (**350 g** each)'.
    pub package: Option<Quantity>,
    /// Small, medium, large, or a size in centimetres or inches.
    pub size: Option<Size>,
    /// The foods that share this amount; empty for a piece of equipment.
    pub items: Vec<Item>,
    /// Work or temperature that the line itself gives the food: 'finely chopped', 'cold'.
    pub preparation: Option<Words>,
    /// Other foods that may stand in its place.
    pub alternatives: Vec<Alternative>,
    /// The line before ends with 'or': this entry stands in the place of the ingredient of this index.
    pub instead_of: Option<usize>,
    /// '2 litres **of the** stock': it is taken from the ingredient of this index and is no further purchase.
    pub part_of: Option<usize>,
    /// 'optional' stands anywhere on the line.
    pub optional: bool,
    /// 'divided' stands on the line, or the method takes it in parts.
    pub divided: bool,
    /// 'to taste': an amount to be solved for.
    pub to_taste: bool,
    /// 'plus more for dusting': the words after 'plus'.
    pub plus_more: Option<Words>,
    /// 'for serving', 'to garnish': it never goes into the pot.
    pub for_serving: bool,
    /// A pan or a dish that stands on the list.
    pub equipment: bool,
}

/// An amount with its unit, as written.
#[derive(Clone, Copy, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Quantity {
    /// The number or range.
    pub amount: Amount,
    /// The unit; none for a plain count.
    pub unit: Option<Unit>,
    /// Where it stands.
    pub span: Span,
}

/// An amount that the writer left to the cook.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, Deserialize)]
pub struct Open {
    /// The words: 'a few sprigs', 'a little'.
    pub words: Words,
    /// The unit, when they name one.
    pub unit: Option<Unit>,
}

/// A food in the line's own words.
#[derive(Clone, Debug, Default, PartialEq, Eq, Serialize, Deserialize)]
pub struct Item {
    /// Every word before the noun that says which food is bought, in the order 'red onions', misprints mended.
    pub name: String,
    /// Words of state or grade that do not change which food it is: dried, fresh, raw, ground.
    pub state: Vec<String>,
    /// Where the name stands.
    pub span: Span,
}

/// A food that may take the place of the line's own.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
pub struct Alternative {
    /// The other food.
    pub item: Item,
    /// Its own amount, when it has one.
    pub quantity: Option<Quantity>,
}

/// The size of a piece.
#[derive(Clone, Debug, PartialEq, Serialize, Deserialize)]
#[serde(rename_all = "snake_case")]
pub enum Size {
    /// Smaller than usual.
    Small,
    /// Usual.
    Medium,
    /// Larger than usual.
    Large,
    /// An edge or diameter in millimetres, low and high.
    Millimetres(f64, f64),
}
