//! The dossier put together from what was read.

use potwright_larder::{Food, Kind};
use potwright_pot::{Assumption, Made, Process, Stuff};

use crate::again::served_again;
use crate::allergens::{allergens, animal};
use crate::as_made::{Facts, as_made};
use crate::body::body;
use crate::foods::{Foods, is_bone};
use crate::portions::Portions;
use crate::reading::{Reading, share};
use crate::reckon::{Given, Ground, Read};
use crate::remedies::cautious_draw;
use crate::sulphites::sulphite_mg;
use crate::table::{Table, rows};
use crate::taste::Tasted;
use crate::{Dossier, Figure, Known, Measure, NutrientRow, Verdict, cooling, happenings, nutrition, safety, steps};

/// Layout of [`Dossier`]; raised when a field changes its meaning.
const VERSION: u32 = 1;

/// Share of the yield from which bones and shells are worth naming; a bay leaf or a stick of cinnamon is not.
const WORTH_NAMING: f64 = 0.01;

/// Share of what was put in that may leave as vapour before a figure hangs on the kitchen.
const DRY: f64 = 0.03;

static ALCOHOL: Table = Table::of(include_str!("../data/alcohol.tsv"));

/// The answers, and the dish as other dishes may use it.
pub(crate) fn assemble(given: &Given<'_>, ground: &Ground<'_>, tasted: &Tasted, read: &Read) -> (Dossier, Made) {
    let figures = Figures {
        ground,
        tasted,
        read,
        portions: Portions::of(ground.process),
        foods: given.foods,
    };
    let central = &read.runs.central;
    let process = ground.process;
    let allergen_rows = allergens(process, given.made, central, given.foods);
    let (animal, animal_causes) = animal(process, given.made, given.foods);
    let cost = ground.costs.any().then(|| figures.cost());
    let whole_cost = cost
        .as_ref()
        .filter(|_| ground.costs.unpriced.is_empty())
        .map(|cost| cost.value);
    let made = as_made(
        central,
        &Facts {
            title: &process.title,
            allergens: &allergen_rows,
            animal,
            sulphite_mg: sulphite_mg(process, given.made, central, given.foods),
            cost: whole_cost,
        },
    );
    let portions = figures.portions;
    let of_bones = figures.is_of_bones();
    let mut nutrition = nutrition::rows(&read.runs, &|r| portions.number(r));
    if of_bones {
        nutrition
            .iter_mut()
            .filter(|row| row.name == "Protein")
            .for_each(not_computed);
    }
    let doneness = safety::doneness(process, &read.outcomes, &read.other_outcomes);
    let cautious = |process: &Process| (given.cook)(process, &cautious_draw(process));
    let cooling = cooling::rows(process, &tasted.trace, &read.other_coolings, &cautious);
    let ranges = !read.runs.others.is_empty();
    let served_again = served_again(process, &tasted.trace, ranges, &|process, draw| {
        (given.cook)(process, draw)
    });
    let clock = steps::Clock::of(process, &tasted.trace, &ground.places);
    let dossier = Dossier {
        version: VERSION,
        title: process.title.clone(),
        yield_mass: figures.yield_mass(),
        yield_volume: figures.hanging(Measure::Litres, |r| r.volume_l),
        serves: process.servings,
        makes: process.makes.as_ref().map(|makes| makes.words.clone()),
        portions: portions.number(central),
        portions_because: portions.because(process, central),
        portion_mass: figures.hanging(Measure::Grams, |r| portions.share_of(1000.0 * r.yield_kg, r)),
        portion_volume: figures.hanging(Measure::Millilitres, |r| portions.share_of(1000.0 * r.volume_l, r)),
        solids: figures.hanging(Measure::Percent, |r| 100.0 * share(r.pieces_kg, r.yield_kg)),
        elapsed: figures.plain(Measure::Minutes, Known::NeedsYourKitchen, |r| r.elapsed_min),
        hands_on: figures.plain(Measure::Minutes, Known::RuleOfThumb, |r| r.hands_on_min),
        liquid_salinity: figures.liquid(Reading::liquid_salinity),
        salinity: figures.hanging(Measure::Percent, |r| r.percent(Stuff::Salt)),
        target: *given.target,
        salinity_next_day: figures.liquid(Reading::evened_salinity),
        sugar: figures.hanging(Measure::Percent, |r| r.percent(Stuff::Sugar)),
        fat: figures.hanging(Measure::Percent, |r| r.percent(Stuff::Fat)),
        acid: figures.hanging(Measure::Percent, |r| r.percent(Stuff::Acid)),
        alcohol: figures.alcohol(),
        alcohol_kept: figures.alcohol_kept(given),
        boiling_point: figures.plain(Measure::Celsius, Known::ByHandbook, |r| r.boiling_c),
        evaporated: figures.evaporated(),
        body: body(
            read.thickener,
            &read.other_thickeners,
            figures.has_liquid() && !of_bones,
        ),
        nutrition,
        allergens: allergen_rows,
        animal,
        animal_causes,
        cost_per_portion: cost.as_ref().map(|_| figures.cost_per_portion()),
        cost,
        currency: given.prices.currency.clone(),
        unpriced: ground.costs.unpriced.clone(),
        to_taste: tasted.to_taste.clone(),
        steps: steps::rows(process, &tasted.trace, &clock),
        variations: Vec::new(),
        happenings: happenings::happenings(process, &tasted.trace, &read.others_dry),
        assumptions: figures.assumptions(),
        open: process.open.clone(),
        cautions: cautions(&doneness, &cooling),
        doneness,
        cooling,
        served_again,
    };
    (dossier, made)
}

