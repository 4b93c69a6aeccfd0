//! The official files: dishes by weight, what is published of them, compositions of foods, shares kept by heat.

use std::collections::BTreeMap;
use std::path::Path;

use anyhow::{Context, Result};

use potwright_larder::official::value;

use crate::larder::official::{COLUMNS, Figures, figures, number, text};

/// Names the folder of official files.
pub(super) const FOLDER: &str = "POTWRIGHT_DATA";

/// A line of a dish's list.
#[derive(Clone, Debug)]
pub(super) struct Line {
    /// NDB number of a food, five digits; or the code of another dish, eight.
    pub(super) code: String,
    pub(super) grams: f64,
    /// Code of the retention factors; '0' for none.
    pub(super) factor: String,
    /// Water gained, percent of the grams; negative when lost.
    pub(super) moisture_percent: f64,
}

/// A dish as its list has it.
#[derive(Clone, Debug)]
pub(super) struct Dish {
    pub(super) code: String,
    pub(super) name: String,
    pub(super) lines: Vec<Line>,
}

impl Dish {
    /// Grams of the finished dish.
    pub(super) fn finished_g(&self) -> f64 {
        let weighed = self.lines.iter().map(|line| line.grams);
        weighed.sum::<f64>() + self.water_g()
    }

    /// Grams of water gained; negative when lost.
    pub(super) fn water_g(&self) -> f64 {
        let gained = self.lines.iter().map(|line| line.grams * line.moisture_percent / 100.0);
        gained.sum()
    }
}

/// Columns of the published nutrients that we judge by or compose from, under the names of [`COLUMNS`].
const PUBLISHED: [(&str, &str); 17] = [
    ("water_g", "Water (g)"),
    ("energy_kcal", "Energy (kcal)"),
    ("protein_g", "Protein (g)"),
    ("fat_g", "Total Fat (g)"),
    ("saturated_g", "Fatty acids, total saturated (g)"),
    ("carbohydrate_g", "Carbohydrate (g)"),
    ("fibre_g", "Fiber, total dietary (g)"),
    ("sugars_g", "Sugars, total (g)"),
    ("alcohol_g", "Alcohol (g)"),
    ("sodium_mg", "Sodium (mg)"),
    ("potassium_mg", "Potassium (mg)"),
    ("calcium_mg", "Calcium (mg)"),
    ("iron_mg", "Iron (mg)"),
    ("cholesterol_mg", "Cholesterol (mg)"),
    ("vitamin_a_ug", "Vitamin A, RAE (mcg_RAE)"),
    ("vitamin_c_mg", "Vitamin C (mg)"),
    ("vitamin_d_ug", "Vitamin D (D2 + D3) (mcg)"),
];

/// Columns of the retention factors, under the names of [`COLUMNS`].
pub(super) const FACTORS: [(&str, &str); 7] = [
    ("calcium_mg", "calcium"),
    ("iron_mg", "iron"),
    ("potassium_mg", "potassium"),
    ("sodium_mg", "sodium"),
    ("vitamin_a_ug", "vita_re"),
    ("vitamin_c_mg", "vitc"),
    ("alcohol_g", "alcohol"),
];

/// Percent kept, in the order of [`FACTORS`].
pub(super) type Factors = [f64; FACTORS.len()];

/// All files together.
pub(super) struct Fndds {
    pub(super) dishes: BTreeMap<String, Dish>,
    /// Per 100 g, of foods by NDB number and of dishes by code.
    pub(super) figures: BTreeMap<String, Figures>,
    pub(super) factors: BTreeMap<String, Factors>,
}

impl Fndds {
    /// Reads the files of a folder.
    pub(super) fn read(folder: &Path) -> Result<Self> {
        let mut figures = figures(folder)?;
        published(&text(&folder.join("fndds_nutrients.tsv.gz"))?, &mut figures)?;
        Ok(Fndds {
            dishes: dishes(&text(&folder.join("fndds_ingredients.tsv.gz"))?)?,
            factors: factors(&text(&folder.join("retention6.tsv"))?)?,
            figures,
        })
    }

    /// One figure per 100 g; none when it is not determined.
    pub(super) fn figure(&self, code: &str, column: &str) -> Option<f64> {
        value(self.figures.get(code)?, column)
    }

