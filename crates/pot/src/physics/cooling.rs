//! Heat that hot food loses to cold air: moving air, the underside of a pan, a lid, and how readings of a thermometer
//! are judged.

use crate::physics::film::{Air, rayleigh};
use crate::physics::water::{latent_heat, saturation_kpa};

/// Prandtl number of air, 0–100 °C.
const PRANDTL: f64 = 0.71;
/// Gas constant of water vapour, kJ/(kg·K), and the square of the cube root of the Lewis number of vapour in air,
/// 0.86^⅔ (psychrometry, any text; from memory).
const GAS_VAPOUR: f64 = 0.461_52;
const LEWIS_TWO_THIRDS: f64 = 0.904;

/// Free convection below a hot horizontal plate, W/(m²·K): Nu = 0.27·Ra^¼ (McAdams, Ra 3e5 to 3e10), never less than
/// conduction's 1. Temperatures in °C, length = area ÷ perimeter in metres, pressure in kPa.
#[must_use]
pub fn underside_convection(face_c: f64, air_c: f64, length_m: f64, pressure_kpa: f64) -> f64 {
    let film_c = 0.5 * (face_c + air_c);
    let air = Air::at(film_c, pressure_kpa);
    let length = length_m.max(1e-3);
    let difference = (face_c - air_c) / (film_c + 273.15);
    let nusselt = 0.27 * rayleigh(&air, difference, length).sqrt().sqrt();
    nusselt.max(1.0) * air.conductivity / length
}

/// Air that streams along a flat face, W/(m²·K): Nu = 0.664·Re^½·Pr^⅓ (Pohlhausen, laminar, Re to 5e5). Speed in m/s,
/// length along the stream in metres, pressure in kPa.
#[must_use]
pub fn forced_convection(speed_m_s: f64, film_c: f64, length_m: f64, pressure_kpa: f64) -> f64 {
    let air = Air::at(film_c, pressure_kpa);
    let length = length_m.max(1e-3);
    let reynolds = speed_m_s.max(0.0) * length / air.viscosity;
    0.664 * reynolds.sqrt() * libm::cbrt(PRANDTL) * air.conductivity / length
}

/// Free and forced convection together: h³ = h_free³ + h_forced³ (Churchill's rule for streams that help each other).
#[must_use]
pub fn mixed_convection(free: f64, forced: f64) -> f64 {
    libm::cbrt(free * free * free + forced * forced * forced)
}

/// Heat that a moist surface passes to the lid above it, W/(m²·K): convection across the gap, radiation (4·σ·T³), and
/// vapour that condenses on the lid, (h/ρcp)·Le^(−⅔)·r·dρ_s/dT by Lewis' analogy with the saturated vapour's density.
/// `gap` is the convection across the gap in W/(m²·K).
#[must_use]
pub fn under_lid(surface_c: f64, gap: f64, pressure_kpa: f64) -> f64 {
    let kelvin = surface_c.clamp(-20.0, 100.0) + 273.15;
    let celsius = kelvin - 273.15;
    let air = Air::at(celsius, pressure_kpa);
    let density = |c: f64| saturation_kpa(c) / (GAS_VAPOUR * (c + 273.15));
    let slope = density(celsius + 0.5) - density(celsius - 0.5);
    let radiation = 4.0 * 5.670_374_419e-8 * kelvin * kelvin * kelvin;
    let vapour = gap / (air.density * air.specific_heat * LEWIS_TWO_THIRDS) * latent_heat(celsius) * slope;
    gap + radiation + vapour
}

/// Rate of cooling from two readings, 1/h, to the base of ten: [log(T₁ − T_df) − log(T₂ − T_df)] ÷ Δt, with T_df the
/// temperature that drives it, the refrigerator's (a formula for inspectors, Journal of Environmental Health, abstract).
/// None where a reading is not above the driving temperature or no time has passed.
#[must_use]
pub fn two_point_rate_per_h(first_c: f64, second_c: f64, driving_c: f64, hours: f64) -> Option<f64> {
    let (from, to) = (first_c - driving_c, second_c - driving_c);
    let sound = from > 0.0 && to > 0.0 && hours > 0.0 && from.is_finite();
    sound.then(|| (libm::log10(from) - libm::log10(to)) / hours)
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Reference table 05e: the least rates that meet 57 to 21 °C (135 to 70 °F) in 2 h and to 5 °C (41 °F) in 6 h, for
    /// refrigerators of 36, 38, 40 °F. By hand for 36 °F: log10(99/34)/2 = 0.2321, log10(99/5)/6 = 0.2161.
    #[test]
    fn least_rates_of_inspectors() {
        let celsius = |f: f64| (f - 32.0) / 1.8;
        for (driving_f, one, total) in [(36.0, 0.2321, 0.2161), (38.0, 0.2408, 0.2516), (40.0, 0.2503, 0.3296)] {
            let rate = |to_f: f64, hours: f64| {
                two_point_rate_per_h(celsius(135.0), celsius(to_f), celsius(driving_f), hours).unwrap()
            };
            assert!((rate(70.0, 2.0) / one - 1.0).abs() < 1e-3, "{driving_f}");
            assert!((rate(41.0, 6.0) / total - 1.0).abs() < 1e-3, "{driving_f}");
        }
        assert_eq!(two_point_rate_per_h(57.0, 3.0, 4.0, 2.0), None);
        assert_eq!(two_point_rate_per_h(57.0, 21.0, 4.0, 0.0), None);
    }

    /// By hand at 0 °C film, k 0.0236 W/(m·K), ν 1.33e-5 m²/s (from memory): 2 m/s over 0.4 m has Re 6.0e4,
    /// Nu = 0.664·245·0.892 = 145, h = 8.6 W/(m²·K).
    #[test]
    fn a_fan_over_a_pan() {
        let h = forced_convection(2.0, 0.0, 0.4, 101.325);
        assert!((h / 8.6 - 1.0).abs() < 0.03, "{h}");
        assert_eq!(mixed_convection(5.0, 0.0), 5.0);
        assert!((mixed_convection(3.0, 4.0) - libm::cbrt(91.0)).abs() < 1e-12);
    }

    /// The underside loses half of what the top does, 0.27 against 0.54 (McAdams), at equal Rayleigh number.
    #[test]
    fn the_underside_loses_half() {
        use crate::physics::film::nusselt_surface;
        let (face, air_c, length) = (40.0, 0.0, 0.1);
        let air = Air::at(20.0, 101.325);
        let ra = rayleigh(&air, 40.0 / 293.15, length);
        let top = nusselt_surface(ra) * air.conductivity / length;
        assert!((underside_convection(face, air_c, length, 101.325) / top - 0.5).abs() < 1e-9);
    }

    /// A lid is nearly as warm as boiling soup but not as cold soup. By hand at 57 °C with a gap of 4 W/(m²·K): saturation
    /// 17.31 kPa at 57, 18.15 at 58 °C (steam tables) as ideal gas 0.1136 and 0.1188 kg/m³, so dρ_s/dT = 5.15e-3;
    /// 4/(1.07·1006·0.904)·2.366e6·5.15e-3 = 50.1; with radiation 4·5.67e-8·330³ = 8.2 and the gap's 4 that is 62.3.
    #[test]
    fn what_condenses_on_a_lid() {
        let warm = under_lid(57.0, 4.0, 101.325);
        assert!((warm / 62.3 - 1.0).abs() < 0.03, "{warm}");
        assert!(under_lid(95.0, 4.0, 101.325) > 2.0 * warm && under_lid(5.0, 4.0, 101.325) < 0.3 * warm);
    }
}
