//! How long food takes to freeze by two published equations, and how much of its water is ice: an independent check of
//! the engine, which freezes by enthalpy.

use crate::Matter;
use crate::physics::components::{ice, kilograms, table};
use crate::physics::conduction::Form;

/// A body that freezes, and what it freezes in. All in SI units and °C.
#[derive(Clone, Copy, Debug, PartialEq)]
pub struct Freezing {
    /// Shape.
    pub form: Form,
    /// Thickness of the slab or diameter, metres.
    pub size_m: f64,
    /// Density, kg/m³.
    pub density: f64,
    /// Latent heat that is taken out, J/kg of food.
    pub latent_j_kg: f64,
    /// Specific heat above and below freezing, J/(kg·K).
    pub unfrozen_j_kg_k: f64,
    /// Specific heat below freezing, J/(kg·K).
    pub frozen_j_kg_k: f64,
    /// Conductivity of the frozen food, W/(m·K).
    pub conductivity: f64,
    /// Film at its surface, W/(m²·K).
    pub film: f64,
    /// Air or brine around it, °C.
    pub air_c: f64,
    /// Where it begins to freeze, °C.
    pub freezes_c: f64,
}

impl Freezing {
    /// Seconds of the change of state alone by Plank's equation, t = ρ·L/(T_f − T_a)·(P·a/h + R·a²/k): P, R = ½, ⅛ slab,
    /// ¼, 1/16 cylinder, 1/6, 1/24 sphere; a the thickness or diameter. Cooling before and after is left out: too short
    /// for the whole. None where the air is not colder than the freezing point.
    #[must_use]
    pub fn plank_s(&self) -> Option<f64> {
        let (p, r) = (0.5 / self.form.dimensions(), 0.125 / self.form.dimensions());
        let drive = self.freezes_c - self.air_c;
        let path = p * self.size_m / self.film + r * self.size_m * self.size_m / self.conductivity;
        finite(self.density * self.latent_j_kg / drive * path, drive)
    }

    /// Seconds from a start to an end temperature of the centre by Pham's equation,
    /// t = d/(E·h)·[ΔH₁/ΔT₁ + ΔH₂/ΔT₂]·(1 + Bi/2), d half the size, E 1, 2, 3 for slab, cylinder, sphere;
    /// T_fm = 1.8 + 0.263·T_c + 0.105·T_a; ΔH₁ = ρ·c_u·(T_i − T_fm), ΔT₁ = (T_i + T_fm)/2 − T_a;
    /// ΔH₂ = ρ·[L + c_f·(T_fm − T_c)], ΔT₂ = T_fm − T_a (Pham 1986, from memory; moist foods, air −15 to −45 °C,
    /// Bi 0.02 to 11). None outside its sense.
    #[must_use]
    pub fn pham_s(&self, start_c: f64, end_c: f64) -> Option<f64> {
        let half = 0.5 * self.size_m;
        let dimension = self.form.dimensions();
        let mean_c = pham_mean_c(end_c, self.air_c);
        let cooling =
            self.density * self.unfrozen_j_kg_k * (start_c - mean_c) / (0.5 * (start_c + mean_c) - self.air_c);
        let taken = self.latent_j_kg + self.frozen_j_kg_k * (mean_c - end_c);
        let freezing = self.density * taken / (mean_c - self.air_c);
        let biot = self.film * half / self.conductivity;
        let seconds = half / (dimension * self.film) * (cooling + freezing) * (1.0 + 0.5 * biot);
        finite(
            seconds,
            (end_c - self.air_c).min(start_c - mean_c).min(mean_c - self.air_c),
        )
    }
}

/// The mean freezing temperature of Pham's equation, °C, for a final centre and an air temperature.
#[must_use]
pub fn pham_mean_c(end_c: f64, air_c: f64) -> f64 {
    1.8 + 0.263 * end_c + 0.105 * air_c
}

fn finite(seconds: f64, drive_k: f64) -> Option<f64> {
    (drive_k > 0.0 && seconds.is_finite() && seconds >= 0.0).then_some(seconds)
}

/// Ice as a share of the food's mass by Tchigeov's equation, x = 1.105·x_w/(1 + 0.7138/ln(t_f − t + 1)), with x_w the
/// water's share and t_f the initial freezing point (ASHRAE Refrigeration, Thermal Properties of Foods; −45 to t_f).
/// Nought above freezing, never more than the water.
#[must_use]
pub fn ice_share(water_share: f64, freezes_c: f64, temp_c: f64) -> f64 {
    let depth = libm::log(freezes_c - temp_c.min(freezes_c) + 1.0);
    if depth <= 0.0 {
        return 0.0;
    }
    (1.105 * water_share / (1.0 + 0.7138 / depth)).clamp(0.0, water_share.max(0.0))
}

