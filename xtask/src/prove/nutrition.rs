//! Nutrients of published dishes by our own path, from grams of ingredients to 100 g of the dish.
//!
//! The USDA publishes for each dish of its food survey the ingredients by weight, the water gained or lost, the
//! retention factors – and the nutrients. Ours come by the code that declares a cooked dish; only weights, water and
//! factors are given instead of cooked. What is not within the tolerance is listed with the reason, which other
//! dishes of the same publication have to bear out.

mod witness;

use std::path::Path;

use anyhow::{Context, Result, bail};
use potwright_larder::Composition;
use potwright_pot::{Nutrient, make_up_100_g};
use potwright_reckon::{ByWeight, Part, by_weight};

use super::figures::{Figures, Table, meant};
use super::fndds::{Dish, FOLDER, Fndds, Line};
use witness::{Revised, reason};

/// What a dish's name holds when it is judged here.
const KINDS: [&str; 3] = ["soup", "stew", "chowder"];

/// The fewest ingredients of a dish that is judged.
const FEWEST: usize = 3;

/// How far off a value may be, as a share of what is published, where that is more than one step of its rounding.
const WITHIN: f64 = 0.02;

/// Which aim a nutrient belongs to.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Aim {
    /// 97 % of all values together.
    Main,
    /// 87 %.
    Sodium,
    /// Compared, without an aim.
    Further,
}

/// A nutrient that is judged.
struct Judged {
    /// The row of our declaration; water has none.
    row: &'static str,
    column: &'static str,
    /// One step of the published figure, in the unit of the column.
    step: f64,
    aim: Aim,
}

const fn judged(row: &'static str, column: &'static str, step: f64, aim: Aim) -> Judged {
    Judged { row, column, step, aim }
}

const JUDGED: [Judged; 17] = [
    judged("Energy", "energy_kcal", 1.0, Aim::Main),
    judged("Protein", "protein_g", 0.01, Aim::Main),
    judged("Fat", "fat_g", 0.01, Aim::Main),
    judged("Carbohydrate with fibre", "carbohydrate_g", 0.01, Aim::Main),
    judged("Water", "water_g", 0.01, Aim::Main),
    judged("Potassium", "potassium_mg", 1.0, Aim::Main),
    judged("Calcium", "calcium_mg", 1.0, Aim::Main),
    judged("Vitamin C", "vitamin_c_mg", 0.1, Aim::Main),
    judged("Sodium", "sodium_mg", 1.0, Aim::Sodium),
    judged("of which saturates", "saturated_g", 0.001, Aim::Further),
    judged("Cholesterol", "cholesterol_mg", 1.0, Aim::Further),
    judged("of which sugars", "sugars_g", 0.01, Aim::Further),
    judged("Fibre", "fibre_g", 0.1, Aim::Further),
    judged("Iron", "iron_mg", 0.01, Aim::Further),
    judged("Vitamin A", "vitamin_a_ug", 1.0, Aim::Further),
    judged("Vitamin D", "vitamin_d_ug", 0.1, Aim::Further),
    judged("Alcohol", "alcohol_g", 0.1, Aim::Further),
];

impl Judged {
    /// Ours in 100 g. A dish without alcohol has no row for it.
    fn ours(&self, dish: &ByWeight) -> f64 {
        match self.row {
            "Water" => dish.water_per_100_g(),
            row => dish.per_100_g(row).unwrap_or(0.0),
        }
    }

    fn holds(&self, ours: f64, published: f64) -> bool {
        off_by_no_more(ours, published, self.step)
    }

    /// One step of a declaration at this value: the Commission's guidance on tolerances, December 2012, for
    /// Regulation (EU) 1169/2011, as the program rounds by it; what the guidance does not round keeps the published
    /// step. Salt's steps are a tenth and a hundredth of a gram, sodium's by 2.5 less.
    fn declared_step(&self, published: f64) -> f64 {
        match self.column {
            "protein_g" | "fat_g" | "carbohydrate_g" | "saturated_g" | "sugars_g" | "fibre_g" if published < 10.0 => {
                0.1
            }
            "protein_g" | "fat_g" | "carbohydrate_g" | "saturated_g" | "sugars_g" | "fibre_g" => 1.0,
            "sodium_mg" if 2.5 * published < 1000.0 => 4.0,
            "sodium_mg" => 40.0,
            _ => self.step,
        }
    }

    /// With the digits of the published figure and one more.
    fn print(&self, value: f64) -> String {
        let decimals = [1.0, 0.1, 0.01, 0.001].iter().position(|step| self.step >= *step);
        format!("{value:.*}", decimals.unwrap_or(3) + 1)
    }

