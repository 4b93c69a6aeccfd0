//! Table 05, first half: evaporation, films at surface and wall, burners.

use potwright_pot::physics::evaporation::Surface;
use potwright_pot::physics::{film, water};
use potwright_pot::{Burner, BurnerKind};

use super::check::{CLOSED_FORM, Check, Judged, RECALLED};
use super::held;
use super::pots::{boiled_off_kg, minutes_to_boil};
use super::row::Row;

/// 05a: an open surface. Of the rate only the bracket of the three laws is asserted; each law, its formula or its air
/// being recalled, within 3 %.
pub(super) fn open_surface(row: &Row) -> Judged {
    let number = |column| row.number(column).unwrap_or(f64::NAN);
    let (diameter_m, temp_c, air_c) = (number("pot_D_m"), number("t_water_C"), number("t_air_C"));
    let surface = Surface {
        temp_c,
        diameter_m,
        air_c,
        vapour_kpa: number("RH") * water::saturation_kpa(air_c),
        pressure_kpa: 101.325,
    };
    let bracket = surface.bracket(water::latent_heat(temp_c));
    let area_m2 = std::f64::consts::PI * diameter_m * diameter_m / 4.0;
    let laws = ["evap_kg_h_carrier", "evap_kg_h_linear", "evap_kg_h_stefan"];
    let (low, high) = laws.iter().fold((f64::INFINITY, 0.0_f64), |(low, high), law| {
        (
            low.min(number(law) - row.half_unit(law)),
            high.max(number(law) + row.half_unit(law)),
        )
    });
    let printed = format!("{} to {}", row.text(laws[0]), row.text(laws[2]));
    let flux = bracket.linear * water::latent_heat(temp_c) / 3600.0;
    held([
        Some(Check::between(
            "evaporation, kg/h",
            bracket.mean() * area_m2,
            &printed,
            low,
            high,
        )),
        Check::column(row, laws[0], bracket.carrier * area_m2, RECALLED),
        Check::column(row, laws[1], bracket.linear * area_m2, RECALLED),
        Check::column(row, laws[2], bracket.stefan * area_m2, RECALLED),
        Check::column(row, "h_conv_W_m2K", bracket.convection_w_m2k, RECALLED),
        Check::column(
            row,
            "q_conv_W_m2",
            bracket.convection_w_m2k * (temp_c - air_c),
            RECALLED,
        ),
        Check::column(
            row,
            "q_rad_W_m2",
            film::radiation_w_m2(0.95, temp_c, air_c),
            CLOSED_FORM,
        ),
        Check::column(row, "q_evap_linear_W_m2", flux, RECALLED),
    ])
}

/// 05b: films by their correlations; heating and boiling in a pot that loses nothing, cooked. The sums of the row take
/// one specific heat and one latent heat throughout: 1 %, as 16 states for one of them (E08).
pub(super) fn correlations(row: &Row) -> Judged {
    let input = row.text("input");
    let after = |mark: &str| {
        let rest = input.split_once(mark)?.1;
        let end = rest.find([' ', 'W', 'C']).unwrap_or(rest.len());
        rest[..end].trim().parse::<f64>().ok()
    };
    let ours = match row.id().split('-').next() {
        Some("cc") => after("Ra=").map(film::nusselt_wall),
        Some("mc") => after("Ra=").map(film::nusselt_surface),
        Some("rad") => after("t=").map(|temp_c| film::radiation_w_m2(0.95, temp_c, 22.0)),
        Some("boil") => burner(row, after("P=")).map(|burner| boiled_off_kg(8.0, 60.0, &burner)),
        Some("heat") => burner(row, after("P=")).map(|burner| minutes_to_boil(4.0, 15.0, &burner)),
        _ => None,
    };
    let cooked = row.id().starts_with("boil") || row.id().starts_with("heat");
    let relative = if cooked { 0.01 } else { CLOSED_FORM };
    held([ours.and_then(|ours| Check::column(row, "value", ours, relative))])
}

/// The burner of a row of 05b, with the efficiency the engine knows its kind by.
fn burner(row: &Row, watts: Option<f64>) -> Option<Burner> {
    let kind = match row.id().split('-').nth(1)? {
        "gas" => BurnerKind::Gas,
        "electric" => BurnerKind::Radiant,
        "induction" => BurnerKind::Induction,
        _ => return None,
    };
    Some(Burner::new(kind, watts?))
}

/// 05c: what the engine takes burners to be.
pub(super) fn burners(row: &Row) -> Judged {
    let share = |kind: BurnerKind| 100.0 * kind.efficiency().mid;
    let ours = match row.id() {
        "eff-gas" => share(BurnerKind::Gas),
        "eff-electric" => share(BurnerKind::Radiant),
        "eff-induction" => share(BurnerKind::Induction),
        _ => return Judged::LeftOut("a note or a unit: no figure of the engine"),
    };
    let check = Check::column(row, "value", ours, CLOSED_FORM);
    held([check])
}
