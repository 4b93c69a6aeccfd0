//! The ASCII files of the release. Columns as in the documentation of SR Release 28: `FOOD_DES` has number, group,
//! description, …, refuse (9th), …, and the energy factors of protein, fat and carbohydrate (12th to 14th); `NUT_DATA`
//! has food, nutrient, amount; `WEIGHT` has food, sequence, amount, measure, grams.

use super::{FIGURES, Household, Official, OfficialFault, OfficialFood, column_of, number};

/// The release while it is read.
#[derive(Debug, Default)]
pub(super) struct Release {
    pub(super) official: Official,
}

impl Release {
    pub(super) fn line(&mut self, file: &str, text: &str) -> Result<(), OfficialFault> {
        if text.trim().is_empty() {
            return Ok(());
        }
        let cells: Vec<&str> = text.split('^').map(|cell| cell.trim_matches('~')).collect();
        match file {
            "FOOD_DES.txt" => self.food(&cells),
            "NUT_DATA.txt" => self.nutrient(&cells),
            "WEIGHT.txt" => self.weight(&cells),
            _ => Ok(()),
        }
    }

    fn food(&mut self, cells: &[&str]) -> Result<(), OfficialFault> {
        let &[
            ndb,
            group,
            description,
            _,
            _,
            _,
            _,
            _,
            refuse,
            _,
            _,
            protein,
            fat,
            carbohydrate,
            ..,
        ] = cells
        else {
            return Err(OfficialFault::Cells(cells.len(), 14));
        };
        let mut figures = [None; FIGURES];
        let factors = [
            number("Pro_Factor", protein)?,
            number("Fat_Factor", fat)?,
            number("CHO_Factor", carbohydrate)?,
        ];
        for (figure, factor) in figures.iter_mut().skip(FIGURES - 3).zip(factors) {
            *figure = factor;
        }
        let food = OfficialFood {
            description: description.to_owned(),
            group: group.to_owned(),
            figures,
            refuse_percent: number("Refuse", refuse)?,
            weights: Vec::new(),
            source: format!("USDA SR, NDB {ndb}"),
        };
        self.official.foods.insert(key(ndb), food);
        Ok(())
    }

    fn nutrient(&mut self, cells: &[&str]) -> Result<(), OfficialFault> {
        let &[ndb, nutrient, amount, ..] = cells else {
            return Err(OfficialFault::Cells(cells.len(), 3));
        };
        let Some((place, 0)) = column_of(nutrient) else {
            return Ok(());
        };
        let amount = number("Nutr_Val", amount)?;
        let food = self.official.foods.get_mut(&key(ndb));
        if let Some(figure) = food.and_then(|food| food.figures.get_mut(place)) {
            *figure = amount;
        }
        Ok(())
    }

    fn weight(&mut self, cells: &[&str]) -> Result<(), OfficialFault> {
        let &[ndb, seq, amount, text, grams, ..] = cells else {
            return Err(OfficialFault::Cells(cells.len(), 5));
        };
        let seq = number("Seq", seq)?;
        let (amount, grams) = (number("Amount", amount)?, number("Gm_Wgt", grams)?);
        let weights = self.official.foods.get_mut(&key(ndb)).map(|food| &mut food.weights);
        if let (Some(weights), Some(seq), Some(amount), Some(grams)) = (weights, seq, amount, grams)
            && amount > 0.0
            && grams > 0.0
        {
            weights.push(Household {
                seq: seq.max(0.0) as u32,
                amount,
                text: text.to_owned(),
                grams,
            });
        }
        Ok(())
    }
}

/// The key of an NDB number: five digits, a nought in front where the table leaves it out.
pub(super) fn key(ndb: &str) -> String {
    format!("sr{ndb:0>5}")
}
