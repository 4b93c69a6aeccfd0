//! What the larder knows of the food on a line, as far as re-measuring it asks.

use potwright_larder::{Fit, Food, Hints, Kind, Larder, State};
use potwright_manuscript::{Ingredient, Item, Size};

/// The food an amount is of.
#[derive(Clone, Debug, Default)]
pub(super) struct Known<'a> {
    /// The food; none when the larder is not sure of the name.
    pub(super) food: Option<&'a Food>,
    /// Whether it is measured as a liquid; none when that is not known.
    pub(super) liquid: Option<bool>,
    /// Whether it is a drink that is sold by the bottle, whichever of the foods that bear its name is meant.
    pub(super) drink: bool,
    /// The words of the cut: `finely chopped`.
    pub(super) cut: String,
    /// `small`, `medium`, `large` or empty.
    pub(super) size: &'static str,
}

impl<'a> Known<'a> {
    /// The food of an item of a line. Where several foods share the amount, give the first: only what holds for a
    /// food the line names alone is used.
    pub(super) fn of(larder: &'a Larder, line: &Ingredient, item: Option<&Item>) -> Known<'a> {
        let Some(item) = item else { return Known::default() };
        let cut = line
            .preparation
            .as_ref()
            .map_or(String::new(), |words| words.text.clone());
        let quantity = line.quantity;
        let hints = Hints {
            state: &item.state,
            preparation: &cut,
            unit: quantity.and_then(|quantity| quantity.unit),
            counted: quantity.is_some_and(|quantity| quantity.unit.is_none()),
            market: None,
        };
        let found = larder.find(&item.name, &hints);
        let best = found.best.and_then(|id| larder.get(id));
        // A name several foods may bear ('stock', 'cream') is a liquid when all of them are.
        let rivals = found.rivals.iter().filter_map(|(id, _)| larder.get(*id));
        let foods: Vec<&Food> = best.into_iter().chain(rivals).collect();
        let kinds: Vec<bool> = foods.iter().copied().map(is_liquid).collect();
        let agreed = kinds
            .first()
            .copied()
            .filter(|first| kinds.iter().all(|kind| kind == first));
        let alone = line.items.len() == 1;
        Known {
            food: best.filter(|_| found.sure && alone),
            liquid: if found.sure { best.map(is_liquid) } else { agreed },
            drink: match best {
                Some(food) if found.sure => is_drink(food.kind),
                _ => !foods.is_empty() && foods.iter().all(|food| is_drink(food.kind)),
            },
            cut,
            size: match line.size {
                Some(Size::Small) => "small",
                Some(Size::Medium) => "medium",
                Some(Size::Large) => "large",
                _ => "",
            },
        }
    }

    /// Something poured of which nothing else is known.
    pub(super) fn liquid() -> Known<'a> {
        Known {
            liquid: Some(true),
            ..Known::default()
        }
    }

    pub(super) fn kind(&self) -> Option<Kind> {
        self.food.map(|food| food.kind)
    }

    /// Grams to the millilitre as it lies in the cup, and whether that is a guess because the cut is not on record.
    pub(super) fn density(&self) -> Option<(f64, bool)> {
        let heaped = self.food?.density(&self.cut)?;
        let mid = heaped.g_per_ml.mid;
        // What melts or pours lies the same in the cup whatever is said of it.
        let packs =
            matches!(self.kind(), Some(Kind::Fat | Kind::Oil | Kind::Milk | Kind::Stock)) || self.liquid == Some(true);
        (mid.is_finite() && mid > 0.0).then_some((mid, heaped.fit == Fit::OtherCut && !packs))
    }

    /// Grams of so many of a unit or pieces, edible part; none when nothing on record says it.
    pub(super) fn grams_of_one(&self, unit: Option<potwright_measure::Unit>) -> Option<f64> {
        let weighed = self.food?.weight_of(unit, &self.cut, self.size)?;
        Some(weighed.mass_g.mid).filter(|grams| grams.is_finite() && *grams > 0.0)
    }
}

/// Poured, not weighed: drinks, oils, vinegars, milk and cream, and whatever disperses and is mostly water.
fn is_liquid(food: &Food) -> bool {
    /// Grams of water in 100 g above which what disperses is poured, not spooned (common practice, no source: stock
    /// and juices are above 85, tomato purée and mustard below 80).
    const POURED: f64 = 82.0;
    match food.kind {
        Kind::Oil | Kind::Vinegar | Kind::Wine | Kind::Beer | Kind::Spirit | Kind::Water => true,
        Kind::Stock | Kind::Milk => food.state != State::Dried && food.composition.water_g.is_none_or(|g| g > 30.0),
        _ => food.behaviour.disperses && food.composition.water_g.is_some_and(|g| g > POURED),
    }
}

/// Bottled by volume: its ounces are fluid ounces (common practice; a bottle of 12 ounces holds 355 ml).
const fn is_drink(kind: Kind) -> bool {
    matches!(kind, Kind::Wine | Kind::Beer | Kind::Spirit)
}

/// Kinds that US kitchens measure by cup and spoon where other kitchens weigh (common practice, no source); what is
/// cut from a larger piece, meat, fish and cheese are weighed there too.
pub(super) fn spooned_in_the_us(kind: Kind) -> bool {
    matches!(
        kind,
        Kind::Pulse
            | Kind::Grain
            | Kind::Flour
            | Kind::Milk
            | Kind::Fat
            | Kind::Oil
            | Kind::Herb
            | Kind::Spice
            | Kind::Salt
            | Kind::Sugar
            | Kind::Condiment
            | Kind::Vinegar
            | Kind::Wine
            | Kind::Beer
            | Kind::Spirit
            | Kind::Stock
            | Kind::Water
            | Kind::Nut
            | Kind::DriedFruit
            | Kind::Leavening
    )
}

/// Whether half of one is of use: a vegetable or fruit is cut, everything else stays whole.
pub(super) fn is_cut(kind: Option<Kind>) -> bool {
    matches!(
        kind,
        Some(Kind::Vegetable | Kind::Root | Kind::Leaf | Kind::Onion | Kind::Fruit | Kind::Cheese | Kind::Bread)
    )
}
