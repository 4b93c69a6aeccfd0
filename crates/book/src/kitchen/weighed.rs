//! What a pot was weighed to lose: `[[weighed]]` in `kitchen.toml`.

use potwright_manuscript::Cover;
use potwright_measure::Spread;
use potwright_pot::{Heated, Pot, Weighed};
use toml::de::DeTable;

use super::Taker;
use crate::entries::Entry;
use crate::error::Fault;
use crate::said::Of;

const WEIGHED_WORDS: &[&str] = &["pot", "lid", "at", "loses", "in"];

/// How far a loss that was weighed once may be off, as a factor: no two simmers are the same (common practice, no source).
const WEIGHED_WITHIN: f64 = 1.2;

const LIDS: &[(&str, Cover)] = &[("off", Cover::Off), ("ajar", Cover::Ajar), ("on", Cover::On)];

const HEATS: &[(&str, Heated)] = &[
    ("below the boil", Heated::BelowBoil),
    ("simmer", Heated::Simmer),
    ("boil", Heated::Boil),
];

impl Taker<'_> {
    pub(super) fn weighings(&mut self, entry: &Entry<'_>, pots: &[Pot]) -> Vec<Weighed> {
        let tables = self
            .reader
            .tables(entry, "each weighing under a line of its own, [[weighed]]");
        tables
            .into_iter()
            .filter_map(|(line, table)| self.weighing(line, table, pots))
            .collect()
    }

    fn weighing(&mut self, line: usize, table: &DeTable<'_>, pots: &[Pot]) -> Option<Weighed> {
        let (mut pot, mut cover, mut at) = (None, Cover::Off, Heated::Simmer);
        let (mut loses_g, mut minutes) = (None, None);
        for entry in self.reader.entries(table) {
            match entry.word {
                "pot" => {
                    let said = self.reader.said(entry.value);
                    pot = pots.iter().find(|pot| pot.name == said);
                    if pot.is_none() {
                        let fault = Fault::NotUnderstood("pot".into(), said, "the name of a pot of this kitchen");
                        self.reader.fault(entry.line, fault);
                        return None;
                    }
                }
                "lid" => self.choose(&entry, LIDS, "off, ajar or on", |c| cover = c),
                "at" => self.choose(&entry, HEATS, "below the boil, simmer or boil", |h| at = h),
                "loses" => self.set(&entry, Of::Weight, (1.0, 20_000.0), "g", |g| loses_g = Some(g)),
                "in" => self.set(&entry, Of::Time, (5.0, 1440.0), "minutes", |m| minutes = Some(m)),
                other => self
                    .reader
                    .fault(entry.line, Fault::UnknownWord(other.into(), WEIGHED_WORDS)),
            }
        }
        let mut lacks = |word, example| {
            let fault = Fault::Missing("this weighing".into(), word, example);
            self.reader.fault(line, fault);
        };
        if pot.is_none() {
            lacks("pot", "pot = \"big pot\"");
        }
        if loses_g.is_none() {
            lacks("loses", "loses = \"420 g\"");
        }
        if minutes.is_none() {
            lacks("in", "in = \"1 hour\"");
        }
        let (pot, loses_g, minutes) = (pot?, loses_g?, minutes?);
        let radius_m = pot.diameter.metres() / 2.0;
        let area_m2 = std::f64::consts::PI * radius_m * radius_m;
        let rate = loses_g / 1000.0 / (minutes / 60.0) / area_m2;
        Some(Weighed {
            pot: pot.name.clone(),
            cover,
            at,
            kg_h_m2: Spread::within_factor(rate, WEIGHED_WITHIN),
        })
    }
}

#[cfg(test)]
mod tests {
    use potwright_measure::Measures;
    use potwright_pot::PotKind;

    use super::*;
    use crate::kitchen::read;

    /// 420 g in an hour from a pot 28 cm across: 0.42 ÷ (π · 0.14²) = 6.82 kg/(h·m²).
    #[test]
    fn a_pot_that_was_weighed() {
        let kitchen = read(
            "[[pot]]\nname = \"big pot\"\nacross = \"28 cm\"\nholds = \"9.5 litres\"\nweighs = \"2.6 kg\"\nkind = \"slow cooker\"\n[[weighed]]\npot = \"big pot\"\nlid = \"ajar\"\nat = \"simmer\"\nloses = \"420 g\"\nin = \"1 hour\"",
            Measures::Metric,
        )
        .expect("sound");
        assert_eq!(kitchen.pots[0].kind, PotKind::SlowCooker);
        let weighed = &kitchen.weighed[0];
        assert_eq!((weighed.cover, weighed.at), (Cover::Ajar, Heated::Simmer));
        assert!((weighed.kg_h_m2.mid - 6.821).abs() < 0.001, "{:?}", weighed.kg_h_m2);
        let faults = read("[[weighed]]\npot = \"bath\"\nloses = \"1 g\"", Measures::Metric).expect_err("a fault");
        let told = faults[0].to_string();
        assert!(told.contains("line 2: 'pot' says 'bath'"), "{told}");
    }
}
