//! Many cookings of one dish, each in another kitchen by another cook: what the spreads are taken from, and what each of
//! them hangs on most.

use potwright_larder::Larder;
use potwright_pot::{Draw, Happening, Kitchen, Made, Process, Stuff, Trace};

use crate::hands::by_hands;
use crate::nutrition::energy_kcal;
use crate::reckon::{Given, Ground, reading};
use crate::sampling::Design;
use crate::{Prices, Target};

/// What one cooking came to. Temperatures are NaN where the dish has none of the kind.
#[derive(Clone, Debug, PartialEq)]
pub struct Cooking {
    /// Everything in the vessel, bones and shells too, kilograms.
    pub yield_kg: f64,
    /// Salt in what is eaten, percent of its mass.
    pub salt_percent: f64,
    /// Energy of the whole dish, kilocalories.
    pub energy_kcal: f64,
    /// From the start to the table, minutes.
    pub minutes: f64,
    /// The hottest that any vessel's contents were, °C.
    pub hottest_c: f64,
    /// How hot the centre of the pieces became that stayed coldest, °C.
    pub coldest_c: f64,
    /// What happened, in order of time.
    pub happened: Vec<Happening>,
}

impl Cooking {
    fn of(ground: &Ground<'_>, trace: &Trace) -> Cooking {
        let reading = reading(ground, trace);
        let temps = trace.samples.iter().flat_map(|sample| &sample.vessels);
        let centres = trace.pieces.iter().map(|pieces| pieces.hottest_centre_c);
        Cooking {
            yield_kg: reading.yield_kg,
            salt_percent: reading.percent(Stuff::Salt),
            energy_kcal: energy_kcal(&reading),
            minutes: reading.elapsed_min,
            hottest_c: temps.map(|vessel| vessel.temp_c).fold(f64::NAN, f64::max),
            coldest_c: centres.fold(f64::NAN, f64::min),
            happened: trace.events.iter().map(|event| event.what.clone()).collect(),
        }
    }
}

/// A dish cooked many times.
#[derive(Clone, Debug, PartialEq)]
pub struct Cookings {
    /// What was drawn for each.
    pub draws: Vec<Draw>,
    /// What came of it, in the same order.
    pub cooked: Vec<Cooking>,
}

impl Cookings {
    /// Cooks a process as [`crate::reckon`] does – what is 'to taste' solved once, for the central kitchen – under so many
    /// draws on so many cores. The same process, kitchen, design, count and seed give the same bytes on every machine and
    /// any number of cores.
    #[must_use]
    pub fn of(
        process: Process,
        kitchen: &Kitchen,
        (larder, made): (&Larder, &[Made]),
        target: &Target,
        (design, count, seed): (Design, usize, u64),
        cores: usize,
    ) -> Cookings {
        let cook = |process: &Process, draw: &Draw| potwright_pot::cook(process, kitchen, draw);
        let given = Given {
            cook: &cook,
            foods: larder,
            made,
            prices: &Prices::default(),
            target,
        };
        let tasted = given.taste(process);
        let ground = given.ground(&tasted);
        let draws = design.draws(ground.process.lots.len(), count, seed);
        let cooked = by_hands(cores, &draws, |draw| Cooking::of(&ground, &cook(ground.process, draw)));
        Cookings { draws, cooked }
    }

