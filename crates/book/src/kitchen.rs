//! `kitchen.toml`: the kitchen a book is cooked in, told as a cook knows it.
//!
//! ```toml
//! altitude = "110 m"
//! room = "19 °C"
//! humidity = "55 %"
//! refrigerator = "4 °C"
//! freezer = "-18 °C"
//! refrigerator_fan = true    # a cold room whose air a fan moves; most at home have still air
//! freezer_fan = true
//! tap = "9 °C"               # cold water
//!
//! [[pot]]                    # a pot is known by its size and its weight; these take the place of the usual ones
//! name = "big pot"
//! across = "28 cm"           # inside
//! holds = "9.5 litres"       # or deep = "15.5 cm"
//! of = "steel"               # steel, aluminium, cast iron, earthenware
//! weighs = "2.6 kg"          # empty, without its lid
//! kind = "pressure cooker"   # or slow cooker; nothing is said of a plain pot
//!
//! [[burner]]                 # a burner is known by how long it takes, at full, to boil two litres of tap water
//! kind = "gas"               # gas, radiant, induction, solid plate
//! boils_two_litres_in = "9 minutes"   # or power = "3.5 kW", from the plate underneath
//!
//! [oven]
//! fan = true
//! runs = "10 °C"             # hotter than its dial says; less than nought: colder
//! power = "2.5 kW"           # from the plate on its door
//! heats_up_in = "12 minutes" # cold and empty, to 180 °C
//!
//! [[weighed]]                # what a pot loses by evaporation, weighed before and after
//! pot = "big pot"
//! lid = "off"                # off, ajar, on
//! at = "simmer"              # below the boil, simmer, boil
//! loses = "420 g"
//! in = "1 hour"
//! ```
//!
//! What is not said stays as in the kitchen of books that name none, [`Kitchen::default`].

use potwright_measure::{Measures, Power, Spread, Temperature};
use potwright_pot::{Burner, BurnerKind, Kitchen, Material, Oven, Pot, PotKind};
use toml::de::DeTable;

use crate::entries::{Entry, Reader};
use crate::error::{Fault, Misread};
use crate::said::Of;

mod weighed;

const WORDS: &[&str] = &[
    "altitude",
    "room",
    "humidity",
    "refrigerator",
    "freezer",
    "refrigerator_fan",
    "freezer_fan",
    "tap",
    "[[pot]]",
    "[[burner]]",
    "[oven]",
    "[[weighed]]",
];
const POT_WORDS: &[&str] = &["name", "across", "deep", "holds", "of", "weighs", "kind"];
const BURNER_WORDS: &[&str] = &["kind", "boils_two_litres_in", "power"];
const OVEN_WORDS: &[&str] = &["fan", "runs", "power", "heats_up_in"];

/// Specific heat of water from the tap to the boil, kJ/(kg·K): 4.19, the mean of the steam tables between 10 and
/// 100 °C (enthalpies 42.0 and 419.1 kJ/kg; IAPWS-IF97, from memory).
const WATER_KJ_KG_K: f64 = 4.19;
/// How far a burner that was timed once may be off, as a factor: the kettle's weight, its lid, the start of the boil
/// (common practice, no source).
const TIMED_WITHIN: f64 = 1.1;
/// An oven is timed to here, °C.
const TIMED_OVEN_C: f64 = 180.0;
/// How far an oven that was measured once may still be off, kelvins (common practice, no source).
const OVEN_WITHIN_K: f64 = 5.0;

/// How fast a fan moves the air of a refrigerator and of a freezer, m/s: the middle of 1 to 2 in a walk-in refrigerator and
/// of 2 to 6 in a freezer that blows (common practice, no source).
const REFRIGERATOR_FAN_M_S: f64 = 1.5;
const FREEZER_FAN_M_S: f64 = 3.0;

/// Reads a `kitchen.toml`.
///
/// # Errors
///
/// Every fault, with its line.
pub fn read(text: &str, measures: Measures) -> Result<Kitchen, Vec<Misread>> {
    let mut taker = Taker {
        reader: Reader::new("kitchen.toml", text),
        measures,
    };
    let mut kitchen = Kitchen::default();
    if let Some(table) = taker.reader.table() {
        taker.kitchen(&mut kitchen, table.get_ref());
    }
    taker.reader.end(kitchen)
}

