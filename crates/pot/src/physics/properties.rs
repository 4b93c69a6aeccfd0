//! Properties of a mixture from its composition: density, conductivity, and enthalpy with freezing.

use crate::physics::components::{Component, component, ice, kilograms, table};
use crate::{Matter, Stuff};

/// Temperature at which the water of a food begins to freeze, °C: most foods lie between −0.5 and −2 °C (common
/// practice, no source).
pub const FREEZING_C: f64 = -1.0;
/// Share of the water that freezes in a domestic freezer. Tchigeov's equation (ASHRAE Refrigeration, Thermal
/// Properties of Foods) gives 0.885 for carrot at −18 °C.
pub const FREEZABLE: f64 = 0.885;
/// Temperature over which freezing is spread where a capacity is asked for, kelvins.
const FREEZES_WITHIN_K: f64 = 0.01;
/// Latent heat of fusion of water, J/kg.
pub const FUSION_J_KG: f64 = 333_550.0;

/// Volume in cubic metres at a temperature: Σ mᵢ/ρᵢ, no air enclosed.
#[must_use]
pub fn volume_m3(matter: &Matter, temp_c: f64) -> f64 {
    let parts = kilograms(matter).into_iter().zip(table());
    parts.map(|(kg, component)| kg / component.density.at(temp_c)).sum()
}

/// Density in kg/m³; water's for nothing at all.
#[must_use]
pub fn density(matter: &Matter, temp_c: f64) -> f64 {
    let volume = volume_m3(matter, temp_c);
    if volume > 0.0 {
        matter.total_kg() / volume
    } else {
        component(Stuff::Water).density.at(temp_c)
    }
}

/// Conductivity in W/(m·K), parallel model: Σ φᵢ·kᵢ with volume shares φ (ASHRAE Refrigeration, Thermal Properties
/// of Foods).
#[must_use]
pub fn conductivity(matter: &Matter, temp_c: f64) -> f64 {
    let volume = volume_m3(matter, temp_c);
    if volume <= 0.0 {
        return component(Stuff::Water).conductivity.at(temp_c);
    }
    let parts = kilograms(matter).into_iter().zip(table());
    let part =
        |(kg, component): (f64, &Component)| kg / component.density.at(temp_c) * component.conductivity.at(temp_c);
    parts.map(part).sum::<f64>() / volume
}

/// Enthalpy of liquid water, J/kg above 0 °C: the integral of its specific heat.
#[must_use]
pub fn water_enthalpy(temp_c: f64) -> f64 {
    specific_enthalpy(Stuff::Water, temp_c)
}

/// Enthalpy of a constituent that is not frozen, J/kg above 0 °C.
#[must_use]
pub fn specific_enthalpy(stuff: Stuff, temp_c: f64) -> f64 {
    let cp = component(stuff).specific_heat;
    temp_c * (cp.c0 + temp_c * (cp.c1 / 2.0 + temp_c * cp.c2 / 3.0))
}

/// What [`HeatContent::enthalpy`] is for a kilogram of one constituent that does not freeze, J/kg.
#[must_use]
pub fn solid_enthalpy(stuff: Stuff, temp_c: f64) -> f64 {
    let below = (temp_c - FREEZING_C).min(0.0);
    specific_enthalpy(stuff, temp_c.max(FREEZING_C)) + component(stuff).specific_heat.c0 * below
}

/// The heat a body holds, as a function of its temperature: H = a·t + b·t²/2 + c·t³/3 above [`FREEZING_C`], with the
/// latent heat of [`FREEZABLE`] of its water taken out at that point and the capacity of ice below. Basis: liquid
/// water (and every other constituent) at 0 °C.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct HeatContent {
    a: f64,
    b: f64,
    c: f64,
    water_kg: f64,
}

impl HeatContent {
    /// Of some matter.
    #[must_use]
    pub fn of(matter: &Matter) -> Self {
        let mut content = HeatContent {
            water_kg: matter.kg(Stuff::Water),
            ..HeatContent::default()
        };
        for (mass, component) in kilograms(matter).into_iter().zip(table()) {
            let cp = &component.specific_heat;
            content.a += mass * cp.c0;
            content.b += mass * cp.c1;
            content.c += mass * cp.c2;
        }
        content
    }

    /// With a body of constant heat capacity (J/K) added: metal, bone.
    #[must_use]
    pub fn with_capacity(mut self, capacity_j_k: f64) -> Self {
        self.a += capacity_j_k;
        self
    }

    fn unfrozen(&self, temp_c: f64) -> f64 {
        temp_c * (self.a + temp_c * (self.b / 2.0 + temp_c * self.c / 3.0))
    }

    fn frozen_capacity(&self) -> f64 {
        let water = component(Stuff::Water).specific_heat.c0 - ice().specific_heat.c0;
        (self.a - FREEZABLE * self.water_kg * water).max(f64::MIN_POSITIVE)
    }

