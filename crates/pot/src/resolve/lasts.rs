//! How long a stretch lasts, in how many batches, under what lid.

use potwright_manuscript::{Cover, Operation, Verb};
use potwright_measure::Spread;

use super::bench::Bench;
use super::cues::{self, Sight, Sign};
use super::verbs::Manner;
use super::vessels;
use super::words::{has, plain};
use crate::{Cue, Lasts};

/// A night: from the evening to the next day, minutes (common practice, no source).
const NIGHT: Spread = Spread {
    low: 480.0,
    mid: 600.0,
    high: 840.0,
};

/// Soaking what is not dried pulses or grain: minutes (common practice, no source).
const SHORT_SOAK: Spread = Spread {
    low: 5.0,
    mid: 10.0,
    high: 20.0,
};

impl Bench<'_> {
    /// Minutes and cue, and whether a default time stands in because neither can be reckoned with.
    pub(super) fn lasts(
        &mut self,
        vessel: usize,
        operation: &Operation,
        manner: &Manner,
        named: &[usize],
    ) -> (Lasts, bool) {
        let words = operation.cue.as_ref().map(|cue| cue.text.clone());
        let sight = Sight {
            verb: operation.verb,
            named,
            inside: &self.inside(vessel),
            lots: &self.stocked.lots,
            measures: self.shelf.measures,
        };
        let mut sign = words.as_ref().map_or(
            Sign {
                cue: None,
                instead: None,
            },
            |words| cues::read(words, &sight),
        );
        if sign.cue.is_none() && to_the_boil(operation, &self.words()) {
            sign.cue = Some(Cue::Boils);
        }
        let of_food = operation
            .temperature
            .map(|t| t.temperature())
            .filter(|t| cues::is_of_food(t.celsius()));
        if let Some(reaches) = of_food.filter(|_| !matches!(sign.cue, Some(Cue::Reaches(_)))) {
            sign.cue = Some(Cue::Reaches(reaches));
        }
        let mut minutes = operation
            .minutes
            .as_ref()
            .map(|minutes| times(operation, minutes.low, minutes.high));
        let night = operation
            .cue
            .as_ref()
            .is_some_and(|cue| has(&plain(&cue.text), "overnight"));
        if minutes.is_none() && (night || has(&self.words(), "overnight")) {
            minutes = Some(NIGHT);
            sign.cue = sign.cue.filter(|cue| !matches!(cue, Cue::Other(_)));
        }
        let computed = !matches!(sign.cue, None | Some(Cue::Other(_)));
        let assumed = minutes.is_none() && !computed;
        if assumed {
            minutes = sign.instead.or_else(|| self.usual_minutes(vessel, operation, manner));
            self.note_default(operation, minutes, words.as_deref());
        }
        (Lasts { minutes, cue: sign.cue }, assumed)
    }

    /// The verb's own minutes; soaking is short but for what drinks slowly.
    fn usual_minutes(&self, vessel: usize, operation: &Operation, manner: &Manner) -> Option<Spread> {
        let drinks = |lot: usize| {
            let pieces = self.stocked.lots.get(lot).and_then(|lot| lot.pieces);
            pieces
                .and_then(|pieces| pieces.absorbs)
                .is_some_and(|absorbs| absorbs.soaking_hours.is_some())
        };
        let quick = operation.verb == Verb::Soak && !self.inside(vessel).into_iter().any(drinks);
        if quick { Some(SHORT_SOAK) } else { manner.minutes }
    }

    fn note_default(&mut self, operation: &Operation, minutes: Option<Spread>, cue: Option<&str>) {
        let Some(minutes) = minutes else { return };
        let time = super::amount::tidy(minutes.mid);
        match cue {
            Some(cue) => self.assume(format!("‘Until {cue}’ cannot be computed: {time} minutes stand in.")),
            None => {
                let verb = operation.verb.name().replace('_', " ");
                self.assume(format!("How long to {verb} is not said: {time} minutes are taken."));
            }
        }
    }

    /// The lid: what is said here, in a note to the desk of this step, by the verb, as it was; else off.
    pub(super) fn cover_for(&mut self, vessel: usize, operation: &Operation, manner: &Manner) -> Cover {
        let recipe = self.shelf.recipe;
        let notes = recipe
            .desk_notes
            .iter()
            .filter(|note| note.step == Some(operation.step));
        let noted = notes.filter_map(|note| vessels::lid_in(&note.words.text)).next();
        let words = self.words();
        let at_times = [
            "now and then",
            "occasionally",
            "once or twice",
            "from time to time",
            "often",
        ];
        let stirred = has(&words, "stirring") && !at_times.iter().any(|said| has(&words, said));
        let open = stirred.then_some(Cover::Off);
        let cover = operation
            .cover
            .or(noted)
            .or(manner.lid)
            .or(open)
            .or(self.held[vessel].cover)
            .unwrap_or(Cover::Off);
        self.held[vessel].cover = Some(cover);
        cover
    }
}

/// The minutes as written, low to high; for each side, twice. 'On all sides' is said of the whole time.
fn times(operation: &Operation, low: f64, high: f64) -> Spread {
    let sides = operation.repeat.as_ref().filter(|repeat| per_side(&repeat.words.text));
    let factor = sides.map_or(1.0, |repeat| f64::from(repeat.times.unwrap_or(2).clamp(1, 6)));
    let sound = |minutes: f64| {
        if minutes.is_finite() {
            minutes.clamp(0.0, 60_000.0)
        } else {
            0.0
        }
    };
    let (low, high) = (sound(low.min(high)) * factor, sound(low.max(high)) * factor);
    Spread {
        low,
        mid: f64::midpoint(low, high),
        high,
    }
}

fn per_side(words: &str) -> bool {
    let hay = super::words::plain(words);
    has(&hay, "side") || has(&hay, "both sides")
}

/// In how many batches; two when 'in batches' does not say.
pub(super) fn batches(operation: &Operation) -> u32 {
    let Some(repeat) = &operation.repeat else { return 1 };
    let hay = super::words::plain(&repeat.words.text);
    let in_batches = has(&hay, "batch") || has(&hay, "batches");
    if in_batches {
        repeat.times.unwrap_or(2).clamp(1, 20)
    } else {
        1
    }
}

/// 'Bring to the boil' is a stretch that ends when it boils.
fn to_the_boil(operation: &Operation, words: &str) -> bool {
    let brings = matches!(operation.verb, Verb::Heat | Verb::Boil | Verb::Simmer | Verb::Reheat);
    let to = [
        "to the boil",
        "to a boil",
        "to boil",
        "to a simmer",
        "to the simmer",
        "to boiling point",
        "to a rolling boil",
        "to pressure",
        "to high pressure",
        "to low pressure",
        "to full pressure",
        "up to pressure",
    ];
    brings && operation.minutes.is_none() && to.iter().any(|said| has(words, said))
}
