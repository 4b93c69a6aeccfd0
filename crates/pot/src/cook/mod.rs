//! Cooking by computation: a process in a kitchen, under one draw, gives a trace.
//!
//! One clock runs for all vessels. A vessel keeps its place and its heat until an act changes them, so what stands on
//! the hob goes on cooking while something else is done. Each step moves heat, vapour and matter between vessels,
//! pieces and the accounts of the ledger; nothing is ever set that is not booked.

mod acts;
mod clock;
mod cold;
mod cold_inside;
mod conditions;
mod cooling;
mod curdle;
mod exchange;
mod fire;
mod food;
mod frying;
mod group;
mod habits;
mod oven;
mod practice;
mod pulses;
mod record;
mod running;
mod solutes;
mod standing;
mod step;
#[cfg(test)]
mod tests;
mod vessel;

use crate::{
    Act, ActTrace, Aim, Cooling, Doing, Draw, Event, Happening, Kitchen, Ledger, Matter, OvenHeated, PieceTrace, Place,
    PotKind, Process, Sample, ServedPieces, Trace,
};
use conditions::Conditions;
use group::Shaped;
use running::{Outcome, Running};
use vessel::VesselState;

/// Cooks a process: never fails and never panics. What cannot be cooked is left out and told in the events.
///
/// The trace is the same, bit for bit, for the same process, kitchen and draw.
#[must_use]
pub fn cook(process: &Process, kitchen: &Kitchen, draw: &Draw) -> Trace {
    let mut run = Run::new(process, kitchen, draw);
    run.all();
    run.into_trace()
}

/// The textbook pot: as [`cook`] in the central run, but nothing is lost to the room and nothing evaporates below the
/// boil. For comparison with published sums that leave losses out; no figure about a dish comes from it.
#[must_use]
pub fn cook_without_losses(process: &Process, kitchen: &Kitchen) -> Trace {
    let mut run = Run::new(process, kitchen, &Draw::central());
    run.cond.losses = false;
    run.all();
    run.into_trace()
}

/// Mistakes that the balance test must catch.
#[cfg(test)]
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum Fault {
    /// Vapour leaves the pot and is not booked.
    VapourForgotten,
}

/// The dish when it is served.
struct Served {
    liquid: Matter,
    pieces: Vec<ServedPieces>,
    temp_c: f64,
    volume_l: f64,
}

/// A cooking that is going on.
struct Run<'a> {
    process: &'a Process,
    cond: Conditions,
    time_s: f64,
    vessels: Vec<VesselState>,
    /// Mass of each lot in this run, and the share of it that has gone in.
    lot_kg: Vec<f64>,
    added: Vec<f64>,
    running: Vec<Running>,
    ledger: Ledger,
    /// Heat from the oven that the oven has been told of.
    oven_seen_j: f64,
    samples: Vec<Sample>,
    acts: Vec<ActTrace>,
    events: Vec<Event>,
    pieces: Vec<PieceTrace>,
    coolings: Vec<Cooling>,
    ovens: Vec<OvenHeated>,
    served: Option<Served>,
}

/// Between samples while something hot changes, and at most, seconds.
const SAMPLE_S: f64 = 60.0;
const QUIET_SAMPLE_S: f64 = 600.0;
/// No dish is followed for longer than a month.
const LONGEST_S: f64 = 30.0 * 24.0 * 3600.0;