    /// What a figure's spread hangs on, the heaviest first: the share of the variance of its ranks that each unknown
    /// explains by itself, ρ² of Spearman's rank correlation (0–1). The masses of all lots count together. Shares of a
    /// figure that rises or falls with its unknowns add up to nearly one; what one unknown does only through another is
    /// in none of them. Empty for fewer than eight cookings, and for a figure that never changes.
    #[must_use]
    pub fn hangs_on(&self, figure: impl Fn(&Cooking) -> f64) -> Vec<(Unknown, f64)> {
        let figures: Vec<f64> = self.cooked.iter().map(figure).collect();
        if figures.len() < 8 || figures.iter().any(|x| !x.is_finite()) {
            return Vec::new();
        }
        let ranked = ranks(&figures);
        let explained = |pick: &dyn Fn(&Draw) -> f64| {
            let drawn: Vec<f64> = self.draws.iter().map(pick).collect();
            let correlation = correlation(&ranks(&drawn), &ranked);
            correlation * correlation
        };
        let lots = self.draws.first().map_or(0, |draw| draw.lots.len());
        let amounts = (0..lots).map(|lot| explained(&|draw: &Draw| draw.lot(lot))).sum();
        let mut shares = vec![
            (Unknown::Evaporation, explained(&|draw| draw.evaporation)),
            (Unknown::Burner, explained(&|draw| draw.burner)),
            (Unknown::Oven, explained(&|draw| draw.oven)),
            (Unknown::Reading, explained(&|draw| draw.reading)),
            (Unknown::Food, explained(&|draw| draw.food)),
            (Unknown::Amounts, amounts),
        ];
        shares.sort_by(|(_, a), (_, b)| b.total_cmp(a));
        if shares.iter().all(|(_, share)| *share == 0.0) {
            shares.clear();
        }
        shares
    }
}

/// What is not known exactly before a dish is cooked.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Unknown {
    /// What the pot evaporates below the boil.
    Evaporation,
    /// The power that reaches the pot.
    Burner,
    /// The oven's dial and how its air heats.
    Oven,
    /// How the cook reads 'simmer', 'medium' and a range of minutes.
    Reading,
    /// What foods do in the pot.
    Food,
    /// What the amounts of the list weigh.
    Amounts,
}

impl Unknown {
    /// The words on the page: 'hangs most on …'.
    #[must_use]
    pub const fn words(self) -> &'static str {
        match self {
            Unknown::Evaporation => "how much the pot evaporates",
            Unknown::Burner => "the burner",
            Unknown::Oven => "the oven",
            Unknown::Reading => "how the cook reads heat and minutes",
            Unknown::Food => "what the foods do in the pot",
            Unknown::Amounts => "what the amounts weigh",
        }
    }
}

/// Ranks of values, from nought; equal values share the mean of theirs.
fn ranks(values: &[f64]) -> Vec<f64> {
    let mut order: Vec<usize> = (0..values.len()).collect();
    order.sort_by(|a, b| values[*a].total_cmp(&values[*b]));
    let mut ranks = vec![0.0; values.len()];
    for equal in order.chunk_by(|a, b| values[*a] == values[*b]) {
        let first = order.iter().position(|place| *place == equal[0]).unwrap_or(0);
        let mean = first as f64 + 0.5 * (equal.len() as f64 - 1.0);
        equal.iter().for_each(|place| ranks[*place] = mean);
    }
    ranks
}

/// Pearson's correlation; nought where one of the two does not change.
fn correlation(a: &[f64], b: &[f64]) -> f64 {
    let count = a.len().max(1) as f64;
    let (mean_a, mean_b) = (a.iter().sum::<f64>() / count, b.iter().sum::<f64>() / count);
    let moment = |x: &[f64], mean_x: f64, y: &[f64], mean_y: f64| -> f64 {
        x.iter().zip(y).map(|(x, y)| (x - mean_x) * (y - mean_y)).sum()
    };
    let squares = moment(a, mean_a, a, mean_a) * moment(b, mean_b, b, mean_b);
    if squares > 0.0 {
        moment(a, mean_a, b, mean_b) / squares.sqrt()
    } else {
        0.0
    }
}

#[cfg(test)]
mod tests {
    use potwright_larder::Kind;
    use potwright_measure::Spread;
    use potwright_pot::{Aim, Material, Pot};

    use super::*;
    use crate::sampling::{DRAWS, percentile, sorted};
    use crate::testing;

    fn made_by_hand(figure: impl Fn(&Draw) -> f64) -> Cookings {
        let draws = Design::Even.draws(2, 2000, 5);
        let cooking = |draw: &Draw| Cooking {
            yield_kg: figure(draw),
            salt_percent: 1.0,
            energy_kcal: 0.0,
            minutes: 0.0,
            hottest_c: f64::NAN,
            coldest_c: f64::NAN,
            happened: Vec::new(),
        };
        Cookings {
            cooked: draws.iter().map(cooking).collect(),
            draws,
        }
    }

