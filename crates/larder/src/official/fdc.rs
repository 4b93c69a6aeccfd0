//! The CSV files of FoodData Central. Which column means what is told by its name in the heading.
//!
//! Foods of three kinds are taken: `foundation_food`, `sr_legacy_food` and `survey_fndds_food`. Single samples and
//! acquisitions are parts of other foods; trade goods bear names that have no place on a page.

use std::collections::{BTreeMap, HashMap};

use super::csv::{Columns, cells};
use super::release;
use super::{FIGURES, Household, Official, OfficialFault, OfficialFood, column_of, number};

/// Kinds of entries that are foods, and what their source is called.
const KINDS: [(&str, &str); 3] = [
    ("foundation_food", "Foundation"),
    ("sr_legacy_food", "SR Legacy"),
    ("survey_fndds_food", "FNDDS"),
];

/// The unit that stands for none (number seen in public use of these files).
const NO_UNIT: &str = "9999";

/// The files while they are read.
#[derive(Debug, Default)]
pub(super) struct FoodDataCentral {
    heading: Heading,
    /// By the number of FoodData Central.
    foods: BTreeMap<u64, OfficialFood>,
    passed_over: BTreeMap<String, usize>,
    /// Nutrient id to column and rank.
    nutrients: HashMap<String, (usize, usize)>,
    /// Rank of figures that are not from the preferred nutrient, by food and column.
    second_choice: HashMap<(u64, usize), usize>,
    /// Category id to group code.
    categories: HashMap<String, String>,
    units: HashMap<String, String>,
    /// Number of a set of factors to its food.
    factors: HashMap<String, u64>,
    /// Food to NDB number.
    ndb: BTreeMap<u64, String>,
}

/// The heading of the file being read.
#[derive(Debug, Default)]
enum Heading {
    #[default]
    None,
    Two(Columns<2>),
    Three(Columns<3>),
    Four(Columns<4>),
    Seven(Columns<7>),
}

impl FoodDataCentral {
    pub(super) fn line(&mut self, file: &str, line: usize, text: &str) -> Result<(), OfficialFault> {
        if text.is_empty() {
            return Ok(());
        }
        let cells = cells(text)?;
        if line == 1 {
            self.heading = heading(file, &cells)?;
            return Ok(());
        }
        match (&self.heading, file) {
            (Heading::Four(columns), "food.csv") => self.food(columns.of(&cells)?),
            (Heading::Two(columns), "nutrient.csv") => {
                let [id, nutrient] = columns.of(&cells)?;
                // Numbers are written '208' in one release and '208.0' in another.
                if let Some(place) = column_of(nutrient.trim_end_matches(".0")) {
                    self.nutrients.insert(id.to_owned(), place);
                }
                Ok(())
            }
            (Heading::Two(columns), _) => {
                let [id, what] = columns.of(&cells)?;
                self.pair(file, id, what)
            }
            (Heading::Four(columns), _) => self.factor(columns.of(&cells)?),
            (Heading::Three(columns), _) => self.nutrient(columns.of(&cells)?),
            (Heading::Seven(columns), _) => self.portion(columns.of(&cells)?),
            (Heading::None, _) => Ok(()),
        }
    }

    fn food(&mut self, [id, kind, description, category]: [&str; 4]) -> Result<(), OfficialFault> {
        let Some((_, source)) = KINDS.iter().find(|(its, _)| *its == kind) else {
            *self.passed_over.entry(kind.to_owned()).or_default() += 1;
            return Ok(());
        };
        let id = whole("fdc_id", id)?;
        let food = OfficialFood {
            description: description.to_owned(),
            group: category.to_owned(),
            figures: [None; FIGURES],
            refuse_percent: None,
            weights: Vec::new(),
            source: format!("USDA FoodData Central, {source}, FDC {id}"),
        };
        self.foods.insert(id, food);
        Ok(())
    }

    /// The small files of which two columns matter.
    fn pair(&mut self, file: &str, id: &str, what: &str) -> Result<(), OfficialFault> {
        match file {
            "food_category.csv" => {
                self.categories.insert(id.to_owned(), what.to_owned());
            }
            "measure_unit.csv" => {
                self.units.insert(id.to_owned(), what.to_owned());
            }
            "sr_legacy_food.csv" => {
                self.ndb.insert(whole("fdc_id", id)?, what.to_owned());
            }
            _ => {
                self.factors.insert(id.to_owned(), whole("fdc_id", what)?);
            }
        }
        Ok(())
    }

    fn factor(&mut self, [set, protein, fat, carbohydrate]: [&str; 4]) -> Result<(), OfficialFault> {
        let food = self.factors.get(set).and_then(|food| self.foods.get_mut(food));
        let factors = [
            number("protein_value", protein)?,
            number("fat_value", fat)?,
            number("carbohydrate_value", carbohydrate)?,
        ];
        if let Some(food) = food {
            for (figure, factor) in food.figures.iter_mut().skip(FIGURES - 3).zip(factors) {
                *figure = factor;
            }
        }
        Ok(())
    }