/// Conductivity of food of whose water a share (0–1) is ice, W/(m·K): parallel model over the volumes, as
/// [`crate::physics::properties::conductivity`] is without ice.
#[must_use]
pub fn frozen_conductivity(matter: &Matter, temp_c: f64, frozen: f64) -> f64 {
    let mut parts = kilograms(matter);
    let water_kg = parts[0];
    parts[0] = (1.0 - frozen.clamp(0.0, 1.0)) * water_kg;
    let ice_m3 = (water_kg - parts[0]) / ice().density.at(temp_c);
    let (mut volume, mut sum) = (ice_m3, ice_m3 * ice().conductivity.at(temp_c));
    for (kg, component) in parts.into_iter().zip(table()) {
        let part_m3 = kg / component.density.at(temp_c);
        volume += part_m3;
        sum += part_m3 * component.conductivity.at(temp_c);
    }
    if volume > 0.0 {
        sum / volume
    } else {
        ice().conductivity.at(temp_c)
    }
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::Stuff;

    const SPHERE: Freezing = Freezing {
        form: Form::Sphere,
        size_m: 0.07,
        density: 1000.0,
        latent_j_kg: 250e3,
        unfrozen_j_kg_k: 3600.0,
        frozen_j_kg_k: 1800.0,
        conductivity: 1.2,
        film: 50.0,
        air_c: -40.0,
        freezes_c: -1.25,
    };

    /// Reference table 14: a food-engineering textbook's sphere (E18; 0.72 h printed), a slab of 2.5 cm, and soup in a bag
    /// 5 cm thick that lies flat in a still freezer: 15.4 h. By hand for the sphere:
    /// 1000·250e3/38.75·(0.07/6/50 + 0.0049/24/1.2) = 6451.6·4.0348e-4 = 2603 s.
    #[test]
    fn plank() {
        let slab = Freezing {
            form: Form::Slab,
            size_m: 0.025,
            density: 1050.0,
            latent_j_kg: 255e3,
            conductivity: 1.5,
            film: 20.0,
            air_c: -30.0,
            freezes_c: -1.7,
            ..SPHERE
        };
        let soup = Freezing {
            size_m: 0.05,
            density: 1000.0,
            latent_j_kg: 290e3,
            conductivity: 1.8,
            film: 8.0,
            air_c: -18.0,
            freezes_c: -0.7,
            ..slab
        };
        for (body, seconds) in [(SPHERE, 2603.0), (slab, 6406.0), (soup, 55_295.0)] {
            let got = body.plank_s().unwrap();
            assert!((got / seconds - 1.0).abs() < 0.001, "{got} for {seconds}");
        }
        assert_eq!(Freezing { air_c: 4.0, ..SPHERE }.plank_s(), None);
    }

    /// Reference table 14: from 10 to −18 °C at the centre in −40 °C, 3910 s for the sphere, 11 730 s for the slab.
    #[test]
    fn pham() {
        assert!((pham_mean_c(-18.0, -40.0) + 7.134).abs() < 0.001);
        let slab = Freezing {
            form: Form::Slab,
            ..SPHERE
        };
        for (body, seconds) in [(SPHERE, 3910.0), (slab, 11_730.0)] {
            let got = body.pham_s(10.0, -18.0).unwrap();
            assert!((got / seconds - 1.0).abs() < 0.001, "{got} for {seconds}");
        }
        assert_eq!(SPHERE.pham_s(10.0, -45.0), None);
    }

    /// Plank leaves out what comes before and after: never longer than Pham (J. Food Eng. 58:267, abstract).
    #[test]
    fn plank_is_shorter_than_pham() {
        for form in [Form::Slab, Form::Cylinder, Form::Sphere] {
            let body = Freezing { form, ..SPHERE };
            assert!(body.plank_s().unwrap() < body.pham_s(10.0, -18.0).unwrap());
        }
    }

    /// Reference table 14: carrot (water 0.8779, freezes at −1.4 °C) at −18 °C: 0.7768 of its mass, 88.5 % of its water.
    #[test]
    fn ice_in_carrot() {
        let share = ice_share(0.8779, -1.4, -18.0);
        assert!((share - 0.7768).abs() < 2e-4, "{share}");
        assert!((share / 0.8779 - 0.885).abs() < 1e-3);
        assert!((share / 0.8779 - crate::physics::properties::FREEZABLE).abs() < 1e-3);
        assert_eq!(ice_share(0.88, -1.0, 5.0), 0.0);
    }

    /// Ice conducts 2.22 W/(m·K) at 0 °C, water 0.571 (Choi & Okos): half frozen by mass, 1/2000 and 1/(2·916.9) m³ a kg
    /// (densities 997 and 917): (0.5015·0.571 + 0.5453·2.2196)/1.0468 = 1.430.
    #[test]
    fn ice_conducts_four_times_as_well() {
        let water = Matter::of(Stuff::Water, 1.0);
        let at = |frozen| frozen_conductivity(&water, 0.0, frozen);
        assert!((at(0.0) - 0.571).abs() < 0.001 && (at(1.0) - 2.2196).abs() < 0.001);
        assert!((at(0.5) - 1.430).abs() < 0.005, "{}", at(0.5));
    }
}
