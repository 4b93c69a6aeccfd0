//! The kitchen under one draw: every uncertain figure read once.

use crate::cook::cold_inside::Thick;
use crate::cook::oven::Oven;
use crate::cook::practice;
use crate::physics::water;
use crate::{Draw, Heated, Kitchen, Place};
use potwright_manuscript::{Cover, HeatWord};
use potwright_measure::Spread;

/// A kitchen as one run sees it.
pub(super) struct Conditions {
    pub(super) pressure_kpa: f64,
    /// Boiling point of pure water, °C, and its latent heat there, J/kg.
    pub(super) boiling_c: f64,
    pub(super) boiling_latent: f64,
    pub(super) room_c: f64,
    refrigerator_c: f64,
    freezer_c: f64,
    refrigerator_air_m_s: f64,
    freezer_air_m_s: f64,
    tap_c: f64,
    /// Vapour pressure in the refrigerator, the freezer and the room, kPa.
    vapour_kpa: [f64; 3],
    /// Watts that reach a pot from each burner at full, and the time constant of its plate, seconds.
    pub(super) burner_w: Vec<f64>,
    pub(super) burner_lag_s: Vec<f64>,
    pub(super) oven: Oven,
    /// Boiling points of pure water in a pressure cooker at its low and its high pressure, °C, and what its valve lets
    /// out, kg/s.
    pressed_c: [f64; 2],
    pub(super) vents_kg_s: f64,
    /// Watts of a slow cooker for each litre it holds, low and high.
    slow_w_l: [f64; 2],
    pub(super) evaporation: f64,
    pub(super) setting: f64,
    pub(super) simmer_below_k: f64,
    pub(super) rolling_kg_s_m2: f64,
    pub(super) reading: f64,
    /// How far above the boil a pan is kept, as a factor, and contact with it, W/(m²·K).
    pub(super) pan_limit: f64,
    pub(super) film_pan: f64,
    pub(super) food: f64,
    /// Time constants of shedding and rendering, seconds; diffusivity of salt, m²/s; seconds until browned.
    pub(super) shed_s: f64,
    pub(super) render_s: f64,
    pub(super) diffusivity_25: f64,
    pub(super) browning_s: f64,
    /// Water that starch needs to swell, by its mass, and the time constant of swelling, seconds.
    pub(super) water_per_starch: f64,
    pub(super) gelatinise_s: f64,
    /// From where on food does not mix by itself.
    pub(super) thick: Thick,
    cover: [f64; 3],
    weighed: Vec<(String, Cover, Heated, f64)>,
    /// Losses to the room switched off, for checks against the textbook pot that has none.
    pub(super) losses: bool,
    /// No step is longer, seconds.
    #[cfg(test)]
    pub(super) finest_s: f64,
    #[cfg(test)]
    pub(super) fault: Option<super::Fault>,
}

/// Replaces what is not a number or out of any kitchen's range.
pub(super) fn sane(value: f64, low: f64, high: f64, otherwise: f64) -> f64 {
    if value.is_finite() {
        value.clamp(low, high)
    } else {
        otherwise
    }
}

pub(super) fn read(spread: Spread, z: f64, low: f64, high: f64) -> f64 {
    sane(spread.at(z), low, high, sane(spread.mid, low, high, low))
}

