//! Body: what thickens the liquid, as so much wheat flour, and the word a cook has for it.
//!
//! A rule of thumb, ours: flour is anchored on the roux ratios of culinary schools, other starches on their kitchen
//! ratios to flour, purées on what their cell walls do.

use potwright_larder::{Kind, StarchKind};
use potwright_pot::{Matter, Process, Stuff, Trace};

use crate::reading::{lot_kg, lot_matter};
use crate::table::rows;
use crate::{Body, BodyWord, Figure, Known, Measure};

const TABLE: &str = include_str!("../data/body.tsv");

/// Starch in wheat flour, gram per gram: carbohydrate 76.31 less fibre 2.7 and sugars 0.27 per 100 g (USDA SR28, NDB
/// 20081, plain white flour).
const FLOUR_STARCH: f64 = 0.7334;

/// Fibre that comes with a gram of starch in wheat flour: 2.7 ÷ 73.34 (the same).
const FLOUR_FIBRE: f64 = 0.0368;

/// Grams of flour that a gram of fibre in the liquid thickens like.
///
/// Set so that a soup of which 22 % is potato purée – the middle of the usual 15 to 30 % (common practice, no source)
/// – has the body of a medium sauce: 3.1 % starch and 0.4 % fibre make 5.9 % flour. To be read within ×/÷ 1.5.
const PUREE_PER_FIBRE: f64 = 6.0;

/// How far the flour ratios of two cooks differ: the thin and the light of two tables, 3.2 and 4.49 %, about their
/// middle.
const FLOUR_WITHIN: f64 = 1.18;

/// How far the rule for purées may be off (common practice, no source).
const PUREE_WITHIN: f64 = 1.5;

/// What thickens a liquid, both in grams of wheat flour for 100 g of the liquid without it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Thickener {
    /// Gelatinised starch.
    pub(crate) starch: f64,
    /// Cell walls of what was puréed or fell apart.
    pub(crate) puree: f64,
}

impl Thickener {
    /// Of the finished liquid of a run.
    pub(crate) fn of(process: &Process, trace: &Trace) -> Self {
        Thickener::in_liquid(&trace.served_liquid, mean_power(process, trace))
    }

    /// Of a liquid whose starch thickens `power` times as much as wheat's.
    fn in_liquid(liquid: &Matter, power: f64) -> Self {
        let gelatinised = liquid.kg(Stuff::GelatinisedStarch);
        let starch = gelatinised + liquid.kg(Stuff::Starch);
        let walls = (liquid.kg(Stuff::Fibre) - FLOUR_FIBRE * starch * power.min(1.0)).max(0.0);
        let thin = liquid.total_kg() - liquid.kg(Stuff::Fat) - starch / FLOUR_STARCH - walls;
        // A dough, or a sauce boiled dry, is all thickener: more than the liquid itself says no more.
        let percent = |kg: f64| if kg > 0.0 { 100.0 * (kg / thin.max(kg)) } else { 0.0 };
        Thickener {
            starch: percent(gelatinised * power / FLOUR_STARCH),
            puree: percent(walls * PUREE_PER_FIBRE),
        }
    }

    /// Both together.
    pub(crate) fn total(self) -> f64 {
        (self.starch + self.puree).min(100.0)
    }

    /// The lowest and the highest it may be by the rules' own uncertainty.
    fn reach(self) -> (f64, f64) {
        (
            self.starch / FLOUR_WITHIN + self.puree / PUREE_WITHIN,
            self.starch * FLOUR_WITHIN + self.puree * PUREE_WITHIN,
        )
    }
}