    /// What our path does otherwise than add up, where a composition contradicts itself.
    fn ours_differs(&self) -> &'static str {
        match self.column {
            "water_g" => {
                "the constituents of an ingredient make more or less than 100 g, and the difference is water's"
            }
            "sugars_g" => "sugars and fibre of an ingredient are more than its carbohydrate, and sugars give way",
            _ => "an ingredient is made up otherwise than its figures add up",
        }
    }

    /// The unit, as the column's name ends on it.
    fn unit(&self) -> &'static str {
        match self.column.rsplit_once('_') {
            Some((_, "ug")) => "µg",
            Some((_, unit)) => unit,
            None => "",
        }
    }
}

/// Whether a value is off by no more than the share or the step, whichever is more.
fn off_by_no_more(ours: f64, published: f64, step: f64) -> bool {
    // A hair more, because steps are no binary fractions.
    (ours - published).abs() <= (WITHIN * published.abs()).max(step) + 1e-9
}

/// A value that is not within the tolerance.
struct Miss {
    published: f64,
    ours: f64,
    dish: String,
    reason: witness::Reason,
}

/// How one nutrient came out.
#[derive(Default)]
struct Outcome {
    values: usize,
    within: usize,
    /// Within one step of a declaration, or a share.
    declared: usize,
    /// As a share of what is published, where that is not nought.
    errors: Vec<f64>,
    misses: Vec<Miss>,
}

pub(super) fn work(_: &Path) -> Result<Figures> {
    let folder = std::env::var_os(FOLDER).with_context(|| format!("{FOLDER} does not name a folder"))?;
    let fndds = Fndds::read(Path::new(&folder))?;
    let dishes = chosen(&fndds);
    let mut outcomes = Vec::new();
    for judged in &JUDGED {
        outcomes.push((judged, outcome(&fndds, &dishes, judged)?));
    }
    let says = format!(
        "All {} dishes of the USDA's Food and Nutrient Database for Dietary Studies 2019–2020 (At A Glance) whose name \
         holds soup, stew or chowder and that have {FEWEST} ingredients or more. Foods are composed by USDA SR28, \
         dishes in dishes as published; retention by the USDA Table of Nutrient Retention Factors, Release 6. Weights, \
         water gained or lost and retention codes are the published ones; all else is the program's own path from \
         composition to declaration.\n\nA value is within when it is off by no more than 2 % or one step of the \
         published figure, whichever is more. By the declaration's step: the same with the steps in which an EU \
         declaration prints 100 g (0.1 g, 4 mg of sodium; 1 g from 10 g up, 40 mg from a gram of salt up). By newer \
         figures: the USDA reckoned some foods by later figures than SR28's; where another dish shows such a figure, \
         a value that was off is worked out again with it.",
        dishes.len()
    );
    Ok(Figures {
        title: "Nutrition, held to published dishes".into(),
        says,
        tables: vec![summary(&outcomes), misses(&outcomes)],
    })
}

/// The dishes that are judged.
fn chosen(fndds: &Fndds) -> Vec<&Dish> {
    let is = |dish: &Dish| {
        let name = dish.name.to_lowercase();
        dish.lines.len() >= FEWEST && KINDS.iter().any(|kind| name.contains(kind))
    };
    fndds.dishes.values().filter(|dish| is(dish)).collect()
}

/// A dish by the program's own path, with the figures of some foods revised.
fn reckoned(fndds: &Fndds, dish: &Dish, revised: &Revised) -> Result<ByWeight> {
    let parts = dish.lines.iter().map(|line| part(fndds, line, revised));
    let parts = parts.collect::<Result<Vec<_>>>()?;
    Ok(by_weight(&parts, dish.water_g() / 1000.0))
}

fn part(fndds: &Fndds, line: &Line, revised: &Revised) -> Result<Part> {
    let figures = fndds.figures.get(&line.code);
    let figures = figures.with_context(|| format!("'{}' is in no file", line.code))?;
    let composition = Composition::from_figures(&revised.figures_of(&line.code, figures));
    if line.factor != "0" && !fndds.factors.contains_key(&line.factor) {
        bail!("no retention factors of code {}", line.factor);
    }
    let mut part = Part::whole(make_up_100_g(&composition, None).scaled(line.grams / 100.0));
    for (column, nutrient) in [
        ("calcium_mg", Nutrient::CalciumMg),
        ("iron_mg", Nutrient::IronMg),
        ("potassium_mg", Nutrient::PotassiumMg),
        ("vitamin_a_ug", Nutrient::VitaminAUg),
        ("vitamin_c_mg", Nutrient::VitaminCMg),
    ] {
        part.kept[nutrient as usize] = fndds.kept(line, column);
    }
    part.salt_kept = fndds.kept(line, "sodium_mg");
    part.alcohol_kept = fndds.kept(line, "alcohol_g");
    Ok(part)
}