impl Conditions {
    pub(super) fn new(kitchen: &Kitchen, draw: &Draw) -> Self {
        let z = |deviate: f64| sane(deviate, -6.0, 6.0, 0.0);
        let (reading, food, oven) = (z(draw.reading), z(draw.food), z(draw.oven));
        let pressure_kpa = water::air_pressure_kpa(sane(kitchen.altitude_m, -500.0, 9000.0, 0.0));
        let boiling_c = water::boiling_c(pressure_kpa);
        let celsius = |t: potwright_measure::Temperature, otherwise: f64| sane(t.celsius(), -60.0, 60.0, otherwise);
        let burner = |burner: &crate::Burner| {
            let efficiency = read(burner.efficiency, z(draw.burner), 0.0, 1.0);
            sane(burner.power.watts(), 0.0, 50_000.0, 0.0) * efficiency
        };
        let lag = |burner: &crate::Burner| burner.kind.lag_s().at(-z(draw.burner));
        let weighed = |weighed: &crate::Weighed| {
            let rate = read(weighed.kg_h_m2, z(draw.evaporation), 0.0, 1000.0);
            (weighed.pot.clone(), weighed.cover, weighed.at, rate)
        };
        let room_c = celsius(kitchen.room, 21.0);
        let refrigerator_c = celsius(kitchen.refrigerator, 4.0);
        let freezer_c = celsius(kitchen.freezer, -18.0);
        let humidity = sane(kitchen.humidity, 0.0, 1.0, 0.5);
        Conditions {
            pressure_kpa,
            boiling_c,
            boiling_latent: water::latent_heat(boiling_c),
            room_c,
            refrigerator_c,
            freezer_c,
            refrigerator_air_m_s: sane(kitchen.refrigerator_air_m_s, 0.0, 20.0, 0.0),
            freezer_air_m_s: sane(kitchen.freezer_air_m_s, 0.0, 20.0, 0.0),
            tap_c: celsius(kitchen.tap, 12.0),
            burner_w: kitchen.burners.iter().map(burner).collect(),
            burner_lag_s: kitchen.burners.iter().map(lag).collect(),
            oven: Oven::new(kitchen, room_c, oven),
            pressed_c: practice::GAUGE_KPA.map(|gauge| water::boiling_c(pressure_kpa + gauge.at(z(draw.burner)))),
            vents_kg_s: practice::VENTS_KG_H.at(z(draw.evaporation)) / 3600.0,
            slow_w_l: practice::SLOW_W_L.map(|watts| watts.at(z(draw.burner))),
            evaporation: read(kitchen.evaporation, z(draw.evaporation), 0.0, 20.0),
            setting: practice::SETTING.at(reading),
            simmer_below_k: practice::SIMMER_BELOW_K.at(-reading),
            rolling_kg_s_m2: practice::ROLLING_KG_H_M2.at(reading) / 3600.0,
            reading,
            pan_limit: practice::PAN_LIMIT.at(reading),
            film_pan: practice::FILM_PAN.at(food),
            food,
            shed_s: practice::SHED_S.at(food),
            render_s: practice::RENDER_S.at(food),
            diffusivity_25: practice::DIFFUSIVITY_25.at(food),
            browning_s: practice::BROWNING_S.at(food),
            water_per_starch: practice::WATER_PER_STARCH.at(food),
            gelatinise_s: practice::GELATINISE_S.at(food),
            thick: Thick::at(food),
            vapour_kpa: [refrigerator_c, freezer_c, room_c].map(|air_c| humidity * water::saturation_kpa(air_c)),
            cover: [Cover::Off, Cover::Ajar, Cover::On]
                .map(|cover| practice::cover_share(cover).at(z(draw.evaporation))),
            weighed: kitchen.weighed.iter().map(weighed).collect(),
            losses: true,
            #[cfg(test)]
            finest_s: f64::MAX,
            #[cfg(test)]
            fault: None,
        }
    }

    /// Share of the open pot's vapour that leaves past this lid.
    pub(super) fn cover_share(&self, cover: Cover) -> f64 {
        match cover {
            Cover::Off => self.cover[0],
            Cover::Ajar => self.cover[1],
            Cover::On => self.cover[2],
        }
    }

    /// Boiling point of pure water under the pressure that a word asks of a pressure cooker, °C.
    pub(super) fn pressed_c(&self, word: HeatWord) -> f64 {
        self.pressed_c[usize::from(!is_low(word))]
    }

    /// What the element of a slow cooker gives at a word, watts for each litre it holds.
    pub(super) fn slow_w_l(&self, word: HeatWord) -> f64 {
        match word {
            HeatWord::Off => 0.0,
            word => self.slow_w_l[usize::from(!is_low(word))],
        }
    }

    /// What a pot was weighed to lose, kg/(s·m²), by lid and word.
    pub(super) fn weighed_of(&self, pot: &str) -> Vec<(Cover, Heated, f64)> {
        let of_pot = self.weighed.iter().filter(|(name, ..)| name == pot);
        of_pot
            .map(|(_, lid, word, kg_h_m2)| (*lid, *word, kg_h_m2 / 3600.0))
            .collect()
    }

    /// Air around a vessel at a place, °C (an oven's comes with the aim).
    pub(super) fn air_c(&self, place: Place) -> f64 {
        match place {
            Place::Refrigerator => self.refrigerator_c,
            Place::Freezer => self.freezer_c,
            Place::Hob | Place::Counter | Place::Sink | Place::IceBath | Place::Oven => self.room_c,
        }
    }

    /// How fast the air moves at a place, m/s; an oven's fan is in its film.
    pub(super) fn air_m_s(&self, place: Place) -> f64 {
        match place {
            Place::Refrigerator => self.refrigerator_air_m_s,
            Place::Freezer => self.freezer_air_m_s,
            Place::Hob | Place::Counter | Place::Sink | Place::IceBath | Place::Oven => 0.0,
        }
    }

    /// Water around a vessel, °C, where there is any.
    pub(super) fn bath_c(&self, place: Place) -> Option<f64> {
        match place {
            Place::Sink => Some(self.tap_c),
            Place::IceBath => Some(0.0),
            _ => None,
        }
    }

    /// Vapour pressure of the air at a place, kPa: an oven breathes the air of the room.
    pub(super) fn vapour_kpa(&self, place: Place) -> f64 {
        match place {
            Place::Refrigerator => self.vapour_kpa[0],
            Place::Freezer => self.vapour_kpa[1],
            Place::Hob | Place::Counter | Place::Sink | Place::IceBath | Place::Oven => self.vapour_kpa[2],
        }
    }
}

/// Whether a word means the lower of two settings.
const fn is_low(word: HeatWord) -> bool {
    matches!(
        word,
        HeatWord::Off | HeatWord::Low | HeatWord::MediumLow | HeatWord::Lower
    )
}
