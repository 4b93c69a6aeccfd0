//! Unit slips: a tablespoon for a teaspoon.

use potwright_larder::Kind;
use potwright_manuscript::Ingredient;
use potwright_measure::Unit;
use potwright_pot::{Lot, Stuff};

use crate::usage::name;
use crate::{Manuscript, Query, Rule, Weight};

pub(super) const RULE: Rule = Rule {
    code: "C10",
    name: "unit slip",
    finds: "A spoon that was probably the other spoon: salt or something salty that makes the finished dish saltier than any dish, and would not with the smaller measure; the same for seasonings that are strong in small amounts. And a dish next to saltless that the larger spoon would season.",
    why: "Tbsp and tsp are one letter apart, and three times.",
    fires: "Lentil soup\n\n300 g red lentils\n1.5 litres water\n3 tbsp fine salt\n\nPut the lentils, water and salt in a pot, bring to the boil and simmer for 25 minutes until soft.\n",
    silent: "Lentil soup\n\n300 g red lentils\n1.5 litres water\n2 tsp fine salt\n\nPut the lentils, water and salt in a pot, bring to the boil and simmer for 25 minutes until soft.\n",
    instead: "Look at the test notes, and write the word out: 'teaspoons'.",
    source: "salt balance of the simulation; seasonings: data/strong.tsv, common practice, no source",
    check,
};

/// Seasoned dishes lie between these, percent salt; outside it is asked about (common practice, no source). The high end
/// is what olives and anchovy sauces have, the low end what tastes of nothing.
const SALTY: f64 = 1.25;
/// A dough holds more: bread is salted at 2 % of its flour.
const SALTY_DOUGH: f64 = 1.9;
const SEASONED: (f64, f64) = (0.2, 1.5);
const SALTLESS: f64 = 0.15;
/// A food is salty from this share on: soy sauce, stock cubes, miso.
const SALTY_FOOD: f64 = 0.05;
/// It must bring at least this share of the dish's salt for a slip in it to matter.
const MATTERS: f64 = 0.35;
/// What a table's figure may be off, ×/÷.
const LEEWAY: f64 = 1.5;

fn check(manuscript: &Manuscript<'_>) -> Vec<Query> {
    let lines = manuscript.recipe.ingredients.iter().enumerate();
    lines
        .filter_map(|(index, line)| {
            let lot = lot_of(manuscript, index)?;
            let unit = line.quantity?.unit?;
            of_salt(manuscript, line, lot, unit).or_else(|| of_seasoning(manuscript, line, lot, unit))
        })
        .collect()
}

/// The lot of a line that is measured out, with its index.
fn lot_of<'a>(manuscript: &Manuscript<'a>, index: usize) -> Option<(usize, &'a Lot)> {
    let process = &manuscript.reckoned.process;
    let mut lots = process.lots.iter().enumerate();
    let (at, lot) = lots.find(|(_, lot)| lot.ingredient == Some(index))?;
    (!process.to_taste.contains(&at) && !lot.for_serving).then_some((at, lot))
}

/// Smaller measures that the hand or the eye takes for a larger one, and how many of each make it (a teaspoon of salt is
/// 5 to 6 g).
const fn smaller(unit: Unit) -> &'static [(&'static str, f64)] {
    match unit {
        Unit::Tablespoon => &[("teaspoon", 3.0)],
        Unit::Cup => &[("tablespoon", 16.0), ("teaspoon", 48.0)],
        Unit::Teaspoon => &[("gram", 5.5)],
        Unit::Ounce => &[("teaspoon", 5.0)],
        Unit::Kilogram => &[("gram", 1000.0)],
        _ => &[],
    }
}

/// Whether a quarter or more of what went in is flour.
fn is_dough(manuscript: &Manuscript<'_>) -> bool {
    let lots = &manuscript.reckoned.process.lots;
    let masses = lots.iter().zip(&manuscript.reckoned.trace.lot_kg);
    let (flour, all) = masses.fold((0.0, 0.0), |(flour, all), (lot, kg)| {
        let of_flour = if lot.kind == Kind::Flour { *kg } else { 0.0 };
        (flour + of_flour, all + kg)
    });
    flour > 0.25 * all
}

