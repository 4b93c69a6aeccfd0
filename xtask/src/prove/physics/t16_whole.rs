//! Table 16: whole cases, from end to end. Each states its own tolerance.

use potwright_pot::physics::conduction::Form;
use potwright_pot::physics::softening::time_multiple;
use potwright_pot::physics::water;
use potwright_pot::{Aim, Burner, BurnerKind, Material, Matter, Place, Pot, Stuff, Trace};
use potwright_reckon::label::{DailyValue, UsRow, us_daily_value, us_text};
use potwright_reckon::{BodyWord, Verdict, flour_for_body_g, judge_cooling};

use super::body::Body;
use super::check::{Check, Judged};
use super::held;
use super::pots::{at_the_sea, boiled_off_kg, central, lot, minutes_to_boil, process, room, stretch, thick};
use super::row::Row;
use super::{t03_properties, t04_conduction, t06_lethality, t07_alcohol, t14_freezing};

/// Sodium in a gram of salt, g: atomic weights 22.990 and 35.453.
const SODIUM_IN_SALT: f64 = 22.990 / 58.443;

pub(super) fn cases(row: &Row) -> Judged {
    match row.id() {
        "E03" => egg(),
        "E04" => roast(row),
        "E05" => warming(row),
        "E07" => stews(row),
        "E08" => induction(row),
        "E09" => reduced_soup(row),
        "E11" => carrots(row),
        "E16" => roux(row),
        "E17" => carrot_properties(row),
        "E18" => {
            let seconds = t14_freezing::plank_sphere_s();
            held([Some(Check::stated(row, "s to freeze", seconds, "2603", 0.005))])
        }
        "E10" => t07_alcohol::stew(),
        _ => Judged::LeftOut("of labels, allergens, statistics, factors or queries: held by the crates they belong to"),
    }
}

fn egg() -> Judged {
    let egg = Body {
        form: Form::Sphere,
        radius_m: 0.025,
        film_w_m2k: 1200.0,
        conductivity_w_mk: 0.627,
        diffusivity_m2_s: 0.151e-6,
    };
    let seconds = egg.seconds_until((70.0 - 95.0) / (5.0 - 95.0));
    held([Some(Check::between(
        "s to 70 °C at the centre",
        seconds,
        "861 to 865, 1 %",
        861.0 * 0.99,
        865.0 * 1.01,
    ))])
}

fn roast(row: &Row) -> Judged {
    // 60.0, 62.8 and 65.6 °C are 140, 145 and 150 °F.
    let cases = [(140.0, 720.0), (145.0, 240.0), (150.0, 67.0)];
    let check = |(fahrenheit, seconds)| {
        let quantity = format!("logs at {fahrenheit} °F, {seconds} s");
        Some(Check::stated(
            row,
            &quantity,
            t06_lethality::held_roast(fahrenheit, seconds),
            "6.5",
            0.10,
        ))
    };
    held(cases.map(check))
}

fn warming(row: &Row) -> Judged {
    let (early, late) = (t06_lethality::warming_centre(18.0), t06_lethality::warming_centre(20.0));
    held([
        Some(Check::stated(row, "min at 70 °C, 18 min", early.0, "1.7557", 0.001)),
        Some(Check::stated(row, "logs, 18 min", early.1, "5.27", 0.001)),
        Some(Check::stated(row, "min at 70 °C, 20 min", late.0, "3.2502", 0.001)),
        Some(Check::stated(row, "logs, 20 min", late.1, "9.75", 0.001)),
    ])
}

fn stews(row: &Row) -> Judged {
    let hours = |diameter_m, height_m| t04_conduction::unstirred_s(diameter_m, height_m) / 3600.0;
    let pot = Pot::new("pot", 30.0, 26.0, Material::Steel, 2.0);
    let cool = stretch(Place::Refrigerator, Aim::Off, Some(48.0 * 60.0), None);
    // 30 cm wide and 25 cm deep: 17.7 litres.
    let trace = central(&process(pot, vec![thick(18.2, 90.0)], vec![cool]), &room(21.0));
    let fails = |trace: &Trace| {
        let cooling = trace.coolings.last()?;
        Some(judge_cooling(cooling.stage_one_h, cooling.total_h, cooling.followed_h) == Verdict::Fails)
    };
    let flagged = fails(&trace) == Some(true);
    held([
        Some(Check::stated(row, "h, 20 × 5 cm", hours(0.20, 0.05), "0.69", 0.01)),
        Some(Check::stated(row, "h, 30 × 25 cm", hours(0.30, 0.25), "8.82", 0.01)),
        Some(Check::seen(
            "the pot, cooked, fails two hours",
            flagged,
            "must be flagged",
        )),
    ])
}