    fn nutrient(&mut self, [id, nutrient, amount]: [&str; 3]) -> Result<(), OfficialFault> {
        // Some releases of the survey foods name a nutrient by its number and not by its id (from memory).
        let Some((place, rank)) = self.nutrients.get(nutrient).copied().or_else(|| column_of(nutrient)) else {
            return Ok(());
        };
        let id = whole("fdc_id", id)?;
        let Some(food) = self.foods.get_mut(&id) else {
            return Ok(());
        };
        let (amount, Some(figure)) = (number("amount", amount)?, food.figures.get_mut(place)) else {
            return Ok(());
        };
        let held = self.second_choice.get(&(id, place)).copied().unwrap_or(0);
        if amount.is_some() && (figure.is_none() || rank < held) {
            *figure = amount;
            self.second_choice.insert((id, place), rank);
        }
        Ok(())
    }

    fn portion(&mut self, [id, seq, amount, unit, said, modifier, grams]: [&str; 7]) -> Result<(), OfficialFault> {
        let Some(food) = self.foods.get_mut(&whole("fdc_id", id)?) else {
            return Ok(());
        };
        let amount = number("amount", amount)?;
        let unit = match self.units.get(unit) {
            Some(unit) if unit != "undetermined" => unit.as_str(),
            None if unit != NO_UNIT && !unit.bytes().all(|byte| byte.is_ascii_digit()) => unit,
            _ => "",
        };
        let worded = [unit, modifier].into_iter().filter(|part| !part.is_empty());
        let worded = worded.collect::<Vec<_>>().join(", ");
        // A survey food says '1 cup, diced' in words and leaves the rest empty.
        let (amount, text) = match (worded.is_empty(), said.split_once(' ')) {
            (true, Some((first, rest))) => match first.parse::<f64>() {
                Ok(first) => (Some(first), rest.to_owned()),
                Err(_) => (amount, said.to_owned()),
            },
            (true, None) => (amount, said.to_owned()),
            (false, _) => (amount, worded),
        };
        let (amount, grams) = (amount.unwrap_or(1.0), number("gram_weight", grams)?.unwrap_or(0.0));
        if amount > 0.0 && grams > 0.0 && !text.is_empty() {
            let seq = number("seq_num", seq)?.map_or(food.weights.len() as u32 + 1, |seq| seq.max(0.0) as u32);
            food.weights.push(Household {
                seq,
                amount,
                text,
                grams,
            });
        }
        Ok(())
    }

    /// The table under its keys: foods of the release under their NDB number, the others under their own.
    pub(super) fn done(self) -> Official {
        let mut official = Official {
            foods: BTreeMap::new(),
            passed_over: self.passed_over,
        };
        for (id, mut food) in self.foods {
            if let Some(code) = self.categories.get(&food.group) {
                food.group.clone_from(code);
            }
            food.weights.sort_by_key(|weight| weight.seq);
            let key = match self.ndb.get(&id) {
                Some(ndb) => {
                    food.source.push_str(&format!(", NDB {ndb:0>5}"));
                    release::key(ndb)
                }
                None => format!("fdc{id}"),
            };
            official.foods.insert(key, food);
        }
        official
    }
}

fn heading(file: &str, cells: &[String]) -> Result<Heading, OfficialFault> {
    Ok(match file {
        "food.csv" => Heading::Four(Columns::find(
            cells,
            ["fdc_id", "data_type", "description", "food_category_id"],
        )?),
        "nutrient.csv" => Heading::Two(Columns::find(cells, ["id", "nutrient_nbr"])?),
        "food_category.csv" => Heading::Two(Columns::find(cells, ["id", "code"])?),
        "measure_unit.csv" => Heading::Two(Columns::find(cells, ["id", "name"])?),
        "sr_legacy_food.csv" => Heading::Two(Columns::find(cells, ["fdc_id", "NDB_number"])?),
        "food_nutrient_conversion_factor.csv" => Heading::Two(Columns::find(cells, ["id", "fdc_id"])?),
        "food_calorie_conversion_factor.csv" => Heading::Four(Columns::find(
            cells,
            [
                "food_nutrient_conversion_factor_id",
                "protein_value",
                "fat_value",
                "carbohydrate_value",
            ],
        )?),
        "food_nutrient.csv" => Heading::Three(Columns::find(cells, ["fdc_id", "nutrient_id", "amount"])?),
        "food_portion.csv" => Heading::Seven(Columns::find(
            cells,
            [
                "fdc_id",
                "seq_num",
                "amount",
                "measure_unit_id",
                "portion_description",
                "modifier",
                "gram_weight",
            ],
        )?),
        _ => Heading::None,
    })
}

/// A cell that must be a whole number.
fn whole(column: &'static str, cell: &str) -> Result<u64, OfficialFault> {
    cell.parse().map_err(|_| OfficialFault::Number(column, cell.to_owned()))
}