struct Figures<'a> {
    ground: &'a Ground<'a>,
    tasted: &'a Tasted,
    read: &'a Read,
    portions: Portions,
    foods: &'a dyn Foods,
}

impl Figures<'_> {
    fn plain(&self, measure: Measure, known: Known, pick: impl Fn(&Reading) -> f64) -> Figure {
        self.read.runs.figure(measure, known, pick)
    }

    /// A figure of the finished dish: by balance, unless so much boils away that pot and burner decide.
    fn hanging(&self, measure: Measure, pick: impl Fn(&Reading) -> f64) -> Figure {
        let central = &self.read.runs.central;
        if share(central.evaporated_kg, central.put_in_kg) <= DRY {
            return self.plain(measure, Known::ByBalance, pick);
        }
        self.plain(measure, Known::NeedsYourKitchen, pick)
            .because(self.evaporation())
    }

    /// Everything in the vessel: bones and shells are named, because nobody eats them.
    fn yield_mass(&self) -> Figure {
        let figure = self.hanging(Measure::Kilograms, |r| r.yield_kg);
        let inedible = self.plain(Measure::Kilograms, Known::ByBalance, |r| r.inedible_kg);
        if inedible.value < WORTH_NAMING * figure.value {
            return figure;
        }
        let bones = format!("of it {} of bone or shell", inedible.display_value());
        let because = figure
            .because
            .clone()
            .map_or(bones.clone(), |because| format!("{because}; {bones}"));
        figure.because(because)
    }

    /// 'evaporation of a 24 cm pot (2.8-litre pot)'.
    fn evaporation(&self) -> String {
        let process = self.ground.process;
        let pot = process
            .vessels
            .get(process.dish_vessel)
            .and_then(|vessel| vessel.pot.as_ref());
        match pot {
            Some(pot) => format!(
                "evaporation of a {:.0} cm pot ({})",
                pot.diameter.centimetres(),
                pot.name
            ),
            None => "evaporation".to_owned(),
        }
    }

    /// A figure of the liquid: not computed where there is none.
    fn liquid(&self, pick: impl Fn(&Reading) -> f64) -> Figure {
        // A draw that boils dry has no liquid to speak of.
        let of_liquid = |r: &Reading| if has_liquid(r) { pick(r) } else { f64::NAN };
        let others = &self.read.runs.others;
        let dry = others.iter().filter(|run| !has_liquid(run)).count();
        if self.has_liquid() {
            let figure = self.hanging(Measure::Percent, of_liquid);
            if dry == 0 {
                return figure;
            }
            let dry = format!("in {dry} of {} reckonings hardly any liquid is left", others.len());
            let because = figure
                .because
                .clone()
                .map_or(dry.clone(), |because| format!("{because}; {dry}"));
            return figure.because(because);
        }
        let figure = self.hanging(Measure::Percent, pick);
        Figure {
            known: Known::NotComputed,
            ..figure
        }
        .because("the dish has no liquid")
    }

    /// Whether so much bone was simmered that what it gave to the liquid counts: a fifth of the finished dish and half an
    /// hour (common practice, no source; a stock has as much bone as water to half as much).
    fn is_of_bones(&self) -> bool {
        let process = self.ground.process;
        let bones = process.lots.iter().enumerate().filter(|(index, lot)| {
            let bone = self.foods.of(lot).is_some_and(is_bone);
            bone && self.ground.places.heat(process, &self.tasted.trace, *index).wet_min >= 30.0
        });
        let kg: f64 = bones.map(|(_, lot)| lot.mass.kilograms()).sum();
        kg > 0.0 && kg >= 0.2 * self.read.runs.central.yield_kg && self.has_liquid()
    }

    fn has_liquid(&self) -> bool {
        has_liquid(&self.read.runs.central)
    }

    fn evaporated(&self) -> Figure {
        self.plain(Measure::Kilograms, Known::NeedsYourKitchen, |r| r.evaporated_kg)
            .because(self.evaporation())
    }

    fn alcohol(&self) -> Figure {
        let known = match self.read.runs.central.alcohol_in_kg {
            nothing if nothing <= 0.0 => Known::ByBalance,
            _ => Known::NeedsYourKitchen,
        };
        self.plain(Measure::Grams, known, |r| {
            self.portions.share_of(1000.0 * r.whole.kg(Stuff::Alcohol), r)
        })
    }

    /// What is left of the alcohol, beside what the published table has for so long a simmer.
    fn alcohol_kept(&self, given: &Given<'_>) -> Option<Figure> {
        if self.read.runs.central.alcohol_in_kg <= 0.0 {
            return None;
        }
        let kept = self.plain(Measure::Percent, Known::NeedsYourKitchen, |r| {
            100.0 * share(r.whole.kg(Stuff::Alcohol), r.alcohol_in_kg)
        });
        let (process, trace) = (self.ground.process, &self.tasted.trace);
        let drinks = process.lots.iter().enumerate().filter(|(_, lot)| {
            let alcoholic = |food: &Food| food.composition.alcohol_g.is_some_and(|grams| grams > 0.0);
            matches!(lot.kind, Kind::Wine | Kind::Beer | Kind::Spirit) || given.foods.of(lot).is_some_and(alcoholic)
        });
        let minutes = drinks
            .map(|(lot, _)| self.ground.places.heat(process, trace, lot).wet_min)
            .reduce(f64::max);
        Some(match minutes.and_then(published_alcohol) {
            Some((minutes, percent)) => kept.because(format!(
                "USDA's table has {percent:.0} % after {minutes:.0} minutes of simmering"
            )),
            None => kept,
        })
    }

    fn cost(&self) -> Figure {
        self.priced(self.plain(Measure::Money, Known::ByBalance, |r| r.cost))
    }

    fn cost_per_portion(&self) -> Figure {
        let portions = self.portions;
        self.priced(self.plain(Measure::Money, Known::ByBalance, |r| portions.share_of(r.cost, r)))
    }

    fn priced(&self, figure: Figure) -> Figure {
        match self.ground.costs.unpriced.as_slice() {
            [] => figure,
            unpriced => figure.because(format!("at least: no price for {}", unpriced.join(", "))),
        }
    }

    /// The process's own, and what was assumed here.
    fn assumptions(&self) -> Vec<Assumption> {
        let process = self.ground.process;
        let mut all = process.assumptions.clone();
        all.extend(happenings::assumed(process, &self.tasted.trace));
        let mut assume = |text: String| all.push(Assumption { text, span: None });
        if self.portions == Portions::OfDefault {
            assume("The page does not say how many it serves: portions of 350 g are reckoned.".to_owned());
        }
        let served_with: Vec<&str> = process
            .lots
            .iter()
            .filter(|lot| lot.for_serving)
            .map(|lot| lot.name.as_str())
            .collect();
        if !served_with.is_empty() {
            assume(format!(
                "Served with it and counted for allergens and cost, not for yield and nutrition: {}.",
                served_with.join(", ")
            ));
        }
        if self.is_of_bones() {
            assume("What bones give to a stock is not computed: its gelatine, its body and its protein.".to_owned());
        }
        let acid = self.read.runs.central.percent(Stuff::Acid);
        if acid >= 100.0 * cooling::SOUR {
            assume(format!(
                "With {acid:.1} % acid it is most likely below pH 4.2, where no rule of time and temperature is made for it (FDA Food Code 2022 1-201.10, table B); its pH is not computed."
            ));
        }
        for lot in self.tasted.idle.iter().filter_map(|lot| process.lots.get(*lot)) {
            assume(format!(
                "'{}' to taste hardly reaches the dish: the method does not put it in.",
                lot.name
            ));
        }
        all
    }
}

