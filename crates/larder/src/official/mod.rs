//! Complete composition tables, in the layouts they are published in: lines in, figures out.
//!
//! * [`Layout::Release`]: the USDA National Nutrient Database for Standard Reference as ASCII files, cells parted by `^`
//!   and texts between `~`; order of columns as in the documentation of Release 28.
//! * [`Layout::FoodDataCentral`]: the folder of CSV files of USDA FoodData Central, columns found by their names (names
//!   seen in public use of those files; the numbers of nutrients as in the release).
//!
//! The caller reads the files of [`Layout::files`] in their order and hands over line after line, so that a table of any
//! size can be read; [`Reading::done`] gives the [`Official`] table. An empty cell is *not determined*, and stays so.
//! [`render::table`] writes such a table in the layout of a book's own foods.

mod balance;
mod csv;
mod error;
mod fdc;
mod groups;
pub mod household;
mod release;
mod render;

use std::collections::BTreeMap;

pub use balance::balance;
pub use error::{OfficialError, OfficialFault};
pub use render::{NO_OFFICIAL_REFUSE, cell, is_weighed, signed, table};

use fdc::FoodDataCentral;
use release::Release;

/// How many figures a food has in a composition table.
pub const FIGURES: usize = 22;

/// Our composition columns in order, and the numbers of the nutrient they are read from, the preferred first; none for
/// the three energy factors, which stand with the food. Numbers as in the documentation of SR Release 28; energy by
/// specific and by general factors (958, 957) and sugars by the labelling act (269.3) as FoodData Central's own foods
/// have them (from memory).
pub const COLUMNS: [(&str, &[&str]); FIGURES] = [
    ("water_g", &["255"]),
    ("energy_kcal", &["208", "958", "957"]),
    ("protein_g", &["203"]),
    ("fat_g", &["204", "298"]),
    ("saturated_g", &["606"]),
    ("carbohydrate_g", &["205"]),
    ("fibre_g", &["291"]),
    ("sugars_g", &["269", "269.3"]),
    ("starch_g", &["209"]),
    ("ash_g", &["207"]),
    ("alcohol_g", &["221"]),
    ("sodium_mg", &["307"]),
    ("potassium_mg", &["306"]),
    ("calcium_mg", &["301"]),
    ("iron_mg", &["303"]),
    ("cholesterol_mg", &["601"]),
    ("vitamin_a_ug", &["320"]),
    ("vitamin_c_mg", &["401"]),
    ("vitamin_d_ug", &["328"]),
    ("protein_factor", &[]),
    ("fat_factor", &[]),
    ("carbohydrate_factor", &[]),
];

/// The figures of a food per 100 g, in the order of [`COLUMNS`]; the units stand in the columns' names.
pub type Figures = [Option<f64>; FIGURES];

/// The figure of one of our columns.
#[must_use]
pub fn value(figures: &Figures, column: &str) -> Option<f64> {
    let place = COLUMNS.iter().position(|(ours, _)| *ours == column)?;
    figures.get(place).copied().flatten()
}

/// The column a nutrient's number belongs to, and its rank among the numbers for that column, the preferred nought.
fn column_of(number: &str) -> Option<(usize, usize)> {
    COLUMNS.iter().enumerate().find_map(|(place, (_, numbers))| {
        let rank = numbers.iter().position(|its| *its == number)?;
        Some((place, rank))
    })
}

/// A household weight as the official table words it.
#[derive(Clone, Debug, PartialEq)]
pub struct Household {
    /// Its number among the food's weights.
    pub seq: u32,
    /// How many of the measure weigh so much.
    pub amount: f64,
    /// The measure in the table's own words.
    pub text: String,
    /// Grams of that amount.
    pub grams: f64,
}

/// A food of an official table.
#[derive(Clone, Debug, PartialEq)]
pub struct OfficialFood {
    /// Its name there.
    pub description: String,
    /// The four-digit code of its food group; empty when the table has none for it.
    pub group: String,
    /// Composition per 100 g edible portion.
    pub figures: Figures,
    /// Refuse of the food as purchased, per cent.
    pub refuse_percent: Option<f64>,
    /// Household weights in their order.
    pub weights: Vec<Household>,
    /// Where its figures are from: `USDA SR, NDB 11124`.
    pub source: String,
}

/// An official table by the numbers of its foods: `11124` in the release, `sr11124` or `fdc746769` as keys.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Official {
    /// The foods by key: `sr` and the NDB number, or `fdc` and the number of FoodData Central.
    pub foods: BTreeMap<String, OfficialFood>,
    /// Entries that are no foods of the table (single samples, trade goods), by the table's own word for them.
    pub passed_over: BTreeMap<String, usize>,
}