struct Taker<'a> {
    reader: Reader<'a>,
    measures: Measures,
}

impl Taker<'_> {
    fn kitchen(&mut self, kitchen: &mut Kitchen, table: &DeTable<'_>) {
        let entries = self.reader.entries(table);
        // The tap first: the burners are reckoned from its water.
        for entry in entries.iter().filter(|entry| entry.word == "tap") {
            self.set(entry, Of::Temperature, (0.0, 40.0), "°C", |c| {
                kitchen.tap = Temperature::from_celsius(c)
            });
        }
        for entry in &entries {
            let degrees = Temperature::from_celsius;
            match entry.word {
                "tap" => {}
                "altitude" => self.set(entry, Of::Height, (-430.0, 5500.0), "m", |m| kitchen.altitude_m = m),
                "room" => self.set(entry, Of::Temperature, (0.0, 45.0), "°C", |c| {
                    kitchen.room = degrees(c)
                }),
                "humidity" => self.set(entry, Of::Share, (5.0, 100.0), "%", |p| kitchen.humidity = p / 100.0),
                "refrigerator" => {
                    self.set(entry, Of::Temperature, (-2.0, 15.0), "°C", |c| {
                        kitchen.refrigerator = degrees(c)
                    });
                }
                "freezer" => self.set(entry, Of::Temperature, (-40.0, -1.0), "°C", |c| {
                    kitchen.freezer = degrees(c)
                }),
                "refrigerator_fan" => self.is_so(entry, |fan| {
                    kitchen.refrigerator_air_m_s = if fan { REFRIGERATOR_FAN_M_S } else { 0.0 };
                }),
                "freezer_fan" => self.is_so(entry, |fan| {
                    kitchen.freezer_air_m_s = if fan { FREEZER_FAN_M_S } else { 0.0 };
                }),
                "pot" => kitchen.pots = self.pots(entry),
                "burner" => kitchen.burners = self.burners(entry, kitchen.tap),
                "oven" => self.oven(kitchen, entry),
                // Once the pots are known.
                "weighed" => {}
                other => self.reader.fault(entry.line, Fault::UnknownWord(other.into(), WORDS)),
            }
        }
        for entry in entries.iter().filter(|entry| entry.word == "weighed") {
            kitchen.weighed = self.weighings(entry, &kitchen.pots);
        }
    }

    /// Reads a quantity and hands it on when it is understood and in range.
    fn set(&mut self, entry: &Entry<'_>, of: Of, (low, high): (f64, f64), unit: &str, take: impl FnOnce(f64)) {
        let said = self.reader.said(entry.value);
        match of.read(&said, self.measures) {
            Some(value) if low <= value && value <= high => take(value),
            Some(_) => {
                let range = format!("between {low} and {high} {unit}");
                self.reader
                    .fault(entry.line, Fault::OutOfRange(entry.word.into(), said, range));
            }
            None => self
                .reader
                .fault(entry.line, Fault::NotUnderstood(entry.word.into(), said, of.wanted())),
        }
    }

    fn pots(&mut self, entry: &Entry<'_>) -> Vec<Pot> {
        let tables = self.reader.tables(entry, "each pot under a line of its own, [[pot]]");
        tables
            .into_iter()
            .filter_map(|(line, table)| self.pot(line, table))
            .collect()
    }

    fn pot(&mut self, line: usize, table: &DeTable<'_>) -> Option<Pot> {
        let (mut name, mut material, mut kind) = (String::new(), Material::Steel, PotKind::Plain);
        let (mut across_cm, mut deep_cm, mut holds_l, mut weighs_g) = (None, None, None, None);
        for entry in self.reader.entries(table) {
            match entry.word {
                "name" => name = self.reader.said(entry.value),
                "across" => self.set(&entry, Of::Length, (5.0, 100.0), "cm", |cm| across_cm = Some(cm)),
                "deep" => self.set(&entry, Of::Length, (1.0, 100.0), "cm", |cm| deep_cm = Some(cm)),
                "holds" => self.set(&entry, Of::Contents, (0.2, 100.0), "litres", |l| holds_l = Some(l)),
                "weighs" => self.set(&entry, Of::Weight, (50.0, 30_000.0), "g", |g| weighs_g = Some(g)),
                "of" => self.choose(&entry, MATERIALS, "steel, aluminium, cast iron or earthenware", |m| {
                    material = m
                }),
                "kind" => self.choose(&entry, POT_KINDS, "pressure cooker or slow cooker", |k| kind = k),
                other => self
                    .reader
                    .fault(entry.line, Fault::UnknownWord(other.into(), POT_WORDS)),
            }
        }
        let what = if name.is_empty() {
            "this pot".to_owned()
        } else {
            format!("'{name}'")
        };
        let mut lacks = |word, example| self.reader.fault(line, Fault::Missing(what.clone(), word, example));
        if name.is_empty() {
            lacks("name", "name = \"big pot\"");
        }
        if across_cm.is_none() {
            lacks("across", "across = \"28 cm\"");
        }
        if weighs_g.is_none() {
            lacks("weighs", "weighs = \"2.6 kg\"");
        }
        if deep_cm.is_none() && holds_l.is_none() {
            lacks("holds", "holds = \"9.5 litres\"");
        }
        let (across_cm, weighs_g) = (across_cm?, weighs_g?);
        let deep_cm = deep_cm.or_else(|| holds_l.map(|litres| depth_cm(litres, across_cm)))?;
        Some(Pot {
            kind,
            ..Pot::new(&name, across_cm, deep_cm, material, weighs_g / 1000.0)
        })
    }

    fn burners(&mut self, entry: &Entry<'_>, tap: Temperature) -> Vec<Burner> {
        let tables = self
            .reader
            .tables(entry, "each burner under a line of its own, [[burner]]");
        let mut burners: Vec<Burner> = tables
            .into_iter()
            .filter_map(|(line, table)| self.burner(line, table, tap))
            .collect();
        burners.sort_by(|a, b| b.power.watts().total_cmp(&a.power.watts()));
        burners
    }

    fn burner(&mut self, line: usize, table: &DeTable<'_>, tap: Temperature) -> Option<Burner> {
        let (mut kind, mut minutes, mut watts) = (BurnerKind::Gas, None, None);
        for entry in self.reader.entries(table) {
            match entry.word {
                "kind" => self.choose(&entry, KINDS, "gas, radiant, induction or solid plate", |k| kind = k),
                "boils_two_litres_in" => self.set(&entry, Of::Time, (1.0, 60.0), "minutes", |m| minutes = Some(m)),
                "power" => self.set(&entry, Of::Power, (100.0, 10_000.0), "W", |w| watts = Some(w)),
                other => self
                    .reader
                    .fault(entry.line, Fault::UnknownWord(other.into(), BURNER_WORDS)),
            }
        }
        if let Some(minutes) = minutes {
            return Some(timed(kind, minutes, tap));
        }
        let Some(watts) = watts else {
            let example = "boils_two_litres_in = \"9 minutes\"";
            self.reader.fault(
                line,
                Fault::Missing("this burner".into(), "boils_two_litres_in", example),
            );
            return None;
        };
        Some(Burner::new(kind, watts))
    }

    fn oven(&mut self, kitchen: &mut Kitchen, entry: &Entry<'_>) {
        let Some(table) = entry.value.get_ref().as_table() else {
            let said = self.reader.said(entry.value);
            return self.reader.fault(
                entry.line,
                Fault::NotUnderstood("oven".into(), said, "what you know of it under a line [oven]"),
            );
        };
        let mut timed_min = None;
        for entry in self.reader.entries(table) {
            match entry.word {
                "fan" => self.is_so(&entry, |fan| {
                    kitchen.oven.fan = fan;
                    kitchen.oven.convection_w_m2k = Oven::new(fan).convection_w_m2k;
                }),
                "runs" => self.set(&entry, Of::Degrees, (-60.0, 60.0), "°C", |off| {
                    kitchen.oven.offset_k = Spread {
                        low: off - OVEN_WITHIN_K,
                        mid: off,
                        high: off + OVEN_WITHIN_K,
                    };
                }),
                "power" => self.set(&entry, Of::Power, (500.0, 10_000.0), "W", |w| {
                    kitchen.oven.power = Power::from_watts(w);
                }),
                "heats_up_in" => self.set(&entry, Of::Time, (2.0, 90.0), "minutes", |m| timed_min = Some(m)),
                other => self
                    .reader
                    .fault(entry.line, Fault::UnknownWord(other.into(), OVEN_WORDS)),
            }
        }
        if let Some(minutes) = timed_min {
            time_oven(&mut kitchen.oven, minutes, kitchen.room);
        }
    }

    /// Whether it is so or not.
    fn is_so(&mut self, entry: &Entry<'_>, take: impl FnOnce(bool)) {
        match entry.value.get_ref().as_bool() {
            Some(so) => take(so),
            None => {
                let said = self.reader.said(entry.value);
                self.reader.fault(
                    entry.line,
                    Fault::NotUnderstood(entry.word.into(), said, "true or false"),
                );
            }
        }
    }

    /// One of a few words.
    fn choose<T: Copy>(&mut self, entry: &Entry<'_>, words: &[(&str, T)], wanted: &'static str, take: impl FnOnce(T)) {
        let said = self.reader.said(entry.value);
        let plain = said.to_lowercase().replace('-', " ");
        match words.iter().find(|(word, _)| *word == plain) {
            Some((_, value)) => take(*value),
            None => self
                .reader
                .fault(entry.line, Fault::NotUnderstood(entry.word.into(), said, wanted)),
        }
    }
}

