//! Vessels that heat in a way of their own: the pressure cooker and the slow cooker; and the oven nobody has lit.

use potwright_manuscript::{Cover, HeatWord, Operation};
use potwright_measure::{Duration, Temperature};

use super::bench::Bench;
use super::verbs::{self, Class, Manner, Way};
use super::vessels::{Style, kind_of};
use super::words::{has, plain};
use crate::physics::water;
use crate::{Aim, Cue, Doing, Lasts, Place, PotKind, Stretch};

/// Said of pressure that falls by itself, and of pressure that is let off.
const FALLS: [&str; 12] = [
    "by itself",
    "of itself",
    "on its own",
    "of its own accord",
    "naturally",
    "natural release",
    "natural pressure release",
    "pressure has dropped",
    "pressure drops",
    "pressure to drop",
    "pressure has fallen",
    "pressure falls",
];
const LET_OFF: [&str; 8] = [
    "quick release",
    "quickly",
    "release the pressure",
    "release the steam",
    "let off the steam",
    "let out the steam",
    "open the valve",
    "cold water",
];
/// How far after a stretch its words may say what becomes of the pressure, bytes.
const LOOKS_AHEAD: usize = 240;
/// From here on a time without a heat is one on low, minutes (common practice, no source: 3 to 4 hours on high, 6 to 10
/// on low).
const LONG_MIN: f64 = 300.0;
/// The pressure is down when what is inside is this near the boil, kelvins: the valve drops (common practice, no source).
const DOWN_K: f64 = 1.0;

impl Bench<'_> {
    /// The aim in a pressure cooker under pressure or in a slow cooker; none where it is like any other pot.
    pub(super) fn special_aim(&mut self, vessel: usize, operation: &Operation, manner: &Manner) -> Option<Aim> {
        let words = self.words();
        let pressed = has(&words, "pressure");
        let used = &mut self.uses[vessel];
        if pressed && used.style == Style::Pot && kind_of(&used.name) == PotKind::Plain {
            // 'Pressure-cook for 20 minutes' says what vessel it is.
            "pressure cooker".clone_into(&mut used.name);
        }
        match kind_of(&used.name) {
            PotKind::Plain => None,
            PotKind::PressureCooker => {
                let was = matches!(self.held[vessel].aim, Some(Aim::Pressure(_)));
                let locked = operation.cover == Some(Cover::On) || was && operation.cover.is_none() && pressed;
                let heats = matches!(manner.way, Some(Way::Simmer | Way::Boil | Way::Setting));
                if heats && (pressed || locked) && operation.cover != Some(Cover::Off) {
                    self.held[vessel].cover = Some(Cover::On);
                    let low = has(&words, "low pressure") || operation.heat == Some(HeatWord::Low);
                    return Some(Aim::Pressure(if low { HeatWord::Low } else { HeatWord::High }));
                }
                if was {
                    // It had to be opened.
                    self.held[vessel].cover = Some(Cover::Off);
                }
                None
            }
            PotKind::SlowCooker => {
                let said = [("on low", HeatWord::Low), ("on high", HeatWord::High)];
                let said = said.into_iter().find(|(words_said, _)| has(&words, words_said));
                let heat = operation.heat.filter(|heat| *heat != HeatWord::Lower);
                let heat = said.map(|(_, heat)| heat).or(heat);
                if heat == Some(HeatWord::Off) {
                    return Some(Aim::Off);
                }
                self.held[vessel].cover = self.held[vessel].cover.or(Some(Cover::On));
                let long = operation
                    .minutes
                    .as_ref()
                    .is_some_and(|minutes| minutes.low >= LONG_MIN);
                let low = heat
                    .or(self.held[vessel].heat)
                    .map_or(long, |heat| !matches!(heat, HeatWord::MediumHigh | HeatWord::High));
                if heat.is_none() {
                    let which = if low { "low" } else { "high" };
                    self.assume(format!("Low or high is not said: {which} is taken."));
                }
                Some(Aim::Setting(if low { HeatWord::Low } else { HeatWord::High }))
            }
        }
    }

    /// What becomes of the pressure at the end: as the words after say, else it is let off at once.
    pub(super) fn let_pressure_off(&mut self, vessel: usize, operation: &Operation) {
        let mut end = operation
            .span
            .end
            .saturating_add(LOOKS_AHEAD)
            .min(self.shelf.text.len());
        while !self.shelf.text.is_char_boundary(end) {
            end -= 1;
        }
        let after = plain(self.shelf.text.get(operation.span.start..end).unwrap_or(""));
        let said = |list: &[&str]| list.iter().any(|words| has(&after, words));
        if said(&FALLS) {
            let next = self
                .shelf
                .recipe
                .operations
                .iter()
                .find(|next| next.span.start > operation.span.start);
            let waits = next.is_some_and(|next| verbs::manner(next.verb).class == Class::Wait);
            if !waits {
                self.pressure_falls(vessel);
            }
        } else if !said(&LET_OFF) {
            self.assume("How the pressure is let off is not said: at once, by the valve.");
        }
    }

    /// Off the heat with the lid locked, until the valve drops.
    fn pressure_falls(&mut self, vessel: usize) {
        let boils_c = water::boiling_c(water::air_pressure_kpa(self.shelf.kitchen.altitude_m));
        self.held[vessel].aim = Some(Aim::Off);
        self.act(
            vessel,
            Doing::Cook(Stretch {
                place: Place::Counter,
                aim: Aim::Off,
                lasts: Lasts {
                    minutes: None,
                    cue: Some(Cue::Reaches(Temperature::from_celsius(boils_c + DOWN_K))),
                },
                cover: Cover::On,
                assumed: false,
                batches: 1,
            }),
        );
    }

    /// A dish goes into an oven: the page should have said to heat it.
    pub(super) fn light_oven(&mut self, to: Temperature) {
        if std::mem::replace(&mut self.oven_lit, true) {
            return;
        }
        let kitchen = self.shelf.kitchen;
        let minutes = kitchen.oven.preheat(to, kitchen.room).map(Duration::minutes);
        let when = minutes.map_or_else(
            || format!("this oven never reaches {:.0} °C", to.celsius()),
            |minutes| format!("lit about {:.0} minutes before", minutes),
        );
        self.assume(format!(
            "To heat the oven is not said: it is taken as hot when the dish goes in, {when}."
        ));
    }
}