/// The body of the finished liquid: the central run's thickener and those of the others.
pub(crate) fn body(central: Thickener, others: &[Thickener], has_liquid: bool) -> Body {
    let figure = crate::reading::spread_about(
        central.total(),
        others.iter().map(|run| run.total()),
        Measure::Percent,
        Known::RuleOfThumb,
    )
    .because("flour, or what thickens like it, to 100 of liquid");
    if !has_liquid {
        return Body {
            word: None,
            range: None,
            thickener: Figure {
                known: Known::NotComputed,
                ..figure
            },
        };
    }
    let (low, high) = central.reach();
    let (lowest, highest) = figure.spread.unwrap_or((central.total(), central.total()));
    // The wider of what the draws and what the rules leave open; the two are not added up.
    Body {
        word: Some(word(central.total())),
        range: Some((word(low.min(lowest)), word(high.max(highest)))),
        thickener: figure,
    }
}

/// The word for a thickener in grams of wheat flour for 100 g of liquid.
pub(crate) fn word(thickener: f64) -> BodyWord {
    let reached = |row: &crate::table::Row<'_>| row.number(2).is_some_and(|from| thickener >= from);
    let last = rows(TABLE).filter(reached).last();
    last.and_then(|row| row.word(0)).unwrap_or(BodyWord::Thin)
}

/// Grams of wheat flour that bring a liquid of `liquid_g` grams to a body; nought for the thin one.
///
/// With as much butter it is the roux of the culinary-school table: 6, 8 and 12 oz of flour to the US gallon for
/// light, medium and heavy.
#[must_use]
pub fn flour_for_body_g(liquid_g: f64, body: BodyWord) -> f64 {
    let row = rows(TABLE).find(|row| row.word(0) == Some(body));
    let percent = row.and_then(|row| row.number(1)).unwrap_or(0.0);
    liquid_g.max(0.0) * percent / 100.0
}

/// How much more than wheat's the starch in the liquid thickens: the mean over what each lot gave off.
fn mean_power(process: &Process, trace: &Trace) -> f64 {
    let starch = |matter: &Matter| matter.kg(Stuff::Starch) + matter.kg(Stuff::GelatinisedStarch);
    let (mut given, mut weighted) = (0.0, 0.0);
    for (index, lot) in process.lots.iter().enumerate() {
        let put_in = starch(&lot_matter(process, index, lot_kg(process, trace, index)));
        let here = trace.served_pieces.iter().filter(|pieces| pieces.lot == index);
        let held: f64 = here.map(|pieces| starch(&pieces.matter)).sum();
        let off = (put_in - held).max(0.0);
        given += off;
        weighted += off * power(lot.kind, lot.starch);
    }
    if given > 0.0 { weighted / given } else { 0.0 }
}