impl<'a> Run<'a> {
    fn new(process: &'a Process, kitchen: &Kitchen, draw: &Draw) -> Self {
        let cond = Conditions::new(kitchen, draw);
        let lot_kg = process.lots.iter().enumerate().map(|(index, lot)| {
            let factor = lot.spread.at(draw.lot(index));
            let kg = lot.mass.kilograms() * if factor.is_finite() { factor } else { 1.0 };
            if kg.is_finite() { kg.max(0.0) } else { 0.0 }
        });
        let mut run = Run {
            vessels: process
                .vessels
                .iter()
                .map(|vessel| VesselState::new(vessel, &cond))
                .collect(),
            lot_kg: lot_kg.collect(),
            added: vec![0.0; process.lots.len()],
            process,
            cond,
            time_s: 0.0,
            running: Vec::new(),
            ledger: Ledger::default(),
            oven_seen_j: 0.0,
            samples: Vec::new(),
            acts: vec![
                ActTrace {
                    start_s: 0.0,
                    end_s: 0.0,
                    hands_s: 0.0
                };
                process.acts.len()
            ],
            events: Vec::new(),
            pieces: Vec::new(),
            coolings: Vec::new(),
            ovens: Vec::new(),
            served: None,
        };
        for lot in process
            .lots
            .iter()
            .filter(|lot| !lot.mass.is_finite() || !lot.matter.is_sound())
        {
            run.note(
                0,
                0,
                Happening::LeftOut(format!("the amount of {} is not a number", lot.name)),
            );
        }
        run
    }

    /// All acts: one after the other, and those said to happen meanwhile beside the one before.
    fn all(&mut self) {
        let acts = &self.process.acts;
        let mut first = 0;
        while first < acts.len() {
            let beside = acts[first + 1..].iter().take_while(|act| act.meanwhile).count();
            self.together(first, first + 1 + beside);
            first += 1 + beside;
        }
    }

    /// Acts that overlap: each begins when its vessels are free of earlier ones.
    fn together(&mut self, first: usize, end: usize) {
        let mut pending: Vec<usize> = (first..end).collect();
        while !(pending.is_empty() && self.running.is_empty()) {
            let mut taken: Vec<usize> = self.running.iter().map(|running| running.vessel).collect();
            pending.retain(|&index| {
                let vessels = vessels_of(&self.process.acts[index]);
                let free = vessels.iter().all(|vessel| !taken.contains(vessel));
                if free {
                    self.start(index);
                    // A short act that is over at once leaves its vessel free.
                }
                if !free || self.running.iter().any(|running| running.act == index) {
                    taken.extend(vessels);
                }
                !free
            });
            if !self.running.is_empty() {
                self.step();
            }
        }
    }

    /// Begins an act; what happens at one moment happens now, and may keep the cook a while.
    fn start(&mut self, index: usize) {
        let act = &self.process.acts[index];
        self.acts[index] = ActTrace {
            start_s: self.time_s,
            end_s: self.time_s,
            hands_s: 0.0,
        };
        if act.vessel >= self.vessels.len() {
            let vessel = act.vessel;
            self.note(
                index,
                vessel,
                Happening::LeftOut(format!("vessel {vessel} does not exist")),
            );
            return;
        }
        self.sample(index);
        let hands_s = act.hands.seconds();
        self.open_up(act);
        self.acts[index].hands_s = if hands_s.is_finite() { hands_s.max(0.0) } else { 0.0 };
        match &act.doing {
            Doing::Cook(stretch) => {
                self.place(index, act.vessel, stretch);
                let state = &self.vessels[act.vessel];
                let running = Running::stretch(index, act.vessel, self.time_s, stretch, state, &self.cond);
                self.running.push(running);
                return;
            }
            Doing::Add(portions) => self.add(index, act.vessel, portions),
            Doing::Transfer { to, what } => {
                self.transfer(index, act.vessel, *to, what);
                self.set_aside_if_last(index, act.vessel);
            }
            Doing::Discard(what) => {
                self.discard(index, act.vessel, what);
                self.set_aside_if_last(index, act.vessel);
            }
            Doing::Puree(share) => self.puree(act.vessel, *share),
            Doing::Shape {
                lot,
                pieces,
                risen,
                count,
            } => {
                let shaped = Shaped {
                    risen: *risen,
                    count: *count,
                };
                self.shape(index, act.vessel, (*lot, pieces), shaped);
            }
            Doing::Skim(fat) => self.skim(act.vessel, *fat),
            Doing::Serve => self.serve(act.vessel),
        }
        let running = Running::short(index, act.vessel, self.time_s, hands_s);
        if running.remaining_s(self.time_s) > 0.0 {
            self.running.push(running);
        } else {
            self.finish(index, act.vessel);
        }
    }

