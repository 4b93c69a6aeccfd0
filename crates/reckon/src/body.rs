//! Body: what thickens the liquid, as so much wheat flour, and the word a cook has for it.
//!
//! A rule of thumb, ours: flour is anchored on the roux ratios of culinary schools, other starches on their kitchen
//! ratios to flour, purées on what their cell walls do, fine drops of fat on what they do to a liquid's viscosity.

use potwright_larder::{Kind, StarchKind};
use potwright_pot::physics::viscosity;
use potwright_pot::{Doing, Matter, Process, Stuff, Trace};

use crate::reading::{lot_kg, lot_matter};
use crate::table::{Table, rows};
use crate::{Body, BodyWord, Figure, Known, Measure};

static TABLE: Table = Table::of(include_str!("../data/body.tsv"));

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

/// Starch that simmers on thins, and no table says how soon: what it may have lost after a long boil, and the minutes
/// from which and to which that grows (common practice, no source).
const BOILED_WITHIN: f64 = 1.5;
const BOILED_MIN: (f64, f64) = (20.0, 120.0);

/// A liquid hotter than this boils its starch on, °C; less starch in it than this is no thickener, kilogram per kilogram.
const BOILS_ON_C: f64 = 85.0;
const SOME_STARCH: f64 = 0.003;

/// Serving warmth, at which body is judged, °C, and from where down a dish is served cold (common practice, no source).
const SERVED_C: f64 = 65.0;
const COLD_C: f64 = 40.0;

/// How a body word is to be read: the rule has not been held against a test cook's word for this dish.
pub const HOW_BODY_IS_READ: &str = "Body is judged warm, at 65 °C, and may be a word off either way until a test cook has \
named it; between two versions of a dish half a word. Cold it stands more.";

/// What thickens a liquid, each in grams of wheat flour for 100 g of the liquid without it.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub(crate) struct Thickener {
    /// Gelatinised starch.
    pub(crate) starch: f64,
    /// The part of it that came from flours, 0–1: that of potatoes, grains and pulses is known less well.
    of_flour: f64,
    /// Minutes that the starch boiled on.
    boiled_min: f64,
    /// Cell walls of what was puréed or fell apart.
    pub(crate) puree: f64,
    /// Fine drops of fat: of milk and cream, and of all that was puréed.
    fat: f64,
    /// What cold adds to a dish that is served cold.
    cold: f64,
}