/// The layouts an official table comes in.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Layout {
    /// `FOOD_DES.txt`, `NUT_DATA.txt`, `WEIGHT.txt`.
    Release,
    /// `food.csv`, `nutrient.csv`, `food_nutrient.csv` and more.
    FoodDataCentral,
}

/// A file of a layout.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct LayoutFile {
    /// Its name.
    pub name: &'static str,
    /// Whether the table can be read without it.
    pub may_lack: bool,
}

const fn needed(name: &'static str) -> LayoutFile {
    LayoutFile { name, may_lack: false }
}

const fn extra(name: &'static str) -> LayoutFile {
    LayoutFile { name, may_lack: true }
}

impl Layout {
    /// All layouts, each known by the first of its needed files.
    pub const ALL: [Layout; 2] = [Layout::Release, Layout::FoodDataCentral];

    /// The files of the layout, in the order in which they must be read.
    #[must_use]
    pub const fn files(self) -> &'static [LayoutFile] {
        const RELEASE: [LayoutFile; 3] = [needed("FOOD_DES.txt"), needed("NUT_DATA.txt"), extra("WEIGHT.txt")];
        const CENTRAL: [LayoutFile; 9] = [
            needed("food.csv"),
            needed("nutrient.csv"),
            extra("food_category.csv"),
            extra("measure_unit.csv"),
            extra("sr_legacy_food.csv"),
            extra("food_nutrient_conversion_factor.csv"),
            extra("food_calorie_conversion_factor.csv"),
            needed("food_nutrient.csv"),
            extra("food_portion.csv"),
        ];
        match self {
            Layout::Release => &RELEASE,
            Layout::FoodDataCentral => &CENTRAL,
        }
    }

    /// What the table is called.
    #[must_use]
    pub const fn title(self) -> &'static str {
        match self {
            Layout::Release => "USDA National Nutrient Database for Standard Reference",
            Layout::FoodDataCentral => "USDA FoodData Central",
        }
    }
}

/// A table while it is read.
#[derive(Debug)]
pub struct Reading {
    table: Table,
}

#[derive(Debug)]
enum Table {
    Release(Release),
    FoodDataCentral(Box<FoodDataCentral>),
}

impl Reading {
    /// Nothing read yet.
    #[must_use]
    pub fn new(layout: Layout) -> Reading {
        let table = match layout {
            Layout::Release => Table::Release(Release::default()),
            Layout::FoodDataCentral => Table::FoodDataCentral(Box::default()),
        };
        Reading { table }
    }

    /// Takes the next line of a file, which has the number `line`, counted from 1; `text` may hold the line's end.
    ///
    /// # Errors
    ///
    /// The line has too few cells, a cell that must be a number is none, or a CSV file's heading lacks a column.
    pub fn line(&mut self, file: &str, line: usize, text: &str) -> Result<(), OfficialError> {
        let text = text.trim_end_matches(['\n', '\r']);
        let text = if line == 1 {
            text.trim_start_matches('\u{feff}')
        } else {
            text
        };
        let done = match &mut self.table {
            Table::Release(release) => release.line(file, text),
            Table::FoodDataCentral(central) => central.line(file, line, text),
        };
        done.map_err(|fault| OfficialError {
            file: file.to_owned(),
            line,
            fault,
        })
    }

    /// The table, foods without a single figure left out.
    ///
    /// # Errors
    ///
    /// No food has any figure.
    pub fn done(self) -> Result<Official, OfficialError> {
        let (mut official, file) = match self.table {
            Table::Release(release) => (release.official, "NUT_DATA.txt"),
            Table::FoodDataCentral(central) => (central.done(), "food_nutrient.csv"),
        };
        let before = official.foods.len();
        official
            .foods
            .retain(|_, food| food.figures.iter().take(FIGURES - 3).any(Option::is_some));
        let bare = before - official.foods.len();
        if bare > 0 {
            official.passed_over.insert("without any figure".to_owned(), bare);
        }
        if official.foods.is_empty() {
            return Err(OfficialError {
                file: file.to_owned(),
                line: 1,
                fault: OfficialFault::NoFoods,
            });
        }
        Ok(official)
    }
}

/// A cell that is a number or empty.
fn number(column: &'static str, cell: &str) -> Result<Option<f64>, OfficialFault> {
    let cell = cell.trim();
    if cell.is_empty() {
        return Ok(None);
    }
    match cell.parse::<f64>() {
        Ok(value) if value.is_finite() => Ok(Some(value)),
        _ => Err(OfficialFault::Number(column, cell.to_owned())),
    }
}