/// A dish has liquid when a spoon finds some: a twentieth of its mass and more, half of which is water at least (common
/// practice, no source): fat alone, or the sugar of a pot boiled dry, is none.
fn has_liquid(reading: &Reading) -> bool {
    share(reading.liquid.total_kg(), reading.yield_kg) >= 0.05
        && share(reading.liquid.kg(Stuff::Water), reading.yield_kg) >= 0.025
}

/// The row of the table nearest to so many minutes of simmering: its minutes and the percent left.
fn published_alcohol(minutes: f64) -> Option<(f64, f64)> {
    rows(&ALCOHOL)
        .filter_map(|row| Some((row.number(0)?, row.number(1)?)))
        .min_by(|a, b| (a.0 - minutes).abs().total_cmp(&(b.0 - minutes).abs()))
}

/// A nutrient of which nothing can be said.
fn not_computed(row: &mut NutrientRow) {
    row.per_portion.known = Known::NotComputed;
    row.per_100_g.known = Known::NotComputed;
    (row.us_label, row.us_daily_value, row.eu_label) = (None, None, None);
}

/// What always goes with a safety figure.
fn cautions(doneness: &[crate::Doneness], cooling: &[crate::CoolingRow]) -> Vec<String> {
    let safety = doneness.iter().any(|row| row.verdict != Verdict::NoRule) || !cooling.is_empty();
    if !safety {
        return Vec::new();
    }
    [
        "This is a computation, not a measurement.",
        "A thermometer in the thickest part decides.",
        "Local codes and licensed practice prevail.",
    ]
    .map(str::to_owned)
    .to_vec()
}

#[cfg(test)]
mod tests {
    use super::*;

    /// USDA retention factors 5004 to 5009.
    #[test]
    fn the_nearest_row_of_the_alcohol_table() {
        assert_eq!(published_alcohol(90.0), Some((90.0, 20.0)));
        assert_eq!(published_alcohol(80.0), Some((90.0, 20.0)));
        assert_eq!(published_alcohol(600.0), Some((150.0, 5.0)));
    }
}