const POT_KINDS: &[(&str, PotKind)] = &[
    ("pressure cooker", PotKind::PressureCooker),
    ("slow cooker", PotKind::SlowCooker),
];

const MATERIALS: &[(&str, Material)] = &[
    ("steel", Material::Steel),
    ("stainless steel", Material::Steel),
    ("aluminium", Material::Aluminium),
    ("aluminum", Material::Aluminium),
    ("cast iron", Material::CastIron),
    ("enamelled iron", Material::CastIron),
    ("earthenware", Material::Earthenware),
    ("stoneware", Material::Earthenware),
    ("glass", Material::Earthenware),
];

const KINDS: &[(&str, BurnerKind)] = &[
    ("gas", BurnerKind::Gas),
    ("radiant", BurnerKind::Radiant),
    ("ceramic", BurnerKind::Radiant),
    ("induction", BurnerKind::Induction),
    ("solid plate", BurnerKind::SolidPlate),
];

/// The depth of a cylinder: V = π·(d/2)²·h.
fn depth_cm(litres: f64, across_cm: f64) -> f64 {
    litres * 1000.0 / (std::f64::consts::PI * across_cm * across_cm / 4.0)
}

/// A burner from the time it takes to boil two litres of tap water: the heat that reaches the pot is
/// 2 kg · c · (100 °C − tap) ÷ time, and the rated power that much over the efficiency of its kind.
fn timed(kind: BurnerKind, minutes: f64, tap: Temperature) -> Burner {
    let joules = 2.0 * WATER_KJ_KG_K * 1000.0 * (100.0 - tap.celsius());
    let reaches_w = joules / (minutes * 60.0);
    let share = kind.efficiency().mid;
    let efficiency = Spread::within_factor(share, TIMED_WITHIN);
    Burner {
        kind,
        power: Power::from_watts(reaches_w / share),
        efficiency,
    }
}