/// Thickening by a gram of starch, wheat flour's as one.
///
/// Separated starches stand for flour by kitchen ratios (culinary practice, no source, within ×/÷ 1.5): half as much
/// maize or potato starch, 0.42 of tapioca or arrowroot, at 0.90, 0.83 and 0.87 g of starch a gram. Starch in flours
/// and vegetables counts as wheat's. That of pulses stays in its cells when they are cooked and counts for a quarter,
/// so that 22 % of pulse purée – 3.5 % starch, 0.8 % fibre – makes a medium body as well. A food of which no starch is named has none that thickens, only
/// carbohydrate that was not told apart.
const fn power(kind: Kind, starch: Option<StarchKind>) -> f64 {
    match (kind, starch) {
        (_, None) => 0.0,
        (_, Some(StarchKind::Pulse)) => 0.25,
        (Kind::Flour, Some(StarchKind::Maize)) => FLOUR_STARCH / (0.5 * 0.90),
        (Kind::Flour, Some(StarchKind::Potato)) => FLOUR_STARCH / (0.5 * 0.83),
        (Kind::Flour, Some(StarchKind::Tapioca)) => FLOUR_STARCH / (0.42 * 0.87),
        _ => 1.0,
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::testing;

    /// Culinary-school roux table, light: 6 oz flour and 6 oz butter to the US gallon of 3785 g: to 2.0 l of stock
    /// 2000 · 170.1 ÷ 3785 = 89.9 g of each, within 1 %.
    #[test]
    fn light_soup_body() {
        let flour_g = flour_for_body_g(2000.0, BodyWord::LightCoat);
        assert!((flour_g / 89.9 - 1.0).abs() < 0.01, "{flour_g}");
    }

    /// The same roux, cooked: flour of 73.34 % starch and 2.7 % fibre, butter of 81 % fat and 16 % water (USDA SR28,
    /// NDB 20081 and 01001). It reads 4.49 % back, within 1 %.
    #[test]
    fn the_roux_reads_back_as_light() {
        let liquid = testing::matter(&[
            (Stuff::Water, 2.0 + 0.0899 * (0.1192 + 0.1587)),
            (Stuff::GelatinisedStarch, 0.0899 * 0.7334),
            (Stuff::Fibre, 0.0899 * 0.027),
            (Stuff::Protein, 0.0899 * (0.1033 + 0.0085)),
            (Stuff::Fat, 0.0899 * (0.0098 + 0.8111)),
        ]);
        let found = Thickener::in_liquid(&liquid, 1.0).total();
        assert!((found / 4.49 - 1.0).abs() < 0.01, "{found}");
        assert_eq!(word(found), BodyWord::LightCoat);
    }

    #[test]
    fn words_by_the_tables_anchors() {
        // 8 and 12 oz to the US gallon; 1 and 4 US tbsp of 7.8 g to the cup of 244 g of milk; nothing.
        for (percent, expected) in [
            (5.99, BodyWord::CoatsTheSpoon),
            (8.99, BodyWord::HoldsALine),
            (3.2, BodyWord::LightCoat),
            (12.8, BodyWord::Stands),
            (0.0, BodyWord::Thin),
            (-1.0, BodyWord::Thin),
        ] {
            assert_eq!(word(percent), expected, "{percent}");
        }
    }

    #[test]
    fn ungelatinised_starch_does_not_thicken() {
        let raw = testing::matter(&[(Stuff::Water, 1.0), (Stuff::Starch, 0.05)]);
        assert_eq!(Thickener::in_liquid(&raw, 1.0).total(), 0.0);
    }

    /// What is left of an apple's carbohydrate after sugars and fibre is entered as starch, but does not thicken.
    #[test]
    fn only_named_starches_thicken() {
        let with_starch = |name: &str, starch| {
            let mut lot = testing::lot(name, Kind::Root, 0.1);
            lot.matter = testing::matter(&[(Stuff::Water, 0.08), (Stuff::Starch, 0.02)]);
            lot.starch = starch;
            lot
        };
        let half = [
            with_starch("potato", Some(StarchKind::Potato)),
            with_starch("celeriac", None),
        ];
        let process = testing::process(&half);
        let power = mean_power(&process, &testing::trace(&process));
        assert!((power - 0.5).abs() < 1e-12);
    }

    /// The middle of the usual share of purée, 22 %, of potato (USDA SR28, NDB 11352: 14 % starch, 2.1 % fibre) and of
    /// cooked red lentils (a third of NDB 16144's 47.62 % starch and 10.8 % fibre), is a medium body.
    #[test]
    fn puree_soups_are_of_medium_body() {
        for (starch, fibre, kind) in [(0.031, 0.0046, StarchKind::Potato), (0.0349, 0.0079, StarchKind::Pulse)] {
            let soup = testing::matter(&[
                (Stuff::Water, 0.93),
                (Stuff::Protein, 0.02),
                (Stuff::GelatinisedStarch, starch),
                (Stuff::Fibre, fibre),
            ]);
            let found = Thickener::in_liquid(&soup, power(Kind::Vegetable, Some(kind))).total();
            assert_eq!(word(found), BodyWord::CoatsTheSpoon, "{found}");
        }
    }

    /// Half as much maize starch as flour (kitchen ratio): 30 g of 90 % starch in a litre as 60 g of flour.
    #[test]
    fn maize_starch_counts_twice() {
        let power = power(Kind::Flour, Some(StarchKind::Maize));
        let maize = testing::matter(&[(Stuff::Water, 1.0), (Stuff::GelatinisedStarch, 0.027)]);
        let found = Thickener::in_liquid(&maize, power).starch;
        assert!((found / 6.0 - 1.0).abs() < 0.02, "{found}");
    }
}