fn outcome(fndds: &Fndds, dishes: &[&Dish], judged: &Judged) -> Result<Outcome> {
    let mut outcome = Outcome::default();
    for dish in dishes {
        let Some(published) = fndds.figure(&dish.code, judged.column) else {
            continue;
        };
        let ours = judged.ours(&reckoned(fndds, dish, &Revised::default())?);
        outcome.values += 1;
        if published > 0.0 {
            outcome.errors.push((ours - published).abs() / published);
        }
        if off_by_no_more(ours, published, judged.declared_step(published)) {
            outcome.declared += 1;
        }
        if judged.holds(ours, published) {
            outcome.within += 1;
        } else {
            outcome.misses.push(Miss {
                published,
                ours,
                dish: format!("{} {}", dish.code, short(&dish.name)),
                reason: reason(fndds, dish, judged)?,
            });
        }
    }
    outcome.errors.sort_by(f64::total_cmp);
    Ok(outcome)
}

/// A dish's name up to where its list of vegetables begins.
fn short(name: &str) -> &str {
    let ends = [" with ", " including ", ", meat ", ";"];
    let end = ends.iter().filter_map(|end| name.find(end)).min();
    &name[..end.unwrap_or(name.len())]
}

/// Counts of values of one nutrient or of several.
#[derive(Clone, Copy, Default)]
struct Counts {
    values: usize,
    within: usize,
    declared: usize,
    borne_out: usize,
}

impl Counts {
    fn of(outcome: &Outcome) -> Self {
        let borne_out = outcome.misses.iter().filter(|miss| miss.reason.borne_out).count();
        Counts {
            values: outcome.values,
            within: outcome.within,
            declared: outcome.declared,
            borne_out: outcome.within + borne_out,
        }
    }

    fn sum(counts: impl Iterator<Item = Counts>) -> Self {
        counts.fold(Counts::default(), |sum, more| Counts {
            values: sum.values + more.values,
            within: sum.within + more.within,
            declared: sum.declared + more.declared,
            borne_out: sum.borne_out + more.borne_out,
        })
    }

    /// `least`: the share that is meant to be within, in percent.
    fn row(self, name: &str, median: &str, least: Option<usize>) -> Vec<String> {
        let meant = least.map_or(String::new(), |least| {
            meant(&format!("≥ {least} %"), self.within * 100 >= self.values * least)
        });
        let percent = |part: usize| format!("{:.2} %", 100.0 * part as f64 / self.values.max(1) as f64);
        vec![
            name.into(),
            self.values.to_string(),
            self.within.to_string(),
            percent(self.within),
            percent(self.declared),
            percent(self.borne_out),
            median.into(),
            meant,
        ]
    }
}

fn summary(outcomes: &[(&Judged, Outcome)]) -> Table {
    let heads = [
        "nutrient",
        "values",
        "within",
        "share",
        "by the declaration's step",
        "by newer figures",
        "median error",
        "meant to be",
    ];
    let mut table = Table::new("Nutrients", &heads);
    for (judged, outcome) in outcomes {
        let median = outcome.errors.get(outcome.errors.len() / 2);
        let median = median.map_or_else(String::new, |error| format!("{:.2} %", 100.0 * error));
        let least = (judged.aim == Aim::Sodium).then_some(87);
        let name = format!("{}, {}", judged.row, judged.unit());
        table.rows.push(Counts::of(outcome).row(&name, &median, least));
    }
    let main = outcomes.iter().filter(|(judged, _)| judged.aim == Aim::Main);
    let main = Counts::sum(main.map(|(_, outcome)| Counts::of(outcome)));
    let all = Counts::sum(outcomes.iter().map(|(_, outcome)| Counts::of(outcome)));
    table.rows.push(main.row("**energy to vitamin C**", "", Some(97)));
    table.rows.push(all.row("**all**", "", None));
    table
}

fn misses(outcomes: &[(&Judged, Outcome)]) -> Table {
    let heads = ["nutrient", "dish", "published", "ours", "reason"];
    let mut table = Table::new("Not within, and why", &heads);
    for (judged, outcome) in outcomes {
        for miss in &outcome.misses {
            table.rows.push(vec![
                format!("{}, {}", judged.row, judged.unit()),
                miss.dish.clone(),
                format!("{}", miss.published),
                judged.print(miss.ours),
                miss.reason.says.clone(),
            ]);
        }
    }
    table
}

#[cfg(test)]
mod tests;