    /// Heat capacity in J/K, the latent heat of freezing left out.
    #[must_use]
    pub fn capacity(&self, temp_c: f64) -> f64 {
        if temp_c < FREEZING_C {
            self.frozen_capacity()
        } else {
            self.a + temp_c * (self.b + temp_c * self.c)
        }
    }

    /// Heat capacity in J/K at an enthalpy in joules and its temperature: while water freezes or thaws, so great that
    /// the temperature stands still.
    #[must_use]
    pub fn capacity_at(&self, enthalpy_j: f64, temp_c: f64) -> f64 {
        let fusion = FREEZABLE * self.water_kg * FUSION_J_KG;
        let above_frozen = enthalpy_j - (self.unfrozen(FREEZING_C) - fusion);
        if above_frozen > 0.0 && above_frozen < fusion {
            fusion / FREEZES_WITHIN_K
        } else {
            self.capacity(temp_c)
        }
    }

    /// Enthalpy in joules at a temperature; at [`FREEZING_C`] itself that of the unfrozen.
    #[must_use]
    pub fn enthalpy(&self, temp_c: f64) -> f64 {
        if temp_c >= FREEZING_C {
            return self.unfrozen(temp_c);
        }
        self.unfrozen(FREEZING_C) - FREEZABLE * self.water_kg * FUSION_J_KG
            + self.frozen_capacity() * (temp_c - FREEZING_C)
    }

    /// Temperature in °C at an enthalpy in joules; `guess_c` starts the search and is the answer for a body that
    /// holds no heat. Newton's method, at most eight rounds: it
    /// ends when a round moves less than 1e-3 K, its error then being the square of that times half the relative growth
    /// of the capacity per kelvin (some 1e-3): below 1e-9 K; bounded to −100 … 600 °C.
    #[must_use]
    pub fn temperature(&self, enthalpy_j: f64, guess_c: f64) -> f64 {
        if self.a <= 0.0 || !enthalpy_j.is_finite() {
            return guess_c;
        }
        let thawed = self.unfrozen(FREEZING_C);
        if enthalpy_j < thawed {
            let frozen = thawed - FREEZABLE * self.water_kg * FUSION_J_KG;
            let below = (enthalpy_j - frozen).min(0.0) / self.frozen_capacity();
            return (FREEZING_C + below).max(-100.0);
        }
        let mut temp_c = guess_c.clamp(FREEZING_C, 600.0);
        for _ in 0..8 {
            let slope = (self.a + temp_c * (self.b + temp_c * self.c)).max(0.1 * self.a);
            let change = (enthalpy_j - self.unfrozen(temp_c)) / slope;
            temp_c = (temp_c + change).clamp(FREEZING_C, 600.0);
            if change.abs() < 1e-3 {
                break;
            }
        }
        temp_c
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn food(water: f64, protein: f64, fat: f64, carbohydrate: f64, fibre: f64, ash: f64) -> Matter {
        let mut matter = Matter::default();
        for (stuff, percent) in [
            (Stuff::Water, water),
            (Stuff::Protein, protein),
            (Stuff::Fat, fat),
            (Stuff::Sugar, carbohydrate - fibre),
            (Stuff::Fibre, fibre),
            (Stuff::Ash, ash),
        ] {
            matter.mass_kg[stuff as usize] = percent / 100.0;
        }
        matter
    }

    /// Water's specific heat at 20 °C is 4.1851 kJ/(kg·K) by IAPWS-IF97; the wrong constant of reprints is 1.1 % off.
    #[test]
    fn water_is_within_a_third_of_a_percent_of_iapws() {
        for (t, cp) in [(20.0, 4.1851), (60.0, 4.1829), (90.0, 4.2051), (100.0, 4.2166)] {
            let got = component(Stuff::Water).specific_heat.at(t) / 1000.0;
            assert!((got / cp - 1.0).abs() < 0.0035, "{t}: {got}");
        }
    }

    #[test]
    fn temperature_undoes_enthalpy() {
        let matter = food(70.24, 6.84, 0.86, 20.16, 4.9, 1.89);
        let content = HeatContent::of(&matter).with_capacity(900.0);
        for t in [-30.0, -1.5, -0.9, 0.0, 4.0, 20.0, 57.0, 99.6, 180.0] {
            let back = content.temperature(content.enthalpy(t), 15.0);
            assert!((back - t).abs() < 1e-6, "{t}: {back}");
        }
        for (stuff, t) in [(Stuff::Salt, -20.0), (Stuff::Sugar, 4.0), (Stuff::Alcohol, 80.0)] {
            let whole = HeatContent::of(&Matter::of(stuff, 2.0)).enthalpy(t);
            assert!((2.0 * solid_enthalpy(stuff, t) - whole).abs() < 1e-6, "{stuff:?}");
        }
        // Half-way through freezing the temperature stands still.
        let half = content.enthalpy(FREEZING_C) - 0.5 * FREEZABLE * 0.7024 * FUSION_J_KG;
        assert!((content.temperature(half, 0.0) - FREEZING_C).abs() < 1e-9);
    }
}
