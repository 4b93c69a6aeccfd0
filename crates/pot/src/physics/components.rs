//! Density, specific heat and conductivity of the components of food, from `data/components.tsv`.

use std::sync::LazyLock;

use crate::{Matter, Stuff};

/// A quadratic in the temperature: c0 + c1·t + c2·t², t in °C.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Quadratic {
    /// Constant term.
    pub c0: f64,
    /// Per kelvin.
    pub c1: f64,
    /// Per kelvin squared.
    pub c2: f64,
}

impl Quadratic {
    /// The value at a temperature in °C.
    #[must_use]
    pub fn at(&self, temp_c: f64) -> f64 {
        self.c0 + temp_c * (self.c1 + temp_c * self.c2)
    }
}

/// Properties of one component; valid from −40 to 150 °C.
#[derive(Clone, Copy, Debug, Default, PartialEq)]
pub struct Component {
    /// kg/m³.
    pub density: Quadratic,
    /// J/(kg·K).
    pub specific_heat: Quadratic,
    /// W/(m·K).
    pub conductivity: Quadratic,
}

/// Names in the table, in the order of [`component`]'s indices.
const NAMES: [&str; COUNT] = [
    "water",
    "fat",
    "protein",
    "carbohydrate",
    "fibre",
    "ash",
    "ice",
    "alcohol",
];
const ICE: usize = 6;
pub(crate) const COUNT: usize = 8;

static TABLE: LazyLock<[Component; COUNT]> = LazyLock::new(|| {
    read(include_str!("../../data/components.tsv")).expect("the table is part of the program and read by a test")
});

fn read(text: &str) -> Option<[Component; NAMES.len()]> {
    let mut table = [Component::default(); NAMES.len()];
    let mut rows = 0;
    for line in text.lines().filter(|line| !line.starts_with('#')).skip(1) {
        let mut cells = line.split('\t');
        let index = NAMES.iter().position(|name| Some(*name) == cells.clone().next())?;
        let property = cells.nth(1)?;
        let mut number = || cells.next()?.parse::<f64>().ok();
        let quadratic = Quadratic {
            c0: number()?,
            c1: number()?,
            c2: number()?,
        };
        match property {
            "density" => table[index].density = quadratic,
            "specific_heat" => table[index].specific_heat = quadratic,
            "conductivity" => table[index].conductivity = quadratic,
            _ => return None,
        }
        rows += 1;
    }
    (rows == 3 * NAMES.len()).then_some(table)
}

/// All components, in the order of the table.
pub(crate) fn table() -> &'static [Component; COUNT] {
    &TABLE
}

/// Kilograms of each component, in the order of the table.
pub(crate) fn kilograms(matter: &Matter) -> [f64; COUNT] {
    let kg = |stuff| matter.kg(stuff);
    let carbohydrate = kg(Stuff::Starch) + kg(Stuff::GelatinisedStarch) + kg(Stuff::Sugar) + kg(Stuff::Acid);
    [
        kg(Stuff::Water),
        kg(Stuff::Fat),
        kg(Stuff::Protein),
        carbohydrate,
        kg(Stuff::Fibre),
        kg(Stuff::Salt) + kg(Stuff::Ash),
        0.0,
        kg(Stuff::Alcohol),
    ]
}

/// The row of the table that stands for a constituent: sugars, starches and acids are carbohydrate, salt is ash.
const fn index(stuff: Stuff) -> usize {
    match stuff {
        Stuff::Water => 0,
        Stuff::Fat => 1,
        Stuff::Protein => 2,
        Stuff::Starch | Stuff::GelatinisedStarch | Stuff::Sugar | Stuff::Acid => 3,
        Stuff::Fibre => 4,
        Stuff::Salt | Stuff::Ash => 5,
        Stuff::Alcohol => 7,
    }
}

/// The component that stands for a constituent.
#[must_use]
pub fn component(stuff: Stuff) -> &'static Component {
    &table()[index(stuff)]
}

/// Ice.
#[must_use]
pub fn ice() -> &'static Component {
    &table()[ICE]
}

#[cfg(test)]
mod tests {
    use super::*;

    /// Values of the Choi & Okos quadratics reckoned by hand: protein at 5 °C and ash at 5 °C are printed in the
    /// ASHRAE chapter's second example (2.0142 and 1.1020 kJ/(kg·K)), fat 1.9914, water 4.1759.
    #[test]
    fn specific_heats_of_the_worked_example() {
        for (stuff, expected) in [
            (Stuff::Protein, 2014.2),
            (Stuff::Ash, 1102.0),
            (Stuff::Fat, 1991.4),
            (Stuff::Water, 4175.9),
        ] {
            let got = component(stuff).specific_heat.at(5.0);
            assert!((got / expected - 1.0).abs() < 1e-4, "{stuff:?}: {got}");
        }
    }

    /// Mass by component and by constituent is the same mass.
    #[test]
    fn kilograms_are_of_the_component_that_stands_for_the_constituent() {
        for stuff in Stuff::ALL {
            let kg = kilograms(&Matter::of(stuff, 2.0));
            assert_eq!((kg[index(stuff)], kg.iter().sum::<f64>()), (2.0, 2.0), "{stuff:?}");
        }
    }

    /// Two traps of reprints: fat must not conduct negatively near 66 °C, water conducts 0.57 W/(m·K) at 0 °C.
    #[test]
    fn traps_of_reprints() {
        assert!(component(Stuff::Fat).conductivity.at(66.0) > 0.15);
        assert!((component(Stuff::Water).conductivity.at(0.0) - 0.571).abs() < 1e-3);
        assert!(ice().conductivity.at(0.0) > 2.0);
    }
}
