//! What a food's composition is as [`Matter`].

use potwright_larder::{Composition, Food};

use crate::{Matter, Nutrient, Stuff};

/// Sodium chloride for a gram of sodium: 58.443 ÷ 22.990 (molar masses of NaCl and Na).
const SALT_OF_SODIUM: f64 = 2.5421;

/// General energy factors in kcal/g for a food without its own (Atwater's, as in 21 CFR 101.9(c)(1)(i)(B)).
const GENERAL_KCAL: (f64, f64, f64) = (4.0, 9.0, 4.0);

/// Energy of ethanol, kcal/g, as in the composition tables.
const ALCOHOL_KCAL: f64 = 6.93;

/// Make-up of 100 g of the edible part of a food.
pub(super) fn hundred_grams(food: &Food) -> Matter {
    make_up_100_g(&food.composition, food.behaviour.acid_g)
}

/// Make-up of 100 g of the edible part, balanced to 100 g exactly, in kilograms and the nutrients' own units; `acid_g`
/// of it are organic acids, which composition tables count in the carbohydrate.
///
/// A cell that is not determined counts as nought; what is missing from 100 g, or too much, is water's, because
/// water is what differs most from one sample to the next. Only when there is not enough water is everything scaled.
/// Carbohydrate that is neither fibre, sugar nor acid is entered as starch; it thickens only in a food whose
/// behaviour names a starch. Where sugars are not determined either, it is all entered there.
#[must_use]
pub fn make_up_100_g(table: &Composition, acid_g: Option<f64>) -> Matter {
    let known = |cell: Option<f64>| cell.filter(|g| g.is_finite()).unwrap_or(0.0).max(0.0);
    let carbohydrate = known(table.carbohydrate_g);
    let fibre = known(table.fibre_g).min(carbohydrate);
    let mut rest = carbohydrate - fibre;
    let acid = known(acid_g);
    let acid_in_rest = acid.min(rest);
    rest -= acid_in_rest;
    let sugar = match (table.sugars_g, table.starch_g) {
        (None, Some(starch)) => rest - known(Some(starch)).min(rest),
        (sugars, _) => known(sugars).min(rest),
    };
    let salt = known(table.sodium_mg) / 1000.0 * SALT_OF_SODIUM;

    let mut grams = [0.0; Stuff::ALL.len()];
    let mut set = |stuff: Stuff, g: f64| grams[stuff as usize] = g;
    set(Stuff::Water, known(table.water_g));
    set(Stuff::Fat, known(table.fat_g));
    set(Stuff::Protein, known(table.protein_g));
    set(Stuff::Starch, rest - sugar);
    set(Stuff::Sugar, sugar);
    set(Stuff::Fibre, fibre);
    set(Stuff::Acid, acid);
    set(Stuff::Alcohol, known(table.alcohol_g));
    set(Stuff::Salt, salt);
    set(Stuff::Ash, (known(table.ash_g) - salt).max(0.0));
    balance(&mut grams);

    Matter {
        mass_kg: grams.map(|g| g / 1000.0),
        nutrients: nutrients(table, carbohydrate),
    }
}

/// Brings the grams to 100 by water, or by scaling when there is too little of it.
fn balance(grams: &mut [f64; Stuff::ALL.len()]) {
    let total: f64 = grams.iter().sum();
    let water = grams[Stuff::Water as usize] + 100.0 - total;
    if water >= 0.0 {
        grams[Stuff::Water as usize] = water;
    } else {
        grams[Stuff::Water as usize] = 0.0;
        let dry: f64 = grams.iter().sum();
        grams.iter_mut().for_each(|g| *g *= 100.0 / dry);
    }
}

/// Nutrients of 100 g. Energy by the food's own factors; without them the general ones, scaled to the energy of the
/// table when it gives one.
fn nutrients(table: &Composition, carbohydrate_g: f64) -> [f64; Nutrient::ALL.len()] {
    let known = |cell: Option<f64>| cell.filter(|x| x.is_finite()).unwrap_or(0.0).max(0.0);
    let protein = known(table.protein_g) * known(table.protein_factor.or(Some(GENERAL_KCAL.0)));
    let fat = known(table.fat_g) * known(table.fat_factor.or(Some(GENERAL_KCAL.1)));
    let carbohydrate = carbohydrate_g * known(table.carbohydrate_factor.or(Some(GENERAL_KCAL.2)));
    let own = [table.protein_factor, table.fat_factor, table.carbohydrate_factor]
        .iter()
        .any(Option::is_some);
    let reckoned = protein + fat + carbohydrate;
    let scale = match table.energy_kcal {
        Some(kcal) if !own && reckoned > 0.0 && kcal.is_finite() => {
            (kcal - ALCOHOL_KCAL * known(table.alcohol_g)).max(0.0) / reckoned
        }
        _ => 1.0,
    };
    let mut all = [0.0; Nutrient::ALL.len()];
    let mut set = |nutrient: Nutrient, value: f64| all[nutrient as usize] = value;
    set(Nutrient::ProteinKcal, protein * scale);
    set(Nutrient::FatKcal, fat * scale);
    set(Nutrient::CarbohydrateKcal, carbohydrate * scale);
    set(Nutrient::SaturatedG, known(table.saturated_g));
    set(Nutrient::CholesterolMg, known(table.cholesterol_mg));
    set(Nutrient::PotassiumMg, known(table.potassium_mg));
    set(Nutrient::CalciumMg, known(table.calcium_mg));
    set(Nutrient::IronMg, known(table.iron_mg));
    set(Nutrient::VitaminAUg, known(table.vitamin_a_ug));
    set(Nutrient::VitaminCMg, known(table.vitamin_c_mg));
    set(Nutrient::VitaminDUg, known(table.vitamin_d_ug));
    all
}

/// `matter` times a number.
pub(super) fn scaled(matter: &Matter, by: f64) -> Matter {
    Matter {
        mass_kg: matter.mass_kg.map(|kg| kg * by),
        nutrients: matter.nutrients.map(|x| x * by),
    }
}

/// So many kilograms of water and nothing else.
pub(super) fn water(kg: f64) -> Matter {
    let mut matter = Matter::default();
    matter.mass_kg[Stuff::Water as usize] = kg;
    matter
}