/// The heat capacity of an oven from how long it takes to 180 °C: [`Oven::preheat`] grows in proportion to it.
fn time_oven(oven: &mut Oven, minutes: f64, room: Temperature) {
    let to = Temperature::from_celsius(TIMED_OVEN_C);
    if let Some(reckoned) = oven.preheat(to, room).filter(|reckoned| reckoned.minutes() > 0.0) {
        let capacity = oven.capacity_j_k.mid * minutes / reckoned.minutes();
        oven.capacity_j_k = Spread::within_factor(capacity, TIMED_WITHIN);
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn sound(text: &str) -> Kitchen {
        read(text, Measures::Metric).expect("sound")
    }

    fn faults(text: &str) -> Vec<String> {
        let faults = read(text, Measures::Metric).expect_err("faults");
        faults.iter().map(ToString::to_string).collect()
    }

    #[test]
    fn an_empty_file_is_the_default_kitchen() {
        assert_eq!(sound(""), Kitchen::default());
    }

    #[test]
    fn what_is_said_is_taken_and_the_rest_stays() {
        let kitchen = sound("altitude = \"1000 ft\"\nhumidity = 60\n[oven]\nfan = false\nruns = -10\n");
        assert!((kitchen.altitude_m - 304.8).abs() < 1e-9);
        assert!((kitchen.humidity - 0.6).abs() < 1e-12);
        assert!(!kitchen.oven.fan);
        assert_eq!(
            kitchen.oven.offset_k,
            Spread {
                low: -15.0,
                mid: -10.0,
                high: -5.0
            }
        );
        assert_eq!(kitchen.pots, Kitchen::default().pots);
    }

    /// What a fan moves is within the speeds that the kitchen's own fields name.
    #[test]
    fn a_cold_room_with_a_fan() {
        let kitchen = sound("refrigerator_fan = true\nfreezer_fan = true\n");
        assert!((1.0..=2.0).contains(&kitchen.refrigerator_air_m_s));
        assert!((2.0..=6.0).contains(&kitchen.freezer_air_m_s));
        assert_eq!(sound("freezer_fan = false\n"), Kitchen::default());
        assert_eq!(
            faults("freezer_fan = \"yes\"\n"),
            ["kitchen.toml, line 1: 'freezer_fan' says 'yes'; write true or false"]
        );
    }

    /// A cylinder 28 cm across that holds 9.5 litres is 9500 / (π · 14²) = 15.43 cm deep.
    #[test]
    fn a_pot_by_what_it_holds() {
        let kitchen = sound(
            "[[pot]]\nname = \"big pot\"\nacross = \"28 cm\"\nholds = \"9.5 litres\"\nof = \"cast-iron\"\nweighs = \"6 kg\"",
        );
        let [pot] = kitchen.pots.as_slice() else {
            panic!("one pot, not {:?}", kitchen.pots)
        };
        assert!((pot.height.centimetres() - 15.43).abs() < 0.005, "{:?}", pot.height);
        assert!((pot.litres() - 9.5).abs() < 1e-9);
        assert_eq!(pot.material, Material::CastIron);
    }

    /// Two litres from 10 to 100 °C in 9 minutes: 2 · 4.19 · 90 = 754.2 kJ in 540 s is 1397 W into the water; gas
    /// brings 40 % of its rated power there: 3492 W.
    #[test]
    fn a_burner_by_its_two_litres() {
        let kitchen = sound(
            "tap = \"10 °C\"\n[[burner]]\nkind = \"gas\"\npower = \"1 kW\"\n[[burner]]\nkind = \"gas\"\nboils_two_litres_in = \"9 minutes\"",
        );
        let watts: Vec<f64> = kitchen.burners.iter().map(|burner| burner.power.watts()).collect();
        assert_eq!(watts.len(), 2);
        assert!((watts[0] - 3492.0).abs() < 1.0, "strongest first: {watts:?}");
        assert!((watts[1] - 1000.0).abs() < 1e-9);
    }

    /// An oven that takes 20 minutes to 180 °C takes 20 minutes by its own reckoning too.
    #[test]
    fn an_oven_by_how_long_it_heats_up() {
        let kitchen = sound("room = \"18 °C\"\n[oven]\nheats_up_in = \"20 minutes\"\npower = \"3 kW\"\nfan = false");
        let to = Temperature::from_celsius(180.0);
        let reckoned = kitchen.oven.preheat(to, kitchen.room).expect("it gets there");
        assert!((reckoned.minutes() - 20.0).abs() < 1e-6);
        assert_eq!(kitchen.oven.convection_w_m2k, Oven::new(false).convection_w_m2k);
    }

    #[test]
    fn faults_say_line_words_and_what_to_write() {
        let text =
            "altitude = \"high\"\nroom = 190\nsink = 1\n[[pot]]\nacross = \"28 cm\"\nof = \"tin\"\n[oven]\nfan = 1\n";
        let faults = faults(text);
        assert_eq!(
            faults[0],
            "kitchen.toml, line 1: 'altitude' says 'high'; write a height above the sea, like \"110 m\" or \"360 ft\""
        );
        assert_eq!(
            faults[1],
            "kitchen.toml, line 2: 'room' says '190'; it must be between 0 and 45 °C"
        );
        assert!(faults[2].starts_with("kitchen.toml, line 3: nothing is called 'sink' here"));
        assert!(faults[3].starts_with("kitchen.toml, line 6: 'of' says 'tin'"));
        assert!(
            faults
                .iter()
                .any(|fault| fault.contains("line 4: this pot lacks 'name'"))
        );
        assert!(
            faults
                .iter()
                .any(|fault| fault.contains("line 4: this pot lacks 'holds'"))
        );
        assert!(faults.iter().any(|fault| fault.contains("line 8: 'fan' says '1'")));
    }
}