    /// The dish is finished and off the heat; what it is once it is on the table is what is served.
    fn serve(&mut self, vessel: usize) {
        let state = &mut self.vessels[vessel];
        state.burner = None;
        state.place = Place::Counter;
        state.aim = Aim::Off;
        state.disturb();
    }

    fn finish_what_is_over(&mut self) {
        self.catch_up_what_is_over();
        let mut running = std::mem::take(&mut self.running);
        let too_long = self.time_s >= LONGEST_S;
        running.retain_mut(|stretch| {
            let state = &self.vessels[stretch.vessel];
            let outcome = stretch.look(self.time_s, state, &self.cond);
            stretch.remember(self.time_s, state);
            stretch.forecast(self.time_s, state);
            let (act, vessel) = (stretch.act, stretch.vessel);
            if std::mem::take(&mut stretch.weak) {
                self.note(act, vessel, Happening::NotEnoughHeat);
            }
            if outcome == Outcome::GoesOn && !too_long {
                return true;
            }
            if outcome == Outcome::NotReached {
                self.note(act, vessel, Happening::CueNotReached);
            }
            let attention = self.vessels[vessel].attention();
            let busy = (self.time_s - stretch.start_s) * attention;
            if matches!(self.process.acts[act].doing, Doing::Cook(_)) {
                self.acts[act].hands_s += busy;
            }
            self.finish(act, vessel);
            false
        });
        self.running = running;
    }

    fn finish(&mut self, act: usize, vessel: usize) {
        self.acts[act].end_s = self.time_s;
        self.sample(act);
        self.vessels[vessel].turns = 1.0;
        if matches!(self.process.acts[act].doing, Doing::Serve) {
            self.served = Some(self.dish());
        }
    }

    /// What is left in a vessel that no later act comes back to is off the heat, and no food any more whose cooling
    /// matters.
    fn set_aside_if_last(&mut self, act: usize, vessel: usize) {
        let later = self.process.acts.iter().skip(act + 1);
        if vessel != self.process.dish_vessel && !later.flat_map(vessels_of).any(|touched| touched == vessel) {
            self.close_cooling(vessel, act);
            self.vessels[vessel].set_aside();
        }
    }

    /// The act that goes on in a vessel, else the first that goes on.
    fn act_of(&self, vessel: usize) -> usize {
        let own = self.running.iter().find(|running| running.vessel == vessel);
        own.or(self.running.first()).map_or(0, |running| running.act)
    }
}

/// Vessels an act touches.
fn vessels_of(act: &Act) -> Vec<usize> {
    match &act.doing {
        Doing::Transfer { to, .. } => vec![act.vessel, *to],
        _ => vec![act.vessel],
    }
}

impl VesselState {
    /// Share of the time the cook's hands are busy with it.
    fn attention(&self) -> f64 {
        use potwright_manuscript::HeatWord;
        match (self.place, self.aim) {
            (Place::Hob, Aim::Fry(HeatWord::Off | HeatWord::Low | HeatWord::MediumLow | HeatWord::Lower)) => {
                practice::ATTENTION_SWEAT
            }
            (Place::Hob, Aim::Fry(_)) => practice::ATTENTION_FRY,
            (Place::Hob, Aim::Setting(_)) if self.measures.kind == PotKind::SlowCooker => 0.0,
            (Place::Hob, Aim::BelowBoil | Aim::Setting(_)) => practice::ATTENTION_WATCH,
            (Place::Hob, _) => practice::ATTENTION_SIMMER,
            _ => 0.0,
        }
    }
}