fn of_salt(manuscript: &Manuscript<'_>, line: &Ingredient, lot: (usize, &Lot), unit: Unit) -> Option<Query> {
    let figure = &manuscript.reckoned.dossier.salinity;
    let (low, high) = figure.spread.unwrap_or((figure.value, figure.value));
    let share = lot.1.matter.kg(Stuff::Salt) / lot.1.matter.total_kg().max(1e-9);
    let brought = share * manuscript.reckoned.trace.lot_kg.get(lot.0)?;
    let put_in = manuscript.reckoned.trace.ledger.put_in.kg(Stuff::Salt);
    let part = brought / put_in.max(1e-9);
    if share < SALTY_FOOD || part < MATTERS {
        return None;
    }
    // Salt stays where it is put: with another measure of this food its part of the dish's salt changes in proportion.
    let with = |factor: f64| figure.value * (1.0 - part + part * factor);
    let fits = |percent: f64| (SEASONED.0..=SEASONED.1).contains(&percent);
    let limit = if is_dough(manuscript) { SALTY_DOUGH } else { SALTY };
    // A spoon holds more or less: the middle of the band suffices to ask, the whole of it to insist.
    let weight = if low > limit || high < SALTLESS {
        Weight::MustSettle
    } else {
        Weight::WorthALook
    };
    let (other, percent) = if figure.value > limit {
        let others = smaller(unit).iter().map(|(other, fold)| (*other, with(1.0 / fold)));
        others.into_iter().find(|(_, percent)| fits(*percent))?
    } else if figure.value < SALTLESS && unit == Unit::Teaspoon {
        ("tablespoon", with(3.0))
    } else {
        return None;
    };
    let because = format!(
        "the dish would have {:.1} % salt ({low:.1} to {high:.1}); with the {other} about {percent:.1} %",
        figure.value
    );
    fits(percent).then(|| query(line, other, weight, because))
}

fn of_seasoning(manuscript: &Manuscript<'_>, line: &Ingredient, lot: (usize, &Lot), unit: Unit) -> Option<Query> {
    let most = most_g_per_kg(&line.items.first()?.name.to_lowercase(), lot.1)?;
    let dish_kg = manuscript.reckoned.dossier.yield_mass.value;
    let grams = 1000.0 * manuscript.reckoned.trace.lot_kg.get(lot.0)?;
    let strength = grams / dish_kg.max(1e-6);
    let (other, _) = smaller(unit).iter().find(|(_, fold)| strength / fold <= most)?;
    if strength <= most * LEEWAY || unit == Unit::Teaspoon {
        return None;
    }
    let because = format!("{strength:.0} g in a kilogram of the dish; commonly at most about {most:.0} g");
    Some(query(line, other, Weight::WorthALook, because))
}

/// Grams that a kilogram of a dish takes at most: the row whose word ends the name, of what is dried or ground.
fn most_g_per_kg(name: &str, lot: &Lot) -> Option<f64> {
    if !matches!(
        lot.kind,
        Kind::Spice | Kind::Leavening | Kind::Condiment | Kind::Vinegar | Kind::Herb
    ) {
        return None;
    }
    // Fresh herbs and roots hold much water and are mild.
    let water = lot.matter.kg(Stuff::Water) / lot.matter.total_kg().max(1e-9);
    if water > 0.5 && lot.kind != Kind::Vinegar {
        return None;
    }
    let rows = include_str!("../../data/strong.tsv").lines();
    rows.filter(|row| !row.starts_with('#')).find_map(|row| {
        let mut cells = row.split('\t');
        let (word, grams) = (cells.next()?, cells.next()?.parse().ok()?);
        let last = name.split(|c: char| !c.is_alphanumeric()).any(|part| part == word);
        (last || word.contains(' ') && name.contains(word)).then_some(grams)
    })
}

fn query(line: &Ingredient, other: &str, weight: Weight, because: String) -> Query {
    Query {
        code: RULE.code.into(),
        weight,
        span: line.span,
        asks: format!("Is this measure of {} right, or was it the {other}?", name(line)),
        because,
        try_words: None,
        see: Vec::new(),
    }
}