fn induction(row: &Row) -> Judged {
    let burner = Burner::new(BurnerKind::Induction, 1800.0);
    let minutes = minutes_to_boil(4.0, 15.0, &burner);
    let vapour_kg = boiled_off_kg(4.0, 30.0, &burner);
    held([
        Some(Check::stated(row, "min to the boil", minutes, "15.69", 0.01)),
        Some(Check::stated(row, "kg boiled off in 30 min", vapour_kg, "1.206", 0.01)),
    ])
}

/// 4.0 kg of soup with 24 g of salt in it, kept boiling: what its liquid holds when 2.8 kg are left.
fn reduced_soup(row: &Row) -> Judged {
    let soup = lot(20.0, &[(Stuff::Water, 3.976), (Stuff::Salt, 0.024)]);
    let boil = stretch(Place::Hob, Aim::Boil, Some(120.0), None);
    let pot = Pot::new("pot", 24.0, 16.0, Material::Steel, 1.5);
    let burner = Burner::new(BurnerKind::Induction, 3500.0);
    let trace = central(&process(pot, vec![soup], vec![boil]), &at_the_sea(burner));
    let salt_percent = 100.0 * salinity_at(&trace, 2.8);
    let sodium_mg = 1000.0 * 245.0 * salt_percent / 100.0 * SODIUM_IN_SALT;
    let label: f64 = us_text(UsRow::Sodium, sodium_mg).parse().unwrap_or(f64::NAN);
    let daily = us_daily_value("sodium", sodium_mg, DailyValue::Macronutrient).unwrap_or_default();
    let daily: f64 = daily.trim_end_matches(" %").parse().unwrap_or(f64::NAN);
    held([
        Some(Check::stated(row, "% salt", salt_percent, "0.857", 0.005)),
        Some(Check::stated(row, "mg sodium in 245 g", sodium_mg, "826", 0.005)),
        Some(Check::between("mg on the label", label, "830", 830.0, 830.0)),
        Some(Check::between("% of the daily value", daily, "36", 36.0, 36.0)),
    ])
}

/// Salt in the liquid, kilogram per kilogram, when the first vessel holds so much, between two samples.
fn salinity_at(trace: &Trace, kg: f64) -> f64 {
    let vessel = |sample: &potwright_pot::Sample| sample.vessels.first().copied();
    let there = trace.samples.windows(2).find_map(|pair| {
        let (before, after) = (vessel(&pair[0])?, vessel(&pair[1])?);
        if before.mass_kg < kg || after.mass_kg >= kg {
            return None;
        }
        // Salt stays while water goes: its mass, not its share, runs straight between two samples.
        let part = (before.mass_kg - kg) / (before.mass_kg - after.mass_kg);
        let salt = |sample: potwright_pot::VesselSample| sample.liquid_salinity * sample.mass_kg;
        Some((salt(before) + part * (salt(after) - salt(before))) / kg)
    });
    there.unwrap_or(f64::NAN)
}

fn carrots(row: &Row) -> Judged {
    let boiling_c = water::boiling_c(water::air_pressure_kpa(1609.344));
    let multiple = time_multiple(boiling_c, 159.0);
    held([
        Some(Check::between("boils at, °C", boiling_c, "94.62 ± 0.05", 94.57, 94.67)),
        Some(Check::stated(
            row,
            "min for carrots of 20",
            20.0 * multiple,
            "42.3",
            0.01,
        )),
        Some(Check::stated(row, "times as long", multiple, "2.117", 0.01)),
    ])
}

fn roux(row: &Row) -> Judged {
    // 2.0 litres as water: 2.0 kg.
    let flour_g = flour_for_body_g(2000.0, BodyWord::LightCoat);
    held([Some(Check::stated(
        row,
        "g of flour, and of butter",
        flour_g,
        "89.9",
        0.01,
    ))])
}

fn carrot_properties(row: &Row) -> Judged {
    let mut carrot = Matter::default();
    for (stuff, percent) in [
        (Stuff::Water, 87.79),
        (Stuff::Protein, 1.03),
        (Stuff::Fat, 0.19),
        (Stuff::Starch, 7.14),
        (Stuff::Fibre, 3.0),
        (Stuff::Ash, 0.87),
    ] {
        carrot.mass_kg[stuff as usize] = percent / 100.0;
    }
    let [specific_heat, density, conductivity, latent] = t03_properties::of(&carrot, 4.0);
    held([
        Some(Check::stated(row, "cp, kJ/(kg K)", specific_heat, "3.866", 0.001)),
        // Density and conductivity as table 03c has them for this food.
        Some(Check::stated(row, "density, kg/m³", density, "1040.34", 0.001)),
        Some(Check::stated(
            row,
            "conductivity, W/(m K)",
            conductivity,
            "0.5466",
            0.001,
        )),
        Some(Check::stated(
            row,
            "cp beside the handbook's",
            specific_heat,
            "3.92",
            0.03,
        )),
        Some(Check::stated(row, "latent heat, kJ/kg", latent, "293", 0.001)),
    ])
}