#[cfg(test)]
mod tests {
    use potwright_larder::Larder;
    use potwright_manuscript::{Cover, HeatWord};
    use potwright_measure::Measures;

    use crate::resolve::resolve;
    use crate::{Aim, Cue, Doing, Kitchen, Place, PotKind, Process, Stretch};

    const LIST: &str = "Stew\n\n1 kg beef shin, cut into 3 cm cubes\n1 onion, chopped\n500 ml beef stock\n\n";

    fn cooked(method: &str) -> (Process, Vec<Stretch>) {
        let text = format!("{LIST}{method}\n");
        let recipe = potwright_manuscript::read(&text);
        let process = resolve(
            &recipe,
            &text,
            Larder::built_in(),
            &[],
            &Kitchen::default(),
            Measures::Metric,
        );
        let stretches = process.acts.iter().filter_map(|act| match &act.doing {
            Doing::Cook(stretch) => Some(stretch.clone()),
            _ => None,
        });
        let stretches = stretches.collect();
        (process, stretches)
    }

    fn assumes(process: &Process, words: &str) -> bool {
        process.assumptions.iter().any(|assumed| assumed.text.contains(words))
    }

    #[test]
    fn a_pressure_cooker_is_locked_brought_up_and_let_off() {
        let (process, stretches) = cooked(
            "Put everything in the pressure cooker. Lock the lid, bring to high pressure and cook for 35 minutes. Release \
             the pressure quickly and serve.",
        );
        let aims: Vec<_> = stretches.iter().map(|stretch| (stretch.aim, stretch.cover)).collect();
        assert_eq!(aims, [(Aim::Pressure(HeatWord::High), Cover::On); 2]);
        assert_eq!(
            stretches[0].lasts.cue,
            Some(Cue::Boils),
            "up to pressure, however long that takes"
        );
        let kind = |process: &Process| {
            process
                .vessels
                .iter()
                .filter_map(|v| v.pot.as_ref())
                .map(|pot| pot.kind)
                .next()
        };
        assert_eq!(kind(&process), Some(PotKind::PressureCooker));
        assert!(!assumes(&process, "pressure is let off"));
        let (process, _) = cooked("Put everything in a pressure cooker and cook under pressure for 35 minutes. Serve.");
        assert!(assumes(&process, "pressure is let off"));
    }

    #[test]
    fn the_verb_says_what_vessel_it_is_and_pressure_falls_by_itself() {
        let (process, stretches) = cooked(
            "Put everything in a pot. Pressure-cook at low pressure for 40 minutes and let the pressure drop by itself. Simmer, \
             uncovered, for 5 minutes.",
        );
        let aims: Vec<_> = stretches.iter().map(|stretch| (stretch.aim, stretch.cover)).collect();
        assert_eq!(aims[0], (Aim::Pressure(HeatWord::Low), Cover::On), "{aims:?}");
        assert_eq!(aims[1], (Aim::Off, Cover::On), "{aims:?}");
        assert_eq!(aims[2], (Aim::Simmer, Cover::Off), "{aims:?}");
        assert!(process.vessels.iter().any(|vessel| vessel.name == "pressure cooker"));
    }

    #[test]
    fn a_slow_cooker_has_two_settings_and_a_lid() {
        for (method, word, assumed) in [
            (
                "Put everything in the slow cooker and cook on low for 8 hours.",
                HeatWord::Low,
                false,
            ),
            (
                "Put everything in the slow cooker and cook on high for 4 hours.",
                HeatWord::High,
                false,
            ),
            (
                "Put everything in the slow cooker and cook for 8 hours.",
                HeatWord::Low,
                true,
            ),
        ] {
            let (process, stretches) = cooked(method);
            let last = stretches.last().expect("a stretch");
            assert_eq!(
                (last.aim, last.cover, last.place),
                (Aim::Setting(word), Cover::On, Place::Hob),
                "{method}"
            );
            assert_eq!(assumes(&process, "Low or high is not said"), assumed, "{method}");
        }
    }

    #[test]
    fn an_oven_that_nobody_lights_is_told() {
        let braise = "Put everything in a casserole, cover and cook in the oven at 150 °C for 3 hours.";
        let told = "To heat the oven is not said";
        assert!(assumes(&cooked(braise).0, told));
        assert!(!assumes(&cooked(&format!("Heat the oven to 150 °C. {braise}")).0, told));
    }
}