    /// Share of a nutrient that a line keeps, 0–1.
    pub(super) fn kept(&self, line: &Line, column: &str) -> f64 {
        let at = FACTORS.iter().position(|(ours, _)| *ours == column);
        let factors = self.factors.get(&line.factor);
        at.and_then(|at| factors?.get(at))
            .map_or(1.0, |percent| percent / 100.0)
    }
}

/// Place of a figure among [`COLUMNS`].
pub(super) fn place(column: &str) -> Option<usize> {
    COLUMNS.iter().position(|(ours, ..)| *ours == column)
}

/// A tab-separated text by the names of its columns.
struct Sheet<'a> {
    heads: Vec<&'a str>,
    lines: std::str::Lines<'a>,
}

impl<'a> Sheet<'a> {
    fn of(text: &'a str) -> Self {
        let mut lines = text.lines();
        let heads = lines.next().unwrap_or("").split('\t').collect();
        Sheet { heads, lines }
    }

    fn column(&self, head: &str) -> Result<usize> {
        let at = self.heads.iter().position(|name| *name == head);
        at.with_context(|| format!("no column '{head}'"))
    }

    fn rows(self) -> impl Iterator<Item = Vec<&'a str>> {
        self.lines.map(|line| line.split('\t').collect())
    }
}

fn dishes(text: &str) -> Result<BTreeMap<String, Dish>> {
    let sheet = Sheet::of(text);
    let [code, name, food, grams, factor, moisture] = [
        "Food code",
        "Main food description",
        "Ingredient code",
        "Ingredient weight (g)",
        "Retention code",
        "Moisture change (%)",
    ]
    .map(|head| sheet.column(head));
    let (code, name, food, grams, factor, moisture) = (code?, name?, food?, grams?, factor?, moisture?);
    let mut dishes = BTreeMap::new();
    for row in sheet.rows() {
        let cell = |at: usize| row.get(at).copied().unwrap_or("");
        let figure = |at: usize| number(cell(at)).with_context(|| format!("no number in '{}'", row.join(" ")));
        let dish = dishes.entry(cell(code).to_owned()).or_insert_with(|| Dish {
            code: cell(code).to_owned(),
            name: cell(name).to_owned(),
            lines: Vec::new(),
        });
        dish.lines.push(Line {
            code: format!("{:0>5}", cell(food)),
            grams: figure(grams)?,
            factor: cell(factor).to_owned(),
            moisture_percent: figure(moisture)?,
        });
    }
    Ok(dishes)
}

/// Adds what is published of the dishes. Ash is not: it is what is left of 100 g, as carbohydrate is by difference.
fn published(text: &str, figures: &mut BTreeMap<String, Figures>) -> Result<()> {
    let sheet = Sheet::of(text);
    let code = sheet.column("Food code")?;
    let mut columns = Vec::new();
    for (ours, theirs) in PUBLISHED {
        let ours = place(ours).with_context(|| format!("no figure '{ours}'"))?;
        columns.push((ours, sheet.column(theirs)?));
    }
    let ash = place("ash_g").context("no figure 'ash_g'")?;
    let proximates = ["water_g", "protein_g", "fat_g", "carbohydrate_g", "alcohol_g"].map(place);
    for row in sheet.rows() {
        let cell = |at: usize| row.get(at).copied().unwrap_or("");
        let mut all = Figures::default();
        for (ours, theirs) in &columns {
            all[*ours] = number(cell(*theirs));
        }
        let sum: f64 = proximates.iter().flatten().filter_map(|at| all[*at]).sum();
        all[ash] = Some((100.0 - sum).max(0.0));
        figures.insert(cell(code).to_owned(), all);
    }
    Ok(())
}

fn factors(text: &str) -> Result<BTreeMap<String, Factors>> {
    let sheet = Sheet::of(text);
    let code = sheet.column("code")?;
    let mut columns = [0; FACTORS.len()];
    for (column, (_, theirs)) in columns.iter_mut().zip(FACTORS) {
        *column = sheet.column(theirs)?;
    }
    let mut factors = BTreeMap::new();
    for row in sheet.rows() {
        let cell = |at: usize| row.get(at).copied().unwrap_or("");
        let mut percent = Factors::default();
        for (percent, column) in percent.iter_mut().zip(columns) {
            *percent = number(cell(column)).with_context(|| format!("no factor in '{}'", row.join(" ")))?;
        }
        factors.insert(cell(code).to_owned(), percent);
    }
    Ok(factors)
}