impl Thickener {
    /// Of the finished liquid of a run.
    pub(crate) fn of(process: &Process, trace: &Trace) -> Self {
        let (power, of_flour) = mean_power(process, trace);
        let found = Thickener {
            of_flour,
            boiled_min: boiled_on_min(trace),
            fat: as_flour(viscosity::thicker_by_drops(drops(process, trace))),
            ..Thickener::in_liquid(&trace.served_liquid, power)
        };
        // Water is as thin cold as warm, to a cook.
        if trace.served_c > COLD_C || found.total() < 1.0 {
            return found;
        }
        Thickener {
            cold: as_flour(viscosity::thicker_by_cold(trace.served_c, SERVED_C)),
            ..found
        }
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
            of_flour: 1.0,
            puree: percent(walls * PUREE_PER_FIBRE),
            ..Thickener::default()
        }
    }

    /// Both together.
    pub(crate) fn total(self) -> f64 {
        (self.starch + self.puree + self.fat + self.cold).min(100.0)
    }

    /// The lowest and the highest it may be by the rules' own uncertainty.
    fn reach(self) -> (f64, f64) {
        let (flour, other) = (self.starch * self.of_flour, self.starch * (1.0 - self.of_flour));
        let (from, to) = BOILED_MIN;
        let long = ((self.boiled_min - from) / (to - from)).clamp(0.0, 1.0);
        let boiled = 1.0 + (BOILED_WITHIN - 1.0) * long;
        let rest = other + self.puree + self.fat + self.cold;
        (
            (flour / FLOUR_WITHIN + other / PUREE_WITHIN) / boiled + (rest - other) / PUREE_WITHIN,
            flour * FLOUR_WITHIN + rest * PUREE_WITHIN,
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
    .because(format!(
        "flour, or what thickens like it, to 100 of liquid; {HOW_BODY_IS_READ}"
    ));
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
    let named = word(central.total());
    // The widest of what the draws, the rules and the want of a test cook leave open; they are not added up.
    Body {
        word: Some(named),
        range: Some((
            word(low.min(lowest)).min(beside(named, false)),
            word(high.max(highest)).max(beside(named, true)),
        )),
        thickener: figure,
    }
}

/// The word next to one, thicker or thinner; itself at the ends.
fn beside(word: BodyWord, thicker: bool) -> BodyWord {
    let words: Vec<BodyWord> = rows(&TABLE).filter_map(|row| row.word(0)).collect();
    let place = words.iter().position(|other| *other == word);
    let next = place.and_then(|place| {
        if thicker {
            place.checked_add(1)
        } else {
            place.checked_sub(1)
        }
    });
    next.and_then(|next| words.get(next)).copied().unwrap_or(word)
}

/// How many words thicker one version of a dish is than another: low, central, high. What the rule gets wrong it gets
/// wrong for both, so the difference is good to half a word; none where one of them has no liquid.
#[must_use]
pub fn words_thicker(one: &Body, than: &Body) -> Option<(f64, f64, f64)> {
    (one.word.is_some() && than.word.is_some()).then(|| {
        let difference = on_the_scale(one.thickener.value) - on_the_scale(than.thickener.value);
        (difference - 0.5, difference, difference + 0.5)
    })
}

/// The place of a thickener among the words, 0 at thin and 4 at stands, straight between the table's anchors.
fn on_the_scale(thickener: f64) -> f64 {
    let anchors: Vec<f64> = rows(&TABLE).filter_map(|row| row.number(1)).collect();
    let steps = anchors
        .windows(2)
        .map(|pair| ((thickener - pair[0]) / (pair[1] - pair[0]).max(1e-9)).clamp(0.0, 1.0));
    steps.sum()
}

/// How much flour to 100 of liquid makes it so many times thicker: viscosity grows by the same factor with each percent,
/// from that of water to what coats a spoon at its anchor.
fn as_flour(times_thicker: f64) -> f64 {
    let coats = rows(&TABLE).find(|row| row.word(0) == Some(BodyWord::CoatsTheSpoon));
    let percent = coats.and_then(|row| row.number(1)).unwrap_or(6.0);
    let each = libm::log(viscosity::COATS_PA_S / viscosity::WATER_PA_S) / percent;
    libm::log(times_thicker.max(1e-9)) / each
}

/// Volume share of fine drops of fat in the finished liquid: the fat of milk and cream, all of it once the liquid was
/// blended. Fat weighs nine tenths of what water does.
fn drops(process: &Process, trace: &Trace) -> f64 {
    let liquid = &trace.served_liquid;
    let fat = liquid.kg(Stuff::Fat);
    let blended = process
        .acts
        .iter()
        .any(|act| matches!(act.doing, Doing::Puree(share) if share > 0.5));
    let of_milk: f64 = process
        .lots
        .iter()
        .enumerate()
        .filter(|(_, lot)| lot.kind == Kind::Milk)
        .map(|(index, _)| lot_matter(process, index, lot_kg(process, trace, index)).kg(Stuff::Fat))
        .sum();
    let fine = if blended { fat } else { of_milk.min(fat) };
    let volume = liquid.total_kg() + fine * (1.0 / 0.9 - 1.0);
    if volume > 0.0 { fine / 0.9 / volume } else { 0.0 }
}

/// The longest that starch boiled on in any vessel, minutes.
fn boiled_on_min(trace: &Trace) -> f64 {
    let mut seconds: Vec<f64> = Vec::new();
    for pair in trace.samples.windows(2) {
        for vessel in &pair[1].vessels {
            if vessel.temp_c < BOILS_ON_C || vessel.gelatinised < SOME_STARCH {
                continue;
            }
            if seconds.len() <= vessel.vessel {
                seconds.resize(vessel.vessel + 1, 0.0);
            }
            seconds[vessel.vessel] += (pair[1].time_s - pair[0].time_s).max(0.0);
        }
    }
    seconds.into_iter().fold(0.0, f64::max) / 60.0
}

/// The word for a thickener in grams of wheat flour for 100 g of liquid.
pub(crate) fn word(thickener: f64) -> BodyWord {
    let reached = |row: &crate::table::Row<'_>| row.number(2).is_some_and(|from| thickener >= from);
    let last = rows(&TABLE).filter(reached).last();
    last.and_then(|row| row.word(0)).unwrap_or(BodyWord::Thin)
}

/// Grams of wheat flour that bring a liquid of `liquid_g` grams to a body; nought for the thin one.
///
/// With as much butter it is the roux of the culinary-school table: 6, 8 and 12 oz of flour to the US gallon for
/// light, medium and heavy.
#[must_use]
pub fn flour_for_body_g(liquid_g: f64, body: BodyWord) -> f64 {
    let row = rows(&TABLE).find(|row| row.word(0) == Some(body));
    let percent = row.and_then(|row| row.number(1)).unwrap_or(0.0);
    liquid_g.max(0.0) * percent / 100.0
}

/// How much more than wheat's the starch in the liquid thickens, the mean over what each lot gave off; and which part of
/// what it does came from flours.
fn mean_power(process: &Process, trace: &Trace) -> (f64, f64) {
    let starch = |matter: &Matter| matter.kg(Stuff::Starch) + matter.kg(Stuff::GelatinisedStarch);
    let (mut given, mut weighted, mut of_flour) = (0.0, 0.0, 0.0);
    for (index, lot) in process.lots.iter().enumerate() {
        let put_in = starch(&lot_matter(process, index, lot_kg(process, trace, index)));
        let here = trace.served_pieces.iter().filter(|pieces| pieces.lot == index);
        let held: f64 = here.map(|pieces| starch(&pieces.matter)).sum();
        let off = (put_in - held).max(0.0);
        given += off;
        let thickens = off * power(lot.kind, lot.starch);
        weighted += thickens;
        if lot.kind == Kind::Flour {
            of_flour += thickens;
        }
    }
    let share = |part: f64, whole: f64| if whole > 0.0 { part / whole } else { 0.0 };
    (share(weighted, given), share(of_flour, weighted))
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
        let (power, of_flour) = mean_power(&process, &testing::trace(&process));
        assert_eq!(of_flour, 0.0);
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

    fn of_percent(thickener: f64) -> Body {
        let central = Thickener {
            starch: thickener,
            of_flour: 1.0,
            ..Thickener::default()
        };
        body(central, &[], true)
    }

    /// A roux of 6 and one of 8 oz to the US gallon, 4.49 and 5.99 %, are the anchors of two words that stand next to each
    /// other: a word apart, give or take a half. Each for itself may be a word off.
    #[test]
    fn absolute_words_are_less_sure_than_differences() {
        let (light, medium) = (of_percent(4.49), of_percent(5.99));
        let (low, middle, high) = words_thicker(&medium, &light).unwrap();
        assert!((middle - 1.0).abs() < 1e-9 && (low - 0.5).abs() < 1e-9 && (high - 1.5).abs() < 1e-9);
        assert_eq!(light.range, Some((BodyWord::Thin, BodyWord::CoatsTheSpoon)));
        assert_eq!(medium.range, Some((BodyWord::LightCoat, BodyWord::HoldsALine)));
        assert!(
            light
                .thickener
                .because
                .as_ref()
                .is_some_and(|because| because.contains("test cook"))
        );
        assert_eq!(words_thicker(&body(Thickener::default(), &[], false), &light), None);
    }

    /// Long boiling, potatoes and purées widen the range downwards or both ways; they do not move the word.
    #[test]
    fn bands() {
        let flour = Thickener {
            starch: 6.0,
            of_flour: 1.0,
            ..Thickener::default()
        };
        let boiled = Thickener {
            boiled_min: 180.0,
            ..flour
        };
        let potato = Thickener { of_flour: 0.0, ..flour };
        // 6 ÷ 1.18 = 5.08, and 1.5 times less after hours: 3.39; potato 6 ÷ 1.5 = 4 to 6 · 1.5 = 9.
        assert!((flour.reach().0 - 5.085).abs() < 0.01 && (boiled.reach().0 - 3.39).abs() < 0.01);
        assert_eq!(boiled.reach().1, flour.reach().1);
        assert!((potato.reach().0 - 4.0).abs() < 1e-9 && (potato.reach().1 - 9.0).abs() < 1e-9);
        assert_eq!(boiled.total(), flour.total());
    }

    /// Cream of 20 % fat: drops of 22 % make it (1 − 0.217/0.64)^−1.6 = 1.94 times thicker (hand arithmetic); water of
    /// 0.43 mPa·s becomes the 0.55 Pa·s that coat a spoon with 5.99 % of flour, a factor of 1.194 a percent on the
    /// logarithm: ln 1.94 ÷ 1.194 = 0.55 % of flour, still thin.
    #[test]
    fn cream_is_a_little_thick() {
        let mut cream = testing::lot("cream", Kind::Milk, 1.0);
        cream.matter = testing::matter(&[(Stuff::Water, 0.8), (Stuff::Fat, 0.2)]);
        let process = testing::process(&[cream]);
        let mut trace = testing::trace(&process);
        trace.served_liquid = process.lots[0].matter;
        trace.served_c = 65.0;
        let found = Thickener::of(&process, &trace);
        assert!((found.total() - 0.55).abs() < 0.02, "{found:?}");
        assert_eq!(word(found.total()), BodyWord::Thin);
    }
}