    /// y = 3·evaporation + 2·(first lot) − burner of independent standard deviates: variances 9, 4 and 1 of 14. Of a
    /// bivariate normal ρ of ranks is (6/π)·asin(r/2): with r² = 9/14, 4/14, 1/14 its square is 0.620, 0.266, 0.065.
    #[test]
    fn shares_of_a_linear_figure() {
        let cookings = made_by_hand(|draw| 3.0 * draw.evaporation + 2.0 * draw.lots[0] - draw.burner);
        let shares = cookings.hangs_on(|cooking| cooking.yield_kg);
        let expected = [
            (Unknown::Evaporation, 0.620),
            (Unknown::Amounts, 0.266),
            (Unknown::Burner, 0.065),
        ];
        for ((unknown, share), (meant, by)) in shares.iter().zip(expected) {
            assert_eq!(*unknown, meant);
            assert!((share - by).abs() < 0.04, "{unknown:?}: {share} for {by}");
        }
        assert!(shares[3..].iter().all(|(_, share)| *share < 0.02), "{shares:?}");
    }

    #[test]
    fn a_figure_that_never_changes_hangs_on_nothing() {
        let cookings = made_by_hand(|draw| draw.food);
        assert!(cookings.hangs_on(|cooking| cooking.salt_percent).is_empty());
        assert!(cookings.hangs_on(|cooking| cooking.hottest_c).is_empty());
    }

    /// Two kilograms of water, by a factor of 1.2 either way, poured into a pot of 2.1 litres: 15 cm across, 11.8835 cm high.
    /// At 20 °C it holds 2.1 · 0.99574 = 2.0911 kg (density of Choi and Okos), which is passed from the deviate
    /// 1.644854 · ln(1.04555)/ln(1.2) = 0.4018 up: in 0.344 of all kitchens.
    fn poured(design: Design, count: usize, cores: usize) -> Cookings {
        let mut water = testing::lot("water", Kind::Water, 2.0);
        water.spread = Spread::within_factor(1.0, 1.2);
        let mut process = testing::process(&[water]);
        process.vessels[0].pot = Some(Pot::new("pot", 15.0, 11.8835, Material::Steel, 0.0));
        process.acts = vec![testing::add(0, &[0]), testing::cook(0, Aim::Off, 1.0)];
        let larder = (Larder::built_in(), &[][..]);
        Cookings::of(
            process,
            &Kitchen::default(),
            larder,
            &Target::default(),
            (design, count, 9),
            cores,
        )
    }

    /// The percentiles in closed form, 2/1.2 and 2·1.2, and the share of kitchens in which the event happens: within a
    /// tenth of the width, and within what chance allows 2,000 kitchens (three standard errors, √(0.344·0.656/2000)).
    #[test]
    fn an_event_inside_the_spread() {
        for (design, count, within) in [(Design::Even, DRAWS, 1.5 / 128.0), (Design::Independent, 2000, 0.032)] {
            let cookings = poured(design, count, 2);
            let yields = sorted(cookings.cooked.iter().map(|cooking| cooking.yield_kg));
            let width = 2.4 - 2.0 / 1.2;
            for (percent, exact) in [(5.0, 2.0 / 1.2), (50.0, 2.0), (95.0, 2.4)] {
                let found = percentile(&yields, percent).unwrap();
                assert!(
                    (found - exact).abs() < 0.1 * width,
                    "{design:?} {percent} %: {found} for {exact}"
                );
            }
            let full = |cooking: &&Cooking| {
                cooking
                    .happened
                    .iter()
                    .any(|what| matches!(what, Happening::TooFull(_)))
            };
            let share = cookings.cooked.iter().filter(full).count() as f64 / count as f64;
            assert!((share - 0.344).abs() < within, "{design:?}: {share}");
        }
    }

    #[test]
    fn any_number_of_cores_makes_the_same() {
        let printed = |cores| format!("{:?}", poured(Design::Even, 40, cores));
        assert_eq!(printed(1), printed(2));
        assert_eq!(printed(1), printed(3));
    }

    /// Ranks of 3, 1, 3, 7 by hand: 1½, 0, 1½, 3.
    #[test]
    fn equal_values_share_their_rank() {
        assert_eq!(ranks(&[3.0, 1.0, 3.0, 7.0]), [1.5, 0.0, 1.5, 3.0]);
    }
}
